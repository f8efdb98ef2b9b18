//! Facts, dangers and what time brings.

use super::*;

#[test]
fn a_reading_that_grew_too_old_is_forgotten_before_the_command_is_judged() {
    let mut bay = Bay::open();
    bay.work_up_to("coil");
    bay.minute += 40;
    let refused = bay.begin("drain").unwrap_err();
    assert_eq!(refused.message, refused_needs("Drain"));
    // Read at minute 9, asked at minute 51.
    assert_eq!(refused.unmet, [unmet_gate_lost("exhaust temperature", "41 °C", 42_i64)]);
    let events = bay.work("probe", &[("exhaust", degrees("40"))], &[]);
    assert_eq!(events.iter().map(Event::kind).collect::<Vec<_>>(), ["expired", "begun", "entered", "done"]);
    bay.begin("drain").unwrap();
}

#[test]
fn what_is_longer_than_anybody_types_is_refused_before_it_is_judged() {
    let mut bay = Bay::open();
    let long = "x".repeat(crate::size::TEXT + 1);
    assert_eq!(bay.ask(Command::Stop { reason: long.clone() }).unwrap_err().message.id, "refused-too-long");
    let note = EntryValue::Note { text: long };
    let said = crate::view::preview(&bay.job, &bay.shop, "probe", "exhaust", &note, &stamp(0)).said;
    assert_eq!(said[0].id, "refused-too-long", "a preview says the same");
}

#[test]
fn a_reading_is_good_to_the_last_millisecond_by_the_clock_that_nobody_can_set() {
    let mut bay = Bay::open();
    bay.work_up_to("probe");
    let mut late = stamp(bay.minute + 30);
    assert_eq!(due(&bay.job, &late).len(), 1);
    late.mono_ms -= 1;
    assert_eq!(due(&bay.job, &late), []);
    let hour = 3_600_000;
    for set_ms in [-hour, hour] {
        let set = Stamp { wall_ms: late.wall_ms + set_ms, ..late };
        let jump = ClockJumped { ms: set.wall_ms - late.wall_ms + 1 };
        assert_eq!(
            due(&bay.job, &set),
            [jump.into()],
            "the wall clock makes no reading old and keeps none fresh"
        );
    }
}

#[test]
fn a_reading_from_before_a_restart_is_too_old_wherever_the_wall_clock_stands() {
    let mut bay = Bay::open();
    bay.work_up_to("coil");
    let minute = bay.minute;
    for wall in [minute + 1, minute - 60, minute + 24 * 60] {
        let restarted = Stamp { boot: boot(2), mono_ms: 60_000, ..stamp(wall) };
        let expired: Vec<_> = due(&bay.job, &restarted).iter().map(Event::kind).collect();
        assert_eq!(expired, ["expired"], "at minute {wall}");
        let begin = Command::Begin { step: "drain".into() };
        let refused = decide(&bay.job, &bay.shop, &begin, &technician("Ada"), &restarted).unwrap_err();
        assert_eq!(refused.unmet, [unmet_gate_restarted("exhaust temperature", "41 °C")]);
    }
}

#[test]
fn a_wall_clock_that_was_set_is_an_event_of_its_own() {
    let bay = Bay::open();
    let set = Stamp { wall_ms: stamp(1).wall_ms - 3_600_000, ..stamp(1) };
    assert_eq!(due(&bay.job, &set), [ClockJumped { ms: -3_600_000 }.into()]);
}

#[test]
fn nobody_is_moved_with_somebody_under_the_vehicle() {
    let mut bay = Bay::open();
    bay.work_up_to("locks");
    bay.begin("coil").unwrap();
    let refused = bay.ask(make("lower")).unwrap_err();
    assert_eq!(refused.message, refused_stands("Coil"));
    assert_eq!(refused.unmet, [unmet_value("lift", "on the floor", any_of(&["on the locks"]))]);
    assert_eq!(bay.ask(make("set_locks")).unwrap_err().message, refused_needs("Set on locks"));
}

