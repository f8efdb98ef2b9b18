//! Lost tails, copies, and going on in a new epoch.

use std::fs;

use panside_journal::{Hash, Head, verify_device_chain};
use panside_store::{Standing, Store, StoreError, Trouble};
use tempfile::tempdir;

use crate::support::{Outcome, all_events, copy, epoch, job, meaning_of, options, store_with, write};

#[test]
fn a_lost_tail_is_said_and_nothing_is_written_until_a_new_epoch_begins() -> Outcome {
    let (dir, backup) = (tempdir()?, tempdir()?);
    let mut store = store_with(dir.path(), 5)?;
    copy(dir.path(), backup.path())?;
    let lost = write(&mut store, job(1), 6)?;
    write(&mut store, job(1), 7)?;
    let newest = store.device_head();
    store.close()?;
    // The database of the backup beside the head file of today.
    fs::copy(dir.path().join("journal.head"), backup.path().join("journal.head"))?;
    let mut store = Store::open(backup.path(), options())?;
    assert_eq!(*store.standing(), Standing::Troubled);
    let [Trouble::TailLost { have, named }] = store.troubles() else {
        return Err(format!("{:?}", store.troubles()).into());
    };
    assert_eq!((have.seq, *named), (5, newest));
    assert_eq!(all_events(&store)?.len(), 5, "what is there can be read");
    assert!(matches!(write(&mut store, job(1), 8), Err(StoreError::Troubled { .. })));
    assert!(matches!(store.put_draft(job(1), "k", "t"), Err(StoreError::Troubled { .. })));

    store.begin_epoch(epoch(1), "restored from the backup of the evening before")?;
    assert!(store.troubles().is_empty());
    let anew = write(&mut store, job(1), 9)?;
    assert_ne!(anew.head, lost.head);
    let events = all_events(&store)?;
    let (before, after) = (&events[4], &events[5]);
    assert_eq!(after.header.device_seq, 6);
    assert_eq!((before.header.epoch, after.header.epoch), (epoch(0), epoch(1)));
    assert_eq!(after.header.prev_device, before.hash, "the new epoch names the old head");
    verify_device_chain(&events)?;
    store.close()?;
    let kept = rusqlite::Connection::open(backup.path().join("journal.db"))?.query_row(
        "SELECT from_seq, lost_seq, lost_hash FROM epochs WHERE number = 2",
        [],
        |row| Ok((row.get::<_, i64>(0)?, row.get::<_, i64>(1)?, row.get::<_, [u8; 32]>(2)?)),
    )?;
    assert_eq!(kept, (5, 7, newest.hash.0), "the lost head stays known");
    let store = Store::open(backup.path(), options())?;
    assert_eq!((store.standing(), store.epoch()), (&Standing::Ready, epoch(1)));
    assert!(store.check(&meaning_of)?.troubles.is_empty());
    Ok(())
}

#[test]
fn a_database_copied_without_its_head_file_asks_for_a_new_epoch() -> Outcome {
    let (dir, copied) = (tempdir()?, tempdir()?);
    store_with(dir.path(), 2)?.close()?;
    for head_file in [None, Some(b"scribble".to_vec())] {
        copy(dir.path(), copied.path())?;
        match &head_file {
            Some(bytes) => fs::write(copied.path().join("journal.head"), bytes)?,
            None => fs::remove_file(copied.path().join("journal.head"))?,
        }
        let mut store = Store::open(copied.path(), options())?;
        let said = store.troubles();
        match head_file {
            None => assert!(matches!(said, [Trouble::HeadFileMissing]), "{said:?}"),
            Some(_) => assert!(matches!(said, [Trouble::HeadFileUnreadable]), "{said:?}"),
        }
        assert!(write(&mut store, job(1), 3).is_err());
        store.begin_epoch(epoch(1), "copied")?;
        write(&mut store, job(1), 3)?;
        store.close()?;
        assert_eq!(*Store::open(copied.path(), options())?.standing(), Standing::Ready);
    }
    Ok(())
}

