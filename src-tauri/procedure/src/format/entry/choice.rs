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
    /// The answers with which the work goes on. Any other must hold the step, end the job or change something. Empty
    /// where no answer is better than another.
    #[serde(default)]
    #[ts(skip)]
    pub good: Vec<String>,
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
