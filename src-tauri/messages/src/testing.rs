//! For the tests of the crates that say something: the list of messages and the file of sentences hold the same, and in
//! another language every word that is no data is another.

use std::collections::{BTreeMap, BTreeSet};

use fluent_bundle::FluentResource;

use crate::language::{ENGLISH, accented};
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

/// The words of a text in small letters, of three letters or more.
pub fn words(text: &str) -> impl Iterator<Item = String> {
    text.split(|c: char| !c.is_alphabetic()).filter(|word| word.len() > 2).map(str::to_lowercase)
}

/// The words of a text said in [`Language::Accented`](crate::Language::Accented) that came out plain though they are no
/// data: they were made past the message files. Hashes and ids are no words.
#[must_use]
pub fn unsaid(text: &str, data: &BTreeSet<String>) -> BTreeSet<String> {
    let is_hash = |word: &&str| {
        let digits = word.trim_matches(|c: char| c.is_ascii_punctuation());
        digits.len() >= 8 && digits.chars().all(|c| c.is_ascii_hexdigit() || c == '-')
    };
    let text = text.split_whitespace().filter(|word| !is_hash(word)).collect::<Vec<_>>().join(" ");
    let is_plain = |word: &String| word.is_ascii() && accented(word) != *word;
    words(&text).filter(|word| is_plain(word) && !data.contains(word)).collect()
}
