//! What `panside-trade` refuses, as messages.

use panside_trade::TradeError;

use super::*;

/// The message for a number, unit, table or tool that could not be taken.
pub(crate) fn of_trade(error: &TradeError) -> Message {
    match error {
        TradeError::NumberEmpty => number_empty(),
        TradeError::NumberCharacter { text, character } => number_character(text, character.to_string()),
        TradeError::NumberSeparators { text } => number_separators(text),
        TradeError::NumberUnfinished { text } => number_unfinished(text),
        TradeError::NumberTooLarge { text } => number_too_large(text),
        TradeError::UnitUnknown { text, known } => unit_unknown(text, known),
        TradeError::QuantityDiffers { unit, found, wanted } => {
            unit_other_quantity(unit.symbol(), found.to_string(), wanted.to_string())
        }
        TradeError::NotMeasurable { value, unit } => value_not_measurable(with(*value, unit.symbol())),
        TradeError::BelowLowest { value, unit, quantity, .. } => {
            value_below_lowest(with(*value, unit.symbol()), quantity.to_string())
        }
        TradeError::TableTooShort { points } => sheet_table_short(*points),
        TradeError::TableNotFinite { position } => sheet_table_number(*position),
        TradeError::TableNotRising { previous, next } => sheet_table_order(figure(*previous), figure(*next)),
        TradeError::OutsideTable { value, from, to } => {
            sheet_table_reach(figure(*value), figure(*from), figure(*to))
        }
        TradeError::ChartMarks { celsius, low, high } => {
            sheet_marks(with(*celsius, "°C"), with(*low, "mm"), with(*high, "mm"))
        }
        TradeError::StickBelowEnd { millimetres } => stick_below_end(with(*millimetres, "mm")),
        TradeError::AgreementNegative { millimetres } => sheet_agreement(with(*millimetres, "mm")),
        TradeError::PercentRange { percent } => value_percent(figure(*percent)),
        TradeError::TargetNotPositive { newton_metres } => sheet_target(with(*newton_metres, "N·m")),
        TradeError::NoStage => sheet_no_stage(),
        TradeError::ToolRange { lowest, highest } => tool_range(with(*lowest, "N·m"), with(*highest, "N·m")),
    }
}

fn with(value: f64, unit: &str) -> String {
    format!("{} {unit}", figure(value))
}
