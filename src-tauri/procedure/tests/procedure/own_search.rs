//! A search of our own, as plain as can be: every action is tried in every state. What the proof counts is held
//! against it.

use std::collections::BTreeSet;

use panside_procedure::{Action, Procedure, State};

/// What tells two states apart for rules and properties: a lapsed signature is like none, people are
/// interchangeable, and nothing more happens in a stopped job. The last bit: a void has happened.
type Key = (Vec<u64>, bool);

fn key(procedure: &Procedure, state: &State, voided: bool) -> Key {
    let machine = &procedure.machine;
    if machine.is_stopped(state) {
        return (Vec::new(), false);
    }
    let mut people: Vec<u64> = machine.begun(state).map(|step| u64::from(step.0) + 1).collect();
    people.sort_unstable();
    people.resize(usize::from(procedure.checklist.crew), 0);
    let over = u64::from(machine.is_ending(state)) + 2 * u64::from(machine.is_finished(state));
    let work = machine.steps.iter().map(|rule| rule.work.get(state));
    let vars = machine.vars.iter().map(|var| var.field.get(state));
    let signs = machine.signs.iter().map(|rule| u64::from(rule.field.get(state) == 1));
    let items = machine.items.iter().map(|item| item.field.get(state));
    let fields = people.into_iter().chain([over]).chain(work).chain(vars).chain(signs).chain(items);
    (fields.collect(), voided)
}

/// What a search found.
pub struct Searched {
    /// One state for each that can be told apart, with the actions of the shortest run to it.
    pub states: Vec<(State, usize)>,
    pub transitions: u64,
}

/// Every state that runs with at most so many voids (none or one) lead to, without observations.
pub fn search(procedure: &Procedure, voids: bool) -> Searched {
    let is_void = |action: Action| matches!(action, Action::Void(_));
    let mut all = procedure.all_actions();
    all.retain(|action| !matches!(action, Action::Observe(..)));
    all.retain(|action| voids || !matches!(action, Action::Void(_) | Action::Correct(..)));
    let mut met = BTreeSet::new();
    let mut meet = |state: State, voided: bool, depth: usize, states: &mut Vec<_>| {
        if met.insert(key(procedure, &state, voided)) {
            states.push((state, voided, depth));
        }
    };
    let mut states = Vec::new();
    for start in procedure.machine.all_starts() {
        meet(start, false, 0, &mut states);
    }
    let (mut at, mut transitions) = (0, 0);
    while let Some(&(state, voided, depth)) = states.get(at) {
        for &action in all.iter().filter(|action| !voided || !is_void(**action)) {
            if let Ok(next) = procedure.machine.step(&state, action) {
                transitions += 1;
                meet(next, voided || is_void(action), depth + 1, &mut states);
            }
        }
        at += 1;
    }
    Searched { states: states.into_iter().map(|(state, _, depth)| (state, depth)).collect(), transitions }
}

/// How many actions the shortest plain run into a danger has.
pub fn shortest_into(procedure: &Procedure, danger: &str) -> Option<usize> {
    let at = procedure.checklist.dangers.iter().position(|found| found.id == danger)?;
    let into = |state: &State, action: Action| {
        let plain = !matches!(action, Action::Observe(..) | Action::Void(_) | Action::Correct(..));
        plain && procedure.machine.dangers_of(state, action).iter().any(|found| found.at() == at)
    };
    let all = procedure.all_actions();
    let runs = search(procedure, false).states.into_iter();
    let reach = runs.filter(|(state, _)| all.iter().any(|&action| into(state, action)));
    reach.map(|(_, depth)| depth + 1).min()
}
