//! Going back to a backup. The store that stood in the place is moved aside, never deleted, and looked at for what it
//! had that the backup hasn't.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use panside_journal::{Event, Head, Subject};

use crate::backup::{self, Kept, photos_of};
use crate::error::{file, sql};
use crate::head_file::{self, Found};
use crate::jobs::LabelOf;
use crate::manifest::{Manifest, verify_backup};
use crate::open::{Options, Standing, Store};
use crate::salvage::{is_empty, lock_where_possible, place, put};
use crate::{StoreError, Trouble, disk, heads, load, photos, saved};

const RESTORING: &str = "restoring a backup";

/// A backup that was restored.
#[derive(Debug)]
pub struct Restored {
    /// What the backup says of itself: how old it is, and how far it goes.
    pub manifest: Manifest,
    /// Where the store is now that stood in the place, with all its files.
    pub moved_to: Option<PathBuf>,
    /// What it had that the backup lacks; nothing where no store stood in the place.
    pub lacks: Option<Lacks>,
    /// Photos that neither the backup nor the other store has whole.
    pub photos_missing: Vec<Trouble>,
}

/// What a backup lacks, held against the store that stood in the place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lacks {
    /// The newest entry that was confirmed there, by its head file. `None`: the file is gone or can't be read, or belongs
    /// to another device, so that it isn't known how many entries the backup lacks.
    pub confirmed: Option<Head>,
    /// How many entries of this device were confirmed after the backup was made, if that is known.
    pub entries: Option<u64>,
    /// The jobs of which newer entries can still be read there.
    pub newer: Vec<NewerThere>,
}

/// A job with newer entries than the backup has.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NewerThere {
    /// The job, or the shop.
    pub subject: Subject,
    /// What the list of jobs says of it, by the entries there; empty for the shop.
    pub label: String,
    /// How many entries the backup has of it.
    pub restored: u64,
    /// How many can be read there.
    pub there: u64,
}

/// Restores the backup in `from` to a store in `into`, which doesn't exist, is empty, or has a store in it: that one is
/// moved to `<into>.before-<UTC time>`. A new epoch begins, with the id in `options` and `why`; `wall_ms` is now, in
/// milliseconds since 1970 UTC.
///
/// # Errors
/// [`StoreError::NotABackup`], [`StoreError::BackupAltered`], [`StoreError::NotEmpty`]; [`StoreError::Locked`] while the
/// store in `into` is open; what the disk said. In all of these what stood in `into` still stands there, unless the very
/// last step failed: then it is in the folder named above.
pub fn restore(
    from: &Path,
    into: &Path,
    options: Options,
    (why, wall_ms): (&str, i64),
    label_of: LabelOf<'_>,
) -> Result<Restored, StoreError> {
    let (manifest, report) = verify_backup(from)?;
    let from = &load::real(from)?;
    if let Some(trouble) = report.troubles.iter().find(|trouble| !is_photo(trouble)) {
        return Err(StoreError::BackupAltered { path: from.clone(), trouble: trouble.to_string() });
    }
    let there = look(into)?;
    let _lock = there.as_ref().map(|dir| lock_where_possible(dir)).transpose()?;
    // A folder that is reached through a link is exchanged where it is.
    let into = &place(RESTORING, into)?;
    let part = into.with_added_extension("restoring.part");
    disk::remove_dir(RESTORING, &part)?;
    disk::make_dir(RESTORING, &part)?;
    backup::copy_database(RESTORING, from, &part)?;
    let head = fs::read(load::head_file(from)).map_err(file(RESTORING, from))?;
    disk::write_whole(RESTORING, &load::head_file(&part), &head)?;
    let mut store = Store::open(&part, Options { seen: None, ..options.clone() })?;
    if *store.standing() != Standing::Ready {
        let trouble = store.troubles().iter().map(ToString::to_string).collect();
        return Err(StoreError::BackupAltered { path: from.clone(), trouble });
    }
    let lacks = there.as_ref().map(|dir| lacks(dir, &store, &manifest, label_of)).transpose()?;
    let lost = lacks.as_ref().and_then(|lacks| lacks.confirmed).filter(|head| head.seq > manifest.head.seq);
    store.begin(options.epoch, why, lost)?;
    let photos_missing = copy_photos(&store, from, there.as_deref())?;
    store.close()?;
    let moved_to = there.as_ref().map(|dir| move_aside(dir, wall_ms)).transpose()?;
    put(RESTORING, &part, into)?;
    Store::adopt(into, options)?.close()?;
    Ok(Restored { manifest, moved_to, lacks, photos_missing })
}

/// The store in a place, by its real folder; `None` where nothing is in the way.
fn look(into: &Path) -> Result<Option<PathBuf>, StoreError> {
    if is_empty(into)? {
        return Ok(None);
    }
    let dir = load::real(into)?;
    match load::database(&dir).exists() || load::head_file(&dir).exists() {
        true => Ok(Some(dir)),
        false => Err(StoreError::NotEmpty { dir }),
    }
}

fn is_photo(trouble: &Trouble) -> bool {
    matches!(trouble, Trouble::PhotoMissing { .. } | Trouble::PhotoAltered { .. })
}

fn lacks(
    there: &Path,
    restored: &Store,
    manifest: &Manifest,
    label_of: LabelOf<'_>,
) -> Result<Lacks, StoreError> {
    let confirmed = match head_file::read(&load::head_file(there)) {
        Ok(Found::Mark { mark, .. }) if mark.device == manifest.device => Some(mark.head),
        // What can't be read there must not keep the backup from being restored.
        _ => None,
    };
    let entries = confirmed.map(|head| head.seq.saturating_sub(manifest.head.seq));
    let mut readable: BTreeMap<Subject, Vec<Event>> = BTreeMap::new();
    for event in saved::read(there).map(|saved| saved.events).unwrap_or_default() {
        readable.entry(event.header.subject).or_default().push(event);
    }
    let mut newer = Vec::new();
    for (subject, events) in readable {
        let restored = heads::of(restored.reader()?, subject).map_err(sql(RESTORING))?.seq;
        let there = events.iter().map(|event| event.header.subject_seq).max().unwrap_or(0);
        if there > restored {
            let label = if subject.is_shop() { String::new() } else { label_of(&events) };
            newer.push(NewerThere { subject, label, restored, there });
        }
    }
    Ok(Lacks { confirmed, entries, newer })
}

/// Copies the photos out of the backup, or from the store that stood in the place where the backup hasn't them whole.
fn copy_photos(store: &Store, from: &Path, there: Option<&Path>) -> Result<Vec<Trouble>, StoreError> {
    let sources: Vec<&Path> = [Some(photos_of(from)), there].into_iter().flatten().collect();
    let mut missing = Vec::new();
    for row in photos::all(store.reader()?).map_err(sql(RESTORING))? {
        if let Kept::Not(trouble) = backup::keep_photo(RESTORING, &sources, &store.dir, &row)? {
            missing.push(trouble);
        }
    }
    Ok(missing)
}

fn move_aside(dir: &Path, wall_ms: i64) -> Result<PathBuf, StoreError> {
    let parent = dir.parent().unwrap_or(dir);
    let name = dir.file_name().unwrap_or_default().to_string_lossy();
    let aside = backup::unused(parent, &format!("{name}.before-{}", backup::when(wall_ms)));
    fs::rename(dir, &aside).map_err(file(RESTORING, dir))?;
    disk::sync_parent(RESTORING, &aside)?;
    Ok(aside)
}
