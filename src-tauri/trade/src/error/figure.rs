//! Why a figure can't be worked out from what was given.

use std::fmt;

use panside_messages::Message;
use thiserror::Error;

use super::{TradeError, with};
use crate::code::AnswerWrong;
use crate::coil::COPPER_RANGE;
use crate::measure::{Angle, Density, Length, Measure, Resistance, Temperature, Volume};
use crate::message::*;
use crate::text::figure;

/// Why a figure can't be worked out from what was given.
///
/// What a figure turns out to be, such as a level that is unclear or a coil that is open, is not an error: it is a
/// result with its class and reason.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum FigureError {
    /// A value that can't be taken.
    Trade(#[from] TradeError),

    /// Times that go back.
    ClockWentBack {
        /// The place of the entry, counted from 1.
        position: usize,
    },
    /// A time after now.
    InTheFuture {
        /// The place of the entry, counted from 1.
        position: usize,
    },
    /// Two readings at one time.
    SameMoment {
        /// The place of the later one, counted from 1.
        position: usize,
    },
    /// No reading at all.
    NoReading,

    /// A level that is unclear.
    LevelNotKnown,
    /// A rise for each litre of zero or less.
    GainNotPositive {
        /// Millimetres for each litre.
        mm_per_litre: f64,
    },
    /// Nothing to learn from.
    NoAddition,
    /// An addition of nothing.
    AdditionEmpty {
        /// Its place, counted from 1.
        position: usize,
    },
    /// A share that is not in percent.
    ShareRange {
        /// The share in percent.
        percent: f64,
    },
    /// A largest pour of nothing.
    PourEmpty,
    /// A volume in too many pours.
    TooManyPours {
        /// How many.
        pours: f64,
    },
    /// Nothing left to pour.
    HoldBackTooLarge {
        /// What to stay short by.
        hold_back: Volume,
    },
    /// A density that no such oil has.
    DensityRange {
        /// The density.
        density: Density,
    },
    /// A fluid temperature outside the table.
    FluidTemperature {
        /// The temperature.
        temperature: Temperature,
    },
    /// One side of a balance is empty.
    NothingMeasured,

    /// A temperature outside copper's straight line.
    CopperRange {
        /// The temperature.
        temperature: Temperature,
    },
    /// Limits that are turned round.
    LimitsTurned {
        /// The lower limit.
        lowest: Resistance,
        /// The upper limit.
        highest: Resistance,
    },
    /// A meter's error that is not in percent.
    MeterPercent {
        /// The error in percent.
        percent: f64,
    },
    /// Leads with more than was read with the coil.
    LeadsAboveReading {
        /// The leads.
        leads: Resistance,
    },

    /// Text that is no trouble code.
    CodeForm {
        /// What was typed.
        text: String,
    },
    /// What fills up an answer.
    CodePadding {
        /// What was typed.
        text: String,
    },
    /// Bytes that are no answer.
    CodeAnswer {
        /// The bytes.
        bytes: String,
        /// What is wrong.
        why: AnswerWrong,
    },

    /// A tool without length.
    ToolLength {
        /// The length.
        length: Length,
    },
    /// An adapter with a negative length.
    AdapterLength {
        /// The length.
        length: Length,
    },
    /// An angle of more than half a turn.
    AdapterAngle {
        /// The angle.
        angle: Angle,
    },
    /// A bolt at the grip.
    AdapterReach,
    /// An angle stage that makes no sense.
    AngleStage {
        /// The target.
        target: Angle,
        /// The tolerance.
        tolerance: Angle,
    },
    /// An angle that no one turns.
    AngleTurned {
        /// The angle.
        angle: Angle,
    },
    /// A calibration interval that makes no sense.
    CalibrationMonths {
        /// The interval in months.
        months: u32,
    },
    /// Text that is no thread.
    ThreadForm {
        /// What was typed.
        text: String,
    },
    /// A thread that is not reckoned with.
    ThreadRange {
        /// Nominal diameter.
        diameter: Length,
        /// Pitch.
        pitch: Length,
    },
    /// Text that is no grade.
    GradeForm {
        /// What was typed.
        text: String,
    },

    /// No bolt at all.
    NoBolts,
    /// Two bolts with one name.
    BoltTwice {
        /// The name.
        id: String,
    },
    /// Two bolts in one place.
    BoltsInOnePlace {
        /// The one.
        first: String,
        /// The other.
        second: String,
    },
    /// A bolt that is none of the cover's.
    BoltUnknown {
        /// Its name.
        id: String,
    },

    /// No contact.
    NoContact,
    /// A glove level that does not exist.
    GloveLevel {
        /// The level.
        level: u8,
    },
    /// An emissivity that no surface has.
    EmissivityRange {
        /// Its lowest value.
        lowest: f64,
        /// Its highest value.
        highest: f64,
    },
    /// A reading that no surface gives.
    Radiation {
        /// What the meter shows.
        shows: Temperature,
    },

    /// Clocked off without being on.
    NotClockedOn {
        /// The place of the entry, counted from 1.
        position: usize,
    },
    /// No reason where one is needed.
    ReasonMissing {
        /// The place of the entry, counted from 1.
        position: usize,
    },
    /// More time than there is.
    TooLong,
}

