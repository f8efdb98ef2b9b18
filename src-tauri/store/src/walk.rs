//! One walk over the whole journal: every event hashed once, linked into its device's and its job's chain.

use std::collections::{BTreeMap, BTreeSet};

use panside_journal::{Chain, DeviceId, EpochId, Event, Hash, Head, Header, Subject, check_event};
use rusqlite::{Connection, ErrorCode, OptionalExtension, Row};

use crate::head_file::{Found, Mark};
use crate::heads::{self, Tally};
use crate::{Doing, StoreError, Trouble, error::sql, rows};

const READING: Doing = Doing::ReadingJournal;
const EPOCHS: &str = "SELECT epoch, from_seq FROM epochs ORDER BY number";

/// What a walk found. It ends at the first trouble: what it counted before that is good.
pub(crate) struct Walk {
    pub(crate) events: u64,
    /// The newest event of this device.
    pub(crate) head: Head,
    /// What the journal amounts to.
    pub(crate) tally: Tally,
    pub(crate) troubles: Vec<Trouble>,
}

/// The epochs that were begun on this device, and after which of its events.
pub(crate) fn epochs(conn: &Connection) -> rusqlite::Result<Vec<(EpochId, u64)>> {
    let mut query = conn.prepare(EPOCHS)?;
    query.query_map([], |row| Ok((EpochId(rows::uuid(row, 0)?), rows::count(row, 1)?)))?.collect()
}

/// Looks whether the journal is the one that the head file confirms, by its newest event and by the list of jobs, whose
/// rows are all added up. `None` where they don't agree or the database is ahead: then everything must be walked over.
pub(crate) fn marked(conn: &Connection, device: DeviceId, found: &Found) -> Result<Option<Walk>, StoreError> {
    let Found::Mark { mark, .. } = found else { return Ok(None) };
    let newest = |conn: &Connection| -> rusqlite::Result<Option<Event>> {
        conn.prepare_cached(rows::NEWEST_OF_DEVICE)?.query_row([device.0.as_bytes()], rows::event).optional()
    };
    let newest = newest(conn).map_err(sql(READING))?;
    let head = match &newest {
        Some(event) if check_event(&event.header, &event.body, &event.hash).is_ok() => {
            Head { seq: event.header.device_seq, hash: event.hash }
        }
        Some(_) => return Ok(None),
        None => Head::NONE,
    };
    let (tally, wrong) = heads::add_up(conn).map_err(sql(READING))?;
    let epoch = epochs(conn).map_err(sql(READING))?.last().map(|(epoch, _)| *epoch);
    let agree = Mark { device, epoch: epoch.unwrap_or(mark.epoch), head, tally } == *mark && wrong.is_empty();
    Ok(agree.then(|| Walk { events: tally.events, head, tally, troubles: Vec::new() }))
}

/// Walks over all events and compares the end with the head file and the list of jobs with the events.
pub(crate) fn walk(conn: &Connection, device: DeviceId, found: &Found) -> Result<Walk, StoreError> {
    let witness = match found {
        Found::Mark { mark, .. } => mark.head.seq,
        Found::Missing | Found::Unreadable => 0,
    };
    let mut walker = Walker {
        device,
        epochs: epochs(conn).map_err(sql(READING))?,
        own: Chain::of_device(),
        subjects: BTreeMap::new(),
        sides: BTreeSet::new(),
        witness,
        at_witness: Hash::NONE,
        events: 0,
        forked: crate::receive::forked(conn).map_err(sql(READING))?,
    };
    let (tally, wrong) = heads::add_up(conn).map_err(sql(READING))?;
    let troubles = match walker.run(conn) {
        Ok(()) => {
            let mut troubles: Vec<Trouble> = walker.compare(found).into_iter().collect();
            if troubles.is_empty() {
                troubles.extend(walker.compare_list(conn, found, &tally, wrong).map_err(sql(READING))?);
            }
            troubles
        }
        // A broken chain says it all; where it ends is no lost tail.
        Err(Stop::Trouble(trouble)) => vec![trouble],
        Err(Stop::Error(error)) => return Err(error),
    };
    Ok(Walk { events: walker.events, head: walker.own.head(), tally, troubles })
}

enum Stop {
    Trouble(Trouble),
    Error(StoreError),
}

impl<T: Into<Trouble>> From<T> for Stop {
    fn from(trouble: T) -> Stop {
        Stop::Trouble(trouble.into())
    }
}

struct Walker {
    device: DeviceId,
    epochs: Vec<(EpochId, u64)>,
    own: Chain,
    subjects: BTreeMap<Subject, Chain>,
    /// The events of subjects that went two ways, by hash: what stands on a side follows one of them.
    sides: BTreeSet<Hash>,
    /// The number of the event that the head file names, and the hash of the event with that number here.
    witness: u64,
    at_witness: Hash,
    events: u64,
    /// The subjects that went two ways.
    forked: BTreeSet<Subject>,
}

