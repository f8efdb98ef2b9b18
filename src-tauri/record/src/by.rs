//! Who did something and when, as a record writes it.

use chrono::{DateTime, FixedOffset, SecondsFormat};
use panside_job::Mark;
use panside_journal::Stamp;
use serde::{Deserialize, Serialize};

use crate::messages;
use crate::speak::Say;

/// One event of the journal: its number, who made it, and when by the wall clock.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct By {
    /// Number of the event in the job.
    pub seq: u64,
    /// Who, as they were called then.
    pub who: String,
    /// When, as UTC, ISO 8601.
    pub utc: String,
    /// The same moment by the shop's clock, ISO 8601 with its offset.
    pub local: String,
}

impl By {
    pub(crate) fn of(mark: &Mark, utc_offset_min: i32, say: &Say<'_>) -> By {
        By {
            seq: mark.seq,
            who: mark.name.clone(),
            utc: iso(&mark.stamp, 0, say),
            local: iso(&mark.stamp, utc_offset_min, say),
        }
    }

    /// Day and time by the shop's clock, the time to the minute. A time that no calendar holds is all day.
    #[must_use]
    pub fn day_time(&self) -> (&str, &str) {
        parts(&self.local).unwrap_or((&self.local, ""))
    }

    /// Both in one text.
    pub(crate) fn day_and_time(&self, say: &Say<'_>) -> String {
        minutes_of(&self.local, say)
    }

    /// The same, and who.
    pub(crate) fn when_and_who(&self, say: &Say<'_>) -> String {
        say.within(&messages::when_who(self.day_and_time(say), &self.who))
    }

    /// Time by the shop's clock, to the minute; with its day where that is another than the day of `earlier`.
    pub(crate) fn time_after(&self, earlier: &By, say: &Say<'_>) -> String {
        match (parts(&self.local), parts(&earlier.local)) {
            (Some((day, time)), Some((before, _))) if day == before => time.to_owned(),
            _ => self.day_and_time(say),
        }
    }
}

/// Day and time of an ISO 8601 text, to the minute.
pub(crate) fn minutes_of(iso: &str, say: &Say<'_>) -> String {
    parts(iso).map_or_else(|| iso.to_owned(), |(day, time)| say.within(&messages::day_time(day, time)))
}

/// Day and time of an ISO 8601 text, the time to the minute; nothing where it is none.
fn parts(iso: &str) -> Option<(&str, &str)> {
    DateTime::parse_from_rfc3339(iso).ok()?;
    Some((iso.get(..10)?, iso.get(11..16)?))
}

/// A stamp's wall time as ISO 8601, to the second. A time that no calendar holds is told as the number it is.
pub(crate) fn iso(stamp: &Stamp, utc_offset_min: i32, say: &Say<'_>) -> String {
    let offset = utc_offset_min.checked_mul(60).and_then(FixedOffset::east_opt);
    match (DateTime::from_timestamp_millis(stamp.wall_ms), offset) {
        (Some(time), Some(offset)) if offset.local_minus_utc() != 0 => {
            time.with_timezone(&offset).to_rfc3339_opts(SecondsFormat::Secs, false)
        }
        (Some(time), _) => time.to_rfc3339_opts(SecondsFormat::Secs, true),
        (None, _) => say.within(&messages::in_no_calendar(stamp.wall_ms.to_string())),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use panside_journal::{BootId, PersonId};
    use panside_messages::Speaker;
    use uuid::Uuid;

    fn stamp(wall_ms: i64) -> Stamp {
        Stamp { wall_ms, mono_ms: 0, boot: BootId(Uuid::nil()) }
    }

    #[test]
    fn a_time_is_told_in_utc_and_by_the_shops_clock() {
        // 1,234,567,890 s is 2009-02-13T23:31:30Z, as GNU date gives it.
        let (moment, say) = (stamp(1_234_567_890_000), &Say::by(Speaker::english()));
        assert_eq!(iso(&moment, 0, say), "2009-02-13T23:31:30Z");
        assert_eq!(iso(&moment, 60, say), "2009-02-14T00:31:30+01:00");
        assert_eq!(iso(&moment, -570, say), "2009-02-13T14:01:30-09:30");
    }

    #[test]
    fn a_time_names_its_day_where_that_is_another() {
        let say = &Say::by(Speaker::english());
        let by = |seconds: i64| {
            let (stamp, who) = (stamp(seconds * 1000), PersonId(Uuid::nil()));
            let mark = Mark { seq: 1, stamp, who, name: "Ada".into() };
            By::of(&mark, 60, say)
        };
        // 22:31:30Z and 23:31:30Z of one day: by a clock an hour ahead the second is the next day.
        let (evening, night) = (by(1_234_564_290), by(1_234_567_890));
        assert_eq!(evening.day_time(), ("2009-02-13", "23:31"));
        assert_eq!(evening.time_after(&evening, say), "23:31");
        assert_eq!(night.time_after(&evening, say), "2009-02-14 00:31");
    }

    #[test]
    fn a_time_that_no_calendar_holds_and_an_offset_that_no_place_has_are_still_told() {
        let say = &Say::by(Speaker::english());
        let said = format!("{} ms after 1970 UTC", i64::MAX);
        assert_eq!(iso(&stamp(i64::MAX), 60, say), said);
        assert_eq!(iso(&stamp(0), i32::MAX, say), "1970-01-01T00:00:00Z");
        let mark = Mark { seq: 1, stamp: stamp(i64::MAX), who: PersonId(Uuid::nil()), name: "Ada".into() };
        assert_eq!(By::of(&mark, 60, say).day_time(), (said.as_str(), ""));
    }
}
