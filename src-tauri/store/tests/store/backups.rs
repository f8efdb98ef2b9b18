//! Backups made beside the work, restored with a new epoch, and what a restored one lacks.

use std::fs;
use std::path::Path;
use std::thread;

use panside_journal::JobId;
use panside_store::{
    BackedUp, NewPhoto, Options, PhotoFormat, Restored, Standing, Store, StoreError, Trouble, backups,
    outlook, restore, verify_backup,
};
use tempfile::tempdir;

use crate::support::{Outcome, all_events, epoch, job, label_of, meaning_of, options, store_with, write};

/// 30 November 2026, 08:15:00 UTC, as `date -u -d @1796026500` says it.
const MORNING: i64 = 1_796_026_500_000;
const HOUR: i64 = 3_600_000;

fn photo(store: &mut Store, job: JobId, bytes: &[u8]) -> Result<(), StoreError> {
    let format = PhotoFormat::Jpeg;
    let photo = NewPhoto { job, format, bytes, thumbnail: &bytes[..2], width: 4, height: 3 };
    store.put_photo(&photo).map(drop)
}

fn back_up(store: &Store, to: &Path, hour: i64) -> Result<BackedUp, StoreError> {
    store.backing().run(to, 3, MORNING + hour * HOUR)
}

fn restored(from: &Path, into: &Path) -> Result<Restored, StoreError> {
    let options = Options { epoch: epoch(7), ..options() };
    restore(from, into, options, ("the tablet fell", MORNING + 30 * HOUR), &label_of)
}

/// Every file below a folder with its bytes, but the locks and what SQLite shares between processes.
fn files(dir: &Path) -> std::io::Result<Vec<(String, Vec<u8>)>> {
    let mut found = Vec::new();
    for entry in fs::read_dir(dir)? {
        let path = entry?.path();
        if path.is_dir() {
            found.extend(files(&path)?);
        } else if path.file_name().is_none_or(|name| name != "lock" && name != "journal.db-shm") {
            found.push((path.to_string_lossy().into_owned(), fs::read(&path)?));
        }
    }
    found.sort();
    Ok(found)
}

#[test]
fn a_backup_is_a_store_of_its_own_with_its_photos_beside_it() -> Outcome {
    let (dir, to) = (tempdir()?, tempdir()?);
    let mut store = store_with(dir.path(), 6)?;
    photo(&mut store, job(1), b"the pan's debris")?;
    let document = store.put_document("checklist", b"{}")?;
    let made = back_up(&store, to.path(), 0)?;
    assert!(made.path.ends_with("2026-11-30T081500Z-6"), "{}", made.path.display());
    assert_eq!((made.manifest.head, made.manifest.events), (store.device_head(), 6));
    assert_eq!((made.copied, made.manifest.photos.len(), made.lacks.len()), (1, 1, 0));
    let (manifest, report) = verify_backup(&made.path)?;
    assert_eq!(manifest, made.manifest);
    assert!(report.troubles.is_empty(), "{:?}", report.troubles);
    assert_eq!((report.events, report.photos, report.documents), (6, 1, 1));
    let copy = Store::open_read_only(&made.path)?;
    assert_eq!(all_events(&copy)?, all_events(&store)?);
    assert_eq!(copy.document(&document)?.bytes, b"{}");
    Ok(())
}

#[test]
fn a_backup_of_a_store_that_is_only_read_is_the_same() -> Outcome {
    let (dir, to) = (tempdir()?, tempdir()?);
    store_with(dir.path(), 4)?.close()?;
    let made = back_up(&Store::open_read_only(dir.path())?, to.path(), 0)?;
    assert_eq!(made.manifest.head.seq, 4);
    Ok(())
}

