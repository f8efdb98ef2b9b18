//! How much the volume of transmission fluid changes with its temperature.

use crate::FigureError;
use crate::measure::{Density, Temperature, Volume};

/// Where the volumes of a job are compared.
pub const REFERENCE_CELSIUS: f64 = 15.0;

/// Densities at 15 °C for which the table of lubricating oils stands, in kg/m³.
pub const DENSITY_RANGE: (f64, f64) = (800.9, 1163.5);

/// Temperatures for which it is used, in °C. The table of 1980 ends at 95 °C; later editions are said to reach further.
pub const TEMPERATURE_RANGE: (f64, f64) = (-40.0, 95.0);

/// K0 and K1 of ASTM D1250 table 54D, lubricating oils, in kg/m³ and °C; K2 is 0.
const LUBRICATING_OIL: (f64, f64) = (0.0, 0.6278);

/// A fluid's factor from the volume at one temperature to the volume at 15 °C, and how that factor changes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct VolumeFactor {
    /// Volume at 15 °C for each volume at the temperature.
    pub factor: f64,
    /// Its change for each °C.
    pub per_celsius: f64,
    /// Its change for each kg/m³ of the density.
    pub per_density: f64,
}

/// The factor from the volume at `temperature` to the volume at 15 °C, by the formula of ASTM D1250 for lubricating
/// oils: exp(−a ΔT (1 + 0.8 a ΔT)) with a = 0.6278 / density and ΔT from 15 °C. `density` is the one at 15 °C. An
/// estimate for transmission fluid, which is an oil with many additives.
///
/// # Errors
/// [`FigureError::DensityRange`] outside 800.9 to 1163.5 kg/m³, [`FigureError::FluidTemperature`] outside −40 to 95 °C.
pub fn volume_factor(temperature: Temperature, density: Density) -> Result<VolumeFactor, FigureError> {
    let (rho, celsius) = (density.kilograms_per_cubic_metre(), temperature.celsius());
    if !(DENSITY_RANGE.0..=DENSITY_RANGE.1).contains(&rho) {
        return Err(FigureError::DensityRange { density });
    }
    if !(TEMPERATURE_RANGE.0..=TEMPERATURE_RANGE.1).contains(&celsius) {
        return Err(FigureError::FluidTemperature { temperature });
    }
    Ok(factor(LUBRICATING_OIL, rho, celsius))
}

/// The formula with the constants of a table, for a density in kg/m³ and a temperature in °C.
fn factor((k0, k1): (f64, f64), rho: f64, celsius: f64) -> VolumeFactor {
    let a = k0 / (rho * rho) + k1 / rho;
    let change = a * (celsius - REFERENCE_CELSIUS);
    let factor = (-change * (1.0 + 0.8 * change)).exp();
    let slope = -factor * (1.0 + 1.6 * change);
    let a_per_density = -2.0 * k0 / (rho * rho * rho) - k1 / (rho * rho);
    VolumeFactor {
        factor,
        per_celsius: slope * a,
        per_density: slope * a_per_density * (celsius - REFERENCE_CELSIUS),
    }
}

/// A volume taken at one temperature, at another temperature.
///
/// # Errors
/// As [`volume_factor`].
pub fn volume_at(
    volume: Volume,
    from: Temperature,
    to: Temperature,
    density: Density,
) -> Result<Volume, FigureError> {
    let factor = volume_factor(from, density)?.factor / volume_factor(to, density)?.factor;
    Ok(Volume::from_litres(volume.litres() * factor)?)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_formula_gives_published_factors_of_its_sister_tables() {
        // Table 54A, 1050 kg/m³ at 55 °C: 0.97758 (a published table, scribd 192833803). Table 54B, 992 kg/m³ at 36 °C:
        // 0.9857 (scribd 370250180). The constants of 54A as given there; those of 54B from memory.
        assert_eq!(format!("{:.5}", factor((613.9723, 0.0), 1050.0, 55.0).factor), "0.97758");
        assert_eq!(format!("{:.4}", factor((186.9696, 0.48618), 992.0, 36.0).factor), "0.9857");
    }

    #[test]
    fn the_slopes_are_those_of_the_factor() {
        for (rho, celsius) in [(850.0, 80.0), (870.0, -10.0), (1000.0, 40.0)] {
            let at = |rho: f64, celsius: f64| factor(LUBRICATING_OIL, rho, celsius).factor;
            let found = factor(LUBRICATING_OIL, rho, celsius);
            let by_celsius = (at(rho, celsius + 1e-3) - at(rho, celsius - 1e-3)) / 2e-3;
            let by_density = (at(rho + 1e-3, celsius) - at(rho - 1e-3, celsius)) / 2e-3;
            assert!((found.per_celsius - by_celsius).abs() < 1e-9, "{found:?}");
            assert!((found.per_density - by_density).abs() < 1e-9, "{found:?}");
        }
    }
}
