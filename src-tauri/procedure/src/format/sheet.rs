//! The spec sheet format `panside-sheet/1`: the values that belong to a vehicle, each with unit and source.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// A spec sheet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Sheet {
    /// Always `panside-sheet/1`.
    pub format: String,
    /// Short name, lower case with hyphens.
    pub id: String,
    /// Which vehicles it is for.
    pub title: String,
    /// Counts up with each change.
    pub revision: u32,
    /// True for invented values: "demo values, not for a vehicle" is printed wherever one shows.
    #[serde(default)]
    pub demo: bool,
    /// The values by key.
    pub values: BTreeMap<String, SheetValue>,
}

/// One value with where it comes from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SheetValue {
    /// What it is.
    pub is: Value,
    /// Where the value comes from: a document and its place in it. Never empty.
    pub source: String,
    /// Who entered it, by name. Never empty.
    pub entered_by: String,
    /// The same person's id in the shop that entered it, a UUID. Absent where no shop's program did.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub entered_by_id: Option<String>,
    /// The day on which it was entered, as `YYYY-MM-DD`. Absent where nobody took it down.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub entered_on: Option<String>,
    /// The sheet that the value was taken over from as it stands, by its title and revision.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub taken_from: Option<String>,
    /// A second person's check. A change of the value takes it away.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub checked: Option<Check>,
}

/// That a second person compared a value with its source.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "SheetCheck")]
#[serde(deny_unknown_fields)]
pub struct Check {
    /// Who, by name. Somebody else than who entered the value.
    pub by: String,
    /// The same person's id in the shop that checked it, a UUID. Absent where no shop's program did.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub by_id: Option<String>,
    /// The day, as `YYYY-MM-DD`.
    pub on: String,
    /// They gave their PIN for it.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub pin: bool,
}

/// The kinds of value.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Value {
    /// One number with its unit.
    Measure(Measure),
    /// Two limits with their unit.
    Range(Range),
    /// Low and high mark over temperature.
    Chart(Chart),
    /// Torque of a fastener pattern, stage by stage.
    Torque(Torque),
    /// The coils of the solenoids, each with its own limits.
    Coils(Coils),
    /// How many there are of something that comes off the vehicle.
    Count(u8),
    /// One word that a checklist's fact reads.
    Fact(String),
    /// A text to show, such as the fluid's specification.
    Text(String),
}

/// The kind of a [`Value`], without its content.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ValueKind {
    /// [`Value::Measure`]
    Measure,
    /// [`Value::Range`]
    Range,
    /// [`Value::Chart`]
    Chart,
    /// [`Value::Torque`]
    Torque,
    /// [`Value::Coils`]
    Coils,
    /// [`Value::Count`]
    Count,
    /// [`Value::Fact`]
    Fact,
    /// [`Value::Text`]
    Text,
}

impl ValueKind {
    /// The name as it stands in the file.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            ValueKind::Measure => "measure",
            ValueKind::Range => "range",
            ValueKind::Chart => "chart",
            ValueKind::Torque => "torque",
            ValueKind::Coils => "coils",
            ValueKind::Count => "count",
            ValueKind::Fact => "fact",
            ValueKind::Text => "text",
        }
    }
}

impl Value {
    /// Its kind.
    #[must_use]
    pub fn kind(&self) -> ValueKind {
        match self {
            Value::Measure(_) => ValueKind::Measure,
            Value::Range(_) => ValueKind::Range,
            Value::Chart(_) => ValueKind::Chart,
            Value::Torque(_) => ValueKind::Torque,
            Value::Coils(_) => ValueKind::Coils,
            Value::Count(_) => ValueKind::Count,
            Value::Fact(_) => ValueKind::Fact,
            Value::Text(_) => ValueKind::Text,
        }
    }
}

/// One number with its unit.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Measure {
    /// The number.
    pub value: f64,
    /// Its unit.
    pub unit: String,
}

/// Two limits, both inclusive.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Range {
    /// Lowest value.
    pub min: f64,
    /// Highest value.
    pub max: f64,
    /// Unit of both.
    pub unit: String,
}

/// The level chart: between the points both marks run straight.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Chart {
    /// Unit of `at`.
    pub temperature_unit: String,
    /// Unit of `low`, `high` and `agreement`.
    pub length_unit: String,
    /// Points in rising order of temperature.
    pub points: Vec<ChartPoint>,
    /// How far two readings may differ and still agree. Absent: readings on the same side of the marks agree.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub agreement: Option<f64>,
}

/// One temperature of a level chart.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ChartPoint {
    /// Fluid temperature.
    pub at: f64,
    /// Low mark.
    pub low: f64,
    /// High mark.
    pub high: f64,
}

/// The coils that are measured at one connector.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Coils {
    /// Unit of all limits.
    pub unit: String,
    /// The coils in the order in which they are measured: one at least, each name once.
    pub coils: Vec<NamedCoil>,
}

/// One coil of a list.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct NamedCoil {
    /// What its solenoid is called. Never empty.
    pub name: String,
    /// Between which terminals it is measured, such as `3 and 7`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub terminals: Option<String>,
    /// Lowest resistance.
    pub min: f64,
    /// Highest resistance.
    pub max: f64,
}

/// Torque of a fastener pattern.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Torque {
    /// How many fasteners.
    pub fasteners: u32,
    /// Target of each stage, in order.
    pub stages: Vec<f64>,
    /// Unit of the stages.
    pub unit: String,
    /// How far the setting may be off the target, in percent of it.
    pub tolerance_percent: f64,
    /// The angle that each fastener is turned after the last stage.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub angle: Option<AngleStage>,
    /// Where each fastener sits, for a drawn map of them: as many as `fasteners`, or none.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub positions: Vec<Position>,
    /// How the order runs over the positions.
    #[serde(default, skip_serializing_if = "Pattern::is_crosswise")]
    pub pattern: Pattern,
}

/// A stage that is turned by an angle, in degrees.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AngleStage {
    /// Degrees to turn, above 0 and at most 720.
    pub degrees: f64,
    /// How far that may be off to both sides, above 0 and below `degrees`.
    pub tolerance: f64,
}

/// Where a fastener sits, in millimetres, as one looks at it from where it is tightened.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Position {
    /// To the right.
    pub x: f64,
    /// Upwards.
    pub y: f64,
    /// What is different about it, in a word or two, such as `long`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
}

/// How the order of fasteners runs.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema, TS)]
#[serde(rename_all = "snake_case")]
pub enum Pattern {
    /// From the middle out, each followed by the one opposite: pans and covers.
    #[default]
    Crosswise,
    /// Over a ring: opposite, quarter, opposite.
    Star,
    /// From the middle out, round and round: plates with fasteners inside.
    Spiral,
}

impl Pattern {
    /// For serde, which asks with a reference.
    #[allow(clippy::trivially_copy_pass_by_ref, reason = "the signature that serde calls")]
    fn is_crosswise(&self) -> bool {
        *self == Pattern::Crosswise
    }
}
