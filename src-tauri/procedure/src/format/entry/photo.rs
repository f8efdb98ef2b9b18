//! A photo.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::takes_down;

/// The one class: it was taken and is on disk.
pub const TAKEN: &str = "taken";
/// So many photos of a checklist stand on the record's first page at most.
pub const MOST_FIRST_PAGE: usize = 4;

/// What the photo must show.
#[derive(Debug, Clone, Default, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskPhoto")]
#[serde(deny_unknown_fields)]
pub struct Photo {
    /// What must be on it.
    pub of: String,
    /// Whether a scale must lie in the picture.
    #[serde(default)]
    pub with_scale: bool,
    /// It stands on the first page of the record and on the customer's copy; at most four of a checklist do.
    #[serde(default)]
    pub first_page: bool,
}

takes_down!(Photo, TAKEN, answers: false);
