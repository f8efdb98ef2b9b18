//! A danger that could not come up even without any rule guards against nothing: a mistake in its predicate.
//!
//! Every `needs`, `while`, `after`, permit and phase is dropped, and the search goes on until each danger was met.
//! What no danger can read is left out of the state, so that the search stays small.

use super::graph::Graph;
use super::report::{Proof, Property};
use crate::load::Procedure;
use crate::machine::{Action, DangerSet, Field, Machine, PhaseRule, Pred, State, Test, VariableKind, WORDS};

/// States after which the search gives up; dangers are met within a few actions.
const MOST_STATES: usize = 4_000_000;

pub fn judge(procedure: &Procedure, proof: &mut Proof) {
    let met = search(procedure);
    for (at, danger) in procedure.checklist.dangers.iter().enumerate() {
        if met.0 >> at & 1 == 0 {
            let what = format!(
                "the danger \"{}\" does not come up even when every rule is dropped ({MOST_STATES} states at most): \
                 its predicate is probably wrong",
                danger.id
            );
            proof.find(Property::AllUsed, what, Vec::new());
        }
    }
}

fn search(procedure: &Procedure) -> DangerSet {
    let machine = loosen(&procedure.machine);
    let kept = kept(&machine);
    let project = |mut state: State| {
        state.words.iter_mut().zip(kept).for_each(|(word, mask)| *word &= mask);
        state
    };
    let actions: Vec<Action> = procedure
        .all_actions()
        .into_iter()
        .filter(|action| matches!(action, Action::Begin(_) | Action::Done(..) | Action::Leave(_) | Action::Move(_)))
        .chain(procedure.all_actions().into_iter().filter(|action| matches!(action, Action::Expire(_))))
        .collect();
    let all = u64::MAX >> (64 - machine.dangers.len());
    let mut met = DangerSet::default();
    let mut graph = Graph::new(machine.layout.words());
    for start in machine.all_starts() {
        met.0 |= machine.dangers_now(&start).0;
        graph.insert(&project(start), None);
    }
    let mut at = 0;
    while at < graph.len() && graph.len() < MOST_STATES && met.0 != all {
        let state = graph.state(at as u32);
        for &action in &actions {
            if let Ok(next) = machine.step(&state, action) {
                met.0 |= machine.dangers_of(&state, action).0;
                graph.insert(&project(next), Some(at as u32));
            }
        }
        at += 1;
    }
    met
}

/// The machine without its rules.
fn loosen(machine: &Machine) -> Machine {
    let mut loose = machine.clone();
    let always = || Pred::Const(true);
    for step in &mut loose.steps {
        step.on = None;
        step.after.clear();
        step.needs = always();
        step.while_ = always();
        step.again = Some(always());
        step.permits.clear();
        step.when_ending = true;
    }
    for made in &mut loose.moves {
        made.needs = always();
    }
    for phase in &mut loose.phases {
        *phase = PhaseRule::default();
    }
    loose.start_when = always();
    loose
}

/// Bits that something can still read: conditions, who is begun, and what dangers, follows and lapses read.
fn kept(machine: &Machine) -> [u64; WORDS] {
    let mut kept = machine.layout.matter;
    let mut keep = |field: &Field| kept[usize::from(field.word)] |= field.mask << field.shift;
    machine.layout.begun.iter().for_each(&mut keep);
    let mut fields = Vec::new();
    let facts = machine.vars.iter().filter(|var| var.kind == VariableKind::Fact);
    fields.extend(facts.map(|fact| fact.field));
    machine.dangers.iter().for_each(|danger| read(&danger.when, &mut fields));
    machine.vars.iter().filter_map(|var| var.holds_while.as_ref()).for_each(|pred| read(pred, &mut fields));
    fields.iter().for_each(keep);
    kept
}

fn read(pred: &Pred, fields: &mut Vec<Field>) {
    match pred {
        Pred::Test(Test::In { field, .. }) => fields.push(*field),
        Pred::All(parts) | Pred::Any(parts) => parts.iter().for_each(|part| read(part, fields)),
        _ => {}
    }
}
