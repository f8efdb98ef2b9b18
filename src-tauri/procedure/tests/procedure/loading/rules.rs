//! What a checklist must keep to beyond its shape: sizes, order, who writes what, dangers, skipping.

use serde_json::{Value, json};

use super::{mistakes, one_mistake};
use crate::bay::{choice, danger, one_phase, pan_job, signature, step};
use crate::said::what;
use crate::support::Draft;

#[test]
fn an_empty_domain_is_refused() {
    one_mistake(
        &pan_job().add("", "conditions", json!({"id": "filter", "values": []})),
        "filter",
        "/values",
        "values: there are 0; 2 to 64 are possible",
    );
    one_mistake(
        &pan_job().add("", "gates", json!({"id": "sound", "classes": []})),
        "sound",
        "/classes",
        "classes: there are 0; 1 to 63 are possible",
    );
    one_mistake(
        &pan_job().add("", "facts", json!({"id": "stick", "values": ["yes"], "sheet": "stick"})),
        "stick",
        "/values",
        "values: there are 1; 2 to 64 are possible",
    );
    one_mistake(
        &pan_job().add("", "items", json!({"id": "straps", "name": "straps", "count": 0, "reuse": "never"})),
        "straps",
        "/count",
        "pieces: there are 0; 1 to 63 are possible",
    );
    one_mistake(
        &pan_job().add("", "phases", json!({"id": "rest", "title": "Rest", "steps": []})),
        "rest",
        "/steps",
        "steps in the phase: there are 0",
    );
    one_mistake(
        &pan_job().set("", "crew", json!(4)),
        "",
        "/crew",
        "people in a step at one time: there are 4; 1 to 3 are possible",
    );
    one_mistake(
        &pan_job().set("", "dangers", json!([])),
        "",
        "/dangers",
        "dangers: there are 0; 1 to 256 are possible",
    );
}

#[test]
fn more_photos_than_the_first_page_holds_are_refused() {
    let photo = |at: usize| json!({"id": format!("photo_{at}"), "label": "Photo", "ask": {"photo": {"of": "pan", "first_page": true}}});
    let with = |count: usize| {
        let entries: Vec<Value> = (0..count).map(photo).collect();
        pan_job().set("drain", "entries", json!(entries))
    };
    one_mistake(&with(5), "", "/phases", "photos on the first page: there are 5; 0 to 4 are possible");
}

#[test]
fn a_domain_too_large_is_refused_even_where_a_predicate_reads_it() {
    let values: Vec<String> = (0..200).map(|at| format!("v{at}")).collect();
    let draft = pan_job()
        .add("", "conditions", json!({"id": "filter", "values": values}))
        .set("drain", "needs", json!("filter != v199"))
        .set("bolts", "count", json!(255))
        .set("fill", "needs", json!("empty(bolts) = 255 and tray_clear"));
    let found: Vec<String> = mistakes(&draft).into_iter().map(|problem| what(&problem)).collect();
    assert_eq!(
        found,
        ["values: there are 200; 2 to 64 are possible", "pieces: there are 255; 1 to 63 are possible"]
    );
}

#[test]
fn more_than_256_steps_are_refused() {
    let steps: Vec<Value> = (0..257).map(|at| step(&format!("s{at}"), "bench", json!({}))).collect();
    let found = mistakes(&one_phase(Value::Array(steps)));
    assert!(
        found
            .iter()
            .any(|problem| problem.place == "/phases" && what(problem).starts_with("steps: there are 257;")),
        "{found:?}"
    );
}

#[test]
fn a_checklist_with_more_state_than_there_is_room_for_is_refused() {
    let items: Vec<Value> = (0..180)
        .map(|at| json!({"id": format!("i{at}"), "name": "pieces", "count": 63, "reuse": "yes"}))
        .collect();
    let draft = one_phase(json!([step("look", "bench", json!({}))])).set("", "items", Value::Array(items));
    one_mistake(
        &draft,
        "",
        "",
        "the checklist needs more than 1024 bits of state; use fewer steps, dangers, conditions or items",
    );
}

#[test]
fn steps_that_wait_for_each_other_are_told_by_name() {
    let draft = one_phase(json!([
        step("a", "bench", json!({"after": ["c"]})),
        step("b", "bench", json!({"after": ["a"]})),
        step("c", "bench", json!({"after": ["b"]})),
        step("d", "bench", json!({"after": ["a"]})),
        step("e", "bench", json!({})),
    ]));
    let found = mistakes(&draft);
    let places: Vec<&str> = found.iter().map(|problem| problem.place.as_str()).collect();
    assert_eq!(places, [0, 1, 2, 3].map(|at| format!("/phases/0/steps/{at}/after")));
    assert!(
        what(&found[0]).starts_with("these steps wait for each other, so none can begin: a, b, c"),
        "{}",
        what(&found[0])
    );
}

