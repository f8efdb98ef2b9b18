//! One of several answers.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// A question with its answers.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskChoice")]
#[serde(deny_unknown_fields)]
pub struct Choice {
    /// The answers, at least two.
    pub options: Vec<ChoiceOption>,
    /// True where the answer tells what the hands did: only then may a class change conditions.
    #[serde(default)]
    pub hands_did: bool,
}

/// One answer. Its id is the class.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[serde(deny_unknown_fields)]
pub struct ChoiceOption {
    /// The class.
    pub class: String,
    /// What the button says.
    pub label: String,
}
