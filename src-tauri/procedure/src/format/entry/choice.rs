//! One of several answers.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A question with its answers.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Choice {
    /// The answers, at least two.
    pub options: Vec<ChoiceOption>,
    /// True where the answer tells what the hands did: only then may a class change conditions.
    #[serde(default)]
    pub hands_did: bool,
}

/// One answer. Its id is the class.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ChoiceOption {
    /// The class.
    pub class: String,
    /// What the button says.
    pub label: String,
}
