//! The errors of this crate: [`TradeError`] for what is typed or stands on a sheet, [`FigureError`] for what a figure can't
//! be worked out from. Each message says what was being done, on what, and what the person can do.

mod figure;

pub use figure::FigureError;

use thiserror::Error;

use crate::units::{Quantity, Unit};

/// Why a number, a unit, a table or a tool could not be taken.
///
/// A level or a torque that turns out badly is not an error: it is a result with its class and reason.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum TradeError {
    /// No digit, sign or letter was typed.
    #[error("Reading a number failed: nothing was typed. Type the number that the instrument shows.")]
    NumberEmpty,

    /// A character that can't stand in a number, or not at that place.
    #[error(
        "Reading the number \"{text}\" failed at \"{character}\". Use digits, one decimal comma or point, and a minus \
         sign in front if it is below zero."
    )]
    NumberCharacter {
        /// What was typed.
        text: String,
        /// The first character that does not fit.
        character: char,
    },

    /// More than one comma or point, so that thousands and decimals can't be told apart.
    #[error(
        "Reading the number \"{text}\" failed: it has more than one comma or point. Type it without separators for \
         thousands."
    )]
    NumberSeparators {
        /// What was typed.
        text: String,
    },

    /// A sign without digits, or a comma or point with nothing behind it.
    #[error("Reading the number \"{text}\" failed: a digit is missing at its end. Type the whole number.")]
    NumberUnfinished {
        /// What was typed.
        text: String,
    },

    /// So many digits that the number has no finite value.
    #[error(
        "Reading the number \"{text}\" failed: it is too large. Type the number that the instrument shows."
    )]
    NumberTooLarge {
        /// What was typed.
        text: String,
    },

    /// A unit that is not among those in use.
    #[error("Reading the unit \"{text}\" failed: it is not known here. Choose one of: {known}.")]
    UnitUnknown {
        /// What was typed.
        text: String,
        /// The symbols that are known, separated by commas.
        known: String,
    },

    /// A unit of one quantity where another is asked for, such as millimetres for a temperature.
    #[error(
        "Taking a value in {unit} as {wanted} failed: {unit} is a unit of {found}. Type a value in a unit of {wanted}."
    )]
    QuantityDiffers {
        /// The unit of the value.
        unit: Unit,
        /// What that unit measures.
        found: Quantity,
        /// What is asked for.
        wanted: Quantity,
    },

    /// A value that is not finite, or so large that no instrument shows it.
    #[error(
        "Taking {value} {unit} as a measurement failed: no instrument shows that. Read the instrument and type it again."
    )]
    NotMeasurable {
        /// The value, which may be infinite or not a number.
        value: f64,
        /// Its unit.
        unit: Unit,
    },

    /// A value that can't exist, such as a temperature below absolute zero.
    #[error(
        "Taking {value} {unit} as a {quantity} failed: it lies below {lowest}. Check the sign and the unit, \
         and type it again."
    )]
    BelowLowest {
        /// The value.
        value: f64,
        /// Its unit.
        unit: Unit,
        /// What it measures.
        quantity: Quantity,
        /// The lowest value that can exist, in words.
        lowest: &'static str,
    },

    /// A table with fewer than two points.
    #[error("Reading a table failed: it has {points} point(s). Enter at least two.")]
    TableTooShort {
        /// How many points it has.
        points: usize,
    },

    /// A table with a value that is infinite, not a number, or too large to reckon with.
    #[error(
        "Reading a table failed: point {position} is not a number to reckon with. Enter that point again."
    )]
    TableNotFinite {
        /// The place of the point, counted from 1.
        position: usize,
    },

    /// A table whose points repeat or go back.
    #[error(
        "Reading a table failed: {next} stands after {previous}. Enter the points in rising order, each only once."
    )]
    TableNotRising {
        /// The point that comes first.
        previous: f64,
        /// The point after it, which is not greater.
        next: f64,
    },

    /// A value that the table does not reach.
    #[error(
        "Looking up {value} in a table failed: the table reaches from {from} to {to} and is not guessed beyond. Bring \
         the reading inside, or use a sheet that reaches further."
    )]
    OutsideTable {
        /// The value looked up.
        value: f64,
        /// Where the table begins.
        from: f64,
        /// Where the table ends.
        to: f64,
    },

    /// A level chart whose marks are not in order, or lie below the end of the stick.
    #[error(
        "Reading the level chart failed at {celsius} °C: low mark {low} mm, high mark {high} mm. The low mark must be \
         at least 0 mm and below the high mark: correct the sheet."
    )]
    ChartMarks {
        /// Temperature of the point.
        celsius: f64,
        /// Low mark in millimetres.
        low: f64,
        /// High mark in millimetres.
        high: f64,
    },

    /// A trace below the end of the stick.
    #[error(
        "Judging the level failed: a trace at {millimetres} mm lies below the end of the stick. Read it again."
    )]
    StickBelowEnd {
        /// The reading in millimetres.
        millimetres: f64,
    },

    /// A difference allowed between readings that is negative.
    #[error(
        "Judging the level failed: readings can't agree within {millimetres} mm. Give 0 mm or more on the sheet."
    )]
    AgreementNegative {
        /// The difference allowed, in millimetres.
        millimetres: f64,
    },

    /// A tolerance or deviation that is not between 0 and 100 percent.
    #[error(
        "Taking {percent} % as a tolerance failed: it must be above 0 % and below 100 %. Correct the sheet."
    )]
    PercentRange {
        /// The value in percent.
        percent: f64,
    },

    /// A target torque of zero or less.
    #[error(
        "Taking {newton_metres} N·m as a target torque failed: it must be above 0 N·m. Correct the sheet."
    )]
    TargetNotPositive {
        /// The target in newton metres.
        newton_metres: f64,
    },

    /// A torque specification without a stage.
    #[error(
        "Reading a torque specification failed: it has no stage. Enter at least one target torque on the sheet."
    )]
    NoStage,

    /// A tool whose range is empty or begins at zero or below.
    #[error(
        "Taking a torque tool with the range {lowest} to {highest} N·m failed: the range must begin above 0 N·m and \
         end above its beginning. Correct the tool."
    )]
    ToolRange {
        /// Lowest value of the range in newton metres.
        lowest: f64,
        /// Highest value of the range in newton metres.
        highest: f64,
    },
}
