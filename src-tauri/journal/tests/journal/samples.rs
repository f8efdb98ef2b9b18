//! Events saved by earlier versions of the program. A sample is never changed; a new format adds a file.

use panside_journal::{Event, Head, JournalError, PersonId, verify_device_chain, verify_subject_chain};

/// Two events of a job and one of the shop between them. The hashes were computed apart from this crate, with Python's hashlib over the
/// canonical bytes of the PyPI package rfc8785 0.1.4: `sha256(b"panside-event/1\0" + rfc8785.dumps(header))`.
const FORMAT_1: &str = include_str!("../samples/panside-event-1.jsonl");

const HASHES: [&str; 3] = [
    "46a8fcd48d49de4ad1068274d941ee0be51853c57f7e61da3e574df1b1c2b2ef",
    "c33c7c5ce6dd9f60b601dea5b6dfbcd6047b3b21392852cb59bf3af6673113d0",
    "9d94bd80a1e71462ae4785a36a5781d1ad4000c183a942b407269b52a0866d22",
];

#[test]
fn events_of_format_1_stay_readable() -> Result<(), JournalError> {
    let events = FORMAT_1.lines().map(Event::from_line).collect::<Result<Vec<_>, _>>()?;
    let hashes: Vec<String> = events.iter().map(|event| event.hash.to_string()).collect();
    assert_eq!(hashes, HASHES);
    assert_eq!(verify_device_chain(&events)?, Head { seq: 3, hash: HASHES[2].parse()? });
    let of_job = events.iter().filter(|event| event.header.subject == events[0].header.subject);
    assert_eq!(verify_subject_chain(of_job)?, Head { seq: 2, hash: HASHES[2].parse()? });
    assert_eq!(events[0].header.kind, "started");
    assert!(events[1].header.subject.is_shop());
    assert_eq!(events[1].header.who.to_string(), "0190a0aa-0000-7000-8000-0000000000a2");
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
