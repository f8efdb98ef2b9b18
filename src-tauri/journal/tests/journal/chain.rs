//! What sealing refuses, and what verifying finds: every change of any part of any event, by name.

use panside_journal::{
    Chain, DeviceId, Draft, Event, Format, Head, JobId, JournalError, Subject, check_event, seal,
    verify_device_chain, verify_subject_chain,
};
use uuid::Uuid;

use crate::{Pen, event_id, job, origin};

/// Six events of two jobs, in turn.
fn two_jobs() -> Result<Pen, JournalError> {
    let mut pen = Pen::new();
    for number in 0..6 {
        pen.write(job(number % 2), &format!("{{\"value\": {number}}}"))?;
    }
    Ok(pen)
}

fn of_job(pen: &Pen, number: u128) -> Vec<Event> {
    pen.events.iter().filter(|event| event.header.subject == job(number)).cloned().collect()
}

fn head_of(event: &Event) -> Head {
    Head { seq: event.header.device_seq, hash: event.hash }
}

#[test]
fn a_devices_chain_verifies_and_gives_its_head() -> Result<(), JournalError> {
    let pen = two_jobs()?;
    assert_eq!(verify_device_chain(&pen.events)?, head_of(&pen.events[5]));
    assert_eq!(verify_device_chain(&[])?, Head::NONE);
    Ok(())
}

#[test]
fn a_jobs_extract_verifies_without_the_other_jobs() -> Result<(), JournalError> {
    let pen = two_jobs()?;
    let extract = of_job(&pen, 1);
    assert_eq!(verify_subject_chain(&extract)?, Head { seq: 3, hash: extract[2].hash });
    Ok(())
}

#[test]
fn a_new_epoch_goes_on_in_the_same_chain() -> Result<(), JournalError> {
    let mut pen = two_jobs()?;
    pen.epoch.0 = Uuid::from_u128(0xE1);
    pen.write(job(0), "{}")?;
    assert_eq!(verify_device_chain(&pen.events)?.seq, 7);
    assert_eq!(pen.events[6].header.prev_device, pen.events[5].hash);
    Ok(())
}

#[test]
fn every_header_field_is_covered_by_the_hash() -> Result<(), JournalError> {
    let whole = two_jobs()?.events.remove(3);
    let other = Uuid::from_u128(0xFFFF);
    let changes: [fn(&mut Event, Uuid); 17] = [
        |e, _| e.header.body_hash.0[0] ^= 1,
        |e, u| e.header.boot.0 = u,
        |e, u| e.header.device.0 = u,
        |e, _| e.header.device_seq += 1,
        |e, u| e.header.epoch.0 = u,
        |e, u| e.header.id.0 = u,
        |e, _| e.header.kind.push('x'),
        |e, _| e.header.mono_ms += 1,
        |e, _| e.header.prev_device.0[31] ^= 128,
        |e, _| e.header.prev_subject.0[0] ^= 1,
        |e, u| e.header.request.0 = u,
        |e, _| e.header.request_hash.0[7] ^= 1,
        |e, u| e.header.subject = Subject::Job(JobId(u)),
        |e, _| e.header.subject_seq += 1,
        |e, _| e.header.version += 1,
        |e, _| e.header.wall_ms -= 1,
        |e, u| e.header.who.0 = u,
    ];
    for (number, change) in changes.iter().enumerate() {
        let mut event = whole.clone();
        change(&mut event, other);
        let error = check_event(&event.header, &event.body, &event.hash).unwrap_err();
        assert!(matches!(error, JournalError::HashDiffers { .. }), "change {number}: {error}");
    }
    let mut event = whole;
    event.header.format = Format(2);
    let error = check_event(&event.header, &event.body, &event.hash).unwrap_err();
    assert!(matches!(error, JournalError::FormatUnknown { found: Format(2), .. }));
    Ok(())
}

#[test]
fn an_altered_body_is_found_by_name_even_when_it_means_the_same() -> Result<(), JournalError> {
    let mut pen = two_jobs()?;
    pen.events[2].body = b"{\"value\":2}".to_vec();
    let error = verify_device_chain(&pen.events).unwrap_err();
    assert!(
        matches!(error, JournalError::BodyAltered { event } if event == pen.events[2].header.id),
        "{error}"
    );
    Ok(())
}

