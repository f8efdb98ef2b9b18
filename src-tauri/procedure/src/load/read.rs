//! Bytes into the format's types. A mistake is told, the part it stands in is taken out, and reading goes on, so
//! that one mistake does not hide the next.

use std::collections::BTreeMap;

use panside_messages::{Arg, Message};
use serde::de::DeserializeOwned;
use serde_json::Value;
use serde_path_to_error::Segment;

use super::place::{Places, Spot};
use super::{LARGEST_FILE, MOST_PROBLEMS, Problem, Problems};
use crate::format::{CHECKLIST_FORMAT, Checklist, SHEET_FORMAT, Sheet};
use crate::message::*;

/// Reads a checklist; `trace` may move the places before anything is told.
pub(super) fn checklist(bytes: &[u8], trace: &dyn Fn(&mut Places)) -> Result<(Checklist, Places), Problems> {
    let Json { value, mut places, .. } = json(bytes, CHECKLIST_FORMAT)?;
    trace(&mut places);
    let checklist = typed(value, &places)?;
    Ok((checklist, places))
}

/// Reads a value into a format's type, or tells every place where it does not fit.
pub(crate) fn typed<T: DeserializeOwned>(value: Value, places: &Places) -> Result<T, Problems> {
    Reader::new(places).read(value)
}

pub(super) fn sheet(bytes: &[u8]) -> Result<Sheet, Problems> {
    let Json { value, places, .. } = json(bytes, SHEET_FORMAT)?;
    let mut reader = Reader::new(&places);
    for (key, one) in value.get("values").and_then(Value::as_object).into_iter().flatten() {
        for needed in ["source", "entered_by"] {
            let text = one.get(needed).and_then(Value::as_str);
            if text.is_some_and(|text| text.trim().is_empty()) {
                reader.problem(&format!("/values/{key}/{needed}"), problem_empty(needed));
            }
        }
    }
    reader.read(value)
}

/// A text that is JSON of the right format, not yet looked into.
pub(crate) struct Json {
    pub text: String,
    pub value: Value,
    pub places: Places,
}

/// Reads JSON of a format, within the bounds for a file.
pub(crate) fn json(bytes: &[u8], format: &str) -> Result<Json, Problems> {
    let at = |line, column, what| Problems(vec![Problem::at(Spot { file: None, line, column }, "", what)]);
    let whole = |what| at(1, 1, what);
    if bytes.len() > LARGEST_FILE {
        return Err(whole(problem_too_large(LARGEST_FILE / (1024 * 1024))));
    }
    let text = std::str::from_utf8(bytes).map_err(|error| whole(problem_not_utf8(error.valid_up_to())))?;
    let value: Value = serde_json::from_str(text).map_err(|error| {
        at(error.line(), error.column(), problem_not_json(without_place(&error.to_string())))
    })?;
    let places = Places::of(text);
    match value.get("format").and_then(Value::as_str) {
        Some(found) if found == format => Ok(Json { text: text.to_owned(), value, places }),
        Some(found) => {
            let what = problem_format(found, format);
            Err(Problems(vec![Problem::at(places.find("/format"), "/format", what)]))
        }
        None => Err(whole(problem_no_format(format))),
    }
}

fn without_place(text: &str) -> &str {
    text.split(" at line ").next().unwrap_or(text)
}

struct Reader<'a> {
    places: &'a Places,
    problems: Vec<Problem>,
    /// Elements taken out, by the pointer of their array: later ones keep the number they have in the file.
    taken_out: BTreeMap<String, Vec<usize>>,
}

impl<'a> Reader<'a> {
    fn new(places: &'a Places) -> Self {
        let mut reader = Reader { places, problems: Vec::new(), taken_out: BTreeMap::new() };
        for pointer in &places.twice {
            reader.problem(pointer, problem_key_twice());
        }
        reader
    }

    fn problem(&mut self, place: &str, what: Message) {
        self.problems.push(Problem::at(self.places.find(place), place, what));
    }

    fn read<T: DeserializeOwned>(mut self, mut value: Value) -> Result<T, Problems> {
        while self.problems.len() < MOST_PROBLEMS {
            match serde_path_to_error::deserialize::<_, T>(&value) {
                Ok(read) if self.problems.is_empty() => return Ok(read),
                Ok(_) => break,
                Err(error) => {
                    if !self.take_out(&mut value, &error) {
                        break;
                    }
                }
            }
        }
        self.problems.sort();
        Err(Problems(self.problems))
    }

