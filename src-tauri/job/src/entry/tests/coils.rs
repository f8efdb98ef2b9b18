use super::{arg, at, ids, typing};
use crate::entry::WorkedOut;
use crate::figures::{FigureKind, figures};
use crate::value::{CoilShown, CoilsValue, EntryValue};
use crate::view::Preview;

fn coils(read: &[(&str, &str)], temperature: &str) -> EntryValue {
    let reading = |(coil, shows): &(&str, &str)| CoilShown { coil: (*coil).into(), shows: (*shows).into() };
    EntryValue::Coils(CoilsValue {
        readings: read.iter().map(reading).collect(),
        unit: "Ω".into(),
        leads: None,
        temperature: temperature.into(),
        temperature_unit: "°C".into(),
        meter: None,
    })
}

fn three(shift_1: &str, shift_2: &str, pressure: &str) -> EntryValue {
    coils(&[("shift 1", shift_1), ("shift 2", shift_2), ("pressure", pressure)], "20")
}

fn told(value: &EntryValue) -> Preview {
    typing(&at("coil"), "coil", "list", value)
}

fn class(value: &EntryValue) -> String {
    told(value).class.unwrap()
}

#[test]
fn each_coil_of_the_list_is_judged_by_its_own_limits() {
    assert_eq!(class(&three("5.3", "5.3", "3.5")), "inside");
    // 5.3 Ω is good for a shift solenoid and far from the 3.8 Ω of the other one.
    assert_eq!(class(&three("5.3", "5.3", "5.3")), "one");
    assert_eq!(class(&three("5.3", "OL", "0")), "several");
}

#[test]
fn the_coils_are_judged_at_the_temperature_of_their_limits() {
    // Copper by 0.00393 a degree (NBS Handbook 100): at 62 °C a coil has 1 + 0.00393 × 42 = 1.16506 times its ohms.
    let warm = coils(&[("shift 1", "6,2"), ("shift 2", "6,2"), ("pressure", "4,1")], "62");
    let told = told(&warm);
    assert_eq!(
        (told.class.as_deref(), arg(&told.said, "coils-inside", "count")),
        (Some("inside"), "3".into())
    );
    let one = typing(&at("coil"), "coil", "new", &coils(&[("shift 1", "6,2")], "62"));
    assert_eq!(arg(&one.said, "coil-inside", "is"), "5.322 Ω");
}

#[test]
fn the_coils_that_are_out_are_named_and_the_good_ones_are_not() {
    let told = told(&three("5.3", "6.9", "3.5"));
    assert_eq!(ids(&told.said), ["coil-above", "coil-meter-unknown"]);
    assert_eq!(arg(&told.said, "coil-above", "name"), "shift 2");
}

#[test]
fn a_coil_that_is_missing_unknown_or_entered_twice_is_told_by_its_name() {
    for (read, id) in [
        (&[][..], "coils-none"),
        (&[("shift 1", "5.3"), ("shift 2", "5.3")], "coils-missing"),
        (&[("shift 1", "5.3"), ("shift 9", "5.3")], "coils-unknown"),
        (&[("shift 1", "5.3"), ("shift 1", "5.4")], "coils-twice"),
        (&[("shift 1", "5.3"), ("shift 2", "x"), ("pressure", "3.5")], "trade-number-character"),
    ] {
        let told = told(&coils(read, "20"));
        assert_eq!((told.class, ids(&told.said)), (None, vec![id]), "{read:?}");
    }
}

#[test]
fn of_a_new_solenoid_one_coil_is_enough() {
    let one = |shows: &str| typing(&at("coil"), "coil", "new", &coils(&[("pressure", shows)], "20"));
    assert_eq!(one("3.5").class.as_deref(), Some("inside"));
    assert_eq!(one("5.3").class.as_deref(), Some("one"));
}

#[test]
fn coils_with_other_limits_have_a_figure_of_their_own() {
    let mut bay = at("coil");
    bay.enter("coil", "list", three("5.3", "6.9", "3.5")).unwrap();
    let drawn = figures(&bay.job).into_iter().filter(|figure| figure.kind == FigureKind::Coil);
    let drawn: Vec<_> = drawn.map(|figure| (figure.id, figure.says.len())).collect();
    // Each says its limits, then a sentence a coil.
    assert_eq!(drawn, [("coils".to_owned(), 3), ("coils/1".to_owned(), 2)]);
}

#[test]
fn insulation_beyond_the_meter_is_above_its_limit_and_megaohms_are_read() {
    let class = |value: &str, unit: &str| {
        let value = EntryValue::Reading { value: value.into(), unit: unit.into() };
        typing(&at("coil"), "coil", "ground", &value).class
    };
    assert_eq!(class("OL", "MΩ").as_deref(), Some("inside"));
    assert_eq!(class("5", "MΩ").as_deref(), Some("inside"));
    assert_eq!(class("400", "kΩ").as_deref(), Some("outside"));
    assert_eq!(class("5", "mΩ"), None, "a milliohm is no megaohm");
}

#[test]
fn how_the_coils_came_about_is_kept() {
    let mut bay = at("coil");
    bay.enter("coil", "list", three("5.3", "6.9", "3.5")).unwrap();
    let step = bay.job.procedure.names.step("coil").unwrap();
    let entered = bay.job.step(step).shown().unwrap().latest("list").unwrap();
    let Some(WorkedOut::Coils(result)) = &entered.worked_out else { panic!("nothing") };
    let names: Vec<&str> = result.coils.iter().map(|coil| coil.name.as_str()).collect();
    assert_eq!((names, result.meter_known), (vec!["shift 1", "shift 2", "pressure"], false));
}
