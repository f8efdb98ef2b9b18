//! The part format `panside-part/1`: steps or phases that several checklists share, with all that they bring.

use std::collections::BTreeMap;

use schemars::{JsonSchema, Schema, json_schema};
use serde::{Deserialize, Serialize};

use super::{
    Condition, Danger, Fact, Follow, Gate, Item, Phase, SheetKey, SignOff, Step, VehicleAction, sheet_key,
};

/// The value of `format` in a part file.
pub const PART_FORMAT: &str = "panside-part/1";

/// A part: it brings either `steps` or `phases`. `{"use": "NAME"}` in a checklist stands where they go; everything
/// else that the part has is added to the lists of the checklist.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Part {
    /// Always `panside-part/1`.
    pub format: String,
    /// Its name, that of its file: lower case with hyphens.
    pub id: String,
    /// What it brings, in a few words for the author of a checklist.
    pub title: String,
    /// Words that a checklist gives by `with`, each with what it is for. Where a text of this part is just
    /// `$name`, that word stands.
    #[serde(default)]
    pub settings: BTreeMap<String, String>,
    /// Terms that this part reads and the checklist has, each with what it must mean.
    #[serde(default)]
    pub wants: BTreeMap<String, String>,
    /// As in a checklist.
    #[serde(default)]
    pub facts: Vec<Fact>,
    /// As in a checklist.
    #[serde(default)]
    pub conditions: Vec<Condition>,
    /// As in a checklist.
    #[serde(default)]
    pub gates: Vec<Gate>,
    /// As in a checklist.
    #[serde(default, deserialize_with = "sheet_key::keys")]
    #[schemars(schema_with = "sheet_key::keys_schema")]
    pub sheet_keys: BTreeMap<String, SheetKey>,
    /// As in a checklist.
    #[serde(default)]
    pub terms: BTreeMap<String, String>,
    /// As in a checklist.
    #[serde(default)]
    pub follows: Vec<Follow>,
    /// As in a checklist.
    #[serde(default)]
    pub items: Vec<Item>,
    /// As in a checklist.
    #[serde(default)]
    pub sign_offs: Vec<SignOff>,
    /// The steps it brings, for a place among the steps of a phase.
    #[serde(default)]
    pub steps: Vec<Step>,
    /// The phases it brings, for a place among the phases.
    #[serde(default)]
    pub phases: Vec<Phase>,
    /// As in a checklist.
    #[serde(default)]
    pub vehicle_actions: Vec<VehicleAction>,
    /// As in a checklist.
    #[serde(default)]
    pub dangers: Vec<Danger>,
}

/// Where the steps or phases of a part go.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Use {
    /// The part's name.
    #[serde(rename = "use")]
    pub part: String,
    /// A word for each of the part's settings.
    #[serde(default)]
    pub with: BTreeMap<String, String>,
}

/// The schema of a list in which a part can be used in place of an element.
fn or_use<T: JsonSchema>(generator: &mut schemars::SchemaGenerator) -> Schema {
    let one = generator.subschema_for::<T>();
    let part = generator.subschema_for::<Use>();
    json_schema!({ "type": "array", "items": { "anyOf": [one, part] } })
}

/// The schema of `steps` of a phase.
pub(super) fn steps_or_uses(generator: &mut schemars::SchemaGenerator) -> Schema {
    or_use::<Step>(generator)
}

/// The schema of `phases` of a checklist.
pub(super) fn phases_or_uses(generator: &mut schemars::SchemaGenerator) -> Schema {
    or_use::<Phase>(generator)
}
