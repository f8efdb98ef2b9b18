//! Values with their unit: [`Measure`] as it was read or typed, and one type for each quantity to calculate with,
//! so that a millimetre can't be passed for a degree.
//!
//! All of them are finite and can exist; who has one need not check it again. In JSON each is written with its unit,
//! such as `{"value": 80.0, "unit": "degree_celsius"}`.

use std::fmt;

use serde::{Deserialize, Serialize};

use crate::TradeError;
use crate::text::figure;
use crate::units::{Quantity, Unit};

/// Nothing in a bay measures more than this in its base unit. The limit keeps every conversion finite.
const LARGEST: f64 = 1e12;

/// A value in the unit it was read or typed in.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Unchecked")]
pub struct Measure {
    value: f64,
    unit: Unit,
}

/// A measure as it stands in JSON, before it is checked.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Unchecked {
    value: f64,
    unit: Unit,
}

impl TryFrom<Unchecked> for Measure {
    type Error = TradeError;

    fn try_from(unchecked: Unchecked) -> Result<Self, TradeError> {
        Measure::new(unchecked.value, unchecked.unit)
    }
}

impl Measure {
    /// Takes a value in a unit.
    ///
    /// # Errors
    /// [`TradeError::NotMeasurable`] if it is not finite or above 10¹² base units;
    /// [`TradeError::BelowLowest`] if it can't exist: below absolute zero, or a negative volume, resistance, distance,
    /// rotation speed or time.
    pub fn new(value: f64, unit: Unit) -> Result<Self, TradeError> {
        let base = unit.to_base(value);
        if !base.is_finite() || base.abs() > LARGEST {
            return Err(TradeError::NotMeasurable { value, unit });
        }
        match unit.quantity().lowest() {
            Some((least, lowest)) if base < least => {
                Err(TradeError::BelowLowest { value, unit, quantity: unit.quantity(), lowest })
            }
            _ => Ok(Self { value, unit }),
        }
    }

    /// The number, in [`Measure::unit`].
    pub fn value(self) -> f64 {
        self.value
    }

    /// The unit the number is in.
    pub fn unit(self) -> Unit {
        self.unit
    }

    /// The same measure in another unit of its quantity. Its own unit gives back the very same number.
    ///
    /// # Errors
    /// [`TradeError::QuantityDiffers`] if `unit` measures something else.
    pub fn to(self, unit: Unit) -> Result<Self, TradeError> {
        if unit == self.unit {
            return Ok(self);
        }
        self.of(unit.quantity())?;
        Ok(Self { value: unit.of_base(self.unit.to_base(self.value)), unit })
    }

    /// The measure itself, if it is of the quantity that is asked for.
    ///
    /// # Errors
    /// [`TradeError::QuantityDiffers`] if it is not.
    pub(crate) fn of(self, wanted: Quantity) -> Result<Self, TradeError> {
        let found = self.unit.quantity();
        if found == wanted {
            Ok(self)
        } else {
            Err(TradeError::QuantityDiffers { unit: self.unit, found, wanted })
        }
    }
}

impl fmt::Display for Measure {
    /// Four significant figures and the unit, such as `46 °C`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", figure(self.value), self.unit)
    }
}

