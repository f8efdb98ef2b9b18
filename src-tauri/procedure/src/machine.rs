//! The Machine: what a checklist means, compiled to indices and bit fields, without any text.
//!
//! [`Machine::step`] is the only thing that changes rule state. The live job and the proof call the same
//! function, so that what is proved is what runs. It never looks at dangers (else nothing could fail the
//! proof); [`Machine::dangers_now`] does, apart.
//!
//! # In short
//!
//! - *Conditions* are what hands and physics change, *gates* what is known. A gate starts `unknown` and becomes so
//!   again when its `holds_while` turns false, when a follow says so, or when it grows too old (`fresh_for`).
//! - *Entries* turn into *classes*; rules see classes, never numbers. A class marked `not_yet` keeps the step in progress.
//! - *Permits* allow work while they are valid; *attests* speak of finished work. Both lapse by themselves.
//! - The proof looks at dangers at every moment of every action, the live job before it writes.
//!
//! # Decided here, where the format leaves room
//!
//! | point | decided | why |
//! |---|---|---|
//! | `moving = m`, `moved = m` | the state before the vehicle action; the one after it | a vehicle action often changes the condition |
//! | a vehicle action beside a step | the step's `while` holds before it and after it | who stands in the way is out first |
//! | what relies on a voided step | is voided with it, however far back | knowledge built on a wrong entry is wrong |
//! | a stopped job | is one state for the proof | nothing more happens in it |
//! | two follows on one variable | write the same value | then following always ends, without a search |
//! | an observed danger | is excused while it lasts, if of the state alone | nobody may be sent into one |
//!
//! One word for both `moving` and `moved` could not say what is meant: raising changes the very condition that it
//! needs. Each step that was voided can be corrected afterwards. A danger of what somebody does is never excused: not at
//! a begin, a done or a vehicle action.
//!
//! Where this and the plain reading of the format differ, it is on the careful side: permits are checked at `done` too;
//! a begun step can't be voided; an undecided step keeps later phases shut; a void goes along `relies_on` through
//! steps that are not worked; a step is undecided only while the unknown gate decides.

mod danger;
mod dependency_index;
mod explain;
mod observe;
mod piece;
mod pred;
mod recorded;
mod sets;
mod settle;
mod shown;
mod state;
mod step;

pub use danger::{Context, DangerRule};
pub(crate) use dependency_index::Dependents;
pub use dependency_index::{Before, DependencyIndex};
pub use explain::Unmet;
pub use pred::{Pred, Test, Tree};
pub use sets::{DangerSet, StepSet};
pub use shown::{InJob, Shown};
pub use state::{Bits, Field, Layout, STEP_WORDS, State, WORDS, WORK_WORDS};
pub use step::Moment;

macro_rules! index {
    ($($(#[$doc:meta])* $name:ident),*) => {$(
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(pub u16);

        impl $name {
            /// The index as a position in a list.
            #[must_use]
            pub fn at(self) -> usize {
                usize::from(self.0)
            }

            /// The index of a position in a list. Loading bounds every list far below 65,536.
            #[must_use]
            pub fn of(position: usize) -> Self {
                Self(u16::try_from(position).unwrap_or(u16::MAX))
            }
        }
    )*};
}

index!(
    /// A step, in file order.
    StepIx,
    /// A condition, a fact or a gate.
    VarIx,
    /// A sign-off.
    SignIx,
    /// An item.
    ItemIx,
    /// A vehicle action.
    VehicleActionIx,
    /// A phase.
    PhaseIx,
    /// A danger.
    DangerIx,
    /// One way a step can turn out: a class for each entry that decides something.
    OutcomeIx
);

/// What can be done to rule state.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Action {
    /// A person goes into a step.
    Begin(StepIx),
    /// A person leaves a step that is not done.
    Leave(StepIx),
    /// A begun step is done, with what its entries turned out to be.
    Done(StepIx, OutcomeIx),
    /// A vehicle action is made.
    Vehicle(VehicleActionIx),
    /// One sign-off of a worked step is renewed.
    Sign(SignIx),
    /// A step is skipped.
    Skip(StepIx),
    /// What was entered at a step is voided.
    Void(StepIx),
    /// A voided step's entries are corrected, without doing the work again.
    Correct(StepIx, OutcomeIx),
    /// The vehicle is not as shown: a condition has this value.
    Observe(VarIx, u8),
    /// A gate's knowledge has grown too old.
    Expire(VarIx),
    /// A piece is off that the checklist does not know (or, false, none is any more). No run of the proof has it: see
    /// `machine/piece.rs`.
    Piece(bool),
    /// The job is finished.
    Finish,
    /// The job is stopped before its end.
    Stop,
}

