//! Values over axes: units, bands, columns, curves, each reading as a cross.

use panside_job::figures::{Axis as Ticks, Column, FULL, LineStyle, Plot, Point, Spot};

use super::figure::Said;
use super::flow::Flow;
use super::ink::{Ink, Look};
use super::labels::{self, Label};
use super::sheet::{Owner, Place, area, line, rect};

/// Half the size of a cross.
const CROSS: f32 = 3.6;
/// Places taken along each part of an edge of a band.
const EDGE_STEPS: u8 = 40;
/// Room for the numbers on the left, and below.
const LEFT_OF: f32 = 26.0;
const BELOW: f32 = 24.0;
/// Room for half of the last number.
const RIGHT_OF: f32 = 8.0;
/// Dashes and gaps of a curve are both so long.
const DASH: f32 = 3.0;

/// Where a plot's corner lies, and how far it goes to the right and up.
#[derive(Clone, Copy)]
struct On {
    left: f32,
    bottom: f32,
    width: f32,
    height: f32,
}

impl On {
    fn x(self, part: i32) -> f32 {
        self.left + part as f32 / FULL as f32 * self.width
    }

    fn y(self, part: i32) -> f32 {
        self.bottom - part as f32 / FULL as f32 * self.height
    }

    fn at(self, spot: Spot) -> (f32, f32) {
        (self.x(spot.x), self.y(spot.y))
    }

    fn through(self, spots: &[Spot]) -> Vec<(f32, f32)> {
        spots.iter().map(|spot| self.at(*spot)).collect()
    }
}

/// Draws a plot in a place of the page that is being written.
pub(super) fn draw(flow: &mut Flow<'_>, owner: Owner, plot: &Plot, (x, y, width, height): Place, said: Said) {
    let on = On {
        left: x + LEFT_OF,
        bottom: y + height - BELOW,
        width: width - LEFT_OF - RIGHT_OF,
        height: height - BELOW - 12.0,
    };
    bands(flow, owner, plot, on);
    plot.columns.iter().for_each(|column| draw_column(flow, owner, column, on));
    lines(flow, owner, plot, on);
    axes(flow, owner, plot, on);
    let crosses = points(flow, owner, &plot.points, on);
    let inside = (on.left + 2.0, y, on.width - 2.0, on.bottom - y);
    let around = labels::Around { crosses, edges: edges(plot, on), inside };
    write_labels(flow, owner, plot, said, (on, &around));
}

fn bands(flow: &mut Flow<'_>, owner: Owner, plot: &Plot, on: On) {
    for band in &plot.bands {
        let (low, high) = (on.through(&band.low), on.through(&band.high));
        let around: Vec<_> = low.iter().copied().chain(high.iter().rev().copied()).collect();
        flow.draw(owner, area(&around), Some(Ink::Band), None);
        for edge in [&low, &high] {
            flow.draw(owner, line(edge), None, Some((Ink::Dim, 0.7)));
        }
    }
}

fn draw_column(flow: &mut Flow<'_>, owner: Owner, column: &Column, on: On) {
    let (left, right, top) = (on.x(column.from), on.x(column.to), on.y(column.height));
    let path = rect((left, top, right - left, (on.bottom - top).max(0.1)));
    flow.draw(owner, path, Some(Ink::Band), Some((Ink::Black, 0.8)));
    let name = column.name.said();
    let width = flow.letters.one(&name, Look::FOOT).width;
    flow.label(owner, &name, Look::FOOT, (left + right - width) / 2.0, on.bottom + 11.0);
}

fn lines(flow: &mut Flow<'_>, owner: Owner, plot: &Plot, on: On) {
    for drawn in &plot.lines {
        let through = on.through(&drawn.through);
        match drawn.style {
            LineStyle::Limit => flow.draw(owner, line(&through), None, Some((Ink::Black, 0.8))),
            LineStyle::Path => flow.draw(owner, line(&through), None, Some((Ink::Dim, 0.5))),
            LineStyle::Curve => {
                for dash in dashes(&through) {
                    flow.draw(owner, line(&dash), None, Some((Ink::Black, 1.0)));
                }
            }
        }
    }
}

/// Pieces of a line, each followed by a gap.
fn dashes(through: &[(f32, f32)]) -> Vec<Vec<(f32, f32)>> {
    let (mut all, mut left) = (vec![Vec::new()], DASH);
    let mut is_gap = false;
    for pair in through.windows(2) {
        let [from, to] = [pair[0], pair[1]];
        let length = (to.0 - from.0).hypot(to.1 - from.1);
        let at = |along: f32| {
            let share = if length > 0.0 { along / length } else { 0.0 };
            (from.0 + share * (to.0 - from.0), from.1 + share * (to.1 - from.1))
        };
        let mut along = 0.0;
        while along < length {
            let until = (along + left).min(length);
            if !is_gap && let Some(dash) = all.last_mut() {
                dash.extend([at(along), at(until)]);
            }
            left -= until - along;
            along = until;
            if left <= f32::EPSILON {
                (is_gap, left) = (!is_gap, DASH);
                all.push(Vec::new());
            }
        }
    }
    all.retain(|dash| dash.len() > 1);
    all
}

