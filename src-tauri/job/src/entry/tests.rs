//! What the figures say at an entry, as the technician meets it.

mod balance;
mod coil;
mod coils;
mod cool_down;
mod decision;
mod level;
mod scan;
mod torque;
mod without;

use std::collections::BTreeSet;

use panside_procedure::format::Ask;
use serde_json::json;

use crate::message::{LABELS, Message, class_label, kind_label};
use crate::testing::{Bay, figures};
use crate::value::EntryValue;
use crate::view::{Preview, preview};

/// A job on the checklist that has one entry of each kind that is worked out.
pub(super) fn bay() -> Bay {
    let (procedure, specs) = figures();
    Bay::with(procedure, specs)
}

/// A bay with a step in progress.
pub(super) fn at(step: &str) -> Bay {
    let mut bay = bay();
    bay.begin(step).unwrap();
    bay
}

/// What is told while it is typed.
pub(super) fn typing(bay: &Bay, step: &str, entry: &str, value: &EntryValue) -> Preview {
    preview(&bay.job, &bay.shop, step, entry, value, &bay.now())
}

pub(super) fn ids(said: &[Message]) -> Vec<&str> {
    said.iter().map(|message| message.id.as_str()).collect()
}

/// An argument of the message with this id, as text.
pub(super) fn arg(said: &[Message], id: &str, name: &str) -> String {
    let message = said.iter().find(|message| message.id == id);
    let message = message.unwrap_or_else(|| panic!("{id} is not said: {:?}", ids(said)));
    match &message.args[name] {
        crate::message::Arg::Text(text) => text.clone(),
        crate::message::Arg::Number(number) => number.to_string(),
        other => panic!("{other:?}"),
    }
}

/// An entry of each kind, with every class that it can have.
fn every_kind() -> Vec<Ask> {
    let amount = json!({"volume": "fill.volume"});
    let asks = json!([
        {"sign_off": {"sign": "s"}},
        {"coils": {"of": "k"}},
        {"reading": {"unit": "km"}},
        {"reading": {"unit": "V", "at_most": "k"}},
        {"level": {"chart": "k", "may_give_up": true}},
        {"coil": {"limits": "k"}},
        {"cool_down": {"limit": "k"}},
        {"balance": {"drained": [amount], "added": [amount], "density": "k", "unseen": "k"}},
        {"count": {"of": {"bolts": 1}}},
        {"torque": {"spec": "k", "exceptions": ["not_proved"]}},
        {"photo": {"of": "it"}},
        {"choice": {"options": []}},
        {"several": {"options": [], "ranked": []}},
        {"decision": {"of": {}, "options": [], "rows": []}},
        {"scan": {"of": "vin"}},
        {"timer": {"at_least": "k"}},
        {"note": {}},
        {"estimate": {}},
        {"authorization": {"for": "ask.estimate"}}
    ]);
    serde_json::from_value(asks).unwrap()
}

#[test]
fn every_kind_and_each_of_its_classes_has_a_label_and_no_label_is_left_over() {
    let all = every_kind();
    let kinds: BTreeSet<&str> = all.iter().map(Ask::kind).collect();
    assert_eq!(kinds, Ask::KINDS.iter().copied().collect(), "a kind has no sample");
    let classes = all.iter().flat_map(|ask| {
        ask.classes()
            .into_iter()
            .map(|class| (class_label(ask.kind(), class), format!("class {class} of {}", ask.kind())))
    });
    let mut said = BTreeSet::new();
    for (label, what) in kinds.iter().map(|kind| (kind_label(kind), format!("kind {kind}"))).chain(classes) {
        assert!(LABELS.contains(&label.id.as_str()), "{what} has no label");
        said.insert(label.id);
    }
    assert_eq!(said, LABELS.iter().map(|id| (*id).to_owned()).collect(), "nothing says these");
}
