//! Nothing inside a store is read, written or swept through a link, and what the store makes is for its owner alone.

use std::collections::BTreeSet;
use std::fs;
use std::os::unix::fs::{PermissionsExt, symlink};
use std::path::{Path, PathBuf};
use std::process::Command;

use panside_journal::Hash;
use panside_store::{FileKind, NewPhoto, PhotoFormat, Store, StoreError};
use tempfile::{TempDir, tempdir};

use crate::support::{Outcome, job, options};

fn put(store: &mut Store, bytes: &[u8]) -> Result<Hash, StoreError> {
    let format = PhotoFormat::Jpeg;
    store.put_photo(&NewPhoto { job: job(1), format, bytes, thumbnail: b"small", width: 4, height: 3 })
}

fn photo_file(dir: &Path, folder: &str, hash: &Hash) -> PathBuf {
    let name = hash.to_string();
    dir.join(folder).join(&name[..2]).join(format!("{name}.jpg"))
}

/// A store, a folder elsewhere, and the photo that the store has.
fn store() -> Result<(TempDir, TempDir, Store, Hash), Box<dyn std::error::Error>> {
    let (dir, elsewhere) = (tempdir()?, tempdir()?);
    let mut store = Store::open(dir.path(), options())?;
    let hash = put(&mut store, b"photo")?;
    Ok((dir, elsewhere, store, hash))
}

fn not_plain<T: std::fmt::Debug>(result: Result<T, StoreError>, is: FileKind) {
    assert!(matches!(result, Err(StoreError::NotPlain { what, .. }) if what == is), "{result:?}");
}

#[test]
fn a_photo_is_not_read_through_a_link_even_to_the_same_bytes() -> Outcome {
    let (dir, elsewhere, store, hash) = store()?;
    for folder in ["photos", "thumbs"] {
        let file = photo_file(dir.path(), folder, &hash);
        let moved = elsewhere.path().join(folder);
        fs::rename(&file, &moved)?;
        symlink(&moved, &file)?;
    }
    not_plain(store.photo(&hash), FileKind::Link);
    not_plain(store.thumbnail(&hash), FileKind::Link);
    Ok(())
}

#[test]
fn a_photo_is_not_read_through_a_linked_folder() -> Outcome {
    let (dir, elsewhere, store, hash) = store()?;
    let folder = dir.path().join("photos");
    let moved = elsewhere.path().join("photos");
    fs::rename(&folder, &moved)?;
    symlink(&moved, &folder)?;
    not_plain(store.photo(&hash), FileKind::Link);
    Ok(())
}

#[test]
fn a_pipe_in_place_of_a_photo_is_refused_and_not_waited_for() -> Outcome {
    let (dir, _elsewhere, store, hash) = store()?;
    let file = photo_file(dir.path(), "photos", &hash);
    fs::remove_file(&file)?;
    assert!(Command::new("mkfifo").arg(&file).status()?.success());
    not_plain(store.photo(&hash), FileKind::Pipe);
    Ok(())
}

#[test]
fn a_photo_file_that_grew_is_told_altered_without_being_read_whole() -> Outcome {
    let (dir, _elsewhere, store, hash) = store()?;
    let file = fs::OpenOptions::new().write(true).open(photo_file(dir.path(), "photos", &hash))?;
    file.set_len(3 << 30)?;
    assert!(matches!(store.photo(&hash), Err(StoreError::PhotoAltered { .. })));
    Ok(())
}

#[test]
fn a_link_in_a_photos_place_is_replaced_and_what_it_leads_to_stays() -> Outcome {
    let (dir, elsewhere, mut store, hash) = store()?;
    let theirs = elsewhere.path().join("theirs");
    fs::write(&theirs, b"theirs")?;
    let file = photo_file(dir.path(), "photos", &hash);
    fs::remove_file(&file)?;
    symlink(&theirs, &file)?;
    symlink(&theirs, file.with_added_extension("part"))?;
    put(&mut store, b"photo")?;
    assert_eq!(fs::read(&theirs)?, b"theirs");
    assert_eq!(store.photo(&hash)?, b"photo");
    Ok(())
}

#[test]
fn a_record_and_a_photo_are_not_written_through_a_linked_folder() -> Outcome {
    let (dir, elsewhere, mut store, _) = store()?;
    symlink(elsewhere.path(), dir.path().join("records"))?;
    not_plain(store.files().put_record("record.pdf", b"record"), FileKind::Link);
    fs::remove_dir_all(dir.path().join("photos"))?;
    symlink(elsewhere.path(), dir.path().join("photos"))?;
    not_plain(put(&mut store, b"other"), FileKind::Link);
    assert_eq!(fs::read_dir(elsewhere.path())?.count(), 0);
    Ok(())
}

#[test]
fn a_sweep_takes_nothing_away_through_a_link() -> Outcome {
    let (dir, elsewhere, mut store, hash) = store()?;
    let theirs = elsewhere.path().join(format!("{}.jpg", Hash::of(b"theirs")));
    fs::write(&theirs, b"theirs")?;
    symlink(elsewhere.path(), dir.path().join("photos").join("zz"))?;
    store.sweep(&BTreeSet::from([hash]))?;
    assert!(theirs.exists());
    Ok(())
}

#[test]
fn photos_records_and_their_folders_are_for_their_owner_alone() -> Outcome {
    let (dir, _elsewhere, mut store, hash) = store()?;
    put(&mut store, b"photo")?;
    let record = store.files().put_record("record.pdf", b"record")?;
    let sheet = store.put_sheet_file("sheet.json", b"sheet")?;
    let mode = |path: &Path| Ok::<_, std::io::Error>(fs::metadata(path)?.permissions().mode() & 0o777);
    let files =
        [photo_file(dir.path(), "photos", &hash), photo_file(dir.path(), "thumbs", &hash), record, sheet];
    for file in files {
        assert_eq!(mode(&file)?, 0o600, "{}", file.display());
        for folder in file.ancestors().skip(1).take_while(|folder| *folder != dir.path()) {
            assert_eq!(mode(folder)?, 0o700, "{}", folder.display());
        }
    }
    let made = dir.path().join("made/for/it");
    drop(Store::open(&made, options())?);
    assert_eq!(mode(&made)?, 0o700);
    assert_eq!(mode(&made.join("journal.head"))?, 0o600);
    Ok(())
}
