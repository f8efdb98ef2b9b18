//! Coils at their temperature, in the band that their limits make of it by copper's change.

use std::collections::BTreeMap;

use panside_procedure::format::Ask;
use panside_trade::coil::{COPPER_RANGE, CoilClass, CoilLimits, CoilResult, copper_factor};
use panside_trade::measure::{Measure, Temperature};

use super::plot::{Band, Frame, Label, Plot, Point};
use super::{Drawing, Figure, FigureKind, Taken, when};
use crate::entry::{CoilJudged, WorkedOut};
use crate::job::Job;
use crate::message::{Message, figure_coil_limits, figure_coil_mark, figure_coil_reading, figure_coil_title};

/// The band goes on for so many °C on both sides of what was read.
const BEYOND: f64 = 10.0;
/// Places along an edge of the band.
const PARTS: u32 = 8;

/// A coil that was read.
pub(super) struct Coil<'a> {
    /// What the entry is called.
    pub label: &'a str,
    /// When it was read.
    pub time: String,
    pub result: CoilResult,
    /// Whether the meter's error was given.
    pub meter_known: bool,
    pub counts: bool,
}

/// A figure for each pair of limits of the sheet by which coils were judged, with the event of its first reading.
pub(super) fn figures(job: &Job, taken: &[Taken<'_>]) -> Vec<(u64, Figure)> {
    let mut read: BTreeMap<&str, Vec<(u64, Vec<Coil<'_>>)>> = BTreeMap::new();
    for found in taken {
        let (key, all) = match (&found.entry.ask, &found.value.worked_out) {
            (Ask::Coil(asked), Some(WorkedOut::Coil(judged))) => {
                let CoilJudged { result, meter_known } = **judged;
                (&asked.limits, vec![(found.entry.label.as_str(), result, meter_known)])
            }
            (Ask::Coils(asked), Some(WorkedOut::Coils(judged))) => {
                let known = judged.meter_known;
                let coils = judged.coils.iter();
                (&asked.of, coils.map(|one| (one.name.as_str(), one.result, known)).collect())
            }
            _ => continue,
        };
        let groups = read.entry(key).or_default();
        for (label, result, meter_known) in all {
            let time = when(job, &found.value.mark);
            let coil = Coil { label, time, result, meter_known, counts: found.counts };
            let same = |coils: &Vec<Coil<'_>>| coils.iter().all(|coil| coil.result.limits == result.limits);
            match groups.iter_mut().find(|(_, coils)| same(coils)) {
                Some((_, coils)) => coils.push(coil),
                None => groups.push((found.value.mark.seq, vec![coil])),
            }
        }
    }
    let drawn = read.into_iter().flat_map(|(key, groups)| {
        let (label, alone) = (job.procedure.checklist.sheet_label(key), groups.len() == 1);
        (0..).zip(groups).filter_map(move |(number, (first, coils))| {
            let id = if number == 0 { key.to_owned() } else { format!("{key}/{number}") };
            let limits = coils.first()?.result.limits;
            let [low, high] = [limits.lowest, limits.highest].map(Measure::from);
            // Two of one name would not be told apart.
            let name = if alone { label.to_owned() } else { format!("{label}, {low}\u{2013}{high}") };
            Some((first, draw((&id, &name), &coils)?))
        })
    });
    drawn.collect()
}

/// The figure of all coils with the same limits; nothing where there is none that can be drawn.
pub(super) fn draw((id, name): (&str, &str), coils: &[Coil<'_>]) -> Option<Figure> {
    let limits = coils.first()?.result.limits;
    let says = std::iter::once(figure_coil_limits(
        Measure::from(limits.lowest),
        Measure::from(limits.highest),
        Measure::from(limits.at),
    ));
    let title = figure_coil_title(name);
    Some(Figure {
        id: id.to_owned(),
        kind: FigureKind::Coil,
        title,
        says: says.chain(coils.iter().map(sentence)).collect(),
        drawing: Drawing::Plot(Box::new(plot(&limits, coils)?)),
    })
}

fn plot(limits: &CoilLimits, coils: &[Coil<'_>]) -> Option<Plot> {
    let at = || coils.iter().map(|coil| coil.result.reading.temperature.celsius());
    let all = || at().chain([limits.at.celsius()]);
    let from = (all().fold(f64::INFINITY, f64::min) - BEYOND).max(COPPER_RANGE.0);
    let to = (all().fold(f64::NEG_INFINITY, f64::max) + BEYOND).min(COPPER_RANGE.1);
    let along: Vec<f64> =
        (0..=PARTS).map(|part| from + (to - from) * f64::from(part) / f64::from(PARTS)).collect();
    let limit = |ohms: f64| along.iter().map(move |at| Some((*at, ohms * factor(limits, *at)?)));
    let low: Vec<(f64, f64)> = limit(limits.lowest.ohms()).collect::<Option<_>>()?;
    let high: Vec<(f64, f64)> = limit(limits.highest.ohms()).collect::<Option<_>>()?;
    let read = coils.iter().filter_map(|coil| Some((coil, ohms(&coil.result)?)));
    let read: Vec<(&Coil<'_>, [f64; 3])> = read.collect();
    let marks = low.iter().chain(&high).map(|(_, ohms)| *ohms);
    let marks = marks.chain(read.iter().flat_map(|(_, ohms)| *ohms));
    let frame = Frame::around(along.iter().copied(), marks)?;
    let mut plot = frame.plot("°C", "Ω");
    let edge = |edge: &[(f64, f64)]| edge.iter().map(|(at, ohms)| frame.spot(*at, *ohms)).collect();
    plot.bands.push(Band { low: edge(&low), high: edge(&high) });
    for (coil, [least, is, most]) in &read {
        let at = frame.spot(coil.result.reading.temperature.celsius(), *is);
        let between = Some((frame.y(*least), frame.y(*most)));
        plot.points.push(Point { at, between, counts: coil.counts });
        let says = figure_coil_mark(coil.label, own(&coil.result));
        plot.labels.push(Label { at, says, counts: coil.counts });
    }
    Some(plot)
}

/// From the temperature of the limits to another one.
fn factor(limits: &CoilLimits, celsius: f64) -> Option<f64> {
    copper_factor(limits.at, Temperature::from_celsius(celsius).ok()?).ok()
}

/// The coil at its own temperature: the least it may be, what it is, the most; nothing for an overload.
fn ohms(result: &CoilResult) -> Option<[f64; 3]> {
    let (least, most) = result.between?;
    Some([least.ohms() / result.factor, result.coil?.ohms(), most.ohms() / result.factor])
}

fn own(result: &CoilResult) -> String {
    result.coil.map(Measure::from).map(|measure| measure.to_string()).unwrap_or_default()
}

fn sentence(coil: &Coil<'_>) -> Message {
    let result = &coil.result;
    let class = match result.class {
        CoilClass::In if coil.meter_known => "in",
        CoilClass::In => "in_as_read",
        CoilClass::Low => "low",
        CoilClass::High => "high",
        CoilClass::Unclear => "unclear",
        CoilClass::Open => "open",
        CoilClass::Short => "short",
    };
    let text = |resistance: Option<_>| {
        resistance.map(Measure::from).map(|measure| measure.to_string()).unwrap_or_default()
    };
    figure_coil_reading(
        &coil.time,
        coil.label,
        own(result),
        Measure::from(result.reading.temperature),
        text(result.at_reference),
        Measure::from(result.limits.at),
        class,
    )
}

#[cfg(test)]
mod tests {
    use panside_trade::coil::{CoilReading, MeterError, MeterShows, judge_coil};
    use panside_trade::measure::{Resistance, TemperatureDifference};

    use super::*;
    use crate::figures::Spot;

    fn ohms(value: f64) -> Resistance {
        Resistance::from_ohms(value).unwrap()
    }

    fn read(shows: MeterShows, celsius: f64) -> Coil<'static> {
        let at = |celsius| Temperature::from_celsius(celsius).unwrap();
        let reading = CoilReading {
            shows,
            leads: ohms(0.0),
            meter: MeterError { percent: 0.0, digits: ohms(0.03) },
            temperature: at(celsius),
            temperature_off_by: TemperatureDifference::from_kelvins(0.0).unwrap(),
        };
        let limits = CoilLimits { lowest: ohms(5.0), highest: ohms(5.6), at: at(20.0) };
        Coil {
            label: "third gear",
            time: "10:12".into(),
            result: judge_coil(reading, limits).unwrap(),
            meter_known: true,
            counts: true,
        }
    }

    fn plot(coils: &[Coil<'_>]) -> Plot {
        match draw(("coil", "coil resistance"), coils).unwrap().drawing {
            Drawing::Plot(plot) => *plot,
            Drawing::Bolts(_) => panic!("no plot"),
        }
    }

    /// The height of an edge at a place across, straight between its places.
    fn height(edge: &[Spot], x: i32) -> i32 {
        let pair = edge.windows(2).find(|pair| (pair[0].x..=pair[1].x).contains(&x)).unwrap();
        pair[0].y + (pair[1].y - pair[0].y) * (x - pair[0].x) / (pair[1].x - pair[0].x)
    }

    #[test]
    fn a_warm_coil_is_judged_by_the_band_at_its_own_temperature() {
        // 6.0 Ω is above 5.6 Ω, but at 60 °C copper has 1.1572 times its resistance at 20 °C: 5.18 Ω.
        let warm = read(MeterShows::Reading(ohms(6.0)), 60.0);
        assert_eq!(warm.result.class, CoilClass::In);
        let plot = plot(&[warm]);
        let (at, Band { low, high }) = (plot.points[0].at, &plot.bands[0]);
        assert!(height(low, at.x) < at.y && at.y < height(high, at.x));
        let (least, most) = plot.points[0].between.unwrap();
        assert!(least < at.y && at.y < most, "the meter's error is drawn");
    }

    #[test]
    fn an_open_coil_is_told_and_not_drawn() {
        let coils = [read(MeterShows::Overload, 20.0)];
        assert!(plot(&coils).points.is_empty());
        assert_eq!(draw(("coil", "coil resistance"), &coils).unwrap().says.len(), 2);
    }
}
