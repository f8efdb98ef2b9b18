//! Torque, tools, adapters, angle stages, bolts and their order.

use chrono::NaiveDate;
use panside_trade::bolt::bolt_sense;
use panside_trade::measure::{Angle, Torque};
use panside_trade::order::{Bolt, Pattern, bolt_order};
use panside_trade::torque::{
    AngleStage, CALIBRATION_MONTHS, Reach, TorqueStage, TorqueTool, accept, calibration_due,
    class_a_deviation_percent, guard, judge_angle, setting_with_adapter, tool_use,
};
use panside_trade::units::Unit;
use panside_trade::{FigureError, Worked, Working};

use super::given::{Given, day, measure, parts, percent, quantity, whole, wrong};
use super::{Figure, Key, often, once, perhaps, perhaps_often};
use crate::exit::{Exit, Failure};
use crate::message::*;

const TOOL: Key = once("tool", cli_key_tool);
const CLASS: Key = perhaps("class", cli_key_class);
const DUE: Key = perhaps("due", cli_key_due);
const CALIBRATED: Key = perhaps("calibrated", cli_key_calibrated);
const MONTHS: Key = perhaps("months", cli_key_months);
const ON: Key = once("on", cli_key_on);

pub const FIGURES: &[Figure] = &[
    Figure {
        name: "torque",
        about: cli_torque,
        keys: &[
            once("torque", cli_torque_torque),
            perhaps("target", cli_torque_target),
            perhaps("tolerance", cli_torque_tolerance),
            perhaps("spec", cli_torque_spec),
            perhaps("stage", cli_torque_stage),
            TOOL,
            CLASS,
            DUE,
            CALIBRATED,
            MONTHS,
            ON,
        ],
        example: "torque=80lbf.in target=9Nm tolerance=10% tool=5Nm:25Nm due=2026-06-30 on=2026-05-04",
        work: torque,
    },
    Figure {
        name: "tool",
        about: cli_tool,
        keys: &[once("setting", cli_tool_setting), TOOL, CLASS, DUE, CALIBRATED, MONTHS, ON],
        example: "setting=4Nm tool=5Nm:25Nm calibrated=2025-06-30 on=2026-05-04",
        work: tool_figure,
    },
    Figure {
        name: "adapter",
        about: cli_adapter,
        keys: &[
            once("torque", cli_adapter_torque),
            once("tool", cli_adapter_tool),
            once("adapter", cli_adapter_adapter),
            perhaps("angle", cli_adapter_angle),
        ],
        example: "torque=30lbf.ft tool=12in adapter=6in angle=0deg",
        work: adapter,
    },
    Figure {
        name: "angle",
        about: cli_angle,
        keys: &[once("target", cli_angle_target), once("turned", cli_angle_turned)],
        example: "target=90deg:5deg turned=88deg",
        work: angle,
    },
    Figure {
        name: "bolt",
        about: cli_bolt,
        keys: &[
            once("torque", cli_bolt_torque),
            once("thread", cli_bolt_thread),
            once("grade", cli_bolt_grade),
        ],
        example: "torque=9Nm thread=M6 grade=8.8",
        work: bolt,
    },
    Figure {
        name: "order",
        about: cli_order,
        keys: &[
            once("pattern", cli_order_pattern),
            often("bolt", cli_order_bolt),
            perhaps_often("done", cli_order_done),
        ],
        example: "pattern=crosswise bolt=A:-100mm:80mm bolt=B:0mm:80mm bolt=C:100mm:80mm bolt=D:-100mm:-80mm bolt=E:0mm:-80mm bolt=F:100mm:-80mm done=B",
        work: order,
    },
];

fn tool(given: &Given) -> Result<(TorqueTool, NaiveDate), Failure> {
    let [low, high] = parts("tool", given.or("tool", ""), cli_form_tool())?;
    let (low, high): (Torque, Torque) =
        (quantity("tool", low, Unit::NewtonMetre)?, quantity("tool", high, Unit::NewtonMetre)?);
    let class = given.get("class").map(|text| percent("class", text)).transpose()?;
    let months = whole("months", given.or("months", &CALIBRATION_MONTHS.to_string()))?;
    let due = match (given.get("due"), given.get("calibrated")) {
        (Some(due), None) => day("due", due)?,
        (None, Some(calibrated)) => calibration_due(day("calibrated", calibrated)?, months)?,
        _ => return Err(Failure::new(Exit::Usage, cli_due_or_calibrated())),
    };
    let class = class.unwrap_or_else(|| class_a_deviation_percent(high));
    let tool = TorqueTool::new(low, high, class, due).map_err(FigureError::from)?;
    Ok((tool, day("on", given.or("on", ""))?))
}

