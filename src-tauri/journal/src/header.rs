//! The header of an event, its canonical bytes (RFC 8785) and the hash over them.

use std::fmt;

use serde::{Deserialize, Deserializer, Serialize, Serializer, de};
use uuid::Uuid;

use crate::{BootId, DeviceId, EpochId, EventId, Hash, JournalError, PersonId, RequestId, Stamp, Subject};

/// The largest integer that a JSON reader with double-precision numbers keeps exactly: 2^53 - 1 (RFC 7493, 2.2).
const SAFE_INTEGER: u64 = (1 << 53) - 1;

/// The format of an event, written `panside-event/N`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Format(pub u32);

impl Format {
    /// The format that [`crate::seal`] writes, and the only one there is so far.
    pub const CURRENT: Format = Format(1);

    const NAME: &str = "panside-event/";
}

impl fmt::Display for Format {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}{}", Self::NAME, self.0)
    }
}

impl Serialize for Format {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Format {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Format, D::Error> {
        let text = String::deserialize(deserializer)?;
        // The number must be spelt as it would be written, or two texts would mean one format.
        text.strip_prefix(Self::NAME)
            .and_then(|number| number.parse().ok())
            .map(Format)
            .filter(|format| format.to_string() == text)
            .ok_or_else(|| de::Error::custom(format_args!("\"{text}\" is not the format of an event")))
    }
}

/// Everything about an event but its body. The event's hash covers all of it.
///
/// The fields stand in the order of their names, as RFC 8785 sorts them (all names are ASCII).
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Header {
    /// SHA-256 of the body's bytes as they are kept.
    pub body_hash: Hash,
    /// The boot that `mono_ms` counts from.
    pub boot: BootId,
    /// The device that wrote the event.
    pub device: DeviceId,
    /// Number on the device, from 1; it runs on over epochs.
    pub device_seq: u64,
    /// The stretch of writing on the device.
    pub epoch: EpochId,
    /// The format of this header.
    pub format: Format,
    /// The event's own id.
    pub id: EventId,
    /// What kind of event it is. The layers above give the kinds; not empty.
    pub kind: String,
    /// Milliseconds since the boot; see [`Stamp::mono_ms`].
    pub mono_ms: u64,
    /// The hash of the event before it on the device, [`Hash::NONE`] for the first.
    pub prev_device: Hash,
    /// The hash of the event before it about the same subject, [`Hash::NONE`] for the first.
    pub prev_subject: Hash,
    /// The request that made it.
    pub request: RequestId,
    /// The hash of what the request asked; see [`crate::Request::hash`].
    pub request_hash: Hash,
    /// What it is about: a job, or the shop.
    pub subject: Subject,
    /// Number among the events about the subject, from 1; a job's runs on over devices.
    pub subject_seq: u64,
    /// The version of the body's form within its kind.
    pub version: u32,
    /// Wall time in ms since 1970 UTC; see [`Stamp::wall_ms`].
    pub wall_ms: i64,
    /// The person who made the entry; [`PersonId::TABLET`] where nobody acted.
    pub who: PersonId,
}

impl Header {
    /// Both clocks of the event.
    pub fn stamp(&self) -> Stamp {
        Stamp { wall_ms: self.wall_ms, mono_ms: self.mono_ms, boot: self.boot }
    }

    /// The canonical bytes that the event's hash covers.
    ///
    /// # Errors
    /// [`JournalError::Number`] for a number that RFC 8785 can't write exactly.
    pub fn canonical(&self) -> Result<Vec<u8>, JournalError> {
        let numbers = [
            ("device_seq", self.device_seq),
            ("mono_ms", self.mono_ms),
            ("subject_seq", self.subject_seq),
            ("wall_ms", self.wall_ms.unsigned_abs()),
        ];
        if let Some((field, _)) = numbers.into_iter().find(|(_, number)| *number > SAFE_INTEGER) {
            return Err(JournalError::Number { event: self.id, field });
        }
        let written = || -> serde_json::Result<Vec<u8>> {
            let mut members = Members(Vec::with_capacity(1024));
            members.hash("body_hash", &self.body_hash);
            members.id("boot", &self.boot.0);
            members.id("device", &self.device.0);
            members.value("device_seq", &self.device_seq)?;
            members.id("epoch", &self.epoch.0);
            members.value("format", &self.format)?;
            members.id("id", &self.id.0);
            members.value("kind", &self.kind)?;
            members.value("mono_ms", &self.mono_ms)?;
            members.hash("prev_device", &self.prev_device);
            members.hash("prev_subject", &self.prev_subject);
            members.id("request", &self.request.0);
            members.hash("request_hash", &self.request_hash);
            members.value("subject", &self.subject)?;
            members.value("subject_seq", &self.subject_seq)?;
            members.value("version", &self.version)?;
            members.value("wall_ms", &self.wall_ms)?;
            members.id("who", &self.who.0);
            members.0.push(b'}');
            Ok(members.0)
        };
        written().map_err(|source| JournalError::Unwritable { event: self.id, source })
    }

    /// The event's hash: SHA-256 over the format's name, a zero byte and the canonical bytes.
    ///
    /// # Errors
    /// [`JournalError::FormatUnknown`], and those of [`Header::canonical`].
    pub fn hash(&self) -> Result<Hash, JournalError> {
        if self.format != Format::CURRENT {
            return Err(JournalError::FormatUnknown { event: self.id, found: self.format });
        }
        Ok(Hash::of_domain("panside-event/1", &self.canonical()?))
    }
}

/// The members of the canonical object as they are written, in the order in which they are given.
///
/// A general RFC 8785 writer is more than ten times slower here, and opening a store hashes every header in it. This one
/// may be simple because names, hashes and ids need no escaping, and because JSON's plain integers and
/// `serde_json`'s strings are the canonical ones; a test compares with the general writer.
struct Members(Vec<u8>);

impl Members {
    fn name(&mut self, name: &str) {
        self.0.push(if self.0.is_empty() { b'{' } else { b',' });
        self.plain(name.as_bytes());
        self.0.push(b':');
    }

    fn plain(&mut self, text: &[u8]) {
        self.0.push(b'"');
        self.0.extend_from_slice(text);
        self.0.push(b'"');
    }

    fn hash(&mut self, name: &str, hash: &Hash) {
        self.name(name);
        self.plain(&hash.hex());
    }

    fn id(&mut self, name: &str, id: &Uuid) {
        self.name(name);
        let mut buffer = Uuid::encode_buffer();
        self.plain(id.hyphenated().encode_lower(&mut buffer).as_bytes());
    }

    fn value(&mut self, name: &str, value: &impl Serialize) -> serde_json::Result<()> {
        self.name(name);
        serde_json::to_writer(&mut self.0, value)
    }
}
