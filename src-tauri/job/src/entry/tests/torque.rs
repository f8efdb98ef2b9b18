use super::{arg, at, ids, typing};
use crate::testing::{person, tool};
use crate::value::{Accounted, Adapter, EntryValue, Tool};
use crate::view::Preview;

/// Four bolts at 9 N·m with 10 %: 8.1 to 9.9 N·m.
fn clicked(setting: &str, tool: Tool) -> EntryValue {
    EntryValue::Torque {
        stages: vec![setting.into()],
        unit: "N·m".into(),
        tool: Box::new(tool),
        adapter: None,
        angles: Vec::new(),
        exception: None,
    }
}

fn past() -> Tool {
    Tool { calibration_due: "2026-03-01".into(), ..tool() }
}

fn told(entry: &str, value: &EntryValue) -> Preview {
    typing(&at("torque"), "torque", entry, value)
}

fn excepted(setting: &str, tool: Tool, reason: &str, by: &str) -> EntryValue {
    let mut value = clicked(setting, tool);
    if let EntryValue::Torque { exception, .. } = &mut value {
        *exception = Some(Accounted { reason: reason.into(), by: person(by) });
    }
    value
}

#[test]
fn a_tool_past_its_calibration_needs_a_named_exception() {
    let without = told("bolts", &clicked("9", past()));
    assert_eq!((without.class.as_deref(), without.not_yet), (Some("outside"), true));
    assert_eq!(ids(&without.said)[..2], ["torque-calibration", "torque-may-except"]);
    let by = told("bolts", &excepted("9", past(), "no other wrench here", "Ada"));
    assert_eq!((by.class.as_deref(), by.not_yet), (Some("by_exception"), false));
    assert!(ids(&by.said).contains(&"torque-by-exception"));
    assert_eq!(
        told("bolts", &excepted("9", past(), "no other wrench here", "Nobody")).said[0].id,
        "refused-no-person"
    );
    assert_eq!(told("bolts", &excepted("9", past(), "", "Ada")).said[0].id, "refused-no-reason");
}

#[test]
fn a_setting_outside_tolerance_is_never_excepted() {
    let wrong = told("bolts", &excepted("12", past(), "close enough", "Ada"));
    assert_eq!(wrong.class.as_deref(), Some("outside"));
}

#[test]
fn where_the_checklist_knows_no_exception_there_is_none() {
    let value = excepted("9", past(), "no other wrench here", "Ada");
    assert_eq!(told("sure", &value).class.as_deref(), Some("outside"));
}

#[test]
fn an_exception_that_nothing_calls_for_is_not_kept() {
    let mut bay = at("torque");
    bay.enter("torque", "bolts", excepted("9", tool(), "just so", "Ada")).unwrap();
    assert_eq!(bay.step("torque").entries[0].value, Some(clicked("9", tool())));
}

#[test]
fn a_click_near_its_limit_is_not_proved_with_what_the_tool_may_be_off() {
    // Up to 15 N·m a tool of class A is off by 4 %: 8.1 × 1.04 = 8.424 to 9.9 × 0.96 = 9.504 N·m are proved.
    let near = told("bolts", &clicked("9.8", tool()));
    assert_eq!(near.class.as_deref(), Some("inside"), "as the sheet's tolerance says");
    assert_eq!(arg(&near.said, "torque-not-proved", "to"), "9.504 N·m");
    let guarded = told("sure", &clicked("9.8", tool()));
    assert_eq!((guarded.class.as_deref(), ids(&guarded.said)), (Some("outside"), vec!["torque-not-proved"]));
    assert_eq!(told("sure", &clicked("9.5", tool())).class.as_deref(), Some("inside"));
}

#[test]
fn with_an_adapter_the_bolt_is_judged_and_the_setting_is_told() {
    let mut value = clicked("7.5", tool());
    if let EntryValue::Torque { adapter, .. } = &mut value {
        let [tool, length] = ["250", "50"].map(str::to_owned);
        *adapter = Some(Adapter { tool, length, unit: "mm".into(), angle: "0".into() });
    }
    // 250 / (250 + 50): 7.5 N·m on the tool are 9 N·m at the bolt.
    let by = told("bolts", &value);
    assert_eq!(by.class.as_deref(), Some("inside"));
    assert_eq!(arg(&by.said, "torque-adapter", "setting"), "7.5 N·m");
    if let EntryValue::Torque { adapter: Some(adapter), .. } = &mut value {
        adapter.angle = "180".into();
        adapter.length = "250".into();
    }
    assert_eq!(told("bolts", &value).said[0].id, "trade-adapter-reach");
}

#[test]
fn bolts_that_are_turned_by_an_angle_are_judged_one_by_one() {
    let turned = |angles: &[&str]| {
        let mut value = clicked("9", tool());
        if let EntryValue::Torque { angles: typed, .. } = &mut value {
            *typed = angles.iter().map(|&angle| angle.to_owned()).collect();
        }
        told("turned", &value)
    };
    assert_eq!(turned(&["90", "94,9"]).class.as_deref(), Some("inside"));
    let short = turned(&["90", "60"]);
    assert_eq!((short.class.as_deref(), short.said[0].id.as_str()), (Some("outside"), "torque-angle-short"));
    assert_eq!(arg(&short.said, "torque-angle-short", "left"), "30 °");
    assert_eq!(turned(&["120", "90"]).said[0].id, "torque-angle-over");
    assert_eq!(turned(&["90"]).said[0].id, "torque-angle-count");
    assert_eq!(turned(&["90", "NaN"]).said[0].id, "trade-number-character");
    assert_eq!(turned(&["90", "9999"]).said[0].id, "trade-angle-turned");
}

#[test]
fn the_click_is_told_in_the_other_unit_too() {
    // 9 N·m / 1.3558179 = 6.638 lbf·ft (NIST SP 811).
    let other = told("bolts", &clicked("9", tool())).other.unwrap();
    assert_eq!((other.value.as_str(), other.unit.as_str()), ("6.638", "lbf·ft"));
}
