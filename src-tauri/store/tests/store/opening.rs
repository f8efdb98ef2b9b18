//! What is refused at opening and left untouched, byte for byte; a full store.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use panside_store::{Standing, Store, StoreError};
use rusqlite::Connection;
use rusqlite::config::DbConfig;
use tempfile::tempdir;

use crate::support::{Outcome, all_events, epoch, job, options, store_with, write};

/// Every file of a folder with its bytes.
fn bytes_of(dir: &Path) -> std::io::Result<BTreeMap<String, Vec<u8>>> {
    let mut files = BTreeMap::new();
    for entry in fs::read_dir(dir)? {
        let entry = entry?;
        files.insert(entry.file_name().to_string_lossy().into_owned(), fs::read(entry.path())?);
    }
    Ok(files)
}

/// Makes the store one of a later version.
fn make_newer(dir: &Path, min_reader: u32, leave_in_log: bool) -> Outcome {
    let conn = Connection::open(dir.join("journal.db"))?;
    conn.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, leave_in_log)?;
    conn.execute("UPDATE meta SET min_reader = ?1", [min_reader])?;
    conn.pragma_update(None, "user_version", 99)?;
    conn.close().map_err(|(_, error)| error)?;
    Ok(())
}

#[test]
fn a_store_of_a_newer_format_is_refused_and_not_touched() -> Outcome {
    for leave_in_log in [false, true] {
        let dir = tempdir()?;
        store_with(dir.path(), 3)?.close()?;
        make_newer(dir.path(), 99, leave_in_log)?;
        let before = bytes_of(dir.path())?;
        for opened in [Store::open(dir.path(), options()), Store::open_read_only(dir.path())] {
            assert!(matches!(opened, Err(StoreError::Newer { found: 99, known: 1, .. })), "{opened:?}");
        }
        let mut after = bytes_of(dir.path())?;
        // SQLite's index of the log is memory, not data; it may be made for reading the log.
        after.remove("journal.db-shm");
        let mut before = before;
        before.remove("journal.db-shm");
        assert!(after == before, "left in the log: {leave_in_log}");
    }
    Ok(())
}

#[test]
fn a_newer_store_that_allows_it_is_read_and_not_written() -> Outcome {
    let dir = tempdir()?;
    store_with(dir.path(), 3)?.close()?;
    make_newer(dir.path(), 1, false)?;
    let mut store = Store::open(dir.path(), options())?;
    assert_eq!(*store.standing(), Standing::ReadOnly);
    assert_eq!(all_events(&store)?.len(), 3);
    assert!(matches!(write(&mut store, job(0), 4), Err(StoreError::ReadOnly)));
    Ok(())
}

#[test]
fn an_older_store_is_not_read_without_bringing_it_up_to_date() -> Outcome {
    let dir = tempdir()?;
    store_with(dir.path(), 1)?.close()?;
    Connection::open(dir.path().join("journal.db"))?.pragma_update(None, "user_version", 0)?;
    assert!(matches!(Store::open_read_only(dir.path()), Err(StoreError::Older { .. })));
    Ok(())
}

#[test]
fn a_file_that_is_not_a_store_is_refused_and_not_touched() -> Outcome {
    let foreign = tempdir()?;
    let made = foreign.path().join("journal.db");
    Connection::open(&made)?.execute_batch("CREATE TABLE notes (text); INSERT INTO notes VALUES ('mine')")?;
    let other_database = fs::read(&made)?;
    for content in [Vec::new(), b"a letter".to_vec(), vec![0; 4096], other_database] {
        let dir = tempdir()?;
        fs::write(dir.path().join("journal.db"), &content)?;
        for opened in [Store::open(dir.path(), options()), Store::open_read_only(dir.path())] {
            assert!(matches!(opened, Err(StoreError::NotAStore { .. })), "{opened:?}");
        }
        assert_eq!(bytes_of(dir.path())?, BTreeMap::from([("journal.db".to_owned(), content)]));
    }
    Ok(())
}

