//! What a screen shows, told as work in a bay.

use std::collections::BTreeMap;

use panside_procedure::Shown;
use panside_procedure::format::{Piece, Role};

use super::*;
use crate::command::Command;
use crate::message::{as_said, limit_at_most, limit_stage, missing_entry, reading_above};
use crate::testing::{Bay, choice, clicked, degrees, figures, go_ahead, sign};

fn states(view: &JobView) -> BTreeMap<&str, Shown> {
    view.steps.iter().map(|step| (step.id.as_str(), step.shown)).collect()
}

#[test]
fn a_new_job_shows_what_is_open_what_waits_and_what_is_not_in_it() {
    let view = Bay::open().view();
    let shown = states(&view);
    assert_eq!(shown["identify"], Shown::Open);
    assert_eq!(shown["go_ahead"], Shown::Waiting);
    assert_eq!(shown["supporter"], Shown::NotInThisJob);
    assert_eq!(shown["look_again"], Shown::Undecided);
    assert_eq!((view.steps[0].number, view.demo, view.repair_order.as_str()), (1, true, "RO 1"));
    assert_eq!(view.over, Over::Going);
}

#[test]
fn a_vehicle_action_shows_what_it_would_make_lapse_or_why_it_is_refused() {
    let mut bay = Bay::open();
    bay.work_up_to("coil");
    let view = bay.view();
    let made = |id: &str| view.vehicle_actions.iter().find(|made| made.id == id).unwrap();
    assert_eq!(made("lower").refusal, None);
    assert_eq!(made("lower").lapses, ["on_locks"]);
    assert!(made("raise").refusal.is_some());
    assert_eq!(made("raise").lapses, Vec::<String>::new());
}

#[test]
fn a_step_names_the_moves_that_bring_what_it_lacks() {
    let mut bay = Bay::open();
    bay.work_up_to("coil");
    bay.vehicle_actions(&["lower"]);
    assert_eq!(bay.step("drain").helps, Vec::<String>::new(), "raising alone brings nothing that it needs");
    bay.vehicle_actions(&["raise"]);
    assert!(bay.step("drain").begin.is_some());
    assert_eq!(bay.step("drain").helps, ["set_locks"]);
    bay.vehicle_actions(&["set_locks"]);
    assert_eq!(bay.step("drain").helps, Vec::<String>::new(), "what it lacks now, no move brings");
}

#[test]
fn an_entry_names_the_answers_that_end_the_job() {
    let bay = Bay::open();
    let ends: Vec<_> =
        bay.view().steps.into_iter().flat_map(|step| step.entries).flat_map(|entry| entry.ends).collect();
    assert_eq!(ends, ["declined", "stop_and_call"]);
}

#[test]
fn a_step_in_progress_shows_its_entries_with_limits_values_and_what_is_missing() {
    let mut bay = Bay::open();
    bay.work_up_to("locks");
    bay.begin("probe").unwrap();
    let empty = bay.step("probe");
    assert_eq!(empty.entries[0].limits, [limit_at_most("48 °C", "touch limit")]);
    assert_eq!(empty.done.unwrap().unmet, [missing_entry("Exhaust temperature")]);
    bay.enter("probe", "exhaust", degrees("63")).unwrap();
    let hot = bay.step("probe");
    assert_eq!((hot.shown, hot.held), (Shown::InProgress, false));
    assert_eq!(hot.entries[0].said, [reading_above("63 °C", "48 °C", "touch limit")]);
    assert!(hot.entries[0].not_yet && hot.done.is_some());
    bay.enter("probe", "exhaust", degrees("47")).unwrap();
    assert_eq!(bay.step("probe").done, None);
}

#[test]
fn a_step_that_only_lacks_its_signature_is_held() {
    let mut bay = Bay::open();
    bay.work_up_to("verdict");
    bay.begin("pan_up").unwrap();
    assert!(!bay.step("pan_up").held);
    bay.enter("pan_up", "torque", clicked()).unwrap();
    let held = bay.step("pan_up");
    assert!(held.held);
    assert_eq!(held.signs, ["pan_torqued"]);
    // The fixture's stages are 4 and 9 N·m with 10 %.
    assert_eq!(held.entries[0].limits[1], limit_stage(2_usize, "9 N·m", "8.1 N·m", "9.9 N·m"));
}

