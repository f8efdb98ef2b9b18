//! Torn logs and flipped bits: found, or harmless. What is read is the truth or the start of it, and whatever is
//! missing is said.

use std::fs;
use std::path::Path;

use panside_journal::Event;
use panside_store::{JobRow, Options, Standing, Store, StoreError, Trouble, Verify};
use tempfile::tempdir;

use crate::support::{Chance, Outcome, all_events, copy, job, meaning_of, options, seed, store_with, write};

const ENTRIES: u64 = 40;

/// What a damaged copy of a store turned out to be.
#[derive(Debug, PartialEq)]
enum Found {
    Whole,
    SaidSo,
}

/// Opens a damaged copy and holds it against the truth. Anything that is neither whole nor said is a failure.
fn judge(dir: &Path, truth: &[Event], jobs: &[JobRow]) -> Result<Found, String> {
    let store = match Store::open(dir, options()) {
        Ok(store) => store,
        Err(StoreError::Damaged { .. } | StoreError::NotAStore { .. } | StoreError::Newer { .. }) => {
            return Ok(Found::SaidSo);
        }
        // Damage in the schema or the few rows about the store itself: refused, with SQLite's own reason.
        Err(StoreError::Sql { .. }) => return Ok(Found::SaidSo),
        Err(error) => return Err(format!("refused for a strange reason: {error:?}")),
    };
    let said = match store.check(&meaning_of) {
        Ok(report) => !report.troubles.is_empty() || !store.troubles().is_empty(),
        Err(_) => true,
    };
    if said {
        return Ok(Found::SaidSo);
    }
    let events = all_events(&store).map_err(|error| error.to_string())?;
    if events != truth || store.jobs().map_err(|error| error.to_string())? != jobs {
        return Err(format!("{} of {} events, and nothing said", events.len(), truth.len()));
    }
    Ok(Found::Whole)
}

/// Reads a damaged copy that was opened by its mark alone, as a window does: each job is the truth, or refused.
fn read_by_mark(dir: &Path, truth: &[Event], jobs: &[JobRow]) -> Result<(), String> {
    let Ok(store) = Store::open(dir, Options { verify: Verify::Marked, ..options() }) else { return Ok(()) };
    if !store.troubles().is_empty() {
        return Ok(());
    }
    match store.jobs() {
        Ok(listed) if listed == jobs => {}
        Ok(_) => return Err("another list, and nothing said".to_owned()),
        Err(_) => return Ok(()),
    }
    for row in jobs {
        let of_job: Vec<&Event> =
            truth.iter().filter(|event| event.header.subject == row.job.into()).collect();
        if let Ok(events) = store.events(row.job)
            && !events.iter().eq(of_job.iter().copied())
        {
            return Err(format!("{} of {} events, and nothing said", events.len(), of_job.len()));
        }
    }
    Ok(())
}

/// Flips one bit of `name` in a fresh copy of `dir`, `times` times, and judges each copy.
fn flip(dir: &Path, name: &str, times: u64, truth: &[Event], jobs: &[JobRow]) -> Result<u64, String> {
    let seed = seed();
    let mut chance = Chance(seed);
    let mut noticed = 0;
    let whole = fs::read(dir.join(name)).map_err(|error| error.to_string())?;
    for time in 0..times {
        let bit = chance.below(whole.len() as u64 * 8);
        let case = || format!("seed {seed}, time {time}, bit {bit} of {name}");
        let copied = tempdir().map_err(|error| error.to_string())?;
        let mut flipped = whole.clone();
        flipped[(bit / 8) as usize] ^= 1 << (bit % 8);
        copy(dir, copied.path())
            .and_then(|()| fs::write(copied.path().join(name), flipped))
            .map_err(|error| error.to_string())?;
        read_by_mark(copied.path(), truth, jobs).map_err(|error| format!("by mark, {}: {error}", case()))?;
        if judge(copied.path(), truth, jobs).map_err(|error| format!("{}: {error}", case()))? == Found::SaidSo
        {
            noticed += 1;
        }
    }
    Ok(noticed)
}

#[test]
fn a_log_torn_at_any_byte_leaves_the_start_of_the_truth_and_the_loss_is_said() -> Outcome {
    let dir = tempdir()?;
    let store = store_with(dir.path(), ENTRIES)?;
    let truth = all_events(&store)?;
    drop(store);
    let log = fs::read(dir.path().join("journal.db-wal"))?;
    let mut lengths = Vec::new();
    // 4099 is prime and near the 4120 bytes of one frame, so that the cuts fall on all parts of frames.
    for cut in (0..log.len()).step_by(4099).chain([log.len()]) {
        let copied = tempdir()?;
        copy(dir.path(), copied.path())?;
        fs::write(copied.path().join("journal.db-wal"), &log[..cut])?;
        let store = Store::open(copied.path(), options())?;
        let events = all_events(&store)?;
        assert_eq!(events, truth[..events.len()], "cut at {cut}");
        let whole = events.len() == truth.len();
        assert_eq!(*store.standing() == Standing::Ready, whole, "cut at {cut}: {:?}", store.troubles());
        assert_eq!(store.troubles().is_empty(), whole, "cut at {cut}");
        lengths.push(events.len());
    }
    assert!(lengths.is_sorted() && lengths[0] == 0 && lengths.len() > 100, "{lengths:?}");
    assert_eq!(lengths.last(), Some(&truth.len()));
    Ok(())
}

