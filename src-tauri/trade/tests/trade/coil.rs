//! Coil resistance: copper by NBS Handbook 100 (second-hand), a meter's error by its makers' own examples.

use panside_trade::coil::{
    CoilClass, CoilLimits, CoilReading, CoilResult, MeterError, MeterShows, copper_factor, judge_coil,
    parse_shown,
};
use panside_trade::measure::{Resistance, Temperature, TemperatureDifference};
use panside_trade::{FigureError, Worked as _};
use proptest::prelude::*;

use crate::{Worked, near};

fn celsius(value: f64) -> Result<Temperature, FigureError> {
    Ok(Temperature::from_celsius(value)?)
}

fn ohms(value: f64) -> Result<Resistance, FigureError> {
    Ok(Resistance::from_ohms(value)?)
}

fn reading(shown: f64, at: f64) -> Result<CoilReading, FigureError> {
    Ok(CoilReading {
        shows: MeterShows::Reading(ohms(shown)?),
        leads: ohms(0.0)?,
        meter: MeterError { percent: 0.0, digits: ohms(0.0)? },
        temperature: celsius(at)?,
        temperature_off_by: TemperatureDifference::from_kelvins(0.0)?,
    })
}

/// 5.0 to 5.6 Ω at 20 °C, the demo sheet's invented coil.
fn limits() -> Result<CoilLimits, FigureError> {
    Ok(CoilLimits { lowest: ohms(5.0)?, highest: ohms(5.6)?, at: celsius(20.0)? })
}

fn class(shown: f64, at: f64) -> Result<CoilClass, FigureError> {
    Ok(judge_coil(reading(shown, at)?, limits()?)?.class)
}

#[test]
fn a_coil_that_rose_by_a_quarter_is_63_63_degrees_hotter() -> Worked {
    // physicsforums 381286: 80 Ω at 20 °C, 100 Ω hot, constant 234.5: 83.63 °C. 0.00393 is 1/254.45, so the two forms
    // differ by a five-thousandth part.
    assert!(near(80.0 / copper_factor(celsius(83.625)?, celsius(20.0)?)?, 100.0, 1e-4));
    // MIL-PRF-27 as a public repository's test has it: 1.0 to 1.2 Ω from 20 °C is a rise of 48.9 K over 22 °C.
    assert!(near(1.0 / copper_factor(celsius(70.9)?, celsius(20.0)?)?, 1.2, 1e-4));
    Ok(())
}

#[test]
fn both_forms_of_the_copper_rule_agree() -> Worked {
    // The form with 234.5, from an electrical engineering page: (234.5 + 75) / (234.5 + 25) = 1.19268.
    assert!(near(copper_factor(celsius(25.0)?, celsius(75.0)?)?, (234.5 + 75.0) / (234.5 + 25.0), 5e-5));
    Ok(())
}

#[test]
fn the_straight_line_stays_within_half_a_percent_of_measured_copper() -> Worked {
    // Roeser, NBS Handbook 100 p. 4 (second-hand): R100/R0 = 1.431, R200/R0 = 1.862.
    for (at, measured) in [(100.0, 1.431), (200.0, 1.862)] {
        let line = copper_factor(celsius(0.0)?, celsius(at)?)?;
        assert!(near(line, measured, 0.005), "{at} °C: {line}");
    }
    Ok(())
}

#[test]
fn copper_wire_doubles_and_halves_back() -> Worked {
    for at in [-50.0, 0.0, 20.0, 62.0, 200.0] {
        let there = copper_factor(celsius(20.0)?, celsius(at)?)?;
        assert!(near(there * copper_factor(celsius(at)?, celsius(20.0)?)?, 1.0, 1e-15));
    }
    Ok(())
}