#[test]
fn entries_go_on_while_a_backup_is_made_and_it_holds_one_state() -> Outcome {
    let (dir, to) = (tempdir()?, tempdir()?);
    let mut store = store_with(dir.path(), 40)?;
    let backing = store.backing();
    let folder = to.path().to_owned();
    let beside = thread::spawn(move || {
        (0..4).map(|hour| backing.run(&folder, 14, MORNING + hour * HOUR)).collect::<Result<Vec<_>, _>>()
    });
    let mut number = 40;
    while !beside.is_finished() {
        number += 1;
        write(&mut store, job(u128::from(number % 3)), number)?;
    }
    let made = beside.join().map_err(|_| "the backup broke off")??;
    let truth = all_events(&store)?;
    for one in made {
        let (manifest, report) = verify_backup(&one.path)?;
        assert!(report.troubles.is_empty(), "{:?}", report.troubles);
        assert!(manifest.events >= 40);
        let copy = all_events(&Store::open_read_only(&one.path)?)?;
        assert_eq!(copy, truth[..copy.len()], "the start of the truth and nothing else");
        assert_eq!(copy.len() as u64, manifest.events);
    }
    Ok(())
}

#[test]
fn a_bit_flipped_in_a_backup_is_found_when_it_is_read_again() -> Outcome {
    let (dir, to) = (tempdir()?, tempdir()?);
    let mut store = store_with(dir.path(), 30)?;
    photo(&mut store, job(1), b"the pan's debris")?;
    let made = back_up(&store, to.path(), 0)?;
    let body = b"\"number\":17";
    let mut flipped = 0;
    for (path, bytes) in files(to.path())? {
        // In the body of an event, and in the bytes of a photo.
        let at = match path.rsplit('/').next() {
            Some("journal.db") => bytes.windows(body.len()).position(|part| part == body),
            Some(name) if name.ends_with(".jpg") => Some(0),
            _ => None,
        };
        let Some(at) = at else { continue };
        let mut other = bytes.clone();
        other[at + 1] ^= 1;
        fs::write(&path, &other)?;
        let (_, report) = verify_backup(&made.path)?;
        assert!(!report.troubles.is_empty(), "a bit of {path}");
        if path.ends_with("journal.db") {
            let refused = restored(&made.path, &to.path().join("anew"));
            assert!(matches!(refused, Err(StoreError::BackupAltered { .. })), "{refused:?}");
        }
        fs::write(&path, &bytes)?;
        flipped += 1;
    }
    assert_eq!(flipped, 3);
    assert!(verify_backup(&made.path)?.1.troubles.is_empty());
    Ok(())
}

#[test]
fn a_photo_that_went_bad_in_the_backup_is_copied_anew() -> Outcome {
    let (dir, to) = (tempdir()?, tempdir()?);
    let mut store = store_with(dir.path(), 3)?;
    photo(&mut store, job(1), b"the pan's debris")?;
    back_up(&store, to.path(), 0)?;
    let (path, _) = files(&to.path().join("photos"))?.remove(0);
    fs::write(&path, b"scribble")?;
    let made = back_up(&store, to.path(), 1)?;
    assert_eq!(made.copied, 1);
    assert_eq!(fs::read(&path)?, b"the pan's debris");
    assert_eq!(back_up(&store, to.path(), 2)?.copied, 0, "what is there and holds is not copied again");
    Ok(())
}

#[test]
fn the_newest_backups_stay_and_the_photos_that_only_older_ones_had_go() -> Outcome {
    let (dir, to) = (tempdir()?, tempdir()?);
    let mut store = store_with(dir.path(), 3)?;
    photo(&mut store, job(1), b"in all of them")?;
    photo(&mut store, job(2), b"in the first one only")?;
    let first = back_up(&store, to.path(), 0)?;
    let kept = panside_journal::Hash::of(b"in all of them");
    store.sweep(&[kept].into())?;
    let made: Vec<BackedUp> =
        (1..5).map(|hour| back_up(&store, to.path(), hour)).collect::<Result<_, _>>()?;
    assert_eq!(made[2].removed, std::slice::from_ref(&first.path), "the fourth pushes the first out");
    let left: Vec<_> = backups(to.path())?.into_iter().map(|found| found.path).collect();
    let newest: Vec<_> = made[1..].iter().rev().map(|one| one.path.clone()).collect();
    assert_eq!(left, newest, "the newest first");
    assert_eq!(files(&to.path().join("photos"))?.len(), 1);
    assert!(verify_backup(&made[1].path)?.1.troubles.is_empty());
    Ok(())
}

