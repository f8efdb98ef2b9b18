//! An event: sealing it, writing it as one line of text, reading it back.

use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;

use crate::{
    DeviceId, EpochId, EventId, Format, Hash, Head, Header, JournalError, PersonId, RequestId, Stamp, Subject,
};

/// An event as it is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Event {
    /// Everything but the body.
    pub header: Header,
    /// The body's bytes as they were first written: JSON text.
    pub body: Vec<u8>,
    /// The event's hash, as it is kept beside it.
    pub hash: Hash,
}

/// An event not yet given its place in the chains.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Draft {
    /// A new id of UUID version 7.
    pub id: EventId,
    /// What kind of event it is; not empty.
    pub kind: String,
    /// The version of the body's form within its kind.
    pub version: u32,
    /// One JSON value on one line, without white space around it; numbers as scaled integers.
    pub body: Vec<u8>,
}

/// What a person asked for, so that the same command sent twice is known again.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Request {
    /// The same for the same command.
    pub id: RequestId,
    /// The hash of the raw command as it came in (not of the events it led to: a second try may lead to others).
    pub hash: Hash,
}

/// Whom and when events come from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Origin {
    /// The request that led to them.
    pub request: Request,
    /// The person; [`PersonId::TABLET`] where nobody acted.
    pub who: PersonId,
    /// Both clocks.
    pub stamp: Stamp,
}

/// Where the next event goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Place {
    /// The device that writes.
    pub device: DeviceId,
    /// Its present epoch.
    pub epoch: EpochId,
    /// The newest event on the device.
    pub device_head: Head,
    /// What it is about.
    pub subject: Subject,
    /// The newest event about it.
    pub subject_head: Head,
}

/// Gives a draft its place and its hash.
///
/// # Errors
/// [`JournalError::Id`], [`JournalError::Empty`], [`JournalError::Body`] or [`JournalError::Number`] for a draft
/// that can't be kept.
pub fn seal(draft: &Draft, place: &Place, origin: &Origin) -> Result<Event, JournalError> {
    let event = draft.id;
    if event.0.get_version_num() != 7 {
        return Err(JournalError::Id { event });
    }
    if draft.kind.is_empty() {
        return Err(JournalError::Empty { event });
    }
    check_body(&draft.body).ok_or(JournalError::Body { event })?;
    let header = Header {
        body_hash: Hash::of(&draft.body),
        boot: origin.stamp.boot,
        device: place.device,
        device_seq: place.device_head.seq.saturating_add(1),
        epoch: place.epoch,
        format: Format::CURRENT,
        id: event,
        kind: draft.kind.clone(),
        mono_ms: origin.stamp.mono_ms,
        prev_device: place.device_head.hash,
        prev_subject: place.subject_head.hash,
        request: origin.request.id,
        request_hash: origin.request.hash,
        subject: place.subject,
        subject_seq: place.subject_head.seq.saturating_add(1),
        version: draft.version,
        wall_ms: origin.stamp.wall_ms,
        who: origin.who,
    };
    let hash = header.hash()?;
    Ok(Event { header, body: draft.body.clone(), hash })
}

/// A body must stand in a line of text byte for byte: so no white space around it and no line break in it.
fn check_body(body: &[u8]) -> Option<()> {
    let text = std::str::from_utf8(body).ok()?;
    let whole: &RawValue = serde_json::from_str(text).ok()?;
    (whole.get().len() == text.len() && !text.contains(['\n', '\r'])).then_some(())
}

/// The outer form of an event's line. The body goes through untouched.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Line<'a> {
    header: Header,
    #[serde(borrow)]
    body: &'a RawValue,
    hash: Hash,
}

/// What every future format of a line keeps, so that an unknown one can be named and not just called unreadable.
#[derive(Deserialize)]
struct Outline {
    header: OutlineHeader,
}

#[derive(Deserialize)]
struct OutlineHeader {
    format: Format,
    id: EventId,
}

impl Event {
    /// The event as one line of JSON, without a line break at its end: `{"header":{..},"body":..,"hash":".."}`.
    ///
    /// # Errors
    /// [`JournalError::BodyAltered`] when the body is no longer JSON, so that no line can carry it.
    pub fn to_line(&self) -> Result<String, JournalError> {
        let event = self.header.id;
        check_body(&self.body).ok_or(JournalError::BodyAltered { event })?;
        let body = serde_json::from_slice(&self.body).map_err(JournalError::from)?;
        let line = Line { header: self.header.clone(), body, hash: self.hash };
        serde_json::to_string(&line).map_err(|source| JournalError::Unwritable { event, source })
    }

    /// Reads what [`Event::to_line`] wrote. It doesn't verify: see [`crate::check_event`] and the chains.
    ///
    /// # Errors
    /// [`JournalError::FormatUnknown`] for a line of a newer format, [`JournalError::Line`] for anything else
    /// that isn't an event, such as a field too many, [`JournalError::Spelling`] for a line that means an event and
    /// isn't spelt as `to_line` spells it (capital hex digits, white space, members in another order).
    pub fn from_line(line: &str) -> Result<Event, JournalError> {
        let Outline { header: OutlineHeader { format, id } } = serde_json::from_str(line)?;
        if format != Format::CURRENT {
            return Err(JournalError::FormatUnknown { event: id, found: format });
        }
        let Line { header, body, hash } = serde_json::from_str(line)?;
        let event = Event { header, body: body.get().as_bytes().to_vec(), hash };
        // The hashes cover what a line means; this covers how it is spelt, so that no byte can change unseen.
        if event.to_line()? != line {
            return Err(JournalError::Spelling { event: id });
        }
        Ok(event)
    }
}
