//! The finished record: the document a service writer gets. Pure: a job in, a document out; no disk, no clock.
//!
//! - [`document`]: [`Document::of`] puts the whole record together
//! - [`steps`], [`signs`], [`items`], [`measured`], [`day`], [`time`]: its parts
//! - [`money`]: estimates, and what the customer agreed to
//! - [`missing`]: what the job lacks, by one rule for every form of the record
//! - [`Document::to_json`], [`Document::to_text`] and [`Document::to_pdf`]: three forms of the same document
//!
//! - [`Document::to_customer_pdf`] and [`Document::to_customer_text`]: the customer's copy
//! - [`Document::to_csv`]: parts, labor and measurements for pasting
//!
//! What is said comes from `en/record.ftl` of `panside-messages`, by the speaker that the caller passes in;
//! [`MESSAGES`] lists it. In the document what was typed stays the text that was typed; the forms for reading show it with the
//! language's decimal sign. The document holds no floats, and equal input gives equal bytes.

pub mod account;
pub mod bill;
pub mod by;
mod csv;
pub mod day;
pub mod departures;
pub mod document;
mod error;
mod inputs;
pub mod items;
mod limits;
pub mod measured;
mod messages;
pub mod missing;
pub mod money;
mod pdf;
mod say;
pub mod signs;
mod source;
mod speak;
pub mod steps;
mod text;
pub mod time;
mod turned_up;
mod value;
mod worked;

pub use by::By;
pub use csv::Csv;
pub use document::{Document, RECORD_FORMAT};
pub use error::RecordError;
pub use inputs::{ProofSummary, ProofVerdict, RecordInputs};
pub use limits::Limit;
pub use messages::MESSAGES;
pub use missing::{Missing, MissingKind};
pub use pdf::{Lacks, Paper, PdfInputs, PdfPhoto};
pub use say::Extent;
pub use source::Standing;
