//! Voiding what was entered, and correcting it without doing the work again.

use panside_procedure::{Blocked, Shown};
use serde_json::{Value, json};

use crate::bay::{choice, one_phase, pan_job, sign_off, signature, step, up_to};
use crate::support::Draft;

fn asks() -> Value {
    choice(
        "asked",
        &["good", "bad"],
        json!({"good": {"sets": {"found": "good"}}, "bad": {"sets": {"found": "bad"}}}),
    )
}

fn asking(id: &str) -> Value {
    step(id, "bench", json!({"entries": [asks()]}))
}

#[test]
fn a_void_takes_the_entries_and_leaves_the_vehicle() {
    let job = pan_job().job().after(&up_to("fill"));
    let voided = job.after("void pan_on; void pan_off");
    assert_eq!((voided.shown("pan_on"), voided.shown("pan_off")), (Shown::Voided, Shown::Voided));
    assert_eq!((voided.is("pan"), voided.is("fluid")), ("on", "drained"), "conditions stay");
    assert_eq!((voided.off("bolts"), voided.off("gasket")), (0, 0), "items stay");
    let off = pan_job().job().after(&up_to("pan_on")).after("void pan_off");
    assert_eq!((off.is("pan"), off.off("bolts")), ("off", 4));
    assert!(!voided.signed("torqued"), "its signature has lapsed");
}

#[test]
fn only_what_is_worked_and_not_in_progress_is_voided() {
    let job = pan_job().job();
    assert_eq!(job.blocked("void read_level"), Blocked::NotNow);
    let begun = job.after("action start; begin read_level");
    assert_eq!(begun.blocked("void read_level"), Blocked::NotNow);
    let again = begun.after("done read_level; begin read_level");
    assert_eq!(again.blocked("void read_level"), Blocked::Stands(again.step("read_level")));
    assert_eq!(
        job.after("action start; do read_level; void read_level").blocked("void read_level"),
        Blocked::NotNow
    );
}

#[test]
fn what_a_voided_step_told_is_unknown_unless_a_later_one_told_it_too() {
    let job = one_phase(json!([asking("first"), asking("second")])).job();
    assert_eq!(job.after("do first asked=bad; void first").is("found"), "unknown");
    let both = job.after("do first asked=bad; do second asked=good");
    assert_eq!(both.after("void first").is("found"), "good", "the later one still says so");
    assert_eq!(both.after("void second").is("found"), "unknown", "the earlier one is not asked again");
    assert_eq!(both.after("void second; correct second asked=bad").is("found"), "bad");
    let second_voided = both.after("void second; void first");
    assert_eq!(second_voided.is("found"), "unknown");
}

#[test]
fn whatever_builds_on_a_voided_step_is_voided_with_it_however_far() {
    let steps = json!([
        asking("read"),
        step("judge", "bench", json!({"relies_on": ["read"], "entries": [signature("judged")]})),
        step("write", "bench", json!({"relies_on": ["judge"]})),
        step("sweep", "bench", json!({"after": ["write"]})),
    ]);
    let draft = one_phase(steps).add("", "sign_offs", sign_off("judged", "attest", "true"));
    let job = draft.job().after("do read; do judge; do write; do sweep; void read");
    for step in ["read", "judge", "write"] {
        assert_eq!(job.shown(step), Shown::Voided, "{step}");
    }
    assert_eq!(job.shown("sweep"), Shown::Done, "after is not relies_on");
    assert!(!job.signed("judged"));
    let middle = draft.job().after("do read; do judge; do write; void judge");
    assert_eq!((middle.shown("read"), middle.shown("write")), (Shown::Done, Shown::Voided));
    let not_worked = draft.job().after("do read; do judge; void read");
    assert_eq!(not_worked.shown("write"), Shown::Open, "what is not worked cannot be voided");
}

#[test]
fn a_step_is_not_voided_under_the_hands_that_build_on_it() {
    let steps =
        json!([asking("read"), step("judge", "bench", json!({"relies_on": ["read"], "again": "true"}))]);
    let job = one_phase(steps).job().after("do read; do judge; begin judge");
    assert_eq!(job.blocked("void read"), Blocked::Stands(job.step("judge")));
}

#[test]
fn a_voided_step_is_corrected_and_not_begun_again() {
    let job = pan_job().job().after(&up_to("drain")).after("void decide");
    assert_eq!(job.is("verdict"), "unknown");
    assert_eq!(job.blocked("begin decide"), Blocked::NotNow);
    let right = job.after("correct decide answer=leak");
    assert_eq!((right.is("verdict"), right.shown("decide")), ("leak", Shown::Done));
    assert_eq!(right.blocked("correct decide answer=leak"), Blocked::NotNow, "only what is voided");
}

#[test]
fn when_corrected_nothing_is_needed_and_nobody_is_anywhere() {
    let job = pan_job().job().after(&up_to("pan_on")).after("void drain");
    let moved = job.after("observe lift=floor");
    let right = moved.after("correct drain");
    assert_eq!((right.shown("drain"), right.is("fluid")), (Shown::Done, "drained"));
    assert!(
        right.procedure.machine.dangers_now(&right.state).iter().all(|danger| danger.0 != 0),
        "nobody is under it"
    );
    let pieces = pan_job().job().after(&up_to("pan_on")).after("void pan_off; correct pan_off");
    assert_eq!(pieces.off("bolts"), 4, "pieces are not counted twice");
}

#[test]
fn when_corrected_only_knowledge_that_does_not_age_is_set() {
    let job = pan_job().job().after("action start; do read_level stick=in; void read_level");
    let right = job.after("correct read_level stick=in");
    assert_eq!(
        (right.is("level"), right.shown("read_level")),
        ("unknown", Shown::Done),
        "fresh comes from doing it"
    );
    assert_eq!(right.after("do read_level stick=in").is("level"), "in_band");
}

#[test]
fn when_corrected_conditions_stay_as_they_are() {
    let job = one_phase(json!([
        step("open", "under", json!({"makes": {"drain_plug": "out"}})),
        step("close", "under", json!({"makes": {"drain_plug": "in"}}))
    ]))
    .job()
    .after("do open; do close; void open; correct open");
    assert_eq!(job.is("drain_plug"), "in");
}

#[test]
fn when_corrected_it_is_signed_where_the_signature_holds() {
    let job = pan_job().job().after(&up_to("drain")).after("void shake");
    assert!(job.after("correct shake").signed("clear"));
    let down = job.after("action lower; correct shake");
    assert!(!down.signed("clear"));
    assert_eq!(down.shown("shake"), Shown::Done);
}

#[test]
fn what_a_step_builds_on_is_corrected_first() {
    let job = pan_job().job().after(&up_to("shake")).after("void read_level");
    assert_eq!(job.blocked("correct decide answer=leak"), Blocked::After(job.step("read_level")));
    assert!(job.after("correct read_level").try_one("correct decide answer=leak").is_ok());
}

#[test]
fn a_voided_step_lets_the_phase_go_on_but_not_what_comes_after_it() {
    let draft = || -> Draft { pan_job().set("drain", "after", json!(["decide"])) };
    let job = draft().job().after(&up_to("drain")).after("void decide");
    assert_eq!(job.blocked("begin drain"), Blocked::After(job.step("decide")));
    let job = pan_job().job().after(&up_to("drain")).after("void decide");
    assert!(job.try_one("begin drain").is_ok());
}
