//! Stick readings on the sheet's chart: axes, units, the band that is allowed, each reading as a cross.

use panside_trade::measure::Measure;
use panside_trade::number::parse_number;
use panside_trade::scale::Scale;
use panside_trade::units::Unit;

use super::flow::Flow;
use super::ink::{Ink, Look};
use super::labels::{self, Label};
use super::sheet::{Owner, Place, area, line};
use crate::document::Document;
use crate::measured::{Chart, Level, Stick};
use crate::source::Standing;

/// Half the size of a cross.
const CROSS: f32 = 3.6;
/// Places taken along each part of an edge of the band.
const EDGE_STEPS: u8 = 40;
/// Room for the numbers on the left, and below.
const LEFT_OF: f32 = 26.0;
const BELOW: f32 = 24.0;

/// A reading, in the units of the chart.
struct Reading {
    temperature: f64,
    /// Nothing: the stick stayed dry.
    trace: Option<f64>,
}

/// An entry that can be drawn.
struct Entry<'a> {
    level: &'a Level,
    readings: Vec<Reading>,
}

/// Which readings have words beside them.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Said {
    All,
    OfWhatCounts,
}

/// An axis: its scale, and where that begins and ends.
struct Axis {
    scale: Scale,
    start: f32,
    end: f32,
}

/// The charts on which there is something to draw.
pub(super) fn drawable(document: &Document) -> Vec<&Chart> {
    let charts = document.charts.iter();
    charts.filter(|chart| !entries(document, chart).is_empty() && points(chart).len() > 1).collect()
}

/// Draws a chart with its readings in a place of the page that is being written.
pub(super) fn draw(flow: &mut Flow, document: &Document, chart: &Chart, place: Place, said: Said) {
    let (entries, points) = (entries(document, chart), points(chart));
    let Some((across, up)) = axes(&entries, &points, place) else { return };
    let owner = flow.figure(alt(chart, &entries), place);
    draw_band(flow, owner, &points, &across, &up);
    draw_axes(flow, owner, chart, &across, &up);
    let crosses = draw_readings(flow, owner, &entries, (&across, &up));
    let inside = (across.start + 2.0, place.1, across.end - across.start - 2.0, up.start - place.1);
    let told: Vec<_> = entries.iter().filter(|entry| said == Said::All || entry.counts()).collect();
    let edges = edges(&points, &across, &up);
    write_labels(flow, owner, &told, (&across, &up), &labels::Around { crosses, edges, inside });
}

fn draw_band(flow: &mut Flow, owner: Owner, points: &[[f64; 3]], across: &Axis, up: &Axis) {
    let low: Vec<_> = points.iter().map(|[at, low, _]| (across.at(*at), up.at(*low))).collect();
    let high: Vec<_> = points.iter().map(|[at, _, high]| (across.at(*at), up.at(*high))).collect();
    let around: Vec<_> = low.iter().copied().chain(high.iter().rev().copied()).collect();
    flow.draw(owner, area(&around), Some(Ink::Band), None);
    for edge in [&low, &high] {
        flow.draw(owner, line(edge), None, Some((Ink::Dim, 0.7)));
    }
}

fn draw_axes(flow: &mut Flow, owner: Owner, chart: &Chart, across: &Axis, up: &Axis) {
    let corner = [(across.start, up.end), (across.start, up.start), (across.end, up.start)];
    flow.draw(owner, line(&corner), None, Some((Ink::Black, 0.8)));
    for tick in across.scale.ticks() {
        let x = across.at(tick);
        flow.draw(owner, line(&[(x, up.start), (x, up.start + 3.0)]), None, Some((Ink::Black, 0.6)));
        let words = across.scale.label(tick);
        let width = flow.letters.one(&words, Look::FOOT).width;
        flow.label(owner, &words, Look::FOOT, x - width / 2.0, up.start + 11.0);
    }
    for tick in up.scale.ticks() {
        let y = up.at(tick);
        flow.draw(owner, line(&[(across.start - 3.0, y), (across.start, y)]), None, Some((Ink::Black, 0.6)));
        let words = up.scale.label(tick);
        let width = flow.letters.one(&words, Look::FOOT).width;
        flow.label(owner, &words, Look::FOOT, across.start - 5.0 - width, y + 2.5);
    }
    flow.label(owner, &chart.length_unit, Look::FOOT, across.start - LEFT_OF, up.end - 4.0);
    let unit = flow.letters.one(&chart.temperature_unit, Look::FOOT).width;
    flow.label(owner, &chart.temperature_unit, Look::FOOT, across.end - unit, up.start + 20.0);
}

