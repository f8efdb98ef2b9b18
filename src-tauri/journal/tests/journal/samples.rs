//! Events saved by earlier versions of the program. A sample is never changed; a new format adds a file.

use panside_journal::{Event, Head, JournalError, verify_device_chain, verify_subject_chain};

/// Two events of a job and one of the shop between them. The hashes were computed apart from this crate, with Python's hashlib over the
/// canonical bytes of the PyPI package rfc8785 0.1.4: `sha256(b"panside-event/1\0" + rfc8785.dumps(header))`.
const FORMAT_1: &str = include_str!("../samples/panside-event-1.jsonl");

const HASHES: [&str; 3] = [
    "0386d7887a9567683eabc963baa259b3df8607e53c8abd57850d7caded96a2c2",
    "034c58a326bc17d933cf5d5d99766a1d87addac6355443e62ac1de29e4e86a87",
    "5213481e070b9acc79db39650be310d331a4c0f57fbaf995b3be70894e5a6f3d",
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
