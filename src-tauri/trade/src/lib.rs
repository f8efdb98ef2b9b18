//! Numbers of the trade: pure functions, no I/O, no clock.
//!
//! | figure | module |
//! |---|---|
//! | fluid level on its chart, from readings that count and agree | [`level`] |
//! | whether the symptom may be judged yet | [`diagnosis`] |
//! | first refill, top-up, rise for each litre | [`topup`], [`gain`] |
//! | drained against added at 15 °C, with its uncertainty | [`balance`], [`expansion`] |
//! | coil resistance at the limits' temperature, with the meter's error | [`coil`] |
//! | trouble codes by their structure | [`code`] |
//! | vehicle identification number | [`vin`] |
//! | torque: tolerance, tool, guard band, adapter, angle stage | [`torque`] |
//! | torque against thread and grade | [`bolt`] |
//! | order of a cover's bolts | [`order`] |
//! | cool-down and touch limit | [`cooldown`], [`touch`] |
//! | surface by infrared | [`surface`] |
//! | labour | [`labour`] |
//! | estimate: parts, labor and what may turn up, to the hundredth | [`estimate`], [`money`] |
//!
//! Below them stand what all need: units ([`units`], [`measure`]), numbers as people type them ([`number`]), points in
//! time ([`moment`]), a table that is never read outside its ends ([`interpolate`]), Student's t ([`student`]), the scale of an
//! axis ([`scale`]); what is said stands in [`message`].
//!
//! Every value is finite, carries its unit in its type, and every result comes with what it was made from; its
//! [`Worked::working`] says how it came about, step by step and with its [`source`]s, so that a record, a window and a
//! terminal show the same. What can't be told is said to be unclear; nothing is clamped or guessed.
//!
//! What can't be an input is a [`TradeError`] or a [`FigureError`]; what turns out badly, or stays unclear, is a result
//! with its class and reason. Times come in as `Moment`s of one clock; entries that go back are named. How each figure
//! was checked stands in `tests/README.md`.

pub mod balance;
pub mod bolt;
pub mod code;
pub mod coil;
pub mod cooldown;
pub mod diagnosis;
mod error;
pub mod estimate;
pub mod expansion;
pub mod gain;
pub mod interpolate;
pub mod labour;
pub mod level;
pub mod measure;
pub mod message;
pub mod moment;
pub mod money;
pub mod number;
pub mod order;
pub mod scale;
pub mod source;
pub mod student;
pub mod surface;
pub mod text;
pub mod topup;
pub mod torque;
pub mod touch;
pub mod units;
pub mod vin;
pub mod working;

pub use error::{FigureError, TradeError};
pub use message::MESSAGES;
pub use working::{Worked, Working};
