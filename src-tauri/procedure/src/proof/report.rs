//! What a proof says, for people and for machines.

use serde::Serialize;

use super::finding::{Finding, Remark};
use super::{Ask, ENGINE};
use crate::load::Procedure;

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
    /// What is taken for granted.
    pub assumed: Vec<String>,
    /// What is not claimed.
    pub not_claimed: Vec<String>,
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
    pub fn claim(self) -> &'static str {
        match self {
            Property::Safe => "Safe: no allowed order of steps reaches a danger",
            Property::HonestWhenWrong => {
                "Honest when wrong: when the vehicle is not as shown, nothing allowed leads into a further danger"
            }
            Property::CanFinish => "Can finish: from every state there is a way to the end",
            Property::CanStop => {
                "Can stop: from every state a safe stop can be reached, whatever the entries say"
            }
            Property::NothingLeft => {
                "Nothing left: a finished job has every step worked or skipped, every piece back and every attest valid"
            }
            Property::AllUsed => {
                "All of it used: every step, outcome, vehicle action, sign-off and danger can come up"
            }
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
    pub runs: String,
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
        let mut not_claimed = vec!["more than one void in a run".to_owned()];
        if !ask.void {
            not_claimed.push("runs with a void (not asked)".to_owned());
        }
        not_claimed.push("more than one observation, or an observation together with a void".to_owned());
        if !ask.observe {
            not_claimed.push("runs with an observation (not asked)".to_owned());
        }
        not_claimed.push("emergencies: a fact is always accepted, whatever the order".to_owned());
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
            assumed: [
                "what is entered happened",
                "nothing that is not entered happened",
                "what a value means (inside, outside, below, …) is worked out rightly",
                "what is not yet so (too hot, short, unclear) does not stay so for ever",
            ]
            .map(str::to_owned)
            .to_vec(),
            not_claimed,
        }
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
        self.finish_after_observing.extend(other.finish_after_observing);
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

    pub(super) fn conclude(&mut self) {
        self.findings.sort_by_key(|finding| finding.rank());
        let decided = self.is_decided();
        let observed = self.searches.len() > 1;
        for property in Property::ALL {
            let fails = self.findings.iter().any(|finding| finding.property == property);
            let asked = observed || !matches!(property, Property::HonestWhenWrong | Property::AllUsed);
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
