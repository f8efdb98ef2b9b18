//! Backups, made while the store is in use.
//!
//! ```text
//! photos/ab/ thumbs/ab/        the photos of all backups, each kept once
//! 2026-11-30T081500Z-354/      one backup: when it was made (UTC), the newest entry of the device
//!   journal.db journal.head    the journal, as a store that can be read where it lies
//!   manifest.json              whose it is, how far it goes, the photos that belong to it
//! lock                         held by the one process that makes a backup
//! ```
//!
//! The database is copied by `VACUUM INTO` on a connection of its own: it reads one state of the database while entries
//! go on, reads every row through its table instead of taking damaged pages over unseen, keeps nothing that was deleted,
//! and its copy has no write-ahead log, so that it can be read from a disk that can't be written. (SQLite's online backup
//! copies pages, and begins anew whenever another process writes.)
//!
//! A backup has its name only after it was read back and verified. What is read back right after writing may come from
//! the system's memory and not from the disk: [`crate::verify_backup`] at a later time says more.

use std::collections::BTreeSet;
use std::fs::{self, File};
use std::path::{Path, PathBuf};

use panside_journal::{DeviceId, EpochId, Hash};

use crate::check::{self, Report};
use crate::error::{file, sql};
use crate::head_file::{self, Found, HeadFile, Mark};
use crate::load::{self, Lock};
use crate::manifest::{FORMAT, MANIFEST, Manifest, backed, backups, journal_of, unreadable};
use crate::open::Store;
use crate::photos::{self, PhotoRow};
use crate::walk::{self, Walk};
use crate::{Doing, StoreError, Trouble, disk};

const MAKING: Doing = Doing::MakingBackup;
const CLEARING: Doing = Doing::ClearingBackup;
/// The name of a backup that isn't verified yet.
const UNVERIFIED: &str = "unverified.part";

/// A backup that was made.
#[derive(Debug)]
pub struct BackedUp {
    /// Its folder.
    pub path: PathBuf,
    /// What it says of itself.
    pub manifest: Manifest,
    /// Photos that no earlier backup had.
    pub copied: u64,
    /// Photos and documents that the store itself doesn't have whole.
    pub lacks: Vec<Trouble>,
    /// Older backups that were taken away.
    pub removed: Vec<PathBuf>,
}

/// Makes backups of a store, for another thread, beside the work.
#[derive(Clone, Debug)]
pub struct Backing {
    dir: PathBuf,
    device: DeviceId,
}

impl Store {
    /// What makes backups of this store, however it was opened.
    pub fn backing(&self) -> Backing {
        Backing { dir: self.dir.clone(), device: self.device }
    }
}

impl Backing {
    /// Makes a backup in the folder `to`, verifies it, and takes away those of this device beyond the newest `keep` (at
    /// least 1). The newest of each epoch stays, so that a store that lost entries and was gone on with never pushes out
    /// the last backup that has them. `wall_ms` is now, in milliseconds since 1970 UTC.
    ///
    /// # Errors
    /// [`StoreError::BackupFolder`], [`StoreError::InsideStore`], [`StoreError::BackupBusy`];
    /// [`StoreError::NotBackedUp`] when the journal doesn't hold; [`StoreError::DiskFull`] and what the
    /// disk said. In all of these earlier backups are as they were.
    pub fn run(&self, to: &Path, keep: usize, wall_ms: i64) -> Result<BackedUp, StoreError> {
        if !to.is_dir() {
            return Err(StoreError::BackupFolder { dir: to.to_owned() });
        }
        let to = &load::real(to)?;
        if to.starts_with(&self.dir) {
            return Err(StoreError::InsideStore { dir: to.clone() });
        }
        let _lock = lock(to)?;
        let part = to.join(UNVERIFIED);
        disk::remove_dir(CLEARING, &part)?;
        let made = self.fill(to, &part, wall_ms);
        // What isn't whole must not take up a full disk. The first error is the one to tell.
        let (manifest, copied, lacks) = made.inspect_err(|_| drop(fs::remove_dir_all(&part)))?;
        let path = unused(to, &name(&manifest));
        fs::rename(&part, &path).map_err(file(MAKING, &path))?;
        disk::sync_parent(MAKING, &path)?;
        let removed = self.thin(to, &path, keep.max(1))?;
        Ok(BackedUp { path, manifest, copied, lacks, removed })
    }

