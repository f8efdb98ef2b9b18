//! What an entry turned out to be. Each kind has one file: how its value is judged and what is said about it; `kind` says
//! what each has to answer.
//!
//! [`classify`] is total: every value gives a class that `Ask::classes` lists, or a refusal that says what to enter
//! instead. A class that keeps the step in progress (too hot, short, unclear) is no refusal: it is a fact.

mod authorization;
mod balance;
mod choice;
mod coil;
mod coils;
mod cool_down;
mod count;
pub(crate) mod decision;
mod estimate;
mod kind;
mod level;
mod note;
mod past;
mod photo;
mod reading;
mod scan;
mod several;
mod sign_off;
mod timer;
mod torque;
mod worked_out;

use panside_journal::Stamp;
use panside_procedure::format::{Ask, Checklist};
use panside_trade::TradeError;
use panside_trade::measure::Measure;
use panside_trade::number::parse_number;
use panside_trade::units::Unit;
use serde::Serialize;

pub use authorization::AuthorizationResult;
pub use balance::BalanceResult;
pub use coil::CoilJudged;
pub use coils::{CoilsJudged, NamedResult};
pub use cool_down::CoolDownResult;
pub use decision::{DecidedBy, DecisionResult};
pub use level::LevelJudged;
pub use past::Past;
pub use reading::ReadingResult;
pub use torque::TorqueJudged;
pub use worked_out::WorkedOut;

use kind::Kind;

pub(crate) use authorization::{answered, estimate_of};
pub(crate) use reading::{Limit, is_resistance, limits};

use crate::command::Refusal;
use crate::message::{self, Arg, Message, as_said, entry_no_sheet_value, refused_no_reason};
use crate::people::Names;
use crate::sheet::Specs;
use crate::value::{Accounted, EntryValue};

/// How far a temperature of fluid, by scan tool or probe, is taken to be off to both sides, in K. Our choice.
const THERMOMETER_OFF_K: f64 = 2.0;

/// What is around an entry when it is judged.
#[derive(Debug, Clone, Copy)]
pub struct Context<'a> {
    /// The checklist, for what it calls items and keys of the sheet.
    pub checklist: &'a Checklist,
    /// When the step was begun; nothing while it is not.
    pub begun: Option<&'a Stamp>,
    /// When the value was taken: now, or when the work was done that is corrected afterwards.
    pub at: &'a Stamp,
    /// Minutes that the shop's wall clock is ahead of UTC.
    pub utc_offset_min: i32,
    /// What people are called.
    pub names: Names<'a>,
    /// The id of the step that the entry belongs to.
    pub step: &'a str,
    /// The id of the entry.
    pub entry: &'a str,
    /// What happened before. Nothing: nobody knows, and an entry is judged by itself.
    pub past: Option<Past<'a>>,
}

/// What a value turned out to be.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Classified {
    /// Its class: one of `Ask::classes`.
    pub class: String,
    /// The value as it is to be kept: as typed, without spaces around it.
    pub value: EntryValue,
    /// How it came about, where something was calculated.
    pub worked_out: Option<WorkedOut>,
    /// What to say about it, the most important first; never empty.
    pub said: Vec<Message>,
}

impl Classified {
    fn new(class: &str, value: EntryValue, said: Message) -> Classified {
        Classified { class: class.to_owned(), value, worked_out: None, said: vec![said] }
    }

    /// A value with how it came about.
    fn worked_out(
        class: &str,
        value: EntryValue,
        said: Vec<Message>,
        how: impl Into<WorkedOut>,
    ) -> Classified {
        Classified { class: class.to_owned(), value, worked_out: Some(how.into()), said }
    }
}

/// Judges a value.
///
/// # Errors
/// A refusal for a value that is none: of another kind or quantity, with letters in a number, a word that is not
/// among the answers, a wait that is not over.
pub fn classify(
    ask: &Ask,
    specs: &Specs,
    value: &EntryValue,
    context: &Context<'_>,
) -> Result<Classified, Refusal> {
    of(ask).classify(specs, value, context)
}

/// The kind of an entry.
pub(crate) fn of(ask: &Ask) -> &dyn Kind {
    match ask {
        Ask::SignOff(asked) => asked,
        Ask::Reading(asked) => asked,
        Ask::Level(asked) => asked,
        Ask::Coil(asked) => asked,
        Ask::Coils(asked) => asked,
        Ask::CoolDown(asked) => asked,
        Ask::Balance(asked) => asked,
        Ask::Count(asked) => asked,
        Ask::Torque(asked) => asked,
        Ask::Photo(asked) => asked,
        Ask::Choice(asked) => asked,
        Ask::Several(asked) => asked,
        Ask::Decision(asked) => asked,
        Ask::Scan(asked) => asked,
        Ask::Timer(asked) => asked,
        Ask::Note(asked) => asked,
        Ask::Estimate(asked) => asked,
        Ask::Authorization(asked) => asked,
    }
}

/// A value in few words; its class where that says as much.
#[must_use]
pub fn in_short(ask: &Ask, value: &EntryValue, class: &str, checklist: &Checklist) -> Arg {
    let short = of(ask).in_short(value, checklist);
    short.map_or_else(|| class_label(Some(ask), class).into(), Arg::Text)
}

/// What a class is called; the class itself where the checklist does not ask for such an entry.
#[must_use]
pub fn class_label(ask: Option<&Ask>, class: &str) -> Message {
    match ask {
        Some(Ask::Choice(asked)) => as_said(asked.label(class)),
        Some(Ask::Decision(asked)) => as_said(asked.label(class)),
        Some(ask) => message::class_label(ask.kind(), class),
        None => as_said(class),
    }
}

/// Milliseconds left of a timer, for the view.
pub(crate) use timer::ms_left;

/// A number and its unit as they were typed.
fn measure(value: &str, unit: &str) -> Result<Measure, Refusal> {
    let typed = parse_number(value).and_then(|number| Measure::new(number, unit.parse::<Unit>()?));
    typed.map_err(|error| error.message().into())
}

/// A value of one quantity as it was typed.
fn quantity<T>(value: &str, unit: &str) -> Result<T, Refusal>
where
    T: TryFrom<Measure, Error = TradeError>,
{
    T::try_from(measure(value, unit)?).map_err(|error| error.message().into())
}

/// A measure of the sheet in its quantity.
fn of_sheet<T>(specs: &Specs, key: &str) -> Result<T, Refusal>
where
    T: TryFrom<Measure, Error = TradeError>,
{
    let measure = specs.measure(key).ok_or_else(|| no_sheet_value(key))?;
    T::try_from(measure).map_err(|error| error.message().into())
}

/// What somebody says and stands for, without spaces around it, and what they are called.
pub(crate) fn named<'a>(said: &Accounted, names: Names<'a>) -> Result<(Accounted, &'a str), Refusal> {
    let kept = Accounted { reason: said.reason.trim().to_owned(), by: said.by };
    if kept.reason.is_empty() {
        return Err(refused_no_reason().into());
    }
    Ok((kept, names.name(said.by)?))
}

/// A class of the trade's by the name it is written with, for a sentence to choose by.
fn name_of(class: impl Serialize) -> String {
    serde_json::to_value(class).ok().and_then(|name| name.as_str().map(str::to_owned)).unwrap_or_default()
}

/// For a key that the sheet should have: it was checked when the job was started.
fn no_sheet_value(key: &str) -> Refusal {
    entry_no_sheet_value(key).into()
}

#[cfg(test)]
mod tests;
