//! What was drained against what went in, both at 15 °C, with the uncertainty of the difference. A difference that is
//! smaller than its own uncertainty says nothing.

use serde::{Deserialize, Serialize};

use crate::FigureError;
use crate::expansion::{VolumeFactor, volume_factor};
use crate::measure::{Density, Temperature, TemperatureDifference, Volume};
use crate::message::working::*;
use crate::source;
use crate::text::{figure, figure_to};
use crate::working::{Worked, Working};

/// Coverage factor of the uncertainty that is told: about 95 %.
const COVERAGE: f64 = 2.0;

/// A volume that was measured.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Amount {
    /// The volume as read.
    pub volume: Volume,
    /// How far it may be off to both sides: half a graduation of the jug, what stuck to it.
    pub off_by: Volume,
    /// The fluid's temperature when it was read.
    pub temperature: Temperature,
    /// How far that may be off to both sides.
    pub temperature_off_by: TemperatureDifference,
}

/// All that goes into a balance.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Fluid {
    /// What came out.
    pub drained: Vec<Amount>,
    /// What went in.
    pub added: Vec<Amount>,
    /// The fluid's density at 15 °C.
    pub density: Density,
    /// How far it may be off to both sides.
    pub density_off_by: Density,
    /// What may have been lost or gained unseen, to both sides: splash, rags, what dripped.
    pub unseen: Volume,
    /// What the transmission holds, if the sheet says so.
    pub capacity: Option<Volume>,
}

/// What the balance says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum BalanceClass {
    /// The difference lies within its own uncertainty.
    Balanced,
    /// More went in than came out, beyond the uncertainty.
    MoreIn,
    /// Less went in than came out, beyond the uncertainty.
    LessIn,
}

/// One part of the uncertainty, in litres at 15 °C.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Uncertainty {
    /// Reading the volumes.
    pub volumes: f64,
    /// Reading the temperatures.
    pub temperatures: f64,
    /// The density, common to all amounts.
    pub density: f64,
    /// What was lost or gained unseen.
    pub unseen: f64,
    /// All together, times the coverage factor 2.
    pub expanded: f64,
}

/// A balance, and how it came about.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Balance {
    /// What went into it.
    pub fluid: Fluid,
    /// Litres at 15 °C that came out.
    pub drained_at_15: f64,
    /// Litres at 15 °C that went in.
    pub added_at_15: f64,
    /// What went in less what came out, in litres at 15 °C.
    pub difference: f64,
    /// Its uncertainty.
    pub uncertainty: Uncertainty,
    /// What it says.
    pub class: BalanceClass,
    /// True if more came out or went in than the transmission holds: look at the figures again.
    pub beyond_capacity: bool,
}

/// Draws the balance. Each limit of error counts as rectangular (divided by √3); parts add up as squares; the density
/// is the same fluid's for all amounts, so its effect is added up with signs first (JCGM 100).
///
/// # Errors
/// [`FigureError::NothingMeasured`] without an amount on both sides, and as [`volume_factor`].
pub fn balance(fluid: Fluid) -> Result<Balance, FigureError> {
    if fluid.drained.is_empty() || fluid.added.is_empty() {
        return Err(FigureError::NothingMeasured);
    }
    let factors = |amounts: &[Amount]| {
        let of = |amount: &Amount| Ok((*amount, volume_factor(amount.temperature, fluid.density)?));
        amounts.iter().map(of).collect::<Result<Vec<_>, FigureError>>()
    };
    let (drained, added) = (factors(&fluid.drained)?, factors(&fluid.added)?);
    let total = |side: &[(Amount, VolumeFactor)]| {
        side.iter().map(|(amount, by)| amount.volume.litres() * by.factor).sum::<f64>()
    };
    let (drained_at_15, added_at_15) = (total(&drained), total(&added));
    let difference = added_at_15 - drained_at_15;
    let uncertainty = uncertainty(&fluid, &drained, &added);
    let class = match difference {
        _ if difference.abs() <= uncertainty.expanded => BalanceClass::Balanced,
        more if more > 0.0 => BalanceClass::MoreIn,
        _ => BalanceClass::LessIn,
    };
    let holds = fluid.capacity.map_or(f64::INFINITY, Volume::litres);
    let beyond_capacity =
        [drained_at_15, added_at_15].iter().any(|side| *side > holds + uncertainty.expanded);
    Ok(Balance { fluid, drained_at_15, added_at_15, difference, uncertainty, class, beyond_capacity })
}

