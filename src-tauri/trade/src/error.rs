//! The errors of this crate: [`TradeError`] for what is typed or stands on a sheet, [`FigureError`] for what a figure can't
//! be worked out from. Each says what is wrong, and what the person can do.

mod figure;

pub use figure::FigureError;

use std::fmt;

use panside_messages::Message;
use thiserror::Error;

use crate::message::*;
use crate::money::Money;
use crate::text::figure;
use crate::units::{Lowest, Quantity, Unit};

/// Why a number, a unit, a table or a tool could not be taken.
///
/// A level or a torque that turns out badly is not an error: it is a result with its class and reason.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum TradeError {
    /// No digit, sign or letter was typed.
    NumberEmpty,

    /// A character that can't stand in a number, or not at that place.
    NumberCharacter {
        /// What was typed.
        text: String,
        /// The first character that does not fit.
        character: char,
    },

    /// More than one comma or point, so that thousands and decimals can't be told apart.
    NumberSeparators {
        /// What was typed.
        text: String,
    },

    /// A sign without digits, or a comma or point with nothing behind it.
    NumberUnfinished {
        /// What was typed.
        text: String,
    },

    /// So many digits that the number has no finite value.
    NumberTooLarge {
        /// What was typed.
        text: String,
    },

    /// No digit where an amount is asked for.
    AmountEmpty,

    /// An amount with a minus sign.
    AmountBelowZero {
        /// What was typed.
        text: String,
    },

    /// An amount with one comma or point and three digits behind it, which can part thousands or be the decimal sign.
    AmountAmbiguous {
        /// What was typed.
        text: String,
        /// What it is where the sign parts thousands.
        whole: String,
        /// What it is where the sign is the decimal sign.
        parts: String,
    },

    /// An amount with more places than a currency has.
    AmountPlaces {
        /// What was typed.
        text: String,
    },

    /// An amount that is larger than any on a repair order.
    AmountTooLarge {
        /// What was typed.
        text: String,
        /// The most that is taken.
        most: Money,
    },

    /// Amounts that add up to more than can be counted.
    SumTooLarge,

    /// No currency.
    CurrencyMissing {
        /// The codes that are known, separated by commas.
        known: String,
    },

    /// A currency that is not among those in use.
    CurrencyUnknown {
        /// What was typed.
        text: String,
        /// The codes that are known, separated by commas.
        known: String,
    },

    /// A unit that is not among those in use.
    UnitUnknown {
        /// What was typed.
        text: String,
        /// The symbols that are known, separated by commas.
        known: String,
    },

    /// A unit of one quantity where another is asked for, such as millimetres for a temperature.
    QuantityDiffers {
        /// The unit of the value.
        unit: Unit,
        /// What that unit measures.
        found: Quantity,
        /// What is asked for.
        wanted: Quantity,
    },

    /// A value that is not finite, or so large that no instrument shows it.
    NotMeasurable {
        /// The value, which may be infinite or not a number.
        value: f64,
        /// Its unit.
        unit: Unit,
    },

    /// A value that can't exist, such as a temperature below absolute zero.
    BelowLowest {
        /// The value.
        value: f64,
        /// Its unit.
        unit: Unit,
        /// What it measures.
        quantity: Quantity,
        /// The lowest value that can exist.
        lowest: Lowest,
    },

    /// A table with fewer than two points.
    TableTooShort {
        /// How many points it has.
        points: usize,
    },

    /// A table with a value that is infinite, not a number, or too large to reckon with.
    TableNotFinite {
        /// The place of the point, counted from 1.
        position: usize,
    },

    /// A table whose points repeat or go back.
    TableNotRising {
        /// The point that comes first.
        previous: f64,
        /// The point after it, which is not greater.
        next: f64,
    },

    /// A value that the table does not reach.
    OutsideTable {
        /// The value looked up.
        value: f64,
        /// Where the table begins.
        from: f64,
        /// Where the table ends.
        to: f64,
    },

    /// A level chart whose marks are not in order, or lie below the end of the stick.
    ChartMarks {
        /// Temperature of the point.
        celsius: f64,
        /// Low mark in millimetres.
        low: f64,
        /// High mark in millimetres.
        high: f64,
    },

    /// A trace below the end of the stick.
    StickBelowEnd {
        /// The reading in millimetres.
        millimetres: f64,
    },

    /// A difference allowed between readings that is negative.
    AgreementNegative {
        /// The difference allowed, in millimetres.
        millimetres: f64,
    },

    /// A tolerance or deviation that is not between 0 and 100 percent.
    PercentRange {
        /// The value in percent.
        percent: f64,
    },

    /// A target torque of zero or less.
    TargetNotPositive {
        /// The target in newton metres.
        newton_metres: f64,
    },

    /// A torque specification without a stage.
    NoStage,

    /// A tool whose range is empty or begins at zero or below.
    ToolRange {
        /// Lowest value of the range in newton metres.
        lowest: f64,
        /// Highest value of the range in newton metres.
        highest: f64,
    },
}

