//! The use cases: start a job, carry out a command, add a photo, read the record. The one API of window, command line and
//! tests. It holds no rule: `panside-job` decides, `panside-store` keeps.
//!
//! - [`Bay`]: an open store with its jobs
//! - [`prove`], [`start`]: a checklist is proved before a job is started with it
//! - [`checklists`]: those of the shop, taken in, proved and adopted
//! - `texts`: the translation that a job is walked with
//! - [`enter`]: one command in, events on disk, the new view out
//! - [`people`], [`setup`], [`shelf`], [`sheets`], [`values`]: who works here, tools, and what a job can be started with
//! - `shop`: the shop, folded from its events and changed by one more
//! - [`figures`]: what was measured, drawn
//! - [`pins`]: who a person is at a hold point
//! - [`photos`], [`record`]: photos in, the record out
//! - [`outside`]: files that a person names, read within bounds and written whole
//! - [`way_back`]: backups, and what is done when the store is damaged
//! - [`clock`]: the device's clocks
#![allow(
    clippy::disallowed_methods,
    reason = "the edge: clocks, ids and chance come in here and nowhere below"
)]

pub mod checklists;
pub mod clock;
pub mod closing;
pub mod enter;
mod error;
pub mod figures;
mod jobs;
mod message;
pub mod page;
pub mod people;
pub mod photos;
pub mod pins;
pub mod plan;
pub mod prove;
pub mod record;
pub mod setup;
pub mod sheets;
pub mod shelf;
mod shop;
pub mod start;
mod texts;
pub mod values;
pub mod way_back;

pub use error::BayError;
pub use jobs::{Bay, JobLine};
pub use message::MESSAGES;
pub use panside_messages::clean;
pub use panside_record::RecordError;
pub use panside_store::outside;
