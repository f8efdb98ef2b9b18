//! [`Bay`]: an open store, its clocks, and the jobs that were looked at.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::sync::Arc;

use panside_job::event::Started;
use panside_job::{Event, Happened, Job, Specs};
use panside_journal::{EventId, Hash, Head, JobId, Stamp, Subject};
use panside_messages::{Message, Speaker};
use panside_procedure::format::Sheet;
use panside_procedure::load;
use panside_shop::ShopEvent;
use panside_store::{Meaning, Report, Standing, Store, StoreError, Trouble, Verifier};
use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::{NoContext, Timestamp, Uuid};

use crate::BayError;
use crate::clock::Clock;
use crate::message::bay_mended;
use crate::photos::photos_of;
use crate::pins::GivenPins;
use crate::prove::{CHECKLIST, fitted};
use crate::sheets::SHEET;
use crate::shop::Folded;

/// A tablet's store with everything that can be done on it.
pub struct Bay {
    pub(crate) store: Store,
    pub(crate) clock: Box<dyn Clock>,
    pub(crate) speaker: &'static Speaker,
    pub(crate) open: BTreeMap<JobId, Open>,
    /// What was damaged and put right at once, or done without.
    pub(crate) mended: Vec<Message>,
    /// PINs that were given and not used yet.
    pub(crate) given: GivenPins,
    pub(crate) folded: Folded,
}

/// A job that was folded, up to its head.
pub(crate) struct Open {
    pub head: Head,
    /// Shared with whoever works on the job as it stood: then the next entry goes into a copy.
    pub job: Arc<Job>,
    /// It is only the part of a damaged job that holds: for looking at, and nothing is added to it.
    pub damaged: bool,
}

/// One line of the list of jobs. It is kept as the job's label in the store and made anew by `rebuild`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct JobLine {
    /// The job.
    pub job: JobId,
    /// Number of the repair order.
    pub repair_order: String,
    /// What the job is called.
    pub label: String,
    /// Invented content.
    pub demo: bool,
    /// Whether it has ended.
    pub ended: bool,
    /// Number of its events.
    pub events: u64,
    /// When it was started, by the tablet's clock, in ms since 1970.
    pub started_ms: i64,
    /// When its newest event was written, by the tablet's clock, in ms since 1970.
    pub changed_ms: i64,
}

impl JobLine {
    /// The line of a job with so many events, the first and the newest of them written at these times.
    pub(crate) fn new(
        job: JobId,
        started: &Started,
        ended: bool,
        events: u64,
        (started_ms, changed_ms): (i64, i64),
    ) -> JobLine {
        JobLine {
            job,
            repair_order: started.repair_order.clone(),
            label: started.label.clone(),
            demo: started.demo,
            ended,
            events,
            started_ms,
            changed_ms,
        }
    }
}

impl std::fmt::Debug for Bay {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.debug_struct("Bay").field("store", &self.store).finish_non_exhaustive()
    }
}

impl Bay {
    /// Opens the store in a folder, and makes it if there is none.
    ///
    /// # Errors
    /// [`BayError::Store`]: locked by another process, of a newer format, no store at all, or what the disk said.
    pub fn open(dir: &Path, clock: Box<dyn Clock>) -> Result<Bay, BayError> {
        Bay::open_noted(dir, clock, None)
    }

    /// A damaged list of jobs is no reason to keep anybody from working: the journal holds, and the list follows from it.
    pub(crate) fn mend_list(&mut self) -> Result<(), BayError> {
        let found = self.store.troubles().iter().filter(|trouble| trouble.ends_with_rebuild());
        let found: Vec<Message> = found.map(Trouble::message).collect();
        let only_the_list = self.store.troubles().iter().all(|t| t.ends_with_rebuild() || !t.stops_writing());
        if found.is_empty() || !only_the_list || *self.store.standing() != Standing::Troubled {
            return Ok(());
        }
        self.rebuild()?;
        self.mended.extend(found.into_iter().map(bay_mended));
        Ok(())
    }

    /// Opens the store in a folder for reading.
    ///
    /// # Errors
    /// [`BayError::Store`] when there is none or it cannot be read.
    pub fn open_read_only(dir: &Path, clock: Box<dyn Clock>) -> Result<Bay, BayError> {
        let mut bay = Bay::over(Store::open_read_only(dir)?, clock);
        bay.look_at_shop()?;
        Ok(bay)
    }

    pub(crate) fn over(store: Store, clock: Box<dyn Clock>) -> Bay {
        Bay {
            store,
            clock,
            mended: Vec::new(),
            speaker: Speaker::english(),
            open: BTreeMap::new(),
            given: GivenPins::default(),
            folded: Folded::default(),
        }
    }

    /// The same bay with somebody else who makes sentences of messages; English is spoken where nothing is said.
    #[must_use]
    pub fn speaking(self, speaker: &'static Speaker) -> Bay {
        Bay { speaker, ..self }
    }

