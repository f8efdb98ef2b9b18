//! What an answer, a reading, a count or a permit means in the trade, whatever else a checklist says: seen without a
//! search.

use std::collections::BTreeSet;

use panside_messages::Message;

use super::finding::{Finding, Place};
use super::remarks::{fields_of, for_each_test, rules_but_on};
use super::report::{Proof, Property};
use crate::format::{Ask, Entry, Role, SignKind, Step};
use crate::load::Procedure;
use crate::machine::{Field, Tree, UNKNOWN, VarIx, VariableKind};
use crate::message::*;

/// Tells what does not make sense.
pub fn judge(procedure: &Procedure, proof: &mut Proof) {
    let mut tell = |property: Property, what: Message, place: String| {
        proof.find(Finding::new(property, what, Place::of(procedure, place)));
    };
    for (step, text) in procedure.steps() {
        let place = procedure.step_pointer(step);
        for (at, entry) in text.entries.iter().enumerate().filter(|(_, entry)| !entry.optional) {
            answers(text, entry, &format!("{place}/entries/{at}"), &mut tell);
        }
        counts(text, &place, &mut tell);
    }
    permits(procedure, &mut tell);
    knowledge(procedure, &mut tell);
    values(procedure, &mut tell);
}

type Tell<'a> = dyn FnMut(Property, Message, String) + 'a;

/// What is not good must not pass as if it were: it holds the step, ends the job or changes something.
fn answers(step: &Step, entry: &Entry, place: &str, tell: &mut Tell<'_>) {
    let Some(good) = entry.ask.good() else { return };
    for (class, effect) in &entry.classes {
        if effect.is_nothing() && !good.contains(&class.as_str()) {
            let what = finding_not_good(&step.id, &entry.id, class);
            tell(Property::AllUsed, what, format!("{place}/classes/{class}"));
        }
    }
}

/// Where a step counts pieces it counts those that it takes off or puts back.
fn counts(step: &Step, place: &str, tell: &mut Tell<'_>) {
    for (at, entry) in step.entries.iter().enumerate() {
        let Ask::Count(count) = &entry.ask else { continue };
        for (item, pieces) in &count.of {
            let moved = [step.takes_off.get(item), step.puts_back.get(item)];
            if !moved.contains(&Some(pieces)) {
                let what = finding_counts(&step.id, u32::from(*pieces), item);
                tell(Property::NothingLeft, what, format!("{place}/entries/{at}/ask/count/of/{item}"));
            }
        }
    }
}

/// A permit of whoever works speaks of what they have looked at, and that can change. The service writer's stands for
/// what the customer has said.
fn permits(procedure: &Procedure, tell: &mut Tell<'_>) {
    let signs = procedure.checklist.sign_offs.iter().zip(&procedure.machine.signs);
    for (at, (text, rule)) in signs.enumerate() {
        let told = text.by == Some(Role::ServiceWriter);
        if text.kind == SignKind::Permit && !told && matches!(rule.holds_while.tree(), Tree::Const(true)) {
            let place = format!("/sign_offs/{at}/holds_while");
            tell(Property::AllUsed, finding_permit_for_ever(&text.id), place);
        }
    }
}

/// What is measured can change again: where a rule or a danger reads it the checklist must say what makes it unknown, or
/// that nothing in this job does. A temperature changes with time and with what heats.
fn knowledge(procedure: &Procedure, tell: &mut Tell<'_>) {
    let machine = &procedure.machine;
    let read = fields_of(rules_but_on(machine));
    let first_gate = machine.vars.len() - procedure.checklist.gates.len();
    for (at, gate) in procedure.checklist.gates.iter().enumerate() {
        let var = VarIx::of(first_gate + at);
        let rule = &machine.vars[var.at()];
        let measured = |such: &dyn Fn(&Ask) -> bool| {
            let setting = procedure.steps().filter(|(_, step)| sets(step, &gate.id));
            setting.flat_map(|(_, step)| &step.entries).any(|entry| such(&entry.ask))
        };
        if !read.contains(&rule.field) || !measured(&Ask::measures) {
            continue;
        }
        // "true" says on purpose that nothing in this job changes it.
        let is_said = rule.holds_while.is_some();
        let lapses = rule.holds_while.as_ref().is_some_and(|holds| !matches!(holds.tree(), Tree::Const(_)));
        let followed = machine
            .follows
            .iter()
            .any(|follow| follow.assign.edits.contains(&(rule.field, u64::from(UNKNOWN))));
        let place = format!("/gates/{at}");
        if !is_said && !rule.ages && !followed {
            tell(Property::AllUsed, finding_gate_for_ever(&gate.id), place);
        } else if measured(&is_temperature) && !(lapses && rule.ages) {
            tell(Property::AllUsed, finding_temperature(&gate.id), place);
        }
    }
}

/// Each class of a gate is found out by something. Each value of a condition is made by something, or asked for by
/// itself, as what only an observation brings is; a condition that nothing makes at all is only observed.
fn values(procedure: &Procedure, tell: &mut Tell<'_>) {
    let machine = &procedure.machine;
    let of_steps = machine.steps.iter().flat_map(|rule| {
        let outcomes = rule.outcomes.iter().map(|outcome| &outcome.assign);
        outcomes.chain([&rule.on_begin, &rule.on_leave])
    });
    let others = machine.vehicle_actions.iter().map(|rule| &rule.makes);
    let others = others.chain(machine.follows.iter().map(|rule| &rule.assign));
    let made: BTreeSet<(Field, u64)> =
        of_steps.chain(others).flat_map(|assign| assign.edits.clone()).collect();
    let mut asked = BTreeSet::new();
    for_each_test(rules_but_on(machine), |field, values| {
        asked.insert((field, values));
    });
    let conditions = procedure.checklist.conditions.len();
    let first_gate = conditions + procedure.checklist.facts.len();
    for (at, var) in machine.vars.iter().enumerate() {
        let (is_made, list, from) = match var.kind {
            VariableKind::Fact => continue,
            VariableKind::Gate => (true, format!("/gates/{}/classes", at - first_gate), 1),
            VariableKind::Condition => {
                let is_made = made.iter().any(|(field, _)| *field == var.field);
                (is_made, format!("/conditions/{at}/values"), 0)
            }
        };
        let starts = machine.starts.iter().find(|(start, _)| start.at() == at);
        let is_start = |value: u8| starts.is_some_and(|(_, values)| values.contains(&value));
        for value in (from..var.size).filter(|&value| !is_start(value)) {
            let is_asked_for = from == 0 && asked.contains(&(var.field, 1 << value));
            if is_made && !is_asked_for && !made.contains(&(var.field, u64::from(value))) {
                let ix = VarIx::of(at);
                let what = finding_not_made(procedure.var_name(ix), procedure.value_name(ix, value));
                tell(Property::AllUsed, what, format!("{list}/{}", value - from));
            }
        }
    }
}

fn is_temperature(ask: &Ask) -> bool {
    match ask {
        Ask::CoolDown(_) => true,
        Ask::Reading(reading) => reading.is_judged() && matches!(reading.unit.as_str(), "°C" | "°F" | "K"),
        _ => false,
    }
}

/// Whether a step sets a gate, by being done or by what an entry says.
fn sets(step: &Step, gate: &str) -> bool {
    let mut classes = step.entries.iter().flat_map(|entry| entry.classes.values());
    step.sets.contains_key(gate) || classes.any(|effect| effect.sets.contains_key(gate))
}
