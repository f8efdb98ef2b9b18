//! Torque: whether what was clicked lies inside the stage's tolerance, and whether the tool may be used for it.
//!
//! What goes in is the setting of the tool, not a torque measured at the bolt. [`accept`] reports the tool's own
//! deviation beside the result and does not narrow the tolerance; [`guard`] does. [`setting_with_adapter`] and
//! [`judge_angle`] are for adapters and for stages that are turned by an angle.

mod adapter;
mod angle;
mod guard;
mod tool;

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use crate::TradeError;
use crate::measure::{Measure, Torque};
use crate::units::{Quantity, Unit};

pub use adapter::{AdapterSetting, Reach, setting_with_adapter, torque_through_adapter};
pub use angle::{AngleClass, AngleResult, AngleStage, judge_angle};
pub use guard::{GuardClass, Guarded, guard};
pub use tool::{CALIBRATION_MONTHS, ToolUse, calibration_due, tool_use};

/// Parts of a value smaller than this are rounding of the reckoning, not something a scale shows.
const ROUNDING: f64 = 1e-9;

/// One stage of tightening.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "UncheckedStage")]
pub struct TorqueStage {
    target: Torque,
    tolerance_percent: f64,
}

/// A stage as it stands on a sheet, before it is checked.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct UncheckedStage {
    target: Torque,
    tolerance_percent: f64,
}

impl TryFrom<UncheckedStage> for TorqueStage {
    type Error = TradeError;

    fn try_from(stage: UncheckedStage) -> Result<Self, TradeError> {
        Self::new(stage.target, stage.tolerance_percent)
    }
}

impl TorqueStage {
    /// Takes a target above 0 N·m and its tolerance to both sides, above 0 % and below 100 % of the target.
    ///
    /// # Errors
    /// [`TradeError::TargetNotPositive`] and [`TradeError::PercentRange`].
    pub fn new(target: Torque, tolerance_percent: f64) -> Result<Self, TradeError> {
        if target.newton_metres() <= 0.0 {
            return Err(TradeError::TargetNotPositive { newton_metres: target.newton_metres() });
        }
        Ok(Self { target, tolerance_percent: percent(tolerance_percent)? })
    }

    /// The torque that is wanted.
    pub fn target(self) -> Torque {
        self.target
    }

    /// The tolerance to both sides, in percent of the target.
    pub fn tolerance_percent(self) -> f64 {
        self.tolerance_percent
    }

    /// Whether a torque in newton metres lies inside the tolerance, the limits included.
    fn allows(self, newton_metres: f64) -> bool {
        let target = self.target.newton_metres();
        (newton_metres - target).abs() <= target * (self.tolerance_percent / 100.0 + ROUNDING)
    }
}

/// The stages of one fastener pattern in the order they are done; at least one. A later stage may be lower than one
/// before it, where bolts are loosened and tightened anew.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Vec<TorqueStage>", into = "Vec<TorqueStage>")]
pub struct TorqueSpec {
    stages: Vec<TorqueStage>,
}

impl TorqueSpec {
    /// Takes the stages in order.
    ///
    /// # Errors
    /// [`TradeError::NoStage`] if there is none.
    pub fn new(stages: Vec<TorqueStage>) -> Result<Self, TradeError> {
        if stages.is_empty() { Err(TradeError::NoStage) } else { Ok(Self { stages }) }
    }

    /// The stages in order.
    pub fn stages(&self) -> &[TorqueStage] {
        &self.stages
    }
}

impl TryFrom<Vec<TorqueStage>> for TorqueSpec {
    type Error = TradeError;

    fn try_from(stages: Vec<TorqueStage>) -> Result<Self, TradeError> {
        Self::new(stages)
    }
}

impl From<TorqueSpec> for Vec<TorqueStage> {
    fn from(spec: TorqueSpec) -> Self {
        spec.stages
    }
}

/// What must be known of a torque tool before a click of it counts.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "UncheckedTool")]
pub struct TorqueTool {
    lowest: Torque,
    highest: Torque,
    deviation_percent: f64,
    calibration_due: NaiveDate,
}

/// A tool as it stands in a list of tools, before it is checked.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct UncheckedTool {
    lowest: Torque,
    highest: Torque,
    deviation_percent: f64,
    calibration_due: NaiveDate,
}

impl TryFrom<UncheckedTool> for TorqueTool {
    type Error = TradeError;

    fn try_from(tool: UncheckedTool) -> Result<Self, TradeError> {
        Self::new(tool.lowest, tool.highest, tool.deviation_percent, tool.calibration_due)
    }
}

impl TorqueTool {
    /// Takes a tool: the lowest and highest torque it is calibrated for, how far a click may lie from the setting in
    /// percent (see [`class_a_deviation_percent`]), and the last day on which its calibration holds.
    ///
    /// # Errors
    /// [`TradeError::ToolRange`] unless 0 < lowest < highest; [`TradeError::PercentRange`].
    pub fn new(
        lowest: Torque,
        highest: Torque,
        deviation_percent: f64,
        calibration_due: NaiveDate,
    ) -> Result<Self, TradeError> {
        let (from, to) = (lowest.newton_metres(), highest.newton_metres());
        if from <= 0.0 || from >= to {
            return Err(TradeError::ToolRange { lowest: from, highest: to });
        }
        Ok(Self { lowest, highest, deviation_percent: percent(deviation_percent)?, calibration_due })
    }

    /// The lowest torque of its range.
    pub fn lowest(self) -> Torque {
        self.lowest
    }

