//! A measured value against its limits on the sheet.

use panside_procedure::format::Checklist;
use panside_procedure::format::entry::Reading;
use panside_trade::TradeError;
use panside_trade::coil::{MeterShows, parse_shown};
use panside_trade::measure::Measure;
use panside_trade::units::{Quantity, Unit};
use serde::{Deserialize, Serialize};

use super::kind::{self, Kind};
use super::{Classified, Context, measure, no_sheet_value};
use crate::command::Refusal;
use crate::message::{
    Message, reading_above, reading_below, reading_inside, reading_not_within, reading_read, reading_unit,
};
use crate::sheet::Specs;
use crate::units;
use crate::value::EntryValue;

/// Parts of a value smaller than this are rounding of a conversion, not something an instrument shows.
const ROUNDING: f64 = 1e-9;

/// A reading judged, and how it came about.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct ReadingResult {
    /// `read`, `inside` or `outside`.
    pub class: String,
    /// The value as it was typed.
    pub typed: Measure,
    /// The same in the unit the checklist asks for.
    pub asked: Measure,
    /// The lowest value allowed, the limit included.
    pub at_least: Option<Measure>,
    /// The highest value allowed, the limit included.
    pub at_most: Option<Measure>,
}

/// One limit of a reading as the sheet gives it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Limit<'a> {
    /// Not above this.
    AtMost(Measure, &'a str),
    /// Not below this.
    AtLeast(Measure, &'a str),
    /// Not outside these.
    Within(Measure, Measure, &'a str),
}

/// The limits of a reading, each with its key.
///
/// # Errors
/// The first key that the sheet lacks or has as something else.
pub(crate) fn limits<'a>(asked: &'a Reading, specs: &Specs) -> Result<Vec<Limit<'a>>, &'a str> {
    let mut limits = Vec::new();
    if let Some(key) = &asked.at_most {
        limits.push(Limit::AtMost(specs.measure(key).ok_or(key.as_str())?, key));
    }
    if let Some(key) = &asked.at_least {
        limits.push(Limit::AtLeast(specs.measure(key).ok_or(key.as_str())?, key));
    }
    if let Some(key) = &asked.within {
        let (low, high) = specs.range(key).ok_or(key.as_str())?;
        limits.push(Limit::Within(low, high, key));
    }
    Ok(limits)
}

/// Whether a meter can show that it is more than it can measure.
pub(crate) fn is_resistance(asked: &Reading) -> bool {
    asked.unit.parse::<Unit>().is_ok_and(|unit| unit.quantity() == Quantity::Resistance)
}

pub(super) fn classify(
    asked: &Reading,
    specs: &Specs,
    (value, unit): (&str, &str),
    checklist: &Checklist,
) -> Result<Classified, Refusal> {
    let trade = |error: TradeError| Refusal::from(error.message());
    if is_resistance(asked) && matches!(parse_shown(value), Ok(MeterShows::Overload)) {
        return overload(asked, specs, (value, unit), checklist);
    }
    let wanted: Unit = asked.unit.parse().map_err(trade)?;
    let typed = measure(value, unit)?;
    if typed.unit().quantity() != wanted.quantity() {
        return Err(reading_unit(wanted.symbol(), typed.unit().symbol()).into());
    }
    let here = typed.to(wanted).map_err(trade)?;
    let mut result =
        ReadingResult { class: String::new(), typed, asked: here, at_least: None, at_most: None };
    let limits = limits(asked, specs).map_err(no_sheet_value)?;
    let mut broken = Vec::new();
    for limit in &limits {
        broken.extend(judge(*limit, checklist, &mut result).map_err(trade)?);
    }
    let (class, said) = match (limits.is_empty(), broken.is_empty()) {
        (true, _) => ("read", vec![reading_read(typed)]),
        (false, true) => ("inside", vec![reading_inside(typed)]),
        (false, false) => ("outside", broken),
    };
    result.class = class.to_owned();
    let value =
        EntryValue::Reading { value: value.trim().to_owned(), unit: typed.unit().symbol().to_owned() };
    Ok(Classified::worked_out(class, value, said, result))
}

/// More than the meter can show: above every limit. There is nothing to work out.
fn overload(
    asked: &Reading,
    specs: &Specs,
    (shows, unit): (&str, &str),
    checklist: &Checklist,
) -> Result<Classified, Refusal> {
    let unit: Unit = unit.parse().map_err(|error: TradeError| Refusal::from(error.message()))?;
    let limits = limits(asked, specs).map_err(no_sheet_value)?;
    let broken = limits.iter().find_map(|limit| match limit {
        Limit::AtMost(most, key) | Limit::Within(_, most, key) => Some((*most, *key)),
        Limit::AtLeast(..) => None,
    });
    let shows = shows.trim().to_uppercase();
    let (class, said) = match broken {
        _ if limits.is_empty() => ("read", reading_read(&shows)),
        None => ("inside", reading_inside(&shows)),
        Some((most, key)) => ("outside", reading_above(&shows, most, checklist.sheet_label(key))),
    };
    let value = EntryValue::Reading { value: shows, unit: unit.symbol().to_owned() };
    Ok(Classified::new(class, value, said))
}

/// What is said where the reading breaks a limit.
fn judge(
    limit: Limit<'_>,
    checklist: &Checklist,
    result: &mut ReadingResult,
) -> Result<Option<Message>, panside_trade::TradeError> {
    let label = |key| checklist.sheet_label(key);
    let here = result.asked;
    let above = |limit: Measure| here.value() > limit.value() + slack(limit);
    let below = |limit: Measure| here.value() < limit.value() - slack(limit);
    Ok(match limit {
        Limit::AtMost(most, key) => {
            let most = most.to(here.unit())?;
            result.at_most = Some(most);
            above(most).then(|| reading_above(result.typed, most, label(key)))
        }
        Limit::AtLeast(least, key) => {
            let least = least.to(here.unit())?;
            result.at_least = Some(least);
            below(least).then(|| reading_below(result.typed, least, label(key)))
        }
        Limit::Within(low, high, key) => {
            let (low, high) = (low.to(here.unit())?, high.to(here.unit())?);
            (result.at_least, result.at_most) = (Some(low), Some(high));
            (above(high) || below(low)).then(|| reading_not_within(result.typed, low, high, label(key)))
        }
    })
}

fn slack(limit: Measure) -> f64 {
    ROUNDING * limit.value().abs().max(1.0)
}

/// A limit as text, for the view.
fn limit_text(limit: &Limit<'_>, checklist: &Checklist) -> Message {
    let label = |key| checklist.sheet_label(key);
    match limit {
        Limit::AtMost(limit, key) => crate::message::limit_at_most(*limit, label(key)),
        Limit::AtLeast(limit, key) => crate::message::limit_at_least(*limit, label(key)),
        Limit::Within(low, high, key) => crate::message::limit_within(*low, *high, label(key)),
    }
}

impl Kind for Reading {
    fn classify(
        &self,
        specs: &Specs,
        value: &EntryValue,
        context: &Context<'_>,
    ) -> Result<Classified, Refusal> {
        match value {
            EntryValue::Reading { value: typed, unit } => {
                classify(self, specs, (typed, unit), context.checklist)
            }
            _ => Err(kind::other("reading", value)),
        }
    }

    fn limits(&self, specs: &Specs, checklist: &Checklist) -> Vec<Message> {
        let limits = limits(self, specs).unwrap_or_default();
        limits.iter().map(|limit| limit_text(limit, checklist)).collect()
    }

    fn units(&self) -> Vec<String> {
        let unit = self.unit.parse::<Unit>();
        unit.map_or_else(|_| vec![self.unit.clone()], |unit| units::of(unit.quantity(), unit))
    }

    fn temperature_units(&self) -> Vec<String> {
        Vec::new()
    }

    fn converted<'v>(&self, value: &'v EntryValue) -> Option<(&'v str, &'v str)> {
        let EntryValue::Reading { value, unit } = value else { return None };
        Some((value, unit))
    }

    fn in_short(&self, value: &EntryValue, _checklist: &Checklist) -> Option<String> {
        let EntryValue::Reading { value, unit } = value else { return None };
        Some(match parse_shown(value) {
            Ok(MeterShows::Overload) => value.clone(),
            _ => format!("{value} {unit}"),
        })
    }

    fn is_measured(&self) -> bool {
        true
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::entry::WorkedOut;
    use crate::testing::{specs, try_entry};

    fn read(value: &str, unit: &str) -> Result<Classified, Refusal> {
        try_entry("probe", "exhaust", EntryValue::Reading { value: value.into(), unit: unit.into() })
    }

    #[test]
    fn an_exhaust_at_its_touch_limit_may_be_touched_and_a_tenth_above_not() {
        assert_eq!(read("48", "°C").unwrap().class, "inside");
        let hot = read("48,1", "°C").unwrap();
        assert_eq!(hot.class, "outside");
        assert_eq!(hot.said[0], reading_above("48.1 °C", "48 °C", "touch limit"));
    }

    #[test]
    fn a_limit_read_in_fahrenheit_is_the_same_limit() {
        // 48 °C is 118.4 °F exactly, as 1 °C is 1.8 °F and 0 °C is 32 °F by definition.
        let same = read("118.4", "°F").unwrap();
        assert_eq!(same.class, "inside");
        assert_eq!(
            same.value,
            EntryValue::Reading { value: "118.4".into(), unit: "°F".into() },
            "kept as typed"
        );
        assert_eq!(read("118.5", "F").unwrap().class, "outside");
    }

    #[test]
    fn a_meter_that_shows_overload_is_above_every_limit_and_only_at_a_resistance() {
        let ohms = |value: &str| {
            let value = EntryValue::Reading { value: value.into(), unit: "Ω".into() };
            try_entry("coil", "ohms", value).unwrap()
        };
        let over = ohms(" ol ");
        assert_eq!((over.class.as_str(), &over.worked_out), ("outside", &None));
        assert_eq!(over.value, EntryValue::Reading { value: "OL".into(), unit: "Ω".into() });
        assert!(read("OL", "°C").is_err());
    }

    #[test]
    fn volts_are_refused_where_degrees_are_asked_for() {
        assert_eq!(read("12.4", "V").unwrap_err().message, reading_unit("°C", "V"));
    }

    #[test]
    fn what_is_no_number_is_refused() {
        for text in ["", "hot", "NaN", "inf", "1e3", "4 8", "1.000,5", "--4", "٤٨"] {
            assert!(read(text, "°C").unwrap_err().message.id.starts_with("trade-number-"), "{text}");
        }
        assert_eq!(read("48", "").unwrap_err().message.id, "trade-unit-unknown");
        assert_eq!(read("-300", "°C").unwrap_err().message.id, "trade-below-lowest");
    }

    #[test]
    fn a_range_keeps_both_its_ends() {
        let ohms = |value: &str| {
            let value = EntryValue::Reading { value: value.into(), unit: "Ω".into() };
            try_entry("coil", "ohms", value).unwrap().class
        };
        assert_eq!(["4.9", "5.0", "5.6", "5.7"].map(ohms), ["outside", "inside", "inside", "outside"]);
    }

    #[test]
    fn without_limits_the_value_is_just_taken_down() {
        let odometer = EntryValue::Reading { value: " 184312 ".into(), unit: "km".into() };
        let taken = try_entry("identify", "odometer", odometer).unwrap();
        assert_eq!(taken.class, "read");
        assert_eq!(taken.value, EntryValue::Reading { value: "184312".into(), unit: "km".into() });
    }

    #[test]
    fn what_was_worked_out_says_what_was_judged_against_what() {
        let Some(WorkedOut::Reading(result)) = read("120", "°F").unwrap().worked_out else {
            panic!("nothing")
        };
        assert_eq!(result.class, "outside");
        assert_eq!(result.at_most, specs().measure("touch_limit"));
        assert!((result.asked.value() - 48.888_888_9).abs() < 1e-6, "(120 − 32) / 1.8");
    }

    #[test]
    fn a_reading_is_typed_in_the_unit_it_is_asked_in_or_in_the_one_beside_it() {
        let units = |unit: &str| {
            let asked: Reading = serde_json::from_value(serde_json::json!({ "unit": unit })).unwrap();
            asked.units()
        };
        assert_eq!(units("°F"), ["°F", "°C"]);
        assert_eq!(units("L"), ["L", "qt"]);
        assert_eq!(units("V"), ["V", "mV"]);
    }
}
