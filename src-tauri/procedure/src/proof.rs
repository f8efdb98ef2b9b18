//! The proof: an exact, exhaustive search over [`Machine::step`], the same function that runs the live job.
//!
//! Six properties (each finding names its own):
//! 1. *Safe*: no danger in any allowed run, with at most one strike anywhere in it.
//! 2. *Honest when wrong*: after one observation anywhere no further danger comes up by what is allowed.
//! 3. *Can finish*: from every state some allowed path reaches the end, unless a class ended the job.
//! 4. *Can stop*: the technician can always bring the job to a safe stop, whatever the entries turn out to be.
//! 5. *Nothing left*: a finished job has every piece back and every attest valid.
//! 6. *All of it used*: every step, outcome, move and sign-off occurs, what can lapse lapses and is renewed,
//!    and every danger could occur if the rules were not there.
//!
//! No clock: whoever calls gets told how far the search is, and measures.

mod actions;
mod canon;
mod ends;
mod explore;
mod graph;
mod loosened;
mod report;
mod safe;
mod used;

pub use report::{Answer, Finding, FinishRow, Proof, Property, SearchReport, Verdict};

use crate::load::Procedure;
use explore::{Found, Runs};

/// Counts up whenever the meaning of a checklist or the proof changes: a proof is good for one engine only.
pub const ENGINE: &str = "panside-proof/1";

/// What is proved besides the plain runs with ageing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Ask {
    /// Runs with one strike anywhere.
    pub strike: bool,
    /// Runs with one observation anywhere.
    pub observe: bool,
    /// The most memory the search may take, in bytes.
    pub memory: usize,
}

impl Default for Ask {
    fn default() -> Self {
        Ask { strike: true, observe: true, memory: 2 << 30 }
    }
}

/// How far a search is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Progress {
    /// Which runs are searched.
    pub search: &'static str,
    /// What is being done.
    pub doing: &'static str,
    /// States found so far.
    pub states: usize,
    /// States found and not yet looked at.
    pub waiting: usize,
}

/// Proves a checklist, or finds the shortest runs that refute it, or says how far it came.
#[must_use]
pub fn prove(procedure: &Procedure, ask: Ask, progress: &mut dyn FnMut(Progress)) -> Proof {
    let mut proof = Proof::new(procedure, ask);
    let mut used = used::Used::new(procedure);
    let strikes = if ask.strike { Runs::OneStrike } else { Runs::Plain };
    if let Some(found) = search(procedure, strikes, ask, progress, &mut proof) {
        safe::judge(procedure, &found, &mut proof);
        ends::judge(procedure, &found, &mut proof, progress);
        used.take_in(&found);
    }
    if ask.observe
        && let Some(found) = search(procedure, Runs::OneObservation, ask, progress, &mut proof)
    {
        safe::judge(procedure, &found, &mut proof);
        ends::judge(procedure, &found, &mut proof, progress);
        used.take_in(&found);
    }
    // Some of what lapses, lapses only when the vehicle is not as shown.
    if proof.is_decided() && ask.observe {
        used.judge(procedure, &mut proof);
    }
    if proof.is_decided() {
        loosened::judge(procedure, &mut proof);
    }
    proof.conclude();
    proof
}

fn search<'a>(
    procedure: &'a Procedure,
    runs: Runs,
    ask: Ask,
    progress: &mut dyn FnMut(Progress),
    proof: &mut Proof,
) -> Option<Found<'a>> {
    let found = explore::explore(procedure, runs, ask.memory, progress);
    proof.searches.push(found.report());
    found.complete.then_some(found)
}