#[test]
fn the_demo_coils_are_one_too_high_and_two_in() -> Worked {
    // 6.9 Ω at 62 °C is 5.92 Ω at 20 °C, 6.2 Ω is 5.32 Ω (by hand with 254.5 / 296.5: 5.923 and 5.322).
    let high = judge_coil(reading(6.9, 62.0)?, limits()?)?;
    assert_eq!(high.class, CoilClass::High);
    assert!(near(high.at_reference.unwrap().ohms(), 6.9 * 254.5 / 296.5, 1e-4));
    assert_eq!(class(6.2, 62.0)?, CoilClass::In);
    assert_eq!(class(5.6, 62.0)?, CoilClass::Low, "in without its temperature, low with it");
    Ok(())
}

#[test]
fn a_meters_error_is_its_percent_and_its_digits() -> Worked {
    // A university's tutorial on meters: 32.00 at ±(2.5 % + 3 digits of 0.01) is ±0.83. A maker's page: 100.0 at
    // ±(1 % + 2 digits of 0.1) is ±1.2.
    assert!(near(MeterError { percent: 2.5, digits: ohms(0.03)? }.of(32.0), 0.83, 1e-12));
    assert!(near(MeterError { percent: 1.0, digits: ohms(0.2)? }.of(100.0), 1.2, 1e-12));
    Ok(())
}

#[test]
fn a_coil_near_its_limit_is_not_told_by_a_coarse_meter() -> Worked {
    let with = |shown: f64, percent: f64, digits: f64, off: f64| {
        let mut reading = reading(shown, 20.0)?;
        reading.meter = MeterError { percent, digits: ohms(digits)? };
        reading.temperature_off_by = TemperatureDifference::from_kelvins(off)?;
        judge_coil(reading, limits()?)
    };
    assert_eq!(with(5.55, 0.0, 0.0, 0.0)?.class, CoilClass::In);
    assert_eq!(with(5.55, 1.0, 0.0, 0.0)?.class, CoilClass::Unclear);
    assert_eq!(with(5.55, 0.0, 0.1, 0.0)?.class, CoilClass::Unclear);
    assert_eq!(with(5.55, 0.0, 0.0, 3.0)?.class, CoilClass::Unclear);
    assert_eq!(with(5.80, 1.0, 0.02, 2.0)?.class, CoilClass::High, "too high, whatever the errors");
    Ok(())
}

#[test]
fn leads_are_taken_off_and_their_error_counts_too() -> Worked {
    let mut reading = reading(5.5, 20.0)?;
    reading.leads = ohms(0.2)?;
    reading.meter = MeterError { percent: 0.0, digits: ohms(0.05)? };
    let result = judge_coil(reading, limits()?)?;
    assert!(near(result.coil.unwrap().ohms(), 5.3, 1e-12));
    let (least, most) = result.between.unwrap();
    assert!(near(least.ohms(), 5.2, 1e-12) && near(most.ohms(), 5.4, 1e-12));
    reading.leads = ohms(6.0)?;
    assert!(matches!(judge_coil(reading, limits()?), Err(FigureError::LeadsAboveReading { .. })));
    Ok(())
}

#[test]
fn overload_is_open_and_nothing_over_the_leads_is_short() -> Worked {
    let mut open = reading(5.0, 20.0)?;
    open.shows = MeterShows::Overload;
    assert_eq!(judge_coil(open, limits()?)?.class, CoilClass::Open);
    assert_eq!(class(56.0, 20.0)?, CoilClass::Open);
    assert_eq!(class(55.9, 20.0)?, CoilClass::High);
    assert_eq!(class(0.5, 20.0)?, CoilClass::Short);
    assert_eq!(class(0.51, 20.0)?, CoilClass::Low);
    let mut short = reading(0.3, 20.0)?;
    short.leads = ohms(0.3)?;
    assert_eq!(judge_coil(short, limits()?)?.class, CoilClass::Short);
    Ok(())
}

