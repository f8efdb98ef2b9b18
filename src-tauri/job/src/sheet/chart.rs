//! The level chart as a screen draws it while it is typed: axes, the band, and the same in words.

use panside_trade::number::parse_number;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::typed::{Typed, TypedPoint};
use crate::figures::{Band, Frame, Plot};
use crate::message::{Message, figure, sheet_chart, sheet_chart_crossed};

/// A chart to draw.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct ChartView {
    /// Axes and band.
    pub plot: Plot,
    /// The rows that are typed far enough to be drawn, by rising temperature.
    pub points: Vec<DrawnPoint>,
    /// The picture in words.
    pub says: Message,
}

/// One temperature of a drawn chart, in parts of the drawing as [`crate::figures`] counts them.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct DrawnPoint {
    /// The row it is typed in, from 0.
    pub row: usize,
    /// Where across.
    pub at: i32,
    /// Where the low mark is.
    pub low: i32,
    /// Where the high mark is.
    pub high: i32,
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

impl ChartView {
    pub(super) fn each_message(&mut self, put: &mut dyn FnMut(&mut Message)) {
        self.plot.each_message(put);
        put(&mut self.says);
    }
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
    // The end of the stick is always on the drawing: marks are measured from it.
    let marks = rows.iter().flat_map(|row| [row.low, row.high]).chain([0.0]);
    let frame = Frame::around(rows.iter().map(|row| row.at), marks)?;
    let mut plot = frame.plot(temperature_unit, length_unit);
    plot.bands.push(Band {
        low: rows.iter().map(|row| frame.spot(row.at, row.low)).collect(),
        high: rows.iter().map(|row| frame.spot(row.at, row.high)).collect(),
    });
    let points = rows.iter().map(|row| {
        let (low, high) = (frame.spot(row.at, row.low), frame.spot(row.at, row.high));
        DrawnPoint { row: row.row, at: low.x, low: low.y, high: high.y, crossed: row.low >= row.high }
    });
    let points: Vec<DrawnPoint> = points.collect();
    let said = rows.iter().map(|row| row_text((row.at, row.low, row.high), temperature_unit, length_unit));
    let said: Vec<String> = said.collect();
    let crossed = points.iter().any(|point| point.crossed);
    let says = if crossed { sheet_chart_crossed(said) } else { sheet_chart(said) };
    Some(ChartView { plot, points, says })
}

fn read((row, point): (usize, &TypedPoint)) -> Option<Row> {
    let number = |text: &str| parse_number(text).ok();
    Some(Row { row, at: number(&point.at)?, low: number(&point.low)?, high: number(&point.high)? })
}

/// One temperature of a chart with its marks.
pub(crate) fn row_text(
    (at, low, high): (f64, f64, f64),
    temperature_unit: &str,
    length_unit: &str,
) -> String {
    let [at, low, high] = [at, low, high].map(figure);
    format!("{at} {temperature_unit}: {low}\u{2013}{high} {length_unit}")
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
    fn a_sentence_can_be_put_into_everything_that_a_chart_says() {
        let mut view = chart(&typed(&[("70", "27", "37"), ("40", "12", "22")])).unwrap();
        view.each_message(&mut |message| message.text = "said".into());
        let titles = [&view.plot.across, &view.plot.up].map(|axis| axis.title.clone().unwrap().text);
        assert_eq!((titles, view.says.text.as_str()), (["said".to_owned(), "said".to_owned()], "said"));
    }

    #[test]
    fn a_chart_is_drawn_from_the_end_of_the_stick_up_by_rising_temperature() {
        let view = chart(&typed(&[("70", "27", "37"), ("40", "12,0", "22")])).unwrap();
        let across: Vec<&str> = view.plot.across.ticks.iter().map(|tick| tick.says.as_str()).collect();
        assert_eq!(across, ["40", "45", "50", "55", "60", "65", "70"]);
        let up: Vec<&str> = view.plot.up.ticks.iter().map(|tick| tick.says.as_str()).collect();
        assert_eq!(up, ["0", "10", "20", "30", "40"]);
        let places: Vec<(usize, i32, i32, i32)> =
            view.points.iter().map(|point| (point.row, point.at, point.low, point.high)).collect();
        // 12 mm of 40 mm is 0.3 of the height, 27 mm is 0.675, and so on.
        assert_eq!(places, [(1, 0, 3000, 5500), (0, 10_000, 6750, 9250)]);
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
