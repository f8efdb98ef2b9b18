//! Fasteners tightened with a setting tool, one entry a stage.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::{Bound, Kind, Listed, Read, SheetNeed, Wrong};
use crate::format::sheet::ValueKind;

/// Every stage was clicked at a setting within tolerance, with a tool that may be used for it.
pub const INSIDE: &str = "inside";
/// A stage is outside tolerance, or the tool may not be used for it.
pub const OUTSIDE: &str = "outside";
/// Within tolerance, and what speaks against the tool was excepted, with a reason and a name.
pub const BY_EXCEPTION: &str = "by_exception";

/// Which fasteners, by the sheet's torque value.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskTorque")]
#[serde(deny_unknown_fields)]
pub struct Torque {
    /// Sheet key of the torque with its stages.
    pub spec: String,
    /// The items that it tightens. The sheet's torque must then be for as many fasteners as there are of them.
    #[serde(default)]
    pub of: Vec<String>,
    /// A click counts only if it is inside with all that the tool may be off.
    #[serde(default)]
    pub guarded: bool,
    /// What may speak against the tool and be excepted by name. A setting outside tolerance never is.
    #[serde(default)]
    pub exceptions: Vec<Excepted>,
}

/// What speaks against a tool and can be excepted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema, TS)]
#[serde(rename_all = "snake_case")]
pub enum Excepted {
    /// The setting lies outside the tool's range.
    ToolOutOfRange,
    /// The last day of its calibration has passed.
    CalibrationPast,
    /// The tool's deviation reaches over a limit, where the entry is `guarded`.
    NotProved,
}

impl Kind for Torque {
    fn classes(&self) -> Vec<&str> {
        let excepted = (!self.exceptions.is_empty()).then_some(BY_EXCEPTION);
        [INSIDE, OUTSIDE].into_iter().chain(excepted).collect()
    }

    fn holds(&self) -> &'static [&'static str] {
        &[OUTSIDE]
    }

    fn good(&self) -> Option<Vec<&str>> {
        None
    }

    fn planned(&self) -> Option<&'static str> {
        None
    }

    fn measures(&self) -> bool {
        false
    }

    fn sheet_needs(&self) -> Vec<SheetNeed<'_>> {
        vec![SheetNeed { key: &self.spec, kind: ValueKind::Torque, unit: None, how: Bound::Is, spare: false }]
    }

    fn reads(&self) -> Vec<Read<'_>> {
        Vec::new()
    }

    fn lists(&self) -> Vec<Listed> {
        vec![Listed { at: "/of", what: "items", length: self.of.len() }]
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
