//! How a hot part cools: its readings, the curve through them with its spread, the touch limit, and the time before
//! which it is not below it.

use std::iter::once;

use panside_procedure::format::Ask;
use panside_trade::cooldown::{CoolDown, Cooling, CoolingClass, Fit, fit};
use panside_trade::measure::{Duration, Measure, Temperature};
use panside_trade::moment::Moment;

use super::plot::{Band, Frame, Label, Line, LineStyle, Plot, Point};
use super::{Drawing, Figure, FigureKind, Taken, asked, moment};
use crate::clock::MINUTE_MS;
use crate::entry::WorkedOut;
use crate::job::Job;
use crate::message::{
    Message, figure_cooling_between, figure_cooling_first, figure_cooling_heated, figure_cooling_limit,
    figure_cooling_mark, figure_cooling_not_before, figure_cooling_readings, figure_cooling_state,
    figure_cooling_title,
};

/// Places along the curve.
const PARTS: u32 = 60;
/// The curve goes on for this part of its time after the last moment that is told.
const BEYOND: f64 = 1.08;

/// A curve by one temperature of the surroundings.
struct Curve {
    ambient: f64,
    fit: Fit,
}

/// What is drawn, in minutes since the part was last heated, or else since the first reading.
struct Cooled<'a> {
    down: &'a CoolDown,
    /// Minutes and °C of the readings that count.
    counted: Vec<(f64, f64)>,
    /// The curve by the surroundings as measured, and by both ends of what they may be.
    curves: Vec<Curve>,
    /// Minutes of the time before which it is not below the limit.
    not_before: Option<f64>,
}

