//! What can be wrong with a store that can still be read.

use std::fmt;
use std::path::PathBuf;

use panside_journal::{Hash, Head, JobId, JournalError, Subject};
use panside_messages::{Arg, Message};

use crate::message::*;

/// A finding of the check at opening or of [`crate::Store::check`].
#[derive(Debug, thiserror::Error)]
pub enum Trouble {
    /// The newest confirmed events are gone.
    TailLost {
        /// The newest event that is there.
        have: Head,
        /// The newest event that was confirmed.
        named: Head,
    },
    /// The journal went another way than the head file knows.
    HeadDiffers {
        /// The newest event that was confirmed.
        named: Head,
    },
    /// The head file knows an epoch that the database doesn't.
    EpochLost,
    /// There is no head file beside a journal with events.
    HeadFileMissing,
    /// The head file can't be read.
    HeadFileUnreadable,
    /// The head file belongs to another device's store.
    HeadFileForeign,
    /// The whole folder was set back to an earlier state.
    SetBack {
        /// The newest event that is there.
        have: Head,
        /// The newest event that was noted outside the folder.
        noted: Head,
    },
    /// The folder is a copy, and the one it was copied from is still there.
    Copied {
        /// The folder that was written last.
        original: PathBuf,
    },
    /// A store with entries that was never written on this device as this user.
    NotSeenHere,
    /// What is noted outside the folder can't be read or kept.
    NotNoted {
        /// The file outside the folder.
        path: PathBuf,
        /// Why not: what the system said, or a message.
        why: Arg,
    },
    /// An event doesn't fit in its chain.
    Chain(#[from] JournalError),
    /// An event names an epoch that doesn't belong at its place.
    EpochDiffers {
        /// Its number on the device.
        device_seq: u64,
    },
    /// An event on the side of a job follows none that is there.
    SideAlone {
        /// The job, or the shop.
        subject: Subject,
        /// Its number.
        seq: u64,
    },
    /// A row of the journal can't be read.
    RowUnreadable {
        /// The row.
        row: i64,
    },
    /// SQLite found the database damaged.
    Damaged {
        /// What SQLite said.
        detail: String,
    },
    /// The list of jobs doesn't agree with the journal, or isn't as it was written.
    ListDiffers {
        /// The job, or the shop.
        subject: Subject,
    },
    /// The list of jobs isn't the one that was last confirmed.
    ListUnknown,
    /// A backup's list of what is in it isn't what is in it.
    ManifestDiffers,
    /// Some events of a subject are gone.
    Entries(Message),
    /// A document's bytes don't have their hash any more.
    DocumentAltered {
        /// Its hash.
        hash: Hash,
    },
    /// A document that an entry names isn't kept.
    DocumentMissing {
        /// Its hash.
        hash: Hash,
        /// The job, or the shop, that names it.
        subject: Subject,
    },
    /// A photo that an entry names isn't kept.
    PhotoUnkept {
        /// Its hash.
        hash: Hash,
        /// The job that names it.
        subject: Subject,
    },
    /// A photo's file is gone.
    PhotoMissing {
        /// Its hash.
        hash: Hash,
        /// The job it is kept for.
        job: JobId,
    },
    /// A photo's file, or its small picture, doesn't have its hash any more.
    PhotoAltered {
        /// Its hash.
        hash: Hash,
        /// The job it is kept for.
        job: JobId,
    },
}

impl Trouble {
    /// What to say to a person.
    #[must_use]
    pub fn message(&self) -> Message {
        match self {
            Trouble::TailLost { have, named } => store_trouble_tail_lost(have.seq, named.seq),
            Trouble::HeadDiffers { named } => store_trouble_head_differs(named.seq),
            Trouble::EpochLost => store_trouble_epoch_lost(),
            Trouble::HeadFileMissing => store_trouble_head_file_missing(),
            Trouble::HeadFileUnreadable => store_trouble_head_file_unreadable(),
            Trouble::HeadFileForeign => store_trouble_head_file_foreign(),
            Trouble::SetBack { have, noted } => store_trouble_set_back(have.seq, noted.seq),
            Trouble::Copied { original } => store_trouble_copied(original.as_path()),
            Trouble::NotSeenHere => store_trouble_not_seen_here(),
            Trouble::NotNoted { path, why } => store_trouble_not_noted(path.as_path(), why.clone()),
            Trouble::Chain(error) => store_trouble_chain(error.message()),
            Trouble::EpochDiffers { device_seq } => store_trouble_epoch_differs(*device_seq),
            Trouble::SideAlone { subject, seq } => store_trouble_side_alone(*seq, subject.to_string()),
            Trouble::RowUnreadable { row } => store_trouble_row_unreadable(*row),
            Trouble::Damaged { detail } => store_trouble_damaged(detail),
            Trouble::ListDiffers { subject } => store_trouble_list_differs(subject.to_string()),
            Trouble::ListUnknown => store_trouble_list_unknown(),
            Trouble::ManifestDiffers => store_trouble_manifest_differs(),
            Trouble::Entries(message) => message.clone(),
            Trouble::DocumentAltered { hash } => store_trouble_document_altered(hash.to_string()),
            Trouble::DocumentMissing { hash, subject } => {
                store_trouble_document_missing(hash.to_string(), subject.to_string())
            }
            Trouble::PhotoUnkept { hash, subject } => {
                store_trouble_photo_unkept(hash.to_string(), subject.to_string())
            }
            Trouble::PhotoMissing { hash, job } => {
                store_trouble_photo_missing(hash.to_string(), job.to_string())
            }
            Trouble::PhotoAltered { hash, job } => {
                store_trouble_photo_altered(hash.to_string(), job.to_string())
            }
        }
    }
}

impl fmt::Display for Trouble {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.message().english())
    }
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