#[test]
fn a_journal_that_went_another_way_is_not_taken_for_the_right_one() -> Outcome {
    let (one, two) = (tempdir()?, tempdir()?);
    let store = store_with(one.path(), 2)?;
    store.close()?;
    copy(one.path(), two.path())?;
    for (dir, count) in [(one.path(), 3), (two.path(), 4)] {
        let mut store = Store::open(dir, options())?;
        for number in 0..count {
            write(&mut store, job(1), 10 * count + number)?;
        }
        store.close()?;
    }
    fs::copy(one.path().join("journal.head"), two.path().join("journal.head"))?;
    let store = Store::open(two.path(), options())?;
    assert!(matches!(store.troubles(), [Trouble::HeadDiffers { named: Head { seq: 5, .. } }]));
    assert_eq!(*store.standing(), Standing::Troubled);
    Ok(())
}

#[test]
fn a_kill_between_commit_and_head_file_is_no_trouble() -> Outcome {
    let dir = tempdir()?;
    let mut store = store_with(dir.path(), 3)?;
    let before = fs::read(dir.path().join("journal.head"))?;
    let last = write(&mut store, job(1), 4)?;
    drop(store);
    fs::write(dir.path().join("journal.head"), before)?;
    let mut store = Store::open(dir.path(), options())?;
    assert_eq!(*store.standing(), Standing::Ready);
    assert_eq!(store.head(job(1))?, last.head);
    assert_eq!(write(&mut store, job(1), 4)?.head, last.head, "the request is answered as before");
    Ok(())
}

#[test]
fn a_lost_epoch_is_said() -> Outcome {
    let (dir, backup) = (tempdir()?, tempdir()?);
    let mut store = store_with(dir.path(), 2)?;
    copy(dir.path(), backup.path())?;
    store.begin_epoch(epoch(1), "a new epoch without events yet")?;
    store.close()?;
    fs::copy(dir.path().join("journal.head"), backup.path().join("journal.head"))?;
    let store = Store::open(backup.path(), options())?;
    assert!(matches!(store.troubles(), [Trouble::EpochLost]));
    Ok(())
}

#[test]
fn an_epoch_is_begun_once() -> Outcome {
    let dir = tempdir()?;
    let mut store = store_with(dir.path(), 1)?;
    for number in 1..4 {
        store.begin_epoch(epoch(number), "again")?;
    }
    assert!(matches!(store.begin_epoch(epoch(2), "again"), Err(StoreError::EpochUsed)));
    write(&mut store, job(1), 2)?;
    store.close()?;
    let store = Store::open(dir.path(), options())?;
    assert_eq!((store.standing(), store.epoch()), (&Standing::Ready, epoch(3)));
    Ok(())
}

#[test]
fn a_broken_chain_is_not_mended_by_a_new_epoch() -> Outcome {
    let dir = tempdir()?;
    store_with(dir.path(), 5)?.close()?;
    rusqlite::Connection::open(dir.path().join("journal.db"))?
        .execute("UPDATE events SET who = zeroblob(16) WHERE device_seq = 3", [])?;
    let mut store = Store::open(dir.path(), options())?;
    assert!(matches!(store.troubles(), [Trouble::Chain(_)]), "{:?}", store.troubles());
    assert!(matches!(store.begin_epoch(epoch(1), "no"), Err(StoreError::Troubled { .. })));
    let of_others = store.events(job(2))?;
    assert_eq!(of_others.len(), 2, "jobs that hold can be read");
    assert!(matches!(store.events(job(0)), Err(StoreError::Journal(_))));
    assert_eq!(store.readable(job(0))?.events.len(), 0);
    assert_ne!(of_others[0].hash, Hash::NONE);
    Ok(())
}

#[test]
fn an_event_in_an_epoch_that_was_not_begun_there_is_found() -> Outcome {
    let dir = tempdir()?;
    let mut store = store_with(dir.path(), 2)?;
    store.begin_epoch(epoch(1), "a new one")?;
    write(&mut store, job(1), 3)?;
    store.close()?;
    for (damage, at) in [("SET from_seq = 1", 2), ("SET epoch = zeroblob(16)", 3)] {
        let copied = tempdir()?;
        copy(dir.path(), copied.path())?;
        rusqlite::Connection::open(copied.path().join("journal.db"))?
            .execute(&format!("UPDATE epochs {damage} WHERE number = 2"), [])?;
        let store = Store::open(copied.path(), options())?;
        let said = store.troubles();
        assert!(matches!(said, [Trouble::EpochDiffers { device_seq }] if *device_seq == at), "{said:?}");
        assert_eq!(*store.standing(), Standing::Troubled);
    }
    Ok(())
}
