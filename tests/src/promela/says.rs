//! Predicates as Promela expressions.
//!
//! What hangs on an unknown gate is neither so nor not so: each predicate can be written as "surely so", as a rule
//! wants it, and as "perhaps so", as a danger wants it.

use std::collections::{BTreeMap, BTreeSet};

use panside_procedure::format::{Checklist, Named, Step, Zone};
use panside_procedure::predicate::{self, Doing, Expr, Node, PredicateError};

pub fn value_of(id: &str) -> String {
    format!("is_{id}")
}

pub fn off(id: &str) -> String {
    format!("off_{id}")
}

pub fn signed(id: &str) -> String {
    format!("signed_{id}")
}

pub fn work(id: &str) -> String {
    format!("work_{id}")
}

pub fn hands_in(id: &str) -> String {
    format!("in_{id}")
}

pub fn excused(at: usize) -> String {
    format!("excused_{at}")
}

/// Stands for who is in which step among what is read and written.
pub const HANDS: &str = "hands";
/// Stands for the end of the job among what is read.
pub const LEAVING: &str = "leaving";

/// Who can be in a step at a moment, as far as the deed tells.
#[derive(Debug, Clone, Copy)]
pub enum Hands<'a> {
    Nobody,
    Only(&'a Step),
    Anybody,
    /// Anybody, and nobody comes or goes: noted once, see [`Says::noted`].
    Noted,
}

/// The vehicle action that goes on at a moment.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Moving<'a> {
    Nothing,
    Before(&'a str),
    After(&'a str),
    /// The job is about to be finished or stopped.
    Leaving,
}

/// A moment at which a predicate is judged.
#[derive(Debug, Clone, Copy)]
pub struct At<'a> {
    pub hands: Hands<'a>,
    pub moving: Moving<'a>,
}

/// Every one of them.
pub fn all(parts: impl IntoIterator<Item = String>) -> String {
    joined(parts, " && ", "true", "false")
}

/// At least one of them.
pub fn any(parts: impl IntoIterator<Item = String>) -> String {
    joined(parts, " || ", "false", "true")
}

pub fn not(part: &str) -> String {
    match part {
        "true" => "false".to_owned(),
        "false" => "true".to_owned(),
        _ => format!("!{part}"),
    }
}

/// Parts in parentheses; `neutral` says nothing and `decides` says all.
fn joined(parts: impl IntoIterator<Item = String>, joint: &str, neutral: &str, decides: &str) -> String {
    let parts: Vec<String> = parts.into_iter().filter(|part| part != neutral).collect();
    if parts.iter().any(|part| part == decides) {
        return decides.to_owned();
    }
    match parts.as_slice() {
        [] => neutral.to_owned(),
        [one] => one.clone(),
        more => format!("({})", more.join(joint)),
    }
}

pub struct Says<'a> {
    checklist: &'a Checklist,
    parsed: BTreeMap<&'a str, Expr>,
    /// The values of conditions, facts and gates; a gate's first is `unknown`.
    values: BTreeMap<&'a str, Vec<&'a str>>,
}

