//! Free text.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::{Kind, Listed, Read, SheetNeed, Wrong};

/// The one class: something was written.
pub const WRITTEN: &str = "written";

/// A note, with words to choose from, as nobody likes to write.
#[derive(Debug, Clone, Default, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskNote")]
#[serde(deny_unknown_fields)]
pub struct Note {
    /// Short texts to tap.
    #[serde(default)]
    pub words: Vec<String>,
}

impl Kind for Note {
    fn classes(&self) -> Vec<&str> {
        vec![WRITTEN]
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
        true
    }

    fn wrong(&self) -> Vec<Wrong> {
        Vec::new()
    }
}
