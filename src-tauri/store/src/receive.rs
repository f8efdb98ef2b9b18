//! Taking over events that other devices wrote: in any order, in any pieces, more than once. What is here afterwards
//! hangs only on which events came, never on how.
//!
//! An event whose predecessor isn't here waits for it. A job that was gone on with in two places keeps both lines: which
//! of them counts hangs on the events alone ([`first`]), the other stands on the side, and nothing is added to the job
//! until people have looked.

use std::collections::{BTreeMap, BTreeSet};

use panside_journal::{DeviceId, Event, Hash, Head, Subject, check_event};
use rusqlite::{Connection, OptionalExtension, params};

use crate::error::sql;
use crate::heads::{self, Tally};
use crate::jobs::LabelOf;
use crate::open::Store;
use crate::{Doing, StoreError, rows};

const RECEIVING: Doing = Doing::Receiving;
const BY_ID: &str = "SELECT hash FROM events WHERE id = ?1";
const AT: &str = "SELECT hash, side FROM events WHERE shop = ?1 AND subject = ?2 AND subject_seq = ?3 AND side = 0 \
                  UNION ALL SELECT hash, side FROM events WHERE shop = ?1 AND subject = ?2 AND side = 1 \
                  AND subject_seq = ?3";
const AT_DEVICE: &str = "SELECT 1 FROM events WHERE device = ?1 AND device_seq = ?2 AND epoch = ?3";
const WAIT: &str = "INSERT OR IGNORE INTO waiting (hash, prev, line) VALUES (?1, ?2, ?3)";
const WAITING_FOR: &str = "SELECT line FROM waiting WHERE prev = ?1 ORDER BY hash";
const NO_LONGER_WAITING: &str = "DELETE FROM waiting WHERE hash = ?1";
const SIDE: &str = "SELECT min(subject_seq) FROM events WHERE shop = ?1 AND subject = ?2 AND side = 1";
const FORKED: &str = "SELECT DISTINCT shop, subject FROM events WHERE side = 1";
const TO_SIDE: &str = "UPDATE events SET side = 1 WHERE shop = ?1 AND subject = ?2 AND subject_seq >= ?3";
const TO_LINE: &str = "UPDATE events SET side = 0 WHERE id = ?1";

/// What became of received events.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Received {
    /// How many of them were new here and follow what is here.
    pub new: u64,
    /// How many wait for events that come before them.
    pub waiting: u64,
}

/// A job that was gone on with in two places.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BothSides {
    /// The job.
    pub subject: Subject,
    /// The events that count, from the first one on where the lines part.
    pub line: Vec<Event>,
    /// The events on the other side.
    pub side: Vec<Event>,
}

impl Store {
    /// Takes over events of other devices: of any subjects, in any order, the same ones more than once. An event whose
    /// predecessor isn't here waits for it; one that parts from what is here is kept on a side ([`Store::both_sides`]).
    ///
    /// # Errors
    /// [`StoreError::Journal`] for an event that doesn't hold by itself; [`StoreError::OwnEventUnknown`] for an event of
    /// this device that it has lost; [`StoreError::DeviceForked`] where another device wrote the same number twice. In
    /// all of these nothing was taken over. Those of a write.
    pub fn receive(&mut self, events: &[Event], label_of: LabelOf<'_>) -> Result<Received, StoreError> {
        for event in events {
            check_event(&event.header, &event.body, &event.hash)?;
        }
        let (device, tally) = (self.device, self.tally);
        let (received, tally) = self.write(RECEIVING, |tx| {
            let mut taking = Taking { conn: tx, device, tally, touched: BTreeSet::new(), new: 0 };
            for event in events {
                taking.take(event)?;
            }
            taking.settle(label_of)?;
            let waiting = tx.query_row("SELECT count(*) FROM waiting", [], |row| rows::count(row, 0));
            let waiting = waiting.map_err(sql(RECEIVING))?;
            Ok((Received { new: taking.new, waiting }, taking.tally))
        })?;
        if received.new > 0 {
            self.tally = tally;
            self.confirm(RECEIVING, self.head)?;
        }
        Ok(received)
    }

