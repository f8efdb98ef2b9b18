//! Beginning a new epoch: after restoring or copying a store, or to go on after a lost tail.

use panside_journal::{EpochId, Head};
use rusqlite::{ErrorCode, params};

use crate::error::sql;
use crate::jobs::LabelOf;
use crate::open::{Standing, Store};
use crate::{Doing, StoreError, Trouble};

const BEGINNING: Doing = Doing::BeginningEpoch;
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
        self.begin(epoch, why, self.lost_head())
    }

    /// Goes on from what is there, where all that is wrong ends with a new epoch or with a list made anew: makes the list
    /// of jobs anew and begins a new epoch.
    ///
    /// # Errors
    /// As [`Store::begin_epoch`] and [`Store::rebuild`].
    pub fn go_on(&mut self, epoch: EpochId, why: &str, label_of: LabelOf<'_>) -> Result<(), StoreError> {
        if !self.can_go_on() {
            self.writable()?;
        }
        self.make_list(label_of)?;
        self.begin_epoch(epoch, why)
    }

    /// Whether [`Store::go_on`] would put right what keeps the store from taking entries.
    pub fn can_go_on(&self) -> bool {
        self.mends(|trouble| trouble.ends_with_new_epoch() || trouble.ends_with_rebuild())
    }

    /// Whether the store is open for writing and stopped by nothing but troubles of a kind.
    pub(crate) fn mends(&self, kind: impl Fn(&Trouble) -> bool) -> bool {
        let only_those = self.troubles.iter().all(|trouble| kind(trouble) || !trouble.stops_writing());
        self.standing == Standing::Troubled && only_those && self.lock.is_some()
    }

    /// Begins a new epoch; `lost` is a head that was confirmed and isn't in the journal.
    pub(crate) fn begin(&mut self, epoch: EpochId, why: &str, lost: Option<Head>) -> Result<(), StoreError> {
        if !self.mends(Trouble::ends_with_new_epoch) {
            self.writable()?;
        }
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

    /// The newest head that was confirmed and isn't in the journal.
    fn lost_head(&self) -> Option<Head> {
        let lost = self.troubles.iter().filter_map(|trouble| match trouble {
            Trouble::TailLost { named, .. } | Trouble::HeadDiffers { named } => Some(*named),
            Trouble::SetBack { noted, .. } => Some(*noted),
            _ => None,
        });
        lost.max_by_key(|head| head.seq)
    }
}
