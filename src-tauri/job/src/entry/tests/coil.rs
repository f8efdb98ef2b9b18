use super::{arg, at, ids, typing};
use crate::command::Command;
use crate::figures::{FigureKind, figures};
use crate::value::{CoilValue, EntryValue, MeterError};
use crate::view::Preview;

fn coil(shows: &str, temperature: &str, meter: Option<(&str, &str)>) -> EntryValue {
    EntryValue::Coil(CoilValue {
        shows: shows.into(),
        unit: "Ω".into(),
        leads: None,
        temperature: temperature.into(),
        temperature_unit: "°C".into(),
        meter: meter.map(|(percent, digits)| MeterError { percent: percent.into(), digits: digits.into() }),
    })
}

fn told(value: &EntryValue) -> Preview {
    typing(&at("coil"), "coil", "ohms", value)
}

fn class(value: &EntryValue) -> String {
    told(value).class.unwrap()
}

#[test]
fn a_coil_is_judged_at_the_temperature_of_its_limits() {
    // Copper by 0.00393 a degree (NBS Handbook 100): 6.2 Ω at 62 °C is 6.2 / (1 + 0.00393 × 42) = 5.322 Ω at 20 °C.
    let said = told(&coil("6,2", "62", None)).said;
    assert_eq!(arg(&said, "coil-inside", "is"), "5.322 Ω");
    assert_eq!(class(&coil("6.2", "20", None)), "outside", "as it reads it would be too much");
}

#[test]
fn a_coil_below_or_above_its_limits_an_open_and_a_shorted_one_are_told_apart() {
    assert_eq!(told(&coil("4.5", "20", None)).said[0].id, "coil-below");
    assert_eq!(told(&coil("6.9", "20", None)).said[0].id, "coil-above");
    assert_eq!(class(&coil("OL", "20", None)), "open");
    assert_eq!(class(&coil("ol", "20", Some(("0.5", "0.03")))), "open");
    assert_eq!(class(&coil("0", "20", None)), "short");
    assert_eq!(class(&coil("0.2", "20", None)), "short");
}

#[test]
fn a_limit_within_the_meters_error_is_unclear_and_says_what_to_do() {
    // 5.59 Ω ± (0.5 % + 0.03 Ω) reaches over the limit of 5.6 Ω.
    let near = told(&coil("5.59", "20", Some(("0,5", "0,03"))));
    assert_eq!((near.class.as_deref(), ids(&near.said)), (Some("unclear"), vec!["coil-unclear"]));
    assert_eq!(class(&coil("5.3", "20", Some(("0.5", "0.03")))), "inside");
}

#[test]
fn a_meter_whose_error_is_not_known_is_said_to_be_taken_as_it_stands() {
    assert_eq!(ids(&told(&coil("5.3", "20", None)).said), ["coil-inside", "coil-meter-unknown"]);
}

#[test]
fn leads_are_taken_off_and_may_not_be_more_than_the_whole() {
    let with = |leads: &str| {
        let EntryValue::Coil(value) = coil("5.9", "20", None) else { panic!("a coil") };
        EntryValue::Coil(CoilValue { leads: Some(leads.into()), ..value })
    };
    assert_eq!(class(&with("0.4")), "inside");
    assert_eq!(told(&with("9")).said[0].id, "trade-leads-above-reading");
}

#[test]
fn what_is_no_coil_reading_is_told_and_never_taken() {
    for (shows, temperature, id) in [
        ("NaN", "20", "trade-number-character"),
        ("", "20", "trade-number-empty"),
        ("-5", "20", "trade-below-lowest"),
        ("5.3", "900", "trade-copper-range"),
        ("5.3", "", "trade-number-empty"),
        ("5,3,1", "20", "trade-number-separators"),
    ] {
        let told = told(&coil(shows, temperature, None));
        assert_eq!((told.class, ids(&told.said)), (None, vec![id]), "{shows} at {temperature}");
    }
    let percent = told(&coil("5.3", "20", Some(("100", "0"))));
    assert_eq!(percent.said[0].id, "trade-meter-percent");
    let EntryValue::Coil(value) = coil("5.3", "20", None) else { panic!("a coil") };
    let volts = EntryValue::Coil(CoilValue { unit: "V".into(), ..value });
    assert_eq!(told(&volts).said[0].id, "trade-quantity-differs");
}

#[test]
fn a_corrected_coil_is_drawn_beside_what_was_voided() {
    let mut bay = at("coil");
    bay.enter("coil", "ohms", coil("9,6", "62", None)).unwrap();
    bay.done("coil").unwrap();
    bay.must(Command::Void { step: "coil".into(), reason: "Digits turned round.".into() });
    bay.must(Command::Correct {
        step: "coil".into(),
        entries: [("ohms".to_owned(), coil("6,9", "62", None))].into(),
        signatures: Vec::new(),
        reason: None,
    });
    let drawn = figures(&bay.job).into_iter().find(|figure| figure.kind == FigureKind::Coil).unwrap();
    let says = drawn.says.iter().filter(|says| says.id == "figure-coil-reading");
    let read: Vec<String> =
        says.map(|says| arg(std::slice::from_ref(says), "figure-coil-reading", "value")).collect();
    assert_eq!(read, ["9.6 Ω", "6.9 Ω"]);
}
