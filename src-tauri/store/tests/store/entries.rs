//! Writing once, in order, and not on a stale head; what is kept beside the journal.

use panside_journal::{Head, Request};
use panside_store::{Entry, Options, Standing, Store, StoreError, Trouble, Verify};
use tempfile::tempdir;

use crate::support::{
    Outcome, all_events, draft, job, label_of, meaning_of, options, origin, request, store_with, write,
};

#[test]
fn an_entry_is_there_after_closing_and_opening() -> Outcome {
    let dir = tempdir()?;
    let store = store_with(dir.path(), 5)?;
    let written = all_events(&store)?;
    store.close()?;
    let store = Store::open(dir.path(), options())?;
    assert_eq!(*store.standing(), Standing::Ready);
    assert!(store.troubles().is_empty());
    assert_eq!(all_events(&store)?, written);
    assert_eq!(written.len(), 5);
    assert_eq!(store.device_head(), Head { seq: 5, hash: written[4].hash });
    Ok(())
}

#[test]
fn the_events_of_one_entry_stand_together_in_order() -> Outcome {
    let dir = tempdir()?;
    let mut store = Store::open(dir.path(), options())?;
    let drafts = [draft("{\"a\": 1}"), draft("{\"a\":2}"), draft("{\"a\":3}")];
    let origin = origin(1);
    let entry = Entry {
        subject: job(1).into(),
        expected: Head::NONE,
        origin: &origin,
        drafts: &drafts,
        label: "{\"x\":1}",
    };
    let appended = store.append(&entry)?;
    assert_eq!((appended.first_seq, appended.last_seq, appended.already), (1, 3, false));
    let events = store.events(job(1))?;
    let bodies: Vec<_> = events.iter().map(|event| event.body.as_slice()).collect();
    assert_eq!(bodies, [b"{\"a\": 1}".as_slice(), b"{\"a\":2}", b"{\"a\":3}"]);
    assert_eq!(store.head(job(1))?, appended.head);
    let rows = store.jobs()?;
    assert_eq!((rows.len(), rows[0].head, rows[0].label.as_str()), (1, appended.head, "{\"x\":1}"));
    Ok(())
}

#[test]
fn the_same_request_twice_is_written_once_and_answered_as_before() -> Outcome {
    let dir = tempdir()?;
    let mut store = Store::open(dir.path(), options())?;
    let drafts = [draft("{}"), draft("{}")];
    let origin = origin(1);
    let entry =
        Entry { subject: job(1).into(), expected: Head::NONE, origin: &origin, drafts: &drafts, label: "{}" };
    let first = store.append(&entry)?;
    write(&mut store, job(1), 2)?;
    // The head has moved on, and a second try would lead to other events.
    let other = [draft("{\"other\":1}")];
    let again = store.append(&Entry { drafts: &other, ..entry })?;
    assert!(again.already);
    assert_eq!((again.head, again.first_seq, again.last_seq), (first.head, 1, 2));
    assert_eq!(store.answered(job(1), &request(1))?, Some(again));
    assert_eq!(store.answered(job(1), &request(9))?, None);
    assert_eq!(store.events(job(1))?.len(), 3);
    store.close()?;
    let mut store = Store::open(dir.path(), options())?;
    assert_eq!(store.append(&entry)?, again);
    Ok(())
}

#[test]
fn a_request_id_used_for_another_command_is_refused() -> Outcome {
    let dir = tempdir()?;
    let mut store = store_with(dir.path(), 1)?;
    let mut other = origin(1);
    other.request = Request { hash: request(2).hash, ..request(1) };
    let drafts = [draft("{}")];
    let expected = store.head(job(1))?;
    for (job, origin) in [(job(1), &other), (job(2), &origin(1))] {
        let refused =
            store.append(&Entry { subject: job.into(), expected, origin, drafts: &drafts, label: "{}" });
        assert!(matches!(refused, Err(StoreError::RequestReused { .. })), "{refused:?}");
        assert!(store.answered(job, &origin.request).is_err());
    }
    assert_eq!(all_events(&store)?.len(), 1);
    assert_eq!(*store.standing(), Standing::Ready);
    Ok(())
}

#[test]
fn a_stale_head_is_refused_with_the_real_one() -> Outcome {
    let dir = tempdir()?;
    let mut store = Store::open(dir.path(), options())?;
    let seen = write(&mut store, job(1), 1)?.head;
    let real = write(&mut store, job(1), 2)?.head;
    let (drafts, origin) = ([draft("{}")], origin(3));
    let stale = store.append(&Entry {
        subject: job(1).into(),
        expected: seen,
        origin: &origin,
        drafts: &drafts,
        label: "{}",
    });
    assert!(
        matches!(stale, Err(StoreError::Stale { head, expected, .. }) if head == real && expected == seen)
    );
    assert_eq!(store.head(job(1))?, real);
    write(&mut store, job(1), 4)?;
    Ok(())
}

#[test]
fn an_entry_with_one_bad_event_writes_none() -> Outcome {
    let dir = tempdir()?;
    let mut store = Store::open(dir.path(), options())?;
    let origin = origin(1);
    let entry =
        |drafts| Entry { subject: job(1).into(), expected: Head::NONE, origin: &origin, drafts, label: "{}" };
    assert!(matches!(store.append(&entry(&[])), Err(StoreError::Nothing)));
    let bad = [draft("{}"), draft("not json")];
    assert!(matches!(store.append(&entry(&bad)), Err(StoreError::Journal(_))));
    let mut twice = [draft("{}"), draft("{}")];
    twice[1].id = twice[0].id;
    assert!(matches!(store.append(&entry(&twice)), Err(StoreError::Sql { .. })));
    assert!(store.events(job(1))?.is_empty() && store.jobs()?.is_empty());
    assert_eq!(*store.standing(), Standing::Ready);
    assert_eq!(write(&mut store, job(1), 1)?.last_seq, 1);
    Ok(())
}

