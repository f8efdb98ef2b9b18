//! All of it used: what never comes up is a mistake in the checklist.

use std::collections::BTreeMap;

use panside_procedure::proof::{Answer, Ask, Property};
use serde_json::json;

use super::{fails_only, is_proved, proof};
use crate::bay::{choice, danger, pan_job, sign_off, signature, step};
use crate::said::said;
use crate::support::Draft;

/// A void would allow to correct knowledge afterwards.
const NO_VOID: Ask = Ask { void: false, ..Ask::ALL };

fn unused(draft: &Draft) -> String {
    let finding = fails_only(draft, Property::AllUsed);
    assert!(finding.run.is_empty(), "no run is meant");
    said(&finding.what)
}

#[test]
fn a_step_that_can_never_begin_is_found() {
    let never = step("never", "bench", json!({"on": "verdict = service and verdict = leak"}));
    assert_eq!(unused(&pan_job().add("verify", "steps", never)), "step \"never\" can never be begun");
}

#[test]
fn a_vehicle_action_that_can_never_be_made_is_found() {
    let never = json!({"id": "drop", "title": "Drop", "needs": "lift = on_locks and lift = raised", "makes": {"lift": "floor"}});
    assert_eq!(
        unused(&pan_job().add("", "vehicle_actions", never)),
        "never possible: vehicle action drop \"Drop\""
    );
}

#[test]
fn a_class_that_can_never_come_in_is_found() {
    // The signature does not hold where the answer is bad, so that the step is never done with it.
    let classes = json!({"good": {"sets": {"seen": "good"}}, "bad": {"sets": {"seen": "bad"}}});
    let draft = pan_job()
        .add("", "gates", json!({"id": "seen", "classes": ["good", "bad"]}))
        .add("", "sign_offs", sign_off("fine", "attest", "seen = good"))
        .add("fill", "entries", choice("look", &["good", "bad"], classes))
        .add("fill", "entries", signature("fine"));
    let done = json!(
        "signed(fine) and tray_clear and signed(torqued) and level = in_band and lift = floor and engine = off and worked(read_again)"
    );
    let proof = proof(&draft.set("", "done_when", done), NO_VOID);
    assert_eq!(proof.findings.len(), 1, "{:#?}", proof.findings);
    assert_eq!(said(&proof.findings[0].what), "never possible: done step fill \"fill\" (look: bad)");
}

#[test]
fn a_permit_or_gate_that_can_never_lapse_is_found() {
    let always = json!("engine in {off, running}");
    assert_eq!(
        unused(&pan_job().set("clear", "holds_while", json!("lift = on_locks or engine in {off, running}"))),
        "permit \"clear\" can never lapse, though it says what it holds while"
    );
    assert_eq!(
        unused(&pan_job().set("verdict", "holds_while", always)),
        "gate \"verdict\" can never lapse, though it says what it holds while"
    );
}

#[test]
fn what_holds_always_by_its_own_words_need_not_lapse() {
    is_proved(&pan_job().set("verdict", "holds_while", json!("true")));
}

#[test]
fn a_gate_that_lapses_and_is_never_read_again_is_found() {
    let draft = pan_job().set("verdict", "holds_while", json!("fluid = filled"));
    let found = proof(&draft, NO_VOID);
    assert_eq!(found.findings.len(), 1, "{:#?}", found.findings);
    assert_eq!(said(&found.findings[0].what), "gate \"verdict\" can lapse and never be renewed");
}

#[test]
fn a_danger_that_never_comes_up_is_found() {
    for when in [
        "engine = running and engine = off",
        "doing.zone = under and doing.zone = bench",
        "moved = lower and lift = raised",
    ] {
        let what = unused(&pan_job().add("", "dangers", danger("nothing", when)));
        assert_eq!(
            what,
            "the danger \"nothing\" does not come up even when every rule is dropped: its predicate is probably wrong",
            "{when}"
        );
    }
}

#[test]
fn a_danger_that_a_rule_keeps_away_comes_up_once_rules_are_dropped() {
    let kept_away: [(&str, &str); 5] = [
        ("by needs", "doing.zone = under and engine = running"),
        ("by a vehicle action's needs", "lift = raised and engine = running"),
        ("by a permit", "doing.zone = under and not signed(clear)"),
        ("by after and phases", "worked(read_again) and doing.zone = cabin"),
        ("by while and stands", "moving = lower and doing.zone = under"),
    ];
    let cabin = || step("sit", "cabin", json!({}));
    for (how, when) in kept_away {
        is_proved(
            &pan_job().add("look", "steps", cabin()).add("", "dangers", danger("kept_away", when)).set(
                "",
                "title",
                json!(how),
            ),
        );
    }
}

#[test]
fn a_danger_of_a_vehicle_action_comes_up_though_it_does_not_read_what_the_vehicle_action_writes() {
    // The lift stands on the floor at the start, and a vehicle action that changes nothing is none.
    is_proved(&pan_job().set("open_pan_down", "when", json!("moving = lower and pan = off")));
}

#[test]
fn a_danger_comes_up_though_the_step_that_makes_it_signs_for_something_else() {
    let draft = pan_job().add("", "sign_offs", sign_off("wet", "permit", "lift = on_locks")).add(
        "drain",
        "entries",
        signature("wet"),
    );
    is_proved(&draft);
}

#[test]
fn what_comes_up_only_after_an_observation_is_used() {
    let wipe =
        step("wipe", "bench", json!({"needs": "puddle = yes", "makes": {"puddle": "no"}, "may_skip": true}));
    let draft = pan_job()
        .add("", "conditions", json!({"id": "puddle", "values": ["no", "yes"]}))
        .add("verify", "steps", wipe);
    is_proved(&draft);
    let without = proof(&draft, Ask { observe: false, ..Ask::default() });
    let answers: BTreeMap<Property, Answer> = without.properties.into_iter().collect();
    assert_eq!(answers[&Property::AllUsed], Answer::NotDecided, "without observations it is not asked");
}
