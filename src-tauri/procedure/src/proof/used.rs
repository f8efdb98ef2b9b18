//! All of it used: what never comes up is a mistake in the checklist.

use std::collections::BTreeSet;

use panside_messages::Message;

use super::changes::{self, Assigned};
use super::explore::{Found, Runs};
use super::finding::Remark;
use super::finding::{Finding, Place};
use super::report::{Proof, Property};
use super::seen::Needs;
use crate::load::Procedure;
use crate::machine::{Action, Pred, StepIx, Tree};
use crate::message::*;

/// What came up in any search.
pub struct Used {
    happened: BTreeSet<Action>,
    sign_lapsed: Vec<(bool, bool)>,
    gate_lapsed: Vec<(bool, bool)>,
    /// Predicates of steps and vehicle actions that held in every state; nothing before the first search.
    always: Option<Vec<Needs>>,
    /// Assignments that changed something in a search that looked at them.
    useful: Vec<Assigned>,
    /// What happened in those searches.
    happened_then: BTreeSet<Action>,
}

impl Used {
    pub fn new(procedure: &Procedure) -> Self {
        Used {
            happened: BTreeSet::new(),
            sign_lapsed: vec![(false, false); procedure.machine.signs.len()],
            gate_lapsed: vec![(false, false); procedure.machine.vars.len()],
            always: None,
            useful: Vec::new(),
            happened_then: BTreeSet::new(),
        }
    }

    /// Adds what a search has seen.
    pub fn add(&mut self, found: &Found<'_>) {
        let happened = found.actions.iter().zip(&found.seen.happened).filter(|(_, happened)| **happened);
        self.happened.extend(happened.map(|(action, _)| action));
        self.sign_lapsed.clone_from(&found.seen.signs);
        self.gate_lapsed.clone_from(&found.seen.gates);
        self.always = Some(found.seen.needs.clone());
        if found.runs != Runs::OneObservation {
            self.useful = found.changes.useful(found.machine);
            self.happened_then.clone_from(&self.happened);
        }
    }

    /// Adds what was seen in another search.
    pub fn take_in(&mut self, other: Used) {
        self.happened.extend(other.happened);
        if let Some(needs) = other.always {
            match &mut self.always {
                Some(always) => always.retain(|one| needs.contains(one)),
                None => self.always = Some(needs),
            }
        }
        self.useful.extend(other.useful);
        self.happened_then.extend(other.happened_then);
        let add = |into: &mut Vec<(bool, bool)>, from: Vec<(bool, bool)>| {
            for (into, from) in into.iter_mut().zip(from) {
                into.0 |= from.0;
                into.1 |= from.1;
            }
        };
        add(&mut self.sign_lapsed, other.sign_lapsed);
        add(&mut self.gate_lapsed, other.gate_lapsed);
    }

    /// Tells what was assigned and never changed anything.
    pub fn judge_idle(&self, procedure: &Procedure, proof: &mut Proof) {
        changes::judge_idle(procedure, &self.useful, &self.happened_then, proof);
    }

    /// Whether an action happened.
    pub fn has_happened(&self, action: Action) -> bool {
        self.happened.contains(&action)
    }

    pub fn judge(&self, procedure: &Procedure, proof: &mut Proof) {
        let mut unused = |what: Message, place: String| {
            proof.find(Finding::new(Property::AllUsed, what, Place::of(procedure, place)));
        };
        for (step, text) in procedure.steps() {
            if !self.happened.contains(&Action::Begin(step)) {
                unused(finding_step_never(&text.id), procedure.step_pointer(step));
                continue;
            }
            self.outcomes(procedure, step, &mut unused);
        }
        for action in procedure.all_actions() {
            if matches!(action, Action::Vehicle(_) | Action::Finish | Action::Stop)
                && !self.happened.contains(&action)
            {
                let place = match action {
                    Action::Vehicle(made) => format!("/vehicle_actions/{}/needs", made.at()),
                    Action::Finish => "/done_when".to_owned(),
                    _ => "/safe_to_leave".to_owned(),
                };
                unused(finding_never(procedure.say(action)), place);
            }
        }
        for (at, rule) in procedure.machine.signs.iter().enumerate() {
            let id = &procedure.checklist.sign_offs[at].id;
            if rule.permit && !is_constant(&rule.holds_while) {
                let what = match self.sign_lapsed[at] {
                    (false, _) => finding_permit_lapse(id),
                    (true, false) => finding_permit_renew(id),
                    (true, true) => continue,
                };
                unused(what, format!("/sign_offs/{at}/holds_while"));
            }
        }
        for (at, var) in procedure.machine.vars.iter().enumerate() {
            if var.holds_while.as_ref().is_some_and(|holds| !is_constant(holds)) {
                let first_gate = procedure.checklist.conditions.len() + procedure.checklist.facts.len();
                let place = format!("/gates/{}/holds_while", at - first_gate);
                let id = &procedure.names.vars[at];
                match self.gate_lapsed[at] {
                    (false, _) => unused(finding_gate_lapse(id), place),
                    (true, false) => unused(finding_gate_renew(id), place),
                    (true, true) => {}
                }
            }
        }
    }

    /// What keeps nothing back, and attests that nothing makes lapse: odd, though it refutes nothing.
    pub fn remark(&self, procedure: &Procedure, proof: &mut Proof) {
        let mut odd = |what: Message, place: String| {
            proof.remarks.push(Remark { what, place: Place::of(procedure, place) });
        };
        for needs in self.always.iter().flatten() {
            let (what, place) = match *needs {
                Needs::Step(step) => {
                    (remark_step_needs(&procedure.step(step).id), procedure.step_pointer(step))
                }
                Needs::Vehicle(made) => (
                    remark_action_needs(&procedure.vehicle_action_text(made).id),
                    format!("/vehicle_actions/{}", made.at()),
                ),
            };
            odd(what, format!("{place}/needs"));
        }
        for (at, rule) in procedure.machine.signs.iter().enumerate() {
            if !rule.permit && !is_constant(&rule.holds_while) && !self.sign_lapsed[at].0 {
                let id = &procedure.checklist.sign_offs[at].id;
                odd(remark_attest(id), format!("/sign_offs/{at}/holds_while"));
            }
        }
    }

    fn outcomes(&self, procedure: &Procedure, step: StepIx, unused: &mut impl FnMut(Message, String)) {
        let outcomes = procedure.machine.steps[step.at()].outcomes.len();
        for outcome in (0..outcomes).map(crate::machine::OutcomeIx::of) {
            if !self.happened.contains(&Action::Done(step, outcome)) {
                let what = finding_never(procedure.say(Action::Done(step, outcome)));
                unused(what, procedure.step_pointer(step));
            }
        }
    }
}

fn is_constant(pred: &Pred) -> bool {
    matches!(pred.tree(), Tree::Const(_))
}
