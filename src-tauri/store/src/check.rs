//! Checking a whole store: everything that can be compared with something else.

use panside_journal::{Event, Hash, Head, Subject};
use rusqlite::Connection;
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use crate::error::sql;
use crate::open::Store;
use crate::{Doing, PhotoRow, StoreError, Trouble, head_file, heads, load, photos, read, rows, walk};

const CHECKING: Doing = Doing::Checking;

/// What a subject's events say, in the words of the layer above: what a check holds the rest of the store against.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Meaning {
    /// The line in the list of jobs; empty for the shop.
    pub label: String,
    /// The photos that the events name.
    pub photos: BTreeSet<Hash>,
    /// The documents that the events name.
    pub documents: BTreeSet<Hash>,
}

/// Reads the events about one subject.
pub type MeaningOf<'a> = &'a dyn Fn(Subject, &[Event]) -> Meaning;

/// What a check found. Drafts, settings, proofs, and the sizes that are kept beside a photo have no second copy and are
/// not checked.
#[derive(Debug)]
pub struct Report {
    /// How many events hold, up to the first trouble in the journal.
    pub events: u64,
    /// The newest event of this device among them.
    pub head: Head,
    /// How many photos are there and unaltered.
    pub photos: u64,
    /// How many documents are unaltered.
    pub documents: u64,
    /// Everything that is wrong; empty for a store in order.
    pub troubles: Vec<Trouble>,
}

impl Store {
    /// Checks the journal's chains, the head file, the list of jobs with its labels, has SQLite check its own structures,
    /// and holds events, documents and photos against each other both ways: what an event names must be there, and what
    /// is there must be named. Reads every byte that matters: seconds for a large store. Beside a process that writes
    /// it sees one state of the database.
    ///
    /// # Errors
    /// What the disk said, when something couldn't be read at all. What is found wrong is in the report.
    pub fn check(&self, meaning_of: MeaningOf<'_>) -> Result<Report, StoreError> {
        // The head file is read first: a writer beside us only ever moves the database ahead of it.
        let found = head_file::read(&load::head_file(&self.dir))?;
        let conn = &self.snapshot()?;
        let walk = walk::walk(conn, self.device, &found)?;
        let mut report =
            Report { events: walk.events, head: walk.head, photos: 0, documents: 0, troubles: walk.troubles };
        report.troubles.extend(structure(conn).map_err(sql(CHECKING))?);
        // Where the journal doesn't hold, nothing can be held against it.
        let named = match report.troubles.iter().any(Trouble::stops_writing) {
            true => None,
            false => Some(named(conn, meaning_of, &mut report)?),
        };
        self.check_documents(conn, named.as_ref(), &mut report)?;
        self.check_photos(conn, named.as_ref(), &mut report)?;
        Ok(report)
    }

    fn check_documents(
        &self,
        conn: &Connection,
        named: Option<&Named>,
        report: &mut Report,
    ) -> Result<(), StoreError> {
        let kept = documents(conn, report).map_err(sql(CHECKING))?;
        for (hash, subject) in named.iter().flat_map(|named| &named.documents) {
            if !kept.contains(hash) {
                report.troubles.push(Trouble::DocumentMissing { hash: *hash, subject: *subject });
            }
        }
        Ok(())
    }

    fn check_photos(
        &self,
        conn: &Connection,
        named: Option<&Named>,
        report: &mut Report,
    ) -> Result<(), StoreError> {
        let rows = photos::all(conn).map_err(sql(CHECKING))?;
        let kept: BTreeSet<(Hash, Subject)> = rows.iter().map(|row| (row.hash, row.job.into())).collect();
        for (hash, subject) in named.iter().flat_map(|named| &named.photos) {
            if !kept.contains(&(*hash, *subject)) {
                report.troubles.push(Trouble::PhotoUnkept { hash: *hash, subject: *subject });
            }
        }
        for row in rows {
            match photo(&self.dir, &row)? {
                None => report.photos += 1,
                Some(trouble) => report.troubles.push(trouble),
            }
        }
        Ok(())
    }
}

/// What is wrong with a photo or its small picture, whose files are in the folders in `dir`.
pub(crate) fn photo(dir: &Path, row: &PhotoRow) -> Result<Option<Trouble>, StoreError> {
    match photos::photo_in(dir, row).and_then(|_| photos::thumbnail_in(dir, row)) {
        Ok(_) => Ok(None),
        Err(StoreError::PhotoMissing { hash }) => Ok(Some(Trouble::PhotoMissing { hash, job: row.job })),
        Err(StoreError::PhotoAltered { hash }) => Ok(Some(Trouble::PhotoAltered { hash, job: row.job })),
        Err(error) => Err(error),
    }
}

/// Holds every document against its hash; answers those that are kept.
pub(crate) fn documents(conn: &Connection, report: &mut Report) -> rusqlite::Result<BTreeSet<Hash>> {
    let mut kept = BTreeSet::new();
    let mut query = conn.prepare("SELECT hash, bytes FROM documents")?;
    let mut found = query.query([])?;
    while let Some(row) = found.next()? {
        let hash = rows::hash(row, 0)?;
        kept.insert(hash);
        if row.get_ref(1)?.as_blob().is_ok_and(|bytes| Hash::of(bytes) == hash) {
            report.documents += 1;
        } else {
            report.troubles.push(Trouble::DocumentAltered { hash });
        }
    }
    Ok(kept)
}

/// SQLite's own check; each line that isn't "ok" is a finding.
pub(crate) fn structure(conn: &Connection) -> rusqlite::Result<Vec<Trouble>> {
    let mut query = conn.prepare("PRAGMA integrity_check")?;
    let lines = query.query_map([], |row| row.get::<_, String>(0))?.collect::<Result<Vec<_>, _>>()?;
    Ok(lines.into_iter().filter(|line| line != "ok").map(|detail| Trouble::Damaged { detail }).collect())
}

/// What all events name, with the subject that names it.
struct Named {
    photos: BTreeSet<(Hash, Subject)>,
    documents: BTreeMap<Hash, Subject>,
}

/// Reads all events, and finds the subjects whose line in the list isn't the one that their events give.
fn named(conn: &Connection, meaning_of: MeaningOf<'_>, report: &mut Report) -> Result<Named, StoreError> {
    let mut named = Named { photos: BTreeSet::new(), documents: BTreeMap::new() };
    for row in heads::all(conn).map_err(sql(CHECKING))? {
        let subject = row.subject;
        let Meaning { label, photos, documents } = meaning_of(subject, &read::chained(conn, subject)?);
        if label != row.label {
            report.troubles.push(Trouble::ListDiffers { subject });
        }
        named.photos.extend(photos.into_iter().map(|hash| (hash, subject)));
        named.documents.extend(documents.into_iter().map(|hash| (hash, subject)));
    }
    Ok(named)
}
