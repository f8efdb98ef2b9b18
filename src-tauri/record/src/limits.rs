//! What the spec sheet allows at an entry, as it stands there, with where it comes from.

use panside_procedure::format::sheet::{Chart, SheetValue, Torque, Value};
use panside_procedure::format::{Ask, Sheet};
use serde::{Deserialize, Serialize};

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
pub(crate) fn limits(ask: &Ask, sheet: &Sheet) -> Vec<Limit> {
    let needs = ask.sheet_needs().into_iter();
    needs.map(|need| limit(need.how, need.key, sheet.values.get(need.key))).collect()
}

fn limit(how: &str, key: &str, value: Option<&SheetValue>) -> Limit {
    let key = key.to_owned();
    match value {
        Some(value) => Limit {
            key,
            allows: format!("{how}{}", said(&value.is)),
            source: value.source.clone(),
            entered_by: value.entered_by.clone(),
            checked_by: value.checked.as_ref().map(|check| check.by.clone()),
        },
        None => Limit {
            key,
            allows: "not on the sheet".to_owned(),
            source: String::new(),
            entered_by: String::new(),
            checked_by: None,
        },
    }
}

/// A sheet's value in words. A number is written with as many digits as make it that number, as on the sheet.
fn said(value: &Value) -> String {
    match value {
        Value::Measure(measure) => format!("{} {}", measure.value, measure.unit),
        Value::Range(range) => format!("{} to {} {}", range.min, range.max, range.unit),
        Value::Chart(chart) => said_chart(chart),
        Value::Torque(torque) => said_torque(torque),
        Value::Fact(word) | Value::Text(word) => word.clone(),
    }
}

fn said_chart(chart: &Chart) -> String {
    let points = chart.points.iter().map(|point| {
        let (low, high) = (point.low, point.high);
        format!("{low} to {high} {} at {} {}", chart.length_unit, point.at, chart.temperature_unit)
    });
    points.collect::<Vec<_>>().join(", ")
}

fn said_torque(torque: &Torque) -> String {
    let stages: Vec<_> = torque.stages.iter().map(f64::to_string).collect();
    let angle = torque.angle.map(|angle| format!(", then {}° ± {}°", angle.degrees, angle.tolerance));
    let angle = angle.unwrap_or_default();
    format!("{} {} ± {} %{angle}", stages.join(", then "), torque.unit, torque.tolerance_percent)
}
