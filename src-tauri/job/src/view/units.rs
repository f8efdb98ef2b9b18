//! In which units a value may be typed: those that are in use for it beside each other.

use panside_procedure::format::Ask;
use panside_trade::units::{Quantity, Unit};

/// Symbols of the units for a quantity, the usual one first.
pub(crate) fn of(quantity: Quantity, usual: Unit) -> Vec<String> {
    let beside: &[Unit] = match quantity {
        Quantity::Temperature => &[Unit::DegreeCelsius, Unit::DegreeFahrenheit],
        Quantity::Length => &[Unit::Millimetre, Unit::Inch],
        Quantity::Torque => &[Unit::NewtonMetre, Unit::PoundForceFoot, Unit::PoundForceInch],
        Quantity::Volume => &[Unit::Litre, Unit::UsQuart],
        Quantity::Distance => &[Unit::Kilometre, Unit::Mile],
        _ => &[],
    };
    let others = beside.iter().copied().filter(|unit| *unit != usual);
    std::iter::once(usual).chain(others).map(|unit| unit.symbol().to_owned()).collect()
}

/// Symbols of the units for an entry. A level's are those of its trace.
pub(super) fn units(ask: &Ask) -> Vec<String> {
    match ask {
        Ask::Reading(asked) => asked
            .unit
            .parse::<Unit>()
            .map_or_else(|_| vec![asked.unit.clone()], |unit| of(unit.quantity(), unit)),
        Ask::Level(_) => of(Quantity::Length, Unit::Millimetre),
        Ask::Torque(_) => of(Quantity::Torque, Unit::NewtonMetre),
        Ask::Coil(_) => of(Quantity::Resistance, Unit::Ohm),
        Ask::CoolDown(_) => of(Quantity::Temperature, Unit::DegreeCelsius),
        _ => Vec::new(),
    }
}

/// Symbols of the units for the temperature of a level, a coil or fluid from the can.
pub(super) fn temperature_units(ask: &Ask) -> Vec<String> {
    match ask {
        Ask::Level(_) | Ask::Coil(_) | Ask::Balance(_) => of(Quantity::Temperature, Unit::DegreeCelsius),
        _ => Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_reading_is_typed_in_the_unit_it_is_asked_in_or_in_the_one_beside_it() {
        let reading =
            |unit: &str| serde_json::from_value(serde_json::json!({"reading": {"unit": unit}})).unwrap();
        assert_eq!(units(&reading("°F")), ["°F", "°C"]);
        assert_eq!(units(&reading("L")), ["L", "qt"]);
        assert_eq!(units(&reading("V")), ["V"]);
    }
}
