//! Sheets with one mistake each, and sheets that do not fit their checklist.

use panside_procedure::Procedure;
use panside_procedure::format::sheet::{
    Chart, ChartPoint, Measure as SheetMeasure, Pattern, Range, SheetValue, Torque,
};
use panside_trade::message::chart_marks;
use panside_trade::units::{Lowest, Quantity};
use serde_json::json;

use super::*;
use crate::message::sheet_quantity;
use crate::testing::{procedure, sheet, specs};

fn with(key: &str, is: Value) -> Sheet {
    let mut sheet = sheet();
    sheet.values.insert(key.into(), value(is));
    sheet
}

fn value(is: Value) -> SheetValue {
    let (source, entered_by) = ("a test".into(), "tests".into());
    SheetValue {
        is,
        source,
        entered_by,
        entered_by_id: None,
        entered_on: None,
        taken_from: None,
        checked: None,
    }
}

fn problem(key: &str, is: Value) -> Message {
    let problems = Specs::of(&with(key, is)).unwrap_err();
    assert_eq!(problems.len(), 1);
    assert_eq!(problems[0].key.as_deref(), Some(key));
    problems[0].message.clone()
}

fn measure(value: f64, unit: &str) -> Value {
    Value::Measure(SheetMeasure { value, unit: unit.into() })
}

fn chart(points: &[(f64, f64, f64)]) -> Value {
    Value::Chart(Chart {
        temperature_unit: "°C".into(),
        length_unit: "mm".into(),
        points: points.iter().map(|&(at, low, high)| ChartPoint { at, low, high }).collect(),
        agreement: Some(2.0),
    })
}

#[test]
fn a_sound_sheet_fits_its_checklist() {
    assert_eq!(check(&procedure(), &specs()), []);
}

#[test]
fn a_unit_that_is_not_known_is_told_with_its_key() {
    assert_eq!(problem("touch_limit", measure(48.0, "degrees")).id, "trade-unit-unknown");
    let (quantity, lowest) = (Quantity::Temperature, Lowest::AbsoluteZero);
    let below = TradeError::BelowLowest { value: -300.0, unit: Unit::DegreeCelsius, quantity, lowest };
    assert_eq!(problem("touch_limit", measure(-300.0, "°C")), below.message());
}

#[test]
fn a_chart_whose_marks_cross_or_whose_points_go_back_is_told() {
    assert_eq!(
        problem("level_chart", chart(&[(40.0, 22.0, 12.0), (80.0, 32.0, 42.0)])),
        chart_marks("40 °C", "22 mm", "12 mm")
    );
    assert_eq!(
        problem("level_chart", chart(&[(80.0, 32.0, 42.0), (40.0, 12.0, 22.0)])),
        TradeError::TableNotRising { previous: 80.0, next: 40.0 }.message()
    );
    assert_eq!(
        problem("level_chart", chart(&[(40.0, 12.0, 22.0)])),
        TradeError::TableTooShort { points: 1 }.message()
    );
}

#[test]
fn a_range_that_is_the_wrong_way_round_is_told() {
    let range = Value::Range(Range { min: 5.6, max: 5.0, unit: "Ω".into() });
    assert_eq!(problem("coil", range), sheet_range("5.6", "5"));
}

#[test]
fn a_torque_needs_a_stage_a_torque_unit_and_a_tolerance() {
    let torque = |stages: &[f64], unit: &str, tolerance_percent| {
        Value::Torque(Torque {
            fasteners: 16,
            stages: stages.to_vec(),
            unit: unit.into(),
            tolerance_percent,
            positions: Vec::new(),
            pattern: Pattern::default(),
            angle: None,
        })
    };
    assert_eq!(problem("pan_bolts", torque(&[], "N·m", 10.0)), TradeError::NoStage.message());
    assert_eq!(problem("pan_bolts", torque(&[9.0], "mm", 10.0)).id, "trade-quantity-differs");
    assert_eq!(
        problem("pan_bolts", torque(&[9.0], "N·m", 0.0)),
        TradeError::PercentRange { percent: 0.0 }.message()
    );
}

#[test]
fn every_mistake_of_a_sheet_is_told_at_once_and_the_rest_is_read() {
    let mut sheet = with("touch_limit", measure(48.0, "degrees"));
    sheet.values.insert("cure".into(), with("cure", measure(-1.0, "min")).values["cure"].clone());
    let (specs, problems) = Specs::readable(&sheet);
    assert_eq!(
        problems.iter().filter_map(|problem| problem.key.as_deref()).collect::<Vec<_>>(),
        ["cure", "touch_limit"]
    );
    assert!(specs.range("coil").is_some());
}

#[test]
fn a_limit_of_another_quantity_does_not_fit_the_checklist() {
    let told = |key: &str, is: Value| {
        let problems = check(&procedure(), &Specs::of(&with(key, is)).unwrap());
        assert_eq!(problems.len(), 1);
        problems[0].clone()
    };
    let volts = told("touch_limit", measure(12.0, "V"));
    assert_eq!(volts.key.as_deref(), Some("touch_limit"));
    assert_eq!(volts.message, sheet_quantity("exhaust", "probe", "°C", "V"));
    assert_eq!(told("cure", measure(20.0, "mm")).message, sheet_quantity("wait", "cure", "min", "mm"));
}

#[test]
fn a_limit_in_another_unit_of_its_quantity_fits() {
    let fahrenheit = Specs::of(&with("touch_limit", measure(118.4, "°F"))).unwrap();
    assert_eq!(check(&procedure(), &fahrenheit), []);
}

#[test]
fn a_key_that_is_missing_or_of_another_kind_is_told() {
    let mut sheet = sheet();
    sheet.values.remove("touch_limit");
    sheet.values.insert("coil".into(), with("coil", measure(5.3, "Ω")).values["coil"].clone());
    sheet
        .values
        .insert("supporter_needed".into(), with("x", Value::Fact("perhaps".into())).values["x"].clone());
    let problems = check(&procedure(), &Specs::of(&sheet).unwrap());
    assert_eq!(problems.len(), 3);
    assert!(problems.iter().all(|problem| problem.message.id == "sheet-lacks"));
}

#[test]
fn an_entry_in_a_unit_that_is_none_is_told() {
    let mut file: serde_json::Value =
        serde_json::from_str(include_str!("../../tests/fixtures/pan.checklist.json")).unwrap();
    file["phases"][0]["steps"][0]["entries"][2]["ask"]["reading"]["unit"] = json!("furlongs");
    let procedure = Procedure::load(file.to_string().as_bytes()).unwrap();
    let problems = check(&procedure, &specs());
    assert_eq!(problems.len(), 1);
    assert_eq!(problems[0].message.id, "sheet-entry-unit");
}