#[test]
fn a_store_that_lost_entries_never_pushes_out_the_last_backup_that_has_them() -> Outcome {
    let (dir, to, old) = (tempdir()?, tempdir()?, tempdir()?);
    let mut store = store_with(dir.path(), 3)?;
    crate::support::copy(dir.path(), old.path())?;
    write(&mut store, job(1), 4)?;
    let whole = back_up(&store, to.path(), 0)?;
    let mut shorter = Store::open(old.path(), options())?;
    shorter.begin_epoch(epoch(1), "gone on with less")?;
    for hour in 1..9 {
        back_up(&shorter, to.path(), hour)?;
    }
    assert!(verify_backup(&whole.path)?.1.troubles.is_empty());
    assert_eq!(backups(to.path())?.len(), 4, "three, and the newest of the first epoch");
    // A clock that was set back doesn't make the backup of this moment an old one.
    let made = back_up(&shorter, to.path(), -100)?;
    assert!(made.path.exists() && !made.removed.is_empty());
    Ok(())
}

#[test]
fn what_does_not_hold_is_not_backed_up_and_earlier_backups_stay() -> Outcome {
    let (dir, to) = (tempdir()?, tempdir()?);
    let store = store_with(dir.path(), 6)?;
    back_up(&store, to.path(), 0)?;
    store.close()?;
    let before = files(to.path())?;
    rusqlite::Connection::open(dir.path().join("journal.db"))?
        .execute("UPDATE events SET who = zeroblob(16) WHERE device_seq = 3", [])?;
    let refused = back_up(&Store::open_read_only(dir.path())?, to.path(), 1);
    assert!(matches!(refused, Err(StoreError::NotBackedUp { .. })), "{refused:?}");
    assert_eq!(files(to.path())?, before);
    Ok(())
}

#[test]
fn a_backup_says_which_photos_and_documents_the_store_itself_has_lost() -> Outcome {
    let (dir, to) = (tempdir()?, tempdir()?);
    let mut store = store_with(dir.path(), 3)?;
    photo(&mut store, job(1), b"gone")?;
    store.put_document("checklist", b"{}")?;
    rusqlite::Connection::open(dir.path().join("journal.db"))?
        .execute("UPDATE documents SET bytes = x'00'", [])?;
    let (path, _) = files(&dir.path().join("photos"))?.remove(0);
    fs::remove_file(path)?;
    let made = back_up(&store, to.path(), 0)?;
    let lacks = made.lacks.as_slice();
    assert!(matches!(lacks, [Trouble::DocumentAltered { .. }, Trouble::PhotoMissing { .. }]), "{lacks:?}");
    assert_eq!((made.manifest.photos.len(), made.manifest.lacks.len()), (0, 2));
    assert!(verify_backup(&made.path)?.1.troubles.is_empty());
    let back = restored(&made.path, &to.path().join("anew"))?;
    assert_eq!(back.photos_missing.len(), 1);
    Ok(())
}

#[test]
fn a_folder_that_is_not_there_or_lies_in_the_store_is_refused() -> Outcome {
    let dir = tempdir()?;
    let store = store_with(dir.path(), 1)?;
    let gone = back_up(&store, &dir.path().join("stick"), 0);
    assert!(matches!(gone, Err(StoreError::BackupFolder { .. })), "{gone:?}");
    fs::create_dir(dir.path().join("inside"))?;
    let inside = back_up(&store, &dir.path().join("inside"), 0);
    assert!(matches!(inside, Err(StoreError::InsideStore { .. })), "{inside:?}");
    Ok(())
}

