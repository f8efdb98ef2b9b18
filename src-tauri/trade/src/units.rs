//! The units that are in use in the bay, what each measures, how it is written and its size.
//!
//! One list holds everything about a unit. Sizes are exact: pound = 0.45359237 kg, standard gravity = 9.80665 m/s²,
//! inch = 25.4 mm, US quart = 57.75 cubic inches, mile = 1.609344 km (NIST SP 811, appendix B).

use std::fmt;
use std::str::FromStr;

use panside_messages::Message;
use serde::{Deserialize, Serialize};

use crate::TradeError;
use crate::message::*;

/// What a unit measures. Values of different quantities never convert into each other, so a length read on a stick
/// and a distance driven are kept apart although both could be given in metres.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Quantity {
    /// How hot; base unit °C.
    Temperature,
    /// A length on a part or a stick; base unit mm. Negative for a place below a mark.
    Length,
    /// A turning moment; base unit N·m. Its sign is the direction.
    Torque,
    /// An amount of fluid; base unit L.
    Volume,
    /// An electrical resistance; base unit Ω.
    Resistance,
    /// An electrical voltage; base unit V. Its sign is the polarity.
    Voltage,
    /// A distance driven; base unit km.
    Distance,
    /// A speed of rotation; base unit rpm.
    RotationSpeed,
    /// A duration; base unit min.
    Time,
    /// An angle; base unit degree. Its sign is the direction.
    Angle,
    /// How far two temperatures lie apart, or how far a thermometer may be off; base unit K. Never negative.
    TemperatureDifference,
    /// Mass for each volume; base unit kg/m³.
    Density,
    /// A force along a bolt; base unit kN.
    Force,
    /// How far a level rises on its stick for each volume; base unit mm/L.
    Rise,
    /// A fluid's pressure above that of the air around it, as a gauge shows it; base unit kPa.
    Pressure,
}

impl Quantity {
    /// The lowest value that can exist, in the base unit and in words; `None` where a sign has a meaning.
    pub(crate) fn lowest(self) -> Option<(f64, Lowest)> {
        match self {
            Quantity::Temperature => Some((-273.15, Lowest::AbsoluteZero)),
            Quantity::Volume
            | Quantity::Resistance
            | Quantity::Distance
            | Quantity::RotationSpeed
            | Quantity::Time
            | Quantity::TemperatureDifference
            | Quantity::Density
            | Quantity::Force
            | Quantity::Rise
            | Quantity::Pressure => Some((0.0, Lowest::Zero)),
            Quantity::Length | Quantity::Torque | Quantity::Voltage | Quantity::Angle => None,
        }
    }
}

impl Quantity {
    /// What it is called in a sentence.
    #[must_use]
    pub fn message(self) -> Message {
        match self {
            Quantity::Temperature => trade_quantity_temperature(),
            Quantity::Length => trade_quantity_length(),
            Quantity::Torque => trade_quantity_torque(),
            Quantity::Volume => trade_quantity_volume(),
            Quantity::Resistance => trade_quantity_resistance(),
            Quantity::Voltage => trade_quantity_voltage(),
            Quantity::Distance => trade_quantity_distance(),
            Quantity::RotationSpeed => trade_quantity_rotation_speed(),
            Quantity::Time => trade_quantity_time(),
            Quantity::Angle => trade_quantity_angle(),
            Quantity::TemperatureDifference => trade_quantity_temperature_difference(),
            Quantity::Density => trade_quantity_density(),
            Quantity::Force => trade_quantity_force(),
            Quantity::Rise => trade_quantity_rise(),
            Quantity::Pressure => trade_quantity_pressure(),
        }
    }
}

/// The lowest value that a quantity can have.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lowest {
    /// Absolute zero, of a temperature.
    AbsoluteZero,
    /// Zero.
    Zero,
}

impl Lowest {
    pub(crate) fn message(self) -> Message {
        match self {
            Lowest::AbsoluteZero => trade_lowest_absolute_zero(),
            Lowest::Zero => trade_lowest_zero(),
        }
    }
}

/// Everything about one unit: base value = (value − `zero`) × `size` / `parts`.
struct Definition {
    quantity: Quantity,
    symbol: &'static str,
    /// Other ways to write it: small letters, with `·` for whatever joins two units (see [`plain`]).
    spellings: &'static [&'static str],
    size: f64,
    /// 9 for °F, 60 for the second and 1 else: a ninth can't be written exactly, so the division is kept for the end.
    /// Without it −459.67 °F would come out below absolute zero.
    parts: f64,
    zero: f64,
}