#[test]
fn a_store_that_is_open_is_locked_for_writing_and_readable_beside() -> Outcome {
    let dir = tempdir()?;
    let mut store = store_with(dir.path(), 3)?;
    let second = Store::open(dir.path(), options());
    assert!(matches!(second, Err(StoreError::Locked { .. })), "{second:?}");
    let mut reader = Store::open_read_only(dir.path())?;
    write(&mut store, job(1), 4)?;
    assert_eq!(all_events(&reader)?.len(), 4, "a reader sees what was written since");
    assert!(matches!(write(&mut reader, job(1), 5), Err(StoreError::ReadOnly)));
    assert!(matches!(reader.begin_epoch(epoch(1), "no"), Err(StoreError::ReadOnly)));
    store.close()?;
    assert_eq!(*Store::open(dir.path(), options())?.standing(), Standing::Ready);
    Ok(())
}

#[test]
fn a_lost_database_is_not_replaced_by_an_empty_one() -> Outcome {
    let dir = tempdir()?;
    store_with(dir.path(), 3)?.close()?;
    fs::remove_file(dir.path().join("journal.db"))?;
    for opened in [Store::open(dir.path(), options()), Store::open_read_only(dir.path())] {
        assert!(matches!(opened, Err(StoreError::DatabaseGone { .. })), "{opened:?}");
    }
    assert!(!dir.path().join("journal.db").exists());
    Ok(())
}

#[test]
fn reading_makes_no_store() -> Outcome {
    let dir = tempdir()?;
    assert!(matches!(Store::open_read_only(dir.path()), Err(StoreError::NoStore { .. })));
    assert!(bytes_of(dir.path())?.is_empty());
    Ok(())
}

#[test]
fn a_store_half_made_when_the_power_went_is_made_anew() -> Outcome {
    let dir = tempdir()?;
    for name in ["journal.db.part", "journal.db.part-wal", "journal.db.part-journal"] {
        fs::write(dir.path().join(name), b"half")?;
    }
    let store = store_with(&dir.path().join("."), 2)?;
    assert_eq!(all_events(&store)?.len(), 2);
    assert!(!dir.path().join("journal.db.part").exists());
    Ok(())
}

#[test]
fn a_folder_with_odd_characters_holds_a_store_too() -> Outcome {
    let dir = tempdir()?;
    let odd = dir.path().join("bay 1?#50% \u{e9}").join("deep");
    store_with(&odd, 2)?.close()?;
    assert!(odd.join("journal.db").exists());
    assert_eq!(all_events(&Store::open(&odd, options())?)?.len(), 2);
    assert_eq!(all_events(&Store::open_read_only(&odd)?)?.len(), 2);
    Ok(())
}

#[test]
fn a_full_store_refuses_with_the_reason_and_stays_readable() -> Outcome {
    let dir = tempdir()?;
    let mut small = options();
    small.max_pages = Some(40);
    let mut store = Store::open(dir.path(), small)?;
    let mut saved = 0;
    let full = loop {
        match write(&mut store, job(1), saved + 1) {
            Ok(_) => saved += 1,
            Err(error) => break error,
        }
    };
    assert!(matches!(full, StoreError::DiskFull { .. }), "{full}");
    assert!(saved > 10, "only {saved} entries fit");
    assert_eq!(*store.standing(), Standing::Ready);
    assert_eq!(store.events(job(1))?.len() as u64, saved);
    assert!(matches!(write(&mut store, job(1), saved + 1), Err(StoreError::DiskFull { .. })));
    store.close()?;
    let mut store = Store::open(dir.path(), options())?;
    assert!(store.troubles().is_empty());
    assert_eq!(store.events(job(1))?.len() as u64, saved);
    assert_eq!(write(&mut store, job(1), saved + 1)?.last_seq, saved + 1);
    Ok(())
}
