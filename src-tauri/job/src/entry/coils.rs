//! The coils of all solenoids at one connector, each judged as [`super::coil`] does by its own limits.

use panside_procedure::format::Checklist;
use panside_procedure::format::entry::Coils;
use panside_trade::coil::{CoilClass, CoilLimits, CoilResult, MeterShows, parse_shown};
use panside_trade::measure::Measure;
use panside_trade::units::{Quantity, Unit};
use serde::{Deserialize, Serialize};

use super::coil::{at_of, judged, say};
use super::kind::{self, Kind};
use super::{Classified, Context, no_sheet_value};
use crate::command::Refusal;
use crate::message::{
    Message, coil_meter_unknown, coils_inside, coils_missing, coils_none, coils_twice, coils_unknown,
    limit_coil,
};
use crate::sheet::{CoilSpec, Specs};
use crate::units;
use crate::value::{CoilShown, CoilValue, CoilsValue, EntryValue};

/// The coils of a list judged, and how that came about.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CoilsJudged {
    /// Each coil that was measured, in the order of the list.
    pub coils: Vec<NamedResult>,
    /// Whether the meter's error was given; else the readings were taken as they stand.
    pub meter_known: bool,
}

/// One coil of a list, judged.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct NamedResult {
    /// What its solenoid is called.
    pub name: String,
    /// What the figure gave.
    #[serde(flatten)]
    pub result: CoilResult,
}

/// The coils of the sheet's list.
fn list<'a>(asked: &Coils, specs: &'a Specs) -> Result<&'a [CoilSpec], Refusal> {
    specs.coils(&asked.of).ok_or_else(|| no_sheet_value(&asked.of))
}

fn classify(asked: &Coils, specs: &Specs, typed: &CoilsValue) -> Result<Classified, Refusal> {
    let (coils, at) = (list(asked, specs)?, at_of(asked.at.as_deref(), specs)?);
    let value = trimmed(typed);
    refuse_names(asked, coils, &value.readings)?;
    let mut results = Vec::new();
    for coil in coils {
        let Some(reading) = value.readings.iter().find(|reading| reading.coil == coil.name) else { continue };
        let limits = CoilLimits { lowest: coil.lowest, highest: coil.highest, at };
        let result = judged(&value.at(reading), limits)?;
        results.push(NamedResult { name: coil.name.clone(), result });
    }
    let mut said = what_matters(&results);
    let reads = |one: &NamedResult| matches!(one.result.reading.shows, MeterShows::Reading(_));
    if value.meter.is_none() && results.iter().any(reads) {
        said.push(coil_meter_unknown());
    }
    let judged = CoilsJudged { meter_known: value.meter.is_some(), coils: results };
    Ok(Classified::worked_out(class_of(&judged.coils), EntryValue::Coils(value), said, judged))
}

/// Refuses a coil that the list does not have, one that was read twice, and one that is missing.
fn refuse_names(asked: &Coils, coils: &[CoilSpec], readings: &[CoilShown]) -> Result<(), Refusal> {
    if readings.is_empty() {
        return Err(coils_none().into());
    }
    for (number, reading) in readings.iter().enumerate() {
        if !coils.iter().any(|coil| coil.name == reading.coil) {
            return Err(coils_unknown(&reading.coil).into());
        }
        if readings[..number].iter().any(|before| before.coil == reading.coil) {
            return Err(coils_twice(&reading.coil).into());
        }
    }
    let missing = coils.iter().find(|coil| !readings.iter().any(|reading| reading.coil == coil.name));
    match missing {
        Some(coil) if !asked.some => Err(coils_missing(&coil.name).into()),
        _ => Ok(()),
    }
}

fn is_out(class: CoilClass) -> bool {
    matches!(class, CoilClass::Low | CoilClass::High | CoilClass::Open | CoilClass::Short)
}

/// One that is too close to call leaves the others' count open.
fn class_of(results: &[NamedResult]) -> &'static str {
    if results.iter().any(|one| one.result.class == CoilClass::Unclear) {
        return "unclear";
    }
    match results.iter().filter(|one| is_out(one.result.class)).count() {
        0 => "inside",
        1 => "one",
        _ => "several",
    }
}

/// A sentence for each coil that is out, then for each that is too close to call; one for all where all are good.
fn what_matters(results: &[NamedResult]) -> Vec<Message> {
    let (good, mut others): (Vec<&NamedResult>, Vec<_>) =
        results.iter().partition(|one| one.result.class == CoilClass::In);
    others.sort_by_key(|one| one.result.class == CoilClass::Unclear);
    match (good.as_slice(), others.is_empty()) {
        ([only], true) => vec![say(&only.result, &only.name)],
        (all, true) => vec![coils_inside(all.len())],
        _ => others.into_iter().map(|one| say(&one.result, &one.name)).collect(),
    }
}

fn trimmed(typed: &CoilsValue) -> CoilsValue {
    let trim = |text: &String| text.trim().to_owned();
    let reading = |one: &CoilShown| CoilShown { coil: trim(&one.coil), shows: trim(&one.shows) };
    CoilsValue {
        readings: typed.readings.iter().map(reading).collect(),
        unit: trim(&typed.unit),
        leads: typed.leads.as_ref().map(trim),
        temperature: trim(&typed.temperature),
        temperature_unit: trim(&typed.temperature_unit),
        meter: typed.meter.as_ref().map(super::coil::trimmed_meter),
    }
}

impl CoilsValue {
    /// One of the readings as that of a single coil.
    fn at(&self, reading: &CoilShown) -> CoilValue {
        CoilValue {
            shows: reading.shows.clone(),
            unit: self.unit.clone(),
            leads: self.leads.clone(),
            temperature: self.temperature.clone(),
            temperature_unit: self.temperature_unit.clone(),
            meter: self.meter.clone(),
        }
    }
}

impl Kind for Coils {
    fn classify(&self, specs: &Specs, value: &EntryValue, _: &Context<'_>) -> Result<Classified, Refusal> {
        match value {
            EntryValue::Coils(typed) => classify(self, specs, typed),
            _ => Err(kind::other("coils", value)),
        }
    }

    fn limits(&self, specs: &Specs, _: &Checklist) -> Vec<Message> {
        let (Ok(coils), Ok(at)) = (list(self, specs), at_of(self.at.as_deref(), specs)) else {
            return Vec::new();
        };
        let limit = |coil: &CoilSpec| {
            let [low, high] = [coil.lowest, coil.highest].map(Measure::from);
            limit_coil(low, high, Measure::from(at), coil.called())
        };
        coils.iter().map(limit).collect()
    }

    fn units(&self) -> Vec<String> {
        units::of(Quantity::Resistance, Unit::Ohm)
    }

    fn temperature_units(&self) -> Vec<String> {
        units::of(Quantity::Temperature, Unit::DegreeCelsius)
    }

    fn converted<'v>(&self, value: &'v EntryValue) -> Option<(&'v str, &'v str)> {
        let EntryValue::Coils(coils) = value else { return None };
        Some((&coils.temperature, &coils.temperature_unit))
    }

    fn in_short(&self, value: &EntryValue, _checklist: &Checklist) -> Option<String> {
        let EntryValue::Coils(coils) = value else { return None };
        let shown = coils.readings.iter().map(|reading| match parse_shown(&reading.shows) {
            Ok(MeterShows::Overload) => format!("{} {}", reading.coil, reading.shows),
            _ => format!("{} {} {}", reading.coil, reading.shows, coils.unit),
        });
        Some(shown.collect::<Vec<_>>().join(", "))
    }

    fn is_measured(&self) -> bool {
        true
    }
}
