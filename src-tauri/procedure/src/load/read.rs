//! Bytes into the format's types. Each part is read by itself, so that one mistake does not hide the next.

use serde::de::DeserializeOwned;
use serde_json::{Map, Value};

use super::place::Places;
use super::{LARGEST_FILE, Problem, Problems};
use crate::format::{CHECKLIST_FORMAT, Checklist, SHEET_FORMAT, Sheet};

pub(super) fn checklist(bytes: &[u8]) -> Result<(Checklist, Places), Problems> {
    let (mut value, places) = json(bytes, CHECKLIST_FORMAT)?;
    let mut reader = Reader { places: &places, problems: twice(&places) };
    for list in ["facts", "conditions", "gates", "follows", "items", "sign_offs", "moves", "dangers"] {
        match list {
            "facts" => reader.elements::<crate::format::Fact>(&value, "", list),
            "conditions" => reader.elements::<crate::format::Condition>(&value, "", list),
            "gates" => reader.elements::<crate::format::Gate>(&value, "", list),
            "follows" => reader.elements::<crate::format::Follow>(&value, "", list),
            "items" => reader.elements::<crate::format::Item>(&value, "", list),
            "sign_offs" => reader.elements::<crate::format::SignOff>(&value, "", list),
            "moves" => reader.elements::<crate::format::Move>(&value, "", list),
            _ => reader.elements::<crate::format::Danger>(&value, "", list),
        }
    }
    reader.steps(&mut value);
    reader.whole::<Checklist>(value).map(|checklist| (checklist, places.clone()))
}

pub(super) fn sheet(bytes: &[u8]) -> Result<Sheet, Problems> {
    let (value, places) = json(bytes, SHEET_FORMAT)?;
    let mut reader = Reader { places: &places, problems: twice(&places) };
    if let Some(values) = value.get("values").and_then(Value::as_object) {
        for (key, one) in values {
            reader.one::<crate::format::sheet::SheetValue>(one, &format!("/values/{key}"));
            for needed in ["source", "entered_by"] {
                let text = one.get(needed).and_then(Value::as_str);
                if text.is_some_and(|text| text.trim().is_empty()) {
                    let message = format!("\"{needed}\" is empty: say where the value comes from and who entered it");
                    reader.problem(&format!("/values/{key}/{needed}"), message);
                }
            }
        }
    }
    reader.whole::<Sheet>(value)
}

fn json(bytes: &[u8], format: &str) -> Result<(Value, Places), Problems> {
    let whole = |message: String| {
        Problems(vec![Problem { line: 1, column: 1, place: String::new(), message }])
    };
    if bytes.len() > LARGEST_FILE {
        let size = bytes.len() / (1024 * 1024);
        return Err(whole(format!("the file has {size} MB; the most is {} MB", LARGEST_FILE / (1024 * 1024))));
    }
    let text = std::str::from_utf8(bytes).map_err(|error| {
        whole(format!("the file is not UTF-8 from byte {} on; save it as UTF-8", error.valid_up_to()))
    })?;
    let value: Value = serde_json::from_str(text).map_err(|error| {
        let message = format!("this is not JSON: {}", without_place(&error.to_string()));
        Problems(vec![Problem { line: error.line(), column: error.column(), place: String::new(), message }])
    })?;
    let places = Places::of(text);
    match value.get("format").and_then(Value::as_str) {
        Some(found) if found == format => Ok((value, places)),
        Some(found) => {
            let (line, column) = places.find("/format");
            let message = format!("the format is \"{found}\"; this version of Panside reads \"{format}\"");
            Err(Problems(vec![Problem { line, column, place: "/format".to_owned(), message }]))
        }
        None => Err(whole(format!("\"format\": \"{format}\" is missing"))),
    }
}

fn twice(places: &Places) -> Vec<Problem> {
    let problem = |pointer: &String| {
        let (line, column) = places.find(pointer);
        let message = "this key stands twice in one object; keep one".to_owned();
        Problem { line, column, place: pointer.clone(), message }
    };
    places.twice.iter().map(problem).collect()
}

fn without_place(text: &str) -> &str {
    text.split(" at line ").next().unwrap_or(text)
}

struct Reader<'a> {
    places: &'a Places,
    problems: Vec<Problem>,
}

impl Reader<'_> {
    fn problem(&mut self, place: &str, message: String) {
        let (line, column) = self.places.find(place);
        self.problems.push(Problem { line, column, place: place.to_owned(), message });
    }

    fn one<T: DeserializeOwned>(&mut self, value: &Value, place: &str) {
        if let Err(error) = T::deserialize(value) {
            self.problem(place, sentence(&error));
        }
    }

    fn elements<T: DeserializeOwned>(&mut self, value: &Value, place: &str, list: &str) {
        for (at, element) in value.get(list).and_then(Value::as_array).into_iter().flatten().enumerate() {
            self.one::<T>(element, &format!("{place}/{list}/{at}"));
        }
    }

    /// Steps and their entries, each by itself.
    fn steps(&mut self, value: &mut Value) {
        let phases = value.get_mut("phases").and_then(Value::as_array_mut);
        for (phase_at, phase) in phases.into_iter().flatten().enumerate() {
            let place = format!("/phases/{phase_at}");
            for (at, step) in phase.get("steps").and_then(Value::as_array).into_iter().flatten().enumerate() {
                let place = format!("{place}/steps/{at}");
                let before = self.problems.len();
                self.elements::<crate::format::Entry>(step, &place, "entries");
                self.elements::<crate::format::Caution>(step, &place, "cautions");
                let mut bare = step.clone();
                if self.problems.len() > before
                    && let Some(fields) = bare.as_object_mut()
                {
                    fields.remove("entries");
                    fields.remove("cautions");
                }
                self.one::<crate::format::Step>(&bare, &place);
            }
            let mut bare: Map<String, Value> = phase.as_object().cloned().unwrap_or_default();
            bare.insert("steps".to_owned(), Value::Array(Vec::new()));
            self.one::<crate::format::Phase>(&Value::Object(bare), &place);
        }
    }

    /// The whole file; a mistake here that no part showed is one of the top level.
    fn whole<T: DeserializeOwned>(mut self, value: Value) -> Result<T, Problems> {
        match T::deserialize(value) {
            Ok(read) if self.problems.is_empty() => Ok(read),
            Ok(_) => Err(Problems(self.problems)),
            Err(error) => {
                if self.problems.is_empty() {
                    self.problem("", sentence(&error));
                }
                Err(Problems(self.problems))
            }
        }
    }
}

/// What serde says, as a sentence that says what to do.
fn sentence(error: &serde_json::Error) -> String {
    let text = error.to_string();
    let text = without_place(&text);
    if text.starts_with("unknown field") {
        format!("{text}; remove it or correct its name")
    } else if text.starts_with("missing field") {
        format!("{text}; add it")
    } else {
        text.to_owned()
    }
}
