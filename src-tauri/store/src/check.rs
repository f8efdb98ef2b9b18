//! Checking a whole store: everything that can be compared with something else.

use panside_journal::{Hash, Head, JobId};
use rusqlite::Connection;

use crate::error::sql;
use crate::jobs::LabelOf;
use crate::open::Store;
use crate::{StoreError, Trouble, head_file, jobs, load, photos, read, walk};

const CHECKING: &str = "checking the store";

/// What a check found. Drafts, proofs, and the sizes that are kept beside a photo have no second copy and are not
/// checked.
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
    /// Checks the journal's chains, the head file, the list of jobs with its labels, the documents, the photos,
    /// and has SQLite check its own structures. Reads every byte that matters: seconds for a large store.
    ///
    /// # Errors
    /// What the disk said, when something couldn't be read at all. What is found wrong is in the report.
    pub fn check(&self, label_of: LabelOf<'_>) -> Result<Report, StoreError> {
        let conn = self.reader()?;
        let found = head_file::read(&load::head_file(&self.dir))?;
        let walk = walk::walk(conn, self.device, &found)?;
        let mut report =
            Report { events: walk.events, head: walk.head, photos: 0, documents: 0, troubles: walk.troubles };
        report.troubles.extend(structure(conn).map_err(sql(CHECKING))?);
        // Where the journal doesn't hold, the list can't be held against it.
        if !report.troubles.iter().any(Trouble::stops_writing) {
            report.troubles.extend(jobs::compare(conn, &walk.jobs).map_err(sql(CHECKING))?);
            report.troubles.extend(labels(conn, label_of)?);
        }
        self.check_documents(conn, &mut report)?;
        self.check_photos(conn, &mut report)?;
        Ok(report)
    }

    fn check_documents(&self, conn: &Connection, report: &mut Report) -> Result<(), StoreError> {
        let mut query = conn.prepare("SELECT hash, bytes FROM documents").map_err(sql(CHECKING))?;
        let mut found = query.query([]).map_err(sql(CHECKING))?;
        while let Some(row) = found.next().map_err(sql(CHECKING))? {
            let hash = crate::rows::hash(row, 0).map_err(sql(CHECKING))?;
            let bytes = row.get_ref(1).map_err(sql(CHECKING))?;
            if bytes.as_blob().is_ok_and(|bytes| Hash::of(bytes) == hash) {
                report.documents += 1;
            } else {
                report.troubles.push(Trouble::DocumentAltered { hash });
            }
        }
        Ok(())
    }

    fn check_photos(&self, conn: &Connection, report: &mut Report) -> Result<(), StoreError> {
        for row in photos::all(conn).map_err(sql(CHECKING))? {
            match self.read_photo(&row).and_then(|_| self.read_thumbnail(&row)) {
                Ok(_) => report.photos += 1,
                Err(StoreError::PhotoMissing { hash }) => {
                    report.troubles.push(Trouble::PhotoMissing { hash, job: row.job });
                }
                Err(StoreError::PhotoAltered { hash }) => {
                    report.troubles.push(Trouble::PhotoAltered { hash, job: row.job });
                }
                Err(error) => return Err(error),
            }
        }
        Ok(())
    }
}

/// SQLite's own check; each line that isn't "ok" is a finding.
fn structure(conn: &Connection) -> rusqlite::Result<Vec<Trouble>> {
    let mut query = conn.prepare("PRAGMA integrity_check")?;
    let lines = query.query_map([], |row| row.get::<_, String>(0))?.collect::<Result<Vec<_>, _>>()?;
    Ok(lines.into_iter().filter(|line| line != "ok").map(|detail| Trouble::Damaged { detail }).collect())
}

/// The jobs whose label isn't the one that their events give.
fn labels(conn: &Connection, label_of: LabelOf<'_>) -> Result<Vec<Trouble>, StoreError> {
    let wrong = |row: &jobs::JobRow| -> Result<Option<JobId>, StoreError> {
        let (events, _) = read::verified(conn, row.job)?;
        Ok((label_of(&events) != row.label).then_some(row.job))
    };
    let listed = jobs::all(conn).map_err(sql(CHECKING))?;
    let found = listed.iter().filter_map(|row| wrong(row).transpose());
    found.map(|job| job.map(|job| Trouble::JobDiffers { job })).collect()
}
