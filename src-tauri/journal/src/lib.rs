//! The journal's event: its envelope, its canonical bytes, its hash, and the two chains it stands in.
//!
//! An [`Event`] is a [`Header`] and a body. The body is JSON text kept byte for byte as it was first written;
//! this crate never rewrites it and doesn't know what it means. The header names the body by hash, the event
//! before it on the device and the event before it about the same subject (a job, or the shop), so that a device's whole
//! journal and one job's extract can each be verified without anything else.
//!
//! What a chain shows: an event changed, taken out, put in or moved. What it does **not** show: a tail cut off,
//! or a whole chain made anew by someone who has the program. For these a head kept elsewhere is needed as a
//! witness; [`verify_device_chain`] and [`verify_subject_chain`] return the head to compare with it.
//!
//! Pure: no disk, no clock, no chance. Ids and times come in as arguments.

mod chain;
mod clock;
mod error;
mod event;
mod hash;
mod header;
mod ids;
mod message;
mod subject;

pub use chain::{Chain, Head, check_event, verify_device_chain, verify_subject_chain};
pub use clock::{Stamp, clock_jump};
pub use error::JournalError;
pub use event::{Draft, Event, Origin, Place, Request, seal};
pub use hash::Hash;
pub use header::{Format, Header};
pub use ids::{BootId, DeviceId, EpochId, EventId, JobId, PersonId, RequestId};
pub use message::MESSAGES;
pub use subject::Subject;
