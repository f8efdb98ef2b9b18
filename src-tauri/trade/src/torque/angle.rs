//! A stage that is turned by an angle after the bolt is snug. It is entered for each bolt: nothing clicks.

use serde::{Deserialize, Serialize};

use crate::FigureError;
use crate::measure::Angle;
use crate::message::working::*;
use crate::source;
use crate::working::{Worked, Working};

/// More than two turns are no tightening stage.
const LARGEST_DEGREES: f64 = 720.0;

/// Rounding of the reckoning, in degrees.
const ROUNDING_DEGREES: f64 = 1e-9;

/// An angle stage: above 0°, with a tolerance to both sides that is smaller than it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Unchecked")]
pub struct AngleStage {
    target: Angle,
    tolerance: Angle,
}

/// A stage as it stands on a sheet, before it is checked.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Unchecked {
    target: Angle,
    tolerance: Angle,
}

impl TryFrom<Unchecked> for AngleStage {
    type Error = FigureError;

    fn try_from(stage: Unchecked) -> Result<AngleStage, FigureError> {
        AngleStage::new(stage.target, stage.tolerance)
    }
}

impl AngleStage {
    /// Takes a target and its tolerance to both sides.
    ///
    /// # Errors
    /// [`FigureError::AngleStage`] unless 0° < target ≤ 720° and 0° < tolerance < target.
    pub fn new(target: Angle, tolerance: Angle) -> Result<AngleStage, FigureError> {
        let (wanted, off) = (target.degrees(), tolerance.degrees());
        if wanted > 0.0 && wanted <= LARGEST_DEGREES && off > 0.0 && off < wanted {
            Ok(AngleStage { target, tolerance })
        } else {
            Err(FigureError::AngleStage { target, tolerance })
        }
    }

    /// The angle that is wanted.
    pub fn target(self) -> Angle {
        self.target
    }

    /// The tolerance to both sides.
    pub fn tolerance(self) -> Angle {
        self.tolerance
    }
}

/// What the angle of a bolt is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum AngleClass {
    /// Inside the tolerance, its limits included.
    Inside,
    /// Too little: turn on.
    Short,
    /// Too much: the bolt is loosened or replaced, as the sheet says; it is not turned back.
    Over,
}

/// One bolt's angle judged.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct AngleResult {
    /// The stage.
    pub stage: AngleStage,
    /// The angle turned in all, as read.
    pub turned: Angle,
    /// What it is.
    pub class: AngleClass,
    /// What is left to turn to the target; negative if it was turned too far.
    pub left: Angle,
}

/// Judges the angle that a bolt was turned.
///
/// # Errors
/// [`FigureError::AngleTurned`] for an angle below 0° or above 720°.
pub fn judge_angle(stage: AngleStage, turned: Angle) -> Result<AngleResult, FigureError> {
    if !(0.0..=LARGEST_DEGREES).contains(&turned.degrees()) {
        return Err(FigureError::AngleTurned { angle: turned });
    }
    let left = stage.target.degrees() - turned.degrees();
    let within = stage.tolerance.degrees() + ROUNDING_DEGREES;
    let class = if left > within {
        AngleClass::Short
    } else if left < -within {
        AngleClass::Over
    } else {
        AngleClass::Inside
    };
    Ok(AngleResult { stage, turned, class, left: Angle::from_degrees(left)? })
}

impl Worked for AngleResult {
    fn working(&self) -> Working {
        let AngleStage { target, tolerance } = self.stage;
        let answer = match self.class {
            AngleClass::Inside => working_angle_inside(),
            AngleClass::Short => working_angle_short(self.left),
            AngleClass::Over => working_angle_over(),
        };
        Working::of(working_angle())
            .given(working_target(), format!("{target} ± {tolerance}"))
            .given(working_angle_turned(), self.turned)
            .step(working_angle_left(), format!("{target} − {}", self.turned), self.left)
            .answer(answer)
            .sources([source::angle_marked()])
    }
}