    /// The highest torque of its range.
    pub fn highest(self) -> Torque {
        self.highest
    }

    /// How far a click may lie from the setting, in percent of the setting.
    pub fn deviation_percent(self) -> f64 {
        self.deviation_percent
    }

    /// The last day on which its calibration holds.
    pub fn calibration_due(self) -> NaiveDate {
        self.calibration_due
    }

    /// Whether a torque in newton metres lies in its range, the ends included.
    fn reaches(self, newton_metres: f64) -> bool {
        newton_metres >= self.lowest.newton_metres() * (1.0 - ROUNDING)
            && newton_metres <= self.highest.newton_metres() * (1.0 + ROUNDING)
    }
}

/// How far a click of a setting tool may lie from its setting by ISO 6789, type II class A, in percent: 6 % for a
/// tool that ends at 10 N·m or below, 4 % for one that ends higher.
///
/// Second-hand: from a torque-wrench manual that reviews the 2003 edition, not from the standard itself. That page
/// does not show on which side a tool of exactly 10 N·m falls; the wider deviation is taken, as it protects more.
pub fn class_a_deviation_percent(highest: Torque) -> f64 {
    if highest.newton_metres() > 10.0 { 4.0 } else { 6.0 }
}

/// Whether a click counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum TorqueClass {
    /// Inside the tolerance, with a tool that may be used for it.
    Inside,
    /// Not so, for at least one reason.
    Outside,
}

/// Why a click does not count.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum TorqueReason {
    /// The setting lies outside the stage's tolerance.
    OutsideTolerance,
    /// The setting lies outside the tool's range.
    ToolOutOfRange,
    /// The last day of the tool's calibration has passed.
    CalibrationPast,
}

/// A hint: the number of the setting would fit the target, were it in another unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct UnitSlip {
    /// The unit the setting was given in.
    pub given: Unit,
    /// The unit in which the same number fits; the best fit if several do.
    pub fits: Unit,
}

/// One click judged, and how it came about.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct TorqueResult {
    /// Whether it counts.
    pub class: TorqueClass,
    /// Every reason why not; empty if it counts.
    pub reasons: Vec<TorqueReason>,
    /// A likely mix-up of units, looked for when the setting is outside the tolerance.
    pub unit_slip: Option<UnitSlip>,
    /// The stage it was judged against.
    pub stage: TorqueStage,
    /// The setting in the unit it was given in.
    pub setting: Measure,
    /// The tool it was clicked with.
    pub tool: TorqueTool,
    /// The day of the click.
    pub on: NaiveDate,
    /// Lower limit of the tolerance.
    pub lowest_allowed: Torque,
    /// Upper limit of the tolerance.
    pub highest_allowed: Torque,
    /// How far the setting lies above the target, in percent of the target; negative below it.
    pub off_target_percent: f64,
    /// How far the click may lie from the setting to both sides, by the tool's deviation.
    pub tool_deviation: Torque,
}

/// Judges the setting of a tool that clicked at one stage. The limits of tolerance and range and the day on which
/// the calibration falls due still count.
///
/// # Errors
/// [`TradeError::QuantityDiffers`] if the setting is not a torque.
pub fn accept(
    stage: TorqueStage,
    setting: Measure,
    tool: TorqueTool,
    on: NaiveDate,
) -> Result<TorqueResult, TradeError> {
    let set = Torque::try_from(setting)?.newton_metres();
    let target = stage.target.newton_metres();
    let tolerance = target * stage.tolerance_percent / 100.0;
    let found = [
        (!stage.allows(set), TorqueReason::OutsideTolerance),
        (!tool.reaches(set), TorqueReason::ToolOutOfRange),
        (on > tool.calibration_due, TorqueReason::CalibrationPast),
    ];
    let reasons: Vec<_> = found.into_iter().filter(|(holds, _)| *holds).map(|(_, reason)| reason).collect();
    Ok(TorqueResult {
        class: if reasons.is_empty() { TorqueClass::Inside } else { TorqueClass::Outside },
        reasons,
        unit_slip: unit_slip(stage, setting),
        stage,
        setting,
        tool,
        on,
        lowest_allowed: Torque::from_newton_metres(target - tolerance)?,
        highest_allowed: Torque::from_newton_metres(target + tolerance)?,
        off_target_percent: (set - target) / target * 100.0,
        tool_deviation: Torque::from_newton_metres(set.abs() * tool.deviation_percent / 100.0)?,
    })
}

/// Looks whether the number of a setting that is outside the tolerance would be inside it in another unit.
fn unit_slip(stage: TorqueStage, setting: Measure) -> Option<UnitSlip> {
    if stage.allows(setting.unit().to_base(setting.value())) {
        return None;
    }
    let off = |unit: &Unit| (unit.to_base(setting.value()) - stage.target.newton_metres()).abs();
    Unit::ALL
        .iter()
        .copied()
        .filter(|unit| unit.quantity() == Quantity::Torque)
        .filter(|unit| stage.allows(unit.to_base(setting.value())))
        .min_by(|a, b| off(a).total_cmp(&off(b)))
        .map(|fits| UnitSlip { given: setting.unit(), fits })
}

/// A tolerance or deviation in percent, above 0 and below 100.
fn percent(percent: f64) -> Result<f64, TradeError> {
    if percent > 0.0 && percent < 100.0 { Ok(percent) } else { Err(TradeError::PercentRange { percent }) }
}
