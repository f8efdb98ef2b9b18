//! What was measured in a job, as drawings with their sentences.

use panside_job::figures::{self, Figure};
use panside_journal::JobId;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::record::ToRecord;
use crate::{Bay, BayError};

/// The figures of a job as a screen draws them.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct FiguresPage {
    /// The figures, in the order of the work.
    pub figures: Vec<Figure>,
}

impl Bay {
    /// Every figure that a job has come to, said.
    ///
    /// # Errors
    /// As [`Bay::to_record`].
    pub fn figures_page(&mut self, job: JobId) -> Result<FiguresPage, BayError> {
        Ok(self.to_record(job)?.figures_page())
    }
}

impl ToRecord {
    /// Every figure that the job has come to, said.
    #[must_use]
    pub fn figures_page(&self) -> FiguresPage {
        let mut figures = figures::figures(&self.job);
        figures.iter_mut().for_each(|figure| figure.each_message(&mut |message| self.speaker.fill(message)));
        FiguresPage { figures }
    }
}