#[test]
fn a_step_builds_on_earlier_ones_only() {
    one_mistake(
        &pan_job().set("drain", "relies_on", json!(["pan_off"])),
        "drain",
        "/relies_on/0",
        "\"pan_off\" is no earlier step",
    );
}

#[test]
fn what_a_vehicle_action_writes_nothing_else_writes() {
    let says = "lift is written by vehicle actions; nothing else may write it";
    for field in ["makes", "on_begin", "on_leave"] {
        one_mistake(
            &pan_job().set("fill", field, json!({"lift": "floor"})),
            "fill",
            &format!("/{field}/lift"),
            says,
        );
    }
    let follow = json!({"when": "pan = off", "makes": {"lift": "on_locks"}});
    one_mistake(&pan_job().add("", "follows", follow), "", "/follows/0/makes/lift", says);
    let did =
        choice("did", &["lowered", "left"], json!({"lowered": {"makes": {"lift": "floor"}}, "left": {}}));
    let draft = pan_job().add("fill", "entries", did).set("did", "ask/choice/hands_did", json!(true));
    one_mistake(&draft, "did", "/classes/lowered/makes/lift", says);
}

#[test]
fn a_vehicle_action_changes_something() {
    one_mistake(
        &pan_job().set("raise", "makes", json!({})),
        "raise",
        "/makes",
        "a vehicle action must change something",
    );
}

#[test]
fn follows_that_write_different_values_are_refused() {
    let follow = |when: &str, value: &str| json!({"when": when, "makes": {"fluid": value}});
    let draft = pan_job().add("", "follows", follow("pan = off", "drained")).add(
        "",
        "follows",
        follow("pan = on", "filled"),
    );
    one_mistake(
        &draft,
        "",
        "/follows/1",
        "another follow gives fluid another value; they could go on for ever",
    );
    pan_job()
        .add("", "follows", follow("pan = off", "drained"))
        .add("", "follows", follow("lift = raised", "drained"))
        .procedure();
}

#[test]
fn knowledge_that_is_never_fresh_is_refused() {
    one_mistake(
        &pan_job().set("level", "fresh_for", json!(0)),
        "level",
        "/fresh_for",
        "knowledge that is good for 0 minutes is never good",
    );
}

#[test]
fn a_danger_that_reads_a_gate_says_what_is_being_done() {
    let says = "a danger that reads gates, sign-offs, steps or items must also say what is being done";
    for when in ["level = low", "not signed(clear)", "worked(drain) and lift = floor", "not tray_clear"] {
        one_mistake(&pan_job().add("", "dangers", danger("splash", when)), "splash", "/when", says);
    }
    pan_job().add("", "dangers", danger("splash", "level = low and doing.zone = under")).procedure();
    pan_job().add("", "dangers", danger("splash", "level = low and moving = raise")).procedure();
}

fn skip(rules: Value) -> Draft {
    let mut rules = rules;
    rules["may_skip"] = json!(true);
    pan_job().add("verify", "steps", step("wipe", "bench", rules))
}

#[test]
fn a_step_that_safety_or_the_tray_hangs_on_cannot_be_skipped() {
    let place = "/may_skip";
    one_mistake(
        &skip(json!({"makes": {"fluid": "filled"}})),
        "wipe",
        place,
        "this step writes fluid, which a danger reads",
    );
    one_mistake(
        &skip(json!({"on_begin": {"pan": "off"}})),
        "wipe",
        place,
        "this step writes pan, which a danger reads",
    );
    one_mistake(
        &skip(json!({"on_leave": {"pan": "off"}})),
        "wipe",
        place,
        "this step writes pan, which a danger reads",
    );
    one_mistake(
        &skip(json!({"takes_off": {"bolts": 1}})),
        "wipe",
        place,
        "this step moves pieces; it cannot be skipped",
    );
    one_mistake(
        &skip(json!({"puts_back": {"bolts": 1}})),
        "wipe",
        place,
        "this step moves pieces; it cannot be skipped",
    );
    one_mistake(
        &pan_job().set("shake", "may_skip", json!(true)),
        "shake",
        place,
        "a permit hangs on this step; it cannot be skipped",
    );
    let reads_level = danger("splash", "level = low and doing.zone = under");
    one_mistake(
        &skip(json!({"sets": {"level": "low"}})).add("", "dangers", reads_level),
        "wipe",
        place,
        "this step writes level, which a danger reads",
    );
    skip(json!({"sets": {"verdict": "service"}})).procedure();
}

#[test]
fn a_step_with_an_attest_may_be_skipped() {
    let mut draft = skip(json!({"entries": [signature("wiped")]}));
    draft = draft.add("", "sign_offs", crate::bay::sign_off("wiped", "attest", "true"));
    draft.procedure();
}
