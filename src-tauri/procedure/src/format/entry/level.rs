//! Fluid level against temperature, read on a stick.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::SheetNeed;
use crate::format::sheet::ValueKind;

/// Under the band at that temperature.
pub const BELOW: &str = "below";
/// In the band at that temperature.
pub const IN: &str = "in";
/// Over the band at that temperature.
pub const ABOVE: &str = "above";
/// Readings do not agree, no trace, or outside the chart: read again.
pub const UNCLEAR: &str = "unclear";
/// Every class of a level.
pub const CLASSES: [&str; 4] = [BELOW, IN, ABOVE, UNCLEAR];

/// At least two stick readings, each with its temperature, judged against the sheet's chart.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskLevel")]
#[serde(deny_unknown_fields)]
pub struct Level {
    /// Sheet key of the level chart.
    pub chart: String,
}

impl Level {
    /// The keys it needs on the sheet.
    #[must_use]
    pub fn sheet_needs(&self) -> Vec<SheetNeed<'_>> {
        vec![SheetNeed { key: &self.chart, kind: ValueKind::Chart, unit: None }]
    }
}
