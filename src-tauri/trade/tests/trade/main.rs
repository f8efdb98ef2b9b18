//! Numbers of the trade against values that come from elsewhere, and properties that hold for any value.
//!
//! - `units`: conversions against pint, uom and NIST SP 811; spellings; what can't exist is refused; JSON.
//! - `number`: numbers and measures as people type them.
//! - `interpolate`: tables against numpy, scipy and a published worked example.
//! - `level`: bands against numpy, classes at and beside the marks, everything that keeps a level unclear.
//! - `torque`: tool rules of ISO 6789 (second-hand), tolerance limits, mixed-up units.
//!
//! A value that is named as printed by a program was printed by that version of it, run apart from this code.

mod interpolate;
mod level;
mod number;
mod torque;
mod units;

use panside_trade::TradeError;

/// What every test gives back, so that a failing set-up is told as such.
type Outcome = Result<(), TradeError>;

/// Whether two numbers are the same to 12 digits; near zero, to 12 places.
fn same(found: f64, expected: f64) -> bool {
    (found - expected).abs() <= 1e-12 * expected.abs().max(1.0)
}
