//! `store backup`, `backups`, `restore`, `go-on` and `salvage`: the ways back when something is wrong.

use std::path::Path;

use panside_bay::Bay;
use panside_bay::clock::{Clock, SystemClock};
use panside_bay::way_back::{
    self, BackupPlan, FoundBackup, Lacks, Restored, age, called, state_folder, verify_backup,
};
use panside_messages::{Message, Speaker};

use crate::exit::{Exit, Failure};
use crate::message::*;
use crate::out::{row, say};
use crate::record;

/// Opens a store for writing, and notes outside of it how far it has come.
pub fn open(dir: &Path, speaker: &'static Speaker) -> Result<Bay, Failure> {
    Ok(Bay::open_noted(dir, Box::new(SystemClock::new()), state_folder())?.speaking(speaker))
}

fn now_ms() -> i64 {
    SystemClock::new().now().wall_ms
}

pub fn back_up(
    dir: &Path,
    to: &Path,
    keep: u32,
    every: Option<u32>,
    speaker: &'static Speaker,
) -> Result<Exit, Failure> {
    if let Some(every_hours) = every {
        plan(dir, to, keep, every_hours, speaker)?;
    }
    // Reading is enough, so that a store in use can be backed up too.
    let made = record::open(dir, speaker)?.back_up(to, keep)?;
    let (events, photos) = (made.manifest.events, made.manifest.photos.len());
    say(speaker, &cli_backed_up(events, photos, made.copied, made.path.as_path()));
    made.removed.iter().for_each(|path| say(speaker, &cli_backup_removed(path.as_path())));
    made.lacks.iter().for_each(|trouble| say(speaker, &cli_backup_lacks(trouble.message())));
    Ok(if made.lacks.is_empty() { Exit::Done } else { Exit::Refused })
}

/// Keeps the shop's plan.
fn plan(
    dir: &Path,
    to: &Path,
    keep: u32,
    every_hours: u32,
    speaker: &'static Speaker,
) -> Result<(), Failure> {
    let cannot =
        |error: std::io::Error| Failure::new(Exit::Store, cli_backup_no_folder(to, error.to_string()));
    let folder = to.canonicalize().map_err(cannot)?.to_string_lossy().into_owned();
    let mut bay = open(dir, speaker)?;
    bay.put_backup_plan(Some(&BackupPlan { folder, every_hours, keep }))?;
    Ok(bay.close()?)
}

pub fn list(folder: &Path, speaker: &Speaker) -> Result<Exit, Failure> {
    let found = way_back::backups(folder).map_err(panside_bay::BayError::from)?;
    if found.is_empty() {
        say(speaker, &cli_backup_none(folder));
    }
    let mut exit = Exit::Done;
    for backup in &found {
        if !is_good(backup, speaker) {
            exit = Exit::Refused;
        }
    }
    Ok(exit)
}

/// Verifies a backup and says what it has.
fn is_good(backup: &FoundBackup, speaker: &Speaker) -> bool {
    let below = |message: &Message| row(format_args!("    {}", speaker.within(message)));
    row(format_args!("{}", backup.path.display()));
    let (manifest, report) = match verify_backup(&backup.path) {
        Ok(read) => read,
        Err(error) => {
            below(&cli_backup_bad(error.message()));
            return false;
        }
    };
    let (seq, device) = (manifest.head.seq, manifest.device.to_string());
    below(&cli_backup_is(age(manifest.wall_ms, now_ms()), seq, device, manifest.events, report.photos));
    if report.troubles.is_empty() {
        below(&cli_backup_verified());
    }
    report.troubles.iter().for_each(|trouble| below(&cli_backup_bad(trouble.message())));
    if !manifest.lacks.is_empty() {
        below(&cli_backup_not_whole(manifest.lacks.len()));
    }
    report.troubles.is_empty()
}

pub fn restore(backup: &Path, into: &Path, why: Option<String>, speaker: &Speaker) -> Result<Exit, Failure> {
    let why = why.unwrap_or_else(|| speaker.within(&cli_restored_why()));
    let restored = way_back::restore(backup, into, state_folder(), &why, &SystemClock::new().now())?;
    let Restored { manifest, moved_to, lacks, photos_missing } = &restored;
    say(speaker, &cli_restored(into, age(manifest.wall_ms, now_ms()), manifest.head.seq));
    if let Some(moved_to) = moved_to {
        say(speaker, &cli_restored_aside(moved_to.as_path()));
    }
    if let Some(lacks) = lacks {
        say_lacks(lacks, speaker);
    }
    photos_missing.iter().for_each(|trouble| say(speaker, &cli_restored_missing(trouble.message())));
    Ok(if photos_missing.is_empty() { Exit::Done } else { Exit::Refused })
}

/// What was confirmed in the store that was there, and is not in the backup.
fn say_lacks(lacks: &Lacks, speaker: &Speaker) {
    let said = match lacks.entries {
        Some(0) => cli_restored_all(),
        Some(entries) => cli_restored_lacks(entries),
        None => cli_restored_unknown(),
    };
    say(speaker, &said);
    for newer in &lacks.newer {
        let called = called(newer, speaker);
        let said = cli_restored_newer(called, newer.restored, newer.there, newer.lacking);
        row(format_args!("    {}", speaker.within(&said)));
    }
    if !lacks.newer.is_empty() {
        say(speaker, &cli_restored_salvage());
    }
}

pub fn go_on(dir: &Path, why: &str, speaker: &'static Speaker) -> Result<Exit, Failure> {
    let mut bay = open(dir, speaker)?;
    let troubles = bay.troubles();
    bay.go_on(why)?;
    troubles.iter().for_each(|trouble| say(speaker, &cli_gone_on_was(trouble)));
    bay.troubles().iter().for_each(|trouble| say(speaker, &cli_trouble(trouble)));
    bay.close()?;
    say(speaker, &cli_gone_on());
    Ok(Exit::Done)
}

pub fn salvage(dir: &Path, into: &Path, speaker: &Speaker) -> Result<Exit, Failure> {
    let saved = way_back::salvage(dir, into, state_folder())?;
    say(speaker, &saved.message());
    Ok(if saved.not_saved().is_empty() { Exit::Done } else { Exit::Refused })
}
