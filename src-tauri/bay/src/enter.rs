//! One command in: decided by the job, written once, answered with the new view.

use std::collections::BTreeSet;
use std::sync::Arc;

use panside_job::view::preview_asking;
use panside_job::{Happened, JobView, decide, preview, view};
use panside_journal::{Draft, Origin, Stamp};
use panside_store::{Appended, Entry, StoreError};

use uuid::Uuid;

pub use panside_job::Preview;
pub use panside_job::entry::WorkedOut;
pub use panside_job::entry::in_short;
pub use panside_job::event::{Answered, Entered};
pub use panside_job::view::Asking;
pub use panside_job::{Actor, Command, EntryValue, Event, Job, Refusal};
pub use panside_journal::{Hash, Head, JobId, PersonId, RequestId};

use crate::jobs::{Open, event_id};
use crate::{Bay, BayError, JobLine};

/// A new id for a command. A second try of the same command keeps its id.
#[must_use]
pub fn new_request() -> RequestId {
    RequestId(Uuid::now_v7())
}

/// The id of a command that is always the same for the same words: for scripts, which may be run again after a kill.
#[must_use]
pub fn request_named(words: &str) -> RequestId {
    let hash = Hash::of(words.as_bytes());
    let mut bytes = [0; 16];
    bytes.copy_from_slice(&hash.0[..16]);
    RequestId(uuid::Builder::from_custom_bytes(bytes).into_uuid())
}

/// What became of a command.
#[derive(Debug, Clone)]
pub enum Answer {
    /// It is on disk.
    Entered {
        /// The job's newest event.
        head: Head,
        /// What was written, oldest first; what was written before, when the command came a second time.
        events: Vec<Event>,
        /// The command had been written before, and nothing was written now.
        already: bool,
    },
    /// The rules refuse it. Nothing was written.
    Refused(Refusal),
}

impl Bay {
    /// Enters a command. When this answers [`Answer::Entered`], it is on disk.
    ///
    /// Whoever signs a hold point with it and has a PIN gives that first ([`Bay::give_pin`]); else the refusal names
    /// them ([`Refusal::pin_of`]).
    ///
    /// `expected` is the job's head as the person saw it; `request` is the same for the same command, so that a double
    /// tap or a second try after a kill writes nothing twice.
    ///
    /// # Errors
    /// [`BayError::Stale`] when the job moved on; [`BayError::Store`] with what the disk said. Nothing is half written.
    pub fn enter(
        &mut self,
        job: JobId,
        expected: Head,
        request: RequestId,
        actor: &Actor,
        command: &Command,
    ) -> Result<Answer, BayError> {
        let asked =
            panside_journal::Request { id: request, hash: Hash::of(&serde_json::to_vec(&(actor, command))?) };
        if let Some(before) = self.store.answered(job, &asked)? {
            return self.entered(job, before);
        }
        let now = self.clock.now();
        let open = self.refresh(job)?;
        if open.head != expected {
            return Err(BayError::Stale { job });
        }
        let procedure = Arc::clone(&open.job.procedure);
        self.keeps_photos(job, command)?;
        let (mut command, lacking) = self.with_pins(&procedure, command)?;
        let people = self.people()?;
        let events = match decide(&self.refresh(job)?.job, &people.roster(), &command, actor, &now) {
            Ok(events) => events,
            Err(refusal) => return Ok(Answer::Refused(refusal)),
        };
        // Nobody gives a PIN for what would be refused anyway, so it is asked for last.
        if let Some(person) = lacking {
            return Ok(Answer::Refused(Refusal::pin_missing(person, &people.person(person)?.name)));
        }
        let origin = Origin { request: asked, who: actor.id, stamp: now };
        let appended = self.append(job, expected, &origin, &events)?;
        self.use_pins(&procedure, &mut command);
        self.entered(job, appended)
    }

    /// An entry that names a photo is taken only while that photo is kept for its job.
    fn keeps_photos(&self, job: JobId, command: &Command) -> Result<(), BayError> {
        for value in command.values() {
            if let EntryValue::Photo { hash, .. } = value
                && !hash.parse().is_ok_and(|hash| self.store.keeps_photo(job, &hash).unwrap_or(false))
            {
                return Err(BayError::PhotoNotKept);
            }
        }
        Ok(())
    }

    /// The commands that are in a job's journal; none for a job that does not exist.
    ///
    /// # Errors
    /// [`BayError::Store`] when the journal does not hold.
    pub fn requests_of(&self, job: JobId) -> Result<BTreeSet<RequestId>, BayError> {
        Ok(self.store.events(job)?.iter().map(|event| event.header.request).collect())
    }

