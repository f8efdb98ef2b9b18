//! A large store, made as another device would have sent it.

use std::path::Path;

use panside_journal::{
    BootId, DeviceId, Draft, EpochId, Event, EventId, Hash, Head, JobId, Origin, PersonId, Place, Request,
    RequestId, Stamp, seal,
};
use panside_store::{Options, Store};
use serde::Deserialize;
use uuid::Uuid;

use crate::{Outcome, head_of};

/// The body of an event here.
#[derive(Deserialize)]
pub struct Body<'a> {
    pub number: u64,
    #[serde(borrow)]
    pub note: &'a str,
}

/// Some 400 bytes, as an entry with its working has.
pub fn body(number: u64) -> String {
    format!("{{\"number\":{number},\"note\":\"{}\"}}", "x".repeat(370))
}

pub fn draft(number: u64) -> Draft {
    Draft {
        id: EventId(Uuid::now_v7()),
        kind: "entered".to_owned(),
        version: 1,
        body: body(number).into_bytes(),
    }
}

pub fn origin() -> Origin {
    let id = RequestId(Uuid::now_v7());
    let request = Request { id, hash: Hash::of(id.0.as_bytes()) };
    let stamp = Stamp { wall_ms: 1_772_438_400_000, mono_ms: 0, boot: BootId(Uuid::nil()) };
    Origin { request, who: PersonId::TABLET, stamp }
}

pub fn options() -> Options {
    Options::new(DeviceId(Uuid::now_v7()), EpochId(Uuid::now_v7()))
}

pub fn label_of(events: &[Event]) -> String {
    format!(
        "{{\"repair_order\":\"RO 1042\",\"label\":\"invented van, third gear\",\"events\":{}}}",
        events.len()
    )
}

/// A store with `jobs` jobs of `events` events each.
pub fn store(dir: &Path, jobs: u64, events: u64) -> Outcome<Store> {
    let mut store = Store::open(dir, options())?;
    let (device, epoch) = (DeviceId(Uuid::now_v7()), EpochId(Uuid::now_v7()));
    let mut device_head = Head::NONE;
    let mut batch = Vec::new();
    for number in 0..jobs {
        let subject = JobId(Uuid::now_v7()).into();
        let mut of_job: Vec<Event> = Vec::new();
        for number in 0..events {
            let place = Place { device, epoch, device_head, subject, subject_head: head_of(&of_job) };
            let event = seal(&draft(number), &place, &origin())?;
            device_head = Head { seq: event.header.device_seq, hash: event.hash };
            of_job.push(event);
        }
        batch.extend(of_job);
        if batch.len() > 20_000 || number + 1 == jobs {
            store.receive(&batch, &label_of)?;
            batch.clear();
        }
    }
    Ok(store)
}
