//! What can be wrong with a store that can still be read.

use std::path::PathBuf;

use panside_journal::{Hash, Head, JobId, JournalError, Subject};

/// A finding of the check at opening or of [`crate::Store::check`].
#[derive(Debug, thiserror::Error)]
pub enum Trouble {
    /// The newest confirmed events are gone.
    #[error("The newest entries are lost: the journal ends at entry {}, but entry {} was confirmed. Restore a backup, or go on from here in a new epoch.", have.seq, named.seq)]
    TailLost {
        /// The newest event that is there.
        have: Head,
        /// The newest event that was confirmed.
        named: Head,
    },
    /// The journal went another way than the head file knows.
    #[error("This is not the journal that was last written here: entry {} differs from the confirmed one. Restore the right backup, or go on from here in a new epoch.", named.seq)]
    HeadDiffers {
        /// The newest event that was confirmed.
        named: Head,
    },
    /// The head file knows an epoch that the database doesn't.
    #[error("The newest epoch of this store is lost. Restore a backup, or go on from here in a new epoch.")]
    EpochLost,
    /// There is no head file beside a journal with events.
    #[error(
        "The head file is missing, as after copying the database alone: it cannot be known whether the newest entries are there. Look, then go on in a new epoch."
    )]
    HeadFileMissing,
    /// The head file can't be read.
    #[error(
        "The head file cannot be read: it cannot be known whether the newest entries are there. Look, then go on in a new epoch."
    )]
    HeadFileUnreadable,
    /// The head file belongs to another device's store.
    #[error(
        "The head file belongs to another store. Look whether the newest entries are there, then go on in a new epoch."
    )]
    HeadFileForeign,
    /// The whole folder was set back to an earlier state.
    #[error("This folder is in an earlier state: it ends at entry {}, but entry {} was made here. Restore the newest backup, or go on from here in a new epoch.", have.seq, noted.seq)]
    SetBack {
        /// The newest event that is there.
        have: Head,
        /// The newest event that was noted outside the folder.
        noted: Head,
    },
    /// The folder is a copy, and the one it was copied from is still there.
    #[error("This folder is a copy of {}, which is still there. Work in that one; or go on in this one in a new epoch.", original.display())]
    Copied {
        /// The folder that was written last.
        original: PathBuf,
    },
    /// A store with entries that was never written on this device as this user.
    #[error(
        "This folder was not written here before: it cannot be told whether it is a copy, or an older state of one. Look whether the newest entries are there, then go on in a new epoch."
    )]
    NotSeenHere,
    /// What is noted outside the folder can't be read or kept.
    #[error("It would not be noticed if this folder were a copy or in an earlier state: {} could not be used ({why}).", path.display())]
    NotNoted {
        /// The file outside the folder.
        path: PathBuf,
        /// Why not.
        why: String,
    },
    /// An event doesn't fit in its chain.
    #[error("The journal does not hold: {0}")]
    Chain(#[from] JournalError),
    /// An event names an epoch that doesn't belong at its place.
    #[error("Entry {device_seq} of this device is in an epoch that was not begun there.")]
    EpochDiffers {
        /// Its number on the device.
        device_seq: u64,
    },
    /// An event on the side of a job follows none that is there.
    #[error("Entry {seq} of {subject} follows no entry that is there.")]
    SideAlone {
        /// The job, or the shop.
        subject: Subject,
        /// Its number.
        seq: u64,
    },
    /// A row of the journal can't be read.
    #[error("Row {row} of the journal cannot be read.")]
    RowUnreadable {
        /// The row.
        row: i64,
    },
    /// SQLite found the database damaged.
    #[error("The database is damaged: {detail}")]
    Damaged {
        /// What SQLite said.
        detail: String,
    },
    /// The list of jobs doesn't agree with the journal, or isn't as it was written.
    #[error("The list of jobs is not right about {subject}. Rebuild it from the journal.")]
    ListDiffers {
        /// The job, or the shop.
        subject: Subject,
    },
    /// The list of jobs isn't the one that was last confirmed.
    #[error("The list of jobs is not the one that was last confirmed. Rebuild it from the journal.")]
    ListUnknown,
    /// A backup's list of what is in it isn't what is in it.
    #[error("The backup does not hold what its manifest says.")]
    ManifestDiffers,
    /// Some events of a subject are gone.
    #[error("{0}")]
    Entries(String),
    /// A document's bytes don't have their hash any more.
    #[error("Document {hash} was altered on disk. Import it again.")]
    DocumentAltered {
        /// Its hash.
        hash: Hash,
    },
    /// A document that an entry names isn't kept.
    #[error("Document {hash}, by which {subject} goes, is not in this store. It may be in a backup.")]
    DocumentMissing {
        /// Its hash.
        hash: Hash,
        /// The job, or the shop, that names it.
        subject: Subject,
    },
    /// A photo that an entry names isn't kept.
    #[error(
        "Photo {hash}, which an entry of {subject} names, is not kept in this store. It may be in a backup."
    )]
    PhotoUnkept {
        /// Its hash.
        hash: Hash,
        /// The job that names it.
        subject: Subject,
    },
    /// A photo's file is gone.
    #[error("Photo {hash} of job {job} is missing on disk.")]
    PhotoMissing {
        /// Its hash.
        hash: Hash,
        /// The job it is kept for.
        job: JobId,
    },
    /// A photo's file, or its small picture, doesn't have its hash any more.
    #[error("Photo {hash} of job {job} was altered on disk.")]
    PhotoAltered {
        /// Its hash.
        hash: Hash,
        /// The job it is kept for.
        job: JobId,
    },
}

impl Trouble {
    /// Whether it is only about the newest events, so that a person may decide to go on in a new epoch.
    pub fn ends_with_new_epoch(&self) -> bool {
        matches!(
            self,
            Trouble::TailLost { .. }
                | Trouble::HeadDiffers { .. }
                | Trouble::EpochLost
                | Trouble::HeadFileMissing
                | Trouble::HeadFileUnreadable
                | Trouble::HeadFileForeign
                | Trouble::SetBack { .. }
                | Trouble::Copied { .. }
                | Trouble::NotSeenHere
        )
    }

    /// Whether nothing may be written while it lasts. A missing photo hinders no entry.
    pub fn stops_writing(&self) -> bool {
        self.ends_with_new_epoch()
            || self.ends_with_rebuild()
            || matches!(
                self,
                Trouble::Chain(_)
                    | Trouble::Entries(_)
                    | Trouble::EpochDiffers { .. }
                    | Trouble::SideAlone { .. }
                    | Trouble::RowUnreadable { .. }
                    | Trouble::Damaged { .. }
            )
    }
}
