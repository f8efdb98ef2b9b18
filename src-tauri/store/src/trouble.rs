//! What can be wrong with a store that can still be read.

use panside_journal::{Hash, Head, JobId, JournalError};

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
    /// An event doesn't fit in its chain.
    #[error("The journal does not hold: {0}")]
    Chain(#[from] JournalError),
    /// An event names an epoch that doesn't belong at its place.
    #[error("Entry {device_seq} of this device is in an epoch that was not begun there.")]
    EpochDiffers {
        /// Its number on the device.
        device_seq: u64,
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
    /// The list of jobs doesn't agree with the journal.
    #[error("The list of jobs does not agree with the journal about job {job}. Rebuild it.")]
    JobDiffers {
        /// The job.
        job: JobId,
    },
    /// A document's bytes don't have their hash any more.
    #[error("Document {hash} was altered on disk. Import it again.")]
    DocumentAltered {
        /// Its hash.
        hash: Hash,
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
        )
    }

    /// Whether nothing may be written while it lasts. A wrong list of jobs or a missing photo hinders no entry.
    pub fn stops_writing(&self) -> bool {
        self.ends_with_new_epoch()
            || matches!(
                self,
                Trouble::Chain(_)
                    | Trouble::EpochDiffers { .. }
                    | Trouble::RowUnreadable { .. }
                    | Trouble::Damaged { .. }
            )
    }
}
