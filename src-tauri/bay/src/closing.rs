//! What a screen shows of a job's record before it is handed over: what is in it, what it lacks, its photos.

use panside_journal::{Hash, JobId};
use panside_messages::Speaker;
use panside_record::account::Said;
use panside_record::document::End;
use panside_record::{Document, Extent, Missing, MissingKind, Paper};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::record::pages::pages;
use crate::record::{Pages, ToRecord};
use crate::{Bay, BayError};

/// A record as a screen shows it. Days and times are by the shop's clock.
#[derive(Debug, Clone, Serialize, Deserialize, TS)]
pub struct RecordPage {
    /// How the job ended, or that it is open.
    pub ended: Ended,
    /// When it ended, and by whom; the reason of a stop.
    pub end: Option<EndedBy>,
    /// The customer's concern.
    pub concern: Vec<String>,
    /// Its cause.
    pub cause: Vec<String>,
    /// The correction.
    pub correction: Vec<String>,
    /// What is missing, by kind.
    pub missing: Vec<MissingGroup>,
    /// What was skipped, missed or voided, with the reason.
    pub departures: Vec<String>,
    /// What came off and went on again.
    pub tally: Vec<TallyLine>,
    /// Every photo that was entered.
    pub photos: Vec<PhotoLine>,
    /// Minutes from the start to the end.
    pub minutes: u64,
    /// Minutes of unplanned work.
    pub unplanned: u64,
    /// Minutes of waiting.
    pub waiting: u64,
    /// Events in the journal.
    pub events: u64,
    /// Hash of the newest event.
    pub head: Hash,
    /// What comes before anything that a record says.
    pub come_first: String,
}

/// Which pages of a record are saved.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum SavedPages {
    /// Those of the service writer and the file.
    Record,
    /// The same with every reading, vehicle action, caution and working-out.
    Everything,
    /// The customer's copy.
    Customer,
}

/// Whether a job has ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum Ended {
    /// It is open.
    Open,
    /// It is open and ends by stop and call.
    Ending,
    /// It is finished.
    Finished,
    /// It was stopped before its end.
    Stopped,
}

/// Who ended a job.
#[derive(Debug, Clone, Serialize, Deserialize, TS)]
pub struct EndedBy {
    /// Who.
    pub who: String,
    /// On which day.
    pub day: String,
    /// At which time, to the minute.
    pub time: String,
    /// Why it was stopped.
    pub reason: Option<String>,
}

/// What is missing of one kind.
#[derive(Debug, Clone, Serialize, Deserialize, TS)]
pub struct MissingGroup {
    /// What is said before the names.
    pub says: String,
    /// What is missing.
    pub what: Vec<MissingLine>,
}

/// One thing that is missing.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct MissingLine {
    /// What it is called.
    pub says: String,
    /// Id of the step that it is entered at; nothing for parts that are off.
    pub step: Option<String>,
}

/// Pieces of one item.
#[derive(Debug, Clone, Serialize, Deserialize, TS)]
pub struct TallyLine {
    /// What it is.
    pub name: String,
    /// Came off the vehicle.
    pub came_off: i32,
    /// The same pieces went back.
    pub went_back: i32,
    /// New ones went in.
    pub replaced: i32,
    /// Are still off.
    pub left: i32,
}

/// A photo that was entered.
#[derive(Debug, Clone, Serialize, Deserialize, TS)]
pub struct PhotoLine {
    /// SHA-256 of its bytes.
    pub hash: Hash,
    /// Step id.
    pub step: String,
    /// What the step is called.
    pub step_title: String,
    /// What the control says.
    pub label: String,
    /// What the checklist wants to see on it.
    pub of: String,
    /// Width in pixels.
    pub width: u32,
    /// Height in pixels.
    pub height: u32,
    /// The entry counts: it was not voided or replaced.
    pub counts: bool,
    /// Who entered it.
    pub who: String,
    /// On which day.
    pub day: String,
    /// At which time, to the minute.
    pub time: String,
}

impl Bay {
    /// A job's record as a screen shows it.
    ///
    /// # Errors
    /// As [`Bay::record`].
    pub fn record_page(&mut self, job: JobId) -> Result<RecordPage, BayError> {
        self.to_record(job)?.record_page()
    }

    /// Saves a job's record.
    ///
    /// # Errors
    /// As [`Bay::to_record`] and [`ToRecord::save`].
    pub fn save_record(&mut self, job: JobId, pages: SavedPages) -> Result<String, BayError> {
        self.to_record(job)?.save(pages)
    }
}

