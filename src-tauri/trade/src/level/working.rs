//! How a level came about.

use panside_messages::{Arg, Message};

use super::{
    Band, JudgedReading, LeftOut, LevelChart, LevelCheck, LevelClass, LevelPoint, LevelReading, LevelReason,
    LevelResult, Mark, NotJudged, Stick, TimedReading,
};
use crate::measure::Temperature;
use crate::message::working::*;
use crate::source;
use crate::text::figure;
use crate::working::{Worked, Working};

impl LevelReason {
    /// Why the level has its class, as a sentence that says what to do.
    fn message(self) -> Message {
        match self {
            LevelReason::ReadingsAgree => working_level_agree(),
            LevelReason::NoTraceConfirmed => working_level_no_trace_confirmed(),
            LevelReason::TooFewReadings => working_level_too_few(),
            LevelReason::OutsideChart => working_level_outside_chart(),
            LevelReason::NoTrace => working_level_no_trace(),
            LevelReason::ReadingsDisagree => working_level_disagree(),
            LevelReason::ClassesDiffer => working_level_classes_differ(),
        }
    }
}

impl LevelClass {
    /// Where the level stands, as it is said within a sentence.
    pub(crate) fn message(self) -> Message {
        match self {
            LevelClass::Below => working_level_below(),
            LevelClass::In => working_level_in(),
            LevelClass::Above => working_level_above(),
            LevelClass::Unclear => working_level_unclear(),
        }
    }
}

impl NotJudged {
    /// Why no level is judged, as a sentence that says what to do.
    #[must_use]
    pub fn message(self) -> Message {
        match self {
            NotJudged::FloorNotLevel => working_level_floor(),
            NotJudged::NotIdling => working_level_idle(),
            NotJudged::NotInPark => working_level_park(),
            NotJudged::RangesNotCycled => working_level_ranges(),
        }
    }
}

impl LevelReading {
    /// What the stick showed, and the temperature.
    fn message(self) -> Message {
        let stick = match self.stick {
            Stick::Trace(trace) => trace.into(),
            Stick::NoTrace { confirmed: true } => Arg::from(working_level_dry_confirmed()),
            Stick::NoTrace { confirmed: false } => Arg::from(working_level_dry()),
        };
        working_at(stick, self.temperature)
    }
}

impl TimedReading {
    /// What was read, and why it does not count where it does not.
    fn message(self) -> Message {
        let read = self.reading.message();
        match self.left_out {
            Some(LeftOut::BeforeEngineStart) => working_level_before_start(read),
            Some(LeftOut::BeforeFluidChange) => working_level_before_change(read),
            None => read,
        }
    }
}

/// How a mark was read from its chart.
fn looked_up(chart: &LevelChart, at: Temperature, mark: fn(&LevelPoint) -> f64) -> Arg {
    let celsius = at.celsius();
    let between = chart.points().windows(2).find_map(|pair| match pair {
        [left, right] if (left.temperature.celsius()..=right.temperature.celsius()).contains(&celsius) => {
            Some((left, right))
        }
        _ => None,
    });
    let Some((left, right)) = between else { return working_level_outside().into() };
    let (from, to) = (left.temperature.celsius(), right.temperature.celsius());
    let line = format!(
        "{low} + ({high} − {low}) × ({at} − {from}) / ({to} − {from})",
        low = figure(mark(left)),
        high = figure(mark(right)),
        at = figure(celsius),
        from = figure(from),
        to = figure(to),
    );
    line.into()
}

/// The steps for one reading, counted from 1.
fn reading_steps(
    mut working: Working,
    chart: Option<&LevelChart>,
    judged: &JudgedReading,
    number: usize,
) -> Working {
    let temperature = judged.reading.temperature;
    let Some(Band { low, high }) = judged.band else {
        let band = working_level_band_at(temperature);
        return working.step(working_level_reading(number), band, working_level_outside());
    };
    if let Some(chart) = chart {
        let low_how = looked_up(chart, temperature, |point| point.low.millimetres());
        let high_how = looked_up(chart, temperature, |point| point.high.millimetres());
        working = working.step(working_level_low_at(temperature), low_how, low);
        working = working.step(working_level_high_at(temperature), high_how, high);
    } else {
        let band = working_level_band_at(temperature);
        working = working.step(band, working_level_chart(), working_range(low, high));
    }
    if let (Stick::Trace(trace), Some(above)) = (judged.reading.stick, judged.above_low_mark) {
        working = working.step(working_level_above_low(number), format!("{trace} − {low}"), above);
    }
    if let Some(nearest) = judged.nearest_mark {
        let mark = if nearest.mark == Mark::Low { "low" } else { "high" };
        let value = working_level_from_mark(judged.class.message(), nearest.distance, mark);
        working = working.step(working_level_reading(number), working_level_nearest(), value);
    }
    working
}

fn of(result: &LevelResult, chart: Option<&LevelChart>, working: Working) -> Working {
    let mut working = match result.agreement {
        Some(agreement) => working.given(working_level_agreement(), agreement),
        None => working.given(working_level_agreement(), working_level_agreement_open()),
    };
    for (index, judged) in result.readings.iter().enumerate() {
        working = reading_steps(working, chart, judged, index + 1);
    }
    if let Some(spread) = result.spread {
        working = working.step(working_level_spread(), working_level_spread_how(), spread);
    }
    working
        .answer(working_level_is(result.class.message(), result.reason.message()))
        .sources([source::chart(), source::read_twice()])
}

impl Worked for LevelResult {
    fn working(&self) -> Working {
        let given = |working: Working, (index, judged): (usize, &JudgedReading)| {
            working.given(working_level_reading(index + 1), judged.reading.message())
        };
        let working = self.readings.iter().enumerate().fold(Working::of(working_level()), given);
        of(self, None, working)
    }
}

impl Worked for LevelCheck {
    fn working(&self) -> Working {
        let mut working = Working::of(working_level());
        for point in self.chart.points() {
            let what = working_level_chart_at(point.temperature);
            working = working.given(what, working_range(point.low, point.high));
        }
        for (index, timed) in self.readings.iter().enumerate() {
            working = working.given(working_level_reading(index + 1), timed.message());
        }
        let working = match &self.result {
            Some(result) => of(result, Some(&self.chart), working),
            None => self.not_judged.iter().fold(working, |working, why| working.answer(why.message())),
        };
        working.sources([source::level_conditions()])
    }
}
