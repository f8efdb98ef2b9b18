//! The smallest change to a predicate that keeps a checklist out of a danger: one more condition on the last action of
//! the run into it. Each is tried by proving again; one counts where the danger is gone, nothing else has come up, the
//! action still happens and the job can still finish.

use std::collections::BTreeSet;
use std::sync::atomic::AtomicBool;
use std::sync::mpsc;

use panside_messages::Message;

use super::explore::Runs;
use super::finding::Finding;
use super::report::Proof;
use super::tell::Teller;
use super::{Ask, Part, Property, search};
use crate::load::Procedure;
use crate::machine::{Action, Field, Pred, State, Test, Tree, VariableKind};
use crate::message::*;

/// Dangers for which a change is looked for.
const MOST_FINDINGS: usize = 3;
/// Changes that are tried for one of them.
const MOST_TRIES: usize = 24;
/// States after which a try is given up.
const MOST_STATES: usize = 300_000;

/// Adds to the dangers that a proof has found what would close them, where one more condition does. Takes as long as
/// some dozens of small proofs, so it is asked for apart.
pub fn suggest(procedure: &Procedure, proof: &mut Proof) {
    let known: BTreeSet<(Property, Message)> =
        proof.findings.iter().map(|found| (found.property, found.what.clone())).collect();
    let dangers = proof.findings.iter_mut().filter(|found| found.into.is_some());
    for finding in dangers.take(MOST_FINDINGS) {
        finding.fix = Some(fix(procedure, finding, &known));
    }
}

fn fix(procedure: &Procedure, finding: &Finding, known: &BTreeSet<(Property, Message)>) -> Message {
    let Some((before, action)) = finding.into else { return fix_none() };
    let Some(runs) = kind_of_runs(procedure, finding) else { return fix_none() };
    let Some(guard) = Guard::of(procedure, action) else { return fix_none() };
    for (test, said) in literals(procedure, finding, &before).into_iter().take(MOST_TRIES) {
        let changed = guard.with(procedure, test);
        let part = try_out(&changed, runs);
        let is_new = |found: &Finding| !known.contains(&(found.property, found.what.clone()));
        let is_closed = part.proof.is_decided()
            && part.used.has_happened(guard.action())
            && !part.proof.findings.iter().any(|found| is_new(found) || found.what == finding.what);
        if is_closed {
            return guard.fix(procedure, said);
        }
    }
    fix_none()
}

/// The smallest kind of runs in which the danger comes up.
fn kind_of_runs(procedure: &Procedure, finding: &Finding) -> Option<Runs> {
    [Runs::Plain, Runs::OneVoid, Runs::OneObservation].into_iter().find(|&runs| {
        let part = try_out(procedure, runs);
        part.proof.is_decided() && part.proof.findings.iter().any(|found| found.what == finding.what)
    })
}

fn try_out(procedure: &Procedure, runs: Runs) -> Part {
    let (to, _heard) = mpsc::channel();
    let cancelled = AtomicBool::new(false);
    let ask = Ask { states: MOST_STATES, ..Ask::default() };
    search(procedure, runs, ask, &Teller { to, cancelled: &cancelled })
}

/// The predicate that could have kept the last action back.
struct Guard {
    action: Action,
    /// It is the `while` of a step, written apart from its `needs`.
    is_while: bool,
    pointer: String,
}

impl Guard {
    fn of(procedure: &Procedure, action: Action) -> Option<Guard> {
        let (is_while, pointer) = match action {
            Action::Begin(step) => (false, procedure.step_pointer(step)),
            Action::Done(step, _) => (procedure.step(step).while_.is_some(), procedure.step_pointer(step)),
            Action::Vehicle(made) => (false, format!("/vehicle_actions/{}", made.at())),
            Action::Finish | Action::Stop => {
                let end = if action == Action::Finish { "/done_when" } else { "/safe_to_leave" };
                return Some(Guard { action, is_while: false, pointer: end.to_owned() });
            }
            _ => return None,
        };
        Some(Guard {
            action,
            is_while,
            pointer: format!("{pointer}/{}", if is_while { "while" } else { "needs" }),
        })
    }

    /// What must still be possible.
    fn action(&self) -> Action {
        self.action
    }

