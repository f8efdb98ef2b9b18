//! Why the store refused.

use std::path::PathBuf;

use panside_journal::{Hash, Head, JournalError, RequestId, Subject};
use rusqlite::ErrorCode;

use crate::disk::NotPlain;

/// Why something could not be read or written. What the system said is the error's `source`, never its text;
/// [`StoreError::said`] puts both together.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// Another process writes to this store.
    #[error("The store {} is open in another window or program. Close that one, then try again.", dir.display())]
    Locked {
        /// The store's folder.
        dir: PathBuf,
    },
    /// There is no store to read.
    #[error("There is no store in {}. Check the folder.", dir.display())]
    NoStore {
        /// The folder.
        dir: PathBuf,
    },
    /// The folder has a head file and no database.
    #[error("The store {} has lost its database: its head file is there, the database is not. Restore a backup.", dir.display())]
    DatabaseGone {
        /// The store's folder.
        dir: PathBuf,
    },
    /// The file isn't a database of this program.
    #[error("{} is not a Panside store. It was left untouched; choose another folder.", path.display())]
    NotAStore {
        /// The file.
        path: PathBuf,
    },
    /// The store was written by a newer version.
    #[error("{} was written by a newer version (store format {found}; this one knows up to {known}). It was left untouched; update the app.", path.display())]
    Newer {
        /// The database file.
        path: PathBuf,
        /// Its format.
        found: u32,
        /// The newest format this version knows.
        known: u32,
    },
    /// The store was written by an older version and can't be brought up to date by reading.
    #[error("{} was written by an older version. Open it once in the app to bring it up to date.", path.display())]
    Older {
        /// The database file.
        path: PathBuf,
    },
    /// The store was opened for reading only.
    #[error("This store is open for reading only. Open it for writing to make entries.")]
    ReadOnly,
    /// The store is damaged or has lost something; see [`crate::Store::troubles`].
    #[error("Nothing is written to this store until it is put in order. {trouble}")]
    Troubled {
        /// The first thing that is wrong.
        trouble: String,
    },
    /// An earlier write failed.
    #[error(
        "Writing has stopped because of an earlier failure ({why}). What was saved can be read; open the store again to go on."
    )]
    Faulted {
        /// What failed.
        why: String,
    },
    /// A write could not be confirmed.
    #[error(
        "While {doing}: the disk did not confirm it, so it may or may not be there. Open the store again and look before repeating it."
    )]
    Unconfirmed {
        /// What was being done.
        doing: &'static str,
        /// What failed.
        source: Box<StoreError>,
    },
    /// The subject moved on since the caller looked at it.
    #[error("The job has changed since this was shown (it is at entry {}, this was made for entry {}). Look again, then repeat it.", head.seq, expected.seq)]
    Stale {
        /// The job, or the shop.
        subject: Subject,
        /// The head that the caller knew.
        expected: Head,
        /// The job's head now.
        head: Head,
    },
    /// The id of a request was used for something else before.
    #[error(
        "Request {request} was already used for another entry; this one was not written. Make the entry again."
    )]
    RequestReused {
        /// The request.
        request: RequestId,
    },
    /// An entry without events.
    #[error("There is nothing to write in this entry.")]
    Nothing,
    /// The list and the events don't agree about where the entries end.
    #[error(
        "The entries about {subject} are not all there: entry {} was confirmed, and {} can be read. Nothing is added to it; restore a backup, or salvage what holds.",
        listed.seq, found.seq
    )]
    NotAllThere {
        /// The job, or the shop.
        subject: Subject,
        /// Its newest event by the list.
        listed: Head,
        /// The newest one that was found.
        found: Head,
    },
    /// A job went on in two places.
    #[error(
        "This job was gone on with on two tablets from entry {seq} on. Nothing is added to it here; look at both sides and ask which one counts."
    )]
    Forked {
        /// The job.
        subject: Subject,
        /// The first number where they differ.
        seq: u64,
    },
    /// The received events contain some of this device that it doesn't have.
    #[error(
        "The received entry {seq} of {subject} was written by this device, which no longer has it. Nothing was taken over; restore a newer backup."
    )]
    OwnEventUnknown {
        /// The job, or the shop.
        subject: Subject,
        /// The first such number.
        seq: u64,
    },
    /// Another device's event stands already where a received one belongs.
    #[error(
        "Device {device} has two different entries {seq}: a copy of its data was written to as well. Nothing was taken over; go on in a new epoch on one of the two."
    )]
    DeviceForked {
        /// The device.
        device: panside_journal::DeviceId,
        /// The number that is there twice.
        seq: u64,
    },
    /// The files of the store are not those that were opened.
    #[error(
        "The files of this store were replaced or taken away while it was open ({}). Nothing is written; open the store again.", path.display()
    )]
    Replaced {
        /// The file.
        path: PathBuf,
    },
    /// The epoch was begun before.
    #[error("This epoch was begun before; a new one needs a new id.")]
    EpochUsed,
    /// An event can't be sealed, or a chain of events doesn't hold.
    #[error("The journal does not allow it or does not hold.")]
    Journal(#[from] JournalError),
    /// No document has this hash.
    #[error("Document {hash} is not in this store. Import it again.")]
    DocumentMissing {
        /// Its hash.
        hash: Hash,
    },
    /// A document's bytes don't have their hash any more.
    #[error("Document {hash} was altered on disk. Import it again.")]
    DocumentAltered {
        /// Its hash.
        hash: Hash,
    },
    /// A document is kept under another kind.
    #[error("Document {hash} is already kept as \"{kept}\", not as \"{given}\".")]
    DocumentKind {
        /// Its hash.
        hash: Hash,
        /// The kind it is kept under.
        kept: String,
        /// The kind it was given now.
        given: String,
    },
    /// No photo has this hash.
    #[error("Photo {hash} is not known in this store.")]
    PhotoUnknown {
        /// Its hash.
        hash: Hash,
    },
    /// A photo's file is gone.
    #[error("Photo {hash} is missing on disk. It may be in a backup.")]
    PhotoMissing {
        /// Its hash.
        hash: Hash,
    },
    /// A photo's file doesn't have its hash any more.
    #[error("Photo {hash} was altered on disk. It may be whole in a backup.")]
    PhotoAltered {
        /// Its hash.
        hash: Hash,
    },
    /// No room on the disk.
    #[error(
        "The disk is full: {doing} was refused and nothing was written. Free some space, then try again; reading goes on."
    )]
    DiskFull {
        /// What was being done.
        doing: &'static str,
    },
    /// The database file is damaged.
    #[error(
        "The database is damaged (found while {doing}). Restore a backup; what is readable can still be looked at."
    )]
    Damaged {
        /// What was being done.
        doing: &'static str,
        /// What SQLite said.
        source: rusqlite::Error,
    },
    /// The database could not be read or written.
    #[error(
        "The database did not answer as it should while {doing}. Try again; if it stays, open the store again."
    )]
    Sql {
        /// What was being done.
        doing: &'static str,
        /// What SQLite said.
        source: rusqlite::Error,
    },
    /// A file could not be read or written.
    #[error("{} could not be used while {doing}. Check the disk and its permissions.", path.display())]
    File {
        /// What was being done.
        doing: &'static str,
        /// The file or folder.
        path: PathBuf,
        /// What the system said.
        source: std::io::Error,
    },
    /// There is something else in place of a file or folder.
    #[error("{} is {what}, so it is not used. Name the file or folder itself.", path.display())]
    NotPlain {
        /// Where.
        path: PathBuf,
        /// What is there, with its article: `a pipe`.
        what: &'static str,
    },
    /// A file has more bytes than are read of such a file.
    #[error("{} has more than {}, the most that is read of such a file. Check that it is the right one.", path.display(), size(*most))]
    TooLarge {
        /// The file.
        path: PathBuf,
        /// The most bytes.
        most: usize,
    },
    /// A text has more bytes than are kept of it.
    #[error("While {doing}: the text has more than {}, the most that is kept. Shorten it.", size(*most))]
    TooLong {
        /// What was being done.
        doing: &'static str,
        /// The most bytes.
        most: usize,
    },
    /// A file that somebody named can't be read.
    #[error("{} cannot be read. Check the path.", path.display())]
    CannotRead {
        /// The file.
        path: PathBuf,
        /// What the system said.
        source: std::io::Error,
    },
    /// A file that somebody named can't be written.
    #[error("{} cannot be written; nothing was changed there. Choose another place, then try again.", path.display())]
    CannotWrite {
        /// The file.
        path: PathBuf,
        /// What the system said.
        source: std::io::Error,
    },
    /// A file that is not to be written over is there.
    #[error("{} is there already and stays as it is. Choose another name.", path.display())]
    AlreadyThere {
        /// The file.
        path: PathBuf,
    },
    /// The folder for backups isn't there.
    #[error(
        "The folder for backups {} is not there. Plug in its disk or choose another folder; nothing was backed up.", dir.display()
    )]
    BackupFolder {
        /// The folder.
        dir: PathBuf,
    },
    /// The folder for backups, or for what is saved, lies in the store, and would be lost with it.
    #[error("The folder {} lies inside the store and would be lost with it. Choose another one.", dir.display())]
    InsideStore {
        /// The folder.
        dir: PathBuf,
    },
    /// Another process backs up to this folder.
    #[error("Another backup to {} is being made. Try again when it is done.", dir.display())]
    BackupBusy {
        /// The folder.
        dir: PathBuf,
    },
    /// What would be backed up doesn't hold.
    #[error("This store is not backed up, because it does not hold. Earlier backups are kept. {trouble}")]
    NotBackedUp {
        /// The first thing that is wrong.
        trouble: String,
    },
    /// The folder isn't a backup.
    #[error(
        "{} is no backup that can be read ({why}). Choose a folder such as 2026-11-30T081500Z-354.", path.display()
    )]
    NotABackup {
        /// The folder.
        path: PathBuf,
        /// Why not.
        why: String,
    },
    /// The backup doesn't hold.
    #[error("The backup {} does not hold. Choose another one. {trouble}", path.display())]
    BackupAltered {
        /// The folder.
        path: PathBuf,
        /// The first thing that is wrong.
        trouble: String,
    },
    /// The folder has something else in it.
    #[error("{} has something in it that is no store. It was left untouched; choose another folder.", dir.display())]
    NotEmpty {
        /// The folder.
        dir: PathBuf,
    },
    /// A backup could not be put in its place, and what stood there could not be put back.
    #[error(
        "The backup could not be put in its place ({why}) The store that stood there is whole in {}; rename that folder to {}, then open the app again.",
        aside.display(), dir.display()
    )]
    LeftAside {
        /// Where the store is now.
        aside: PathBuf,
        /// Where it stood.
        dir: PathBuf,
        /// Why the backup could not be put in its place, as a sentence.
        why: String,
        /// What the system said when the store was put back.
        source: std::io::Error,
    },
    /// A program that only reads kept the write-ahead log from being put in order.
    #[error("Another program is reading this store and would not let go. Close it, then try again.")]
    Busy,
}

