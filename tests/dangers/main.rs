//! Every danger of the pan and solenoid checklist is tried: somewhere in the job somebody wants to walk into it, and
//! the Machine says no, on the vehicle of one demo sheet at least.
//!
//! The same checklist without its rules (every needs, while, after, permit, condition of a step, phase and
//! what a signature says taken out, the job ended at any time) tells what an attempt would lead to. In each state that the
//! real rules reach, every vehicle action, every begin, every step done at one tap and every end is attempted. An attempt counts for a danger where the loose rules run into it
//! and the real ones refuse it. A refusal by an interlock (needs, while, a permit, a signature, a person in the way) weighs more
//! than one by the order of the work alone.

use std::collections::{BTreeMap, BTreeSet, VecDeque};

use panside_procedure::machine::{DangerSet, OutcomeIx, StepIx, VehicleActionIx};
use panside_procedure::{Action, Blocked, Procedure, State};
use serde_json::{Value, json};

/// More states than this are not expected; the test then fails instead of running on.
const MOST_STATES: usize = 400_000;

fn load(checklist: &Value) -> Result<Procedure, String> {
    Procedure::load(checklist.to_string().as_bytes()).map_err(|problems| problems.to_string())
}

/// Takes the rules out, and nothing that has a place in the state.
fn without_rules(mut checklist: Value) -> Result<Value, String> {
    let mut earlier: Vec<Value> = Vec::new();
    for phase in checklist["phases"].as_array_mut().ok_or("no phases")? {
        phase["beside"] = json!(earlier);
        earlier.push(phase["id"].clone());
        for step in phase["steps"].as_array_mut().ok_or("no steps")? {
            let fields = step.as_object_mut().ok_or("no step")?;
            for rule in ["needs", "while", "after", "permits", "on"] {
                fields.remove(rule);
            }
            fields.insert("when_ending".to_owned(), json!(true));
        }
    }
    for end in ["done_when", "safe_to_leave"] {
        checklist[end] = json!("true");
    }
    for made in checklist["vehicle_actions"].as_array_mut().ok_or("no vehicle actions")? {
        made["needs"] = json!("true");
    }
    for sign in checklist["sign_offs"].as_array_mut().ok_or("no sign-offs")? {
        sign["holds_while"] = json!("true");
    }
    Ok(checklist)
}

/// A refused attempt.
#[derive(Debug, Clone, Copy)]
struct Refusal {
    action: Action,
    blocked: Blocked,
    /// Actions from the start to the state in which it was tried.
    depth: usize,
}

fn is_interlock(blocked: Blocked) -> bool {
    matches!(
        blocked,
        Blocked::Needs | Blocked::While | Blocked::Permit(_) | Blocked::Sign(_) | Blocked::Stands(_)
    )
}

fn is_order(blocked: Blocked) -> bool {
    matches!(blocked, Blocked::Phase(_) | Blocked::After(_) | Blocked::NotInJob | Blocked::Ending)
}

/// What a technician could try in a state: the last action, those before it that would have to go first, and the
/// dangers the loose rules run into.
fn attempts(loose: &Procedure, state: &State) -> Vec<(Vec<Action>, DangerSet)> {
    let machine = &loose.machine;
    let mut found = Vec::new();
    let vehicle_actions =
        (0..machine.vehicle_actions.len()).map(|at| Action::Vehicle(VehicleActionIx::of(at)));
    for action in vehicle_actions.chain([Action::Finish, Action::Stop]) {
        found.push((vec![action], machine.dangers_of(state, action)));
    }
    for step in (0..machine.steps.len()).map(StepIx::of) {
        let begin = Action::Begin(step);
        found.push((vec![begin], machine.dangers_of(state, begin)));
        let begun = if machine.is_begun(state, step) { Ok(*state) } else { machine.step(state, begin) };
        let Ok(begun) = begun else { continue };
        for outcome in (0..machine.steps[step.at()].outcomes.len()).map(OutcomeIx::of) {
            let done = Action::Done(step, outcome);
            let before = if begun == *state { vec![done] } else { vec![begin, done] };
            found.push((before, machine.dangers_of(&begun, done)));
        }
    }
    found.retain(|(_, dangers)| !dangers.is_empty());
    found
}

