//! The walk script format `panside-walk/1`: who does what, when, and what must be refused.

use std::collections::BTreeMap;
use std::path::Path;

use chrono::{NaiveDate, TimeDelta};
use panside_bay::enter::{Actor, Command, Job, PersonId};
use panside_messages::Message;
use panside_procedure::format::Role;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use serde_json::Value;

use crate::exit::{Exit, Failure};
use crate::message::*;

/// The value of `format` in a walk script.
pub const FORMAT: &str = "panside-walk/1";

/// A whole script.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Script {
    /// Always `panside-walk/1`.
    pub format: String,
    /// What it walks.
    pub title: String,
    /// True for an invented job.
    #[serde(default)]
    pub demo: bool,
    /// The checklist file, relative to the script.
    pub checklist: String,
    /// The spec sheet file, relative to the script.
    pub sheet: String,
    /// The language in which the checklist is shown, as a BCP 47 tag: `texts/ID.LANGUAGE.texts.json` beside it has its
    /// texts. Absent: in its own words.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub language: Option<String>,
    /// Number of the repair order.
    pub repair_order: String,
    /// What the job is called.
    pub label: String,
    /// When the walk begins, as RFC 3339 (`2026-03-02T08:00:00Z`). Times go on by `after_min` only.
    pub starts_at: String,
    /// Minutes that the shop's wall clock is ahead of UTC.
    #[serde(default)]
    pub utc_offset_min: i32,
    /// How the vehicle comes in, where that is not the first value.
    #[serde(default)]
    pub conditions: BTreeMap<String, String>,
    /// The people, by a short name that lines use.
    pub people: BTreeMap<String, Person>,
    /// Photo files by name, relative to the script. A name that is not here takes the file of `--photo`.
    #[serde(default)]
    pub photos: BTreeMap<String, String>,
    /// What is done, in order.
    pub lines: Vec<Line>,
}

/// A person of the script.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Person {
    /// Their id in the shop, a UUID: the same person has the same one in every script.
    #[schemars(with = "String")]
    pub id: PersonId,
    /// What they are called.
    pub name: String,
    /// What they are, at least one; they act as the first.
    pub roles: Vec<Role>,
    /// They lead the shop.
    #[serde(default)]
    pub lead: bool,
}

impl Person {
    /// The person as they act.
    pub fn acts(&self) -> Option<Actor> {
        Some(Actor { id: self.id, role: *self.roles.first()? })
    }
}

/// One line: one command.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Line {
    /// Who asks; one of `people`. Absent: as in the line before.
    #[serde(default)]
    pub who: Option<String>,
    /// Minutes that pass before it.
    #[serde(default)]
    pub after_min: f64,
    /// The command, as the window would send it, but for three things. `{"photo_file": "NAME"}` in place of a value takes in
    /// a photo. Who signs, or says a reason, stands by one of `people`: `"by": "tech"`. What was found,
    /// asked or taken off stands by its words, in place of the number of its event: `"asked": "nuts rusted solid"`.
    #[serde(rename = "do")]
    pub command: Value,
    /// The refusal that must come: a message id. Absent: it must be taken.
    #[serde(default)]
    pub refused: Option<String>,
    /// Why this line is here.
    #[serde(default)]
    pub note: Option<String>,
}

impl Line {
    /// How long it is waited before it.
    pub fn wait_ms(&self) -> u32 {
        (self.after_min * 60_000.0).round() as u32
    }
}

impl Script {
    /// Moves the days of every tool's calibration by so many days. A day that can't be read stays, for the core to
    /// refuse.
    pub fn move_calibrations(&mut self, days: i64) {
        self.lines.iter_mut().for_each(|line| move_calibrations(&mut line.command, days));
    }
}

fn move_calibrations(value: &mut Value, days: i64) {
    for name in ["calibrated_on", "calibration_due"] {
        if let Some(day) = value.get_mut(name)
            && let Some(read) = day.as_str().and_then(|day| day.parse::<NaiveDate>().ok())
            && let Some(moved) = TimeDelta::try_days(days).and_then(|by| read.checked_add_signed(by))
        {
            *day = moved.to_string().into();
        }
    }
    match value {
        Value::Array(parts) => parts.iter_mut().for_each(|part| move_calibrations(part, days)),
        Value::Object(parts) => parts.values_mut().for_each(|part| move_calibrations(part, days)),
        _ => {}
    }
}

