//! The checklist and its parts as files, and what is wrong with each of them and with how they are used.

use std::collections::BTreeSet;
use std::ops::Range;

use panside_messages::Message;
use serde::Deserialize;
use serde_json::Value;

use super::file_of;
use crate::format::{CHECKLIST_FORMAT, PART_FORMAT, Part, Use};
use crate::load::place::Spot;
use crate::load::read::{Json, json, typed};
use crate::load::{LARGEST_FILE, Problem, Problems};
use crate::message::*;

/// More parts than this are refused before they are read.
const MOST_PARTS: usize = 64;

/// A part as a checklist uses it.
pub(super) struct Used {
    pub json: Json,
    pub part: Part,
    pub by: Use,
    /// Where the checklist uses it, as a JSON pointer.
    pub place: String,
}

impl Used {
    /// What it brings there: `phases` or `steps`.
    pub fn brings(&self) -> &'static str {
        if self.part.phases.is_empty() { "steps" } else { "phases" }
    }

    /// A problem in its file.
    pub fn problem(&self, place: &str, what: Message) -> Problem {
        let spot = Spot { file: Some(file_of(&self.by.part)), ..self.json.places.find(place) };
        Problem::at(spot, place, what)
    }
}

/// Reads the checklist and every part it uses, in the order of use.
pub(super) fn all(
    checklist: &[u8],
    part: &dyn Fn(&str) -> Option<Vec<u8>>,
) -> Result<(Json, Vec<Used>), Problems> {
    let own = json(checklist, CHECKLIST_FORMAT)?;
    let mut problems = Vec::new();
    let mut used: Vec<Used> = Vec::new();
    let mut names = BTreeSet::new();
    let mut size = checklist.len();
    for place in uses(&own.value) {
        let bytes = use_at(&own, &place, &mut names).and_then(|by| {
            let bytes = part(&by.part).ok_or_else(|| part_no_file(&by.part, file_of(&by.part)))?;
            size += bytes.len();
            if size > LARGEST_FILE {
                return Err(part_together(LARGEST_FILE / (1024 * 1024)));
            }
            Ok((by, bytes))
        });
        match bytes {
            Ok((by, bytes)) => match read(&bytes, by, place) {
                Ok(one) => {
                    problems.extend(settings(&own, &one));
                    used.push(one);
                }
                Err(found) => problems.extend(found.0),
            },
            Err(what) => problems.push(Problem::at(own.places.find(&place), &place, what)),
        }
        if size > LARGEST_FILE || names.len() > MOST_PARTS {
            break;
        }
    }
    if !used.is_empty() {
        // Joining copies one of two that have the same key, so that loading could not tell it any more.
        let twice = own.places.twice.iter();
        problems.extend(twice.map(|place| Problem::at(own.places.find(place), place, problem_key_twice())));
    }
    if problems.is_empty() { Ok((own, used)) } else { Err(sorted(problems)) }
}

pub(super) fn sorted(mut problems: Vec<Problem>) -> Problems {
    problems.sort();
    Problems(problems)
}

/// Where a checklist uses parts, in its order.
fn uses(value: &Value) -> Vec<String> {
    let mut found = Vec::new();
    for (at, phase) in elements(value, "phases") {
        if phase.get("use").is_some() {
            found.push(format!("/phases/{at}"));
        }
        let steps = elements(phase, "steps").filter(|(_, step)| step.get("use").is_some());
        found.extend(steps.map(|(step, _)| format!("/phases/{at}/steps/{step}")));
    }
    found
}

/// The elements of a list; none where there is no list.
pub(super) fn elements<'a>(value: &'a Value, list: &str) -> impl Iterator<Item = (usize, &'a Value)> {
    value.get(list).and_then(Value::as_array).into_iter().flatten().enumerate()
}

