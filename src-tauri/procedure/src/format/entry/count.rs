//! Pieces counted into the tray or out of it.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::{Kind, Listed, Read, SheetNeed, Wrong};
use crate::format::item::{self, Pieces};

/// All are there.
pub const ALL: &str = "all";
/// Some are missing: the step is held until they are found or accounted for.
pub const SHORT: &str = "short";
/// Some are missing and somebody has said, by name, where they are.
pub const ACCOUNTED: &str = "accounted";
/// Every class of a count.
pub const CLASSES: [&str; 3] = [ALL, SHORT, ACCOUNTED];

/// How many of each item are expected in the hand.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskCount")]
#[serde(deny_unknown_fields)]
pub struct Count {
    /// Expected pieces by item id.
    #[serde(deserialize_with = "item::pieces")]
    #[schemars(schema_with = "item::pieces_schema")]
    pub of: Pieces,
}

impl Kind for Count {
    fn classes(&self) -> Vec<&str> {
        CLASSES.to_vec()
    }

    fn holds(&self) -> &'static [&'static str] {
        &[SHORT]
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
