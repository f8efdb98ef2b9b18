//! Opening a store: lock, look, migrate, walk, compare, and only then write.

use std::path::{Path, PathBuf};

use panside_journal::{DeviceId, EpochId, Head};
use panside_messages::Message;
use rusqlite::Connection;

use crate::error::sql;
use crate::head_file::{Found, HeadFile};
use crate::heads::Tally;
use crate::load::{self, Lock, check_signature, load, lock, make};
use crate::seen::{Noting, Seen};
use crate::write::{Checkpoint, checkpoint};
use crate::{Doing, StoreError, Trouble, disk};

const OPENING: Doing = Doing::Opening;

/// How to open a store.
#[derive(Clone, Debug)]
pub struct Options {
    /// The device's id, if the store is made now. An existing store keeps its own.
    pub device: DeviceId,
    /// The first epoch, if the store is made now.
    pub epoch: EpochId,
    /// After how many commits the write-ahead log is carried over into the database; at least 1.
    pub checkpoint_every: u32,
    /// The most pages of 4096 bytes that the database may have; `None` leaves it to the disk. A store at its
    /// limit refuses entries like a full disk.
    pub max_pages: Option<u32>,
    /// How much of the journal is verified before the store opens.
    pub verify: Verify,
    /// A folder outside the store in which it is noted how far the store has come, so that a copy of the whole folder
    /// or an earlier state of it is noticed. `None`: it is not.
    pub seen: Option<PathBuf>,
}

/// How much of the journal is verified before the store opens.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verify {
    /// Every event: some 500,000 a second.
    All,
    /// The newest event and the list of jobs against the head file; everything where they don't agree. What a job's
    /// events hold is verified when the job is read, and nothing is written to a job that was not. The rest is for
    /// [`crate::Verifier`], beside the work.
    Marked,
}

impl Options {
    /// The usual options; the ids are for a store that doesn't exist yet.
    pub fn new(device: DeviceId, epoch: EpochId) -> Options {
        // 200 entries are about 5 MB of log: seldom enough not to be felt, often enough not to fill a tablet.
        Options { device, epoch, checkpoint_every: 200, max_pages: None, verify: Verify::All, seen: None }
    }
}

/// Whether a store takes entries now.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Standing {
    /// It does.
    Ready,
    /// It was opened for reading.
    ReadOnly,
    /// It is damaged or has lost something: reading goes on. See [`Store::troubles`].
    Troubled,
    /// A write failed: reading goes on where the disk allows. See [`Store::reopen`].
    Faulted {
        /// What failed.
        why: Message,
    },
}

/// An open store.
#[derive(Debug)]
pub struct Store {
    pub(crate) dir: PathBuf,
    pub(crate) options: Options,
    /// None only after a fault on a disk that can't even be read.
    pub(crate) conn: Option<Connection>,
    pub(crate) standing: Standing,
    pub(crate) troubles: Vec<Trouble>,
    pub(crate) device: DeviceId,
    pub(crate) epoch: EpochId,
    /// The newest event of this device.
    pub(crate) head: Head,
    /// What the journal amounts to.
    pub(crate) tally: Tally,
    /// The files as they were opened.
    pub(crate) opened: load::Opened,
    /// What was found in place of the head file at opening, and the file itself once it is written.
    pub(crate) found: Found,
    pub(crate) head_file: Option<HeadFile>,
    pub(crate) since_checkpoint: u32,
    /// What is noted outside the folder.
    pub(crate) seen: Option<Seen>,
    /// Held as long as the store is open for writing; the system lets go of it when the process ends.
    pub(crate) lock: Option<Lock>,
}

impl Store {
    /// Opens the store in `dir` for writing, and makes it if the folder is empty or doesn't exist.
    ///
    /// The journal is verified as [`Options::verify`] says and compared with the head file. What is found does not keep the store from
    /// opening: it is then [`Standing::Troubled`], can be read, and refuses entries. A store that a newer version
    /// wrote, but which this one may still read, opens as [`Standing::ReadOnly`].
    ///
    /// # Errors
    /// [`StoreError::Locked`], [`StoreError::NotAStore`], [`StoreError::Newer`] and
    /// [`StoreError::DatabaseGone`], in which nothing was touched; [`StoreError::Damaged`] when not even the
    /// database's own tables can be read; otherwise what the disk said.
    pub fn open(dir: &Path, options: Options) -> Result<Store, StoreError> {
        if !load::database(dir).exists() && load::head_file(dir).exists() {
            return Err(StoreError::DatabaseGone { dir: dir.to_owned() });
        }
        disk::make_dir(OPENING, dir)?;
        // The folder may be reached through a link; nothing inside it may.
        let dir = &load::real(dir)?;
        let database = load::database(dir);
        if database.exists() {
            check_signature(&database)?;
        }
        let lock = lock(dir)?;
        // Looked at under the lock: another process may have made it meanwhile.
        if !database.exists() {
            make(dir, &options)?;
        }
        Ok(Store { lock: Some(lock), ..load(dir, options, true)? })
    }

