//! What a backup says of itself, and reading it again: is it still what it says?

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use panside_journal::{DeviceId, EpochId, Hash, Head};
use panside_messages::Arg;
use serde::{Deserialize, Serialize};

use crate::backup::photos_of;
use crate::check::{self, Report};
use crate::error::{file, sql};
use crate::message::store_backup_format;
use crate::open::Store;
use crate::photos::{self, PhotoRow};
use crate::{Doing, StoreError, Trouble, disk, load};

pub(crate) const FORMAT: &str = "panside-backup/1";
pub(crate) const MANIFEST: &str = "manifest.json";
const READING: Doing = Doing::ReadingBackup;

/// What a backup says of itself.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Manifest {
    /// `panside-backup/1`.
    pub format: String,
    /// The device whose store it is.
    pub device: DeviceId,
    /// The epoch that was written in.
    pub epoch: EpochId,
    /// The newest event of the device.
    pub head: Head,
    /// How many events there are, of all devices.
    pub events: u64,
    /// When it was made: milliseconds since 1970 UTC.
    pub wall_ms: i64,
    /// The photos that belong to it.
    pub photos: Vec<BackedPhoto>,
    /// Photos and documents that the store itself no longer had whole.
    pub lacks: Vec<Hash>,
}

/// A photo of a backup.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BackedPhoto {
    /// SHA-256 of its bytes: its name.
    pub hash: Hash,
    /// Its size in bytes.
    pub size: u64,
}

/// A backup as it is found in a folder.
#[derive(Debug)]
pub struct FoundBackup {
    /// Its folder.
    pub path: PathBuf,
    /// What it says of itself, or why it can't be read.
    pub manifest: Result<Manifest, StoreError>,
}

/// The backups in a folder, the newest first.
///
/// # Errors
/// [`StoreError::BackupFolder`], and what the disk said. A backup that can't be read is told in its place.
pub fn backups(folder: &Path) -> Result<Vec<FoundBackup>, StoreError> {
    if !folder.is_dir() {
        return Err(StoreError::BackupFolder { dir: folder.to_owned() });
    }
    let entries = fs::read_dir(folder).and_then(Iterator::collect::<Result<Vec<_>, _>>);
    let mut found = Vec::new();
    for entry in entries.map_err(file(READING, folder))? {
        let path = entry.path();
        let whole = path.extension().is_none_or(|ending| ending != disk::PART);
        if whole && (path.join(MANIFEST).exists() || load::database(&path).exists()) {
            found.push(FoundBackup { manifest: manifest(&path), path });
        }
    }
    let when = |one: &FoundBackup| one.manifest.as_ref().map_or(i64::MIN, |manifest| manifest.wall_ms);
    found.sort_by(|a, b| (when(b), &b.path).cmp(&(when(a), &a.path)));
    Ok(found)
}

/// Reads a backup again, every byte of it: the journal, the documents, and the photos beside it.
///
/// # Errors
/// [`StoreError::NotABackup`], and what opening says of a journal that can't be read at all. What is found wrong is in
/// the report.
pub fn verify_backup(path: &Path) -> Result<(Manifest, Report), StoreError> {
    let path = &load::real(path)?;
    let manifest = manifest(path)?;
    let mut report = journal_of(path, &manifest)?;
    let conn = load::connect_for_reading(path).map_err(sql(READING))?;
    for row in photos::all(&conn).map_err(sql(READING))? {
        match check::photo(photos_of(path), &row)? {
            None => report.photos += 1,
            // The store itself had lost it.
            Some(_) if manifest.lacks.contains(&row.hash) => {}
            Some(trouble) => report.troubles.push(trouble),
        }
    }
    Ok((manifest, report))
}

fn manifest(path: &Path) -> Result<Manifest, StoreError> {
    let named = path.join(MANIFEST);
    let bytes = fs::read(&named).map_err(|error| unreadable(path, error.to_string()))?;
    let manifest: Manifest =
        serde_json::from_slice(&bytes).map_err(|error| unreadable(path, error.to_string()))?;
    match manifest.format == FORMAT {
        true => Ok(manifest),
        false => Err(unreadable(path, store_backup_format(manifest.format))),
    }
}

pub(crate) fn unreadable(path: &Path, why: impl Into<Arg>) -> StoreError {
    StoreError::NotABackup { path: path.to_owned(), why: why.into() }
}

/// Verifies the journal and the documents of a backup, and holds them against its manifest.
pub(crate) fn journal_of(path: &Path, manifest: &Manifest) -> Result<Report, StoreError> {
    let store = Store::open_read_only(path)?;
    let conn = store.reader()?;
    let (events, head) = (store.tally.events, store.head);
    let mut report = Report { events, head, photos: 0, documents: 0, troubles: Vec::new() };
    check::documents(conn, &mut report).map_err(sql(READING))?;
    // The store itself had lost it.
    let known = |t: &Trouble| matches!(t, Trouble::DocumentAltered { hash } if manifest.lacks.contains(hash));
    report.troubles.retain(|trouble| !known(trouble));
    report.troubles.extend(check::structure(conn).map_err(sql(READING))?);
    let found = (store.device, store.epoch, store.head, store.tally.events);
    let said = (manifest.device, manifest.epoch, manifest.head, manifest.events);
    let lacks = |photo: &BackedPhoto| manifest.lacks.contains(&photo.hash);
    let mut photos = backed(&photos::all(conn).map_err(sql(READING))?);
    photos.retain(|photo| !lacks(photo));
    report.troubles.extend(store.troubles);
    if found != said || photos != manifest.photos {
        report.troubles.push(Trouble::ManifestDiffers);
    }
    Ok(report)
}

pub(crate) fn backed(rows: &[PhotoRow]) -> Vec<BackedPhoto> {
    let photos: BTreeSet<BackedPhoto> =
        rows.iter().map(|row| BackedPhoto { hash: row.hash, size: row.size }).collect();
    photos.into_iter().collect()
}
