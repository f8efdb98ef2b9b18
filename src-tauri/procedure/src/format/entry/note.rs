//! Free text.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::{Bound, Kind, Listed, Read, SheetNeed, Wrong};
use crate::format::sheet::ValueKind;

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
    /// Sheet key of a list of coils, whose names are to tap too.
    #[serde(default)]
    pub words_of: Option<String>,
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
        let need =
            |key| SheetNeed { key, kind: ValueKind::Coils, unit: Some("Ω"), how: Bound::Is, spare: false };
        self.words_of.as_deref().map(need).into_iter().collect()
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
