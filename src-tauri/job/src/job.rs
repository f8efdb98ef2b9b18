//! One job: its rule state as one field beside the rich detail that rules never look at: values, names, times.

use std::collections::BTreeMap;
use std::sync::Arc;

use panside_journal::{PersonId, Stamp};
use panside_procedure::machine::{SignIx, StepIx, VarIx};
use panside_procedure::{Procedure, State};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::entry::WorkedOut;
use crate::event::{Event, Started};
use crate::message::Message;
use crate::people::People;
use crate::sheet::Specs;
use crate::tally::Tally;
use crate::turned_up::TurnedUp;
use crate::value::{EntryValue, Signature};

/// One event of the job as the journal has it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Happened {
    /// Number in the job, from 1.
    pub seq: u64,
    /// When, by both clocks.
    pub stamp: Stamp,
    /// Who.
    pub who: PersonId,
    /// What.
    pub event: Event,
}

/// Which event, when, and by whom.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Mark {
    /// The event's number in the job.
    pub seq: u64,
    /// When, by both clocks.
    pub stamp: Stamp,
    /// Who.
    pub who: PersonId,
    /// What they were called then.
    pub name: String,
}

/// A reason that was given, with who and when.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Reason {
    /// Which event.
    pub mark: Mark,
    /// The reason.
    pub text: String,
}

/// A value that was entered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct EnteredValue {
    /// Which event.
    pub mark: Mark,
    /// Entry id.
    pub entry: String,
    /// The value as typed.
    pub value: EntryValue,
    /// What it turned out to be, as decided then.
    pub class: String,
    /// How that came about, as it was worked out then; nothing where nothing was calculated.
    pub worked_out: Option<WorkedOut>,
}

/// How an attempt ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum EndedBy {
    /// The step was done.
    Done,
    /// The step was left before it was done.
    Left,
}

/// One attempt at a step: from going in to being done or leaving. What is entered belongs to its attempt; a
/// new one asks for everything anew.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Attempt {
    /// When it began, and by whom.
    pub begun: Mark,
    /// How and when it ended. Nothing while the step is in progress.
    pub ended: Option<(EndedBy, Mark)>,
    /// It is no work but a voided step corrected afterwards.
    pub corrected: bool,
    /// It was done before and entered only when it says.
    pub later: bool,
    /// Everything that was entered, oldest first; of an entry the last one counts.
    pub entries: Vec<EnteredValue>,
    /// What each entry turned out to be, once done.
    pub classes: BTreeMap<String, String>,
    /// The signatures given with *Done*.
    pub signs: Vec<Signature>,
    /// Since when it no longer counts: it was voided, or the vehicle showed that it cannot have been worked.
    pub void: Option<Mark>,
}

impl Attempt {
    pub(crate) fn new(begun: Mark) -> Attempt {
        Attempt {
            begun,
            ended: None,
            corrected: false,
            later: false,
            entries: Vec::new(),
            classes: BTreeMap::new(),
            signs: Vec::new(),
            void: None,
        }
    }

    /// The value of an entry that counts: the last one.
    #[must_use]
    pub fn latest(&self, entry: &str) -> Option<&EnteredValue> {
        self.entries.iter().rfind(|entered| entered.entry == entry)
    }

    /// Whether it ended with the step done.
    #[must_use]
    pub fn is_done(&self) -> bool {
        matches!(self.ended, Some((EndedBy::Done, _)))
    }
}

/// A step that was voided.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Voiding {
    /// When, by whom, and why.
    pub reason: Reason,
    /// The step it was voided with, because it builds on that one. Nothing when it was voided itself.
    pub with: Option<String>,
}

/// What happened at one step.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct StepDetail {
    /// Attempts, oldest first.
    pub attempts: Vec<Attempt>,
    /// Why it was skipped.
    pub skipped: Option<Reason>,
    /// When what was entered was voided, oldest first.
    pub voids: Vec<Voiding>,
    /// When an observation showed that it cannot have been worked, oldest first.
    pub undone: Vec<Mark>,
    /// Why it was missed.
    pub missed: Option<Reason>,
}

impl StepDetail {
    /// The attempt that goes on now.
    #[must_use]
    pub fn in_progress(&self) -> Option<&Attempt> {
        self.attempts.last().filter(|attempt| attempt.ended.is_none())
    }

    /// The attempt whose entries count: the last that was done and is not void.
    #[must_use]
    pub fn counts(&self) -> Option<&Attempt> {
        self.attempts.iter().rfind(|attempt| attempt.is_done() && attempt.void.is_none())
    }

