//! A power cut at any sync: what was confirmed is there, from what a disk must still have and from what it may have
//! beside that. A kill does not show a missing sync, this does.

use std::fs;
use std::os::unix::fs::MetadataExt;
use std::path::{Path, PathBuf};
use std::process::Command;

use panside_journal::{Hash, RequestId};
use panside_store::{Standing, Store, StoreError};
use tempfile::{TempDir, tempdir};

use crate::faults::shared_library;
use crate::support::{Chance, Outcome, all_events, options, seed};

const ENTRIES: usize = 12;
const BLOCK: usize = 4096;

/// A store whose writer lost its power, and what it had said by then.
struct Cut {
    store: TempDir,
    mirror: TempDir,
    said: String,
    finished: bool,
}

/// Lets the writer work until the power goes after its sync number `at`.
fn cut(at: u64, lies: Option<&str>) -> Result<Cut, Box<dyn std::error::Error>> {
    let (store, mirror) = (tempdir()?, tempdir()?);
    let folder = fs::canonicalize(store.path())?.join("bay");
    let mut writer = Command::new(env!("CARGO_BIN_EXE_panside-store-writer"));
    writer.arg(&folder).args(["entries", &ENTRIES.to_string()]);
    writer.env("LD_PRELOAD", shared_library("cut.c")?);
    writer.env("CUT_STORE", fs::canonicalize(store.path())?).env("CUT_MIRROR", mirror.path());
    writer.env("CUT_AT", at.to_string()).envs(lies.map(|end| ("CUT_LIES", end)));
    let output = writer.output()?;
    Ok(Cut { store, mirror, said: String::from_utf8(output.stdout)?, finished: output.status.success() })
}

/// Puts together what the disk has after the cut. Without chance that is what was synced and no more; with it each block
/// and each name that was written and not synced may have reached the disk or not.
fn after(cut: &Cut, mut chance: Option<Chance>) -> std::io::Result<TempDir> {
    let disk = tempdir()?;
    lay(&cut.mirror, cut.store.path(), disk.path(), &mut chance)?;
    Ok(disk)
}

fn lay(mirror: &TempDir, live: &Path, to: &Path, chance: &mut Option<Chance>) -> std::io::Result<()> {
    let inode = fs::metadata(live)?.ino();
    let names = fs::read_to_string(mirror.path().join(format!("dir-{inode}"))).unwrap_or_default();
    let mut entries: Vec<(u64, String)> = names
        .lines()
        .filter_map(|line| line.split_once(' '))
        .filter_map(|(inode, name)| Some((inode.parse().ok()?, name.to_owned())))
        .collect();
    if let Some(chance) = chance {
        for entry in fs::read_dir(live)? {
            let entry = entry?;
            let (inode, name) = (entry.metadata()?.ino(), entry.file_name().to_string_lossy().into_owned());
            if chance.below(2) == 0 {
                entries.retain(|(_, there)| *there != name);
                entries.push((inode, name));
            }
        }
    }
    for (inode, name) in entries {
        let at = find(live, inode);
        if at.as_ref().is_some_and(|path| path.is_dir()) {
            fs::create_dir(to.join(&name))?;
            lay(mirror, at.as_deref().unwrap_or(live), &to.join(&name), chance)?;
            continue;
        }
        let mut bytes = fs::read(mirror.path().join(format!("file-{inode}"))).unwrap_or_default();
        if let (Some(chance), Some(path)) = (chance.as_mut(), at) {
            mix(&mut bytes, &fs::read(path)?, chance);
        }
        fs::write(to.join(name), bytes)?;
    }
    Ok(())
}

/// The entry of a folder with this number, whatever it is called by now.
fn find(folder: &Path, inode: u64) -> Option<PathBuf> {
    let entries = fs::read_dir(folder).ok()?;
    entries
        .flatten()
        .map(|entry| entry.path())
        .find(|path| fs::metadata(path).is_ok_and(|m| m.ino() == inode))
}

/// Lets some blocks of what was written reach the disk.
fn mix(durable: &mut Vec<u8>, live: &[u8], chance: &mut Chance) {
    for (number, block) in live.chunks(BLOCK).enumerate() {
        if chance.below(2) == 0 {
            let end = number * BLOCK + block.len();
            if durable.len() < end {
                durable.resize(end, 0);
            }
            durable[number * BLOCK..end].copy_from_slice(block);
        }
    }
}

/// How many confirmed entries a disk has lost, of how many; `Err` where it has entries twice. An honest disk has nothing to
/// be said of it.
fn lost(
    disk: &Path,
    said: &str,
    honest: bool,
    case: &str,
) -> Result<(usize, usize), Box<dyn std::error::Error>> {
    let confirmed: Vec<(Hash, RequestId)> = said
        .lines()
        .filter_map(|line| line.strip_prefix("saved "))
        .map(|line| {
            let words: Vec<&str> = line.split(' ').collect();
            Ok((words[2].parse()?, words[3].parse()?))
        })
        .collect::<Result<_, Box<dyn std::error::Error>>>()?;
    let store = match Store::open(&disk.join("bay"), options()) {
        Ok(store) => store,
        Err(StoreError::DatabaseGone { .. }) => return Ok((confirmed.len(), confirmed.len())),
        Err(error) => return Err(format!("{case}: {error}").into()),
    };
    let events = all_events(&store)?;
    let there = |(hash, request): &(Hash, RequestId)| {
        events.iter().rfind(|event| event.header.request == *request).map(|event| event.hash) == Some(*hash)
    };
    let lost = confirmed.iter().filter(|entry| !there(entry)).count();
    assert!(lost == 0 || !store.troubles().is_empty(), "{case}: {lost} entries are gone and nothing is said");
    if honest {
        assert_eq!(*store.standing(), Standing::Ready, "{case}: {:?}", store.troubles());
        assert!(store.troubles().is_empty(), "{case}: {:?}", store.troubles());
    }
    let requests = events.chunk_by(|a, b| a.header.request == b.header.request).count();
    assert!(requests <= confirmed.len() + 1, "{case}: {requests} requests, {} confirmed", confirmed.len());
    Ok((lost, confirmed.len()))
}

#[test]
fn a_power_cut_after_any_sync_loses_nothing_that_was_confirmed() -> Outcome {
    let seed = seed();
    let mut confirmed = 0;
    for at in 1.. {
        let cut = cut(at, None)?;
        let kept = after(&cut, None)?;
        let case = format!("cut after sync {at}");
        let (gone, of) = lost(kept.path(), &cut.said, true, &case)?;
        assert_eq!(gone, 0, "{case}");
        for time in 0..3 {
            let case = format!("seed {seed}, {case}, and more by chance, time {time}");
            let mixed = after(&cut, Some(Chance(seed ^ at << 8 ^ time)))?;
            assert_eq!(lost(mixed.path(), &cut.said, true, &case)?.0, 0, "{case}");
        }
        confirmed += of;
        if cut.finished {
            break;
        }
    }
    assert!(confirmed > 100, "only {confirmed} entries confirmed over all cuts, too few to mean anything");
    Ok(())
}

/// The same on a disk that answers the log's syncs and does not do them: so the test above can fail.
#[test]
fn a_disk_that_lies_about_the_log_loses_entries_and_the_loss_is_said() -> Outcome {
    let mut gone = 0;
    for at in (6..60).step_by(3) {
        let cut = cut(at, Some("/journal.db-wal"))?;
        gone += lost(after(&cut, None)?.path(), &cut.said, false, &format!("cut after sync {at}"))?.0;
    }
    assert!(gone > 10, "only {gone} entries lost: the cut does not bite");
    Ok(())
}
