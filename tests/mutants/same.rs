//! Whether a change has any effect at all: exact, by looking at every state that plain runs reach.

use std::collections::{BTreeMap, BTreeSet};

use panside_procedure::machine::OutcomeIx;
use panside_procedure::{Action, NoOutcome, Procedure, State};

/// Whether both allow the same actions with the same results in every state that plain runs reach, and take every
/// class of every entry for the same outcome.
pub fn behaves_the_same(original: &Procedure, changed: &Procedure) -> bool {
    if outcome_table(original) != outcome_table(changed) {
        return false;
    }
    let actions: Vec<Action> =
        original.all_actions().into_iter().chain(changed.all_actions()).filter(is_plain).collect();
    let starts: BTreeSet<State> = original.machine.all_starts().into_iter().collect();
    if starts != changed.machine.all_starts().into_iter().collect() {
        return false;
    }
    let mut seen = starts;
    let mut open: Vec<State> = seen.iter().copied().collect();
    while let Some(state) = open.pop() {
        // One person who is in a step begins no other: known without asking.
        let busy = original.checklist.crew == 1 && original.machine.begun(&state).next().is_some();
        for action in &actions {
            let skip = match action {
                Action::Begin(_) => busy,
                Action::Leave(step) | Action::Done(step, _) => !original.machine.is_begun(&state, *step),
                _ => false,
            };
            if skip {
                continue;
            }
            let next = original.machine.step(&state, *action).ok();
            if next != changed.machine.step(&state, *action).ok() {
                return false;
            }
            if let Some(next) = next
                && !original.machine.is_stopped(&next)
                && seen.insert(next)
            {
                open.push(next);
            }
        }
    }
    true
}

fn is_plain(action: &Action) -> bool {
    !matches!(action, Action::Void(_) | Action::Correct(..) | Action::Observe(..))
}

/// What each class of each entry leads to, the other entries of the step being as good as they can be.
fn outcome_table(procedure: &Procedure) -> Vec<Result<OutcomeIx, NoOutcome>> {
    let mut table = Vec::new();
    for (at, step) in procedure.steps() {
        let good = |entry: &panside_procedure::format::Entry| {
            let held = |class: &str| entry.classes.get(class).is_some_and(|effect| effect.not_yet);
            entry.ask.classes().into_iter().find(|class| !held(class)).unwrap_or_default().to_owned()
        };
        let all_good: BTreeMap<String, String> =
            step.entries.iter().map(|entry| (entry.id.clone(), good(entry))).collect();
        for entry in &step.entries {
            for class in entry.ask.classes() {
                let mut classes = all_good.clone();
                classes.insert(entry.id.clone(), class.to_owned());
                table.push(procedure.outcome(at, &classes));
            }
        }
    }
    table
}
