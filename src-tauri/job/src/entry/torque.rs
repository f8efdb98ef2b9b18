//! Fasteners tightened with a setting tool, judged by [`panside_trade::torque`], one setting a stage.

use panside_procedure::format::entry;
use panside_trade::measure::{Measure, Torque};
use panside_trade::number::parse_number;
use panside_trade::torque::{
    TorqueClass, TorqueReason, TorqueResult, TorqueTool, accept, class_a_deviation_percent,
};

use super::{Classified, Context, measure, no_sheet_value};
use crate::clock::{civil_date, day_of};
use crate::message::{
    Message, of_trade, refused_no_name, tool_date, torque_calibration, torque_inside, torque_outside,
    torque_stage_count, torque_tool_range, torque_unit_slip,
};
use crate::request::Refusal;
use crate::sheet::Specs;
use crate::value::{EntryValue, Tool};

pub(super) fn classify(
    asked: &entry::Torque,
    specs: &Specs,
    settings: &[String],
    unit: &str,
    tool: &Tool,
    context: &Context<'_>,
) -> Result<Classified, Refusal> {
    let spec = specs.torque(&asked.spec).ok_or_else(|| no_sheet_value(&asked.spec))?;
    if settings.len() != spec.stages().len() {
        return Err(torque_stage_count(spec.stages().len(), settings.len()).into());
    }
    if tool.name.trim().is_empty() {
        return Err(refused_no_name().into());
    }
    let with = take(tool)?;
    let day = civil_date(context.at.wall_ms, context.utc_offset_min);
    let mut results = Vec::new();
    for (stage, setting) in spec.stages().iter().zip(settings) {
        let judged = accept(*stage, measure(setting, unit)?, with, day);
        results.push(judged.map_err(|error| Refusal::from(of_trade(&error)))?);
    }
    let mut said: Vec<Message> = Vec::new();
    for (at, result) in results.iter().enumerate() {
        for reason in &result.reasons {
            let message = say(at + 1, result, *reason, tool);
            if !said.contains(&message) {
                said.push(message);
            }
        }
    }
    let inside = results.iter().all(|result| result.class == TorqueClass::Inside);
    if inside {
        said.push(torque_inside(results.len()));
    }
    let value = EntryValue::Torque {
        stages: settings.iter().map(|setting| setting.trim().to_owned()).collect(),
        unit: unit.trim().to_owned(),
        tool: tool.clone(),
    };
    let class = if inside { "inside" } else { "outside" }.to_owned();
    Ok(Classified { class, value, detail: None, said }.with_detail(&results))
}

fn take(tool: &Tool) -> Result<TorqueTool, Refusal> {
    let trade = |error| Refusal::from(of_trade(&error));
    let end = |text: &str| Torque::try_from(measure(text, &tool.unit)?).map_err(trade);
    let (lowest, highest) = (end(&tool.min)?, end(&tool.max)?);
    let deviation = match &tool.class_percent {
        Some(percent) => parse_number(percent).map_err(trade)?,
        None => class_a_deviation_percent(highest),
    };
    let due = day_of(&tool.calibration_due).ok_or_else(|| tool_date(&tool.calibration_due))?;
    TorqueTool::new(lowest, highest, deviation, due).map_err(trade)
}

fn say(stage: usize, result: &TorqueResult, reason: TorqueReason, tool: &Tool) -> Message {
    let here = |torque: Torque| {
        let measure = Measure::from(torque);
        measure.to(result.setting.unit()).unwrap_or(measure)
    };
    let (lowest, highest) = (here(result.lowest_allowed), here(result.highest_allowed));
    match (reason, result.unit_slip) {
        (TorqueReason::OutsideTolerance, Some(slip)) => {
            torque_unit_slip(stage, result.setting, lowest, highest, slip.fits.symbol())
        }
        (TorqueReason::OutsideTolerance, None) => torque_outside(stage, result.setting, lowest, highest),
        (TorqueReason::ToolOutOfRange, _) => torque_tool_range(
            result.setting,
            &tool.name,
            here(result.tool.lowest()),
            here(result.tool.highest()),
        ),
        (TorqueReason::CalibrationPast, _) => torque_calibration(&tool.name, &tool.calibration_due),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{tool, try_entry};

    fn torque(stages: &[&str], unit: &str, tool: Tool) -> Result<Classified, Refusal> {
        let stages = stages.iter().map(|&stage| stage.to_owned()).collect();
        try_entry("pan_up", "torque", EntryValue::Torque { stages, unit: unit.into(), tool })
    }

    #[test]
    fn both_stages_clicked_inside_tolerance_are_inside() {
        assert_eq!(torque(&["4", "9"], "N·m", tool()).unwrap().class, "inside");
    }

    #[test]
    fn a_stage_outside_names_its_limits() {
        // The fixture's second stage is 9 N·m with 10 %, so 8.1 to 9.9 N·m.
        let over = torque(&["4", "10"], "N·m", tool()).unwrap();
        assert_eq!(over.class, "outside");
        assert_eq!(over.said[0], torque_outside(2_usize, "10 N·m", "8.1 N·m", "9.9 N·m"));
    }

    #[test]
    fn pound_inches_typed_for_newton_metres_are_named() {
        // 9 N·m is 79.66 lbf·in (1 lbf·in = 0.1129848 N·m, NIST SP 811).
        let slip = torque(&["35.4", "79.7"], "N·m", tool()).unwrap();
        assert_eq!(slip.said[0].id, "torque-unit-slip");
        assert_eq!(torque(&["35.4", "79.7"], "lbf·in", tool()).unwrap().class, "inside");
    }

    #[test]
    fn a_tool_may_be_used_on_its_last_day_and_not_after() {
        let due = |day: &str| Tool { calibration_due: day.into(), ..tool() };
        // The fixture's entries are made on 2026-03-02.
        assert_eq!(torque(&["4", "9"], "N·m", due("2026-03-02")).unwrap().class, "inside");
        let past = torque(&["4", "9"], "N·m", due("2026-03-01")).unwrap();
        assert_eq!((past.class.as_str(), past.said.len()), ("outside", 1), "said once, not once a stage");
        assert_eq!(past.said[0], torque_calibration("quarter-inch click wrench", "2026-03-01"));
    }

    #[test]
    fn a_day_that_is_none_or_is_spelt_otherwise_is_refused() {
        for day in ["", "2026-02-30", "02.03.2026", "2026-3-2"] {
            let tool = Tool { calibration_due: day.into(), ..tool() };
            assert_eq!(torque(&["4", "9"], "N·m", tool).unwrap_err().message, tool_date(day));
        }
    }

    #[test]
    fn one_setting_for_two_stages_is_refused() {
        assert_eq!(torque(&["9"], "N·m", tool()).unwrap_err().message, torque_stage_count(2_usize, 1_usize));
    }

    #[test]
    fn a_tool_that_ends_below_the_setting_does_not_count() {
        let small = Tool { max: "5".into(), ..tool() };
        assert_eq!(torque(&["4", "9"], "N·m", small).unwrap().said[0].id, "torque-tool-range");
    }
}
