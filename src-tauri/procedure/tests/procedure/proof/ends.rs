//! Can finish, can stop, nothing left.

use panside_procedure::proof::{Property, Verdict};
use serde_json::json;

use super::{PLAIN, fails_only, is_proved, proof, run};
use crate::bay::{danger, pan_job, sign_off, signature, step};
use crate::said::said;

#[test]
fn a_job_that_an_answer_leads_into_a_dead_end_is_found() {
    let done = "tray_clear and signed(torqued) and level = in_band and lift = floor and engine = off and worked(read_again)";
    let draft = pan_job().set("", "done_when", json!(format!("{done} and verdict = service")));
    let finding = fails_only(&draft, Property::CanFinish);
    assert_eq!(said(&finding.what), "from here no allowed order of steps reaches the end of the job");
    assert_eq!(
        run(&finding),
        [
            "vehicle action start",
            "begin step read_level",
            "done step read_level",
            "begin step decide",
            "done step decide"
        ]
    );
    assert!(said(&finding.run[4]).ends_with("(answer: leak)"), "{:?}", finding.run[4]);
}

#[test]
fn skipping_is_no_way_to_finish() {
    // With the level high and the verdict leak the dye can only be skipped.
    let draft =
        pan_job().set("dye", "needs", json!("engine = off and level = low")).without("read_level", "again");
    let finding = fails_only(&draft, Property::CanFinish);
    assert!(finding.run.iter().any(|action| said(action).ends_with("(answer: leak)")), "{:?}", finding.run);
}

#[test]
fn a_class_that_ends_the_job_needs_no_way_to_the_end() {
    // The pan job has one, and is proved; without the end it is a dead end.
    is_proved(&pan_job());
    let draft = pan_job().set("answer", "classes/refuse/ends", json!(null)).set(
        "shake",
        "needs",
        json!("safe_under and verdict in {service, leak}"),
    );
    fails_only(&draft, Property::CanFinish);
}

#[test]
fn a_stop_that_an_answer_makes_impossible_is_found() {
    let leave =
        "lift in {floor, on_locks} and engine = off and (not known(verdict) or verdict in {service, leak})";
    let finding = fails_only(&pan_job().set("", "safe_to_leave", json!(leave)), Property::CanStop);
    assert_eq!(said(&finding.what), "from here a safe stop cannot be reached, whatever the technician does");
    assert!(said(finding.run.last().unwrap()).ends_with("(answer: refuse)"), "{:?}", finding.run);
    assert_eq!(finding.run.len(), 5);
}

#[test]
fn a_stop_that_is_reached_by_working_on_is_one() {
    let draft = pan_job().set(
        "",
        "safe_to_leave",
        json!("lift = floor and engine = off and fluid = filled and pan = on"),
    );
    let proof = proof(&draft, PLAIN);
    assert_eq!((proof.verdict, proof.findings), (Verdict::Proved, Vec::new()));
}

#[test]
fn a_stop_cannot_hang_on_knowledge_that_grows_too_old_between_two_actions() {
    let leave = "lift in {floor, on_locks} and engine = off and (not worked(read_again) or known(level))";
    let fresh = pan_job().set("", "safe_to_leave", json!(leave));
    fails_only(&fresh, Property::CanStop);
    is_proved(&fresh.without("level", "fresh_for"));
}

#[test]
fn a_forgotten_gasket_is_found() {
    let done = "signed(torqued) and level = in_band and lift = floor and engine = off and worked(read_again)";
    let draft = pan_job().set("", "done_when", json!(done)).set("pan_on", "puts_back", json!({"bolts": 4}));
    let finding = fails_only(&draft, Property::NothingLeft);
    assert_eq!(said(&finding.what), "the job can be finished with 1 of \"gasket\" off");
    assert_eq!(run(&finding).last().unwrap(), "finish the job");
}

