//! What is said, in English, and held in another language: there nothing is English but what stands in the files.

use std::collections::BTreeSet;

use panside_messages::{Arg, Language, Message, Speaker};
use panside_procedure::Problem;
use panside_procedure::format::{
    CHECKLIST_FORMAT, Checklist, PART_FORMAT, Part, SHEET_FORMAT, Sheet, TEXTS_FORMAT, Texts,
};
use schemars::schema_for;
use serde_json::Value;

/// A message as it stands within a sentence.
pub fn said(message: &Message) -> String {
    Speaker::english().within(message)
}

/// What is wrong, without the place.
pub fn what(problem: &Problem) -> String {
    said(&problem.what)
}

/// Every problem is said in another language, with its place.
pub fn is_translated(problems: &[Problem], files: &[&str]) {
    let data = Data::of(files);
    problems.iter().for_each(|problem| data.is_all_that_stays(&problem.message()));
}

/// The words of files and of their formats: they are the same in every language.
pub struct Data<'a> {
    files: &'a [&'a str],
    words: BTreeSet<String>,
}

impl Data<'_> {
    pub fn of<'a>(files: &'a [&'a str]) -> Data<'a> {
        let own = ["unknown", CHECKLIST_FORMAT, PART_FORMAT, SHEET_FORMAT, TEXTS_FORMAT];
        let mut words: BTreeSet<String> = own.map(str::to_owned).into();
        for schema in [schema_for!(Checklist), schema_for!(Part), schema_for!(Sheet), schema_for!(Texts)] {
            names(schema.as_value(), &mut words);
        }
        for checklist in files.iter().filter_map(|file| serde_json::from_str::<Checklist>(file).ok()) {
            let entries =
                checklist.phases.iter().flat_map(|phase| &phase.steps).flat_map(|step| &step.entries);
            words.extend(entries.flat_map(|entry| entry.ask.classes()).map(str::to_owned));
        }
        Data { files, words }
    }

    /// Nothing else of the message is as in English.
    pub fn is_all_that_stays(&self, message: &Message) {
        let mut stays = Vec::new();
        texts_of(message, &mut |name, text| {
            // What a decoder said is its own, and a test is written in the language of predicates.
            if matches!(name, "said" | "test")
                || text.split(": ").all(|part| self.has(part))
                || self.has(text)
            {
                stays.push(text);
            }
        });
        stays.sort_by_key(|text| std::cmp::Reverse(text.len()));
        let accented = Speaker::of(Language::Accented).within(message);
        let rest = stays.iter().fold(accented.clone(), |rest, text| rest.replace(text, ""));
        assert!(!rest.contains(['a', 'e', 'i', 'o', 'u']), "\"{rest}\" stays as it is in: {accented}");
    }

    fn has(&self, text: &str) -> bool {
        let is_place = text.starts_with('/') || text.ends_with(".part.json");
        is_place || self.words.contains(text) || self.files.iter().any(|file| file.contains(text))
    }
}

/// The names of fields and values in a schema.
fn names(schema: &Value, words: &mut BTreeSet<String>) {
    if let Value::Object(fields) = schema {
        let properties = fields.get("properties").and_then(Value::as_object);
        words.extend(properties.into_iter().flat_map(|properties| properties.keys().cloned()));
        let values =
            fields.get("enum").and_then(Value::as_array).into_iter().flatten().chain(fields.get("const"));
        words.extend(values.filter_map(Value::as_str).map(str::to_owned));
    }
    match schema {
        Value::Object(fields) => fields.values().for_each(|one| names(one, words)),
        Value::Array(list) => list.iter().for_each(|one| names(one, words)),
        _ => {}
    }
}

/// The texts that are put into a message and into those within it.
fn texts_of<'a>(message: &'a Message, put: &mut dyn FnMut(&'a str, &'a str)) {
    for (name, arg) in &message.args {
        text_of(name, arg, put);
    }
}

fn text_of<'a>(name: &'a str, arg: &'a Arg, put: &mut dyn FnMut(&'a str, &'a str)) {
    match arg {
        Arg::Number(_) => {}
        Arg::Text(text) => put(name, text),
        Arg::List(texts) | Arg::AnyOf(texts) => texts.iter().for_each(|text| put(name, text)),
        Arg::Said(message) => texts_of(message, put),
        Arg::Lines(lines) => lines.iter().for_each(|line| text_of(name, line, put)),
        Arg::Sentences(messages) => messages.iter().for_each(|message| texts_of(message, put)),
    }
}
