//! A piece off that the checklist does not know forbids and never permits; where it would let a danger through, the
//! checklist is refuted.

use panside_procedure::Blocked;
use panside_procedure::machine::Unmet;
use panside_procedure::proof::{Ask, Property, Verdict};
use serde_json::{Value, json};

use super::{fails_only, is_proved, proof, run};
use crate::bay::{danger, pan_job, step, up_to};
use crate::said::said;
use crate::support::{Draft, Job};

/// The pan job with a road test at its end, and the danger of a piece left in the tray on the road.
fn road_test(needs: &str) -> Draft {
    let at_rest = "lift = floor and engine = off and pan = on";
    let road = json!({"after": ["read_again"], "needs": format!("{at_rest} and {needs}"), "tags": ["road"]});
    pan_job()
        .add("verify", "steps", step("road", "cabin", road))
        .add("", "dangers", danger("left_in_the_tray", "doing.tag = road and not tray_clear"))
        .set("", "done_when", json!("tray_clear and signed(torqued) and level = in_band and lift = floor and engine = off and worked(read_again) and worked(road)"))
}

fn why(job: &Job, said: &str) -> Vec<Unmet> {
    job.procedure.machine.explain(&job.state, job.action(said)).map(|(_, unmet)| unmet).unwrap_or_default()
}

#[test]
fn a_step_that_counts_items_by_itself_lets_a_piece_through_and_is_refuted() {
    let finding = fails_only(&road_test("empty(bolts) = 0 and empty(gasket) = 0"), Property::Safe);
    assert_eq!(
        said(&finding.what),
        "left_in_the_tray: It is dangerous: left_in_the_tray. So it is where a piece is off that the checklist does not \
         know: a rule must ask for tray_clear, and not for each item."
    );
    assert_eq!(run(&finding).last().unwrap(), "begin step road");
    assert_eq!(finding.fix, None);
}

#[test]
fn a_step_that_asks_for_a_clear_tray_lets_no_piece_through() {
    is_proved(&road_test("tray_clear"));
}

#[test]
fn the_last_item_that_goes_back_does_not_hide_a_piece() {
    let lowers = json!({"takes_off": {"plug": 1}});
    let draft = |needs: &str| {
        pan_job()
            .add("", "items", json!({"id": "plug", "name": "plug", "count": 1, "reuse": "yes"}))
            .add("strip", "steps", step("plug_out", "bench", lowers.clone()))
            .add("verify", "steps", step("hand_over", "bench", json!({
                "after": ["read_again"], "needs": format!("lift = floor and engine = off and {needs}"),
                "puts_back": {"plug": 1}, "makes": {"vehicle": "outside"}})))
            .add("", "conditions", json!({"id": "vehicle", "values": ["inside", "outside"]}))
            .add("", "dangers", danger("left", "doing.zone = bench and vehicle = outside and not tray_clear"))
            .set("", "done_when", json!("tray_clear and signed(torqued) and level = in_band and lift = floor and engine = off and worked(read_again) and worked(hand_over)"))
    };
    let at_once = draft("empty(plug) = 1 and empty(bolts) = 0 and empty(gasket) = 0");
    let found = proof(&at_once, Ask { observe: false, ..Ask::default() });
    assert_eq!(found.verdict, Verdict::Refuted);
    let told = found.findings.iter().map(|finding| said(&finding.what)).collect::<Vec<_>>();
    assert!(
        told.iter().any(|told| told.starts_with("left: ") && told.contains("a piece is off")),
        "{told:?}"
    );
}

#[test]
fn a_checklist_has_as_many_states_with_pieces_as_without() {
    let states = |draft: &Draft| {
        proof(draft, Ask::default()).searches.iter().map(|one| one.states.found).sum::<usize>()
    };
    let [by_tray, by_items] = ["tray_clear", "empty(bolts) = 0 and empty(gasket) = 0"].map(road_test);
    assert_eq!(states(&by_tray), states(&by_items));
}

#[test]
fn while_a_piece_is_off_what_asks_for_a_clear_tray_and_the_end_are_shut() {
    let job = road_test("tray_clear").job().after(&up_to("finish"));
    let off = job.after("piece off");
    assert_eq!(off.blocked("begin road"), Blocked::Needs);
    assert_eq!(why(&off, "begin road"), [Unmet::PieceOff]);
    assert_eq!(off.after("piece back").after("begin road").state, job.after("begin road").state);
    assert_eq!(off.blocked("piece off"), Blocked::Same);
    let done = job.after("do road");
    assert_eq!(done.after("piece off").blocked("finish"), Blocked::PieceOff);
    assert_eq!(why(&done.after("piece off"), "finish"), [Unmet::PieceOff]);
    assert!(done.after("piece off; piece back").try_one("finish").is_ok());
    // The end asks for it even where `done_when` says nothing of the tray.
    let silent = pan_job().set("", "done_when", json!("worked(read_again)")).job().after(&up_to("finish"));
    assert_eq!(silent.after("piece off").blocked("finish"), Blocked::PieceOff);
    assert!(
        silent.after("piece off").try_one("stop").is_ok(),
        "a job may be stopped with pieces in the tray"
    );
}

#[test]
fn whoever_is_in_a_step_sees_the_danger_and_may_leave() {
    let job = road_test("tray_clear").job().after(&up_to("finish")).after("begin road; piece off");
    assert_eq!(job.procedure.machine.dangers_now(&job.state).iter().count(), 1);
    assert!(job.try_one("leave road").is_ok());
}

#[test]
fn a_rule_that_a_piece_would_fulfil_is_refused() {
    let says = "tray_clear can only be negated in dangers: a piece that the checklist does not know would permit something \
                here; write which item is off with empty(…) != 0";
    let refused = |draft: Draft, places: &[&str]| {
        let problems = draft.load().unwrap_err();
        let found: Vec<(&str, String)> =
            problems.0.iter().map(|problem| (problem.place.as_str(), said(&problem.what))).collect();
        for place in places {
            assert!(
                found.iter().any(|(at, what)| at.ends_with(place) && what.contains(says)),
                "{place}: {found:?}"
            );
        }
    };
    let not_clear: Value = json!("lift = floor and not tray_clear");
    refused(pan_job().set("drain", "needs", not_clear.clone()), &["/needs"]);
    refused(pan_job().set("drain", "while", not_clear.clone()), &["/while"]);
    refused(pan_job().set("read_level", "again", not_clear.clone()), &["/again"]);
    refused(pan_job().set("raise", "needs", not_clear.clone()), &["/needs"]);
    refused(pan_job().set("", "safe_to_leave", not_clear.clone()), &["/safe_to_leave"]);
    refused(pan_job().set("", "done_when", not_clear.clone()), &["/done_when"]);
    let by_term = pan_job()
        .set("", "terms", json!({"at_the_stick": "lift = floor and engine = running", "safe_under": "lift = on_locks and engine = off", "in_tray": "not tray_clear"}))
        .set("drain", "needs", json!("safe_under and in_tray"));
    refused(by_term, &["/needs"]);
}
