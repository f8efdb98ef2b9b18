//! The record of a job.

mod pages;

use std::collections::BTreeMap;

use panside_journal::{Hash, JobId};
pub use panside_record::Document;
pub use panside_record::measured::Photo;
pub use panside_record::steps::Standing;
use panside_record::{ProofSummary, RecordInputs};

use crate::{Bay, BayError};

impl Bay {
    /// The record of a job as it stands now.
    ///
    /// # Errors
    /// As [`Bay::job`]; [`BayError::Record`] when the kept proof cannot be read.
    pub fn record(&mut self, job: JobId) -> Result<Document, BayError> {
        let generated = self.clock.now();
        let open = self.refresh(job)?;
        let (head, checklist) =
            (open.head, open.job.start.as_ref().map(|(_, started)| started.checklist.hash));
        let proof = match checklist {
            Some(hash) => self.proof_summary(hash)?,
            None => None,
        };
        let inputs = RecordInputs {
            job,
            head: head.hash,
            events: head.seq,
            generated,
            proof,
            damaged: self.troubles(),
            captions: BTreeMap::new(),
        };
        let mut document = Document::of(&self.refresh(job)?.job, &inputs);
        self.speaker.fill_figures(&mut document.figures);
        Ok(document)
    }

    fn proof_summary(&self, checklist: Hash) -> Result<Option<ProofSummary>, BayError> {
        let kept = self.kept_proof(&checklist)?;
        Ok(kept.map(|proof| ProofSummary::read(&proof, checklist)).transpose()?)
    }
}
