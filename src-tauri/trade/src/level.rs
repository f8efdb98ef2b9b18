//! The fluid level: stick readings against the band that the sheet's chart gives at their temperature.
//!
//! A level is judged from at least two readings that agree, each inside the chart. [`judge`] takes readings that count;
//! [`check_level`] looks first whether they do: level floor, idling, in park, ranges cycled, and taken since the engine
//! was started and since fluid was last added or drained.

mod session;
mod working;

use serde::{Deserialize, Serialize};

use crate::TradeError;
use crate::interpolate::{check, interpolate};
use crate::measure::{Length, Temperature};

pub use session::{LeftOut, LevelCheck, LevelConditions, LevelTimes, NotJudged, TimedReading, check_level};

/// Differences smaller than this are rounding of the reckoning, not something a stick shows.
const ROUNDING_MM: f64 = 1e-9;

/// One row of a chart: the two marks at one temperature.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LevelPoint {
    /// Fluid temperature.
    pub temperature: Temperature,
    /// Low mark, measured from the end of the stick; 0 mm or more.
    pub low: Length,
    /// High mark, measured from the end of the stick; above the low mark.
    pub high: Length,
}

/// The sheet's level chart: at least two rows, temperatures rising, low mark below high mark in each.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Vec<LevelPoint>", into = "Vec<LevelPoint>")]
pub struct LevelChart {
    points: Vec<LevelPoint>,
}

/// Where the level belongs at one temperature; both marks belong to it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Band {
    /// Low mark, measured from the end of the stick.
    pub low: Length,
    /// High mark, measured from the end of the stick.
    pub high: Length,
}

impl LevelChart {
    /// Takes the rows of a chart.
    ///
    /// # Errors
    /// [`TradeError::TableTooShort`], [`TradeError::TableNotRising`] (also for a temperature given twice) and
    /// [`TradeError::ChartMarks`].
    pub fn new(points: Vec<LevelPoint>) -> Result<Self, TradeError> {
        let chart = Self { points };
        check(&chart.table(|point| point.low))?;
        for point in &chart.points {
            let (low, high) = (point.low.millimetres(), point.high.millimetres());
            if low < 0.0 || low >= high {
                return Err(TradeError::ChartMarks { celsius: point.temperature.celsius(), low, high });
            }
        }
        Ok(chart)
    }

    /// The rows, by rising temperature.
    pub fn points(&self) -> &[LevelPoint] {
        &self.points
    }

    /// The band at a temperature, on straight lines between the rows.
    ///
    /// # Errors
    /// [`TradeError::OutsideTable`] (in °C) for a temperature that the chart does not reach.
    pub fn band_at(&self, temperature: Temperature) -> Result<Band, TradeError> {
        let mark_at = |mark: fn(&LevelPoint) -> Length| {
            Length::from_millimetres(interpolate(&self.table(mark), temperature.celsius())?)
        };
        Ok(Band { low: mark_at(|point| point.low)?, high: mark_at(|point| point.high)? })
    }

    /// One mark as a table of (°C, mm).
    fn table(&self, mark: fn(&LevelPoint) -> Length) -> Vec<(f64, f64)> {
        self.points.iter().map(|point| (point.temperature.celsius(), mark(point).millimetres())).collect()
    }
}

impl TryFrom<Vec<LevelPoint>> for LevelChart {
    type Error = TradeError;

    fn try_from(points: Vec<LevelPoint>) -> Result<Self, TradeError> {
        Self::new(points)
    }
}

impl From<LevelChart> for Vec<LevelPoint> {
    fn from(chart: LevelChart) -> Self {
        chart.points
    }
}

/// What the stick showed.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Stick {
    /// The wet edge, measured from the end of the stick; 0 mm or more.
    Trace(Length),
    /// The stick stayed dry.
    NoTrace {
        /// True once seating of the stick, temperature and idle were looked at again and it still stayed dry.
        confirmed: bool,
    },
}

