//! Fasteners tightened with a setting tool, judged by [`panside_trade::torque`], one setting a stage.

use panside_procedure::format::Checklist;
use panside_procedure::format::entry::{self, Excepted};
use panside_trade::measure::{Angle, Length, Measure, Torque};
use panside_trade::number::parse_number;
use panside_trade::torque::{
    AdapterSetting, AngleClass, AngleResult, AngleStage, GuardClass, Guarded, Reach, TorqueClass,
    TorqueReason, TorqueResult, TorqueStage, TorqueTool, accept, class_a_deviation_percent, guard,
    judge_angle, setting_with_adapter, tool_use, torque_through_adapter,
};
use panside_trade::units::{Quantity, Unit};
use panside_trade::{FigureError, TradeError};
use serde::{Deserialize, Serialize};

use super::kind::{self, Kind};
use super::{Classified, Context, measure, named, no_sheet_value, quantity};
use crate::clock::{civil_date, day_of};
use crate::command::Refusal;
use crate::message::{
    Message, limit_angle, limit_stage, tool_date, tool_no_name, torque_adapter, torque_angle_count,
    torque_angle_over, torque_angle_short, torque_angles_inside, torque_by_exception, torque_calibration,
    torque_inside, torque_may_except, torque_not_proved, torque_outside, torque_stage_count,
    torque_tool_range, torque_unit_slip,
};
use crate::sheet::Specs;
use crate::units;
use crate::value::{Adapter, EntryValue, Tool};

/// A torque entry judged, and how it came about.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct TorqueJudged {
    /// `inside`, `outside` or `by_exception`.
    pub class: String,
    /// Each stage as it arrived at the bolt, with its guard band.
    pub stages: Vec<Guarded>,
    /// With an adapter: what each stage is to be set to.
    pub adapter: Vec<AdapterSetting>,
    /// The angle of each fastener after the last stage, where the sheet asks for it.
    pub angles: Vec<AngleResult>,
}

/// What one look at a tool or a bolt found against it, with the sentence.
type Against = (Option<Excepted>, Message);

pub(super) fn classify(
    asked: &entry::Torque,
    specs: &Specs,
    typed: &EntryValue,
    context: &Context<'_>,
) -> Result<Classified, Refusal> {
    let EntryValue::Torque { stages: settings, unit, tool, adapter, angles, exception } = typed else {
        return Err(no_sheet_value(&asked.spec));
    };
    let spec = specs.torque(&asked.spec).ok_or_else(|| no_sheet_value(&asked.spec))?;
    if settings.len() != spec.stages().len() {
        return Err(torque_stage_count(spec.stages().len(), settings.len()).into());
    }
    if tool.name.trim().is_empty() {
        return Err(tool_no_name().into());
    }
    let used = Used {
        with: take(tool)?,
        reach: adapter.as_ref().map(reach).transpose()?,
        day: civil_date(context.at.wall_ms, context.utc_offset_min),
    };
    let mut judged =
        TorqueJudged { class: String::new(), stages: Vec::new(), adapter: Vec::new(), angles: Vec::new() };
    let mut against: Vec<Against> = Vec::new();
    let mut told = Vec::new();
    for (at, (stage, setting)) in spec.stages().iter().zip(settings).enumerate() {
        let guarded = used.stage(*stage, measure(setting, unit)?)?;
        against.extend(found(at + 1, &guarded, tool, asked.guarded));
        told.extend(not_proved(at + 1, &guarded).filter(|_| !asked.guarded));
        if let Some(setting) = used.setting(*stage, unit)? {
            told.push(torque_adapter(at + 1, setting.setting, setting.wanted));
            judged.adapter.push(setting);
        }
        judged.stages.push(guarded);
    }
    if let Some((stage, fasteners)) = specs.angle(&asked.spec) {
        judged.angles = turned(stage, fasteners, angles, &mut against)?;
        if judged.angles.iter().all(|result| result.class == AngleClass::Inside) {
            told.push(torque_angles_inside(judged.angles.len()));
        }
    }
    let may = !against.is_empty()
        && against.iter().all(|(what, _)| what.is_some_and(|what| asked.exceptions.contains(&what)));
    let exception = exception.as_ref().filter(|_| may).map(|told| named(told, context.names)).transpose()?;
    let mut said: Vec<Message> = Vec::new();
    for (_, message) in against.iter() {
        if !said.contains(message) {
            said.push(message.clone());
        }
    }
    let class = match (against.is_empty(), &exception) {
        (true, _) => {
            said.push(torque_inside(settings.len()));
            "inside"
        }
        (false, Some((kept, name))) => {
            said.push(torque_by_exception(*name, &kept.reason));
            "by_exception"
        }
        (false, None) => {
            said.extend(may.then(torque_may_except));
            "outside"
        }
    };
    said.extend(told);
    class.clone_into(&mut judged.class);
    let trim = |text: &String| text.trim().to_owned();
    let value = EntryValue::Torque {
        stages: settings.iter().map(trim).collect(),
        unit: trim(unit),
        tool: tool.clone(),
        adapter: adapter.clone(),
        angles: angles.iter().map(trim).collect(),
        exception: exception.map(|(kept, _)| kept),
    };
    Ok(Classified::worked_out(class, value, said, judged))
}

