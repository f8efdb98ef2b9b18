//! Photo files: kept under their hash, checked when read, swept when nothing names them.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use panside_journal::Hash;
use panside_store::{NewPhoto, PhotoFormat, Standing, Store, StoreError, Swept, Trouble};
use tempfile::tempdir;

use crate::support::{Outcome, job, meaning_of, options};

fn photo<'a>(number: u128, bytes: &'a [u8], format: PhotoFormat) -> NewPhoto<'a> {
    NewPhoto { job: job(number), format, bytes, thumbnail: b"small", width: 40, height: 30 }
}

fn path(dir: &Path, folder: &str, hash: &Hash, extension: &str) -> PathBuf {
    let name = hash.to_string();
    dir.join(folder).join(&name[..2]).join(format!("{name}.{extension}"))
}

#[test]
fn a_photo_is_read_back_under_the_hash_of_its_bytes() -> Outcome {
    let dir = tempdir()?;
    let mut store = Store::open(dir.path(), options())?;
    let hash = store.put_photo(&photo(1, b"abc", PhotoFormat::Jpeg))?;
    // FIPS 180: SHA-256 of "abc".
    assert_eq!(hash.to_string(), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    assert_eq!(store.put_photo(&photo(1, b"abc", PhotoFormat::Jpeg))?, hash);
    let png = store.put_photo(&photo(2, b"png", PhotoFormat::Png))?;
    assert_eq!(fs::read(path(dir.path(), "photos", &hash, "jpg"))?, b"abc");
    assert_eq!(fs::read(path(dir.path(), "photos", &png, "png"))?, b"png");
    assert_eq!((store.photo(&hash)?, store.thumbnail(&hash)?), (b"abc".to_vec(), b"small".to_vec()));
    let rows = store.photos(job(1))?;
    assert_eq!((rows.len(), rows[0].hash, rows[0].size, rows[0].width, rows[0].height), (1, hash, 3, 40, 30));
    assert!(matches!(store.photo(&Hash::of(b"x")), Err(StoreError::PhotoUnknown { .. })));
    Ok(())
}

#[test]
fn a_missing_or_altered_photo_is_said_and_never_shown() -> Outcome {
    let dir = tempdir()?;
    let mut store = Store::open(dir.path(), options())?;
    let [gone, altered, small] = [b"one", b"two", b"tri"];
    let gone = store.put_photo(&photo(1, gone, PhotoFormat::Jpeg))?;
    let altered = store.put_photo(&photo(1, altered, PhotoFormat::Jpeg))?;
    let small = store.put_photo(&photo(1, small, PhotoFormat::Jpeg))?;
    fs::remove_file(path(dir.path(), "photos", &gone, "jpg"))?;
    fs::write(path(dir.path(), "photos", &altered, "jpg"), b"twO")?;
    fs::write(path(dir.path(), "thumbs", &small, "jpg"), b"Small")?;
    assert!(matches!(store.photo(&gone), Err(StoreError::PhotoMissing { .. })));
    assert!(matches!(store.photo(&altered), Err(StoreError::PhotoAltered { .. })));
    assert!(matches!(store.thumbnail(&small), Err(StoreError::PhotoAltered { .. })));
    assert_eq!(store.photo(&small)?, b"tri");
    let report = store.check(&meaning_of)?;
    let count = |wanted: fn(&Trouble) -> bool| report.troubles.iter().filter(|t| wanted(t)).count();
    assert_eq!(count(|t| matches!(t, Trouble::PhotoMissing { .. })), 1);
    assert_eq!(count(|t| matches!(t, Trouble::PhotoAltered { .. })), 2);
    assert_eq!(report.photos, 0);
    assert_eq!(*store.standing(), Standing::Ready, "a photo hinders no entry");
    assert_eq!(store.put_photo(&photo(1, b"two", PhotoFormat::Jpeg))?, altered);
    assert_eq!(store.photo(&altered)?, b"two", "kept again, it is whole again");
    Ok(())
}

#[test]
fn a_sweep_takes_what_nothing_names_and_leaves_the_rest() -> Outcome {
    let dir = tempdir()?;
    let mut store = Store::open(dir.path(), options())?;
    let named = store.put_photo(&photo(1, b"named", PhotoFormat::Jpeg))?;
    let unnamed = store.put_photo(&photo(1, b"unnamed", PhotoFormat::Png))?;
    let in_part = path(dir.path(), "photos", &named, "jpg.part");
    fs::write(&in_part, b"na")?;
    let guest = dir.path().join("photos").join("readme.txt");
    let deep_guest = in_part.with_file_name("holiday.jpg");
    fs::write(&guest, b"not ours")?;
    fs::write(&deep_guest, b"not ours")?;
    let swept = store.sweep(&BTreeSet::from([named]))?;
    // The unnamed photo, its small picture, and the part.
    assert_eq!(swept, Swept { files: 3, rows: 1 });
    assert_eq!(store.photo(&named)?, b"named");
    assert!(matches!(store.photo(&unnamed), Err(StoreError::PhotoUnknown { .. })));
    assert!(!in_part.exists() && guest.exists() && deep_guest.exists());
    assert_eq!(store.sweep(&BTreeSet::from([named]))?, Swept::default());
    Ok(())
}

#[test]
fn a_photo_of_two_jobs_is_one_file_and_stays_while_one_names_it() -> Outcome {
    let dir = tempdir()?;
    let mut store = Store::open(dir.path(), options())?;
    let hash = store.put_photo(&photo(1, b"both", PhotoFormat::Jpeg))?;
    store.put_photo(&photo(2, b"both", PhotoFormat::Jpeg))?;
    store.sweep(&BTreeSet::from([hash]))?;
    assert_eq!((store.photos(job(1))?.len(), store.photos(job(2))?.len()), (1, 1));
    Ok(())
}
