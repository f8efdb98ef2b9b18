//! A coil's resistance, judged by [`panside_trade::coil`] at the temperature of its limits.

use panside_procedure::format::Checklist;
use panside_procedure::format::entry::Coil;
use panside_trade::coil::{
    CoilClass, CoilLimits, CoilReading, CoilResult, MeterError, MeterShows, judge_coil, parse_shown,
};
use panside_trade::measure::{Measure, Resistance, Temperature, TemperatureDifference};
use panside_trade::number::parse_number;
use panside_trade::units::{Quantity, Unit};
use panside_trade::{FigureError, TradeError};
use serde::{Deserialize, Serialize};

use super::kind::{self, Kind};
use super::{Classified, Context, THERMOMETER_OFF_K, no_sheet_value, of_sheet, quantity};
use crate::command::Refusal;
use crate::message::{
    Message, coil_above, coil_below, coil_inside, coil_meter_unknown, coil_open, coil_short, coil_unclear,
    limit_coil,
};
use crate::sheet::Specs;
use crate::units;
use crate::value::{self, CoilValue, EntryValue};

/// For which temperature limits stand where the sheet says nothing, in °C.
const USUAL_CELSIUS: f64 = 20.0;

/// A coil judged, and how it came about.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CoilJudged {
    /// What the figure gave.
    #[serde(flatten)]
    pub result: CoilResult,
    /// Whether the meter's error was given; else the reading was taken as it stands.
    pub meter_known: bool,
}

pub(super) fn classify(
    asked: &Coil,
    specs: &Specs,
    typed: &CoilValue,
    checklist: &Checklist,
) -> Result<Classified, Refusal> {
    let result = judged(typed, limits(asked, specs)?)?;
    let mut said = vec![say(&result, checklist.sheet_label(&asked.limits))];
    if typed.meter.is_none() && matches!(result.reading.shows, MeterShows::Reading(_)) {
        said.push(coil_meter_unknown());
    }
    let judged = CoilJudged { meter_known: typed.meter.is_some(), result };
    let value = EntryValue::Coil(trimmed(typed));
    Ok(Classified::worked_out(class_name(judged.result.class), value, said, judged))
}

/// What was typed, judged by limits.
pub(super) fn judged(typed: &CoilValue, limits: CoilLimits) -> Result<CoilResult, Refusal> {
    judge_coil(reading(typed)?, limits).map_err(|error: FigureError| error.message().into())
}

/// For which temperature limits stand: that of a key, else the usual one.
pub(super) fn at_of(key: Option<&str>, specs: &Specs) -> Result<Temperature, Refusal> {
    match key {
        Some(key) => of_sheet(specs, key),
        None => Temperature::from_celsius(USUAL_CELSIUS).map_err(|error| error.message().into()),
    }
}

/// The limits on the sheet, with their temperature.
pub(crate) fn limits(asked: &Coil, specs: &Specs) -> Result<CoilLimits, Refusal> {
    let trade = |error: TradeError| Refusal::from(error.message());
    let (low, high) = specs.range(&asked.limits).ok_or_else(|| no_sheet_value(&asked.limits))?;
    let ohms = |limit: Measure| Resistance::try_from(limit).map_err(trade);
    Ok(CoilLimits { lowest: ohms(low)?, highest: ohms(high)?, at: at_of(asked.at.as_deref(), specs)? })
}

fn reading(typed: &CoilValue) -> Result<CoilReading, Refusal> {
    let trade = |error: TradeError| Refusal::from(error.message());
    let ohms = |text: &str| quantity::<Resistance>(text, &typed.unit);
    let shows = match parse_shown(&typed.shows) {
        Ok(MeterShows::Overload) => MeterShows::Overload,
        _ => MeterShows::Reading(ohms(&typed.shows)?),
    };
    let zero = || Resistance::from_ohms(0.0).map_err(trade);
    let meter = match &typed.meter {
        Some(value::MeterError { percent, digits }) => {
            MeterError { percent: parse_number(percent).map_err(trade)?, digits: ohms(digits)? }
        }
        None => MeterError { percent: 0.0, digits: zero()? },
    };
    // Without the meter's error nothing is told of errors at all: a verdict that knows of one only would look surer.
    let off = if typed.meter.is_some() { THERMOMETER_OFF_K } else { 0.0 };
    Ok(CoilReading {
        shows,
        leads: typed.leads.as_deref().map_or_else(zero, ohms)?,
        meter,
        temperature: quantity(&typed.temperature, &typed.temperature_unit)?,
        temperature_off_by: TemperatureDifference::from_kelvins(off).map_err(trade)?,
    })
}

