//! What can be wrong with the body of an event. A refusal is no error: see [`crate::Refusal`].

use std::fmt;

use panside_messages::Message;

use crate::message::*;

/// Why the body of an event cannot be written or read.
#[derive(Debug, thiserror::Error)]
pub enum JobError {
    /// The body could not be written as JSON.
    Unwritable {
        /// The kind of event.
        kind: &'static str,
        /// What the JSON writer said.
        source: serde_json::Error,
    },
    /// An event of a kind that this version does not know.
    KindUnknown {
        /// The kind.
        kind: String,
    },
    /// An event whose body has a newer form than this version knows.
    VersionUnknown {
        /// The kind of event.
        kind: &'static str,
        /// The version of its body.
        version: u32,
        /// The newest version that can be read.
        newest: u32,
    },
    /// A body that is not what its kind and version promise.
    Body {
        /// The kind of event.
        kind: &'static str,
        /// The version of its body.
        version: u32,
        /// What the JSON reader said.
        source: serde_json::Error,
    },
}

impl JobError {
    /// What to say to a person.
    #[must_use]
    pub fn message(&self) -> Message {
        match self {
            JobError::Unwritable { kind, .. } => job_event_unwritable(*kind),
            JobError::KindUnknown { kind } => job_event_kind_unknown(kind),
            JobError::VersionUnknown { kind, version, newest } => {
                job_event_version_unknown(*kind, *version, *newest)
            }
            JobError::Body { kind, version, .. } => job_event_body(*kind, *version),
        }
    }
}

impl fmt::Display for JobError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.message().english())
    }
}
