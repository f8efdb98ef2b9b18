//! How long something took, and which day it was, from stamps alone.
//!
//! What has aged decides by [`measured_ms`]: after a restart of the tablet nothing counts as fresh. What must not be
//! cut short goes by [`surely_ms`]: a timer's wait, a PIN's wait, what a plan says has run. [`elapsed_ms`] is shown
//! only, and the record lists the restarts.

use chrono::{DateTime, Duration, NaiveDate, NaiveDateTime};
use panside_journal::Stamp;

/// Milliseconds in a minute.
pub(crate) const MINUTE_MS: u64 = 60_000;

/// Milliseconds from one stamp to a later one of the same boot, by the monotonic clock, which nobody can set. Nothing over
/// a restart of the tablet: the wall clock may have been set meanwhile, so that nobody knows.
#[must_use]
pub fn measured_ms(from: &Stamp, to: &Stamp) -> Option<u64> {
    if from.boot == to.boot { to.mono_ms.checked_sub(from.mono_ms) } else { None }
}

/// Milliseconds that have passed for sure, for what must not be cut short. Over a restart of the tablet no more than since
/// that, and where the wall clock goes on no more than it says: a store may have come from another tablet.
#[must_use]
pub fn surely_ms(from: &Stamp, to: &Stamp) -> u64 {
    if from.boot == to.boot {
        return measured_ms(from, to).unwrap_or(0);
    }
    elapsed_ms(from, to).map_or(to.mono_ms, |by_wall| to.mono_ms.min(by_wall))
}

/// Milliseconds from one stamp to a later one, to be told and to decide nothing by: as measured within one boot, else by
/// the wall clock. Nothing when the clock went backwards, so that nobody knows.
#[must_use]
pub fn elapsed_ms(from: &Stamp, to: &Stamp) -> Option<u64> {
    if from.boot == to.boot {
        measured_ms(from, to)
    } else {
        u64::try_from(i128::from(to.wall_ms) - i128::from(from.wall_ms)).ok()
    }
}

/// The day on the shop's calendar. It is as right as the wall clock; a shop that changes its clocks for the summer
/// within a job is one hour off from then on. A time that no calendar holds is the last day there is, on which no
/// calibration holds.
#[must_use]
pub fn civil_date(wall_ms: i64, utc_offset_min: i32) -> NaiveDate {
    civil_time(wall_ms, utc_offset_min).map_or(NaiveDate::MAX, |time| time.date())
}

/// Day and time by the shop's clock; nothing for a time that no calendar holds.
pub(crate) fn civil_time(wall_ms: i64, utc_offset_min: i32) -> Option<NaiveDateTime> {
    let time = DateTime::from_timestamp_millis(wall_ms)?.naive_utc();
    time.checked_add_signed(Duration::minutes(i64::from(utc_offset_min)))
}

/// The time of the shop's day as `HH:MM`, seconds cut off. It is as right as the wall clock.
pub(crate) fn time_of_day(wall_ms: i64, utc_offset_min: i32) -> String {
    let minutes = wall_ms.div_euclid(60_000).saturating_add(i64::from(utc_offset_min)).rem_euclid(24 * 60);
    format!("{:02}:{:02}", minutes / 60, minutes % 60)
}

/// A day of the calendar as `YYYY-MM-DD`. One spelling only, so that no day can be taken for a month.
pub(crate) fn day_of(text: &str) -> Option<NaiveDate> {
    text.parse::<NaiveDate>().ok().filter(|day| day.to_string() == text)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{boot, stamp};

    #[test]
    fn days_are_those_of_known_timestamps() {
        // The Unix epoch by definition; 1,000,000,000 s is 2001-09-09T01:46:40Z and 1,234,567,890 s is
        // 2009-02-13T23:31:30Z (both from memory, recomputed with GNU date).
        for (seconds, day) in
            [(0, "1970-01-01"), (1_000_000_000, "2001-09-09"), (1_234_567_890, "2009-02-13")]
        {
            assert_eq!(civil_date(seconds * 1000, 0).to_string(), day);
        }
        assert_eq!(civil_date(-1, 0).to_string(), "1969-12-31", "before the epoch the day before");
        assert_eq!(civil_date(951_782_400_000, 0).to_string(), "2000-02-29", "a leap day of a century");
    }

    #[test]
    fn the_evening_of_a_shop_west_of_greenwich_is_still_its_own_day() {
        assert_eq!(civil_date(1_000_000_000_000, -300).to_string(), "2001-09-08");
        assert_eq!(civil_date(1_234_567_890_000, 60).to_string(), "2009-02-14");
    }

    #[test]
    fn a_time_beyond_every_calendar_is_the_last_day() {
        assert_eq!(civil_date(i64::MAX, 0), NaiveDate::MAX);
        assert_eq!(civil_date(i64::MIN, 0), NaiveDate::MAX);
    }

    #[test]
    fn within_a_boot_the_monotonic_clock_counts_and_else_the_wall_clock() {
        let mut later = stamp(10);
        later.wall_ms -= 3_600_000;
        assert_eq!(elapsed_ms(&stamp(4), &later), Some(6 * MINUTE_MS), "the wall clock was set back an hour");
        let rebooted = Stamp { boot: boot(2), mono_ms: 5, ..stamp(10) };
        assert_eq!(elapsed_ms(&stamp(4), &rebooted), Some(6 * MINUTE_MS));
        assert_eq!(elapsed_ms(&rebooted, &stamp(4)), None, "backwards nobody knows");
    }

    #[test]
    fn a_clock_set_forward_within_a_boot_lets_nothing_pass() {
        let set = Stamp { wall_ms: stamp(4).wall_ms + 86_400_000, ..stamp(4) };
        assert_eq!((measured_ms(&stamp(4), &set), surely_ms(&stamp(4), &set)), (Some(0), 0));
    }

    #[test]
    fn over_a_restart_only_the_time_since_then_is_sure_and_nothing_is_measured() {
        // The tablet came up two minutes before.
        let rebooted = |minute| Stamp { boot: boot(2), mono_ms: 2 * MINUTE_MS, ..stamp(minute) };
        assert_eq!(measured_ms(&stamp(0), &rebooted(90)), None);
        assert_eq!(surely_ms(&stamp(0), &rebooted(90)), 2 * MINUTE_MS);
        assert_eq!(surely_ms(&stamp(0), &rebooted(1)), MINUTE_MS, "on a tablet that was up all along");
        assert_eq!(surely_ms(&stamp(30), &rebooted(10)), 2 * MINUTE_MS, "the wall clock went back");
    }
}
