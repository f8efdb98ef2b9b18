//! A step's work and the job as a whole.

use super::*;

#[test]
fn the_usual_job_goes_through_to_its_end() {
    let mut bay = Bay::open();
    bay.work_up_to("level");
    bay.vehicle_actions(&["stop_engine"]);
    assert_eq!(bay.view().finish, None);
    bay.must(Command::Finish);
    assert!(bay.job.procedure.machine.is_finished(&bay.job.state));
    assert_eq!(bay.job.disagreements, []);
    assert_eq!(bay.ask(make("key_out")).unwrap_err().message, refused_finished());
}

#[test]
fn nothing_can_be_asked_of_a_job_that_has_not_started_or_by_nobody() {
    let bay = Bay::open();
    let empty = Job::new(std::sync::Arc::clone(&bay.job.procedure), specs());
    let ask = |job: &Job, who: Actor| decide(job, &bay.shop, &Command::Finish, &who, &bay.now());
    assert_eq!(ask(&empty, technician("Ada")).unwrap_err().message, refused_not_started());
    assert_eq!(ask(&bay.job, technician("Nobody")).unwrap_err().message, refused_no_person());
    assert_eq!(ask(&bay.job, Actor::NOBODY).unwrap_err().message, refused_no_person());
    let writer = Actor { role: Role::ServiceWriter, ..technician("Ada") };
    assert_eq!(ask(&bay.job, writer).unwrap_err().message, refused_no_role("Ada", Role::ServiceWriter));
}

#[test]
fn a_step_says_which_earlier_step_or_part_comes_first() {
    let mut bay = Bay::open();
    assert_eq!(bay.begin("go_ahead").unwrap_err().message, refused_after("Identify"));
    assert_eq!(bay.begin("locks").unwrap_err().message, refused_phase("Identify"));
    assert_eq!(bay.begin("supporter").unwrap_err().message, refused_not_in_job("Battery supporter on"));
    assert_eq!(bay.begin("boat").unwrap_err().message, refused_no_such("step", "boat"));
}

#[test]
fn a_refusal_names_the_condition_its_value_and_what_would_do() {
    let mut bay = Bay::open();
    bay.work_up_to("go_ahead");
    bay.vehicle_actions(&["key_out", "raise"]);
    let refused = bay.begin("locks").unwrap_err();
    assert_eq!(refused.message, refused_needs("On the locks"));
    assert_eq!(refused.unmet, [unmet_value("lift", "raised", any_of(&["on the locks"]))]);
}

#[test]
fn a_hot_reading_is_written_and_keeps_the_step_in_progress() {
    let mut bay = Bay::open();
    bay.work_up_to("locks");
    let events = bay.work("probe", &[("exhaust", degrees("63"))], &[]);
    assert_eq!(events.iter().map(Event::kind).collect::<Vec<_>>(), ["begun", "entered"]);
    let refused = bay.done("probe").unwrap_err();
    assert_eq!(refused.message, refused_not_yet("Exhaust temperature"));
    assert_eq!(refused.unmet, [reading_above("63 °C", "48 °C", "touch limit")]);
    bay.work("probe", &[("exhaust", degrees("47"))], &[]);
    assert_eq!(bay.step("probe").shown, Shown::Done);
}

#[test]
fn a_gate_that_came_from_a_reading_names_what_was_last_read_and_its_limit() {
    let mut bay = Bay::open();
    bay.work_up_to("locks");
    bay.work("probe", &[("exhaust", degrees("63"))], &[]);
    bay.must(Command::Leave { step: "probe".into() });
    bay.work_usual("coil");
    let hot = unmet_gate_at_most("exhaust temperature", "63 °C", "48 °C", "touch limit");
    let machine = &bay.job.procedure.machine;
    let drain = bay.job.procedure.names.step("drain").unwrap();
    let now = bay.now();
    assert_eq!(
        unmet::Because::of(&bay.job, &now).unmet(&machine.steps[drain.at()].needs, &bay.job.state),
        [hot]
    );
}