/// Declares the units, so that the list of all units and their definitions can't drift apart.
macro_rules! units {
    ($($(#[$meta:meta])* $unit:ident: $quantity:ident, $symbol:literal, $spellings:expr, $size:expr, $parts:expr, $zero:expr;)+) => {
        /// A unit in use. Serialised by its name in snake case, such as `newton_metre`.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
        #[serde(rename_all = "snake_case")]
        pub enum Unit { $($(#[$meta])* $unit,)+ }

        impl Unit {
            /// Every unit there is.
            pub const ALL: &[Unit] = &[$(Unit::$unit,)+];

            fn definition(self) -> Definition {
                match self {
                    $(Unit::$unit => Definition {
                        quantity: Quantity::$quantity,
                        symbol: $symbol,
                        spellings: &$spellings,
                        size: $size,
                        parts: $parts,
                        zero: $zero,
                    },)+
                }
            }
        }
    };
}

/// One pound-force in newtons.
const POUND_FORCE: f64 = 0.453_592_37 * KILOGRAM_FORCE;
/// One kilogram-force in newtons.
const KILOGRAM_FORCE: f64 = 9.806_65;

units! {
    /// Degree Celsius.
    DegreeCelsius: Temperature, "°C", ["c", "degc"], 1.0, 1.0, 0.0;
    /// Degree Fahrenheit.
    DegreeFahrenheit: Temperature, "°F", ["f", "degf"], 5.0, 9.0, 32.0;
    /// Millimetre.
    Millimetre: Length, "mm", [], 1.0, 1.0, 0.0;
    /// Inch, 25.4 mm.
    Inch: Length, "in", ["inch"], 25.4, 1.0, 0.0;
    /// Newton metre.
    NewtonMetre: Torque, "N·m", ["nm"], 1.0, 1.0, 0.0;
    /// Pound-force foot, 12 pound-force inches.
    PoundForceFoot: Torque, "lbf·ft",
        ["lbfft", "lb·ft", "lbft", "ft·lb", "ftlb", "ft·lbs", "ft·lbf", "ftlbf"], POUND_FORCE * 0.3048, 1.0, 0.0;
    /// Pound-force inch.
    PoundForceInch: Torque, "lbf·in",
        ["lbfin", "lb·in", "lbin", "in·lb", "inlb", "in·lbs", "in·lbf", "inlbf"], POUND_FORCE * 0.0254, 1.0, 0.0;
    /// Kilogram-force metre.
    KilogramForceMetre: Torque, "kgf·m", ["kgfm", "kg·m", "kgm"], KILOGRAM_FORCE, 1.0, 0.0;
    /// Kilogram-force centimetre.
    KilogramForceCentimetre: Torque, "kgf·cm", ["kgfcm", "kg·cm", "kgcm"], KILOGRAM_FORCE * 0.01, 1.0, 0.0;
    /// Litre.
    Litre: Volume, "L", ["litre", "liter"], 1.0, 1.0, 0.0;
    /// Millilitre.
    Millilitre: Volume, "mL", [], 0.001, 1.0, 0.0;
    /// US liquid quart, 57.75 cubic inches.
    UsQuart: Volume, "qt", ["us·qt", "quart", "us·quart"], 0.946_352_946, 1.0, 0.0;
    /// Ohm.
    Ohm: Resistance, "Ω", ["ohm", "ohms"], 1.0, 1.0, 0.0;
    /// Kiloohm.
    Kiloohm: Resistance, "kΩ", ["kohm", "kiloohm", "kiloohms"], 1_000.0, 1.0, 0.0;
    /// Megaohm. With a small `m` it is no unit here: a milliohm is a billionth of it.
    Megaohm: Resistance, "MΩ", ["mohm", "megaohm", "megohm", "megaohms"], 1_000_000.0, 1.0, 0.0;
    /// Volt.
    Volt: Voltage, "V", ["volt", "volts"], 1.0, 1.0, 0.0;
    /// Millivolt.
    Millivolt: Voltage, "mV", ["millivolt", "millivolts"], 0.001, 1.0, 0.0;
    /// Kilometre driven.
    Kilometre: Distance, "km", [], 1.0, 1.0, 0.0;
    /// Mile driven.
    Mile: Distance, "mi", ["mile", "miles"], 1.609_344, 1.0, 0.0;
    /// Revolution per minute.
    RevolutionPerMinute: RotationSpeed, "rpm", ["r/min"], 1.0, 1.0, 0.0;
    /// Minute.
    Minute: Time, "min", ["minute", "minutes"], 1.0, 1.0, 0.0;
    /// Second, a sixtieth of a minute.
    Second: Time, "s", ["sec", "second", "seconds"], 1.0, 60.0, 0.0;
    /// Hour, 60 minutes.
    Hour: Time, "h", ["hour", "hours"], 60.0, 1.0, 0.0;
    /// Degree of angle.
    Degree: Angle, "°", ["deg"], 1.0, 1.0, 0.0;
    /// Kelvin, for a difference only: what is read on a thermometer is in °C or °F.
    Kelvin: TemperatureDifference, "K", ["kelvin"], 1.0, 1.0, 0.0;
    /// Kilogram per cubic metre.
    KilogramPerCubicMetre: Density, "kg/m³", ["kg/m3"], 1.0, 1.0, 0.0;
    /// Kilonewton.
    Kilonewton: Force, "kN", [], 1.0, 1.0, 0.0;
    /// Millimetre on the stick for each litre.
    MillimetrePerLitre: Rise, "mm/L", [], 1.0, 1.0, 0.0;
    /// Kilopascal.
    Kilopascal: Pressure, "kPa", [], 1.0, 1.0, 0.0;
    /// Bar, 100 kPa.
    Bar: Pressure, "bar", [], 100.0, 1.0, 0.0;
    /// Pound-force per square inch.
    PoundForcePerSquareInch: Pressure, "psi", ["lbf/in²", "lbf/in2"], POUND_FORCE / (0.0254 * 0.0254 * 1_000.0), 1.0, 0.0;
}

impl Unit {
    /// What this unit measures.
    pub fn quantity(self) -> Quantity {
        self.definition().quantity
    }

    /// The symbol to show, such as `N·m`.
    pub fn symbol(self) -> &'static str {
        self.definition().symbol
    }

    /// A value in this unit, in the base unit of its quantity.
    pub(crate) fn to_base(self, value: f64) -> f64 {
        let unit = self.definition();
        (value - unit.zero) * unit.size / unit.parts
    }

    /// A value in the base unit of its quantity, in this unit.
    pub(crate) fn of_base(self, base: f64) -> f64 {
        let unit = self.definition();
        base * unit.parts / unit.size + unit.zero
    }
}

impl fmt::Display for Unit {
    /// The symbol.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.symbol())
    }
}

impl FromStr for Unit {
    type Err = TradeError;

    /// Reads a unit as people write it: capital or small letters, and `·`, a point, a hyphen or a space between
    /// joined units (`N·m`, `Nm`, `N.m`, `ft-lb`). Only `M` and `m` before an ohm are not the same.
    ///
    /// # Errors
    /// [`TradeError::UnitUnknown`] for anything else.
    fn from_str(text: &str) -> Result<Self, TradeError> {
        let wanted = plain(text);
        let is_written_so = |unit: &Unit| {
            let unit = unit.definition();
            plain(unit.symbol) == wanted || unit.spellings.contains(&wanted.as_str())
        };
        let is_milliohm = |unit: &Unit| {
            *unit == Unit::Megaohm && text.trim().starts_with('m') && !wanted.starts_with("meg")
        };
        let found = Unit::ALL.iter().copied().find(is_written_so).filter(|unit| !is_milliohm(unit));
        found.ok_or_else(|| TradeError::UnitUnknown {
            text: text.trim().to_owned(),
            known: Unit::ALL.iter().map(|unit| unit.symbol()).collect::<Vec<_>>().join(", "),
        })
    }
}

/// Brings a spelling to one form: small letters and `·` as the only joint.
fn plain(text: &str) -> String {
    text.trim()
        .chars()
        .map(|c| if matches!(c, '.' | '-' | ' ' | '*' | '\u{22C5}' | '\u{2022}') { '·' } else { c })
        .flat_map(char::to_lowercase)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_two_units_share_a_spelling() {
        let mut seen = std::collections::BTreeSet::new();
        for unit in Unit::ALL {
            let definition = unit.definition();
            assert!(seen.insert(plain(definition.symbol)), "{unit}");
            for spelling in definition.spellings {
                assert_eq!(*spelling, plain(spelling), "spellings are kept in plain form");
                assert!(seen.insert((*spelling).to_owned()), "{unit}: {spelling}");
            }
        }
    }

    #[test]
    fn the_ohm_sign_and_the_greek_letter_are_one_unit() {
        // U+2126 and U+03A9 look alike; keyboards give either.
        assert_eq!("\u{2126}".parse(), Ok(Unit::Ohm));
        assert_eq!("\u{03A9}".parse(), Ok(Unit::Ohm));
    }

    #[test]
    fn base_units_have_size_one_and_start_at_zero() {
        for unit in [Unit::DegreeCelsius, Unit::Millimetre, Unit::NewtonMetre, Unit::Litre, Unit::Kilometre] {
            assert_eq!(unit.to_base(7.25), 7.25);
            assert_eq!(unit.of_base(7.25), 7.25);
        }
    }
}
