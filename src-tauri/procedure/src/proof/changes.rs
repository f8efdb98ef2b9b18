//! What is assigned and never changes anything, and what is found out and lost at once: each a sign that something else
//! in the checklist is missing or wrong.
//!
//! Looked at in runs without an observation, since an observation makes everything possible. Nearly all of it comes up
//! in the first few states, so that little is left to look for.

use std::collections::BTreeSet;

use panside_messages::Message;

use super::explore::{Found, Runs, Taken};
use super::finding::{Finding, Place};
use super::report::{Proof, Property};
use crate::load::Procedure;
use crate::machine::{Action, Assign, Field, Machine, Moment, State, StepIx, VariableKind};
use crate::message::*;

/// What assigns something.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum By {
    Begin(StepIx),
    Leave(StepIx),
    Done(StepIx),
    Vehicle(usize),
    Follow(usize),
}

/// An assignment: by what, of what, and to which value.
pub type Assigned = (By, Field, u64);

/// What has not come up so far.
pub struct Changes {
    is_asked: bool,
    /// Assignments of conditions, and of follows to gates, that have changed nothing.
    idle: Vec<Assigned>,
    /// The first step that found something out which was lost at once, and what.
    lost_at_once: Vec<(Field, u64, Taken)>,
}

impl Changes {
    pub fn new(machine: &Machine, runs: Runs) -> Changes {
        let is_asked = runs != Runs::OneObservation;
        let mut changes = Changes { is_asked, idle: Vec::new(), lost_at_once: Vec::new() };
        if is_asked {
            changes.look_for_all(machine);
        }
        changes
    }

    fn look_for_all(&mut self, machine: &Machine) {
        for (at, rule) in machine.steps.iter().enumerate().map(|(at, rule)| (StepIx::of(at), rule)) {
            self.add(machine, By::Begin(at), &rule.on_begin);
            self.add(machine, By::Leave(at), &rule.on_leave);
            rule.outcomes.iter().for_each(|outcome| self.add(machine, By::Done(at), &outcome.assign));
        }
        for (at, rule) in machine.vehicle_actions.iter().enumerate() {
            self.add(machine, By::Vehicle(at), &rule.makes);
        }
        for (at, rule) in machine.follows.iter().enumerate() {
            let edits = rule.assign.edits.iter();
            self.idle.extend(edits.map(|&(field, value)| (By::Follow(at), field, value)));
        }
    }

    /// Gates are often read again only to see that nothing has changed, so only conditions are asked.
    fn add(&mut self, machine: &Machine, by: By, assign: &Assign) {
        for &(field, value) in &assign.edits {
            let of = machine.vars.iter().find(|var| var.field == field);
            if of.is_some_and(|var| var.kind == VariableKind::Condition)
                && !self.idle.contains(&(by, field, value))
            {
                self.idle.push((by, field, value));
            }
        }
    }

    /// Takes in a step.
    pub fn note(&mut self, machine: &Machine, before: &State, taken: Taken, next: &State) {
        if !self.is_asked {
            return;
        }
        if !self.idle.is_empty() {
            self.look_for_changes(machine, before, taken.action);
        }
        if let Action::Done(step, outcome) = taken.action
            && let Some(outcome) = machine.steps[step.at()].outcomes.get(outcome.at())
        {
            for &(field, value) in &outcome.assign.edits {
                if field.get(next) != value && !self.lost_at_once.iter().any(|(lost, ..)| *lost == field) {
                    self.lost_at_once.push((field, value, taken));
                }
            }
        }
    }

    fn look_for_changes(&mut self, machine: &Machine, before: &State, action: Action) {
        let by = match action {
            Action::Begin(step) => Some(By::Begin(step)),
            Action::Leave(step) => Some(By::Leave(step)),
            Action::Done(step, _) => Some(By::Done(step)),
            Action::Vehicle(made) => Some(By::Vehicle(made.at())),
            _ => None,
        };
        let changes = |(at, field, value): &(By, Field, u64)| Some(*at) == by && field.get(before) != *value;
        if !self.idle.iter().any(|one| changes(one) || matches!(one.0, By::Follow(_))) {
            return;
        }
        let assigned = assigned_by(machine, action);
        let is_assigned =
            |field: Field, value: u64| assigned.is_some_and(|assign| assign.edits.contains(&(field, value)));
        self.idle.retain(|one| !(changes(one) && is_assigned(one.1, one.2)));
        if self.idle.iter().any(|(by, ..)| matches!(by, By::Follow(_))) {
            self.look_for_follows(machine, before, action);
        }
    }

