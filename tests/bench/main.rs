//! How long the store takes, beside what the disk and SQLite take for the same at the same time. `cargo xtask bench` runs
//! it and shows what it prints; nothing is held against it: times on a shared machine are no test.
//!
//! `store_bench JOBS EVENTS DEMO`: a store of so many jobs of so many events each is made; `DEMO` is a store with one
//! walked job, for opening a job and saving its record, and one that was only started, for entries beside long work.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "times and files are what is looked at"
)]

mod beside;
mod large;
mod times;

use std::error::Error;
use std::fs::{File, OpenOptions};
use std::io::Write;
use std::path::Path;

use panside_bay::Bay;
use panside_bay::clock::SystemClock;
use panside_journal::{Event, Head, JobId};
use panside_store::{Entry, Options, Store, Verify};
use rusqlite::Connection;
use tempfile::TempDir;
use uuid::Uuid;

use large::{body, draft, label_of, options, origin};
use times::{Times, row};

type Outcome<T> = Result<T, Box<dyn Error>>;

/// Entries that are timed, in turns of [`TURN`] with the peer's writes, so that both meet the same machine.
const ENTRIES: usize = 1_500;
const TURN: usize = 50;
/// Openings and readings that are timed.
const OPENINGS: usize = 9;

fn main() -> Outcome<()> {
    let args: Vec<String> = std::env::args().collect();
    let [_, jobs, events, demo] = args.as_slice() else {
        return Err("use: store_bench JOBS EVENTS DEMO-STORE".into());
    };
    println!("{:<44} {:>10} {:>10} {:>7}  wanted", "store", "ours", "peer", "ratio");
    let small = TempDir::new()?;
    entries("entry, empty store", small.path())?;
    let large = TempDir::new()?;
    let store = large::store(large.path(), jobs.parse()?, events.parse()?)?;
    let name = format!("{} events in {jobs} jobs", store.jobs()?.len() * events.parse::<usize>()?);
    store.close()?;
    entries(&format!("entry, {name}"), large.path())?;
    opening(&format!("open, {name}"), large.path())?;
    rebuild(&format!("rebuild, {name}"), large.path())?;
    one_job(Path::new(demo))?;
    beside::rows(Path::new(demo))
}

/// Entries from asked to acknowledged, beside writing and syncing as many bytes.
fn entries(name: &str, dir: &Path) -> Outcome<()> {
    let mut store = Store::open(dir, Options { verify: Verify::Marked, ..options() })?;
    let mut raw = OpenOptions::new().create(true).append(true).open(dir.join("raw"))?;
    let (mut ours, mut peer) = (Times::default(), Times::default());
    let job = JobId(Uuid::now_v7());
    let mut head = Head::NONE;
    for turn in 0..ENTRIES / TURN {
        for number in 0..TURN {
            let (origin, drafts) = (origin(), [draft((turn * TURN + number) as u64)]);
            let entry =
                Entry { subject: job.into(), expected: head, origin: &origin, drafts: &drafts, label: "{}" };
            head = ours.time(|| store.append(&entry))?.head;
        }
        let bytes = body(turn as u64).into_bytes();
        for _ in 0..TURN {
            peer.time(|| write(&mut raw, &bytes))?;
        }
    }
    row(&format!("{name}: p50"), ours.percentile(50), peer.percentile(50), "<= 2.5");
    row(&format!("{name}: p99"), ours.percentile(99), peer.percentile(99), "<= 3");
    store.close()?;
    Ok(std::fs::remove_file(dir.join("raw"))?)
}

fn write(file: &mut File, bytes: &[u8]) -> std::io::Result<()> {
    file.write_all(bytes)?;
    file.sync_data()
}

/// Opening, beside SQLite reading as many rows as there are jobs.
fn opening(name: &str, dir: &Path) -> Outcome<()> {
    let (mut ours, mut peer) = (Times::default(), Times::default());
    for _ in 0..OPENINGS {
        let store = ours.time(|| Store::open(dir, Options { verify: Verify::Marked, ..options() }))?;
        if !store.troubles().is_empty() {
            return Err(format!("{:?}", store.troubles()).into());
        }
        store.close()?;
        peer.time(|| -> Outcome<usize> {
            let conn = Connection::open(dir.join("journal.db"))?;
            let mut query = conn.prepare("SELECT subject, head_seq, head_hash, label FROM heads")?;
            let rows = query.query_map([], |row| {
                Ok((
                    row.get::<_, Vec<u8>>(0)?,
                    row.get::<_, i64>(1)?,
                    row.get::<_, Vec<u8>>(2)?,
                    row.get::<_, String>(3)?,
                ))
            })?;
            Ok(rows.collect::<Result<Vec<_>, _>>()?.len())
        })?;
    }
    row(name, ours.percentile(50), peer.percentile(50), "<= 2 and <= 150 ms");
    let store = Store::open(dir, Options { verify: Verify::Marked, ..options() })?;
    let mut verifying = Times::default();
    let found = verifying.time(|| store.verifier().run())?;
    println!(
        "{:<44} {:>10}   {} troubles, beside the work",
        "  verifying the rest",
        verifying.shown(50),
        found.len()
    );
    Ok(store.close()?)
}

/// Making everything derived anew, beside SQLite reading the same rows with their JSON parsed.
fn rebuild(name: &str, dir: &Path) -> Outcome<()> {
    let (mut ours, mut peer) = (Times::default(), Times::default());
    let mut store = Store::open(dir, Options { verify: Verify::Marked, ..options() })?;
    ours.time(|| store.rebuild(&label_of))?;
    store.close()?;
    peer.time(|| -> Outcome<u64> {
        let conn = Connection::open(dir.join("journal.db"))?;
        let mut query = conn.prepare("SELECT body FROM events")?;
        let mut rows = query.query([])?;
        let mut sum = 0;
        while let Some(row) = rows.next()? {
            let body: large::Body<'_> = serde_json::from_str(row.get_ref(0)?.as_str()?)?;
            sum += body.number + body.note.len() as u64;
        }
        Ok(sum)
    })?;
    row(name, ours.percentile(50), peer.percentile(50), "<= 2.5");
    Ok(())
}

/// Opening one walked job for a screen.
fn one_job(dir: &Path) -> Outcome<()> {
    let mut times = Times::default();
    let mut shown = (0, 0);
    for _ in 0..OPENINGS {
        let mut bay = Bay::open_at_once(dir, Box::new(SystemClock::new()), None)?;
        let line = bay.jobs()?.into_iter().max_by_key(|line| line.events).ok_or("no job to open")?;
        let page = times.time(|| bay.page(line.job))?;
        shown = (line.events, page.view.steps.len());
        bay.close()?;
    }
    let name = format!("open one job, {} events, {} steps", shown.0, shown.1);
    println!("{name:<44} {:>10} {:>10} {:>7}  <= 50 ms", times.shown(50), "-", "-");
    Ok(())
}

/// The head of a list of events.
fn head_of(events: &[Event]) -> Head {
    events.last().map_or(Head::NONE, |last| Head { seq: last.header.subject_seq, hash: last.hash })
}
