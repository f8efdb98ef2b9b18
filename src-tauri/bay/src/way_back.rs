//! The ways back when something is wrong, and what has to be done before: backups by the shop's plan.

use std::path::{Path, PathBuf};

use panside_journal::{DeviceId, EpochId, Stamp};
use panside_messages::{Message, Speaker};
pub use panside_store::{
    BackedUp, FoundBackup, Lacks, Manifest, NewerThere, Outlook, Restored, Salvaged, backups, verify_backup,
};
use panside_store::{Backing, Options, Store, StoreError, Verify};
use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

use crate::clock::Clock;
use crate::jobs::{label_of, meaning_of};
use crate::message::*;
use crate::{Bay, BayError, JobLine};

mod pages;

pub use pages::{
    BackedUpPage, BackupFacts, BackupLine, JobLacks, LacksPage, Onlooker, RestorePage, SalvagedPage, found,
    look_ahead, whole_path,
};

/// Under which keys the plan is kept, the newest backup, and why the last try came to nothing.
const PLAN: &str = "backup";
const MADE: &str = "backup_made";
const FAILED: &str = "backup_failed";
/// How many backups are kept where nothing else is said.
pub const KEEP: u32 = 14;
const HOUR_MS: i64 = 3_600_000;

/// Where and how often the shop backs up.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct BackupPlan {
    /// The folder, best on another disk.
    pub folder: String,
    /// Hours from one backup to the next: 1 to 720.
    pub every_hours: u32,
    /// How many are kept: 1 to 1000.
    pub keep: u32,
}

/// The newest backup that was made by the plan.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct BackupMade {
    /// Its folder.
    pub path: String,
    /// When it was made: milliseconds since 1970 UTC.
    #[ts(type = "number")]
    pub wall_ms: i64,
    /// How many entries it has.
    #[ts(type = "number")]
    pub events: u64,
    /// What it lacks, as sentences: photos that this tablet itself no longer has whole.
    pub lacks: Vec<String>,
}

/// What is wrong with a plan for backups.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PlanWrong {
    /// The folder isn't there, or isn't named by its whole path.
    Folder,
    /// Hours or backups out of range.
    Numbers,
    /// No folder is named.
    NoFolder,
}

impl PlanWrong {
    pub(crate) fn message(self) -> Message {
        match self {
            PlanWrong::Folder => bay_plan_folder(),
            PlanWrong::Numbers => bay_plan_numbers(),
            PlanWrong::NoFolder => bay_plan_no_folder(),
        }
    }
}

/// How it stands with the shop's backups.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Backups {
    /// Where and how often. Nothing: the shop named no folder.
    pub plan: Option<BackupPlan>,
    /// The newest one.
    pub made: Option<BackupMade>,
    /// How long ago it was made, as it is said.
    pub age: Option<String>,
    /// It is time for the next one.
    pub due: bool,
    /// Why the last try came to nothing, as a sentence.
    pub failed: Option<String>,
}

/// Whether it is time for the next backup. A clock that was set back doesn't put it off.
#[must_use]
pub fn is_due(plan: &BackupPlan, made: Option<&BackupMade>, now_ms: i64) -> bool {
    let wait = i64::from(plan.every_hours.max(1)) * HOUR_MS;
    made.is_none_or(|made| now_ms < made.wall_ms || now_ms - made.wall_ms >= wait)
}

/// How long ago something was, in whole minutes, hours or days, as it is said.
#[must_use]
pub fn age(then_ms: i64, now_ms: i64) -> Message {
    let minutes = (now_ms - then_ms) / 60_000;
    match minutes {
        ..0 => bay_age_future(),
        0..120 => bay_age_minutes(minutes),
        120..2880 => bay_age_hours(minutes / 60),
        _ => bay_age_days(minutes / 1440),
    }
}

/// The folder outside any store in which it is noted how far each store has come: `panside` in `$XDG_STATE_HOME`, else in
/// `~/.local/state` (XDG Base Directory Specification 0.8). `None` where neither is told, as on a tablet: the window then
/// names one.
#[must_use]
pub fn state_folder() -> Option<PathBuf> {
    // The specification has paths that aren't absolute ignored.
    let named = |name: &str| std::env::var_os(name).map(PathBuf::from).filter(|path| path.is_absolute());
    let state = named("XDG_STATE_HOME").or_else(|| named("HOME").map(|home| home.join(".local/state")))?;
    Some(state.join("panside"))
}

/// New ids for a store that is made or begins a new epoch.
pub(crate) fn options(state: Option<PathBuf>) -> Options {
    Options { seen: state, ..Options::new(DeviceId(Uuid::now_v7()), EpochId(Uuid::now_v7())) }
}

