//! Events saved by earlier versions of the program. A sample is never changed; a new format adds a file.

use panside_journal::{Event, Head, JournalError, verify_device_chain, verify_job_chain};

/// Three events of two jobs. The hashes were computed apart from this crate, with Python's hashlib over the
/// canonical bytes of the PyPI package rfc8785 0.1.4: `sha256(b"panside-event/1\0" + rfc8785.dumps(header))`.
const FORMAT_1: &str = include_str!("../samples/panside-event-1.jsonl");

const HASHES: [&str; 3] = [
    "08c5604506309736459b47a6b2cb0226b41749f6133e1ce9f71adb847ead6ac4",
    "aab7a2667f807a27b87f48f9766437a2434b1be2b319efe1585d92d8ed5de466",
    "b6b216c2a236213b6104e5b0f95a94244f2e05b357bca2b278fa569a59f26820",
];

#[test]
fn events_of_format_1_stay_readable() -> Result<(), JournalError> {
    let events = FORMAT_1.lines().map(Event::from_line).collect::<Result<Vec<_>, _>>()?;
    let hashes: Vec<String> = events.iter().map(|event| event.hash.to_string()).collect();
    assert_eq!(hashes, HASHES);
    assert_eq!(verify_device_chain(&events)?, Head { seq: 3, hash: HASHES[2].parse()? });
    let of_first_job = events.iter().filter(|event| event.header.job == events[0].header.job);
    assert_eq!(verify_job_chain(of_first_job)?, Head { seq: 2, hash: HASHES[2].parse()? });
    assert_eq!(events[0].header.kind, "job_started");
    assert_eq!(events[1].header.who.0, "Zo\u{eb} \"Z\" \u{1f600}");
    assert_eq!(events[2].body, b"{ \"temperature_mc\": 38500, \"note\": \"warm \\u2013 read twice\" }");
    Ok(())
}

#[test]
fn events_of_format_1_are_written_as_they_were() -> Result<(), JournalError> {
    for line in FORMAT_1.lines() {
        assert_eq!(Event::from_line(line)?.to_line()?, line);
    }
    Ok(())
}
