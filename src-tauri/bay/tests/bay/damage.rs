//! A store that is damaged: what can be read is shown and said to be damaged, and nothing is added to it.

use std::collections::BTreeMap;
use std::sync::Arc;

use panside_bay::enter::{Command, EntryValue, Hash, JobId, new_request};
use panside_bay::record::{Extent, Pages};
use panside_bay::{Bay, BayError};
use rusqlite::Connection;

use crate::support::{Shop, begin, made, technician};

/// Closes the shop, changes its database behind its back, and opens it as the window does.
fn damaged(shop: Shop, change: &str) -> Shop {
    let Shop { dir, clock, bay } = shop;
    bay.close().unwrap();
    let conn = Connection::open(dir.path().join("journal.db")).unwrap();
    conn.execute_batch(change).unwrap();
    conn.close().unwrap();
    let bay = Bay::open_at_once(dir.path(), Box::new(Arc::clone(&clock)), None).unwrap();
    Shop { dir, clock, bay }
}

fn stopped_job() -> (Shop, JobId) {
    let mut shop = Shop::new();
    let job = shop.start();
    shop.enter(job, &made("key_out"));
    shop.enter(job, &Command::Stop { reason: "the customer takes it back".to_owned() });
    (shop, job)
}

#[test]
fn a_stopped_job_that_lost_its_end_is_shown_as_damaged_and_takes_no_entry() {
    let (shop, job) = stopped_job();
    let mut shop = damaged(shop, "DELETE FROM events WHERE kind = 'stopped'");
    let head = shop.bay.head(job).unwrap();
    let observed = Command::Observe {
        condition: "fluid".to_owned(),
        value: "drained".to_owned(),
        reason: "it is empty".to_owned(),
    };
    let refused = shop.bay.enter(job, head, new_request(), &technician(), &observed);
    assert!(matches!(refused, Err(BayError::Store(_))), "{refused:?}");
    let record = shop.bay.record(job).unwrap();
    assert!(record.damaged.iter().any(|said| said.contains("not all there")), "{:?}", record.damaged);
    let text = shop.bay.record_text(&record, Pages::Record(Extent::File));
    assert!(text.contains("as far as the damaged data can be read"));
    assert!(shop.bay.troubles().iter().any(|said| said.contains("not all there")));
}

#[test]
fn a_damaged_job_lets_the_others_be_read_and_nothing_be_written() {
    let (mut shop, job) = stopped_job();
    let other = shop.start();
    let mut shop = damaged(shop, "UPDATE events SET wall_ms = wall_ms + 1 WHERE kind = 'vehicle_action'");
    let view = shop.bay.view(job).unwrap();
    assert!(!view.steps.is_empty(), "what holds can be looked at");
    assert_eq!(shop.events(other), 1);
    let head = shop.bay.head(other).unwrap();
    let refused = shop.bay.enter(other, head, new_request(), &technician(), &made("key_out"));
    assert!(matches!(refused, Err(BayError::Store(_))), "{refused:?}");
}

#[test]
fn a_damaged_list_of_jobs_is_made_anew_and_said_and_keeps_nobody_from_working() {
    let (shop, job) = stopped_job();
    let listed = shop.bay.jobs().unwrap();
    let mut shop = damaged(shop, "UPDATE heads SET label = '{}'");
    assert_eq!(shop.bay.jobs().unwrap(), listed);
    assert!(shop.bay.troubles()[0].contains("made anew from the journal"), "{:?}", shop.bay.troubles());
    let other = shop.start();
    assert_ne!(other, job);
    let shop = shop.restarted();
    assert!(shop.bay.troubles().is_empty(), "it is said once");
}

#[test]
fn an_entry_that_names_a_photo_which_is_not_kept_is_not_taken() {
    let mut shop = Shop::new();
    let job = shop.start();
    shop.enter(job, &made("key_out"));
    let photo = |hash: String| EntryValue::Photo { hash, width: 640, height: 480 };
    for value in [photo(Hash::of(b"made up").to_string()), photo("no hash".to_owned())] {
        let head = shop.bay.head(job).unwrap();
        let entries = BTreeMap::from([("routing".to_owned(), value)]);
        let command =
            Command::Work { step: "photo".to_owned(), entries, signatures: Vec::new(), later: false };
        let refused = shop.bay.enter(job, head, new_request(), &technician(), &command);
        assert!(matches!(refused, Err(BayError::PhotoNotKept)), "{refused:?}");
    }
}

#[test]
fn a_check_holds_entries_against_documents_and_photos() {
    let mut shop = Shop::new();
    let job = shop.start();
    let mut bytes = std::io::Cursor::new(Vec::new());
    let picture = image::RgbImage::from_pixel(600, 400, image::Rgb([10, 90, 40]));
    picture.write_to(&mut bytes, image::ImageFormat::Png).unwrap();
    let photo = shop.bay.add_photo(job, &bytes.into_inner()).unwrap();
    let entries = BTreeMap::from([("routing".to_owned(), photo)]);
    shop.enter(
        job,
        &Command::Work { step: "photo".to_owned(), entries, signatures: Vec::new(), later: false },
    );
    assert!(shop.bay.check().unwrap().troubles.is_empty());
    let mut shop = damaged(shop, "DELETE FROM photos; DELETE FROM documents WHERE kind = 'checklist'");
    let found: Vec<String> = shop.bay.check().unwrap().troubles.iter().map(ToString::to_string).collect();
    assert!(found.iter().any(|said| said.contains("is not kept in this store")), "{found:?}");
    assert!(found.iter().any(|said| said.starts_with("Document")), "{found:?}");
    assert!(shop.bay.view(job).is_err(), "without its checklist a job can't be shown");
    assert!(matches!(shop.bay.job(job), Err(BayError::Store(_))));
    // Whoever begins anew is not kept from it.
    let other = shop.start();
    shop.enter(other, &begin("photo"));
}
