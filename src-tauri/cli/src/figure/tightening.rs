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

const TOOL: Key = once("tool", "the tool's range, 5Nm:25Nm");
const CLASS: Key = perhaps("class", "how far it may be off, 4%; else by ISO 6789 class A");
const DUE: Key = perhaps("due", "last day of its calibration, 2026-06-30");
const CALIBRATED: Key = perhaps("calibrated", "instead: the day it was calibrated, 2025-06-30");
const MONTHS: Key = perhaps("months", "months between calibrations, 12");
const ON: Key = once("on", "the day it is used, 2026-05-04");

pub const FIGURES: &[Figure] = &[
    Figure {
        name: "torque",
        about: "whether a click counts: tolerance, tool, guard band, mixed-up unit",
        keys: &[
            once("torque", "the setting that clicked, 9Nm or 80lbf.in"),
            perhaps("target", "the torque that is wanted, 9Nm"),
            perhaps("tolerance", "its tolerance to both sides, 10%"),
            perhaps("spec", "instead of both: a key on the sheet, pan_bolt_torque"),
            perhaps("stage", "which stage of the sheet's torque, 2"),
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
        about: "whether a tool may be used for a setting on a day",
        keys: &[once("setting", "the setting that is wanted, 9Nm"), TOOL, CLASS, DUE, CALIBRATED, MONTHS, ON],
        example: "setting=4Nm tool=5Nm:25Nm calibrated=2025-06-30 on=2026-05-04",
        work: tool_figure,
    },
    Figure {
        name: "adapter",
        about: "what to set on a tool with an adapter",
        keys: &[
            once("torque", "the torque that is wanted at the bolt, 30lbf.ft"),
            once("tool", "the tool's length from grip to drive, 12in"),
            once("adapter", "the adapter's length from drive to bolt, 6in"),
            perhaps("angle", "angle between them: 0deg straight on, 90deg square, 180deg back"),
        ],
        example: "torque=30lbf.ft tool=12in adapter=6in angle=0deg",
        work: adapter,
    },
    Figure {
        name: "angle",
        about: "a stage that is turned by an angle",
        keys: &[
            once("target", "the angle and its tolerance to both sides, 90deg:5deg"),
            once("turned", "what was turned, 88deg"),
        ],
        example: "target=90deg:5deg turned=88deg",
        work: angle,
    },
    Figure {
        name: "bolt",
        about: "whether a torque makes sense for thread and grade",
        keys: &[
            once("torque", "the torque, 9Nm"),
            once("thread", "the thread, M6 or M8x1"),
            once("grade", "the grade on the head, 8.8, 10.9 or 12.9"),
        ],
        example: "torque=9Nm thread=M6 grade=8.8",
        work: bolt,
    },
    Figure {
        name: "order",
        about: "the order of a cover's bolts, and the next one",
        keys: &[
            once("pattern", "star for a ring, crosswise for a pan, spiral for a plate"),
            often("bolt", "a bolt and where it sits, A:0mm:60mm"),
            perhaps_often("done", "a bolt that is done in this stage, A"),
        ],
        example: "pattern=crosswise bolt=A:-100mm:80mm bolt=B:0mm:80mm bolt=C:100mm:80mm bolt=D:-100mm:-80mm bolt=E:0mm:-80mm bolt=F:100mm:-80mm done=B",
        work: order,
    },
];

fn tool(given: &Given) -> Result<(TorqueTool, NaiveDate), Failure> {
    let [low, high] = parts("tool", given.or("tool", ""), "lowest:highest, such as 5Nm:25Nm")?;
    let (low, high): (Torque, Torque) =
        (quantity("tool", low, Unit::NewtonMetre)?, quantity("tool", high, Unit::NewtonMetre)?);
    let class = given.get("class").map(|text| percent("class", text)).transpose()?;
    let months = whole("months", given.or("months", &CALIBRATION_MONTHS.to_string()))?;
    let due = match (given.get("due"), given.get("calibrated")) {
        (Some(due), None) => day("due", due)?,
        (None, Some(calibrated)) => calibration_due(day("calibrated", calibrated)?, months)?,
        _ => return Err(Failure::new(Exit::Usage, "Give either due=2026-06-30 or calibrated=2025-06-30.")),
    };
    let class = class.unwrap_or_else(|| class_a_deviation_percent(high));
    let tool = TorqueTool::new(low, high, class, due).map_err(FigureError::from)?;
    Ok((tool, day("on", given.or("on", ""))?))
}

fn stage(given: &Given) -> Result<TorqueStage, Failure> {
    if let Some(target) = given.get("target") {
        let tolerance = percent("tolerance", given.need("tolerance", "")?)?;
        let target = quantity("target", target, Unit::NewtonMetre)?;
        return Ok(TorqueStage::new(target, tolerance).map_err(FigureError::from)?);
    }
    let key = given.need("spec", ": give target=… and tolerance=…, or spec=… with --sheet FILE")?;
    let spec = given.sheet().and_then(|sheet| sheet.torque(key)).ok_or_else(|| {
        Failure::new(Exit::DoesNotLoad, format!("There is no sheet with the torque \"{key}\"."))
    })?;
    let text = given.or("stage", "1");
    let place = whole::<usize>("stage", text)?;
    let stage = place.checked_sub(1).and_then(|index| spec.stages().get(index));
    stage.copied().ok_or_else(|| wrong("stage", text, format!("it has {} stage(s).", spec.stages().len())))
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
    let [target, tolerance] = parts("target", given.or("target", ""), "angle:tolerance, such as 90deg:5deg")?;
    let of = |text: &str| quantity::<Angle>("target", text, Unit::Degree);
    let stage = AngleStage::new(of(target)?, of(tolerance)?)?;
    Ok(judge_angle(stage, given.quantity("turned", Unit::Degree, "")?)?.working())
}

fn bolt(given: &Given) -> Result<Working, Failure> {
    let (thread, grade) = (given.or("thread", ""), given.or("grade", ""));
    let thread = thread.parse().map_err(|error: FigureError| wrong("thread", thread, error))?;
    let grade = grade.parse().map_err(|error: FigureError| wrong("grade", grade, error))?;
    Ok(bolt_sense(given.quantity("torque", Unit::NewtonMetre, "")?, thread, grade)?.working())
}

fn order(given: &Given) -> Result<Working, Failure> {
    let pattern = match given.or("pattern", "") {
        "star" => Pattern::Star,
        "crosswise" => Pattern::Crosswise,
        "spiral" => Pattern::Spiral,
        other => return Err(wrong("pattern", other, "it is star, crosswise or spiral.")),
    };
    let bolt = |text: &str| {
        let [id, x, y] = parts("bolt", text, "name:right:up, such as A:0mm:60mm")?;
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
