//! What was drained against what went in, drawn by [`panside_trade::balance`] from what other entries took down.

use panside_procedure::format::Checklist;
use panside_procedure::format::entry::{self, Amount};
use panside_trade::TradeError;
use panside_trade::balance::{self, BalanceClass, Fluid, balance};
use panside_trade::measure::{Density, Measure, Temperature, TemperatureDifference, Volume};
use panside_trade::units::{Quantity, Unit};
use serde::{Deserialize, Serialize};

use super::kind::{self, Kind};
use super::past::Past;
use super::{Classified, Context, THERMOMETER_OFF_K, named, of_sheet, quantity};
use crate::command::Refusal;
use crate::message::{
    Message, balance_beyond_capacity, balance_closes, balance_explain, balance_explained, balance_less_in,
    balance_more_in, balance_no_capacity, balance_no_entry, balance_no_unseen, limit_unseen,
};
use crate::sheet::Specs;
use crate::units;
use crate::value::{Accounted, EntryValue};

/// How far a volume read on a jug is taken to be off to both sides, in L: half of a graduation of 0.1 L. Our choice.
const JUG_OFF_L: f64 = 0.05;

/// How far the sheet's density is taken to be off to both sides, in kg/m³. Our choice.
const DENSITY_OFF: f64 = 10.0;

/// Fluid from the can, as its temperature was typed.
#[derive(Clone, Copy)]
pub(super) struct Can<'a> {
    pub temperature: &'a str,
    pub unit: &'a str,
}

/// A balance judged, and how it came about.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct BalanceResult {
    /// `closes`, `differs` or `explained`.
    pub class: String,
    /// The figure; nothing where it could not be drawn.
    pub balance: Option<balance::Balance>,
}

pub(super) fn classify(
    asked: &entry::Balance,
    specs: &Specs,
    can: Can<'_>,
    explained: Option<&Accounted>,
    context: &Context<'_>,
) -> Result<Classified, Refusal> {
    let mut said = Vec::new();
    let from_can = asked.drained.iter().chain(&asked.added).any(|amount| amount.temperature.is_none());
    let temperature = if from_can { Some(quantity::<Temperature>(can.temperature, can.unit)?) } else { None };
    let fluid = fluid(asked, specs)?;
    if specs.get(&asked.unseen).is_none() {
        said.push(balance_no_unseen(context.checklist.sheet_label(&asked.unseen)));
    }
    if let Some(key) = asked.capacity.as_ref().filter(|key| specs.get(key).is_none()) {
        said.push(balance_no_capacity(context.checklist.sheet_label(key)));
    }
    // What is missing or can't be reckoned with was entered elsewhere: it is explained here, and holds nobody for ever.
    let drawn = match amounts(asked, fluid, temperature, context) {
        Ok(fluid) => balance(fluid).map_err(|error| said.push(error.message())).ok(),
        Err(missing) => {
            said.push(missing);
            None
        }
    };
    if let Some(drawn) = &drawn {
        said.extend(say(drawn));
    }
    let closes = drawn.as_ref().is_some_and(|it| it.class == BalanceClass::Balanced && !it.beyond_capacity);
    let told = explained.filter(|_| !closes).map(|told| named(told, context.names)).transpose()?;
    let class = match (closes, &told) {
        (true, _) => "closes",
        (false, Some(_)) => "explained",
        (false, None) => "differs",
    };
    match &told {
        Some((kept, name)) => said.push(balance_explained(*name, &kept.reason)),
        None if !closes => said.push(balance_explain()),
        None => {}
    }
    let value = EntryValue::Balance {
        temperature: can.temperature.trim().to_owned(),
        temperature_unit: can.unit.trim().to_owned(),
        explained: told.map(|(kept, _)| kept),
    };
    let result = BalanceResult { class: class.to_owned(), balance: drawn };
    Ok(Classified::worked_out(class, value, said, result))
}

/// What the sheet says about the fluid.
fn fluid(asked: &entry::Balance, specs: &Specs) -> Result<Fluid, Refusal> {
    let trade = |error: TradeError| Refusal::from(error.message());
    Ok(Fluid {
        drained: Vec::new(),
        added: Vec::new(),
        density: of_sheet(specs, &asked.density)?,
        density_off_by: Density::from_kilograms_per_cubic_metre(DENSITY_OFF).map_err(trade)?,
        unseen: spare(specs, &asked.unseen)?.map_or_else(|| Volume::from_litres(0.0).map_err(trade), Ok)?,
        capacity: asked.capacity.as_deref().map_or(Ok(None), |key| spare(specs, key))?,
    })
}

/// A value that the sheet need not have: what nobody knows of is counted as nothing, so that the balance closes less often.
fn spare(specs: &Specs, key: &str) -> Result<Option<Volume>, Refusal> {
    specs.get(key).map(|_| of_sheet(specs, key)).transpose()
}