#[test]
fn the_list_of_jobs_rebuilt_from_the_events_is_the_same() -> Outcome {
    let dir = tempdir()?;
    let mut store = store_with(dir.path(), 20)?;
    let listed = store.jobs()?;
    assert_eq!(listed.len(), 3);
    store.rebuild(&label_of)?;
    assert_eq!(store.jobs()?, listed);
    Ok(())
}

#[test]
fn a_wrong_list_of_jobs_is_found_and_mended_by_rebuilding() -> Outcome {
    let dir = tempdir()?;
    let store = store_with(dir.path(), 9)?;
    let listed = store.jobs()?;
    store.close()?;
    for damage in [
        "DELETE FROM heads WHERE subject = x'00000000000000000000000000000001'",
        "UPDATE heads SET head_hash = zeroblob(32)",
        "INSERT INTO heads VALUES (0, x'00000000000000000000000000000099', 1, zeroblob(32), '{}', zeroblob(32))",
        "UPDATE heads SET label = '{}'",
    ] {
        rusqlite::Connection::open(dir.path().join("journal.db"))?.execute(damage, [])?;
        let marked = Store::open(dir.path(), Options { verify: Verify::Marked, ..options() })?;
        assert!(
            marked.troubles().iter().any(Trouble::ends_with_rebuild),
            "{damage}: {:?}",
            marked.troubles()
        );
        drop(marked);
        let mut store = Store::open(dir.path(), options())?;
        assert!(!store.troubles().is_empty(), "{damage}");
        assert!(write(&mut store, job(1), 10).is_err(), "{damage}: nothing is written on a wrong list");
        assert!(!store.check(&meaning_of)?.troubles.is_empty(), "{damage}");
        store.rebuild(&label_of)?;
        assert_eq!(store.jobs()?, listed, "{damage}");
        assert!(store.check(&meaning_of)?.troubles.is_empty() && store.troubles().is_empty());
        store.close()?;
    }
    Ok(())
}

#[test]
fn documents_are_kept_once_under_their_hash() -> Outcome {
    let dir = tempdir()?;
    let mut store = Store::open(dir.path(), options())?;
    let hash = store.put_document("checklist", b"{\"demo\":1}")?;
    // SHA-256 of {"demo":1} by Python hashlib.
    assert_eq!(hash.to_string(), "7bc67da0a840d5b934fc9ae4c1fce166e998677f1dcbd5bf1c6f1cd960b2924c");
    assert_eq!(store.put_document("checklist", b"{\"demo\":1}")?, hash);
    let other_kind = store.put_document("sheet", b"{\"demo\":1}");
    assert!(matches!(other_kind, Err(StoreError::DocumentKind { .. })));
    let document = store.document(&hash)?;
    assert_eq!(
        (document.kind.as_str(), document.bytes.as_slice()),
        ("checklist", b"{\"demo\":1}".as_slice())
    );
    let unknown = store.document(&request(1).hash);
    assert!(matches!(unknown, Err(StoreError::DocumentMissing { .. })));
    store.close()?;
    rusqlite::Connection::open(dir.path().join("journal.db"))?
        .execute("UPDATE documents SET bytes = x'00'", [])?;
    let store = Store::open(dir.path(), options())?;
    assert!(matches!(store.document(&hash), Err(StoreError::DocumentAltered { .. })));
    assert_eq!(store.check(&meaning_of)?.troubles.len(), 1);
    Ok(())
}

#[test]
fn drafts_survive_a_restart_and_leave_the_journal_alone() -> Outcome {
    let dir = tempdir()?;
    let mut store = store_with(dir.path(), 1)?;
    store.put_draft(job(1), "level", "47")?;
    store.put_draft(job(1), "level", "47.1")?;
    store.put_draft(job(2), "level", "3")?;
    drop(store);
    let mut store = Store::open(dir.path(), options())?;
    assert_eq!(store.draft(job(1), "level")?.as_deref(), Some("47.1"));
    assert_eq!(store.drafts(job(1))?.len(), 1);
    store.clear_draft(job(1), "level")?;
    assert_eq!(store.draft(job(1), "level")?, None);
    assert_eq!(store.draft(job(2), "level")?.as_deref(), Some("3"));
    assert_eq!(store.device_head().seq, 1);
    Ok(())
}

#[test]
fn the_log_is_carried_over_while_writing_and_stays_small() -> Outcome {
    let dir = tempdir()?;
    let mut few = options();
    few.checkpoint_every = 10;
    let mut store = Store::open(dir.path(), few)?;
    let log = dir.path().join("journal.db-wal");
    for number in 1..=11 {
        write(&mut store, job(1), number)?;
    }
    let early = std::fs::metadata(&log)?.len();
    for number in 12..=100 {
        write(&mut store, job(1), number)?;
    }
    assert!(std::fs::metadata(&log)?.len() <= early * 2, "the log grows without end");
    store.close()?;
    assert_eq!(std::fs::metadata(&log).map_or(0, |log| log.len()), 0, "a closed store is whole in its files");
    Ok(())
}
