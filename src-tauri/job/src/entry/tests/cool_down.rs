use super::{arg, at, bay, ids, typing};
use crate::command::Command;
use crate::entry::{CoolDownResult, WorkedOut};
use crate::event::Event;
use crate::message::{cool_down_hot, unmet_gate_at_most};
use crate::testing::Bay;
use crate::value::{EntryValue, Probed, ProbedBy, ProbedSurface};

fn probed(value: &str) -> EntryValue {
    let (value, ambient) = (value.into(), Some("20".into()));
    EntryValue::CoolDown(Probed { value, unit: "°C".into(), by: ProbedBy::Contact, ambient })
}

fn infrared(value: &str, surface: ProbedSurface) -> EntryValue {
    let by = ProbedBy::Infrared { set_to: "0.95".into(), surface };
    EntryValue::CoolDown(Probed { value: value.into(), unit: "°C".into(), by, ambient: Some("20".into()) })
}

/// Enters readings ten minutes apart.
fn read(bay: &mut Bay, values: &[&str]) -> CoolDownResult {
    let mut last = None;
    for value in values {
        bay.minute += 9;
        let events = bay.enter("probe", "joint", probed(value)).unwrap();
        let Some(Event::Entered(entered)) = events.last() else { panic!("{events:?}") };
        let Some(WorkedOut::CoolDown(result)) = &entered.worked_out else { panic!("{entered:?}") };
        last = Some((**result).clone());
    }
    last.unwrap()
}

#[test]
fn an_exhaust_that_is_hot_says_when_it_will_be_cool() {
    let mut bay = at("probe");
    // Newton's law of cooling with 20 °C around it and 0.05 a minute: 20 + 160 e^(−0.05 t) is 180.0, 117.0, 78.9 and
    // 55.7 °C at 0, 10, 20 and 30 minutes, and 48 °C where t = ln(160 / 28) / 0.05 = 34.9 minutes.
    let told = read(&mut bay, &["180", "117", "78,9"]);
    assert_eq!(told.class, "hot");
    let said = bay.step("probe").entries[0].said.clone();
    assert_eq!(said[0], cool_down_hot("78.9 °C", "48 °C", "touch limit"));
    let likely = told.cooling.as_ref().unwrap().likely.unwrap().minutes();
    assert!((likely - 14.9).abs() < 0.2, "{likely} minutes after the third reading");
    let minutes: i64 = arg(&said, "cool-down-not-before", "minutes").parse().unwrap();
    assert!(minutes >= 15, "not before is never before the curve itself: {minutes}");
    // The bay's day began at 08:00; the third reading was at minute 31.
    let then = 31 + minutes;
    assert_eq!(arg(&said, "cool-down-not-before", "time"), format!("{:02}:{:02}", 8 + then / 60, then % 60));
}

#[test]
fn a_hot_exhaust_holds_the_step_and_a_cool_one_lets_it_be_done() {
    let mut bay = at("probe");
    read(&mut bay, &["90"]);
    assert_eq!(bay.done("probe").unwrap_err().message.id, "refused-not-yet");
    let gate = bay.job.procedure.names.var("exhaust").unwrap();
    assert!(bay.job.last_read(gate).is_some(), "a probe reading decides the gate that its step sets");
    read(&mut bay, &["48"]);
    bay.done("probe").unwrap();
    assert_eq!(bay.step("probe").entries[0].class.as_deref(), Some("cool"));
}

#[test]
fn what_was_last_probed_is_told_where_it_is_wanted_cool() {
    let mut bay = at("probe");
    read(&mut bay, &["90"]);
    let refused = bay.done("probe").unwrap_err();
    assert_eq!(refused.unmet[0], cool_down_hot("90 °C", "48 °C", "touch limit"));
    let message = unmet_gate_at_most("exhaust", "90 °C", "48 °C", "touch limit");
    assert_eq!(message.id, "unmet-gate-at-most");
}

#[test]
fn one_reading_is_not_enough_to_tell_when() {
    let mut bay = at("probe");
    read(&mut bay, &["180"]);
    let said = bay.step("probe").entries[0].said.clone();
    assert_eq!(arg(&said, "cool-down-too-few", "counted"), "1");
}

#[test]
fn an_exhaust_that_grows_hotter_says_that_it_was_heated() {
    let mut bay = at("probe");
    read(&mut bay, &["90", "80", "120"]);
    assert_eq!(ids(&bay.step("probe").entries[0].said), ["cool-down-hot", "cool-down-rises"]);
    // From the hottest on the curve begins anew.
    read(&mut bay, &["90", "70"]);
    assert!(ids(&bay.step("probe").entries[0].said).contains(&"cool-down-not-before"));
}

#[test]
fn readings_from_before_the_engine_ran_do_not_count() {
    let mut bay = at("probe");
    read(&mut bay, &["180", "117"]);
    bay.must(Command::Leave { step: "probe".into() });
    bay.must(Command::VehicleAction { action: "start_engine".into() });
    bay.must(Command::VehicleAction { action: "stop_engine".into() });
    bay.must(Command::Begin { step: "probe".into() });
    read(&mut bay, &["78,9"]);
    let said = bay.step("probe").entries[0].said.clone();
    assert_eq!(arg(&said, "cool-down-too-few", "counted"), "1");
    assert_eq!(arg(&said, "cool-down-older", "readings"), "2");
}

