//! Safe: dangers in runs, at the start, and at moments within an action.

use panside_procedure::proof::{Answer, Ask, Property, Verdict};
use serde_json::{Value, json};

use super::{PLAIN, fails_only, is_proved, proof, run};
use crate::bay::{choice, danger, one_phase, pan_job, step};
use crate::own_search::shortest_into;
use crate::said::said;
use crate::support::Draft;

/// Runs are safe or not: whatever else these small checklists lack is not asked here.
fn safe(draft: &Draft) -> Answer {
    proof(draft, PLAIN)
        .properties
        .iter()
        .find(|(property, _)| *property == Property::Safe)
        .map_or(Answer::NotDecided, |found| found.1)
}

#[test]
fn the_pan_job_is_proved() {
    is_proved(&pan_job());
}

#[test]
fn a_crew_of_two_is_proved_too() {
    is_proved(&pan_job().set("", "crew", json!(2)));
}

#[test]
fn work_under_a_vehicle_that_can_be_lowered_is_found_by_a_shortest_run() {
    let draft = pan_job().set("drain", "needs", json!("engine = off")).set("drain", "permits", json!([]));
    let finding = fails_only(&draft, Property::Safe);
    assert_eq!(said(&finding.what), "crush: It is dangerous: crush.");
    assert_eq!(Some(finding.run.len()), shortest_into(&draft.procedure(), "crush"));
    assert_eq!(run(&finding).last().unwrap(), "begin step drain");
}

#[test]
fn an_engine_that_can_be_started_dry_is_found_by_a_shortest_run() {
    let draft = pan_job().set("start", "needs", json!("lift = floor and pan = on"));
    let finding = fails_only(&draft, Property::Safe);
    assert_eq!(said(&finding.what), "dry_run: It is dangerous: dry_run.");
    assert_eq!(Some(finding.run.len()), shortest_into(&draft.procedure(), "dry_run"));
    assert_eq!(run(&finding).last().unwrap(), "vehicle action start");
}

#[test]
fn a_vehicle_action_that_is_dangerous_when_it_is_made_is_found() {
    let draft = pan_job().set("lower", "needs", json!("engine = off"));
    let finding = fails_only(&draft, Property::Safe);
    assert_eq!(said(&finding.what), "open_pan_down: It is dangerous: open_pan_down.");
    assert_eq!(Some(finding.run.len()), shortest_into(&draft.procedure(), "open_pan_down"));
    assert_eq!(run(&finding).last().unwrap(), "vehicle action lower");
}

#[test]
fn moving_is_judged_before_the_vehicle_action_and_moved_after_it() {
    let bench = || {
        one_phase(json!([step("look", "bench", json!({}))])).set(
            "crush",
            "when",
            json!("lift = floor and pan = off"),
        )
    };
    let with = |when: &str| safe(&bench().add("", "dangers", danger("lift_moves", when)));
    assert_eq!(with("moving = raise and lift = floor"), Answer::Fails);
    assert_eq!(with("moving = raise and lift = on_locks"), Answer::Holds);
    assert_eq!(with("moved = raise and lift = on_locks"), Answer::Fails);
    assert_eq!(with("moved = raise and lift = floor"), Answer::Holds);
}

#[test]
fn a_danger_that_holds_at_the_start_already_is_found() {
    let draft = pan_job().add("", "dangers", danger("stands_on_its_wheels", "lift = floor"));
    let proof = proof(&draft, Ask::default());
    assert_eq!(proof.verdict, Verdict::Refuted);
    let finding = &proof.findings[0];
    assert_eq!(
        said(&finding.what),
        "stands_on_its_wheels: It is dangerous: stands_on_its_wheels. It holds at the start already."
    );
    assert_eq!((finding.property, finding.run.as_slice()), (Property::Safe, &[][..]));
}

#[test]
fn a_danger_at_one_of_several_starts_is_found() {
    let draft = pan_job().set("engine", "start", json!(["off", "running"])).set(
        "fluid",
        "start",
        json!(["filled", "drained"]),
    );
    assert_eq!(safe(&draft), Answer::Fails);
    assert_eq!(safe(&draft.set("", "start_when", json!("engine = off or fluid = filled"))), Answer::Holds);
}

