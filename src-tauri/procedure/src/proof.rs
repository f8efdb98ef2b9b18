//! The proof: an exact, exhaustive search over [`Machine::step`], the same function that runs the live job.
//!
//! Six properties (each finding names its own):
//! 1. *Safe*: no danger in any allowed run, with at most one void anywhere in it.
//! 2. *Honest when wrong*: after one observation anywhere no further danger comes up by what is allowed.
//! 3. *Can finish* (in CTL: AG EF finished): from every state some allowed path reaches the end, unless a class ended
//!    the job.
//! 4. *Can stop* (AG EF stopped, and more): the technician can always bring the job to a safe stop, whatever the
//!    entries turn out to be.
//! 5. *Nothing left*: a finished job has every step worked or skipped, every piece back and every attest valid.
//! 6. *All of it used*: every step, outcome, vehicle action and sign-off occurs, what can lapse lapses and is renewed,
//!    every assignment changes something, what a reading or an answer says has a consequence, and every danger could
//!    occur if the rules were not there.
//!
//! Runs with a void and runs with an observation are searched side by side, each by itself, so that what is found
//! does not hang on which is faster. No clock: whoever calls gets told how far a search is, measures, and may end it.
//!
//! A piece off the vehicle that the checklist does not know (`machine/piece.rs`) is covered by the same states: each
//! action is judged with one off too.
//!
//! # How it is built
//!
//! - `explore` searches breadth first; `visit` is its inner loop. `graph` keeps the states by collapse compression, as
//!   pairs of interned halves,
//!   `edges` the steps between them in 3 to 4 bytes each.
//! - `transition_cache` keeps what an action did, for all states with the same vehicle and the same of the work that the action
//!   reads; `reads` finds from the rules what that is. A unit test in `visit` carries every action out whose transition is
//!   kept, and compares.
//! - `safe`, `ends` (two fixpoints over the edges: can finish, can stop against every class and one ageing), `used`,
//!   `changes`, `sense`, `loosened` and `remarks` judge what was found; `mend` looks for the one condition that would
//!   close a finding, by proving again.
//! - A danger that can never come up (`loosened`) is looked for over what it reads, one danger at a time: over all
//!   variables at once the search grew to millions of states.
//! - `canon` takes some states for one: lapsed and never given sign-offs, people, stopped jobs. `prove --apart` keeps
//!   them apart; a test sees that nothing else is found then, and `cargo xtask bench` says what it saves. With voids
//!   on pan-and-solenoid it saves 4% of the states for stopped jobs and none for the other two, since no rule there
//!   keeps a lapsed permit and one person works.
//! - The searches for a void and for an observation have a thread and half of the memory each.
//!
//! # Measured
//!
//! | pan-and-solenoid, for the vehicle of `demo-six-speed` | states | MiB |
//! |---|---|---|
//! | at most one void anywhere | 500,654 | 22 |
//! | at most one observation anywhere | 361,622 | 14 |
//!
//! The vehicles of the three demo sheets together take 2.9 s on two cores in the dev profile (which optimizes this crate),
//! 46 bytes a state and 117 MB of memory in all; the longest of the shipped checklists takes 3.0 s. How many states each
//! checklist has stands in `checklists/README.md`. What follows was measured on a form that was not fitted to a vehicle.
//!
//! SPIN 6.5 (`-O2`, exact, depth first) counts the void runs of the same model in 5.0 s with 64 bytes a state: 0.40
//! million states a second. Ours does 0.81 million in the same run of `cargo xtask bench`, on one core too: 2.0 times
//! as many (over the shipped checklists 0.81 to 1.04 million). Three times was the aim. Seven in ten steps are kept and
//! no longer worked out; nearly half of the time now waits for memory (looking up states and cached transitions). A search
//! that only counts would save judging dangers and writing edges. Tried without a gain that could be measured: no
//! overflow checks, link-time optimization, the machine's own instructions, huge pages, more states at a time, more
//! cached transitions. The bench prints states a second and bytes a state, also over synthetic checklists of 20 to 160 steps.
//!
//! A set of dangers is four words (`machine/sets.rs`) and a state 16 (`machine/state.rs`), whatever a checklist uses of
//! them; a search keeps only the words in use. Sets of four words cost nothing that could be measured; a state of 16
//! words in place of 8 costs some 4% of the time. What makes up for most of it: the dangers that depend on a change are
//! looked up apart from the other rules, and a cached transition has the dangers before it as a number. pan-and-solenoid with
//! its dangers repeated to 256 takes 1.4 times as long and has as many states.
//!
//! Without phase barriers the plain runs of pan-and-solenoid have 27,606,285 states. They are searched and judged in 48
//! s and 0.95 GB, and refuted, since phases keep order where no step asks for it. With a void there are more than 194
//! million: 8 GiB are full before it is decided. The window proves within 5 million states and 512 MiB; what needs more
//! is "not decided", never "proved".
//!
//! # What it does not cover
//!
//! More than one void, or more than one observation, in a run. A finished job may still have a voided line that was
//! not corrected; the proof does not ask for it. What checks the proof from outside, and which mistakes in a checklist
//! it misses, stands in `tests/README.md`.

