//! Sheets while they are typed: what is judged, what is kept, whose check stands.

use panside_journal::PersonId;
use panside_procedure::format::sheet::{Check, Pattern};
use panside_procedure::format::{Asked, SheetKey};
use panside_trade::message::chart_marks;
use panside_trade::units::Quantity;
use uuid::Uuid;

use super::judge::read as judge;
use super::*;
use crate::message::*;
use crate::testing::{procedure, sheet};

const ADA: By<'_> = By { id: PersonId(Uuid::from_u128(0xA)), name: "Ada", day: "2026-03-02" };
const BO: By<'_> = By { id: PersonId(Uuid::from_u128(0xB)), name: "Bo", day: "2026-03-03" };

fn all_needs() -> Needs {
    needs(&procedure(), &|_| None)
}

fn all_keys() -> Keys {
    keys([&*procedure()])
}

fn typed() -> TypedSheet {
    TypedSheet::of(&sheet(), "pan-short")
}

fn value(is: Typed) -> TypedValue {
    TypedValue { is, source: "a manual, page 7".into(), taken: None }
}

fn range(min: &str, max: &str, unit: &str) -> TypedValue {
    value(Typed::Range { min: min.into(), max: max.into(), unit: unit.into() })
}

fn chart(points: &[(&str, &str, &str)]) -> TypedValue {
    let point = |&(at, low, high): &(&str, &str, &str)| TypedPoint {
        at: at.into(),
        low: low.into(),
        high: high.into(),
    };
    value(Typed::Chart {
        temperature_unit: "°F".into(),
        length_unit: "in".into(),
        points: points.iter().map(point).collect(),
        agreement: "0,1".into(),
    })
}

fn torque(fasteners: &str, stages: &[&str]) -> TypedValue {
    value(Typed::Torque {
        fasteners: fasteners.into(),
        stages: stages.iter().map(|&stage| stage.to_owned()).collect(),
        unit: "lbf·in".into(),
        tolerance_percent: "10".into(),
        positions: Vec::new(),
        pattern: Pattern::default(),
        angle: None,
    })
}

/// The fields with what is wrong in them.
fn wrong(key: &str, value: &TypedValue) -> Vec<(String, Message)> {
    let problems = judge(value, all_needs().get(key)).unwrap_err();
    problems.into_iter().map(|problem| (problem.field, problem.message)).collect()
}

fn one(key: &str, value: &TypedValue) -> (String, Message) {
    let problems = wrong(key, value);
    assert_eq!(problems.len(), 1, "{problems:?}");
    problems[0].clone()
}

#[test]
fn what_is_typed_of_a_kept_sheet_is_that_sheet_again() {
    let before = sheet();
    for (key, value) in &typed().values {
        let counts = typed().counting(value, all_needs().get(key));
        assert_eq!(judge(&counts, all_needs().get(key)).unwrap(), before.values[key].is, "{key}");
        assert_eq!(counts.source, before.values[key].source, "{key}");
    }
}

#[test]
fn a_number_is_taken_with_comma_or_point_and_letters_are_told_in_their_field() {
    assert_eq!(judge(&range("5,0", "5.6", "Ω"), None), judge(&range("5", "5,60", "Ω"), None));
    let character = TradeError::NumberCharacter { text: "five".into(), character: 'f' };
    assert_eq!(one("coil", &range("5,0", "five", "Ω")), ("max".into(), character.message()));
    assert_eq!(one("coil", &range("", "5.6", "Ω")), ("min".into(), sheet_no_number()));
}

#[test]
fn a_range_that_is_the_wrong_way_round_is_told_at_its_lower_end() {
    assert_eq!(one("coil", &range("5,6", "5,0", "Ω")), ("min".into(), sheet_range("5.6", "5")));
}

