//! A time to wait.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::{Bound, Kind, Listed, Read, SheetNeed, Wrong};
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

impl Kind for Timer {
    fn classes(&self) -> Vec<&str> {
        vec![ELAPSED]
    }

    fn holds(&self) -> &'static [&'static str] {
        &[]
    }

    fn good(&self) -> Option<Vec<&str>> {
        None
    }

    fn planned(&self) -> Option<&'static str> {
        None
    }

    fn measures(&self) -> bool {
        true
    }

    fn sheet_needs(&self) -> Vec<SheetNeed<'_>> {
        vec![SheetNeed {
            key: &self.at_least,
            kind: ValueKind::Measure,
            unit: Some("min"),
            how: Bound::AtLeast,
            spare: false,
        }]
    }

    fn reads(&self) -> Vec<Read<'_>> {
        Vec::new()
    }

    fn lists(&self) -> Vec<Listed> {
        Vec::new()
    }

    fn judges(&self) -> bool {
        false
    }

    fn answers(&self) -> bool {
        false
    }

    fn wrong(&self) -> Vec<Wrong> {
        Vec::new()
    }
}