#[test]
fn an_event_taken_out_leaves_a_gap() -> Result<(), JournalError> {
    let mut pen = two_jobs()?;
    pen.events.remove(2);
    let error = verify_device_chain(&pen.events).unwrap_err();
    assert!(matches!(error, JournalError::SequenceGap { expected: 3, found: 4, .. }), "{error}");
    let error = verify_subject_chain(&of_job(&pen, 0)).unwrap_err();
    assert!(matches!(error, JournalError::SequenceGap { expected: 2, found: 3, .. }), "{error}");
    Ok(())
}

#[test]
fn two_events_that_changed_places_are_found() -> Result<(), JournalError> {
    let mut pen = two_jobs()?;
    pen.events.swap(1, 2);
    let error = verify_device_chain(&pen.events).unwrap_err();
    assert!(matches!(error, JournalError::SequenceGap { expected: 2, found: 3, .. }), "{error}");
    Ok(())
}

#[test]
fn an_event_sealed_anew_does_not_fit_the_one_after_it() -> Result<(), JournalError> {
    let mut pen = two_jobs()?;
    let after = pen.events.split_off(3);
    let old = pen.events.remove(2);
    let draft =
        Draft { id: old.header.id, kind: "reading".into(), version: 1, body: b"{\"value\": 9}".to_vec() };
    let forged = seal(&draft, &pen.place(job(0)), &origin(3))?;
    pen.events.push(forged);
    pen.events.extend(after);
    let error = verify_device_chain(&pen.events).unwrap_err();
    assert!(
        matches!(error, JournalError::PreviousDiffers { event, .. } if event == pen.events[3].header.id),
        "{error}"
    );
    Ok(())
}

/// The limit that the crate's documentation states: the witness is the head, not the chain.
#[test]
fn a_cut_tail_still_verifies_but_gives_another_head() -> Result<(), JournalError> {
    let pen = two_jobs()?;
    let cut = verify_device_chain(&pen.events[..4])?;
    assert_ne!(cut, verify_device_chain(&pen.events)?);
    Ok(())
}

#[test]
fn strangers_in_a_chain_are_named() -> Result<(), JournalError> {
    let pen = two_jobs()?;
    let error = verify_subject_chain(&pen.events).unwrap_err();
    assert!(matches!(error, JournalError::OtherSubject { .. }), "{error}");
    let mut guest = Pen::new();
    guest.device.0 = Uuid::from_u128(0xD1);
    guest.events = pen.events[..1].to_vec();
    guest.write(job(0), "{}")?;
    let error = verify_device_chain(&guest.events).unwrap_err();
    assert!(matches!(error, JournalError::OtherDevice { .. }), "{error}");
    // The same two events are a good chain of the job: a job moves between devices.
    assert_eq!(verify_subject_chain(&guest.events)?.seq, 2);
    Ok(())
}

#[test]
fn a_draft_that_cannot_be_kept_is_refused() {
    let pen = Pen::new();
    let good = Draft { id: event_id(1), kind: "reading".into(), version: 1, body: b"{}".to_vec() };
    let sealed = |draft: &Draft| seal(draft, &pen.place(job(0)), &origin(1));
    assert!(sealed(&good).is_ok());
    let bad_bodies: [&[u8]; 8] =
        [b"", b" {}", b"{}\n", b"{\"a\":\n1}", b"{} {}", b"{\"a\":}", b"\"\xff\"", b"nul"];
    for body in bad_bodies {
        let refused = sealed(&Draft { body: body.to_vec(), ..good.clone() });
        assert!(matches!(refused, Err(JournalError::Body { .. })), "{}", String::from_utf8_lossy(body));
    }
    let mut random = good.clone();
    random.id.0 = Uuid::from_u128(7);
    assert!(matches!(sealed(&random), Err(JournalError::Id { .. })));
    let nameless = Draft { kind: String::new(), ..good };
    assert!(matches!(sealed(&nameless), Err(JournalError::Empty { .. })));
}

