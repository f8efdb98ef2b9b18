//! Begin, leave, done, and doing a step again.

use std::collections::BTreeMap;

use panside_procedure::{Blocked, NoOutcome, Shown};
use serde_json::json;

use crate::bay::{choice, one_phase, pan_job, sign_off, signature, step, up_to};

#[test]
fn whoever_begins_a_step_is_in_it_and_has_not_worked_it() {
    let mut job = pan_job().job();
    job.run(&up_to("drain")).run("begin drain");
    assert_eq!(job.shown("drain"), Shown::InProgress);
    assert!(!job.procedure.machine.is_worked(&job.state, job.step("drain")));
    assert_eq!(job.is("fluid"), "filled", "nothing is made by beginning");
}

#[test]
fn a_step_cannot_begin_before_what_it_needs() {
    let job = pan_job().job();
    assert_eq!(job.blocked("begin read_level"), Blocked::Needs);
    assert!(job.after("action start").try_one("begin read_level").is_ok());
}

#[test]
fn a_step_in_progress_or_worked_cannot_begin() {
    let job = pan_job().job().after(&up_to("pan_off"));
    assert_eq!(job.blocked("begin drain"), Blocked::NotNow, "worked, and no again");
    assert_eq!(job.after("begin pan_off").blocked("begin pan_off"), Blocked::NotNow);
}

#[test]
fn one_person_is_in_one_step() {
    let draft = one_phase(json!([
        step("a", "bench", json!({})),
        step("b", "bench", json!({})),
        step("c", "bench", json!({}))
    ]));
    let alone = draft.job().after("begin a");
    assert_eq!(alone.blocked("begin b"), Blocked::Busy(alone.step("a")));
    let two = draft.set("", "crew", json!(2)).job().after("begin a; begin b");
    assert_eq!(two.blocked("begin c"), Blocked::Busy(two.step("a")));
    assert!(two.after("done a").try_one("begin c").is_ok());
    assert_eq!(two.after("leave b; begin c").shown("c"), Shown::InProgress);
}

#[test]
fn leaving_clears_the_person_and_keeps_the_work_as_it_was() {
    let draft = one_phase(json!([step(
        "loosen",
        "under",
        json!({
        "again": "true", "on_begin": {"drain_plug": "out"}, "on_leave": {"pan": "off"}, "makes": {"drain_plug": "in"}})
    )]));
    let job = draft.job();
    assert_eq!(job.blocked("leave loosen"), Blocked::NotNow);
    let begun = job.after("begin loosen");
    assert_eq!((begun.is("drain_plug"), begun.is("pan")), ("out", "on"), "on_begin is assigned");
    let left = begun.after("leave loosen");
    assert_eq!((left.is("drain_plug"), left.is("pan")), ("out", "off"), "on_leave is assigned, makes is not");
    assert_eq!(left.shown("loosen"), Shown::Open);
    let again = job.after("do loosen; begin loosen; leave loosen");
    assert_eq!(again.shown("loosen"), Shown::Done, "it was worked before");
}

#[test]
fn work_under_the_vehicle_puts_a_person_there_while_it_is_begun() {
    let job = pan_job().job().after(&up_to("drain"));
    let crush = |job: &crate::support::Job| {
        job.procedure.machine.dangers_now(&job.state).iter().any(|danger| danger.0 == 0)
    };
    let under = job.after("begin drain; observe lift=floor");
    assert!(crush(&under));
    assert!(!crush(&under.after("leave drain")));
    assert!(!crush(&job.after("do drain; observe lift=floor")), "the hands are gone when it is done");
}

#[test]
fn what_a_step_needs_must_still_hold_when_it_is_done() {
    let job = pan_job().job().after(&up_to("drain")).after("begin drain; observe lift=raised");
    assert_eq!(job.blocked("done drain"), Blocked::While);
    assert!(job.after("observe lift=on_locks; sign clear").try_one("done drain").is_ok());
}

#[test]
fn while_replaces_needs_until_it_is_done() {
    let lower_after = step("jack", "bench", json!({"needs": "lift = on_locks", "while": "drain_plug = in"}));
    let job = one_phase(json!([lower_after])).job();
    let begun = job.after("action raise; begin jack; action lower");
    assert!(begun.try_one("done jack").is_ok(), "needs is asked at the beginning only");
    assert_eq!(begun.after("observe drain_plug=out").blocked("done jack"), Blocked::While);
}

#[test]
fn a_permit_is_needed_to_begin_and_until_it_is_done() {
    let draft = one_phase(json!([
        step("shake", "bench", json!({"needs": "lift = on_locks", "entries": [signature("clear")]})),
        step("look", "under", json!({"permits": ["clear"]})),
    ]))
    .add("", "sign_offs", sign_off("clear", "permit", "lift = on_locks"));
    let job = draft.job();
    let clear = job.sign_ix("clear");
    assert_eq!(job.blocked("begin look"), Blocked::Permit(clear));
    let begun = job.after("action raise; do shake; begin look");
    assert!(begun.try_one("done look").is_ok());
    assert_eq!(begun.after("observe lift=floor").blocked("done look"), Blocked::Permit(clear));
}

