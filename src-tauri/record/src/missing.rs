//! What a job lacks, by one rule for every form of the record.

use panside_job::Job;
use panside_job::job::{Attempt, StepDetail};
use panside_job::value::Urgency;
use panside_messages::Message;
use panside_procedure::Shown;
use panside_procedure::format::{Ask, Entry, SignKind, Step};
use panside_procedure::machine::{ItemIx, SignIx};
use serde::{Deserialize, Serialize};

use crate::messages;
use crate::source::Source;

/// What kind of thing is missing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MissingKind {
    /// Pieces are off the vehicle.
    PieceOff,
    /// The customer was asked, and it is not settled how the job goes on.
    Unanswered,
    /// Something was found that must be dealt with in this job.
    FoundOpen,
    /// An attest of finished work has lapsed.
    AttestLapsed,
    /// A step was voided and not corrected.
    VoidedNotCorrected,
    /// A step is in progress and not done.
    StepInProgress,
    /// A required entry or signature is missing at a step in progress or done.
    EntryMissing,
    /// A step came into the job after its phase had passed, and nobody said why it was not worked.
    MissedUnexplained,
    /// A step of this job is not worked.
    StepNotWorked,
    /// It is not decided whether a step is part of this job.
    StepUndecided,
}

impl MissingKind {
    /// Every kind, in the order in which they are told.
    pub const ALL: &[MissingKind] = &[
        MissingKind::PieceOff,
        MissingKind::Unanswered,
        MissingKind::FoundOpen,
        MissingKind::AttestLapsed,
        MissingKind::VoidedNotCorrected,
        MissingKind::StepInProgress,
        MissingKind::EntryMissing,
        MissingKind::MissedUnexplained,
        MissingKind::StepNotWorked,
        MissingKind::StepUndecided,
    ];

    /// What is said before the names of what is missing.
    #[must_use]
    pub fn says(self) -> Message {
        match self {
            MissingKind::PieceOff => messages::missing_piece_off(),
            MissingKind::Unanswered => messages::missing_unanswered(),
            MissingKind::FoundOpen => messages::missing_found(),
            MissingKind::AttestLapsed => messages::missing_attest_lapsed(),
            MissingKind::VoidedNotCorrected => messages::missing_voided(),
            MissingKind::StepInProgress => messages::missing_in_progress(),
            MissingKind::EntryMissing => messages::missing_entry_at(),
            MissingKind::MissedUnexplained => messages::missing_unexplained(),
            MissingKind::StepNotWorked => messages::missing_not_done(),
            MissingKind::StepUndecided => messages::missing_undecided(),
        }
    }
}

/// One thing that is missing.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Missing {
    /// What kind.
    pub kind: MissingKind,
    /// Id of the step, where it belongs to one.
    pub step: Option<String>,
    /// Id of the item, sign-off, entry or step that is missing.
    pub id: String,
    /// What it is called, such as the title of the step.
    pub what: String,
}

/// Everything that a job lacks: by kind, and within a kind in file order. Empty when the job is complete. What was skipped
/// or explained is not missing; a record tells it apart.
pub(crate) fn missing(source: Source<'_>) -> Vec<Missing> {
    let job = source.job;
    let mut all = pieces_off(source);
    all.extend(turned_up(source));
    all.extend(attests_lapsed(job));
    for (number, step) in job.procedure.steps() {
        let detail = job.step(number);
        let kind = match job.procedure.machine.shown(&job.state, number) {
            Shown::Voided => Some(MissingKind::VoidedNotCorrected),
            Shown::InProgress => Some(MissingKind::StepInProgress),
            Shown::Missed if detail.missed.is_none() => Some(MissingKind::MissedUnexplained),
            Shown::Waiting | Shown::Open => Some(MissingKind::StepNotWorked),
            Shown::Undecided => Some(MissingKind::StepUndecided),
            Shown::Missed | Shown::Done | Shown::Lapsed | Shown::Skipped | Shown::NotInThisJob => None,
        };
        let of_step = |kind, id: &str, what: String| {
            let (step, id) = (Some(step.id.clone()), id.to_owned());
            Missing { kind, step, id, what }
        };
        all.extend(kind.map(|kind| of_step(kind, &step.id, step.title.clone())));
        let entries = attempt_to_check(detail).into_iter().flat_map(|attempt| lacking(step, attempt));
        all.extend(entries.map(|entry| {
            let what = source.say.within(&messages::entry_of_step(&entry.label, &step.title));
            of_step(MissingKind::EntryMissing, &entry.id, what)
        }));
    }
    all.sort_by_key(|missing| missing.kind);
    all
}

