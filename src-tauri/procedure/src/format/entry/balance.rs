//! What was drained against what went in, from what other entries took down.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::{Bound, Kind, Listed, Read, SheetNeed, Wrong};
use crate::format::sheet::ValueKind;
use crate::message::*;

/// The difference lies within its own uncertainty.
pub const CLOSES: &str = "closes";
/// It does not, and nobody has said why: the step is held.
pub const DIFFERS: &str = "differs";
/// It does not, and somebody has said, by name, where the fluid is.
pub const EXPLAINED: &str = "explained";
/// Every class of a balance.
pub const CLASSES: [&str; 3] = [CLOSES, DIFFERS, EXPLAINED];

/// Amounts drained and added, compared at 15 °C.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskBalance")]
#[serde(deny_unknown_fields)]
pub struct Balance {
    /// What came out; at least one.
    pub drained: Vec<Amount>,
    /// What went in; at least one.
    pub added: Vec<Amount>,
    /// Sheet key of the fluid's density at 15 °C.
    pub density: String,
    /// Sheet key of what may be lost or gained unseen, to both sides: splash, rags, what a new filter holds.
    pub unseen: String,
    /// Sheet key of what the transmission holds, if the sheet says so.
    #[serde(default)]
    pub capacity: Option<String>,
}

/// An amount that another entry took down.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "BalanceAmount")]
#[serde(deny_unknown_fields)]
pub struct Amount {
    /// The reading of its volume, as `step.entry`.
    pub volume: String,
    /// The reading of its temperature, as `step.entry`. Absent: fluid from the can, whose temperature is asked for here.
    #[serde(default)]
    pub temperature: Option<String>,
}

impl Kind for Balance {
    fn classes(&self) -> Vec<&str> {
        CLASSES.to_vec()
    }

    fn holds(&self) -> &'static [&'static str] {
        &[DIFFERS]
    }

    fn good(&self) -> Option<Vec<&str>> {
        Some(vec![CLOSES, EXPLAINED])
    }

    fn planned(&self) -> Option<&'static str> {
        None
    }

    fn measures(&self) -> bool {
        false
    }

    fn sheet_needs(&self) -> Vec<SheetNeed<'_>> {
        let need =
            |key, unit, how, spare| SheetNeed { key, kind: ValueKind::Measure, unit: Some(unit), how, spare };
        let capacity = self.capacity.as_deref().map(|key| need(key, "L", Bound::Holds, true));
        [need(&self.density, "kg/m³", Bound::Is, false), need(&self.unseen, "L", Bound::Unseen, true)]
            .into_iter()
            .chain(capacity)
            .collect()
    }

    fn reads(&self) -> Vec<Read<'_>> {
        let amounts = self.drained.iter().chain(&self.added);
        let reading = |entry, unit| Read { entry, kind: "reading", unit: Some(unit) };
        let read = amounts.flat_map(|amount| {
            let temperature = amount.temperature.as_deref().map(|entry| reading(entry, "°C"));
            std::iter::once(reading(amount.volume.as_str(), "L")).chain(temperature)
        });
        read.collect()
    }

    fn lists(&self) -> Vec<Listed> {
        vec![Listed { at: "", what: "amounts", length: self.drained.len() + self.added.len() }]
    }

    fn judges(&self) -> bool {
        true
    }

    fn answers(&self) -> bool {
        false
    }

    fn wrong(&self) -> Vec<Wrong> {
        if self.drained.is_empty() || self.added.is_empty() {
            return vec![Wrong::new("", problem_balance())];
        }
        Vec::new()
    }
}