#[test]
fn a_list_of_coils_is_told_row_by_row() {
    let row = |name: &str, min: &str, max: &str| TypedCoil {
        name: name.into(),
        terminals: String::new(),
        min: min.into(),
        max: max.into(),
    };
    let list = |coils: &[TypedCoil]| value(Typed::Coils { unit: "Ω".into(), coils: coils.to_vec() });
    let (good, second) = (row("shift 1", "5", "5,6"), row("shift 2", "5", "5,6"));
    assert!(judge(&list(&[good.clone(), second]), None).is_ok());
    let same = wrong("coils", &list(&[good.clone(), row(" shift 1", "5", "5,6")]));
    assert_eq!(same, [("coils/1/name".into(), sheet_coil_twice("shift 1"))]);
    let turned = wrong("coils", &list(&[good.clone(), row("shift 2", "5,6", "5")]));
    assert_eq!(turned, [("coils/1/min".into(), sheet_coil_range("shift 2", "5.6", "5"))]);
    assert_eq!(one("coils", &list(&[row("shift 1", "0", "5")])).0, "coils/0/min");
    let blank = wrong("coils", &list(&[good, row("", "", "")]));
    let fields: Vec<&str> = blank.iter().map(|(field, _)| field.as_str()).collect();
    assert_eq!(fields, ["coils/1/name", "coils/1/min", "coils/1/max"]);
    assert_eq!(one("coils", &list(&[])), (String::new(), sheet_no_coils()));
}

#[test]
fn a_unit_that_is_not_known_or_measures_something_else_is_told() {
    assert_eq!(one("coil", &range("5", "6", "degrees")).1.id, "trade-unit-unknown");
    let (found, wanted) = (Quantity::Voltage, Quantity::Resistance);
    let other = TradeError::QuantityDiffers { unit: Unit::Volt, found, wanted }.message();
    assert_eq!(one("coil", &range("5", "6", "V")), ("unit".into(), other));
}

#[test]
fn chart_marks_that_cross_are_told_in_their_row_and_in_the_units_that_are_typed() {
    let crossed = chart(&[("104", "0,9", "0,5"), ("158", "1.1", "1.5")]);
    assert_eq!(
        one("level_chart", &crossed),
        ("points/0/low".into(), chart_marks("104 °F", "0.9 in", "0.5 in"))
    );
}

#[test]
fn a_temperature_that_stands_twice_is_told_and_the_order_of_the_rows_does_not_matter() {
    let twice = chart(&[("104", "0.5", "0.9"), ("158", "1.1", "1.5"), ("104,0", "", "0.9")]);
    assert_eq!(
        wrong("level_chart", &twice),
        [("points/2/low".to_owned(), sheet_no_number()), ("points/2/at".to_owned(), sheet_twice("104 °F")),]
    );
    let Value::Chart(read) = judge(&chart(&[("158", "1.1", "1.5"), ("104", "0.5", "0.9")]), None).unwrap()
    else {
        panic!("a chart is read as a chart");
    };
    assert_eq!(read.points.iter().map(|point| point.at).collect::<Vec<_>>(), [104.0, 158.0]);
}

#[test]
fn a_chart_of_one_point_is_none() {
    assert_eq!(
        one("level_chart", &chart(&[("104", "0.5", "0.9")])),
        (String::new(), TradeError::TableTooShort { points: 1 }.message())
    );
}

#[test]
fn fasteners_are_counted_in_whole_ones() {
    assert_eq!(one("pan_bolts", &torque("16,5", &["35"])), ("fasteners".into(), sheet_fasteners("16,5")));
    assert_eq!(one("pan_bolts", &torque("0", &["35"])), ("fasteners".into(), sheet_fasteners("0")));
    assert_eq!(one("pan_bolts", &torque("16", &["35", ""])), ("stages/1".into(), sheet_no_number()));
    assert_eq!(one("pan_bolts", &torque("16", &[])), (String::new(), TradeError::NoStage.message()));
}

#[test]
fn a_fact_is_one_of_the_words_that_the_checklist_knows() {
    let maybe = value(Typed::Fact("maybe".into()));
    let known = Arg::AnyOf(vec!["no".into(), "yes".into()]);
    assert_eq!(one("supporter_needed", &maybe), ("value".into(), sheet_word("maybe", known)));
    assert!(judge(&value(Typed::Fact("yes".into())), all_needs().get("supporter_needed")).is_ok());
}

#[test]
fn a_value_without_its_source_is_not_kept() {
    let bare = TypedValue { source: " ".into(), ..range("5", "6", "Ω") };
    assert_eq!(one("coil", &bare), ("source".into(), sheet_no_source()));
}

