//! Free text.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::takes_down;

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

takes_down!(Note, WRITTEN, answers: true);
