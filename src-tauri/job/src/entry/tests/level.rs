use super::{arg, ids, typing};
use crate::command::Command;
use crate::testing::{Bay, litres, person};
use crate::value::{Accounted, EntryValue, StickReading, StickShows};

/// Two readings at 60 °C, where the sheet's band is 22 to 32 mm.
pub(super) fn stick(millimetres: &str) -> EntryValue {
    let stick = StickShows::Trace { value: millimetres.into(), unit: "mm".into() };
    let reading = StickReading { temperature: "60".into(), temperature_unit: "°C".into(), stick };
    EntryValue::Level { readings: vec![reading.clone(), reading], confirmed_no_trace: false, given_up: None }
}

fn at_level() -> Bay {
    let mut bay = super::bay();
    bay.work("fill", &[("volume", litres("3"))], &[]);
    bay.begin("level").unwrap();
    bay
}

#[test]
fn a_level_too_low_says_how_far_and_what_to_add() {
    let told = typing(&at_level(), "level", "stick", &stick("18"));
    assert_eq!((told.class.as_deref(), told.not_yet), (Some("below"), true));
    assert_eq!(arg(&told.said, "level-off-by", "distance"), "4 mm");
    // 9 mm to the middle of the band at 15 mm for each litre is 0.6 L; 80 % of it are poured.
    assert_eq!(arg(&told.said, "level-add", "estimate"), "0.6 L");
    assert_eq!(arg(&told.said, "level-add", "pour"), "0.48 L");
    assert!(ids(&told.said).contains(&"level-gain-sheet"));
}

#[test]
fn a_level_too_high_keeps_shift_judgement_closed() {
    let mut bay = at_level();
    bay.enter("level", "added", litres("0")).unwrap();
    let told = typing(&bay, "level", "stick", &stick("36"));
    assert_eq!((told.class.as_deref(), told.not_yet), (Some("above"), true));
    assert_eq!(arg(&told.said, "level-take-out", "estimate"), "0.6 L");
    assert_eq!(arg(&told.said, "level-closed", "why"), "level_above");
    bay.enter("level", "stick", stick("36")).unwrap();
    assert!(bay.done("level").is_err());
    bay.must(Command::Leave { step: "level".into() });
    assert_eq!(bay.begin("shifts").unwrap_err().unmet[0].id, "unmet-gate-read");
}

#[test]
fn a_level_in_its_band_opens_it_and_advises_nothing() {
    let mut bay = at_level();
    let told = typing(&bay, "level", "stick", &stick("26"));
    assert_eq!(ids(&told.said), ["level-agree"]);
    bay.work("level", &[("added", litres("0")), ("stick", stick("26"))], &[]);
    bay.begin("shifts").unwrap();
}

#[test]
fn what_was_added_here_teaches_how_far_a_litre_lifts_the_level() {
    let mut bay = at_level();
    bay.enter("level", "added", litres("0")).unwrap();
    bay.enter("level", "stick", stick("12")).unwrap();
    bay.enter("level", "added", litres("0,3")).unwrap();
    bay.enter("level", "stick", stick("15")).unwrap();
    let said = bay.step("level").entries[1].said.clone();
    // 3 mm for 0.3 L: 10 mm for each litre, where the sheet says 15.
    assert_eq!(arg(&said, "level-gain-learnt", "gain"), "10 mm/L");
    assert_eq!(arg(&said, "level-add", "estimate"), "1.2 L", "12 mm to the middle");
}

#[test]
fn a_level_that_fell_while_fluid_was_added_teaches_nothing() {
    let mut bay = at_level();
    bay.enter("level", "added", litres("0")).unwrap();
    bay.enter("level", "stick", stick("18")).unwrap();
    bay.enter("level", "added", litres("0,3")).unwrap();
    let told = typing(&bay, "level", "stick", &stick("15"));
    assert!(ids(&told.said).contains(&"level-gain-sheet"));
}

#[test]
fn a_vehicle_that_leaks_has_a_named_way_out() {
    let mut bay = at_level();
    let given_up = |reason: &str, by: &str| {
        let EntryValue::Level { readings, .. } = stick("15") else { panic!("a level") };
        let given_up = Some(Accounted { reason: reason.into(), by: person(by) });
        EntryValue::Level { readings, confirmed_no_trace: false, given_up }
    };
    assert_eq!(typing(&bay, "level", "stick", &given_up("", "Ada")).said[0].id, "refused-no-reason");
    bay.work("level", &[("added", litres("2")), ("stick", given_up("runs out at the cooler", "Ada"))], &[]);
    assert_eq!(bay.step("level").entries[1].class.as_deref(), Some("not_reached"));
    assert_eq!(bay.begin("balance").unwrap_err().message.id, "refused-ending", "no new work");
}

#[test]
fn who_gives_up_a_level_in_its_band_is_not_heard() {
    let EntryValue::Level { readings, .. } = stick("26") else { panic!("a level") };
    let given_up = Some(Accounted { reason: "leaks".into(), by: person("Ada") });
    let value = EntryValue::Level { readings, confirmed_no_trace: false, given_up };
    assert_eq!(typing(&at_level(), "level", "stick", &value).class.as_deref(), Some("in"));
}

#[test]
fn what_is_no_level_is_told_and_never_taken() {
    for (millimetres, id) in
        [("NaN", "trade-number-character"), ("-1", "trade-stick-below-end"), ("", "trade-number-empty")]
    {
        let told = typing(&at_level(), "level", "stick", &stick(millimetres));
        assert_eq!((told.class, ids(&told.said)), (None, vec![id]));
    }
}