fn axes(flow: &mut Flow<'_>, owner: Owner, plot: &Plot, on: On) {
    let corner = [(on.left, on.y(FULL)), (on.left, on.bottom), (on.x(FULL), on.bottom)];
    flow.draw(owner, line(&corner), None, Some((Ink::Black, 0.8)));
    for tick in &plot.across.ticks {
        let x = on.x(tick.at);
        flow.draw(owner, line(&[(x, on.bottom), (x, on.bottom + 3.0)]), None, Some((Ink::Black, 0.6)));
        let width = flow.letters.one(&tick.says, Look::FOOT).width;
        flow.label(owner, &tick.says, Look::FOOT, x - width / 2.0, on.bottom + 11.0);
    }
    for tick in &plot.up.ticks {
        let y = on.y(tick.at);
        flow.draw(owner, line(&[(on.left - 3.0, y), (on.left, y)]), None, Some((Ink::Black, 0.6)));
        let width = flow.letters.one(&tick.says, Look::FOOT).width;
        flow.label(owner, &tick.says, Look::FOOT, on.left - 5.0 - width, y + 2.5);
    }
    flow.label(owner, &title(&plot.up), Look::FOOT, on.left - LEFT_OF, on.y(FULL) - 4.0);
    let across = title(&plot.across);
    let width = flow.letters.one(&across, Look::FOOT).width;
    flow.label(owner, &across, Look::FOOT, on.x(FULL) - width, on.bottom + 20.0);
}

fn title(axis: &Ticks) -> String {
    axis.title.as_ref().map_or_else(String::new, |title| title.said())
}

/// Draws the readings, and answers where they are.
fn points(flow: &mut Flow<'_>, owner: Owner, points: &[Point], on: On) -> Vec<Place> {
    let place = |point: &Point| {
        let (x, y) = on.at(point.at);
        if let Some((low, high)) = point.between {
            for part in [low, high] {
                let end = [(x - CROSS, on.y(part)), (x + CROSS, on.y(part))];
                flow.draw(owner, line(&end), None, Some((Ink::Black, 0.8)));
            }
            flow.draw(owner, line(&[(x, on.y(low)), (x, on.y(high))]), None, Some((Ink::Black, 0.8)));
        }
        cross(flow, owner, (x, y), point.counts);
        (x - CROSS, y - CROSS, 2.0 * CROSS, 2.0 * CROSS)
    };
    points.iter().map(place).collect()
}

/// What stands beside readings and lines; what counts gets its place first.
fn write_labels(
    flow: &mut Flow<'_>,
    owner: Owner,
    plot: &Plot,
    said: Said,
    (on, around): (On, &labels::Around),
) {
    let mut wanted = Vec::new();
    for label in plot.labels.iter().filter(|label| said == Said::All || label.counts) {
        let look = if label.counts { Look { ink: Ink::Black, ..Look::FOOT } } else { Look::FOOT };
        let words = label.says.said();
        let width = flow.letters.one(&words, look).width;
        wanted.push((!label.counts, Label { at: on.at(label.at), size: (width, look.size) }, words, look));
    }
    wanted.sort_by_key(|(last, ..)| *last);
    let places: Vec<_> = wanted.iter().map(|(_, label, ..)| *label).collect();
    for (found, (_, label, words, look)) in labels::place(&places, around).into_iter().zip(wanted) {
        if let Some((x, y)) = found {
            if let Some(path) = labels::leader(&label, (x, y)) {
                flow.draw(owner, line(&path), None, Some((Ink::Dim, 0.4)));
            }
            flow.label(owner, &words, look, x, y + look.size * 0.86);
        }
    }
}

/// Small places along the edges of bands and along lines, which words should not lie on.
fn edges(plot: &Plot, on: On) -> Vec<Place> {
    let bands = plot.bands.iter().flat_map(|band| [&band.low, &band.high]);
    let lines = plot.lines.iter().map(|drawn| &drawn.through);
    let mut places = Vec::new();
    for edge in bands.chain(lines) {
        for pair in on.through(edge).windows(2) {
            let [from, to] = [pair[0], pair[1]];
            for step in 0..=EDGE_STEPS {
                let share = f32::from(step) / f32::from(EDGE_STEPS);
                places.push((from.0 + share * (to.0 - from.0), from.1 + share * (to.1 - from.1), 1.0, 0.5));
            }
        }
    }
    places
}

/// A cross in the accent for what counts; a small slanted one for what was replaced, left or voided.
fn cross(flow: &mut Flow<'_>, owner: Owner, (x, y): (f32, f32), counts: bool) {
    let strokes = if counts {
        [[(x - CROSS, y), (x + CROSS, y)], [(x, y - CROSS), (x, y + CROSS)]]
    } else {
        let small = CROSS * 0.6;
        [[(x - small, y - small), (x + small, y + small)], [(x - small, y + small), (x + small, y - small)]]
    };
    let stroke = if counts { (Ink::Accent, 1.3) } else { (Ink::Dim, 0.8) };
    strokes.iter().for_each(|ends| flow.draw(owner, line(ends), None, Some(stroke)));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_dashed_line_keeps_its_length_half_drawn_half_gap() {
        let dashes = dashes(&[(0.0, 0.0), (30.0, 0.0), (30.0, 30.0)]);
        let length = |dash: &Vec<(f32, f32)>| {
            dash.windows(2).map(|pair| (pair[1].0 - pair[0].0).hypot(pair[1].1 - pair[0].1)).sum::<f32>()
        };
        let drawn: f32 = dashes.iter().map(length).sum();
        assert!((drawn - 30.0).abs() < 0.01, "{drawn} of 60");
        assert!(dashes.iter().all(|dash| length(dash) <= DASH + 0.01));
    }
}
