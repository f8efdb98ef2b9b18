//! How much to pour in: the first refill after a drain, and each top-up after a reading.
//!
//! Both stay short of the estimate and ask for a new reading: too much is as wrong as too little, and harder to mend.

use panside_messages::Arg;
use serde::{Deserialize, Serialize};

use crate::FigureError;
use crate::expansion::volume_at;
use crate::gain::Gain;
use crate::level::{Band, LevelClass, LevelResult};
use crate::measure::{Density, Length, Temperature, Volume};
use crate::message::working::*;
use crate::source;
use crate::text::figure;
use crate::working::{Worked, Working};

/// The share of a top-up's estimate that is poured before the next reading, unless said otherwise: our choice.
pub const USUAL_SHARE_PERCENT: f64 = 80.0;

/// What to do about the level.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Advice {
    /// Pour in, then read again.
    Add,
    /// Nothing: it is in its band.
    Leave,
    /// Take out, then read again.
    TakeOut,
}

/// A top-up, and how it came about.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct TopUp {
    /// The level it starts from.
    pub level: LevelResult,
    /// Rise for each litre.
    pub gain: Gain,
    /// The share of the estimate to pour, in percent.
    pub share_percent: f64,
    /// The most to pour at once.
    pub largest_pour: Volume,
    /// What to do.
    pub advice: Advice,
    /// How far the level must rise to the middle of the band; negative if it must fall.
    pub rise: Length,
    /// What would bring it there; taken out if the level is above.
    pub estimate: Volume,
    /// True for a dry stick: the estimate is the least it can be.
    pub at_least: bool,
    /// The pours, equal ones, with a reading after the last. Together less than the estimate, and never so much that
    /// the highest gain could bring the level above the high mark.
    pub pours: Vec<Volume>,
}

fn middle(band: Band) -> f64 {
    (band.low.millimetres() + band.high.millimetres()) / 2.0
}

fn high(band: Band) -> f64 {
    band.high.millimetres()
}

fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len() as f64
}

/// How far the level lies below the middle and below the high mark of its band, in millimetres. A dry stick counts as
/// a trace at its end.
fn short_by(level: &LevelResult) -> Result<(f64, f64, bool), FigureError> {
    if level.class == LevelClass::Unclear {
        return Err(FigureError::LevelNotKnown);
    }
    let (to_middle, to_high) = (level.short_of(middle), level.short_of(high));
    if !to_middle.is_empty() {
        return Ok((mean(&to_middle), to_high.iter().copied().fold(f64::INFINITY, f64::min), false));
    }
    let bands: Vec<Band> = level.readings.iter().filter_map(|judged| judged.band).collect();
    let least = |place: fn(Band) -> f64| bands.iter().copied().map(place).fold(f64::INFINITY, f64::min);
    if bands.is_empty() { Err(FigureError::LevelNotKnown) } else { Ok((least(middle), least(high), true)) }
}

/// Works out a top-up from a level, by the rise for each litre (or the gain learnt on this job). `share_percent` is
/// above 0 and at most 100; `largest_pour` above 0 L.
///
/// # Errors
/// [`FigureError::LevelNotKnown`] for an unclear level, [`FigureError::ShareRange`] and [`FigureError::PourEmpty`].
pub fn top_up(
    level: &LevelResult,
    gain: Gain,
    share_percent: f64,
    largest_pour: Volume,
) -> Result<TopUp, FigureError> {
    if !(share_percent > 0.0 && share_percent <= 100.0) {
        return Err(FigureError::ShareRange { percent: share_percent });
    }
    if largest_pour.litres() <= 0.0 {
        return Err(FigureError::PourEmpty);
    }
    let (rise, room, at_least) = short_by(level)?;
    let advice = match level.class {
        LevelClass::Below => Advice::Add,
        LevelClass::Above => Advice::TakeOut,
        LevelClass::In | LevelClass::Unclear => Advice::Leave,
    };
    let estimate = (rise / gain.mm_per_litre()).abs();
    let pours = if advice == Advice::Add {
        let wanted = (estimate * share_percent / 100.0).min(room / gain.highest());
        split(wanted, largest_pour.litres())?
    } else {
        Vec::new()
    };
    Ok(TopUp {
        level: level.clone(),
        gain,
        share_percent,
        largest_pour,
        advice,
        rise: Length::from_millimetres(rise)?,
        estimate: Volume::from_litres(estimate)?,
        at_least,
        pours,
    })
}

/// Equal pours, none larger than `largest`.
fn split(litres: f64, largest: f64) -> Result<Vec<Volume>, FigureError> {
    let pours = (litres / largest - 1e-9).ceil().max(1.0);
    if pours > 100.0 {
        return Err(FigureError::TooManyPours { pours });
    }
    let each = Volume::from_litres(litres / pours)?;
    Ok(vec![each; pours as usize])
}