/// Puts in what other entries took down.
fn amounts(
    asked: &entry::Balance,
    mut fluid: Fluid,
    can: Option<Temperature>,
    context: &Context<'_>,
) -> Result<Fluid, Message> {
    for (wanted, side) in [(&asked.drained, &mut fluid.drained), (&asked.added, &mut fluid.added)] {
        for amount in wanted {
            side.extend(taken(amount, can, context.past)?);
        }
    }
    Ok(fluid)
}

/// One amount for each time the work was done.
fn taken(
    amount: &Amount,
    can: Option<Temperature>,
    past: Option<Past<'_>>,
) -> Result<Vec<balance::Amount>, Message> {
    let volumes = read::<Volume>(&amount.volume, past)?;
    let temperatures = match &amount.temperature {
        Some(entry) => read::<Temperature>(entry, past)?,
        None => can.into_iter().collect(),
    };
    let mut amounts = Vec::new();
    for (at, volume) in volumes.into_iter().enumerate() {
        let last = temperatures.get(at).or(temperatures.last());
        let Some(temperature) = last else { return Err(no_entry(&amount.volume, past)) };
        // Of what was not poured nothing is misread.
        let off_by = if volume.litres() > 0.0 { JUG_OFF_L } else { 0.0 };
        amounts.push(balance::Amount {
            volume,
            off_by: Volume::from_litres(off_by).map_err(|error| error.message())?,
            temperature: *temperature,
            temperature_off_by: TemperatureDifference::from_kelvins(THERMOMETER_OFF_K)
                .map_err(|error| error.message())?,
        });
    }
    Ok(amounts)
}

/// What was read at an entry that is named as `step.entry`.
fn read<T>(entry: &str, past: Option<Past<'_>>) -> Result<Vec<T>, Message>
where
    T: TryFrom<Measure, Error = TradeError>,
{
    let (step, id) = entry.split_once('.').unwrap_or((entry, ""));
    let taken = past.map(|past| past.latest(step, id)).unwrap_or_default();
    let typed = taken.iter().filter_map(|taken| match taken.value {
        EntryValue::Reading { value, unit } => Some(quantity::<T>(value, unit)),
        _ => None,
    });
    let read = typed.collect::<Result<Vec<T>, Refusal>>().map_err(|refusal| refusal.message)?;
    if read.is_empty() {
        return Err(no_entry(entry, past));
    }
    Ok(read)
}

/// For what was not read at an entry that is named as `step.entry`.
fn no_entry(entry: &str, past: Option<Past<'_>>) -> Message {
    let label = past.and_then(|past| entry.split_once('.').and_then(|(step, id)| past.label(step, id)));
    balance_no_entry(label.unwrap_or_else(|| entry.to_owned()))
}

fn say(drawn: &balance::Balance) -> Vec<Message> {
    let litres = |value: f64| Volume::from_litres(value.abs()).map_or(String::new(), |it| it.to_string());
    let (off, sure) = (litres(drawn.difference), litres(drawn.uncertainty.expanded));
    let (out, in_) = (litres(drawn.drained_at_15), litres(drawn.added_at_15));
    let mut said = vec![match drawn.class {
        BalanceClass::Balanced => balance_closes(out, in_, sure),
        BalanceClass::MoreIn => balance_more_in(off, sure, out, in_),
        BalanceClass::LessIn => balance_less_in(off, sure, out, in_),
    }];
    if drawn.beyond_capacity {
        said.push(balance_beyond_capacity());
    }
    said
}

impl Kind for entry::Balance {
    fn classify(
        &self,
        specs: &Specs,
        value: &EntryValue,
        context: &Context<'_>,
    ) -> Result<Classified, Refusal> {
        match value {
            EntryValue::Balance { temperature, temperature_unit: unit, explained } => {
                classify(self, specs, Can { temperature, unit }, explained.as_ref(), context)
            }
            _ => Err(kind::other("balance", value)),
        }
    }

    fn limits(&self, specs: &Specs, _checklist: &Checklist) -> Vec<Message> {
        specs.measure(&self.unseen).map(limit_unseen).into_iter().collect()
    }

    fn units(&self) -> Vec<String> {
        Vec::new()
    }

    fn temperature_units(&self) -> Vec<String> {
        units::of(Quantity::Temperature, Unit::DegreeCelsius)
    }

    fn converted<'v>(&self, value: &'v EntryValue) -> Option<(&'v str, &'v str)> {
        let EntryValue::Balance { temperature, temperature_unit, .. } = value else { return None };
        Some((temperature, temperature_unit))
    }

    fn in_short(&self, _value: &EntryValue, _checklist: &Checklist) -> Option<String> {
        None
    }

    fn is_measured(&self) -> bool {
        true
    }
}