/// Draws the crosses, and answers where they are.
fn draw_readings(flow: &mut Flow, owner: Owner, entries: &[Entry<'_>], on: (&Axis, &Axis)) -> Vec<Place> {
    let mut crosses = Vec::new();
    for entry in entries {
        for reading in &entry.readings {
            let (x, y) = reading.at(on);
            cross(flow, owner, (x, y), entry.counts());
            crosses.push((x - CROSS, y - CROSS, 2.0 * CROSS, 2.0 * CROSS));
        }
    }
    crosses
}

/// What stands beside the last reading of each entry; what counts gets its place first.
fn write_labels(
    flow: &mut Flow,
    owner: Owner,
    entries: &[&Entry<'_>],
    on: (&Axis, &Axis),
    around: &labels::Around,
) {
    let mut wanted = Vec::new();
    for entry in entries {
        let Some(at) = middle(entry, on) else { continue };
        let look = if entry.counts() { Look { ink: Ink::Black, ..Look::FOOT } } else { Look::FOOT };
        let words = says(entry.level);
        let width = flow.letters.one(&words, look).width;
        wanted.push((!entry.counts(), Label { at, size: (width, look.size) }, words, look));
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

/// The middle between the readings of an entry.
fn middle(entry: &Entry<'_>, on: (&Axis, &Axis)) -> Option<(f32, f32)> {
    let count = entry.readings.len() as f32;
    let places = entry.readings.iter().map(|reading| reading.at(on));
    let sum = places.reduce(|sum, at| (sum.0 + at.0, sum.1 + at.1))?;
    Some((sum.0 / count, sum.1 / count))
}

/// Small places along the edges of the band, which words should not lie on.
fn edges(points: &[[f64; 3]], across: &Axis, up: &Axis) -> Vec<Place> {
    let mut places = Vec::new();
    for pair in points.windows(2) {
        for mark in [1, 2] {
            let (from, to) = (
                (across.at(pair[0][0]), up.at(pair[0][mark])),
                (across.at(pair[1][0]), up.at(pair[1][mark])),
            );
            for step in 0..=EDGE_STEPS {
                let share = f32::from(step) / f32::from(EDGE_STEPS);
                places.push((from.0 + share * (to.0 - from.0), from.1 + share * (to.1 - from.1), 1.0, 0.5));
            }
        }
    }
    places
}

/// A cross in the accent for what counts; a small slanted one for what was replaced, left or struck.
fn cross(flow: &mut Flow, owner: Owner, (x, y): (f32, f32), counts: bool) {
    let strokes = if counts {
        [[(x - CROSS, y), (x + CROSS, y)], [(x, y - CROSS), (x, y + CROSS)]]
    } else {
        let small = CROSS * 0.6;
        [[(x - small, y - small), (x + small, y + small)], [(x - small, y + small), (x + small, y - small)]]
    };
    let stroke = if counts { (Ink::Accent, 1.3) } else { (Ink::Dim, 0.8) };
    strokes.iter().for_each(|ends| flow.draw(owner, line(ends), None, Some(stroke)));
}

/// What stands beside a reading: its values, and when.
fn says(level: &Level) -> String {
    let mut values: Vec<String> = level.readings.iter().map(shown).collect();
    values.dedup();
    // The unit once, where all have the same.
    if let Some(unit) = level.readings.first().map(|stick| format!(" {}", stick.unit))
        && values.iter().all(|value| value.ends_with(&unit))
    {
        let last = values.len() - 1;
        values.iter_mut().take(last).for_each(|value| value.truncate(value.len() - unit.len()));
    }
    let time = level.by.local.get(11..16).unwrap_or_default();
    format!("{}, {time}", values.join(" and "))
}

fn shown(stick: &Stick) -> String {
    stick.trace.as_ref().map_or("no trace".to_owned(), |trace| format!("{trace} {}", stick.unit))
}

/// The picture in words.
fn alt(chart: &Chart, entries: &[Entry<'_>]) -> String {
    let band = chart.points.iter().map(|point| {
        format!(
            "{} to {} {} at {} {}",
            point.low, point.high, chart.length_unit, point.at, chart.temperature_unit
        )
    });
    let readings = entries.iter().map(|entry| {
        let at: Vec<_> = entry
            .level
            .readings
            .iter()
            .map(|stick| format!("{} at {} {}", shown(stick), stick.temperature, stick.temperature_unit))
            .collect();
        let counts = if entry.level.standing == Standing::Counts { "" } else { " (does not count)" };
        format!("{} {}{counts}", at.join(" and "), entry.level.class)
    });
    format!(
        "Fluid level against temperature. Allowed: {}. Read: {}.",
        band.collect::<Vec<_>>().join(", "),
        readings.collect::<Vec<_>>().join("; ")
    )
}

/// The entries on a chart whose readings can be drawn: all of them or none.
fn entries<'a>(document: &'a Document, chart: &Chart) -> Vec<Entry<'a>> {
    let of_chart = document.levels.iter().filter(|level| level.chart == chart.key);
    of_chart
        .filter_map(|level| {
            let readings: Option<Vec<_>> = level.readings.iter().map(|stick| reading(stick, chart)).collect();
            readings.filter(|readings| !readings.is_empty()).map(|readings| Entry { level, readings })
        })
        .collect()
}

fn reading(stick: &Stick, chart: &Chart) -> Option<Reading> {
    let temperature = converted(&stick.temperature, &stick.temperature_unit, &chart.temperature_unit)?;
    let trace = match &stick.trace {
        Some(trace) => Some(converted(trace, &stick.unit, &chart.length_unit)?),
        None => None,
    };
    Some(Reading { temperature, trace })
}

fn converted(typed: &str, unit: &str, wanted: &str) -> Option<f64> {
    let measure = Measure::new(parse_number(typed).ok()?, unit.parse::<Unit>().ok()?).ok()?;
    measure.to(wanted.parse().ok()?).ok().map(Measure::value)
}

fn points(chart: &Chart) -> Vec<[f64; 3]> {
    let point = |point: &crate::measured::ChartPoint| {
        Some([point.at.parse().ok()?, point.low.parse().ok()?, point.high.parse().ok()?])
    };
    chart.points.iter().filter_map(point).collect()
}

fn axes(entries: &[Entry<'_>], points: &[[f64; 3]], (x, y, width, height): Place) -> Option<(Axis, Axis)> {
    let readings = || entries.iter().flat_map(|entry| &entry.readings);
    let across = points.iter().map(|[at, ..]| *at).chain(readings().map(|reading| reading.temperature));
    let up = points.iter().flat_map(|[_, low, high]| [*low, *high]);
    let up = up.chain(readings().filter_map(|reading| reading.trace)).chain([0.0]);
    let across = Axis { scale: Scale::over(across, 6.0)?, start: x + LEFT_OF, end: x + width - 4.0 };
    Some((across, Axis { scale: Scale::over(up, 5.0)?, start: y + height - BELOW, end: y + 12.0 }))
}

impl Entry<'_> {
    fn counts(&self) -> bool {
        self.level.standing == Standing::Counts
    }
}

impl Reading {
    /// Where it is on these axes; a dry stick is at the bottom.
    fn at(&self, (across, up): (&Axis, &Axis)) -> (f32, f32) {
        (across.at(self.temperature), self.trace.map_or(up.start, |trace| up.at(trace)))
    }
}

impl Axis {
    fn at(&self, value: f64) -> f32 {
        self.start + self.scale.share(value) as f32 * (self.end - self.start)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_reading_in_other_units_is_drawn_where_the_chart_has_it() {
        // 1 in is 25.4 mm and 136.4 °F is 58 °C: by definition of the inch (NIST SP 811, B.8) and of °F = 1.8 °C + 32.
        assert!((converted("1", "in", "mm").unwrap() - 25.4).abs() < 1e-9);
        assert!((converted("136,4", "°F", "°C").unwrap() - 58.0).abs() < 1e-9);
        assert_eq!(converted("about 20", "mm", "mm"), None);
    }
}
