//! What a proof says, for people and for machines.

use panside_messages::{Message, Speaker};
use serde::Serialize;

use super::explore::Runs;
use super::finding::{Finding, Remark};
use super::{Ask, ENGINE};
use crate::load::Procedure;
use crate::message::*;

/// The whole answer.
#[derive(Debug, Clone, Serialize)]
pub struct Proof {
    /// Proved, refuted, or not decided.
    pub verdict: Verdict,
    /// The checklist's id.
    pub checklist: String,
    /// The checklist's revision.
    pub revision: u32,
    /// The engine that proved it.
    pub engine: String,
    /// The searches made.
    pub searches: Vec<SearchReport>,
    /// Each property with its answer.
    pub properties: Vec<(Property, Answer)>,
    /// What refutes it, worst first.
    pub findings: Vec<Finding>,
    /// What is odd, though it refutes nothing.
    pub remarks: Vec<Remark>,
    /// After an observation: whether the job can still finish.
    pub finish_after_observing: Vec<FinishRow>,
    /// What is taken for granted. As JSON these are messages and no sentences: a record says them in its own language.
    pub assumed: Vec<Message>,
    /// What is not claimed.
    pub not_claimed: Vec<Message>,
}

/// What a proof comes to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// Every property asked for holds in every run asked for.
    Proved,
    /// At least one property does not hold.
    Refuted,
    /// The search did not come to its end.
    NotDecided,
}

/// One of the six properties.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Property {
    /// No danger in any allowed run.
    Safe,
    /// No further danger after one observation.
    HonestWhenWrong,
    /// The end can always be reached.
    CanFinish,
    /// A safe stop can always be reached, whatever comes.
    CanStop,
    /// A finished job leaves nothing open.
    NothingLeft,
    /// Everything in the checklist has a use.
    AllUsed,
}

impl Property {
    /// All of them, in the order they are told.
    pub const ALL: [Property; 6] = [
        Property::Safe,
        Property::HonestWhenWrong,
        Property::CanFinish,
        Property::CanStop,
        Property::NothingLeft,
        Property::AllUsed,
    ];

    /// What it claims, as a sentence.
    #[must_use]
    pub fn claim(self) -> Message {
        match self {
            Property::Safe => claim_safe(),
            Property::HonestWhenWrong => claim_honest(),
            Property::CanFinish => claim_can_finish(),
            Property::CanStop => claim_can_stop(),
            Property::NothingLeft => claim_nothing_left(),
            Property::AllUsed => claim_all_used(),
        }
    }
}

/// Whether a property holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Answer {
    /// It holds in all runs searched.
    Holds,
    /// It does not.
    Fails,
    /// It was not asked, or the search did not come to its end.
    NotDecided,
}

/// Whether a job can still finish after a condition is observed to have a value.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct FinishRow {
    /// The condition.
    pub condition: String,
    /// The value observed.
    pub value: String,
    /// Observations from which a way to the end is left.
    pub can: usize,
    /// Observations from which none is left: the app says stop and call.
    pub cannot: usize,
}

/// How large a search was.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SearchReport {
    /// Which runs.
    pub runs: Runs,
    /// Whether it came to its end.
    pub complete: bool,
    /// Why it did not.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stopped: Option<Stopped>,
    /// States.
    pub states: StatesReport,
    /// Transitions.
    pub transitions: u64,
    /// Actions in the longest of the shortest runs.
    pub depth: usize,
    /// States in which nothing is possible any more; finished and stopped jobs are among them.
    pub dead_ends: usize,
    /// States from which some way leads to the end, the finished ones included. Absent where the search did not come to
    /// its end.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub can_finish: Option<usize>,
    /// States from which a safe stop can be reached whatever the entries say, those of ended jobs included. Absent
    /// likewise.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub can_stop: Option<usize>,
}

/// Why a search did not come to its end.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Stopped {
    /// It would have taken more memory than it may.
    Memory,
    /// It found more states than it may.
    States,
    /// Whoever waited for it ended it.
    Cancelled,
}