#[test]
fn done_sets_gates_makes_conditions_and_moves_items_in_one_go() {
    let mut job = pan_job().job();
    job.run(&up_to("decide"));
    assert_eq!((job.is("level"), job.is("verdict")), ("low", "unknown"));
    job.run("do decide answer=leak");
    assert_eq!(job.is("verdict"), "leak");
    let job = pan_job().job().after(&up_to("pan_on"));
    assert_eq!((job.is("pan"), job.off("bolts"), job.off("gasket")), ("off", 4, 1));
    let job = job.after("do pan_on");
    assert_eq!((job.is("pan"), job.off("bolts"), job.off("gasket")), ("on", 0, 0));
    assert!(job.signed("torqued"));
    assert_eq!(job.shown("pan_on"), Shown::Done);
}

#[test]
fn done_wants_every_required_entry_with_a_class_it_can_have() {
    let asked = choice("asked", &["good", "bad"], json!({"good": {}, "bad": {"not_yet": true}}));
    let mut remark = choice("remark", &["loud", "silent"], json!({"loud": {}, "silent": {}}));
    remark["optional"] = json!(true);
    let procedure =
        one_phase(json!([step("look", "bench", json!({"entries": [asked, remark]}))])).procedure();
    let step = procedure.names.step("look").unwrap();
    let outcome = |classes: &[(&str, &str)]| {
        let classes: BTreeMap<String, String> =
            classes.iter().map(|(entry, class)| ((*entry).to_owned(), (*class).to_owned())).collect();
        procedure.outcome(step, &classes)
    };
    assert!(outcome(&[("asked", "good")]).is_ok(), "what is optional can be left out");
    assert_eq!(outcome(&[]), Err(NoOutcome::Missing("asked".into())));
    assert_eq!(outcome(&[("asked", "bad")]), Err(NoOutcome::NotYet("asked".into())));
    assert_eq!(outcome(&[("asked", "ugly")]), Err(NoOutcome::NoClass("asked".into(), "ugly".into())));
    assert_eq!(
        outcome(&[("asked", "good"), ("remark", "ugly")]),
        Err(NoOutcome::NoClass("remark".into(), "ugly".into()))
    );
}

#[test]
fn a_signature_at_done_is_judged_on_the_outcome() {
    let closing =
        step("close", "under", json!({"makes": {"drain_plug": "in"}, "entries": [signature("closed")]}));
    let draft = one_phase(json!([step("open", "under", json!({"makes": {"drain_plug": "out"}})), closing]));
    let says_in = draft.clone().add("", "sign_offs", sign_off("closed", "attest", "drain_plug = in"));
    let job = says_in.job().after("do open; do close");
    assert!(job.signed("closed"), "it was out before, and what counts is what the step made");
    let says_out = draft.add("", "sign_offs", sign_off("closed", "attest", "drain_plug = out"));
    let job = says_out.job().after("do open; begin close");
    assert_eq!(job.blocked("done close"), Blocked::Sign(job.sign_ix("closed")));
    assert_eq!((job.is("drain_plug"), job.shown("close")), ("out", Shown::InProgress));
}

#[test]
fn a_redo_sets_makes_and_signs_again_and_never_moves_items() {
    let asked = choice(
        "asked",
        &["good", "bad"],
        json!({"good": {"sets": {"found": "good"}}, "bad": {"sets": {"found": "bad"}}}),
    );
    let draft = one_phase(json!([step(
        "strap",
        "under",
        json!({
        "again": "known(found)", "takes_off": {"straps": 1}, "makes": {"drain_plug": "out"},
        "entries": [asked, signature("strapped")]})
    )]))
    .add("", "items", json!({"id": "straps", "name": "tie straps", "count": 3, "reuse": "never"}))
    .add("", "sign_offs", sign_off("strapped", "attest", "pan = on"));
    let once = draft.job().after("do strap asked=bad");
    assert_eq!((once.is("found"), once.off("straps")), ("bad", 1));
    let twice = once.after("observe pan=off; observe pan=on; begin strap; done strap asked=good");
    assert_eq!((twice.is("found"), twice.off("straps"), twice.is("drain_plug")), ("good", 1, "out"));
    assert!(!once.after("observe pan=off").signed("strapped"));
    assert!(twice.signed("strapped"));
}

#[test]
fn a_redo_waits_for_again_and_for_what_the_step_needs() {
    let job = pan_job().job().after(&up_to("decide"));
    assert_eq!(job.blocked("begin read_level"), Blocked::Needs, "the engine is off");
    assert!(job.after("action start").try_one("begin read_level").is_ok());
    let job = pan_job().set("read_level", "again", json!("level = high")).job().after(&up_to("decide"));
    assert_eq!(job.after("action start").blocked("begin read_level"), Blocked::NotNow, "the level is low");
}
