//! What a screen of one job needs, in one answer.

use std::collections::BTreeMap;

use panside_job::{Actor, JobView, Refusal};
use panside_journal::{Head, JobId, PersonId, RequestId};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::enter::{Answer, Command};
use crate::{Bay, BayError};

/// A job as a screen shows it.
#[derive(Debug, Clone, Serialize, Deserialize, TS)]
pub struct JobPage {
    /// The job.
    pub job: JobId,
    /// The newest event: to be named by the next command.
    pub head: Head,
    /// Minutes that the shop's wall clock is ahead of UTC, as the job took it down.
    pub utc_offset_min: i32,
    /// The job.
    pub view: JobView,
    /// What was typed and not yet done, by key.
    pub drafts: BTreeMap<String, String>,
}

/// What a screen gets for a command.
#[derive(Debug, Clone, Serialize, Deserialize, TS)]
pub struct Reply {
    /// Why the rules refuse it, said. Nothing: it is on disk.
    pub refused: Option<Refusal>,
    /// It is refused only until this person has given their PIN.
    pub pin_of: Option<PersonId>,
    /// The job after it.
    pub page: JobPage,
}

impl Bay {
    /// All that a screen of one job needs.
    ///
    /// # Errors
    /// As [`Bay::job`].
    pub fn page(&mut self, job: JobId) -> Result<JobPage, BayError> {
        let view = self.view(job)?;
        let drafts = self.drafts(job)?;
        let open = self.refresh(job)?;
        Ok(JobPage { job, head: open.head, utc_offset_min: open.job.utc_offset_min(), view, drafts })
    }

    /// Carries out a command and answers the job after it, with a refusal as sentences.
    ///
    /// # Errors
    /// As [`Bay::enter`].
    pub fn carry_out(
        &mut self,
        job: JobId,
        expected: Head,
        request: RequestId,
        actor: &Actor,
        command: &Command,
    ) -> Result<Reply, BayError> {
        let refused = match self.enter(job, expected, request, actor, command)? {
            Answer::Entered { .. } => None,
            Answer::Refused(mut refusal) => {
                refusal.each_message(&mut |message| self.speaker.fill(message));
                Some(refusal)
            }
        };
        let pin_of = refused.as_ref().and_then(Refusal::pin_of);
        Ok(Reply { refused, pin_of, page: self.page(job)? })
    }
}
