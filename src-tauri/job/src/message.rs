//! What is said to a person, as a message id with arguments. The sentence is made elsewhere, in any language, from
//! the Fluent file that has the same ids. [`MESSAGES`] lists them all with the names of their arguments.

mod list;
mod trade;

use std::collections::BTreeMap;

use panside_procedure::format::{Role, Signal};
use panside_trade::measure::Measure;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

pub use list::MESSAGES;

pub(crate) use list::*;
pub(crate) use panside_trade::text::figure;
pub(crate) use trade::{of_figure, of_trade};

/// Something to say.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Message {
    /// Which message: one of [`MESSAGES`].
    pub id: String,
    /// What to put into it, by name.
    pub args: BTreeMap<String, Arg>,
    /// The sentence. Empty here: whoever knows the reader's language fills it in.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub text: String,
}

/// An argument of a message.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
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
}

impl Message {
    fn new<const N: usize>(id: &str, args: [(&str, Arg); N]) -> Message {
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
        let args = self.args.iter().map(|(name, arg)| match arg {
            Arg::Text(text) => format!("{name}: {text}"),
            Arg::Number(number) => format!("{name}: {number}"),
            Arg::List(texts) | Arg::AnyOf(texts) => format!("{name}: {}", texts.join(", ")),
        });
        format!("{} ({})", self.id, args.collect::<Vec<_>>().join(", "))
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

impl From<usize> for Arg {
    fn from(number: usize) -> Arg {
        Arg::Number(i64::try_from(number).unwrap_or(i64::MAX))
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

impl From<Measure> for Arg {
    fn from(measure: Measure) -> Arg {
        Arg::Text(measure.to_string())
    }
}

impl From<Role> for Arg {
    fn from(role: Role) -> Arg {
        Arg::from(match role {
            Role::Technician => "technician",
            Role::SecondPerson => "second_person",
            Role::ServiceWriter => "service_writer",
        })
    }
}

impl From<Signal> for Arg {
    fn from(signal: Signal) -> Arg {
        Arg::from(match signal {
            Signal::Danger => "danger",
            Signal::Warning => "warning",
            Signal::Caution => "caution",
            Signal::Notice => "notice",
        })
    }
}

/// An id as words: `on_locks` is "on locks".
pub(crate) fn words(id: &str) -> String {
    id.replace('_', " ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use panside_trade::units::Unit;

    #[test]
    fn a_measure_is_said_with_its_symbol() {
        assert_eq!(Measure::new(48.0, Unit::DegreeCelsius).unwrap().to_string(), "48 °C");
    }

    #[test]
    fn no_two_messages_share_an_id_and_ids_are_kebab_case() {
        let mut seen = std::collections::BTreeSet::new();
        for (id, args) in MESSAGES {
            assert!(seen.insert(id), "{id}");
            assert!(id.chars().all(|c| c.is_ascii_lowercase() || c == '-'), "{id}");
            assert!(args.iter().all(|arg| arg.chars().all(|c| c.is_ascii_lowercase() || c == '_')), "{id}");
        }
    }

    #[test]
    fn a_message_goes_through_json_and_back() {
        let message = unmet_value("lift", "raised", Arg::AnyOf(vec!["on locks".into(), "floor".into()]));
        let json = serde_json::to_string(&message).unwrap();
        assert_eq!(serde_json::from_str::<Message>(&json).unwrap(), message);
        assert!(!json.contains("\"text\":\"\""), "an empty sentence is not sent");
    }
}