mod actions;
pub(crate) mod canon;
mod changes;
mod edges;
mod ends;
mod explore;
mod finding;
mod graph;
mod loosened;
mod marks;
mod mend;
mod reads;
mod remarks;
mod report;
mod safe;
mod seen;
mod sense;
mod tell;
mod transition_cache;
mod used;
mod vehicle;
mod visit;

pub use canon::Apart;
pub use explore::Runs;
pub use finding::{Finding, Place, Remark};
pub use mend::suggest;
pub use report::{Answer, FinishRow, Proof, Property, SearchReport, StatesReport, Stopped, Verdict};

use std::ops::ControlFlow;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc;

use panside_messages::Message;

use crate::load::Procedure;
use crate::message::*;
use tell::Teller;

/// Counts up whenever the meaning of a checklist or the proof changes: a proof is good for one engine only.
pub const ENGINE: &str = "panside-proof/4";

/// The most states that a search may hold on a tablet: about ten seconds and a quarter of a gigabyte there.
pub const TABLET_STATES: usize = 5_000_000;

/// What is proved besides the plain runs with ageing, and how much it may take.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Ask {
    /// Runs with one void anywhere.
    pub void: bool,
    /// Runs with one observation anywhere.
    pub observe: bool,
    /// The most memory that the states and steps of the searches may take together, in bytes. What is kept only for speed
    /// comes on top: some 15 MB for each search, and twice that at most where actions change the work done in very many
    /// ways.
    pub memory: usize,
    /// The most states that one search may find.
    pub states: usize,
    /// What is kept apart although it need not be.
    pub apart: Apart,
}

impl Ask {
    /// Everything, within what a tablet can hold.
    pub const TABLET: Ask = Ask { memory: 512 << 20, states: TABLET_STATES, ..Ask::ALL };

    /// Everything, within what a desktop computer can hold: the default.
    pub const ALL: Ask = Ask {
        void: true,
        observe: true,
        memory: 2 << 30,
        states: usize::MAX,
        apart: Apart { lapsed: false, people: false, stopped: false },
    };
}

impl Default for Ask {
    fn default() -> Self {
        Ask::ALL
    }
}

/// What a search is doing: first it looks for states, afterwards it judges them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Looking {
    /// For states.
    Searching,
    /// For ways to make it safe to leave.
    SafeToLeave,
    /// For ways to the end.
    End,
    /// For ways to a safe stop.
    SafeStop,
}

impl Looking {
    fn message(self) -> Message {
        match self {
            Looking::Searching => procedure_looking_searching(),
            Looking::SafeToLeave => procedure_looking_safe_to_leave(),
            Looking::End => procedure_looking_end(),
            Looking::SafeStop => procedure_looking_safe_stop(),
        }
    }
}

/// How far a search is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Progress {
    /// Which runs are searched.
    pub search: Runs,
    /// What is being done.
    pub doing: Looking,
    /// States found so far.
    pub states: usize,
    /// States found and not yet looked at.
    pub waiting: usize,
}

impl Progress {
    /// Which runs are searched, and what is being done.
    #[must_use]
    pub fn message(&self) -> Message {
        procedure_progress(self.search.message(), self.doing.message())
    }
}

