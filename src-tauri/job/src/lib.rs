//! What happened on one job: events, classify, decide, fold, views. Pure: no I/O, no clock, no chance.
//!
//! - [`event`]: what can happen, and the form in which the journal keeps it
//! - [`value`], [`entry`]: what is entered at each kind of entry, and which class it has
//! - [`sheet`]: a spec sheet's values with the types of the trade
//! - [`job`], [`tally`]: one job, folded from its events
//! - [`turned_up`]: what its checklist did not foresee: findings, supplements, pieces that it does not know
//! - [`tool`]: a torque tool while it is typed, and what its certificate is worth today
//! - [`people`]: who is known, in the shop and in a job
//! - [`command`], [`decide()`]: what a person asks for, and the events or the refusal that answers it
//! - [`view`]: all that a screen shows of a job, so that no screen holds a rule
//! - [`figures`]: what was measured as drawings: axes, bands, curves and readings, and the same in sentences
//! - [`planning`]: an open job as the planner takes it
//! - [`size`]: how much a person may type at once
//! - [`message`]: what is said to a person, as ids with arguments

mod change;
pub mod clock;
pub mod command;
pub mod decide;
pub mod entry;
pub mod error;
pub mod event;
pub mod field;
pub mod figures;
mod fold;
pub mod job;
pub mod message;
pub mod people;
pub mod planning;
#[cfg(test)]
mod properties;
pub mod sheet;
pub mod size;
pub mod start;
pub mod tally;
#[cfg(test)]
mod testing;
pub mod tool;
pub mod turned_up;
mod units;
pub mod value;
pub mod view;

pub use command::{Actor, Command, Refusal};
pub use decide::{decide, due};
pub use error::JobError;
pub use event::Event;
pub use job::{Happened, Job, Mark};
pub use message::{Arg, MESSAGES, Message};
pub use people::{Names, People, Roster};
pub use sheet::Specs;
pub use start::{Intake, start};
pub use value::{EntryValue, Signature, SignedPin};
pub use view::{JobView, Preview, preview, view};
