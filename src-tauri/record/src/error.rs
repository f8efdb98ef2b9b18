//! What can go wrong when a record is made.

/// Why a record or a part of it can't be made.
#[derive(Debug, thiserror::Error)]
pub enum RecordError {
    /// The document could not be written as JSON.
    #[error(
        "Writing the record of {repair_order} as JSON failed. Make it again; if that fails too, report it."
    )]
    Unwritable {
        /// The repair order.
        repair_order: String,
        /// What the JSON writer said.
        source: serde_json::Error,
    },
    /// A kept proof that can't be read.
    #[error("Reading the kept proof of the checklist {checklist} failed. Prove the checklist again.")]
    Proof {
        /// Hash of the checklist.
        checklist: String,
        /// What the JSON reader said.
        source: serde_json::Error,
    },
    /// The pages could not be written.
    #[error(
        "Writing the record of {repair_order} as PDF failed: {why}. Take it as JSON or as text, which are complete, and \
         report it."
    )]
    Pdf {
        /// The repair order.
        repair_order: String,
        /// What the PDF writer said.
        why: String,
    },
}