    /// The jobs that were gone on with in two places, with what was done on both sides.
    ///
    /// # Errors
    /// What the disk said.
    pub fn both_sides(&self) -> Result<Vec<BothSides>, StoreError> {
        let conn = self.snapshot()?;
        let forked = forked(&conn).map_err(sql(RECEIVING))?;
        let parted = |subject| -> Result<BothSides, StoreError> {
            let events = whole(&conn, subject).map_err(sql(RECEIVING))?;
            let line: BTreeSet<Hash> = line_of(&events).iter().map(|at| events[*at].hash).collect();
            let (line, side): (Vec<Event>, Vec<Event>) =
                events.into_iter().partition(|event| line.contains(&event.hash));
            let first = side.first().map_or(0, |event| event.header.subject_seq);
            let line = line.into_iter().filter(|event| event.header.subject_seq >= first).collect();
            Ok(BothSides { subject, line, side })
        };
        forked.into_iter().map(parted).collect()
    }
}

/// The number of the first event of a subject that stands on a side.
pub(crate) fn side(conn: &Connection, subject: Subject) -> rusqlite::Result<Option<u64>> {
    let seq: Option<i64> = conn.prepare_cached(SIDE)?.query_row(rows::columns(subject), |row| row.get(0))?;
    Ok(seq.map(i64::unsigned_abs))
}

/// The subjects that went two ways.
pub(crate) fn forked(conn: &Connection) -> rusqlite::Result<BTreeSet<Subject>> {
    let mut query = conn.prepare_cached(FORKED)?;
    query.query_map([], |row| rows::subject(row, 0))?.collect()
}

/// Every event about one subject, those on sides too, each after the one it follows.
fn whole(conn: &Connection, subject: Subject) -> rusqlite::Result<Vec<Event>> {
    let mut events = Vec::new();
    for query in [rows::EVENTS_OF_SUBJECT, rows::SIDES_OF_SUBJECT] {
        let mut query = conn.prepare_cached(query)?;
        for event in query.query_map(rows::columns(subject), rows::event)? {
            events.push(event?);
        }
    }
    events.sort_by_key(|event| (event.header.subject_seq, event.hash));
    Ok(events)
}

/// Which of two events that follow the same one goes first: the one of the device that wrote the event before them, since
/// it had the job; then the earlier one; then the smaller hash. The rule hangs on the events alone.
fn first(before: Option<DeviceId>, event: &Event) -> impl Ord + use<> {
    (before != Some(event.header.device), event.header.wall_ms, event.hash)
}

/// The places of the events that count, from the first on. `events` stand in the order of their numbers.
fn line_of(events: &[Event]) -> Vec<usize> {
    let mut after: BTreeMap<Hash, Vec<usize>> = BTreeMap::new();
    for (at, event) in events.iter().enumerate() {
        after.entry(event.header.prev_subject).or_default().push(at);
    }
    let (mut line, mut at, mut before) = (Vec::new(), Hash::NONE, None);
    while let Some(next) =
        after.get(&at).and_then(|next| next.iter().min_by_key(|at| first(before, &events[**at])))
    {
        line.push(*next);
        (at, before) = (events[*next].hash, Some(events[*next].header.device));
    }
    line
}

/// Taking over events in one transaction.
struct Taking<'a> {
    conn: &'a Connection,
    device: DeviceId,
    tally: Tally,
    touched: BTreeSet<Subject>,
    new: u64,
}

