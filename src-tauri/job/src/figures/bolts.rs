//! Fasteners in their places, in their order, with the stages that were clicked.

use panside_procedure::format::{Ask, Entry, Step, entry};
use panside_trade::measure::Measure;
use panside_trade::order::Bolt;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::{Drawing, FULL, Figure, FigureKind, Taken, asked, pointed, when};
use crate::job::Job;
use crate::message::{
    Message, figure_angle_open, figure_angle_turned, figure_bolts_noted, figure_bolts_order,
    figure_bolts_title, figure_stage_clicked, figure_stage_open, figure_torque_was,
};
use crate::sheet::{Bolts, Specs};
use crate::value::EntryValue;

/// A map of fasteners.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct BoltMap {
    /// The height of the map, in [`FULL`] parts of its width.
    pub height: i32,
    /// The fasteners in the order in which each stage tightens them.
    pub bolts: Vec<DrawnBolt>,
    /// The stages, in their order.
    pub stages: Vec<StageLine>,
    /// The number of the next one, while a stage is not clicked.
    pub next: Option<usize>,
}

/// A fastener on the map.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct DrawnBolt {
    /// Its place in the order, from 1.
    pub number: usize,
    /// From the left.
    pub x: i32,
    /// From below.
    pub y: i32,
    /// What is different about it.
    pub note: Option<String>,
}

/// A stage.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct StageLine {
    /// What it is, in a sentence: clicked at what and when, or open.
    pub says: Message,
    /// It was clicked.
    pub clicked: bool,
}

impl BoltMap {
    pub(crate) fn each_message(&mut self, say: &mut dyn FnMut(&mut Message)) {
        self.stages.iter_mut().for_each(|stage| say(&mut stage.says));
    }
}

