//! A disk that fails or is full. A small library between the writer and its C library makes single calls fail, or
//! tells which calls were made in which order: a kill doesn't show a missing sync, this does.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use std::sync::{Mutex, OnceLock};

use panside_journal::{Hash, RequestId};
use panside_store::{Standing, Store};
use tempfile::{TempDir, tempdir};

use crate::support::{Outcome, all_events, options};

const ENTRIES: usize = 12;

/// Builds a library of `tests/support` once. It needs a C compiler, as the bundled SQLite does.
pub(crate) fn shared_library(source: &'static str) -> Result<PathBuf, String> {
    static BUILT: OnceLock<Result<TempDir, String>> = OnceLock::new();
    static BUILDING: Mutex<()> = Mutex::new(());
    let dir =
        BUILT.get_or_init(|| tempdir().map_err(|error| error.to_string())).as_ref().map_err(Clone::clone)?;
    let _one_at_a_time = BUILDING.lock();
    let library = dir.path().join(source).with_extension("so");
    if library.exists() {
        return Ok(library);
    }
    let source = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/support").join(source);
    let mut cc = Command::new("cc");
    cc.args(["-shared", "-fPIC", "-O1"]).arg(source).args(["-ldl", "-o"]).arg(&library);
    match cc.output() {
        Ok(cc) if cc.status.success() => Ok(library),
        Ok(cc) => Err(String::from_utf8_lossy(&cc.stderr).into_owned()),
        Err(error) => Err(format!("cc: {error}")),
    }
}

fn writer(dir: &Path, what: &str, count: usize, settings: &[(&str, &str)]) -> Result<Output, String> {
    Command::new(env!("CARGO_BIN_EXE_panside-store-writer"))
        .arg(dir)
        .args([what, &count.to_string()])
        .env("LD_PRELOAD", shared_library("shim.c")?)
        .envs(settings.iter().copied())
        .output()
        .map_err(|error| error.to_string())
}

/// What the writer said it saved, held against the store: each there, each request once.
fn compare(dir: &Path, said: &str, case: &str) -> Result<usize, Box<dyn std::error::Error>> {
    let store = Store::open(dir, options())?;
    assert_eq!(*store.standing(), Standing::Ready, "{case}: {:?}", store.troubles());
    assert!(store.troubles().is_empty(), "{case}: {:?}", store.troubles());
    let events = all_events(&store)?;
    let mut saved = 0;
    for line in said.lines().filter_map(|line| line.strip_prefix("saved ")) {
        let words: Vec<&str> = line.split(' ').collect();
        let (hash, request): (Hash, RequestId) = (words[2].parse()?, words[3].parse()?);
        let last = events.iter().rfind(|event| event.header.request == request);
        assert_eq!(last.map(|event| event.hash), Some(hash), "{case}: {line}");
        saved += 1;
    }
    let requests = events.chunk_by(|a, b| a.header.request == b.header.request).count();
    assert!(requests <= saved + 1, "{case}: {requests} requests written, {saved} confirmed");
    Ok(saved)
}

/// One kind of failure.
struct Fault {
    call: &'static str,
    file: &'static str,
    errno: &'static str,
    /// All later calls fail too.
    sticky: bool,
    /// From the fourth call on, only every so manieth is tried: there are many, and all places get their turn.
    step: usize,
}

/// What the writer went through, over all runs.
#[derive(Default)]
struct Met {
    failed_runs: u32,
    reopened: usize,
    full: usize,
}

/// Makes the first, second, third.. call fail until a run meets no failure.
fn nth_call_fails(fault: &Fault) -> Result<Met, Box<dyn std::error::Error>> {
    let Fault { call, file, errno, sticky, step } = *fault;
    let mut met = Met::default();
    for nth in (1..4).chain((4..).step_by(step)) {
        let case = format!("{call} {nth} on {file} fails with {errno}, for ever: {sticky}");
        let dir = tempdir()?;
        let nth_text = nth.to_string();
        let mut settings =
            vec![("SHIM_CALL", call), ("SHIM_MATCH", file), ("SHIM_NTH", &nth_text), ("SHIM_ERRNO", errno)];
        if sticky {
            settings.push(("SHIM_STICKY", "1"));
        }
        let output = writer(dir.path(), "entries", ENTRIES, &settings)?;
        let said = String::from_utf8(output.stdout)?;
        let (reopened, full) = (said.matches("reopened").count(), said.matches("full").count());
        let saved = compare(dir.path(), &said, &case)?;
        if output.status.success() {
            assert_eq!(saved, ENTRIES, "{case}");
        } else {
            // One failure is survived unless it falls into opening or closing.
            assert!(sticky || saved == 0 || saved == ENTRIES, "{case}: {said}");
        }
        if output.status.success() && reopened + full == 0 {
            return Ok(met);
        }
        met.failed_runs += 1;
        met.reopened += reopened;
        met.full += full;
        assert!(nth < 1_000, "{case}: no end");
    }
    Ok(met)
}

const LOG: &str = "/journal.db-wal";
const EIO: &str = "5";
const ENOSPC: &str = "28";

