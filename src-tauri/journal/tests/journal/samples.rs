//! Events saved by earlier versions of the program. A sample is never changed; a new format adds a file.

use panside_journal::{Event, Head, JournalError, PersonId, verify_device_chain, verify_job_chain};

/// Three events of two jobs. The hashes were computed apart from this crate, with Python's hashlib over the
/// canonical bytes of the PyPI package rfc8785 0.1.4: `sha256(b"panside-event/1\0" + rfc8785.dumps(header))`.
const FORMAT_1: &str = include_str!("../samples/panside-event-1.jsonl");

const HASHES: [&str; 3] = [
    "adc5fb60ce891292a967c5441b58c0ab35f5a53c1621caf177734ac64cb8a615",
    "1eb26e21a87aa63c325e888356408ae89f7533fe997bb4b491cd3b47524b72c7",
    "13cf364f23c0f99c6aa8ce4398573af94ef3da2b36c62ad2b91740b7a4159641",
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
    assert_eq!(events[1].header.who.to_string(), "0190a000-0000-4000-8000-0000000000a2");
    assert_eq!(events[2].header.who, PersonId::TABLET);
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