    fn fill(
        &self,
        to: &Path,
        part: &Path,
        wall_ms: i64,
    ) -> Result<(Manifest, u64, Vec<Trouble>), StoreError> {
        disk::make_dir(MAKING, part)?;
        // The head file is read first: a writer beside us only ever moves the database ahead of it.
        let found = head_file::read(&load::head_file(&self.dir))?;
        copy_database(MAKING, &self.dir, part)?;
        let (manifest, rows, mut lacks) = self.confirm_copy(part, &found, wall_ms)?;
        let mut copied = 0;
        for row in &rows {
            match keep_photo(MAKING, &[&self.dir], to, row)? {
                Kept::Before => {}
                Kept::Now => copied += 1,
                Kept::Not(trouble) => lacks.push(trouble),
            }
        }
        let without: BTreeSet<Hash> = lacks.iter().filter_map(lacking).collect();
        let mut whole = manifest;
        whole.photos.retain(|photo| !without.contains(&photo.hash));
        whole.lacks = without.into_iter().collect();
        let text = serde_json::to_vec_pretty(&whole).map_err(|error| unreadable(part, error.to_string()))?;
        disk::write_whole(MAKING, &part.join(MANIFEST), &text)?;
        // Read back from its files, as a restore would; the photos were, one by one.
        let report = journal_of(part, &whole)?;
        match report.troubles.first() {
            Some(trouble) => {
                Err(StoreError::BackupAltered { path: part.to_owned(), trouble: trouble.message() })
            }
            None => Ok((whole, copied, lacks)),
        }
    }

    /// Verifies the copied journal and gives it a head file. A document that was altered keeps nothing else from being
    /// backed up.
    fn confirm_copy(
        &self,
        part: &Path,
        found: &Found,
        wall_ms: i64,
    ) -> Result<(Manifest, Vec<PhotoRow>, Vec<Trouble>), StoreError> {
        let conn = load::connect_for_reading(part).map_err(sql(MAKING))?;
        let Walk { head, tally, troubles, .. } = walk::walk(&conn, self.device, found)?;
        if let Some(trouble) = troubles.first() {
            return Err(StoreError::NotBackedUp { trouble: trouble.message() });
        }
        let mut report = Report { events: 0, head, photos: 0, documents: 0, troubles };
        check::documents(&conn, &mut report).map_err(sql(MAKING))?;
        let epochs = walk::epochs(&conn).map_err(sql(MAKING))?;
        let epoch = epochs.last().map_or(EpochId(uuid::Uuid::nil()), |(epoch, _)| *epoch);
        let rows = photos::all(&conn).map_err(sql(MAKING))?;
        let mark = Mark { device: self.device, epoch, head, tally };
        HeadFile::open(&load::head_file(part), Found::Missing)?.write(&mark)?;
        let manifest = Manifest {
            format: FORMAT.to_owned(),
            device: self.device,
            epoch,
            head,
            events: tally.events,
            wall_ms,
            photos: backed(&rows),
            lacks: Vec::new(),
        };
        Ok((manifest, rows, report.troubles))
    }

    /// Takes away the backups of this device beyond the newest `keep` and the newest of each epoch, never `made`, and
    /// the photos that none of those left names.
    fn thin(&self, to: &Path, made: &Path, keep: usize) -> Result<Vec<PathBuf>, StoreError> {
        let mut ours: Vec<(Manifest, PathBuf)> = backups(to)?
            .into_iter()
            .filter_map(|found| Some((found.manifest.ok()?, found.path)))
            .filter(|(manifest, _)| manifest.device == self.device)
            .collect();
        // The one just made is the only one known to be good now, whatever the clock says.
        ours.sort_by_key(|(manifest, path)| {
            std::cmp::Reverse((path == made, manifest.wall_ms, path.clone()))
        });
        let mut epochs = BTreeSet::new();
        let mut removed = Vec::new();
        for (at, (manifest, path)) in ours.into_iter().enumerate() {
            let newest_of_epoch = epochs.insert(manifest.epoch);
            if at >= keep && !newest_of_epoch {
                // Renamed first, so that a kill leaves no half of a backup under its name.
                let going = path.with_added_extension(disk::PART);
                disk::remove_dir(CLEARING, &going)?;
                fs::rename(&path, &going).map_err(file(CLEARING, &path))?;
                disk::remove_dir(CLEARING, &going)?;
                removed.push(path);
            }
        }
        let left: Result<Vec<Manifest>, StoreError> =
            backups(to)?.into_iter().map(|found| found.manifest).collect();
        // Where one can't be read it isn't known which photos it needs: all stay.
        if let (Ok(left), false) = (left, removed.is_empty()) {
            let named = left.iter().flat_map(|one| &one.photos).map(|photo| photo.hash).collect();
            photos::sweep_files(to, &named)?;
        }
        Ok(removed)
    }
}

