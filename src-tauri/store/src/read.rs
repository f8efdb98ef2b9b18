//! Reading the events of a job.

use panside_journal::{Event, Head, JobId, verify_job_chain};
use rusqlite::Connection;

use crate::error::sql;
use crate::open::Store;
use crate::{StoreError, rows};

const READING: &str = "reading the entries of a job";

impl Store {
    /// The events of one job, oldest first, their chain verified; empty for an unknown job.
    ///
    /// # Errors
    /// [`StoreError::Journal`] when the chain doesn't hold; see [`Store::events_unverified`].
    pub fn events(&self, job: JobId) -> Result<Vec<Event>, StoreError> {
        verified(self.reader()?, job).map(|(events, _)| events)
    }

    /// The events of one job as they lie there, for looking at a job whose chain doesn't hold.
    ///
    /// # Errors
    /// What the disk said.
    pub fn events_unverified(&self, job: JobId) -> Result<Vec<Event>, StoreError> {
        read(self.reader()?, job)
    }

    /// The newest event of a job; [`Head::NONE`] for an unknown one.
    ///
    /// # Errors
    /// What the disk said.
    pub fn head(&self, job: JobId) -> Result<Head, StoreError> {
        rows::job_head(self.reader()?, job).map_err(sql(READING))
    }
}

fn read(conn: &Connection, job: JobId) -> Result<Vec<Event>, StoreError> {
    let read = || -> rusqlite::Result<Vec<Event>> {
        let mut query = conn.prepare_cached(rows::EVENTS_OF_JOB)?;
        query.query_map([job.0.as_bytes()], rows::event)?.collect()
    };
    read().map_err(sql(READING))
}

/// A job's events and its head, the chain verified.
pub(crate) fn verified(conn: &Connection, job: JobId) -> Result<(Vec<Event>, Head), StoreError> {
    let events = read(conn, job)?;
    let head = verify_job_chain(&events)?;
    Ok((events, head))
}
