//! Level readings and torque as data, for a table or a drawing, and the photos. Figures stand as typed; those of the
//! sheet with as many digits as make them.

use panside_job::EntryValue;
use panside_job::value::StickShows;
use panside_procedure::format::sheet::Value;
use panside_procedure::format::{Ask, Sheet};
use serde::{Deserialize, Serialize};

use crate::by::By;
use crate::limits::{Limit, limits};
use crate::source::{Found, Source, Standing};

/// Stick readings of one entry.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Level {
    /// Step id.
    pub step: String,
    /// What the control says.
    pub label: String,
    /// The readings.
    pub readings: Vec<Stick>,
    /// Looked at again, and the stick stayed dry.
    pub confirmed_no_trace: bool,
    /// What the level turned out to be.
    pub class: String,
    /// What the class is called.
    pub called: String,
    /// What has become of the entry.
    pub standing: Standing,
    /// Who entered it, and when.
    pub by: By,
    /// Key of the sheet's chart in [`crate::Document::charts`].
    pub chart: String,
}

/// One reading of the stick.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Stick {
    /// Fluid temperature as typed.
    pub temperature: String,
    /// Its unit.
    pub temperature_unit: String,
    /// The wet edge as typed. Nothing: the stick stayed dry.
    pub trace: Option<String>,
    /// Its unit; empty where the stick stayed dry.
    pub unit: String,
}

/// A level chart of the sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Chart {
    /// Its key.
    pub key: String,
    /// Unit of `at`.
    pub temperature_unit: String,
    /// Unit of `low`, `high` and `agreement`.
    pub length_unit: String,
    /// Points in rising order of temperature.
    pub points: Vec<ChartPoint>,
    /// How far two readings may differ and still agree. Absent: the sheet does not say.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub agreement: Option<String>,
    /// Where the chart comes from.
    pub source: String,
}

/// One temperature of a chart.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ChartPoint {
    /// Fluid temperature.
    pub at: String,
    /// Low mark.
    pub low: String,
    /// High mark.
    pub high: String,
}

/// Torque as clicked at one entry.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Torque {
    /// Step id.
    pub step: String,
    /// What the control says.
    pub label: String,
    /// How many fasteners the sheet gives. Nothing: the sheet lacks it.
    pub fasteners: Option<u32>,
    /// The setting that clicked at each stage, as typed.
    pub stages: Vec<String>,
    /// Their unit.
    pub unit: String,
    /// What the shop calls the tool.
    pub tool: String,
    /// The last day on which its calibration holds, as given then.
    pub calibration_due: String,
    /// The number of its calibration's certificate, as given then.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub certificate: Option<String>,
    /// What it turned out to be.
    pub class: String,
    /// What the class is called.
    pub called: String,
    /// What has become of the entry.
    pub standing: Standing,
    /// Who entered it, and when.
    pub by: By,
    /// What the sheet allows.
    pub limits: Vec<Limit>,
}

/// A photo.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Photo {
    /// SHA-256 of its bytes.
    pub hash: String,
    /// Step id.
    pub step: String,
    /// Its title.
    pub title: String,
    /// What the control says.
    pub label: String,
    /// What the checklist wants to see on it; empty where it asks for no photo.
    pub of: String,
    /// What was written under it; nothing where no caption is known.
    pub caption: Option<String>,
    /// Width in pixels.
    pub width: u32,
    /// Height in pixels.
    pub height: u32,
    /// What has become of the entry.
    pub standing: Standing,
    /// It stands on the first page and on the customer's copy.
    pub first_page: bool,
    /// Who entered it, and when.
    pub by: By,
}

