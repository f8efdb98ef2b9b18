//! A checklist is proved before a job can be started with it. A proof is kept by the checklist's hash and the
//! engine, and made once.

use std::sync::Arc;

use panside_journal::Hash;
use panside_procedure::Procedure;
use panside_procedure::proof::{self, Ask, ENGINE, Progress, Proof, Verdict};

use crate::{Bay, BayError};

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

impl Bay {
    /// Proves a checklist, or takes the proof that is kept for it.
    ///
    /// # Errors
    /// [`BayError::Checklist`] when it does not load, [`BayError::NotProved`] when it is refuted or the search did
    /// not come to its end.
    pub fn prove(
        &mut self,
        bytes: &[u8],
        ask: Ask,
        progress: &mut dyn FnMut(Progress),
    ) -> Result<Proved, BayError> {
        let procedure = Procedure::load(bytes).map_err(BayError::Checklist)?;
        let engine = engine(ask.strike, ask.observe);
        let hash = Hash::of(bytes);
        let proof = match self.store.proof(&hash, &engine)? {
            Some(kept) => kept,
            None => {
                let proof = proof::prove(&procedure, ask, progress);
                if proof.verdict != Verdict::Proved {
                    return Err(BayError::NotProved { id: procedure.checklist.id.clone(), why: why(&proof) });
                }
                let text = serde_json::to_string(&proof)?;
                self.store.put_proof(&hash, &engine, &text)?;
                text
            }
        };
        Ok(Proved { bytes: bytes.to_vec(), procedure: Arc::new(procedure), proof })
    }
}

impl Bay {
    /// The proof of a checklist that is kept: of several the one that claims most.
    pub(crate) fn kept_proof(&self, checklist: &Hash) -> Result<Option<String>, BayError> {
        for (strike, observe) in [(true, true), (true, false), (false, true), (false, false)] {
            if let Some(proof) = self.store.proof(checklist, &engine(strike, observe))? {
                return Ok(Some(proof));
            }
        }
        Ok(None)
    }
}

/// What was asked belongs to the name: a proof without strikes is not one with them.
fn engine(strike: bool, observe: bool) -> String {
    format!("{ENGINE} strike={strike} observe={observe}")
}

fn why(proof: &Proof) -> String {
    match proof.findings.first() {
        Some(finding) if finding.run.is_empty() => finding.what.clone(),
        Some(finding) => format!("{} The shortest way there: {}.", finding.what, finding.run.join(", then ")),
        None => {
            let states: usize = proof.searches.iter().map(|search| search.states.found).sum();
            format!("the search ran to {states} states and did not come to its end")
        }
    }
}