/// Restores a backup to a store, and moves the one that stands there aside.
///
/// # Errors
/// [`BayError::Store`]: what is no backup or doesn't hold, a folder with something else in it, a store that is open.
pub fn restore(
    from: &Path,
    into: &Path,
    state: Option<PathBuf>,
    why: &str,
    now: &Stamp,
) -> Result<Restored, BayError> {
    Ok(panside_store::restore(from, into, options(state), (why, now.wall_ms), &label_of)?)
}

/// Saves what holds of a damaged store into a new one.
///
/// # Errors
/// [`BayError::Store`]: no store, a folder with something in it, a store that is open.
pub fn salvage(from: &Path, into: &Path, state: Option<PathBuf>) -> Result<Salvaged, BayError> {
    Ok(panside_store::salvage(from, into, options(state), &label_of, &meaning_of)?)
}

/// What to call the shop, or a job, of which the replaced store had more: by its repair order, where that can be told.
#[must_use]
pub fn called(newer: &NewerThere, speaker: &Speaker) -> String {
    if newer.subject.is_shop() {
        return speaker.say(&bay_called_shop());
    }
    match serde_json::from_str::<JobLine>(&newer.label) {
        Ok(line) => format!("{} \"{}\"", line.repair_order, line.label),
        Err(_) => newer.subject.to_string(),
    }
}

impl Bay {
    /// Opens the store in a folder, and makes it if there is none. How far it has come is noted in the folder `state`,
    /// so that a copy or an earlier state of the whole folder is noticed.
    ///
    /// # Errors
    /// As [`Bay::open`].
    pub fn open_noted(dir: &Path, clock: Box<dyn Clock>, state: Option<PathBuf>) -> Result<Bay, BayError> {
        Bay::open_with(dir, clock, options(state))
    }

    /// The same without a walk over the whole journal: what was confirmed last and the list of jobs are verified at once,
    /// each job when it is looked at. The rest is for [`Bay::verifier`], beside the work.
    ///
    /// # Errors
    /// As [`Bay::open`].
    pub fn open_at_once(dir: &Path, clock: Box<dyn Clock>, state: Option<PathBuf>) -> Result<Bay, BayError> {
        Bay::open_with(dir, clock, Options { verify: Verify::Marked, ..options(state) })
    }

    fn open_with(dir: &Path, clock: Box<dyn Clock>, options: Options) -> Result<Bay, BayError> {
        let mut bay = Bay::over(Store::open(dir, options)?, clock);
        bay.mend_list()?;
        bay.look_at_shop()?;
        Ok(bay)
    }

    /// What makes a backup beside the work. What comes of one by the plan goes to [`Bay::note_backup`].
    #[must_use]
    pub fn backing(&self) -> Backing {
        self.store.backing()
    }

    /// Makes a backup now.
    ///
    /// # Errors
    /// [`BayError::Store`]: a folder that isn't there, a full disk, a store that doesn't hold.
    pub fn back_up(&self, to: &Path, keep: u32) -> Result<BackedUp, BayError> {
        let keep = usize::try_from(keep).unwrap_or(usize::MAX);
        Ok(self.backing().run(to, keep, self.clock.now().wall_ms)?)
    }

    /// How it stands with the shop's backups.
    ///
    /// # Errors
    /// [`BayError::Store`] with what the disk said, [`BayError::Json`] when the plan is damaged.
    pub fn backups(&self) -> Result<Backups, BayError> {
        let plan: Option<BackupPlan> = self.kept_as(PLAN)?;
        let made: Option<BackupMade> = self.kept_as(MADE)?;
        let now = self.clock.now().wall_ms;
        let due = plan.as_ref().is_some_and(|plan| is_due(plan, made.as_ref(), now));
        let age = made.as_ref().map(|made| self.speaker.within(&age(made.wall_ms, now)));
        Ok(Backups { plan, made, age, due, failed: self.backup_trouble()? })
    }

    /// The plan, where it is time for the next backup, and now.
    ///
    /// # Errors
    /// As [`Bay::backups`].
    pub fn backup_due(&self) -> Result<Option<(BackupPlan, i64)>, BayError> {
        let backups = self.backups()?;
        Ok(backups.plan.filter(|_| backups.due).map(|plan| (plan, self.clock.now().wall_ms)))
    }

