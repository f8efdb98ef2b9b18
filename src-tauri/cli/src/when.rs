//! When a script is walked: at the time that it was written for, or so that it ends at another.

use panside_bay::clock::{Clock, ManualClock, SystemClock, parse_time};
use panside_job::clock::civil_date;

use crate::exit::{Exit, Failure};
use crate::message::cli_no_time;
use crate::script::Script;

/// The word for the present in place of a time.
const NOW: &str = "now";

/// When a walk begins and ends, in milliseconds since 1970 UTC.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct When {
    starts_ms: i64,
    /// Nothing: it goes by the script's own time.
    ends_ms: Option<i64>,
    /// By how many days of the shop's calendar the walk is later than the script was written for. The day on which it
    /// ends counts, so that this does not depend on how many lines are walked, nor on the hour.
    pub days: i64,
}

impl When {
    /// The first lines of a script, walked until a time (RFC 3339, or `now`), or at the script's own time.
    pub fn of(script: &Script, lines: usize, until: Option<&str>) -> Result<When, Failure> {
        let written_ms = read(&script.starts_at)?;
        let ends_ms = match until {
            None => return Ok(When { starts_ms: written_ms, ends_ms: None, days: 0 }),
            Some(NOW) => SystemClock::new().now().wall_ms,
            Some(time) => read(time)?,
        };
        let takes_ms: i64 = script.lines[..lines].iter().map(|line| i64::from(line.wait_ms())).sum();
        let day = |ms| civil_date(ms, script.utc_offset_min);
        let days = day(ends_ms).signed_duration_since(day(written_ms)).num_days();
        Ok(When { starts_ms: ends_ms - takes_ms, ends_ms: Some(ends_ms), days })
    }

    /// A clock that stands at the beginning. A walk that ends within the device's present boot is of that boot, so that
    /// what it has read counts in a window that goes on from there. Any other is of a boot that follows from the script's
    /// words: one that is cut off goes on within its boot.
    pub fn clock(&self, words: &str) -> ManualClock {
        let device = SystemClock::new().now();
        let past = self.ends_ms.filter(|&ends_ms| ends_ms <= device.wall_ms);
        past.and_then(|_| ManualClock::earlier(&device, self.starts_ms))
            .unwrap_or_else(|| ManualClock::named(self.starts_ms, words))
    }
}

fn read(time: &str) -> Result<i64, Failure> {
    parse_time(time).ok_or_else(|| Failure::new(Exit::DoesNotLoad, cli_no_time(time)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Written for the morning of 2 March 2026 in a shop an hour ahead of UTC; its second line comes ten hours later.
    fn script() -> Script {
        serde_json::from_value(serde_json::json!({
            "format": crate::script::FORMAT,
            "title": "Two lines",
            "checklist": "c",
            "sheet": "s",
            "repair_order": "1",
            "label": "one",
            "starts_at": "2026-03-02T08:00:00Z",
            "utc_offset_min": 60,
            "people": {},
            "lines": [{ "do": "finish" }, { "after_min": 600.0, "do": "finish" }],
        }))
        .unwrap()
    }

    fn days(lines: usize, until: &str) -> i64 {
        When::of(&script(), lines, Some(until)).unwrap().days
    }

    #[test]
    fn calibrations_move_with_the_day_on_which_the_walk_ends_whatever_is_walked_and_at_any_hour() {
        // 2027-03-02 is 365 days after 2026-03-02: no leap day between (Gregorian calendar).
        for until in ["2027-03-01T23:00:00Z", "2027-03-02T05:58:00Z", "2027-03-02T22:59:59.999Z"] {
            assert_eq!((days(1, until), days(2, until)), (365, 365), "{until}");
        }
        // Half an hour before midnight in the shop, and half an hour after it, when it is still the day before in UTC.
        assert_eq!((days(2, "2026-12-31T22:30:00Z"), days(2, "2026-12-31T23:30:00Z")), (304, 305));
        assert_eq!((days(2, "2028-02-29T12:00:00Z"), days(2, "2028-03-01T12:00:00Z")), (729, 730));
    }

    #[test]
    fn the_last_line_that_is_walked_comes_at_the_time_that_is_asked_for() {
        let when = When::of(&script(), 2, Some("2028-02-29T00:30:00+05:45")).unwrap();
        assert_eq!(when.starts_ms, parse_time("2028-02-28T08:45:00Z").unwrap());
        assert_eq!(when.clock("words").now().wall_ms, when.starts_ms);
        assert!(When::of(&script(), 2, Some("soon")).is_err());
    }

    #[test]
    fn without_another_time_a_script_is_walked_at_its_own() {
        let when = When::of(&script(), 2, None).unwrap();
        let starts_ms = parse_time("2026-03-02T08:00:00Z").unwrap();
        assert_eq!(when, When { starts_ms, ends_ms: None, days: 0 });
        assert_eq!(
            when.clock("words").now(),
            when.clock("words").now(),
            "a walk that goes on is of the same boot"
        );
    }
}
