//! The record of a job.

pub(crate) mod pages;

use std::collections::BTreeMap;
use std::sync::Arc;

use panside_job::Job;
use panside_journal::{Hash, Head, JobId, Stamp};
pub use panside_record::measured::Photo;
pub use panside_record::steps::Standing;
pub use panside_record::{Csv, Document, Extent, Paper};
use panside_record::{ProofSummary, RecordInputs};
use panside_store::Files;

pub use self::pages::Pages;
use crate::{Bay, BayError};
use panside_messages::Speaker;

/// A job as it stands, taken out of the store for its record and its figures, which are made while the store goes on.
#[derive(Debug)]
pub struct ToRecord {
    pub(crate) id: JobId,
    head: Head,
    now: Stamp,
    pub(crate) job: Arc<Job>,
    /// The kept proof of a checklist, as text.
    proof: Option<(Hash, String)>,
    /// What was found wrong with the store.
    troubles: Vec<String>,
    pub(crate) speaker: &'static Speaker,
    pub(crate) files: Files,
}

impl Bay {
    /// A job as it stands now, for its record and its figures.
    ///
    /// # Errors
    /// As [`Bay::job`].
    pub fn to_record(&mut self, id: JobId) -> Result<ToRecord, BayError> {
        let now = self.clock.now();
        let open = self.refresh(id)?;
        let (head, job) = (open.head, Arc::clone(&open.job));
        let checklist = job.start.as_ref().map(|(_, started)| started.checklist.hash);
        let proof = match checklist {
            Some(hash) => self.kept_proof(&hash, job.procedure.fit())?.map(|proof| (hash, proof)),
            None => None,
        };
        let (speaker, files) = (self.speaker, self.store.files());
        let troubles = self.troubles();
        Ok(ToRecord { id, head, now, job, proof, troubles, speaker, files })
    }

    /// The record of a job as it stands now.
    ///
    /// # Errors
    /// As [`Bay::to_record`] and [`ToRecord::record`].
    pub fn record(&mut self, job: JobId) -> Result<Document, BayError> {
        self.to_record(job)?.record()
    }
}

impl ToRecord {
    /// The record.
    ///
    /// # Errors
    /// [`BayError::Record`] when the kept proof cannot be read.
    pub fn record(&self) -> Result<Document, BayError> {
        let proof = self.proof.as_ref().map(|(checklist, proof)| ProofSummary::read(proof, *checklist));
        let inputs = RecordInputs {
            job: self.id,
            head: self.head.hash,
            events: self.head.seq,
            generated: self.now,
            proof: proof.transpose()?,
            damaged: self.troubles.clone(),
            captions: BTreeMap::new(),
        };
        Ok(Document::of(&self.job, &inputs, self.speaker))
    }
}
