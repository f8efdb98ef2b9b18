//! Why a figure can't be worked out from what was given.

use thiserror::Error;

use super::TradeError;
use crate::measure::{Angle, Density, Length, Resistance, Temperature, Volume};

/// Why a figure can't be worked out from what was given.
///
/// What a figure turns out to be, such as a level that is unclear or a coil that is open, is not an error: it is a
/// result with its class and reason.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum FigureError {
    /// A value that can't be taken.
    #[error(transparent)]
    Trade(#[from] TradeError),

    /// Times that go back.
    #[error(
        "Putting the times in order failed at entry {position}: it is older than the one before it. The clock was set \
         back, or the entries are mixed up: put the time right."
    )]
    ClockWentBack {
        /// The place of the entry, counted from 1.
        position: usize,
    },
    /// A time after now.
    #[error(
        "Taking the time of entry {position} failed: it lies after now. Put the clock or the time right."
    )]
    InTheFuture {
        /// The place of the entry, counted from 1.
        position: usize,
    },
    /// Two readings at one time.
    #[error(
        "Taking reading {position} failed: it has the time of the one before it. Put one of the times right."
    )]
    SameMoment {
        /// The place of the later one, counted from 1.
        position: usize,
    },
    /// No reading at all.
    #[error("Working it out failed: there is no reading. Take one.")]
    NoReading,

    /// A level that is unclear.
    #[error("Working out a volume failed: the level is unclear. Read it until the readings agree.")]
    LevelNotKnown,
    /// A rise for each litre of zero or less.
    #[error(
        "Taking {mm_per_litre} mm as the rise for each litre failed: it must be above 0. Look at the sheet, or at the \
         readings before and after."
    )]
    GainNotPositive {
        /// Millimetres for each litre.
        mm_per_litre: f64,
    },
    /// Nothing to learn from.
    #[error("Learning the rise for each litre failed: nothing was added yet. Enter what was poured in.")]
    NoAddition,
    /// An addition of nothing.
    #[error("Learning the rise for each litre failed: addition {position} is 0 L. Enter what was poured in.")]
    AdditionEmpty {
        /// Its place, counted from 1.
        position: usize,
    },
    /// A share that is not in percent.
    #[error("Taking {percent} % as the share to pour failed: it must be above 0 % and at most 100 %.")]
    ShareRange {
        /// The share in percent.
        percent: f64,
    },
    /// A largest pour of nothing.
    #[error("Splitting the top-up failed: the most to pour at once must be above 0 L.")]
    PourEmpty,
    /// A volume in too many pours.
    #[error(
        "Splitting the top-up failed: it would take {pours} pours. Allow more at once, or look at the figures."
    )]
    TooManyPours {
        /// How many.
        pours: f64,
    },
    /// Nothing left to pour.
    #[error(
        "Working out the first refill failed: {hold_back} to stay short by leaves nothing to pour. Look at it again."
    )]
    HoldBackTooLarge {
        /// What to stay short by.
        hold_back: Volume,
    },
    /// A density that no such oil has.
    #[error(
        "Taking {density} as the fluid's density failed: the table of lubricating oils stands for 800.9 to 1163.5 \
         kg/m³ at 15 °C. Look at the fluid's data sheet."
    )]
    DensityRange {
        /// The density.
        density: Density,
    },
    /// A fluid temperature outside the table.
    #[error(
        "Bringing a volume to another temperature failed: {temperature} is outside −40 °C to 95 °C, for which the \
         table stands. Measure the volume when the fluid has cooled."
    )]
    FluidTemperature {
        /// The temperature.
        temperature: Temperature,
    },
    /// One side of a balance is empty.
    #[error("Drawing the balance failed: it needs what was drained and what was added. Enter both.")]
    NothingMeasured,

    /// A temperature outside copper's straight line.
    #[error(
        "Bringing a resistance to another temperature failed: {temperature} is outside −50 °C to 200 °C."
    )]
    CopperRange {
        /// The temperature.
        temperature: Temperature,
    },
    /// Limits that are turned round.
    #[error(
        "Taking {lowest} to {highest} as limits failed: the lower one must be above 0 Ω and not above the upper one. \
         Correct the sheet."
    )]
    LimitsTurned {
        /// The lower limit.
        lowest: Resistance,
        /// The upper limit.
        highest: Resistance,
    },
    /// A meter's error that is not in percent.
    #[error("Taking {percent} % as the meter's error failed: it must be 0 % or more and below 100 %.")]
    MeterPercent {
        /// The error in percent.
        percent: f64,
    },
    /// Leads with more than was read with the coil.
    #[error(
        "Taking the leads off failed: they have {leads}, more than leads and coil together. Measure both again."
    )]
    LeadsAboveReading {
        /// The leads.
        leads: Resistance,
    },

    /// Text that is no trouble code.
    #[error(
        "Reading the code \"{text}\" failed: a code is P, C, B or U, a digit from 0 to 3 and three of 0 to 9 and A to \
         F, such as P0765. Read it again."
    )]
    CodeForm {
        /// What was typed.
        text: String,
    },
    /// What fills up an answer.
    #[error("Reading the code \"{text}\" failed: four zeros mean that there is no code. Leave it out.")]
    CodePadding {
        /// What was typed.
        text: String,
    },
    /// Bytes that are no answer.
    #[error("Reading the answer \"{bytes}\" failed: {why}. Ask the control unit again.")]
    CodeAnswer {
        /// The bytes.
        bytes: String,
        /// What is wrong.
        why: &'static str,
    },

    /// A tool without length.
    #[error(
        "Reckoning with an adapter failed: the tool's length of {length} must be above 0 mm. Measure grip to drive."
    )]
    ToolLength {
        /// The length.
        length: Length,
    },
    /// An adapter with a negative length.
    #[error(
        "Reckoning with an adapter failed: its length of {length} is below 0 mm. For one that points back give the \
         angle."
    )]
    AdapterLength {
        /// The length.
        length: Length,
    },
    /// An angle of more than half a turn.
    #[error("Reckoning with an adapter failed: its angle of {angle} must lie between −180° and 180°.")]
    AdapterAngle {
        /// The angle.
        angle: Angle,
    },
    /// A bolt at the grip.
    #[error(
        "Reckoning with an adapter failed: it points so far back that the bolt is at the grip. Take another one."
    )]
    AdapterReach,
    /// An angle stage that makes no sense.
    #[error(
        "Taking an angle stage of {target} ± {tolerance} failed: the angle must be above 0° and at most 720°, the \
         tolerance above 0° and below the angle. Correct the sheet."
    )]
    AngleStage {
        /// The target.
        target: Angle,
        /// The tolerance.
        tolerance: Angle,
    },
    /// An angle that no one turns.
    #[error("Taking {angle} as the angle turned failed: it must lie between 0° and 720°. Read it again.")]
    AngleTurned {
        /// The angle.
        angle: Angle,
    },
    /// A calibration interval that makes no sense.
    #[error(
        "Working out a calibration's last day failed: {months} months do not give one. Correct the tool."
    )]
    CalibrationMonths {
        /// The interval in months.
        months: u32,
    },
    /// Text that is no thread.
    #[error("Reading the thread \"{text}\" failed: write it as M6, M8x1 or M10x1.25.")]
    ThreadForm {
        /// What was typed.
        text: String,
    },
    /// A thread that is not reckoned with.
    #[error(
        "Taking a thread of {diameter} with a pitch of {pitch} failed: the diameter must lie between 3 mm and 16 mm, \
         the pitch above 0 mm and below a quarter of it."
    )]
    ThreadRange {
        /// Nominal diameter.
        diameter: Length,
        /// Pitch.
        pitch: Length,
    },
    /// Text that is no grade.
    #[error(
        "Reading the grade \"{text}\" failed: it is one of 8.8, 10.9 and 12.9, as it stands on the head."
    )]
    GradeForm {
        /// What was typed.
        text: String,
    },

    /// No bolt at all.
    #[error("Finding an order failed: there is no bolt. Enter where the bolts sit.")]
    NoBolts,
    /// Two bolts with one name.
    #[error("Finding an order failed: two bolts are called \"{id}\". Give each a name of its own.")]
    BoltTwice {
        /// The name.
        id: String,
    },
    /// Two bolts in one place.
    #[error(
        "Finding an order failed: the bolts \"{first}\" and \"{second}\" sit in one place. Correct one of them."
    )]
    BoltsInOnePlace {
        /// The one.
        first: String,
        /// The other.
        second: String,
    },
    /// A bolt that is none of the cover's.
    #[error("Finding the next bolt failed: there is no bolt \"{id}\". Take one of the cover's.")]
    BoltUnknown {
        /// Its name.
        id: String,
    },

    /// No contact.
    #[error("Finding a touch limit failed: the contact must last longer than 0 s.")]
    NoContact,
    /// A glove level that does not exist.
    #[error("Finding a touch limit failed: gloves have a contact heat level of 1 to 4, not {level}.")]
    GloveLevel {
        /// The level.
        level: u8,
    },
    /// An emissivity that no surface has.
    #[error(
        "Taking {lowest} to {highest} as an emissivity failed: it must be above 0 and at most 1, the lower one first."
    )]
    EmissivityRange {
        /// Its lowest value.
        lowest: f64,
        /// Its highest value.
        highest: f64,
    },
    /// A reading that no surface gives.
    #[error(
        "Working out a surface from {shows} failed: no surface between −50 °C and 1000 °C gives that reading with this \
         emissivity. Use a contact probe."
    )]
    Radiation {
        /// What the meter shows.
        shows: Temperature,
    },

    /// Clocked off without being on.
    #[error(
        "Adding up labour failed at entry {position}: it clocks off what was not clocked on. Put the entries right."
    )]
    NotClockedOn {
        /// The place of the entry, counted from 1.
        position: usize,
    },
    /// No reason where one is needed.
    #[error(
        "Adding up labour failed at entry {position}: waiting and unplanned work need a reason. Enter it."
    )]
    ReasonMissing {
        /// The place of the entry, counted from 1.
        position: usize,
    },
    /// More time than there is.
    #[error("Adding up labour failed: it comes to more time than can be counted. Put the times right.")]
    TooLong,
}
