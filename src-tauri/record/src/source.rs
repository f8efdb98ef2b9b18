//! The job that a record is made of, with what several parts of the record look up in it.

use panside_job::entry::class_label;
use panside_job::job::{Attempt, EnteredValue, StepDetail};
use panside_job::{Event, Job, Mark};
use panside_messages::Message;
use panside_procedure::format::{Ask, Entry, Step};
use panside_procedure::machine::StepIx;
use serde::{Deserialize, Serialize};

use crate::by::By;
use crate::messages;
use crate::speak::Say;

/// What has become of a value that was entered.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Standing {
    /// It counts.
    Counts,
    /// A later value took its place, or the step was done again.
    Replaced,
    /// The step was left, or is still in progress.
    NotDone,
    /// It was voided, or the vehicle showed that the step cannot have been worked.
    Void,
}

/// A job to read from.
#[derive(Clone, Copy)]
pub(crate) struct Source<'a> {
    pub job: &'a Job,
    /// Who says what is put into words.
    pub say: &'a Say<'a>,
}

/// One value that was entered, with all that stands around it.
#[derive(Clone, Copy)]
pub(crate) struct Found<'a> {
    pub step: &'a Step,
    pub attempt: &'a Attempt,
    /// Nothing where the record has a value that the checklist does not ask for.
    pub entry: Option<&'a Entry>,
    pub value: &'a EnteredValue,
    pub standing: Standing,
}

impl Found<'_> {
    /// What the control says; the entry's id where the checklist has none.
    pub fn label(&self) -> String {
        self.entry.map_or(&self.value.entry, |entry| &entry.label).clone()
    }

    pub fn counts(&self) -> bool {
        self.standing == Standing::Counts
    }
}

impl<'a> Source<'a> {
    pub fn by(self, mark: &Mark) -> By {
        By::of(mark, self.job.utc_offset_min(), self.say)
    }

    /// What a class is called.
    pub fn class_label(self, ask: Option<&Ask>, class: &str) -> String {
        self.say.within(&class_label(ask, class))
    }

    /// Steps in file order with what happened at them.
    pub fn steps(self) -> impl Iterator<Item = (StepIx, &'a Step, &'a StepDetail)> {
        let job = self.job;
        job.procedure.steps().map(move |(number, step)| (number, step, job.step(number)))
    }

    /// Every value that was entered: by step in file order, in a step the oldest first.
    pub fn entered(self) -> impl Iterator<Item = Found<'a>> {
        self.steps().flat_map(|(_, step, detail)| {
            detail.attempts.iter().flat_map(move |attempt| in_attempt(step, detail, attempt))
        })
    }

    /// The title of a step, or its id where the checklist has none.
    pub fn title(self, id: &str) -> String {
        let found = self.job.procedure.names.step(id);
        found.map_or_else(|| id.to_owned(), |number| self.job.procedure.step(number).title.clone())
    }

    /// The event with this number.
    pub fn event(self, seq: u64) -> Option<&'a Event> {
        self.job.happened.iter().find(|happened| happened.seq == seq).map(|happened| &happened.event)
    }

    /// What an event was, in words.
    pub fn what(self, seq: u64) -> String {
        self.say
            .within(&self.event(seq).map_or_else(|| messages::event_number(seq), |event| self.message(event)))
    }

    fn message(self, event: &Event) -> Message {
        let procedure = &self.job.procedure;
        let step = |message: fn(String) -> Message, id: &str| message(self.title(id));
        match event {
            Event::Started(_) => messages::event_started(),
            Event::Introduced(body) => messages::event_introduced(&body.name, body.role),
            Event::Begun(body) => step(messages::event_begun, &body.step),
            Event::Left(body) => step(messages::event_left, &body.step),
            Event::Entered(body) => step(messages::event_entered, &body.step),
            Event::Done(body) => step(messages::event_done, &body.step),
            Event::Skipped(body) => step(messages::event_skipped, &body.step),
            Event::Voided(body) => step(messages::event_voided, &body.step),
            Event::Corrected(body) => step(messages::event_corrected, &body.step),
            Event::MissedExplained(body) => step(messages::event_explained, &body.step),
            Event::VehicleAction(body) => messages::event_action(self.vehicle_action_title(&body.action)),
            Event::Signed(body) => {
                messages::event_signed(procedure.checklist.sign_text(&body.signature.sign))
            }
            Event::Observed(body) => {
                let (condition, value) = procedure.labels_of(&body.condition, &body.value);
                messages::event_observed(condition, value)
            }
            Event::Expired(body) => messages::event_expired(procedure.labels_of(&body.gate, "").0),
            Event::Found(body) => messages::event_found(&body.text),
            Event::DealtWith(_) => messages::event_dealt_with(),
            Event::Asked(body) => messages::event_asked(&body.text),
            Event::Answered(_) => messages::event_answered(),
            Event::WentOn(_) => messages::event_went_on(),
            Event::PieceOff(body) => messages::event_piece_off(&body.name),
            Event::PieceBack(_) => messages::event_piece_back(),
            Event::PieceGone(_) => messages::event_piece_gone(),
            Event::TakenBack(_) => messages::event_taken_back(),
            Event::Finished(_) => messages::event_finished(),
            Event::Stopped(_) => messages::event_stopped(),
            Event::ClockJumped(_) => messages::event_clock(),
        }
    }

    /// What the button of a vehicle action says.
    pub fn vehicle_action_title(self, id: &str) -> String {
        let found = self.job.procedure.names.vehicle_action(id);
        found.map_or_else(|| id.to_owned(), |made| self.job.procedure.vehicle_action_text(made).title.clone())
    }
}

/// The values of an attempt, oldest first.
pub(crate) fn in_attempt<'a>(
    step: &'a Step,
    detail: &'a StepDetail,
    attempt: &'a Attempt,
) -> impl Iterator<Item = Found<'a>> {
    let of_attempt = standing(detail, attempt);
    attempt.entries.iter().map(move |value| {
        let is_last = attempt.latest(&value.entry).is_some_and(|last| std::ptr::eq(last, value));
        let standing = match of_attempt {
            Standing::Counts if !is_last => Standing::Replaced,
            other => other,
        };
        let entry = step.entries.iter().find(|entry| entry.id == value.entry);
        Found { step, attempt, entry, value, standing }
    })
}

/// What has become of an attempt as a whole.
pub(crate) fn standing(detail: &StepDetail, attempt: &Attempt) -> Standing {
    if attempt.void.is_some() {
        Standing::Void
    } else if !attempt.is_done() {
        Standing::NotDone
    } else if detail.counts().is_some_and(|counts| std::ptr::eq(counts, attempt)) {
        Standing::Counts
    } else {
        Standing::Replaced
    }
}
