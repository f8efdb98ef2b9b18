//! Old events are read for ever: `fixtures/events.jsonl` keeps a sample of every form that was ever written. A line
//! once committed is never changed; a new form adds a line.

use std::collections::{BTreeMap, BTreeSet};

use panside_shop::ShopEvent;
use panside_shop::event::JobError;

/// Kind, version and the body's bytes of each sample.
fn samples() -> Vec<(String, u32, String)> {
    let parts = |line: &str| {
        let [kind, version, body] = line.splitn(3, ' ').collect::<Vec<_>>().try_into().unwrap();
        (kind.to_owned(), version.parse().unwrap(), body.to_owned())
    };
    include_str!("../fixtures/events.jsonl").lines().map(parts).collect()
}

#[test]
fn every_form_is_read_and_the_newest_is_written_byte_for_byte() {
    let newest: BTreeMap<&str, u32> = ShopEvent::KINDS.iter().copied().collect();
    for (kind, version, body) in samples() {
        let event = ShopEvent::from_body(&kind, version, body.as_bytes()).unwrap();
        assert_eq!(event.kind(), kind);
        if newest.get(kind.as_str()) == Some(&version) {
            assert_eq!(String::from_utf8(event.to_body().unwrap().2).unwrap(), body);
        }
    }
}

#[test]
fn every_kind_and_version_has_a_sample() {
    let sampled: BTreeSet<_> = samples().into_iter().map(|(kind, version, _)| (kind, version)).collect();
    for &(kind, newest) in ShopEvent::KINDS {
        for version in 1..=newest {
            assert!(sampled.contains(&(kind.to_owned(), version)), "{kind} {version} has no sample");
        }
    }
}

#[test]
fn what_a_newer_version_wrote_is_named_and_not_guessed() {
    let newer = ShopEvent::from_body("tool_removed", 2, b"{}");
    assert!(matches!(newer, Err(JobError::VersionUnknown { kind: "tool_removed", version: 2, newest: 1 })));
    let of_a_job = ShopEvent::from_body("begun", 1, br#"{"step":"drain"}"#);
    assert!(matches!(of_a_job, Err(JobError::KindUnknown { kind }) if kind == "begun"));
}

#[test]
fn a_body_with_a_field_too_many_or_too_few_is_refused() {
    let id = "00000000-0000-0000-0000-000000000001";
    for body in [
        format!(r#"{{"id":"{id}"}}"#),
        format!(r#"{{"id":"{id}","from":[],"pin":"1234"}}"#),
        r#"{"id":"1","from":[]}"#.to_owned(),
    ] {
        let read = ShopEvent::from_body("tool_removed", 1, body.as_bytes());
        assert!(matches!(read, Err(JobError::Body { kind: "tool_removed", version: 1, .. })), "{body}");
    }
}

#[test]
fn an_event_of_a_pin_has_no_room_for_the_pin() {
    let lines = samples().into_iter().filter(|(kind, ..)| kind == "pin_set");
    for (_, _, body) in lines {
        let fields: BTreeMap<String, serde_json::Value> = serde_json::from_str(&body).unwrap();
        assert_eq!(fields.keys().collect::<Vec<_>>(), ["from", "how", "person"]);
    }
}
