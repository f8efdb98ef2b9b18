//! What is assigned and changes nothing, and what is found out and lost at once.

use panside_procedure::proof::Property;
use serde_json::json;

use super::{PLAIN, fails_only, is_proved, proof, run};
use crate::bay::pan_job;
use crate::said::said;

#[test]
fn an_assignment_that_never_changes_anything_is_found() {
    let twice = pan_job().set("pan_off", "on_begin", json!({"fluid": "drained"}));
    let found = fails_only(&twice, Property::AllUsed);
    assert_eq!(
        said(&found.what),
        "beginning step \"pan_off\" makes fluid = drained, which never changes anything"
    );
    let still = pan_job().set("raise", "makes", json!({"lift": "raised", "engine": "off"}));
    let found = fails_only(&still, Property::AllUsed);
    assert_eq!(
        said(&found.what),
        "vehicle action \"raise\" makes engine = off, which never changes anything"
    );
}

#[test]
fn a_change_of_physics_that_never_happens_is_found() {
    let follow =
        |when: &str| pan_job().set("", "follows", json!([{"when": when, "makes": {"fluid": "drained"}}]));
    let found = fails_only(&follow("pan = off"), Property::AllUsed);
    assert_eq!(said(&found.what), "what follows makes fluid = drained, which never changes anything");
    assert_eq!(found.place.pointer, "/follows/0");
    // Where the drain is only loosened the fluid runs out by itself.
    is_proved(&follow("pan = off").set("drain", "makes", json!({})).set(
        "pan_off",
        "needs",
        json!("safe_under and pan = on"),
    ));
}

#[test]
fn what_is_found_out_and_lost_at_once_is_found_by_a_shortest_run() {
    let too_early = pan_job().set("drain", "sets", json!({"level": "low"}));
    let found = fails_only(&too_early, Property::AllUsed);
    assert_eq!(said(&found.what), "step \"drain\" is done with level = low, and that is lost at once");
    assert_eq!(run(&found).last().map(String::as_str), Some("done step drain"));
}

#[test]
fn where_something_dangerous_is_found_what_comes_of_it_is_not_told() {
    // With the pan off the engine runs dry, and the level is lost as soon as it is read.
    let dry = pan_job().set("start", "needs", json!("lift = floor"));
    let found = proof(&dry, PLAIN).findings;
    assert!(found.iter().all(|found| found.property != Property::AllUsed), "{found:?}");
    assert!(found.iter().any(|found| found.property == Property::Safe));
}
