//! What people read of a checklist, in another language. Rules read ids, so that a checklist in other words has the same
//! Machine, and the proof of the one is that of the other.
//!
//! A translation is a file beside the checklist ([`Texts`]). It says every text again, by a place that is made of ids
//! and stays when steps are put in another order. One function goes to every text (`visit`), for writing them out
//! and for putting others in their place.

mod numbers;
mod visit;

use std::collections::BTreeMap;

use panside_messages::{Arg, Message};

use crate::format::{Checklist, TEXTS_FORMAT, Texts};
use crate::load::place::Places;
use crate::load::read;
use crate::load::sizes::LONGEST_TEXT;
use crate::load::{MOST_PROBLEMS, Problem, Problems, Procedure};
use crate::message::*;

/// The folder of texts, beside the checklists.
pub const FOLDER: &str = "texts";
/// How the names of such files end.
pub const ENDING: &str = ".texts.json";
/// As long as a language tag has to be allowed to be (RFC 5646, 4.4.1).
const LONGEST_TAG: usize = 35;

/// The file of a checklist's texts in a language, seen from the folder of the checklists.
#[must_use]
pub fn file_of(checklist: &str, language: &str) -> String {
    format!("{FOLDER}/{checklist}.{language}{ENDING}")
}

impl Texts {
    /// A checklist's own texts, to be translated.
    #[must_use]
    pub fn of(checklist: &Checklist, language: &str) -> Texts {
        let mut texts = BTreeMap::new();
        visit::each(&mut checklist.clone(), &mut |place, text| {
            texts.insert(place.to_owned(), text.clone());
        });
        Texts {
            format: TEXTS_FORMAT.to_owned(),
            of: checklist.id.clone(),
            revision: checklist.revision,
            language: language.to_owned(),
            texts,
        }
    }

    /// Reads a file of texts. Whether they are those of a checklist is asked by [`Texts::checked`].
    ///
    /// # Errors
    /// Every mistake in its form.
    pub fn read(bytes: &[u8]) -> Result<Texts, Problems> {
        Ok(with_places(bytes)?.0)
    }

    /// Reads a checklist's texts in another language: all of them, and nothing lost that must be in them.
    ///
    /// # Errors
    /// Every mistake, each with its place and what to do.
    pub fn checked(checklist: &Checklist, bytes: &[u8]) -> Result<Texts, Problems> {
        let (texts, places) = with_places(bytes)?;
        let mut problems = Check { places: &places, problems: Vec::new() };
        problems.head(checklist, &texts);
        problems.texts(&Texts::of(checklist, &texts.language), &texts);
        let Check { mut problems, .. } = problems;
        problems.sort();
        problems.truncate(MOST_PROBLEMS);
        if problems.is_empty() { Ok(texts) } else { Err(Problems(problems)) }
    }

    /// What is said of texts with which nothing is wrong.
    #[must_use]
    pub fn fit(&self) -> Message {
        texts_fit(self.texts.len(), &self.language)
    }
}

impl Procedure {
    /// The same checklist in other words. A text that is not among them stays as it is: what a job was begun with is
    /// shown, whatever is asked of new texts today.
    #[must_use]
    pub fn in_words_of(&self, texts: &Texts) -> Procedure {
        let mut translated = self.clone();
        visit::each(&mut translated.checklist, &mut |place, text| {
            if let Some(other) = texts.texts.get(place) {
                text.clone_from(other);
            }
        });
        translated
    }
}

fn with_places(bytes: &[u8]) -> Result<(Texts, Places), Problems> {
    let read::Json { value, places, .. } = read::json(bytes, TEXTS_FORMAT)?;
    Ok((read::typed(value, &places)?, places))
}

struct Check<'a> {
    places: &'a Places,
    problems: Vec<Problem>,
}

impl Check<'_> {
    fn problem(&mut self, pointer: &str, what: Message) {
        self.problems.push(Problem::at(self.places.find(pointer), pointer, what));
    }

    fn head(&mut self, checklist: &Checklist, texts: &Texts) {
        if texts.of != checklist.id {
            self.problem("/of", texts_of_other(&texts.of, &checklist.id));
        } else if texts.revision != checklist.revision {
            self.problem("/revision", texts_of_revision(texts.revision, checklist.revision));
        }
        if !is_tag(&texts.language) {
            self.problem("/language", texts_language(&texts.language));
        }
    }

    fn texts(&mut self, own: &Texts, translated: &Texts) {
        for place in translated.texts.keys().filter(|place| !own.texts.contains_key(*place)) {
            self.problem(&pointer(place), texts_no_place(place));
        }
        for (place, original) in &own.texts {
            match translated.texts.get(place) {
                Some(text) => self.text(&pointer(place), original, text),
                None => self.problem("/texts", texts_missing(place, original)),
            }
        }
    }

    fn text(&mut self, pointer: &str, original: &str, text: &str) {
        let length = text.chars().count();
        if text.trim().is_empty() {
            return self.problem(pointer, texts_empty());
        }
        if length > LONGEST_TEXT {
            self.problem(pointer, texts_long(length, LONGEST_TEXT));
        }
        // What is told of a label in a checklist: an id in it is a text that was forgotten.
        if text.contains('_') && !original.contains('_') {
            self.problem(pointer, problem_label_id(text));
        }
        let lost = numbers::lost(original, text);
        if !lost.is_empty() {
            self.problem(pointer, texts_number(Arg::List(lost), original));
        }
    }
}

/// A place of the texts as a JSON pointer into their file.
fn pointer(place: &str) -> String {
    format!("/texts/{}", place.replace('~', "~0").replace('/', "~1"))
}

/// Whether it has the shape of a language tag (BCP 47): a language of 2 to 8 letters, then parts of 1 to 8 letters and
/// digits. Whether there is such a language is not known here.
fn is_tag(text: &str) -> bool {
    let mut parts = text.split('-');
    let language = parts.next().unwrap_or_default();
    (2..=8).contains(&language.len())
        && language.chars().all(|char| char.is_ascii_alphabetic())
        && text.len() <= LONGEST_TAG
        && parts.all(|part| {
            (1..=8).contains(&part.len()) && part.chars().all(|char| char.is_ascii_alphanumeric())
        })
}
