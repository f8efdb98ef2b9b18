//! What a checklist's words become in a message, and what messages become in JSON.

use panside_messages::{Arg, Message, Speaker};
use serde::Serializer;

use crate::format::{Role, Signal, Zone};

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

impl From<Zone> for Arg {
    fn from(zone: Zone) -> Arg {
        Arg::from(match zone {
            Zone::Under => "under",
            Zone::EngineBay => "engine_bay",
            Zone::Cabin => "cabin",
            Zone::Bench => "bench",
        })
    }
}

/// A message in JSON is its sentence: as it was filled in, else in English.
pub(crate) fn sentence<S: Serializer>(message: &Message, to: S) -> Result<S::Ok, S::Error> {
    to.serialize_str(&spoken(message))
}

/// The same of one that may not be there.
pub(crate) fn sentence_if_any<S: Serializer>(message: &Option<Message>, to: S) -> Result<S::Ok, S::Error> {
    to.serialize_some(&message.as_ref().map(spoken))
}

/// The same of several.
pub(crate) fn sentences<S: Serializer>(messages: &[Message], to: S) -> Result<S::Ok, S::Error> {
    to.collect_seq(messages.iter().map(spoken))
}

fn spoken(message: &Message) -> String {
    if message.text.is_empty() { Speaker::english().within(message) } else { message.text.clone() }
}
