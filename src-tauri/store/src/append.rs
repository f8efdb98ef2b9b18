//! Writing an entry: its events, all or none, once.

use panside_journal::{Draft, Head, Origin, PersonId, Place, Request, Subject, seal};
use rusqlite::{Connection, OptionalExtension};

use crate::error::sql;
use crate::heads::{self, Tally};
use crate::open::Store;
use crate::{Doing, StoreError, pins, receive, rows, sheets};

const WRITING: Doing = Doing::WritingEntry;
const ANSWER: &str = "SELECT shop, subject, request_hash, min(subject_seq), max(subject_seq) FROM events \
                      WHERE request = ?1 AND side = 0 GROUP BY shop, subject, request_hash";
const HASH_AT: &str =
    "SELECT hash FROM events WHERE shop = ?1 AND subject = ?2 AND subject_seq = ?3 AND side = 0";

/// What one request writes about one subject.
#[derive(Clone, Copy, Debug)]
pub struct Entry<'a> {
    /// What it is about: a job, or the shop as this device tells it.
    pub subject: Subject,
    /// The subject's head as the person saw it; [`Head::NONE`] for a new one.
    pub expected: Head,
    /// Which request, who, when.
    pub origin: &'a Origin,
    /// The events, in order; at least one.
    pub drafts: &'a [Draft],
    /// What the list of jobs says about the job after this entry: JSON text, kept and not read here. Empty for the
    /// shop.
    pub label: &'a str,
}

/// What is written together with an entry beside the journal: with it or not at all.
#[derive(Clone, Copy, Debug)]
pub enum With<'a> {
    /// What is known of a person's PIN, in place of what stood there.
    Pin {
        /// Whose.
        person: PersonId,
        /// As [`Store::put_pin`] has it.
        text: &'a str,
    },
    /// What is typed of a spec sheet is forgotten: it is kept now.
    SheetTyped(&'a str),
}

/// What became of an entry.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Appended {
    /// The subject's head after the entry.
    pub head: Head,
    /// The number of its first event among those about the subject.
    pub first_seq: u64,
    /// The number of its last event among those about the subject.
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
    /// [`StoreError::Stale`] when the subject moved on; [`StoreError::RequestReused`] when the request's id was used
    /// for another command; [`StoreError::Forked`] when the job went on in two places; [`StoreError::Nothing`] without
    /// events; [`StoreError::Journal`] for a draft that can't
    /// be kept; [`StoreError::DiskFull`]: in all of these nothing was written. [`StoreError::Unconfirmed`] when
    /// the disk failed; the store then refuses with [`StoreError::Faulted`] until [`Store::reopen`].
    pub fn append(&mut self, entry: &Entry<'_>) -> Result<Appended, StoreError> {
        self.append_with(entry, &[])
    }

    /// Writes an entry, and rows beside the journal in the same transaction.
    ///
    /// # Errors
    /// Those of [`Store::append`].
    pub fn append_with(&mut self, entry: &Entry<'_>, with: &[With<'_>]) -> Result<Appended, StoreError> {
        let (device, epoch, device_head, tally) = (self.device, self.epoch, self.head, self.tally);
        let subject = entry.subject;
        let (appended, device_head, tally) = self.write(WRITING, |tx| {
            if let Some(before) = answer(tx, subject, &entry.origin.request)? {
                return Ok((before, device_head, tally));
            }
            let subject_head = ground(tx, subject)?;
            if subject_head != entry.expected {
                return Err(StoreError::Stale { subject, expected: entry.expected, head: subject_head });
            }
            for with in with {
                match with {
                    With::Pin { person, text } => pins::put(tx, *person, text),
                    With::SheetTyped(draft) => sheets::clear_draft(tx, draft),
                }
                .map_err(sql(WRITING))?;
            }
            write_events(tx, Place { device, epoch, device_head, subject, subject_head }, entry, tally)
        })?;
        if !appended.already {
            self.tally = tally;
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
    pub fn answered(
        &self,
        subject: impl Into<Subject>,
        request: &Request,
    ) -> Result<Option<Appended>, StoreError> {
        self.writable()?;
        answer(self.reader()?, subject.into(), request)
    }
}

/// The head that an entry goes on from. The list and the events must agree about it, and the job must have gone one
/// way only.
fn ground(conn: &Connection, subject: Subject) -> Result<Head, StoreError> {
    let listed = heads::of(conn, subject).map_err(sql(WRITING))?;
    let found = rows::subject_head(conn, subject).map_err(sql(WRITING))?;
    if listed != found {
        return Err(StoreError::NotAllThere { subject, listed, found });
    }
    match receive::side(conn, subject).map_err(sql(WRITING))? {
        Some(seq) => Err(StoreError::Forked { subject, seq }),
        None => Ok(found),
    }
}

fn answer(conn: &Connection, subject: Subject, request: &Request) -> Result<Option<Appended>, StoreError> {
    let found = conn
        .prepare_cached(ANSWER)
        .and_then(|mut query| {
            query
                .query_row([request.id.0.as_bytes()], |row| {
                    let asked = (rows::subject(row, 0)?, rows::hash(row, 2)?);
                    Ok((asked, rows::count(row, 3)?, rows::count(row, 4)?))
                })
                .optional()
        })
        .map_err(sql(WRITING))?;
    let Some((asked, first_seq, last_seq)) = found else { return Ok(None) };
    if asked != (subject, request.hash) {
        return Err(StoreError::RequestReused { request: request.id });
    }
    let hash = conn
        .prepare_cached(HASH_AT)
        .and_then(|mut query| {
            let (shop, id) = rows::columns(subject);
            query.query_row((shop, id, rows::signed(last_seq)), |row| rows::hash(row, 0))
        })
        .map_err(sql(WRITING))?;
    Ok(Some(Appended { head: Head { seq: last_seq, hash }, first_seq, last_seq, already: true }))
}

/// Seals and writes the events one after the other; returns the answer, the device's new head and the new tally.
fn write_events(
    conn: &Connection,
    mut place: Place,
    entry: &Entry<'_>,
    mut tally: Tally,
) -> Result<(Appended, Head, Tally), StoreError> {
    if entry.drafts.is_empty() {
        return Err(StoreError::Nothing);
    }
    let first_seq = place.subject_head.seq.saturating_add(1);
    for draft in entry.drafts {
        let event = seal(draft, &place, entry.origin)?;
        rows::insert_event(conn, &event, false).map_err(sql(WRITING))?;
        place.device_head = Head { seq: event.header.device_seq, hash: event.hash };
        place.subject_head = Head { seq: event.header.subject_seq, hash: event.hash };
        tally.events += 1;
    }
    let head = place.subject_head;
    heads::put(conn, &mut tally, entry.subject, head, entry.label).map_err(sql(WRITING))?;
    Ok((Appended { head, first_seq, last_seq: head.seq, already: false }, place.device_head, tally))
}