    /// Opens a store that was just put in this place, and notes it outside the folder as the one that counts.
    pub(crate) fn adopt(dir: &Path, options: Options) -> Result<Store, StoreError> {
        let state = options.seen.clone();
        let mut store = Store::open(dir, Options { seen: None, ..options })?;
        store.seen = state.as_ref().map(|state| Seen::at(state, store.device));
        store.options.seen = state;
        store.note_seen(Noting::Sure);
        Ok(store)
    }

    /// Opens the store in `dir` for reading, beside a process that writes or from a disk that can't be written.
    ///
    /// # Errors
    /// [`StoreError::NoStore`], [`StoreError::Older`], and those of [`Store::open`] but [`StoreError::Locked`].
    pub fn open_read_only(dir: &Path) -> Result<Store, StoreError> {
        let database = load::database(dir);
        if !database.exists() {
            return Err(match load::head_file(dir).exists() {
                true => StoreError::DatabaseGone { dir: dir.to_owned() },
                false => StoreError::NoStore { dir: dir.to_owned() },
            });
        }
        let dir = &load::real(dir)?;
        check_signature(&load::database(dir))?;
        // The ids are for a store that is made, and reading makes none.
        let nil = uuid::Uuid::nil();
        load(dir, Options::new(DeviceId(nil), EpochId(nil)), false)
    }

    /// After [`Standing::Faulted`]: reads the store anew, verifies the whole journal, compares the heads, carries
    /// the log over into the database, and goes on. The refused entry may turn out to be there.
    ///
    /// # Errors
    /// What opening says. The store then still refuses to write and may be reopened again.
    pub fn reopen(&mut self) -> Result<(), StoreError> {
        // Both are closed first: what a failed sync left in their buffers must not be taken for what is on disk.
        self.conn = None;
        self.head_file = None;
        match load(&self.dir, self.options.clone(), self.lock.is_some()) {
            Ok(store) => *self = Store { lock: self.lock.take(), ..store },
            Err(error) => {
                self.conn = load::connect_for_reading(&self.dir).ok();
                return Err(error);
            }
        }
        Ok(())
    }

    /// Takes in what a [`crate::Verifier`] or a reading found: the store then takes no entries any more, where the
    /// trouble is of that kind.
    pub fn note(&mut self, troubles: Vec<Trouble>) {
        if troubles.iter().any(Trouble::stops_writing) && self.standing == Standing::Ready {
            self.standing = Standing::Troubled;
        }
        self.troubles.extend(troubles);
    }

    /// Whether the store takes entries now.
    pub fn standing(&self) -> &Standing {
        &self.standing
    }

    /// What was found at opening. Not empty doesn't always mean that nothing can be written: see
    /// [`Trouble::stops_writing`].
    pub fn troubles(&self) -> &[Trouble] {
        &self.troubles
    }

    /// The device that this store belongs to.
    pub fn device(&self) -> DeviceId {
        self.device
    }

    /// The epoch that new events are written in.
    pub fn epoch(&self) -> EpochId {
        self.epoch
    }

    /// The newest event of this device: the witness for its chain.
    pub fn device_head(&self) -> Head {
        self.head
    }

    /// Carries the log over into the database and closes it, so that a closed store is whole in its files. Beside
    /// a process that reads, the log stays, and nothing is lost.
    ///
    /// # Errors
    /// What the disk said. Everything confirmed is in the log even then.
    pub fn close(mut self) -> Result<(), StoreError> {
        const CLOSING: Doing = Doing::Closing;
        let Some(conn) = self.conn.take() else { return Ok(()) };
        if self.standing == Standing::Ready {
            checkpoint(&conn, Checkpoint::Truncate).map_err(sql(CLOSING))?;
            self.note_seen(Noting::Sure);
        }
        conn.close().map_err(|(_, error)| sql(CLOSING)(error))
    }
}
