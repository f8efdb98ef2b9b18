//! A job's state in the plainest form: maps from names to names.

use std::collections::{BTreeMap, BTreeSet};

/// `work[s]`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Work {
    Untouched,
    Worked,
    Voided,
    Skipped,
}

/// `over`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Over {
    No,
    Ending,
    Finished,
    Stopped,
}

/// The state. A lapsed sign-off is like one never given, and people are interchangeable, so that a set says enough
/// for both.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Bay {
    /// Conditions and facts with their values.
    pub matter: BTreeMap<String, String>,
    /// Gates with their classes; nothing for `unknown`.
    pub known: BTreeMap<String, Option<String>>,
    pub work: BTreeMap<String, Work>,
    /// Steps that somebody is in.
    pub begun: BTreeSet<String>,
    /// Valid sign-offs.
    pub signed: BTreeSet<String>,
    /// Empty places by item.
    pub empty: BTreeMap<String, u8>,
    pub over: Over,
    /// For the search: a void has happened in this run.
    pub voided_once: bool,
    /// For the search: an observation has happened in this run.
    pub observed_once: bool,
    /// For the search: dangers that hold since that observation.
    pub excused: BTreeSet<String>,
}

impl Bay {
    /// One stopped job is like another: nothing more happens in it.
    pub fn stopped() -> Bay {
        Bay {
            matter: BTreeMap::new(),
            known: BTreeMap::new(),
            work: BTreeMap::new(),
            begun: BTreeSet::new(),
            signed: BTreeSet::new(),
            empty: BTreeMap::new(),
            over: Over::Stopped,
            voided_once: false,
            observed_once: false,
            excused: BTreeSet::new(),
        }
    }

    pub fn set_matter(&mut self, values: &BTreeMap<String, String>) {
        for (name, value) in values {
            self.matter.insert(name.clone(), value.clone());
        }
    }

    pub fn set_known(&mut self, classes: &BTreeMap<String, String>) {
        for (gate, class) in classes {
            let class = (class != "unknown").then(|| class.clone());
            self.known.insert(gate.clone(), class);
        }
    }
}

/// Something that can be done to a job.
#[derive(Debug, Clone, PartialEq)]
pub enum Deed {
    Begin(String),
    Leave(String),
    /// With the number of its outcome.
    Done(String, usize),
    Vehicle(String),
    Sign(String),
    Skip(String),
    Void(String),
    /// With the number of its outcome.
    Correct(String, usize),
    Observe(String, String),
    Expire(String),
    Finish,
    Stop,
}

/// One way in which a step can turn out.
#[derive(Debug, Clone, Default)]
pub struct Outcome {
    pub sets: BTreeMap<String, String>,
    pub makes: BTreeMap<String, String>,
    pub ends: bool,
}
