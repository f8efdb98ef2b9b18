//! The other process of the fault tests: it opens a store, writes entries or photos, and says on its standard
//! output what was confirmed, one line each. It is killed, or its disk fails, while it does.
//!
//! `panside-store-writer DIR entries|photos|unnamed COUNT` (COUNT 0: until it is killed; `unnamed`: one photo that no event
//! names, and then nothing more). Lines:
//! `saved JOB SEQ HASH REQUEST`, `photo HASH`, `unconfirmed`, `reopened`, `full`.

#![allow(clippy::disallowed_methods, reason = "a process of its own, with clock and chance")]

use std::error::Error;
use std::io::Write;
use std::path::Path;

use panside_journal::{
    BootId, DeviceId, Draft, EpochId, EventId, Hash, Head, JobId, Origin, PersonId, Request, RequestId, Stamp,
};
use panside_store::{Appended, Entry, NewPhoto, Options, PhotoFormat, Standing, Store, StoreError};
use uuid::Uuid;

type Outcome<T> = Result<T, Box<dyn Error>>;

fn main() -> Outcome<()> {
    let args: Vec<String> = std::env::args().collect();
    let [_, dir, what, count] = args.as_slice() else {
        return Err("use: panside-store-writer DIR entries|photos|unnamed COUNT".into());
    };
    let mut options = Options::new(DeviceId(Uuid::now_v7()), EpochId(Uuid::now_v7()));
    // Often, so that kills and faults meet checkpoints too.
    options.checkpoint_every = 7;
    let mut store = Store::open(Path::new(dir), options)?;
    let count: u64 = count.parse()?;
    let mut number = 0;
    while count == 0 || number < count {
        number += 1;
        let body = match what.as_str() {
            "unnamed" => {
                put_photo(&mut store)?;
                loop {
                    std::thread::park();
                }
            }
            "photos" => format!("{{\"photo\":\"{}\"}}", put_photo(&mut store)?),
            _ => format!("{{\"number\":{number}}}"),
        };
        write(&mut store, JobId(Uuid::from_u128(u128::from(number % 3))), &body, 1 + number % 2)?;
    }
    store.close()?;
    Ok(())
}

fn say(line: &str) -> Outcome<()> {
    let mut out = std::io::stdout().lock();
    writeln!(out, "{line}")?;
    out.flush()?;
    Ok(())
}

/// Writes one entry of some events, as a careful caller does: after a write that was not confirmed it reopens the
/// store, asks for the answer, and only then tries again.
fn write(store: &mut Store, job: JobId, body: &str, events: u64) -> Outcome<()> {
    let request = Request { id: RequestId(Uuid::now_v7()), hash: Hash::of(body.as_bytes()) };
    let stamp = Stamp { wall_ms: 0, mono_ms: 0, boot: BootId(Uuid::nil()) };
    let origin = Origin { request, who: PersonId(Uuid::from_u128(0xA1)), stamp };
    let draft = || Draft {
        id: EventId(Uuid::now_v7()),
        kind: "reading".into(),
        version: 1,
        body: body.as_bytes().to_vec(),
    };
    let drafts: Vec<Draft> = (0..events).map(|_| draft()).collect();
    for _ in 0..20 {
        let expected = store.head(job)?;
        match store.append(&Entry {
            subject: job.into(),
            expected,
            origin: &origin,
            drafts: &drafts,
            label: "{}",
        }) {
            Ok(Appended { head: Head { seq, hash }, .. }) => {
                return say(&format!("saved {job} {seq} {hash} {}", request.id));
            }
            Err(StoreError::DiskFull { .. }) => say("full")?,
            Err(StoreError::Unconfirmed { .. } | StoreError::Faulted { .. }) => {
                say("unconfirmed")?;
                refuses_until_reopened(store, &request, job)?;
            }
            Err(error) => return Err(error.into()),
        }
    }
    Err("gave up after 20 tries".into())
}

fn refuses_until_reopened(store: &mut Store, request: &Request, job: JobId) -> Outcome<()> {
    if !matches!(store.standing(), Standing::Faulted { .. }) {
        return Err("the store is not faulted after an unconfirmed write".into());
    }
    if !matches!(store.answered(job, request), Err(StoreError::Faulted { .. })) {
        return Err("a faulted store answered a request".into());
    }
    if !matches!(store.put_draft(job, "key", "text"), Err(StoreError::Faulted { .. })) {
        return Err("a faulted store took a write".into());
    }
    store.reopen()?;
    say("reopened")
}

fn put_photo(store: &mut Store) -> Outcome<Hash> {
    // Not a picture: the store doesn't look inside. Big enough that kills meet it half written.
    let bytes: Vec<u8> = Uuid::now_v7().as_bytes().repeat(20_000);
    let job = JobId(Uuid::nil());
    let photo = NewPhoto {
        job,
        format: PhotoFormat::Jpeg,
        bytes: &bytes,
        thumbnail: &bytes[..5_000],
        width: 1,
        height: 1,
    };
    let hash = store.put_photo(&photo)?;
    say(&format!("photo {hash}"))?;
    Ok(hash)
}
