//! The checklist format `panside-checklist/1`: what an author writes, as it stands in the file.
//!
//! These types carry text and no meaning: names are not resolved, predicates are not parsed. [`crate::load`]
//! turns them into a [`crate::Machine`], or says everything that is wrong with them.

pub mod entry;
mod item;
pub mod part;
mod piece;
pub mod sheet;
mod sheet_key;
mod texts;

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

pub use entry::{Ask, ClassEffect, Ends, Entry};
pub use item::{ALL, Item, Pieces, Reuse};
pub use part::{PART_FORMAT, Part, Use};
pub use piece::Piece;
pub use sheet::Sheet;
pub use sheet_key::{Asked, SheetGroup, SheetKey};
pub use texts::Texts;

/// The value of `format` in a checklist file.
pub const CHECKLIST_FORMAT: &str = "panside-checklist/1";
/// The value of `format` in a spec sheet file.
pub const SHEET_FORMAT: &str = "panside-sheet/1";
/// The value of `format` in a file of texts.
pub const TEXTS_FORMAT: &str = "panside-texts/1";

/// Values to assign, by name: conditions in `makes`, gates in `sets`.
pub type Assignments = BTreeMap<String, String>;

/// A checklist: what is done on a job, and the rules that hold while it is done.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Checklist {
    /// Always `panside-checklist/1`.
    pub format: String,
    /// Short name, lower case with hyphens.
    pub id: String,
    /// What the job is, as a technician would say it.
    pub title: String,
    /// Counts up with each change of the file.
    pub revision: u32,
    /// True for invented content; it is then marked wherever it shows.
    #[serde(default)]
    pub demo: bool,
    /// How many people can be in a step at one time, 1 to 3.
    #[serde(default = "one")]
    pub crew: u8,
    /// What is fixed for a vehicle and stands on its spec sheet, as far as rules depend on it.
    #[serde(default)]
    pub facts: Vec<Fact>,
    /// What hands or physics change on the vehicle and in the bay.
    pub conditions: Vec<Condition>,
    /// What is known: read, decided or told. Each starts as `unknown`.
    #[serde(default)]
    pub gates: Vec<Gate>,
    /// Keys of the spec sheet that are read here, each with what people read for it: a text, or an object that also
    /// says whether a sheet must have it.
    #[serde(default, deserialize_with = "sheet_key::keys")]
    #[schemars(schema_with = "sheet_key::keys_schema")]
    pub sheet_keys: BTreeMap<String, SheetKey>,
    /// Named predicates, to be used by name in others.
    #[serde(default)]
    pub terms: BTreeMap<String, String>,
    /// What must hold at intake; a vehicle that comes in otherwise is refused.
    #[serde(default = "always")]
    pub start_when: String,
    /// Changes that physics makes by itself.
    #[serde(default)]
    pub follows: Vec<Follow>,
    /// What comes off the vehicle.
    #[serde(default)]
    pub items: Vec<Item>,
    /// Permits to work and attests of finished work.
    #[serde(default)]
    pub sign_offs: Vec<SignOff>,
    /// The steps, in phases. A phase opens when the earlier ones are dealt with. A file may use a part in place of a
    /// phase; [`crate::parts::join`] puts it there before the checklist is loaded.
    #[schemars(schema_with = "part::phases_or_uses")]
    pub phases: Vec<Phase>,
    /// What a technician may do at any time without it being a step.
    #[serde(default)]
    pub vehicle_actions: Vec<VehicleAction>,
    /// What must never hold.
    pub dangers: Vec<Danger>,
    /// What a finished job needs.
    pub done_when: String,
    /// What must hold when a job is stopped before its end.
    pub safe_to_leave: String,
}

pub(crate) fn one() -> u8 {
    1
}

fn always() -> String {
    "true".to_owned()
}

impl Checklist {
    /// What people read for a key of the spec sheet; the key itself where the checklist does not read it.
    #[must_use]
    pub fn sheet_label<'a>(&'a self, key: &'a str) -> &'a str {
        self.sheet_keys.get(key).map_or(key, |said| &said.label)
    }

    /// Whether a sheet must have a key.
    #[must_use]
    pub fn asked(&self, key: &str) -> Asked {
        self.sheet_keys.get(key).map_or(Asked::Needed, |said| said.asked)
    }

    /// What people read for an item; its id where the checklist does not have it.
    #[must_use]
    pub fn item_name<'a>(&'a self, id: &'a str) -> &'a str {
        self.items.iter().find(|item| item.id == id).map_or(id, |item| &item.name)
    }

