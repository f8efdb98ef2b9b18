//! Whether a tool may be used at all, before anything is clicked.

use chrono::{Months, NaiveDate};
use serde::{Deserialize, Serialize};

use super::{TorqueReason, TorqueTool};
use crate::FigureError;
use crate::measure::Torque;
use crate::message::working::*;
use crate::source;
use crate::working::{Worked, Working};

/// Months between calibrations if nothing else is said (ISO 6789, from memory).
pub const CALIBRATION_MONTHS: u32 = 12;

/// Whether a tool may be used for a setting.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct ToolUse {
    /// The tool.
    pub tool: TorqueTool,
    /// The setting that is wanted on it.
    pub setting: Torque,
    /// The day.
    pub on: NaiveDate,
    /// Why it may not be used; empty if it may.
    pub reasons: Vec<TorqueReason>,
}

/// Looks whether a tool may be used for a setting on a day: the setting lies in its range and its calibration holds.
pub fn tool_use(tool: TorqueTool, setting: Torque, on: NaiveDate) -> ToolUse {
    let found = [
        (!tool.reaches(setting.newton_metres()), TorqueReason::ToolOutOfRange),
        (on > tool.calibration_due(), TorqueReason::CalibrationPast),
    ];
    let reasons = found.into_iter().filter(|(holds, _)| *holds).map(|(_, reason)| reason).collect();
    ToolUse { tool, setting, on, reasons }
}

/// The last day on which a calibration holds: the same day so many months later, or the month's last day before it.
///
/// # Errors
/// [`FigureError::CalibrationMonths`] for 0 months and for a day that no calendar has.
pub fn calibration_due(calibrated: NaiveDate, months: u32) -> Result<NaiveDate, FigureError> {
    let due = calibrated.checked_add_months(Months::new(months)).filter(|_| months > 0);
    due.ok_or(FigureError::CalibrationMonths { months })
}

impl Worked for ToolUse {
    fn working(&self) -> Working {
        let tool = self.tool;
        let mut working = Working::of(working_tool_use())
            .given(working_setting(), self.setting)
            .given(working_tool(), working_range(tool.lowest(), tool.highest()))
            .given(working_calibrated_until(), tool.calibration_due().to_string())
            .given(working_day(), self.on.to_string());
        if self.reasons.is_empty() {
            working = working.answer(working_tool_may());
        }
        for reason in &self.reasons {
            working = working.answer(reason.message());
        }
        working.sources([source::tool_rules(), source::calibrated_yearly()])
    }
}
