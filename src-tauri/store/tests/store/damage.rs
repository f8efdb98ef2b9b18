//! Torn logs and flipped bits: found, or harmless. What is read is the truth or the start of it, and whatever is
//! missing is said.

use std::fs;
use std::path::Path;

use panside_journal::Event;
use panside_store::{JobRow, Standing, Store, StoreError};
use tempfile::tempdir;

use crate::kit::{Chance, Outcome, all_events, copy, meaning_of, options, seed, store_with};

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
