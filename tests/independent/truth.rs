//! Predicates in three values: what hangs on a gate that is `unknown` is itself unknown.
//!
//! A rule takes unknown for no, a danger takes it for yes, and a step's `on` stays undecided.

use std::collections::BTreeMap;

use panside_procedure::format::{Checklist, Step, Zone};
use panside_procedure::predicate::{self, Doing, Expr, Node, PredicateError};

use super::bay::{Bay, Work};

/// No, unknown, yes: "and" is the least of its parts, "or" the greatest.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Truth {
    No,
    Unknown,
    Yes,
}

impl From<bool> for Truth {
    fn from(is: bool) -> Truth {
        if is { Truth::Yes } else { Truth::No }
    }
}

impl Truth {
    fn opposite(self) -> Truth {
        match self {
            Truth::No => Truth::Yes,
            Truth::Unknown => Truth::Unknown,
            Truth::Yes => Truth::No,
        }
    }
}

/// The vehicle action that goes on at the moment of judging.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Hand<'a> {
    Still,
    Moving(&'a str),
    Moved(&'a str),
    /// The job is about to be finished or stopped.
    Leaving,
}

/// A checklist with its predicates parsed, by their text.
pub struct Rules {
    pub checklist: Checklist,
    parsed: BTreeMap<String, Expr>,
}

impl Rules {
    pub fn new(checklist: Checklist) -> Result<Rules, PredicateError> {
        let mut parsed = BTreeMap::new();
        for text in panside_tests::predicates(&checklist) {
            parsed.insert(text.clone(), predicate::parse(text)?);
        }
        Ok(Rules { checklist, parsed })
    }

    pub fn steps(&self) -> impl Iterator<Item = &Step> {
        self.checklist.phases.iter().flat_map(|phase| &phase.steps)
    }

    /// A rule holds only where nothing unknown decides it.
    pub fn holds(&self, text: &str, bay: &Bay) -> bool {
        self.truth(text, bay, Hand::Still) == Truth::Yes
    }

    /// A danger holds also where something unknown decides it.
    pub fn is_danger(&self, text: &str, bay: &Bay, hand: Hand<'_>) -> bool {
        self.truth(text, bay, hand) != Truth::No
    }

    pub fn truth(&self, text: &str, bay: &Bay, hand: Hand<'_>) -> Truth {
        self.judge(&self.parsed[text].is, bay, hand)
    }

    fn judge(&self, node: &Node, bay: &Bay, hand: Hand<'_>) -> Truth {
        match node {
            Node::Const(is) => Truth::from(*is),
            Node::Term(name) => self.truth(&self.checklist.terms[name], bay, hand),
            Node::Is { name, values, negated } => {
                let among = |value: &String| values.iter().any(|(wanted, _)| wanted == value) != *negated;
                match (bay.matter.get(name), bay.known.get(name)) {
                    (Some(value), _) | (None, Some(Some(value))) => Truth::from(among(value)),
                    _ => Truth::Unknown,
                }
            }
            Node::Worked(step) => Truth::from(bay.work[step] == Work::Worked),
            Node::Signed(sign) => Truth::from(bay.signed.contains(sign)),
            Node::Known(gate) => Truth::from(bay.known[gate].is_some()),
            Node::Empty { item, count, negated } => Truth::from((bay.empty[item] == *count) != *negated),
            Node::TrayClear => Truth::from(bay.empty.values().all(|empty| *empty == 0)),
            Node::Leaving => Truth::from(hand == Hand::Leaving),
            Node::Doing(doing, name) => Truth::from(self.is_doing(*doing, name, bay, hand)),
            Node::Not(part) => self.judge(&part.is, bay, hand).opposite(),
            Node::All(parts) => {
                parts.iter().map(|part| self.judge(&part.is, bay, hand)).min().unwrap_or(Truth::Yes)
            }
            Node::Any(parts) => {
                parts.iter().map(|part| self.judge(&part.is, bay, hand)).max().unwrap_or(Truth::No)
            }
        }
    }

    fn is_doing(&self, doing: Doing, name: &str, bay: &Bay, hand: Hand<'_>) -> bool {
        let mut in_progress = self.steps().filter(|step| bay.begun.contains(&step.id));
        match doing {
            Doing::Moving => hand == Hand::Moving(name),
            Doing::Moved => hand == Hand::Moved(name),
            Doing::Touches => in_progress.any(|step| step.touches.iter().any(|part| part == name)),
            Doing::Tag => in_progress.any(|step| step.tags.iter().any(|tag| tag == name)),
            Doing::Zone => in_progress.any(|step| {
                let zone = match step.zone {
                    Zone::Under => "under",
                    Zone::EngineBay => "engine_bay",
                    Zone::Cabin => "cabin",
                    Zone::Bench => "bench",
                };
                zone == name
            }),
        }
    }

    /// Whether a predicate reads what is being done, that the job is about to end among it.
    pub fn reads_doing(&self, text: &str) -> bool {
        self.reads(text, &|node| matches!(node, Node::Doing(..) | Node::Leaving))
    }

    /// Whether a predicate reads that the job is about to end.
    pub fn reads_leaving(&self, text: &str) -> bool {
        self.reads(text, &|node| matches!(node, Node::Leaving))
    }

    fn reads(&self, text: &str, such: &dyn Fn(&Node) -> bool) -> bool {
        self.finds(&self.parsed[text].is, such)
    }

    fn finds(&self, node: &Node, such: &dyn Fn(&Node) -> bool) -> bool {
        match node {
            Node::Not(part) => self.finds(&part.is, such),
            Node::All(parts) | Node::Any(parts) => parts.iter().any(|part| self.finds(&part.is, such)),
            Node::Term(name) => self.reads(&self.checklist.terms[name], such),
            node => such(node),
        }
    }
}
