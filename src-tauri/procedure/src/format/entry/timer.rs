//! A time to wait.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::SheetNeed;
use crate::format::sheet::ValueKind;

/// The one class: the time has passed. Before that the entry is refused.
pub const ELAPSED: &str = "elapsed";

/// How long to wait, counted from the beginning of the step.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskTimer")]
#[serde(deny_unknown_fields)]
pub struct Timer {
    /// Sheet key of a measure in minutes.
    pub at_least: String,
}

impl Timer {
    /// The keys it needs on the sheet.
    #[must_use]
    pub fn sheet_needs(&self) -> Vec<SheetNeed<'_>> {
        vec![SheetNeed { key: &self.at_least, kind: ValueKind::Measure, unit: Some("min") }]
    }
}