    /// The attempt to show: the one in progress, else the one that counts, else the last.
    #[must_use]
    pub fn shown(&self) -> Option<&Attempt> {
        self.in_progress().or_else(|| self.counts()).or_else(|| self.attempts.last())
    }
}

/// One time a sign-off was given.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Given {
    /// The signature.
    pub signature: Signature,
    /// What who signed was called then.
    pub name: String,
    /// Which event gave it.
    pub mark: Mark,
    /// Which event made it lapse.
    pub lapsed: Option<Mark>,
}

/// What was entered last at an entry that decides a gate.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LastRead {
    /// The step.
    pub step: StepIx,
    /// The place of the attempt in the step's detail.
    pub attempt: usize,
    /// The place of the value in the attempt.
    pub value: usize,
}

/// How a gate became known.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Known {
    /// Its class.
    pub class: String,
    /// Which event set it.
    pub mark: Mark,
    /// From when on it ages: when the reading that decides it was taken, else when it was set.
    pub from: Stamp,
}

/// What is known of a gate beyond its class.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct GateDetail {
    /// How it became known; nothing while it is unknown.
    pub set: Option<Known>,
    /// What was last entered that decides it, whether it was taken over into the gate or not.
    pub last_read: Option<LastRead>,
    /// Which event made it unknown; nothing if it was never known or is known.
    pub lost: Option<Mark>,
}

/// A condition that changed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Changed {
    /// Which event changed it.
    pub mark: Mark,
    /// The condition.
    pub var: VarIx,
    /// The place of the value it had.
    pub from: u8,
    /// The place of the value it has since.
    pub to: u8,
}

/// Where today's rules and a recorded event differ. The record was kept as it is.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Disagreement {
    /// The event's number in the job.
    pub seq: u64,
    /// What differs, for whoever looks into it.
    pub what: Message,
}

/// One job.
#[derive(Debug, Clone)]
pub struct Job {
    /// The checklist it goes by.
    pub procedure: Arc<Procedure>,
    /// The spec sheet it goes by.
    pub specs: Arc<Specs>,
    /// What the rules know.
    pub state: State,
    /// Who appeared in it, and under which names.
    pub people: People,
    /// How it started. Nothing before its first event.
    pub start: Option<(Mark, Started)>,
    /// By step.
    pub steps: Vec<StepDetail>,
    /// By sign-off: every time it was given, oldest first.
    pub signs: Vec<Vec<Given>>,
    /// By condition, fact and gate; empty for the first two.
    pub gates: Vec<GateDetail>,
    /// Every change of a condition since the start, oldest first.
    pub changes: Vec<Changed>,
    /// What is off the vehicle, counted from the events alone.
    pub tally: Tally,
    /// What turned up that the checklist did not foresee.
    pub turned_up: TurnedUp,
    /// How it ended. Nothing while it goes on.
    pub end: Option<Mark>,
    /// Everything that happened, oldest first.
    pub happened: Vec<Happened>,
    /// Where today's rules and the record differ.
    pub disagreements: Vec<Disagreement>,
}

impl Job {
    /// Which event, when, and by whom as they were called then.
    #[must_use]
    pub fn mark(&self, happened: &Happened) -> Mark {
        let Happened { seq, stamp, who, .. } = *happened;
        Mark { seq, stamp, who, name: self.people.called(who, seq) }
    }

    /// What happened at a step.
    #[must_use]
    pub fn step(&self, step: StepIx) -> &StepDetail {
        &self.steps[step.at()]
    }

    /// The times a sign-off was given, oldest first.
    #[must_use]
    pub fn sign(&self, given: SignIx) -> &[Given] {
        &self.signs[given.at()]
    }

    /// What is known of a gate beyond its class.
    #[must_use]
    pub fn gate(&self, gate: VarIx) -> &GateDetail {
        &self.gates[gate.at()]
    }

    /// The number of the newest event; 0 before the first.
    #[must_use]
    pub fn last_seq(&self) -> u64 {
        self.happened.last().map_or(0, |last| last.seq)
    }

    /// Minutes that the shop's wall clock is ahead of UTC.
    #[must_use]
    pub fn utc_offset_min(&self) -> i32 {
        self.start.as_ref().map_or(0, |(_, started)| started.utc_offset_min)
    }

    /// The value that was last entered and decides a gate.
    #[must_use]
    pub fn last_read(&self, gate: VarIx) -> Option<&EnteredValue> {
        let last = self.gate(gate).last_read?;
        self.step(last.step).attempts.get(last.attempt)?.entries.get(last.value)
    }
}
