//! A hot part probed while it cools, until it may be touched.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::{Bound, Kind, Listed, Read, SheetNeed, Wrong};
use crate::format::Assignments;
use crate::format::sheet::ValueKind;

/// The reading is at or below the touch limit.
pub const COOL: &str = "cool";
/// The reading is above the touch limit: the step is held, and a time is told before which it will not be cool.
pub const HOT: &str = "hot";
/// Every class of a cool-down.
pub const CLASSES: [&str; 2] = [COOL, HOT];

/// A surface probed against its touch limit. Earlier readings at this entry tell when it will be cool.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskCoolDown")]
#[serde(deny_unknown_fields)]
pub struct CoolDown {
    /// Sheet key of the temperature up to which it may be touched.
    pub limit: String,
    /// What is probed.
    #[serde(default)]
    pub place: ProbedPlace,
    /// Conditions with the value that heats it, such as `{"engine": "running"}`: earlier readings count only since
    /// none of them had that value.
    #[serde(default)]
    pub heated_by: Assignments,
}

/// What is probed: a catalyst's core heats its shell again, a joint only cools.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema, TS)]
#[serde(rename_all = "snake_case")]
pub enum ProbedPlace {
    /// A joint or a bare pipe.
    #[default]
    Joint,
    /// The shell of a catalyst.
    Shell,
}

impl Kind for CoolDown {
    fn classes(&self) -> Vec<&str> {
        CLASSES.to_vec()
    }

    fn holds(&self) -> &'static [&'static str] {
        &[HOT]
    }

    fn good(&self) -> Option<Vec<&str>> {
        Some(vec![COOL])
    }

    fn planned(&self) -> Option<&'static str> {
        None
    }

    fn measures(&self) -> bool {
        true
    }

    fn sheet_needs(&self) -> Vec<SheetNeed<'_>> {
        vec![SheetNeed {
            key: &self.limit,
            kind: ValueKind::Measure,
            unit: Some("°C"),
            how: Bound::AtMost,
            spare: false,
        }]
    }

    fn reads(&self) -> Vec<Read<'_>> {
        Vec::new()
    }

    fn lists(&self) -> Vec<Listed> {
        vec![Listed { at: "/heated_by", what: "conditions", length: self.heated_by.len() }]
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
