//! The one gate of every write: it refuses, or commits, or stops all writing.

use panside_journal::Head;
use rusqlite::{Connection, Transaction, TransactionBehavior};

use crate::error::sql;
use crate::head_file::{HeadFile, Mark};
use crate::message::store_faulted_while;
use crate::open::{Standing, Store};
use crate::seen::Noting;
use crate::{Doing, StoreError, load};

/// How far a checkpoint goes in carrying the log over into the database.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Checkpoint {
    /// As far as readers allow, without waiting.
    Passive,
    /// All of it, waiting for readers.
    Full,
    /// All of it, and the log emptied.
    Truncate,
}

/// Carries the log over into the database; true when nothing is left in the log alone.
pub(crate) fn checkpoint(conn: &Connection, how: Checkpoint) -> rusqlite::Result<bool> {
    let pragma = match how {
        Checkpoint::Passive => "PRAGMA wal_checkpoint(PASSIVE)",
        Checkpoint::Full => "PRAGMA wal_checkpoint(FULL)",
        Checkpoint::Truncate => "PRAGMA wal_checkpoint(TRUNCATE)",
    };
    conn.query_row(pragma, [], |row| {
        let (busy, in_log, carried): (i64, i64, i64) = (row.get(0)?, row.get(1)?, row.get(2)?);
        Ok(busy == 0 && in_log == carried)
    })
}

impl Store {
    /// The connection, for reading.
    pub(crate) fn reader(&self) -> Result<&Connection, StoreError> {
        self.conn.as_ref().ok_or_else(|| self.refusal())
    }

    /// Refuses unless the store takes entries.
    ///
    /// # Errors
    /// Why it takes none.
    pub fn writable(&self) -> Result<(), StoreError> {
        if self.standing == Standing::Ready { Ok(()) } else { Err(self.refusal()) }
    }

    fn refusal(&self) -> StoreError {
        let trouble = self.troubles.iter().find(|trouble| trouble.stops_writing());
        match (&self.standing, trouble) {
            (Standing::Faulted { why }, _) => StoreError::Faulted { why: why.clone() },
            (Standing::Troubled, Some(trouble)) => StoreError::Troubled { trouble: trouble.message() },
            _ => StoreError::ReadOnly,
        }
    }

    /// Does `work` in one transaction. A refusal rolls back and leaves the store as it was; a failure of the
    /// machine stops all writing.
    pub(crate) fn write<T>(
        &mut self,
        doing: Doing,
        work: impl FnOnce(&Transaction<'_>) -> Result<T, StoreError>,
    ) -> Result<T, StoreError> {
        self.writable()?;
        self.checkpoint_if_due()?;
        if let Err(replaced) = self.opened.unchanged(&self.dir) {
            return Err(self.fault(doing, replaced));
        }
        self.transact(doing, work)
    }

    /// [`Store::write`] without asking whether the store takes entries.
    pub(crate) fn transact<T>(
        &mut self,
        doing: Doing,
        work: impl FnOnce(&Transaction<'_>) -> Result<T, StoreError>,
    ) -> Result<T, StoreError> {
        let refusal = self.refusal();
        let conn = self.conn.as_mut().ok_or(refusal)?;
        let outcome = commit(conn, doing, work);
        // A rollback that failed leaves the transaction open, and what is on disk unknown.
        let settled = conn.is_autocommit();
        match outcome {
            Err(error) if error.is_fault() || !settled => Err(self.fault(doing, error)),
            outcome => {
                self.since_checkpoint = self.since_checkpoint.saturating_add(1);
                outcome
            }
        }
    }

    /// Carries the log over when it is time. It is done before a write and not after one, so that its failure
    /// refuses an entry not yet made instead of doubting one already confirmed.
    fn checkpoint_if_due(&mut self) -> Result<(), StoreError> {
        const CARRYING: Doing = Doing::CarryingLog;
        if self.since_checkpoint < self.options.checkpoint_every {
            return Ok(());
        }
        match checkpoint(self.reader()?, Checkpoint::Passive).map_err(sql(CARRYING)) {
            // Where a reader held it up, the rest goes over the next time.
            Ok(_) => self.since_checkpoint = 0,
            Err(full @ StoreError::DiskFull { .. }) => return Err(full),
            Err(error) => {
                self.fault(CARRYING, error);
                return Err(self.refusal());
            }
        }
        Ok(())
    }

    /// Writes the newest head to the head file. Only after this may an entry be called saved.
    pub(crate) fn confirm(&mut self, doing: Doing, head: Head) -> Result<(), StoreError> {
        self.head = head;
        let mark = Mark { device: self.device, epoch: self.epoch, head, tally: self.tally };
        let written = match &mut self.head_file {
            Some(file) => self.opened.unchanged(&self.dir).and_then(|()| file.write(&mark)),
            None => Err(self.refusal()),
        };
        written.map_err(|error| self.fault(doing, error))?;
        self.note_seen(Noting::SomeTimes);
        Ok(())
    }

    /// Makes a verified store ready to write: everything is carried over into the database, then the head file
    /// is brought up to it. A sync that failed earlier may have left entries in the log that are not on disk;
    /// carrying them over writes and syncs them anew.
    pub(crate) fn settle(&mut self, doing: Doing) -> Result<(), StoreError> {
        if !checkpoint(self.reader()?, Checkpoint::Full).map_err(sql(doing))? {
            return Err(StoreError::Busy);
        }
        if self.head_file.is_none() {
            self.head_file = Some(HeadFile::open(&load::head_file(&self.dir), self.found)?);
        }
        self.opened = load::Opened::of(&self.dir)?;
        self.confirm(doing, self.head)?;
        self.standing = Standing::Ready;
        self.note_seen(Noting::Sure);
        Ok(())
    }

    /// Stops all writing and goes on with a connection that can only read.
    pub(crate) fn fault(&mut self, doing: Doing, source: StoreError) -> StoreError {
        self.conn = None;
        self.head_file = None;
        self.standing = Standing::Faulted { why: store_faulted_while(doing.message(), source.root()) };
        // When the disk can't even be read, reading says so by itself.
        self.conn = load::connect_for_reading(&self.dir).ok();
        StoreError::Unconfirmed { doing, source: Box::new(source) }
    }
}

fn commit<T>(
    conn: &mut Connection,
    doing: Doing,
    work: impl FnOnce(&Transaction<'_>) -> Result<T, StoreError>,
) -> Result<T, StoreError> {
    let tx = conn.transaction_with_behavior(TransactionBehavior::Immediate).map_err(sql(doing))?;
    // Left early, the transaction rolls back when it is dropped.
    let value = work(&tx)?;
    tx.commit().map_err(sql(doing))?;
    Ok(value)
}