impl Walker {
    fn run(&mut self, conn: &Connection) -> Result<(), Stop> {
        let mut query = conn.prepare(rows::ALL_EVENTS).map_err(stop)?;
        let mut found = query.query([]).map_err(stop)?;
        while let Some(row) = found.next().map_err(stop)? {
            self.event(row)?;
            self.events += 1;
        }
        Ok(())
    }

    fn event(&mut self, row: &Row<'_>) -> Result<(), Stop> {
        let unreadable = |_| Stop::Trouble(Trouble::RowUnreadable { row: row.get(21).unwrap_or(0) });
        let header = rows::header(row).map_err(unreadable)?;
        let hash = rows::hash_of(row).map_err(unreadable)?;
        check_event(&header, rows::body_of(row).map_err(unreadable)?, &hash)?;
        self.place(&header, &hash, row)?;
        if header.device == self.device {
            self.own.link(&header, &hash)?;
            self.check_epoch(&header)?;
            if header.device_seq == self.witness {
                self.at_witness = hash;
            }
        }
        Ok(())
    }

    /// Links an event into its subject's chain. One on a side must follow an event that is there.
    fn place(&mut self, header: &Header, hash: &Hash, row: &Row<'_>) -> Result<(), Stop> {
        let on_side: bool =
            row.get(22).map_err(|_| Trouble::RowUnreadable { row: row.get(21).unwrap_or(0) })?;
        if !on_side {
            let chain = self.subjects.entry(header.subject).or_insert_with(Chain::of_subject);
            chain.link(header, hash)?;
        } else if header.prev_subject != Hash::NONE && !self.sides.contains(&header.prev_subject) {
            return Err(Stop::Trouble(Trouble::SideAlone {
                subject: header.subject,
                seq: header.subject_seq,
            }));
        }
        if self.forked.contains(&header.subject) {
            self.sides.insert(*hash);
        }
        Ok(())
    }

    /// Compares the list of jobs with the events, and with what the head file confirms of it. A journal that is ahead
    /// has a newer list.
    fn compare_list(
        &self,
        conn: &Connection,
        found: &Found,
        tally: &Tally,
        wrong: Vec<Trouble>,
    ) -> rusqlite::Result<Vec<Trouble>> {
        if !wrong.is_empty() {
            return Ok(wrong);
        }
        let heads = self.subjects.iter().map(|(subject, chain)| (*subject, chain.head())).collect();
        if let Some(differs) = heads::compare(conn, &heads)? {
            return Ok(vec![differs]);
        }
        let confirmed = match found {
            Found::Mark { mark, .. } if mark.tally.events == tally.events => mark.tally == *tally,
            _ => true,
        };
        Ok(if confirmed { Vec::new() } else { vec![Trouble::ListUnknown] })
    }

    /// Compares the journal's end with the head file. A journal that is ahead is well: a kill between the commit
    /// and the head file leaves it so, and so does a head file whose newest slot was torn.
    fn compare(&self, found: &Found) -> Option<Trouble> {
        let have = self.own.head();
        let Mark { device, epoch, head: named, .. } = match found {
            Found::Mark { mark, .. } => *mark,
            // Nothing was ever confirmed in a store without events.
            Found::Missing | Found::Unreadable if have == Head::NONE => return None,
            Found::Missing => return Some(Trouble::HeadFileMissing),
            Found::Unreadable => return Some(Trouble::HeadFileUnreadable),
        };
        if device != self.device {
            Some(Trouble::HeadFileForeign)
        } else if named.seq > have.seq {
            Some(Trouble::TailLost { have, named })
        } else if named.hash != self.at_witness {
            Some(Trouble::HeadDiffers { named })
        } else if !self.epochs.iter().any(|(begun, _)| *begun == epoch) {
            Some(Trouble::EpochLost)
        } else {
            None
        }
    }

    /// An own event belongs to the newest epoch that was begun before it.
    fn check_epoch(&self, header: &Header) -> Result<(), Stop> {
        let begun = self.epochs.iter().rev().find(|(_, from)| *from < header.device_seq);
        if begun.is_some_and(|(epoch, _)| *epoch == header.epoch) {
            return Ok(());
        }
        Err(Stop::Trouble(Trouble::EpochDiffers { device_seq: header.device_seq }))
    }
}

/// Damage that SQLite itself notices is a finding; anything else keeps the journal from being read at all.
fn stop(error: rusqlite::Error) -> Stop {
    match error.sqlite_error_code() {
        Some(ErrorCode::DatabaseCorrupt | ErrorCode::NotADatabase) => {
            Stop::Trouble(Trouble::Damaged { detail: error.to_string() })
        }
        _ => Stop::Error(sql(READING)(error)),
    }
}
