//! Stick readings on the chart that they are judged by.

use std::collections::BTreeMap;

use panside_procedure::format::Ask;
use panside_procedure::format::entry::Level;
use panside_procedure::format::sheet::{Chart, ChartPoint, Value};
use panside_trade::measure::Measure;
use panside_trade::number::parse_number;
use panside_trade::units::Unit;

use super::plot::{Band, Frame, Label, Line, LineStyle, Point, Spot};
use super::{Drawing, Figure, FigureKind, Taken, asked, pointed, when};
use crate::job::Job;
use crate::message::{
    Message, figure_level_reading, figure_level_title, figure_reading, figure_reading_after,
    figure_reading_dry, sheet_chart,
};
use crate::sheet::row_text;
use crate::value::{EntryValue, StickReading, StickShows};

/// The readings of one entry, in the units of the chart.
struct Readings<'a> {
    of: Taken<'a>,
    /// Temperature and trace of each; no trace: the stick stayed dry.
    at: Vec<(f64, Option<f64>)>,
    typed: &'a [StickReading],
    /// What had been added in all by then, where the checklist says which entry tells it; nothing before anything was.
    added: Option<String>,
}

/// A figure for each chart that was read by, with the event of its first reading.
pub(super) fn figures(job: &Job, taken: &[Taken<'_>]) -> Vec<(u64, Figure)> {
    let mut charts: BTreeMap<&str, Vec<Readings<'_>>> = BTreeMap::new();
    for &of in taken {
        let (Ask::Level(level), EntryValue::Level { readings: typed, .. }) = (&of.entry.ask, &of.value.value)
        else {
            continue;
        };
        let Some(chart) = chart(job, &level.chart) else { continue };
        let at: Option<Vec<_>> = typed.iter().map(|reading| read(reading, chart)).collect();
        if let Some(at) = at.filter(|at| !at.is_empty()) {
            charts.entry(&level.chart).or_default().push(Readings { of, at, typed, added: added(taken, of) });
        }
    }
    let drawn = charts.into_iter().filter_map(|(key, readings)| {
        let first = readings.first()?.of.value.mark.seq;
        Some((first, draw(job, key, chart(job, key)?, &readings)?))
    });
    drawn.collect()
}

fn chart<'a>(job: &'a Job, key: &str) -> Option<&'a Chart> {
    match &job.specs.sheet.values.get(key)?.is {
        Value::Chart(chart) => Some(chart),
        _ => None,
    }
}

