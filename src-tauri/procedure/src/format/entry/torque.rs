//! Fasteners tightened with a setting tool, one entry a stage.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::SheetNeed;
use crate::format::sheet::ValueKind;

/// Every stage was clicked at a setting within tolerance, with a tool that may be used for it.
pub const INSIDE: &str = "inside";
/// A stage is outside tolerance, or the tool may not be used for it.
pub const OUTSIDE: &str = "outside";
/// Every class of a torque entry.
pub const CLASSES: [&str; 2] = [INSIDE, OUTSIDE];

/// Which fasteners, by the sheet's torque value.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskTorque")]
#[serde(deny_unknown_fields)]
pub struct Torque {
    /// Sheet key of the torque with its stages.
    pub spec: String,
}

impl Torque {
    /// The keys it needs on the sheet.
    #[must_use]
    pub fn sheet_needs(&self) -> Vec<SheetNeed<'_>> {
        vec![SheetNeed { key: &self.spec, kind: ValueKind::Torque, unit: None }]
    }
}
