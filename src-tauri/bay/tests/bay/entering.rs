//! Entering commands.

use panside_bay::BayError;
use panside_bay::enter::{Answer, Command, EntryValue, Event, new_request};
use panside_bay::record::{Extent, Pages};

use crate::support::{Shop, begin, made, technician};

#[test]
fn what_is_entered_is_there_after_a_restart() {
    let mut shop = Shop::new();
    let job = shop.start();
    shop.enter(job, &made("key_out"));
    shop.enter(job, &made("raise"));
    let before = shop.bay.job(job).unwrap().state;
    let mut shop = shop.restarted();
    assert_eq!(shop.bay.job(job).unwrap().state, before);
    assert_eq!(shop.events(job), 3);
    assert!(shop.bay.check().unwrap().troubles.is_empty());
}

#[test]
fn a_command_sent_twice_is_written_once_and_answered_as_before() {
    let mut shop = Shop::new();
    let job = shop.start();
    let (head, request) = (shop.bay.head(job).unwrap(), new_request());
    let first = shop.bay.enter(job, head, request, &technician(), &made("key_out")).unwrap();
    let Answer::Entered { head: after, already: false, .. } = first else { panic!("{first:?}") };
    // The second try comes with the head as it was then, and even after the job has moved on.
    shop.enter(job, &made("raise"));
    let second = shop.bay.enter(job, head, request, &technician(), &made("key_out")).unwrap();
    let Answer::Entered { head: again, events, already: true } = second else { panic!("{second:?}") };
    assert_eq!(again, after);
    assert!(matches!(events.as_slice(), [Event::VehicleAction(done)] if done.action == "key_out"));
    assert_eq!(shop.events(job), 3);
}

#[test]
fn a_command_made_on_an_old_view_is_refused_as_stale() {
    let mut shop = Shop::new();
    let job = shop.start();
    let old = shop.bay.head(job).unwrap();
    shop.enter(job, &made("key_out"));
    let stale = shop.bay.enter(job, old, new_request(), &technician(), &made("raise"));
    assert!(matches!(stale, Err(BayError::Stale { .. })));
    assert_eq!(shop.events(job), 2);
}

#[test]
fn a_refusal_says_what_would_meet_it_and_writes_nothing() {
    let mut shop = Shop::new();
    let job = shop.start();
    let refusal = shop.refused(job, &made("raise"));
    let said = refusal.said_by(shop.bay.speaker());
    assert!(said.to_lowercase().contains("key"), "{said}");
    assert_eq!(shop.events(job), 1);
}

#[test]
fn a_step_in_a_closed_phase_is_refused_by_the_step_that_is_open() {
    let mut shop = Shop::new();
    let job = shop.start();
    let refusal = shop.refused(job, &begin("drain"));
    assert_eq!(refusal.message.id, "refused-phase");
}

#[test]
fn the_list_of_jobs_made_anew_is_the_list_that_was_there() {
    let mut shop = Shop::new();
    let job = shop.start();
    shop.enter(job, &made("key_out"));
    let before = shop.bay.jobs().unwrap();
    shop.bay.rebuild().unwrap();
    assert_eq!(shop.bay.jobs().unwrap(), before);
    assert_eq!(before[0].events, 2);
}

#[test]
fn a_photo_is_kept_by_its_hash_and_a_broken_one_is_not_kept() {
    let mut shop = Shop::new();
    let job = shop.start();
    let picture =
        image::RgbImage::from_fn(640, 480, |x, y| image::Rgb([x.to_le_bytes()[0], y.to_le_bytes()[0], 90]));
    let mut bytes = std::io::Cursor::new(Vec::new());
    picture.write_to(&mut bytes, image::ImageFormat::Jpeg).unwrap();
    let bytes = bytes.into_inner();
    let value = shop.bay.add_photo(job, &bytes).unwrap();
    let EntryValue::Photo { hash, width, height } = &value else { panic!("{value:?}") };
    assert_eq!((hash.len(), *width, *height), (64, 640, 480));
    let half = shop.bay.add_photo(job, &bytes[..bytes.len() / 2]);
    assert!(matches!(half, Err(BayError::Photo(_))), "{half:?}");
    assert!(matches!(shop.bay.add_photo(job, b""), Err(BayError::Photo(_))));
    assert_eq!(shop.bay.check().unwrap().photos, 1);
}

#[test]
fn a_photo_that_no_entry_names_is_swept_and_one_that_an_entry_names_stays() {
    let mut shop = Shop::new();
    let job = shop.start();
    let picture = |shade: u8| {
        let mut bytes = std::io::Cursor::new(Vec::new());
        image::RgbImage::from_pixel(600, 400, image::Rgb([shade, 90, 40]))
            .write_to(&mut bytes, image::ImageFormat::Png)
            .unwrap();
        bytes.into_inner()
    };
    let named = shop.bay.add_photo(job, &picture(10)).unwrap();
    shop.bay.add_photo(job, &picture(200)).unwrap();
    let entries = [("routing".to_owned(), named)].into();
    shop.enter(
        job,
        &Command::Work { step: "photo".to_owned(), entries, signatures: Vec::new(), later: false },
    );
    assert!(shop.bay.sweep().unwrap().files > 0);
    assert_eq!(shop.bay.check().unwrap().photos, 1);
    assert!(shop.bay.check().unwrap().troubles.is_empty());
    assert_eq!(shop.bay.sweep().unwrap().files, 0, "the second time there is nothing to take away");
}

#[test]
fn what_is_typed_and_not_done_survives_a_restart() {
    let mut shop = Shop::new();
    let job = shop.start();
    shop.bay.put_draft(job, "intake/identify/odometer", "148,2").unwrap();
    let shop = shop.restarted();
    assert_eq!(shop.bay.drafts(job).unwrap()["intake/identify/odometer"], "148,2");
}

#[test]
fn the_view_says_its_messages_in_words() {
    let mut shop = Shop::new();
    let job = shop.start();
    let view = shop.bay.view(job).unwrap();
    let raise = view.vehicle_actions.iter().find(|made| made.id == "raise").unwrap();
    let refusal = raise.refusal.as_ref().unwrap();
    assert!(!refusal.message.text.is_empty());
    shop.enter(job, &made("key_out"));
    let view = shop.bay.view(job).unwrap();
    assert!(view.vehicle_actions.iter().find(|made| made.id == "raise").unwrap().refusal.is_none());
}

#[test]
fn the_record_of_a_job_that_goes_on_says_what_is_missing() {
    let mut shop = Shop::new();
    let job = shop.start();
    let document = shop.bay.record(job).unwrap();
    let json: serde_json::Value = serde_json::from_slice(&document.to_json().unwrap()).unwrap();
    assert!(!json["missing"].as_array().unwrap().is_empty());
    assert!(
        shop.bay
            .record_text(&document, Pages::Record(Extent::File))
            .contains("demo values, not for a vehicle")
    );
}
