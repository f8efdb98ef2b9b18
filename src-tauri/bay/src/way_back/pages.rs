//! The ways back as a screen shows them: backups in a folder, what one would bring back, what was restored or saved.

use std::path::{Path, PathBuf};

use panside_journal::DeviceId;
use panside_messages::Speaker;
use panside_store::Trouble;
use serde::Serialize;
use ts_rs::TS;

use super::{BackedUp, Backups, Lacks, Manifest, Outlook, Restored, Salvaged, age, called};
use crate::jobs::label_of;
use crate::{BayError, clean};

/// For whom backups are looked at.
#[derive(Debug, Clone, Copy)]
pub struct Onlooker {
    /// The tablet, where its store can be opened.
    pub device: Option<DeviceId>,
    /// Now, in milliseconds since 1970 UTC.
    pub now_ms: i64,
    /// Who speaks to them.
    pub speaker: &'static Speaker,
}

/// A backup as it is found in a folder. It says so itself; whether it holds is seen when it is looked at.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct BackupLine {
    /// Its folder.
    pub path: String,
    /// The name of its folder.
    pub name: String,
    /// What it says of itself. Nothing: it can't be read.
    pub facts: Option<BackupFacts>,
    /// Why it can't be read, as a sentence.
    pub wrong: Option<String>,
}

/// What a backup says of itself.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct BackupFacts {
    /// How long ago it was made, as it is said.
    pub age: String,
    /// How many entries it has.
    pub events: u64,
    /// How many photos.
    pub photos: usize,
    /// How many photos and texts its store no longer had whole when it was made.
    pub lacks: usize,
    /// It is known to be of another tablet's store.
    pub another: bool,
}

/// What restoring a backup comes to, before it is done and after.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct RestorePage {
    /// The backup.
    pub backup: BackupFacts,
    /// What it lacks, held against the store in its place. Nothing: no store stands there.
    pub lacks: Option<LacksPage>,
    /// Photos that neither of the two has whole, as sentences.
    pub photos_missing: Vec<String>,
    /// Where the store is that made room for it; nothing before that.
    pub moved_to: Option<String>,
}

/// What a backup lacks.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct LacksPage {
    /// How many entries that were confirmed; nothing where it can't be told.
    pub entries: Option<u64>,
    /// The jobs of which it lacks entries that can be read.
    pub jobs: Vec<JobLacks>,
}

/// What a backup lacks of a job.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct JobLacks {
    /// What the job is called.
    pub called: String,
    /// How many entries the backup has of it.
    pub restored: u64,
    /// How many of the store's entries it lacks.
    pub lacking: u64,
}

/// A backup that was made just now.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct BackedUpPage {
    /// How it stands now.
    pub backups: Backups,
    /// How many photos belong to it.
    pub photos: usize,
    /// How many of them no earlier backup had.
    pub copied: u64,
    /// How many older backups were taken away.
    pub removed: usize,
}

/// What was saved of a damaged store, and what was not.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct SalvagedPage {
    /// The new store.
    pub into: String,
    /// How many entries were saved.
    pub events: u64,
    /// About how many jobs and shops.
    pub subjects: u64,
    /// How many checklists, sheets and proofs.
    pub documents: u64,
    /// How many photos.
    pub photos: u64,
    /// What is known not to be saved, as sentences.
    pub not_saved: Vec<String>,
}

impl BackupFacts {
    fn of(manifest: &Manifest, onlooker: Onlooker) -> BackupFacts {
        BackupFacts {
            age: onlooker.speaker.within(&age(manifest.wall_ms, onlooker.now_ms)),
            events: manifest.events,
            photos: manifest.photos.len(),
            lacks: manifest.lacks.len(),
            another: onlooker.device.is_some_and(|device| device != manifest.device),
        }
    }
}

