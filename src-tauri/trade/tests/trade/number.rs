//! Numbers and measures as people type them.

use panside_trade::TradeError;
use panside_trade::measure::Measure;
use panside_trade::number::{parse_measure, parse_number};
use panside_trade::units::{Quantity, Unit};
use proptest::prelude::*;

use crate::Outcome;

#[test]
fn comma_and_point_are_both_decimal_signs() {
    for (text, value) in [
        ("17", 17.0),
        ("17.5", 17.5),
        ("17,5", 17.5),
        ("1,234", 1.234),
        ("1.234", 1.234),
        (".5", 0.5),
        (",5", 0.5),
        ("007", 7.0),
        ("-12,75", -12.75),
        ("\u{2212}12.75", -12.75),
        ("-.5", -0.5),
        ("  58 ", 58.0),
        ("\u{00A0}58\u{202F}", 58.0),
        ("\t3.6\n", 3.6),
    ] {
        assert_eq!(parse_number(text), Ok(value), "{text:?}");
    }
}

#[test]
fn zero_has_no_sign() -> Outcome {
    assert!(parse_number("-0")?.is_sign_positive());
    assert!(parse_number("\u{2212}0,0")?.is_sign_positive());
    Ok(())
}

#[test]
fn a_number_that_can_be_read_in_two_ways_is_refused() {
    for text in ["1,234.5", "1.234,5", "1,234,567", "1.234.567", "1..5", ",.5"] {
        assert_eq!(parse_number(text), Err(TradeError::NumberSeparators { text: text.to_owned() }), "{text}");
    }
}

#[test]
fn nothing_typed_is_no_zero() {
    for text in ["", " ", "\u{00A0}\t"] {
        assert_eq!(parse_number(text), Err(TradeError::NumberEmpty), "{text:?}");
    }
}

#[test]
fn a_number_that_breaks_off_is_refused() {
    for text in ["-", ".", ",", "5.", "12,", "-."] {
        assert_eq!(parse_number(text), Err(TradeError::NumberUnfinished { text: text.to_owned() }), "{text}");
    }
}

#[test]
fn letters_inner_spaces_and_stray_signs_are_refused() {
    for (text, character) in [
        ("NaN", 'N'),
        ("inf", 'i'),
        ("-infinity", 'i'),
        ("1e5", 'e'),
        ("0x10", 'x'),
        ("1 234", ' '),
        ("1'234", '\''),
        ("1_234", '_'),
        ("--5", '-'),
        ("- 5", ' '),
        ("5-", '-'),
        ("5\u{2212}3", '\u{2212}'),
        ("+5", '+'),
        ("٣", '٣'),
    ] {
        assert_eq!(
            parse_number(text),
            Err(TradeError::NumberCharacter { text: text.to_owned(), character }),
            "{text}"
        );
    }
}

#[test]
fn a_number_without_finite_value_is_refused() {
    let text = "9".repeat(400);
    assert_eq!(parse_number(&text), Err(TradeError::NumberTooLarge { text }));
}

#[test]
fn a_measure_keeps_the_unit_that_was_typed() -> Outcome {
    for (text, default_unit, value, unit) in [
        ("58", Unit::DegreeCelsius, 58.0, Unit::DegreeCelsius),
        ("136,4 °F", Unit::DegreeCelsius, 136.4, Unit::DegreeFahrenheit),
        ("-5C", Unit::DegreeCelsius, -5.0, Unit::DegreeCelsius),
        ("9 N·m", Unit::NewtonMetre, 9.0, Unit::NewtonMetre),
        ("80 in-lb", Unit::NewtonMetre, 80.0, Unit::PoundForceInch),
        ("12.5N.m", Unit::PoundForceFoot, 12.5, Unit::NewtonMetre),
        ("3.6L", Unit::Litre, 3.6, Unit::Litre),
        (" 5,8 Ω ", Unit::Ohm, 5.8, Unit::Ohm),
    ] {
        assert_eq!(parse_measure(text, default_unit), Measure::new(value, unit), "{text}");
        Measure::new(value, unit)?;
    }
    Ok(())
}

#[test]
fn a_measure_of_another_quantity_is_refused() {
    assert_eq!(
        parse_measure("17 mm", Unit::DegreeCelsius),
        Err(TradeError::QuantityDiffers {
            unit: Unit::Millimetre,
            found: Quantity::Length,
            wanted: Quantity::Temperature
        })
    );
}

#[test]
fn a_measure_is_refused_for_its_number_its_unit_or_its_value() {
    let refused = |text| parse_measure(text, Unit::DegreeCelsius).unwrap_err();
    assert_eq!(refused("°C"), TradeError::NumberEmpty);
    assert_eq!(refused("1 234 °C"), TradeError::NumberCharacter { text: "1 234".to_owned(), character: ' ' });
    assert!(matches!(refused("58 Ra"), TradeError::UnitUnknown { .. }));
    // A kelvin is a difference here: nobody reads a thermometer in it.
    assert!(matches!(refused("58 K"), TradeError::QuantityDiffers { .. }));
    assert!(matches!(refused("1e3"), TradeError::UnitUnknown { .. }));
    assert!(matches!(refused("-300 C"), TradeError::BelowLowest { .. }));
}

proptest! {
    #[test]
    fn reading_any_text_never_panics_and_gives_finite_values(text in any::<String>()) {
        if let Ok(value) = parse_number(&text) {
            prop_assert!(value.is_finite());
        }
        for unit in Unit::ALL {
            if let Ok(measure) = parse_measure(&text, *unit) {
                prop_assert!(measure.value().is_finite());
                prop_assert_eq!(measure.unit().quantity(), unit.quantity());
            }
        }
    }

    #[test]
    fn reading_anything_like_a_number_never_panics(text in "[-\u{2212} ]?[0-9., ]{0,12}[ ]?[°CFNmΩlbft·.-]{0,6}") {
        if let Ok(value) = parse_number(&text) {
            let digits: String = text.chars().filter(char::is_ascii_digit).collect();
            prop_assert!(!digits.is_empty() && value.is_finite());
        }
        if let Ok(measure) = parse_measure(&text, Unit::NewtonMetre) {
            prop_assert_eq!(measure.unit().quantity(), Quantity::Torque);
        }
    }

    #[test]
    fn a_number_that_was_printed_is_read_back_exactly(value in -1e9..1e9_f64) {
        let printed = value.to_string();
        prop_assert_eq!(parse_number(&printed), Ok(value));
        prop_assert_eq!(parse_number(&printed.replace('.', ",").replace('-', "\u{2212}")), Ok(value));
    }
}
