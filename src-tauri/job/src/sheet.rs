//! A spec sheet's values with the types of the trade, and whether they fit a checklist.
//!
//! A spec sheet of the shop is a document that the shop's events name by hash, one a revision; what is typed of one is
//! a row of `sheet_drafts`. `judge` looks at what is typed and `keep` makes a revision of it: a value that is changed
//! gets a new author and loses its check. A check by a second person makes a revision too. A chart is drawn and put
//! into words while it is typed; so is the map of a torque's fasteners. A job goes by the text that it was started
//! with, which is pinned by hash in `documents`.

mod bolts;
mod chart;
mod check;
mod fields;
mod judge;
mod keep;
mod needs;
mod page;
mod shop;
mod typed;

use std::collections::BTreeMap;

use panside_procedure::format::Sheet;
use panside_procedure::format::sheet::{self, Value};
use panside_trade::level::{LevelChart, LevelPoint};
use panside_trade::measure::{Angle, Length, Measure, Resistance, Temperature, Torque};
use panside_trade::torque::{AngleStage, TorqueSpec, TorqueStage};
use panside_trade::units::Unit;
use panside_trade::{FigureError, TradeError};
use serde::Serialize;

pub use chart::{ChartView, DrawnPoint};
pub use check::check;
pub use keep::{By, checked, id_of};
pub use needs::{Keys, Need, Needs, Tightened, keys, needs, to_check};
pub use page::{SheetEntered, SheetValueView, SheetView, view};
pub use shop::{ShopKey, asked_of_shop, judge_shop_value, shop_keys, shop_value_view, with_shop};
pub use typed::{Taken, Typed, TypedCoil, TypedPoint, TypedPosition, TypedSheet, TypedValue};

use crate::message::{
    Message, figure, sheet_coil_no_name, sheet_coil_range, sheet_coil_twice, sheet_no_coils, sheet_range,
};

pub(crate) use bolts::Bolts;
pub(crate) use chart::row_text;

/// One value of a sheet.
#[derive(Debug, Clone, PartialEq)]
pub enum Spec {
    /// One number with its unit.
    Measure(Measure),
    /// Two limits of one quantity, the lower first; both belong to the range.
    Range(Measure, Measure),
    /// The level chart, and how far two readings may differ and still agree, where the sheet says so.
    Chart(LevelChart, Option<Length>),
    /// The stages of a fastener pattern, how many fasteners it has, and the angle each is turned afterwards.
    Torque(TorqueSpec, u32, Option<AngleStage>),
    /// The coils of a list, each with its limits.
    Coils(Vec<CoilSpec>),
    /// How many there are of something.
    Count(u8),
    /// One word that a checklist's fact reads.
    Fact(String),
    /// A text to show.
    Text(String),
}

/// One coil of a list.
#[derive(Debug, Clone, PartialEq)]
pub struct CoilSpec {
    /// What its solenoid is called.
    pub name: String,
    /// Between which terminals it is measured.
    pub terminals: Option<String>,
    /// The lowest that is allowed.
    pub lowest: Resistance,
    /// The highest that is allowed, not below the lowest.
    pub highest: Resistance,
}

impl CoilSpec {
    /// Its name, with its terminals where they are known.
    #[must_use]
    pub fn called(&self) -> String {
        let terminals = self.terminals.as_ref().map(|terminals| format!(", {terminals}"));
        format!("{}{}", self.name, terminals.unwrap_or_default())
    }
}

/// A mistake on a sheet, or something it lacks.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SheetProblem {
    /// The key of the value; nothing where the key itself is missing.
    pub key: Option<String>,
    /// What is wrong and what to do about it.
    pub message: Message,
}

/// A spec sheet, read.
#[derive(Debug, Clone)]
pub struct Specs {
    /// The sheet as written.
    pub sheet: Sheet,
    values: BTreeMap<String, Spec>,
}

