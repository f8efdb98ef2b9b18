//! Drafts: what was typed and is not yet done. They survive a restart and are no part of the journal.
//!
//! What is acknowledged is in the journal; what is typed is here, so that closing the window loses neither.

use std::collections::BTreeMap;

use panside_journal::JobId;
use rusqlite::{OptionalExtension, params};

use crate::error::{at_most, sql};
use crate::open::Store;
use crate::settings::LARGEST_KEY;
use crate::{Doing, StoreError};

const KEEPING: Doing = Doing::KeepingDraft;
const READING: Doing = Doing::ReadingDraft;
const PUT: &str = "INSERT INTO drafts (job, key, text) VALUES (?1, ?2, ?3) \
                   ON CONFLICT (job, key) DO UPDATE SET text = ?3";
const GET: &str = "SELECT text FROM drafts WHERE job = ?1 AND key = ?2";
const OF_JOB: &str = "SELECT key, text FROM drafts WHERE job = ?1";
const CLEAR: &str = "DELETE FROM drafts WHERE job = ?1 AND key = ?2";
/// The most bytes of a draft: one entry as it is typed.
const LARGEST: usize = 1 << 16;

impl Store {
    /// Keeps what was typed under a key of a job, in place of what stood there.
    ///
    /// # Errors
    /// [`StoreError::TooLong`]; those of a write.
    pub fn put_draft(&mut self, job: JobId, key: &str, text: &str) -> Result<(), StoreError> {
        at_most(KEEPING, key, LARGEST_KEY)?;
        at_most(KEEPING, text, LARGEST)?;
        self.write(KEEPING, |tx| {
            tx.execute(PUT, params![job.0.as_bytes(), key, text]).map_err(sql(KEEPING))?;
            Ok(())
        })
    }

    /// What was typed under a key of a job.
    ///
    /// # Errors
    /// What the disk said.
    pub fn draft(&self, job: JobId, key: &str) -> Result<Option<String>, StoreError> {
        self.reader()?
            .query_row(GET, params![job.0.as_bytes(), key], |row| row.get(0))
            .optional()
            .map_err(sql(READING))
    }

    /// All drafts of a job by their keys.
    ///
    /// # Errors
    /// What the disk said.
    pub fn drafts(&self, job: JobId) -> Result<BTreeMap<String, String>, StoreError> {
        let read = |conn: &rusqlite::Connection| -> rusqlite::Result<_> {
            let mut query = conn.prepare_cached(OF_JOB)?;
            query.query_map([job.0.as_bytes()], |row| Ok((row.get(0)?, row.get(1)?)))?.collect()
        };
        read(self.reader()?).map_err(sql(READING))
    }

    /// Forgets a draft; there need not be one.
    ///
    /// # Errors
    /// Those of a write.
    pub fn clear_draft(&mut self, job: JobId, key: &str) -> Result<(), StoreError> {
        self.write(KEEPING, |tx| {
            tx.execute(CLEAR, params![job.0.as_bytes(), key]).map_err(sql(KEEPING))?;
            Ok(())
        })
    }
}
