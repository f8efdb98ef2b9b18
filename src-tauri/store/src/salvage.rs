//! Saving what holds of a damaged store: into a new store, on a new device that received it. The damaged one is only
//! read.
//!
//! What was written by the damaged device can't go on as that device's chain where entries between are gone. So the new
//! store has an id of its own, and everything in it counts as received: each job's entries from the first on, as far as
//! their chain holds.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use panside_journal::{Event, Subject};
use panside_messages::{Arg, Message};
use rusqlite::{Connection, types::Value};

use crate::backup::{self, Kept};
use crate::check::MeaningOf;
use crate::error::{file, sql};
use crate::head_file::{self, Found};
use crate::load;
use crate::message::*;
use crate::open::{Options, Store};
use crate::photos::{self, PhotoRow};
use crate::saved::{self, Saved};
use crate::{Doing, StoreError, Trouble, disk};

const SAVING: Doing = Doing::Salvaging;
const TABLES: &str = "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT IN \
                      ('meta', 'epochs', 'events', 'heads', 'waiting', 'documents', 'photos') \
                      AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\'";
/// The report's file in the new store.
const REPORT: &str = "salvage.txt";

/// What was saved, and what was not.
#[derive(Debug)]
pub struct Salvaged {
    /// The new store.
    pub into: PathBuf,
    /// How many events were saved.
    pub events: u64,
    /// About how many jobs (and shops).
    pub subjects: u64,
    /// How many documents.
    pub documents: u64,
    /// How many photos, each for its job.
    pub photos: u64,
    /// The jobs of which not all is saved.
    pub rest: Vec<Rest>,
    /// Documents and photos that are named and not saved.
    pub missing: Vec<Trouble>,
    /// What else is known not to be saved: entries that the head file confirms and of which nothing is left;
    /// tables beside the journal (settings, spec sheets, drafts) that could not all be read.
    /// The rows that could are taken over as they are: there is nothing to hold them against.
    pub unread: Vec<Message>,
}

/// A subject of which not all is saved.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Rest {
    /// The job, or the shop.
    pub subject: Subject,
    /// How many of its entries are saved, from the first on.
    pub saved: u64,
    /// How many it had at least: by the list of jobs, or by the newest entry found.
    pub of: u64,
    /// Entries found that hold by themselves and follow one that is gone. They are not saved.
    pub after_gap: u64,
}

impl Rest {
    /// What to say to a person.
    #[must_use]
    pub fn message(&self) -> Message {
        let Rest { subject, saved, of, after_gap } = *self;
        let (subject, gone) = (subject.to_string(), saved + 1);
        match after_gap {
            0 => store_salvaged_rest(subject, saved, of, gone),
            _ => store_salvaged_rest_after(subject, saved, of, gone, after_gap),
        }
    }
}

impl Salvaged {
    /// The report, on several lines.
    #[must_use]
    pub fn message(&self) -> Message {
        let counts = store_salvaged_counts(self.events, self.subjects, self.documents, self.photos);
        let not_saved = self.not_saved();
        let lines = if not_saved.is_empty() {
            vec![counts, store_salvaged_all()]
        } else {
            let items = not_saved.into_iter().map(store_salvaged_item);
            [counts, store_salvaged_not()].into_iter().chain(items).collect()
        };
        store_salvaged(self.into.as_path(), Arg::lines(lines))
    }

    /// What is known not to be saved.
    #[must_use]
    pub fn not_saved(&self) -> Vec<Message> {
        let rest = self.rest.iter().map(Rest::message);
        let missing = self.missing.iter().map(Trouble::message);
        rest.chain(missing).chain(self.unread.iter().cloned()).collect()
    }
}

/// Saves everything that verifies of the store in `from` into a new store in `into`, which doesn't exist or is empty.
/// The new store has the ids of `options`; the report is in it too, as `salvage.txt`.
///
/// # Errors
/// [`StoreError::NoStore`], [`StoreError::NotEmpty`], [`StoreError::InsideStore`], [`StoreError::Locked`] while the damaged
/// store is written to; what the disk said of the new one.
pub fn salvage(
    from: &Path,
    into: &Path,
    options: Options,
    label_of: crate::LabelOf<'_>,
    meaning_of: MeaningOf<'_>,
) -> Result<Salvaged, StoreError> {
    if !load::database(from).exists() {
        return Err(StoreError::NoStore { dir: from.to_owned() });
    }
    if !is_empty(into)? {
        return Err(StoreError::NotEmpty { dir: into.to_owned() });
    }
    let from = &load::real(from)?;
    let into = &place(SAVING, into)?;
    if into.starts_with(from) {
        return Err(StoreError::InsideStore { dir: into.clone() });
    }
    let _lock = lock_where_possible(from)?;
    let saved = saved::read(from)?;
    let part = into.with_added_extension("salvaging.part");
    disk::remove_dir(SAVING, &part)?;
    let mut store = Store::open(&part, Options { seen: None, ..options.clone() })?;
    let mut salvaged = fill(&mut store, from, into, saved, label_of, meaning_of)?;
    salvaged.unread.extend(short_of_confirmed(from, salvaged.events));
    store.close()?;
    disk::write_whole(SAVING, &part.join(REPORT), (salvaged.message().english() + "\n").as_bytes())?;
    put(SAVING, &part, into)?;
    Store::adopt(into, options)?.close()?;
    Ok(salvaged)
}

/// What the head file confirmed beyond what was saved: it shows also entries of which nothing at all is left.
fn short_of_confirmed(from: &Path, saved: u64) -> Option<Message> {
    match head_file::read(&load::head_file(from)) {
        Ok(Found::Mark { mark, .. }) if mark.tally.events > saved => {
            Some(store_salvaged_confirmed(mark.tally.events, saved))
        }
        _ => None,
    }
}