#[test]
fn what_makes_no_sense_is_refused() -> Worked {
    for at in [-50.1, 200.1] {
        assert!(matches!(class(5.0, at), Err(FigureError::CopperRange { .. })));
    }
    // The thermometer's error may not lead out either.
    let mut edge = reading(5.0, 199.0)?;
    edge.temperature_off_by = TemperatureDifference::from_kelvins(2.0)?;
    assert!(matches!(judge_coil(edge, limits()?), Err(FigureError::CopperRange { .. })));
    let turned = CoilLimits { lowest: ohms(5.6)?, highest: ohms(5.0)?, at: celsius(20.0)? };
    assert!(matches!(judge_coil(reading(5.0, 20.0)?, turned), Err(FigureError::LimitsTurned { .. })));
    for percent in [-1.0, 100.0, f64::NAN, f64::INFINITY] {
        let mut bad = reading(5.0, 20.0)?;
        bad.meter.percent = percent;
        assert!(matches!(judge_coil(bad, limits()?), Err(FigureError::MeterPercent { .. })), "{percent}");
    }
    Ok(())
}

#[test]
fn overload_is_read_as_meters_write_it() {
    for text in ["OL", "ol", " O.L ", "0L"] {
        assert_eq!(parse_shown(text), Ok(MeterShows::Overload), "{text}");
    }
    assert!(parse_shown("open").is_err());
}

#[test]
fn a_result_says_how_it_came_about_and_reads_back() -> Worked {
    let result = judge_coil(reading(6.9, 62.0)?, limits()?)?;
    let text = result.working().to_string();
    for part in ["6.9 Ω", "62 °C", "5.922 Ω", "above its upper limit", "NBS Handbook 100"] {
        assert!(text.contains(part), "{part}: {text}");
    }
    let json = serde_json::to_string(&result).unwrap();
    assert_eq!(serde_json::from_str::<CoilResult>(&json).unwrap(), result);
    Ok(())
}

proptest! {
    #[test]
    fn hotter_copper_never_has_less_resistance(at in -50.0..199.0_f64, hotter in 0.001..1.0_f64) {
        let from = celsius(20.0).unwrap();
        let factor = |at: f64| copper_factor(from, celsius(at).unwrap()).unwrap();
        prop_assert!(factor(at) < factor(at + hotter));
    }

    #[test]
    fn a_reading_in_kiloohms_is_the_same_coil(shown in 0.1..100.0_f64, at in -40.0..190.0_f64) {
        let plain = judge_coil(reading(shown, at).unwrap(), limits().unwrap()).unwrap();
        let mut other = reading(shown, at).unwrap();
        let kiloohms = panside_trade::measure::Measure::new(shown / 1000.0, panside_trade::units::Unit::Kiloohm);
        other.shows = MeterShows::Reading(kiloohms.unwrap().try_into().unwrap());
        let other = judge_coil(other, limits().unwrap()).unwrap();
        prop_assert!(near(other.at_reference.unwrap().ohms(), plain.at_reference.unwrap().ohms(), 1e-12));
    }

    #[test]
    fn a_worse_meter_never_widens_what_is_in(
        shown in 0.1..80.0_f64,
        at in 0.0..100.0_f64,
        percent in 0.0..5.0_f64,
        digits in 0.0..0.5_f64,
        off in 0.0..5.0_f64,
    ) {
        let sharp = class(shown, at).unwrap();
        let mut coarse = reading(shown, at).unwrap();
        coarse.meter = MeterError { percent, digits: ohms(digits).unwrap() };
        coarse.temperature_off_by = TemperatureDifference::from_kelvins(off).unwrap();
        let coarse = judge_coil(coarse, limits().unwrap()).unwrap();
        let (least, most) = coarse.between.unwrap();
        let there = coarse.at_reference.unwrap();
        prop_assert!(least <= there && there <= most);
        if coarse.class == CoilClass::In {
            prop_assert_eq!(sharp, CoilClass::In);
        }
    }
}
