//! Panside's checklists: the format, the [`Machine`] it compiles to, and the proof that no allowed order of
//! steps reaches a danger. Pure: no I/O, no clock, no chance.
//!
//! - [`mod@format`]: what an author writes
//! - [`predicate`]: the language of `needs` and its kin
//! - [`parts`]: a file that uses shared parts into one that has them in place
//! - [`load`]: a file into a [`Procedure`], or every mistake in it
//! - [`texts`]: what people read of a checklist, in another language
//! - [`machine`]: what it means; [`Machine::step`] is the only thing that changes rule state
//! - [`plan`]: the order of the work with the least expected time, over the same `step`
//! - [`proof`]: the exhaustive search over the same `step`

pub mod format;
pub mod load;
pub mod machine;
mod message;
pub mod parts;
pub mod plan;
pub mod predicate;
pub mod proof;
mod said;
#[cfg(test)]
mod shipped;
pub mod texts;

pub use load::{NoOutcome, Problem, Problems, Procedure};
pub use machine::{Action, Blocked, Machine, Shown, State};
pub use message::MESSAGES;
pub use parts::{Joined, join};
