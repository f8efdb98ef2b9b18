//! What a checklist asks a spec sheet for: each key once, with what must stand there and who asks.

use std::collections::BTreeMap;

use panside_procedure::Procedure;
use panside_procedure::format::sheet::ValueKind;
use panside_procedure::format::{Named, Step};
use panside_trade::units::{Quantity, Unit};

/// What must stand under one key.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Need {
    /// The kind of value.
    pub kind: ValueKind,
    /// The unit it is asked in, where its quantity matters.
    pub unit: Option<Unit>,
    /// The words a fact can be; none for other kinds.
    pub choices: Vec<Named>,
    /// The least that a count can be; 0 for other kinds.
    pub least: u8,
    /// Titles of the steps that read it, in file order; none for a fact, which rules read.
    pub asked_by: Vec<String>,
}

/// All keys that a checklist names.
pub type Needs = BTreeMap<String, Need>;

/// What people read for keys.
pub type Labels = BTreeMap<String, String>;

/// What people read for the keys that any of several checklists names. Where two differ, the first counts.
#[must_use]
pub fn labels<'a>(procedures: impl IntoIterator<Item = &'a Procedure>) -> Labels {
    let mut labels = Labels::new();
    for (key, label) in procedures.into_iter().flat_map(|procedure| &procedure.checklist.sheet_keys) {
        labels.entry(key.clone()).or_insert_with(|| label.clone());
    }
    labels
}

/// What people read for a key; the key itself where no checklist names it.
pub(super) fn label<'a>(labels: &'a Labels, key: &'a str) -> &'a str {
    labels.get(key).map_or(key, String::as_str)
}

/// The keys that a checklist names. Where several entries name one key, the first says what must stand there.
#[must_use]
pub fn needs(procedure: &Procedure) -> Needs {
    let mut needs = Needs::new();
    for (_, step) in procedure.steps() {
        for need in step.entries.iter().flat_map(|entry| entry.ask.sheet_needs()) {
            let unit = need.unit.and_then(|unit| unit.parse().ok());
            let new = Need { kind: need.kind, unit, choices: Vec::new(), least: 0, asked_by: Vec::new() };
            let asked_by = &mut needs.entry(need.key.to_owned()).or_insert(new).asked_by;
            if asked_by.last() != Some(&step.title) {
                asked_by.push(step.title.clone());
            }
        }
    }
    for fact in &procedure.checklist.facts {
        let (kind, choices) = (ValueKind::Fact, fact.values.clone());
        let need = Need { kind, unit: None, choices, least: 0, asked_by: Vec::new() };
        needs.entry(fact.sheet.clone()).or_insert(need);
    }
    for item in &procedure.checklist.items {
        let Some(key) = &item.sheet else { continue };
        let moves =
            |step: &Step| step.takes_off.contains_key(&item.id) || step.puts_back.contains_key(&item.id);
        let asked_by = procedure.steps().filter(|(_, step)| moves(step)).map(|(_, step)| step.title.clone());
        let need = Need {
            kind: ValueKind::Count,
            unit: None,
            choices: Vec::new(),
            least: u8::from(!item.or_none),
            asked_by: asked_by.collect(),
        };
        needs.entry(key.clone()).or_insert(need);
    }
    needs
}

/// Whether a limit in one unit serves an entry that is read in another: a time to wait is given in minutes only, as it
/// is shown so; every other limit may be in any unit of its quantity.
pub(super) fn fits(wanted: Unit, found: Unit) -> bool {
    match wanted.quantity() {
        Quantity::Time => found == wanted,
        quantity => found.quantity() == quantity,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::procedure;

    #[test]
    fn every_key_of_the_checklist_is_asked_for_with_its_kind_and_unit() {
        let needs = needs(&procedure());
        let limit = &needs["touch_limit"];
        assert_eq!((limit.kind, limit.unit), (ValueKind::Measure, Some(Unit::DegreeCelsius)));
        assert!(!limit.asked_by.is_empty());
        assert_eq!(needs["level_chart"].kind, ValueKind::Chart);
        assert_eq!(needs["pan_bolts"].kind, ValueKind::Torque);
        assert_eq!(needs["cure"].unit, Some(Unit::Minute));
        let choices: Vec<&str> =
            needs["supporter_needed"].choices.iter().map(|one| one.id.as_str()).collect();
        assert_eq!(choices, ["no", "yes"]);
    }

    #[test]
    fn a_time_is_given_in_minutes_and_a_temperature_in_any_of_its_units() {
        assert!(fits(Unit::DegreeCelsius, Unit::DegreeFahrenheit));
        assert!(!fits(Unit::DegreeCelsius, Unit::Volt));
        assert!(fits(Unit::Minute, Unit::Minute));
    }
}