#[test]
fn an_attest_that_was_voided_is_found_when_the_end_does_not_ask_for_it() {
    let done = "tray_clear and level = in_band and lift = floor and engine = off and worked(read_again)";
    let draft = pan_job().set("", "done_when", json!(done));
    let finding = fails_only(&draft, Property::NothingLeft);
    assert_eq!(said(&finding.what), "the job can be finished while the attest \"torqued\" is not valid");
    assert!(run(&finding).contains(&"void step pan_on".to_owned()), "{:?}", finding.run);
}

#[test]
fn an_attest_that_was_never_given_is_found() {
    let draft = pan_job().set("", "done_when", json!("tray_clear"));
    let finding = proof(&draft, PLAIN).findings.remove(0);
    assert_eq!(finding.property, Property::NothingLeft);
    assert_eq!(run(&finding), ["finish the job"]);
}

#[test]
fn an_attest_of_a_step_that_is_not_in_the_job_is_not_asked_for() {
    let draft = pan_job().add("", "sign_offs", sign_off("dyed", "attest", "true")).add(
        "dye",
        "entries",
        signature("dyed"),
    );
    assert_eq!(proof(&draft, PLAIN).findings, []);
    // Nor where the step has left the job by a void of what had called for it.
    let done = "tray_clear and signed(torqued) and level = in_band and lift = floor and engine = off and worked(read_again) and (verdict = service or signed(dyed))";
    is_proved(&draft.without("dye", "may_skip").set("dye", "relies_on", json!(["decide"])).set(
        "",
        "done_when",
        json!(done),
    ));
}

#[test]
fn pieces_counted_twice_are_found() {
    let says = "pieces are counted off that are off already, or put back that are on";
    let back = fails_only(&pan_job().set("fill", "puts_back", json!({"bolts": 1})), Property::NothingLeft);
    assert_eq!((said(&back.what).as_str(), run(&back).last().unwrap().as_str()), (says, "done step fill"));
    let off = pan_job().set("drain", "takes_off", json!({"bolts": 1}));
    let off = fails_only(&off, Property::NothingLeft);
    assert_eq!((said(&off.what).as_str(), run(&off).last().unwrap().as_str()), (says, "done step pan_off"));
}

#[test]
fn what_makes_it_safe_to_leave_is_not_lost_by_waiting() {
    let rinse = json!({"after": ["decide"], "on": "verdict = refused", "when_ending": true,
                       "needs": "level in {low, in_band, high}"});
    let draft = pan_job().add("look", "steps", step("rinse", "engine_bay", rinse));
    let finding = fails_only(&draft, Property::CanStop);
    let says =
        "the job is ending, and step \"rinse\" can no longer be done since a reading has grown too old";
    assert_eq!(
        (said(&finding.what).as_str(), run(&finding).last().unwrap().as_str()),
        (says, "level grows too old")
    );
    is_proved(&draft.set("read_level", "when_ending", json!(true)));
}

#[test]
fn a_job_that_may_not_be_left_as_it_is_is_found_at_its_end() {
    let left_up = danger("left_up", "leaving and lift = raised");
    let draft = pan_job().add("", "dangers", left_up);
    is_proved(&draft);
    let finding = fails_only(&draft.set("", "safe_to_leave", json!("engine = off")), Property::Safe);
    assert_eq!(run(&finding), ["vehicle action raise", "stop the job"]);
}

#[test]
fn a_step_that_nobody_has_worked_is_found_at_the_end() {
    let draft = pan_job().set(
        "",
        "done_when",
        json!("tray_clear and signed(torqued) and lift = floor and engine = off"),
    );
    let finding = fails_only(&draft, Property::NothingLeft);
    assert_eq!(said(&finding.what), "the job can be finished while step \"fill\" is not worked");
    is_proved(&draft.set(
        "",
        "done_when",
        json!("worked(fill) and worked(read_again) and tray_clear and signed(torqued)"),
    ));
}
