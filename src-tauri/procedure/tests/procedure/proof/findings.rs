//! What a finding says beside what is wrong: where it stands in the file, and what would close it.

use panside_procedure::proof::{Ask, Proof, Property, Verdict, suggest};
use serde_json::json;

use super::{PLAIN, is_proved, is_translated, proof};
use crate::bay::{choice, danger, pan_job, sign_off, signature};
use crate::said::said;
use crate::support::Draft;

fn with_suggestions(draft: &Draft) -> Proof {
    let procedure = draft.procedure();
    let mut found = proof(draft, Ask::default());
    suggest(&procedure, &mut found);
    is_translated(draft, &found);
    found
}

/// The line of a file on which a text stands for the nth time.
fn line_of(draft: &Draft, text: &str) -> usize {
    draft.text().lines().position(|line| line.contains(text)).map_or(0, |at| at + 1)
}

#[test]
fn a_finding_names_its_line_in_the_file() {
    let draft = pan_job().set("lower", "needs", json!("engine = off"));
    let found = proof(&draft, PLAIN);
    let finding = &found.findings[0];
    assert_eq!(finding.place.pointer, "/dangers/2/when");
    assert_eq!(finding.place.line, line_of(&draft, "moved = lower and pan = off"));
    assert!(finding.place.column > 1);
}

#[test]
fn the_condition_that_closes_a_danger_is_found_and_closes_it() {
    let draft = pan_job().set("lower", "needs", json!("engine = off"));
    let found = with_suggestions(&draft);
    let place = line_of(&draft, "\"needs\": \"engine = off\",");
    let fix = said(found.findings[0].fix.as_ref().unwrap());
    assert!(
        fix.starts_with("add \"and pan = on\" to \"needs\" of vehicle action \"lower\" (line "),
        "{fix}, {place}"
    );
    is_proved(&draft.set("lower", "needs", json!("engine = off and pan = on")));
}

#[test]
fn the_condition_that_a_step_lacks_is_found_and_closes_it() {
    let draft = pan_job().set("drain", "needs", json!("engine = off")).set("drain", "permits", json!([]));
    let found = with_suggestions(&draft);
    assert_eq!(found.findings[0].property, Property::Safe);
    let fix = said(found.findings[0].fix.as_ref().unwrap());
    assert!(fix.starts_with("add \"and lift = on_locks\" to \"needs\" of step \"drain\""), "{fix}");
    is_proved(&draft.set("drain", "needs", json!("engine = off and lift = on_locks")));
}

#[test]
fn where_no_single_condition_closes_a_danger_it_says_so() {
    // Whatever is asked before draining, the danger is the draining itself, and the job cannot do without.
    let draft = pan_job().add("", "dangers", danger("wet", "fluid = drained and lift = on_locks"));
    let found = with_suggestions(&draft);
    let wet = found.findings.iter().find(|finding| said(&finding.what).starts_with("wet")).unwrap();
    assert_eq!(
        wet.fix.as_ref().map(said).as_deref(),
        Some("no single change to a predicate was found that closes it")
    );
}

#[test]
fn what_hurts_most_stands_first() {
    let mut draft = pan_job()
        .set("lower", "needs", json!("engine = off"))
        .set("drain", "needs", json!("engine = off"))
        .set("drain", "permits", json!([]))
        .add("", "gates", json!({"id": "seen", "classes": ["good"]}))
        .add("", "vehicle_actions", json!({"id": "drop", "title": "Drop", "needs": "lift = on_locks and lift = raised", "makes": {"lift": "floor"}}));
    draft = draft.set("open_pan_down", "signal", json!("warning"));
    let found = proof(&draft, Ask::default());
    let whats: Vec<String> =
        found.findings.iter().map(|finding| said(&finding.what)[..5].to_owned()).collect();
    assert_eq!(found.verdict, Verdict::Refuted);
    assert_eq!(whats[..2], ["crush", "open_"], "a danger before a warning");
    assert_eq!(found.findings.last().unwrap().property, Property::AllUsed, "what is only unused comes last");
}

fn odd(draft: &Draft) -> Vec<(String, String)> {
    let found = proof(draft, Ask::default());
    assert_eq!(found.verdict, Verdict::Proved, "{:#?}", found.findings);
    found.remarks.into_iter().map(|remark| (said(&remark.what), remark.place.pointer)).collect()
}

#[test]
fn the_pan_job_has_nothing_odd_in_it() {
    assert_eq!(odd(&pan_job()), []);
}

#[test]
fn what_is_odd_is_told_and_refutes_nothing() {
    let always =
        pan_job().set("switch_off", "needs", json!("lift = floor or lift = raised or lift = on_locks"));
    assert_eq!(
        odd(&always),
        [(
            "what vehicle action \"switch_off\" needs holds in every state that can be reached: it keeps nothing back"
                .to_owned(),
            "/vehicle_actions/4/needs".to_owned()
        )]
    );
    let lost =
        pan_job().add("", "items", json!({"id": "strap", "name": "strap", "count": 1, "reuse": "never"}));
    assert_eq!(odd(&lost)[0].0, "item \"strap\": no step takes it off or puts it back");
    let idle = choice(
        "colour",
        &["red", "brown"],
        json!({"red": {"sets": {"verdict": "leak"}}, "brown": {"sets": {"verdict": "leak"}}}),
    );
    assert_eq!(
        odd(&pan_job().add("fill", "entries", idle))[0].0,
        "entry \"colour\" of step \"fill\": every answer does the same"
    );
    let unread = choice(
        "look",
        &["good", "bad"],
        json!({"good": {"sets": {"seen": "good"}}, "bad": {"sets": {"seen": "bad"}}}),
    );
    let unread = pan_job()
        .add("", "gates", json!({"id": "seen", "classes": ["good", "bad"]}))
        .add("fill", "entries", unread);
    assert_eq!(odd(&unread)[0].0, "no predicate reads \"seen\"");
    let done = "signed(decided) and tray_clear and signed(torqued) and level = in_band and lift = floor and engine = off and worked(read_again)";
    let stands = pan_job()
        .add("", "sign_offs", sign_off("decided", "attest", "pan = on or pan = off"))
        .add("decide", "entries", signature("decided"))
        .set("", "done_when", json!(done));
    assert_eq!(odd(&stands)[0].0, "nothing makes attest \"decided\" lapse");
}
