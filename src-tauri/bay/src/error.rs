//! What can go wrong in a use case. A refusal by the rules is one of them only where no work can go on.

use panside_job::{JobError, Refusal};
use panside_journal::{Hash, JobId, PersonId};
use panside_photo::PhotoError;
use panside_procedure::Problems;
use panside_shop::ShopRefusal;
use panside_store::StoreError;

use crate::Bay;

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
        "The spec sheet in this file is called \"{0}\". A sheet's id has small letters, digits and hyphens only, 100 at most; \
         correct the file."
    )]
    SheetId(String),
    /// Somebody who is not of the shop.
    #[error(
        "Only the shop's people can work and sign. Add the person to the shop's list, or choose somebody from it."
    )]
    NoPerson,
    /// What is asked of the shop is not done.
    #[error(transparent)]
    Shop(#[from] ShopRefusal),
    /// A PIN has to be given first. Whoever asks is shown a pad for it and tries again.
    #[error("The PIN of {name} is needed for this. Enter it, then repeat.")]
    PinAsked {
        /// Whose.
        person: PersonId,
        /// What they are called.
        name: String,
    },
    /// A PIN of another form.
    #[error("A PIN has 4 to 8 digits. Choose another one.")]
    PinForm,
    /// Somebody would set another person's PIN.
    #[error(
        "Only {0} sets this PIN. If {0} has forgotten it, the shop's lead resets it together with a second person."
    )]
    PinOfOther(String),
    /// The first PIN would be set by others.
    #[error("{0} has no PIN yet. {0} sets the first one alone; there is nothing to reset.")]
    PinFirstOwn(String),
    /// Somebody resets a PIN who does not lead the shop, or has no PIN to show it by.
    #[error(
        "A forgotten PIN is reset by the shop's lead, who enters their own PIN for it. Choose somebody who leads \
         the shop, has a PIN and is not {0}. If there is nobody, this cannot be done now: mark a person as lead in \
         the shop's list, and let them set their own PIN first."
    )]
    PinLead(String),
    /// A PIN would be reset without a second person who can show who they are.
    #[error(
        "The lead does not reset the PIN of {0} alone: a second person who has a PIN enters theirs too, and is neither \
         the lead nor {0}. If nobody else has a PIN, this cannot be done now. Let another person of the shop set \
         their own PIN first, then repeat."
    )]
    PinSecond(String),
    /// There is no PIN to give.
    #[error("{0} has no PIN on this tablet, so there is none to give.")]
    NoPin(String),
    /// A PIN could not be made into what is kept of it.
    #[error("The PIN could not be taken ({0}). Try again.")]
    PinHash(String),
    /// What is typed is no torque tool.
    #[error("The torque tool is not kept yet:\n{}", .0.join("\n"))]
    Tool(Vec<String>),
    /// An entry names a photo that isn't kept for its job.
    #[error("This photo is not kept for this job, so it was not entered. Take it again.")]
    PhotoNotKept,
    /// The last backup by the plan failed.
    #[error("The last backup failed. Put that right; it is tried again every hour. {0}")]
    BackupFailed(String),
    /// A plan for backups that can't be kept.
    #[error("{0}")]
    BackupPlan(String),
    /// A folder that was typed by a part of its path.
    #[error("\"{0}\" is not the whole path of a folder. Type it from / on.")]
    WholePath(String),
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

impl Bay {
    /// A refusal that no work can go on after, as a sentence too.
    pub(crate) fn refused(&self, refusal: Refusal) -> BayError {
        BayError::Refused { said: refusal.said_by(self.speaker), refusal }
    }
}

impl BayError {
    /// The sentence for a person, with what the system said behind it. Whoever shows a failure shows this.
    #[must_use]
    pub fn said(&self) -> String {
        match self {
            BayError::Store(error) => error.said(),
            error => error.to_string(),
        }
    }

    /// A file that is not to be written over is there.
    #[must_use]
    pub fn is_there_already(&self) -> bool {
        matches!(self, BayError::Store(StoreError::AlreadyThere { .. }))
    }

    /// Another process has the store.
    #[must_use]
    pub fn is_locked(&self) -> bool {
        matches!(self, BayError::Store(StoreError::Locked { .. }))
    }
}