impl Taking<'_> {
    /// Takes one event, and those that waited for it.
    fn take(&mut self, event: &Event) -> Result<(), StoreError> {
        let mut next = vec![event.clone()];
        while let Some(event) = next.pop() {
            let header = &event.header;
            if self.known(&event).map_err(sql(RECEIVING))? {
                continue;
            }
            let (subject, seq) = (header.subject, header.subject_seq);
            if header.device == self.device {
                return Err(StoreError::OwnEventUnknown { subject, seq });
            }
            match self.follows(&event).map_err(sql(RECEIVING))? {
                Some(on_side) => {
                    self.insert(&event, on_side)?;
                    next.extend(self.waiting_for(&event.hash)?);
                }
                None => {
                    let wait = params![event.hash.0, header.prev_subject.0, event.to_line()?];
                    self.conn
                        .prepare_cached(WAIT)
                        .and_then(|mut put| put.execute(wait))
                        .map_err(sql(RECEIVING))?;
                }
            }
        }
        Ok(())
    }

    fn known(&self, event: &Event) -> rusqlite::Result<bool> {
        let found: Option<[u8; 32]> = self
            .conn
            .prepare_cached(BY_ID)?
            .query_row([event.header.id.0.as_bytes()], |row| row.get(0))
            .optional()?;
        Ok(found == Some(event.hash.0))
    }

    /// Whether the event's predecessor is here, and then whether the event stands on a side for now.
    fn follows(&self, event: &Event) -> rusqlite::Result<Option<bool>> {
        let header = &event.header;
        let taken = self.at(header.subject, header.subject_seq)?;
        let on_line = taken.iter().any(|(_, side)| !side);
        if header.subject_seq <= 1 {
            return Ok((header.prev_subject == Hash::NONE).then_some(on_line));
        }
        let before = self.at(header.subject, header.subject_seq - 1)?;
        let before = before.into_iter().find(|(hash, _)| *hash == header.prev_subject);
        Ok(before.map(|(_, side)| side || on_line))
    }

    fn at(&self, subject: Subject, seq: u64) -> rusqlite::Result<Vec<(Hash, bool)>> {
        let (shop, id) = rows::columns(subject);
        let mut query = self.conn.prepare_cached(AT)?;
        let found = query
            .query_map(params![shop, id, rows::signed(seq)], |row| Ok((rows::hash(row, 0)?, row.get(1)?)))?;
        found.collect()
    }

    fn insert(&mut self, event: &Event, on_side: bool) -> Result<(), StoreError> {
        let header = &event.header;
        let (device, seq) = (header.device, header.device_seq);
        let place = params![device.0.as_bytes(), rows::signed(seq), header.epoch.0.as_bytes()];
        let taken = self.conn.prepare_cached(AT_DEVICE).and_then(|mut query| query.exists(place));
        if taken.map_err(sql(RECEIVING))? {
            return Err(StoreError::DeviceForked { device, seq });
        }
        rows::insert_event(self.conn, event, on_side).map_err(sql(RECEIVING))?;
        let gone =
            self.conn.prepare_cached(NO_LONGER_WAITING).and_then(|mut query| query.execute([event.hash.0]));
        gone.map_err(sql(RECEIVING))?;
        self.tally.events += 1;
        self.new += 1;
        self.touched.insert(header.subject);
        Ok(())
    }

    fn waiting_for(&self, hash: &Hash) -> Result<Vec<Event>, StoreError> {
        let lines = || -> rusqlite::Result<Vec<String>> {
            self.conn.prepare_cached(WAITING_FOR)?.query_map([hash.0], |row| row.get(0))?.collect()
        };
        let lines = lines().map_err(sql(RECEIVING))?;
        lines.iter().map(|line| Ok(Event::from_line(line)?)).collect()
    }

    /// Puts each touched subject's line and its row of the list right.
    fn settle(&mut self, label_of: LabelOf<'_>) -> Result<(), StoreError> {
        for subject in std::mem::take(&mut self.touched) {
            let events = whole(self.conn, subject).map_err(sql(RECEIVING))?;
            let line = line_of(&events);
            let parted = events.len() != line.len();
            if parted {
                self.part(subject, &events, &line).map_err(sql(RECEIVING))?;
            }
            let line: Vec<Event> = line.into_iter().map(|at| events[at].clone()).collect();
            let Some(last) = line.last() else { continue };
            let head = Head { seq: last.header.subject_seq, hash: last.hash };
            let label = if subject.is_shop() { String::new() } else { label_of(&line) };
            heads::put(self.conn, &mut self.tally, subject, head, &label).map_err(sql(RECEIVING))?;
        }
        Ok(())
    }

    /// Says of each event of a subject that went two ways on which side it stands.
    fn part(&self, subject: Subject, events: &[Event], line: &[usize]) -> rusqlite::Result<()> {
        let (shop, id) = rows::columns(subject);
        self.conn.prepare_cached(TO_SIDE)?.execute(params![shop, id, 1])?;
        for at in line {
            self.conn.prepare_cached(TO_LINE)?.execute([events[*at].header.id.0.as_bytes()])?;
        }
        Ok(())
    }
}