/// Says what was being done when SQLite failed.
pub(crate) fn sql(doing: &'static str) -> impl Fn(rusqlite::Error) -> StoreError {
    move |source| match source.sqlite_error_code() {
        Some(ErrorCode::DiskFull) => StoreError::DiskFull { doing },
        Some(ErrorCode::DatabaseCorrupt | ErrorCode::NotADatabase) => StoreError::Damaged { doing, source },
        _ => StoreError::Sql { doing, source },
    }
}

/// Says what was being done with which file when the system failed.
pub(crate) fn file(doing: &'static str, path: &std::path::Path) -> impl Fn(std::io::Error) -> StoreError {
    let path = path.to_owned();
    move |source| match (source.get_ref().and_then(|inner| inner.downcast_ref()), source.kind()) {
        (Some(NotPlain(what)), _) => StoreError::NotPlain { path: path.clone(), what },
        (_, std::io::ErrorKind::StorageFull | std::io::ErrorKind::QuotaExceeded) => {
            StoreError::DiskFull { doing }
        }
        _ => StoreError::File { doing, path: path.clone(), source },
    }
}

/// A number of bytes, in the largest unit that says it whole.
fn size(bytes: usize) -> String {
    let units = [(1 << 20, "MiB"), (1_000_000, "MB"), (1 << 10, "KiB"), (1_000, "kB")];
    let whole = units.into_iter().find(|(unit, _)| bytes >= *unit && bytes.is_multiple_of(*unit));
    whole.map_or_else(|| format!("{bytes} bytes"), |(unit, name)| format!("{} {name}", bytes / unit))
}