/// Which part is used there, or why none is.
fn use_at(own: &Json, place: &str, names: &mut BTreeSet<String>) -> Result<Use, Message> {
    let by = Use::deserialize(own.value.pointer(place).unwrap_or(&Value::Null))
        .map_err(|error| part_use(error.to_string()))?;
    let proper = |char: char| char.is_ascii_lowercase() || char.is_ascii_digit() || char == '-';
    if by.part.is_empty() || by.part.len() > 60 || !by.part.chars().all(proper) {
        return Err(part_name(by.part));
    }
    if !names.insert(by.part.clone()) {
        return Err(part_again(by.part));
    }
    if names.len() > MOST_PARTS {
        return Err(part_too_many(MOST_PARTS));
    }
    Ok(by)
}

/// Reads a part by itself.
fn read(bytes: &[u8], by: Use, place: String) -> Result<Used, Problems> {
    let file = file_of(&by.part);
    let in_file = |mut problems: Problems| {
        problems.0.iter_mut().for_each(|problem| problem.file = Some(file.clone()));
        problems
    };
    let json = json(bytes, PART_FORMAT).map_err(in_file)?;
    let steps = elements(&json.value, "steps").filter(|(_, step)| step.get("use").is_some());
    let mut inner = uses(&json.value).into_iter().chain(steps.map(|(at, _)| format!("/steps/{at}")));
    if let Some(place) = inner.next() {
        let found = Problem::at(json.places.find(&place), &place, part_in_part());
        return Err(in_file(Problems(vec![found])));
    }
    drop(inner);
    let part: Part = typed(json.value.clone(), &json.places).map_err(in_file)?;
    let used = Used { json, part, by, place };
    let (name, part) = (&used.by.part, &used.part);
    if part.id != *name {
        return Err(Problems(vec![used.problem("/id", part_id(&part.id, name))]));
    }
    let (only, is, is_not) = match used.place.matches('/').count() {
        2 => (part_phases_only(), part.phases.len(), part.steps.len()),
        _ => (part_steps_only(), part.steps.len(), part.phases.len()),
    };
    if is == 0 || is_not > 0 {
        return Err(Problems(vec![used.problem("", only)]));
    }
    Ok(used)
}

/// What does not fit between the settings of a part and the words that the checklist gives for them.
fn settings(own: &Json, used: &Used) -> Vec<Problem> {
    let Used { json, part, by, place } = used;
    let mut problems = Vec::new();
    let read = set_texts(json);
    let known = json.places.by_byte();
    for (bytes, name) in read.iter().filter(|(_, name)| !part.settings.contains_key(name)).take(100) {
        let at = known.get(&bytes.start).copied().unwrap_or_default();
        let spot = Spot { file: Some(file_of(&by.part)), line: at.line, column: at.column };
        problems.push(Problem::at(spot, "/settings", part_no_setting(name)));
    }
    let read: BTreeSet<&String> = read.iter().map(|(_, name)| name).collect();
    for (name, meaning) in &part.settings {
        if !read.contains(name) {
            problems.push(used.problem(&format!("/settings/{name}"), part_setting_idle(name)));
        }
        if !by.with.contains_key(name) {
            let what = part_setting_wanted(&by.part, name, meaning);
            problems.push(Problem::at(own.places.find(place), place, what));
        }
    }
    for name in by.with.keys().filter(|name| !part.settings.contains_key(*name)) {
        let place = format!("{place}/with/{name}");
        let what = part_no_such_setting(&by.part, name);
        problems.push(Problem::at(own.places.find(&place), &place, what));
    }
    problems
}

/// The texts of a part that are just `$name`, by their bytes, with the name.
pub(super) fn set_texts(json: &Json) -> Vec<(Range<usize>, String)> {
    let begins = json.places.by_byte();
    let set = begins.keys().filter_map(|&at| {
        let rest = json.text[at..].strip_prefix("\"$")?;
        let length = rest.find(|char: char| !is_word(char))?;
        let name = (length > 0 && rest[length..].starts_with('"')).then(|| rest[..length].to_owned())?;
        Some((at..at + length + 3, name))
    });
    set.collect()
}

/// The name in a text that is just `$name`.
pub(super) fn setting(text: &str) -> Option<&str> {
    text.strip_prefix('$').filter(|name| !name.is_empty() && name.chars().all(is_word))
}

fn is_word(char: char) -> bool {
    char.is_ascii_lowercase() || char.is_ascii_digit() || char == '_'
}
