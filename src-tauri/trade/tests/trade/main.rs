//! Numbers of the trade against values that come from elsewhere, and properties that hold for any value.
//!
//! - `units`: conversions against pint, uom and NIST SP 811; spellings; what can't exist is refused; JSON.
//! - `money`: amounts as people type them, estimates against Python's decimal.
//! - `number`: numbers and measures as people type them.
//! - `interpolate`: tables against numpy, scipy and a published worked example.
//! - `level`: bands against numpy, classes at and beside the marks, everything that keeps a level unclear.
//! - `scale`: axes around what is drawn, at full steps.
//! - `torque`: tool rules of ISO 6789 (second-hand), tolerance limits, mixed-up units.
//! - `tightening`: adapters, guard bands, angle stages, bolts against published tables.
//! - `order`: bolt orders against published patterns.
//! - `session`: sessions of stick readings, and when the symptom may be judged.
//! - `fluid`: rise for each litre, top-up, refill, balance.
//! - `coil`, `code`, `vin`, `cooling`, `surface`, `labour`: each against published examples.
//! - `spoken`: every working in another language.
//! - `parsers`: whatever is typed, nothing panics.
//!
//! Libraries that nobody here wrote are asked in the workspace's `tests/figures`.
//!
//! A value that is named as printed by a program was printed by that version of it, run apart from this code.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on says where")]

mod code;
mod coil;
mod cooling;
mod fluid;
mod interpolate;
mod labour;
mod level;
mod money;
mod number;
mod order;
mod parsers;
mod scale;
mod session;
mod spoken;
mod surface;
mod tightening;
mod torque;
mod units;
mod vin;

use panside_trade::{FigureError, TradeError};

/// What every test gives back, so that a failing set-up is told as such.
type Outcome = Result<(), TradeError>;

/// The same for figures.
type Worked = Result<(), FigureError>;

/// Whether two numbers are the same to 12 digits; near zero, to 12 places.
fn same(found: f64, expected: f64) -> bool {
    (found - expected).abs() <= 1e-12 * expected.abs().max(1.0)
}

/// Whether two numbers differ by no more than so much of the second.
fn near(found: f64, expected: f64, part: f64) -> bool {
    (found - expected).abs() <= part * expected.abs()
}
