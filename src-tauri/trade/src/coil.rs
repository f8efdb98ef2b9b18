//! The resistance of a solenoid's coil, brought to the temperature for which its limits stand, with the meter's error.

use panside_messages::{Arg, Message};
use serde::{Deserialize, Serialize};

use crate::measure::{Resistance, Temperature, TemperatureDifference};
use crate::message::working::*;
use crate::source;
use crate::text::{figure, figure_to};
use crate::working::{Worked, Working};
use crate::{FigureError, TradeError};

/// Change of copper's resistance for each °C, in parts of that at 20 °C (NBS Handbook 100, second-hand).
pub const COPPER_PER_CELSIUS: f64 = 0.003_93;

/// Temperatures for which copper's straight line is used, in °C: up to 200 by the handbook; the lower end is our choice.
pub const COPPER_RANGE: (f64, f64) = (-50.0, 200.0);

/// So many times the upper limit is an open coil, so many times below the lower one a short: our choice.
const FAR_OFF: f64 = 10.0;

/// How far an ohmmeter may be off to both sides: so many percent of what it shows and its last digits.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MeterError {
    /// Percent of the reading, 0 or more and below 100.
    pub percent: f64,
    /// The last digits, as a resistance: 3 digits of a display with two decimals are 0.03 Ω.
    pub digits: Resistance,
}

impl MeterError {
    /// How far a reading of so many ohms may be off, in ohms.
    pub fn of(self, ohms: f64) -> f64 {
        ohms * self.percent / 100.0 + self.digits.ohms()
    }
}

/// What the meter shows.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MeterShows {
    /// A resistance, leads included.
    Reading(Resistance),
    /// More than it can show (`OL`).
    Overload,
}

/// A coil's reading.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CoilReading {
    /// What the meter shows.
    pub shows: MeterShows,
    /// What it shows with its leads held together; 0 Ω if it was zeroed.
    pub leads: Resistance,
    /// Its error.
    pub meter: MeterError,
    /// The coil's temperature.
    pub temperature: Temperature,
    /// How far that may be off to both sides.
    pub temperature_off_by: TemperatureDifference,
}

/// The sheet's limits at their temperature.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CoilLimits {
    /// The lowest that is allowed, above 0 Ω.
    pub lowest: Resistance,
    /// The highest that is allowed, not below the lowest.
    pub highest: Resistance,
    /// The temperature for which they stand, mostly 20 °C.
    pub at: Temperature,
}

/// What the reading says about the coil.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CoilClass {
    /// Within its limits, also with every error against it.
    In,
    /// Below the lower limit, whatever the errors.
    Low,
    /// Above the upper limit, whatever the errors.
    High,
    /// A limit lies within the errors: not told by this meter at this temperature.
    Unclear,
    /// Open: the meter shows overload, or ten times the upper limit and more.
    Open,
    /// Short: not to be told from the leads, or a tenth of the lower limit and less.
    Short,
}

impl CoilClass {
    /// What it means, as a sentence that says what to do.
    fn message(self) -> Message {
        match self {
            CoilClass::In => working_coil_in(),
            CoilClass::Low => working_coil_low(),
            CoilClass::High => working_coil_high(),
            CoilClass::Unclear => working_coil_unclear(),
            CoilClass::Open => working_coil_open(),
            CoilClass::Short => working_coil_short(),
        }
    }
}

/// A coil judged, and how it came about.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct CoilResult {
    /// What it says about the coil.
    pub class: CoilClass,
    /// What was read.
    pub reading: CoilReading,
    /// The limits.
    pub limits: CoilLimits,
    /// The coil alone at its own temperature; nothing for an overload.
    pub coil: Option<Resistance>,
    /// From its own temperature to that of the limits.
    pub factor: f64,
    /// The coil at the temperature of the limits.
    pub at_reference: Option<Resistance>,
    /// The lowest and the highest it may be there with every error against it.
    pub between: Option<(Resistance, Resistance)>,
}

/// Copper's factor from one temperature to another: (1 + α (to − 20)) / (1 + α (from − 20)), both in °C.
///
/// # Errors
/// [`FigureError::CopperRange`] outside −50 to 200 °C.
pub fn copper_factor(from: Temperature, to: Temperature) -> Result<f64, FigureError> {
    let parts = |temperature: Temperature| {
        if (COPPER_RANGE.0..=COPPER_RANGE.1).contains(&temperature.celsius()) {
            Ok(1.0 + COPPER_PER_CELSIUS * (temperature.celsius() - 20.0))
        } else {
            Err(FigureError::CopperRange { temperature })
        }
    };
    Ok(parts(to)? / parts(from)?)
}

