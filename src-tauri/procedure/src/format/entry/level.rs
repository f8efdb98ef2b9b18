//! Fluid level against temperature, read on a stick.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::{Bound, Kind, Listed, Read, SheetNeed, Wrong};
use crate::format::sheet::ValueKind;

/// Under the band at that temperature.
pub const BELOW: &str = "below";
/// In the band at that temperature.
pub const IN: &str = "in";
/// Over the band at that temperature.
pub const ABOVE: &str = "above";
/// Readings do not agree, no trace, or outside the chart: read again.
pub const UNCLEAR: &str = "unclear";
/// It is off, and somebody has said, by name, why it can't be brought into the band.
pub const NOT_REACHED: &str = "not_reached";
/// Every class of a level; the last one only where the checklist allows it.
const CLASSES: [&str; 5] = [BELOW, IN, ABOVE, UNCLEAR, NOT_REACHED];

/// At least two stick readings, each with its temperature, judged against the sheet's chart.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskLevel")]
#[serde(deny_unknown_fields)]
pub struct Level {
    /// Sheet key of the level chart.
    pub chart: String,
    /// Sheet key of the rise on the stick for each litre (`mm/L`): what to add or take out is told by it.
    #[serde(default)]
    pub gain: Option<String>,
    /// What was added before this level was read, for learning the rise on this vehicle.
    #[serde(default)]
    pub added: Option<Added>,
    /// The level may be given up, with a reason and a name: a vehicle that leaks never reaches its band.
    #[serde(default)]
    pub may_give_up: bool,
}

/// Where the additions of a level stand.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "LevelAdded")]
#[serde(deny_unknown_fields)]
pub struct Added {
    /// The reading of what was added in all since `before`, as `step.entry`.
    pub volume: String,
    /// The level before anything was added, as `step.entry`. Absent: the first level that was read here.
    #[serde(default)]
    pub before: Option<String>,
}

impl Kind for Level {
    fn classes(&self) -> Vec<&str> {
        CLASSES.into_iter().filter(|class| *class != NOT_REACHED || self.may_give_up).collect()
    }

    fn holds(&self) -> &'static [&'static str] {
        &[UNCLEAR]
    }

    fn good(&self) -> Option<Vec<&str>> {
        Some(vec![IN])
    }

    fn planned(&self) -> Option<&'static str> {
        Some(IN)
    }

    fn measures(&self) -> bool {
        true
    }

    fn sheet_needs(&self) -> Vec<SheetNeed<'_>> {
        let chart =
            SheetNeed { key: &self.chart, kind: ValueKind::Chart, unit: None, how: Bound::Is, spare: false };
        let gain = self.gain.as_deref().map(|key| SheetNeed {
            key,
            kind: ValueKind::Measure,
            unit: Some("mm/L"),
            how: Bound::Is,
            spare: true,
        });
        std::iter::once(chart).chain(gain).collect()
    }

    fn reads(&self) -> Vec<Read<'_>> {
        let Some(added) = &self.added else { return Vec::new() };
        let before = added.before.as_deref().map(|entry| Read { entry, kind: "level", unit: None });
        let volume = Read { entry: &added.volume, kind: "reading", unit: Some("L") };
        std::iter::once(volume).chain(before).collect()
    }

    fn lists(&self) -> Vec<Listed> {
        Vec::new()
    }

    fn judges(&self) -> bool {
        true
    }

    fn answers(&self) -> bool {
        false
    }

    fn wrong(&self) -> Vec<Wrong> {
        Vec::new()
    }
}
