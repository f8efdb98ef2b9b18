//! A checklist is proved before a job can be started with it, for what the spec sheet says is on the vehicle. A proof is
//! kept by the checklist's hash, the engine and what it hangs on of the vehicle, and made once: another sheet that says
//! the same of those needs no other.

use std::ops::ControlFlow;
use std::sync::Arc;

use panside_journal::Hash;
use panside_messages::Message;
use panside_procedure::Procedure;
use panside_procedure::load::{self, Fit};
use panside_procedure::proof::{self, ENGINE, Proof, Verdict};

pub use panside_procedure::proof::{Ask, Progress, go_on};

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
/// what is on the vehicle, [`BayError::NotProved`] when it is refuted, [`BayError::NotDecided`] when the search did not
/// come to its end.
pub fn search(
    bytes: &[u8],
    sheet: &[u8],
    ask: Ask,
    progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
) -> Result<Found, BayError> {
    find(bytes, fitted(bytes, sheet)?, ask, progress)
}

/// Proves a checklist without a spec sheet, where it hangs on no vehicle.
///
/// # Errors
/// [`BayError::NeedsSheet`] where it hangs on the vehicle; else as [`search`].
pub fn search_without_sheet(
    bytes: &[u8],
    ask: Ask,
    progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
) -> Result<Found, BayError> {
    find(bytes, without_sheet(bytes)?, ask, progress)
}

fn without_sheet(bytes: &[u8]) -> Result<Procedure, BayError> {
    let procedure = Procedure::load(bytes).map_err(BayError::Checklist)?;
    if hangs_on_vehicle(&procedure) {
        return Err(BayError::NeedsSheet { id: procedure.checklist.id.clone() });
    }
    Ok(procedure)
}

/// Whether rules of a checklist hang on what a spec sheet says of the vehicle.
pub(crate) fn hangs_on_vehicle(procedure: &Procedure) -> bool {
    !Fit::all(procedure).iter().all(Fit::is_any)
}

fn find(
    bytes: &[u8],
    procedure: Procedure,
    ask: Ask,
    progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
) -> Result<Found, BayError> {
    let proof = proof::prove(&procedure, ask, progress);
    let id = || procedure.checklist.id.clone();
    match proof.verdict {
        Verdict::Proved => {}
        Verdict::Refuted => return Err(BayError::NotProved { id: id(), why: why(&proof) }),
        Verdict::NotDecided => {
            return Err(BayError::NotDecided { id: id(), states: states_of(&proof) });
        }
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

    /// Whether the proof of a checklist that hangs on no vehicle is kept.
    ///
    /// # Errors
    /// Those of [`search_without_sheet`] but for the search, [`BayError::Store`] with what the disk said.
    pub fn is_proved_without_sheet(&self, bytes: &[u8], ask: Ask) -> Result<bool, BayError> {
        Ok(self.proof_of(&Hash::of(bytes), without_sheet(bytes)?.fit(), ask)?.is_some())
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

fn states_of(proof: &Proof) -> usize {
    proof.searches.iter().map(|search| search.states.found).sum()
}

fn why(proof: &Proof) -> Message {
    let Some(finding) = proof.findings.first() else { return bay_undecided(states_of(proof)) };
    let what = finding.what.clone();
    match finding.run.iter().cloned().reduce(bay_then) {
        Some(run) => bay_refuted_by(what, run),
        None => bay_refuted(what),
    }
}