#[test]
fn what_a_torque_asks_for_stands_as_numbers_with_their_units() {
    let (procedure, specs) = figures();
    let amount = |value: &str, unit: &str| Amount { value: value.into(), unit: unit.into() };
    let view = Bay::with(procedure, specs).view();
    let step = view.steps.iter().find(|step| step.id == "torque").unwrap();
    let asked = |id: &str| step.entries.iter().find(|entry| entry.id == id).unwrap().torque.clone().unwrap();
    // The fixture's sheet: 9 N·m each, one of them with 2 fasteners turned by 90 ° after it.
    assert_eq!(asked("bolts"), TorqueView { stages: vec![amount("9", "N·m")], angle: None });
    let angle = Some(AngleView { by: amount("90", "°"), fasteners: 2 });
    assert_eq!(asked("turned"), TorqueView { stages: vec![amount("9", "N·m")], angle });
    let none = view.steps.iter().flat_map(|step| &step.entries).find(|entry| entry.torque.is_none());
    assert!(none.is_some(), "only a torque has it");
}

#[test]
fn what_a_meter_shows_for_too_much_is_told_at_resistances_only() {
    let (procedure, specs) = figures();
    let view = Bay::with(procedure, specs).view();
    for entry in view.steps.iter().flat_map(|step| &step.entries) {
        let resistance = match &entry.ask {
            Ask::Coil(_) | Ask::Coils(_) => true,
            Ask::Reading(asked) => asked.unit == "Ω",
            _ => false,
        };
        assert_eq!(entry.overload.first().map(String::as_str), resistance.then_some("OL"), "{}", entry.id);
    }
}

#[test]
fn a_condition_has_each_of_its_values_in_words() {
    let lift = Bay::open().view().conditions.into_iter().find(|condition| condition.id == "lift").unwrap();
    let values = lift.values.iter().map(|one| (one.value.as_str(), one.says.as_str()));
    let all = [("floor", "on the floor"), ("raised", "raised"), ("on_locks", "on the locks")];
    assert_eq!(values.collect::<Vec<_>>(), all);
}

#[test]
fn a_step_whose_permit_lapsed_in_progress_says_so() {
    let mut bay = Bay::open();
    bay.work_up_to("locks");
    bay.begin("coil").unwrap();
    bay.must(Command::Observe {
        condition: "lift".into(),
        value: "raised".into(),
        reason: "the lock gave way".into(),
    });
    let refusal = bay.step("coil").done.unwrap();
    assert_eq!(refusal.message.id, "refused-while");
    assert_eq!(bay.view().dangers.len(), 1);
}

#[test]
fn the_worst_danger_stands_first_whatever_the_checklist_names_first() {
    let mut bay = Bay::open();
    for (condition, value) in [("pan", "off"), ("fluid", "drained"), ("engine", "running")] {
        bay.must(Command::Observe {
            condition: condition.into(),
            value: value.into(),
            reason: "it came so".into(),
        });
    }
    let ids: Vec<_> = bay.view().dangers.into_iter().map(|danger| danger.id).collect();
    assert_eq!(ids, ["running_dry", "lowered_open"]);
}

#[test]
fn an_attest_that_lapsed_makes_its_step_lapsed_and_not_done() {
    let mut bay = Bay::open();
    bay.work_up_to("pan_up");
    assert_eq!(bay.step("pan_up").shown, Shown::Done);
    bay.must(Command::Observe {
        condition: "pan".into(),
        value: "off".into(),
        reason: "it was hung askew".into(),
    });
    let step = bay.step("pan_up");
    assert_ne!(step.shown, Shown::Done);
    assert_eq!(step.lapsed, ["pan_torqued"]);
}

#[test]
fn permits_that_one_event_lapsed_can_be_found_together() {
    let mut bay = Bay::open();
    bay.work_up_to("coil");
    bay.vehicle_actions(&["lower"]);
    let lowered = bay.job.last_seq();
    let view = bay.view();
    let permit = view.signs.iter().find(|sign| sign.id == "on_locks").unwrap();
    assert_eq!(permit.last.as_ref().unwrap().lapsed.as_ref().map(|mark| mark.seq), Some(lowered));
    assert!(!permit.valid && permit.renew.is_some());
    bay.vehicle_actions(&["raise", "set_locks"]);
    let view = bay.view();
    assert_eq!(view.signs.iter().find(|sign| sign.id == "on_locks").unwrap().renew, None);
}