/// Copies the database before it is brought up to date, into a folder of the store that the older version can read as
/// a store. Photos are not touched by a migration and not copied.
pub(crate) fn before_migration(dir: &Path, version: u32) -> Result<PathBuf, StoreError> {
    const COPYING: Doing = Doing::BackingUpBeforehand;
    let folder = dir.join(format!("before-format-{}", version + 1));
    let part = folder.with_added_extension(disk::PART);
    disk::remove_dir(COPYING, &part)?;
    disk::make_dir(COPYING, &part)?;
    copy_database(COPYING, dir, &part)?;
    let (head, copy) = (load::head_file(dir), load::head_file(&part));
    if head.exists() {
        let bytes = fs::read(&head).map_err(file(COPYING, &head))?;
        disk::write_whole(COPYING, &copy, &bytes)?;
    }
    let conn = load::connect_for_reading(&part).map_err(sql(COPYING))?;
    let found = check::structure(&conn).map_err(sql(COPYING))?;
    if let Some(trouble) = found.first() {
        return Err(StoreError::NotBackedUp { trouble: trouble.message() });
    }
    drop(conn);
    // A copy of an earlier attempt may be older than the store is now.
    disk::remove_dir(COPYING, &folder)?;
    fs::rename(&part, &folder).map_err(file(COPYING, &folder))?;
    disk::sync_parent(COPYING, &folder)?;
    Ok(folder)
}

/// Copies the database of the store in `from` into the folder `to`, in one state, and syncs it.
pub(crate) fn copy_database(doing: Doing, from: &Path, to: &Path) -> Result<(), StoreError> {
    let path = load::database(to);
    let name = path.to_str().ok_or_else(|| StoreError::NameNotText { path: path.clone() })?;
    // SQLite fills an empty file, and leaves its mode.
    disk::create_new(&path).map_err(file(doing, &path))?;
    let conn = load::connect_for_reading(from).map_err(sql(doing))?;
    conn.execute("VACUUM INTO ?1", [name]).map_err(sql(doing))?;
    File::open(&path).and_then(|copy| copy.sync_all()).map_err(file(doing, &path))
}

/// What became of a photo that is to be kept in a folder.
pub(crate) enum Kept {
    /// It was there and holds.
    Before,
    /// It was copied now.
    Now,
    /// No folder has it whole.
    Not(Trouble),
}

/// Keeps a row's photo and small picture in the folders of `to`, from the first of the folders `from` that has them
/// whole, and reads back what was written.
pub(crate) fn keep_photo(
    doing: Doing,
    from: &[&Path],
    to: &Path,
    row: &PhotoRow,
) -> Result<Kept, StoreError> {
    let Some(mut trouble) = check::photo(to, row)? else { return Ok(Kept::Before) };
    for dir in from {
        let read = photos::photo_in(dir, row).and_then(|photo| Ok((photo, photos::thumbnail_in(dir, row)?)));
        let (photo, thumbnail) = match read {
            Ok(both) => both,
            Err(StoreError::PhotoMissing { hash }) => {
                trouble = Trouble::PhotoMissing { hash, job: row.job };
                continue;
            }
            // A place of the disk that can't be read under one photo must not keep all else from being saved.
            Err(_) => {
                trouble = Trouble::PhotoAltered { hash: row.hash, job: row.job };
                continue;
            }
        };
        photos::write_in(doing, to, (&row.hash, row.format), &photo, &thumbnail)?;
        return Ok(check::photo(to, row)?.map_or(Kept::Now, Kept::Not));
    }
    Ok(Kept::Not(trouble))
}

/// Where the photos of the backup in `path` are.
pub(crate) fn photos_of(path: &Path) -> &Path {
    path.parent().unwrap_or(path)
}

/// When something was, as it stands in the name of a folder: `2026-11-30T081500Z`.
pub(crate) fn when(wall_ms: i64) -> String {
    let time = chrono::DateTime::from_timestamp_millis(wall_ms).unwrap_or_default();
    time.format("%Y-%m-%dT%H%M%SZ").to_string()
}

/// A name that nothing in the folder has.
pub(crate) fn unused(folder: &Path, name: &str) -> PathBuf {
    let numbered = (2..).map(|number| folder.join(format!("{name}-{number}")));
    let mut names = std::iter::once(folder.join(name)).chain(numbered);
    names.find(|path| !path.exists()).unwrap_or_else(|| folder.join(name))
}

fn name(manifest: &Manifest) -> String {
    format!("{}-{}", when(manifest.wall_ms), manifest.head.seq)
}

fn lock(to: &Path) -> Result<Lock, StoreError> {
    load::lock(to).map_err(|error| match error {
        StoreError::Locked { dir } => StoreError::BackupBusy { dir },
        other => other,
    })
}

/// What is lacking by its hash.
fn lacking(trouble: &Trouble) -> Option<Hash> {
    match trouble {
        Trouble::PhotoMissing { hash, .. }
        | Trouble::PhotoAltered { hash, .. }
        | Trouble::DocumentAltered { hash } => Some(*hash),
        _ => None,
    }
}
