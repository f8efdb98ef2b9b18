//! One walk over the whole journal: every event hashed once, linked into its device's and its job's chain.

use std::collections::BTreeMap;

use panside_journal::{Chain, DeviceId, EpochId, Hash, Head, Header, JobId, check_event};
use rusqlite::{Connection, ErrorCode, Row};

use crate::head_file::{Found, Mark};
use crate::{StoreError, Trouble, error::sql, rows};

const READING: &str = "reading the journal";
const EPOCHS: &str = "SELECT epoch, from_seq FROM epochs ORDER BY number";

/// What a walk found. It ends at the first trouble: what it counted before that is good.
pub(crate) struct Walk {
    pub(crate) events: u64,
    /// The newest event of this device.
    pub(crate) head: Head,
    /// The newest event of each job.
    pub(crate) jobs: BTreeMap<JobId, Head>,
    pub(crate) troubles: Vec<Trouble>,
}

/// The epochs that were begun on this device, and after which of its events.
pub(crate) fn epochs(conn: &Connection) -> rusqlite::Result<Vec<(EpochId, u64)>> {
    let mut query = conn.prepare(EPOCHS)?;
    query.query_map([], |row| Ok((EpochId(rows::uuid(row, 0)?), rows::count(row, 1)?)))?.collect()
}

/// Walks over all events and compares the end with the head file.
pub(crate) fn walk(conn: &Connection, device: DeviceId, found: &Found) -> Result<Walk, StoreError> {
    let witness = match found {
        Found::Mark { mark, .. } => mark.head.seq,
        Found::Missing | Found::Unreadable => 0,
    };
    let mut walker = Walker {
        device,
        epochs: epochs(conn).map_err(sql(READING))?,
        own: Chain::of_device(),
        jobs: BTreeMap::new(),
        witness,
        at_witness: Hash::NONE,
        events: 0,
    };
    let troubles = match walker.run(conn) {
        Ok(()) => walker.compare(found).into_iter().collect(),
        // A broken chain says it all; where it ends is no lost tail.
        Err(Stop::Trouble(trouble)) => vec![trouble],
        Err(Stop::Error(error)) => return Err(error),
    };
    Ok(Walk {
        events: walker.events,
        head: walker.own.head(),
        jobs: walker.jobs.into_iter().map(|(job, chain)| (job, chain.head())).collect(),
        troubles,
    })
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
    jobs: BTreeMap<JobId, Chain>,
    /// The number of the event that the head file names, and the hash of the event with that number here.
    witness: u64,
    at_witness: Hash,
    events: u64,
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
        let unreadable = |_| Stop::Trouble(Trouble::RowUnreadable { row: row.get(20).unwrap_or(0) });
        let header = rows::header(row).map_err(unreadable)?;
        let hash = rows::hash_of(row).map_err(unreadable)?;
        check_event(&header, rows::body_of(row).map_err(unreadable)?, &hash)?;
        self.jobs.entry(header.job).or_insert_with(Chain::of_job).link(&header, &hash)?;
        if header.device == self.device {
            self.own.link(&header, &hash)?;
            self.check_epoch(&header)?;
            if header.device_seq == self.witness {
                self.at_witness = hash;
            }
        }
        Ok(())
    }

    /// Compares the journal's end with the head file. A journal that is ahead is well: a kill between the commit
    /// and the head file leaves it so, and so does a head file whose newest slot was torn.
    fn compare(&self, found: &Found) -> Option<Trouble> {
        let have = self.own.head();
        let Mark { device, epoch, head: named } = match found {
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
