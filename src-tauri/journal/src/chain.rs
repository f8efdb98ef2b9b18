//! The two chains of hashes: one over a device's events, one over the events about a subject: a job, or the shop as
//! one device knows it.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::{DeviceId, Event, EventId, Format, Hash, Header, JournalError, Subject};

/// The newest event of a chain: what the next one must follow.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Head {
    /// Its number in the chain; 0 when there is no event yet.
    pub seq: u64,
    /// Its hash; [`Hash::NONE`] when there is no event yet.
    pub hash: Hash,
}

impl Head {
    /// The head of a chain without events.
    pub const NONE: Head = Head { seq: 0, hash: Hash::NONE };
}

/// Checks one event by itself: its format, its body against the header, its header against its hash.
///
/// # Errors
/// [`JournalError::FormatUnknown`], [`JournalError::BodyAltered`], [`JournalError::HashDiffers`] or
/// [`JournalError::ShopOfOther`].
pub fn check_event(header: &Header, body: &[u8], hash: &Hash) -> Result<(), JournalError> {
    let event = header.id;
    if header.format != Format::CURRENT {
        return Err(JournalError::FormatUnknown { event, found: header.format });
    }
    let found = header.hash()?;
    if found != *hash {
        return Err(JournalError::HashDiffers { event, kept: *hash, found });
    }
    // The header is known to be whole here, so a difference can only lie in the body.
    if Hash::of(body) != header.body_hash {
        return Err(JournalError::BodyAltered { event });
    }
    match header.subject {
        Subject::Shop(device) if device != header.device => Err(JournalError::ShopOfOther { event }),
        _ => Ok(()),
    }
}

/// Follows one chain event by event. It looks at the links only; [`check_event`] looks at the event itself. They
/// are apart so that a walk over a whole journal hashes each event once and links it into both chains.
#[derive(Clone, Debug)]
pub struct Chain {
    which: Which,
    owner: Option<Owner>,
    head: Head,
}

#[derive(Clone, Copy, Debug)]
enum Which {
    Device,
    Subject,
}

/// Whose chain it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Owner {
    Device(DeviceId),
    Subject(Subject),
}

/// An event seen as a link of one chain.
struct Link {
    owner: Owner,
    seq: u64,
    prev: Hash,
}

impl Which {
    fn name(self) -> &'static str {
        match self {
            Which::Device => "device",
            Which::Subject => "subject",
        }
    }

    fn link(self, header: &Header) -> Link {
        match self {
            Which::Device => {
                let owner = Owner::Device(header.device);
                Link { owner, seq: header.device_seq, prev: header.prev_device }
            }
            Which::Subject => {
                let owner = Owner::Subject(header.subject);
                Link { owner, seq: header.subject_seq, prev: header.prev_subject }
            }
        }
    }
}

/// What is said of an event that stands in the chain of another owner.
fn stranger(event: EventId, expected: Owner, found: Owner) -> Option<JournalError> {
    match (expected, found) {
        (Owner::Device(expected), Owner::Device(found)) if expected != found => {
            Some(JournalError::OtherDevice { event, expected, found })
        }
        (Owner::Subject(expected), Owner::Subject(found)) if expected != found => {
            Some(JournalError::OtherSubject { event, expected, found })
        }
        _ => None,
    }
}

impl Chain {
    /// A device's chain from its first event on; the first event says whose chain it is.
    pub fn of_device() -> Chain {
        Chain { which: Which::Device, owner: None, head: Head::NONE }
    }

    /// A subject's chain from its first event on; the first event says whose chain it is.
    pub fn of_subject() -> Chain {
        Chain { which: Which::Subject, owner: None, head: Head::NONE }
    }

    /// A device's chain from a head on that is known to be good.
    pub fn of_device_from(device: DeviceId, head: Head) -> Chain {
        Chain { which: Which::Device, owner: Some(Owner::Device(device)), head }
    }

    /// A subject's chain from a head on that is known to be good.
    pub fn of_subject_from(subject: Subject, head: Head) -> Chain {
        Chain { which: Which::Subject, owner: Some(Owner::Subject(subject)), head }
    }

    /// The newest event linked so far.
    pub fn head(&self) -> Head {
        self.head
    }

    /// Links the next event. After an error the chain stays where it was.
    ///
    /// # Errors
    /// [`JournalError::OtherDevice`] or [`JournalError::OtherSubject`], [`JournalError::SequenceGap`],
    /// [`JournalError::PreviousDiffers`].
    pub fn link(&mut self, header: &Header, hash: &Hash) -> Result<(), JournalError> {
        let (event, chain) = (header.id, self.which.name());
        let link = self.which.link(header);
        let owner = self.owner.unwrap_or(link.owner);
        if let Some(stranger) = stranger(event, owner, link.owner) {
            return Err(stranger);
        }
        let expected = self.head.seq.saturating_add(1);
        if link.seq != expected {
            return Err(JournalError::SequenceGap { event, chain, expected, found: link.seq });
        }
        if link.prev != self.head.hash {
            return Err(JournalError::PreviousDiffers {
                event,
                chain,
                named: link.prev,
                found: self.head.hash,
            });
        }
        self.owner = Some(owner);
        self.head = Head { seq: link.seq, hash: *hash };
        Ok(())
    }
}

/// Verifies all events of one device, oldest first, and returns the head to compare with a witness.
///
/// # Errors
/// The first event that doesn't fit, as [`check_event`] and [`Chain::link`] say it.
pub fn verify_device_chain<'a>(events: impl IntoIterator<Item = &'a Event>) -> Result<Head, JournalError> {
    verify(Chain::of_device(), events)
}

/// Verifies all events about one subject, oldest first, without the others, and returns the head to compare with a
/// witness.
///
/// # Errors
/// The first event that doesn't fit, as [`check_event`] and [`Chain::link`] say it.
pub fn verify_subject_chain<'a>(events: impl IntoIterator<Item = &'a Event>) -> Result<Head, JournalError> {
    verify(Chain::of_subject(), events)
}

fn verify<'a>(mut chain: Chain, events: impl IntoIterator<Item = &'a Event>) -> Result<Head, JournalError> {
    for event in events {
        check_event(&event.header, &event.body, &event.hash)?;
        chain.link(&event.header, &event.hash)?;
    }
    Ok(chain.head())
}
