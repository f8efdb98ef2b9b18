//! A process killed at any moment loses nothing it confirmed.

use std::collections::{BTreeMap, BTreeSet};
use std::io::{BufRead, BufReader, Read};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;

use panside_journal::{Hash, RequestId, Subject};
use panside_store::{Standing, Store, Swept};
use tempfile::tempdir;

use crate::support::{Chance, Outcome, all_events, options, seed};

/// Lets the writer say `lines` lines and go on for some microseconds, kills it, and returns the whole lines it said.
fn killed_after(dir: &Path, what: &str, lines: u64, then_us: u64) -> std::io::Result<Vec<String>> {
    let mut child = Command::new(env!("CARGO_BIN_EXE_panside-store-writer"))
        .arg(dir)
        .args([what, "0"])
        .stdout(Stdio::piped())
        .spawn()?;
    let out = child.stdout.take().ok_or_else(|| std::io::Error::other("no output"))?;
    let mut out = BufReader::new(out);
    let mut text = String::new();
    for _ in 0..lines {
        out.read_line(&mut text)?;
    }
    std::thread::sleep(Duration::from_micros(then_us));
    child.kill()?;
    child.wait()?;
    out.read_to_string(&mut text)?;
    // A line without its end was not said to the end.
    let whole = text.rsplit_once('\n').map_or("", |(whole, _)| whole);
    Ok(whole.lines().map(str::to_owned).collect())
}

#[test]
fn a_killed_writer_loses_nothing_it_confirmed() -> Outcome {
    let seed = seed();
    let mut chance = Chance(seed);
    let dir = tempdir()?;
    let mut saved: Vec<(Subject, u64, Hash, RequestId)> = Vec::new();
    for round in 0..35 {
        let case = format!("seed {seed}, round {round}");
        // The first rounds fall into the making and opening of the store, the others all over entries and
        // checkpoints.
        let (lines, then_us) =
            if round < 10 { (0, chance.below(20_000)) } else { (chance.below(20), chance.below(4_000)) };
        for line in killed_after(dir.path(), "entries", lines, then_us)? {
            let words: Vec<&str> = line.split(' ').collect();
            let ["saved", job, seq, hash, request] = words.as_slice() else {
                return Err(format!("{case}: the writer said {line}").into());
            };
            saved.push((Subject::Job(job.parse()?), seq.parse()?, hash.parse()?, request.parse()?));
        }
        let store = Store::open(dir.path(), options())?;
        assert_eq!(*store.standing(), Standing::Ready, "{case}: {:?}", store.troubles());
        assert!(store.troubles().is_empty(), "{case}: {:?}", store.troubles());
        let events = all_events(&store)?;
        let mut last_of_request = BTreeMap::new();
        for event in &events {
            let header = &event.header;
            last_of_request.insert(header.request, (header.subject, header.subject_seq, event.hash));
        }
        for (job, seq, hash, request) in &saved {
            assert_eq!(last_of_request.get(request), Some(&(*job, *seq, *hash)), "{case}: request {request}");
        }
        // Once each: a request's events stand in one row in one job.
        let runs = events.chunk_by(|a, b| a.header.request == b.header.request).count();
        assert_eq!(runs, last_of_request.len(), "{case}: a request was written twice");
        // At most the one entry that was committed and not yet said is there beyond the confirmed ones.
        assert!(last_of_request.len() <= saved.len() + round + 1, "{case}");
    }
    assert!(saved.len() > 150, "only {} entries confirmed, too few to mean anything", saved.len());
    Ok(())
}

#[test]
fn a_killed_writer_loses_no_photo_it_confirmed_and_leaves_only_what_a_sweep_takes() -> Outcome {
    let seed = seed();
    let mut chance = Chance(seed ^ 0xF0);
    let dir = tempdir()?;
    let mut confirmed: BTreeSet<Hash> = BTreeSet::new();
    let mut last_swept = Swept::default();
    for round in 0..=25 {
        let case = format!("seed {seed}, round {round}");
        // The last kill comes for sure between a photo and the event that would name it.
        let (what, lines, then_us) =
            if round == 25 { ("unnamed", 1, 0) } else { ("photos", chance.below(5), chance.below(8_000)) };
        for line in killed_after(dir.path(), what, lines, then_us)? {
            if let Some(hash) = line.strip_prefix("photo ") {
                confirmed.insert(hash.parse()?);
            }
        }
        let mut store = Store::open(dir.path(), options())?;
        let mut named = BTreeSet::new();
        for event in all_events(&store)? {
            let body = String::from_utf8(event.body)?;
            let hash: Hash = body.trim_start_matches("{\"photo\":\"").trim_end_matches("\"}").parse()?;
            assert!(store.photo(&hash).is_ok(), "{case}: an event names photo {hash}, which is not there");
            named.insert(hash);
        }
        for hash in &confirmed {
            assert!(store.photo(hash).is_ok() && store.thumbnail(hash).is_ok(), "{case}: photo {hash}");
        }
        let swept = store.sweep(&named)?;
        last_swept = swept;
        confirmed.retain(|hash| named.contains(hash));
        let mut files = BTreeSet::new();
        for sub in std::fs::read_dir(dir.path().join("photos")).into_iter().flatten() {
            for file in std::fs::read_dir(sub?.path())? {
                files.insert(file?.file_name().to_string_lossy().replace(".jpg", "").parse::<Hash>()?);
            }
        }
        assert_eq!(files, named, "{case}: what is left after a sweep is what is named");
    }
    assert!(confirmed.len() > 20, "only {} photos confirmed", confirmed.len());
    assert_eq!(
        (last_swept.files, last_swept.rows),
        (2, 1),
        "a photo without its event: picture, thumbnail, row"
    );
    Ok(())
}
