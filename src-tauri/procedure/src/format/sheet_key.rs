//! What a checklist says of a key of the spec sheet: what people read for it, and who has to know its value.

use std::collections::BTreeMap;
use std::fmt;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::value::MapAccessDeserializer;
use serde::de::{Error, MapAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize};
use ts_rs::TS;

use super::sheet::Value;

/// A key of the spec sheet. In a file its label alone stands for one that is needed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SheetKey {
    /// What people read for it.
    pub label: String,
    /// Whether a sheet must have it.
    #[serde(default)]
    pub asked: Asked,
    /// What is lost where a useful one is missing, as a sentence.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub without: Option<String>,
    /// For one of the shop: what is common practice, which a person of the shop can confirm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub usual: Option<Value>,
    /// Where it is asked for while a sheet is typed. Absent: by what it is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub group: Option<SheetGroup>,
    /// A second person compares it with its source. Absent: yes for numbers that are judged by, no for counts and words.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub checked: Option<bool>,
    /// The key of a chart whose first and last temperature are offered for this range.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ends_of: Option<String>,
}

/// Whether a sheet must have a value.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "SheetAsked")]
#[serde(rename_all = "snake_case")]
pub enum Asked {
    /// No job on the vehicle without it.
    #[default]
    Needed,
    /// It can be missing; what hangs on it then says so.
    Useful,
    /// The shop has one value for all vehicles; a sheet can have its own.
    Shop,
}

/// Where values are asked for together, in the order in which service information gives them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema, TS)]
#[serde(rename_all = "snake_case")]
pub enum SheetGroup {
    /// What the vehicle has.
    Vehicle,
    /// Fluid and level.
    Fluid,
    /// What is counted below.
    Counts,
    /// Torques.
    Torques,
    /// Volts and ohms.
    Electrical,
    /// The relearn.
    Relearn,
}

impl SheetKey {
    /// One that is needed.
    #[must_use]
    pub fn needed(label: impl Into<String>) -> SheetKey {
        SheetKey {
            label: label.into(),
            asked: Asked::Needed,
            without: None,
            usual: None,
            group: None,
            checked: None,
            ends_of: None,
        }
    }
}

/// Reads keys: a label, or an object.
pub(crate) fn keys<'de, D: Deserializer<'de>>(from: D) -> Result<BTreeMap<String, SheetKey>, D::Error> {
    let read = BTreeMap::<String, LabelOrKey>::deserialize(from)?;
    Ok(read.into_iter().map(|(key, LabelOrKey(said))| (key, said)).collect())
}

pub(crate) fn keys_schema(generator: &mut SchemaGenerator) -> Schema {
    let key = generator.subschema_for::<SheetKey>();
    json_schema!({ "type": "object", "additionalProperties": { "anyOf": [{ "type": "string" }, key] } })
}

struct LabelOrKey(SheetKey);

impl<'de> Deserialize<'de> for LabelOrKey {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_any(Read).map(LabelOrKey)
    }
}

struct Read;

impl<'de> Visitor<'de> for Read {
    type Value = SheetKey;

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("a label, or an object with one")
    }

    fn visit_str<E: Error>(self, label: &str) -> Result<SheetKey, E> {
        Ok(SheetKey::needed(label))
    }

    fn visit_map<M: MapAccess<'de>>(self, map: M) -> Result<SheetKey, M::Error> {
        SheetKey::deserialize(MapAccessDeserializer::new(map))
    }
}