#[test]
fn a_new_sheet_asks_for_every_key_of_the_checklist_in_its_kind_and_unit() {
    let mut empty = typed();
    empty.values.clear();
    let blank = empty.completed(&all_needs());
    assert_eq!(blank.values.keys().collect::<Vec<_>>(), all_needs().keys().collect::<Vec<_>>());
    assert_eq!(blank.values["touch_limit"].is, Typed::Measure { value: String::new(), unit: "°C".into() });
    let told = blank.keep(None, (&all_needs(), &all_keys()), "new", ADA).unwrap_err();
    for SheetKey { label, .. } in all_keys().values() {
        assert!(told.iter().any(|(name, _)| name == label), "{label} is blank and that is told");
    }
}

#[test]
fn a_value_of_another_kind_than_asked_is_typed_anew() {
    let mut sheet = typed();
    sheet.values.insert("coil".into(), value(Typed::Text("about five ohms".into())));
    let whole = sheet.completed(&all_needs());
    assert_eq!(whole.values["coil"].is.kind(), panside_procedure::format::sheet::ValueKind::Range);
    assert_eq!(whole.values["coil"].source, "a manual, page 7", "where it comes from is not lost");
}

#[test]
fn a_changed_value_has_a_new_author_and_no_check_and_the_others_keep_theirs() {
    let before = checked(&sheet(), &["coil".into(), "touch_limit".into()], &all_keys(), BO, true).unwrap();
    let mut edited = TypedSheet::of(&before, "pan-short");
    edited.values.insert("coil".into(), range("5,1", "5,7", "Ω"));
    let kept = edited.keep(Some(&before), (&all_needs(), &all_keys()), "invented-van", ADA).unwrap();
    assert_eq!(kept.revision, before.revision + 1);
    let coil = &kept.values["coil"];
    assert_eq!((coil.entered_by.as_str(), coil.entered_on.as_deref()), ("Ada", Some("2026-03-02")));
    assert_eq!(coil.checked, None, "a change takes the check away");
    let limit = &kept.values["touch_limit"];
    assert_eq!(limit.entered_by, "tests");
    let bo = Some(BO.id.to_string());
    assert_eq!(limit.checked, Some(Check { by: "Bo".into(), by_id: bo, on: "2026-03-03".into(), pin: true }));
}

#[test]
fn another_source_is_a_change_too() {
    let before = checked(&sheet(), &["coil".into()], &all_keys(), BO, true).unwrap();
    let mut edited = TypedSheet::of(&before, "pan-short");
    edited.values.get_mut("coil").unwrap().source = "another manual".into();
    let kept = edited.keep(Some(&before), (&all_needs(), &all_keys()), "invented-van", ADA).unwrap();
    assert_eq!(kept.values["coil"].checked, None);
}

#[test]
fn an_edit_that_changes_nothing_makes_no_revision() {
    let told = typed().keep(Some(&sheet()), (&all_needs(), &all_keys()), "invented-van", ADA).unwrap_err();
    assert_eq!(told, [(String::new(), sheet_unchanged())]);
}

#[test]
fn a_value_is_checked_once_and_by_somebody_else_than_who_entered_it() {
    let edited = TypedSheet {
        values: typed().values.into_iter().chain([("coil".into(), range("5,1", "5,7", "Ω"))]).collect(),
        ..typed()
    };
    let adas = edited.keep(Some(&sheet()), (&all_needs(), &all_keys()), "invented-van", ADA).unwrap();
    for name in ["Ada", "A\u{200b}da", "somebody else"] {
        let own = By { name, ..ADA };
        assert_eq!(
            checked(&adas, &["coil".into()], &all_keys(), own, true),
            Err(sheet_check_own("coil resistance", name))
        );
    }
    let once = checked(&sheet(), &["coil".into()], &all_keys(), BO, true).unwrap();
    assert_eq!(
        checked(&once, &["coil".into()], &all_keys(), ADA, true),
        Err(sheet_check_there("coil resistance", "Bo"))
    );
    assert_eq!(checked(&sheet(), &[], &all_keys(), BO, true), Err(sheet_check_none()));
    assert_eq!(checked(&sheet(), &["no_such_key".into()], &all_keys(), BO, true), Err(sheet_check_none()));
}

