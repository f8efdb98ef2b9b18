//! The level chart as a screen draws it while it is typed: axes, the band, and the same in words.

use panside_trade::number::parse_number;
use panside_trade::scale::Scale;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::typed::{Typed, TypedPoint};
use crate::message::{Message, figure, sheet_chart, sheet_chart_crossed};

/// About so many steps across and up.
const STEPS: (f64, f64) = (6.0, 5.0);

/// A chart to draw. Places are shares of the drawing's width and height: 0 left and below, 1 right and above.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct ChartView {
    /// The axis of the temperatures.
    pub across: Vec<Tick>,
    /// The axis of the marks.
    pub up: Vec<Tick>,
    /// The rows that are typed far enough to be drawn, by rising temperature.
    pub points: Vec<DrawnPoint>,
    /// The picture in words.
    pub says: Message,
}

/// A full step of an axis.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct Tick {
    /// Where.
    pub at: f64,
    /// What stands there.
    pub says: String,
}

/// One temperature of a drawn chart.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, TS)]
pub struct DrawnPoint {
    /// The row it is typed in, from 0.
    pub row: usize,
    /// Where across.
    pub at: f64,
    /// Where the low mark is.
    pub low: f64,
    /// Where the high mark is.
    pub high: f64,
    /// The low mark is not below the high one.
    pub crossed: bool,
}

/// A row whose three numbers are there.
struct Row {
    row: usize,
    at: f64,
    low: f64,
    high: f64,
}

/// The drawing of a value that is a chart, where at least two of its rows can be drawn.
#[must_use]
pub fn chart(typed: &Typed) -> Option<ChartView> {
    let Typed::Chart { temperature_unit, length_unit, points, .. } = typed else { return None };
    let mut rows: Vec<Row> = points.iter().enumerate().filter_map(read).collect();
    rows.sort_by(|one, other| one.at.total_cmp(&other.at));
    if rows.len() < 2 {
        return None;
    }
    let across = Scale::over(rows.iter().map(|row| row.at), STEPS.0)?;
    // The end of the stick is always on the drawing: marks are measured from it.
    let up = Scale::over(rows.iter().flat_map(|row| [row.low, row.high]).chain([0.0]), STEPS.1)?;
    let points = rows.iter().map(|row| DrawnPoint {
        row: row.row,
        at: across.share(row.at),
        low: up.share(row.low),
        high: up.share(row.high),
        crossed: row.low >= row.high,
    });
    let points: Vec<DrawnPoint> = points.collect();
    let says = says(&rows, temperature_unit, length_unit, points.iter().any(|point| point.crossed));
    Some(ChartView { across: ticks(across), up: ticks(up), points, says })
}

fn read((row, point): (usize, &TypedPoint)) -> Option<Row> {
    let number = |text: &str| parse_number(text).ok();
    Some(Row { row, at: number(&point.at)?, low: number(&point.low)?, high: number(&point.high)? })
}

fn ticks(scale: Scale) -> Vec<Tick> {
    let ticks = scale.ticks().into_iter();
    ticks.map(|tick| Tick { at: scale.share(tick), says: scale.label(tick) }).collect()
}

fn says(rows: &[Row], temperature_unit: &str, length_unit: &str, crossed: bool) -> Message {
    let said = rows.iter().map(|row| {
        let [at, low, high] = [row.at, row.low, row.high].map(figure);
        format!("{at} {temperature_unit}: {low}\u{2013}{high} {length_unit}")
    });
    let said: Vec<String> = said.collect();
    if crossed { sheet_chart_crossed(said) } else { sheet_chart(said) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn typed(points: &[(&str, &str, &str)]) -> Typed {
        let point = |&(at, low, high): &(&str, &str, &str)| TypedPoint {
            at: at.into(),
            low: low.into(),
            high: high.into(),
        };
        Typed::Chart {
            temperature_unit: "°C".into(),
            length_unit: "mm".into(),
            points: points.iter().map(point).collect(),
            agreement: String::new(),
        }
    }

    #[test]
    fn a_chart_is_drawn_from_the_end_of_the_stick_up_by_rising_temperature() {
        let view = chart(&typed(&[("70", "27", "37"), ("40", "12,0", "22")])).unwrap();
        let across: Vec<&str> = view.across.iter().map(|tick| tick.says.as_str()).collect();
        assert_eq!(across, ["40", "45", "50", "55", "60", "65", "70"]);
        let up: Vec<&str> = view.up.iter().map(|tick| tick.says.as_str()).collect();
        assert_eq!(up, ["0", "10", "20", "30", "40"]);
        let places: Vec<(usize, f64, f64, f64)> =
            view.points.iter().map(|point| (point.row, point.at, point.low, point.high)).collect();
        // 12 mm of 40 mm is 0.3 of the height, 27 mm is 0.675, and so on.
        assert_eq!(places, [(1, 0.0, 0.3, 0.55), (0, 1.0, 0.675, 0.925)]);
        assert_eq!(
            view.says,
            sheet_chart(vec!["40 °C: 12\u{2013}22 mm".to_owned(), "70 °C: 27\u{2013}37 mm".to_owned()])
        );
    }

    #[test]
    fn what_is_not_typed_yet_is_left_out_and_marks_that_cross_are_drawn_and_said() {
        let view = chart(&typed(&[("40", "12", "22"), ("58", "31", "21"), ("70", "27", "")])).unwrap();
        let crossed: Vec<bool> = view.points.iter().map(|point| point.crossed).collect();
        assert_eq!(crossed, [false, true]);
        assert_eq!(view.says.id, "sheet-chart-crossed");
    }

    #[test]
    fn one_temperature_is_no_chart_yet() {
        assert_eq!(chart(&typed(&[("40", "12", "22"), ("", "", "")])), None);
        assert_eq!(chart(&Typed::Text("40 to 70".into())), None);
    }
}