impl Specs {
    /// Reads every value of a sheet.
    ///
    /// # Errors
    /// Every value that cannot be used, with what to do: a unit that is not known, a chart whose marks cross, a range
    /// that is the wrong way round.
    pub fn of(sheet: &Sheet) -> Result<Specs, Vec<SheetProblem>> {
        let (specs, problems) = Specs::readable(sheet);
        if problems.is_empty() { Ok(specs) } else { Err(problems) }
    }

    /// What can be read of a sheet. A job that runs on a sheet which was once accepted is read with this: its record
    /// must be readable whatever later versions think of the sheet.
    #[must_use]
    pub fn readable(sheet: &Sheet) -> (Specs, Vec<SheetProblem>) {
        let mut values = BTreeMap::new();
        let mut problems = Vec::new();
        for (key, value) in &sheet.values {
            match read(&value.is) {
                Ok(spec) => {
                    values.insert(key.clone(), spec);
                }
                Err(message) => problems.push(SheetProblem { key: Some(key.clone()), message }),
            }
        }
        (Specs { sheet: sheet.clone(), values }, problems)
    }

    /// The value of a key.
    #[must_use]
    pub fn get(&self, key: &str) -> Option<&Spec> {
        self.values.get(key)
    }

    /// The measure of a key.
    #[must_use]
    pub fn measure(&self, key: &str) -> Option<Measure> {
        match self.get(key) {
            Some(Spec::Measure(measure)) => Some(*measure),
            _ => None,
        }
    }

    /// The range of a key, lower limit first.
    #[must_use]
    pub fn range(&self, key: &str) -> Option<(Measure, Measure)> {
        match self.get(key) {
            Some(Spec::Range(min, max)) => Some((*min, *max)),
            _ => None,
        }
    }

    /// The level chart of a key, and how far readings may differ and still agree, where the sheet says so.
    #[must_use]
    pub fn chart(&self, key: &str) -> Option<(&LevelChart, Option<Length>)> {
        match self.get(key) {
            Some(Spec::Chart(chart, agreement)) => Some((chart, *agreement)),
            _ => None,
        }
    }

    /// The coils of a key's list.
    #[must_use]
    pub fn coils(&self, key: &str) -> Option<&[CoilSpec]> {
        match self.get(key) {
            Some(Spec::Coils(coils)) => Some(coils),
            _ => None,
        }
    }

    /// The coil of a name, on whatever list of the sheet it stands.
    #[must_use]
    pub fn coil(&self, name: &str) -> Option<&CoilSpec> {
        let lists = self.values.values().filter_map(|spec| match spec {
            Spec::Coils(coils) => Some(coils),
            _ => None,
        });
        lists.flatten().find(|coil| coil.name == name)
    }

    /// The torque of a key.
    #[must_use]
    pub fn torque(&self, key: &str) -> Option<&TorqueSpec> {
        match self.get(key) {
            Some(Spec::Torque(spec, ..)) => Some(spec),
            _ => None,
        }
    }

    /// The angle that each fastener of a key is turned after the last stage, and how many fasteners there are.
    #[must_use]
    pub fn angle(&self, key: &str) -> Option<(AngleStage, u32)> {
        match self.get(key) {
            Some(Spec::Torque(_, fasteners, Some(angle))) => Some((*angle, *fasteners)),
            _ => None,
        }
    }

    /// Where the fasteners of a key's torque sit and in which order they are tightened, where the sheet says so.
    pub(crate) fn bolts(&self, key: &str) -> Option<Bolts> {
        match &self.sheet.values.get(key)?.is {
            Value::Torque(torque) => Bolts::of(torque).ok().flatten(),
            _ => None,
        }
    }

    /// The word of a key.
    #[must_use]
    pub fn fact(&self, key: &str) -> Option<&str> {
        match self.get(key) {
            Some(Spec::Fact(word)) => Some(word),
            _ => None,
        }
    }
}