    /// Makes sentences of messages.
    #[must_use]
    pub fn speaker(&self) -> &'static Speaker {
        self.speaker
    }

    /// The jobs on this tablet, the one that something happened in last first.
    ///
    /// # Errors
    /// [`BayError::Store`] when the list cannot be read; [`BayError::Json`] when a line of it is damaged.
    pub fn jobs(&self) -> Result<Vec<JobLine>, BayError> {
        let rows = self.store.jobs()?;
        let lines = rows.iter().map(|row| Ok(serde_json::from_str(&row.label)?));
        let mut lines: Vec<JobLine> = lines.collect::<Result<_, BayError>>()?;
        // Jobs of the same moment keep the order of their ids.
        lines.sort_by_key(|line| std::cmp::Reverse(line.changed_ms));
        Ok(lines)
    }

    /// A job, folded from its events.
    ///
    /// # Errors
    /// [`BayError::NoJob`], [`BayError::Store`], [`BayError::Job`], [`BayError::Pinned`].
    pub fn job(&mut self, job: JobId) -> Result<&Job, BayError> {
        self.refresh(job).map(|open| &*open.job)
    }

    /// A job's newest event, to be named by the next entry.
    ///
    /// # Errors
    /// As [`Bay::job`].
    pub fn head(&mut self, job: JobId) -> Result<Head, BayError> {
        self.refresh(job).map(|open| open.head)
    }

    pub(crate) fn refresh(&mut self, id: JobId) -> Result<&mut Open, BayError> {
        let head = self.store.head(id)?;
        if self.open.get(&id).is_none_or(|open| open.head != head && !open.damaged) {
            let open = match self.store.events(id) {
                Ok(events) => self.fold(id, &events, false)?,
                Err(error) => self.fold_damaged(id, error)?,
            };
            self.open.insert(id, open);
        }
        self.open.get_mut(&id).ok_or(BayError::NoJob(id))
    }

    /// What can be read of a damaged job, for looking at. From then on the store takes nothing more: where one job is
    /// damaged, nobody knows what else is.
    fn fold_damaged(&mut self, id: JobId, error: StoreError) -> Result<Open, BayError> {
        let readable = self.store.readable(id)?.events;
        self.store.note(vec![Trouble::Entries(error.message())]);
        if readable.is_empty() {
            return Err(error.into());
        }
        self.fold(id, &readable, true)
    }

    fn fold(
        &mut self,
        id: JobId,
        events: &[panside_journal::Event],
        damaged: bool,
    ) -> Result<Open, BayError> {
        let head =
            events.last().map_or(Head::NONE, |last| Head { seq: last.header.subject_seq, hash: last.hash });
        let happened = happened(events)?;
        let Some(Event::Started(started)) = happened.first().map(|first| &first.event) else {
            return Err(BayError::NoJob(id));
        };
        let checklist = self.pinned(&started.checklist.hash, CHECKLIST)?;
        let sheet = self.pinned(&started.sheet.hash, SHEET)?;
        let procedure = fitted(&checklist, &sheet)?;
        let procedure = self.in_its_words(id, procedure, started.texts.as_ref());
        let sheet = load::sheet(&sheet).map_err(BayError::Sheet)?;
        let specs = self.specs(&sheet)?;
        let job = Job::fold(Arc::new(procedure), Arc::new(specs), happened);
        Ok(Open { head, job: Arc::new(job), damaged })
    }

    /// A sheet's values with the types of the trade.
    pub(crate) fn specs(&self, sheet: &Sheet) -> Result<Specs, BayError> {
        Specs::of(sheet)
            .map_err(|problems| BayError::SheetLacks(problems.into_iter().map(|one| one.message).collect()))
    }

    pub(crate) fn pinned(&self, hash: &Hash, kind: &str) -> Result<Vec<u8>, BayError> {
        let document = self.store.document(hash)?;
        if document.kind == kind { Ok(document.bytes) } else { Err(BayError::Pinned(*hash)) }
    }

    /// Checks the whole store.
    ///
    /// # Errors
    /// [`BayError::Store`] when something cannot be read at all. What is found wrong is in the report.
    pub fn check(&self) -> Result<Report, BayError> {
        Ok(self.store.check(&meaning_of)?)
    }

    /// Makes everything derived anew from the events.
    ///
    /// # Errors
    /// [`BayError::Store`] when the journal does not hold.
    pub fn rebuild(&mut self) -> Result<(), BayError> {
        self.open.clear();
        Ok(self.store.rebuild(&label_of)?)
    }

    /// What was found wrong with the store, at its opening or since, as sentences; most of it keeps the store from
    /// taking entries.
    #[must_use]
    pub fn troubles(&self) -> Vec<String> {
        let found = self.store.troubles().iter().map(Trouble::message);
        self.mended.iter().cloned().chain(found).map(|message| self.speaker.say(&message)).collect()
    }

    /// Whether something was found that keeps the store from taking entries, or would if it were open for them.
    #[must_use]
    pub fn is_troubled(&self) -> bool {
        self.store.troubles().iter().any(Trouble::stops_writing)
    }

    /// Verifies the whole journal on a thread of its own; what it finds goes to [`Bay::verified`].
    #[must_use]
    pub fn verifier(&self) -> Verifier {
        self.store.verifier()
    }

    /// Takes in what a verifier found. From then on it is said, and stops entries where it must. A journal that could not
    /// be read to its end is one that does not hold.
    pub fn verified(&mut self, found: Result<Vec<Trouble>, StoreError>) {
        self.store.note(found.unwrap_or_else(|error| vec![Trouble::Entries(error.message())]));
    }

    /// After a failed write: reads and verifies the store anew. What could not be confirmed may turn out to be there.
    ///
    /// # Errors
    /// [`BayError::Store`] with what the disk says; the store then still takes no entry.
    pub fn reopen(&mut self) -> Result<(), BayError> {
        self.open.clear();
        self.folded.forget();
        self.store.reopen()?;
        self.look_at_shop()
    }

    /// Closes the store, so that it is whole in its files.
    ///
    /// # Errors
    /// [`BayError::Store`] with what the disk said.
    pub fn close(self) -> Result<(), BayError> {
        Ok(self.store.close()?)
    }

    /// Keeps what is typed and not yet done.
    ///
    /// # Errors
    /// [`BayError::Store`].
    pub fn put_draft(&mut self, job: JobId, key: &str, text: &str) -> Result<(), BayError> {
        Ok(self.store.put_draft(job, key, text)?)
    }

    /// Forgets what was typed and not done; there need not be any.
    ///
    /// # Errors
    /// [`BayError::Store`].
    pub fn clear_draft(&mut self, job: JobId, key: &str) -> Result<(), BayError> {
        Ok(self.store.clear_draft(job, key)?)
    }

    /// What was typed and not yet done.
    ///
    /// # Errors
    /// [`BayError::Store`].
    pub fn drafts(&self, job: JobId) -> Result<BTreeMap<String, String>, BayError> {
        Ok(self.store.drafts(job)?)
    }
}