#[test]
fn restoring_begins_a_new_epoch_keeps_the_old_files_and_says_what_the_backup_lacks() -> Outcome {
    let (dir, to) = (tempdir()?, tempdir()?);
    let bay = dir.path().join("bay");
    let mut store = store_with(&bay, 6)?;
    photo(&mut store, job(1), b"the pan's debris")?;
    let made = back_up(&store, to.path(), 0)?;
    for number in [7, 8, 10] {
        write(&mut store, job(u128::from(number % 3)), number)?;
    }
    let newest = store.device_head();
    store.close()?;
    // One of the newer entries is damaged on disk, so that job 2 can't be read to its end there.
    let database = bay.join("journal.db");
    let mut bytes = fs::read(&database)?;
    let body = b"\"number\":8";
    let places: Vec<usize> = (0..bytes.len()).filter(|at| bytes[*at..].starts_with(body)).collect();
    places.iter().for_each(|at| bytes[at + 1] ^= 1);
    fs::write(&database, bytes)?;
    let before = files(&bay)?;
    let back = restored(&made.path, &bay)?;
    let aside = back.moved_to.ok_or("nothing was moved aside")?;
    assert!(aside.ends_with("bay.before-2026-12-01T141500Z"), "{}", aside.display());
    for (path, bytes) in before {
        let kept = aside.join(Path::new(&path).strip_prefix(&bay)?);
        assert!(fs::read(&kept)? == bytes, "{} is no longer as it was", kept.display());
    }
    let lacks = back.lacks.ok_or("a store stood there")?;
    assert_eq!((lacks.confirmed, lacks.entries), (Some(newest), Some(3)));
    let newer: Vec<_> = lacks.newer.iter().map(|one| (one.subject, one.restored, one.there)).collect();
    assert_eq!(newer, [(job(1).into(), 2, 4)]);
    assert_eq!(lacks.newer[0].label, "{\"events\":4}");
    assert_eq!(back.manifest.wall_ms, MORNING, "how old it is");

    let mut store = Store::open(&bay, options())?;
    assert_eq!((store.standing(), store.epoch()), (&Standing::Ready, epoch(7)));
    assert_eq!(store.device_head(), made.manifest.head);
    write(&mut store, job(2), 20)?;
    let report = store.check(&meaning_of)?;
    assert!(report.troubles.is_empty(), "{:?}", report.troubles);
    assert_eq!(report.photos, 1);
    store.close()?;
    let lost: (i64, [u8; 32], String) = rusqlite::Connection::open(&database)?.query_row(
        "SELECT lost_seq, lost_hash, why FROM epochs WHERE number = 2",
        [],
        |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)),
    )?;
    assert_eq!(lost, (9, newest.hash.0, "the tablet fell".to_owned()), "the lost head stays known");
    Ok(())
}

#[test]
fn what_a_backup_lacks_is_told_before_it_is_restored_and_beside_the_open_store() -> Outcome {
    let (dir, to) = (tempdir()?, tempdir()?);
    let bay = dir.path().join("bay");
    let mut store = store_with(&bay, 6)?;
    photo(&mut store, job(1), b"the pan's debris")?;
    photo(&mut store, job(1), b"the old filter")?;
    let made = back_up(&store, to.path(), 0)?;
    for number in [7, 8, 10] {
        write(&mut store, job(u128::from(number % 3)), number)?;
    }
    let photos: Vec<_> = files(&to.path().join("photos"))?.into_iter().map(|(path, _)| path).collect();
    fs::remove_file(&photos[0])?;
    let before = files(&bay)?;
    let told = outlook(&made.path, &bay, &label_of)?;
    assert_eq!(files(&bay)?, before, "looking changes nothing");
    assert_eq!(told.manifest, made.manifest);
    assert!(told.photos_missing.is_empty(), "the store has it: {:?}", told.photos_missing);
    let lacks = told.lacks.ok_or("a store stands there")?;
    let newer: Vec<_> = lacks.newer.iter().map(|one| (one.restored, one.there, one.lacking)).collect();
    assert_eq!((lacks.entries, newer), (Some(3), vec![(2, 4, 2), (2, 3, 1)]));
    store.close()?;
    let [name, folder] = [Path::new(&photos[0]), &bay].map(|path| path.strip_prefix("/").unwrap_or(path));
    let name = name.strip_prefix(to.path().strip_prefix("/")?)?;
    fs::remove_file(Path::new("/").join(folder).join(name))?;
    let told = outlook(&made.path, &bay, &label_of)?;
    assert_eq!(told.photos_missing.len(), 1, "{:?}", told.photos_missing);
    let back = restored(&made.path, &bay)?;
    assert_eq!(back.lacks, Some(lacks), "as it was told");
    assert_eq!(back.photos_missing.len(), 1);
    Ok(())
}

