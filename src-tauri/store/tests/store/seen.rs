//! A whole folder that was set back or copied, head file and all: noticed by what is noted outside it.

use std::fs;
use std::path::Path;

use panside_store::{Options, Standing, Store, StoreError, Trouble, restore};
use tempfile::tempdir;

use crate::support::{Outcome, copy, epoch, job, label_of, options, store_with, write};

fn noted(state: &Path) -> Options {
    Options { seen: Some(state.to_owned()), ..options() }
}

/// A store with so many entries whose way is noted in `state`.
fn noted_with(dir: &Path, state: &Path, count: u64) -> Outcome {
    let mut store = Store::open(dir, noted(state))?;
    for number in 1..=count {
        write(&mut store, job(1), number)?;
    }
    Ok(store.close()?)
}

#[test]
fn a_folder_that_was_set_back_is_noticed_until_a_new_epoch_begins() -> Outcome {
    let (dir, state, old) = (tempdir()?, tempdir()?, tempdir()?);
    noted_with(dir.path(), state.path(), 3)?;
    copy(dir.path(), old.path())?;
    noted_with(dir.path(), state.path(), 5)?;
    copy(old.path(), dir.path())?;
    let mut store = Store::open(dir.path(), noted(state.path()))?;
    let [Trouble::SetBack { have, noted: newest }] = store.troubles() else {
        return Err(format!("{:?}", store.troubles()).into());
    };
    assert_eq!((have.seq, newest.seq), (3, 5));
    assert!(matches!(write(&mut store, job(1), 9), Err(StoreError::Troubled { .. })));
    store.begin_epoch(epoch(1), "set back on purpose")?;
    write(&mut store, job(1), 9)?;
    store.close()?;
    assert_eq!(*Store::open(dir.path(), noted(state.path()))?.standing(), Standing::Ready);
    let lost: i64 = rusqlite::Connection::open(dir.path().join("journal.db"))?.query_row(
        "SELECT lost_seq FROM epochs WHERE number = 2",
        [],
        |row| row.get(0),
    )?;
    assert_eq!(lost, 5, "the entries that were lost stay known");
    // Set back to before the new epoch, and to the entries before it.
    copy(old.path(), dir.path())?;
    let store = Store::open(dir.path(), noted(state.path()))?;
    assert_eq!(*store.standing(), Standing::Troubled);
    Ok(())
}

#[test]
fn a_folder_set_back_and_gone_on_with_elsewhere_is_noticed() -> Outcome {
    let (dir, state, old) = (tempdir()?, tempdir()?, tempdir()?);
    noted_with(dir.path(), state.path(), 3)?;
    copy(dir.path(), old.path())?;
    noted_with(dir.path(), state.path(), 4)?;
    let mut elsewhere = Store::open(old.path(), options())?;
    for number in 10..14 {
        write(&mut elsewhere, job(2), number)?;
    }
    elsewhere.close()?;
    copy(old.path(), dir.path())?;
    let store = Store::open(dir.path(), noted(state.path()))?;
    assert!(matches!(store.troubles(), [Trouble::HeadDiffers { .. }]), "{:?}", store.troubles());
    Ok(())
}

#[test]
fn a_copy_is_noticed_while_the_original_is_there_and_a_moved_folder_is_none() -> Outcome {
    let (place, state) = (tempdir()?, tempdir()?);
    let (bay, other) = (place.path().join("bay"), place.path().join("copy"));
    noted_with(&bay, state.path(), 3)?;
    copy(&bay, &other)?;
    let mut store = Store::open(&other, noted(state.path()))?;
    let [Trouble::Copied { original }] = store.troubles() else {
        return Err(format!("{:?}", store.troubles()).into());
    };
    assert_eq!(*original, fs::canonicalize(&bay)?);
    assert!(matches!(write(&mut store, job(1), 9), Err(StoreError::Troubled { .. })));
    drop(store);
    assert_eq!(*Store::open(&bay, noted(state.path()))?.standing(), Standing::Ready, "the original goes on");
    // Moved: the same folder under another name; or to another disk, with nothing left behind.
    let moved = place.path().join("moved");
    fs::rename(&bay, &moved)?;
    Store::open(&moved, noted(state.path()))?.close()?;
    let far = place.path().join("far");
    copy(&moved, &far)?;
    fs::remove_dir_all(&moved)?;
    fs::remove_dir_all(&other)?;
    assert_eq!(*Store::open(&far, noted(state.path()))?.standing(), Standing::Ready);
    Ok(())
}