#[test]
fn what_was_said_of_a_reading_stays_when_later_readings_come() {
    let mut bay = at("probe");
    read(&mut bay, &["180", "117", "78,9"]);
    bay.must(Command::Leave { step: "probe".into() });
    bay.must(Command::VehicleAction { action: "start_engine".into() });
    let said = bay.step("probe").entries[0].said.clone();
    assert!(ids(&said).contains(&"cool-down-not-before"), "{said:?}");
}

#[test]
fn readings_from_before_a_restart_are_left_out_and_told() {
    let mut bay = at("probe");
    read(&mut bay, &["180", "117"]);
    for set_ms in [-3_600_000, 0, 86_400_000] {
        let mut now = bay.now();
        (now.boot, now.mono_ms, now.wall_ms) = (crate::testing::boot(2), 600_000, now.wall_ms + set_ms);
        let told = crate::view::preview(&bay.job, &bay.shop, "probe", "joint", &probed("80"), &now);
        assert_eq!(told.class.as_deref(), Some("hot"));
        assert_eq!(arg(&told.said, "cool-down-left-out", "readings"), "2", "set by {set_ms} ms");
    }
}

#[test]
fn a_reading_that_is_corrected_at_once_is_one_reading() {
    let mut bay = at("probe");
    read(&mut bay, &["1800"]);
    bay.minute -= 1;
    bay.enter("probe", "joint", probed("180")).unwrap();
    let told = read(&mut bay, &["117", "78,9"]);
    assert_eq!(told.cooling.unwrap().counted, 3);
}

#[test]
fn a_bright_pipe_by_infrared_is_no_evidence_that_it_is_cool() {
    let bay = at("probe");
    let told = typing(&bay, "probe", "joint", &infrared("35", ProbedSurface::Bright));
    assert_eq!((told.class, ids(&told.said)), (None, vec!["cool-down-no-evidence"]));
    assert_eq!(typing(&bay, "probe", "joint", &infrared("35", ProbedSurface::Rusty)).class, None);
    let hot = typing(&bay, "probe", "joint", &infrared("95", ProbedSurface::Bright));
    assert_eq!(hot.class.as_deref(), Some("hot"), "what is too hot as it reads is too hot");
    let coated = typing(&bay, "probe", "joint", &infrared("35", ProbedSurface::Coated));
    assert_eq!(coated.class.as_deref(), Some("cool"));
}

#[test]
fn by_infrared_the_hottest_that_the_surface_may_be_counts() {
    let bay = at("probe");
    // A meter that is set to 0.95 and shows 47.9 °C on a surface of 0.92 means that this is hotter than it shows.
    let told = typing(&bay, "probe", "joint", &infrared("47.9", ProbedSurface::Coated));
    assert_eq!(told.class.as_deref(), Some("hot"));
}

#[test]
fn the_probe_is_told_in_both_units_while_it_is_typed() {
    let told = typing(&at("probe"), "probe", "joint", &probed("63"));
    let other = told.other.unwrap();
    // 63 °C × 1.8 + 32
    assert_eq!((other.value.as_str(), other.unit.as_str(), told.not_yet), ("145.4", "°F", true));
    let fahrenheit = EntryValue::CoolDown(Probed {
        value: "118,4".into(),
        unit: "°F".into(),
        by: ProbedBy::Contact,
        ambient: None,
    });
    // 48 °C × 1.8 + 32 = 118.4 °F
    assert_eq!(typing(&at("probe"), "probe", "joint", &fahrenheit).class.as_deref(), Some("cool"));
}

#[test]
fn what_is_no_temperature_is_told_and_never_taken() {
    let bay = bay();
    for (value, unit, ambient, id) in [
        ("NaN", "°C", "20", "trade-number-character"),
        ("inf", "°C", "20", "trade-number-character"),
        ("1e9", "°C", "20", "trade-number-character"),
        ("-300", "°C", "20", "trade-below-lowest"),
        ("63", "mm", "20", "trade-quantity-differs"),
        ("63", "degrees", "20", "trade-unit-unknown"),
        ("63", "°C", "warm", "trade-number-character"),
        ("", "°C", "20", "trade-number-empty"),
        (&"9".repeat(400), "°C", "20", "refused-too-long"),
        (&"9".repeat(30), "°C", "20", "trade-not-measurable"),
    ] {
        let value = EntryValue::CoolDown(Probed {
            value: value.into(),
            unit: unit.into(),
            by: ProbedBy::Contact,
            ambient: Some(ambient.into()),
        });
        let told = typing(&bay, "probe", "joint", &value);
        assert_eq!((told.class, ids(&told.said)), (None, vec![id]), "{value:?}");
    }
}

#[test]
fn without_the_surroundings_hot_is_told_but_no_time() {
    let value = EntryValue::CoolDown(Probed {
        value: "90".into(),
        unit: "°C".into(),
        by: ProbedBy::Contact,
        ambient: None,
    });
    let told = typing(&at("probe"), "probe", "joint", &value);
    assert_eq!(ids(&told.said), ["cool-down-hot", "cool-down-no-ambient"]);
}
