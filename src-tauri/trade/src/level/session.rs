//! One session of stick readings: whether they count, and the level they give.

use serde::{Deserialize, Serialize};

use super::{LevelChart, LevelClass, LevelReading, LevelResult, judge};
use crate::FigureError;
use crate::measure::Length;
use crate::moment::{Moment, check_order};

/// How the vehicle stood while the stick was read. A level counts only if all of it holds (common practice).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LevelConditions {
    /// It stood on a level floor.
    pub level_floor: bool,
    /// The engine idled.
    pub idling: bool,
    /// It was in park.
    pub in_park: bool,
    /// Every range was held for a moment since the engine was started.
    pub ranges_cycled: bool,
}

impl LevelConditions {
    /// Everything as it must be.
    pub const MET: LevelConditions =
        LevelConditions { level_floor: true, idling: true, in_park: true, ranges_cycled: true };
}

/// Why no level is judged.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum NotJudged {
    /// Not on a level floor.
    FloorNotLevel,
    /// The engine did not idle.
    NotIdling,
    /// Not in park.
    NotInPark,
    /// Ranges not cycled since the start.
    RangesNotCycled,
}

/// A reading with its time.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TimedReading {
    /// When the stick was read.
    pub at: Moment,
    /// What was read.
    pub reading: LevelReading,
    /// Why it does not count; nothing if it does. Set by [`check_level`].
    pub left_out: Option<LeftOut>,
}

/// Why a reading does not count.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LeftOut {
    /// Older than the engine's last start: the fluid stood elsewhere then.
    BeforeEngineStart,
    /// Older than the last adding or draining.
    BeforeFluidChange,
}

/// What happened around the readings, on the same clock.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LevelTimes {
    /// When the engine was last started.
    pub engine_started: Moment,
    /// When fluid was last added or drained, if it was.
    pub fluid_changed: Option<Moment>,
    /// Now.
    pub now: Moment,
}

/// The level of one session, with all it was made of.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct LevelCheck {
    /// The chart.
    pub chart: LevelChart,
    /// How the vehicle stood.
    pub conditions: LevelConditions,
    /// What happened around the readings.
    pub times: LevelTimes,
    /// Every reading, also those that do not count.
    pub readings: Vec<TimedReading>,
    /// Why nothing is judged; empty if something is.
    pub not_judged: Vec<NotJudged>,
    /// The level from the readings that count; nothing where it is not judged.
    pub result: Option<LevelResult>,
}

impl LevelCheck {
    /// Where the level stands; unclear where it is not judged.
    pub fn class(&self) -> LevelClass {
        self.result.as_ref().map_or(LevelClass::Unclear, |result| result.class)
    }
}

/// Judges the level from the readings that count: those taken since the engine was started and since fluid was last
/// added or drained. Lengths and temperatures as in [`judge`]; a temperature outside the chart makes the level
/// unclear and is never guessed.
///
/// # Errors
/// [`FigureError::ClockWentBack`] and [`FigureError::InTheFuture`] for times that can't be; else as [`judge`].
pub fn check_level(
    chart: &LevelChart,
    conditions: LevelConditions,
    readings: &[(Moment, LevelReading)],
    times: LevelTimes,
    agreement: impl Into<Option<Length>>,
) -> Result<LevelCheck, FigureError> {
    check_order(readings.iter().map(|(at, _)| *at), Some(times.now))?;
    let left_out = |at: Moment| match times.fluid_changed {
        _ if at < times.engine_started => Some(LeftOut::BeforeEngineStart),
        Some(changed) if at < changed => Some(LeftOut::BeforeFluidChange),
        _ => None,
    };
    let timed = |(at, reading): &(Moment, LevelReading)| TimedReading {
        at: *at,
        reading: *reading,
        left_out: left_out(*at),
    };
    let readings: Vec<_> = readings.iter().map(timed).collect();
    let wanted = [
        (conditions.level_floor, NotJudged::FloorNotLevel),
        (conditions.idling, NotJudged::NotIdling),
        (conditions.in_park, NotJudged::NotInPark),
        (conditions.ranges_cycled, NotJudged::RangesNotCycled),
    ];
    let not_judged: Vec<_> = wanted.into_iter().filter(|(holds, _)| !holds).map(|(_, why)| why).collect();
    let counted: Vec<_> =
        readings.iter().filter(|timed| timed.left_out.is_none()).map(|timed| timed.reading).collect();
    let result = if not_judged.is_empty() { Some(judge(chart, &counted, agreement)?) } else { None };
    Ok(LevelCheck { chart: chart.clone(), conditions, times, readings, not_judged, result })
}