/// Why an action is not allowed. [`Machine::explain`] says more.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Blocked {
    /// The job is finished or stopped.
    Over,
    /// The job is ending: only what makes the vehicle safe to leave may begin.
    Ending,
    /// The step is not part of this job, or it is not yet known whether it is.
    NotInJob,
    /// An earlier phase has this step open.
    Phase(StepIx),
    /// This step comes first.
    After(StepIx),
    /// What the step or vehicle action needs does not hold.
    Needs,
    /// This permit is not valid.
    Permit(SignIx),
    /// Everybody is in a step; this is one of them.
    Busy(StepIx),
    /// The step is in progress, dealt with, or not in the state this asks for.
    NotNow,
    /// What must hold while the step is worked no longer does.
    While,
    /// This sign-off would lapse at once: what it says is not so.
    Sign(SignIx),
    /// This begun step could not go on: finish or leave it first.
    Stands(StepIx),
    /// The checklist does not allow this step to be skipped.
    MayNotSkip,
    /// Nothing would change.
    Same,
    /// A piece is off that the checklist does not know.
    PieceOff,
}

/// Values of `work[s]`.
pub(crate) mod work {
    pub const UNTOUCHED: u64 = 0;
    pub const WORKED: u64 = 1;
    pub const VOIDED: u64 = 2;
    pub const SKIPPED: u64 = 3;
}

/// Values of `sign[x]`.
pub(crate) mod sign {
    pub const VALID: u64 = 1;
    pub const LAPSED: u64 = 2;
}

/// Values of `over`.
pub(crate) mod over {
    pub const NO: u64 = 0;
    pub const ENDING: u64 = 1;
    pub const FINISHED: u64 = 2;
    pub const STOPPED: u64 = 3;
}

/// The value of a gate that is not known.
pub const UNKNOWN: u8 = 0;

/// Several fields assigned at once, as one edit a word.
#[derive(Debug, Clone, Default)]
pub struct Assign {
    pub(crate) edits: Vec<(Field, u64)>,
}

/// A condition, fact or gate.
#[derive(Debug, Clone)]
pub struct Variable {
    /// Where it stands in the state.
    pub field: Field,
    /// What it is.
    pub kind: VariableKind,
    /// How many values it has; for a gate, `unknown` is one of them.
    pub size: u8,
    /// For a gate: it stands while this holds.
    pub holds_while: Option<Pred>,
    /// For a gate: it can grow too old.
    pub ages: bool,
    /// For a condition: written by vehicle actions.
    pub by_vehicle_actions: bool,
    /// For a condition: the vehicle does not have what it is about. Nothing writes it and nobody can observe it.
    pub absent: bool,
}

/// What a variable is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum VariableKind {
    /// What hands and physics change.
    Condition,
    /// What the spec sheet says.
    Fact,
    /// What is known.
    Gate,
}

/// One way a step can turn out.
#[derive(Debug, Clone)]
pub struct Outcome {
    /// What it assigns.
    pub assign: Assign,
    /// What of it a later correction may assign: gates that do not age.
    pub corrected: Assign,
    /// It ends the job by stop and call.
    pub ends: bool,
}

