//! What a step asks for. Each kind of entry has one file: its fields, and what [`Kind`] asks of them. `kinds!` below is the
//! list of the kinds.
//!
//! In the file an entry is one object a kind, `"ask": {"reading": {…}}`, so that unknown fields are refused by name.

mod authorization;
mod balance;
mod choice;
mod coil;
mod coils;
mod cool_down;
mod count;
mod decision;
mod estimate;
mod kind;
mod level;
mod note;
mod photo;
mod reading;
mod scan;
mod several;
mod sign_off;
mod timer;
mod torque;

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

pub use authorization::{AGREED, Authorization};
pub use balance::{Amount, Balance};
pub use choice::{Choice, ChoiceOption};
pub use coil::Coil;
pub use coils::Coils;
pub use cool_down::{CoolDown, ProbedPlace};
pub use count::Count;
pub use decision::{Against, Decision, DecisionRow, MISSING, MOST_COMBINATIONS};
pub use estimate::Estimate;
pub use kind::{Bound, Kind, Listed, Read, SheetNeed, Wrong};
pub use level::{Added, Level};
pub use note::Note;
pub use photo::{MOST_FIRST_PAGE, Photo};
pub use reading::Reading;
pub use scan::{Scan, ScanOf};
pub use several::{Several, SeveralOption};
pub use sign_off::{SIGNED, SignOffEntry};
pub use timer::Timer;
pub use torque::{Excepted, Torque};

use super::Assignments;

/// One thing a step asks for.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Entry {
    /// Short name, unique in its step.
    pub id: String,
    /// What the control says.
    pub label: String,
    /// The kind and its fields.
    pub ask: Ask,
    /// Whether the step can be done without it.
    #[serde(default)]
    pub optional: bool,
    /// On which vehicles it is asked for; reads facts only. Its classes then only hold the step, or do nothing.
    #[serde(default)]
    pub on: Option<String>,
    /// What each class does. Needed where the kind can return more than one.
    #[serde(default)]
    pub classes: BTreeMap<String, ClassEffect>,
}

impl Entry {
    /// Whether a class is one of this entry and lets the step be done.
    #[must_use]
    pub fn goes_on(&self, class: &str) -> bool {
        self.ask.classes().contains(&class) && self.classes.get(class).is_none_or(|effect| !effect.not_yet)
    }

    /// The class that is planned for: a level is in range, of other kinds the first that lets the step be done. Authors
    /// write the usual answer of a choice first.
    #[must_use]
    pub fn usual(&self) -> Option<&str> {
        let all = self.ask.fields().planned().into_iter().chain(self.ask.classes());
        all.into_iter().find(|class| self.goes_on(class))
    }
}

/// What an outcome of an entry does.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ClassEffect {
    /// Gates it sets.
    #[serde(default)]
    pub sets: Assignments,
    /// Conditions it changes: only where the entry tells what the hands did.
    #[serde(default)]
    pub makes: Assignments,
    /// The step stays begun and nothing changes.
    #[serde(default)]
    pub not_yet: bool,
    /// The job ends by stop and call.
    #[serde(default)]
    pub ends: Option<Ends>,
}

/// How a class ends a job.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Ends {
    /// Stop and call: no new work but what makes the vehicle safe to leave.
    Stop,
}

/// The list of the kinds: the enum, its names and what gives each its fields.
macro_rules! kinds {
    ($($(#[$doc:meta])* $variant:ident($fields:ty): $name:literal;)+) => {
        /// The kinds of entry.
        #[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
        #[serde(rename_all = "snake_case")]
        pub enum Ask {
            $($(#[$doc])* $variant($fields),)+
        }

        impl Ask {
            /// The names of all kinds as they stand in the file.
            pub const KINDS: &[&str] = &[$($name,)+];

            /// The name of the kind as it stands in the file.
            #[must_use]
            pub fn kind(&self) -> &'static str {
                match self { $(Ask::$variant(_) => $name,)+ }
            }

            fn fields(&self) -> &dyn Kind {
                match self { $(Ask::$variant(fields) => fields,)+ }
            }
        }
    };
}

kinds! {
    /// A signature.
    SignOff(SignOffEntry): "sign_off";
    /// A measured value with its unit.
    Reading(Reading): "reading";
    /// Fluid level against temperature.
    Level(Level): "level";
    /// A coil's resistance at its temperature.
    Coil(Coil): "coil";
    /// The resistances of all coils at one connector.
    Coils(Coils): "coils";
    /// A hot part probed until it may be touched.
    CoolDown(CoolDown): "cool_down";
    /// What was drained against what went in.
    Balance(Balance): "balance";
    /// Pieces counted.
    Count(Count): "count";
    /// Fasteners tightened.
    Torque(Torque): "torque";
    /// A photo.
    Photo(Photo): "photo";
    /// One of several answers.
    Choice(Choice): "choice";
    /// Any number of answers of a list.
    Several(Several): "several";
    /// What follows from other entries.
    Decision(Decision): "decision";
    /// A text read from the vehicle or a label.
    Scan(Scan): "scan";
    /// A time to wait.
    Timer(Timer): "timer";
    /// Free text.
    Note(Note): "note";
    /// Parts and labor with their prices.
    Estimate(Estimate): "estimate";
    /// The customer's answer.
    Authorization(Authorization): "authorization";
}

impl ClassEffect {
    /// Whether it does nothing: the step is done with it and nothing else comes of it.
    #[must_use]
    pub fn is_nothing(&self) -> bool {
        *self == ClassEffect::default()
    }
}

impl Ask {
    /// [`Kind::classes`]
    #[must_use]
    pub fn classes(&self) -> Vec<&str> {
        self.fields().classes()
    }

    /// [`Kind::holds`]
    #[must_use]
    pub fn must_be_not_yet(&self) -> &'static [&'static str] {
        self.fields().holds()
    }

    /// [`Kind::good`]
    #[must_use]
    pub fn good(&self) -> Option<Vec<&str>> {
        self.fields().good()
    }

    /// [`Kind::measures`]
    #[must_use]
    pub fn measures(&self) -> bool {
        self.fields().measures()
    }

    /// [`Kind::sheet_needs`]
    #[must_use]
    pub fn sheet_needs(&self) -> Vec<SheetNeed<'_>> {
        self.fields().sheet_needs()
    }

    /// [`Kind::reads`]
    #[must_use]
    pub fn reads(&self) -> Vec<Read<'_>> {
        self.fields().reads()
    }

    /// [`Kind::judges`]
    #[must_use]
    pub fn judges(&self) -> bool {
        self.fields().judges()
    }

    /// [`Kind::answers`]
    #[must_use]
    pub fn answers(&self) -> bool {
        self.fields().answers()
    }

    /// [`Kind::wrong`]
    #[must_use]
    pub fn wrong(&self) -> Vec<Wrong> {
        self.fields().wrong()
    }

    /// [`Kind::lists`]
    #[must_use]
    pub fn lists(&self) -> Vec<Listed> {
        self.fields().lists()
    }
}
