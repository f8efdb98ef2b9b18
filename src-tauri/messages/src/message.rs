//! One message: which sentence, and what to put into it.

use std::collections::BTreeMap;
use std::path::Path;

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::speaker::Speaker;

/// Something to say.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, TS)]
pub struct Message {
    /// Which message: one of a crate's `MESSAGES`.
    pub id: String,
    /// What to put into it, by name.
    pub args: BTreeMap<String, Arg>,
    /// The sentence. Empty here: whoever knows the reader's language fills it in.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub text: String,
}

/// An argument of a message.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum Arg {
    /// A name, a measured value with its unit, or a word a sentence chooses by.
    Text(String),
    /// A whole number, where the sentence depends on it (one minute, two minutes).
    Number(i64),
    /// Several texts, all of them meant.
    List(Vec<String>),
    /// Several texts, any one of them meant.
    AnyOf(Vec<String>),
    /// Another message, said within this one.
    Said(Box<Message>),
    /// Several things, each on a line of its own below what stands before them.
    Lines(Vec<Arg>),
    /// Several sentences, one after the other.
    Sentences(Vec<Message>),
}

impl Message {
    /// A message with its arguments; made by the functions that [`messages!`](crate::messages) writes.
    #[must_use]
    pub fn new<const N: usize>(id: &str, args: [(&str, Arg); N]) -> Message {
        let args = args.into_iter().map(|(name, arg)| (name.to_owned(), arg)).collect();
        Message { id: id.to_owned(), args, text: String::new() }
    }

    /// The sentence; id and arguments stand for it where nobody has filled it in, so that nothing is swallowed.
    #[must_use]
    pub fn said(&self) -> String {
        if self.text.is_empty() { self.bare() } else { self.text.clone() }
    }

    /// Its id and its arguments.
    #[must_use]
    pub fn bare(&self) -> String {
        let args = self.args.iter().map(|(name, arg)| format!("{name}: {}", arg.bare()));
        format!("{} ({})", self.id, args.collect::<Vec<_>>().join(", "))
    }

    /// The sentence in English: for logs, and for what an error writes of itself.
    #[must_use]
    pub fn english(&self) -> String {
        Speaker::english().say(self)
    }
}

impl Arg {
    /// Its text, where nobody has a sentence for it.
    fn bare(&self) -> String {
        match self {
            Arg::Text(text) => text.clone(),
            Arg::Number(number) => number.to_string(),
            Arg::List(texts) | Arg::AnyOf(texts) => texts.join(", "),
            Arg::Said(message) => message.bare(),
            Arg::Lines(lines) => lines.iter().map(Arg::bare).collect::<Vec<_>>().join("; "),
            Arg::Sentences(said) => said.iter().map(Message::bare).collect::<Vec<_>>().join("; "),
        }
    }

    /// Several things, each on a line of its own.
    pub fn lines(things: impl IntoIterator<Item = impl Into<Arg>>) -> Arg {
        Arg::Lines(things.into_iter().map(Into::into).collect())
    }
}

impl From<&str> for Arg {
    fn from(text: &str) -> Arg {
        Arg::Text(text.to_owned())
    }
}

impl From<String> for Arg {
    fn from(text: String) -> Arg {
        Arg::Text(text)
    }
}

impl From<&String> for Arg {
    fn from(text: &String) -> Arg {
        Arg::Text(text.clone())
    }
}

impl From<&Path> for Arg {
    fn from(path: &Path) -> Arg {
        Arg::Text(path.display().to_string())
    }
}

impl From<usize> for Arg {
    fn from(number: usize) -> Arg {
        Arg::Number(i64::try_from(number).unwrap_or(i64::MAX))
    }
}

impl From<u64> for Arg {
    fn from(number: u64) -> Arg {
        Arg::Number(i64::try_from(number).unwrap_or(i64::MAX))
    }
}

impl From<u32> for Arg {
    fn from(number: u32) -> Arg {
        Arg::Number(i64::from(number))
    }
}

impl From<i64> for Arg {
    fn from(number: i64) -> Arg {
        Arg::Number(number)
    }
}

impl From<Vec<String>> for Arg {
    fn from(list: Vec<String>) -> Arg {
        Arg::List(list)
    }
}

impl From<Message> for Arg {
    fn from(message: Message) -> Arg {
        Arg::Said(Box::new(message))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_message_goes_through_json_and_back() {
        let list = Arg::AnyOf(vec!["on locks".into(), "floor".into()]);
        let message = Message::new("unmet-value", [("what", "lift".into()), ("wants", list)]);
        let json = serde_json::to_string(&message).unwrap();
        assert_eq!(serde_json::from_str::<Message>(&json).unwrap(), message);
        assert!(!json.contains("\"text\":\"\""), "an empty sentence is not sent");
    }
}
