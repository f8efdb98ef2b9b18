//! As many dangers as a checklist may have, made from what it is about.

use std::collections::BTreeSet;

use panside_procedure::machine::DangerSet;
use serde_json::{Value, json};

/// The same checklist with as many dangers as there may be: its own come last, before them those that name two values of
/// conditions, with hands in a zone of its steps and without. Where there are not so many, they begin anew under other names.
///
/// # Panics
/// When the checklist has no conditions and dangers.
#[must_use]
pub fn with_many_dangers(mut checklist: Value) -> Value {
    let conditions = checklist["conditions"].as_array().cloned().unwrap_or_default();
    let values = conditions.iter().flat_map(|condition| {
        let id = condition["id"].as_str().unwrap_or_default();
        let values = condition["values"].as_array().into_iter().flatten();
        let values = values.filter_map(|value| value["id"].as_str());
        values.map(move |value| format!("{id} = {value}"))
    });
    let values: Vec<String> = values.collect();
    let pairs = values.iter().flat_map(|one| values.iter().map(move |other| format!("{one} and {other}")));
    let steps = checklist["phases"].as_array().into_iter().flatten();
    let steps = steps.filter_map(|phase| phase["steps"].as_array()).flatten();
    let zones: BTreeSet<&str> = steps.filter_map(|step| step["zone"].as_str()).collect();
    let hands = |pair: String| {
        let in_zones: Vec<String> =
            zones.iter().map(|zone| format!("doing.zone = {zone} and {pair}")).collect();
        in_zones.into_iter().chain([pair])
    };
    let all: Vec<String> = pairs.flat_map(hands).collect();
    let own = checklist["dangers"].as_array().cloned().unwrap_or_else(|| panic!("no dangers"));
    let made = all.iter().cycle().enumerate().map(
        |(at, when)| json!({"id": format!("made_{at}"), "signal": "notice", "text": "Made.", "when": when}),
    );
    checklist["dangers"] = made.take(DangerSet::MOST - own.len()).chain(own).collect();
    checklist
}