/// Judges a coil. Errors are taken at their worst together: the meter's on the reading and on the leads, and the
/// thermometer's.
///
/// # Errors
/// [`FigureError::LimitsTurned`], [`FigureError::MeterPercent`], [`FigureError::LeadsAboveReading`], and as
/// [`copper_factor`] for every temperature that the thermometer's error allows.
pub fn judge_coil(reading: CoilReading, limits: CoilLimits) -> Result<CoilResult, FigureError> {
    let (lowest, highest) = (limits.lowest.ohms(), limits.highest.ohms());
    if lowest <= 0.0 || lowest > highest {
        return Err(FigureError::LimitsTurned { lowest: limits.lowest, highest: limits.highest });
    }
    if !(0.0..100.0).contains(&reading.meter.percent) {
        return Err(FigureError::MeterPercent { percent: reading.meter.percent });
    }
    let factor = copper_factor(reading.temperature, limits.at)?;
    let MeterShows::Reading(shown) = reading.shows else {
        let class = CoilClass::Open;
        return Ok(CoilResult {
            class,
            reading,
            limits,
            coil: None,
            factor,
            at_reference: None,
            between: None,
        });
    };
    let (shown, leads) = (shown.ohms(), reading.leads.ohms());
    let error = reading.meter.of(shown) + if leads > 0.0 { reading.meter.of(leads) } else { 0.0 };
    let coil = shown - leads;
    if coil < -error {
        return Err(FigureError::LeadsAboveReading { leads: reading.leads });
    }
    let off = reading.temperature_off_by.kelvins();
    let near = |by: f64| Temperature::from_celsius(reading.temperature.celsius() + by);
    let least = (coil - error).max(0.0) * copper_factor(near(off)?, limits.at)?;
    let most = (coil + error) * copper_factor(near(-off)?, limits.at)?;
    let class = if least <= 0.0 || most <= lowest / FAR_OFF {
        CoilClass::Short
    } else if least >= highest * FAR_OFF {
        CoilClass::Open
    } else if most < lowest {
        CoilClass::Low
    } else if least > highest {
        CoilClass::High
    } else if least >= lowest && most <= highest {
        CoilClass::In
    } else {
        CoilClass::Unclear
    };
    let ohms = |value: f64| Resistance::from_ohms(value.max(0.0));
    Ok(CoilResult {
        class,
        reading,
        limits,
        coil: Some(ohms(coil)?),
        factor,
        at_reference: Some(ohms(coil * factor)?),
        between: Some((ohms(least)?, ohms(most)?)),
    })
}

/// What meters show where there is more than they can measure; the usual first.
pub const OVERLOAD: [&str; 3] = ["OL", "0L", "O.L"];

/// Reads what a meter shows: a number with its unit, or one of [`OVERLOAD`] in large or small letters.
///
/// # Errors
/// As [`crate::number::parse_measure`] for anything else.
pub fn parse_shown(text: &str) -> Result<MeterShows, TradeError> {
    if OVERLOAD.contains(&text.trim().to_uppercase().as_str()) {
        return Ok(MeterShows::Overload);
    }
    let measure = crate::number::parse_measure(text, crate::units::Unit::Ohm)?;
    Ok(MeterShows::Reading(Resistance::try_from(measure)?))
}

impl Worked for CoilResult {
    fn working(&self) -> Working {
        let (reading, limits) = (&self.reading, &self.limits);
        let shown = match reading.shows {
            MeterShows::Reading(shown) => shown.into(),
            MeterShows::Overload => Arg::from(working_coil_overload()),
        };
        let mut working = Working::of(working_coil())
            .given(working_meter_shows(), shown)
            .given(working_coil_leads(), reading.leads)
            .given(
                working_coil_meter_error(),
                format!("{} % + {}", figure(reading.meter.percent), reading.meter.digits),
            )
            .given(
                working_coil_temperature(),
                format!("{} ± {}", reading.temperature, reading.temperature_off_by),
            )
            .given(working_limits(), working_at(working_range(limits.lowest, limits.highest), limits.at));
        if let (MeterShows::Reading(shown), Some(coil), Some(there), Some((least, most))) =
            (reading.shows, self.coil, self.at_reference, self.between)
        {
            let factor = figure_to(self.factor, 5);
            let parts = format!(
                "(1 + 0.00393 × ({} − 20)) / (1 + 0.00393 × ({} − 20))",
                figure(limits.at.celsius()),
                figure(reading.temperature.celsius())
            );
            working = working
                .step(working_coil_alone(), format!("{shown} − {}", reading.leads), coil)
                .step(working_factor(), parts, &factor)
                .step(working_at_temperature(limits.at), format!("{coil} × {factor}"), there)
                .step(working_coil_worst(), working_coil_worst_how(), working_range(least, most));
        }
        working.answer(self.class.message()).sources([source::copper(), source::meter_error()])
    }
}
