//! Reading the events about a subject, held against what the store knows of them elsewhere.

use panside_journal::{Chain, Event, Head, Subject, check_event, verify_subject_chain};
use rusqlite::{Connection, Transaction};

use crate::error::sql;
use crate::open::Store;
use crate::{Doing, StoreError, heads, rows};

const READING: Doing = Doing::ReadingEntries;

/// What can be read of a subject that may be damaged.
#[derive(Debug)]
pub struct Readable {
    /// Its events from the first on, as far as their chain holds.
    pub events: Vec<Event>,
    /// Why these are not all, where they aren't.
    pub lacks: Option<StoreError>,
}

impl Store {
    /// The events about one subject, oldest first; empty for an unknown one. Their chain is verified, and that it ends
    /// where the list says, in one state of the database.
    ///
    /// # Errors
    /// [`StoreError::Journal`] when the chain doesn't hold, [`StoreError::NotAllThere`] when it ends elsewhere; see
    /// [`Store::readable`].
    pub fn events(&self, subject: impl Into<Subject>) -> Result<Vec<Event>, StoreError> {
        let conn = self.snapshot()?;
        whole(&conn, subject.into())
    }

    /// The events about one subject as far as they hold, for looking at what is damaged. Where the index is damaged
    /// and the events aren't, they are found without it.
    ///
    /// # Errors
    /// What the disk said.
    pub fn readable(&self, subject: impl Into<Subject>) -> Result<Readable, StoreError> {
        let (conn, subject) = (self.snapshot()?, subject.into());
        let lacks = match whole(&conn, subject) {
            Ok(events) => return Ok(Readable { events, lacks: None }),
            Err(error) => error,
        };
        let mut best = Vec::new();
        for query in [rows::EVENTS_OF_SUBJECT, rows::EVENTS_OF_SUBJECT_BY_SCAN] {
            // What can't be read at all leaves the other way.
            let found = read(&conn, query, subject).unwrap_or_default();
            let good = good_start(found);
            if good.len() > best.len() {
                best = good;
            }
        }
        Ok(Readable { events: best, lacks: Some(lacks) })
    }

    /// The newest event about a subject; [`Head::NONE`] for an unknown one.
    ///
    /// # Errors
    /// What the disk said.
    pub fn head(&self, subject: impl Into<Subject>) -> Result<Head, StoreError> {
        heads::of(self.reader()?, subject.into()).map_err(sql(READING))
    }

    /// One state of the database to read from, whatever is written beside it.
    pub(crate) fn snapshot(&self) -> Result<Transaction<'_>, StoreError> {
        self.reader()?.unchecked_transaction().map_err(sql(READING))
    }
}

fn read(conn: &Connection, query: &str, subject: Subject) -> Result<Vec<Event>, StoreError> {
    let read = || -> rusqlite::Result<Vec<Event>> {
        let mut query = conn.prepare_cached(query)?;
        query.query_map(rows::columns(subject), rows::event)?.collect()
    };
    read().map_err(sql(READING))
}

/// A subject's events, their chain verified and its end held against the list.
fn whole(conn: &Connection, subject: Subject) -> Result<Vec<Event>, StoreError> {
    let events = chained(conn, subject)?;
    let found =
        events.last().map_or(Head::NONE, |last| Head { seq: last.header.subject_seq, hash: last.hash });
    let listed = heads::of(conn, subject).map_err(sql(READING))?;
    if found != listed {
        return Err(StoreError::NotAllThere { subject, listed, found });
    }
    Ok(events)
}

/// A subject's events, their chain verified.
pub(crate) fn chained(conn: &Connection, subject: Subject) -> Result<Vec<Event>, StoreError> {
    let events = read(conn, rows::EVENTS_OF_SUBJECT, subject)?;
    verify_subject_chain(&events)?;
    Ok(events)
}

/// The events from the first on for which the chain holds.
fn good_start(mut events: Vec<Event>) -> Vec<Event> {
    let mut chain = Chain::of_subject();
    let holds = |event: &Event| {
        check_event(&event.header, &event.body, &event.hash).is_ok()
            && chain.link(&event.header, &event.hash).is_ok()
    };
    let good = events.iter().position({
        let mut holds = holds;
        move |event| !holds(event)
    });
    events.truncate(good.unwrap_or(usize::MAX));
    events
}