    /// The checklist with one more condition in the predicate.
    fn with(&self, procedure: &Procedure, test: Test) -> Procedure {
        let mut changed = procedure.clone();
        let add = |pred: &mut Pred| {
            *pred = Pred::from(Tree::All(vec![pred.tree().clone(), Tree::Test(test.clone())]));
        };
        match self.action {
            Action::Begin(step) | Action::Done(step, _) => {
                let rule = &mut changed.machine.steps[step.at()];
                if !self.is_while {
                    add(&mut rule.needs);
                }
                // A `while` that is not written is the `needs`.
                if self.is_while || procedure.step(step).while_.is_none() {
                    add(&mut rule.while_);
                }
            }
            Action::Vehicle(made) => add(&mut changed.machine.vehicle_actions[made.at()].needs),
            Action::Finish => add(&mut changed.machine.done_when),
            Action::Stop => add(&mut changed.machine.safe_to_leave),
            _ => {}
        }
        changed.machine = changed.machine.ready();
        changed
    }

    /// To add this test to it.
    fn fix(&self, procedure: &Procedure, test: String) -> Message {
        let spot = procedure.spot(&self.pointer).message();
        let field = self.pointer.rsplit('/').next().unwrap_or_default();
        match self.action {
            Action::Begin(step) | Action::Done(step, _) => {
                fix_step(test, field, &procedure.step(step).id, spot)
            }
            Action::Vehicle(made) => fix_vehicle_action(test, &procedure.vehicle_action_text(made).id, spot),
            _ => fix_end(test, field, spot),
        }
    }
}

/// Conditions that would have kept the action back, those that the danger itself names first.
fn literals(procedure: &Procedure, finding: &Finding, before: &State) -> Vec<(Test, String)> {
    let machine = &procedure.machine;
    let mut found: Vec<(Test, String)> = Vec::new();
    let mut add = |field: Field, values: u64| {
        let test = Test::In { field, values };
        let holds = Pred::from(Tree::Test(test.clone())).holds(before);
        if let Some(said) = say(procedure, field, values)
            && !holds
            && !found.iter().any(|(same, _)| *same == test)
        {
            found.push((test, said));
        }
    };
    let danger = finding.place.pointer.split('/').nth(2).and_then(|at| at.parse::<usize>().ok());
    let mut open: Vec<&Tree> =
        danger.and_then(|at| machine.dangers.get(at)).map(|rule| rule.when.tree()).into_iter().collect();
    while let Some(tree) = open.pop() {
        match tree {
            Tree::Test(Test::In { field, values }) => add(*field, !values),
            Tree::All(parts) | Tree::Any(parts) => open.extend(parts.iter().rev()),
            Tree::Test(_) | Tree::Const(_) => {}
        }
    }
    for rule in machine.signs.iter().filter(|rule| rule.permit) {
        add(rule.field, 0b010);
    }
    for var in machine.vars.iter().filter(|var| var.kind == VariableKind::Gate) {
        (1..u64::from(var.size)).for_each(|value| add(var.field, 1 << value));
    }
    found
}

/// A test in the language of predicates; nothing where it would never hold. Bits beyond the values are left out.
fn say(procedure: &Procedure, field: Field, values: u64) -> Option<String> {
    let machine = &procedure.machine;
    if let Some(at) = machine.vars.iter().position(|var| var.field == field) {
        let var = &machine.vars[at];
        // A rule never takes what is unknown for a yes.
        let first = u8::from(var.kind == VariableKind::Gate);
        let ix = crate::machine::VarIx::of(at);
        let named = (first..var.size).filter(|value| values >> value & 1 == 1);
        let names: Vec<&str> = named.map(|value| procedure.value_name(ix, value)).collect();
        let name = procedure.var_name(ix);
        return match names.as_slice() {
            [] => None,
            [one] => Some(format!("{name} = {one}")),
            more => Some(format!("{name} in {{{}}}", more.join(", "))),
        };
    }
    if let Some(at) = machine.signs.iter().position(|rule| rule.field == field) {
        let not = if values >> 1 & 1 == 1 { "" } else { "not " };
        return Some(format!("{not}signed({})", procedure.checklist.sign_offs[at].id));
    }
    if let Some((step, text)) = procedure.steps().find(|(step, _)| machine.steps[step.at()].work == field) {
        let not = if values >> 1 & 1 == 1 { "" } else { "not " };
        return machine.steps.get(step.at()).map(|_| format!("{not}worked({})", text.id));
    }
    let item = machine.items.iter().position(|item| item.field == field)?;
    (values & 0b11 == 0b01).then(|| format!("empty({}) = 0", procedure.checklist.items[item].id))
}
