//! What a step asks for. Each kind of entry has one file: its fields, the classes it can return, the keys it
//! needs on the spec sheet. [`Ask`] is the list of the kinds.
//!
//! In the file an entry is one object a kind, `"ask": {"reading": {…}}`, so that unknown fields are refused by name.

mod balance;
mod choice;
mod coil;
mod cool_down;
mod count;
mod level;
mod note;
mod photo;
mod reading;
mod scan;
mod sign_off;
mod timer;
mod torque;

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

pub use balance::{Amount, Balance};
pub use choice::Choice;
pub use coil::Coil;
pub use cool_down::{CoolDown, ProbedPlace};
pub use count::Count;
pub use level::{Added, Level};
pub use note::Note;
pub use photo::Photo;
pub use reading::Reading;
pub use scan::{Scan, ScanOf};
pub use sign_off::SignOffEntry;
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
        let in_range = matches!(self.ask, Ask::Level(_)).then_some(level::IN);
        let all = in_range.into_iter().chain(self.ask.classes());
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

/// The kinds of entry.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[serde(rename_all = "snake_case")]
pub enum Ask {
    /// A signature.
    SignOff(SignOffEntry),
    /// A measured value with its unit.
    Reading(Reading),
    /// Fluid level against temperature.
    Level(Level),
    /// A coil's resistance at its temperature.
    Coil(Coil),
    /// A hot part probed until it may be touched.
    CoolDown(CoolDown),
    /// What was drained against what went in.
    Balance(Balance),
    /// Pieces counted.
    Count(Count),
    /// Fasteners tightened.
    Torque(Torque),
    /// A photo.
    Photo(Photo),
    /// One of several answers.
    Choice(Choice),
    /// A text read from the vehicle or a label.
    Scan(Scan),
    /// A time to wait.
    Timer(Timer),
    /// Free text.
    Note(Note),
}

/// A key an entry needs on the spec sheet, and what must stand there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SheetNeed<'a> {
    /// The key.
    pub key: &'a str,
    /// The kind of value.
    pub kind: super::sheet::ValueKind,
    /// The unit the entry is read in, where the value must be of the same quantity.
    pub unit: Option<&'a str>,
}

impl ClassEffect {
    /// Whether it does nothing: the step is done with it and nothing else comes of it.
    #[must_use]
    pub fn is_nothing(&self) -> bool {
        *self == ClassEffect::default()
    }
}

impl Ask {
    /// The name of the kind as it stands in the file.
    #[must_use]
    pub fn kind(&self) -> &'static str {
        match self {
            Ask::SignOff(_) => "sign_off",
            Ask::Reading(_) => "reading",
            Ask::Level(_) => "level",
            Ask::Coil(_) => "coil",
            Ask::CoolDown(_) => "cool_down",
            Ask::Balance(_) => "balance",
            Ask::Count(_) => "count",
            Ask::Torque(_) => "torque",
            Ask::Photo(_) => "photo",
            Ask::Choice(_) => "choice",
            Ask::Scan(_) => "scan",
            Ask::Timer(_) => "timer",
            Ask::Note(_) => "note",
        }
    }

    /// Every class the kind can return with these fields. `classify` never returns another.
    #[must_use]
    pub fn classes(&self) -> Vec<&str> {
        match self {
            Ask::SignOff(_) => vec![sign_off::SIGNED],
            Ask::Reading(reading) => reading.classes(),
            Ask::Level(level) => level.classes(),
            Ask::Coil(_) => coil::CLASSES.to_vec(),
            Ask::CoolDown(_) => cool_down::CLASSES.to_vec(),
            Ask::Balance(_) => balance::CLASSES.to_vec(),
            Ask::Count(_) => count::CLASSES.to_vec(),
            Ask::Torque(torque) => torque.classes(),
            Ask::Photo(_) => vec![photo::TAKEN],
            Ask::Choice(choice) => choice.options.iter().map(|option| option.class.as_str()).collect(),
            Ask::Scan(_) => vec![scan::READ],
            Ask::Timer(_) => vec![timer::ELAPSED],
            Ask::Note(_) => vec![note::WRITTEN],
        }
    }

    /// Classes that always keep the step begun, whatever the file says: a count that is short, torque that is
    /// outside, a level that cannot be read, a part that is hot, a balance that nobody has explained.
    #[must_use]
    pub fn must_be_not_yet(&self) -> &'static [&'static str] {
        match self {
            Ask::Count(_) => &[count::SHORT],
            Ask::Level(_) => &[level::UNCLEAR],
            Ask::Torque(_) => &[torque::OUTSIDE],
            Ask::CoolDown(_) => &[cool_down::HOT],
            Ask::Balance(_) => &[balance::DIFFERS],
            _ => &[],
        }
    }

    /// Classes with which the work goes on, where the kind or its fields tell good from bad; nothing where no class is
    /// better than another.
    #[must_use]
    pub fn good(&self) -> Option<Vec<&str>> {
        match self {
            Ask::Reading(reading) if reading.is_judged() && !reading.evidence => Some(vec![reading::INSIDE]),
            Ask::Level(_) => Some(vec![level::IN]),
            Ask::Coil(coil) if !coil.evidence => Some(vec![coil::INSIDE]),
            Ask::CoolDown(_) => Some(vec![cool_down::COOL]),
            Ask::Balance(_) => Some(vec![balance::CLOSES, balance::EXPLAINED]),
            Ask::Choice(choice) if !choice.good.is_empty() => {
                Some(choice.good.iter().map(String::as_str).collect())
            }
            _ => None,
        }
    }

    /// Whether it tells of something that can change again: a reading, a level, a coil, a hot part, a time waited.
    #[must_use]
    pub fn measures(&self) -> bool {
        matches!(self, Ask::Reading(_) | Ask::Level(_) | Ask::Coil(_) | Ask::CoolDown(_) | Ask::Timer(_))
    }

    /// The keys it needs on the spec sheet.
    #[must_use]
    pub fn sheet_needs(&self) -> Vec<SheetNeed<'_>> {
        match self {
            Ask::Reading(reading) => reading.sheet_needs(),
            Ask::Level(level) => level.sheet_needs(),
            Ask::Coil(coil) => coil.sheet_needs(),
            Ask::CoolDown(cool_down) => cool_down.sheet_needs(),
            Ask::Balance(balance) => balance.sheet_needs(),
            Ask::Torque(torque) => torque.sheet_needs(),
            Ask::Timer(timer) => timer.sheet_needs(),
            _ => Vec::new(),
        }
    }

    /// The entries that it reads as `step.entry`, each with the kind and, for a reading, the unit it must be of.
    #[must_use]
    pub fn reads(&self) -> Vec<(&str, &'static str, Option<&'static str>)> {
        match self {
            Ask::Balance(balance) => {
                balance.reads().map(|(entry, unit)| (entry, "reading", Some(unit))).collect()
            }
            Ask::Level(Level { added: Some(added), .. }) => {
                let before = added.before.as_deref().map(|entry| (entry, "level", None));
                std::iter::once((added.volume.as_str(), "reading", Some("L"))).chain(before).collect()
            }
            _ => Vec::new(),
        }
    }
}
