//! What turns up on a job outside of what its checklist foresaw.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// What has to be done about something that was found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum Urgency {
    /// It must be dealt with in this job.
    Now,
    /// It is recommended.
    Soon,
    /// The customer is told.
    Tell,
}

impl Urgency {
    /// What a message chooses its words by.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Urgency::Now => "now",
            Urgency::Soon => "soon",
            Urgency::Tell => "tell",
        }
    }
}
