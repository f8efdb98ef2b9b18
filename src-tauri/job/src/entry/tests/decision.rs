use super::ids;
use crate::command::Command;
use crate::message::as_said;
use crate::testing::{Bay, choice, person, work};
use crate::value::{Accounted, EntryValue};
use crate::view::DecisionView;

fn ohms(value: &str) -> EntryValue {
    EntryValue::Reading { value: value.into(), unit: "Ω".into() }
}

fn decide(class: &str) -> EntryValue {
    EntryValue::Decision { class: class.into(), against: None, pin: None }
}

fn against(class: &str, reason: &str, by: &str) -> EntryValue {
    let against = Some(Accounted { reason: reason.into(), by: person(by) });
    EntryValue::Decision { class: class.into(), against, pin: None }
}

/// Ada measures the coil.
fn measured(value: &str) -> Bay {
    let mut bay = Bay::open();
    bay.work_up_to("probe");
    bay.begin("coil").unwrap();
    bay.enter("coil", "ohms", ohms(value)).unwrap();
    bay
}

fn table(bay: &Bay) -> DecisionView {
    bay.step("coil").entries[1].decision.clone().unwrap()
}

#[test]
fn the_table_says_what_the_reading_comes_to_before_anybody_decides() {
    let out = table(&measured("9"));
    assert_eq!(out.class.as_deref(), Some("replace"));
    assert_eq!(out.says, as_said("The coil is out of limits."));
    assert_eq!(
        out.inputs.iter().map(|input| input.is.id.as_str()).collect::<Vec<_>>(),
        ["decision-read", "class-photo-taken"]
    );
    let good = table(&measured("5.3"));
    assert_eq!((good.class.as_deref(), good.says), (Some("keep"), as_said("The coil is within limits.")));
}

#[test]
fn a_step_that_was_skipped_is_missing_and_one_to_come_is_waited_for() {
    let mut bay = Bay::open();
    bay.work_usual("identify");
    bay.must(Command::Skip { step: "photo".into(), reason: "camera is broken".into() });
    for step in ["go_ahead", "locks"] {
        bay.work_usual(step);
    }
    bay.begin("coil").unwrap();
    assert_eq!(bay.enter("coil", "judged", decide("keep")).unwrap_err().message.id, "decision-first");
    assert_eq!((table(&bay).class, table(&bay).says.id.as_str()), (None, "decision-first"));
    bay.enter("coil", "ohms", ohms("9")).unwrap();
    assert_eq!(table(&bay).says, as_said("The coil is out of limits, and nobody has a photo."));
    assert_eq!(table(&bay).inputs[1].is.id, "decision-missing");
}

#[test]
fn nobody_keeps_a_bad_coil_but_by_a_reason_and_another_name() {
    let mut bay = measured("9");
    let mut refused = |value| bay.enter("coil", "judged", value).unwrap_err().message.id;
    assert_eq!(refused(decide("keep")), "decision-why");
    assert_eq!(refused(against("keep", " ", "Bo")), "refused-no-reason");
    assert_eq!(refused(against("keep", "a new one is on order", "Nobody")), "refused-no-person");
    assert_eq!(refused(against("keep", "a new one is on order", "Ada")), "decision-second");
    assert_eq!(refused(decide("maybe")), "choice-unknown");
    assert_eq!(refused(choice("keep")), "entry-kind");
    bay.enter("coil", "judged", against("keep", " a new one is on order ", "Bo")).unwrap();
    let entry = bay.step("coil").entries[1].clone();
    assert_eq!(entry.value, Some(against("keep", "a new one is on order", "Bo")));
    assert_eq!(ids(&entry.said), ["decision-against", "as-said"]);
    bay.done("coil").unwrap();
    assert_eq!(table(&bay).class.as_deref(), Some("replace"), "what the table said stays beside it");
}

#[test]
fn a_good_coil_is_not_replaced_whoever_says_so() {
    let mut bay = measured("5.3");
    let refused = bay.enter("coil", "judged", against("replace", "to be sure", "Bo")).unwrap_err();
    assert_eq!(refused.message.id, "decision-not");
    bay.enter("coil", "judged", against("keep", "it is good", "Bo")).unwrap();
    let entry = bay.step("coil").entries[1].clone();
    assert_eq!(entry.value, Some(decide("keep")), "nobody goes against a table by agreeing with it");
}

#[test]
fn a_coil_measured_again_is_decided_again() {
    let mut bay = measured("9");
    bay.enter("coil", "judged", decide("replace")).unwrap();
    bay.enter("coil", "ohms", ohms("5.3")).unwrap();
    let entry = bay.step("coil").entries[1].clone();
    assert_eq!((entry.not_yet, ids(&entry.said)), (true, vec!["decision-again"]));
    let refused = bay.done("coil").unwrap_err();
    assert_eq!(
        (refused.message.id.as_str(), ids(&refused.unmet)),
        ("refused-missing", vec!["decision-again"])
    );
    bay.enter("coil", "judged", decide("keep")).unwrap();
    bay.done("coil").unwrap();
    assert!(!bay.step("coil").entries[1].not_yet);
}

#[test]
fn what_is_corrected_afterwards_is_decided_by_the_corrected_reading() {
    let mut bay = measured("9");
    bay.enter("coil", "judged", decide("replace")).unwrap();
    bay.done("coil").unwrap();
    bay.must(Command::Void { step: "coil".into(), reason: "digits swapped".into() });
    let correct = |class: &str| Command::Correct {
        step: "coil".into(),
        entries: [("ohms", ohms("5.3")), ("judged", decide(class))]
            .map(|(id, it)| (id.to_owned(), it))
            .into(),
        signatures: Vec::new(),
        reason: None,
    };
    assert_eq!(bay.ask(correct("replace")).unwrap_err().message.id, "decision-not");
    bay.must(correct("keep"));
    let entry = bay.step("coil").entries[1].clone();
    assert_eq!((entry.class.as_deref(), ids(&entry.said)), (Some("keep"), vec!["as-said"]));
    assert_eq!(table(&bay).says, as_said("The coil is within limits."));
}

#[test]
fn what_decided_is_voided_with_the_decision() {
    let mut bay = Bay::open();
    bay.work_up_to("probe");
    bay.must(work("coil", &[("ohms", ohms("9")), ("judged", decide("replace"))], &[]));
    bay.must(Command::Void { step: "photo".into(), reason: "another vehicle".into() });
    assert_eq!(bay.step("coil").shown, panside_procedure::Shown::Voided);
}
