//! All that a screen shows of a job at a time, so that no screen holds a rule: every step with its reasons, every
//! vehicle action with its refusal or what it would make lapse, the tray, the conditions, the clock.
//!
//! Where a field is a possible [`Refusal`], none means that it is allowed now.

mod clock;
mod decision;
mod make;
mod messages;
mod preview;
mod step;
mod turned_up;

use panside_journal::{PersonId, Stamp};
use panside_procedure::Shown;
use panside_procedure::format::{Ask, Caution, Piece, Reuse, Role, SignKind, Signal, Zone};
use panside_trade::measure::Measure;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

pub use decision::{DecisionInput, DecisionView};
pub use preview::{Preview, preview};
pub use turned_up::{Asking, FoundView, PieceView, SupplementView, TurnedUpView, preview_asking};

use crate::command::Refusal;
use crate::figures::BoltMap;
use crate::job::{Given, Job, Known, Mark, Reason};
use crate::message::{Message, figure};
use crate::value::EntryValue;

/// A job as it is to be shown.
#[derive(Debug, Clone, Serialize, Deserialize, TS)]
pub struct JobView {
    /// The number of the newest event: what a command made on this view is based on.
    pub seq: u64,
    /// Title of the checklist.
    pub title: String,
    /// Title of the spec sheet.
    pub sheet: String,
    /// Checklist or sheet is invented: "demo values, not for a vehicle" belongs wherever a value shows.
    pub demo: bool,
    /// Number of the repair order.
    pub repair_order: String,
    /// What the job is called in the list of jobs.
    pub label: String,
    /// How many people may be in steps at a time.
    pub crew: u8,
    /// Everybody who appeared in it, under their newest name in it.
    pub people: Vec<PersonView>,
    /// Whether the job goes on.
    pub over: Over,
    /// The parts of the job.
    pub phases: Vec<PhaseView>,
    /// Every step, in file order.
    pub steps: Vec<StepView>,
    /// Every vehicle action.
    pub vehicle_actions: Vec<VehicleActionView>,
    /// What is off the vehicle.
    pub tray: Vec<TrayView>,
    /// What turned up that the checklist did not foresee.
    pub turned_up: TurnedUpView,
    /// Every kind of part and fastener that this job counts.
    pub items: Vec<ItemView>,
    /// How the vehicle is.
    pub conditions: Vec<ConditionView>,
    /// What is known.
    pub gates: Vec<GateView>,
    /// Every sign-off.
    pub signs: Vec<SignView>,
    /// Dangers that hold now. They call people out.
    pub dangers: Vec<DangerView>,
    /// Time.
    pub clock: ClockView,
    /// Why the job cannot be finished now.
    pub finish: Option<Refusal>,
    /// Why the job cannot be stopped now.
    pub stop: Option<Refusal>,
}

/// Whether a job goes on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum Over {
    /// It goes on.
    Going,
    /// It ends by stop and call: only what makes the vehicle safe to leave may begin.
    Ending,
    /// It is finished.
    Finished,
    /// It was stopped before its end.
    Stopped,
}

/// A part of the job.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct PhaseView {
    /// Phase id.
    pub id: String,
    /// What the technician reads.
    pub title: String,
    /// Minutes that people were in its steps.
    pub minutes: u64,
    /// Minutes that its steps in this job are expected to take.
    pub expected: u32,
}

/// A step.
#[derive(Debug, Clone, Serialize, Deserialize, TS)]
pub struct StepView {
    /// Its place in the checklist, from 1.
    pub number: usize,
    /// Step id.
    pub id: String,
    /// Place of its phase in [`JobView::phases`].
    pub phase: usize,
    /// A few words.
    pub title: String,
    /// The one instruction.
    pub instruction: String,
    /// Where the person is.
    pub zone: Zone,
    /// What can hurt.
    pub cautions: Vec<Caution>,
    /// Expected minutes.
    pub minutes: u32,
    /// How it is shown.
    pub shown: Shown,
    /// In progress and all in: only signatures are missing.
    pub held: bool,
    /// Why it cannot be begun.
    pub begin: Option<Refusal>,
    /// In progress only: why it cannot be done, signatures apart.
    pub done: Option<Refusal>,
    /// Moves that can be made now and would bring what it lacks, by id.
    pub helps: Vec<String>,
    /// Why it cannot be skipped.
    pub skip: Option<Refusal>,
    /// Why it cannot be voided.
    pub void: Option<Refusal>,
    /// What it asks for.
    pub entries: Vec<EntryView>,
    /// Sign-offs to give with *Done*, by id; what each says stands in [`JobView::signs`].
    pub signs: Vec<String>,
    /// Sign-offs of it that have lapsed, by id.
    pub lapsed: Vec<String>,
    /// When the attempt that is shown began, and by whom.
    pub begun: Option<Mark>,
    /// When the attempt that is shown was done, and by whom.
    pub ended: Option<Mark>,
    /// Why it was skipped.
    pub skipped_for: Option<Reason>,
    /// Why it was last voided.
    pub voided_for: Option<Reason>,
    /// Why it was missed.
    pub missed_for: Option<Reason>,
}

