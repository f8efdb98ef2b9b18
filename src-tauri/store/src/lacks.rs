//! What a backup lacks, held against the store that would make room for it. Nothing is changed by looking.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use panside_journal::{Event, Hash, Head, Subject};
use rusqlite::Connection;

use crate::backup::photos_of;
use crate::error::sql;
use crate::head_file::{self, Found, Mark};
use crate::jobs::LabelOf;
use crate::manifest::{Manifest, verify_backup};
use crate::open::Store;
use crate::salvage::is_empty;
use crate::{Doing, StoreError, Trouble, check, heads, load, photos, rows, saved};

const LOOKING: Doing = Doing::LookingAtBackup;

/// What a backup lacks, held against the store that stood in the place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lacks {
    /// The newest entry that was confirmed there, by its head file. `None`: the file is gone or can't be read, or belongs
    /// to another device, so that it isn't known how many entries the backup lacks.
    pub confirmed: Option<Head>,
    /// How many entries of this device were confirmed there that the backup hasn't, if that is known.
    pub entries: Option<u64>,
    /// The jobs of which entries can be read there that the backup hasn't.
    pub newer: Vec<NewerThere>,
}

/// A job with entries that the backup hasn't.
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
    /// How many of those the backup hasn't.
    pub lacking: u64,
}

/// What restoring a backup would come to.
#[derive(Debug)]
pub struct Outlook {
    /// What the backup says of itself: how old it is, and how far it goes.
    pub manifest: Manifest,
    /// What the store in the place has that the backup lacks; nothing where no store stands there.
    pub lacks: Option<Lacks>,
    /// Photos that neither the backup nor the store in the place has whole.
    pub photos_missing: Vec<Trouble>,
}

/// Says what restoring the backup in `from` to a store in `into` would come to. The store there may be open.
///
/// # Errors
/// Those for which [`crate::restore`] would refuse the backup or the place, but for [`StoreError::Locked`].
pub fn outlook(from: &Path, into: &Path, label_of: LabelOf<'_>) -> Result<Outlook, StoreError> {
    let Sound { manifest, from, bad_photos } = sound(from)?;
    let there = stands(into)?;
    let backup = Store::open_read_only(&from)?;
    let lacks = there.as_deref().map(|dir| lacks(dir, &backup, &manifest, label_of)).transpose()?;
    let lost: BTreeSet<Hash> = manifest.lacks.iter().copied().chain(bad_photos).collect();
    let sources: Vec<&Path> = [Some(photos_of(&from)), there.as_deref()].into_iter().flatten().collect();
    let mut photos_missing = Vec::new();
    for row in photos::all(backup.reader()?).map_err(sql(LOOKING))? {
        if !lost.contains(&row.hash) {
            continue;
        }
        let looked: Vec<_> = sources.iter().map(|dir| check::photo(dir, &row)).collect::<Result<_, _>>()?;
        if looked.iter().all(Option::is_some) {
            photos_missing.extend(looked.into_iter().flatten().next());
        }
    }
    Ok(Outlook { manifest, lacks, photos_missing })
}

/// A backup whose journal and documents hold.
pub(crate) struct Sound {
    pub(crate) manifest: Manifest,
    /// Its real folder.
    pub(crate) from: PathBuf,
    /// Photos that it doesn't have whole any more.
    bad_photos: Vec<Hash>,
}

/// Reads a backup again, every byte of it. Photos that went bad are no reason to refuse it.
pub(crate) fn sound(from: &Path) -> Result<Sound, StoreError> {
    let (manifest, report) = verify_backup(from)?;
    let from = load::real(from)?;
    let mut bad_photos = Vec::new();
    for trouble in &report.troubles {
        match trouble {
            Trouble::PhotoMissing { hash, .. } | Trouble::PhotoAltered { hash, .. } => bad_photos.push(*hash),
            other => return Err(StoreError::BackupAltered { path: from, trouble: other.message() }),
        }
    }
    Ok(Sound { manifest, from, bad_photos })
}

/// The store in a place, by its real folder; `None` where nothing is in the way.
pub(crate) fn stands(into: &Path) -> Result<Option<PathBuf>, StoreError> {
    if is_empty(into)? {
        return Ok(None);
    }
    let dir = load::real(into)?;
    match load::database(&dir).exists() || load::head_file(&dir).exists() {
        true => Ok(Some(dir)),
        false => Err(StoreError::NotEmpty { dir }),
    }
}

/// Holds a backup, opened as a store, against the store in a folder.
pub(crate) fn lacks(
    there: &Path,
    backup: &Store,
    manifest: &Manifest,
    label_of: LabelOf<'_>,
) -> Result<Lacks, StoreError> {
    let mark = match head_file::read(&load::head_file(there)) {
        Ok(Found::Mark { mark, .. }) if mark.device == manifest.device => Some(mark),
        // What can't be read there must not keep the backup from being restored.
        _ => None,
    };
    let conn = backup.reader()?;
    let kept = hashes(conn).map_err(sql(LOOKING))?;
    let readable = saved::read(there).map(|saved| saved.events).unwrap_or_default();
    let entries = mark.and_then(|mark| lacking_of(&mark, manifest, &kept, &readable));
    let mut of: BTreeMap<Subject, Vec<Event>> = BTreeMap::new();
    for event in readable {
        of.entry(event.header.subject).or_default().push(event);
    }
    let mut newer = Vec::new();
    for (subject, events) in of {
        let lacking = events.iter().filter(|event| !kept.contains(&event.hash)).count() as u64;
        if lacking > 0 {
            let label = if subject.is_shop() { String::new() } else { label_of(&events) };
            let restored = heads::of(conn, subject).map_err(sql(LOOKING))?.seq;
            let there = events.iter().map(|event| event.header.subject_seq).max().unwrap_or(0);
            newer.push(NewerThere { subject, label, restored, there, lacking });
        }
    }
    Ok(Lacks { confirmed: mark.map(|mark| mark.head), entries, newer })
}

/// How many entries of the device were confirmed in a store and aren't in the backup; `None` where it can't be told.
fn lacking_of(mark: &Mark, backup: &Manifest, kept: &BTreeSet<Hash>, readable: &[Event]) -> Option<u64> {
    // Within an epoch there is one line of entries, and the backup has it up to its own end.
    if mark.epoch == backup.epoch {
        return Some(mark.head.seq.saturating_sub(backup.head.seq));
    }
    // One of the two went on from an earlier state, so that the same number may stand for two entries. Counted are those
    // up to the last one that both have, which is known only where all of them can be read.
    let own = || readable.iter().filter(|event| event.header.device == mark.device);
    if own().count() as u64 != mark.head.seq {
        return None;
    }
    let shared = own().filter(|event| kept.contains(&event.hash));
    let shared = shared.map(|event| event.header.device_seq).max().unwrap_or(0);
    Some(mark.head.seq - shared)
}

fn hashes(conn: &Connection) -> rusqlite::Result<BTreeSet<Hash>> {
    conn.prepare("SELECT hash FROM events")?.query_map([], |row| rows::hash(row, 0))?.collect()
}
