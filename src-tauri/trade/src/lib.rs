//! Numbers of the trade: pure functions, no I/O, no clock.
//!
//! Two figures are worked out here: the fluid level on its chart ([`level`]) and the torque that was clicked
//! ([`torque`]). Below them stand what both need: units ([`units`], [`measure`]), numbers as people type them
//! ([`number`]) and a table that is never read outside its ends ([`interpolate`]).
//!
//! Every value is finite, carries its unit in its type, and comes with what it was made from, so that a record can
//! show how a judgement came about. What can't be told is said to be unclear; nothing is clamped or guessed.

mod error;
pub mod interpolate;
pub mod level;
pub mod measure;
pub mod number;
pub mod torque;
pub mod units;

pub use error::TradeError;
