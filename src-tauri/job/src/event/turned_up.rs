//! The bodies of events about what turned up outside of the checklist: findings, supplements, pieces that it does not
//! know. Each names the one it is about by the number of that event in the job.

use serde::{Deserialize, Serialize};

use crate::entry::WorkedOut;
use crate::value::{Accounted, Authorized, EntryValue, EstimateLines, Urgency};

/// See [`crate::Event::Found`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Found {
    /// What was found.
    pub text: String,
    /// Where.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at: Option<String>,
    /// What has to be done about it.
    pub urgency: Urgency,
    /// Photos of it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub photos: Vec<EntryValue>,
}

/// See [`crate::Event::DealtWith`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DealtWith {
    /// What was found.
    pub found: u64,
    /// What was done about it.
    pub text: String,
}

/// See [`crate::Event::Asked`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Asked {
    /// The step that waits for the answer, by id.
    pub step: String,
    /// What turned up.
    pub text: String,
    /// The finding that it was made from.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub found: Option<u64>,
    /// Parts and labor on top of what was agreed to.
    pub lines: EstimateLines,
    /// What they come to.
    pub worked_out: WorkedOut,
}

/// See [`crate::Event::Answered`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Answered {
    /// What was asked.
    pub asked: u64,
    /// The answer.
    pub answer: Authorized,
    /// How it was judged.
    pub worked_out: WorkedOut,
}

/// See [`crate::Event::WentOn`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WentOn {
    /// What was asked.
    pub asked: u64,
    /// Why it can be done without.
    pub reason: String,
}

/// See [`crate::Event::PieceOff`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PieceOff {
    /// What it is.
    pub name: String,
    /// How many.
    pub count: u8,
    /// Where it comes from.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at: Option<String>,
    /// Photos of it in its place.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub photos: Vec<EntryValue>,
}

/// See [`crate::Event::PieceBack`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PieceBack {
    /// What was off.
    pub piece: u64,
    /// How many are on again.
    pub count: u8,
    /// To what they were tightened, as typed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub torque: Option<String>,
}

/// See [`crate::Event::PieceGone`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PieceGone {
    /// What was off.
    pub piece: u64,
    /// How many do not come back.
    pub count: u8,
    /// Why, and who says so.
    pub accounted: Accounted,
}

/// See [`crate::Event::TakenBack`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TakenBack {
    /// The finding, the question or the piece.
    pub of: u64,
    /// Why.
    pub reason: String,
}
