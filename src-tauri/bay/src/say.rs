//! Messages into sentences, by Fluent. The same files serve the window and the command line.

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use panside_job::clean::line;
use panside_job::figures::Figure;
use panside_job::{Arg, Message, Refusal};
use unic_langid::LanguageIdentifier;

/// The English sentences.
pub const ENGLISH: &str = include_str!("../messages/en.ftl");

/// Makes sentences of messages in one language.
pub struct Speaker {
    bundle: FluentBundle<FluentResource>,
}

impl Speaker {
    /// Speaks English.
    #[must_use]
    pub fn english() -> Speaker {
        let mut bundle = FluentBundle::new_concurrent(vec![LanguageIdentifier::default()]);
        // Marks around arguments would show as boxes on some screens; the text runs one way.
        bundle.set_use_isolating(false);
        let resource = match FluentResource::try_new(ENGLISH.to_owned()) {
            Ok(resource) => resource,
            // What could be read is used; a test holds that there are no errors.
            Err((resource, _)) => resource,
        };
        bundle.add_resource_overriding(resource);
        Speaker { bundle }
    }

    /// The sentence of a message. Where there is none, the id and the arguments stand for it, so that nothing is
    /// swallowed.
    #[must_use]
    pub fn say(&self, message: &Message) -> String {
        let pattern = self.bundle.get_message(&message.id).and_then(|found| found.value());
        let Some(pattern) = pattern else { return line(&message.bare()) };
        let mut args = FluentArgs::new();
        for (name, arg) in &message.args {
            args.set(name.as_str(), value(arg));
        }
        let mut errors = Vec::new();
        let text = self.bundle.format_pattern(pattern, Some(&args), &mut errors);
        line(&if errors.is_empty() { with_capital(&text) } else { message.bare() })
    }

    /// Puts a message's sentence into it.
    pub(crate) fn fill(&self, message: &mut Message) {
        message.text = self.say(message);
    }

    /// Puts the sentences into figures.
    pub(crate) fn fill_figures(&self, figures: &mut [Figure]) {
        figures.iter_mut().for_each(|figure| figure.each_message(&mut |message| self.fill(message)));
    }

    /// A refusal with everything that is missing.
    #[must_use]
    pub fn refusal(&self, refusal: &Refusal) -> String {
        let mut said = vec![self.say(&refusal.message)];
        said.extend(refusal.unmet.iter().map(|unmet| self.say(unmet)));
        said.join(" ")
    }
}

impl std::fmt::Debug for Speaker {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.write_str("Speaker")
    }
}

/// A sentence may begin with an argument, which is an id in words.
fn with_capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| first.to_uppercase().chain(chars).collect())
}

fn value(arg: &Arg) -> FluentValue<'_> {
    match arg {
        Arg::Text(text) => FluentValue::from(text.as_str()),
        Arg::Number(number) => FluentValue::from(*number),
        Arg::List(texts) => FluentValue::from(joined(texts, "and")),
        Arg::AnyOf(texts) => FluentValue::from(joined(texts, "or")),
    }
}

fn joined(texts: &[String], joint: &str) -> String {
    match texts {
        [] => String::new(),
        [one] => one.clone(),
        [first @ .., last] => format!("{} {joint} {last}", first.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use panside_job::MESSAGES;
    use std::collections::{BTreeMap, BTreeSet};

    #[test]
    fn every_message_has_a_sentence_that_uses_only_its_arguments() {
        let speaker = Speaker::english();
        assert!(FluentResource::try_new(ENGLISH.to_owned()).is_ok(), "the file has errors");
        for (id, args) in MESSAGES {
            let args: BTreeMap<String, Arg> =
                args.iter().map(|name| ((*name).to_owned(), Arg::Text(format!("<{name}>")))).collect();
            let message = Message { id: (*id).to_owned(), args, text: String::new() };
            let said = speaker.say(&message);
            assert!(
                !said.starts_with(id),
                "{id} has no sentence, or it names an argument it does not have: {said}"
            );
        }
    }

    #[test]
    fn no_sentence_is_left_over() {
        let known: BTreeSet<&str> = MESSAGES.iter().map(|(id, _)| *id).collect();
        let written = ENGLISH.lines().filter_map(|line| line.split_once(" =").map(|(id, _)| id));
        let written = written.filter(|id| id.starts_with(|first: char| first.is_ascii_lowercase()));
        let left: Vec<&str> = written.filter(|id| !known.contains(id)).collect();
        assert!(left.is_empty(), "nothing says these: {left:?}");
    }

    #[test]
    fn an_unknown_message_is_shown_bare_rather_than_swallowed() {
        let args = BTreeMap::from([("step".to_owned(), Arg::Text("drain".to_owned()))]);
        let message = Message { id: "no-such-message".to_owned(), args, text: String::new() };
        assert_eq!(Speaker::english().say(&message), "no-such-message (step: drain)");
    }
}