/// The attempt whose entries must be complete: the one in progress, else the one that counts.
fn attempt_to_check(detail: &StepDetail) -> Option<&Attempt> {
    detail.in_progress().or_else(|| detail.counts())
}

/// Required entries without a value, required sign-offs without a signature.
fn lacking<'a>(step: &'a Step, attempt: &'a Attempt) -> impl Iterator<Item = &'a Entry> {
    step.entries.iter().filter(|entry| {
        let given = match &entry.ask {
            Ask::SignOff(asked) => attempt.signs.iter().any(|given| given.sign == asked.sign),
            _ => attempt.latest(&entry.id).is_some(),
        };
        !entry.optional && !given
    })
}

/// Both counts of what is off are told: the rules' and the one from the events.
fn pieces_off(source: Source<'_>) -> Vec<Missing> {
    let job = source.job;
    let items = job.procedure.checklist.items.iter().enumerate().filter_map(|(at, item)| {
        let by_rule = i32::from(job.procedure.machine.empty(&job.state, ItemIx::of(at)));
        let by_events = job.tally.off(&item.id);
        let [rule, events] = [by_rule, by_events].map(|pieces| pieces.to_string());
        let what = source.say.within(&if by_rule == by_events {
            messages::value_pieces(&item.name, rule)
        } else {
            messages::pieces_two_counts(&item.name, rule, events)
        });
        let (kind, id) = (MissingKind::PieceOff, item.id.clone());
        (by_rule != 0 || by_events != 0).then_some(Missing { kind, step: None, id, what })
    });
    items.collect()
}

/// Pieces off that the checklist does not know, questions without an answer, findings that must be dealt with.
fn turned_up(source: Source<'_>) -> Vec<Missing> {
    let all = &source.job.turned_up;
    let one = |kind, seq: u64, step: Option<&String>, what: String| {
        let (step, id) = (step.cloned(), seq.to_string());
        Missing { kind, step, id, what }
    };
    let pieces = all.pieces.iter().filter(|piece| piece.off() > 0).map(|piece| {
        let what = source.say.within(&messages::value_pieces(&piece.piece.name, piece.off().to_string()));
        one(MissingKind::PieceOff, piece.mark.seq, None, what)
    });
    let asked = all.asked.iter().filter(|asked| asked.standing().holds_up()).map(|asked| {
        let (step, what) = (Some(&asked.asked.step), asked.asked.text.clone());
        one(MissingKind::Unanswered, asked.mark.seq, step, what)
    });
    let found = all.found.iter().filter(|found| {
        found.found.urgency == Urgency::Now && found.dealt_with.is_none() && found.taken_back.is_none()
    });
    let found =
        found.map(|found| one(MissingKind::FoundOpen, found.mark.seq, None, found.found.text.clone()));
    pieces.chain(asked).chain(found).collect()
}

fn attests_lapsed(job: &Job) -> Vec<Missing> {
    let machine = &job.procedure.machine;
    let lapsed = (0..machine.signs.len()).map(SignIx::of).filter_map(|number| {
        let text = job.procedure.sign_off(number);
        let is_lapsed = text.kind == SignKind::Attest && machine.has_lapsed(&job.state, number);
        is_lapsed.then(|| Missing {
            kind: MissingKind::AttestLapsed,
            step: Some(job.procedure.step(machine.signs[number.at()].step).id.clone()),
            id: text.id.clone(),
            what: text.text.clone(),
        })
    });
    lapsed.collect()
}