    /// Tells a mistake and takes the part out that it stands in. False where nothing is left to take out.
    fn take_out(&mut self, value: &mut Value, error: &serde_path_to_error::Error<serde_json::Error>) -> bool {
        let text = error.inner().to_string();
        let text = without_place(&text);
        let mut path: Vec<Step> = error.path().iter().filter_map(Step::of).collect();
        if let Some(field) = quoted(text).filter(|_| text.starts_with("unknown field"))
            && path.last() != Some(&Step::Key(field.to_owned()))
        {
            path.push(Step::Key(field.to_owned()));
        }
        // What this very reading took out is not told as missing.
        let pointer = self.pointer_in_file(&path);
        let missing = quoted(text).filter(|_| text.starts_with("missing field"));
        let own_doing = missing.is_some_and(|field| {
            let below = format!("{pointer}/{field}");
            self.problems.iter().any(|problem| problem.place == below)
        });
        if !own_doing {
            self.problem(&pointer, misfit(text));
        }
        if missing.is_some() {
            // A part that lacks something can only be taken out as a whole, with the element it belongs to.
            while matches!(path.last(), Some(Step::Key(_))) {
                path.pop();
            }
        }
        self.remove(value, &path)
    }

    /// Removes the part at a path, or, where it cannot be reached, the part around it.
    fn remove(&mut self, value: &mut Value, path: &[Step]) -> bool {
        let Some((last, parents)) = path.split_last() else { return false };
        let array = self.pointer_in_file(parents);
        let parent = parents.iter().try_fold(&mut *value, |value, step| match step {
            Step::Key(key) => value.get_mut(key),
            Step::Index(index) => value.get_mut(index),
        });
        match (parent, last) {
            (Some(Value::Object(fields)), Step::Key(key)) if fields.contains_key(key) => {
                fields.remove(key);
                true
            }
            (Some(Value::Array(elements)), Step::Index(index)) if *index < elements.len() => {
                let in_file = self.index_in_file(&array, *index);
                elements.remove(*index);
                let taken = self.taken_out.entry(array).or_default();
                taken.push(in_file);
                taken.sort_unstable();
                true
            }
            _ => self.remove(value, parents),
        }
    }

    fn index_in_file(&self, array: &str, index: usize) -> usize {
        let taken = self.taken_out.get(array).map_or(&[][..], Vec::as_slice);
        taken.iter().fold(index, |index, &gone| if gone <= index { index + 1 } else { index })
    }

    /// The pointer that a path has in the file, before anything was taken out.
    fn pointer_in_file(&self, path: &[Step]) -> String {
        path.iter().fold(String::new(), |pointer, step| match step {
            Step::Key(key) => format!("{pointer}/{key}"),
            Step::Index(index) => format!("{pointer}/{}", self.index_in_file(&pointer, *index)),
        })
    }
}

/// A step down into a JSON value.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Step {
    Key(String),
    Index(usize),
}

impl Step {
    fn of(segment: &Segment) -> Option<Step> {
        match segment {
            Segment::Map { key } => Some(Step::Key(key.clone())),
            Segment::Enum { variant } => Some(Step::Key(variant.clone())),
            Segment::Seq { index } => Some(Step::Index(*index)),
            Segment::Unknown => None,
        }
    }
}

/// The first thing in backticks.
fn quoted(text: &str) -> Option<&str> {
    text.split('`').nth(1)
}

/// What serde says, as a sentence that says what to do where that is known.
fn misfit(text: &str) -> Message {
    let mut names = text.split('`').skip(1).step_by(2);
    let Some(field) = names.next() else { return problem_misfit(text) };
    if text.starts_with("missing field") {
        return problem_missing(field);
    }
    let is_field = text.starts_with("unknown field");
    if !is_field && !text.starts_with("unknown variant") {
        return problem_misfit(text);
    }
    let known: Vec<String> = names.map(str::to_owned).collect();
    let near = known.iter().min_by_key(|known| strsim::levenshtein(known, field));
    match near.filter(|near| strsim::levenshtein(near, field) <= 2) {
        Some(near) if is_field => problem_no_field_near(field, near),
        Some(near) => problem_no_variant_near(field, near),
        None if is_field => problem_no_field(field, Arg::List(known)),
        None => problem_no_variant(field, Arg::List(known)),
    }
}
