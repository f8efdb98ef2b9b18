//! What a checklist asks a spec sheet for: each key once, with what must stand there and who asks.

use std::collections::BTreeMap;

use panside_procedure::Procedure;
use panside_procedure::format::sheet::{SheetValue, ValueKind};
use panside_procedure::format::{Ask, Asked, Checklist, Named, Sheet, SheetGroup, SheetKey, Step};
use panside_procedure::load::OnVehicle;
use panside_procedure::machine::StepIx;
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
    /// Only other vehicles have what it is for.
    pub elsewhere: bool,
    /// Titles of the steps that read it, in file order; none for a fact, which rules read.
    pub asked_by: Vec<String>,
    /// Whether a sheet must have it.
    pub asked: Asked,
    /// What it is asked for together with.
    pub group: SheetGroup,
    /// Its place among those, as the checklist comes to it.
    pub place: usize,
    /// What a torque tightens, where the checklist says so.
    pub tightens: Vec<Tightened>,
}

/// How many of something a torque tightens.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Tightened {
    /// So many on every vehicle.
    Always(u8),
    /// As many as the sheet counts under this key.
    Counted(String),
}

impl Need {
    fn of(kind: ValueKind) -> Need {
        Need {
            kind,
            unit: None,
            choices: Vec::new(),
            least: 0,
            elsewhere: false,
            asked_by: Vec::new(),
            asked: Asked::Needed,
            group: SheetGroup::Fluid,
            place: 0,
            tightens: Vec::new(),
        }
    }
}

/// What a value is asked for together with, where the checklist doesn't say: by what it is.
fn usual_group(kind: ValueKind, unit: Option<Unit>) -> SheetGroup {
    match (kind, unit.map(Unit::quantity)) {
        (ValueKind::Fact, _) => SheetGroup::Vehicle,
        (ValueKind::Count, _) => SheetGroup::Counts,
        (ValueKind::Torque, _) => SheetGroup::Torques,
        (ValueKind::Coils, _) | (_, Some(Quantity::Voltage | Quantity::Resistance)) => SheetGroup::Electrical,
        (ValueKind::Measure | ValueKind::Range | ValueKind::Chart | ValueKind::Text, _) => SheetGroup::Fluid,
    }
}

/// The values of a sheet that a second person compares with their sources.
pub fn to_check<'a>(sheet: &'a Sheet, keys: &'a Keys) -> impl Iterator<Item = &'a SheetValue> {
    let to_check = |(key, value): &(&String, &SheetValue)| is_to_check(keys.get(*key), value.is.kind());
    sheet.values.iter().filter(to_check).map(|(_, value)| value)
}

/// Whether a second person compares a value with its source, where the checklist doesn't say: what is judged by.
pub(super) fn is_to_check(said: Option<&SheetKey>, kind: ValueKind) -> bool {
    let judged_by = matches!(
        kind,
        ValueKind::Measure | ValueKind::Range | ValueKind::Chart | ValueKind::Torque | ValueKind::Coils
    );
    said.and_then(|said| said.checked).unwrap_or(judged_by)
}

/// All keys that a checklist names.
pub type Needs = BTreeMap<String, Need>;

/// What is said of keys.
pub type Keys = BTreeMap<String, SheetKey>;

/// What any of several checklists says of its keys. Where two differ, the first counts.
#[must_use]
pub fn keys<'a>(procedures: impl IntoIterator<Item = &'a Procedure>) -> Keys {
    let mut keys = Keys::new();
    for (key, said) in procedures.into_iter().flat_map(|procedure| &procedure.checklist.sheet_keys) {
        keys.entry(key.clone()).or_insert_with(|| said.clone());
    }
    keys
}

/// What people read for a key; the key itself where no checklist names it.
pub(super) fn label<'a>(keys: &'a Keys, key: &'a str) -> &'a str {
    keys.get(key).map_or(key, |said| &said.label)
}

