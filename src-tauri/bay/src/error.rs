//! What can go wrong in a use case. A refusal by the rules is one of them only where no work can go on.

use panside_job::{JobError, Refusal};
use panside_journal::{Hash, JobId};
use panside_photo::PhotoError;
use panside_procedure::Problems;
use panside_store::StoreError;

/// Why a use case failed. Each says what the person can do.
#[derive(Debug, thiserror::Error)]
pub enum BayError {
    /// The disk or the store.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// An event that this version cannot read.
    #[error(transparent)]
    Job(#[from] JobError),
    /// A photo that cannot be taken in.
    #[error(transparent)]
    Photo(#[from] PhotoError),
    /// A checklist with mistakes.
    #[error("The checklist does not load. Correct it and try again:\n{0}")]
    Checklist(Problems),
    /// A spec sheet with mistakes.
    #[error("The spec sheet does not load. Correct it and try again:\n{0}")]
    Sheet(Problems),
    /// A sheet that does not fit the checklist, or values that make no sense.
    #[error("The spec sheet does not fit the checklist:\n{}", .0.join("\n"))]
    SheetLacks(Vec<String>),
    /// A checklist that is not proved.
    #[error("The checklist \"{id}\" is not proved, so no job can be started with it: {why}")]
    NotProved {
        /// Its id.
        id: String,
        /// What the proof says.
        why: String,
    },
    /// A checklist whose proof is not made on this tablet.
    #[error("The checklist is not proved on this tablet yet. Prove it first, then start the job.")]
    NotProvedYet,
    /// A checklist or sheet that the program does not have.
    #[error("There is no checklist or spec sheet \"{0}\" here. Choose one that is offered.")]
    NotOnShelf(String),
    /// A sheet that belongs to the program and is not changed.
    #[error(
        "The spec sheet \"{0}\" belongs to the program and stays as it is. Make a copy of it and change that."
    )]
    SheetBuiltIn(String),
    /// What is typed can't be kept as a sheet.
    #[error("The spec sheet is not kept yet:\n{}", .0.join("\n"))]
    SheetNotKept(Vec<String>),
    /// Nothing is typed of that sheet.
    #[error("Nothing is typed of this spec sheet any more: it was kept or put away. Look at the list.")]
    SheetDraft,
    /// Values can't be marked as checked.
    #[error("{0}")]
    SheetCheck(String),
    /// A file with an id that no sheet may have.
    #[error(
        "The spec sheet in this file is called \"{0}\". A sheet's id has small letters, digits and hyphens only; \
         correct the file."
    )]
    SheetId(String),
    /// A file with an older revision than the shop's.
    #[error(
        "Revision {kept} of the spec sheet \"{id}\" is here; the file has the older revision {revision}. Nothing is taken in."
    )]
    SheetOlder {
        /// The sheet's id.
        id: String,
        /// The revision in the file.
        revision: u32,
        /// The newest one here.
        kept: u32,
    },
    /// A PIN has to be given first. Whoever asks is shown a pad for it and tries again.
    #[error("The PIN of {0} is needed for this. Give it, then repeat.")]
    PinAsked(String),
    /// A PIN of another form.
    #[error("A PIN has 4 to 8 digits. Choose another one.")]
    PinForm,
    /// Somebody without a PIN would set another person's.
    #[error(
        "{0} has no PIN, and only who has one may set somebody else's. Each person sets their own first."
    )]
    PinOfOther(String),
    /// There is no PIN to give.
    #[error("{0} has no PIN on this tablet, so there is none to give.")]
    NoPin(String),
    /// A PIN could not be made into what is kept of it.
    #[error("The PIN could not be taken ({0}). Try again.")]
    PinHash(String),
    /// What is typed is no torque tool.
    #[error("The torque tool is not kept yet:\n{}", .0.join("\n"))]
    Tool(Vec<String>),
    /// Another tool has that name.
    #[error("There is a torque tool \"{0}\" already. Give this one another name, or change that one.")]
    ToolThere(String),
    /// The last backup by the plan failed.
    #[error("The last backup failed. Put that right; it is tried again every hour. {0}")]
    BackupFailed(String),
    /// A plan for backups that can't be kept.
    #[error("{0}")]
    BackupPlan(String),
    /// No such job.
    #[error("There is no job {0} on this tablet. List the jobs to see which there are.")]
    NoJob(JobId),
    /// The job moved on since the screen was drawn.
    #[error("The job {job} has moved on: somebody entered something meanwhile. Look at it again and repeat.")]
    Stale {
        /// The job.
        job: JobId,
    },
    /// The rules refuse it.
    #[error("{said}")]
    Refused {
        /// As a sentence.
        said: String,
        /// As message ids.
        refusal: Refusal,
    },
    /// What the store holds under a hash is of another kind.
    #[error("The text {0} that the job goes by cannot be read as what it was. Check the store.")]
    Pinned(Hash),
    /// A record that cannot be made.
    #[error(transparent)]
    Record(#[from] panside_record::RecordError),
    /// A value could not be written as JSON.
    #[error("Writing JSON failed: {0}")]
    Json(#[from] serde_json::Error),
}

impl BayError {
    /// Another process has the store.
    #[must_use]
    pub fn is_locked(&self) -> bool {
        matches!(self, BayError::Store(StoreError::Locked { .. }))
    }
}