#[test]
fn a_fact_is_taken_down_even_where_it_is_dangerous_and_the_way_out_stays_open() {
    let mut bay = Bay::open();
    bay.work_up_to("locks");
    bay.begin("coil").unwrap();
    let events = bay.must(observe("lift", "raised"));
    let Event::Observed(observed) = &events[0] else { panic!("an observation was asked for") };
    assert_eq!(observed.dangers, ["off_the_locks"]);
    assert_eq!(observed.lost.lapsed, ["on_locks"]);
    assert_eq!(bay.view().dangers[0].id, "off_the_locks");
    assert_eq!(bay.begin("probe").unwrap_err().message.id, "refused-permit-lapsed", "no more work there");
    bay.must(Command::Leave { step: "coil".into() });
    assert_eq!(bay.view().dangers, []);
    bay.vehicle_actions(&["set_locks"]);
}

#[test]
fn an_intent_that_runs_into_a_danger_is_refused_even_where_the_rules_allow_it() {
    let text = include_str!("../../../tests/fixtures/pan.checklist.json");
    // A checklist that would let the engine run dry: it could not be proved, and the live job holds it back.
    let careless = text.replace("lift = floor and key = in_car and fluid = filled", "key = in_car");
    assert_ne!(text, careless);
    let procedure = std::sync::Arc::new(panside_procedure::Procedure::load(careless.as_bytes()).unwrap());
    let mut bay = Bay::open();
    bay.work_up_to("drain");
    let events = bay.job.happened.clone();
    bay.job = Job::fold(procedure, specs(), events);
    bay.must(observe("key", "in_car"));
    let refused = bay.ask(make("start_engine")).unwrap_err();
    assert_eq!(refused.message, refused_danger(Signal::Danger, "The engine runs without fluid: stop it."));
    bay.must(observe("engine", "running"));
    bay.vehicle_actions(&["stop_engine"]);
}

#[test]
fn a_danger_that_holds_does_not_stand_in_the_way_of_what_ends_it() {
    let mut bay = Bay::open();
    bay.work_up_to("pan_down");
    bay.must(observe("lift", "floor"));
    assert_eq!(bay.view().dangers[0].id, "lowered_open");
    bay.vehicle_actions(&["raise"]);
    assert_eq!(bay.view().dangers, []);
}

#[test]
fn an_observation_of_what_is_shown_already_or_does_not_exist_is_no_observation() {
    let mut bay = Bay::open();
    assert_eq!(
        bay.ask(observe("lift", "floor")).unwrap_err().message,
        refused_same_value("lift", "on the floor")
    );
    assert_eq!(bay.ask(observe("boat", "afloat")).unwrap_err().message, refused_no_such("condition", "boat"));
    assert_eq!(
        bay.ask(observe("level", "in_band")).unwrap_err().message,
        refused_no_such("condition", "level")
    );
    assert_eq!(bay.ask(observe("lift", "afloat")).unwrap_err().message, refused_no_such("value", "afloat"));
    let silent = Command::Observe { condition: "key".into(), value: "secured".into(), reason: " ".into() };
    assert_eq!(bay.ask(silent).unwrap_err().message, refused_no_reason());
}

#[test]
fn a_way_out_of_several_vehicle_actions_stays_open_while_the_danger_still_holds() {
    let mut bay = Bay::open();
    bay.work_up_to("pan_down");
    bay.must(observe("lift", "floor"));
    bay.must(observe("key", "in_car"));
    // The vehicle still stands open on the floor when the key is out, and only then it may be raised.
    bay.vehicle_actions(&["key_out", "raise"]);
    assert_eq!(bay.view().dangers, []);
}

#[test]
fn a_step_whose_ground_was_lost_says_so_before_it_asks_for_entries() {
    let mut bay = Bay::open();
    bay.work_up_to("locks");
    bay.begin("probe").unwrap();
    bay.must(observe("lift", "floor"));
    let refused = bay.done("probe").unwrap_err();
    assert_eq!(refused.message, refused_while("Exhaust cool"));
    assert_eq!(refused.unmet, [unmet_value("lift", "on the floor", any_of(&["on the locks"]))]);
}
