//! A signature asked for by a step.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::takes_down;

/// The one class: it was signed.
pub const SIGNED: &str = "signed";

/// Names one of the checklist's `sign_offs`. It is given when the step is done and judged on its outcome.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskSignOff")]
#[serde(deny_unknown_fields)]
pub struct SignOffEntry {
    /// Id in `sign_offs`.
    pub sign: String,
}

takes_down!(SignOffEntry, SIGNED, answers: false);