/// One reading of the stick.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct LevelReading {
    /// Fluid temperature when the stick was read.
    pub temperature: Temperature,
    /// What the stick showed.
    pub stick: Stick,
}

/// Where the level stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LevelClass {
    /// Below the low mark.
    Below,
    /// Between the marks or on one of them.
    In,
    /// Above the high mark.
    Above,
    /// Not known from these readings.
    Unclear,
}

/// Why the level has its class.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LevelReason {
    /// The readings agree and have the same class.
    ReadingsAgree,
    /// The stick stayed dry each time and that was confirmed: below, by an unknown distance.
    NoTraceConfirmed,
    /// Unclear: fewer than two readings so far.
    TooFewReadings,
    /// Unclear: a temperature that the chart does not reach.
    OutsideChart,
    /// Unclear: the stick stayed dry. Look at its seating, at temperature and idle first, then read again.
    NoTrace,
    /// Unclear: the readings lie further apart than allowed, or only some of them show a trace.
    ReadingsDisagree,
    /// Unclear: the readings agree but lie on both sides of a mark.
    ClassesDiffer,
}

/// One of the two marks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Mark {
    /// The low mark.
    Low,
    /// The high mark.
    High,
}

/// How far a trace lies from the mark nearest to it; the class says on which side.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct MarkDistance {
    /// The nearest mark; the low one if both are equally near.
    pub mark: Mark,
    /// The distance, 0 mm or more.
    pub distance: Length,
}

/// A reading with all that was made of it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct JudgedReading {
    /// The reading as it was passed in.
    pub reading: LevelReading,
    /// Class of this reading alone; unclear outside the chart and for a dry stick that is not confirmed.
    pub class: LevelClass,
    /// The band at its temperature; none outside the chart.
    pub band: Option<Band>,
    /// Height of the trace above the low mark, negative below it; none without trace or band.
    pub above_low_mark: Option<Length>,
    /// Distance to the nearest mark; none without trace or band.
    pub nearest_mark: Option<MarkDistance>,
}

/// The level, and how it came about.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct LevelResult {
    /// Where the level stands.
    pub class: LevelClass,
    /// Why.
    pub reason: LevelReason,
    /// Every reading, in the order given.
    pub readings: Vec<JudgedReading>,
    /// Difference between the highest and the lowest `above_low_mark`; none unless every reading has one.
    pub spread: Option<Length>,
    /// The spread allowed; none where only their classes are compared.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub agreement: Option<Length>,
}

impl LevelResult {
    /// How far each reading lies below the place that `place` gives for its band, in millimetres; negative above it.
    /// Nothing for readings without a trace or a band.
    pub(crate) fn short_of(&self, place: fn(Band) -> f64) -> Vec<f64> {
        let short = |judged: &JudgedReading| match (judged.reading.stick, judged.band) {
            (Stick::Trace(trace), Some(band)) => Some(place(band) - trace.millimetres()),
            _ => None,
        };
        self.readings.iter().filter_map(short).collect()
    }
}

/// Judges the level from repeated readings. Readings at different temperatures are compared by their height above
/// the low mark at their own temperature; they agree if these differ by no more than `agreement`, the limit included.
/// Where it is not known how far they may differ, readings agree that lie on the same side of the marks.
///
/// # Errors
/// [`TradeError::StickBelowEnd`] for a negative trace and [`TradeError::AgreementNegative`]. All else that keeps the
/// level from being known is a result of the class [`LevelClass::Unclear`] with its reason.
pub fn judge(
    chart: &LevelChart,
    readings: &[LevelReading],
    agreement: impl Into<Option<Length>>,
) -> Result<LevelResult, TradeError> {
    let agreement = agreement.into();
    if let Some(agreement) = agreement
        && agreement.millimetres() < 0.0
    {
        return Err(TradeError::AgreementNegative { millimetres: agreement.millimetres() });
    }
    let readings =
        readings.iter().map(|reading| judge_reading(chart, *reading)).collect::<Result<Vec<_>, _>>()?;
    let spread = spread(&readings)?;
    let (class, reason) = decide(&readings, spread, agreement);
    Ok(LevelResult { class, reason, readings, spread, agreement })
}

