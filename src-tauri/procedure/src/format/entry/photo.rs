//! A photo.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::{Kind, Listed, Read, SheetNeed, Wrong};

/// The one class: it was taken and is on disk.
pub const TAKEN: &str = "taken";

/// What the photo must show.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskPhoto")]
#[serde(deny_unknown_fields)]
pub struct Photo {
    /// What must be on it.
    pub of: String,
    /// Whether a scale must lie in the picture.
    #[serde(default)]
    pub with_scale: bool,
}

impl Kind for Photo {
    fn classes(&self) -> Vec<&str> {
        vec![TAKEN]
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
