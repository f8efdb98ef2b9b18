//! Tests of the journal as its users see it.
//!
//! - `canonical`: the header's bytes against RFC 8785
//! - `chain`: what sealing refuses and what verifying finds
//! - `samples`: events written by earlier versions stay readable

mod canonical;
mod chain;
mod samples;

use panside_journal::{
    BootId, DeviceId, Draft, EpochId, Event, EventId, Hash, Head, JobId, JournalError, Origin, PersonId,
    Place, Request, RequestId, Stamp, Subject, seal,
};
use uuid::Uuid;

/// An id of version 7 with a number in it that tells it apart.
pub(crate) fn event_id(number: u64) -> EventId {
    let mut bytes = [0; 10];
    bytes[2..].copy_from_slice(&number.to_be_bytes());
    EventId(uuid::Builder::from_unix_timestamp_millis(1_700_000_000_000 + number, &bytes).into_uuid())
}

pub(crate) fn job(number: u128) -> Subject {
    Subject::Job(JobId(Uuid::from_u128(number)))
}

/// Writes events like a store does: one device, any number of jobs.
pub(crate) struct Pen {
    pub(crate) device: DeviceId,
    pub(crate) epoch: EpochId,
    pub(crate) events: Vec<Event>,
}

impl Pen {
    pub(crate) fn new() -> Pen {
        Pen { device: DeviceId(Uuid::from_u128(0xD0)), epoch: EpochId(Uuid::from_u128(0xE0)), events: vec![] }
    }

    pub(crate) fn place(&self, subject: Subject) -> Place {
        let about = self.events.iter().rev().find(|event| event.header.subject == subject);
        Place {
            device: self.device,
            epoch: self.epoch,
            device_head: self
                .events
                .last()
                .map_or(Head::NONE, |e| Head { seq: e.header.device_seq, hash: e.hash }),
            subject,
            subject_head: about.map_or(Head::NONE, |e| Head { seq: e.header.subject_seq, hash: e.hash }),
        }
    }

    pub(crate) fn write(&mut self, subject: Subject, body: &str) -> Result<(), JournalError> {
        let number = self.events.len() as u64 + 1;
        let draft =
            Draft { id: event_id(number), kind: "reading".into(), version: 1, body: body.as_bytes().into() };
        self.events.push(seal(&draft, &self.place(subject), &origin(number))?);
        Ok(())
    }
}

/// Someone's request number `number`, one second after the one before.
pub(crate) fn origin(number: u64) -> Origin {
    Origin {
        request: Request {
            id: RequestId(Uuid::from_u128(number.into())),
            hash: Hash::of(&number.to_be_bytes()),
        },
        who: PersonId(Uuid::from_u128(0xA1)),
        stamp: Stamp {
            wall_ms: 1_700_000_000_000 + number as i64 * 1_000,
            mono_ms: 50_000 + number * 1_000,
            boot: BootId(Uuid::from_u128(0xB0)),
        },
    }
}
