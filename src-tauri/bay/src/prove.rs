//! A checklist is proved before a job can be started with it, for what the spec sheet says is on the vehicle. A proof is
//! kept by the checklist's hash, the engine and what it hangs on of the vehicle, and made once: another sheet that says
//! the same of those needs no other.

use std::ops::ControlFlow;
use std::sync::Arc;

use panside_journal::Hash;
use panside_messages::Message;
use panside_procedure::Procedure;
use panside_procedure::load::{self, Fit};
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
    /// The checklist, fitted to the vehicle.
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

/// A checklist for the vehicle of a spec sheet.
pub(crate) fn fitted(checklist: &[u8], sheet: &[u8]) -> Result<Procedure, BayError> {
    let sheet = load::sheet(sheet).map_err(BayError::Sheet)?;
    Procedure::load(checklist).map_err(BayError::Checklist)?.fitted(&sheet).map_err(BayError::SheetLacks)
}

/// Proves a checklist for the vehicle of a spec sheet. Takes long and touches no store, so that a window can go on
/// meanwhile; [`Bay::keep_proof`] keeps what is found.
///
/// # Errors
/// [`BayError::Checklist`], [`BayError::Sheet`] when one does not load, [`BayError::SheetLacks`] when it does not say
/// what is on the vehicle, [`BayError::NotProved`] when it is refuted or the search did not come to its end.
pub fn search(
    bytes: &[u8],
    sheet: &[u8],
    ask: Ask,
    progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
) -> Result<Found, BayError> {
    let procedure = fitted(bytes, sheet)?;
    let proof = proof::prove(&procedure, ask, progress);
    if proof.verdict != Verdict::Proved {
        return Err(BayError::NotProved { id: procedure.checklist.id.clone(), why: why(&proof) });
    }
    let proof = serde_json::to_string(&proof)?;
    let engine = engine(ask.void, ask.observe, procedure.fit());
    let proved = Proved { bytes: bytes.to_vec(), procedure: Arc::new(procedure), proof };
    Ok(Found { proved, engine })
}

impl Bay {
    /// Proves a checklist for the vehicle of a spec sheet, or takes the proof that is kept.
    ///
    /// # Errors
    /// Those of [`search`], [`Bay::proved`] and [`Bay::keep_proof`].
    pub fn prove(
        &mut self,
        bytes: &[u8],
        sheet: &[u8],
        ask: Ask,
        progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
    ) -> Result<Proved, BayError> {
        match self.proved(bytes, sheet, ask)? {
            Some(proved) => Ok(proved),
            None => self.keep_proof(search(bytes, sheet, ask, progress)?),
        }
    }

    /// A checklist for the vehicle of a spec sheet with the proof that is kept; nothing when none is.
    ///
    /// # Errors
    /// Those of [`search`] but for the search, [`BayError::Store`] with what the disk said.
    pub fn proved(&self, bytes: &[u8], sheet: &[u8], ask: Ask) -> Result<Option<Proved>, BayError> {
        let procedure = fitted(bytes, sheet)?;
        let kept = self.proof_of(&Hash::of(bytes), procedure.fit(), ask)?;
        Ok(kept.map(|proof| Proved { bytes: bytes.to_vec(), procedure: Arc::new(procedure), proof }))
    }

    /// The proof that is kept for the bytes of a checklist.
    pub(crate) fn proof_of(&self, checklist: &Hash, fit: &Fit, ask: Ask) -> Result<Option<String>, BayError> {
        Ok(self.store.proof(checklist, &engine(ask.void, ask.observe, fit))?)
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
    pub(crate) fn kept_proof(&self, checklist: &Hash, fit: &Fit) -> Result<Option<String>, BayError> {
        for (void, observe) in [(true, true), (true, false), (false, true), (false, false)] {
            if let Some(proof) = self.store.proof(checklist, &engine(void, observe, fit))? {
                return Ok(Some(proof));
            }
        }
        Ok(None)
    }
}

/// What was asked belongs to the name: a proof without voids is not one with them, nor is one for another vehicle.
fn engine(void: bool, observe: bool, fit: &Fit) -> String {
    let engine = format!("{ENGINE} void={void} observe={observe}");
    if fit.is_any() { engine } else { format!("{engine} for {fit}") }
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
