//! How values came about, in the forms in which the journal keeps them: each calculation has a name and the version of
//! its result's form. `tests/fixtures/worked_out.jsonl` keeps a sample of every form ever written.
//!
//! A result can be worked out again from value and sheet, but the record says how it was worked out *then*. One that this
//! version can't read is not dropped: it stays a [`WorkedOut::Unreadable`], and whoever shows the value says so.

use panside_trade::code::Codes;
use panside_trade::estimate::Estimate;
use panside_trade::vin::Vin;
use serde::de::DeserializeOwned;
use serde::ser::Error;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::{
    AuthorizationResult, BalanceResult, CoilJudged, CoilsJudged, CoolDownResult, DecisionResult, LevelJudged,
    ReadingResult, TorqueJudged,
};

/// As it stands in the journal. Bodies of events hold no floats: the result is the JSON text that was first written.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Kept<K> {
    kind: K,
    version: u32,
    result: String,
}

macro_rules! worked_out {
    ($($(#[$doc:meta])* $variant:ident($result:ty): $kind:literal, version $version:literal;)+) => {
        /// How a value came about: the result of one calculation.
        #[derive(Debug, Clone, PartialEq)]
        pub enum WorkedOut {
            $($(#[$doc])* $variant(Box<$result>),)+
            /// A newer version of Panside wrote it, or its result is not what kind and version promise.
            Unreadable {
                /// The kind's name.
                kind: String,
                /// The version of its form.
                version: u32,
            },
        }

        impl WorkedOut {
            /// Every kind with the version of its form that is written now.
            pub const KINDS: &[(&str, u32)] = &[$(($kind, $version),)+];

            fn read(kept: Kept<String>) -> WorkedOut {
                let Kept { kind, version, result } = kept;
                let read = match (kind.as_str(), version) {
                    $(($kind, 1..=$version) => parse(&result).map(WorkedOut::$variant),)+
                    _ => None,
                };
                read.unwrap_or(WorkedOut::Unreadable { kind, version })
            }
        }

        impl Serialize for WorkedOut {
            fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                match self {
                    $(WorkedOut::$variant(result) => {
                        let result = serde_json::to_string(result).map_err(S::Error::custom)?;
                        Kept { kind: $kind, version: $version, result }.serialize(to)
                    })+
                    WorkedOut::Unreadable { .. } => Err(S::Error::custom("what could not be read is not written again")),
                }
            }
        }

        $(impl From<$result> for WorkedOut {
            fn from(result: $result) -> WorkedOut { WorkedOut::$variant(Box::new(result)) }
        })+
    };
}

worked_out! {
    /// A reading against its limits.
    Reading(ReadingResult): "reading", version 1;
    /// A fluid level.
    Level(LevelJudged): "level", version 1;
    /// A coil's resistance, brought to the temperature of its limits.
    Coil(CoilJudged): "coil", version 1;
    /// The coils of a list.
    Coils(CoilsJudged): "coils", version 1;
    /// A part that cools.
    CoolDown(CoolDownResult): "cool_down", version 1;
    /// What was drained against what went in.
    Balance(BalanceResult): "balance", version 1;
    /// The stages and angles of a torque.
    Torque(TorqueJudged): "torque", version 1;
    /// A vehicle identification number.
    Vin(Vin): "vin", version 1;
    /// Trouble codes.
    Codes(Codes): "codes", version 1;
    /// What followed from other entries.
    Decision(DecisionResult): "decision", version 1;
    /// An estimate's lines added up.
    Estimate(Estimate): "estimate", version 1;
    /// The customer's answer against the estimate.
    Authorization(AuthorizationResult): "authorization", version 1;
}

// No result holds what is not a number: the trade's functions refuse what is not finite.
impl Eq for WorkedOut {}

impl<'de> Deserialize<'de> for WorkedOut {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<WorkedOut, D::Error> {
        Kept::deserialize(from).map(WorkedOut::read)
    }
}

fn parse<T: DeserializeOwned>(result: &str) -> Option<Box<T>> {
    serde_json::from_str(result).ok().map(Box::new)
}
