//! A text read from the vehicle or a label.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::{Kind, Listed, Read, SheetNeed, Wrong};

/// The one class: it was read.
pub const READ: &str = "read";

/// What is scanned or typed.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskScan")]
#[serde(deny_unknown_fields)]
pub struct Scan {
    /// What the text is.
    pub of: ScanOf,
}

/// Kinds of scanned text.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema, TS)]
#[serde(rename_all = "snake_case")]
pub enum ScanOf {
    /// Vehicle identification number, 17 characters.
    Vin,
    /// Trouble codes, separated by spaces; may be none.
    Codes,
    /// Any text of a label.
    Text,
}

impl Kind for Scan {
    fn classes(&self) -> Vec<&str> {
        vec![READ]
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
