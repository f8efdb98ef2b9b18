//! How a hot part cools: a curve through its readings, and the time before which it is not below a touch limit.
//!
//! What comes out is "not before", never "cool": only a reading says that a part is cool.

mod fit;

use panside_messages::Message;
use serde::{Deserialize, Serialize};

pub use fit::{Fit, fit};

use crate::FigureError;
use crate::measure::{Duration, Temperature, TemperatureDifference};
use crate::message::working::*;
use crate::moment::{Moment, check_order};
use crate::source;
use crate::text::{figure, figure_to};
use crate::working::{Worked, Working};

/// Readings that a curve with a spread needs.
pub const LEAST_READINGS: usize = 3;

/// Nothing is foretold further than this from the first reading, in minutes.
const LONGEST_MINUTES: f64 = 24.0 * 60.0;

/// Where the part is probed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Place {
    /// The joint that is worked on.
    Joint,
    /// The shell of the catalyst, which its core heats again.
    Shell,
}

impl Place {
    fn message(self) -> Message {
        match self {
            Place::Joint => working_cooling_joint(),
            Place::Shell => working_cooling_shell(),
        }
    }
}

/// What is known while a place cools.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cooling {
    /// Where it is probed.
    pub place: Place,
    /// Each contact reading with its time, in their order.
    pub readings: Vec<(Moment, Temperature)>,
    /// How far the probe may be off to both sides. A rise within twice that is no rise.
    pub probe_off_by: TemperatureDifference,
    /// Temperature of the surroundings.
    pub ambient: Temperature,
    /// How far that may be off, or change meanwhile, to both sides.
    pub ambient_off_by: TemperatureDifference,
    /// When the engine was last switched off, if it ran: readings before that do not count.
    pub engine_off: Option<Moment>,
    /// The touch limit.
    pub limit: Temperature,
}

impl Cooling {
    /// Whether a reading of that time counts: the engine has not run since.
    fn counts(&self, at: Moment) -> bool {
        self.engine_off.is_none_or(|off| at >= off)
    }

    /// The readings that count, in their order.
    pub fn counting(&self) -> impl Iterator<Item = (Moment, Temperature)> {
        self.readings.iter().copied().filter(|(at, _)| self.counts(*at))
    }
}

/// What can be said.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CoolingClass {
    /// The last reading is at or below the limit.
    Below,
    /// A time can be told.
    Cools,
    /// Not yet enough readings since the engine was switched off.
    TooFewReadings,
    /// A reading is hotter than one before it: the engine was run, or the core heats the shell.
    Rises,
    /// The limit lies at or below the surroundings: it is never reached.
    NeverBelow,
    /// The readings give no curve, or none that reaches the limit within a day.
    NoCurve,
}

impl CoolingClass {
    /// What it means, as a sentence that says what to do.
    fn message(self) -> Message {
        match self {
            CoolingClass::Below => working_cooling_below(),
            CoolingClass::Cools => working_cooling_cools(),
            CoolingClass::TooFewReadings => working_cooling_too_few(),
            CoolingClass::Rises => working_cooling_rises(),
            CoolingClass::NeverBelow => working_cooling_never(),
            CoolingClass::NoCurve => working_cooling_no_curve(),
        }
    }
}

/// A cool-down, and how it came about.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CoolDown {
    /// What is known.
    pub cooling: Cooling,
    /// What can be said.
    pub class: CoolingClass,
    /// How many readings count.
    pub counted: usize,
    /// Rate for each minute; nothing without a curve.
    pub rate: Option<f64>,
    /// Standard deviation of what the curve leaves over, in °C.
    pub left_over: Option<f64>,
    /// Minutes from the last reading until the curve itself is at the limit.
    pub likely: Option<Duration>,
    /// Minutes from the last reading until even the upper end of the 95 % interval of a new reading is at the limit.
    pub not_before: Option<Duration>,
    /// Minutes from the last reading until the lower end of that interval is at the limit: the earliest it could be.
    pub earliest: Option<Duration>,
}

