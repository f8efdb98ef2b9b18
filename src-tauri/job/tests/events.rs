//! Old events are read for ever: `fixtures/events.jsonl` keeps a sample of every form that was ever written. From the
//! first release on a line is never changed; a new form adds a line.

use std::collections::{BTreeMap, BTreeSet};

use panside_job::{Event, JobError};

type Result<T = ()> = std::result::Result<T, Box<dyn std::error::Error>>;

/// Kind, version and the body's bytes of each sample.
fn samples() -> Result<Vec<(String, u32, String)>> {
    let lines = include_str!("fixtures/events.jsonl").lines();
    lines
        .map(|line| {
            let mut parts = line.splitn(3, ' ');
            let mut part = || parts.next().ok_or(format!("a sample is kind, version and body: {line}"));
            Ok((part()?.to_owned(), part()?.parse()?, part()?.to_owned()))
        })
        .collect()
}

#[test]
fn every_form_that_was_ever_written_is_read() -> Result {
    for (kind, version, body) in samples()? {
        let event =
            Event::from_body(&kind, version, body.as_bytes()).map_err(|error| format!("{error}: {body}"))?;
        assert_eq!(event.kind(), kind);
    }
    Ok(())
}

#[test]
fn what_is_written_now_is_byte_for_byte_what_was_written() -> Result {
    let newest: BTreeMap<&str, u32> = Event::KINDS.iter().copied().collect();
    for (kind, version, body) in samples()? {
        if newest.get(kind.as_str()) == Some(&version) {
            let (_, _, bytes) = Event::from_body(&kind, version, body.as_bytes())?.to_body()?;
            assert_eq!(String::from_utf8(bytes)?, body);
        }
    }
    Ok(())
}

#[test]
fn every_kind_and_version_has_a_sample() -> Result {
    let sampled: BTreeSet<(String, u32)> =
        samples()?.into_iter().map(|(kind, version, _)| (kind, version)).collect();
    for &(kind, newest) in Event::KINDS {
        for version in 1..=newest {
            assert!(sampled.contains(&(kind.to_owned(), version)), "{kind} {version} has no sample");
        }
    }
    Ok(())
}

#[test]
fn no_event_has_a_number_with_a_fraction() -> Result {
    fn has_float(value: &serde_json::Value) -> bool {
        match value {
            serde_json::Value::Number(number) => number.is_f64(),
            serde_json::Value::Array(values) => values.iter().any(has_float),
            serde_json::Value::Object(fields) => fields.values().any(has_float),
            _ => false,
        }
    }
    for (_, _, body) in samples()? {
        assert!(!has_float(&serde_json::from_str(&body)?), "{body}");
    }
    Ok(())
}

#[test]
fn what_a_newer_version_wrote_is_named_and_not_guessed() {
    let newer = Event::from_body("begun", 2, br#"{"step":"drain"}"#);
    assert!(matches!(newer, Err(JobError::VersionUnknown { kind: "begun", version: 2, newest: 1 })));
    let unknown = Event::from_body("teleported", 1, b"{}");
    assert!(matches!(unknown, Err(JobError::KindUnknown { kind }) if kind == "teleported"));
}

#[test]
fn a_body_with_a_field_too_many_or_too_few_is_refused() {
    for body in ["{}", r#"{"step":"drain","by":"Ada"}"#, "", r#""drain""#] {
        let read = Event::from_body("begun", 1, body.as_bytes());
        assert!(matches!(read, Err(JobError::Body { kind: "begun", version: 1, .. })), "{body}");
    }
}
