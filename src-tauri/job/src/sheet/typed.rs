//! A spec sheet while it is typed: every number as the text that stands in its field, so that nothing typed is lost,
//! whatever it is.

use std::collections::{BTreeMap, BTreeSet};

use panside_journal::Hash;
use panside_procedure::format::Sheet;
use panside_procedure::format::sheet::{Pattern, ValueKind};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::fields::{blank, typed};
use super::needs::{Need, Needs, Tightened};

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
    /// Where the values come from that name no source of their own.
    #[serde(default)]
    pub source: String,
    /// The values by key.
    pub values: BTreeMap<String, TypedValue>,
}

/// One value while it is typed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct TypedValue {
    /// What it is.
    pub is: Typed,
    /// Where it comes from; empty: from where the sheet as a whole does.
    pub source: String,
    /// What was taken over from another sheet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub taken: Option<Taken>,
}

/// A value as it was taken over from another sheet. It is so until the value or its source is another one.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[ts(rename = "TypedTaken")]
#[serde(deny_unknown_fields)]
pub struct Taken {
    /// That sheet's title and revision.
    pub from: String,
    /// What it was.
    pub is: Typed,
    /// Where it came from.
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
        /// How far two readings may differ and still agree; empty: it is not known.
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
    /// One of which nothing is typed.
    #[must_use]
    pub fn blank() -> TypedSheet {
        TypedSheet {
            draft: String::new(),
            id: None,
            revision: 0,
            made_from: None,
            seen: BTreeSet::new(),
            checklist: String::new(),
            title: String::new(),
            demo: false,
            source: String::new(),
            values: BTreeMap::new(),
        }
    }

    /// A kept sheet as it is typed on.
    #[must_use]
    pub fn of(sheet: &Sheet, checklist: &str) -> TypedSheet {
        let source = most_said(sheet).unwrap_or_default();
        let values = sheet.values.iter().map(|(key, value)| {
            let own = if value.source == source { String::new() } else { value.source.clone() };
            let is = typed(&value.is);
            let taken = value.taken_from.clone().map(|from| Taken {
                from,
                is: is.clone(),
                source: value.source.clone(),
            });
            (key.clone(), TypedValue { is, source: own, taken })
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
            source: source.to_owned(),
            values: values.collect(),
        }
    }

    /// A new sheet that begins with the values of another one, which are marked as taken over.
    #[must_use]
    pub fn copy_of(sheet: &Sheet, checklist: &str, from: &str) -> TypedSheet {
        let of = TypedSheet::of(sheet, checklist);
        let mut copy = TypedSheet { id: None, revision: 0, source: String::new(), ..of };
        for value in copy.values.values_mut() {
            if value.source.is_empty() {
                value.source.clone_from(&of.source);
            }
            let (from, is, source) = (from.to_owned(), value.is.clone(), value.source.clone());
            value.taken = Some(Taken { from, is, source });
        }
        copy
    }

    /// A value as it counts: from where the whole sheet comes from, if it names no source of its own or only that of
    /// another value that was taken over in its place; and for as many fasteners as are counted, if it names no number.
    #[must_use]
    pub(super) fn counting(&self, value: &TypedValue, need: Option<&Need>) -> TypedValue {
        let mut value = value.clone();
        let other = |taken: &Taken| taken.is != value.is && taken.source == value.source;
        if value.source.trim().is_empty() || value.taken.as_ref().is_some_and(other) {
            value.source.clone_from(&self.source);
        }
        if let Typed::Torque { fasteners, .. } = &mut value.is
            && fasteners.trim().is_empty()
            && let Some(counted) = need.and_then(|need| self.fasteners(need))
        {
            *fasteners = counted.to_string();
        }
        value
    }

    /// How many fasteners a torque is for by what the sheet counts so far.
    pub(super) fn fasteners(&self, need: &Need) -> Option<u32> {
        let counted = need.tightens.iter().map(|tightened| match tightened {
            Tightened::Always(count) => Some(u32::from(*count)),
            Tightened::Counted(key) => match &self.values.get(key)?.is {
                Typed::Count(text) => text.trim().parse::<u8>().ok().map(u32::from),
                _ => None,
            },
        });
        if need.tightens.is_empty() { None } else { counted.sum() }
    }

    /// Adds what a checklist names and the sheet lacks, as blanks; what is of another kind than asked becomes a blank.
    #[must_use]
    pub fn completed(mut self, needs: &Needs) -> TypedSheet {
        for (key, need) in needs {
            let there = self.values.get(key);
            if there.is_none_or(|value| value.is.kind() != need.kind) {
                let source = there.map_or_else(String::new, |value| value.source.clone());
                self.values.insert(key.clone(), TypedValue { is: blank(need), source, taken: None });
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

impl TypedValue {
    /// The sheet that it was taken over from, where neither the value nor its source was changed since. The source is
    /// that which counts ([`TypedSheet::counting`]).
    pub(super) fn taken_from(&self) -> Option<String> {
        let taken = self.taken.as_ref()?;
        (taken.is == self.is && taken.source == self.source).then(|| taken.from.clone())
    }
}

impl Typed {
    /// It in short, as typed.
    #[must_use]
    pub fn in_short(&self) -> String {
        match self {
            Typed::Measure { value, unit } => format!("{value} {unit}"),
            Typed::Range { min, max, unit } => format!("{min}\u{2013}{max} {unit}"),
            Typed::Chart { points, temperature_unit, .. } => {
                let points: Vec<&str> = points.iter().map(|point| point.at.as_str()).collect();
                format!("{} {temperature_unit}", points.join(", "))
            }
            Typed::Torque { stages, unit, .. } => format!("{} {unit}", stages.join(", ")),
            Typed::Coils { coils, .. } => {
                let names: Vec<&str> = coils.iter().map(|coil| coil.name.as_str()).collect();
                names.join(", ")
            }
            Typed::Count(text) | Typed::Fact(text) | Typed::Text(text) => text.clone(),
        }
    }

    /// Whether nothing is typed of it.
    #[must_use]
    pub fn is_blank(&self) -> bool {
        let none = |text: &String| text.trim().is_empty();
        match self {
            Typed::Measure { value, .. } => none(value),
            Typed::Range { min, max, .. } => none(min) && none(max),
            Typed::Chart { points, agreement, .. } => {
                none(agreement)
                    && points.iter().all(|point| none(&point.at) && none(&point.low) && none(&point.high))
            }
            Typed::Torque { fasteners, stages, tolerance_percent, positions, .. } => {
                none(fasteners) && none(tolerance_percent) && stages.iter().all(none) && positions.is_empty()
            }
            Typed::Coils { coils, .. } => coils
                .iter()
                .all(|coil| [&coil.name, &coil.terminals, &coil.min, &coil.max].into_iter().all(none)),
            Typed::Count(text) | Typed::Fact(text) | Typed::Text(text) => none(text),
        }
    }
}

/// The source that most values of a sheet have, if it is that of several.
fn most_said(sheet: &Sheet) -> Option<&str> {
    let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
    sheet.values.values().for_each(|value| *counts.entry(&value.source).or_default() += 1);
    counts
        .into_iter()
        .filter(|(_, count)| *count > 1)
        .max_by_key(|(_, count)| *count)
        .map(|(source, _)| source)
}
