//! A spec sheet while it is typed: every number as the text that stands in its field, so that nothing typed is lost,
//! whatever it is.

use std::collections::{BTreeMap, BTreeSet};

use panside_journal::Hash;
use panside_procedure::format::Sheet;
use panside_procedure::format::sheet::{
    Chart, ChartPoint, NamedCoil, Pattern, Position, Torque, Value, ValueKind,
};
use panside_trade::units::Unit;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::needs::{Need, Needs};

/// A spec sheet while it is typed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct TypedSheet {
    /// Under which name the draft is kept: the sheet's id, or a name of its own for a sheet that has none yet.
    pub draft: String,
    /// The sheet that is edited; nothing: a new one.
    pub id: Option<String>,
    /// The revision that is edited; 0 for a new one.
    pub revision: u32,
    /// The content of the revision that is edited.
    #[serde(default)]
    pub made_from: Option<Hash>,
    /// The shop's newest events about the sheet when its editing began: a change that came meanwhile is noticed.
    #[serde(default)]
    pub seen: BTreeSet<Hash>,
    /// The checklist that it is made for.
    pub checklist: String,
    /// Which vehicles it is for.
    pub title: String,
    /// Invented values, also when only copied from some.
    pub demo: bool,
    /// The values by key.
    pub values: BTreeMap<String, TypedValue>,
}

/// One value while it is typed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct TypedValue {
    /// What it is.
    pub is: Typed,
    /// Where it comes from.
    pub source: String,
}

/// The kinds of value as they are typed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[ts(rename = "TypedIs")]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Typed {
    /// One number with its unit.
    Measure {
        /// The number.
        value: String,
        /// Its unit.
        unit: String,
    },
    /// Two limits with their unit.
    Range {
        /// The lower one.
        min: String,
        /// The higher one.
        max: String,
        /// Unit of both.
        unit: String,
    },
    /// The level chart.
    Chart {
        /// Unit of the temperatures.
        temperature_unit: String,
        /// Unit of the marks and of the agreement.
        length_unit: String,
        /// The points, in any order.
        points: Vec<TypedPoint>,
        /// How far two readings may differ and still agree.
        agreement: String,
    },
    /// Torque of a fastener pattern.
    Torque {
        /// How many fasteners.
        fasteners: String,
        /// Target of each stage, in order.
        stages: Vec<String>,
        /// Unit of the stages.
        unit: String,
        /// How far a setting may be off, in percent of the target.
        tolerance_percent: String,
        /// Where each fastener sits, in millimetres; none: no map of them is drawn.
        #[serde(default)]
        positions: Vec<TypedPosition>,
        /// How the order runs over them.
        #[serde(default)]
        pattern: Pattern,
        /// The angle that each fastener is turned after the last stage, where there is one.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        angle: Option<TypedAngle>,
    },
    /// The coils of the solenoids.
    Coils {
        /// Unit of all limits.
        unit: String,
        /// The coils in the order in which they are measured.
        coils: Vec<TypedCoil>,
    },
    /// How many there are of something that comes off the vehicle.
    Count(String),
    /// One word that a checklist's fact reads; empty while none is chosen.
    Fact(String),
    /// A text to show.
    Text(String),
}

/// An angle stage while it is typed, in degrees.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct TypedAngle {
    /// How far to turn.
    pub degrees: String,
    /// How far that may be off to both sides.
    pub tolerance: String,
}

/// One coil of a list while it is typed.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct TypedCoil {
    /// What its solenoid is called.
    pub name: String,
    /// Between which terminals it is measured; may be empty.
    #[serde(default)]
    pub terminals: String,
    /// Lowest resistance.
    pub min: String,
    /// Highest resistance.
    pub max: String,
}

/// One temperature of a level chart while it is typed.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct TypedPoint {
    /// Fluid temperature.
    pub at: String,
    /// Low mark.
    pub low: String,
    /// High mark.
    pub high: String,
}

/// Where a fastener sits while it is typed, in millimetres.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct TypedPosition {
    /// To the right.
    pub x: String,
    /// Upwards.
    pub y: String,
    /// What is different about it.
    #[serde(default)]
    pub note: String,
}

impl TypedSheet {
    /// A kept sheet as it is typed on.
    #[must_use]
    pub fn of(sheet: &Sheet, checklist: &str) -> TypedSheet {
        let values = sheet.values.iter().map(|(key, value)| {
            let typed = TypedValue { is: typed(&value.is), source: value.source.clone() };
            (key.clone(), typed)
        });
        TypedSheet {
            draft: sheet.id.clone(),
            id: Some(sheet.id.clone()),
            revision: sheet.revision,
            made_from: None,
            seen: BTreeSet::new(),
            checklist: checklist.to_owned(),
            title: sheet.title.clone(),
            demo: sheet.demo,
            values: values.collect(),
        }
    }