impl LacksPage {
    fn of(lacks: &Lacks, speaker: &Speaker) -> LacksPage {
        let jobs = lacks.newer.iter().map(|newer| JobLacks {
            called: called(newer, speaker),
            restored: newer.restored,
            lacking: newer.lacking,
        });
        LacksPage { entries: lacks.entries, jobs: jobs.collect() }
    }
}

impl RestorePage {
    fn before(outlook: &Outlook, onlooker: Onlooker) -> RestorePage {
        RestorePage {
            backup: BackupFacts::of(&outlook.manifest, onlooker),
            lacks: outlook.lacks.as_ref().map(|lacks| LacksPage::of(lacks, onlooker.speaker)),
            photos_missing: said(&outlook.photos_missing, onlooker.speaker),
            moved_to: None,
        }
    }

    /// After it was restored.
    #[must_use]
    pub fn after(restored: &Restored, onlooker: Onlooker) -> RestorePage {
        RestorePage {
            backup: BackupFacts::of(&restored.manifest, onlooker),
            lacks: restored.lacks.as_ref().map(|lacks| LacksPage::of(lacks, onlooker.speaker)),
            photos_missing: said(&restored.photos_missing, onlooker.speaker),
            moved_to: restored.moved_to.as_deref().map(text),
        }
    }
}

impl BackedUpPage {
    /// After it was made; `backups` is how it stands then.
    #[must_use]
    pub fn of(made: &BackedUp, backups: Backups) -> BackedUpPage {
        let (photos, removed) = (made.manifest.photos.len(), made.removed.len());
        BackedUpPage { backups, photos, copied: made.copied, removed }
    }
}

impl SalvagedPage {
    /// After it was saved.
    #[must_use]
    pub fn of(saved: &Salvaged, speaker: &Speaker) -> SalvagedPage {
        SalvagedPage {
            into: text(&saved.into),
            events: saved.events,
            subjects: saved.subjects,
            documents: saved.documents,
            photos: saved.photos,
            not_saved: saved.not_saved().iter().map(|one| speaker.say(one)).collect(),
        }
    }
}

/// The backups in a folder, the newest first.
///
/// # Errors
/// [`BayError::WholePath`]; [`BayError::Store`] where the folder isn't there or can't be read.
pub fn found(folder: &str, onlooker: Onlooker) -> Result<Vec<BackupLine>, BayError> {
    let found = super::backups(&whole_path(folder)?)?;
    let line = |found: super::FoundBackup| {
        let name = found.path.file_name().map(Path::new).map(text).unwrap_or_default();
        let (facts, wrong) = match found.manifest {
            Ok(manifest) => (Some(BackupFacts::of(&manifest, onlooker)), None),
            Err(error) => (None, Some(onlooker.speaker.say(&error.message()))),
        };
        BackupLine { path: text(&found.path), name, facts, wrong }
    };
    Ok(found.into_iter().map(line).collect())
}

/// Reads a backup again, every byte of it, and says what restoring it to a store would come to. The store may be open.
///
/// # Errors
/// [`BayError::WholePath`]; [`BayError::Store`] where the backup doesn't hold.
pub fn look_ahead(backup: &str, store: &Path, onlooker: Onlooker) -> Result<RestorePage, BayError> {
    let outlook = panside_store::outlook(&whole_path(backup)?, store, &label_of)?;
    Ok(RestorePage::before(&outlook, onlooker))
}

/// A path that somebody typed, without the space around it.
///
/// # Errors
/// [`BayError::WholePath`] for one that is empty or doesn't begin at the root.
pub fn whole_path(typed: &str) -> Result<PathBuf, BayError> {
    let path = Path::new(typed.trim());
    if path.is_absolute() { Ok(path.to_owned()) } else { Err(BayError::WholePath(clean::line(typed.trim()))) }
}

fn said(troubles: &[Trouble], speaker: &Speaker) -> Vec<String> {
    troubles.iter().map(|trouble| speaker.say(&trouble.message())).collect()
}

fn text(path: &Path) -> String {
    path.to_string_lossy().into_owned()
}