fn draw(job: &Job, key: &str, chart: &Chart, readings: &[Readings<'_>]) -> Option<Figure> {
    let all = || readings.iter().flat_map(|entry| entry.at.iter().copied());
    let across = chart.points.iter().map(|point| point.at).chain(all().map(|(at, _)| at));
    let marks = chart.points.iter().flat_map(|point| [point.low, point.high]);
    // The end of the stick is always on the drawing: marks are measured from it.
    let frame = Frame::around(across, marks.chain(all().filter_map(|(_, trace)| trace)).chain([0.0]))?;
    let spot = |(at, trace): (f64, Option<f64>)| frame.spot(at, trace.unwrap_or(0.0));
    let mut plot = frame.plot(&chart.temperature_unit, &chart.length_unit);
    plot.bands.push(Band {
        low: chart.points.iter().map(|point| frame.spot(point.at, point.low)).collect(),
        high: chart.points.iter().map(|point| frame.spot(point.at, point.high)).collect(),
    });
    for entry in readings {
        let counts = entry.of.counts;
        plot.points.extend(entry.at.iter().map(|at| Point { at: spot(*at), between: None, counts }));
        let at = middle(&entry.at.iter().map(|at| spot(*at)).collect::<Vec<_>>());
        plot.labels.push(Label { at, says: beside(job, entry), counts });
    }
    plot.lines = paths(readings, &plot.labels);
    let mut says = vec![sheet_chart(said(chart))];
    says.extend(readings.iter().map(|entry| sentence(job, entry)));
    Some(Figure {
        id: key.to_owned(),
        kind: FigureKind::Level,
        title: figure_level_title(title(job, key)),
        says,
        drawing: Drawing::Plot(Box::new(plot)),
    })
}

/// What the entries that are read by this chart are called.
fn title(job: &Job, key: &str) -> Vec<String> {
    let mut labels: Vec<String> = Vec::new();
    for (_, entry, ask) in asked(job) {
        if matches!(ask, Ask::Level(level) if level.chart == key) && !labels.contains(&entry.label) {
            labels.push(entry.label.clone());
        }
    }
    labels
}

/// From each level to the next one, where the checklist says that only fluid was added between.
fn paths(readings: &[Readings<'_>], labels: &[Label]) -> Vec<Line> {
    let stood: Vec<_> = readings.iter().zip(labels).filter(|(entry, _)| !entry.of.void).collect();
    let added = stood.windows(2).filter(|pair| pair[1].0.added.is_some());
    let line = |pair: &[(&Readings<'_>, &Label)]| Line {
        style: LineStyle::Path,
        through: vec![pair[0].1.at, pair[1].1.at],
    };
    added.map(line).collect()
}

fn middle(spots: &[Spot]) -> Spot {
    let count = i32::try_from(spots.len()).unwrap_or(i32::MAX).max(1);
    let sum = |axis: fn(&Spot) -> i32| spots.iter().map(axis).sum::<i32>() / count;
    Spot { x: sum(|spot| spot.x), y: sum(|spot| spot.y) }
}

fn read(reading: &StickReading, chart: &Chart) -> Option<(f64, Option<f64>)> {
    let at = converted(&reading.temperature, &reading.temperature_unit, &chart.temperature_unit)?;
    match &reading.stick {
        StickShows::Trace { value, unit } => Some((at, Some(converted(value, unit, &chart.length_unit)?))),
        StickShows::NoTrace => Some((at, None)),
    }
}

fn converted(typed: &str, unit: &str, wanted: &str) -> Option<f64> {
    let measure = Measure::new(parse_number(typed).ok()?, unit.parse::<Unit>().ok()?).ok()?;
    measure.to(wanted.parse().ok()?).ok().map(Measure::value)
}

/// What stands beside the readings of an entry: their values, and when.
fn beside(job: &Job, entry: &Readings<'_>) -> Message {
    let mut values: Vec<(String, String)> = Vec::new();
    for reading in entry.typed {
        if let StickShows::Trace { value, unit } = &reading.stick
            && !values.iter().any(|(before, _)| *before == pointed(value))
        {
            values.push((pointed(value), unit.clone()));
        }
    }
    let time = when(job, &entry.of.value.mark);
    let Some(unit) = values.first().map(|(_, unit)| unit.clone()) else { return figure_reading_dry(time) };
    // The unit once, where all have the same.
    let same = values.iter().all(|(_, other)| *other == unit);
    let texts = values.into_iter().map(|(value, unit)| if same { value } else { format!("{value} {unit}") });
    let texts = texts.collect::<Vec<_>>();
    let unit = if same { unit } else { String::new() };
    match &entry.added {
        Some(added) => figure_reading_after(added, texts, unit, time),
        None => figure_reading(texts, unit, time),
    }
}

fn added(taken: &[Taken<'_>], level: Taken<'_>) -> Option<String> {
    let Ask::Level(Level { added: Some(added), .. }) = &level.entry.ask else { return None };
    let (step, id) = added.volume.split_once('.')?;
    let before = taken.iter().rfind(|found| {
        found.step.id == step && found.entry.id == id && found.value.mark.seq < level.value.mark.seq
    });
    match &before?.value.value {
        EntryValue::Reading { value, unit } if parse_number(value).is_ok_and(|added| added > 0.0) => {
            Some(format!("{} {unit}", pointed(value)))
        }
        _ => None,
    }
}

fn sentence(job: &Job, entry: &Readings<'_>) -> Message {
    let texts = entry.typed.iter().map(|reading| {
        let at = format!("{} {}", pointed(&reading.temperature), reading.temperature_unit);
        match &reading.stick {
            StickShows::Trace { value, unit } => format!("{} {unit} ({at})", pointed(value)),
            StickShows::NoTrace => format!("\u{2013} ({at})"),
        }
    });
    let of = &entry.of;
    figure_level_reading(
        when(job, &of.value.mark),
        &of.step.title,
        texts.collect::<Vec<_>>(),
        of.value.class.as_str(),
        if of.counts { "yes" } else { "no" },
    )
}

fn said(chart: &Chart) -> Vec<String> {
    let row = |point: &ChartPoint| {
        row_text((point.at, point.low, point.high), &chart.temperature_unit, &chart.length_unit)
    };
    chart.points.iter().map(row).collect()
}