impl TradeError {
    /// What to say to a person.
    #[must_use]
    pub fn message(&self) -> Message {
        match self {
            TradeError::NumberEmpty => trade_number_empty(),
            TradeError::NumberCharacter { text, character } => {
                trade_number_character(text, character.to_string())
            }
            TradeError::NumberSeparators { text } => trade_number_separators(text),
            TradeError::NumberUnfinished { text } => trade_number_unfinished(text),
            TradeError::NumberTooLarge { text } => trade_number_too_large(text),
            TradeError::AmountEmpty => trade_amount_empty(),
            TradeError::AmountBelowZero { text } => trade_amount_below_zero(text),
            TradeError::AmountAmbiguous { text, whole, parts } => trade_amount_ambiguous(text, whole, parts),
            TradeError::AmountPlaces { text } => trade_amount_places(text),
            TradeError::AmountTooLarge { text, most } => trade_amount_too_large(text, most.to_string()),
            TradeError::SumTooLarge => trade_sum_too_large(),
            TradeError::CurrencyMissing { known } => trade_currency_missing(known),
            TradeError::CurrencyUnknown { text, known } => trade_currency_unknown(text, known),
            TradeError::UnitUnknown { text, known } => trade_unit_unknown(text, known),
            TradeError::QuantityDiffers { unit, found, wanted } => {
                trade_quantity_differs(unit.symbol(), found.message(), wanted.message())
            }
            TradeError::NotMeasurable { value, unit } => trade_not_measurable(format!("{value} {unit}")),
            TradeError::BelowLowest { value, unit, quantity, lowest } => {
                trade_below_lowest(format!("{value} {unit}"), quantity.message(), lowest.message())
            }
            TradeError::TableTooShort { points } => trade_table_too_short(*points),
            TradeError::TableNotFinite { position } => trade_table_not_finite(*position),
            TradeError::TableNotRising { previous, next } => {
                trade_table_not_rising(figure(*previous), figure(*next))
            }
            TradeError::OutsideTable { value, from, to } => {
                trade_outside_table(figure(*value), figure(*from), figure(*to))
            }
            TradeError::ChartMarks { celsius, low, high } => {
                trade_chart_marks(with(*celsius, "°C"), with(*low, "mm"), with(*high, "mm"))
            }
            TradeError::StickBelowEnd { millimetres } => trade_stick_below_end(with(*millimetres, "mm")),
            TradeError::AgreementNegative { millimetres } => {
                trade_agreement_negative(with(*millimetres, "mm"))
            }
            TradeError::PercentRange { percent } => trade_percent_range(figure(*percent)),
            TradeError::TargetNotPositive { newton_metres } => {
                trade_target_not_positive(with(*newton_metres, "N·m"))
            }
            TradeError::NoStage => trade_no_stage(),
            TradeError::ToolRange { lowest, highest } => {
                trade_tool_range(with(*lowest, "N·m"), with(*highest, "N·m"))
            }
        }
    }
}

impl fmt::Display for TradeError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.message().english())
    }
}

/// A value as it stands on a sheet or was typed, with its unit.
fn with(value: f64, unit: &str) -> String {
    format!("{} {unit}", figure(value))
}