#[test]
fn a_step_that_is_not_all_in_says_everything_that_is_missing() {
    let mut bay = Bay::open();
    bay.begin("identify").unwrap();
    bay.enter("identify", "codes", EntryValue::Scan { text: String::new() }).unwrap();
    let refused = bay.done("identify").unwrap_err();
    assert_eq!(refused.message, refused_missing("Identify"));
    assert_eq!(refused.unmet, [missing_entry("Vehicle number"), missing_entry("Odometer")]);
}

#[test]
fn a_short_count_holds_the_step_until_it_is_accounted_for() {
    let mut bay = Bay::open();
    bay.work_up_to("drain");
    bay.begin("pan_down").unwrap();
    bay.enter("pan_down", "bolts", pieces(15)).unwrap();
    let refused = bay.done("pan_down").unwrap_err();
    assert_eq!(refused.message, refused_not_yet("Counted into the tray"));
    assert_eq!(refused.unmet, [count_short(vec!["pan bolts 15/16".into()])]);
    let EntryValue::Count { of, .. } = pieces(15) else { panic!("pieces are counted") };
    let accounted =
        Some(crate::value::Accounted { reason: "in the drain pan, out of reach".into(), by: person("Ada") });
    bay.enter("pan_down", "bolts", EntryValue::Count { of, accounted }).unwrap();
    bay.done("pan_down").unwrap();
}

#[test]
fn what_was_entered_in_one_attempt_does_not_count_in_the_next() {
    let mut bay = Bay::open();
    bay.work_up_to("locks");
    bay.begin("probe").unwrap();
    bay.enter("probe", "exhaust", degrees("41")).unwrap();
    bay.must(Command::Leave { step: "probe".into() });
    bay.begin("probe").unwrap();
    assert_eq!(bay.done("probe").unwrap_err().unmet, [missing_entry("Exhaust temperature")]);
}

#[test]
fn an_entry_needs_a_step_in_progress_and_an_entry_that_is_asked_for() {
    let mut bay = Bay::open();
    bay.work_up_to("locks");
    assert_eq!(
        bay.enter("probe", "exhaust", degrees("41")).unwrap_err().message,
        refused_not_in_progress("Exhaust cool")
    );
    bay.begin("probe").unwrap();
    assert_eq!(
        bay.enter("probe", "ohms", degrees("41")).unwrap_err().message,
        refused_no_such("entry", "ohms")
    );
    assert_eq!(bay.enter("probe", "exhaust", litres("3")).unwrap_err().message, reading_unit("°C", "L"));
    assert_eq!(
        bay.enter("probe", "exhaust", choice("cool")).unwrap_err().message,
        entry_kind(kind_label("reading"), kind_label("choice"))
    );
}

#[test]
fn work_in_one_go_writes_all_or_nothing() {
    let mut bay = Bay::open();
    let before = bay.job.last_seq();
    let refused = bay.ask(work("identify", &[("codes", EntryValue::Scan { text: "P0765".into() })], &[]));
    assert_eq!(refused.unwrap_err().message, refused_missing("Identify"));
    assert_eq!(bay.job.last_seq(), before);
}

#[test]
fn a_wait_cannot_be_worked_in_one_go_before_it_is_over() {
    let mut bay = Bay::open();
    bay.work_up_to("pan_up");
    let refused = bay.ask(work("cure", &[("wait", EntryValue::Timer {})], &[])).unwrap_err();
    assert_eq!(refused.message, timer_running(20_i64, 20_i64));
}

