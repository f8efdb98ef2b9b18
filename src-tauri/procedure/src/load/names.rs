//! Which name has which index. A name stands for one thing only.

use std::collections::BTreeMap;

use super::Problem;
use super::place::Places;
use crate::format::{Checklist, Named};
use crate::machine::{ItemIx, PhaseIx, SignIx, StepIx, VarIx, VehicleActionIx};
use crate::message::*;
use crate::predicate;

/// The name of a gate's value when nothing is known, and what people read for it.
pub(super) const UNKNOWN: &str = "unknown";

/// Names to indices, and the names of values.
#[derive(Debug, Clone, Default)]
pub struct Names {
    /// Conditions, then facts, then gates, by index.
    pub vars: Vec<String>,
    values: Vec<Vec<String>>,
    var_index: BTreeMap<String, VarIx>,
    steps: BTreeMap<String, StepIx>,
    signs: BTreeMap<String, SignIx>,
    items: BTreeMap<String, ItemIx>,
    vehicle_actions: BTreeMap<String, VehicleActionIx>,
    phases: BTreeMap<String, PhaseIx>,
}

impl Names {
    pub(super) fn of(checklist: &Checklist, places: &Places, problems: &mut Vec<Problem>) -> Names {
        let mut names = Names::default();
        let mut taken = Taken { places, problems, seen: BTreeMap::new() };
        for (at, condition) in checklist.conditions.iter().enumerate() {
            taken.name(&condition.id, &format!("/conditions/{at}"));
            names.variable(&condition.id, ids(&condition.values).collect());
        }
        for (at, fact) in checklist.facts.iter().enumerate() {
            taken.name(&fact.id, &format!("/facts/{at}"));
            names.variable(&fact.id, ids(&fact.values).collect());
        }
        for (at, gate) in checklist.gates.iter().enumerate() {
            taken.name(&gate.id, &format!("/gates/{at}"));
            let unknown = std::iter::once(UNKNOWN.to_owned());
            names.variable(&gate.id, unknown.chain(ids(&gate.classes)).collect());
        }
        for term in checklist.terms.keys() {
            taken.name(term, &format!("/terms/{term}"));
        }
        for (at, sign) in checklist.sign_offs.iter().enumerate() {
            taken.name(&sign.id, &format!("/sign_offs/{at}"));
            names.signs.insert(sign.id.clone(), SignIx::of(at));
        }
        for (at, item) in checklist.items.iter().enumerate() {
            taken.name(&item.id, &format!("/items/{at}"));
            names.items.insert(item.id.clone(), ItemIx::of(at));
        }
        taken.seen.clear();
        for (at, made) in checklist.vehicle_actions.iter().enumerate() {
            taken.name(&made.id, &format!("/vehicle_actions/{at}"));
            names.vehicle_actions.insert(made.id.clone(), VehicleActionIx::of(at));
        }
        taken.seen.clear();
        for (at, danger) in checklist.dangers.iter().enumerate() {
            taken.name(&danger.id, &format!("/dangers/{at}"));
        }
        taken.seen.clear();
        for (phase_at, phase) in checklist.phases.iter().enumerate() {
            taken.name(&phase.id, &format!("/phases/{phase_at}"));
            names.phases.insert(phase.id.clone(), PhaseIx::of(phase_at));
        }
        taken.seen.clear();
        let steps = checklist.phases.iter().enumerate().flat_map(|(phase_at, phase)| {
            phase.steps.iter().enumerate().map(move |(at, step)| (phase_at, at, step))
        });
        for (index, (phase_at, at, step)) in steps.enumerate() {
            taken.name(&step.id, &format!("/phases/{phase_at}/steps/{at}"));
            names.steps.insert(step.id.clone(), StepIx::of(index));
        }
        names
    }

    fn variable(&mut self, name: &str, values: Vec<String>) {
        self.var_index.insert(name.to_owned(), VarIx::of(self.vars.len()));
        self.vars.push(name.to_owned());
        self.values.push(values);
    }

    /// A condition, fact or gate.
    #[must_use]
    pub fn var(&self, name: &str) -> Option<VarIx> {
        self.var_index.get(name).copied()
    }

    /// A step.
    #[must_use]
    pub fn step(&self, name: &str) -> Option<StepIx> {
        self.steps.get(name).copied()
    }

    /// A sign-off.
    #[must_use]
    pub fn sign(&self, name: &str) -> Option<SignIx> {
        self.signs.get(name).copied()
    }

    /// An item.
    #[must_use]
    pub fn item(&self, name: &str) -> Option<ItemIx> {
        self.items.get(name).copied()
    }

    /// A vehicle action.
    #[must_use]
    pub fn vehicle_action(&self, name: &str) -> Option<VehicleActionIx> {
        self.vehicle_actions.get(name).copied()
    }

    /// A phase.
    #[must_use]
    pub fn phase(&self, name: &str) -> Option<PhaseIx> {
        self.phases.get(name).copied()
    }

    /// The values of a condition, fact or gate, in order; a gate's first is `unknown`.
    #[must_use]
    pub fn values(&self, var: VarIx) -> &[String] {
        &self.values[var.at()]
    }

    /// The place of a value.
    #[must_use]
    pub fn value_of(&self, var: VarIx, value: &str) -> Option<u8> {
        self.values[var.at()].iter().position(|name| name == value).and_then(|at| u8::try_from(at).ok())
    }

    /// The name of a value.
    #[must_use]
    pub fn value(&self, var: VarIx, value: u8) -> &str {
        self.values[var.at()].get(usize::from(value)).map_or("?", String::as_str)
    }
}

fn ids(named: &[Named]) -> impl Iterator<Item = String> {
    named.iter().map(|one| one.id.clone())
}

struct Taken<'a> {
    places: &'a Places,
    problems: &'a mut Vec<Problem>,
    seen: BTreeMap<String, String>,
}

impl Taken<'_> {
    fn name(&mut self, name: &str, place: &str) {
        let proper = !name.is_empty()
            && name.chars().all(|char| char.is_ascii_lowercase() || char.is_ascii_digit() || char == '_')
            && name != UNKNOWN
            && !predicate::is_reserved(name);
        let what = if !proper {
            problem_name(name)
        } else if let Some(other) = self.seen.insert(name.to_owned(), place.to_owned()) {
            problem_name_taken(name, other)
        } else {
            return;
        };
        self.problems.push(Problem::at(self.places.find(place), place, what));
    }
}
