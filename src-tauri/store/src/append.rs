//! Writing an entry: its events, all or none, once.

use panside_journal::{Draft, Head, JobId, Origin, Place, Request, seal};
use rusqlite::{Connection, OptionalExtension};

use crate::error::sql;
use crate::open::Store;
use crate::{StoreError, jobs, rows};

const WRITING: &str = "writing an entry";
const ANSWER: &str = "SELECT job, request_hash, min(job_seq), max(job_seq) FROM events WHERE request = ?1 \
                      GROUP BY job, request_hash";
const HASH_AT: &str = "SELECT hash FROM events WHERE job = ?1 AND job_seq = ?2";

/// What one request writes to one job.
#[derive(Clone, Copy, Debug)]
pub struct Entry<'a> {
    /// The job.
    pub job: JobId,
    /// The job's head as the person saw it; [`Head::NONE`] for a new job.
    pub expected: Head,
    /// Which request, who, when.
    pub origin: &'a Origin,
    /// The events, in order; at least one.
    pub drafts: &'a [Draft],
    /// What the list of jobs says about the job after this entry: JSON text, kept and not read here.
    pub label: &'a str,
}

/// What became of an entry.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Appended {
    /// The job's head after the entry.
    pub head: Head,
    /// The number of its first event in the job.
    pub first_seq: u64,
    /// The number of its last event in the job.
    pub last_seq: u64,
    /// Whether the request had been written before, and nothing was written now.
    pub already: bool,
}

impl Store {
    /// Writes an entry. When this returns `Ok`, it is on disk and named by the head file.
    ///
    /// A request that was written before is answered as it was then, even if the job moved on since.
    ///
    /// # Errors
    /// [`StoreError::Stale`] when the job moved on; [`StoreError::RequestReused`] when the request's id was used
    /// for another wish; [`StoreError::Nothing`] without events; [`StoreError::Journal`] for a draft that can't
    /// be kept; [`StoreError::DiskFull`]: in all of these nothing was written. [`StoreError::Unconfirmed`] when
    /// the disk failed; the store then refuses with [`StoreError::Faulted`] until [`Store::reopen`].
    pub fn append(&mut self, entry: &Entry<'_>) -> Result<Appended, StoreError> {
        let (device, epoch, device_head) = (self.device, self.epoch, self.head);
        let (appended, device_head) = self.write(WRITING, |tx| {
            if let Some(before) = answer(tx, entry.job, &entry.origin.request)? {
                return Ok((before, device_head));
            }
            let job_head = rows::job_head(tx, entry.job).map_err(sql(WRITING))?;
            if job_head != entry.expected {
                return Err(StoreError::Stale { job: entry.job, expected: entry.expected, head: job_head });
            }
            write_events(tx, Place { device, epoch, device_head, job: entry.job, job_head }, entry)
        })?;
        if !appended.already {
            self.confirm(WRITING, device_head)?;
        }
        Ok(appended)
    }

    /// The answer to a request that was written before: to be asked before deciding what an entry would do, since
    /// the job may look different after the first try.
    ///
    /// # Errors
    /// [`StoreError::RequestReused`]. Whatever keeps the store from writing now, since an entry that the disk
    /// didn't confirm must not be called saved.
    pub fn answered(&self, job: JobId, request: &Request) -> Result<Option<Appended>, StoreError> {
        self.writable()?;
        answer(self.reader()?, job, request)
    }
}

fn answer(conn: &Connection, job: JobId, request: &Request) -> Result<Option<Appended>, StoreError> {
    let found = conn
        .prepare_cached(ANSWER)
        .and_then(|mut query| {
            query
                .query_row([request.id.0.as_bytes()], |row| {
                    let asked = (JobId(rows::uuid(row, 0)?), rows::hash(row, 1)?);
                    Ok((asked, rows::count(row, 2)?, rows::count(row, 3)?))
                })
                .optional()
        })
        .map_err(sql(WRITING))?;
    let Some((asked, first_seq, last_seq)) = found else { return Ok(None) };
    if asked != (job, request.hash) {
        return Err(StoreError::RequestReused { request: request.id });
    }
    let hash = conn
        .prepare_cached(HASH_AT)
        .and_then(|mut query| {
            query.query_row((job.0.as_bytes(), rows::signed(last_seq)), |row| rows::hash(row, 0))
        })
        .map_err(sql(WRITING))?;
    Ok(Some(Appended { head: Head { seq: last_seq, hash }, first_seq, last_seq, already: true }))
}

/// Seals and writes the events one after the other; returns the answer and the device's new head.
fn write_events(
    conn: &Connection,
    mut place: Place,
    entry: &Entry<'_>,
) -> Result<(Appended, Head), StoreError> {
    if entry.drafts.is_empty() {
        return Err(StoreError::Nothing);
    }
    let first_seq = place.job_head.seq.saturating_add(1);
    for draft in entry.drafts {
        let event = seal(draft, &place, entry.origin)?;
        rows::insert_event(conn, &event).map_err(sql(WRITING))?;
        place.device_head = Head { seq: event.header.device_seq, hash: event.hash };
        place.job_head = Head { seq: event.header.job_seq, hash: event.hash };
    }
    let head = place.job_head;
    jobs::put(conn, entry.job, head, entry.label).map_err(sql(WRITING))?;
    Ok((Appended { head, first_seq, last_seq: head.seq, already: false }, place.device_head))
}
