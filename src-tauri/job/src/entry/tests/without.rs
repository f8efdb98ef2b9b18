//! What is said where the sheet does not have what it can do without.

use std::sync::Arc;

use panside_procedure::format::sheet::Value;

use super::balance::{balance, filled_in};
use super::level::stick;
use super::{ids, typing};
use crate::sheet::Specs;
use crate::testing::{Bay, figures, litres};
use crate::value::{EntryValue, StickReading};

/// A job on the figures' checklist whose sheet lacks these values.
fn bay_without(keys: &[&str]) -> Bay {
    let (procedure, specs) = figures();
    let mut sheet = specs.sheet.clone();
    keys.iter().for_each(|key| assert!(sheet.values.remove(*key).is_some(), "{key}"));
    Bay::with(procedure, Arc::new(Specs::of(&sheet).unwrap()))
}

fn without_agreement() -> Bay {
    let (procedure, specs) = figures();
    let mut sheet = specs.sheet.clone();
    for value in sheet.values.values_mut() {
        if let Value::Chart(chart) = &mut value.is {
            chart.agreement = None;
        }
    }
    Bay::with(procedure, Arc::new(Specs::of(&sheet).unwrap()))
}

fn at_level(mut bay: Bay) -> Bay {
    bay.work("fill", &[("volume", litres("3"))], &[]);
    bay.begin("level").unwrap();
    bay
}

fn readings(millimetres: &[&str]) -> EntryValue {
    let one = |millimetres: &&str| -> Vec<StickReading> {
        match stick(millimetres) {
            EntryValue::Level { readings, .. } => readings.into_iter().take(1).collect(),
            other => panic!("{other:?}"),
        }
    };
    EntryValue::Level {
        readings: millimetres.iter().flat_map(one).collect(),
        confirmed_no_trace: false,
        given_up: None,
    }
}

#[test]
fn without_the_rise_for_each_litre_a_level_too_low_says_why_no_amount_is_given() {
    let told = typing(&at_level(bay_without(&["fluid_gain"])), "level", "stick", &stick("18"));
    assert_eq!((told.class.as_deref(), told.not_yet), (Some("below"), true));
    assert!(ids(&told.said).contains(&"level-no-gain"), "{:?}", ids(&told.said));
    assert!(!ids(&told.said).contains(&"level-add"));
}

#[test]
fn without_it_what_was_added_here_still_teaches_it() {
    let mut bay = at_level(bay_without(&["fluid_gain"]));
    bay.enter("level", "added", litres("0")).unwrap();
    bay.enter("level", "stick", stick("12")).unwrap();
    bay.enter("level", "added", litres("0,3")).unwrap();
    let told = typing(&bay, "level", "stick", &stick("15"));
    assert!(ids(&told.said).contains(&"level-gain-learnt"), "{:?}", ids(&told.said));
    assert!(!ids(&told.said).contains(&"level-no-gain"));
}

#[test]
fn without_how_far_readings_may_differ_those_on_the_same_side_of_the_marks_count_together() {
    let bay = at_level(without_agreement());
    let far = typing(&bay, "level", "stick", &readings(&["23", "31"]));
    assert_eq!(
        (far.class.as_deref(), ids(&far.said)),
        (Some("in"), vec!["level-agree", "level-no-agreement"])
    );
    let both = typing(&bay, "level", "stick", &readings(&["21", "23"]));
    assert_eq!(ids(&both.said), ["level-classes-differ"]);
}

#[test]
fn without_what_may_be_lost_unseen_a_balance_allows_nothing_for_it() {
    // 0.12 L more in: within what two jugs and 0.1 L unseen allow, beyond what two jugs alone do.
    let draw = |bay: Bay| typing(&filled_in(bay, "3,6", "3,72", "0"), "balance", "fluid", &balance(None));
    assert_eq!(draw(super::bay()).class.as_deref(), Some("closes"));
    let told = draw(bay_without(&["unseen"]));
    assert_eq!(told.class.as_deref(), Some("differs"), "{:?}", told.said);
    assert!(ids(&told.said).contains(&"balance-no-unseen"));
    let told = draw(bay_without(&["capacity"]));
    assert_eq!(told.class.as_deref(), Some("closes"), "{:?}", told.said);
    assert!(ids(&told.said).contains(&"balance-no-capacity"));
}
