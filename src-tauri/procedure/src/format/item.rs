//! What comes off the vehicle, and how many pieces of it.

use std::collections::BTreeMap;
use std::fmt;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::{Error, Visitor};
use serde::{Deserialize, Deserializer, Serialize};
use ts_rs::TS;

use super::Piece;

/// A kind of part or fastener that comes off the vehicle.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Item {
    /// Name in predicates and counts.
    pub id: String,
    /// What it is, in the plural where there are several.
    pub name: String,
    /// How many there are on the vehicle, 1 to 63. Left out where `sheet` says it.
    #[serde(default = "super::one")]
    pub count: u8,
    /// The key on the spec sheet that says how many there are. Steps then move and count `"all"` of them.
    #[serde(default)]
    pub sheet: Option<String>,
    /// The spec sheet may say that there are none of them.
    #[serde(default)]
    pub or_none: bool,
    /// Which vehicles have it; reads facts only.
    #[serde(default)]
    pub on: Option<String>,
    /// Whether the same piece may go back.
    pub reuse: Reuse,
    /// How the tray draws it. Absent: in a form that fits anything.
    #[serde(default)]
    pub draws: Option<Piece>,
}

/// Whether a piece that came off may go back on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema, TS)]
#[serde(rename_all = "snake_case")]
pub enum Reuse {
    /// The same piece goes back.
    Yes,
    /// It may go back one time.
    Once,
    /// A new one goes in: cut strap, crush washer, gasket, seal.
    Never,
}

/// Pieces of items, by item id.
pub type Pieces = BTreeMap<String, u8>;

/// What stands for `"all"` between reading a file and loading it, which puts the item's count in its place. It is more
/// than there can be of anything.
pub const ALL: u8 = u8::MAX;

/// Reads pieces: numbers, or `"all"`.
pub(crate) fn pieces<'de, D: Deserializer<'de>>(from: D) -> Result<Pieces, D::Error> {
    let read = BTreeMap::<String, Amount>::deserialize(from)?;
    Ok(read.into_iter().map(|(item, Amount(pieces))| (item, pieces)).collect())
}

pub(crate) fn pieces_schema(_: &mut SchemaGenerator) -> Schema {
    json_schema!({
        "type": "object",
        "additionalProperties": {
            "anyOf": [{ "type": "integer", "minimum": 0, "maximum": 63 }, { "const": "all" }]
        }
    })
}

struct Amount(u8);

impl<'de> Deserialize<'de> for Amount {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_any(Read)
    }
}

struct Read;

impl Visitor<'_> for Read {
    type Value = Amount;

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("a number of pieces or \"all\"")
    }

    fn visit_u64<E: Error>(self, pieces: u64) -> Result<Amount, E> {
        let small = u8::try_from(pieces).ok().filter(|pieces| *pieces != ALL);
        small.map(Amount).ok_or_else(|| E::invalid_value(serde::de::Unexpected::Unsigned(pieces), &self))
    }

    fn visit_str<E: Error>(self, word: &str) -> Result<Amount, E> {
        if word == "all" {
            Ok(Amount(ALL))
        } else {
            Err(E::invalid_value(serde::de::Unexpected::Str(word), &self))
        }
    }
}
