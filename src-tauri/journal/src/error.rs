//! What can be wrong with an event, a line or a chain.

use crate::{DeviceId, EventId, Format, Hash, Subject};

/// Why an event can't be sealed or read, or what doesn't fit in a chain. Every variant about a chain names the
/// event at which the chain breaks; what stands before that event is good.
#[derive(Debug, thiserror::Error)]
pub enum JournalError {
    /// A number of the header is beyond what every JSON reader keeps exactly.
    #[error("Event {event}: its {field} is beyond 9007199254740991 and would not be read back exactly.")]
    Number {
        /// The event.
        event: EventId,
        /// The header field.
        field: &'static str,
    },
    /// The id of an event to seal isn't a version 7 UUID.
    #[error("Event {event}: a new event needs an id of UUID version 7.")]
    Id {
        /// The event.
        event: EventId,
    },
    /// The kind is empty.
    #[error("Event {event}: its kind is empty.")]
    Empty {
        /// The event.
        event: EventId,
    },
    /// A body to seal isn't one JSON value on one line without white space around it.
    #[error("Event {event}: its body is not one JSON value on one line.")]
    Body {
        /// The event.
        event: EventId,
    },
    /// A header or an event couldn't be written as JSON.
    #[error("Event {event}: it could not be written as JSON.")]
    Unwritable {
        /// The event.
        event: EventId,
        /// What the JSON writer said.
        source: serde_json::Error,
    },
    /// A line isn't an event.
    #[error("A line of the journal cannot be read as an event.")]
    Line {
        /// What the JSON reader said, with its column.
        #[from]
        source: serde_json::Error,
    },
    /// A line means an event but has other bytes than were written.
    #[error("Event {event}: its line was respelt after it was written.")]
    Spelling {
        /// The event.
        event: EventId,
    },
    /// A text isn't a hash.
    #[error("\"{text}\" is not a hash: 64 lower-case hex digits are needed.")]
    HashText {
        /// The text.
        text: String,
    },
    /// The event is of a format this program doesn't know.
    #[error("Event {event} is of format {found}, which this version cannot read. A newer version may.")]
    FormatUnknown {
        /// The event.
        event: EventId,
        /// Its format.
        found: Format,
    },
    /// The body's bytes aren't those that were sealed.
    #[error("Event {event}: its body was altered after it was written.")]
    BodyAltered {
        /// The event.
        event: EventId,
    },
    /// The header isn't the one that was sealed.
    #[error("Event {event}: its header was altered after it was written (kept hash {kept}, found {found}).")]
    HashDiffers {
        /// The event.
        event: EventId,
        /// The hash kept beside the event.
        kept: Hash,
        /// The hash its header gives.
        found: Hash,
    },
    /// The sequence doesn't go on by one.
    #[error("Event {event} has number {found} in the {chain}'s chain where number {expected} belongs.")]
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
    #[error(
        "Event {event} does not follow the event before it in the {chain}'s chain (it names {named}, there is {found})."
    )]
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
    #[error("Event {event} was written by device {found} and stands in the chain of device {expected}.")]
    OtherDevice {
        /// The event.
        event: EventId,
        /// The chain's device.
        expected: DeviceId,
        /// The event's device.
        found: DeviceId,
    },
    /// An event about something else stands in a subject's chain.
    #[error("Event {event} is about {found} and stands in the chain about {expected}.")]
    OtherSubject {
        /// The event.
        event: EventId,
        /// What the chain is about.
        expected: Subject,
        /// What the event is about.
        found: Subject,
    },
    /// An event about the shop stands in the chain of a device that didn't write it.
    #[error("Event {event} is about the shop and stands among the shop events of another device.")]
    ShopOfOther {
        /// The event.
        event: EventId,
    },
}