/// Stored events as the job reads them.
pub(crate) fn happened(events: &[panside_journal::Event]) -> Result<Vec<Happened>, BayError> {
    let read = |event: &panside_journal::Event| {
        let header = &event.header;
        Ok(Happened {
            seq: header.subject_seq,
            stamp: Stamp { wall_ms: header.wall_ms, mono_ms: header.mono_ms, boot: header.boot },
            who: header.who,
            event: Event::from_body(&header.kind, header.version, &event.body)?,
        })
    };
    events.iter().map(read).collect()
}

/// The label of a job from its events; from them alone, so that it can be made anew.
pub(crate) fn label_of(events: &[panside_journal::Event]) -> String {
    let line = events.first().and_then(|first| {
        let header = &first.header;
        let Ok(Event::Started(started)) = Event::from_body(&header.kind, header.version, &first.body) else {
            return None;
        };
        let ended = events.iter().any(|event| matches!(event.header.kind.as_str(), "finished" | "stopped"));
        let changed_ms = events.last().map_or(header.wall_ms, |newest| newest.header.wall_ms);
        let times = (header.wall_ms, changed_ms);
        Some(JobLine::new(header.subject.job()?, &started, ended, events.len() as u64, times))
    });
    line.and_then(|line| serde_json::to_string(&line).ok()).unwrap_or_else(|| "{}".to_owned())
}

/// What the events about a subject say, for the store's check. An event that this version can't read names nothing.
pub(crate) fn meaning_of(subject: Subject, events: &[panside_journal::Event]) -> Meaning {
    if subject.is_shop() {
        return Meaning { documents: kept_in_shop(events), ..Meaning::default() };
    }
    let mut meaning = Meaning { label: label_of(events), ..Meaning::default() };
    for one in happened(events).unwrap_or_default() {
        if let Event::Started(started) = &one.event {
            meaning.documents.extend([started.checklist.hash, started.sheet.hash]);
            meaning.documents.extend(started.texts.iter().map(|texts| texts.hash));
        }
        meaning.photos.extend(photos_of(&one.event));
    }
    meaning
}

/// The sheets and checklists that events of the shop name.
fn kept_in_shop(events: &[panside_journal::Event]) -> BTreeSet<Hash> {
    let kept = |event| match crate::shop::happened(event).ok()?.event {
        ShopEvent::SheetKept(body) => Some(body.sheet.hash),
        ShopEvent::ChecklistAdopted(body) => Some(body.checklist.hash),
        _ => None,
    };
    events.iter().filter_map(kept).collect()
}

/// A new event id whose time is the event's own.
pub(crate) fn event_id(stamp: &Stamp) -> EventId {
    let ms = stamp.wall_ms.max(0).unsigned_abs();
    let nanos = u32::try_from(ms % 1000).unwrap_or(0) * 1_000_000;
    EventId(Uuid::new_v7(Timestamp::from_unix(NoContext, ms / 1000, nanos)))
}