/// Refuses a text of more than `most` bytes.
pub(crate) fn at_most(doing: &'static str, text: &str, most: usize) -> Result<(), StoreError> {
    if text.len() > most { Err(StoreError::TooLong { doing, most }) } else { Ok(()) }
}

/// What the system said, without the number that only a programmer looks up.
fn words(source: &std::io::Error) -> String {
    let said = source.to_string();
    said.split(" (os error").next().unwrap_or_default().to_owned()
}

impl StoreError {
    /// The sentence for a person, with what the system said behind it.
    #[must_use]
    pub fn said(&self) -> String {
        match self.cause() {
            Some(cause) => format!("{self} The system says: {cause}."),
            None => self.to_string(),
        }
    }

    /// What the system said; nothing where there is nothing to add to the sentence.
    fn cause(&self) -> Option<String> {
        match self {
            StoreError::File { source, .. }
            | StoreError::CannotRead { source, .. }
            | StoreError::CannotWrite { source, .. }
            | StoreError::LeftAside { source, .. } => Some(words(source)),
            StoreError::Sql { source, .. } | StoreError::Damaged { source, .. } => Some(source.to_string()),
            StoreError::Journal(source) => Some(source.to_string().trim_end_matches('.').to_owned()),
            StoreError::Unconfirmed { source, .. } => match &**source {
                StoreError::DiskFull { .. } => Some("no space left on the disk".to_owned()),
                source => source.cause(),
            },
            _ => None,
        }
    }

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
