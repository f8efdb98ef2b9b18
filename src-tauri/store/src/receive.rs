//! Taking over a job's events that another device wrote.

use panside_journal::{Event, Head, JobId, verify_job_chain};
use rusqlite::{Connection, OptionalExtension, params};

use crate::error::sql;
use crate::open::Store;
use crate::{StoreError, jobs, rows};

const RECEIVING: &str = "taking over a job";
const AT: &str = "SELECT hash FROM events WHERE job = ?1 AND job_seq = ?2";

/// What became of received events.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Received {
    /// How many of them were new here.
    pub new: u64,
    /// The job's head now; further on than the received events when more was already here.
    pub head: Head,
}

impl Store {
    /// Takes over a job's events from its first one on. It may be given the same events more than once, and
    /// events that are partly here. `label` is the list's line for the job, kept when something was new.
    ///
    /// The head file doesn't know of received events until this device writes its own next one, so accept the job
    /// with an event right after.
    ///
    /// # Errors
    /// [`StoreError::Journal`] when the chain doesn't hold; [`StoreError::Nothing`] without events;
    /// [`StoreError::Forked`] when the job went on differently here; [`StoreError::OwnEventUnknown`] when they
    /// contain events of this device that it has lost. In all of these nothing was taken over.
    pub fn receive(&mut self, events: &[Event], label: &str) -> Result<Received, StoreError> {
        let job = events.first().ok_or(StoreError::Nothing)?.header.job;
        verify_job_chain(events)?;
        let device = self.device;
        self.write(RECEIVING, |tx| {
            let mut new = 0;
            for event in events {
                let seq = event.header.job_seq;
                match hash_at(tx, job, seq).map_err(sql(RECEIVING))? {
                    Some(here) if here == event.hash.0 => {}
                    Some(_) => return Err(StoreError::Forked { job, seq }),
                    None if event.header.device == device => {
                        return Err(StoreError::OwnEventUnknown { job, seq });
                    }
                    None => {
                        rows::insert_event(tx, event).map_err(sql(RECEIVING))?;
                        new += 1;
                    }
                }
            }
            let head = rows::job_head(tx, job).map_err(sql(RECEIVING))?;
            if new > 0 {
                jobs::put(tx, job, head, label).map_err(sql(RECEIVING))?;
            }
            Ok(Received { new, head })
        })
    }
}

fn hash_at(conn: &Connection, job: JobId, seq: u64) -> rusqlite::Result<Option<[u8; 32]>> {
    conn.prepare_cached(AT)?
        .query_row(params![job.0.as_bytes(), rows::signed(seq)], |row| row.get(0))
        .optional()
}