#[test]
fn a_wait_that_a_restart_broke_goes_on_from_there_and_ends_by_nothing_but_time() {
    let mut bay = Bay::open();
    bay.work_up_to("pan_up");
    bay.begin("cure").unwrap();
    let began = bay.minute;
    let asked = Command::Enter { step: "cure".into(), entry: "wait".into(), value: EntryValue::Timer {} };
    let enter = |now| {
        decide(&bay.job, &bay.shop, &asked, &technician("Ada"), &now).map_err(|refusal| refusal.message)
    };
    // The wall clock is set a day forward, first while the tablet is on, then while it is off.
    let tomorrow = stamp(began + 24 * 60);
    let set = Stamp { wall_ms: tomorrow.wall_ms, ..stamp(began + 5) };
    assert_eq!(enter(set).unwrap_err(), timer_running(15_i64, 20_i64));
    let up_for = |minutes: u64, number| Stamp { boot: boot(number), mono_ms: minutes * 60_000, ..tomorrow };
    assert_eq!(enter(up_for(19, 2)).unwrap_err(), timer_restarted(1_i64, 20_i64));
    assert!(enter(up_for(20, 2)).is_ok());
    assert_eq!(enter(up_for(1, 3)).unwrap_err(), timer_restarted(19_i64, 20_i64), "restarted once more");
}

#[test]
fn stop_and_call_lets_only_safe_ends_begin() {
    let mut bay = Bay::open();
    bay.work_up_to("pan_down");
    bay.work("verdict", &[("found", choice("stop_and_call"))], &[]);
    assert_eq!(bay.begin("probe").unwrap_err().message, refused_ending());
    bay.work_usual("pan_up");
    assert_eq!(bay.ask(Command::Stop { reason: "".into() }).unwrap_err().message, refused_no_reason());
    bay.must(Command::Stop { reason: "chips: the writer calls".into() });
    assert_eq!(bay.begin("cure").unwrap_err().message, refused_stopped());
    assert_eq!(bay.enter("cure", "wait", EntryValue::Timer {}).unwrap_err().message, refused_stopped());
}

#[test]
fn an_unfinished_job_says_everything_that_its_end_needs() {
    let mut bay = Bay::open();
    bay.work_up_to("pan_down");
    let refused = bay.ask(Command::Finish).unwrap_err();
    assert_eq!(refused.message, refused_finish());
    for lacking in [
        unmet_empty("pan bolts", 16_i64),
        unmet_value("lift", "on the locks", any_of(&["on the floor"])),
        unmet_gate_unknown("fluid level", any_of(&["in range"])),
        unmet_signed("Pan torqued in both stages", "Pan up"),
        unmet_worked("Fluid level"),
    ] {
        assert!(refused.unmet.contains(&lacking), "{lacking:?} in {:?}", refused.unmet);
    }
}

#[test]
fn a_worked_step_is_done_again_only_where_the_checklist_says_so_and_moves_no_pieces() {
    let mut bay = Bay::open();
    bay.work_up_to("coil");
    let refused = bay.begin("probe").unwrap_err();
    assert_eq!(refused.message, refused_worked("Exhaust cool"));
    assert!(!refused.unmet.is_empty(), "it says when it may be done again");
    assert_eq!(bay.begin("coil").unwrap_err().message, refused_worked("Coil"));
    bay.must(void("coil"));
    assert_eq!(bay.begin("coil").unwrap_err().message, refused_voided("Coil"));
}

#[test]
fn every_step_of_the_usual_order_is_open_when_its_turn_comes() {
    let mut bay = Bay::open();
    for step in USUAL_ORDER {
        bay.work_usual(step);
        assert_eq!(bay.step(step).shown, Shown::Done, "{step}");
    }
}

#[test]
fn draining_once_more_takes_no_second_washer_off() {
    let mut bay = Bay::open();
    bay.work_up_to("drain");
    bay.work("drain", &[("volume", litres("0.2"))], &[]);
    assert_eq!(bay.job.tally.off("washer"), 1);
    let tray = bay.view().tray;
    assert_eq!((tray.len(), tray[0].off, tray[0].recount_agrees), (1, 1, true));
    let drain = bay.job.procedure.names.step("drain").unwrap();
    assert_eq!(bay.job.step(drain).attempts.len(), 2, "both amounts stay on the record");
}