/// With what it was clicked, and when.
struct Used {
    with: TorqueTool,
    reach: Option<Reach>,
    day: chrono::NaiveDate,
}

impl Used {
    /// One stage: the tolerance is judged at the bolt, the tool by what it was set to.
    fn stage(&self, stage: TorqueStage, setting: Measure) -> Result<Guarded, Refusal> {
        let figure = |error: FigureError| Refusal::from(error.message());
        let trade = |error: TradeError| figure(FigureError::Trade(error));
        let on_tool = Torque::try_from(setting).map_err(trade)?;
        let at_bolt = match self.reach {
            Some(reach) => torque_through_adapter(setting, reach).map_err(figure)?,
            None => setting,
        };
        let mut result = accept(stage, at_bolt, self.with, self.day).map_err(trade)?;
        result.reasons.retain(|reason| *reason == TorqueReason::OutsideTolerance);
        result.reasons.extend(tool_use(self.with, on_tool, self.day).reasons);
        result.class = if result.reasons.is_empty() { TorqueClass::Inside } else { TorqueClass::Outside };
        guard(result).map_err(figure)
    }

    /// What a tool with an adapter is to be set to for a stage.
    fn setting(&self, stage: TorqueStage, unit: &str) -> Result<Option<AdapterSetting>, Refusal> {
        let Some(reach) = self.reach else { return Ok(None) };
        let wanted = Measure::from(stage.target());
        let wanted = unit.parse().and_then(|unit| wanted.to(unit)).unwrap_or(wanted);
        setting_with_adapter(wanted, reach).map(Some).map_err(|error| error.message().into())
    }
}

fn reach(adapter: &Adapter) -> Result<Reach, Refusal> {
    let angle = parse_number(&adapter.angle).and_then(Angle::from_degrees);
    let reach = Reach {
        tool: quantity::<Length>(&adapter.tool, &adapter.unit)?,
        adapter: quantity::<Length>(&adapter.length, &adapter.unit)?,
        angle: angle.map_err(|error| Refusal::from(error.message()))?,
    };
    reach.factor().map(|_| reach).map_err(|error| error.message().into())
}

/// What speaks against a stage.
fn found(stage: usize, guarded: &Guarded, tool: &Tool, by_guard: bool) -> Vec<Against> {
    let result = &guarded.result;
    let excepted = |reason| match reason {
        TorqueReason::OutsideTolerance => None,
        TorqueReason::ToolOutOfRange => Some(Excepted::ToolOutOfRange),
        TorqueReason::CalibrationPast => Some(Excepted::CalibrationPast),
    };
    let mut found: Vec<Against> =
        result.reasons.iter().map(|reason| (excepted(*reason), say(stage, result, *reason, tool))).collect();
    if by_guard {
        found.extend(not_proved(stage, guarded).map(|message| (Some(Excepted::NotProved), message)));
    }
    found
}

/// That a setting inside its tolerance is not proved to be inside with all that the tool may be off.
fn not_proved(stage: usize, guarded: &Guarded) -> Option<Message> {
    let outside = guarded.result.reasons.contains(&TorqueReason::OutsideTolerance);
    if outside || guarded.class == GuardClass::Proved {
        return None;
    }
    let [from, to] = [guarded.from, guarded.to].map(|end| in_unit_of(&guarded.result, end));
    let can = if guarded.can_be_proved() { "yes" } else { "no" };
    Some(torque_not_proved(stage, can, from, to))
}

