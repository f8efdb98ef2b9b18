//! In which units a value may be typed: those that are in use for it beside each other.

use panside_trade::units::{Quantity, Unit};

/// Symbols of the units for a quantity, the usual one first.
pub(crate) fn of(quantity: Quantity, usual: Unit) -> Vec<String> {
    let beside: &[Unit] = match quantity {
        Quantity::Temperature => &[Unit::DegreeCelsius, Unit::DegreeFahrenheit],
        Quantity::Length => &[Unit::Millimetre, Unit::Inch],
        Quantity::Torque => &[Unit::NewtonMetre, Unit::PoundForceFoot, Unit::PoundForceInch],
        Quantity::Volume => &[Unit::Litre, Unit::UsQuart],
        Quantity::Resistance => &[Unit::Ohm, Unit::Kiloohm, Unit::Megaohm],
        Quantity::Voltage => &[Unit::Volt, Unit::Millivolt],
        Quantity::Distance => &[Unit::Kilometre, Unit::Mile],
        _ => &[],
    };
    let others = beside.iter().copied().filter(|unit| *unit != usual);
    std::iter::once(usual).chain(others).map(|unit| unit.symbol().to_owned()).collect()
}