/// A `progress` for whoever only waits for the end.
pub fn go_on(_: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

/// Proves a checklist, or finds the shortest runs that refute it, or says how far it came. `progress` hears now and
/// then how far it is and answers whether to go on; a proof that is ended is not decided.
#[must_use]
pub fn prove(
    procedure: &Procedure,
    ask: Ask,
    progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
) -> Proof {
    prove_for(procedure, std::slice::from_ref(procedure), ask, progress)
}

/// Proves a checklist for each of several vehicles, [fitted](Procedure::fitted) to it. What a vehicle alone does not use
/// is used where another one does. A checklist that is fitted itself is not asked whether all of it is used.
#[must_use]
pub fn prove_for(
    procedure: &Procedure,
    vehicles: &[Procedure],
    ask: Ask,
    progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
) -> Proof {
    let mut runs = vec![if ask.void { Runs::OneVoid } else { Runs::Plain }];
    runs.extend(ask.observe.then_some(Runs::OneObservation));
    let mut proof = Proof::new(procedure, ask);
    let mut used = used::Used::new(procedure);
    // Each has its own share, so that where a search stops does not hang on how far the other one is.
    let share = Ask { memory: ask.memory / runs.len(), ..ask };
    for vehicle in vehicles {
        let (parts, cancelled) = side_by_side(vehicle, &runs, share, progress);
        for part in parts {
            proof.take_in(part.proof);
            used.take_in(part.used);
        }
        if cancelled {
            proof.cancel();
            break;
        }
    }
    if procedure.fit().is_any() {
        judge_use(procedure, &used, ask, &mut proof);
    }
    proof.conclude(ask, procedure.fit().is_any());
    proof
}

/// Whether everything in a checklist has a use and a sense, seen over all vehicles.
fn judge_use(procedure: &Procedure, used: &used::Used, ask: Ask, proof: &mut Proof) {
    if proof.is_decided() {
        used.judge_idle(procedure, proof);
    }
    // Some of what lapses, lapses only when the vehicle is not as shown.
    if proof.is_decided() && ask.observe {
        used.judge(procedure, proof);
        used.remark(procedure, proof);
    }
    if proof.is_decided() {
        loosened::judge(procedure, proof);
    }
    sense::judge(procedure, proof);
    remarks::look_over(procedure, proof);
}

/// What one search says.
struct Part {
    proof: Proof,
    used: used::Used,
}

fn side_by_side(
    procedure: &Procedure,
    runs: &[Runs],
    ask: Ask,
    progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
) -> (Vec<Part>, bool) {
    let cancelled = AtomicBool::new(false);
    let (to, heard) = mpsc::channel();
    std::thread::scope(|scope| {
        let searches: Vec<_> = runs
            .iter()
            .map(|&runs| {
                let teller = Teller { to: to.clone(), cancelled: &cancelled };
                scope.spawn(move || search(procedure, runs, ask, &teller))
            })
            .collect();
        // The channel ends with the last search.
        drop(to);
        for told in heard {
            if progress(told).is_break() {
                cancelled.store(true, Ordering::Relaxed);
            }
        }
        let ended = searches.into_iter().map(std::thread::ScopedJoinHandle::join);
        let parts = ended.map(|part| part.unwrap_or_else(|panic| std::panic::resume_unwind(panic))).collect();
        (parts, cancelled.load(Ordering::Relaxed))
    })
}

/// Searches one kind of runs and judges what was found. A search that did not come to its end decides nothing.
fn search(procedure: &Procedure, runs: Runs, ask: Ask, teller: &Teller<'_>) -> Part {
    let mut part = Part { proof: Proof::new(procedure, ask), used: used::Used::new(procedure) };
    let mut found = explore::explore(procedure, runs, ask, teller);
    // What is found before a cap is met is found, though there may be more.
    if found.stopped != Some(Stopped::Cancelled) {
        safe::judge(procedure, &found, &mut part.proof);
    }
    if found.stopped.is_none() {
        found.changes.judge(procedure, &found, &mut part.proof);
        if ends::judge(procedure, &mut found, &mut part.proof, teller).is_break() {
            found.stopped = Some(Stopped::Cancelled);
        }
        part.used.add(&found);
    }
    part.proof.searches.push(found.report());
    part
}
