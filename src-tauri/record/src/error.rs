//! What can go wrong when a record is made.

use std::fmt;

use panside_messages::{Arg, Message};

use crate::messages::*;

/// Why a record or a part of it can't be made.
#[derive(Debug, thiserror::Error)]
pub enum RecordError {
    /// The document could not be written as JSON.
    Unwritable {
        /// The repair order.
        repair_order: String,
        /// What the JSON writer said.
        source: serde_json::Error,
    },
    /// A kept proof that can't be read.
    Proof {
        /// Hash of the checklist.
        checklist: String,
        /// What the JSON reader said.
        source: serde_json::Error,
    },
    /// The pages could not be written.
    Pdf {
        /// The repair order.
        repair_order: String,
        /// What the PDF writer said, or a message.
        why: Arg,
    },
}

impl RecordError {
    /// What to say to a person.
    #[must_use]
    pub fn message(&self) -> Message {
        match self {
            RecordError::Unwritable { repair_order, .. } => record_unwritable(repair_order),
            RecordError::Proof { checklist, .. } => record_proof(checklist),
            RecordError::Pdf { repair_order, why } => record_pdf(repair_order, why.clone()),
        }
    }
}

impl fmt::Display for RecordError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.message().english())
    }
}
