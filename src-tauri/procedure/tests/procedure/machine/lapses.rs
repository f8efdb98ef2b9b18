//! What follows by itself, and what no longer holds after it.

use panside_procedure::{Blocked, Shown};
use serde_json::json;

use crate::bay::{choice, one_phase, pan_job, sign_off, signature, step, up_to};
use crate::support::Draft;

#[test]
fn a_permit_lapses_and_undoes_nothing() {
    let job = pan_job().job().after(&up_to("drain")).after("action lower");
    assert!(!job.signed("clear"));
    assert_eq!(job.shown("shake"), Shown::Done, "a permit closes work and undoes none");
    let job = job.after("action raise; action set_locks");
    assert_eq!(
        job.blocked("begin drain"),
        Blocked::Permit(job.sign_ix("clear")),
        "it does not come back by itself"
    );
    assert!(job.after("sign clear").try_one("begin drain").is_ok());
}

#[test]
fn a_signature_is_renewed_only_where_it_holds() {
    let job = pan_job().job().after(&up_to("shake"));
    let clear = job.sign_ix("clear");
    assert_eq!(job.blocked("sign clear"), Blocked::NotNow, "its step is not worked");
    let signed = job.after("do shake");
    assert_eq!(signed.blocked("sign clear"), Blocked::NotNow, "it is valid");
    let lowered = signed.after("action lower");
    assert_eq!(lowered.blocked("sign clear"), Blocked::Sign(clear));
    assert!(lowered.after("action raise; action set_locks; sign clear").signed("clear"));
}

#[test]
fn an_attest_that_lapses_makes_its_step_lapsed_until_it_is_signed_again() {
    let attest = sign_off("closed", "attest", "pan = on");
    let closing =
        json!({"makes": {"drain_plug": "in"}, "takes_off": {"washer": 1}, "entries": [signature("closed")]});
    let job = one_phase(json!([step("close", "under", closing)]))
        .add("", "sign_offs", attest)
        .add("", "items", json!({"id": "washer", "name": "washers", "count": 2, "reuse": "never"}))
        .job()
        .after("do close");
    assert_eq!(job.shown("close"), Shown::Done);
    let lapsed = job.after("observe pan=off");
    assert_eq!(lapsed.shown("close"), Shown::Lapsed);
    let signed = lapsed.after("observe pan=on; sign closed");
    assert_eq!(signed.shown("close"), Shown::Done);
    assert_eq!(signed.off("washer"), 1, "signing again moves no items");
}

#[test]
fn signing_again_makes_nothing() {
    let closing = json!({"makes": {"drain_plug": "out"}, "entries": [signature("seen")]});
    let opening = json!({"makes": {"drain_plug": "in"}});
    let job = one_phase(json!([step("open", "under", closing), step("close", "under", opening)]))
        .add("", "sign_offs", sign_off("seen", "attest", "pan = on"))
        .job()
        .after("do open; do close; observe pan=off; observe pan=on; sign seen");
    assert_eq!(job.is("drain_plug"), "in");
}

#[test]
fn knowledge_lapses_when_what_it_rests_on_is_gone() {
    let job = pan_job().job().after(&up_to("drain"));
    assert_eq!(job.is("level"), "low");
    assert_eq!(job.after("do drain").is("level"), "unknown");
    assert_eq!(job.after("observe fluid=drained").is("level"), "unknown");
    let back = job.after("observe fluid=drained; observe fluid=filled");
    assert_eq!(back.is("level"), "unknown", "it is read again, it does not come back");
}

#[test]
fn lapses_go_on_until_nothing_changes() {
    // Each rests on the next one, and stands before it in the file.
    let asked = choice(
        "asked",
        &["good", "bad"],
        json!({"good": {"sets": {"a": "yes", "b": "yes", "c": "yes"}}, "bad": {}}),
    );
    let job = one_phase(json!([step("look", "bench", json!({"entries": [asked, signature("seen")]}))]))
        .add("", "gates", json!({"id": "a", "classes": ["yes"], "holds_while": "b = yes"}))
        .add("", "gates", json!({"id": "b", "classes": ["yes"], "holds_while": "c = yes"}))
        .add("", "gates", json!({"id": "c", "classes": ["yes"], "holds_while": "pan = on"}))
        .add("", "sign_offs", sign_off("seen", "attest", "a = yes"))
        .job()
        .after("do look asked=good");
    assert!(job.signed("seen"));
    let later = job.after("observe pan=off");
    assert_eq!((later.is("a"), later.is("b"), later.is("c")), ("unknown", "unknown", "unknown"));
    assert_eq!(later.shown("look"), Shown::Lapsed);
}

fn with_chain() -> Draft {
    let drip = |id: &str| json!({"id": id, "values": ["no", "yes"]});
    one_phase(json!([step(
        "open",
        "under",
        json!({"makes": {"drain_plug": "out"}, "sets": {"found": "good"}})
    )]))
    .add("", "conditions", drip("drips"))
    .add("", "conditions", drip("puddle"))
    // The second of the two starts the first.
    .add("", "follows", json!({"when": "drips = yes", "makes": {"puddle": "yes"}}))
    .add("", "follows", json!({"when": "drain_plug = out", "makes": {"drips": "yes"}}))
}

#[test]
fn what_physics_makes_goes_on_until_nothing_changes() {
    let job = with_chain().job();
    let opened = job.after("do open");
    assert_eq!((opened.is("drips"), opened.is("puddle")), ("yes", "yes"));
    let seen = job.after("observe drain_plug=out");
    assert_eq!(seen.is("puddle"), "yes", "after any action, an observation too");
    let wiped = opened.after("observe puddle=no");
    assert_eq!(wiped.is("puddle"), "yes", "while it drips the puddle is there again");
}

#[test]
fn lapses_are_judged_after_what_physics_makes() {
    let draft = with_chain().set("found", "holds_while", json!("puddle = no"));
    assert_eq!(draft.job().after("do open").is("found"), "unknown");
    assert_eq!(with_chain().job().after("do open").is("found"), "good");
}

#[test]
fn physics_can_take_knowledge_away() {
    let draft =
        with_chain().add("", "follows", json!({"when": "puddle = yes", "sets": {"found": "unknown"}}));
    assert_eq!(draft.job().after("do open").is("found"), "unknown", "even what the same action has set");
}

#[test]
fn physics_has_been_at_work_before_the_job_starts() {
    let draft = with_chain().set("drain_plug", "start", json!(["out"]));
    let job = draft.job();
    assert_eq!((job.is("drips"), job.is("puddle")), ("yes", "yes"));
}