fn read(value: &Value) -> Result<Spec, Message> {
    let trade = |error: TradeError| error.message();
    match value {
        Value::Measure(measure) => measured(measure.value, &measure.unit).map(Spec::Measure).map_err(trade),
        Value::Range(range) => {
            if range.min > range.max {
                return Err(sheet_range(figure(range.min), figure(range.max)));
            }
            let limit = |value| measured(value, &range.unit).map_err(trade);
            Ok(Spec::Range(limit(range.min)?, limit(range.max)?))
        }
        Value::Chart(chart) => level_chart(chart).map_err(trade),
        Value::Torque(torque) => {
            Bolts::of(torque)?;
            torque_spec(torque).map_err(|error| error.message())
        }
        Value::Coils(list) => coils(list).map(Spec::Coils),
        Value::Count(count) => Ok(Spec::Count(*count)),
        Value::Fact(word) => Ok(Spec::Fact(word.clone())),
        Value::Text(text) => Ok(Spec::Text(text.clone())),
    }
}

fn measured(value: f64, unit: &str) -> Result<Measure, TradeError> {
    Measure::new(value, unit.parse::<Unit>()?)
}

fn level_chart(chart: &sheet::Chart) -> Result<Spec, TradeError> {
    let length = |value| Length::try_from(measured(value, &chart.length_unit)?);
    let points = chart.points.iter().map(|point| {
        Ok(LevelPoint {
            temperature: Temperature::try_from(measured(point.at, &chart.temperature_unit)?)?,
            low: length(point.low)?,
            high: length(point.high)?,
        })
    });
    let agreement = chart.agreement.map(length).transpose()?;
    if let Some(agreement) = agreement
        && agreement.millimetres() < 0.0
    {
        return Err(TradeError::AgreementNegative { millimetres: agreement.millimetres() });
    }
    Ok(Spec::Chart(LevelChart::new(points.collect::<Result<_, TradeError>>()?)?, agreement))
}

/// The coils of a list. A list without a coil, a coil without a name, a name that stands twice and limits that are turned
/// round are refused.
fn coils(list: &sheet::Coils) -> Result<Vec<CoilSpec>, Message> {
    if list.coils.is_empty() {
        return Err(sheet_no_coils());
    }
    let ohms = |value| {
        let read = measured(value, &list.unit).and_then(Resistance::try_from);
        read.map_err(|error: TradeError| error.message())
    };
    let coil = |(at, coil): (usize, &sheet::NamedCoil)| {
        let name = coil.name.trim();
        if name.is_empty() {
            return Err(sheet_coil_no_name());
        }
        if list.coils[..at].iter().any(|before| before.name.trim() == name) {
            return Err(sheet_coil_twice(name));
        }
        if coil.min > coil.max || coil.min <= 0.0 {
            return Err(sheet_coil_range(name, figure(coil.min), figure(coil.max)));
        }
        Ok(CoilSpec {
            name: name.to_owned(),
            terminals: coil.terminals.clone(),
            lowest: ohms(coil.min)?,
            highest: ohms(coil.max)?,
        })
    };
    list.coils.iter().enumerate().map(coil).collect()
}

fn torque_spec(torque: &sheet::Torque) -> Result<Spec, FigureError> {
    let stages = torque.stages.iter().map(|target| {
        TorqueStage::new(Torque::try_from(measured(*target, &torque.unit)?)?, torque.tolerance_percent)
    });
    let spec = TorqueSpec::new(stages.collect::<Result<_, _>>()?)?;
    let angle = torque.angle.map(|angle| {
        AngleStage::new(Angle::from_degrees(angle.degrees)?, Angle::from_degrees(angle.tolerance)?)
    });
    Ok(Spec::Torque(spec, torque.fasteners, angle.transpose()?))
}

#[cfg(test)]
mod tests;
#[cfg(test)]
mod typed_tests;