#[test]
fn a_store_brought_from_elsewhere_asks_once_for_a_new_epoch() -> Outcome {
    let (dir, state) = (tempdir()?, tempdir()?);
    store_with(dir.path(), 3)?.close()?;
    let mut store = Store::open(dir.path(), noted(state.path()))?;
    assert!(matches!(store.troubles(), [Trouble::NotSeenHere]), "{:?}", store.troubles());
    store.go_on(epoch(1), "brought from the old tablet", &label_of)?;
    store.close()?;
    assert!(Store::open(dir.path(), noted(state.path()))?.troubles().is_empty());
    Ok(())
}

#[test]
fn where_nothing_can_be_noted_work_goes_on_and_it_is_said() -> Outcome {
    let (dir, state) = (tempdir()?, tempdir()?);
    // A file stands where the folder should be: nobody can write into it, whoever runs the test.
    let blocked = state.path().join("file");
    fs::write(&blocked, b"")?;
    let mut store = Store::open(dir.path(), noted(&blocked.join("panside")))?;
    assert!(matches!(store.troubles(), [Trouble::NotNoted { .. }]), "{:?}", store.troubles());
    write(&mut store, job(1), 1)?;
    store.close()?;
    let mut store = Store::open(dir.path(), noted(&blocked.join("panside")))?;
    assert!(matches!(store.troubles(), [Trouble::NotNoted { .. }]), "{:?}", store.troubles());
    write(&mut store, job(1), 2)?;
    Ok(())
}

#[test]
fn a_note_that_was_altered_is_not_believed_and_said() -> Outcome {
    let (dir, state) = (tempdir()?, tempdir()?);
    noted_with(dir.path(), state.path(), 3)?;
    let note = fs::read_dir(state.path())?.next().ok_or("no note")??.path();
    let text = fs::read(&note)?;
    for bit in 0..text.len() * 8 {
        // The line break at the end only ends the line.
        if bit / 8 == text.len() - 1 {
            continue;
        }
        let mut flipped = text.clone();
        flipped[bit / 8] ^= 1 << (bit % 8);
        fs::write(&note, flipped)?;
        // Only read, so that the note stays: a store that is opened for writing renews it.
        let store = Store::open(dir.path(), noted(state.path()))?;
        assert!(matches!(store.troubles(), [Trouble::NotNoted { .. }]), "bit {bit}: {:?}", store.troubles());
        if bit > 200 {
            break;
        }
    }
    assert!(Store::open(dir.path(), noted(state.path()))?.troubles().is_empty(), "renewed at opening");
    Ok(())
}

#[test]
fn a_killed_program_leaves_a_note_that_is_behind_and_never_ahead() -> Outcome {
    let (dir, state) = (tempdir()?, tempdir()?);
    let mut store = Store::open(dir.path(), noted(state.path()))?;
    for number in 1..=100 {
        write(&mut store, job(1), number)?;
    }
    // Dropped without closing, as a kill would leave it.
    drop(store);
    assert!(Store::open(dir.path(), noted(state.path()))?.troubles().is_empty());
    Ok(())
}

#[test]
fn a_restored_backup_is_the_folder_that_counts_from_then_on() -> Outcome {
    let (place, state, to) = (tempdir()?, tempdir()?, tempdir()?);
    let bay = place.path().join("bay");
    let mut store = Store::open(&bay, noted(state.path()))?;
    write(&mut store, job(1), 1)?;
    let made = store.backing().run(to.path(), 3, 0)?;
    write(&mut store, job(1), 2)?;
    store.close()?;
    let options = Options { epoch: epoch(1), ..noted(state.path()) };
    let back = restore(&made.path, &bay, options, ("back to the morning", 0), &label_of)?;
    let store = Store::open(&bay, noted(state.path()))?;
    assert!(store.troubles().is_empty(), "{:?}", store.troubles());
    store.close()?;
    // The one that was moved aside is the copy now.
    let aside = back.moved_to.ok_or("nothing was moved aside")?;
    let store = Store::open(&aside, noted(state.path()))?;
    assert_eq!(*store.standing(), Standing::Troubled);
    assert!(store.troubles().iter().any(|t| matches!(t, Trouble::Copied { .. })), "{:?}", store.troubles());
    Ok(())
}