    /// What a sign-off says; its id where the checklist does not have it.
    #[must_use]
    pub fn sign_text<'a>(&'a self, id: &'a str) -> &'a str {
        self.sign_offs.iter().find(|sign| sign.id == id).map_or(id, |sign| &sign.text)
    }
}

/// A name for rules, with what people read for it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema, TS)]
#[serde(deny_unknown_fields)]
pub struct Named {
    /// Name in predicates.
    pub id: String,
    /// What people read.
    pub label: String,
}

/// Something fixed for the vehicle, given by the spec sheet and never changed during a job.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Fact {
    /// Name in predicates.
    pub id: String,
    /// What people read for it.
    pub label: String,
    /// The values it can have. The proof tries them all.
    pub values: Vec<Named>,
    /// The key on the spec sheet.
    pub sheet: String,
}

/// A finite variable of the vehicle or the bay.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Condition {
    /// Name in predicates.
    pub id: String,
    /// What people read for it.
    pub label: String,
    /// The values it can have; the first is the start unless `start` says more.
    pub values: Vec<Named>,
    /// The values it can have at intake. Empty: the first value alone.
    #[serde(default)]
    pub start: Vec<String>,
    /// Values from which, once observed, the job must always still be able to finish.
    #[serde(default)]
    pub recover: Vec<String>,
    /// Which vehicles have what it is about; reads facts only. On others it stays as it starts, whatever is done.
    #[serde(default)]
    pub on: Option<String>,
    /// Which part of the vehicle line shows it (`lift`, `engine`, `exhaust`, `fluid`, `pan`, `key`, `bystanders`, …).
    #[serde(default)]
    pub draws: Option<String>,
}

/// Something that is known or not: a reading's class, a decision, an answer.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Gate {
    /// Name in predicates.
    pub id: String,
    /// What people read for it.
    pub label: String,
    /// What it can be when it is known.
    pub classes: Vec<Named>,
    /// While this holds the knowledge stands; when it turns false the gate becomes `unknown`.
    #[serde(default)]
    pub holds_while: Option<String>,
    /// How long the knowledge stays good, in minutes. Absent: as long as `holds_while` does.
    #[serde(default)]
    pub fresh_for: Option<u32>,
}

/// A change that physics makes by itself, after every action.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Follow {
    /// When it happens; reads conditions only.
    pub when: String,
    /// Conditions it changes.
    #[serde(default)]
    pub makes: Assignments,
    /// Gates it changes; usually to `unknown`.
    #[serde(default)]
    pub sets: Assignments,
}

/// A signature: a permit to work, or an attest of finished work.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SignOff {
    /// Name in predicates.
    pub id: String,
    /// Permit or attest.
    pub kind: SignKind,
    /// What is signed, as a sentence.
    pub text: String,
    /// While this holds the signature stands; when it turns false the signature lapses.
    #[serde(default = "always")]
    pub holds_while: String,
    /// Who must sign. Absent: the technician who works the step.
    #[serde(default)]
    pub by: Option<Role>,
}

/// What a signature is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema, TS)]
#[serde(rename_all = "snake_case")]
pub enum SignKind {
    /// Allows work while it is valid; its lapse closes work and undoes nothing.
    Permit,
    /// Speaks of finished work; its lapse makes the step lapsed.
    Attest,
}

/// Who signs at a hold point.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema, TS,
)]
#[serde(rename_all = "snake_case")]
pub enum Role {
    /// A technician who works on the job.
    Technician,
    /// Somebody else than the one who works the step.
    SecondPerson,
    /// The service writer.
    ServiceWriter,
}

/// A part of the job. The next one opens when every step of this one is dealt with.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Phase {
    /// Short name.
    pub id: String,
    /// What the technician reads.
    pub title: String,
    /// Earlier phases this one need not wait for.
    #[serde(default)]
    pub beside: Vec<String>,
    /// The steps. A checklist file may use a part in place of a step.
    #[schemars(schema_with = "part::steps_or_uses")]
    pub steps: Vec<Step>,
}

/// Where a person is while a step is worked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema, TS)]
#[serde(rename_all = "snake_case")]
pub enum Zone {
    /// Under the vehicle.
    Under,
    /// At the open hood, on the floor.
    EngineBay,
    /// In the seat or at the doors.
    Cabin,
    /// At the bench, away from the vehicle.
    Bench,
}