fn uncertainty(
    fluid: &Fluid,
    drained: &[(Amount, VolumeFactor)],
    added: &[(Amount, VolumeFactor)],
) -> Uncertainty {
    let third = 3.0_f64.sqrt();
    let root = |parts: &dyn Fn(&(Amount, VolumeFactor)) -> f64| {
        drained.iter().chain(added).map(|side| parts(side).powi(2)).sum::<f64>().sqrt() / third
    };
    let volumes = root(&|(amount, by)| amount.off_by.litres() * by.factor);
    let temperatures =
        root(&|(amount, by)| amount.volume.litres() * by.per_celsius * amount.temperature_off_by.kelvins());
    let by_density = |side: &[(Amount, VolumeFactor)]| {
        side.iter().map(|(amount, by)| amount.volume.litres() * by.per_density).sum::<f64>()
    };
    let off = fluid.density_off_by.kilograms_per_cubic_metre();
    let density = ((by_density(added) - by_density(drained)) * off).abs() / third;
    let unseen = fluid.unseen.litres() / third;
    let parts = [volumes, temperatures, density, unseen];
    let expanded = COVERAGE * parts.iter().map(|part| part * part).sum::<f64>().sqrt();
    Uncertainty { volumes, temperatures, density, unseen, expanded }
}

impl Worked for Balance {
    fn working(&self) -> Working {
        let litres = |value: f64| format!("{} L", figure(value));
        let mut working = Working::of(working_balance());
        for (side, amounts) in
            [(working_drained(), &self.fluid.drained), (working_added(), &self.fluid.added)]
        {
            for amount in amounts {
                let volume = format!("{} ± {}", amount.volume, amount.off_by);
                let temperature = format!("{} ± {}", amount.temperature, amount.temperature_off_by);
                working = working.given(side.clone(), working_at(volume, temperature));
            }
        }
        let density = format!("{} ± {}", self.fluid.density, self.fluid.density_off_by);
        working = working
            .given(working_density(), density)
            .given(working_unseen(), format!("± {}", self.fluid.unseen));
        let sum = |amounts: &[Amount]| {
            let part = |amount: &Amount| {
                // The factor was found before, so it is found again.
                let by = volume_factor(amount.temperature, self.fluid.density).map_or(0.0, |by| by.factor);
                format!("{} × {}", amount.volume, figure_to(by, 5))
            };
            amounts.iter().map(part).collect::<Vec<_>>().join(" + ")
        };
        let parts = &self.uncertainty;
        let squares = working_uncertainty_how(
            figure(parts.volumes),
            figure(parts.temperatures),
            figure(parts.density),
            figure(parts.unseen),
        );
        working = working
            .step(working_drained_at_15(), sum(&self.fluid.drained), litres(self.drained_at_15))
            .step(working_added_at_15(), sum(&self.fluid.added), litres(self.added_at_15))
            .step(working_difference(), working_difference_how(), litres(self.difference))
            .step(working_uncertainty(), squares, litres(parts.expanded));
        let difference = format!("{} ± {}", litres(self.difference), litres(parts.expanded));
        working = working.answer(match self.class {
            BalanceClass::Balanced => working_balanced(difference),
            BalanceClass::MoreIn => working_more_in(difference),
            BalanceClass::LessIn => working_less_in(difference),
        });
        if self.beyond_capacity {
            working = working.answer(working_beyond_capacity());
        }
        working.sources([source::expansion(), source::uncertainty()])
    }
}