/// Every level entry.
pub(crate) fn levels(source: Source<'_>) -> Vec<Level> {
    let levels = source.entered().filter_map(|found| {
        let EntryValue::Level { readings, confirmed_no_trace, .. } = &found.value.value else { return None };
        let readings = readings.iter().map(|reading| {
            let (trace, unit) = match &reading.stick {
                StickShows::Trace { value, unit } => (Some(value.clone()), unit.clone()),
                StickShows::NoTrace => (None, String::new()),
            };
            let (temperature, temperature_unit) =
                (reading.temperature.clone(), reading.temperature_unit.clone());
            Stick { temperature, temperature_unit, trace, unit }
        });
        let chart = match found.entry.map(|entry| &entry.ask) {
            Some(Ask::Level(asked)) => asked.chart.clone(),
            _ => String::new(),
        };
        Some(Level {
            step: found.step.id.clone(),
            label: found.label(),
            readings: readings.collect(),
            confirmed_no_trace: *confirmed_no_trace,
            class: found.value.class.clone(),
            called: source.class_label(found.entry.map(|entry| &entry.ask), &found.value.class),
            standing: found.standing,
            by: source.by(&found.value.mark),
            chart,
        })
    });
    levels.collect()
}

/// The charts that the sheet has, by key.
pub(crate) fn charts(sheet: &Sheet) -> Vec<Chart> {
    let charts = sheet.values.iter().filter_map(|(key, value)| {
        let Value::Chart(chart) = &value.is else { return None };
        let points = chart.points.iter().map(|point| ChartPoint {
            at: point.at.to_string(),
            low: point.low.to_string(),
            high: point.high.to_string(),
        });
        Some(Chart {
            key: key.clone(),
            temperature_unit: chart.temperature_unit.clone(),
            length_unit: chart.length_unit.clone(),
            points: points.collect(),
            agreement: chart.agreement.map(|agreement| agreement.to_string()),
            source: value.source.clone(),
        })
    });
    charts.collect()
}

/// Every torque entry.
pub(crate) fn torques(source: Source<'_>) -> Vec<Torque> {
    let sheet = &source.job.specs.sheet;
    let torques = source.entered().filter_map(|found| {
        let EntryValue::Torque { stages, unit, tool, .. } = &found.value.value else { return None };
        Some(Torque {
            step: found.step.id.clone(),
            label: found.label(),
            fasteners: fasteners(&found, sheet),
            stages: stages.clone(),
            unit: unit.clone(),
            tool: tool.name.clone(),
            calibration_due: tool.calibration_due.clone(),
            certificate: tool.certificate.clone(),
            class: found.value.class.clone(),
            called: source.class_label(found.entry.map(|entry| &entry.ask), &found.value.class),
            standing: found.standing,
            by: source.by(&found.value.mark),
            limits: found.entry.map(|entry| limits(&entry.ask, sheet, source.say)).unwrap_or_default(),
        })
    });
    torques.collect()
}

fn fasteners(found: &Found<'_>, sheet: &Sheet) -> Option<u32> {
    let Ask::Torque(asked) = &found.entry?.ask else { return None };
    match &sheet.values.get(&asked.spec)?.is {
        Value::Torque(torque) => Some(torque.fasteners),
        _ => None,
    }
}

/// Every photo that was entered.
pub(crate) fn photos(
    source: Source<'_>,
    captions: &std::collections::BTreeMap<String, String>,
) -> Vec<Photo> {
    let photos = source.entered().filter_map(|found| {
        let EntryValue::Photo { hash, width, height } = &found.value.value else { return None };
        let (of, asked_first) = match found.entry.map(|entry| &entry.ask) {
            Some(Ask::Photo(asked)) => (asked.of.clone(), asked.first_page),
            _ => (String::new(), false),
        };
        let first_page = asked_first && found.counts();
        Some(Photo {
            hash: hash.clone(),
            step: found.step.id.clone(),
            title: found.step.title.clone(),
            label: found.label(),
            of,
            caption: captions.get(hash).cloned(),
            width: *width,
            height: *height,
            standing: found.standing,
            first_page,
            by: source.by(&found.value.mark),
        })
    });
    let mut photos: Vec<Photo> = photos.collect();
    photos.extend(crate::turned_up::photos(source));
    photos
}
