//! What can be wrong with an event, a line or a chain.

use std::fmt;

use panside_messages::Message;

use crate::message::*;
use crate::{DeviceId, EventId, Format, Hash, Subject};

/// Why an event can't be sealed or read, or what doesn't fit in a chain. Every variant about a chain names the
/// event at which the chain breaks; what stands before that event is good.
#[derive(Debug, thiserror::Error)]
pub enum JournalError {
    /// A number of the header is beyond what every JSON reader keeps exactly.
    Number {
        /// The event.
        event: EventId,
        /// The header field.
        field: &'static str,
    },
    /// The id of an event to seal isn't a version 7 UUID.
    Id {
        /// The event.
        event: EventId,
    },
    /// The kind is empty.
    Empty {
        /// The event.
        event: EventId,
    },
    /// A body to seal isn't one JSON value on one line without white space around it.
    Body {
        /// The event.
        event: EventId,
    },
    /// A header or an event couldn't be written as JSON.
    Unwritable {
        /// The event.
        event: EventId,
        /// What the JSON writer said.
        source: serde_json::Error,
    },
    /// A line isn't an event.
    Line {
        /// What the JSON reader said, with its column.
        #[from]
        source: serde_json::Error,
    },
    /// A line means an event but has other bytes than were written.
    Spelling {
        /// The event.
        event: EventId,
    },
    /// A text isn't a hash.
    HashText {
        /// The text.
        text: String,
    },
    /// The event is of a format this program doesn't know.
    FormatUnknown {
        /// The event.
        event: EventId,
        /// Its format.
        found: Format,
    },
    /// The body's bytes aren't those that were sealed.
    BodyAltered {
        /// The event.
        event: EventId,
    },
    /// The header isn't the one that was sealed.
    HashDiffers {
        /// The event.
        event: EventId,
        /// The hash kept beside the event.
        kept: Hash,
        /// The hash its header gives.
        found: Hash,
    },
    /// The sequence doesn't go on by one.
    SequenceGap {
        /// The event.
        event: EventId,
        /// "device" or "subject".
        chain: &'static str,
        /// The number that belongs here.
        expected: u64,
        /// The number it has.
        found: u64,
    },
    /// The event names another event before it than the one that is there.
    PreviousDiffers {
        /// The event.
        event: EventId,
        /// "device" or "subject".
        chain: &'static str,
        /// The hash it names.
        named: Hash,
        /// The hash of the event that stands before it.
        found: Hash,
    },
    /// An event of another device stands in a device's chain.
    OtherDevice {
        /// The event.
        event: EventId,
        /// The chain's device.
        expected: DeviceId,
        /// The event's device.
        found: DeviceId,
    },
    /// An event about something else stands in a subject's chain.
    OtherSubject {
        /// The event.
        event: EventId,
        /// What the chain is about.
        expected: Subject,
        /// What the event is about.
        found: Subject,
    },
    /// An event about the shop stands in the chain of a device that didn't write it.
    ShopOfOther {
        /// The event.
        event: EventId,
    },
}

impl JournalError {
    /// What to say to a person.
    #[must_use]
    pub fn message(&self) -> Message {
        match self {
            JournalError::Number { event, field } => journal_number(event.to_string(), *field),
            JournalError::Id { event } => journal_id(event.to_string()),
            JournalError::Empty { event } => journal_empty(event.to_string()),
            JournalError::Body { event } => journal_body(event.to_string()),
            JournalError::Unwritable { event, .. } => journal_unwritable(event.to_string()),
            JournalError::Line { .. } => journal_line(),
            JournalError::Spelling { event } => journal_spelling(event.to_string()),
            JournalError::HashText { text } => journal_hash_text(text),
            JournalError::FormatUnknown { event, found } => {
                journal_format_unknown(event.to_string(), found.to_string())
            }
            JournalError::BodyAltered { event } => journal_body_altered(event.to_string()),
            JournalError::HashDiffers { event, kept, found } => {
                journal_hash_differs(event.to_string(), kept.to_string(), found.to_string())
            }
            JournalError::SequenceGap { event, chain, expected, found } => {
                journal_sequence_gap(event.to_string(), *found, *chain, *expected)
            }
            JournalError::PreviousDiffers { event, chain, named, found } => {
                journal_previous_differs(event.to_string(), *chain, named.to_string(), found.to_string())
            }
            JournalError::OtherDevice { event, expected, found } => {
                journal_other_device(event.to_string(), found.to_string(), expected.to_string())
            }
            JournalError::OtherSubject { event, expected, found } => {
                journal_other_subject(event.to_string(), found.to_string(), expected.to_string())
            }
            JournalError::ShopOfOther { event } => journal_shop_of_other(event.to_string()),
        }
    }
}

impl fmt::Display for JournalError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.message().english())
    }
}