/// Relates one reading to the band at its own temperature.
fn judge_reading(chart: &LevelChart, reading: LevelReading) -> Result<JudgedReading, TradeError> {
    if let Stick::Trace(trace) = reading.stick
        && trace.millimetres() < 0.0
    {
        return Err(TradeError::StickBelowEnd { millimetres: trace.millimetres() });
    }
    let band = match chart.band_at(reading.temperature) {
        Ok(band) => Some(band),
        Err(TradeError::OutsideTable { .. }) => None,
        Err(other) => return Err(other),
    };
    let mut judged =
        JudgedReading { reading, class: LevelClass::Unclear, band, above_low_mark: None, nearest_mark: None };
    match (band, reading.stick) {
        (Some(_), Stick::NoTrace { confirmed: true }) => judged.class = LevelClass::Below,
        (Some(band), Stick::Trace(trace)) => {
            let above_low = trace.millimetres() - band.low.millimetres();
            let above_high = trace.millimetres() - band.high.millimetres();
            let (mark, distance) = if above_low.abs() <= above_high.abs() {
                (Mark::Low, above_low.abs())
            } else {
                (Mark::High, above_high.abs())
            };
            judged.class = class_of(above_low, above_high);
            judged.above_low_mark = Some(Length::from_millimetres(above_low)?);
            judged.nearest_mark = Some(MarkDistance { mark, distance: Length::from_millimetres(distance)? });
        }
        (None, _) | (Some(_), Stick::NoTrace { confirmed: false }) => {}
    }
    Ok(judged)
}

/// The class of a trace by its height above each mark in millimetres; on a mark is in.
fn class_of(above_low: f64, above_high: f64) -> LevelClass {
    if above_low < -ROUNDING_MM {
        LevelClass::Below
    } else if above_high > ROUNDING_MM {
        LevelClass::Above
    } else {
        LevelClass::In
    }
}

/// How far the readings lie apart, if every one of them has a height above its low mark.
fn spread(readings: &[JudgedReading]) -> Result<Option<Length>, TradeError> {
    let heights: Option<Vec<f64>> =
        readings.iter().map(|judged| judged.above_low_mark.map(Length::millimetres)).collect();
    let Some(heights) = heights.filter(|heights| !heights.is_empty()) else { return Ok(None) };
    let highest = heights.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let lowest = heights.iter().copied().fold(f64::INFINITY, f64::min);
    Length::from_millimetres(highest - lowest).map(Some)
}

/// The class of all readings together. What asks for a new reading comes before what compares them.
fn decide(
    readings: &[JudgedReading],
    spread: Option<Length>,
    agreement: Option<Length>,
) -> (LevelClass, LevelReason) {
    let [first, _, ..] = readings else { return (LevelClass::Unclear, LevelReason::TooFewReadings) };
    let is_dry = |judged: &JudgedReading| matches!(judged.reading.stick, Stick::NoTrace { .. });
    let is_unconfirmed =
        |judged: &JudgedReading| matches!(judged.reading.stick, Stick::NoTrace { confirmed: false });
    if readings.iter().any(|judged| judged.band.is_none()) {
        return (LevelClass::Unclear, LevelReason::OutsideChart);
    }
    if readings.iter().any(is_unconfirmed) {
        return (LevelClass::Unclear, LevelReason::NoTrace);
    }
    if readings.iter().all(is_dry) {
        return (LevelClass::Below, LevelReason::NoTraceConfirmed);
    }
    let most = agreement.map_or(f64::INFINITY, |most| most.millimetres() + ROUNDING_MM);
    if spread.is_none_or(|spread| spread.millimetres() > most) {
        return (LevelClass::Unclear, LevelReason::ReadingsDisagree);
    }
    if readings.iter().all(|judged| judged.class == first.class) {
        (first.class, LevelReason::ReadingsAgree)
    } else {
        (LevelClass::Unclear, LevelReason::ClassesDiffer)
    }
}
