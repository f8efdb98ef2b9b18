//! A signature asked for by a step.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::{Kind, Listed, Read, SheetNeed, Wrong};

/// The one class: it was signed.
pub const SIGNED: &str = "signed";

/// Names one of the checklist's `sign_offs`. It is given when the step is done and judged on its outcome.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskSignOff")]
#[serde(deny_unknown_fields)]
pub struct SignOffEntry {
    /// Id in `sign_offs`.
    pub sign: String,
}

impl Kind for SignOffEntry {
    fn classes(&self) -> Vec<&str> {
        vec![SIGNED]
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
        false
    }

    fn sheet_needs(&self) -> Vec<SheetNeed<'_>> {
        Vec::new()
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