#[test]
fn the_tray_shows_what_is_off_with_counts_and_both_counts_agree() {
    let mut bay = Bay::open();
    bay.work_up_to("pan_down");
    let tray = bay.view().tray;
    let off: Vec<_> = tray.iter().map(|item| (item.name.as_str(), item.off, item.count)).collect();
    assert_eq!(off, [("pan bolts", 16, 16), ("pan gasket", 1, 1), ("drain washer", 1, 1)]);
    assert!(tray.iter().all(|item| item.recount_agrees));
    assert_eq!((tray[0].draws, tray[1].draws), (Some(Piece::Bolt), None), "as the checklist says");
    bay.work_usual("verdict");
    bay.work_usual("pan_up");
    assert_eq!(bay.view().tray, []);
}

#[test]
fn knowledge_that_has_grown_too_old_shows_as_unknown_before_anybody_asks() {
    let mut bay = Bay::open();
    bay.work_up_to("coil");
    let probe = |bay: &Bay| bay.view().gates.into_iter().find(|gate| gate.id == "exhaust_probe").unwrap();
    assert_eq!(probe(&bay).last, Some(as_said("41 °C")));
    assert_eq!(probe(&bay).ms_fresh, Some(29 * 60_000), "read a minute ago, good for thirty");
    bay.minute += 40;
    assert_eq!((probe(&bay).known, probe(&bay).ms_fresh), (None, None));
    assert_eq!(bay.step("drain").shown, Shown::Waiting);
}

#[test]
fn a_timer_counts_down_and_the_clock_adds_up_by_part() {
    let mut bay = Bay::open();
    bay.work_up_to("pan_up");
    bay.begin("cure").unwrap();
    bay.minute += 5;
    assert_eq!(bay.step("cure").entries[0].ms_left, Some(15 * 60_000));
    let view = bay.view();
    assert_eq!(view.clock.minutes, u64::try_from(bay.minute).unwrap());
    assert_eq!(view.phases[3].minutes, 5, "everything else was entered in one go");
    assert_eq!(view.phases[2].expected, 40, "drain, pan and verdict; the second look is not in this job");
}

#[test]
fn finishing_and_stopping_say_what_they_need() {
    let mut bay = Bay::open();
    bay.work_up_to("pan_down");
    let view = bay.view();
    assert_eq!(view.finish.unwrap().message.id, "refused-finish");
    assert_eq!(view.stop, None, "on the locks with the engine off it is safe to leave");
    bay.work("verdict", &[("found", choice("stop_and_call"))], &[]);
    assert_eq!(bay.view().over, Over::Ending);
    bay.must(Command::Stop { reason: "the writer calls".into() });
    assert_eq!(bay.view().over, Over::Stopped);
    let minutes = bay.view().clock.minutes;
    bay.minute += 100;
    assert_eq!(bay.view().clock.minutes, minutes, "the clock stands when the job is over");
}

#[test]
fn sentences_can_be_put_into_every_message_and_the_view_goes_through_json() {
    let mut bay = Bay::open();
    bay.work_up_to("locks");
    bay.work("probe", &[("exhaust", degrees("63"))], &[]);
    let mut view = bay.view();
    view.each_message(&mut |message| message.text = "said".into());
    let json = serde_json::to_string(&view).unwrap();
    let without = json.matches("\"id\":\"refused-").count();
    assert!(without > 10);
    // What is said within another message is put into that one's sentence.
    let within = json.matches("\"said\":{").count();
    assert_eq!(json.matches("\"text\":\"said\"").count() + within, json.matches("\"args\":").count());
    let back: JobView = serde_json::from_str(&json).unwrap();
    assert_eq!(serde_json::to_string(&back).unwrap(), json);
}

#[test]
fn a_signature_shows_who_gave_it() {
    let mut bay = Bay::open();
    bay.work_up_to("photo");
    bay.work("go_ahead", &go_ahead(), &[sign("concern_told", "Wim", Role::ServiceWriter)]);
    let view = bay.view();
    let told = view.signs.iter().find(|sign| sign.id == "concern_told").unwrap();
    assert_eq!(told.last.as_ref().unwrap().name, "Wim");
    assert!(told.valid);
}
