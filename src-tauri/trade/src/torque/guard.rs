//! A setting against limits that are narrowed by what the tool may be off: only so is a click proved to be inside.

use panside_messages::Message;
use serde::{Deserialize, Serialize};

use super::{TorqueReason, TorqueResult};
use crate::FigureError;
use crate::measure::Torque;
use crate::message::working::*;
use crate::source;
use crate::text::figure;
use crate::units::Unit;
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
    pub(super) fn message(self) -> Message {
        match self {
            TorqueReason::OutsideTolerance => working_torque_outside(),
            TorqueReason::ToolOutOfRange => working_torque_tool_range(),
            TorqueReason::CalibrationPast => working_torque_calibration(),
        }
    }
}

impl Guarded {
    /// The answer where the click counts.
    fn proof(&self) -> Message {
        match self.class {
            GuardClass::Proved => working_torque_inside(),
            _ if !self.can_be_proved() => working_torque_tool_coarse(),
            _ => working_torque_not_proved(),
        }
    }
}

impl Worked for Guarded {
    fn working(&self) -> Working {
        let result = &self.result;
        let tool = result.tool;
        let wanted = format!("{} ± {} %", result.stage.target(), figure(result.stage.tolerance_percent()));
        let off = figure(tool.deviation_percent());
        let newton_metres = result.setting.to(Unit::NewtonMetre).unwrap_or(result.setting);
        let mut working = Working::of(working_torque())
            .given(working_target(), &wanted)
            .given(working_setting(), result.setting)
            .given(working_tool(), working_range(tool.lowest(), format!("{} ± {off} %", tool.highest())))
            .given(working_calibrated_until(), tool.calibration_due().to_string())
            .given(working_day(), result.on.to_string())
            .step(working_torque_newton_metres(), result.setting, newton_metres)
            .step(working_limits(), wanted, working_range(result.lowest_allowed, result.highest_allowed))
            .step(
                working_torque_off_target(),
                working_torque_off_target_how(),
                format!("{} %", figure(result.off_target_percent)),
            )
            .step(working_torque_proved(), working_torque_proved_how(off), working_range(self.from, self.to));
        for reason in &result.reasons {
            working = working.answer(reason.message());
        }
        if let Some(slip) = result.unit_slip {
            let value = format!("{} {}", figure(result.setting.value()), slip.fits);
            working = working.answer(working_torque_unit_slip(value, slip.fits.symbol()));
        }
        if result.reasons.is_empty() {
            working = working.answer(self.proof());
        }
        working.sources([source::tool_rules(), source::guard_band()])
    }
}