    fn look_for_follows(&mut self, machine: &Machine, before: &State, action: Action) {
        let mut last = *before;
        let idle = &mut self.idle;
        // Whether it is allowed was asked before.
        let _ = machine.step_watched(before, action, &mut |moment, state| {
            if moment == Moment::Followed {
                idle.retain(|&(by, field, value)| {
                    !matches!(by, By::Follow(_)) || field.get(&last) == value || field.get(state) != value
                });
            }
            last = *state;
        });
    }

    /// What has changed something.
    pub fn useful(&self, machine: &Machine) -> Vec<Assigned> {
        if !self.is_asked {
            return Vec::new();
        }
        let all = Changes::new(machine, Runs::Plain).idle;
        all.into_iter().filter(|one| !self.idle.contains(one)).collect()
    }

    /// Tells what was found out and lost at once. Where something worse was found this would only be what comes of it.
    pub fn judge(&self, procedure: &Procedure, found: &Found<'_>, proof: &mut Proof) {
        if !proof.findings.is_empty() {
            return;
        }
        for &(field, value, taken) in &self.lost_at_once {
            if let (Action::Done(step, _), Some((name, value))) =
                (taken.action, named(procedure, field, value))
            {
                let what = finding_lost(&procedure.step(step).id, name, value);
                let place = Place::of(procedure, procedure.step_pointer(step));
                let finding = Finding::new(Property::AllUsed, what, place);
                proof.find(finding.after(found.run_to(taken.from, Some(taken.action))));
            }
        }
    }
}

/// Tells what changed nothing in any search, where nothing worse was found. `useful` is what did.
pub fn judge_idle(
    procedure: &Procedure,
    useful: &[Assigned],
    happened: &BTreeSet<Action>,
    proof: &mut Proof,
) {
    if !proof.findings.is_empty() {
        return;
    }
    let all = Changes::new(&procedure.machine, Runs::Plain).idle;
    for (by, field, value) in all.into_iter().filter(|one| !useful.contains(one)) {
        // What never happens is told as such.
        let (whose, place, happens) = said(procedure, by, happened);
        if let Some((name, value)) = named(procedure, field, value).filter(|_| happens) {
            let what = finding_idle(whose, name, value);
            proof.find(Finding::new(Property::AllUsed, what, Place::of(procedure, place)));
        }
    }
}

fn said(procedure: &Procedure, by: By, happened: &BTreeSet<Action>) -> (Message, String, bool) {
    let id = |step: StepIx| procedure.step(step).id.as_str();
    let of_step = |step: StepIx, field: &str| format!("{}/{field}", procedure.step_pointer(step));
    let (said, place) = match by {
        By::Begin(step) => (idle_begin(id(step)), of_step(step, "on_begin")),
        By::Leave(step) => (idle_leave(id(step)), of_step(step, "on_leave")),
        By::Done(step) => (idle_done(id(step)), of_step(step, "makes")),
        By::Vehicle(made) => (
            idle_vehicle_action(&procedure.checklist.vehicle_actions[made].id),
            format!("/vehicle_actions/{made}/makes"),
        ),
        By::Follow(at) => (idle_follow(), format!("/follows/{at}")),
    };
    let happens = happened.iter().any(|action| match (*action, by) {
        (Action::Begin(one), By::Begin(step))
        | (Action::Leave(one), By::Leave(step))
        | (Action::Done(one, _), By::Done(step)) => one == step,
        (Action::Vehicle(one), By::Vehicle(made)) => one.at() == made,
        (_, By::Follow(_)) => true,
        _ => false,
    });
    (said, place, happens)
}

/// What an action assigns before anything follows.
fn assigned_by(machine: &Machine, action: Action) -> Option<&Assign> {
    match action {
        Action::Begin(step) => Some(&machine.steps[step.at()].on_begin),
        Action::Leave(step) => Some(&machine.steps[step.at()].on_leave),
        Action::Done(step, outcome) => {
            machine.steps[step.at()].outcomes.get(outcome.at()).map(|outcome| &outcome.assign)
        }
        Action::Vehicle(made) => Some(&machine.vehicle_actions[made.at()].makes),
        _ => None,
    }
}

/// A variable by its field and its value by its number, both by name.
fn named(procedure: &Procedure, field: Field, value: u64) -> Option<(&str, &str)> {
    let at = procedure.machine.vars.iter().position(|var| var.field == field)?;
    let var = crate::machine::VarIx::of(at);
    let value = u8::try_from(value).ok().filter(|value| *value < procedure.machine.vars[at].size)?;
    Some((procedure.var_name(var), procedure.value_name(var, value)))
}
