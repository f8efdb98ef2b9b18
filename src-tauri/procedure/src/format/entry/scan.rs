//! A text read from the vehicle or a label.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::takes_down;

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

takes_down!(Scan, READ, answers: true);
