//! Fluid level by stick readings, judged by [`panside_trade::level`]; what to add or take out by
//! [`panside_trade::topup`], and what stays closed meanwhile by [`panside_trade::diagnosis`].

mod advice;
use panside_procedure::format::Checklist;
use panside_procedure::format::entry::Level;
use panside_trade::gain::LearntGain;
use panside_trade::level::{LevelClass, LevelReading, LevelReason, LevelResult, Stick, judge};
use panside_trade::measure::{Measure, Temperature};
use panside_trade::topup::TopUp;
use panside_trade::units::{Quantity, Unit};
use serde::{Deserialize, Serialize};

use super::kind::{self, Kind};
use super::{Classified, Context, named, no_sheet_value, quantity};
use crate::command::Refusal;
use crate::message::{
    Message, level_agree, level_classes_differ, level_disagree, level_disagree_by, level_disagree_dry,
    level_given_up, level_no_agreement, level_no_trace, level_no_trace_confirmed, level_outside_chart,
    level_too_few, limit_chart,
};
use crate::sheet::Specs;
use crate::units;
use crate::value::{Accounted, EntryValue, StickReading, StickShows};

/// A level as it was typed.
#[derive(Clone, Copy)]
pub(super) struct Typed<'a> {
    pub readings: &'a [StickReading],
    pub confirmed: bool,
    pub given_up: Option<&'a Accounted>,
}

/// A level judged, and how it came about.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct LevelJudged {
    /// The level.
    #[serde(flatten)]
    pub level: LevelResult,
    /// The rise for each litre, learnt from the additions of this job.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub learnt: Option<LearntGain>,
    /// What to add or take out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub top_up: Option<TopUp>,
}

pub(super) fn classify(
    asked: &Level,
    specs: &Specs,
    typed: Typed<'_>,
    context: &Context<'_>,
) -> Result<Classified, Refusal> {
    let level = judged(asked, specs, typed.readings, typed.confirmed)?;
    let (chart, _) = specs.chart(&asked.chart).ok_or_else(|| no_sheet_value(&asked.chart))?;
    let ends = chart.points().first().zip(chart.points().last());
    let mut said = vec![say(&level, ends.map(|(first, last)| (first.temperature, last.temperature)))];
    if level.agreement.is_none() && level.reason == LevelReason::ReadingsAgree {
        said.push(level_no_agreement());
    }
    let off = matches!(level.class, LevelClass::Below | LevelClass::Above);
    let given_up = typed.given_up.filter(|_| off && asked.may_give_up);
    let given_up = given_up.map(|told| named(told, context.names)).transpose()?;
    let advice = advice::of(asked, specs, &level, context);
    let class = match &given_up {
        Some((kept, name)) => {
            said.push(level_given_up(*name, &kept.reason));
            "not_reached"
        }
        None => {
            said.extend(advice.said);
            class_name(level.class)
        }
    };
    let value = EntryValue::Level {
        readings: typed.readings.to_vec(),
        confirmed_no_trace: typed.confirmed,
        given_up: given_up.map(|(kept, _)| kept),
    };
    let judged = LevelJudged { level, learnt: advice.learnt, top_up: advice.top_up };
    Ok(Classified::worked_out(class, value, said, judged))
}

/// The level of some readings, judged on the sheet's chart.
fn judged(
    asked: &Level,
    specs: &Specs,
    readings: &[StickReading],
    confirmed: bool,
) -> Result<LevelResult, Refusal> {
    let (chart, agreement) = specs.chart(&asked.chart).ok_or_else(|| no_sheet_value(&asked.chart))?;
    let taken = readings.iter().map(|reading| take(reading, confirmed)).collect::<Result<Vec<_>, _>>()?;
    judge(chart, &taken, agreement).map_err(|error| error.message().into())
}

fn take(reading: &StickReading, confirmed: bool) -> Result<LevelReading, Refusal> {
    let stick = match &reading.stick {
        StickShows::Trace { value, unit } => Stick::Trace(quantity(value, unit)?),
        StickShows::NoTrace => Stick::NoTrace { confirmed },
    };
    Ok(LevelReading { temperature: quantity(&reading.temperature, &reading.temperature_unit)?, stick })
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
            let text = |end: Option<Temperature>| end.map(|end| Measure::from(end).to_string());
            let (from, to) = (text(ends.map(|ends| ends.0)), text(ends.map(|ends| ends.1)));
            level_outside_chart(from.unwrap_or_default(), to.unwrap_or_default())
        }
        LevelReason::NoTrace => level_no_trace(),
        LevelReason::ReadingsDisagree => match (result.spread, result.agreement.map(Measure::from)) {
            (Some(spread), Some(most)) => level_disagree_by(Measure::from(spread), most),
            (_, Some(most)) => level_disagree(most),
            (_, None) => level_disagree_dry(),
        },
        LevelReason::ClassesDiffer => level_classes_differ(),
    }
}

impl Kind for Level {
    fn classify(
        &self,
        specs: &Specs,
        value: &EntryValue,
        context: &Context<'_>,
    ) -> Result<Classified, Refusal> {
        match value {
            EntryValue::Level { readings, confirmed_no_trace, given_up } => {
                let given_up = given_up.as_ref();
                classify(self, specs, Typed { readings, confirmed: *confirmed_no_trace, given_up }, context)
            }
            _ => Err(kind::other("level", value)),
        }
    }

    fn limits(&self, specs: &Specs, _checklist: &Checklist) -> Vec<Message> {
        let points = specs.chart(&self.chart).map(|(chart, _)| chart.points()).unwrap_or_default();
        let Some((first, last)) = points.first().zip(points.last()) else { return Vec::new() };
        vec![limit_chart(Measure::from(first.temperature), Measure::from(last.temperature))]
    }

    fn units(&self) -> Vec<String> {
        units::of(Quantity::Length, Unit::Millimetre)
    }

    fn temperature_units(&self) -> Vec<String> {
        units::of(Quantity::Temperature, Unit::DegreeCelsius)
    }

    fn converted<'v>(&self, _value: &'v EntryValue) -> Option<(&'v str, &'v str)> {
        None
    }

    fn in_short(&self, value: &EntryValue, _checklist: &Checklist) -> Option<String> {
        let EntryValue::Level { readings, .. } = value else { return None };
        let readings = readings.iter().map(|reading| {
            let stick = match &reading.stick {
                StickShows::Trace { value, unit } => format!("{value} {unit}"),
                StickShows::NoTrace => "–".to_owned(),
            };
            format!("{stick} ({} {})", reading.temperature, reading.temperature_unit)
        });
        Some(readings.collect::<Vec<_>>().join(", "))
    }

    fn is_measured(&self) -> bool {
        true
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
        try_entry(
            "level",
            "stick",
            EntryValue::Level { readings, confirmed_no_trace: confirmed, given_up: None },
        )
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
        assert_eq!(level(vec![swapped], false).unwrap_err().message.id, "trade-quantity-differs");
    }
}