impl<'a> Cooled<'a> {
    fn of(down: &'a CoolDown) -> Option<Cooled<'a>> {
        let Cooling { engine_off, ambient, ambient_off_by, .. } = &down.cooling;
        let counted: Vec<(Moment, Temperature)> = down.cooling.counting().collect();
        let ((first, _), (last, _)) = (counted.first().copied()?, counted.last().copied()?);
        let from = engine_off.unwrap_or(first);
        let points: Vec<(f64, f64)> =
            counted.iter().map(|(at, shown)| (at.minutes_since(from), shown.celsius())).collect();
        let (ambient, off) = (ambient.celsius(), ambient_off_by.kelvins());
        let curve = |ambient: f64| {
            let over: Vec<_> = counted
                .iter()
                .map(|(at, shown)| (at.minutes_since(first), shown.celsius() - ambient))
                .collect();
            Some(Curve { ambient, fit: fit(&over)? })
        };
        let ends = [ambient, ambient - off, ambient + off];
        let curves = if down.class == CoolingClass::Cools { ends.map(curve).into() } else { Vec::new() };
        let after_last = last.minutes_since(from);
        Some(Cooled {
            down,
            counted: points,
            curves: curves.into_iter().flatten().collect(),
            not_before: down.not_before.map(|time| after_last + time.minutes()),
        })
    }

    fn first(&self) -> f64 {
        self.counted.first().map_or(0.0, |(at, _)| *at)
    }

    fn last(&self) -> f64 {
        self.counted.last().map_or(0.0, |(at, _)| *at)
    }

    /// Where the curve ends: behind the last moment that is told.
    fn end(&self) -> f64 {
        let likely = self.down.likely.map(|time| self.last() + time.minutes());
        let told = self.not_before.or(likely);
        told.map_or(self.last(), |told| self.first() + (told.max(self.last()) - self.first()) * BEYOND)
    }

    /// Minutes along the curve.
    fn along(&self) -> Vec<f64> {
        let (first, end) = (self.first(), self.end());
        (0..=PARTS).map(|part| first + (end - first) * f64::from(part) / f64::from(PARTS)).collect()
    }

    /// The temperature of a curve at a moment, `width` times its spread away.
    fn at(&self, curve: &Curve, minutes: f64, width: f64) -> f64 {
        let since = minutes - self.first();
        curve.ambient + curve.fit.at(since) + width * curve.fit.prediction(since)
    }

    /// The lowest and the highest of all curves at a moment.
    fn spread(&self, minutes: f64) -> (f64, f64) {
        let ends = |width: f64| self.curves.iter().map(move |curve| self.at(curve, minutes, width));
        (ends(-1.0).fold(f64::INFINITY, f64::min), ends(1.0).fold(f64::NEG_INFINITY, f64::max))
    }
}

/// A figure each time that a place cooled, with the event of its last reading.
pub(super) fn figures(job: &Job, taken: &[Taken<'_>]) -> Vec<(u64, Figure)> {
    let mut drawn = Vec::new();
    for (step, entry, ask) in asked(job) {
        let Ask::CoolDown(_) = ask else { continue };
        // It tells how the part cools also where the step was left.
        let of_entry = taken.iter().filter(|found| found.is_of(step, entry) && !found.void);
        let results = of_entry.filter_map(|found| {
            let Some(WorkedOut::CoolDown(result)) = &found.value.worked_out else { return None };
            Some((found.value.mark.seq, result.cooling.clone()?))
        });
        let results: Vec<(u64, CoolDown)> = results.collect();
        for (number, (seq, down)) in each_cooling(&results).into_iter().enumerate() {
            let id = format!("{}/{}/{}", step.id, entry.id, number + 1);
            let figure = draw(job, (id, [&step.title, &entry.label]), down);
            drawn.extend(figure.map(|figure| (*seq, figure)));
        }
    }
    drawn
}

/// Of results that each know the readings before them, the last one of each time that the part cooled.
fn each_cooling(results: &[(u64, CoolDown)]) -> Vec<&(u64, CoolDown)> {
    let mut last: Vec<&(u64, CoolDown)> = Vec::new();
    for result in results.iter().rev() {
        let began = last.last().and_then(|(_, later)| later.cooling.counting().next().map(|(at, _)| at));
        let at = result.1.cooling.readings.last().map(|(at, _)| *at);
        if began.is_none_or(|began| at.is_some_and(|at| at < began)) {
            last.push(result);
        }
    }
    last.reverse();
    last
}

/// The figure of a cool-down; nothing where none of its readings counts.
pub(super) fn draw(job: &Job, (id, labels): (String, [&str; 2]), down: &CoolDown) -> Option<Figure> {
    let cooled = Cooled::of(down)?;
    let [step, label] = labels;
    let (first, _) = down.cooling.counting().next()?;
    Some(Figure {
        id,
        kind: FigureKind::CoolDown,
        title: figure_cooling_title(step, label, moment(job, first.ms())),
        says: says(job, &cooled),
        drawing: Drawing::Plot(Box::new(plot(job, &cooled)?)),
    })
}

fn plot(job: &Job, cooled: &Cooled<'_>) -> Option<Plot> {
    let cooling = &cooled.down.cooling;
    let (limit, ambient) = (cooling.limit.celsius(), cooling.ambient.celsius());
    let shown = cooled.counted.iter().map(|(_, celsius)| *celsius);
    let frame = Frame::around([0.0, cooled.first(), cooled.end()], shown.chain([limit, ambient]))?;
    let mut plot = frame.plot("min", "°C");
    let since = match cooling.engine_off {
        Some(_) => figure_cooling_heated(),
        None => figure_cooling_first(),
    };
    plot.across.title = Some(since);
    if !cooled.curves.is_empty() {
        let along = cooled.along();
        let edge = |pick: fn((f64, f64)) -> f64| {
            along.iter().map(|at| frame.nearest(*at, pick(cooled.spread(*at)))).collect()
        };
        plot.bands.push(Band { low: edge(|ends| ends.0), high: edge(|ends| ends.1) });
    }
    if let Some(curve) = cooled.curves.first() {
        let at = cooled.along().into_iter();
        let through = at.map(|at| frame.nearest(at, cooled.at(curve, at, 0.0))).collect();
        plot.lines.push(Line { style: LineStyle::Curve, through });
    }
    let (left, right) = frame.ends();
    let touch = [frame.spot(left, limit), frame.spot(right, limit)];
    plot.lines.push(Line { style: LineStyle::Limit, through: touch.to_vec() });
    let says = figure_cooling_mark(Measure::from(cooling.limit));
    plot.labels.push(Label { at: frame.spot(left, limit), says, counts: true });
    if let Some(minutes) = cooled.not_before {
        let foot = frame.foot(minutes);
        plot.lines.push(Line { style: LineStyle::Limit, through: vec![foot, frame.spot(minutes, limit)] });
        let says = figure_cooling_not_before(told(job, cooled.down));
        plot.labels.push(Label { at: frame.spot(minutes, limit), says, counts: true });
    }
    let point =
        |(at, celsius): &(f64, f64)| Point { at: frame.spot(*at, *celsius), between: None, counts: true };
    plot.points.extend(cooled.counted.iter().map(point));
    Some(plot)
}

/// Before which time it is not below the limit; empty where that can't be told.
fn told(job: &Job, down: &CoolDown) -> String {
    down.not_before.map(|after| time(job, down, after)).unwrap_or_default()
}

/// So long after the last reading, by the shop's clock: whole minutes, as the entry tells it.
fn time(job: &Job, down: &CoolDown, after: Duration) -> String {
    let last = down.cooling.readings.last().map_or(0, |(at, _)| at.ms());
    // At most a day and its spread, so this fits.
    let ms = after.minutes().ceil() as i64 * MINUTE_MS as i64;
    moment(job, last.saturating_add(ms))
}

fn says(job: &Job, cooled: &Cooled<'_>) -> Vec<Message> {
    let down = cooled.down;
    let cooling = &down.cooling;
    let readings = cooling
        .readings
        .iter()
        .map(|(at, shown)| format!("{} {}", moment(job, at.ms()), Measure::from(*shown)));
    let counted = i64::try_from(down.counted).unwrap_or(i64::MAX);
    let readings = figure_cooling_readings(readings.collect::<Vec<_>>(), counted);
    let limit = figure_cooling_limit(Measure::from(cooling.limit), Measure::from(cooling.ambient));
    let class = match down.class {
        CoolingClass::Below => "below",
        CoolingClass::Cools if down.not_before.is_some() => "cools",
        CoolingClass::Cools => "spread",
        CoolingClass::TooFewReadings => "too_few",
        CoolingClass::Rises => "rises",
        CoolingClass::NeverBelow => "never",
        CoolingClass::NoCurve => "no_curve",
    };
    let state = figure_cooling_state(class, told(job, down));
    let ends = down.earliest.zip(down.likely).map(|(earliest, likely)| {
        let [earliest, likely] = [earliest, likely].map(|after| time(job, down, after));
        figure_cooling_between(earliest, likely)
    });
    once(readings).chain([limit, state]).chain(ends).collect()
}

#[cfg(test)]
mod tests {
    use panside_trade::cooldown::{Place, cool_down};
    use panside_trade::measure::TemperatureDifference;

    use super::*;
    use crate::testing::Bay;

    const EIGHT: i64 = 1_772_438_400_000;

    fn celsius(value: f64) -> Temperature {
        Temperature::from_celsius(value).unwrap()
    }

    fn kelvins(value: f64) -> TemperatureDifference {
        TemperatureDifference::from_kelvins(value).unwrap()
    }

    fn probed(readings: &[(i64, f64)]) -> CoolDown {
        let at = |minute: i64| Moment::from_ms(EIGHT + minute * 60_000);
        cool_down(Cooling {
            place: Place::Joint,
            readings: readings.iter().map(|&(minute, shown)| (at(minute), celsius(shown))).collect(),
            probe_off_by: kelvins(1.0),
            ambient: celsius(22.0),
            ambient_off_by: kelvins(2.0),
            engine_off: Some(at(0)),
            limit: celsius(48.0),
        })
        .unwrap()
    }

    fn drawn(down: &CoolDown) -> (Vec<Message>, Plot) {
        let figure = draw(&Bay::open().job, ("probe/joint".to_owned(), ["Probe", "Joint"]), down).unwrap();
        match figure.drawing {
            Drawing::Plot(plot) => (figure.says, *plot),
            Drawing::Bolts(_) => panic!("no plot"),
        }
    }

    #[test]
    fn the_upper_end_of_the_spread_meets_the_limit_where_the_time_is_told() {
        let down = probed(&[(0, 180.0), (10, 140.0), (20, 110.5), (30, 88.0), (40, 71.5)]);
        let (_, plot) = drawn(&down);
        let limits: Vec<&Line> = plot.lines.iter().filter(|line| line.style == LineStyle::Limit).collect();
        let (touch, told) = (&limits[0].through, &limits[1].through);
        assert_eq!(told[1].y, touch[0].y, "the moment is marked up to the limit");
        let crossing = plot.bands[0].high.windows(2).find(|pair| pair[1].y <= touch[0].y).unwrap();
        assert!((crossing[0].x..=crossing[1].x).contains(&told[1].x), "{crossing:?} {told:?}");
    }

    #[test]
    fn readings_lie_between_the_ends_of_the_spread_and_fall() {
        let (_, plot) = drawn(&probed(&[(0, 180.0), (10, 140.0), (20, 110.5), (30, 88.0)]));
        assert_eq!(plot.points.len(), 4);
        assert!(
            plot.points.windows(2).all(|pair| pair[0].at.x < pair[1].at.x && pair[0].at.y > pair[1].at.y)
        );
        let Band { low, high } = &plot.bands[0];
        assert!(low.iter().zip(high).all(|(low, high)| low.x == high.x && low.y <= high.y));
        assert_eq!(plot.across.title.as_ref().unwrap().id, "figure-cooling-heated");
    }

    #[test]
    fn a_part_that_was_heated_again_cools_in_a_figure_of_its_own() {
        let first: Vec<(u64, CoolDown)> = [&[(0, 90.0)][..], &[(0, 90.0), (20, 60.0)]]
            .into_iter()
            .zip(1_u64..)
            .map(|(readings, seq)| (seq, probed(readings)))
            .collect();
        let mut again = probed(&[(0, 90.0), (20, 60.0), (90, 120.0)]);
        again.cooling.engine_off = Some(Moment::from_ms(EIGHT + 80 * 60_000));
        let all: Vec<(u64, CoolDown)> = first.into_iter().chain([(3, again)]).collect();
        let seqs: Vec<u64> = each_cooling(&all).iter().map(|(seq, _)| *seq).collect();
        assert_eq!(seqs, [2, 3], "the first reading is part of the second result");
    }

    #[test]
    fn two_readings_are_drawn_without_a_curve_and_nothing_is_foretold() {
        let (says, plot) = drawn(&probed(&[(5, 180.0), (10, 150.0)]));
        assert!(plot.bands.is_empty() && plot.lines.iter().all(|line| line.style == LineStyle::Limit));
        assert!(says.contains(&figure_cooling_state("too_few", "")), "{says:?}");
    }
}