/// The class as `Ask::classes` lists it.
fn class_name(class: CoilClass) -> &'static str {
    match class {
        CoilClass::In => "inside",
        CoilClass::Low | CoilClass::High => "outside",
        CoilClass::Open => "open",
        CoilClass::Short => "short",
        CoilClass::Unclear => "unclear",
    }
}

/// What is said of a coil; `name` is what its limits are called.
pub(super) fn say(result: &CoilResult, name: &str) -> Message {
    let limits = &result.limits;
    let [low, high] = [limits.lowest, limits.highest].map(Measure::from);
    let at = Measure::from(limits.at);
    let is = result.at_reference.map_or_else(|| "OL".to_owned(), |ohms| ohms.to_string());
    match result.class {
        CoilClass::In => coil_inside(is, at, low, high, name),
        CoilClass::Low => coil_below(is, at, low, high, name),
        CoilClass::High => coil_above(is, at, low, high, name),
        CoilClass::Open => coil_open(is, at),
        CoilClass::Short => coil_short(is, at),
        CoilClass::Unclear => {
            let between = |at: usize| {
                let ends = result.between.map(|(least, most)| [least, most]);
                ends.map_or_else(String::new, |ends| ends[at].to_string())
            };
            coil_unclear(between(0), between(1), at, low, high)
        }
    }
}

fn trimmed(typed: &CoilValue) -> CoilValue {
    let trim = |text: &String| text.trim().to_owned();
    CoilValue {
        shows: trim(&typed.shows),
        unit: trim(&typed.unit),
        leads: typed.leads.as_ref().map(trim),
        temperature: trim(&typed.temperature),
        temperature_unit: trim(&typed.temperature_unit),
        meter: typed.meter.as_ref().map(trimmed_meter),
    }
}

/// The meter's error without spaces around what was typed.
pub(super) fn trimmed_meter(meter: &value::MeterError) -> value::MeterError {
    value::MeterError { percent: meter.percent.trim().to_owned(), digits: meter.digits.trim().to_owned() }
}

impl Kind for Coil {
    fn classify(
        &self,
        specs: &Specs,
        value: &EntryValue,
        context: &Context<'_>,
    ) -> Result<Classified, Refusal> {
        match value {
            EntryValue::Coil(typed) => classify(self, specs, typed, context.checklist),
            _ => Err(kind::other("coil", value)),
        }
    }

    fn limits(&self, specs: &Specs, checklist: &Checklist) -> Vec<Message> {
        let Ok(limits) = limits(self, specs) else { return Vec::new() };
        let [low, high] = [limits.lowest, limits.highest].map(Measure::from);
        vec![limit_coil(low, high, Measure::from(limits.at), checklist.sheet_label(&self.limits))]
    }

    fn units(&self) -> Vec<String> {
        units::of(Quantity::Resistance, Unit::Ohm)
    }

    fn temperature_units(&self) -> Vec<String> {
        units::of(Quantity::Temperature, Unit::DegreeCelsius)
    }

    fn converted<'v>(&self, value: &'v EntryValue) -> Option<(&'v str, &'v str)> {
        let EntryValue::Coil(coil) = value else { return None };
        Some((&coil.temperature, &coil.temperature_unit))
    }

    fn in_short(&self, value: &EntryValue, _checklist: &Checklist) -> Option<String> {
        let EntryValue::Coil(coil) = value else { return None };
        match parse_shown(&coil.shows) {
            Ok(MeterShows::Overload) => Some(coil.shows.clone()),
            _ => Some(format!("{} {}", coil.shows, coil.unit)),
        }
    }

    fn is_measured(&self) -> bool {
        true
    }
}
