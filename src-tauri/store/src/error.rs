//! Why the store refused.

use std::path::PathBuf;

use panside_journal::{Hash, Head, JournalError, RequestId, Subject};
use panside_messages::{Arg, Message};
use rusqlite::ErrorCode;

use crate::Doing;
use crate::disk::{FileKind, NotPlain};

mod say;

/// Why something could not be read or written. [`StoreError::message`] says it, with what the system said.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// Another process writes to this store.
    Locked {
        /// The store's folder.
        dir: PathBuf,
    },
    /// There is no store to read.
    NoStore {
        /// The folder.
        dir: PathBuf,
    },
    /// The folder has a head file and no database.
    DatabaseGone {
        /// The store's folder.
        dir: PathBuf,
    },
    /// The file isn't a database of this program.
    NotAStore {
        /// The file.
        path: PathBuf,
    },
    /// The store was written by a newer version.
    Newer {
        /// The database file.
        path: PathBuf,
        /// Its format.
        found: u32,
        /// The newest format this version knows.
        known: u32,
    },
    /// The store was written by an older version and can't be brought up to date by reading.
    Older {
        /// The database file.
        path: PathBuf,
    },
    /// The store was opened for reading only.
    ReadOnly,
    /// The store is damaged or has lost something; see [`crate::Store::troubles`].
    Troubled {
        /// The first thing that is wrong.
        trouble: Message,
    },
    /// An earlier write failed.
    Faulted {
        /// What failed.
        why: Message,
    },
    /// A write could not be confirmed.
    Unconfirmed {
        /// What was being done.
        doing: Doing,
        /// What failed.
        source: Box<StoreError>,
    },
    /// The subject moved on since the caller looked at it.
    Stale {
        /// The job, or the shop.
        subject: Subject,
        /// The head that the caller knew.
        expected: Head,
        /// The job's head now.
        head: Head,
    },
    /// The id of a request was used for something else before.
    RequestReused {
        /// The request.
        request: RequestId,
    },
    /// An entry without events.
    Nothing,
    /// The list and the events don't agree about where the entries end.
    NotAllThere {
        /// The job, or the shop.
        subject: Subject,
        /// Its newest event by the list.
        listed: Head,
        /// The newest one that was found.
        found: Head,
    },
    /// A job went on in two places.
    Forked {
        /// The job.
        subject: Subject,
        /// The first number where they differ.
        seq: u64,
    },
    /// The received events contain some of this device that it doesn't have.
    OwnEventUnknown {
        /// The job, or the shop.
        subject: Subject,
        /// The first such number.
        seq: u64,
    },
    /// Another device's event stands already where a received one belongs.
    DeviceForked {
        /// The device.
        device: panside_journal::DeviceId,
        /// The number that is there twice.
        seq: u64,
    },
    /// The files of the store are not those that were opened.
    Replaced {
        /// The file.
        path: PathBuf,
    },
    /// The epoch was begun before.
    EpochUsed,
    /// An event can't be sealed, or a chain of events doesn't hold.
    Journal(#[from] JournalError),
    /// No document has this hash.
    DocumentMissing {
        /// Its hash.
        hash: Hash,
    },
    /// A document's bytes don't have their hash any more.
    DocumentAltered {
        /// Its hash.
        hash: Hash,
    },
    /// A document is kept under another kind.
    DocumentKind {
        /// Its hash.
        hash: Hash,
        /// The kind it is kept under.
        kept: String,
        /// The kind it was given now.
        given: String,
    },
    /// No photo has this hash.
    PhotoUnknown {
        /// Its hash.
        hash: Hash,
    },
    /// A photo's file is gone.
    PhotoMissing {
        /// Its hash.
        hash: Hash,
    },
    /// A photo's file doesn't have its hash any more.
    PhotoAltered {
        /// Its hash.
        hash: Hash,
    },
    /// No room on the disk.
    DiskFull {
        /// What was being done.
        doing: Doing,
    },
    /// The database file is damaged.
    Damaged {
        /// What was being done.
        doing: Doing,
        /// What SQLite said.
        source: rusqlite::Error,
    },
    /// The database could not be read or written.
    Sql {
        /// What was being done.
        doing: Doing,
        /// What SQLite said.
        source: rusqlite::Error,
    },
    /// A file could not be read or written.
    File {
        /// What was being done.
        doing: Doing,
        /// The file or folder.
        path: PathBuf,
        /// What the system said.
        source: std::io::Error,
    },
    /// There is something else in place of a file or folder.
    NotPlain {
        /// Where.
        path: PathBuf,
        /// What is there.
        what: FileKind,
    },
    /// A place for a folder ends without a name, as `/` and `..` do.
    NoName {
        /// The place.
        path: PathBuf,
    },
    /// A place whose name isn't UTF-8, which SQLite can't take.
    NameNotText {
        /// The place.
        path: PathBuf,
    },
    /// A file has more bytes than are read of such a file.
    TooLarge {
        /// The file.
        path: PathBuf,
        /// The most bytes.
        most: usize,
    },
    /// A text has more bytes than are kept of it.
    TooLong {
        /// What was being done.
        doing: Doing,
        /// The most bytes.
        most: usize,
    },
    /// A file that somebody named can't be read.
    CannotRead {
        /// The file.
        path: PathBuf,
        /// What the system said.
        source: std::io::Error,
    },
    /// A file that somebody named can't be written.
    CannotWrite {
        /// The file.
        path: PathBuf,
        /// What the system said.
        source: std::io::Error,
    },
    /// A file that is not to be written over is there.
    AlreadyThere {
        /// The file.
        path: PathBuf,
    },
    /// The folder for backups isn't there.
    BackupFolder {
        /// The folder.
        dir: PathBuf,
    },
    /// The folder for backups, or for what is saved, lies in the store, and would be lost with it.
    InsideStore {
        /// The folder.
        dir: PathBuf,
    },
    /// Another process backs up to this folder.
    BackupBusy {
        /// The folder.
        dir: PathBuf,
    },
    /// What would be backed up doesn't hold.
    NotBackedUp {
        /// The first thing that is wrong.
        trouble: Message,
    },
    /// The folder isn't a backup.
    NotABackup {
        /// The folder.
        path: PathBuf,
        /// Why not: what the system said, or a message.
        why: Arg,
    },
    /// The backup doesn't hold.
    BackupAltered {
        /// The folder.
        path: PathBuf,
        /// The first thing that is wrong.
        trouble: Message,
    },
    /// The folder has something else in it.
    NotEmpty {
        /// The folder.
        dir: PathBuf,
    },
    /// A backup could not be put in its place, and what stood there could not be put back.
    LeftAside {
        /// Where the store is now.
        aside: PathBuf,
        /// Where it stood.
        dir: PathBuf,
        /// Why the backup could not be put in its place.
        why: Box<StoreError>,
        /// What the system said when the store was put back.
        source: std::io::Error,
    },
    /// A program that only reads kept the write-ahead log from being put in order.
    Busy,
}

