//! All of it used: what never comes up is a mistake in the checklist.

use std::collections::BTreeSet;

use super::explore::Found;
use super::report::{Proof, Property};
use crate::load::Procedure;
use crate::machine::{Action, Pred, StepIx, Tree};

/// What came up in any search.
pub struct Used {
    happened: BTreeSet<Action>,
    sign_lapsed: Vec<(bool, bool)>,
    gate_lapsed: Vec<(bool, bool)>,
}

impl Used {
    pub fn new(procedure: &Procedure) -> Self {
        Used {
            happened: BTreeSet::new(),
            sign_lapsed: vec![(false, false); procedure.machine.signs.len()],
            gate_lapsed: vec![(false, false); procedure.machine.vars.len()],
        }
    }

    /// Adds what a search has seen.
    pub fn add(&mut self, found: &Found<'_>) {
        let happened = found.actions.iter().zip(&found.seen.happened).filter(|(_, happened)| **happened);
        self.happened.extend(happened.map(|(action, _)| action));
        self.sign_lapsed.clone_from(&found.seen.signs);
        self.gate_lapsed.clone_from(&found.seen.gates);
    }

    /// Adds what was seen in another search.
    pub fn take_in(&mut self, other: Used) {
        self.happened.extend(other.happened);
        let add = |into: &mut Vec<(bool, bool)>, from: Vec<(bool, bool)>| {
            for (into, from) in into.iter_mut().zip(from) {
                into.0 |= from.0;
                into.1 |= from.1;
            }
        };
        add(&mut self.sign_lapsed, other.sign_lapsed);
        add(&mut self.gate_lapsed, other.gate_lapsed);
    }

    pub fn judge(&self, procedure: &Procedure, proof: &mut Proof) {
        let mut unused = |what: String| proof.find(Property::AllUsed, what, Vec::new());
        for (step, text) in procedure.steps() {
            if !self.happened.contains(&Action::Begin(step)) {
                unused(format!("step \"{}\" can never be begun", text.id));
                continue;
            }
            self.outcomes(procedure, step, &mut unused);
        }
        for action in procedure.all_actions() {
            if matches!(action, Action::Move(_) | Action::Finish | Action::Stop)
                && !self.happened.contains(&action)
            {
                unused(format!("never possible: {}", procedure.say(action)));
            }
        }
        for (at, rule) in procedure.machine.signs.iter().enumerate() {
            let id = &procedure.checklist.sign_offs[at].id;
            if rule.permit && !is_constant(&rule.holds_while) {
                lapse(&format!("permit \"{id}\""), self.sign_lapsed[at], &mut unused);
            }
        }
        for (at, var) in procedure.machine.vars.iter().enumerate() {
            if var.holds_while.as_ref().is_some_and(|holds| !is_constant(holds)) {
                lapse(&format!("gate \"{}\"", procedure.names.vars[at]), self.gate_lapsed[at], &mut unused);
            }
        }
    }

    fn outcomes(&self, procedure: &Procedure, step: StepIx, unused: &mut impl FnMut(String)) {
        let outcomes = procedure.machine.steps[step.at()].outcomes.len();
        for outcome in (0..outcomes).map(crate::machine::OutcomeIx::of) {
            if !self.happened.contains(&Action::Done(step, outcome)) {
                unused(format!("never possible: {}", procedure.say(Action::Done(step, outcome))));
            }
        }
    }
}

fn lapse(what: &str, (lapsed, renewed): (bool, bool), unused: &mut impl FnMut(String)) {
    if !lapsed {
        unused(format!("{what} can never lapse, though it says what it holds while"));
    } else if !renewed {
        unused(format!("{what} can lapse and never be renewed"));
    }
}

fn is_constant(pred: &Pred) -> bool {
    matches!(pred.tree(), Tree::Const(_))
}