#[test]
fn a_backup_from_before_the_store_was_gone_on_with_does_not_count_as_having_what_came_after() -> Outcome {
    let (dir, to) = (tempdir()?, tempdir()?);
    let bay = dir.path().join("bay");
    let mut store = store_with(&bay, 6)?;
    let early = back_up(&store, to.path(), 0)?;
    for number in [7, 8, 10, 11, 13] {
        write(&mut store, job(u128::from(number % 3)), number)?;
    }
    let late = back_up(&store, to.path(), 1)?;
    store.close()?;
    restored(&early.path, &bay)?;
    let mut store = Store::open(&bay, options())?;
    for number in [20, 22] {
        write(&mut store, job(2), number)?;
    }
    // The late backup ends at entry 11, the store at entry 8; and yet it hasn't the last two.
    let lacks = outlook(&late.path, &bay, &label_of)?.lacks.ok_or("a store stands there")?;
    assert_eq!(lacks.entries, Some(2));
    let newer: Vec<_> = lacks.newer.iter().map(|one| (one.subject, one.there, one.lacking)).collect();
    assert_eq!(newer, [(job(2).into(), 4, 2)]);
    let again = back_up(&store, to.path(), 2)?;
    assert_eq!(outlook(&again.path, &bay, &label_of)?.lacks.and_then(|lacks| lacks.entries), Some(0));
    Ok(())
}

#[test]
fn a_backup_is_restored_where_only_a_head_file_is_left_and_nowhere_over_other_files() -> Outcome {
    let (dir, to) = (tempdir()?, tempdir()?);
    let store = store_with(dir.path(), 5)?;
    let made = back_up(&store, to.path(), 0)?;
    let ruin = to.path().join("ruin");
    fs::create_dir(&ruin)?;
    fs::copy(dir.path().join("journal.head"), ruin.join("journal.head"))?;
    let back = restored(&made.path, &ruin)?;
    assert_eq!(back.lacks.ok_or("a head file stood there")?.entries, Some(0));
    assert_eq!(*Store::open(&ruin, options())?.standing(), Standing::Ready);
    let other = to.path().join("other");
    fs::create_dir(&other)?;
    fs::write(other.join("letter.txt"), b"dear")?;
    let refused = restored(&made.path, &other);
    assert!(matches!(refused, Err(StoreError::NotEmpty { .. })), "{refused:?}");
    let open = restored(&made.path, dir.path());
    assert!(matches!(open, Err(StoreError::Locked { .. })), "{open:?}");
    Ok(())
}

#[test]
fn going_on_mends_a_lost_tail_and_a_wrong_list_at_once() -> Outcome {
    let (dir, old) = (tempdir()?, tempdir()?);
    let mut store = store_with(dir.path(), 5)?;
    store.close()?;
    crate::support::copy(dir.path(), old.path())?;
    store = Store::open(dir.path(), options())?;
    write(&mut store, job(1), 6)?;
    store.close()?;
    fs::copy(dir.path().join("journal.head"), old.path().join("journal.head"))?;
    rusqlite::Connection::open(old.path().join("journal.db"))?
        .execute("UPDATE heads SET label = 'scribble'", [])?;
    let mut store = Store::open(old.path(), options())?;
    assert!(matches!(store.troubles(), [Trouble::TailLost { .. }]), "{:?}", store.troubles());
    store.go_on(epoch(1), "the newest entry is lost", &label_of)?;
    write(&mut store, job(1), 7)?;
    assert!(store.check(&meaning_of)?.troubles.is_empty());
    store.close()?;
    assert_eq!(*Store::open(old.path(), options())?.standing(), Standing::Ready);
    Ok(())
}
