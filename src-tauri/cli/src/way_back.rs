//! `store backup`, `backups`, `restore`, `go-on` and `salvage`: the ways back when something is wrong.

use std::path::Path;

use panside_bay::Bay;
use panside_bay::clock::{Clock, SystemClock};
use panside_bay::way_back::{self, BackupPlan, Restored, age, called, state_folder};
use panside_messages::Speaker;

use crate::exit::{Exit, Failure};
use crate::out::{say, spoken};

/// Opens a store for writing, and notes outside of it how far it has come.
pub fn open(dir: &Path) -> Result<Bay, Failure> {
    Ok(Bay::open_noted(dir, Box::new(SystemClock::new()), state_folder())?)
}

fn now_ms() -> i64 {
    SystemClock::new().now().wall_ms
}

pub fn back_up(dir: &Path, to: &Path, keep: u32, every: Option<u32>) -> Result<Exit, Failure> {
    if let Some(every_hours) = every {
        plan(dir, to, keep, every_hours)?;
    }
    // Reading is enough, so that a store in use can be backed up too.
    let bay = Bay::open_read_only(dir, Box::new(SystemClock::new()))?;
    let made = bay.back_up(to, keep)?;
    say!(
        "Backed up and verified: {} events and {} photos, {} of them new. {}",
        made.manifest.events,
        made.manifest.photos.len(),
        made.copied,
        made.path.display()
    );
    made.removed.iter().for_each(|path| say!("Taken away, older: {}", path.display()));
    made.lacks.iter().for_each(|trouble| say!("NOT BACKED UP: {trouble}"));
    Ok(if made.lacks.is_empty() { Exit::Done } else { Exit::Refused })
}

/// Keeps the shop's plan.
fn plan(dir: &Path, to: &Path, keep: u32, every_hours: u32) -> Result<(), Failure> {
    let cannot = |error| Failure::new(Exit::Store, format!("{} cannot be found: {error}.", to.display()));
    let folder = to.canonicalize().map_err(cannot)?.to_string_lossy().into_owned();
    let mut bay = open(dir)?;
    bay.put_backup_plan(Some(&BackupPlan { folder, every_hours, keep }))?;
    Ok(bay.close()?)
}

pub fn list(folder: &Path) -> Result<Exit, Failure> {
    let found = way_back::backups(folder).map_err(panside_bay::BayError::from)?;
    if found.is_empty() {
        say!("There is no backup in {}.", folder.display());
    }
    let mut exit = Exit::Done;
    for backup in &found {
        say!("{}", backup.path.display());
        let (manifest, report) = match way_back::verify_backup(&backup.path) {
            Ok(read) => read,
            Err(error) => {
                say!("    NOT A GOOD BACKUP: {}", spoken(&error.message()));
                exit = Exit::Refused;
                continue;
            }
        };
        say!(
            "    {}, newest entry {} of device {}, {} events, {} photos",
            Speaker::english().within(&age(manifest.wall_ms, now_ms())),
            manifest.head.seq,
            manifest.device,
            manifest.events,
            report.photos
        );
        match report.troubles.as_slice() {
            [] => say!("    verified"),
            troubles => {
                troubles
                    .iter()
                    .for_each(|trouble| say!("    NOT A GOOD BACKUP: {}", spoken(&trouble.message())));
                exit = Exit::Refused;
            }
        }
        if !manifest.lacks.is_empty() {
            say!(
                "    lacks {} photos or texts that the store itself no longer had whole",
                manifest.lacks.len()
            );
        }
    }
    Ok(exit)
}

pub fn restore(backup: &Path, into: &Path, why: &str) -> Result<Exit, Failure> {
    let restored = way_back::restore(backup, into, state_folder(), why, &SystemClock::new().now())?;
    let Restored { manifest, moved_to, lacks, photos_missing } = &restored;
    say!(
        "Restored into {}: the backup made {}, up to entry {}. A new epoch has begun.",
        into.display(),
        Speaker::english().within(&age(manifest.wall_ms, now_ms())),
        manifest.head.seq
    );
    if let Some(moved_to) = moved_to {
        say!("The store that was there is kept, with its records and sheets: {}", moved_to.display());
    }
    if let Some(lacks) = lacks {
        match lacks.entries {
            Some(0) => say!("The backup has every entry that was confirmed there."),
            Some(entries) => say!("The backup lacks the newest {entries} entries that were confirmed there."),
            None => say!(
                "It can't be told how many entries the backup lacks: not everything there can be read, or it is another device's."
            ),
        }
        for newer in &lacks.newer {
            say!(
                "    {}: {} entries restored; {} can be read there, {} of them not restored",
                called(newer, Speaker::english()),
                newer.restored,
                newer.there,
                newer.lacking
            );
        }
        if !lacks.newer.is_empty() {
            say!("What can be read there is saved by `store salvage`.");
        }
    }
    photos_missing.iter().for_each(|trouble| say!("MISSING: {}", spoken(&trouble.message())));
    Ok(if photos_missing.is_empty() { Exit::Done } else { Exit::Refused })
}

pub fn go_on(dir: &Path, why: &str) -> Result<Exit, Failure> {
    let mut bay = open(dir)?;
    let troubles = bay.troubles();
    bay.go_on(why)?;
    troubles.iter().for_each(|trouble| say!("Was: {trouble}"));
    bay.troubles().iter().for_each(|trouble| say!("TROUBLE: {trouble}"));
    bay.close()?;
    say!("A new epoch has begun; the store takes entries.");
    Ok(Exit::Done)
}

pub fn salvage(dir: &Path, into: &Path) -> Result<Exit, Failure> {
    let saved = way_back::salvage(dir, into, state_folder())?;
    say!("{}", spoken(&saved.message()));
    Ok(if saved.not_saved().is_empty() { Exit::Done } else { Exit::Refused })
}
