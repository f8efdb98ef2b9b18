//! The newest event about each subject, with the line that the list of jobs has for it. Derived from the events.
//!
//! Every row carries a hash over itself, and the head file has the hashes of all rows added up. So the list can be
//! believed at opening without walking over the journal: a row that was changed, taken out or put in shows.

use std::collections::BTreeMap;

use panside_journal::{Hash, Head, Subject};
use rusqlite::{Connection, OptionalExtension, params};

use crate::{Trouble, rows};

const ALL: &str = "SELECT shop, subject, head_seq, head_hash, label, sum FROM heads ORDER BY shop, subject";
const GET: &str = "SELECT head_seq, head_hash, sum FROM heads WHERE shop = ?1 AND subject = ?2";
const SHOPS: &str = "SELECT shop, subject, head_seq, head_hash FROM heads WHERE shop = 1 ORDER BY subject";
const PUT: &str = "INSERT INTO heads (shop, subject, head_seq, head_hash, label, sum) \
                   VALUES (?1, ?2, ?3, ?4, ?5, ?6) ON CONFLICT (shop, subject) DO UPDATE SET head_seq = ?3, \
                   head_hash = ?4, label = ?5, sum = ?6";

/// What the journal amounts to: kept in the head file, held against the database at opening.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Tally {
    /// Rows of events, of all devices.
    pub(crate) events: u64,
    /// Rows of heads.
    pub(crate) subjects: u64,
    /// The sums of the rows of heads, one laid over the other (exclusive or), so that one row can be exchanged.
    pub(crate) sum: Hash,
}

impl Tally {
    pub(crate) const NONE: Tally = Tally { events: 0, subjects: 0, sum: Hash::NONE };

    /// Lays a row's sum over the others; laid a second time it is taken out again.
    fn lay(&mut self, sum: &Hash) {
        for (byte, other) in self.sum.0.iter_mut().zip(sum.0) {
            *byte ^= other;
        }
    }
}

/// One row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct HeadRow {
    pub(crate) subject: Subject,
    pub(crate) head: Head,
    pub(crate) label: String,
    sum: Hash,
}

impl HeadRow {
    /// A row as it was found.
    pub(crate) fn read(subject: Subject, head: Head, label: String, sum: Hash) -> HeadRow {
        HeadRow { subject, head, label, sum }
    }

    /// The row is as it was written.
    pub(crate) fn holds(&self) -> bool {
        self.sum == sum_of(&mut Vec::new(), self.subject, self.head, &self.label)
    }
}

/// What a row's sum has to be. `bytes` is room to put it together in, used again for the next: opening a store adds up
/// every row.
fn sum_of(bytes: &mut Vec<u8>, subject: Subject, head: Head, label: &str) -> Hash {
    // Bytes side by side and no text made of them. All but the label have one length.
    bytes.clear();
    bytes.push(u8::from(subject.is_shop()));
    bytes.extend_from_slice(subject.id().as_bytes());
    bytes.extend_from_slice(&head.seq.to_be_bytes());
    bytes.extend_from_slice(&head.hash.0);
    bytes.extend_from_slice(label.as_bytes());
    Hash::of_domain("panside-head-row/1", bytes)
}

/// Puts a subject's newest event and its label, and keeps the tally.
pub(crate) fn put(
    conn: &Connection,
    tally: &mut Tally,
    subject: Subject,
    head: Head,
    label: &str,
) -> rusqlite::Result<()> {
    let (shop, id) = rows::columns(subject);
    let before: Option<Hash> =
        conn.prepare_cached(GET)?.query_row((shop, id), |row| rows::hash(row, 2)).optional()?;
    match before {
        Some(sum) => tally.lay(&sum),
        None => tally.subjects += 1,
    }
    let sum = sum_of(&mut Vec::new(), subject, head, label);
    tally.lay(&sum);
    conn.prepare_cached(PUT)?.execute(params![
        shop,
        id,
        rows::signed(head.seq),
        head.hash.0,
        label,
        sum.0
    ])?;
    Ok(())
}

/// A subject's newest event as the list has it; [`Head::NONE`] for a subject that isn't on it.
pub(crate) fn of(conn: &Connection, subject: Subject) -> rusqlite::Result<Head> {
    let found = conn
        .prepare_cached(GET)?
        .query_row(rows::columns(subject), |row| rows::head(row, 0, 1))
        .optional()?;
    Ok(found.unwrap_or(Head::NONE))
}

/// The shop as each device tells it, with its newest event.
pub(crate) fn shops(conn: &Connection) -> rusqlite::Result<Vec<(Subject, Head)>> {
    let mut query = conn.prepare_cached(SHOPS)?;
    query.query_map([], |row| Ok((rows::subject(row, 0)?, rows::head(row, 2, 3)?)))?.collect()
}

/// All rows, the jobs before the shop's.
pub(crate) fn all(conn: &Connection) -> rusqlite::Result<Vec<HeadRow>> {
    let mut query = conn.prepare_cached(ALL)?;
    query
        .query_map([], |row| {
            Ok(HeadRow {
                subject: rows::subject(row, 0)?,
                head: rows::head(row, 2, 3)?,
                label: row.get(4)?,
                sum: rows::hash(row, 5)?,
            })
        })?
        .collect()
}

/// What the rows amount to, and those that aren't as they were written.
pub(crate) fn add_up(conn: &Connection) -> rusqlite::Result<(Tally, Vec<Trouble>)> {
    let mut tally = Tally::NONE;
    let mut troubles = Vec::new();
    let (mut query, mut bytes) = (conn.prepare_cached(ALL)?, Vec::new());
    let mut found = query.query([])?;
    while let Some(row) = found.next()? {
        let (subject, sum) = (rows::subject(row, 0)?, rows::hash(row, 5)?);
        tally.subjects += 1;
        tally.lay(&sum);
        if sum != sum_of(&mut bytes, subject, rows::head(row, 2, 3)?, row.get_ref(4)?.as_str()?) {
            troubles.push(Trouble::ListDiffers { subject });
        }
    }
    let newest: Option<i64> = conn.query_row("SELECT max(row) FROM events", [], |row| row.get(0))?;
    tally.events = newest.unwrap_or(0).unsigned_abs();
    Ok((tally, troubles))
}

/// Compares the list with the heads that the events give.
pub(crate) fn compare(
    conn: &Connection,
    heads: &BTreeMap<Subject, Head>,
) -> rusqlite::Result<Option<Trouble>> {
    let listed: BTreeMap<Subject, Head> = all(conn)?.into_iter().map(|row| (row.subject, row.head)).collect();
    let differs = heads
        .iter()
        .find(|(subject, head)| listed.get(subject) != Some(head))
        .or_else(|| listed.iter().find(|(subject, _)| !heads.contains_key(subject)));
    Ok(differs.map(|(subject, _)| Trouble::ListDiffers { subject: *subject }))
}