fn stage(given: &Given) -> Result<TorqueStage, Failure> {
    if let Some(target) = given.get("target") {
        let tolerance = percent("tolerance", given.need("tolerance", cli_tolerance_missing)?)?;
        let target = quantity("target", target, Unit::NewtonMetre)?;
        return Ok(TorqueStage::new(target, tolerance).map_err(FigureError::from)?);
    }
    let key = given.need("spec", cli_spec_missing)?;
    let spec = given
        .sheet()
        .and_then(|sheet| sheet.torque(key))
        .ok_or_else(|| Failure::new(Exit::DoesNotLoad, cli_no_torque(key)))?;
    let text = given.or("stage", "1");
    let place = whole::<usize>("stage", text)?;
    let stage = place.checked_sub(1).and_then(|index| spec.stages().get(index));
    stage.copied().ok_or_else(|| wrong("stage", text, cli_stages(spec.stages().len())))
}

fn torque(given: &Given) -> Result<Working, Failure> {
    let (tool, on) = tool(given)?;
    let setting = measure("torque", given.or("torque", ""), Unit::NewtonMetre)?;
    let result = accept(stage(given)?, setting, tool, on).map_err(FigureError::from)?;
    Ok(guard(result)?.working())
}

fn tool_figure(given: &Given) -> Result<Working, Failure> {
    let (tool, on) = tool(given)?;
    Ok(tool_use(tool, given.quantity("setting", Unit::NewtonMetre, "")?, on).working())
}

fn adapter(given: &Given) -> Result<Working, Failure> {
    let wanted = measure("torque", given.or("torque", ""), Unit::NewtonMetre)?;
    let reach = Reach {
        tool: given.quantity("tool", Unit::Millimetre, "")?,
        adapter: given.quantity("adapter", Unit::Millimetre, "")?,
        angle: given.quantity("angle", Unit::Degree, "0deg")?,
    };
    Ok(setting_with_adapter(wanted, reach)?.working())
}

fn angle(given: &Given) -> Result<Working, Failure> {
    let [target, tolerance] = parts("target", given.or("target", ""), cli_form_target())?;
    let of = |text: &str| quantity::<Angle>("target", text, Unit::Degree);
    let stage = AngleStage::new(of(target)?, of(tolerance)?)?;
    Ok(judge_angle(stage, given.quantity("turned", Unit::Degree, "")?)?.working())
}

fn bolt(given: &Given) -> Result<Working, Failure> {
    let (thread, grade) = (given.or("thread", ""), given.or("grade", ""));
    let thread = thread.parse().map_err(|error: FigureError| wrong("thread", thread, error.message()))?;
    let grade = grade.parse().map_err(|error: FigureError| wrong("grade", grade, error.message()))?;
    Ok(bolt_sense(given.quantity("torque", Unit::NewtonMetre, "")?, thread, grade)?.working())
}

fn order(given: &Given) -> Result<Working, Failure> {
    let pattern = match given.or("pattern", "") {
        "star" => Pattern::Star,
        "crosswise" => Pattern::Crosswise,
        "spiral" => Pattern::Spiral,
        other => return Err(wrong("pattern", other, cli_pattern_words())),
    };
    let bolt = |text: &str| {
        let [id, x, y] = parts("bolt", text, cli_form_bolt())?;
        Ok(Bolt {
            id: id.to_owned(),
            x: quantity("bolt", x, Unit::Millimetre)?,
            y: quantity("bolt", y, Unit::Millimetre)?,
        })
    };
    let bolts = given.all("bolt").map(bolt).collect::<Result<Vec<_>, Failure>>()?;
    let order = bolt_order(&bolts, pattern)?;
    let done: Vec<String> = given.all("done").map(str::to_owned).collect();
    if done.is_empty() { Ok(order.working()) } else { Ok(order.working_after(&done)?) }
}