    /// Keeps where and how often the shop backs up; nothing ends it. In a folder that the newest backup is not in, the
    /// next one is due at once; why one failed in another folder, or before the plan was ended, is told no more.
    ///
    /// # Errors
    /// [`BayError::BackupPlan`] for a folder that isn't there or numbers out of range; [`BayError::Store`] with what the
    /// disk said.
    pub fn put_backup_plan(&mut self, plan: Option<&BackupPlan>) -> Result<(), BayError> {
        let typed = |plan: &BackupPlan| BackupPlan { folder: plan.folder.trim().to_owned(), ..plan.clone() };
        let plan = plan.map(typed);
        if let Some(BackupPlan { folder, every_hours, keep }) = &plan {
            if !Path::new(folder).is_absolute() || !Path::new(folder).is_dir() {
                return Err(BayError::BackupPlan(PlanWrong::Folder));
            }
            if !(1..=720).contains(every_hours) || !(1..=1000).contains(keep) {
                return Err(BayError::BackupPlan(PlanWrong::Numbers));
            }
        }
        let before: Option<BackupPlan> = self.kept_as(PLAN)?;
        let folder = |plan: &Option<BackupPlan>| plan.as_ref().map(|plan| plan.folder.clone());
        self.put_setting(PLAN, &serde_json::to_string(&plan)?)?;
        if folder(&plan) != folder(&before) {
            self.put_setting(FAILED, "null")?;
        }
        let made: Option<BackupMade> = self.kept_as(MADE)?;
        let elsewhere = |(plan, made): (&BackupPlan, &BackupMade)| {
            let folder = std::fs::canonicalize(&plan.folder).unwrap_or_else(|_| PathBuf::from(&plan.folder));
            Path::new(&made.path).parent() != Some(&*folder)
        };
        if plan.as_ref().zip(made.as_ref()).is_some_and(elsewhere) {
            self.put_setting(MADE, "null")?;
        }
        Ok(())
    }

    /// The plan and now, for a backup that is not waited for.
    ///
    /// # Errors
    /// [`BayError::BackupPlan`] where the shop named no folder; [`BayError::Store`] with what the disk said.
    pub fn backup_now(&self) -> Result<(BackupPlan, i64), BayError> {
        let none = || BayError::BackupPlan(PlanWrong::NoFolder);
        Ok((self.kept_as(PLAN)?.ok_or_else(none)?, self.clock.now().wall_ms))
    }

    /// Whose store this is.
    #[must_use]
    pub fn device(&self) -> DeviceId {
        self.store.device()
    }

    /// Keeps what came of a backup by the plan.
    ///
    /// # Errors
    /// [`BayError::Store`] with what the disk said.
    pub fn note_backup(&mut self, made: Result<&BackedUp, &StoreError>) -> Result<(), BayError> {
        let failed = made.as_ref().err().map(|error| self.speaker.say(&error.message()));
        if let Ok(made) = made {
            let made = BackupMade {
                path: made.path.to_string_lossy().into_owned(),
                wall_ms: made.manifest.wall_ms,
                events: made.manifest.events,
                lacks: made.lacks.iter().map(|lack| self.speaker.say(&lack.message())).collect(),
            };
            self.put_setting(MADE, &serde_json::to_string(&made)?)?;
        }
        self.put_setting(FAILED, &serde_json::to_string(&failed)?)
    }

    /// Why the last backup by the plan came to nothing, as a sentence.
    ///
    /// # Errors
    /// [`BayError::Store`] with what the disk said.
    pub fn backup_trouble(&self) -> Result<Option<String>, BayError> {
        let failed: Option<String> = self.kept_as(FAILED)?;
        Ok(failed.map(|why| self.speaker.say(&BayError::BackupFailed(why).message())))
    }

    /// Whether [`Bay::go_on`] would put right what keeps the store from taking entries.
    #[must_use]
    pub fn can_go_on(&self) -> bool {
        self.store.can_go_on()
    }

    /// Goes on from what is there in a new epoch, where nothing worse is wrong than that newest entries are lost, that
    /// the folder was copied or set back, or that the list of jobs is not right.
    ///
    /// # Errors
    /// [`BayError::Store`] when more is wrong, or with what the disk said.
    pub fn go_on(&mut self, why: &str) -> Result<(), BayError> {
        self.open.clear();
        self.folded.forget();
        Ok(self.store.go_on(EpochId(Uuid::now_v7()), why, &label_of)?)
    }

    /// What is kept under a key as JSON; one row that can't be read counts as none.
    fn kept_as<T: for<'a> Deserialize<'a>>(&self, key: &str) -> Result<Option<T>, BayError> {
        Ok(self.setting(key)?.and_then(|text| serde_json::from_str::<Option<T>>(&text).ok().flatten()))
    }
}
