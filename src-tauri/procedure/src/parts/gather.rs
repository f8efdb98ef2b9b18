//! What parts add to the lists of a checklist, and what stands in two places.

use std::collections::BTreeMap;
use std::ops::Range;

use serde_json::Value;

use super::file_of;
use super::read::{Used, elements, setting, sorted};
use crate::load::read::Json;
use crate::load::{Problem, Problems};
use crate::message::*;

/// The lists that parts add to.
pub(super) const LISTS: [&str; 8] =
    ["facts", "conditions", "gates", "follows", "items", "sign_offs", "vehicle_actions", "dangers"];

/// The fields with names as keys that parts add to.
pub(super) const NAMED: [&str; 2] = ["sheet_keys", "terms"];

/// Something that a part adds: its key where the field has names as keys, the part, and its bytes there.
#[derive(Debug, Clone)]
pub(super) struct Added {
    pub key: Option<String>,
    pub part: usize,
    pub bytes: Range<usize>,
}

/// What parts add, by field.
pub(super) fn gather(own: &Json, parts: &[Used]) -> Result<BTreeMap<&'static str, Vec<Added>>, Problems> {
    let mut gather = Gather { own, parts, added: BTreeMap::new(), problems: Vec::new() };
    for list in LISTS {
        gather.list(list);
    }
    for field in NAMED {
        let known = gather.named(field);
        if field == "terms" {
            gather.wanted(&known);
        }
    }
    if gather.problems.is_empty() { Ok(gather.added) } else { Err(sorted(gather.problems)) }
}

struct Gather<'a> {
    own: &'a Json,
    parts: &'a [Used],
    added: BTreeMap<&'static str, Vec<Added>>,
    problems: Vec<Problem>,
}

/// Something with a name: the part's file that has it, nothing for the checklist; and what it says with the settings
/// put in.
type Known = BTreeMap<String, (Option<String>, Value)>;

impl Gather<'_> {
    fn list(&mut self, list: &'static str) {
        let mut known = Known::new();
        for (_, element) in elements(&self.own.value, list) {
            if let Some(id) = element.get("id").and_then(Value::as_str) {
                known.insert(id.to_owned(), (None, element.clone()));
            }
        }
        for (part, used) in self.parts.iter().enumerate() {
            for (at, element) in elements(&used.json.value, list) {
                let id = element.get("id").and_then(Value::as_str).map(str::to_owned);
                self.add(list, part, format!("/{list}/{at}"), id, element, &mut known);
            }
        }
    }

    fn named(&mut self, field: &'static str) -> Known {
        let mut known = Known::new();
        let fields = |value: &Value| value.get(field).and_then(Value::as_object).cloned().unwrap_or_default();
        for (name, text) in fields(&self.own.value) {
            known.insert(name, (None, text));
        }
        for (part, used) in self.parts.iter().enumerate() {
            for (name, text) in fields(&used.json.value) {
                self.add(field, part, format!("/{field}/{name}"), Some(name), &text, &mut known);
            }
        }
        known
    }

    /// Terms that parts want and nobody has.
    fn wanted(&mut self, known: &Known) {
        for used in self.parts {
            for (name, meaning) in used.part.wants.iter().filter(|(name, _)| !known.contains_key(*name)) {
                let what = part_term_wanted(name, meaning);
                self.problems.push(used.problem(&format!("/wants/{name}"), what));
            }
        }
    }

    /// Adds what a part has, unless the same is there already.
    fn add(
        &mut self,
        field: &'static str,
        part: usize,
        place: String,
        id: Option<String>,
        value: &Value,
        known: &mut Known,
    ) {
        let used = &self.parts[part];
        let value = settled(value, &used.by.with);
        match id.as_ref().and_then(|id| Some((id, known.get(id)?))) {
            Some((_, (_, same))) if *same == value => return,
            Some((id, (file, _))) => {
                let what = file.as_ref().map_or_else(|| part_in_checklist(id), |file| part_in_file(file, id));
                self.problems.push(used.problem(&place, what));
                return;
            }
            None => {}
        }
        let key = id.clone().filter(|_| NAMED.contains(&field));
        if let Some(id) = id {
            known.insert(id, (Some(file_of(&used.by.part)), value));
        }
        if let Some(bytes) = used.json.places.bytes(&place) {
            self.added.entry(field).or_default().push(Added { key, part, bytes });
        }
    }
}

/// A value with the words of the checklist in place of the settings.
fn settled(value: &Value, with: &BTreeMap<String, String>) -> Value {
    match value {
        Value::String(text) => {
            let word = setting(text).and_then(|name| with.get(name));
            Value::String(word.unwrap_or(text).clone())
        }
        Value::Array(list) => list.iter().map(|value| settled(value, with)).collect(),
        Value::Object(fields) => {
            fields.iter().map(|(name, value)| (name.clone(), settled(value, with))).collect()
        }
        other => other.clone(),
    }
}
