//! Parts and labor of an estimate, with their prices.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::takes_down;

/// The one class: lines were entered.
pub const ESTIMATED: &str = "estimated";

/// An estimate, with names to choose from, as nobody likes to write.
#[derive(Debug, Clone, Default, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskEstimate")]
#[serde(deny_unknown_fields)]
pub struct Estimate {
    /// Names of parts to tap.
    #[serde(default)]
    pub parts: Vec<String>,
    /// Names of labor to tap.
    #[serde(default)]
    pub labor: Vec<String>,
    /// What may turn up, to tap.
    #[serde(default)]
    pub may_turn_up: Vec<String>,
}

takes_down!(Estimate, ESTIMATED, answers: false);