/// Declares the type of one quantity: it holds the base unit and goes in and out by the units named.
macro_rules! quantity {
    ($(#[$meta:meta])* $name:ident in $base:ident { $($from:ident, $get:ident: $unit:ident, $words:literal;)+ }) => {
        $(#[$meta])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, Deserialize)]
        #[serde(try_from = "Measure", into = "Measure")]
        pub struct $name(f64);

        impl $name {
            $(
                #[doc = concat!("Takes a value in ", $words, ".\n\n# Errors\nAs [`Measure::new`].")]
                pub fn $from(value: f64) -> Result<Self, TradeError> {
                    Measure::new(value, Unit::$unit)?.try_into()
                }

                #[doc = concat!("The value in ", $words, ".")]
                pub fn $get(self) -> f64 {
                    Unit::$unit.of_base(self.0)
                }
            )+
        }

        impl From<$name> for Measure {
            fn from(it: $name) -> Measure {
                Measure { value: it.0, unit: Unit::$base }
            }
        }

        impl From<$name> for panside_messages::Arg {
            fn from(it: $name) -> panside_messages::Arg {
                Measure::from(it).into()
            }
        }

        impl fmt::Display for $name {
            /// Four significant figures and the base unit.
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                Measure::from(*self).fmt(f)
            }
        }

        impl TryFrom<Measure> for $name {
            type Error = TradeError;

            /// Takes a measure in any unit of this quantity; [`TradeError::QuantityDiffers`] for another quantity.
            fn try_from(measure: Measure) -> Result<Self, TradeError> {
                Ok(Self(measure.to(Unit::$base)?.value))
            }
        }
    };
}

quantity! {
    /// A temperature, not below absolute zero (−273.15 °C).
    Temperature in DegreeCelsius {
        from_celsius, celsius: DegreeCelsius, "degrees Celsius";
        from_fahrenheit, fahrenheit: DegreeFahrenheit, "degrees Fahrenheit";
    }
}
quantity! {
    /// A length on a part or a stick. Negative for a place below a mark.
    Length in Millimetre {
        from_millimetres, millimetres: Millimetre, "millimetres";
        from_inches, inches: Inch, "inches";
    }
}
quantity! {
    /// A turning moment. Its sign is the direction.
    Torque in NewtonMetre {
        from_newton_metres, newton_metres: NewtonMetre, "newton metres";
        from_pound_force_feet, pound_force_feet: PoundForceFoot, "pound-force feet";
        from_pound_force_inches, pound_force_inches: PoundForceInch, "pound-force inches";
        from_kilogram_force_metres, kilogram_force_metres: KilogramForceMetre, "kilogram-force metres";
        from_kilogram_force_centimetres, kilogram_force_centimetres: KilogramForceCentimetre,
            "kilogram-force centimetres";
    }
}
quantity! {
    /// An amount of fluid, 0 or more.
    Volume in Litre {
        from_litres, litres: Litre, "litres";
        from_millilitres, millilitres: Millilitre, "millilitres";
        from_us_quarts, us_quarts: UsQuart, "US liquid quarts";
    }
}
quantity! {
    /// An electrical resistance, 0 or more.
    Resistance in Ohm {
        from_ohms, ohms: Ohm, "ohms";
    }
}
quantity! {
    /// An electrical voltage. Its sign is the polarity.
    Voltage in Volt {
        from_volts, volts: Volt, "volts";
    }
}
quantity! {
    /// A distance driven, 0 or more.
    Distance in Kilometre {
        from_kilometres, kilometres: Kilometre, "kilometres";
        from_miles, miles: Mile, "miles";
    }
}
quantity! {
    /// A speed of rotation, 0 or more; which way it turns is not told by it.
    RotationSpeed in RevolutionPerMinute {
        from_rpm, rpm: RevolutionPerMinute, "revolutions per minute";
    }
}
quantity! {
    /// How long something takes, 0 or more.
    Duration in Minute {
        from_minutes, minutes: Minute, "minutes";
        from_seconds, seconds: Second, "seconds";
        from_hours, hours: Hour, "hours";
    }
}
quantity! {
    /// An angle. Its sign is the direction.
    Angle in Degree {
        from_degrees, degrees: Degree, "degrees";
    }
}
quantity! {
    /// How far two temperatures lie apart, or how far a thermometer may be off to both sides; 0 or more.
    TemperatureDifference in Kelvin {
        from_kelvins, kelvins: Kelvin, "kelvins";
    }
}
quantity! {
    /// Mass for each volume, 0 or more.
    Density in KilogramPerCubicMetre {
        from_kilograms_per_cubic_metre, kilograms_per_cubic_metre: KilogramPerCubicMetre, "kilograms per cubic metre";
    }
}
quantity! {
    /// A force along a bolt, 0 or more.
    Force in Kilonewton {
        from_kilonewtons, kilonewtons: Kilonewton, "kilonewtons";
    }
}
impl From<Measure> for panside_messages::Arg {
    fn from(measure: Measure) -> panside_messages::Arg {
        panside_messages::Arg::Text(measure.to_string())
    }
}