/// The angles of all fasteners.
fn turned(
    stage: AngleStage,
    fasteners: u32,
    typed: &[String],
    against: &mut Vec<Against>,
) -> Result<Vec<AngleResult>, Refusal> {
    let wants = usize::try_from(fasteners).unwrap_or(usize::MAX);
    if typed.len() != wants {
        return Err(torque_angle_count(wants, typed.len()).into());
    }
    let mut results = Vec::new();
    for (at, text) in typed.iter().enumerate() {
        let angle = parse_number(text).and_then(Angle::from_degrees);
        let angle = angle.map_err(|error| Refusal::from(error.message()))?;
        let result = judge_angle(stage, angle).map_err(|error| Refusal::from(error.message()))?;
        let (turned, target) = (Measure::from(angle), Measure::from(stage.target()));
        match result.class {
            AngleClass::Inside => {}
            AngleClass::Short => {
                against.push((None, torque_angle_short(at + 1, turned, target, Measure::from(result.left))));
            }
            AngleClass::Over => against.push((None, torque_angle_over(at + 1, turned, target))),
        }
        results.push(result);
    }
    Ok(results)
}

fn take(tool: &Tool) -> Result<TorqueTool, Refusal> {
    let trade = |error: TradeError| Refusal::from(error.message());
    let end = |text: &str| quantity::<Torque>(text, &tool.unit);
    let (lowest, highest) = (end(&tool.min)?, end(&tool.max)?);
    let deviation = match &tool.class_percent {
        Some(percent) => parse_number(percent).map_err(trade)?,
        None => class_a_deviation_percent(highest),
    };
    let due = day_of(&tool.calibration_due).ok_or_else(|| tool_date(&tool.calibration_due))?;
    TorqueTool::new(lowest, highest, deviation, due).map_err(trade)
}

/// A torque in the unit that the setting was typed in.
fn in_unit_of(result: &TorqueResult, torque: Torque) -> Measure {
    let measure = Measure::from(torque);
    measure.to(result.setting.unit()).unwrap_or(measure)
}

fn say(stage: usize, result: &TorqueResult, reason: TorqueReason, tool: &Tool) -> Message {
    let here = |torque| in_unit_of(result, torque);
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

/// The limits of a torque stage in newton metres.
fn stage_limit(number: usize, stage: panside_trade::torque::TorqueStage) -> Message {
    let target = stage.target().newton_metres();
    let off = target * stage.tolerance_percent() / 100.0;
    let text =
        |value: f64| Torque::from_newton_metres(value).map_or(String::new(), |torque| torque.to_string());
    limit_stage(number, text(target), text(target - off), text(target + off))
}

impl Kind for entry::Torque {
    fn classify(
        &self,
        specs: &Specs,
        value: &EntryValue,
        context: &Context<'_>,
    ) -> Result<Classified, Refusal> {
        match value {
            EntryValue::Torque { .. } => classify(self, specs, value, context),
            _ => Err(kind::other("torque", value)),
        }
    }

    fn limits(&self, specs: &Specs, _checklist: &Checklist) -> Vec<Message> {
        let stages = specs.torque(&self.spec).map(|spec| spec.stages()).unwrap_or_default();
        let stages = stages.iter().enumerate().map(|(at, stage)| stage_limit(at + 1, *stage));
        let angle = specs.angle(&self.spec).map(|(angle, bolts)| {
            let [target, tolerance] = [angle.target(), angle.tolerance()].map(Measure::from);
            limit_angle(target, tolerance, i64::from(bolts))
        });
        stages.chain(angle).collect()
    }

    fn units(&self) -> Vec<String> {
        units::of(Quantity::Torque, Unit::NewtonMetre)
    }

    fn temperature_units(&self) -> Vec<String> {
        Vec::new()
    }

    fn converted<'v>(&self, value: &'v EntryValue) -> Option<(&'v str, &'v str)> {
        let EntryValue::Torque { stages, unit, .. } = value else { return None };
        // Of several stages the one that was typed last is shown.
        let typed = stages.iter().rev().find(|stage| parse_number(stage).is_ok())?;
        Some((typed, unit))
    }

    fn in_short(&self, value: &EntryValue, _checklist: &Checklist) -> Option<String> {
        let EntryValue::Torque { stages, unit, .. } = value else { return None };
        Some(format!("{} {unit}", stages.join(", ")))
    }

    fn is_measured(&self) -> bool {
        true
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{tool, try_entry};

    fn torque(stages: &[&str], unit: &str, tool: Tool) -> Result<Classified, Refusal> {
        let stages = stages.iter().map(|&stage| stage.to_owned()).collect();
        let value = EntryValue::Torque {
            stages,
            unit: unit.into(),
            tool: Box::new(tool),
            adapter: None,
            angles: Vec::new(),
            exception: None,
        };
        try_entry("pan_up", "torque", value)
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