/// The rules of one step.
#[derive(Debug, Clone)]
pub struct StepRule {
    /// Where its work state stands.
    pub work: Field,
    /// Its phase.
    pub phase: PhaseIx,
    /// When it is surely in the job, and when it is surely not. Absent: always in.
    pub on: Option<(Pred, Pred)>,
    /// Steps that come before.
    pub after: Vec<StepIx>,
    /// What must hold to begin.
    pub needs: Pred,
    /// What must hold until it is done.
    pub while_: Pred,
    /// When it may be done again.
    pub again: Option<Pred>,
    /// Permits that must be valid.
    pub permits: Vec<SignIx>,
    /// Sign-offs given when it is done.
    pub signs: Vec<SignIx>,
    /// Steps it builds on.
    pub relies_on: Vec<StepIx>,
    /// Steps voided with it: those that build on it, and those that build on them.
    pub voided_with: Vec<StepIx>,
    /// Assigned by beginning.
    pub on_begin: Assign,
    /// Assigned by leaving.
    pub on_leave: Assign,
    /// The ways it can turn out; at least one.
    pub outcomes: Vec<Outcome>,
    /// Pieces taken off.
    pub takes_off: Vec<(ItemIx, u8)>,
    /// Pieces put back.
    pub puts_back: Vec<(ItemIx, u8)>,
    /// Gates any of its outcomes writes.
    pub writes: Vec<VarIx>,
    /// Conditions its outcomes make, with the values they make (as bits).
    pub makes: Vec<(VarIx, u64)>,
    /// It may be skipped.
    pub may_skip: bool,
    /// It may begin while the job is ending.
    pub when_ending: bool,
}

/// The rules of one vehicle action.
#[derive(Debug, Clone)]
pub struct VehicleActionRule {
    /// What must hold before.
    pub needs: Pred,
    /// What it assigns.
    pub makes: Assign,
}

/// The rules of one sign-off.
#[derive(Debug, Clone)]
pub struct SignRule {
    /// Where it stands in the state.
    pub field: Field,
    /// The step that gives it.
    pub step: StepIx,
    /// It is a permit, not an attest.
    pub permit: bool,
    /// It stands while this holds.
    pub holds_while: Pred,
}

/// An item's place in the state.
#[derive(Debug, Clone)]
pub struct ItemRule {
    /// Where the number of empty places stands.
    pub field: Field,
    /// How many there are.
    pub count: u8,
}

/// A change that physics makes.
#[derive(Debug, Clone)]
pub struct FollowRule {
    /// When.
    pub when: Pred,
    /// What.
    pub assign: Assign,
}

/// What a phase waits for, as bits of the state's step words.
#[derive(Debug, Clone, Default)]
pub struct PhaseRule {
    /// Low bits of the work fields of steps that are in every job, in the phases it waits for.
    pub waits_on: Vec<(usize, u64)>,
    /// Steps that are only in some jobs, in the phases it waits for.
    pub waits_on_some: Vec<StepIx>,
    /// Bits of the work fields of its own steps and of those of phases that wait for it.
    pub entered: Vec<(usize, u64)>,
    /// The same steps, to look up who is begun.
    pub entered_steps: StepSet,
    /// Steps of phases that wait for it: one of them entered means this phase has passed.
    pub passed_steps: StepSet,
}

/// A compiled checklist.
#[derive(Debug, Clone)]
pub struct Machine {
    /// Where everything stands in the state.
    pub layout: Layout,
    /// Conditions, facts and gates.
    pub vars: Vec<Variable>,
    /// Steps in file order.
    pub steps: Vec<StepRule>,
    /// Phases in file order.
    pub phases: Vec<PhaseRule>,
    /// Vehicle actions.
    pub vehicle_actions: Vec<VehicleActionRule>,
    /// Sign-offs.
    pub signs: Vec<SignRule>,
    /// Items.
    pub items: Vec<ItemRule>,
    /// Follows in file order.
    pub follows: Vec<FollowRule>,
    /// Dangers.
    pub dangers: Vec<DangerRule>,
    /// What a finished job needs.
    pub done_when: Pred,
    /// What a stopped job needs.
    pub safe_to_leave: Pred,
    /// What the vehicle must be like at intake.
    pub start_when: Pred,
    /// The start: every condition as it can come in, before `start_when`.
    pub starts: Vec<(VarIx, Vec<u8>)>,
    /// Which rules read what; made from the rules by [`Machine::ready`].
    pub readers: DependencyIndex,
}

impl Machine {
    /// The machine with its readers made anew: to be called after its rules were written or changed.
    #[must_use]
    pub fn ready(mut self) -> Machine {
        self.readers = DependencyIndex::of(&self);
        self
    }
}
