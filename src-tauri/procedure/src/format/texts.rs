//! The texts format `panside-texts/1`: what people read of a checklist, in another language.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A checklist's texts in one language. Rules, ids and numbers stay those of the checklist.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Texts {
    /// Always `panside-texts/1`.
    pub format: String,
    /// The id of the checklist.
    pub of: String,
    /// The revision of the checklist.
    pub revision: u32,
    /// The language as a BCP 47 tag, such as `es` or `fr-CA`.
    pub language: String,
    /// Every text by its place: `steps/drain/title`, `conditions/lift/values/floor`. A place is made of ids, and counts
    /// from 1 what has none.
    pub texts: BTreeMap<String, String>,
}
