//! Values over two axes, as they are drawn.

use panside_trade::scale::Scale;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::FULL;
use crate::message::{Message, figure_axis};

/// About so many steps across and up.
const STEPS: (f64, f64) = (6.0, 5.0);

/// Values over axes.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Plot {
    /// The axis below.
    pub across: Axis,
    /// The axis on the left.
    pub up: Axis,
    /// What is allowed, or how far a curve may be off.
    pub bands: Vec<Band>,
    /// Columns from the axis below.
    pub columns: Vec<Column>,
    /// Lines and curves.
    pub lines: Vec<Line>,
    /// Readings.
    pub points: Vec<Point>,
    /// Words beside readings and lines.
    pub labels: Vec<Label>,
}

/// An axis with its full steps.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Axis {
    /// What it counts, in which unit; nothing where it has no numbers.
    pub title: Option<Message>,
    /// Its steps, rising.
    pub ticks: Vec<Tick>,
}

/// A full step of an axis.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Tick {
    /// Where.
    pub at: i32,
    /// What stands there.
    pub says: String,
}

/// A place in a drawing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Spot {
    /// From the left.
    pub x: i32,
    /// From below.
    pub y: i32,
}

/// An area between two edges.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Band {
    /// The lower edge, from left to right.
    pub low: Vec<Spot>,
    /// The upper edge, from left to right.
    pub high: Vec<Spot>,
}

/// A column that stands on the axis below.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Column {
    /// Its left edge.
    pub from: i32,
    /// Its right edge.
    pub to: i32,
    /// Its height.
    pub height: i32,
    /// What stands below it.
    pub name: Message,
}

/// A line or curve.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Line {
    /// How it is drawn.
    pub style: LineStyle,
    /// Its places, drawn straight from one to the next.
    pub through: Vec<Spot>,
}

/// How a line is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum LineStyle {
    /// A limit, or a moment.
    Limit,
    /// A fitted curve: dashed, as nobody has read it.
    Curve,
    /// From one reading to the next, with what was done between.
    Path,
}

/// A reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Point {
    /// Where.
    pub at: Spot,
    /// The lowest and the highest that it may be, where that is known.
    pub between: Option<(i32, i32)>,
    /// It counts: it was not replaced, left or voided.
    pub counts: bool,
}

/// Words beside a place.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Label {
    /// The place.
    pub at: Spot,
    /// The words.
    pub says: Message,
    /// What they belong to counts.
    pub counts: bool,
}

impl Plot {
    pub(crate) fn each_message(&mut self, say: &mut dyn FnMut(&mut Message)) {
        [&mut self.across, &mut self.up]
            .into_iter()
            .filter_map(|axis| axis.title.as_mut())
            .for_each(&mut *say);
        self.columns.iter_mut().for_each(|column| say(&mut column.name));
        self.labels.iter_mut().for_each(|label| say(&mut label.says));
    }
}

/// Both scales of a plot.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Frame {
    across: Scale,
    up: Scale,
}

impl Frame {
    /// A frame around these values; nothing where there is none, or one that is no number.
    pub fn around(across: impl IntoIterator<Item = f64>, up: impl IntoIterator<Item = f64>) -> Option<Frame> {
        Some(Frame { across: Scale::over(across, STEPS.0)?, up: Scale::over(up, STEPS.1)? })
    }

    /// Where two values are.
    pub fn spot(&self, across: f64, up: f64) -> Spot {
        Spot { x: part(self.across, across), y: part(self.up, up) }
    }

    /// Where two values are; what lies above or below the drawing is on its edge.
    pub fn nearest(&self, across: f64, up: f64) -> Spot {
        self.spot(across, up.clamp(self.up.from(), self.up.to()))
    }

    /// Where a value is on the axis across.
    pub fn foot(&self, across: f64) -> Spot {
        Spot { x: part(self.across, across), y: 0 }
    }

    /// Where a value is from below.
    pub fn y(&self, up: f64) -> i32 {
        part(self.up, up)
    }

    /// Where the axis across begins and ends.
    pub fn ends(&self) -> (f64, f64) {
        (self.across.from(), self.across.to())
    }

    /// The empty plot with both axes by their units; an empty one is none.
    pub fn plot(&self, across: &str, up: &str) -> Plot {
        Plot { across: axis(self.across, across), up: axis(self.up, up), ..Plot::default() }
    }
}

fn axis(scale: Scale, unit: &str) -> Axis {
    let tick = |value| Tick { at: part(scale, value), says: scale.label(value) };
    let title = (!unit.is_empty()).then(|| figure_axis(unit));
    Axis { title, ticks: scale.ticks().into_iter().map(tick).collect() }
}

fn part(scale: Scale, value: f64) -> i32 {
    (scale.share(value) * f64::from(FULL)).round() as i32
}