#[test]
fn a_screen_shows_who_entered_and_checked_what_stands_and_not_what_is_being_changed() {
    let before = checked(&sheet(), &["coil".into()], &all_keys(), BO, true).unwrap();
    let mut edited = TypedSheet::of(&before, "pan-short");
    let shown = |typed: &TypedSheet| {
        let view = view(typed, Some(&before), &all_needs(), &all_keys());
        view.values.into_iter().find(|value| value.key == "coil").unwrap()
    };
    let coil = shown(&edited);
    assert_eq!(coil.entered.unwrap().by, "tests");
    assert!(coil.checked.is_some() && coil.problems.is_empty());
    assert_eq!(
        (coil.name.as_str(), coil.units),
        ("coil resistance", ["Ω", "kΩ", "MΩ"].map(str::to_owned).to_vec())
    );
    edited.values.insert("coil".into(), range("5,6", "5,0", "Ω"));
    let coil = shown(&edited);
    assert_eq!((coil.entered, coil.checked, coil.problems.len()), (None, None, 1));
}

#[test]
fn a_sheet_gets_a_short_name_that_nobody_has() {
    assert_eq!(id_of("Van, front-wheel drive (six-speed)", &|_| false), "van-front-wheel-drive-six-speed");
    assert_eq!(id_of("Van", &|id| id == "van" || id == "van-2"), "van-3");
    assert_eq!(id_of("???", &|_| false), "sheet");
}

/// The needs with one key asked otherwise.
fn asked(key: &str, change: impl FnOnce(&mut Need)) -> Needs {
    let mut needs = all_needs();
    change(needs.get_mut(key).unwrap());
    needs
}

#[test]
fn what_is_useful_can_be_left_blank_and_half_of_it_can_not() {
    let needs = asked("coil", |need| need.asked = Asked::Useful);
    let mut edited = typed();
    edited.values.insert("coil".into(), range("", " ", "Ω"));
    let shown = |edited: &TypedSheet| {
        let view = view(edited, Some(&sheet()), &needs, &all_keys());
        view.values.into_iter().find(|value| value.key == "coil").unwrap().problems.len()
    };
    assert_eq!(shown(&edited), 0);
    let kept = edited.keep(Some(&sheet()), (&needs, &all_keys()), "invented-van", ADA).unwrap();
    assert!(!kept.values.contains_key("coil"));
    edited.values.insert("coil".into(), range("5", "", "Ω"));
    assert_eq!(shown(&edited), 1);
    let told = edited.keep(Some(&sheet()), (&needs, &all_keys()), "invented-van", ADA).unwrap_err();
    assert_eq!(told, [("coil resistance".to_owned(), sheet_no_number())]);
}

#[test]
fn a_torque_is_for_as_many_fasteners_as_are_counted_unless_another_number_is_typed() {
    let counted = |key: &str| Tightened::Counted(key.into());
    let tightens = vec![counted("short"), counted("long"), Tightened::Always(1)];
    let needs = asked("pan_bolts", |need| need.tightens = tightens);
    let mut edited = typed();
    edited.values.insert("pan_bolts".into(), torque("", &["9"]));
    edited.values.insert("short".into(), value(Typed::Count("14".into())));
    let fasteners = |edited: &TypedSheet| {
        let counts = edited.counting(&edited.values["pan_bolts"], needs.get("pan_bolts"));
        judge(&counts, needs.get("pan_bolts")).map(|is| match is {
            Value::Torque(torque) => torque.fasteners,
            other => panic!("{other:?}"),
        })
    };
    assert!(fasteners(&edited).is_err(), "the long ones are not counted yet");
    edited.values.insert("long".into(), value(Typed::Count("2".into())));
    assert_eq!(fasteners(&edited), Ok(17));
    edited.values.insert("pan_bolts".into(), torque("16", &["9"]));
    assert_eq!(fasteners(&edited), Ok(16));
}

#[test]
fn the_ends_of_a_chart_are_offered_for_a_range_that_says_so() {
    let mut keys = all_keys();
    keys.get_mut("coil").unwrap().ends_of = Some("level_chart".into());
    let mut edited = typed();
    let offer = |edited: &TypedSheet| {
        let view = view(edited, None, &all_needs(), &keys);
        view.values.into_iter().find(|value| value.key == "coil").unwrap().offer
    };
    edited.values.insert("level_chart".into(), chart(&[("158", "1", "2"), ("104,5", "", "")]));
    assert_eq!(offer(&edited), Some(range("104,5", "158", "°F").is));
    edited.values.insert("coil".into(), range("104,5", "158", "°F"));
    assert_eq!(offer(&edited), None, "it is taken already");
    edited.values.insert("level_chart".into(), chart(&[("158", "1", "2"), ("", "", "")]));
    assert_eq!(offer(&edited), None);
}