#[test]
fn a_line_carries_the_body_byte_for_byte() -> Result<(), JournalError> {
    let mut pen = Pen::new();
    pen.write(job(0), "{ \"b\" : 1.50e1,\t\"a\":\"\\u00e9\u{e9}\", \"b\": 2 }")?;
    let line = pen.events[0].to_line()?;
    assert!(!line.contains('\n'));
    let back = Event::from_line(&line)?;
    assert_eq!(back, pen.events[0]);
    assert_eq!(verify_subject_chain(&[back])?.seq, 1);
    Ok(())
}

#[test]
fn nothing_rides_along_in_a_line_unhashed() -> Result<(), JournalError> {
    let mut pen = Pen::new();
    pen.write(job(0), "{}")?;
    let line = pen.events[0].to_line()?;
    for more in [
        line.replacen("{\"header\":{", "{\"header\":{\"note\":1,", 1),
        line.replacen("{\"header\":{", "{\"note\":1,\"header\":{", 1),
        line.replacen("\"body\":{}", "\"body\":{},\"body\":{}", 1),
    ] {
        assert_ne!(more, line);
        assert!(matches!(Event::from_line(&more), Err(JournalError::Line { .. })), "{more}");
    }
    let newer = line.replacen("panside-event/1", "panside-event/2", 1);
    assert!(matches!(Event::from_line(&newer), Err(JournalError::FormatUnknown { found: Format(2), .. })));
    let padded = line.replacen("panside-event/1", "panside-event/01", 1);
    assert!(matches!(Event::from_line(&padded), Err(JournalError::Line { .. })));
    Ok(())
}

#[test]
fn a_bit_flipped_anywhere_in_a_line_is_noticed() -> Result<(), JournalError> {
    let mut pen = Pen::new();
    pen.write(job(0), "{\"value\":471}")?;
    let line = pen.events[0].to_line()?.into_bytes();
    for place in 0..line.len() * 8 {
        let mut flipped = line.clone();
        flipped[place / 8] ^= 1 << (place % 8);
        let Ok(text) = std::str::from_utf8(&flipped) else { continue };
        if let Ok(event) = Event::from_line(text) {
            assert!(verify_device_chain(&[event]).is_err(), "bit {place}: {text}");
        }
    }
    Ok(())
}

#[test]
fn the_shops_events_stand_in_a_chain_of_their_own_beside_the_jobs() -> Result<(), JournalError> {
    let mut pen = two_jobs()?;
    let shop = Subject::Shop(pen.device);
    pen.write(shop, "{\"who\":1}")?;
    pen.write(job(0), "{}")?;
    pen.write(shop, "{\"who\":2}")?;
    let of_shop: Vec<Event> =
        pen.events.iter().filter(|event| event.header.subject == shop).cloned().collect();
    assert_eq!(verify_subject_chain(&of_shop)?.seq, 2);
    assert_eq!(verify_device_chain(&pen.events)?.seq, 9);
    Ok(())
}

#[test]
fn a_device_writes_no_shop_event_for_another() -> Result<(), JournalError> {
    let mut pen = Pen::new();
    pen.write(Subject::Shop(DeviceId(Uuid::from_u128(0xD7))), "{}")?;
    let error = verify_device_chain(&pen.events).unwrap_err();
    assert!(matches!(error, JournalError::ShopOfOther { .. }), "{error}");
    Ok(())
}

#[test]
fn a_chain_goes_on_from_a_head_that_is_known() -> Result<(), JournalError> {
    let pen = two_jobs()?;
    let (before, after) = pen.events.split_at(4);
    let mut chain = Chain::of_device_from(pen.device, verify_device_chain(before)?);
    let mut about = Chain::of_subject_from(job(0), verify_subject_chain(&of_job(&pen, 0)[..2])?);
    for event in after {
        chain.link(&event.header, &event.hash)?;
    }
    about.link(&after[0].header, &after[0].hash)?;
    assert_eq!((chain.head().seq, about.head().seq), (6, 3));
    let mut wrong =
        Chain::of_device_from(pen.device, Head { hash: pen.events[0].hash, ..head_of(&before[3]) });
    assert!(matches!(
        wrong.link(&after[0].header, &after[0].hash),
        Err(JournalError::PreviousDiffers { .. })
    ));
    let mut stranger = Chain::of_device_from(DeviceId(Uuid::from_u128(0xD7)), head_of(&before[3]));
    assert!(matches!(stranger.link(&after[0].header, &after[0].hash), Err(JournalError::OtherDevice { .. })));
    Ok(())
}
