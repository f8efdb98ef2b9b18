//! The list of jobs: derived from the events, and made anew from them when it is wrong.

use std::collections::BTreeMap;

use panside_journal::{Event, Head, JobId};
use rusqlite::{Connection, params};

use crate::error::sql;
use crate::open::Store;
use crate::{StoreError, Trouble, rows};

const LISTING: &str = "listing the jobs";
const REBUILDING: &str = "rebuilding the list of jobs";
const ALL: &str = "SELECT job, head_seq, head_hash, label FROM jobs ORDER BY job";
const PUT: &str = "INSERT INTO jobs (job, head_seq, head_hash, label) VALUES (?1, ?2, ?3, ?4) \
                   ON CONFLICT (job) DO UPDATE SET head_seq = ?2, head_hash = ?3, label = ?4";
const JOBS_IN_EVENTS: &str = "SELECT DISTINCT job FROM events ORDER BY job";

/// One line of the list of jobs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct JobRow {
    /// The job.
    pub job: JobId,
    /// Its newest event.
    pub head: Head,
    /// What the layer above wants to show of it: JSON text.
    pub label: String,
}

/// Makes a job's label from all its events; the layer above knows what they mean.
pub type LabelOf<'a> = &'a dyn Fn(&[Event]) -> String;

pub(crate) fn put(conn: &Connection, job: JobId, head: Head, label: &str) -> rusqlite::Result<()> {
    conn.prepare_cached(PUT)?.execute(params![
        job.0.as_bytes(),
        rows::signed(head.seq),
        head.hash.0,
        label
    ])?;
    Ok(())
}

pub(crate) fn all(conn: &Connection) -> rusqlite::Result<Vec<JobRow>> {
    let mut query = conn.prepare_cached(ALL)?;
    query
        .query_map([], |row| {
            Ok(JobRow { job: JobId(rows::uuid(row, 0)?), head: rows::head(row, 1, 2)?, label: row.get(3)? })
        })?
        .collect()
}

/// Compares the list with the heads that the events give.
pub(crate) fn compare(conn: &Connection, heads: &BTreeMap<JobId, Head>) -> rusqlite::Result<Option<Trouble>> {
    let listed: BTreeMap<JobId, Head> = all(conn)?.into_iter().map(|row| (row.job, row.head)).collect();
    let differs = heads
        .iter()
        .find(|(job, head)| listed.get(job) != Some(head))
        .or_else(|| listed.iter().find(|(job, _)| !heads.contains_key(job)));
    Ok(differs.map(|(job, _)| Trouble::JobDiffers { job: *job }))
}

impl Store {
    /// All jobs, ordered by their id.
    ///
    /// # Errors
    /// What the disk said.
    pub fn jobs(&self) -> Result<Vec<JobRow>, StoreError> {
        all(self.reader()?).map_err(sql(LISTING))
    }

    /// Makes the list of jobs anew from the events.
    ///
    /// # Errors
    /// [`StoreError::Journal`] when a job's chain doesn't hold; then the list stays as it was.
    pub fn rebuild(&mut self, label_of: LabelOf<'_>) -> Result<(), StoreError> {
        self.write(REBUILDING, |tx| {
            tx.execute("DELETE FROM jobs", []).map_err(sql(REBUILDING))?;
            for job in in_events(tx).map_err(sql(REBUILDING))? {
                let (events, head) = crate::read::verified(tx, job)?;
                put(tx, job, head, &label_of(&events)).map_err(sql(REBUILDING))?;
            }
            Ok(())
        })?;
        self.troubles.retain(|trouble| !matches!(trouble, Trouble::JobDiffers { .. }));
        Ok(())
    }
}

/// The jobs that have events.
pub(crate) fn in_events(conn: &Connection) -> rusqlite::Result<Vec<JobId>> {
    let mut query = conn.prepare(JOBS_IN_EVENTS)?;
    query.query_map([], |row| rows::uuid(row, 0).map(JobId))?.collect()
}
