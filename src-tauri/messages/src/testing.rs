//! For the tests of the crates that say something: the list of messages and the file of sentences hold the same.

use std::collections::{BTreeMap, BTreeSet};

use fluent_bundle::FluentResource;

use crate::language::ENGLISH;
use crate::message::{Arg, Message};

/// Makes the tests that hold a crate's list and its file together, in both directions.
#[macro_export]
macro_rules! hold {
    ($file:literal, $messages:expr) => {
        #[test]
        fn the_list_of_messages_and_the_file_of_sentences_hold_the_same() {
            let wrong = $crate::testing::wrong($file, $messages);
            assert!(wrong.is_empty(), "{}", wrong.join("\n"));
        }
    };
}

pub use hold;

/// What is wrong between a list of messages and the file of the same crate: an id that is twice on the list or is not
/// kebab case, a message without a sentence, a sentence that names an argument its message does not have,
/// a sentence that nothing says.
#[must_use]
pub fn wrong(file: &str, messages: &[(&str, &[&str])]) -> Vec<String> {
    let Some((_, text)) = ENGLISH.iter().find(|(name, _)| *name == file) else {
        return vec![format!("there is no file {file}.ftl")];
    };
    let mut wrong = Vec::new();
    if let Err((_, errors)) = FluentResource::try_new((*text).to_owned()) {
        wrong.extend(errors.iter().map(|error| format!("{file}.ftl: {error}")));
    }
    let mut known = BTreeSet::new();
    for (id, args) in messages {
        let kebab = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
        if !known.insert(*id) || !id.chars().all(kebab) {
            wrong.push(format!("{id} is twice on the list, or not in kebab case"));
        }
        let args: BTreeMap<String, Arg> =
            args.iter().map(|name| ((*name).to_owned(), Arg::Text(format!("<{name}>")))).collect();
        let said = Message { id: (*id).to_owned(), args, text: String::new() }.english();
        if said.starts_with(&format!("{id} (")) {
            wrong.push(format!("{id} has no sentence, or it names an argument it does not have: {said}"));
        }
    }
    let written = text.lines().filter_map(|line| line.split_once(" =").map(|(id, _)| id));
    let written = written.filter(|id| id.starts_with(|first: char| first.is_ascii_lowercase()));
    wrong.extend(written.filter(|id| !known.contains(id)).map(|id| format!("nothing says {id}")));
    wrong
}
