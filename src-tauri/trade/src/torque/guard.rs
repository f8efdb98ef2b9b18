//! A setting against limits that are narrowed by what the tool may be off: only so is a click proved to be inside.

use serde::{Deserialize, Serialize};

use super::{TorqueReason, TorqueResult};
use crate::FigureError;
use crate::measure::{Measure, Torque};
use crate::source::{GUARD_BAND, TOOL_RULES};
use crate::text::figure;
use crate::working::{Worked, Working};

/// What a setting proves with the tool's deviation against it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum GuardClass {
    /// Inside, whatever the tool is off within its class.
    Proved,
    /// Neither proved inside nor outside: the deviation reaches over a limit.
    Undecided,
    /// Outside, whatever the tool is off within its class.
    Outside,
}

/// A click judged with a guard band.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Guarded {
    /// The click and its limits.
    pub result: TorqueResult,
    /// What it proves.
    pub class: GuardClass,
    /// The setting is proved from here on; above [`Guarded::to`] if no setting can be with this tool.
    pub from: Torque,
    /// The setting is proved up to here.
    pub to: Torque,
}

impl Guarded {
    /// Whether some setting can be proved with this tool at all.
    pub fn can_be_proved(&self) -> bool {
        self.from <= self.to
    }
}

/// Judges a click with a guard band: the true torque lies between setting / (1 + d) and setting / (1 − d) for a tool
/// of deviation d, since ISO 6789 gives the deviation of the setting in parts of the true torque.
///
/// # Errors
/// None for limits that [`super::accept`] gave, as far as they can be measured.
pub fn guard(result: TorqueResult) -> Result<Guarded, FigureError> {
    let off = result.tool.deviation_percent() / 100.0;
    let (low, high) = (result.lowest_allowed.newton_metres(), result.highest_allowed.newton_metres());
    let set = Torque::try_from(result.setting)?.newton_metres();
    let (from, to) = (low * (1.0 + off), high * (1.0 - off));
    // Rounding of the reckoning, as for the limits themselves.
    let hair = super::ROUNDING * high;
    let class = if set >= from - hair && set <= to + hair {
        GuardClass::Proved
    } else if set / (1.0 - off) < low - hair || set / (1.0 + off) > high + hair {
        GuardClass::Outside
    } else {
        GuardClass::Undecided
    };
    Ok(Guarded {
        class,
        from: Torque::from_newton_metres(from)?,
        to: Torque::from_newton_metres(to)?,
        result,
    })
}

impl TorqueReason {
    /// Why a click does not count, as a sentence that says what to do.
    pub fn sentence(self) -> &'static str {
        match self {
            TorqueReason::OutsideTolerance => "The setting is outside the tolerance: set the tool again.",
            TorqueReason::ToolOutOfRange => {
                "The setting is outside the tool's range: take a tool that reaches it."
            }
            TorqueReason::CalibrationPast => "The tool's calibration has run out: take another tool.",
        }
    }
}

impl Worked for Guarded {
    fn working(&self) -> Working {
        let result = &self.result;
        let tool = result.tool;
        let target = result.stage.target();
        let percent = figure(result.stage.tolerance_percent());
        let mut working = Working::of("torque")
            .given("target", format!("{target} ± {percent} %"))
            .given("setting", result.setting)
            .given(
                "tool",
                format!("{} to {} ± {} %", tool.lowest(), tool.highest(), figure(tool.deviation_percent())),
            )
            .given("calibrated until", tool.calibration_due())
            .given("day", result.on)
            .step(
                "setting in N·m",
                result.setting.to_string(),
                Torque::try_from(result.setting).map_or_else(|_| String::new(), |set| set.to_string()),
            )
            .step(
                "limits",
                format!("{target} ± {percent} %"),
                format!("{} to {}", result.lowest_allowed, result.highest_allowed),
            )
            .step(
                "off target",
                "(setting − target) / target",
                format!("{} %", figure(result.off_target_percent)),
            )
            .step(
                "proved",
                format!("limits, narrowed by {} %", figure(tool.deviation_percent())),
                format!("{} to {}", self.from, self.to),
            );
        for reason in &result.reasons {
            working = working.answer(reason.sentence());
        }
        if let Some(slip) = result.unit_slip {
            let value = Measure::new(result.setting.value(), slip.fits)
                .map_or_else(|_| String::new(), |it| it.to_string());
            working = working.answer(format!("{value} would fit: is the tool's scale in {}?", slip.fits));
        }
        if result.reasons.is_empty() {
            working = working.answer(match self.class {
                GuardClass::Proved => "Inside the tolerance, also with all that the tool may be off.",
                _ if !self.can_be_proved() => {
                    "Inside the tolerance as set. No setting of this tool proves it: the tolerance is finer than the tool."
                }
                _ => "Inside the tolerance as set, but not proved: the tool's deviation reaches over a limit.",
            });
        }
        working.sources(&[TOOL_RULES, GUARD_BAND])
    }
}
