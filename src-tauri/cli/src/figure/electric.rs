//! Coil resistance.

use panside_trade::coil::{CoilLimits, CoilReading, MeterError, judge_coil, parse_shown};
use panside_trade::measure::{Measure, Resistance};
use panside_trade::units::Unit;
use panside_trade::{TradeError, Worked, Working};

use super::given::{Given, measure, parts, percent, quantity, wrong};
use super::{Figure, once, perhaps};
use crate::exit::{Exit, Failure};
use crate::message::*;

pub const FIGURES: &[Figure] = &[Figure {
    name: "coil",
    about: cli_coil,
    keys: &[
        once("ohms", cli_coil_ohms),
        once("temp", cli_coil_temp),
        perhaps("tempoff", cli_coil_tempoff),
        perhaps("leads", cli_coil_leads),
        perhaps("meter", cli_coil_meter),
        perhaps("limits", cli_coil_limits),
        perhaps("at", cli_coil_at),
    ],
    example: "ohms=6.9ohm temp=62C limits=5.0ohm:5.6ohm at=20C meter=0.5%:0.02ohm tempoff=2K",
    work: coil,
}];

fn limits(given: &Given) -> Result<(Resistance, Resistance), Failure> {
    let text = given.or("limits", "");
    if text.contains(':') {
        let [low, high] = parts("limits", text, cli_form_limits())?;
        return Ok((quantity("limits", low, Unit::Ohm)?, quantity("limits", high, Unit::Ohm)?));
    }
    let sheet = given
        .sheet()
        .filter(|_| !text.is_empty())
        .ok_or_else(|| Failure::new(Exit::Usage, cli_limits_missing()))?;
    if let Some(coil) = sheet.coil(text) {
        return Ok((coil.lowest, coil.highest));
    }
    let (low, high) = sheet.range(text).ok_or_else(|| Failure::new(Exit::DoesNotLoad, cli_no_range(text)))?;
    let ohms =
        |limit: Measure| limit.try_into().map_err(|error: TradeError| wrong("limits", text, error.message()));
    Ok((ohms(low)?, ohms(high)?))
}

fn coil(given: &Given) -> Result<Working, Failure> {
    let shown = given.or("ohms", "");
    let shows = match parse_shown(shown) {
        Ok(shows @ panside_trade::coil::MeterShows::Overload) => shows,
        _ => {
            let typed = measure("ohms", shown, Unit::Ohm)?;
            let ohms = typed.try_into().map_err(|error: TradeError| wrong("ohms", shown, error.message()))?;
            panside_trade::coil::MeterShows::Reading(ohms)
        }
    };
    let [part, digits] = parts("meter", given.or("meter", "0%:0ohm"), cli_form_meter())?;
    let meter =
        MeterError { percent: percent("meter", part)?, digits: quantity("meter", digits, Unit::Ohm)? };
    let (lowest, highest) = limits(given)?;
    let reading = CoilReading {
        shows,
        leads: given.quantity("leads", Unit::Ohm, "0ohm")?,
        meter,
        temperature: given.quantity("temp", Unit::DegreeCelsius, "")?,
        temperature_off_by: given.quantity("tempoff", Unit::Kelvin, "0K")?,
    };
    let limits = CoilLimits { lowest, highest, at: given.quantity("at", Unit::DegreeCelsius, "20C")? };
    Ok(judge_coil(reading, limits)?.working())
}