impl Worked for TopUp {
    fn working(&self) -> Working {
        let estimate = if self.at_least {
            Arg::from(working_top_up_at_least(self.estimate))
        } else {
            self.estimate.into()
        };
        let percent = figure(self.share_percent);
        let working = Working::of(working_top_up())
            .given(working_rise(), self.gain.to_string())
            .given(working_top_up_share(), format!("{percent} %"))
            .given(working_top_up_most(), self.largest_pour)
            .step(working_top_up_rise(), working_top_up_rise_how(), self.rise)
            .step(working_estimate(), format!("{} / {}", self.rise, self.gain), estimate.clone());
        let working = match (self.advice, self.pours.first()) {
            (Advice::Add, Some(pour)) => {
                let count = self.pours.len();
                let total = format!("{} L", figure(pour.litres() * count as f64));
                let how = working_top_up_pours_how(self.estimate, percent, count);
                working
                    .step(working_top_up_pours(), how, working_top_up_each(*pour))
                    .answer(working_top_up_add(total, count, estimate))
            }
            (Advice::TakeOut, _) => working.answer(working_top_up_take_out(self.estimate)),
            _ => working.answer(working_top_up_leave()),
        };
        working.sources([source::add_less()])
    }
}

/// What is known before the first refill.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Drained {
    /// What came out.
    pub volume: Volume,
    /// The temperature at which it was measured.
    pub temperature: Temperature,
    /// The temperature of the new fluid.
    pub pour_temperature: Temperature,
    /// The fluid's density at 15 °C.
    pub density: Density,
    /// What to stay short by, for what filter and body hold back.
    pub hold_back: Volume,
    /// The level found at intake with the rise for each litre; nothing if none was found.
    pub intake: Option<(LevelResult, Gain)>,
}

/// A first refill, and how it came about.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct FirstRefill {
    /// What was known.
    pub drained: Drained,
    /// What came out, at the temperature of the new fluid.
    pub as_poured: Volume,
    /// What was missing at intake, in litres; negative if there was too much; 0 if that is not known.
    pub missing_litres: f64,
    /// All that is to go in before the level is right, by this estimate.
    pub estimate: Volume,
    /// What to pour first.
    pub pour: Volume,
}

/// Works out the first refill: what was drained, at the temperature of the new fluid, with what was missing at intake,
/// less what to stay short by. A level that was in its band or unclear at intake changes nothing.
///
/// # Errors
/// As [`volume_at`]; [`FigureError::HoldBackTooLarge`] if nothing would be left to pour.
pub fn first_refill(drained: Drained) -> Result<FirstRefill, FigureError> {
    let as_poured =
        volume_at(drained.volume, drained.temperature, drained.pour_temperature, drained.density)?;
    let missing_litres = match &drained.intake {
        Some((level, gain)) if matches!(level.class, LevelClass::Below | LevelClass::Above) => {
            short_by(level)?.0 / gain.mm_per_litre()
        }
        _ => 0.0,
    };
    let estimate = as_poured.litres() + missing_litres;
    let pour = estimate - drained.hold_back.litres();
    if pour <= 0.0 {
        return Err(FigureError::HoldBackTooLarge { hold_back: drained.hold_back });
    }
    let (estimate, pour) = (Volume::from_litres(estimate)?, Volume::from_litres(pour)?);
    Ok(FirstRefill { drained, as_poured, missing_litres, estimate, pour })
}

impl Worked for FirstRefill {
    fn working(&self) -> Working {
        let from = &self.drained;
        let intake = match &from.intake {
            Some((level, gain)) => working_refill_level(level.class.message(), gain.to_string()),
            None => working_refill_not_known(),
        };
        let warm = working_at(from.volume, from.temperature);
        let missing = format!("{} L", figure(self.missing_litres));
        Working::of(working_refill())
            .given(working_drained(), warm.clone())
            .given(working_refill_new(), format!("{}, {}", from.pour_temperature, from.density))
            .given(working_refill_hold_back(), from.hold_back)
            .given(working_refill_intake(), intake)
            .step(
                working_refill_as_new(),
                working_refill_as_new_how(warm, from.pour_temperature),
                self.as_poured,
            )
            .step(working_refill_missing(), working_refill_missing_how(), &missing)
            .step(working_estimate(), format!("{} + {missing}", self.as_poured), self.estimate)
            .step(working_refill_pour(), format!("{} − {}", self.estimate, from.hold_back), self.pour)
            .answer(working_refill_first(self.pour))
            .sources([source::drained_first(), source::expansion()])
    }
}
