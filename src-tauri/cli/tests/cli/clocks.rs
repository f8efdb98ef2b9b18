//! The demo job at any hour, on any day and in any zone: its record differs in its times only, and they by one shift.

use std::process::Command;

use chrono::{DateTime, FixedOffset, NaiveDate, TimeDelta, Timelike, Utc};
use serde_json::{Value, json};

use crate::support::{Desk, json as read_json, script};

/// When the last line is walked, how many minutes the shop's clock is ahead of UTC, and the machine's own zone. The walk
/// takes 11 hours, 11 minutes and 48 seconds, so that it begins at a whole minute, and mostly on the day before.
const CASES: [(&str, i64, &str); 5] = [
    ("2026-03-02T19:11:48Z", 60, "UTC"),
    // Over the turn of the year.
    ("2027-01-01T00:30:48Z", 30, "America/Los_Angeles"),
    // Summer time begins in the machine's zone meanwhile, on 14 March 2027 at 10:00Z.
    ("2027-03-14T12:58:48Z", -480, "America/Los_Angeles"),
    // From the leap day into March by UTC; in the shop it is March from the beginning on.
    ("2028-03-01T05:58:48Z", 345, "Asia/Kathmandu"),
    // Into the leap day in the shop, while it is still the day before by UTC.
    ("2028-02-29T00:30:48+14:00", 840, "Pacific/Kiritimati"),
];

#[test]
fn the_demo_job_comes_to_the_same_record_at_any_hour_day_and_zone() {
    let today = Utc::now().with_second(48).unwrap().to_rfc3339();
    let mut first = None;
    for (until, offset_min, zone) in CASES.into_iter().chain([(today.as_str(), -570, "Asia/Kathmandu")]) {
        let record = Times::of(walked(until, offset_min, zone), offset_min).plain();
        let first = first.get_or_insert_with(|| record.clone());
        for (part, value) in record.as_object().unwrap() {
            assert!(*value == first[part], "{part}, until {until} in {zone}");
        }
    }
}

#[test]
fn a_walk_until_now_ends_by_the_device_s_own_clock() {
    let desk = Desk::new();
    let (script, store, path) = (script("demo"), desk.path("bay"), desk.path("record.json"));
    let before = Utc::now().timestamp();
    let mut program = Command::new(env!("CARGO_BIN_EXE_panside-cli"));
    program.arg("walk").arg(script).arg("--store").arg(store).arg("--record").arg(path);
    program.args(["--until", "now", "--lines", "0", "--plain-proof", "--no-text"]);
    assert!(program.output().unwrap().status.success());
    let started = time(&desk.record()["started"]["utc"]).unwrap().timestamp();
    assert!((before..=Utc::now().timestamp()).contains(&started));
}

/// The record of the demo job.
fn walked(until: &str, offset_min: i64, zone: &str) -> Value {
    let desk = Desk::new();
    let demo = script("demo");
    let mut walk = read_json(&demo);
    for file in ["checklist", "sheet"] {
        walk[file] = json!(demo.parent().unwrap().join(walk[file].as_str().unwrap()));
    }
    // Written for the same morning of a shop there.
    let offset = FixedOffset::east_opt(i32::try_from(offset_min * 60).unwrap()).unwrap();
    walk["starts_at"] = json!(format!("2026-03-02T09:00:00{offset}"));
    walk["utc_offset_min"] = json!(offset_min);
    let walk = desk.write("any-day.walk.json", serde_json::to_vec(&walk).unwrap());
    let mut program = Command::new(env!("CARGO_BIN_EXE_panside-cli"));
    program.env("TZ", zone).arg("walk").arg(walk).arg("--store").arg(desk.path("bay"));
    program.arg("--photo").arg(desk.photo()).arg("--record").arg(desk.path("record.json"));
    let output = program.args(["--until", until, "--plain-proof", "--no-text"]).output().unwrap();
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "until {until} in {zone}: {said}");
    desk.record()
}

/// A record and what its times are counted from.
struct Times {
    record: Value,
    started: DateTime<FixedOffset>,
    last_day: NaiveDate,
}

impl Times {
    fn of(record: Value, offset_min: i64) -> Times {
        let started = time(&record["started"]["local"]).unwrap();
        assert_eq!(i64::from(started.offset().local_minus_utc()), offset_min * 60);
        let ended = time(&record["end"]["by"]["utc"]).unwrap().naive_utc();
        let last_day = (ended + TimeDelta::minutes(offset_min)).date();
        Times { record, started, last_day }
    }

    /// The record with times counted from its start, days of calibration from its last day, and without what names it.
    fn plain(&self) -> Value {
        let mut plain = self.told(&self.record);
        plain["job"] = Value::Null;
        plain["journal"]["head"] = Value::Null;
        plain
    }

    fn told(&self, value: &Value) -> Value {
        match value {
            Value::Array(parts) => parts.iter().map(|part| self.told(part)).collect(),
            Value::Object(parts) => {
                parts.iter().map(|(name, part)| (name.clone(), self.named(name, part))).collect()
            }
            Value::String(text) => self.without_times(text).into(),
            other => other.clone(),
        }
    }

    fn named(&self, name: &str, value: &Value) -> Value {
        let day = || value.as_str()?.parse::<NaiveDate>().ok();
        match (name, time(value)) {
            (_, Some(time)) => (time - self.started).num_seconds().into(),
            ("calibration_due", _) => (day().unwrap() - self.last_day).num_days().into(),
            _ => self.told(value),
        }
    }

    /// A sentence with its times of day, `09:58`, or on another day `2026-03-03 00:12`, as minutes from the start.
    fn without_times(&self, text: &str) -> String {
        let is_time = |at: usize| {
            let shape = text.as_bytes().get(at..at + 5)?;
            let digits = [0, 1, 3, 4].iter().all(|&place| shape[place].is_ascii_digit());
            (digits && shape[2] == b':').then(|| &text[at..at + 5])
        };
        let Some((at, found)) = (0..text.len()).find_map(|at| Some((at, is_time(at)?))) else {
            return text.to_owned();
        };
        let minutes = |text: &str| text.parse::<i64>().unwrap();
        let started = i64::from(self.started.hour() * 60 + self.started.minute());
        let since = (minutes(&found[..2]) * 60 + minutes(&found[3..]) - started).rem_euclid(24 * 60);
        let before = &text[..at];
        let dated = before.len().checked_sub(11).and_then(|from| before.split_at_checked(from));
        let before = dated
            .filter(|(_, day)| day.trim_end().parse::<NaiveDate>().is_ok())
            .map_or(before, |(rest, _)| rest);
        format!("{before}{since} min{}", self.without_times(&text[at + 5..]))
    }
}

fn time(value: &Value) -> Option<DateTime<FixedOffset>> {
    DateTime::parse_from_rfc3339(value.as_str()?).ok()
}
