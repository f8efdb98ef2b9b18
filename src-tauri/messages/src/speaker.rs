//! Messages into sentences, by Fluent.

use std::fmt;
use std::sync::OnceLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use unic_langid::LanguageIdentifier;

use crate::clean::line;
use crate::language::Language;
use crate::message::{Arg, Message};

pub use own::MESSAGES;

mod own {
    crate::messages! {
        list_next "list-next" (start, next);
        list_and "list-and" (start, last);
        list_or "list-or" (start, last);
    }
}

/// Makes sentences of messages in one language.
pub struct Speaker {
    language: Language,
    bundle: FluentBundle<FluentResource>,
}

impl Speaker {
    /// Who speaks a language.
    #[must_use]
    pub fn of(language: Language) -> &'static Speaker {
        static ENGLISH: OnceLock<Speaker> = OnceLock::new();
        static ACCENTED: OnceLock<Speaker> = OnceLock::new();
        let speaker = match language {
            Language::English => &ENGLISH,
            Language::Accented => &ACCENTED,
        };
        speaker.get_or_init(|| Speaker::new(language))
    }

    fn new(language: Language) -> Speaker {
        let tag = language.tag().parse().unwrap_or_else(|_| LanguageIdentifier::default());
        let mut bundle = FluentBundle::new_concurrent(vec![tag]);
        // Marks around arguments would show as boxes on some screens; the text runs one way.
        bundle.set_use_isolating(false);
        bundle.set_transform(Some(language.transform()));
        for (_, text) in language.files() {
            let resource = match FluentResource::try_new((*text).to_owned()) {
                Ok(resource) => resource,
                // What could be read is used; a test holds that there are no errors.
                Err((resource, _)) => resource,
            };
            bundle.add_resource_overriding(resource);
        }
        Speaker { language, bundle }
    }

    /// Speaks English.
    #[must_use]
    pub fn english() -> &'static Speaker {
        Speaker::of(Language::English)
    }

    /// The sentence of a message. Where there is none, the id and the arguments stand for it, so that nothing is
    /// swallowed. It is one line, but for what was given as [`Arg::Lines`].
    #[must_use]
    pub fn say(&self, message: &Message) -> String {
        self.phrase(message).map_or_else(|| line(&message.bare()), |text| with_capital(&text))
    }

    /// The message as it stands within a sentence that is made elsewhere: without a capital.
    #[must_use]
    pub fn within(&self, message: &Message) -> String {
        self.phrase(message).unwrap_or_else(|| line(&message.bare()))
    }

    /// The language that is spoken.
    #[must_use]
    pub fn language(&self) -> Language {
        self.language
    }

    /// Puts a message's sentence into it.
    pub fn fill(&self, message: &mut Message) {
        message.text = self.say(message);
    }

    /// The message as it stands within a sentence; nothing where it has no sentence, or lacks an argument.
    fn phrase(&self, message: &Message) -> Option<String> {
        let pattern = self.bundle.get_message(&message.id)?.value()?;
        let mut args = FluentArgs::new();
        for (name, arg) in &message.args {
            args.set(name.as_str(), self.value(arg));
        }
        let mut errors = Vec::new();
        let text = self.bundle.format_pattern(pattern, Some(&args), &mut errors);
        errors.is_empty().then(|| text.into_owned())
    }

    fn value<'a>(&self, arg: &'a Arg) -> FluentValue<'a> {
        match arg {
            Arg::Number(number) => FluentValue::from(*number),
            other => FluentValue::from(self.arg(other)),
        }
    }

    /// An argument as it stands in a sentence, cleaned: no text that was put in can pass for a line of its own.
    #[must_use]
    pub fn arg(&self, arg: &Arg) -> String {
        match arg {
            Arg::Text(text) => line(text),
            Arg::Number(number) => number.to_string(),
            Arg::List(texts) => line(&self.joined(texts, own::list_and)),
            Arg::AnyOf(texts) => line(&self.joined(texts, own::list_or)),
            Arg::Said(message) => self.within(message),
            Arg::Lines(lines) => {
                let said = |arg: &Arg| match arg {
                    Arg::Said(message) => self.say(message),
                    arg => self.arg(arg),
                };
                lines.iter().map(|arg| format!("\n{}", said(arg))).collect()
            }
            Arg::Sentences(said) => said.iter().map(|one| self.say(one)).collect::<Vec<_>>().join(" "),
        }
    }

    /// Several texts as one, the last joined by `last`.
    fn joined(&self, texts: &[String], last: fn(String, String) -> Message) -> String {
        let Some((first, more)) = texts.split_first() else { return String::new() };
        let Some((end, between)) = more.split_last() else { return first.clone() };
        let next = |start, next| self.within(&own::list_next(start, next));
        self.within(&last(between.iter().fold(first.clone(), next), end.clone()))
    }
}

impl fmt::Debug for Speaker {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("Speaker")
    }
}

/// A sentence may begin with an argument that is written small within a sentence.
fn with_capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| first.to_uppercase().chain(chars).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn several_things_are_said_with_commas_and_one_joint() {
        let joined = |values: &[&str]| {
            let texts: Vec<String> = values.iter().map(|value| (*value).to_owned()).collect();
            Speaker::english().joined(&texts, own::list_or)
        };
        assert_eq!(joined(&[]), "");
        assert_eq!(joined(&["floor"]), "floor");
        assert_eq!(joined(&["floor", "raised"]), "floor or raised");
        assert_eq!(joined(&["floor", "raised", "on locks"]), "floor, raised or on locks");
    }

    #[test]
    fn an_unknown_message_is_shown_bare_rather_than_swallowed() {
        let message = Message::new("no-such-message", [("step", "drain".into())]);
        assert_eq!(message.english(), "no-such-message (step: drain)");
    }

    #[test]
    fn a_message_within_a_message_is_said_in_the_same_language() {
        let inner = own::list_and("floor", "raised");
        let outer = own::list_or(inner.clone(), "on locks");
        assert_eq!(outer.english(), "Floor and raised or on locks");
        let accented = Speaker::of(Language::Accented);
        assert_eq!(accented.say(&own::list_or(inner, "on locks")), "Floor áñd raised ór on locks");
    }

    #[test]
    fn each_line_stands_by_itself_and_no_text_passes_for_one() {
        let inner = own::list_and("floor", "raised\non locks");
        let lines = own::list_and("seen", Arg::lines([Arg::from(inner.clone()), Arg::from("no\r\nlift")]));
        assert_eq!(lines.english(), "Seen and \nFloor and raised on locks\nno  lift");
        let sentences = own::list_and("seen", Arg::Sentences(vec![inner.clone(), inner]));
        assert_eq!(sentences.english(), "Seen and Floor and raised on locks Floor and raised on locks");
    }

    crate::testing::hold!("messages", own::MESSAGES);
}
