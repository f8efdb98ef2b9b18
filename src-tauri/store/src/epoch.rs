//! Beginning a new epoch: after restoring or copying a store, or to go on after a lost tail.

use panside_journal::{EpochId, Head};
use rusqlite::{ErrorCode, params};

use crate::error::sql;
use crate::head_file::Found;
use crate::open::{Standing, Store};
use crate::{StoreError, Trouble};

const BEGINNING: &str = "beginning a new epoch";
const INSERT: &str = "INSERT INTO epochs (epoch, from_seq, from_hash, lost_seq, lost_hash, why) \
                      VALUES (?1, ?2, ?3, ?4, ?5, ?6)";

impl Store {
    /// Begins a new epoch that goes on from the newest event that is there. The first event in it names that one
    /// by hash; a head that the head file knew and the journal doesn't is kept beside the epoch.
    ///
    /// Whoever restores or copies a store must call this before the first entry: a copy of the whole folder looks
    /// just like the original. `epoch` is a new id, `why` a sentence for people.
    ///
    /// # Errors
    /// [`StoreError::EpochUsed`]. [`StoreError::Troubled`] when more is wrong than the newest events: a broken
    /// chain is not mended by going on. Those of a write.
    pub fn begin_epoch(&mut self, epoch: EpochId, why: &str) -> Result<(), StoreError> {
        let only_the_end = self.troubles.iter().all(|t| t.ends_with_new_epoch() || !t.stops_writing());
        if !(self.standing == Standing::Troubled && only_the_end && self.lock.is_some()) {
            self.writable()?;
        }
        let lost = self.lost_head();
        let from = self.head;
        self.transact(BEGINNING, |tx| {
            let inserted = tx.execute(
                INSERT,
                params![
                    epoch.0.as_bytes(),
                    crate::rows::signed(from.seq),
                    from.hash.0,
                    lost.map(|head| crate::rows::signed(head.seq)),
                    lost.map(|head| head.hash.0),
                    why
                ],
            );
            match inserted {
                Err(error) if error.sqlite_error_code() == Some(ErrorCode::ConstraintViolation) => {
                    Err(StoreError::EpochUsed)
                }
                other => other.map(|_| ()).map_err(sql(BEGINNING)),
            }
        })?;
        self.epoch = epoch;
        self.troubles.retain(|trouble| !trouble.ends_with_new_epoch());
        match self.settle(BEGINNING) {
            Ok(()) => Ok(()),
            Err(unconfirmed @ StoreError::Unconfirmed { .. }) => Err(unconfirmed),
            // The epoch is in the database and not in the head file: as unknown as a write that failed.
            Err(error) => Err(self.fault(BEGINNING, error)),
        }
    }

    /// The head that was confirmed and isn't in the journal.
    fn lost_head(&self) -> Option<Head> {
        let lost =
            self.troubles.iter().any(|t| matches!(t, Trouble::TailLost { .. } | Trouble::HeadDiffers { .. }));
        match self.found {
            Found::Mark { mark, .. } if lost => Some(mark.head),
            _ => None,
        }
    }
}