/// The first refusal of the real rules on the way, if there is one.
fn refused(real: &Procedure, state: &State, actions: &[Action]) -> Option<(Action, Blocked)> {
    let mut state = *state;
    for &action in actions {
        match real.machine.step(&state, action) {
            Ok(next) => state = next,
            Err(blocked) => return Some((action, blocked)),
        }
    }
    None
}

/// Looks for the best refusal of each danger, an interlock before order, early before late. Answers how many states were
/// looked at.
fn try_everything(real: &Procedure, loose: &Procedure, best: &mut BTreeMap<usize, Refusal>) -> usize {
    let plain = |action: &Action| {
        !matches!(action, Action::Void(_) | Action::Correct(..) | Action::Observe(..) | Action::Skip(_))
    };
    let actions: Vec<Action> = real.all_actions().into_iter().filter(plain).collect();
    let mut seen: BTreeSet<State> = real.machine.all_starts().into_iter().collect();
    let mut open: VecDeque<(State, usize)> = seen.iter().map(|start| (*start, 0)).collect();
    let dangers = real.machine.dangers.len();
    let mut looked_at = 0;
    while let Some((state, depth)) = open.pop_front() {
        let all_by_interlock =
            best.values().filter(|refusal| is_interlock(refusal.blocked)).count() == dangers;
        if looked_at == MOST_STATES || all_by_interlock {
            break;
        }
        looked_at += 1;
        for (attempt, met) in attempts(loose, &state) {
            let Some((action, blocked)) = refused(real, &state, &attempt) else { continue };
            for danger in met.iter() {
                let better = best.get(&danger.at()).is_none_or(|known| !is_interlock(known.blocked));
                if is_interlock(blocked) && better || is_order(blocked) && !best.contains_key(&danger.at()) {
                    best.insert(danger.at(), Refusal { action, blocked, depth });
                }
            }
        }
        for action in &actions {
            if let Ok(next) = real.machine.step(&state, *action)
                && seen.insert(next)
            {
                open.push_back((next, depth + 1));
            }
        }
    }
    looked_at
}

#[test]
fn whoever_tries_to_walk_into_a_danger_is_refused() -> Result<(), String> {
    let whole = panside_tests::checklist("pan-and-solenoid");
    let mut best = BTreeMap::new();
    for sheet in panside_tests::SHEETS {
        let checklist = panside_tests::for_vehicle(&whole, sheet).map_err(|error| error.to_string())?;
        let checklist: Value = serde_json::from_str(&checklist).map_err(|error| error.to_string())?;
        let real = load(&checklist)?;
        let loose = load(&without_rules(checklist)?)?;
        assert_eq!(real.machine.layout.bits(), loose.machine.layout.bits(), "both must read the same state");
        let looked_at = try_everything(&real, &loose, &mut best);
        assert!(looked_at < MOST_STATES, "not every state of {sheet} was looked at");
        println!("{sheet}: {looked_at} states looked at");
    }
    let real = Procedure::load(whole.as_bytes()).map_err(|problems| problems.to_string())?;
    let dangers = &real.checklist.dangers;
    println!("{} dangers", dangers.len());
    let mut by_order = Vec::new();
    let mut never = Vec::new();
    for (at, danger) in dangers.iter().enumerate() {
        match best.get(&at) {
            None => never.push(danger.id.as_str()),
            Some(refusal) => {
                let Refusal { action, blocked, depth } = refusal;
                println!(
                    "{}: {} after {depth} actions is refused: {blocked:?}",
                    danger.id,
                    real.say(*action).english()
                );
                if !is_interlock(*blocked) {
                    by_order.push(danger.id.as_str());
                }
            }
        }
    }
    println!("refused by the order of the work alone: {by_order:?}");
    assert_eq!(never, Vec::<&str>::new(), "nobody was refused on the way into these");
    Ok(())
}
