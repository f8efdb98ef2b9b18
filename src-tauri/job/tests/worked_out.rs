//! How values came about is read for ever: `fixtures/worked_out.jsonl` keeps a sample of every form that was ever
//! written. A line once committed is never changed; a new form adds a line.

use std::collections::BTreeSet;

use panside_job::entry::WorkedOut;
use serde_json::Value;

const SAMPLES: &str = include_str!("fixtures/worked_out.jsonl");

fn kind_and_version(line: &str) -> (String, u64) {
    let value: Value = serde_json::from_str(line).unwrap();
    (value["kind"].as_str().unwrap().to_owned(), value["version"].as_u64().unwrap())
}

#[test]
fn every_form_is_read_and_the_newest_is_written_byte_for_byte() {
    for line in SAMPLES.lines() {
        let read: WorkedOut = serde_json::from_str(line).unwrap();
        assert!(!matches!(read, WorkedOut::Unreadable { .. }), "{line}");
        let (kind, version) = kind_and_version(line);
        if WorkedOut::KINDS.iter().any(|(of, newest)| *of == kind && u64::from(*newest) == version) {
            assert_eq!(serde_json::to_string(&read).unwrap(), line);
        }
    }
}

#[test]
fn every_kind_and_version_has_a_sample() {
    let sampled: BTreeSet<_> = SAMPLES.lines().map(kind_and_version).collect();
    for &(kind, newest) in WorkedOut::KINDS {
        for version in 1..=u64::from(newest) {
            assert!(sampled.contains(&(kind.to_owned(), version)), "{kind} {version} has no sample");
        }
    }
}

#[test]
fn what_a_newer_version_worked_out_is_kept_by_its_name() {
    for (kind, version, result) in [("balance", 2, "{}"), ("pressure", 1, "{}"), ("coil", 1, "{\"ohms\":5}")]
    {
        let text = serde_json::json!({ "kind": kind, "version": version, "result": result }).to_string();
        let read: WorkedOut = serde_json::from_str(&text).unwrap();
        assert_eq!(read, WorkedOut::Unreadable { kind: kind.to_owned(), version });
    }
}
