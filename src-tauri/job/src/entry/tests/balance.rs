use super::{arg, bay, ids, typing};
use crate::testing::{Bay, degrees, litres, person};
use crate::value::{Accounted, EntryValue, StickReading, StickShows};

pub(super) fn balance(explained: Option<(&str, &str)>) -> EntryValue {
    let explained = explained.map(|(reason, by)| Accounted { reason: reason.into(), by: person(by) });
    EntryValue::Balance { temperature: "20".into(), temperature_unit: "°C".into(), explained }
}

fn stick() -> EntryValue {
    let stick = StickShows::Trace { value: "26".into(), unit: "mm".into() };
    let reading = StickReading { temperature: "60".into(), temperature_unit: "°C".into(), stick };
    EntryValue::Level { readings: vec![reading.clone(), reading], confirmed_no_trace: false, given_up: None }
}

/// Drained, filled and topped up, before the balance is drawn.
fn filled(drained: &str, filled: &str, added: &str) -> Bay {
    filled_in(bay(), drained, filled, added)
}

pub(super) fn filled_in(mut bay: Bay, drained: &str, filled: &str, added: &str) -> Bay {
    bay.work("drain", &[("volume", litres(drained)), ("fluid", degrees("20"))], &[]);
    bay.work("fill", &[("volume", litres(filled))], &[]);
    bay.work("level", &[("added", litres(added)), ("stick", stick())], &[]);
    bay.begin("balance").unwrap();
    bay
}

#[test]
fn a_balance_that_closes_lets_the_step_be_done() {
    let mut bay = filled("3,6", "3,3", "0,3");
    bay.work("balance", &[("fluid", balance(None))], &[]);
    assert_eq!(bay.step("balance").entries[0].class.as_deref(), Some("closes"));
}

#[test]
fn a_balance_that_does_not_close_asks_for_an_explanation() {
    let mut bay = filled("3,6", "3,3", "0,9");
    let told = typing(&bay, "balance", "fluid", &balance(None));
    assert_eq!((told.class.as_deref(), told.not_yet), (Some("differs"), true));
    assert_eq!(ids(&told.said), ["balance-more-in", "balance-explain"]);
    bay.enter("balance", "fluid", balance(None)).unwrap();
    assert_eq!(bay.done("balance").unwrap_err().message.id, "refused-not-yet");
    for (reason, by, id) in
        [(" ", "Ada", "refused-no-reason"), ("the new filter", "Nobody", "refused-no-person")]
    {
        assert_eq!(typing(&bay, "balance", "fluid", &balance(Some((reason, by)))).said[0].id, id);
    }
    bay.enter("balance", "fluid", balance(Some((" the new filter and the cooler ", "Ada")))).unwrap();
    bay.done("balance").unwrap();
    let entry = bay.step("balance").entries[0].clone();
    assert_eq!(entry.class.as_deref(), Some("explained"));
    let Some(EntryValue::Balance { explained: Some(explained), .. }) = entry.value else {
        panic!("explained")
    };
    assert_eq!(explained.reason, "the new filter and the cooler");
}

#[test]
fn both_sides_are_compared_at_one_temperature() {
    // ASTM D1250 table 54D, 850 kg/m³: a = 0.6278 / 850; 3.6 L at 20 °C is 3.6 × exp(−5a(1 + 0.8 × 5a)) = 3.587 L.
    let bay = filled("3,6", "3,6", "0");
    let said = typing(&bay, "balance", "fluid", &balance(None)).said;
    assert_eq!(arg(&said, "balance-closes", "drained"), "3.587 L");
}

#[test]
fn an_explanation_of_what_closes_is_not_kept() {
    let mut bay = filled("3,6", "3,3", "0,3");
    bay.work("balance", &[("fluid", balance(Some(("splash", "Ada"))))], &[]);
    let value = bay.step("balance").entries[0].value.clone().unwrap();
    assert_eq!(value, balance(None));
}

#[test]
fn more_than_the_transmission_holds_never_closes() {
    let bay = filled("9", "9", "0");
    let told = typing(&bay, "balance", "fluid", &balance(None));
    assert_eq!(told.class.as_deref(), Some("differs"));
    assert!(ids(&told.said).contains(&"balance-beyond-capacity"));
}

#[test]
fn an_amount_that_was_not_entered_is_named_and_can_be_explained() {
    let bay = bay();
    let told = typing(&bay, "balance", "fluid", &balance(None));
    assert_eq!(told.class.as_deref(), Some("differs"));
    assert_eq!(arg(&told.said, "balance-no-entry", "entry"), "Drained amount");
    let told = typing(&bay, "balance", "fluid", &balance(Some(("the jug was knocked over", "Ada"))));
    assert_eq!(told.class.as_deref(), Some("explained"));
}

#[test]
fn a_drain_too_hot_to_reckon_with_holds_nobody_for_ever() {
    let mut bay = bay();
    bay.work("drain", &[("volume", litres("3,6")), ("fluid", degrees("140"))], &[]);
    bay.work("fill", &[("volume", litres("3,6"))], &[]);
    bay.work("level", &[("added", litres("0")), ("stick", stick())], &[]);
    bay.begin("balance").unwrap();
    let told = typing(&bay, "balance", "fluid", &balance(None));
    assert_eq!(ids(&told.said), ["trade-fluid-temperature", "balance-explain"]);
    bay.work("balance", &[("fluid", balance(Some(("read too hot", "Ada"))))], &[]);
}

#[test]
fn a_temperature_that_is_none_is_refused_here_where_it_is_typed() {
    let bay = filled("3,6", "3,3", "0,3");
    for (temperature, unit, id) in [
        ("", "°C", "trade-number-empty"),
        ("NaN", "°C", "trade-number-character"),
        ("20", "L", "trade-quantity-differs"),
    ] {
        let value = EntryValue::Balance {
            temperature: temperature.into(),
            temperature_unit: unit.into(),
            explained: None,
        };
        let told = typing(&bay, "balance", "fluid", &value);
        assert_eq!((told.class, ids(&told.said)), (None, vec![id]));
    }
}
