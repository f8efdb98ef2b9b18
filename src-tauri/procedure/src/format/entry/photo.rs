//! A photo.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::takes_down;

/// The one class: it was taken and is on disk.
pub const TAKEN: &str = "taken";

/// What the photo must show.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskPhoto")]
#[serde(deny_unknown_fields)]
pub struct Photo {
    /// What must be on it.
    pub of: String,
    /// Whether a scale must lie in the picture.
    #[serde(default)]
    pub with_scale: bool,
}

takes_down!(Photo, TAKEN, answers: false);