/// Says what was being done when SQLite failed.
pub(crate) fn sql(doing: Doing) -> impl Fn(rusqlite::Error) -> StoreError {
    move |source| match source.sqlite_error_code() {
        Some(ErrorCode::DiskFull) => StoreError::DiskFull { doing },
        Some(ErrorCode::DatabaseCorrupt | ErrorCode::NotADatabase) => StoreError::Damaged { doing, source },
        _ => StoreError::Sql { doing, source },
    }
}

/// Says what was being done with which file when the system failed.
pub(crate) fn file(doing: Doing, path: &std::path::Path) -> impl Fn(std::io::Error) -> StoreError {
    let path = path.to_owned();
    move |source| match (source.get_ref().and_then(|inner| inner.downcast_ref()), source.kind()) {
        (Some(NotPlain(what)), _) => StoreError::NotPlain { path: path.clone(), what: *what },
        (_, std::io::ErrorKind::StorageFull | std::io::ErrorKind::QuotaExceeded) => {
            StoreError::DiskFull { doing }
        }
        _ => StoreError::File { doing, path: path.clone(), source },
    }
}

/// Refuses a text of more than `most` bytes.
pub(crate) fn at_most(doing: Doing, text: &str, most: usize) -> Result<(), StoreError> {
    if text.len() > most { Err(StoreError::TooLong { doing, most }) } else { Ok(()) }
}

impl StoreError {
    /// Whether a write that ended in this must stop all writing. A refusal leaves the database as it was; a
    /// failure of the machine leaves unknown what is on disk.
    pub(crate) fn is_fault(&self) -> bool {
        match self {
            StoreError::Sql { source, .. } => !matches!(
                source.sqlite_error_code(),
                Some(
                    ErrorCode::ConstraintViolation
                        | ErrorCode::DatabaseBusy
                        | ErrorCode::DatabaseLocked
                        | ErrorCode::TooBig
                )
            ),
            StoreError::Damaged { .. }
            | StoreError::File { .. }
            | StoreError::Replaced { .. }
            | StoreError::Unconfirmed { .. } => true,
            _ => false,
        }
    }
}

#[cfg(test)]
mod tests;
