//! How a level came about.

use super::{
    Band, JudgedReading, LevelChart, LevelCheck, LevelClass, LevelPoint, LevelReason, LevelResult, Mark,
    Stick,
};
use crate::measure::Temperature;
use crate::source::{CHART, LEVEL_CONDITIONS, READ_TWICE};
use crate::text::figure;
use crate::working::{Worked, Working};

impl LevelReason {
    /// Why the level has its class, as a sentence that says what to do.
    pub fn sentence(self) -> &'static str {
        match self {
            LevelReason::ReadingsAgree => "The readings agree.",
            LevelReason::NoTraceConfirmed => {
                "The stick stays dry after a second look: the level is below the stick, by how much is not known."
            }
            LevelReason::TooFewReadings => "One reading is not enough: wipe the stick and read again.",
            LevelReason::OutsideChart => {
                "A temperature is outside the chart, and the chart is not guessed beyond its ends: bring the fluid \
                 inside and read again."
            }
            LevelReason::NoTrace => {
                "The stick stayed dry: look at its seating, at the temperature and at the idle, then read again."
            }
            LevelReason::ReadingsDisagree => "The readings do not agree: wipe the stick and read again.",
            LevelReason::ClassesDiffer => "The readings lie on both sides of a mark: read again.",
        }
    }
}

/// The class in words.
fn words(class: LevelClass) -> &'static str {
    match class {
        LevelClass::Below => "below the band",
        LevelClass::In => "in the band",
        LevelClass::Above => "above the band",
        LevelClass::Unclear => "unclear",
    }
}

fn stick(shows: Stick) -> String {
    match shows {
        Stick::Trace(trace) => trace.to_string(),
        Stick::NoTrace { confirmed: true } => "no trace, looked at again".to_owned(),
        Stick::NoTrace { confirmed: false } => "no trace".to_owned(),
    }
}

/// How a band was read from its chart.
fn looked_up(chart: &LevelChart, at: Temperature, mark: fn(&LevelPoint) -> f64) -> String {
    let celsius = at.celsius();
    let between = chart.points().windows(2).find_map(|pair| match pair {
        [left, right] if (left.temperature.celsius()..=right.temperature.celsius()).contains(&celsius) => {
            Some((left, right))
        }
        _ => None,
    });
    let Some((left, right)) = between else { return "not on the chart".to_owned() };
    let (from, to) = (left.temperature.celsius(), right.temperature.celsius());
    format!(
        "{low} + ({high} − {low}) × ({at} − {from}) / ({to} − {from})",
        low = figure(mark(left)),
        high = figure(mark(right)),
        at = figure(celsius),
        from = figure(from),
        to = figure(to),
    )
}

/// The steps for one reading.
fn reading_steps(
    mut working: Working,
    chart: Option<&LevelChart>,
    judged: &JudgedReading,
    at: usize,
) -> Working {
    let temperature = judged.reading.temperature;
    let Some(Band { low, high }) = judged.band else {
        return working.step(format!("reading {at}"), format!("band at {temperature}"), "outside the chart");
    };
    if let Some(chart) = chart {
        let low_how = looked_up(chart, temperature, |point| point.low.millimetres());
        let high_how = looked_up(chart, temperature, |point| point.high.millimetres());
        working = working.step(format!("low mark at {temperature}"), low_how, low);
        working = working.step(format!("high mark at {temperature}"), high_how, high);
    } else {
        working = working.step(format!("band at {temperature}"), "chart", format!("{low} to {high}"));
    }
    if let (Stick::Trace(trace), Some(above)) = (judged.reading.stick, judged.above_low_mark) {
        let how = format!("{trace} − {low}");
        working = working.step(format!("reading {at} above the low mark"), how, above);
    }
    if let Some(nearest) = judged.nearest_mark {
        let mark = if nearest.mark == Mark::Low { "low" } else { "high" };
        let value = format!("{}, {} from the {mark} mark", words(judged.class), nearest.distance);
        working = working.step(format!("reading {at}"), "nearest mark", value);
    }
    working
}

fn of(result: &LevelResult, chart: Option<&LevelChart>, working: Working) -> Working {
    let mut working = working.given("may differ by", result.agreement);
    for (index, judged) in result.readings.iter().enumerate() {
        working = reading_steps(working, chart, judged, index + 1);
    }
    if let Some(spread) = result.spread {
        working = working.step("spread", "highest − lowest above the low mark", spread);
    }
    working
        .answer(format!("The level is {}. {}", words(result.class), result.reason.sentence()))
        .sources(&[CHART, READ_TWICE])
}

impl Worked for LevelResult {
    fn working(&self) -> Working {
        let given = |working: Working, (index, judged): (usize, &JudgedReading)| {
            let value = format!("{} at {}", stick(judged.reading.stick), judged.reading.temperature);
            working.given(format!("reading {}", index + 1), value)
        };
        let working = self.readings.iter().enumerate().fold(Working::of("fluid level"), given);
        of(self, None, working)
    }
}

impl Worked for LevelCheck {
    fn working(&self) -> Working {
        let mut working = Working::of("fluid level");
        for point in self.chart.points() {
            let what = format!("chart at {}", point.temperature);
            working = working.given(what, format!("{} to {}", point.low, point.high));
        }
        for (index, timed) in self.readings.iter().enumerate() {
            let read = format!("{} at {}", stick(timed.reading.stick), timed.reading.temperature);
            let value = match timed.left_out {
                Some(why) => format!("{read}, {why}"),
                None => read,
            };
            working = working.given(format!("reading {}", index + 1), value);
        }
        let working = match &self.result {
            Some(result) => of(result, Some(&self.chart), working),
            None => self.not_judged.iter().fold(working, |working, why| working.answer(why)),
        };
        working.sources(&[LEVEL_CONDITIONS])
    }
}