#[test]
fn a_bit_flipped_in_the_log_loses_nothing_unsaid() -> Outcome {
    let dir = tempdir()?;
    let store = store_with(dir.path(), ENTRIES)?;
    let (truth, jobs) = (all_events(&store)?, store.jobs()?);
    drop(store);
    let noticed = flip(dir.path(), "journal.db-wal", 150, &truth, &jobs)?;
    assert!(noticed > 100, "only {noticed} of 150 noticed: most bits of a log matter");
    Ok(())
}

#[test]
fn a_bit_flipped_in_the_database_is_found_or_harmless() -> Outcome {
    let dir = tempdir()?;
    let store = store_with(dir.path(), 2 * ENTRIES)?;
    let (truth, jobs) = (all_events(&store)?, store.jobs()?);
    store.close()?;
    let noticed = flip(dir.path(), "journal.db", 200, &truth, &jobs)?;
    assert!(noticed > 50, "only {noticed} of 200 noticed");
    Ok(())
}

#[test]
fn a_bit_flipped_in_the_head_file_never_lets_a_loss_pass() -> Outcome {
    let dir = tempdir()?;
    let store = store_with(dir.path(), 6)?;
    let (truth, jobs) = (all_events(&store)?, store.jobs()?);
    store.close()?;
    // The newest slot gone, the one before it is believed: the journal is then ahead of it, which is well.
    flip(dir.path(), "journal.head", 60, &truth, &jobs)?;
    Ok(())
}

#[test]
fn a_verifier_beside_the_work_finds_what_opening_by_the_mark_passes_over() -> Outcome {
    let dir = tempdir()?;
    store_with(dir.path(), 9)?.close()?;
    rusqlite::Connection::open(dir.path().join("journal.db"))?
        .execute("UPDATE events SET wall_ms = wall_ms + 1 WHERE device_seq = 4", [])?;
    let mut store = Store::open(dir.path(), Options { verify: Verify::Marked, ..options() })?;
    assert_eq!(*store.standing(), Standing::Ready, "{:?}", store.troubles());
    write(&mut store, job(2), 10)?;
    // The damaged job itself is not added to: reading it shows the damage.
    assert!(matches!(store.events(job(1)), Err(StoreError::Journal(_))));
    assert_eq!(store.readable(job(1))?.events.len(), 1);
    let verifier = store.verifier();
    let found = std::thread::spawn(move || verifier.run()).join().map_err(|_| "the verifier broke")??;
    assert!(matches!(found.as_slice(), [Trouble::Chain(_)]), "{found:?}");
    store.note(found);
    assert!(matches!(write(&mut store, job(2), 11), Err(StoreError::Troubled { .. })));
    Ok(())
}

#[test]
fn files_replaced_under_an_open_store_are_noticed_before_an_entry_is_confirmed() -> Outcome {
    for name in ["journal.db", "journal.head"] {
        let (dir, copied) = (tempdir()?, tempdir()?);
        let mut store = store_with(dir.path(), 3)?;
        copy(dir.path(), copied.path())?;
        fs::rename(copied.path().join(name), dir.path().join(name))?;
        let refused = write(&mut store, job(1), 4);
        assert!(matches!(refused, Err(StoreError::Unconfirmed { .. })), "{name}: {refused:?}");
        assert!(matches!(store.standing(), Standing::Faulted { .. }));
    }
    Ok(())
}

#[cfg(unix)]
#[test]
fn nothing_is_opened_through_a_link_in_the_folder() -> Outcome {
    for name in ["journal.db", "lock"] {
        let (dir, elsewhere) = (tempdir()?, tempdir()?);
        store_with(dir.path(), 3)?.close()?;
        fs::rename(dir.path().join(name), elsewhere.path().join(name))?;
        std::os::unix::fs::symlink(elsewhere.path().join(name), dir.path().join(name))?;
        assert!(Store::open(dir.path(), options()).is_err(), "{name}");
    }
    Ok(())
}

#[cfg(unix)]
#[test]
fn the_files_of_a_store_are_for_their_owner_alone() -> Outcome {
    use std::os::unix::fs::PermissionsExt;
    let dir = tempdir()?;
    let store = store_with(&dir.path().join("bay"), 2)?;
    for entry in fs::read_dir(dir.path().join("bay"))? {
        let entry = entry?;
        assert_eq!(entry.metadata()?.permissions().mode() & 0o077, 0, "{}", entry.path().display());
    }
    drop(store);
    Ok(())
}