fn opened(follows: Value, when: &str) -> Draft {
    let open = step("open", "under", json!({"tags": ["opening"], "makes": {"drain_plug": "out"}}));
    one_phase(json!([open]))
        .add("", "conditions", json!({"id": "puddle", "values": ["no", "yes"]}))
        .set("", "follows", follows)
        .set("crush", "when", json!(when))
}

#[test]
fn a_danger_between_what_the_hands_make_and_what_follows_is_found() {
    let follow = json!([{"when": "drain_plug = out", "makes": {"pan": "off"}}]);
    assert_eq!(safe(&opened(follow.clone(), "drain_plug = out and pan = on")), Answer::Fails);
    assert_eq!(safe(&opened(follow, "drain_plug = in and pan = off")), Answer::Holds, "this never is");
}

#[test]
fn a_danger_between_two_things_that_follow_is_found() {
    let follows = json!([
        {"when": "drain_plug = out", "makes": {"pan": "off"}},
        {"when": "pan = off", "makes": {"puddle": "yes"}},
    ]);
    assert_eq!(safe(&opened(follows.clone(), "pan = off and puddle = no")), Answer::Fails);
    assert_eq!(safe(&opened(follows, "pan = on and puddle = yes")), Answer::Holds, "this never is");
}

#[test]
fn the_hands_are_still_there_when_a_step_makes_something() {
    assert_eq!(safe(&opened(json!([]), "doing.tag = opening and drain_plug = out")), Answer::Fails);
    let follow = json!([{"when": "drain_plug = out", "makes": {"puddle": "yes"}}]);
    assert_eq!(safe(&opened(follow, "doing.tag = opening and puddle = yes")), Answer::Fails);
}

fn under_by_knowledge(rules: Value) -> Draft {
    let asked = choice(
        "asked",
        &["good", "bad"],
        json!({"good": {"sets": {"found": "good"}}, "bad": {"sets": {"found": "bad"}}}),
    );
    let look = step("look", "bench", json!({"again": "true", "entries": [asked]}));
    one_phase(json!([look, step("go_under", "under", rules)])).set("found", "fresh_for", json!(10)).set(
        "crush",
        "when",
        json!("doing.zone = under and found = bad"),
    )
}

#[test]
fn what_is_not_known_counts_as_danger() {
    assert_eq!(safe(&under_by_knowledge(json!({"needs": "found = good"}))), Answer::Holds);
    let not_asked = under_by_knowledge(json!({}));
    let finding = proof(&not_asked, PLAIN).findings.remove(0);
    assert_eq!(run(&finding), ["begin step go_under"], "found is not known at the start");
}

#[test]
fn knowledge_that_is_lost_is_no_danger_until_something_moves() {
    assert_eq!(safe(&under_by_knowledge(json!({"needs": "found = good"}))), Answer::Holds, "nothing moves");
    let goes_on = under_by_knowledge(json!({"needs": "found = good", "while": "true"}));
    let finding = proof(&goes_on, PLAIN).findings.remove(0);
    let run = run(&finding);
    assert_eq!(run[run.len() - 2..], ["found grows too old", "vehicle action raise"], "{run:?}");
}

#[test]
fn a_failure_that_needs_a_void_is_found_only_with_voids() {
    // The vehicle action trusts what was entered, and not the fluid.
    let needs = "lift = floor and pan = on and (not worked(drain) or worked(fill))";
    let draft = pan_job().set("start", "needs", json!(needs));
    let found = proof(&draft, Ask { observe: false, ..Ask::default() });
    assert_eq!(found.verdict, Verdict::Refuted);
    assert!(run(&found.findings[0]).contains(&"void step drain".to_owned()), "{:?}", found.findings[0]);
    let without = proof(&draft, PLAIN);
    assert_eq!((without.verdict, without.findings), (Verdict::Proved, Vec::new()));
    assert!(without.not_claimed.iter().any(|claim| said(claim) == "runs with a void (not asked)"));
}
