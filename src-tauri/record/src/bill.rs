//! What is billed: the new parts with what was read off them, and the fluid.

use std::collections::BTreeSet;

use panside_job::EntryValue;
use panside_procedure::format::entry::ScanOf;
use panside_procedure::format::{Ask, Reuse};
use panside_trade::measure::{Measure, Volume};
use panside_trade::number::parse_number;
use panside_trade::text::figure;
use panside_trade::units::Unit;
use serde::{Deserialize, Serialize};

use crate::account::Said;
use crate::items::Tally;
use crate::source::{Found, Source};

/// How a checklist names a scan of a part number.
const PART_NUMBER: &str = "part_number";
/// How a checklist names a scan of the fluid's label.
const FLUID: &str = "fluid";
/// The answer of a checklist by which a volume was taken out and not filled.
const TAKEN_OUT: &str = "drawn_off";

/// New parts.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Parts {
    /// What went in new, in file order.
    pub fitted: Vec<Fitted>,
    /// Texts that were read off new parts: at the steps that fit them, or as part numbers.
    pub scanned: Vec<Said>,
}

/// A part of which new pieces went in.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Fitted {
    /// Item id.
    pub id: String,
    /// What it is.
    pub name: String,
    /// How many.
    pub pieces: i32,
}

/// What was filled and what was drained.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FluidUsed {
    /// What its label says, each text once.
    pub label: Vec<String>,
    /// What was filled, in file order.
    pub filled: Vec<Poured>,
    /// What was drained, in file order.
    pub drained: Vec<Poured>,
    /// All that was filled. Nothing: nothing was.
    pub filled_in_all: Option<Amount>,
    /// All that was drained. Nothing: nothing was.
    pub drained_in_all: Option<Amount>,
}

/// A volume that was entered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Poured {
    /// Step id.
    pub step: String,
    /// The step's title.
    pub title: String,
    /// How much, as typed.
    pub amount: Amount,
}

/// A number with its unit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Amount {
    /// The number.
    pub value: String,
    /// Its unit.
    pub unit: String,
}

/// What went in new.
pub(crate) fn parts(source: Source<'_>, tally: &Tally) -> Parts {
    let new = tally.items.iter().filter(|item| item.pieces.replaced > 0);
    let fitted =
        new.map(|item| Fitted { id: item.id.clone(), name: item.name.clone(), pieces: item.pieces.replaced });
    let items = &source.job.procedure.checklist.items;
    let scanned = labels(source).filter(|found| {
        let fitted_new = items
            .iter()
            .any(|item| item.reuse == Reuse::Never && found.step.puts_back.contains_key(&item.id));
        found.value.entry.starts_with(PART_NUMBER) || found.value.entry != FLUID && fitted_new
    });
    Parts { fitted: fitted.collect(), scanned: scanned.map(|found| Said::of(source, &found)).collect() }
}

/// Texts of labels that count and say something.
fn labels<'a>(source: Source<'a>) -> impl Iterator<Item = Found<'a>> {
    source.entered().filter(Found::counts).filter(|found| {
        let of_label =
            matches!(found.entry.map(|entry| &entry.ask), Some(Ask::Scan(asked)) if asked.of == ScanOf::Text);
        of_label && matches!(&found.value.value, EntryValue::Scan { text } if !text.trim().is_empty())
    })
}

/// What was filled and drained: the volumes that a level or a balance of the checklist names.
pub(crate) fn fluid(source: Source<'_>) -> FluidUsed {
    let (mut added, mut drained) = (BTreeSet::new(), BTreeSet::new());
    for entry in source.steps().flat_map(|(_, step, _)| &step.entries) {
        match &entry.ask {
            Ask::Balance(balance) => {
                added.extend(balance.added.iter().map(|amount| amount.volume.as_str()));
                drained.extend(balance.drained.iter().map(|amount| amount.volume.as_str()));
            }
            Ask::Level(level) => added.extend(level.added.iter().map(|added| added.volume.as_str())),
            _ => {}
        }
    }
    let mut label: Vec<String> = Vec::new();
    for found in labels(source).filter(|found| found.value.entry == FLUID) {
        let text = Said::of(source, &found).text;
        if !label.contains(&text) {
            label.push(text);
        }
    }
    let (filled, drained) = (poured(source, &added), poured(source, &drained));
    let (filled_in_all, drained_in_all) = (in_all(&filled), in_all(&drained));
    FluidUsed { label, filled, drained, filled_in_all, drained_in_all }
}

/// The volumes above zero that were entered at these places and count.
fn poured(source: Source<'_>, places: &BTreeSet<&str>) -> Vec<Poured> {
    let volumes = source.entered().filter(Found::counts).filter_map(|found| {
        let EntryValue::Reading { value, unit } = &found.value.value else { return None };
        let place = [found.step.id.as_str(), found.value.entry.as_str()].join(".");
        let is_some = places.contains(place.as_str()) && litres(value, unit)? > 0.0;
        // What was taken out by the same entry is no filling.
        let taken_out = found
            .attempt
            .entries
            .iter()
            .any(|other| matches!(&other.value, EntryValue::Choice { class } if class == TAKEN_OUT));
        (is_some && !taken_out).then(|| Poured {
            step: found.step.id.clone(),
            title: found.step.title.clone(),
            amount: Amount { value: value.clone(), unit: unit.clone() },
        })
    });
    volumes.collect()
}

fn litres(value: &str, unit: &str) -> Option<f64> {
    let measure = Measure::new(parse_number(value).ok()?, unit.parse().ok()?).ok()?;
    Volume::try_from(measure).ok().map(Volume::litres)
}

/// The sum, in the unit of the first.
fn in_all(poured: &[Poured]) -> Option<Amount> {
    let unit: Unit = poured.first()?.amount.unit.parse().ok()?;
    let sum = poured.iter().filter_map(|one| litres(&one.amount.value, &one.amount.unit)).sum();
    let sum = Measure::from(Volume::from_litres(sum).ok()?).to(unit).ok()?;
    Some(Amount { value: figure(sum.value()), unit: unit.symbol().to_owned() })
}
