//! A spec sheet as a screen shows it while it is typed, or as it was kept.

use panside_procedure::format::sheet::{Check, SheetValue, Value};
use panside_procedure::format::{Asked, Named, Sheet, SheetGroup, SheetKey};
use panside_trade::number::parse_number;
use panside_trade::units::{Quantity, Unit};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::bolts::Bolts;
use super::chart::{ChartView, chart};
use super::judge::{is_left_out, read};
use super::needs::{Keys, Need, Needs, is_asked, is_to_check, label};
use super::typed::{Typed, TypedSheet, TypedValue};
use crate::field::FieldProblem;
use crate::figures::{BoltMap, bolt_places};
use crate::message::{Message, sheet_no_title};
use crate::units;

/// All that a screen needs beside the typed text.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct SheetView {
    /// What is wrong with the title.
    pub title: Option<Message>,
    /// The values, in the order in which service information gives them; in each group what is needed first.
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
    /// What it is asked for together with.
    pub group: SheetGroup,
    /// Whether a sheet must have it.
    pub asked: Asked,
    /// What is lost without it, where it can be missing.
    pub without: Option<String>,
    /// A second person compares it with its source.
    pub to_check: bool,
    /// What can be taken for it by a tap.
    pub offer: Option<Typed>,
    /// For a torque: how many fasteners are counted, which holds where no other number is typed.
    pub fasteners: Option<u32>,
    /// The sheet that it was taken over from as it stands, by title and revision.
    pub taken_from: Option<String>,
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
pub fn view(typed: &TypedSheet, before: Option<&Sheet>, needs: &Needs, keys: &Keys) -> SheetView {
    let asked = typed
        .values
        .iter()
        .filter(|(key, value)| is_asked(needs, key) && (needs.contains_key(*key) || !value.is.is_blank()));
    let mut values: Vec<(usize, SheetValueView)> = asked
        .map(|(key, value)| {
            let need = needs.get(key);
            let old = before.and_then(|before| before.values.get(key));
            let place = need.map_or(usize::MAX, |need| need.place);
            let shown = value_view(typed, (key, value), (need, keys.get(key)), old);
            (place, SheetValueView { name: label(keys, key).to_owned(), ..shown })
        })
        .collect();
    values.sort_by_key(|(place, value)| (value.group, value.asked != Asked::Needed, *place));
    let values = values.into_iter().map(|(_, value)| value).collect();
    SheetView { title: typed.title.trim().is_empty().then(sheet_no_title), values }
}

/// One value of a sheet as a screen shows it, under its key.
pub(super) fn value_view(
    sheet: &TypedSheet,
    (key, typed): (&str, &TypedValue),
    (need, said): (Option<&Need>, Option<&SheetKey>),
    old: Option<&SheetValue>,
) -> SheetValueView {
    let value = sheet.counting(typed, need);
    let judged = read(&value, need);
    let drawn = judged.as_ref().ok().and_then(bolts);
    let (stands, problems) = match judged {
        Ok(is) => (old.filter(|old| old.is == is && old.source == value.source.trim()), Vec::new()),
        Err(_) if is_left_out(typed, need) => (None, Vec::new()),
        Err(problems) => (None, problems),
    };
    let asked = need.map_or(Asked::Useful, |need| need.asked);
    SheetValueView {
        key: key.to_owned(),
        name: key.to_owned(),
        asked_by: need.map(|need| need.asked_by.clone()).unwrap_or_default(),
        group: need.map_or(SheetGroup::Relearn, |need| need.group),
        asked,
        without: said.filter(|_| asked == Asked::Useful).and_then(|said| said.without.clone()),
        to_check: is_to_check(said, value.is.kind()),
        offer: said.and_then(|said| ends(sheet, said)).filter(|offer| *offer != value.is),
        fasteners: need.and_then(|need| sheet.fasteners(need)),
        taken_from: value.taken_from(),
        units: units_of(&value.is, need),
        temperature_units: temperature_units_of(&value.is),
        choices: need.map(|need| need.choices.clone()).unwrap_or_default(),
        chart: chart(&value.is),
        bolts: drawn,
        problems,
        entered: stands.map(|old| SheetEntered { by: old.entered_by.clone(), on: old.entered_on.clone() }),
        checked: stands.and_then(|old| old.checked.clone()),
    }
}

/// The first and the last temperature of a chart of the sheet, as a range.
fn ends(sheet: &TypedSheet, said: &SheetKey) -> Option<Typed> {
    let Typed::Chart { temperature_unit, points, .. } = &sheet.values.get(said.ends_of.as_ref()?)?.is else {
        return None;
    };
    let read = points.iter().map(|point| Some((parse_number(&point.at).ok()?, &point.at)));
    let mut read = read.collect::<Option<Vec<_>>>()?;
    read.sort_by(|(one, _), (other, _)| one.total_cmp(other));
    let ((_, first), (_, last)) = (read.first()?, read.last()?);
    let [min, max] = [first, last].map(|text| text.trim().to_owned());
    Some(Typed::Range { min, max, unit: temperature_unit.clone() })
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
        self.values.iter_mut().for_each(|value| value.each_message(put));
    }
}

impl SheetValueView {
    /// Every message, so that sentences can be put in.
    pub fn each_message(&mut self, put: &mut dyn FnMut(&mut Message)) {
        self.chart.iter_mut().for_each(|chart| chart.each_message(put));
        self.problems.iter_mut().for_each(|problem| put(&mut problem.message));
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
