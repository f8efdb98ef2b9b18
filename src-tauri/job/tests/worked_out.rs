//! How values came about is read for ever: `fixtures/worked_out.jsonl` keeps a sample of every form that was ever
//! written. A line once committed is never changed; a new form adds a line.

use std::collections::BTreeSet;

use panside_job::entry::WorkedOut;
use serde_json::Value;

type Result<T = ()> = std::result::Result<T, Box<dyn std::error::Error>>;

const SAMPLES: &str = include_str!("fixtures/worked_out.jsonl");

fn kind_and_version(line: &str) -> Result<(String, u64)> {
    let value: Value = serde_json::from_str(line)?;
    let kind = value["kind"].as_str().ok_or("no kind")?;
    Ok((kind.to_owned(), value["version"].as_u64().ok_or("no version")?))
}

#[test]
fn every_form_is_read_and_the_newest_is_written_byte_for_byte() -> Result {
    for line in SAMPLES.lines() {
        let read: WorkedOut = serde_json::from_str(line)?;
        assert!(!matches!(read, WorkedOut::Unreadable { .. }), "{line}");
        let (kind, version) = kind_and_version(line)?;
        if WorkedOut::KINDS.iter().any(|(of, newest)| *of == kind && u64::from(*newest) == version) {
            assert_eq!(serde_json::to_string(&read)?, line);
        }
    }
    Ok(())
}

#[test]
fn every_kind_and_version_has_a_sample() -> Result {
    let sampled = SAMPLES.lines().map(kind_and_version).collect::<Result<BTreeSet<_>>>()?;
    for &(kind, newest) in WorkedOut::KINDS {
        for version in 1..=u64::from(newest) {
            assert!(sampled.contains(&(kind.to_owned(), version)), "{kind} {version} has no sample");
        }
    }
    Ok(())
}

#[test]
fn what_a_newer_version_worked_out_is_kept_by_its_name() -> Result {
    for (kind, version, result) in [("balance", 2, "{}"), ("pressure", 1, "{}"), ("coil", 1, "{\"ohms\":5}")]
    {
        let text = serde_json::json!({ "kind": kind, "version": version, "result": result }).to_string();
        let read: WorkedOut = serde_json::from_str(&text)?;
        assert_eq!(read, WorkedOut::Unreadable { kind: kind.to_owned(), version });
    }
    Ok(())
}
