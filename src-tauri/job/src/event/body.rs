//! The bodies of events. No floats: what was measured stays as it was typed.

use std::collections::BTreeMap;

use panside_journal::{Hash, PersonId};
use panside_procedure::format::Role;
use serde::{Deserialize, Serialize};

use crate::entry::WorkedOut;
use crate::value::{EntryValue, Signature};

/// What lapsed and what is no longer known through an event, as decided when it was written.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lost {
    /// Sign-offs that were valid and lapsed, by id.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub lapsed: Vec<String>,
    /// Gates that were known and became unknown, by id.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub forgotten: Vec<String>,
}

impl Lost {
    /// Whether nothing was lost.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.lapsed.is_empty() && self.forgotten.is_empty()
    }
}

/// A file the job holds on to, whatever comes after it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pinned {
    /// Its id.
    pub id: String,
    /// Its revision.
    pub revision: u32,
    /// SHA-256 of its bytes.
    pub hash: Hash,
}

/// The words that a job is walked in, where they are not the checklist's own.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PinnedTexts {
    /// The language as a BCP 47 tag.
    pub language: String,
    /// SHA-256 of the bytes of the texts.
    pub hash: Hash,
}

/// See [`crate::Event::Started`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Started {
    /// The checklist.
    pub checklist: Pinned,
    /// The spec sheet.
    pub sheet: Pinned,
    /// The checklist's texts in another language. Since version 2.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub texts: Option<PinnedTexts>,
    /// Checklist or sheet is invented.
    pub demo: bool,
    /// How the vehicle came in: every condition with its value.
    pub conditions: BTreeMap<String, String>,
    /// Number of the repair order, as the shop writes it.
    pub repair_order: String,
    /// What the job is called in the list of jobs.
    pub label: String,
    /// Minutes that the shop's wall clock is ahead of UTC: days and times of day are told by it.
    #[serde(default)]
    pub utc_offset_min: i32,
    /// Who started it.
    pub by: Introduced,
}

/// See [`crate::Event::Introduced`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Introduced {
    /// The person.
    pub person: PersonId,
    /// What they are called from here on.
    pub name: String,
    /// As what they appear.
    pub role: Role,
}

/// Declares bodies that name one thing and what was lost through it.
macro_rules! bodies {
    ($($name:ident { $($(#[$meta:meta])+ $field:ident: $type:ty,)* })+) => {$(
        #[doc = concat!("See [`crate::Event::", stringify!($name), "`].")]
        #[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
        #[serde(deny_unknown_fields)]
        pub struct $name {
            $($(#[$meta])+ pub $field: $type,)*
            /// What was lost through it.
            #[serde(default, skip_serializing_if = "Lost::is_empty")]
            pub lost: Lost,
        }
    )+};
}

bodies! {
    Begun {
        /// Step id.
        step: String,
    }
    Left {
        /// Step id.
        step: String,
    }
    Done {
        /// Step id.
        step: String,
        /// What each entry turned out to be, by entry id.
        classes: BTreeMap<String, String>,
        /// The signatures given with it.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        signs: Vec<Signature>,
        /// It was done before and entered only now.
        #[serde(default, skip_serializing_if = "is_false")]
        later: bool,
    }
    VehicleAction {
        /// Its id.
        action: String,
    }
    Signed {
        /// The signature.
        signature: Signature,
    }
    Skipped {
        /// Step id.
        step: String,
        /// Why.
        reason: String,
    }
    Voided {
        /// Step id.
        step: String,
        /// Why.
        reason: String,
        /// Steps that were voided with it because they build on it.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        also: Vec<String>,
    }
    Corrected {
        /// Step id.
        step: String,
        /// What each entry turned out to be, by entry id.
        classes: BTreeMap<String, String>,
        /// The values, by entry id.
        values: BTreeMap<String, EntryValue>,
        /// How they came about, by entry id, where something was calculated.
        #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
        worked_out: BTreeMap<String, WorkedOut>,
        /// The signatures given with it.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        signs: Vec<Signature>,
        /// What was wrong.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        reason: Option<String>,
    }
    Observed {
        /// Condition id.
        condition: String,
        /// The value it has.
        value: String,
        /// How it came to that.
        reason: String,
        /// Steps that cannot have been worked, as the vehicle is otherwise.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        undone: Vec<String>,
        /// Dangers that held then, by id.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        dangers: Vec<String>,
    }
    Expired {
        /// Gate id.
        gate: String,
    }
    Finished {}
    Stopped {
        /// Why.
        reason: String,
    }
}

/// See [`crate::Event::Entered`]. It changes no rule state: that happens when the step is done.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Entered {
    /// Step id.
    pub step: String,
    /// Entry id.
    pub entry: String,
    /// The value as it was typed.
    pub value: EntryValue,
    /// What it turned out to be.
    pub class: String,
    /// How that came about, where something was calculated.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub worked_out: Option<WorkedOut>,
}

/// See [`crate::Event::MissedExplained`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MissedExplained {
    /// Step id.
    pub step: String,
    /// Why.
    pub reason: String,
}

/// See [`crate::Event::ClockJumped`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ClockJumped {
    /// How far the wall clock was set, in ms; positive forward.
    pub ms: i64,
}

/// For serde, which asks with a reference.
#[allow(clippy::trivially_copy_pass_by_ref)]
fn is_false(flag: &bool) -> bool {
    !flag
}