fn fill(
    store: &mut Store,
    from: &Path,
    into: &Path,
    saved: Saved,
    label_of: crate::LabelOf<'_>,
    meaning_of: MeaningOf<'_>,
) -> Result<Salvaged, StoreError> {
    let Saved { events, waiting, documents, photos, rest } = saved;
    store.receive(&events, label_of)?;
    store.receive(&waiting, label_of)?;
    for document in &documents {
        store.put_document(&document.kind, &document.bytes)?;
    }
    let mut kept = 0;
    for row in photos {
        kept += u64::from(keep_photo(store, from, row)?);
    }
    let unread = store.write(SAVING, |tx| copy_tables(from, tx))?;
    let report = store.check(meaning_of)?;
    Ok(Salvaged {
        into: into.to_owned(),
        events: report.events,
        subjects: count_subjects(&events),
        documents: report.documents,
        photos: kept,
        rest,
        missing: report.troubles,
        unread,
    })
}

/// Keeps a photo that holds, if need be with itself in place of its small picture. One that doesn't the check tells of
/// where an entry names it.
fn keep_photo(store: &mut Store, from: &Path, mut row: PhotoRow) -> Result<bool, StoreError> {
    let dir = store.dir.clone();
    if let Kept::Not(_) = backup::keep_photo(SAVING, &[from], &dir, &row)? {
        let Ok(photo) = photos::photo_in(from, &row) else { return Ok(false) };
        photos::write_in(SAVING, &dir, (&row.hash, row.format), &photo, &photo)?;
        row.thumbnail = row.hash;
    }
    store.put_photo_row(&row)
}

fn count_subjects(events: &[Event]) -> u64 {
    events.iter().map(|event| event.header.subject).collect::<BTreeSet<_>>().len() as u64
}

/// Copies what is kept beside the journal, row by row as far as it can be read; answers what could not.
fn copy_tables(from: &Path, to: &Connection) -> Result<Vec<Message>, StoreError> {
    let mut unread = Vec::new();
    let tables = || -> rusqlite::Result<Vec<String>> {
        to.prepare(TABLES)?.query_map([], |row| row.get(0))?.collect()
    };
    let damaged = load::connect_for_reading(from);
    for table in tables().map_err(sql(SAVING))? {
        let copied = match &damaged {
            Ok(damaged) => copy_table(damaged, to, &table)?,
            Err(error) => Some(error.to_string().into()),
        };
        unread.extend(copied.map(|why| store_salvaged_table(&table, why)));
    }
    Ok(unread)
}

/// Copies the rows of one table; answers why not all of them.
fn copy_table(from: &Connection, to: &Connection, table: &str) -> Result<Option<Arg>, StoreError> {
    let mut query = match from.prepare(&format!("SELECT * FROM \"{table}\"")) {
        Ok(query) => query,
        Err(error) => return Ok(Some(error.to_string().into())),
    };
    let columns = query.column_count();
    let places = vec!["?"; columns].join(", ");
    let put = format!("INSERT OR IGNORE INTO \"{table}\" VALUES ({places})");
    let mut put = to.prepare(&put).map_err(sql(SAVING))?;
    let mut rows = match query.query([]) {
        Ok(rows) => rows,
        Err(error) => return Ok(Some(error.to_string().into())),
    };
    loop {
        let row = match rows.next() {
            Ok(Some(row)) => row,
            Ok(None) => return Ok(None),
            Err(error) => return Ok(Some(error.to_string().into())),
        };
        let values: rusqlite::Result<Vec<Value>> = (0..columns).map(|column| row.get(column)).collect();
        match values.map(|values| put.execute(rusqlite::params_from_iter(values))) {
            Ok(Ok(_)) => {}
            Ok(Err(error)) if error.sqlite_error_code() == Some(rusqlite::ErrorCode::ConstraintViolation) => {
                return Ok(Some(store_row_differs().into()));
            }
            Ok(Err(error)) => return Err(sql(SAVING)(error)),
            Err(error) => return Ok(Some(error.to_string().into())),
        }
    }
}

/// The damaged store's lock. Where its folder can't be written nobody writes there.
pub(crate) fn lock_where_possible(from: &Path) -> Result<Option<load::Lock>, StoreError> {
    match load::lock(from) {
        Ok(lock) => Ok(Some(lock)),
        Err(locked @ StoreError::Locked { .. }) => Err(locked),
        Err(_) => Ok(None),
    }
}

/// Whether there is nothing in the way in a place.
pub(crate) fn is_empty(dir: &Path) -> Result<bool, StoreError> {
    match fs::read_dir(dir) {
        Ok(mut entries) => Ok(entries.next().is_none()),
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => Ok(true),
        Err(error) => Err(file(Doing::LookingAtFolder, dir)(error)),
    }
}

/// A place as a whole path with a name at its end, whether or not a folder is there yet.
pub(crate) fn place(doing: Doing, into: &Path) -> Result<PathBuf, StoreError> {
    let path = match into.exists() {
        true => load::real(into)?,
        false => std::path::absolute(into).map_err(file(doing, into))?,
    };
    if path.file_name().is_some() { Ok(path) } else { Err(StoreError::NoName { path }) }
}

/// Puts a folder that is whole in its place, where nothing or an empty folder is.
pub(crate) fn put(doing: Doing, part: &Path, into: &Path) -> Result<(), StoreError> {
    match fs::remove_dir(into) {
        Err(error) if error.kind() != std::io::ErrorKind::NotFound => return Err(file(doing, into)(error)),
        _ => {}
    }
    fs::rename(part, into).map_err(file(doing, into))?;
    disk::sync_parent(doing, into)
}
