//! The job's time along a line. Long spans in which nothing happened are cut out of it.

use std::collections::BTreeSet;

use chrono::{DateTime, NaiveDateTime, Timelike};

use crate::by::By;
use crate::document::{Document, End};

/// Nothing happened for longer than this: it is cut out.
const LONG: i64 = 180;
/// Width of a cut.
const CUT: f32 = 16.0;
/// The line is never drawn for less than this.
const SHORTEST: i64 = 10;
/// Minutes between two ticks; the first that leaves no more than [`TICKS`].
const STEPS: &[i64] = &[5, 10, 15, 30, 60, 120, 180, 360, 720];
const TICKS: i64 = 11;

/// Minutes by the shop's clock, from a day long ago.
pub(super) type Minute = i64;

/// Minutes laid along a line.
pub(super) struct Clock {
    x: f32,
    per_minute: f32,
    /// What is drawn of the time, oldest first.
    pub spans: Vec<(Minute, Minute)>,
}

/// A tick.
pub(super) struct Tick {
    pub x: f32,
    pub label: String,
}

impl Clock {
    /// The time of a job along a line that begins at `x`. Nothing where its times cannot be read.
    pub fn of(document: &Document, x: f32, width: f32) -> Option<Clock> {
        let moments = moments(document);
        let (first, last) = (*moments.first()?, *moments.last()?);
        let mut spans = vec![(first, first)];
        for moment in moments {
            match spans.last_mut() {
                Some((_, end)) if moment - *end <= LONG => *end = moment,
                _ => spans.push((moment, moment)),
            }
        }
        let drawn: i64 = spans.iter().map(|(from, to)| to - from).sum();
        let cuts = CUT * (spans.len() - 1) as f32;
        let per_minute = (width - cuts) / drawn.max(SHORTEST) as f32;
        debug_assert!(first <= last, "moments are in order");
        Some(Clock { x, per_minute, spans })
    }

    /// Where a moment is; one in a cut is at its end, one outside at the nearer end.
    pub fn at(&self, moment: Minute) -> f32 {
        let mut x = self.x;
        for (from, to) in &self.spans {
            if moment <= *to {
                return x + (moment - from).max(0) as f32 * self.per_minute;
            }
            x += (to - from) as f32 * self.per_minute + CUT;
        }
        x - CUT
    }

    /// The middles of the cuts.
    pub fn cuts(&self) -> Vec<f32> {
        let ends = self.spans.iter().take(self.spans.len() - 1);
        ends.map(|(_, to)| self.at(*to) + CUT / 2.0).collect()
    }

    /// Ticks at full steps of the clock.
    pub fn ticks(&self) -> Vec<Tick> {
        let drawn: i64 = self.spans.iter().map(|(from, to)| to - from).sum();
        let step = STEPS.iter().copied().find(|step| drawn / step < TICKS).unwrap_or(1440);
        let in_span = |(from, to): &(Minute, Minute)| {
            let first = from.div_euclid(step) + i64::from(from.rem_euclid(step) != 0);
            (first..=to.div_euclid(step)).map(move |number| number * step)
        };
        let ticks = self.spans.iter().flat_map(in_span);
        ticks.map(|minute| Tick { x: self.at(minute), label: time_of_day(minute) }).collect()
    }
}

/// Time of day by the shop's clock.
pub(super) fn time_of_day(minute: Minute) -> String {
    format!("{}:{:02}", minute.rem_euclid(1440) / 60, minute.rem_euclid(60))
}

/// The day of a moment, as ISO 8601.
pub(super) fn day_of(minute: Minute) -> String {
    let day = DateTime::from_timestamp_secs(minute.saturating_mul(60));
    day.map(|day| day.date_naive().to_string()).unwrap_or_default()
}

/// The moment that an ISO 8601 text tells, by the clock it was told by.
pub(super) fn minute_of(local: &str) -> Option<Minute> {
    let moment: NaiveDateTime = DateTime::parse_from_rfc3339(local).ok()?.naive_local();
    let midnight = moment.date().and_hms_opt(0, 0, 0)?.and_utc().timestamp() / 60;
    Some(midnight + i64::from(moment.num_seconds_from_midnight() / 60))
}

/// When the job ended, or the record was made.
pub(super) fn until(document: &Document) -> Option<Minute> {
    minute_of(match &document.end {
        End::Finished { by } | End::Stopped { by, .. } => &by.local,
        End::Open | End::Ending => &document.generated_local,
    })
}

/// Every moment at which something happened, up to the end of the job.
fn moments(document: &Document) -> BTreeSet<Minute> {
    let attempts = document.phases.iter().flat_map(|phase| &phase.steps).flat_map(|step| &step.attempts);
    let worked = attempts.flat_map(|attempt| {
        let ends = [Some(&attempt.begun), attempt.ended.as_ref()].into_iter().flatten();
        ends.chain(attempt.entries.iter().map(|entry| &entry.by))
    });
    let had = document.day.iter().flat_map(|track| &track.had).map(|had| &had.since);
    let moved = document.vehicle_actions.iter().map(|made| &made.by);
    let all = document.started.iter().chain(worked).chain(had).chain(moved);
    let mut moments: BTreeSet<Minute> = all.filter_map(|by: &By| minute_of(&by.local)).collect();
    moments.extend(until(document));
    moments
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_shops_clock_is_read_off_the_text_and_written_back() {
        let minute = minute_of("2026-03-02T09:05:59+01:00").unwrap();
        assert_eq!((day_of(minute).as_str(), time_of_day(minute).as_str()), ("2026-03-02", "9:05"));
        assert_eq!(minute_of("1 ms after 1970 UTC"), None);
    }

    #[test]
    fn a_night_in_which_nothing_happened_is_cut_out_of_the_line() {
        let spans = vec![(600, 660), (1440, 1500)];
        let clock = Clock { x: 10.0, per_minute: 1.0, spans };
        assert_eq!(clock.at(600), 10.0);
        assert_eq!(clock.at(660), 70.0);
        assert_eq!(clock.at(1440), 70.0 + CUT);
        assert_eq!(clock.at(9999), 130.0 + CUT);
        assert_eq!(clock.cuts(), [70.0 + CUT / 2.0]);
        let labels: Vec<_> = clock.ticks().into_iter().map(|tick| tick.label).collect();
        assert_eq!(labels[..2], ["10:00", "10:15"]);
    }
}
