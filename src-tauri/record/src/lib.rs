//! The finished record: the document a service writer gets. Pure: a job in, a document out; no disk, no clock.
//!
//! - [`document`]: [`Document::of`] puts the whole record together
//! - [`steps`], [`signs`], [`items`], [`measured`], [`day`], [`time`]: its parts
//! - [`missing`]: what the job lacks, by one rule for every form of the record
//! - [`Document::to_json`], [`Document::to_text`] and [`Document::to_pdf`]: three forms of the same document
//!
//! What was typed stays the text that was typed. The document holds no floats, and equal input gives equal bytes.

pub mod account;
pub mod by;
pub mod day;
pub mod departures;
pub mod document;
mod error;
mod inputs;
pub mod items;
mod limits;
pub mod measured;
mod message;
pub mod missing;
mod pdf;
mod say;
pub mod signs;
mod source;
pub mod steps;
mod text;
pub mod time;
mod value;
mod worked;

pub use by::By;
pub use document::{COME_FIRST, DEMO_MARK, Document, RECORD_FORMAT};
pub use error::RecordError;
pub use inputs::{ProofSummary, ProofVerdict, RecordInputs};
pub use limits::Limit;
pub use message::MESSAGES;
pub use missing::{Missing, MissingKind};
pub use pdf::{PdfInputs, PdfPhoto};
pub use source::Standing;
