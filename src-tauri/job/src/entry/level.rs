//! Fluid level by stick readings, judged by [`panside_trade::level`].

use panside_procedure::format::entry::Level;
use panside_trade::level::{LevelClass, LevelReading, LevelReason, LevelResult, Stick, judge};
use panside_trade::measure::{Length, Measure, Temperature};

use super::{Classified, measure, no_sheet_value};
use crate::message::{
    Message, level_agree, level_classes_differ, level_disagree, level_disagree_by, level_no_trace,
    level_no_trace_confirmed, level_outside_chart, level_too_few, of_trade,
};
use crate::request::Refusal;
use crate::sheet::Specs;
use crate::value::{EntryValue, StickReading, StickShows};

pub(super) fn classify(
    asked: &Level,
    specs: &Specs,
    readings: &[StickReading],
    confirmed: bool,
) -> Result<Classified, Refusal> {
    let (chart, agreement) = specs.chart(&asked.chart).ok_or_else(|| no_sheet_value(&asked.chart))?;
    let taken = readings.iter().map(|reading| take(reading, confirmed)).collect::<Result<Vec<_>, _>>()?;
    let result = judge(chart, &taken, agreement).map_err(|error| Refusal::from(of_trade(&error)))?;
    let ends = chart.points().first().zip(chart.points().last());
    let said = say(&result, ends.map(|(first, last)| (first.temperature, last.temperature)));
    let value = EntryValue::Level { readings: readings.to_vec(), confirmed_no_trace: confirmed };
    Ok(Classified::new(class_name(result.class), value, said).with_detail(&result))
}

fn take(reading: &StickReading, confirmed: bool) -> Result<LevelReading, Refusal> {
    let trade = |error| Refusal::from(of_trade(&error));
    let temperature = measure(&reading.temperature, &reading.temperature_unit)?;
    let stick = match &reading.stick {
        StickShows::Trace { value, unit } => {
            Stick::Trace(Length::try_from(measure(value, unit)?).map_err(trade)?)
        }
        StickShows::NoTrace => Stick::NoTrace { confirmed },
    };
    Ok(LevelReading { temperature: Temperature::try_from(temperature).map_err(trade)?, stick })
}

/// The class as `Ask::classes` lists it.
fn class_name(class: LevelClass) -> &'static str {
    match class {
        LevelClass::Below => "below",
        LevelClass::In => "in",
        LevelClass::Above => "above",
        LevelClass::Unclear => "unclear",
    }
}

fn say(result: &LevelResult, ends: Option<(Temperature, Temperature)>) -> Message {
    let readings = result.readings.len();
    match result.reason {
        LevelReason::ReadingsAgree => level_agree(class_name(result.class), readings),
        LevelReason::NoTraceConfirmed => level_no_trace_confirmed(),
        LevelReason::TooFewReadings => level_too_few(readings),
        LevelReason::OutsideChart => {
            let text =
                |end: Option<Temperature>| end.map(|end| crate::message::measure_text(Measure::from(end)));
            let (from, to) = (text(ends.map(|ends| ends.0)), text(ends.map(|ends| ends.1)));
            level_outside_chart(from.unwrap_or_default(), to.unwrap_or_default())
        }
        LevelReason::NoTrace => level_no_trace(),
        LevelReason::ReadingsDisagree => match result.spread {
            Some(spread) => level_disagree_by(Measure::from(spread), Measure::from(result.agreement)),
            None => level_disagree(Measure::from(result.agreement)),
        },
        LevelReason::ClassesDiffer => level_classes_differ(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::try_entry;

    fn stick(celsius: &str, millimetres: &str) -> StickReading {
        let stick = StickShows::Trace { value: millimetres.into(), unit: "mm".into() };
        StickReading { temperature: celsius.into(), temperature_unit: "°C".into(), stick }
    }

    fn dry(celsius: &str) -> StickReading {
        StickReading { stick: StickShows::NoTrace, ..stick(celsius, "0") }
    }

    fn level(readings: Vec<StickReading>, confirmed: bool) -> Result<Classified, Refusal> {
        try_entry("level", "stick", EntryValue::Level { readings, confirmed_no_trace: confirmed })
    }

    #[test]
    fn two_readings_that_agree_give_the_level() {
        // The fixture's chart: 40 °C 12 to 22 mm, 80 °C 32 to 42 mm, so 22 to 32 mm at 60 °C.
        assert_eq!(level(vec![stick("60", "24"), stick("60", "25")], false).unwrap().class, "in");
        assert_eq!(level(vec![stick("60", "20"), stick("60", "19.5")], false).unwrap().class, "below");
        assert_eq!(level(vec![stick("60", "34"), stick("60", "35")], false).unwrap().class, "above");
    }

    #[test]
    fn one_reading_alone_and_readings_far_apart_are_unclear() {
        let one = level(vec![stick("60", "24")], false).unwrap();
        assert_eq!((one.class.as_str(), one.said[0].clone()), ("unclear", level_too_few(1_usize)));
        let apart = level(vec![stick("60", "24"), stick("60", "28")], false).unwrap();
        assert_eq!(apart.said[0], level_disagree_by("4 mm", "2 mm"));
    }

    #[test]
    fn a_fluid_colder_than_the_chart_is_unclear_and_says_where_the_chart_reaches() {
        let cold = level(vec![stick("20", "5"), stick("20", "5")], false).unwrap();
        assert_eq!(
            (cold.class.as_str(), cold.said[0].clone()),
            ("unclear", level_outside_chart("40 °C", "80 °C"))
        );
    }

    #[test]
    fn a_dry_stick_counts_as_below_only_once_it_was_looked_at_again() {
        assert_eq!(level(vec![dry("60"), dry("60")], false).unwrap().said[0], level_no_trace());
        assert_eq!(level(vec![dry("60"), dry("60")], true).unwrap().class, "below");
    }

    #[test]
    fn degrees_on_the_stick_and_millimetres_on_the_thermometer_are_refused() {
        let mut swapped = stick("60", "24");
        swapped.temperature_unit = "mm".into();
        assert_eq!(level(vec![swapped], false).unwrap_err().message.id, "unit-other-quantity");
    }
}