impl<'a> Says<'a> {
    pub fn new(checklist: &'a Checklist) -> Result<Says<'a>, PredicateError> {
        let parsed =
            crate::predicates(checklist).into_iter().map(|text| Ok((text.as_str(), predicate::parse(text)?)));
        let parsed = parsed.collect::<Result<_, PredicateError>>()?;
        let named = |values: &'a [Named]| values.iter().map(|value| value.id.as_str()).collect::<Vec<_>>();
        let conditions = checklist.conditions.iter().map(|one| (one.id.as_str(), named(&one.values)));
        let facts = checklist.facts.iter().map(|one| (one.id.as_str(), named(&one.values)));
        let gates = checklist
            .gates
            .iter()
            .map(|one| (one.id.as_str(), [vec!["unknown"], named(&one.classes)].concat()));
        Ok(Says { checklist, parsed, values: conditions.chain(facts).chain(gates).collect() })
    }

    /// The number of a value; the loader has seen that it is one.
    pub fn number(&self, name: &str, value: &str) -> usize {
        self.values[name].iter().position(|one| *one == value).unwrap_or(usize::MAX)
    }

    /// A rule: surely so, nothing being done.
    pub fn rule(&self, text: &str) -> String {
        self.truth(&self.parsed[text].is, At { hands: Hands::Nobody, moving: Moving::Nothing }, true)
    }

    /// Perhaps so, nothing being done.
    pub fn perhaps(&self, text: &str) -> String {
        self.danger(text, At { hands: Hands::Nobody, moving: Moving::Nothing })
    }

    /// A danger: perhaps so at that moment.
    pub fn danger(&self, text: &str, at: At<'_>) -> String {
        self.truth(&self.parsed[text].is, at, false)
    }

    fn truth(&self, node: &Node, at: At<'_>, surely: bool) -> String {
        match node {
            Node::Const(is) => is.to_string(),
            Node::Term(name) => self.truth(&self.parsed[self.checklist.terms[name].as_str()].is, at, surely),
            Node::Is { name, values, negated } => self.is(name, values, *negated, surely),
            Node::Known(gate) => format!("({} != 0)", value_of(gate)),
            Node::Worked(step) => format!("({} == {})", work(step), super::work::WORKED),
            Node::Signed(sign) => format!("({} == 1)", signed(sign)),
            Node::Empty { item, count, negated } => {
                format!("({} {} {count})", off(item), if *negated { "!=" } else { "==" })
            }
            Node::TrayClear => {
                all(self.checklist.items.iter().map(|item| format!("({} == 0)", off(&item.id))))
            }
            Node::Doing(doing, name) => self.doing(*doing, name, at),
            Node::Leaving => (at.moving == Moving::Leaving).to_string(),
            Node::Not(part) => not(&self.truth(&part.is, at, !surely)),
            Node::All(parts) => all(parts.iter().map(|part| self.truth(&part.is, at, surely))),
            Node::Any(parts) => any(parts.iter().map(|part| self.truth(&part.is, at, surely))),
        }
    }

    fn is(&self, name: &str, values: &[(String, usize)], negated: bool, surely: bool) -> String {
        let is_gate = self.checklist.gates.iter().any(|gate| gate.id == name);
        let fits = |(number, value): &(usize, &&str)| {
            let unknown = is_gate && *number == 0;
            if unknown { !surely } else { values.iter().any(|(one, _)| one == **value) != negated }
        };
        let numbered = self.values[name].iter().enumerate();
        any(numbered.filter(fits).map(|(number, _)| format!("({} == {number})", value_of(name))))
    }

    fn doing(&self, doing: Doing, name: &str, at: At<'_>) -> String {
        let is = |yes: bool| yes.to_string();
        match (doing, at.hands) {
            (Doing::Moving, _) => is(at.moving == Moving::Before(name)),
            (Doing::Moved, _) => is(at.moving == Moving::After(name)),
            (_, Hands::Nobody) => is(false),
            (_, Hands::Only(step)) => is(is_such(step, doing, name)),
            (_, Hands::Noted) => noted_as(doing, name),
            (_, Hands::Anybody) => {
                let steps = self.checklist.phases.iter().flat_map(|phase| &phase.steps);
                let such = steps.filter(|step| is_such(step, doing, name));
                let someone = any(such.map(|step| format!("({} == 1)", hands_in(&step.id))));
                all(["(people != 0)".to_owned(), someone])
            }
        }
    }

    /// What a predicate asks of those who are in a step: a hidden variable for each question, and its answer now.
    pub fn noted(&self, text: &str) -> BTreeMap<String, String> {
        let mut asked = Vec::new();
        self.asks(&self.parsed[text].is, &mut asked);
        let answer =
            |doing, name| self.doing(doing, name, At { hands: Hands::Anybody, moving: Moving::Nothing });
        asked.into_iter().map(|(doing, name)| (noted_as(doing, name), answer(doing, name))).collect()
    }

    fn asks<'n>(&'n self, node: &'n Node, into: &mut Vec<(Doing, &'n str)>) {
        match node {
            Node::Doing(doing @ (Doing::Zone | Doing::Touches | Doing::Tag), name) => {
                into.push((*doing, name))
            }
            Node::Term(name) => self.asks(&self.parsed[self.checklist.terms[name].as_str()].is, into),
            Node::Not(part) => self.asks(&part.is, into),
            Node::All(parts) | Node::Any(parts) => parts.iter().for_each(|part| self.asks(&part.is, into)),
            _ => {}
        }
    }

    /// The variables that a predicate reads.
    pub fn reads(&self, text: &str) -> BTreeSet<String> {
        let mut read = BTreeSet::new();
        self.read(&self.parsed[text].is, &mut read);
        read
    }

    fn read(&self, node: &Node, into: &mut BTreeSet<String>) {
        match node {
            Node::Const(_) => {}
            Node::Term(name) => self.read(&self.parsed[self.checklist.terms[name].as_str()].is, into),
            Node::Is { name, .. } | Node::Known(name) => drop(into.insert(value_of(name))),
            Node::Worked(step) => drop(into.insert(work(step))),
            Node::Signed(sign) => drop(into.insert(signed(sign))),
            Node::Empty { item, .. } => drop(into.insert(off(item))),
            Node::TrayClear => into.extend(self.checklist.items.iter().map(|item| off(&item.id))),
            Node::Doing(..) => drop(into.insert(HANDS.to_owned())),
            Node::Leaving => into.extend([HANDS, LEAVING].map(str::to_owned)),
            Node::Not(part) => self.read(&part.is, into),
            Node::All(parts) | Node::Any(parts) => parts.iter().for_each(|part| self.read(&part.is, into)),
        }
    }
}

fn noted_as(doing: Doing, name: &str) -> String {
    let what = match doing {
        Doing::Zone => "zone",
        Doing::Touches => "touches",
        Doing::Tag => "tag",
        Doing::Moving => "moving",
        Doing::Moved => "moved",
    };
    format!("now_{what}_{name}")
}

fn is_such(step: &Step, doing: Doing, name: &str) -> bool {
    match doing {
        Doing::Touches => step.touches.iter().any(|part| part == name),
        Doing::Tag => step.tags.iter().any(|tag| tag == name),
        Doing::Zone => {
            let zone = match step.zone {
                Zone::Under => "under",
                Zone::EngineBay => "engine_bay",
                Zone::Cabin => "cabin",
                Zone::Bench => "bench",
            };
            zone == name
        }
        Doing::Moving | Doing::Moved => false,
    }
}