/// One step of the work.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Step {
    /// Short name.
    pub id: String,
    /// A few words.
    pub title: String,
    /// The one instruction, in large type.
    pub instruction: String,
    /// Where the person is.
    pub zone: Zone,
    /// Whether it is part of this job at all; reads gates and facts only. Unknown: undecided.
    #[serde(default)]
    pub on: Option<String>,
    /// Steps that come before, whatever happens to them later.
    #[serde(default)]
    pub after: Vec<String>,
    /// What must hold to begin.
    #[serde(default = "always")]
    pub needs: String,
    /// What must hold until it is done. Absent: the same as `needs`.
    #[serde(default, rename = "while")]
    pub while_: Option<String>,
    /// When a worked step may be done again: it then sets, makes and signs again, and moves no items.
    #[serde(default)]
    pub again: Option<String>,
    /// Permits that must be valid.
    #[serde(default)]
    pub permits: Vec<String>,
    /// Earlier steps whose entries this one builds on: voided together with them.
    #[serde(default)]
    pub relies_on: Vec<String>,
    /// Parts of the vehicle the hands are at (`exhaust`, …).
    #[serde(default)]
    pub touches: Vec<String>,
    /// Kinds of work (`road`, `drain`, `fill`, …).
    #[serde(default)]
    pub tags: Vec<String>,
    /// Conditions changed by beginning.
    #[serde(default)]
    pub on_begin: Assignments,
    /// Conditions changed by leaving before it is done.
    #[serde(default)]
    pub on_leave: Assignments,
    /// Conditions changed when it is done.
    #[serde(default)]
    pub makes: Assignments,
    /// Gates set when it is done.
    #[serde(default)]
    pub sets: Assignments,
    /// Pieces taken off the vehicle.
    #[serde(default, deserialize_with = "item::pieces")]
    #[schemars(schema_with = "item::pieces_schema")]
    pub takes_off: Pieces,
    /// Pieces put back on the vehicle.
    #[serde(default, deserialize_with = "item::pieces")]
    #[schemars(schema_with = "item::pieces_schema")]
    pub puts_back: Pieces,
    /// What the step asks for.
    #[serde(default)]
    pub entries: Vec<Entry>,
    /// What can hurt, before the step.
    #[serde(default)]
    pub cautions: Vec<Caution>,
    /// Whether it may be skipped with a reason.
    #[serde(default)]
    pub may_skip: bool,
    /// Whether it may still be begun when the job is ending by stop and call.
    #[serde(default)]
    pub when_ending: bool,
    /// Expected minutes of work by hand.
    #[serde(default)]
    pub minutes: u32,
    /// Time that passes beside the work by hand.
    #[serde(default)]
    pub wait: Option<Wait>,
}

/// Time that must pass beside the work by hand: cooling, draining, curing, a fire watch. For planning only: on the job a
/// reading, a timer or an eye decides when it is over.
///
/// With `since` it lies before the step: until so many minutes have passed the step is of no use. Without, it lies
/// within the step, after its `minutes`, and `attended` must say whether somebody stays: nobody's hands get free because
/// nobody thought of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Wait {
    /// What is waited for, as said after "waiting for": "the exhaust to cool".
    #[serde(rename = "for")]
    pub for_: String,
    /// Expected minutes, 1 to 1440.
    pub minutes: u32,
    /// The time runs while this holds and begins anew once it did not; reads conditions and facts.
    #[serde(default)]
    pub since: Option<String>,
    /// True where somebody must stay and watch for the whole time, as at a fire watch: then nothing else is done by the
    /// same hands. False where the step may be left and come back to, as when fluid drains.
    #[serde(default)]
    pub attended: Option<bool>,
}

/// A caution with its signal word.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[serde(deny_unknown_fields)]
pub struct Caution {
    /// The signal word.
    pub signal: Signal,
    /// Hazard and how to avoid it, as one or two sentences.
    pub text: String,
}

/// Signal words as ANSI Z535.6 and ISO 3864-2 define them, the worst first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema, TS)]
#[serde(rename_all = "snake_case")]
pub enum Signal {
    /// Will result in death or serious injury if not avoided.
    Danger,
    /// Could result in death or serious injury.
    Warning,
    /// Could result in minor or moderate injury.
    Caution,
    /// Damage to things, not to people.
    Notice,
}

/// Something done at any time without it being a step: raise, lower, start the engine.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct VehicleAction {
    /// Short name.
    pub id: String,
    /// What the button says.
    pub title: String,
    /// What must hold before.
    #[serde(default = "always")]
    pub needs: String,
    /// Conditions it changes. Only vehicle actions write these.
    pub makes: Assignments,
    /// Expected minutes.
    #[serde(default)]
    pub minutes: u32,
}

/// What must never hold.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Danger {
    /// Short name.
    pub id: String,
    /// The signal word.
    pub signal: Signal,
    /// What it does to a person or the vehicle, and the way back to safe.
    pub text: String,
    /// The predicate.
    pub when: String,
}
