//! What `panside-trade` refuses, as messages.

use panside_trade::coil::COPPER_RANGE;
use panside_trade::measure::Measure;
use panside_trade::{FigureError, TradeError};

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

/// The message for a figure that can't be worked out from what was given.
pub(crate) fn of_figure(error: &FigureError) -> Message {
    match error {
        FigureError::Trade(error) => of_trade(error),
        FigureError::ClockWentBack { position } => clock_went_back(*position),
        FigureError::GainNotPositive { mm_per_litre } => gain_not_positive(with(*mm_per_litre, "mm/L")),
        FigureError::DensityRange { density } => fluid_density(Measure::from(*density)),
        FigureError::FluidTemperature { temperature } => fluid_temperature(Measure::from(*temperature)),
        FigureError::NothingMeasured => balance_nothing(),
        FigureError::CopperRange { temperature } => {
            let (from, to) = COPPER_RANGE;
            coil_temperature(Measure::from(*temperature), with(from, "°C"), with(to, "°C"))
        }
        FigureError::LimitsTurned { lowest, highest } => {
            coil_limits(Measure::from(*lowest), Measure::from(*highest))
        }
        FigureError::MeterPercent { percent } => meter_percent(figure(*percent)),
        FigureError::LeadsAboveReading { leads } => coil_leads(Measure::from(*leads)),
        FigureError::CodeForm { text } => code_form(text),
        FigureError::CodePadding { text } => code_padding(text),
        FigureError::ToolLength { length } => adapter_tool(Measure::from(*length)),
        FigureError::AdapterLength { length } => adapter_length(Measure::from(*length)),
        FigureError::AdapterAngle { angle } => adapter_angle(Measure::from(*angle)),
        FigureError::AdapterReach => adapter_reach(),
        FigureError::AngleStage { target, tolerance } => {
            sheet_angle(Measure::from(*target), Measure::from(*tolerance))
        }
        FigureError::AngleTurned { angle } => torque_angle_turned(Measure::from(*angle)),
        FigureError::EmissivityRange { lowest, highest } => {
            emissivity_range(figure(*lowest), figure(*highest))
        }
        FigureError::BoltsInOnePlace { first, second } => sheet_bolt_place(first, second),
        FigureError::Radiation { shows } => infrared_none(Measure::from(*shows)),
        // No entry asks for these figures. Their own sentences say what to do, in English only.
        FigureError::InTheFuture { .. }
        | FigureError::SameMoment { .. }
        | FigureError::NoReading
        | FigureError::LevelNotKnown
        | FigureError::NoAddition
        | FigureError::AdditionEmpty { .. }
        | FigureError::ShareRange { .. }
        | FigureError::PourEmpty
        | FigureError::TooManyPours { .. }
        | FigureError::HoldBackTooLarge { .. }
        | FigureError::CodeAnswer { .. }
        | FigureError::CalibrationMonths { .. }
        | FigureError::ThreadForm { .. }
        | FigureError::ThreadRange { .. }
        | FigureError::GradeForm { .. }
        | FigureError::NoBolts
        | FigureError::BoltTwice { .. }
        | FigureError::BoltUnknown { .. }
        | FigureError::NoContact
        | FigureError::GloveLevel { .. }
        | FigureError::NotClockedOn { .. }
        | FigureError::ReasonMissing { .. }
        | FigureError::TooLong => figure_not_told(error.to_string()),
    }
}

fn with(value: f64, unit: &str) -> String {
    format!("{} {unit}", figure(value))
}
