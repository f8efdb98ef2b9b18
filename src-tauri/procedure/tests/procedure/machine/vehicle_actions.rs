//! What a technician may do at any time without it being a step.

use panside_procedure::{Blocked, Shown};
use serde_json::json;

use crate::bay::{one_phase, pan_job, sign_off, signature, step, up_to};

#[test]
fn a_vehicle_action_is_made_where_its_needs_hold() {
    let job = pan_job().job();
    assert_eq!(job.blocked("action set_locks"), Blocked::Needs);
    assert_eq!(job.after("action raise; action set_locks").is("lift"), "on_locks");
}

#[test]
fn a_vehicle_action_that_changes_nothing_is_none() {
    assert_eq!(pan_job().job().blocked("action lower"), Blocked::Same);
}

#[test]
fn a_vehicle_action_is_refused_when_a_begun_step_could_not_go_on() {
    let job = pan_job().job().after(&up_to("drain")).after("begin drain");
    assert_eq!(job.blocked("action lower"), Blocked::Stands(job.step("drain")));
    assert!(job.after("leave drain").try_one("action lower").is_ok());
    assert!(job.after("done drain").try_one("action lower").is_ok());
}

#[test]
fn a_vehicle_action_is_refused_when_the_permit_of_a_begun_step_would_lapse() {
    let draft = one_phase(json!([
        step("shake", "bench", json!({"entries": [signature("clear")]})),
        step("look", "under", json!({"permits": ["clear"]})),
    ]))
    .add("", "sign_offs", sign_off("clear", "permit", "lift = on_locks"));
    let job = draft.job().after("action raise; do shake; begin look");
    assert_eq!(job.blocked("action lower"), Blocked::Stands(job.step("look")));
}

#[test]
fn a_vehicle_action_is_refused_by_what_physics_makes_of_it() {
    let draft = one_phase(json!([step("hold", "under", json!({"needs": "drain_plug = in"}))]));
    let follow = json!({"when": "lift = on_locks", "makes": {"drain_plug": "out"}});
    let job = draft.add("", "follows", follow).job().after("begin hold");
    assert_eq!(job.blocked("action raise"), Blocked::Stands(job.step("hold")));
}

#[test]
fn a_vehicle_action_goes_on_beside_a_step_that_can_go_on() {
    let job = pan_job().job().after("action start; begin read_level");
    let job = job.after("done read_level stick=below; action switch_off; begin decide; action raise");
    assert_eq!((job.is("lift"), job.shown("decide")), ("raised", Shown::InProgress));
}

#[test]
fn whoever_stands_where_they_should_not_is_out_before_anything_moves() {
    let job = pan_job().job().after(&up_to("drain")).after("begin drain; observe lift=raised");
    // On the locks the step could go on again, but the person is under a vehicle that would be moved.
    assert_eq!(job.blocked("action set_locks"), Blocked::Stands(job.step("drain")));
    assert_eq!(job.blocked("action lower"), Blocked::Stands(job.step("drain")));
    assert!(job.after("leave drain").try_one("action set_locks").is_ok());
}

#[test]
fn a_vehicle_action_heeds_every_person_of_the_crew() {
    let steps =
        json!([step("sort", "bench", json!({})), step("look", "under", json!({"needs": "lift = on_locks"}))]);
    let job = one_phase(steps).set("", "crew", json!(2)).job().after("action raise; begin sort; begin look");
    assert_eq!(job.blocked("action lower"), Blocked::Stands(job.step("look")));
    assert!(job.after("leave look").try_one("action lower").is_ok());
}

#[test]
fn a_vehicle_action_may_need_a_signature() {
    let job = pan_job().set("lower", "needs", json!("signed(clear)")).job();
    let up = job.after(&up_to("shake"));
    assert_eq!(up.blocked("action lower"), Blocked::Needs);
    assert_eq!(up.after("do shake; action lower").is("lift"), "floor");
}

#[test]
fn a_vehicle_action_changes_all_it_writes_at_once() {
    let draft = one_phase(json!([step("look", "bench", json!({}))]));
    let job = draft.set("lower", "makes", json!({"lift": "floor", "pan": "on"})).job();
    let job = job.after("action raise; observe pan=off; action lower");
    assert_eq!((job.is("lift"), job.is("pan")), ("floor", "on"));
    assert!(job.after("observe pan=off").try_one("action lower").is_ok(), "one of two would change");
}
