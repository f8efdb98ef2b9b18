//! What is odd in a checklist though it refutes nothing: rules that keep nothing back, things that nothing uses.

use std::collections::BTreeSet;

use panside_messages::Message;

use super::finding::{Place, Remark};
use super::report::Proof;
use crate::format::Ask;
use crate::load::Procedure;
use crate::machine::{Field, Machine, Pred, Test, Tree};
use crate::message::*;

/// Adds what can be seen without a search.
pub fn look_over(procedure: &Procedure, proof: &mut Proof) {
    let mut odd = |what: Message, place: String| {
        proof.remarks.push(Remark { what, place: Place::of(procedure, place) });
    };
    items(procedure, &mut odd);
    entries(procedure, &mut odd);
    let on = procedure.machine.steps.iter().filter_map(|rule| Some(&rule.on.as_ref()?.0));
    let all = rules_but_on(&procedure.machine).into_iter().chain(on).chain(procedure.there.preds());
    let read = fields_of(all.collect());
    for (at, var) in procedure.machine.vars.iter().enumerate() {
        if !read.contains(&var.field) {
            let conditions = procedure.checklist.conditions.len();
            let gates = conditions + procedure.checklist.facts.len();
            let place = match at {
                at if at < conditions => format!("/conditions/{at}"),
                at if at < gates => format!("/facts/{}", at - conditions),
                at => format!("/gates/{}", at - gates),
            };
            odd(remark_unread(&procedure.names.vars[at]), place);
        }
    }
}

fn items(procedure: &Procedure, odd: &mut dyn FnMut(Message, String)) {
    for (at, item) in procedure.checklist.items.iter().enumerate() {
        let is_it =
            |pieces: &[(crate::machine::ItemIx, u8)]| pieces.iter().any(|(found, _)| found.at() == at);
        let off = procedure.machine.steps.iter().any(|rule| is_it(&rule.takes_off));
        let back = procedure.machine.steps.iter().any(|rule| is_it(&rule.puts_back));
        let what = match (off, back) {
            (true, false) => remark_item_not_back(&item.id),
            (false, true) => remark_item_not_off(&item.id),
            (false, false) => remark_item_unmoved(&item.id),
            (true, true) => continue,
        };
        odd(what, format!("/items/{at}"));
    }
}

fn entries(procedure: &Procedure, odd: &mut dyn FnMut(Message, String)) {
    for (step, text) in procedure.steps() {
        for (at, entry) in text.entries.iter().enumerate() {
            let mut effects = entry.classes.values();
            let first = effects.next();
            let holds_or_ends = entry.classes.values().any(|effect| effect.not_yet || effect.ends.is_some());
            let answers = matches!(&entry.ask, Ask::Choice(_) | Ask::Several(_) | Ask::Decision(_));
            if holds_or_ends && answers && entry.ask.good().is_none() {
                odd(
                    remark_good(&entry.id, &text.id),
                    format!("{}/entries/{at}/ask/{}", procedure.step_pointer(step), entry.ask.kind()),
                );
            }
            // An answer that does nothing is there to be read later; one that does something should decide it.
            let does_something = first.is_some_and(|effect| !effect.is_nothing());
            if does_something && effects.len() > 0 && effects.all(|effect| Some(effect) == first) {
                odd(
                    remark_same(&entry.id, &text.id),
                    format!("{}/entries/{at}", procedure.step_pointer(step)),
                );
            }
        }
    }
}

/// Every predicate but the steps' `on`, which only decides what is part of the job.
pub(super) fn rules_but_on(machine: &Machine) -> Vec<&Pred> {
    let mut preds: Vec<&Pred> = vec![&machine.done_when, &machine.safe_to_leave, &machine.start_when];
    for rule in &machine.steps {
        preds.extend([&rule.needs, &rule.while_]);
        preds.extend(&rule.again);
    }
    preds.extend(machine.vehicle_actions.iter().map(|rule| &rule.needs));
    preds.extend(machine.signs.iter().map(|rule| &rule.holds_while));
    preds.extend(machine.vars.iter().filter_map(|var| var.holds_while.as_ref()));
    preds.extend(machine.follows.iter().map(|rule| &rule.when));
    preds.extend(machine.dangers.iter().map(|rule| &rule.when));
    preds
}

/// Every field that predicates read.
pub(super) fn fields_of(preds: Vec<&Pred>) -> BTreeSet<Field> {
    let mut read = BTreeSet::new();
    for_each_test(preds, |field, _| {
        read.insert(field);
    });
    read
}

/// Shows each test of a value in predicates: the field, and the values that do as bits.
pub(super) fn for_each_test(preds: Vec<&Pred>, mut show: impl FnMut(Field, u64)) {
    let mut open: Vec<&Tree> = preds.into_iter().map(Pred::tree).collect();
    while let Some(tree) = open.pop() {
        match tree {
            Tree::Test(Test::In { field, values }) => show(*field, *values),
            Tree::All(parts) | Tree::Any(parts) => open.extend(parts),
            Tree::Test(_) | Tree::Const(_) => {}
        }
    }
}