/// A figure for each torque that was entered or is in progress and whose places the sheet gives.
pub(super) fn figures(job: &Job, taken: &[Taken<'_>]) -> Vec<(u64, Figure)> {
    let drawn = asked(job).filter_map(|(step, entry, ask)| {
        let Ask::Torque(asked) = ask else { return None };
        let all: Vec<&Taken<'_>> = taken.iter().filter(|found| found.is_of(step, entry)).collect();
        let counts = all.iter().rfind(|found| found.counts).copied();
        let in_progress = job.step(job.procedure.names.step(&step.id)?).in_progress();
        let first = all.first().map(|found| found.value.mark.seq);
        let first = first.or_else(|| in_progress.map(|attempt| attempt.begun.seq))?;
        Some((first, draw(job, (step, entry, asked), counts, &all)?))
    });
    drawn.collect()
}

fn draw(
    job: &Job,
    (step, entry, asked): (&Step, &Entry, &entry::Torque),
    counts: Option<&Taken<'_>>,
    all: &[&Taken<'_>],
) -> Option<Figure> {
    let entered = counts.map(|found| (&found.value.value, when(job, &found.value.mark)));
    let map = map(&job.specs, asked, entered.as_ref().map(|(value, time)| (*value, time.as_str())))?;
    let bolts = job.specs.bolts(&asked.spec)?;
    let noted = map.bolts.iter().filter_map(|bolt| Some(format!("{} {}", bolt.number, bolt.note.as_ref()?)));
    let noted: Vec<String> = noted.collect();
    let pattern = match bolts.order.pattern {
        panside_trade::order::Pattern::Star => "star",
        panside_trade::order::Pattern::Crosswise => "crosswise",
        panside_trade::order::Pattern::Spiral => "spiral",
    };
    let mut says = vec![figure_bolts_order(map.bolts.len(), pattern)];
    says.extend((!noted.is_empty()).then(|| figure_bolts_noted(noted)));
    says.extend(map.stages.iter().map(|stage| stage.says.clone()));
    // What was clicked before and does not count any more is told, not drawn.
    let before = all.iter().filter(|found| !found.counts).filter_map(|found| {
        let EntryValue::Torque { stages, unit, tool, .. } = &found.value.value else { return None };
        Some(figure_torque_was(when(job, &found.value.mark), numbers(stages), unit, &tool.name))
    });
    says.extend(before);
    Some(Figure {
        id: format!("{}/{}", step.id, entry.id),
        kind: FigureKind::Bolts,
        title: figure_bolts_title(&step.title, &entry.label),
        says,
        drawing: Drawing::Bolts(map),
    })
}

/// The map of a torque, with what was entered and when; nothing where the sheet gives no places.
pub(crate) fn map(
    specs: &Specs,
    asked: &entry::Torque,
    entered: Option<(&EntryValue, &str)>,
) -> Option<BoltMap> {
    let mut map = places(&specs.bolts(&asked.spec)?);
    let stages = specs.torque(&asked.spec)?.stages().iter().enumerate().map(|(at, stage)| {
        let target = Measure::from(stage.target());
        match clicked(entered, at) {
            Some((setting, time)) => {
                let says = figure_stage_clicked(at + 1, target, setting, time);
                StageLine { says, clicked: true }
            }
            None => StageLine { says: figure_stage_open(at + 1, target), clicked: false },
        }
    });
    map.stages = stages.chain(angle(specs, asked, entered)).collect();
    if map.stages.iter().any(|stage| !stage.clicked) {
        map.next = map.bolts.first().map(|bolt| bolt.number);
    }
    Some(map)
}

/// The fasteners in their places, without any stage.
pub(crate) fn places(bolts: &Bolts) -> BoltMap {
    let all = &bolts.order.bolts;
    let (left, right) = ends(all, |bolt| bolt.x.millimetres());
    let (low, high) = ends(all, |bolt| bolt.y.millimetres());
    // A row that stands upright is drawn as high as wide, with all its fasteners in the middle.
    let (width, height) = (right - left, high - low);
    let side = if width > 0.0 { width } else { height.max(1.0) };
    let part = |value: f64, from: f64, of: f64| {
        if of > 0.0 { ((value - from) / of * f64::from(FULL)).round() as i32 } else { FULL / 2 }
    };
    let drawn = bolts.in_order().enumerate().map(|(at, (bolt, note))| DrawnBolt {
        number: at + 1,
        x: part(bolt.x.millimetres(), left, width),
        y: part(bolt.y.millimetres(), low, height),
        note: note.cloned(),
    });
    let height = (height / side * f64::from(FULL)).round() as i32;
    BoltMap { height, bolts: drawn.collect(), stages: Vec::new(), next: None }
}

/// The stage that is turned by an angle, where the sheet has one.
fn angle(specs: &Specs, asked: &entry::Torque, entered: Option<(&EntryValue, &str)>) -> Option<StageLine> {
    let (stage, _) = specs.angle(&asked.spec)?;
    let target = Measure::from(stage.target()).to_string();
    let turned = match entered {
        Some((EntryValue::Torque { angles, .. }, time)) if !angles.is_empty() => Some((angles, time)),
        _ => None,
    };
    let clicked = turned.is_some();
    let says = match turned {
        Some((angles, time)) => figure_angle_turned(target, numbers(angles), time),
        None => figure_angle_open(target),
    };
    Some(StageLine { says, clicked })
}

fn numbers(typed: &[String]) -> Vec<String> {
    typed.iter().map(|number| pointed(number)).collect()
}

/// The setting that clicked at a stage, with its unit, and when.
fn clicked(entered: Option<(&EntryValue, &str)>, stage: usize) -> Option<(String, String)> {
    match entered {
        Some((EntryValue::Torque { stages, unit, .. }, time)) => {
            Some((format!("{} {unit}", pointed(stages.get(stage)?)), time.to_owned()))
        }
        _ => None,
    }
}

fn ends(bolts: &[Bolt], axis: fn(&Bolt) -> f64) -> (f64, f64) {
    let values = bolts.iter().map(axis);
    let ends = values.fold(None, |ends: Option<(f64, f64)>, value| {
        let (low, high) = ends.unwrap_or((value, value));
        Some((low.min(value), high.max(value)))
    });
    ends.unwrap_or_default()
}
