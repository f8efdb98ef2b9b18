//! Each limit at its edge: so many are loaded and proved, and one more is refused in a sentence.
//!
//! What a proof says of the longest lists shows that every place of them counts: a gate or a sign-off that never lapsed, or
//! a follow, vehicle action or outcome that never came up, would be told.

mod lists;
mod step;
mod values;

use std::collections::BTreeSet;

use panside_procedure::proof::{Ask, Proof, Verdict, go_on, prove};
use serde_json::{Value, json};

use crate::bay::{danger, step};
use crate::said::{is_translated, what};
use crate::support::Draft;

/// A list of so many, each made from its number.
fn many(count: usize, one: impl Fn(usize) -> Value) -> Value {
    (0..count).map(one).collect()
}

/// Assignments of so many variables to a value.
fn all(names: impl IntoIterator<Item = String>, value: &str) -> Value {
    names.into_iter().map(|name| (name, json!(value))).collect::<serde_json::Map<_, _>>().into()
}

/// Numbers in groups of at most so many.
fn groups(count: usize, of: usize) -> impl Iterator<Item = std::ops::Range<usize>> {
    (0..count.div_ceil(of)).map(move |group| group * of..((group + 1) * of).min(count))
}

/// A checklist with these steps, each after the one before: nobody may be under a vehicle on the floor.
fn in_a_row(mut steps: Vec<Value>) -> Draft {
    let ids: Vec<String> =
        steps.iter().map(|step| step["id"].as_str().unwrap_or_default().to_owned()).collect();
    for (step, before) in steps.iter_mut().skip(1).zip(&ids) {
        step["after"] = json!([before]);
    }
    steps[0]["zone"] = json!("under");
    steps[0]["needs"] = json!("lift = on_locks");
    let worked: Vec<String> = ids.iter().rev().take(1).map(|id| format!("worked({id})")).collect();
    Draft(json!({
        "format": "panside-checklist/1", "id": "edge", "title": "Edge", "revision": 1, "demo": true,
        "conditions": [{"id": "lift", "values": ["floor", "on_locks"]}],
        "phases": [{"id": "only", "title": "Only", "steps": steps}],
        "vehicle_actions": [
            {"id": "raise", "title": "Raise", "makes": {"lift": "on_locks"}},
            {"id": "lower", "title": "Lower", "makes": {"lift": "floor"}},
        ],
        "dangers": [danger("crush", "doing.zone = under and lift != on_locks")],
        "done_when": worked.join(" and "), "safe_to_leave": "true",
    }))
}

/// The same with a step alone.
fn small() -> Draft {
    in_a_row(vec![step("s0", "under", json!({}))])
}

/// Adds to a list of the checklist, which may not be there yet.
fn with(draft: Draft, list: &str, more: Value) -> Draft {
    let more = more.as_array().cloned().unwrap_or_default();
    more.into_iter().fold(draft, |draft, one| draft.add("", list, one))
}

fn proved(draft: &Draft) -> Proof {
    let proof = prove(&draft.procedure(), Ask::ALL, &mut go_on);
    assert_eq!((proof.verdict, &proof.findings), (Verdict::Proved, &Vec::new()));
    proof
}

/// What keeps a draft from being loaded, each sentence once.
fn refused(draft: &Draft) -> BTreeSet<String> {
    match draft.load() {
        Ok(_) => panic!("this loads:\n{}", draft.text()),
        Err(problems) => {
            is_translated(&problems.0, &[&draft.text()]);
            problems.0.iter().map(what).collect()
        }
    }
}

/// So many are proved, and one more is refused by nothing but its number.
fn edge(most: usize, what: &str, least: usize, make: impl Fn(usize) -> Draft) -> Proof {
    let says = format!("{what}: there are {}; {least} to {most} are possible", most + 1);
    assert_eq!(refused(&make(most + 1)), BTreeSet::from([says]));
    proved(&make(most))
}