impl FigureError {
    /// What to say to a person.
    #[must_use]
    pub fn message(&self) -> Message {
        match self {
            FigureError::Trade(error) => error.message(),
            FigureError::ClockWentBack { position } => trade_clock_went_back(*position),
            FigureError::InTheFuture { position } => trade_in_the_future(*position),
            FigureError::SameMoment { position } => trade_same_moment(*position),
            FigureError::NoReading => trade_no_reading(),
            FigureError::LevelNotKnown => trade_level_not_known(),
            FigureError::GainNotPositive { mm_per_litre } => {
                trade_gain_not_positive(with(*mm_per_litre, "mm/L"))
            }
            FigureError::NoAddition => trade_no_addition(),
            FigureError::AdditionEmpty { position } => trade_addition_empty(*position),
            FigureError::ShareRange { percent } => trade_share_range(figure(*percent)),
            FigureError::PourEmpty => trade_pour_empty(),
            FigureError::TooManyPours { pours } => trade_too_many_pours(figure(*pours)),
            FigureError::HoldBackTooLarge { hold_back } => trade_hold_back_too_large(hold_back.to_string()),
            FigureError::DensityRange { density } => trade_density_range(Measure::from(*density)),
            FigureError::FluidTemperature { temperature } => {
                trade_fluid_temperature(Measure::from(*temperature))
            }
            FigureError::NothingMeasured => trade_nothing_measured(),
            FigureError::CopperRange { temperature } => {
                let (from, to) = COPPER_RANGE;
                trade_copper_range(Measure::from(*temperature), with(from, "°C"), with(to, "°C"))
            }
            FigureError::LimitsTurned { lowest, highest } => {
                trade_limits_turned(Measure::from(*lowest), Measure::from(*highest))
            }
            FigureError::MeterPercent { percent } => trade_meter_percent(figure(*percent)),
            FigureError::LeadsAboveReading { leads } => trade_leads_above_reading(Measure::from(*leads)),
            FigureError::CodeForm { text } => trade_code_form(text),
            FigureError::CodePadding { text } => trade_code_padding(text),
            FigureError::CodeAnswer { bytes, why } => trade_code_answer(bytes, why.message()),
            FigureError::ToolLength { length } => trade_tool_length(Measure::from(*length)),
            FigureError::AdapterLength { length } => trade_adapter_length(Measure::from(*length)),
            FigureError::AdapterAngle { angle } => trade_adapter_angle(Measure::from(*angle)),
            FigureError::AdapterReach => trade_adapter_reach(),
            FigureError::AngleStage { target, tolerance } => {
                trade_angle_stage(Measure::from(*target), Measure::from(*tolerance))
            }
            FigureError::AngleTurned { angle } => trade_angle_turned(Measure::from(*angle)),
            FigureError::CalibrationMonths { months } => trade_calibration_months(*months),
            FigureError::ThreadForm { text } => trade_thread_form(text),
            FigureError::ThreadRange { diameter, pitch } => {
                trade_thread_range(diameter.to_string(), pitch.to_string())
            }
            FigureError::GradeForm { text } => trade_grade_form(text),
            FigureError::NoBolts => trade_no_bolts(),
            FigureError::BoltTwice { id } => trade_bolt_twice(id),
            FigureError::BoltsInOnePlace { first, second } => trade_bolts_in_one_place(first, second),
            FigureError::BoltUnknown { id } => trade_bolt_unknown(id),
            FigureError::NoContact => trade_no_contact(),
            FigureError::GloveLevel { level } => trade_glove_level(level.to_string()),
            FigureError::EmissivityRange { lowest, highest } => {
                trade_emissivity_range(figure(*lowest), figure(*highest))
            }
            FigureError::Radiation { shows } => trade_radiation(Measure::from(*shows)),
            FigureError::NotClockedOn { position } => trade_not_clocked_on(*position),
            FigureError::ReasonMissing { position } => trade_reason_missing(*position),
            FigureError::TooLong => trade_too_long(),
        }
    }
}

impl fmt::Display for FigureError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.message().english())
    }
}