impl ToRecord {
    /// The record as a screen shows it.
    ///
    /// # Errors
    /// As [`ToRecord::record`].
    pub fn record_page(&self) -> Result<RecordPage, BayError> {
        let document = self.record()?;
        let (ended, end) = end(&document.end);
        let photos = document.photos.iter().filter_map(photo).collect();
        let items = &document.tally.items;
        let tally = items.iter().map(|item| TallyLine {
            name: item.name.clone(),
            came_off: item.pieces.came_off,
            went_back: item.pieces.went_back,
            replaced: item.pieces.replaced,
            left: item.pieces.left,
        });
        Ok(RecordPage {
            ended,
            end,
            concern: texts(&document.account.concern),
            cause: texts(&document.account.cause),
            correction: texts(&document.account.correction),
            missing: missing(&document, self.speaker),
            departures: departures(&document),
            tally: tally.collect(),
            photos,
            minutes: document.time.total,
            unplanned: document.time.in_steps.unplanned,
            waiting: document.time.in_steps.waiting,
            events: document.journal.events,
            head: document.journal.head,
            come_first: document.come_first,
        })
    }

    /// Writes the record as PDF into the store's folder `records` and answers the file's path. The name says which job, how
    /// far it had come and which pages they are, so that no earlier record is overwritten by a different one.
    ///
    /// # Errors
    /// As [`ToRecord::record`]; [`BayError::Record`] when the pages cannot be written; and with what the disk said.
    pub fn save(&self, which: SavedPages) -> Result<String, BayError> {
        let document = self.record()?;
        let (which, ending) = match which {
            SavedPages::Record => (Pages::Record(Extent::File), ""),
            SavedPages::Everything => (Pages::Record(Extent::Everything), "-everything"),
            SavedPages::Customer => (Pages::Customer, "-customer"),
        };
        let bytes = pages(&document, (which, Paper::Letter), &self.files, self.speaker)?;
        // A name longer than 255 bytes is none on most systems.
        let words = document.vehicle.repair_order.chars().take(60);
        let name: String = words.map(|c| if c.is_ascii_alphanumeric() { c } else { '-' }).collect();
        let name = format!("{name}-{}-{}{ending}.pdf", &self.id.to_string()[..8], document.journal.events);
        let path = self.files.put_record(&name, &bytes)?;
        Ok(path.to_string_lossy().into_owned())
    }
}

fn texts(said: &[Said]) -> Vec<String> {
    said.iter().map(|said| said.text.clone()).collect()
}

fn end(end: &End) -> (Ended, Option<EndedBy>) {
    let by = |by: &panside_record::By, reason| {
        let (day, time) = by.day_time();
        Some(EndedBy { who: by.who.clone(), day: day.to_owned(), time: time.to_owned(), reason })
    };
    match end {
        End::Open => (Ended::Open, None),
        End::Ending => (Ended::Ending, None),
        End::Finished { by: who } => (Ended::Finished, by(who, None)),
        End::Stopped { by: who, reason } => (Ended::Stopped, by(who, Some(reason.clone()))),
    }
}

fn missing(document: &Document, speaker: &Speaker) -> Vec<MissingGroup> {
    let group = |kind: &MissingKind| {
        let of_kind = document.missing.iter().filter(|missing| missing.kind == *kind);
        let line = |one: &Missing| MissingLine { says: one.what.clone(), step: one.step.clone() };
        let what: Vec<_> = of_kind.map(line).collect();
        (!what.is_empty()).then(|| MissingGroup { says: speaker.say(&kind.says()), what })
    };
    MissingKind::ALL.iter().filter_map(group).collect()
}

fn departures(document: &Document) -> Vec<String> {
    let explained = document.skipped.iter().chain(&document.missed);
    let explained = explained.map(|one| format!("{}: {}", one.title, one.reason));
    let voided = document.voided.iter().map(|one| format!("{}: {}", one.title, one.reason));
    explained.chain(voided).collect()
}

/// A photo whose hash is one; an entry whose hash is none can have no file.
fn photo(photo: &panside_record::measured::Photo) -> Option<PhotoLine> {
    let (day, time) = photo.by.day_time();
    Some(PhotoLine {
        hash: photo.hash.parse().ok()?,
        step: photo.step.clone(),
        step_title: photo.title.clone(),
        label: photo.label.clone(),
        of: photo.of.clone(),
        width: photo.width,
        height: photo.height,
        counts: photo.standing == panside_record::Standing::Counts,
        who: photo.by.who.clone(),
        day: day.to_owned(),
        time: time.to_owned(),
    })
}
