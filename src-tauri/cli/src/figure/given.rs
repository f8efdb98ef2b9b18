//! The keys and values of a figure as they were typed, and how each kind of value is read.

use std::str::FromStr;

use chrono::NaiveDate;
use panside_job::Specs;
use panside_messages::{Arg, Message, Speaker};
use panside_procedure::load;
use panside_trade::measure::{Duration, Measure};
use panside_trade::moment::Moment;
use panside_trade::number::{parse_measure, parse_number};
use panside_trade::units::Unit;
use panside_trade::{FigureError, TradeError};

use super::{Figure, Times};
use crate::args::FigureArgs;
use crate::exit::{Exit, Failure, read_document};
use crate::message::*;

impl From<FigureError> for Failure {
    /// A figure that can't be worked out from what was given is refused.
    fn from(error: FigureError) -> Failure {
        Failure::new(Exit::Refused, error.message())
    }
}

/// Wrong usage, with the key and what was typed.
pub fn wrong(key: &str, text: &str, why: impl Into<Arg>) -> Failure {
    Failure::new(Exit::Usage, cli_wrong(key, text, why))
}

/// What was typed.
pub struct Given {
    values: Vec<(String, String)>,
    sheet: Option<Specs>,
}

impl Given {
    /// Takes the keys apart and looks whether they are this figure's.
    pub fn read(figure: &Figure, args: &FigureArgs, speaker: &Speaker) -> Result<Given, Failure> {
        let usage = |why: Message| {
            let keys = figure.usage(speaker);
            let lines = std::iter::once("").chain(keys.lines());
            Failure::new(Exit::Usage, cli_usage(why, Arg::lines(lines)))
        };
        let mut values = Vec::new();
        for text in &args.values {
            let Some((name, value)) = text.split_once('=') else {
                return Err(usage(cli_no_key_value(text)));
            };
            if !figure.keys.iter().any(|key| key.name == name) {
                return Err(usage(cli_no_key(figure.name, name)));
            }
            values.push((name.to_owned(), value.to_owned()));
        }
        for key in figure.keys {
            let count = values.iter().filter(|(name, _)| name == key.name).count();
            match key.times {
                Times::Once | Times::Often if count == 0 => {
                    return Err(usage(cli_needs(figure.name, key.name)));
                }
                Times::Once | Times::Perhaps if count > 1 => {
                    return Err(usage(cli_more_than_once(key.name, count)));
                }
                _ => {}
            }
        }
        let sheet = args.sheet.as_ref().map(|path| {
            let sheet = load::sheet(&read_document(path)?)
                .map_err(|problems| Failure::does_not_load(path, &problems))?;
            Specs::of(&sheet).map_err(|problems| {
                let problems = Arg::lines(problems.into_iter().map(|problem| problem.message));
                Failure::new(Exit::DoesNotLoad, cli_does_not_load(path.as_path(), problems))
            })
        });
        Ok(Given { values, sheet: sheet.transpose()? })
    }

    /// The values of a key, in their order.
    pub fn all<'a>(&'a self, key: &'a str) -> impl Iterator<Item = &'a str> {
        self.values.iter().filter(move |(name, _)| name == key).map(|(_, value)| value.as_str())
    }

    /// The value of a key, if it is given.
    pub fn get<'a>(&'a self, key: &'a str) -> Option<&'a str> {
        self.all(key).next()
    }

    /// The value of a key, or what stands for it.
    pub fn or<'a>(&'a self, key: &'a str, otherwise: &'a str) -> &'a str {
        self.get(key).unwrap_or(otherwise)
    }

    /// The value of a key that is needed here, if not everywhere; what to say where it is missing.
    pub fn need<'a>(&'a self, key: &'a str, missing: fn() -> Message) -> Result<&'a str, Failure> {
        self.get(key).ok_or_else(|| Failure::new(Exit::Usage, missing()))
    }

    /// The sheet, if one is given.
    pub fn sheet(&self) -> Option<&Specs> {
        self.sheet.as_ref()
    }

    /// A key's value in a unit's quantity, or `otherwise`.
    pub fn quantity<T>(&self, key: &str, unit: Unit, otherwise: &str) -> Result<T, Failure>
    where
        T: TryFrom<Measure, Error = TradeError>,
    {
        quantity(key, self.or(key, otherwise), unit)
    }

    /// A key's yes or no; yes unless said otherwise.
    pub fn yes(&self, key: &str) -> Result<bool, Failure> {
        match self.or(key, "yes") {
            "yes" => Ok(true),
            "no" => Ok(false),
            other => Err(wrong(key, other, cli_yes_or_no())),
        }
    }
}

/// A measure with its unit, which must be typed.
pub fn measure(key: &str, text: &str, unit: Unit) -> Result<Measure, Failure> {
    if parse_number(text).is_ok() {
        return Err(wrong(key, text, cli_unit_missing(format!("{text}{unit}"))));
    }
    parse_measure(text, unit).map_err(|error| wrong(key, text, error.message()))
}

/// A value of one quantity with its unit.
pub fn quantity<T>(key: &str, text: &str, unit: Unit) -> Result<T, Failure>
where
    T: TryFrom<Measure, Error = TradeError>,
{
    measure(key, text, unit)?.try_into().map_err(|error: TradeError| wrong(key, text, error.message()))
}

/// A number without a unit.
pub fn number(key: &str, text: &str) -> Result<f64, Failure> {
    parse_number(text).map_err(|error| wrong(key, text, error.message()))
}

/// A whole number from 0 on.
pub fn whole<T: FromStr>(key: &str, text: &str) -> Result<T, Failure> {
    text.parse().map_err(|_| wrong(key, text, cli_whole_number()))
}

/// A number of percent, with its sign or without.
pub fn percent(key: &str, text: &str) -> Result<f64, Failure> {
    number(key, text.strip_suffix('%').unwrap_or(text))
}

/// A day, written as `2026-06-30`.
pub fn day(key: &str, text: &str) -> Result<NaiveDate, Failure> {
    // One spelling only, so that no day can be taken for a month.
    let day = text.parse::<NaiveDate>().ok().filter(|day| day.to_string() == text);
    day.ok_or_else(|| wrong(key, text, cli_day_form()))
}

/// A time after the beginning, with its unit.
pub fn moment(key: &str, text: &str) -> Result<Moment, Failure> {
    let after: Duration = quantity(key, text, Unit::Minute)?;
    // At most 10¹² minutes, so this fits.
    Ok(Moment::from_ms((after.minutes() * 60_000.0).round() as i64))
}

/// The parts of a value between its colons, so many of them; `form` says how to write it.
pub fn parts<'a, const N: usize>(key: &str, text: &'a str, form: Message) -> Result<[&'a str; N], Failure> {
    let parts: Vec<&str> = text.split(':').collect();
    parts.try_into().map_err(|_| wrong(key, text, form))
}