/// One entry of a step.
#[derive(Debug, Clone, Serialize, Deserialize, TS)]
pub struct EntryView {
    /// Entry id.
    pub id: String,
    /// What the control says.
    pub label: String,
    /// The kind, with its fields.
    pub ask: Ask,
    /// Whether the step can be done without it.
    pub optional: bool,
    /// What the sheet allows, for showing beside it; for torque one line a stage.
    pub limits: Vec<Message>,
    /// Symbols of the units that a value may be typed in, the usual one first. For a level: of the trace.
    pub units: Vec<String>,
    /// For a level: symbols of the units that the temperature may be typed in, the usual one first.
    pub temperature_units: Vec<String>,
    /// For a torque: what the sheet asks for.
    pub torque: Option<TorqueView>,
    /// For a customer's answer: what the estimate that it is for comes to.
    pub estimate: Option<EstimateView>,
    /// For a resistance: what a meter shows, without a unit, where there is more than it can measure; the usual first.
    pub overload: Vec<String>,
    /// The names on the sheet's list of coils, in the order in which they are measured: for what is measured at them, and
    /// for a note that names one.
    pub coils: Vec<String>,
    /// For a torque whose places the sheet gives: the map of its fasteners.
    pub bolts: Option<BoltMap>,
    /// For a decision: what its table says.
    pub decision: Option<DecisionView>,
    /// What was last entered in the attempt that is shown.
    pub value: Option<EntryValue>,
    /// What that turned out to be.
    pub class: Option<String>,
    /// Classes that end the job by stop and call.
    pub ends: Vec<String>,
    /// That value keeps the step in progress.
    pub not_yet: bool,
    /// What is said about that value.
    pub said: Vec<Message>,
    /// A timer of a step in progress: milliseconds still to wait.
    pub ms_left: Option<u64>,
}

/// What an estimate comes to, before tax.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct EstimateView {
    /// Parts and labor.
    pub sum: Amount,
    /// The same with all that may turn up; nothing where nothing may.
    pub limit: Option<Amount>,
}

/// What the sheet asks for at a torque.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct TorqueView {
    /// What the tool is set to, stage by stage.
    pub stages: Vec<Amount>,
    /// What each fastener is turned by after the last stage.
    pub angle: Option<AngleView>,
}

/// An angle that fasteners are turned by after the last stage.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct AngleView {
    /// What each is turned by.
    pub by: Amount,
    /// How many there are.
    pub fasteners: u32,
}

/// A number with its unit, as text.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Amount {
    /// To four figures.
    pub value: String,
    /// The unit's symbol.
    pub unit: String,
}

impl From<Measure> for Amount {
    fn from(measure: Measure) -> Amount {
        Amount { value: figure(measure.value()), unit: measure.unit().symbol().to_owned() }
    }
}

/// A vehicle action.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct VehicleActionView {
    /// Vehicle action id.
    pub id: String,
    /// What the button says.
    pub title: String,
    /// Expected minutes.
    pub minutes: u32,
    /// Why it cannot be made.
    pub refusal: Option<Refusal>,
    /// Sign-offs it would make lapse, by id.
    pub lapses: Vec<String>,
    /// What would no longer be known, by gate id.
    pub forgets: Vec<String>,
}

/// A kind of part or fastener that is off the vehicle.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct TrayView {
    /// Item id.
    pub id: String,
    /// What it is.
    pub name: String,
    /// Pieces that are off.
    pub off: u8,
    /// Pieces there are on the vehicle.
    pub count: u8,
    /// Whether the same piece may go back.
    pub reuse: Reuse,
    /// How it is drawn; nothing: in a form that fits anything.
    pub draws: Option<Piece>,
    /// The count made anew from the events comes to the same.
    pub recount_agrees: bool,
}

/// A kind of part or fastener.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct ItemView {
    /// Item id.
    pub id: String,
    /// What it is.
    pub name: String,
    /// Pieces there are on the vehicle.
    pub count: u8,
    /// Whether the same piece may go back.
    pub reuse: Reuse,
}

/// A condition of the vehicle or the bay.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct ConditionView {
    /// Condition id.
    pub id: String,
    /// In words.
    pub name: String,
    /// Its value.
    pub value: String,
    /// The value in words.
    pub says: String,
    /// Every value it can have.
    pub values: Vec<ConditionValue>,
    /// Which part of the vehicle line shows it.
    pub draws: Option<String>,
}

/// A value that a condition can have.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct ConditionValue {
    /// The value.
    pub value: String,
    /// In words.
    pub says: String,
}

/// Something that is known or not.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct GateView {
    /// Gate id.
    pub id: String,
    /// In words.
    pub name: String,
    /// How it became known; nothing while it is not.
    pub known: Option<Known>,
    /// What was last read or answered that decides it.
    pub last: Option<Message>,
    /// Milliseconds for which it stays good, where it ages.
    pub ms_fresh: Option<u64>,
}

/// A sign-off.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct SignView {
    /// Sign-off id.
    pub id: String,
    /// What is signed.
    pub text: String,
    /// Permit or attest.
    pub kind: SignKind,
    /// Who must sign; nothing: who works the step.
    pub by: Option<Role>,
    /// The step that gives it.
    pub step: String,
    /// It is valid.
    pub valid: bool,
    /// The last time it was given, and which event made it lapse. Those with the same one are renewed together.
    pub last: Option<Given>,
    /// Why it cannot be renewed.
    pub renew: Option<Refusal>,
}

/// Somebody who appeared in the job.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct PersonView {
    /// The person.
    pub id: PersonId,
    /// What they are called.
    pub name: String,
}

/// A danger.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct DangerView {
    /// Danger id.
    pub id: String,
    /// The signal word.
    pub signal: Signal,
    /// What it does and the way back to safe.
    pub text: String,
}

/// Time on the job.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct ClockView {
    /// When it started.
    pub started: Option<Stamp>,
    /// Minutes since then, or until it ended.
    pub minutes: u64,
    /// Minutes of them that somebody was in a step.
    pub in_steps: u64,
}

/// A job as it is to be shown now.
#[must_use]
pub fn view(job: &Job, now: &Stamp) -> JobView {
    make::job(job, now)
}

#[cfg(test)]
mod tests;
