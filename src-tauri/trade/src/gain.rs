//! How far the level rises on the stick for each litre: from the sheet, or learnt from the additions of this job.

use serde::{Deserialize, Serialize};

use crate::FigureError;
use crate::measure::{Length, Volume};
use crate::message::working::*;
use crate::source;
use crate::student::t_95;
use crate::text::figure;
use crate::working::{Worked, Working};

/// The rise of the level on the stick for each litre, above zero, and how far it may be off to both sides.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Unchecked")]
pub struct Gain {
    mm_per_litre: f64,
    off_by: Option<f64>,
}

/// A gain as it stands in JSON, before it is checked.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Unchecked {
    mm_per_litre: f64,
    off_by: Option<f64>,
}

impl TryFrom<Unchecked> for Gain {
    type Error = FigureError;

    fn try_from(gain: Unchecked) -> Result<Gain, FigureError> {
        Gain::new(gain.mm_per_litre, gain.off_by)
    }
}

impl Gain {
    /// A gain in mm per litre, as a sheet gives it. How far it may be off is not known.
    ///
    /// # Errors
    /// [`FigureError::GainNotPositive`] unless it is above 0 and finite.
    pub fn from_mm_per_litre(mm_per_litre: f64) -> Result<Gain, FigureError> {
        Gain::new(mm_per_litre, None)
    }

    fn new(mm_per_litre: f64, off_by: Option<f64>) -> Result<Gain, FigureError> {
        let makes_sense = mm_per_litre > 0.0 && mm_per_litre.is_finite();
        if !makes_sense || off_by.is_some_and(|off_by| !(0.0..f64::INFINITY).contains(&off_by)) {
            return Err(FigureError::GainNotPositive { mm_per_litre });
        }
        Ok(Gain { mm_per_litre, off_by })
    }

    /// Millimetres on the stick for each litre.
    pub fn mm_per_litre(self) -> f64 {
        self.mm_per_litre
    }

    /// Half the width of its 95 % interval in mm per litre; nothing if that is not known.
    pub fn off_by(self) -> Option<f64> {
        self.off_by
    }

    /// The most that a litre may raise the level, in mm.
    pub(crate) fn highest(self) -> f64 {
        self.mm_per_litre + self.off_by.unwrap_or(0.0)
    }
}

impl std::fmt::Display for Gain {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} mm/L", figure(self.mm_per_litre))?;
        self.off_by.map_or(Ok(()), |off_by| write!(f, " ± {} mm/L", figure(off_by)))
    }
}

/// One addition of this job: what was poured in, and where the level stood before and after it, as heights above the
/// low mark at their own temperatures.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Addition {
    /// What was poured in, above 0 L.
    pub volume: Volume,
    /// Height above the low mark before it; negative below.
    pub before: Length,
    /// Height above the low mark after it.
    pub after: Length,
}

/// A gain learnt from additions.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct LearntGain {
    /// What it was learnt from.
    pub additions: Vec<Addition>,
    /// The gain; with an interval from two additions on.
    pub gain: Gain,
    /// Its standard error in mm per litre; nothing for one addition.
    pub standard_error: Option<f64>,
}

/// Learns the gain: the straight line through zero that fits rise over volume best, by least squares. From two
/// additions on its 95 % interval is told, by Student's t with one freedom less than additions.
///
/// # Errors
/// [`FigureError::NoAddition`] without any, [`FigureError::AdditionEmpty`] for one of 0 L, and
/// [`FigureError::GainNotPositive`] if the level did not rise.
pub fn learn_gain(additions: &[Addition]) -> Result<LearntGain, FigureError> {
    if let Some(index) = additions.iter().position(|addition| addition.volume.litres() <= 0.0) {
        return Err(FigureError::AdditionEmpty { position: index + 1 });
    }
    let rise = |addition: &Addition| addition.after.millimetres() - addition.before.millimetres();
    let squares: f64 = additions.iter().map(|addition| addition.volume.litres().powi(2)).sum();
    if squares <= 0.0 {
        return Err(FigureError::NoAddition);
    }
    let products: f64 = additions.iter().map(|addition| addition.volume.litres() * rise(addition)).sum();
    let slope = products / squares;
    let off = |addition: &Addition| (rise(addition) - slope * addition.volume.litres()).powi(2);
    let freedom = additions.len() - 1;
    let standard_error =
        (freedom > 0).then(|| (additions.iter().map(off).sum::<f64>() / freedom as f64 / squares).sqrt());
    let gain = Gain::new(slope, standard_error.map(|error| error * t_95(freedom)))?;
    Ok(LearntGain { additions: additions.to_vec(), gain, standard_error })
}

impl Worked for LearntGain {
    fn working(&self) -> Working {
        let mut working = Working::of(working_gain());
        for (index, addition) in self.additions.iter().enumerate() {
            let value = working_gain_rose(addition.volume, addition.before, addition.after);
            working = working.given(working_gain_addition(index + 1), value);
        }
        let slope = format!("{} mm/L", figure(self.gain.mm_per_litre()));
        working = working.step(working_rise(), working_gain_how(), slope);
        if let (Some(error), Some(off_by)) = (self.standard_error, self.gain.off_by()) {
            let how = format!("{} × {} mm/L", figure(t_95(self.additions.len() - 1)), figure(error));
            working = working.step(working_gain_interval(), how, format!("{} mm/L", figure(off_by)));
        }
        working.answer(working_gain_learnt(self.gain.to_string())).sources([source::least_squares()])
    }
}