/// The keys that a checklist names. Where several entries name one key, the first says what must stand there. `word`
/// gives those of the vehicle's facts that are known: what other vehicles alone have is not asked for.
#[must_use]
pub fn needs<'a>(procedure: &Procedure, word: &dyn Fn(&str) -> Option<&'a str>) -> Needs {
    let there = procedure.on_vehicle(word);
    let mut needs = Needs::new();
    for (at, step) in procedure.steps() {
        for entry in &step.entries {
            let elsewhere = !there.has_entry(at, &entry.id);
            for need in entry.ask.sheet_needs() {
                let key = need.key;
                let unit = need.unit.and_then(|unit| unit.parse().ok());
                let asked_by = (!elsewhere).then_some(&step.title);
                let tightens = tightens(&procedure.checklist, &there, &entry.ask);
                let need = Need { unit, elsewhere, tightens, ..Need::of(need.kind) };
                put(&mut needs, key, need, asked_by);
            }
        }
    }
    for fact in &procedure.checklist.facts {
        put(
            &mut needs,
            &fact.sheet,
            Need { choices: fact.values.clone(), ..Need::of(ValueKind::Fact) },
            None,
        );
    }
    for item in &procedure.checklist.items {
        let Some(key) = &item.sheet else { continue };
        let elsewhere = !there.has_item(&item.id);
        let need = Need { least: item.least(), elsewhere, ..Need::of(ValueKind::Count) };
        let moves = |at: StepIx, step: &Step| {
            let pieces = [&step.takes_off, &step.puts_back];
            there.has_step(at) && pieces.iter().any(|pieces| pieces.contains_key(&item.id))
        };
        let steps: Vec<_> = procedure.steps().filter(|(at, step)| moves(*at, step)).collect();
        put(&mut needs, key, need, steps.first().map(|(_, step)| &step.title));
        steps.iter().skip(1).for_each(|(_, step)| put_step(&mut needs, key, &step.title));
    }
    for (key, said) in &procedure.checklist.sheet_keys {
        if said.asked == Asked::Useful && !needs.contains_key(key) {
            put(&mut needs, key, Need::of(ValueKind::Text), None);
        }
        let Some(need) = needs.get_mut(key) else { continue };
        need.asked = said.asked;
        need.group = said.group.unwrap_or_else(|| usual_group(need.kind, need.unit));
    }
    after_their_charts(&procedure.checklist, &mut needs);
    needs
}

/// Puts what can be taken from a chart right behind the chart.
fn after_their_charts(checklist: &Checklist, needs: &mut Needs) {
    needs.values_mut().for_each(|need| need.place *= 2);
    for (key, said) in &checklist.sheet_keys {
        let chart = said.ends_of.as_ref().and_then(|chart| needs.get(chart)).map(|chart| chart.place);
        if let (Some(place), Some(need)) = (chart, needs.get_mut(key)) {
            need.place = place + 1;
        }
    }
}

/// What an entry's torque tightens, as far as the vehicle has it.
fn tightens(checklist: &Checklist, there: &OnVehicle, ask: &Ask) -> Vec<Tightened> {
    let Ask::Torque(torque) = ask else { return Vec::new() };
    let items =
        checklist.items.iter().filter(|item| torque.of.contains(&item.id) && there.has_item(&item.id));
    let tightened = items.map(|item| match &item.sheet {
        Some(key) => Tightened::Counted(key.clone()),
        None => Tightened::Always(item.count),
    });
    tightened.collect()
}

/// Adds what asks for a key. One that asks for it on this vehicle counts more than those that do not.
fn put(needs: &mut Needs, key: &str, need: Need, asked_by: Option<&String>) {
    let elsewhere = need.elsewhere;
    let place = needs.len();
    let known = needs.entry(key.to_owned()).or_insert(Need { place, ..need });
    known.elsewhere &= elsewhere;
    asked_by.into_iter().for_each(|title| put_step(needs, key, title));
}

fn put_step(needs: &mut Needs, key: &str, title: &String) {
    let Some(need) = needs.get_mut(key) else { return };
    if need.asked_by.last() != Some(title) {
        need.asked_by.push(title.clone());
    }
}

/// Whether a value belongs on a sheet: it is asked for on this vehicle, or stands there for reference only.
pub(super) fn is_asked(needs: &Needs, key: &str) -> bool {
    needs.get(key).is_none_or(|need| !need.elsewhere)
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
        let needs = needs(&procedure(), &|_| None);
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
