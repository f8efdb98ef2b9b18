//! An infrared reading of a surface: what the surface really is, and whether that is evidence that it can be touched.
//!
//! A bare bright pipe sends out little of its own and reflects the cool workshop: the meter reads far too low.

use serde::{Deserialize, Serialize};

use crate::FigureError;
use crate::measure::Temperature;
use crate::message::working::*;
use crate::source;
use crate::text::{figure, figure_to};
use crate::working::{Worked, Working};

/// The band in which hand-held meters look, in µm.
const BAND: (f64, f64) = (8.0, 14.0);

/// Second radiation constant, in µm·K (CODATA 2018).
const C2: f64 = 14_387.768_775;

/// Temperatures that are worked out, in °C.
const RANGE: (f64, f64) = (-50.0, 1000.0);

/// Below this emissivity a surface counts as bright: what meters' manuals call low.
const BRIGHT_BELOW: f64 = 0.6;

/// What the surface is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Surface {
    /// Matt paint, tape or a marker made for it: 0.92 to 0.97.
    Coated,
    /// Oxidised steel or iron: 0.5 to 0.9.
    Oxidised,
    /// Red rust: 0.5 to 0.85.
    Rusty,
    /// Bare bright steel or aluminium: 0.02 to 0.3.
    Bright,
}

impl Surface {
    /// The emissivity at 8 to 14 µm, from the lowest to the highest that the tables in manuals give; where they differ,
    /// the wider range, since a low one makes the surface hotter than it reads.
    pub fn emissivity(self) -> Emissivity {
        let (lowest, highest) = match self {
            Surface::Coated => (0.92, 0.97),
            Surface::Oxidised => (0.5, 0.9),
            Surface::Rusty => (0.5, 0.85),
            Surface::Bright => (0.02, 0.3),
        };
        Emissivity { lowest, highest }
    }
}

/// An emissivity, from its lowest to its highest likely value, above 0 and at most 1.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Unchecked")]
pub struct Emissivity {
    lowest: f64,
    highest: f64,
}

/// An emissivity as it stands in JSON, before it is checked.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Unchecked {
    lowest: f64,
    highest: f64,
}

impl TryFrom<Unchecked> for Emissivity {
    type Error = FigureError;

    fn try_from(unchecked: Unchecked) -> Result<Emissivity, FigureError> {
        Emissivity::new(unchecked.lowest, unchecked.highest)
    }
}

impl Emissivity {
    /// Takes the lowest and the highest likely value.
    ///
    /// # Errors
    /// [`FigureError::EmissivityRange`] unless 0 < lowest ≤ highest ≤ 1.
    pub fn new(lowest: f64, highest: f64) -> Result<Emissivity, FigureError> {
        if lowest > 0.0 && lowest <= highest && highest <= 1.0 {
            Ok(Emissivity { lowest, highest })
        } else {
            Err(FigureError::EmissivityRange { lowest, highest })
        }
    }
}

/// What was read.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct InfraredReading {
    /// What the meter shows.
    pub shows: Temperature,
    /// The emissivity that is set on it, above 0 and at most 1.
    pub set_to: f64,
    /// What the surface's is.
    pub surface: Emissivity,
    /// Temperature of the surroundings that the surface reflects; the meter is held to reckon with the same.
    pub ambient: Temperature,
}

/// What the surface really is.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct SurfaceTemperature {
    /// What was read.
    pub reading: InfraredReading,
    /// With the middle of the surface's emissivity.
    pub likely: Temperature,
    /// The lowest it may be.
    pub lowest: Temperature,
    /// The highest it may be.
    pub highest: Temperature,
    /// Whether the reading is evidence that the surface can be touched. A bright surface never is.
    pub is_evidence: bool,
}

/// Radiance from 8 to 14 µm at a temperature in °C, in any unit: Planck's law, added up by Simpson's rule.
fn radiance(celsius: f64) -> f64 {
    const PARTS: u32 = 200;
    let kelvins = celsius + 273.15;
    let step = (BAND.1 - BAND.0) / f64::from(PARTS);
    let at = |part: u32| {
        let wave = BAND.0 + step * f64::from(part);
        let weight = match part {
            0 | PARTS => 1.0,
            _ if part % 2 == 1 => 4.0,
            _ => 2.0,
        };
        weight / (wave.powi(5) * (C2 / (wave * kelvins)).exp_m1())
    };
    (0..=PARTS).map(at).sum::<f64>() * step / 3.0
}

/// Works out the true temperature of a surface: what the meter took up is emissivity × surface + (1 − emissivity) ×
/// surroundings, once with the emissivity that is set and once with that of the surface.
///
/// # Errors
/// [`FigureError::EmissivityRange`] for the setting, [`FigureError::Radiation`] if a temperature lies outside −50 to
/// 1000 °C or no surface there could give that reading.
pub fn surface_temperature(reading: InfraredReading) -> Result<SurfaceTemperature, FigureError> {
    let set = Emissivity::new(reading.set_to, reading.set_to)?.lowest;
    let (shown, ambient) = (reading.shows.celsius(), reading.ambient.celsius());
    let inside = |celsius: f64| (RANGE.0..=RANGE.1).contains(&celsius);
    if !inside(shown) || !inside(ambient) {
        return Err(FigureError::Radiation { shows: reading.shows });
    }
    let over = set * (radiance(shown) - radiance(ambient));
    let real = |emissivity: f64| {
        let wanted = radiance(ambient) + over / emissivity;
        let reached = radiance(RANGE.0)..=radiance(RANGE.1);
        if !reached.contains(&wanted) {
            return Err(FigureError::Radiation { shows: reading.shows });
        }
        let (mut low, mut high) = RANGE;
        for _ in 0..60 {
            let middle = (low + high) / 2.0;
            if radiance(middle) < wanted { low = middle } else { high = middle }
        }
        Ok(Temperature::from_celsius((low + high) / 2.0)?)
    };
    let Emissivity { lowest, highest } = reading.surface;
    let (one, other) = (real(lowest)?, real(highest)?);
    Ok(SurfaceTemperature {
        reading,
        likely: real((lowest + highest) / 2.0)?,
        lowest: if one < other { one } else { other },
        highest: if one < other { other } else { one },
        is_evidence: lowest >= BRIGHT_BELOW,
    })
}

impl Worked for SurfaceTemperature {
    fn working(&self) -> Working {
        let InfraredReading { shows, set_to, surface: Emissivity { lowest, highest }, ambient } =
            self.reading;
        let mut working = Working::of(working_surface())
            .given(working_meter_shows(), shows)
            .given(working_surface_set_to(), figure(set_to))
            .given(working_surface_emissivity(), working_range(figure(lowest), figure(highest)))
            .given(working_surroundings(), ambient);
        // A surface colder than the surroundings turns the two round.
        let (for_lowest, for_highest) = if shows < ambient { (lowest, highest) } else { (highest, lowest) };
        for (what, emissivity, temperature) in [
            (working_surface_lowest(), for_lowest, self.lowest),
            (working_surface_highest(), for_highest, self.highest),
        ] {
            let ratio = format!("{} / {}", figure(set_to), figure_to(emissivity, 3));
            let how = format!("L⁻¹(L({ambient}) + {ratio} × (L({shows}) − L({ambient})))");
            working = working.step(what, how, temperature);
        }
        working = working.answer(working_surface_is(self.likely, self.lowest, self.highest));
        if !self.is_evidence {
            working = working.answer(working_surface_no_evidence());
        }
        working.sources([source::planck(), source::radiometry(), source::emissivities()])
    }
}
