//! What the spec sheet allows at an entry, as it stands there, with where it comes from.

use panside_procedure::format::entry::Bound;
use panside_procedure::format::sheet::{Chart, Coils, SheetValue, Torque, Value};
use panside_procedure::format::{Ask, Sheet};
use serde::{Deserialize, Serialize};

use crate::messages;
use crate::speak::Say;

/// One value of the spec sheet that an entry was judged by.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Limit {
    /// Its key on the sheet.
    pub key: String,
    /// What it allows, in words.
    pub allows: String,
    /// Where the value comes from.
    pub source: String,
    /// Who entered it on the sheet.
    pub entered_by: String,
    /// Who compared it with its source as a second person.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub checked_by: Option<String>,
}

/// The limits of an entry. Nothing where none is asked for; a key that the sheet lacks is told as lacking.
pub(crate) fn limits(ask: &Ask, sheet: &Sheet, say: &Say<'_>) -> Vec<Limit> {
    let needs = ask.sheet_needs().into_iter();
    needs.map(|need| limit(need.how, need.key, sheet.values.get(need.key), say)).collect()
}

fn limit(how: Bound, key: &str, value: Option<&SheetValue>, say: &Say<'_>) -> Limit {
    let key = key.to_owned();
    let Some(value) = value else {
        let (allows, none) = (say.within(&messages::limit_not_on_sheet()), String::new());
        return Limit { key, allows, source: none.clone(), entered_by: none, checked_by: None };
    };
    Limit {
        key,
        allows: bounded(how, said(&value.is, say), say),
        source: value.source.clone(),
        entered_by: value.entered_by.clone(),
        checked_by: value.checked.as_ref().map(|check| check.by.clone()),
    }
}

fn bounded(how: Bound, value: String, say: &Say<'_>) -> String {
    let message = match how {
        Bound::Is => return value,
        Bound::AtMost => messages::bound_at_most(value),
        Bound::AtLeast => messages::bound_at_least(value),
        Bound::At => messages::bound_at(value),
        Bound::Holds => messages::bound_holds(value),
        Bound::Unseen => messages::bound_unseen(value),
    };
    say.within(&message)
}

/// A sheet's value in words. A number is written with as many digits as make it that number, as on the sheet.
fn said(value: &Value, say: &Say<'_>) -> String {
    match value {
        Value::Measure(measure) => say.measure(&measure.value.to_string(), &measure.unit),
        Value::Range(range) => {
            let [low, high] = [range.min, range.max].map(|end| say.number(&end.to_string()));
            say.within(&messages::limit_range(low, say.as_typed(&high, &range.unit)))
        }
        Value::Chart(chart) => said_chart(chart, say),
        Value::Torque(torque) => said_torque(torque, say),
        Value::Coils(list) => said_coils(list, say),
        Value::Count(count) => count.to_string(),
        Value::Fact(word) | Value::Text(word) => word.clone(),
    }
}

fn said_chart(chart: &Chart, say: &Say<'_>) -> String {
    let points = chart.points.iter().map(|point| {
        let [low, high] = [point.low, point.high].map(|end| say.number(&end.to_string()));
        let marks = say.within(&messages::limit_range(low, say.as_typed(&high, &chart.length_unit)));
        say.within(&messages::value_at(marks, say.measure(&point.at.to_string(), &chart.temperature_unit)))
    });
    say.listed(points)
}

fn said_coils(list: &Coils, say: &Say<'_>) -> String {
    say.listed(list.coils.iter().map(|coil| {
        let [low, high] = [coil.min, coil.max].map(|end| say.number(&end.to_string()));
        let range = say.within(&messages::limit_range(low, say.as_typed(&high, &list.unit)));
        say.within(&messages::value_coil(&coil.name, range))
    }))
}

fn said_torque(torque: &Torque, say: &Say<'_>) -> String {
    let stages = say.apart_by_then(torque.stages.iter().map(|stage| say.number(&stage.to_string())));
    let stages = say.as_typed(&stages, &torque.unit);
    let off = say.number(&torque.tolerance_percent.to_string());
    let torqued = say.within(&messages::limit_torque(stages, off));
    let angle = torque.angle.as_ref().map(|angle| {
        let [degrees, off] = [angle.degrees, angle.tolerance].map(|angle| say.number(&angle.to_string()));
        say.within(&messages::limit_angle(degrees, off))
    });
    say.apart_by_then([torqued].into_iter().chain(angle))
}
