//! Units against pint 0.25.3, uom 0.38.0 and NIST SP 811, and what a measure refuses.

use panside_trade::TradeError;
use panside_trade::measure::{Distance, Length, Measure, Temperature, Torque, Volume};
use panside_trade::units::{Quantity, Unit};
use proptest::prelude::*;
use uom::si::{f64 as si, length, thermodynamic_temperature as temperature, torque, volume};

use crate::{Outcome, same};

fn convert(value: f64, from: Unit, to: Unit) -> Result<f64, TradeError> {
    Ok(Measure::new(value, from)?.to(to)?.value())
}

#[test]
fn conversions_agree_with_pint() -> Outcome {
    use Unit::*;
    // Each value printed by pint 0.25.3.
    let printed = [
        (1.0, PoundForceFoot, NewtonMetre, 1.3558179483314006),
        (1.0, PoundForceInch, NewtonMetre, 0.11298482902761671),
        (1.0, KilogramForceMetre, NewtonMetre, 9.80665),
        (1.0, KilogramForceCentimetre, NewtonMetre, 0.0980665),
        (80.0, PoundForceInch, NewtonMetre, 9.038786322209337),
        (10.0, PoundForceFoot, NewtonMetre, 13.558179483314007),
        (150.0, PoundForceInch, NewtonMetre, 16.947724354142505),
        (12.0, NewtonMetre, PoundForceFoot, 8.850745791327185),
        (12.0, NewtonMetre, PoundForceInch, 106.20894949592625),
        (20.0, NewtonMetre, PoundForceFoot, 14.75124298554531),
        (45.0, NewtonMetre, KilogramForceMetre, 4.588722958400678),
        (9.0, NewtonMetre, KilogramForceCentimetre, 91.77445916801355),
        (1.0, UsQuart, Litre, 0.9463529459999998),
        (3.6, Litre, UsQuart, 3.8040775539573395),
        (200.0, Millilitre, Litre, 0.2),
        (1.0, Mile, Kilometre, 1.609344),
        (12.0, Kilometre, Mile, 7.456454306848007),
        (1.0, Inch, Millimetre, 25.4),
        (17.0, Millimetre, Inch, 0.6692913385826773),
        (0.0, DegreeFahrenheit, DegreeCelsius, -17.777777777777743),
        (140.0, DegreeFahrenheit, DegreeCelsius, 60.00000000000006),
        (-40.0, DegreeFahrenheit, DegreeCelsius, -39.99999999999997),
        (58.0, DegreeCelsius, DegreeFahrenheit, 136.39999999999992),
        (-273.15, DegreeCelsius, DegreeFahrenheit, -459.67),
        (4.7, Kiloohm, Ohm, 4700.0),
        (5600.0, Ohm, Kiloohm, 5.6000000000000005),
        (2.5, Megaohm, Kiloohm, 2500.0),
        (180.0, Millivolt, Volt, 0.18),
    ];
    for (value, from, to, expected) in printed {
        let found = convert(value, from, to)?;
        assert!(same(found, expected), "{value} {from} is {found} {to}, not {expected}");
    }
    Ok(())
}

#[test]
fn conversions_agree_with_uom() -> Outcome {
    let f = si::ThermodynamicTemperature::new::<temperature::degree_fahrenheit>(98.6);
    assert!(same(Temperature::from_fahrenheit(98.6)?.celsius(), f.get::<temperature::degree_celsius>()));
    let inches = si::Length::new::<length::inch>(1.25);
    assert!(same(Length::from_inches(1.25)?.millimetres(), inches.get::<length::millimeter>()));
    let miles = si::Length::new::<length::mile>(12.0);
    assert!(same(Distance::from_miles(12.0)?.kilometres(), miles.get::<length::kilometer>()));
    let kgf_m = si::Torque::new::<torque::kilogram_force_meter>(4.5);
    assert!(same(
        Torque::from_kilogram_force_metres(4.5)?.newton_metres(),
        kgf_m.get::<torque::newton_meter>()
    ));
    let millilitres = si::Volume::new::<volume::milliliter>(3600.0);
    assert!(same(Volume::from_millilitres(3600.0)?.litres(), millilitres.get::<volume::liter>()));
    Ok(())
}