/// Works out a cool-down. The curve's own spread and that of a new reading are in the interval; it is found for the
/// surroundings as measured and for both ends of what they may be, and the widest counts.
///
/// # Errors
/// [`FigureError::ClockWentBack`] if times go back, [`FigureError::NoReading`] without any, and
/// [`FigureError::SameMoment`] for two readings at one time.
pub fn cool_down(cooling: Cooling) -> Result<CoolDown, FigureError> {
    check_order(cooling.readings.iter().map(|(at, _)| *at), None)?;
    for (index, pair) in cooling.readings.windows(2).enumerate() {
        if let [(first, _), (second, _)] = pair
            && first == second
        {
            return Err(FigureError::SameMoment { position: index + 2 });
        }
    }
    if cooling.readings.is_empty() {
        return Err(FigureError::NoReading);
    }
    let counted: Vec<(Moment, f64)> =
        cooling.counting().map(|(at, temperature)| (at, temperature.celsius())).collect();
    let (ambient, limit) = (cooling.ambient.celsius(), cooling.limit.celsius());
    let none = |cooling: Cooling, class| CoolDown {
        cooling,
        class,
        counted: counted.len(),
        rate: None,
        left_over: None,
        likely: None,
        not_before: None,
        earliest: None,
    };
    if rises(&counted, cooling.probe_off_by.kelvins()) {
        return Ok(none(cooling, CoolingClass::Rises));
    }
    if counted.last().is_some_and(|(_, last)| *last <= limit) {
        return Ok(none(cooling, CoolingClass::Below));
    }
    if limit <= ambient {
        return Ok(none(cooling, CoolingClass::NeverBelow));
    }
    let (Some((first, _)), Some((last, _)), true) =
        (counted.first(), counted.last(), counted.len() >= LEAST_READINGS)
    else {
        return Ok(none(cooling, CoolingClass::TooFewReadings));
    };
    let since = last.minutes_since(*first);
    let curve = |ambient: f64| {
        let over = |(at, celsius): &(Moment, f64)| (at.minutes_since(*first), celsius - ambient);
        let points: Vec<(f64, f64)> = counted.iter().map(over).collect();
        fit(&points).filter(|fit| fit.rate > 0.0 && fit.start > 0.0)
    };
    let when = |ambient: f64, width: f64| {
        let found = curve(ambient)?.below(limit - ambient, width, LONGEST_MINUTES)?;
        Some((found - since).max(0.0))
    };
    let (Some(fit), Some(likely)) = (curve(ambient), when(ambient, 0.0)) else {
        return Ok(none(cooling, CoolingClass::NoCurve));
    };
    let off = cooling.ambient_off_by.kelvins();
    let ends = [ambient, ambient + off, ambient - off];
    // One end that is never reached leaves the time open.
    let not_before = ends.iter().try_fold(0.0, |latest: f64, end| Some(latest.max(when(*end, 1.0)?)));
    let earliest = ends.iter().filter_map(|end| when(*end, -1.0)).reduce(f64::min);
    let from_last = |minutes: f64| Duration::from_minutes(minutes);
    Ok(CoolDown {
        class: CoolingClass::Cools,
        counted: counted.len(),
        rate: Some(fit.rate),
        left_over: Some(fit.left_over),
        likely: Some(from_last(likely)?),
        not_before: not_before.map(from_last).transpose()?,
        earliest: earliest.map(from_last).transpose()?,
        cooling,
    })
}

/// Whether a reading is hotter than an earlier one by more than the probe may be off on both.
fn rises(counted: &[(Moment, f64)], off_by: f64) -> bool {
    let mut coolest = f64::INFINITY;
    counted.iter().any(|(_, celsius)| {
        coolest = coolest.min(*celsius);
        *celsius > coolest + 2.0 * off_by
    })
}

/// When hands may go on by these cool-downs: the latest "not before" of all places. Nothing if a place can't be told,
/// or joint or shell was not probed.
pub fn not_before_all(places: &[CoolDown]) -> Option<Duration> {
    let probed = |place: Place| places.iter().any(|down| down.cooling.place == place);
    if !probed(Place::Joint) || !probed(Place::Shell) {
        return None;
    }
    let zero = Duration::from_minutes(0.0).ok()?;
    places.iter().try_fold(zero, |latest, down| match down.class {
        CoolingClass::Below => Some(latest),
        _ => down.not_before.map(|time| if time > latest { time } else { latest }),
    })
}

impl Worked for CoolDown {
    fn working(&self) -> Working {
        let cooling = &self.cooling;
        let first = cooling.readings.first().map_or(Moment::from_ms(0), |(at, _)| *at);
        let mut working =
            Working::of(working_cooling()).given(working_cooling_place(), cooling.place.message());
        for (at, temperature) in &cooling.readings {
            let what = working_after(figure(at.minutes_since(first)));
            working = if cooling.counts(*at) {
                working.given(what, *temperature)
            } else {
                working.given(what, working_cooling_left_out(*temperature))
            };
        }
        working = working
            .given(working_surroundings(), format!("{} ± {}", cooling.ambient, cooling.ambient_off_by))
            .given(working_cooling_probe(), format!("± {}", cooling.probe_off_by))
            .given(working_touch_limit(), cooling.limit);
        if let (Some(rate), Some(left_over)) = (self.rate, self.left_over) {
            let curve = working_cooling_curve(self.counted);
            working = working
                .step(working_cooling_rate(), curve.clone(), format!("{} / min", figure_to(rate, 5)))
                .step(working_cooling_left_over(), curve, format!("± {} K", figure(left_over)));
        }
        let rounded = |time: Duration| format!("{} min", figure(time.minutes().ceil()));
        for (what, time) in [
            (working_cooling_earliest(), self.earliest),
            (working_cooling_likely(), self.likely),
            (working_cooling_not_before(), self.not_before),
        ] {
            if let Some(time) = time {
                working = working.step(what, working_cooling_time_how(), rounded(time));
            }
        }
        working = working.answer(self.class.message());
        if self.class == CoolingClass::Cools {
            let spread = working_cooling_spread;
            working = working
                .answer(self.not_before.map_or_else(spread, |time| working_cooling_wait(rounded(time))));
        }
        working.sources([source::newton(), source::least_squares(), source::reheats()])
    }
}
