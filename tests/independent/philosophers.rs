//! The dining philosophers: a count that another model checker, SPIN, has made.
//!
//! Each takes the left fork, then the right one, then puts both back. Everything is a vehicle action, so that nobody begins a
//! step; `done_when` and `safe_to_leave` can never hold, so that finishing and stopping add no state and no
//! transition. The one step a checklist must have can never be begun.
//!
//! States for N = 2 to 5: 6, 14, 34, 82, of which exactly one is a dead end (everybody holds the left fork).
//! Transitions: 8, 27, 88, 265. SPIN 6.5.2 stores 14, 34, 82 states for N = 3, 4, 5 and finds one invalid end
//! state; it counts 28, 89, 266 transitions, one more than there are edges in each case. The count for N = 2 is by
//! breadth-first search alone.

use panside_procedure::Procedure;
use panside_tests::named;
use serde_json::{Value, json};
use std::collections::BTreeSet;

use super::runs::{self, Kind};
use super::{danger_met, proved};

const KNOWN: [(usize, usize, usize); 4] = [(2, 6, 8), (3, 14, 27), (4, 34, 88), (5, 82, 265)];

fn table(philosophers: usize) -> Value {
    let mut conditions = Vec::new();
    let mut vehicle_actions = Vec::new();
    for at in 0..philosophers {
        let (left, right, who) =
            (format!("fork_{at}"), format!("fork_{}", (at + 1) % philosophers), format!("who_{at}"));
        conditions
            .push(json!({ "id": who, "label": "a label", "values": named(&["thinks", "has_left", "eats"]) }));
        conditions.push(json!({ "id": left, "label": "a label", "values": named(&["lies", "taken"]) }));
        vehicle_actions.push(json!({
            "id": format!("left_{at}"), "title": "take the left fork",
            "needs": format!("{who} = thinks and {left} = lies"),
            "makes": { &who: "has_left", &left: "taken" }
        }));
        vehicle_actions.push(json!({
            "id": format!("right_{at}"), "title": "take the right fork",
            "needs": format!("{who} = has_left and {right} = lies"),
            "makes": { &who: "eats", &right: "taken" }
        }));
        vehicle_actions.push(json!({
            "id": format!("back_{at}"), "title": "put both back",
            "needs": format!("{who} = eats"),
            "makes": { &who: "thinks", &left: "lies", &right: "lies" }
        }));
    }
    let stuck: Vec<String> = (0..philosophers).map(|at| format!("who_{at} = has_left")).collect();
    json!({
        "format": "panside-checklist/1", "id": "table", "title": "Dining philosophers", "revision": 1,
        "conditions": conditions, "vehicle_actions": vehicle_actions,
        "phases": [{ "id": "only", "title": "Only", "steps": [
            { "id": "never", "title": "Never", "instruction": "Never.", "zone": "bench", "needs": "false" }
        ] }],
        "dangers": [{ "id": "stuck", "signal": "notice", "text": "Nobody can go on.", "when": stuck.join(" and ") }],
        "done_when": "false", "safe_to_leave": "false"
    })
}

fn load(philosophers: usize) -> Result<Procedure, String> {
    Procedure::load(table(philosophers).to_string().as_bytes()).map_err(|problems| problems.to_string())
}

#[test]
fn the_proof_counts_the_dining_philosophers_as_spin_does() -> Result<(), String> {
    for (philosophers, states, transitions) in KNOWN {
        let procedure = load(philosophers)?;
        let (counted, proof) = proved(&procedure, Kind::Plain)?;
        assert_eq!(
            (counted.states, counted.transitions, counted.dead_ends),
            (states, transitions, 1),
            "{philosophers} philosophers"
        );
        assert_eq!(counted.dangers, BTreeSet::from(["stuck".to_owned()]));
        // The shortest way there is everybody's first vehicle action.
        let stuck =
            proof.findings.iter().find(|found| danger_met(&procedure, found).as_deref() == Some("stuck"));
        assert_eq!(stuck.map(|found| found.run.len()), Some(philosophers));
    }
    Ok(())
}

#[test]
fn the_second_interpreter_counts_the_dining_philosophers_as_spin_does() -> Result<(), String> {
    for (philosophers, states, transitions) in KNOWN {
        let counted = runs::count(load(philosophers)?.checklist, Kind::Plain)?;
        let found = (counted.states, counted.transitions, counted.dead_ends);
        assert_eq!(found, (states, transitions, 1), "{philosophers} philosophers");
    }
    Ok(())
}
