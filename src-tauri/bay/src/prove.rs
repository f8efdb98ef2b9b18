//! A checklist is proved before a job can be started with it. A proof is kept by the checklist's hash and the
//! engine, and made once.

use std::ops::ControlFlow;
use std::sync::Arc;

use panside_journal::Hash;
use panside_messages::Message;
use panside_procedure::Procedure;
use panside_procedure::proof::{self, ENGINE, Progress, Proof, Verdict};

pub use panside_procedure::proof::{Ask, go_on};

use crate::message::*;
use crate::{Bay, BayError};

/// Under which kind checklists are kept.
pub(crate) const CHECKLIST: &str = "checklist";

/// A checklist that loads, with its bytes and its proof. Only [`Bay::prove`] makes one.
#[derive(Debug, Clone)]
pub struct Proved {
    pub(crate) bytes: Vec<u8>,
    pub(crate) procedure: Arc<Procedure>,
    /// The proof as JSON.
    pub proof: String,
}

impl Proved {
    /// The checklist.
    #[must_use]
    pub fn procedure(&self) -> &Procedure {
        &self.procedure
    }
}

/// A search that came to its end with a proof. Only [`search`] makes one.
#[derive(Debug, Clone)]
pub struct Found {
    proved: Proved,
    engine: String,
}

/// Proves a checklist. Takes long and touches no store, so that a window can go on meanwhile; [`Bay::keep_proof`]
/// keeps what is found.
///
/// # Errors
/// [`BayError::Checklist`] when it does not load, [`BayError::NotProved`] when it is refuted or the search did
/// not come to its end.
pub fn search(
    bytes: &[u8],
    ask: Ask,
    progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
) -> Result<Found, BayError> {
    let procedure = Procedure::load(bytes).map_err(BayError::Checklist)?;
    let proof = proof::prove(&procedure, ask, progress);
    if proof.verdict != Verdict::Proved {
        return Err(BayError::NotProved { id: procedure.checklist.id.clone(), why: why(&proof) });
    }
    let proof = serde_json::to_string(&proof)?;
    let proved = Proved { bytes: bytes.to_vec(), procedure: Arc::new(procedure), proof };
    Ok(Found { proved, engine: engine(ask.void, ask.observe) })
}

impl Bay {
    /// Proves a checklist, or takes the proof that is kept for it.
    ///
    /// # Errors
    /// Those of [`search`], [`Bay::proved`] and [`Bay::keep_proof`].
    pub fn prove(
        &mut self,
        bytes: &[u8],
        ask: Ask,
        progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
    ) -> Result<Proved, BayError> {
        match self.proved(bytes, ask)? {
            Some(proved) => Ok(proved),
            None => self.keep_proof(search(bytes, ask, progress)?),
        }
    }

    /// A checklist with the proof that is kept for it; nothing when none is.
    ///
    /// # Errors
    /// [`BayError::Checklist`] when it does not load, [`BayError::Store`] with what the disk said.
    pub fn proved(&self, bytes: &[u8], ask: Ask) -> Result<Option<Proved>, BayError> {
        let procedure = Procedure::load(bytes).map_err(BayError::Checklist)?;
        let kept = self.proof_of(&Hash::of(bytes), ask)?;
        Ok(kept.map(|proof| Proved { bytes: bytes.to_vec(), procedure: Arc::new(procedure), proof }))
    }

    /// The proof that is kept for the bytes of a checklist.
    pub(crate) fn proof_of(&self, checklist: &Hash, ask: Ask) -> Result<Option<String>, BayError> {
        Ok(self.store.proof(checklist, &engine(ask.void, ask.observe))?)
    }

    /// Keeps a proof, so that it need not be made again, and the checklist with it: where a later revision can't be
    /// proved, jobs can still be started with this one.
    ///
    /// # Errors
    /// [`BayError::Store`] with what the disk said.
    pub fn keep_proof(&mut self, found: Found) -> Result<Proved, BayError> {
        let checklist = self.store.put_document(CHECKLIST, &found.proved.bytes)?;
        self.store.put_proof(&checklist, &found.engine, &found.proved.proof)?;
        Ok(found.proved)
    }
}

impl Bay {
    /// The proof of a checklist that is kept: of several the one that claims most.
    pub(crate) fn kept_proof(&self, checklist: &Hash) -> Result<Option<String>, BayError> {
        for (void, observe) in [(true, true), (true, false), (false, true), (false, false)] {
            if let Some(proof) = self.store.proof(checklist, &engine(void, observe))? {
                return Ok(Some(proof));
            }
        }
        Ok(None)
    }
}

/// What was asked belongs to the name: a proof without voids is not one with them.
fn engine(void: bool, observe: bool) -> String {
    format!("{ENGINE} void={void} observe={observe}")
}

fn why(proof: &Proof) -> Message {
    let Some(finding) = proof.findings.first() else {
        return bay_undecided(proof.searches.iter().map(|search| search.states.found).sum::<usize>());
    };
    let what = finding.what.clone();
    match finding.run.iter().cloned().reduce(bay_then) {
        Some(run) => bay_refuted_by(what, run),
        None => bay_refuted(what),
    }
}