#[test]
fn pound_units_agree_with_uom_to_the_digits_that_it_has() -> Outcome {
    // uom 0.38.0 starts from a pound-force of 4.448222 N and a quart of 0.9463529 L, both rounded to seven digits,
    // so it can only confirm that many.
    let seven_digits = |found: f64, expected: f64| (found / expected - 1.0).abs() < 1e-7;
    let foot = si::Torque::new::<torque::pound_force_foot>(1.0).get::<torque::newton_meter>();
    let inch = si::Torque::new::<torque::pound_force_inch>(1.0).get::<torque::newton_meter>();
    let quart = si::Volume::new::<volume::quart_liquid>(1.0).get::<volume::liter>();
    assert!(seven_digits(Torque::from_pound_force_feet(1.0)?.newton_metres(), foot));
    assert!(seven_digits(Torque::from_pound_force_inches(1.0)?.newton_metres(), inch));
    assert!(seven_digits(Volume::from_us_quarts(1.0)?.litres(), quart));
    Ok(())
}

#[test]
fn pound_torques_round_to_the_factors_of_nist_sp_811() -> Outcome {
    // NIST SP 811, B.8: 1.355 818 and 0.112 984 8 N·m, seen on calculator pages that quote it.
    let foot = Torque::from_pound_force_feet(1.0)?.newton_metres();
    let inch = Torque::from_pound_force_inches(1.0)?.newton_metres();
    assert_eq!(format!("{foot:.6}"), "1.355818");
    assert_eq!(format!("{inch:.7}"), "0.1129848");
    assert!(same(Torque::from_pound_force_feet(1.0)?.pound_force_inches(), 12.0));
    Ok(())
}

#[test]
fn pressures_have_the_sizes_of_nist_sp_811() {
    // NIST SP 811, B.8: a pound-force per square inch is 6.894 757 kPa, a bar 100 kPa.
    let kilopascals =
        |unit| Measure::new(1.0, unit).and_then(|one| one.to(Unit::Kilopascal)).unwrap().value();
    assert_eq!(format!("{:.6}", kilopascals(Unit::PoundForcePerSquareInch)), "6.894757");
    assert_eq!(kilopascals(Unit::Bar), 100.0);
}

#[test]
fn units_are_read_as_people_write_them() {
    use Unit::*;
    let written = [
        (DegreeCelsius, vec!["°C", "C", "degC", " °c "]),
        (DegreeFahrenheit, vec!["°F", "F", "degF"]),
        (NewtonMetre, vec!["N·m", "Nm", "N.m", "N m", "N-m", "N⋅m"]),
        (PoundForceFoot, vec!["lbf·ft", "lbf.ft", "ft-lb", "lb-ft", "ft-lbs", "lbf ft"]),
        (PoundForceInch, vec!["lbf·in", "lbf.in", "in-lb", "in-lbs"]),
        (KilogramForceMetre, vec!["kgf·m", "kgf.m", "kgfm"]),
        (KilogramForceCentimetre, vec!["kgf·cm", "kgf.cm"]),
        (Ohm, vec!["Ω", "ohm", "Ohm"]),
        (Kiloohm, vec!["kΩ", "kohm", "kiloohm"]),
        (Megaohm, vec!["MΩ", "Mohm", "megaohm"]),
        (Volt, vec!["V", "v"]),
        (Millivolt, vec!["mV", "MV"]),
        (Litre, vec!["L", "l"]),
        (Millilitre, vec!["mL", "ml"]),
        (UsQuart, vec!["qt", "US qt", "quart"]),
        (Millimetre, vec!["mm"]),
        (Inch, vec!["in", "inch"]),
        (Kilometre, vec!["km"]),
        (Mile, vec!["mi"]),
        (RevolutionPerMinute, vec!["rpm", "r/min"]),
        (Minute, vec!["min"]),
        (Second, vec!["s", "sec"]),
        (Hour, vec!["h", "hours"]),
        (Degree, vec!["deg", "°"]),
        (Kelvin, vec!["K"]),
        (KilogramPerCubicMetre, vec!["kg/m³", "kg/m3"]),
        (Kilonewton, vec!["kN"]),
        (MillimetrePerLitre, vec!["mm/L", "mm/l"]),
        (Kilopascal, vec!["kPa", "kpa"]),
        (Bar, vec!["bar"]),
        (PoundForcePerSquareInch, vec!["psi", "lbf/in2"]),
    ];
    for (unit, texts) in &written {
        for text in texts {
            assert_eq!(text.parse(), Ok(*unit), "{text}");
        }
        assert_eq!(unit.symbol().parse(), Ok(*unit));
    }
    assert_eq!(written.len(), Unit::ALL.len(), "every unit is in this list");
}