    /// Adds what a checklist names and the sheet lacks, as blanks; what is of another kind than asked becomes a blank.
    #[must_use]
    pub fn completed(mut self, needs: &Needs) -> TypedSheet {
        for (key, need) in needs {
            let there = self.values.get(key);
            if there.is_none_or(|value| value.is.kind() != need.kind) {
                let source = there.map_or_else(String::new, |value| value.source.clone());
                self.values.insert(key.clone(), TypedValue { is: blank(need), source });
            }
        }
        self
    }
}

impl TypedSheet {
    /// The word that is typed for a fact; nothing where none is.
    #[must_use]
    pub fn word(&self, key: &str) -> Option<&str> {
        match &self.values.get(key)?.is {
            Typed::Fact(word) if !word.is_empty() => Some(word),
            _ => None,
        }
    }
}

impl Typed {
    /// The kind that it will be.
    #[must_use]
    pub fn kind(&self) -> ValueKind {
        match self {
            Typed::Measure { .. } => ValueKind::Measure,
            Typed::Range { .. } => ValueKind::Range,
            Typed::Chart { .. } => ValueKind::Chart,
            Typed::Torque { .. } => ValueKind::Torque,
            Typed::Coils { .. } => ValueKind::Coils,
            Typed::Count(_) => ValueKind::Count,
            Typed::Fact(_) => ValueKind::Fact,
            Typed::Text(_) => ValueKind::Text,
        }
    }
}

fn blank(need: &Need) -> Typed {
    let text = String::new;
    let unit = need.unit.map_or_else(text, |unit| unit.symbol().to_owned());
    match need.kind {
        ValueKind::Measure => Typed::Measure { value: text(), unit },
        ValueKind::Range => Typed::Range { min: text(), max: text(), unit },
        ValueKind::Chart => Typed::Chart {
            temperature_unit: "°C".to_owned(),
            length_unit: "mm".to_owned(),
            points: vec![TypedPoint::default(); 2],
            agreement: text(),
        },
        ValueKind::Torque => Typed::Torque {
            fasteners: text(),
            stages: vec![text()],
            unit: "N·m".to_owned(),
            tolerance_percent: text(),
            positions: Vec::new(),
            pattern: Pattern::default(),
            angle: None,
        },
        ValueKind::Coils => {
            Typed::Coils { unit: Unit::Ohm.symbol().to_owned(), coils: vec![TypedCoil::default()] }
        }
        ValueKind::Count => Typed::Count(text()),
        ValueKind::Fact => Typed::Fact(text()),
        ValueKind::Text => Typed::Text(text()),
    }
}

fn typed(value: &Value) -> Typed {
    match value {
        Value::Measure(measure) => {
            Typed::Measure { value: measure.value.to_string(), unit: measure.unit.clone() }
        }
        Value::Range(range) => {
            Typed::Range { min: range.min.to_string(), max: range.max.to_string(), unit: range.unit.clone() }
        }
        Value::Chart(chart) => typed_chart(chart),
        Value::Torque(torque) => typed_torque(torque),
        Value::Coils(list) => {
            Typed::Coils { unit: list.unit.clone(), coils: list.coils.iter().map(typed_coil).collect() }
        }
        Value::Count(count) => Typed::Count(count.to_string()),
        Value::Fact(word) => Typed::Fact(word.clone()),
        Value::Text(text) => Typed::Text(text.clone()),
    }
}

fn typed_coil(coil: &NamedCoil) -> TypedCoil {
    TypedCoil {
        name: coil.name.clone(),
        terminals: coil.terminals.clone().unwrap_or_default(),
        min: coil.min.to_string(),
        max: coil.max.to_string(),
    }
}

fn typed_chart(chart: &Chart) -> Typed {
    let point = |point: &ChartPoint| TypedPoint {
        at: point.at.to_string(),
        low: point.low.to_string(),
        high: point.high.to_string(),
    };
    Typed::Chart {
        temperature_unit: chart.temperature_unit.clone(),
        length_unit: chart.length_unit.clone(),
        points: chart.points.iter().map(point).collect(),
        agreement: chart.agreement.to_string(),
    }
}

fn typed_torque(torque: &Torque) -> Typed {
    let position = |position: &Position| TypedPosition {
        x: position.x.to_string(),
        y: position.y.to_string(),
        note: position.note.clone().unwrap_or_default(),
    };
    Typed::Torque {
        fasteners: torque.fasteners.to_string(),
        stages: torque.stages.iter().map(f64::to_string).collect(),
        unit: torque.unit.clone(),
        tolerance_percent: torque.tolerance_percent.to_string(),
        positions: torque.positions.iter().map(position).collect(),
        pattern: torque.pattern,
        angle: torque.angle.map(|angle| TypedAngle {
            degrees: angle.degrees.to_string(),
            tolerance: angle.tolerance.to_string(),
        }),
    }
}