/// How many states, and the memory they took.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct StatesReport {
    /// Number of states.
    pub found: usize,
    /// The most bytes of memory that they and the steps between them took at any time.
    pub bytes: usize,
}

impl Proof {
    pub(super) fn new(procedure: &Procedure, ask: Ask) -> Proof {
        let mut not_claimed = vec![not_claimed_voids()];
        if !procedure.fit().is_any() {
            not_claimed.push(not_claimed_other_vehicles());
        }
        if !ask.void {
            not_claimed.push(not_claimed_void());
        }
        not_claimed.push(not_claimed_observations());
        if !ask.observe {
            not_claimed.push(not_claimed_observation());
        }
        not_claimed.push(not_claimed_emergencies());
        Proof {
            verdict: Verdict::NotDecided,
            checklist: procedure.checklist.id.clone(),
            revision: procedure.checklist.revision,
            engine: ENGINE.to_owned(),
            searches: Vec::new(),
            properties: Vec::new(),
            findings: Vec::new(),
            remarks: Vec::new(),
            finish_after_observing: Vec::new(),
            assumed: vec![assumed_entered(), assumed_not_entered(), assumed_classes(), assumed_not_yet()],
            not_claimed,
        }
    }

    /// Puts the sentences into it, as whoever prints it or writes it as JSON says them; the last that is done with it,
    /// since a message with its sentence equals none without. They begin as they stand within a sentence, so that names of the
    /// checklist stay as they are written.
    pub fn fill(&mut self, speaker: &Speaker) {
        let findings = self.findings.iter_mut();
        let found = findings
            .flat_map(|found| [&mut found.what].into_iter().chain(&mut found.run).chain(&mut found.fix));
        let remarks = self.remarks.iter_mut().map(|remark| &mut remark.what);
        let limits = self.assumed.iter_mut().chain(&mut self.not_claimed);
        found.chain(remarks).chain(limits).for_each(|message| message.text = speaker.within(message));
    }

    pub(super) fn find(&mut self, new: Finding) {
        let same = |finding: &Finding| finding.property == new.property && finding.what == new.what;
        if !self.findings.iter().any(same) {
            self.findings.push(new);
        }
    }

    /// Adds what another search says.
    pub(super) fn take_in(&mut self, other: Proof) {
        self.searches.extend(other.searches);
        for row in other.finish_after_observing {
            let rows = &mut self.finish_after_observing;
            match rows.iter_mut().find(|one| (&one.condition, &one.value) == (&row.condition, &row.value)) {
                Some(one) => (one.can, one.cannot) = (one.can + row.can, one.cannot + row.cannot),
                None => rows.push(row),
            }
        }
        other.findings.into_iter().for_each(|finding| self.find(finding));
    }

    /// Whoever waited has ended it: nothing in it counts, even where a search was just through.
    pub(super) fn cancel(&mut self) {
        self.findings.clear();
        self.finish_after_observing.clear();
        for search in &mut self.searches {
            search.complete = false;
            search.stopped = Some(Stopped::Cancelled);
        }
    }

    pub(super) fn is_decided(&self) -> bool {
        self.searches.iter().all(|search| search.complete)
    }

    /// `of_use`: it was asked whether all of the checklist is used.
    pub(super) fn conclude(&mut self, ask: Ask, of_use: bool) {
        self.findings.sort_by_key(|finding| finding.rank());
        let decided = self.is_decided();
        for property in Property::ALL {
            let fails = self.findings.iter().any(|finding| finding.property == property);
            let asked = match property {
                Property::HonestWhenWrong => ask.observe,
                Property::AllUsed => ask.observe && of_use,
                _ => true,
            };
            let answer = match (fails, decided && asked) {
                (true, _) => Answer::Fails,
                (false, true) => Answer::Holds,
                (false, false) => Answer::NotDecided,
            };
            self.properties.push((property, answer));
        }
        self.verdict = if !self.findings.is_empty() {
            Verdict::Refuted
        } else if decided {
            Verdict::Proved
        } else {
            Verdict::NotDecided
        };
    }
}