#[test]
fn a_failed_sync_of_the_log_stops_writing_until_the_store_is_reopened() -> Outcome {
    let fault = Fault { call: "sync", file: LOG, errno: EIO, sticky: false, step: 3 };
    let met = nth_call_fails(&fault)?;
    assert!(met.reopened >= 3, "reopened {} times", met.reopened);
    let met = nth_call_fails(&Fault { sticky: true, step: 5, ..fault })?;
    assert!(met.failed_runs >= 4 && met.reopened <= 20, "{} runs failed", met.failed_runs);
    Ok(())
}

#[test]
fn a_failed_write_of_the_log_stops_writing_until_the_store_is_reopened() -> Outcome {
    let met = nth_call_fails(&Fault { call: "write", file: LOG, errno: EIO, sticky: false, step: 29 })?;
    assert!(met.reopened >= 3, "reopened {} times", met.reopened);
    Ok(())
}

#[test]
fn a_failed_head_file_leaves_the_entry_unconfirmed() -> Outcome {
    for call in ["sync", "write"] {
        let met = nth_call_fails(&Fault { call, file: "/journal.head", errno: EIO, sticky: false, step: 4 })?;
        assert!(met.reopened >= 2, "{call}: reopened {} times", met.reopened);
    }
    Ok(())
}

#[test]
fn a_failed_checkpoint_refuses_the_next_entry_and_loses_none() -> Outcome {
    for (call, step) in [("write", 5), ("sync", 1)] {
        let met = nth_call_fails(&Fault { call, file: "/journal.db", errno: EIO, sticky: false, step })?;
        assert!(met.reopened >= 1, "{call}: reopened {} times", met.reopened);
    }
    Ok(())
}

#[test]
fn a_full_disk_refuses_entries_and_goes_on_when_there_is_room() -> Outcome {
    let fault = Fault { call: "write", file: LOG, errno: ENOSPC, sticky: false, step: 29 };
    let met = nth_call_fails(&fault)?;
    assert!(met.full >= 3 && met.reopened == 0, "full {} times, reopened {}", met.full, met.reopened);
    let met = nth_call_fails(&Fault { sticky: true, step: 37, ..fault })?;
    assert!(met.full >= 40, "a disk that stays full refuses every try: {}", met.full);
    Ok(())
}

#[test]
fn a_photo_and_its_event_are_on_disk_before_they_are_called_saved() -> Outcome {
    let dir = tempdir()?;
    let told = dir.path().join("told");
    let store = dir.path().join("store");
    let output = writer(&store, "photos", 1, &[("SHIM_TRACE", &told.to_string_lossy())])?;
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let told = fs::read_to_string(told)?;
    let mut calls = told.lines();
    // In this order, with anything between. Each line of output is a write to a pipe.
    for (call, end) in [
        ("write", ".jpg.part"),
        ("sync", ".jpg.part"),
        ("rename", ".jpg"),
        ("sync", "/thumbs/"),
        ("write", ".jpg.part"),
        ("sync", ".jpg.part"),
        ("rename", ".jpg"),
        ("sync", "/photos/"),
        ("sync", "/journal.db-wal"),
        ("write", "pipe:"),
        ("write", "/journal.db-wal"),
        ("sync", "/journal.db-wal"),
        ("write", "/journal.head"),
        ("sync", "/journal.head"),
        ("write", "pipe:"),
    ] {
        // A folder is named in the middle of its path, a file at its end.
        let fits = |line: &str| {
            line.starts_with(call) && line.contains(end) && line.ends_with(end) != end.ends_with(['/', ':'])
        };
        assert!(calls.any(fits), "no {call} of {end} at its place in:\n{told}");
    }
    Ok(())
}

/// The system may have dropped what a failed sync was to write, and call it written the next time.
#[test]
fn what_a_failed_sync_left_is_written_anew_before_the_store_goes_on() -> Outcome {
    let dir = tempdir()?;
    let told = dir.path().join("told");
    // The fifth sync of the log falls into the entries.
    let settings = [
        ("SHIM_CALL", "sync"),
        ("SHIM_MATCH", LOG),
        ("SHIM_NTH", "5"),
        ("SHIM_ERRNO", EIO),
        ("SHIM_TRACE", &told.to_string_lossy()),
    ];
    let output = writer(&dir.path().join("store"), "entries", ENTRIES, &settings)?;
    let said = String::from_utf8(output.stdout)?;
    assert!(output.status.success() && said.contains("unconfirmed\nreopened\nsaved"), "{said}");
    let told = fs::read_to_string(told)?;
    let after = told.split("failed ").nth(1).ok_or("nothing failed")?;
    // Between "unconfirmed" and "reopened".
    let reopening = after.split("write pipe:").nth(1).ok_or("nothing said")?;
    let place = |call: &str, file: &str| {
        reopening.lines().position(|line| line.starts_with(call) && line.ends_with(file))
    };
    let order =
        [place("write", "/journal.db"), place("sync", "/journal.db"), place("write", "/journal.head")];
    assert!(order.iter().all(Option::is_some) && order.is_sorted(), "{order:?} in:\n{reopening}");
    Ok(())
}
