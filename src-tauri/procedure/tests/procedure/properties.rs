//! What holds in every run: random actions on the pan job, and its states counted a second time.

use panside_procedure::proof::{Ask, go_on, prove};
use panside_procedure::{Action, Procedure, State};
use proptest::prelude::*;
use proptest::sample::Index;
use serde_json::json;

use crate::bay::pan_job;
use crate::own_search::search;
use crate::support::Draft;

/// The pan job with what it does not use otherwise: two people, a fact, something that follows.
fn crowded() -> Draft {
    pan_job()
        .set("", "crew", json!(2))
        .add("", "facts", json!({"id": "dipstick", "values": ["yes", "no"], "sheet": "has_dipstick"}))
        .add("", "conditions", json!({"id": "puddle", "values": ["no", "yes"]}))
        .add("", "follows", json!({"when": "fluid = drained and pan = off", "makes": {"puddle": "yes"}}))
        .set("engine", "start", json!(["off", "running"]))
}

/// Every field has a value of its domain, and facts are as they were.
fn is_within_its_domains(procedure: &Procedure, start: &State, state: &State) -> Result<(), TestCaseError> {
    let machine = &procedure.machine;
    for var in &machine.vars {
        prop_assert!(var.field.get(state) < u64::from(var.size));
        let is_fact = var.kind == panside_procedure::machine::VariableKind::Fact;
        prop_assert!(!is_fact || var.field.get(state) == var.field.get(start));
    }
    for item in &machine.items {
        prop_assert!(item.field.get(state) <= u64::from(item.count));
    }
    prop_assert!(machine.steps.iter().all(|rule| rule.work.get(state) <= 3));
    prop_assert!(machine.signs.iter().all(|rule| rule.field.get(state) <= 2));
    let begun: Vec<_> = machine.begun(state).collect();
    prop_assert!(begun.len() <= usize::from(procedure.checklist.crew));
    prop_assert!(begun.iter().all(|step| step.at() < machine.steps.len()));
    prop_assert!(begun.len() < 2 || begun[0] != begun[1], "nobody is in the same step as somebody else");
    Ok(())
}

/// What a step may never change of a state that it leads to.
fn holds_after(
    procedure: &Procedure,
    before: &State,
    action: Action,
    after: &State,
) -> Result<(), TestCaseError> {
    let machine = &procedure.machine;
    for rule in &machine.signs {
        prop_assert!(rule.field.get(after) != 1 || rule.holds_while.holds(after), "a valid signature holds");
    }
    for var in machine.vars.iter().filter(|var| var.field.get(after) != 0) {
        prop_assert!(var.holds_while.as_ref().is_none_or(|holds| holds.holds(after)), "what is known holds");
    }
    prop_assert!(
        !machine.is_ending(before) || !machine.is_finished(after),
        "a job that ends is not finished"
    );
    if !matches!(action, Action::Done(..) | Action::Observe(..)) {
        let same = machine.items.iter().all(|item| item.field.get(before) == item.field.get(after));
        prop_assert!(same, "only work and observations move pieces");
    }
    Ok(())
}

fn wander(draft: &Draft, choices: &[Index]) -> Result<(), TestCaseError> {
    let procedure = draft.procedure();
    let machine = &procedure.machine;
    let all = procedure.all_actions();
    let starts = machine.all_starts();
    let start = starts[choices[0].index(starts.len())];
    let mut state = start;
    for choice in choices {
        let mut allowed = Vec::new();
        for &action in &all {
            let once = machine.step(&state, action);
            prop_assert_eq!(once, machine.step(&state, action), "step depends on nothing else");
            if let Ok(next) = machine.step(&machine.with_piece_off(&state, true), action) {
                let without = machine.with_piece_off(&next, false);
                prop_assert_eq!(once, Ok(without), "a piece off permits nothing and changes nothing else");
            }
            let explained = machine.explain(&state, action);
            prop_assert_eq!(once.err(), explained.map(|(blocked, _)| blocked), "explain and step agree");
            if let Ok(next) = once {
                is_within_its_domains(&procedure, &start, &next)?;
                holds_after(&procedure, &state, action, &next)?;
                allowed.push(next);
            } else {
                prop_assert!(machine.dangers_of(&state, action).is_empty(), "what is blocked does nothing");
            }
        }
        if allowed.is_empty() {
            prop_assert!(machine.is_finished(&state) || machine.is_stopped(&state));
            break;
        }
        state = allowed[choice.index(allowed.len())];
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn every_run_of_the_pan_job_keeps_to_the_rules(choices in prop::collection::vec(any::<Index>(), 1..120)) {
        wander(&pan_job(), &choices)?;
    }

    #[test]
    fn every_run_with_two_people_keeps_to_the_rules(choices in prop::collection::vec(any::<Index>(), 1..120)) {
        wander(&crowded(), &choices)?;
    }
}

#[test]
fn the_proof_finds_the_states_that_trying_every_action_finds() {
    for (name, draft) in [("pan job", pan_job()), ("crowded", crowded())] {
        let procedure = draft.procedure();
        for void in [false, true] {
            let proof = prove(&procedure, Ask { void, observe: false, ..Ask::default() }, &mut go_on);
            let own = search(&procedure, void);
            let counted = (proof.searches[0].states.found, proof.searches[0].transitions);
            assert_eq!(counted, (own.states.len(), own.transitions), "{name}, void: {void}");
            let longest = own.states.iter().map(|(_, depth)| *depth).max();
            assert_eq!(Some(proof.searches[0].depth), longest, "{name}, void: {void}");
        }
    }
}
