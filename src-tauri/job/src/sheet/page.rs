//! A spec sheet as a screen shows it while it is typed, or as it was kept.

use panside_procedure::format::sheet::{Check, Value};
use panside_procedure::format::{Named, Sheet};
use panside_trade::units::{Quantity, Unit};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::bolts::Bolts;
use super::chart::{ChartView, chart};
use super::judge::read;
use super::needs::{Labels, Need, Needs, is_asked, label};
use super::typed::{Typed, TypedSheet};
use crate::field::FieldProblem;
use crate::figures::{BoltMap, bolt_places};
use crate::message::{Message, sheet_no_title};
use crate::units;

/// All that a screen needs beside the typed text.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct SheetView {
    /// What is wrong with the title.
    pub title: Option<Message>,
    /// The values, by key.
    pub values: Vec<SheetValueView>,
}

/// One value.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct SheetValueView {
    /// Its key.
    pub key: String,
    /// What people read for the key.
    pub name: String,
    /// Titles of the steps that read it.
    pub asked_by: Vec<String>,
    /// Units it can be typed in, the usual one first. Those of a chart's marks.
    pub units: Vec<String>,
    /// Units of a chart's temperatures.
    pub temperature_units: Vec<String>,
    /// What a fact can be.
    pub choices: Vec<Named>,
    /// The drawing of a chart, where enough of it is typed.
    pub chart: Option<ChartView>,
    /// The map of a torque's fasteners, where their places are typed and nothing is wrong.
    pub bolts: Option<BoltMap>,
    /// What is wrong with it, field by field.
    pub problems: Vec<FieldProblem>,
    /// Who entered it as it stands, and on which day; nothing where it was changed and is not kept yet.
    pub entered: Option<SheetEntered>,
    /// A second person's check of it as it stands.
    pub checked: Option<Check>,
}

/// Who entered a value.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct SheetEntered {
    /// Who.
    pub by: String,
    /// The day, as `YYYY-MM-DD`, where it was taken down.
    pub on: Option<String>,
}

/// A sheet as a screen shows it. `before` is the revision that is edited, or the sheet itself where it is only read.
#[must_use]
pub fn view(typed: &TypedSheet, before: Option<&Sheet>, needs: &Needs, labels: &Labels) -> SheetView {
    let asked = typed.values.iter().filter(|(key, _)| is_asked(needs, key));
    let values = asked.map(|(key, value)| {
        let need = needs.get(key);
        let old = before.and_then(|before| before.values.get(key));
        let judged = read(value, need);
        let drawn = judged.as_ref().ok().and_then(bolts);
        let (stands, problems) = match judged {
            Ok(is) => (old.filter(|old| old.is == is && old.source == value.source.trim()), Vec::new()),
            Err(problems) => (None, problems),
        };
        SheetValueView {
            key: key.clone(),
            name: label(labels, key).to_owned(),
            asked_by: need.map(|need| need.asked_by.clone()).unwrap_or_default(),
            units: units_of(&value.is, need),
            temperature_units: temperature_units_of(&value.is),
            choices: need.map(|need| need.choices.clone()).unwrap_or_default(),
            chart: chart(&value.is),
            bolts: drawn,
            problems,
            entered: stands
                .map(|old| SheetEntered { by: old.entered_by.clone(), on: old.entered_on.clone() }),
            checked: stands.and_then(|old| old.checked.clone()),
        }
    });
    SheetView { title: typed.title.trim().is_empty().then(sheet_no_title), values: values.collect() }
}

/// The fasteners of a torque in their places.
fn bolts(value: &Value) -> Option<BoltMap> {
    match value {
        Value::Torque(torque) => Bolts::of(torque).ok().flatten().map(|bolts| bolt_places(&bolts)),
        _ => None,
    }
}

impl SheetView {
    /// Every message, so that sentences can be put in.
    pub fn each_message(&mut self, put: &mut dyn FnMut(&mut Message)) {
        self.title.iter_mut().for_each(&mut *put);
        for value in &mut self.values {
            value.chart.iter_mut().for_each(|chart| chart.each_message(put));
            value.problems.iter_mut().for_each(|problem| put(&mut problem.message));
        }
    }
}

fn units_of(typed: &Typed, need: Option<&Need>) -> Vec<String> {
    match typed {
        Typed::Measure { unit, .. } | Typed::Range { unit, .. } => {
            let usual = need.and_then(|need| need.unit).or_else(|| unit.parse().ok());
            usual.map_or_else(|| vec![unit.clone()], |usual| units::of(usual.quantity(), usual))
        }
        Typed::Chart { .. } => units::of(Quantity::Length, Unit::Millimetre),
        Typed::Torque { .. } => units::of(Quantity::Torque, Unit::NewtonMetre),
        Typed::Coils { .. } => units::of(Quantity::Resistance, Unit::Ohm),
        Typed::Count(_) | Typed::Fact(_) | Typed::Text(_) => Vec::new(),
    }
}

fn temperature_units_of(typed: &Typed) -> Vec<String> {
    match typed {
        Typed::Chart { .. } => units::of(Quantity::Temperature, Unit::DegreeCelsius),
        _ => Vec::new(),
    }
}
