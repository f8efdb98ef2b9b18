//! What can go wrong in a use case. A refusal by the rules is one of them only where no work can go on.

use std::fmt;

use panside_job::{JobError, Refusal};
use panside_journal::{Hash, JobId, PersonId};
use panside_messages::{Arg, Message};
use panside_photo::PhotoError;
use panside_procedure::Problems;
use panside_shop::ShopRefusal;
use panside_store::StoreError;

use crate::message::*;
use crate::way_back::PlanWrong;

/// Why a use case failed. Each says what the person can do.
#[derive(Debug, thiserror::Error)]
pub enum BayError {
    /// The disk or the store.
    Store(#[from] StoreError),
    /// An event that this version cannot read.
    Job(#[from] JobError),
    /// A photo that cannot be taken in.
    Photo(#[from] PhotoError),
    /// A checklist with mistakes.
    Checklist(Problems),
    /// A spec sheet with mistakes.
    Sheet(Problems),
    /// The texts of a checklist in another language, with mistakes.
    Texts(Problems),
    /// A sheet that does not fit the checklist, or values that make no sense.
    SheetLacks(Vec<Message>),
    /// A sheet leaves values to the shop that the shop does not have yet: what people read for them.
    ShopLacks(Vec<String>),
    /// A checklist that is not proved.
    NotProved {
        /// Its id.
        id: String,
        /// What the proof says.
        why: Message,
    },
    /// A checklist whose proof did not come to its end.
    NotDecided {
        /// Its id.
        id: String,
        /// How many states were found until then.
        states: usize,
    },
    /// A checklist that hangs on the vehicle, and no spec sheet fits it.
    NeedsSheet {
        /// Its id.
        id: String,
    },
    /// A checklist whose proof is not made on this tablet.
    NotProvedYet,
    /// A checklist or sheet that the program does not have.
    NotOnShelf(String),
    /// A checklist that uses parts which are not here.
    ChecklistParts(Problems),
    /// A file with an id that no checklist may have.
    ChecklistId(String),
    /// A checklist with the id of one that the program carries.
    ChecklistBuiltIn(String),
    /// A checklist that can't be adopted before it is proved.
    AdoptNotProved(String),
    /// A sheet that belongs to the program and is not changed.
    SheetBuiltIn(String),
    /// What is typed can't be kept as a sheet.
    SheetNotKept(Vec<Message>),
    /// Nothing is typed of that sheet.
    SheetDraft,
    /// Values can't be marked as checked.
    SheetCheck(Message),
    /// A file with an id that no sheet may have.
    SheetId(String),
    /// Somebody who is not of the shop.
    NoPerson,
    /// What is asked of the shop is not done.
    Shop(#[from] ShopRefusal),
    /// A PIN has to be given first. Whoever asks is shown a pad for it and tries again.
    PinAsked {
        /// Whose.
        person: PersonId,
        /// What they are called.
        name: String,
    },
    /// A PIN of another form.
    PinForm,
    /// Somebody would set another person's PIN.
    PinOfOther(String),
    /// The first PIN would be set by others.
    PinFirstOwn(String),
    /// Somebody resets a PIN who does not lead the shop, or has no PIN to show it by.
    PinLead(String),
    /// A PIN would be reset without a second person who can show who they are.
    PinSecond(String),
    /// There is no PIN to give.
    NoPin(String),
    /// A PIN could not be made into what is kept of it.
    PinHash(String),
    /// What is typed is no torque tool.
    Tool(Vec<Message>),
    /// An entry names a photo that isn't kept for its job.
    PhotoNotKept,
    /// The last backup by the plan failed.
    BackupFailed(String),
    /// A plan for backups that can't be kept.
    BackupPlan(PlanWrong),
    /// A folder that was typed by a part of its path.
    WholePath(String),
    /// No such job.
    NoJob(JobId),
    /// The job moved on since the screen was drawn.
    Stale {
        /// The job.
        job: JobId,
    },
    /// The rules refuse it.
    Refused {
        /// As message ids.
        refusal: Refusal,
    },
    /// What the store holds under a hash is of another kind.
    Pinned(Hash),
    /// A record that cannot be made.
    Record(#[from] panside_record::RecordError),
    /// A value could not be written as JSON.
    Json(#[from] serde_json::Error),
}

impl BayError {
    /// What to say to a person.
    #[must_use]
    pub fn message(&self) -> Message {
        match self {
            BayError::Store(error) => error.message(),
            BayError::Job(error) => error.message(),
            BayError::Photo(error) => error.message(),
            BayError::Checklist(problems) => bay_checklist(problems.lines()),
            BayError::Sheet(problems) => bay_sheet(problems.lines()),
            BayError::Texts(problems) => bay_texts(problems.lines()),
            BayError::SheetLacks(problems) => bay_sheet_lacks(Arg::lines(problems.clone())),
            BayError::ShopLacks(names) => bay_shop_lacks(Arg::List(names.clone())),
            BayError::NotProved { id, why } => bay_not_proved(id, why.clone()),
            BayError::NotDecided { id, states } => bay_not_proved(id, bay_undecided(*states)),
            BayError::NeedsSheet { id } => bay_needs_sheet(id),
            BayError::ChecklistParts(problems) => bay_checklist_parts(problems.lines()),
            BayError::ChecklistId(id) => bay_checklist_id(id),
            BayError::ChecklistBuiltIn(id) => bay_checklist_built_in(id),
            BayError::AdoptNotProved(id) => bay_adopt_not_proved(id),
            BayError::NotProvedYet => bay_not_proved_yet(),
            BayError::NotOnShelf(id) => bay_not_on_shelf(id),
            BayError::SheetBuiltIn(id) => bay_sheet_built_in(id),
            BayError::SheetNotKept(problems) => bay_sheet_not_kept(Arg::lines(problems.clone())),
            BayError::SheetDraft => bay_sheet_draft(),
            BayError::SheetCheck(message) => message.clone(),
            BayError::SheetId(id) => bay_sheet_id(id),
            BayError::NoPerson => bay_no_person(),
            BayError::Shop(error) => error.message(),
            BayError::PinAsked { name, .. } => bay_pin_asked(name),
            BayError::PinForm => bay_pin_form(),
            BayError::PinOfOther(name) => bay_pin_of_other(name),
            BayError::PinFirstOwn(name) => bay_pin_first_own(name),
            BayError::PinLead(name) => bay_pin_lead(name),
            BayError::PinSecond(name) => bay_pin_second(name),
            BayError::NoPin(name) => bay_no_pin(name),
            BayError::PinHash(why) => bay_pin_hash(why),
            BayError::Tool(problems) => bay_tool(Arg::lines(problems.clone())),
            BayError::PhotoNotKept => bay_photo_not_kept(),
            BayError::BackupFailed(why) => bay_backup_failed(why),
            BayError::BackupPlan(wrong) => wrong.message(),
            BayError::WholePath(path) => bay_whole_path(path),
            BayError::NoJob(job) => bay_no_job(job.to_string()),
            BayError::Stale { job } => bay_stale(job.to_string()),
            BayError::Refused { refusal } => bay_refused(refusal.sentences()),
            BayError::Pinned(hash) => bay_pinned(hash.to_string()),
            BayError::Record(error) => error.message(),
            BayError::Json(why) => bay_json(why.to_string()),
        }
    }
}

impl fmt::Display for BayError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.message().english())
    }
}

impl BayError {
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

impl From<Refusal> for BayError {
    fn from(refusal: Refusal) -> BayError {
        BayError::Refused { refusal }
    }
}