    /// Writes events and takes them into the open job.
    pub(crate) fn append(
        &mut self,
        job: JobId,
        expected: Head,
        origin: &Origin,
        events: &[Event],
    ) -> Result<Appended, BayError> {
        let drafts = events.iter().map(|event| draft(event, &origin.stamp)).collect::<Result<Vec<_>, _>>()?;
        let label = self.label(job, events, origin.stamp.wall_ms)?;
        let entry = Entry { subject: job.into(), expected, origin, drafts: &drafts, label: &label };
        let appended = self.store.append(&entry).map_err(|error| match error {
            StoreError::Stale { .. } => BayError::Stale { job },
            error => error.into(),
        })?;
        if let Some(open) = self.open.get_mut(&job)
            && !appended.already
        {
            take(open, &appended, origin, events);
        }
        Ok(appended)
    }

    /// What the list of jobs will say after these events, written now.
    fn label(&self, job: JobId, events: &[Event], now_ms: i64) -> Result<String, BayError> {
        let before = self.open.get(&job).map_or(0, |open| open.head.seq);
        let first = self.open.get(&job).and_then(|open| open.job.happened.first());
        let times = (first.map_or(now_ms, |first| first.stamp.wall_ms), now_ms);
        let started = match events.first() {
            Some(Event::Started(started)) => Some(started),
            _ => self.open.get(&job).and_then(|open| open.job.start.as_ref().map(|(_, started)| started)),
        };
        let started = started.ok_or(BayError::NoJob(job))?;
        let ended = self.open.get(&job).is_some_and(|open| open.job.end.is_some())
            || events.iter().any(|event| matches!(event, Event::Finished(_) | Event::Stopped(_)));
        let count = before + events.len() as u64;
        Ok(serde_json::to_string(&JobLine::new(job, started, ended, count, times))?)
    }

    fn entered(&mut self, job: JobId, appended: Appended) -> Result<Answer, BayError> {
        let open = self.refresh(job)?;
        let written = open
            .job
            .happened
            .iter()
            .filter(|one| (appended.first_seq..=appended.last_seq).contains(&one.seq));
        let events = written.map(|one| one.event.clone()).collect();
        Ok(Answer::Entered { head: appended.head, events, already: appended.already })
    }

    /// All that a screen shows of a job, its messages said.
    ///
    /// # Errors
    /// As [`Bay::job`].
    pub fn view(&mut self, job: JobId) -> Result<JobView, BayError> {
        let now = self.clock.now();
        let mut shown = view(&self.refresh(job)?.job, &now);
        shown.each_message(&mut |message| self.speaker.fill(message));
        Ok(shown)
    }

    /// What a value that is being typed would turn out to be.
    ///
    /// # Errors
    /// As [`Bay::job`].
    pub fn preview(
        &mut self,
        job: JobId,
        step: &str,
        entry: &str,
        value: &EntryValue,
    ) -> Result<Preview, BayError> {
        let now = self.clock.now();
        let shop = self.people()?.roster();
        let mut preview = preview(&self.refresh(job)?.job, &shop, step, entry, value, &now);
        preview.said.iter_mut().for_each(|message| self.speaker.fill(message));
        Ok(preview)
    }

    /// What a supplement, or the answer to one, that is being typed would turn out to be.
    ///
    /// # Errors
    /// As [`Bay::job`].
    pub fn preview_asking(&mut self, job: JobId, typed: &Asking) -> Result<Preview, BayError> {
        let now = self.clock.now();
        let shop = self.people()?.roster();
        let mut preview = preview_asking(&self.refresh(job)?.job, &shop, typed, &now);
        preview.said.iter_mut().for_each(|message| self.speaker.fill(message));
        Ok(preview)
    }
}

fn take(open: &mut Open, appended: &Appended, origin: &Origin, events: &[Event]) {
    let job = Arc::make_mut(&mut open.job);
    for (seq, event) in (appended.first_seq..).zip(events) {
        job.take(Happened { seq, stamp: origin.stamp, who: origin.who, event: event.clone() });
    }
    open.head = appended.head;
}

fn draft(event: &Event, stamp: &Stamp) -> Result<Draft, BayError> {
    let (kind, version, body) = event.to_body()?;
    Ok(Draft { id: event_id(stamp), kind: kind.to_owned(), version, body })
}
