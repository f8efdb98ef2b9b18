//! What the tests share: ids, entries, a seeded generator, copies of a store.

use std::error::Error;
use std::fs;
use std::path::Path;

use panside_journal::{
    BootId, DeviceId, Draft, EpochId, Event, EventId, Hash, JobId, Origin, PersonId, Request, RequestId,
    Stamp, Subject,
};
use panside_store::{Appended, Entry, Meaning, Options, Store, StoreError};
use uuid::Uuid;

pub(crate) type Outcome = Result<(), Box<dyn Error>>;

/// A store that carries its log over only when it is closed.
pub(crate) fn options() -> Options {
    let mut options = Options::new(DeviceId(Uuid::from_u128(0xD0)), epoch(0));
    options.checkpoint_every = u32::MAX;
    options
}

pub(crate) fn epoch(number: u128) -> EpochId {
    EpochId(Uuid::from_u128(0xE0 + number))
}

pub(crate) fn job(number: u128) -> JobId {
    JobId(Uuid::from_u128(number))
}

pub(crate) fn request(number: u64) -> Request {
    Request { id: RequestId(Uuid::from_u128(number.into())), hash: Hash::of(&number.to_be_bytes()) }
}

pub(crate) fn origin(number: u64) -> Origin {
    let boot = BootId(Uuid::from_u128(0xB0));
    let stamp = Stamp { wall_ms: 1_700_000_000_000 + number as i64, mono_ms: number, boot };
    Origin { request: request(number), who: PersonId(Uuid::from_u128(0xA1)), stamp }
}

pub(crate) fn draft(body: &str) -> Draft {
    Draft { id: EventId(Uuid::now_v7()), kind: "reading".into(), version: 1, body: body.as_bytes().to_vec() }
}

/// The label that a job's events give: a stand-in for what the layer above makes of them.
pub(crate) fn label_of(events: &[Event]) -> String {
    format!("{{\"events\":{}}}", events.len())
}

/// What a job's events say: a stand-in too. They name nothing.
pub(crate) fn meaning_of(subject: Subject, events: &[Event]) -> Meaning {
    let label = if subject.is_shop() { String::new() } else { label_of(events) };
    Meaning { label, ..Meaning::default() }
}

/// Writes entry `number`: one event of about 150 bytes, on the job's present head.
pub(crate) fn write(store: &mut Store, job: JobId, number: u64) -> Result<Appended, StoreError> {
    write_about(store, job.into(), number)
}

/// The same about a job or the shop.
pub(crate) fn write_about(store: &mut Store, subject: Subject, number: u64) -> Result<Appended, StoreError> {
    let body = format!("{{\"number\":{number},\"note\":\"{}\"}}", "x".repeat(120));
    let expected = store.head(subject)?;
    let events = format!("{{\"events\":{}}}", expected.seq + 1);
    let label = if subject.is_shop() { String::new() } else { events };
    let (origin, drafts) = (origin(number), [draft(&body)]);
    store.append(&Entry { subject, expected, origin: &origin, drafts: &drafts, label: &label })
}

/// A store with `count` entries in three jobs, numbered from 1.
pub(crate) fn store_with(dir: &Path, count: u64) -> Result<Store, StoreError> {
    let mut store = Store::open(dir, options())?;
    for number in 1..=count {
        write(&mut store, job(u128::from(number % 3)), number)?;
    }
    Ok(store)
}

/// Every event of every job, in no order that matters.
pub(crate) fn all_events(store: &Store) -> Result<Vec<Event>, StoreError> {
    let mut events = Vec::new();
    for row in store.jobs()? {
        events.extend(store.events(row.job)?);
    }
    events.sort_by_key(|event| event.header.device_seq);
    Ok(events)
}

/// Copies the files of a store without its lock and photos.
pub(crate) fn copy(from: &Path, to: &Path) -> std::io::Result<()> {
    fs::create_dir_all(to)?;
    for name in ["journal.db", "journal.db-wal", "journal.head"] {
        if from.join(name).exists() {
            fs::copy(from.join(name), to.join(name))?;
        }
    }
    Ok(())
}

/// The seed of a test with chance in it: fixed, or taken from `PANSIDE_SEED`.
pub(crate) fn seed() -> u64 {
    std::env::var("PANSIDE_SEED").ok().and_then(|text| text.parse().ok()).unwrap_or(20_251_125)
}

/// SplitMix64 (Steele, Lea, Flood 2014).
pub(crate) struct Chance(pub(crate) u64);

impl Chance {
    pub(crate) fn below(&mut self, limit: u64) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        (z ^ (z >> 31)) % limit
    }
}