/// Reads a script and sees that its lines name people and are commands.
pub fn read(path: &Path) -> Result<Script, Failure> {
    let wrong = |what: Message| Failure::new(Exit::DoesNotLoad, cli_script(path, what));
    let wrong_line = |at: usize, what: Message| wrong(cli_script_line(at + 1, what));
    let bytes = crate::exit::read_document(path)?;
    let script: Script =
        serde_json::from_slice(&bytes).map_err(|error| wrong(cli_script_json(error.to_string())))?;
    if script.format != FORMAT {
        return Err(wrong(cli_script_format(&script.format, FORMAT)));
    }
    if let Some((key, _)) = script.people.iter().find(|(_, person)| person.roles.is_empty()) {
        return Err(wrong(cli_script_no_role(key)));
    }
    for (at, line) in script.lines.iter().enumerate() {
        if let Some(who) = &line.who
            && !script.people.contains_key(who)
        {
            return Err(wrong_line(at, cli_script_nobody(who)));
        }
        if let Some(other) = people_in(&mut line.command.clone(), &script.people) {
            return Err(wrong_line(at, cli_script_nobody(other)));
        }
        if !(0.0..=7.0 * 24.0 * 60.0).contains(&line.after_min) {
            return Err(wrong_line(at, cli_script_minutes()));
        }
    }
    Ok(script)
}

/// Puts the id in the place of each person who signs or says a reason. Answers a name that nobody in `people` has.
fn people_in(value: &mut Value, people: &BTreeMap<String, Person>) -> Option<String> {
    // What else has a "by", such as the probe that a temperature was read by, has neither of these beside it.
    if (value.get("sign").is_some() || value.get("reason").is_some())
        && let Some(by) = value.get_mut("by")
        && let Some(key) = by.as_str()
    {
        let Some(person) = people.get(key) else { return Some(key.to_owned()) };
        *by = person.id.to_string().into();
    }
    match value {
        Value::Array(parts) => parts.iter_mut().find_map(|part| people_in(part, people)),
        Value::Object(parts) => parts.values_mut().find_map(|part| people_in(part, people)),
        _ => None,
    }
}

/// Puts the number of its event in the place of the words of what was found, asked or taken off. Answers words that
/// nothing has.
pub fn numbers_in(command: &mut Value, job: &Job) -> Option<String> {
    let (name, body) = command.as_object_mut()?.iter_mut().next()?;
    let field = match name.as_str() {
        "dealt_with" | "ask_customer" => "found",
        "answer" | "go_on_without" => "asked",
        "piece_back" | "piece_gone" => "piece",
        "take_back" => "of",
        _ => return None,
    };
    let words = body.get(field)?.as_str()?.to_owned();
    let all = &job.turned_up;
    let found = all.found.iter().map(|one| (&one.found.text, one.mark.seq));
    let asked = all.asked.iter().map(|one| (&one.asked.text, one.mark.seq));
    let pieces = all.pieces.iter().map(|one| (&one.piece.name, one.mark.seq));
    let numbers = |of: &str| match of {
        "found" => found.clone().collect(),
        "asked" => asked.clone().collect(),
        "piece" => pieces.clone().collect(),
        _ => found.clone().chain(asked.clone()).chain(pieces.clone()).collect::<Vec<_>>(),
    };
    let number = numbers(field).into_iter().filter(|(text, _)| **text == words).map(|(_, seq)| seq).max();
    match number {
        Some(seq) => {
            body[field] = seq.into();
            None
        }
        None => Some(words),
    }
}

/// The command of a line, once its photos are taken in.
pub fn command(
    path: &Path,
    line: &Line,
    number: usize,
    mut value: Value,
    people: &BTreeMap<String, Person>,
) -> Result<Command, Failure> {
    people_in(&mut value, people);
    serde_json::from_value(value).map_err(|error| {
        let what = cli_script_no_command(line.command.to_string(), error.to_string());
        Failure::new(Exit::DoesNotLoad, cli_script(path, cli_script_line(number, what)))
    })
}