#[test]
fn an_unknown_unit_is_refused_and_the_known_ones_are_named() {
    for text in ["", "hp", "N·m·m", "mmm", "kk", "mΩ", "mohm"] {
        let error = text.parse::<Unit>().unwrap_err();
        assert!(matches!(error, TradeError::UnitUnknown { .. }), "{text}");
        assert!(error.to_string().contains("lbf·ft"), "{error}");
    }
}

#[test]
fn a_unit_converts_only_within_its_quantity() {
    for from in Unit::ALL {
        for to in Unit::ALL {
            let converted = Measure::new(1.0, *from).and_then(|measure| measure.to(*to));
            assert_eq!(converted.is_ok(), from.quantity() == to.quantity(), "{from} to {to}");
        }
    }
    let millimetres = Measure::new(17.0, Unit::Millimetre).unwrap();
    assert_eq!(
        Temperature::try_from(millimetres),
        Err(TradeError::QuantityDiffers {
            unit: Unit::Millimetre,
            found: Quantity::Length,
            wanted: Quantity::Temperature
        })
    );
    // A stick is not an odometer, although both could be given in metres.
    assert!(Distance::try_from(millimetres).is_err());
}

#[test]
fn absolute_zero_is_the_lowest_temperature() -> Outcome {
    assert_eq!(Temperature::from_celsius(-273.15)?.celsius(), -273.15);
    assert_eq!(Temperature::from_fahrenheit(-459.67)?.celsius(), -273.15);
    let error = Temperature::from_fahrenheit(-459.68).unwrap_err();
    assert_eq!(
        error.to_string(),
        "-459.68 °F cannot be a temperature: it is below absolute zero. Check the sign and the unit."
    );
    assert!(Temperature::from_celsius(-273.16).is_err());
    Ok(())
}

#[test]
fn a_measure_that_no_instrument_shows_is_refused() {
    for unit in Unit::ALL {
        for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, f64::MAX, 1e300] {
            let error = Measure::new(value, *unit).unwrap_err();
            assert!(matches!(error, TradeError::NotMeasurable { .. }), "{value} {unit}: {error}");
        }
    }
}

#[test]
fn only_quantities_with_a_direction_or_a_mark_may_be_negative() {
    use Quantity::*;
    for unit in Unit::ALL {
        let signed = matches!(unit.quantity(), Temperature | Length | Torque | Voltage | Angle);
        assert_eq!(Measure::new(-0.5, *unit).is_ok(), signed, "{unit}");
    }
}

#[test]
fn a_value_is_written_to_json_with_its_unit() {
    let warm = Temperature::from_fahrenheit(176.0).unwrap();
    let text = serde_json::to_string(&warm).unwrap();
    assert_eq!(text, r#"{"value":80.0,"unit":"degree_celsius"}"#);
    assert_eq!(serde_json::from_str::<Temperature>(&text).unwrap(), warm);
    let typed: Torque = serde_json::from_str(r#"{"value": 10, "unit": "pound_force_foot"}"#).unwrap();
    assert!(same(typed.newton_metres(), 13.558179483314007), "value printed by pint 0.25.3");
}

#[test]
fn json_can_not_bring_in_what_a_constructor_refuses() {
    for text in [
        r#"{"value": -300, "unit": "degree_celsius"}"#,
        r#"{"value": 17, "unit": "millimetre"}"#,
        r#"{"value": 80}"#,
        r#"{"value": 80, "unit": "degree_celsius", "per": "mm"}"#,
        "80",
    ] {
        assert!(serde_json::from_str::<Temperature>(text).is_err(), "{text}");
    }
}

/// Every pair of units that convert into each other.
fn units_of_one_quantity() -> impl Strategy<Value = (Unit, Unit)> {
    let all = || Unit::ALL.iter().copied();
    let pairs = all().flat_map(|from| all().map(move |to| (from, to)));
    prop::sample::select(pairs.filter(|(from, to)| from.quantity() == to.quantity()).collect::<Vec<_>>())
}

proptest! {
    #[test]
    fn any_measure_comes_back_from_any_unit_of_its_quantity(
        value in 0.0..1e6_f64,
        (from, to) in units_of_one_quantity(),
    ) {
        let there = Measure::new(value, from).unwrap().to(to).unwrap();
        let back = there.to(from).unwrap();
        prop_assert!(same(back.value(), value), "{value} {from} came back as {}", back.value());
        prop_assert_eq!(back.unit(), from);
    }

    #[test]
    fn converting_keeps_the_order_of_values(
        one in 0.0..1e6_f64,
        step in 1e-3..1e3_f64,
        (from, to) in units_of_one_quantity(),
    ) {
        prop_assert!(convert(one, from, to).unwrap() < convert(one + step, from, to).unwrap());
    }
}
