//! What happened on the job before an entry is judged: what other entries took down, and what heated the vehicle.

use panside_journal::Stamp;
use panside_procedure::Shown;
use panside_procedure::format::Assignments;

use crate::event::Event;
use crate::job::{Attempt, EnteredValue, Job};
use crate::value::EntryValue;

/// What happened before an entry is judged.
#[derive(Debug, Clone, Copy)]
pub struct Past<'a> {
    job: &'a Job,
    /// Events of the command that is decided just now: not written yet.
    pending: &'a [Event],
    now: &'a Stamp,
    /// Only what was written before this event counts; nothing: all of it.
    until: Option<u64>,
}

/// A value that was taken down.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Taken<'a> {
    pub value: &'a EntryValue,
    pub class: &'a str,
    pub at: &'a Stamp,
    /// Its place among all events, those not written yet included.
    pub place: u64,
}

/// When something last heated the vehicle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Heated {
    /// Never on this job.
    Never,
    /// Until then.
    Until(Stamp),
    /// It does now.
    Now,
}

impl<'a> Past<'a> {
    /// All that happened until now, with what a command has brought so far.
    pub(crate) fn of(job: &'a Job, pending: &'a [Event], now: &'a Stamp) -> Past<'a> {
        Past { job, pending, now, until: None }
    }

    /// All that happened before an event was written.
    pub(crate) fn before(job: &'a Job, event: u64, at: &'a Stamp) -> Past<'a> {
        Past { job, pending: &[], now: at, until: Some(event) }
    }

    /// What was taken down at an entry of work that still counts, corrected afterwards or not, attempt by attempt: of each attempt
    /// that was done, or is in progress, the last value. Work that was done again was done twice.
    pub(crate) fn latest(&self, step: &str, entry: &str) -> Vec<Taken<'a>> {
        let counted = self.attempts(step).filter(|attempt| attempt.is_done() || attempt.ended.is_none());
        let lists = counted.map(|attempt| (attempt.ended.is_none(), self.of_attempt(attempt, entry)));
        let mut lists: Vec<(bool, Vec<Taken<'a>>)> = lists.collect();
        let pending = self.pending(step, entry);
        match lists.last_mut() {
            Some((true, open)) => open.extend(pending),
            _ => lists.push((true, pending)),
        }
        lists.into_iter().filter_map(|(_, list)| list.last().copied()).collect()
    }

    /// What was read at an entry, oldest first, also in work that was left; nothing that was corrected afterwards.
    pub(crate) fn readings(&self, step: &str, entry: &str) -> Vec<Taken<'a>> {
        let worked = self.attempts(step).filter(|attempt| !attempt.corrected);
        let read = worked.flat_map(|attempt| self.of_attempt(attempt, entry));
        read.chain(self.pending(step, entry)).collect()
    }

    /// The same of the attempt that goes on, or of the last one.
    pub(crate) fn in_progress(&self, step: &str, entry: &str) -> Vec<Taken<'a>> {
        let last = self.attempts(step).filter(|attempt| !attempt.corrected).last();
        let goes_on = last.filter(|attempt| attempt.ended.is_none() || self.until.is_some());
        let read = goes_on.map(|attempt| self.of_attempt(attempt, entry)).unwrap_or_default();
        read.into_iter().chain(self.pending(step, entry)).collect()
    }

    /// Whether a step asks for nothing more: it was worked, it was passed over, or it is not part of the job.
    pub(crate) fn is_dealt_with(&self, step: &str) -> bool {
        let machine = &self.job.procedure.machine;
        let shown = self.job.procedure.names.step(step).map(|step| machine.shown(&self.job.state, step));
        match shown {
            Some(Shown::Done | Shown::Lapsed | Shown::NotInThisJob | Shown::Skipped | Shown::Missed) => true,
            None
            | Some(Shown::Undecided | Shown::Waiting | Shown::Open | Shown::InProgress | Shown::Voided) => {
                false
            }
        }
    }

    /// What a checklist calls an entry.
    pub(crate) fn label(&self, step: &str, entry: &str) -> Option<String> {
        let step = self.job.procedure.step(self.job.procedure.names.step(step)?);
        step.entries.iter().find(|found| found.id == entry).map(|found| found.label.clone())
    }

    /// When one of these conditions last had the value that heats.
    pub(crate) fn heated(&self, by: &Assignments) -> Heated {
        let machine = &self.job.procedure.machine;
        let mut last: Option<(u64, Stamp)> = None;
        for (name, value) in by {
            let Some(var) = self.job.procedure.names.var(name) else { continue };
            let Some(hot) = self.job.procedure.names.value_of(var, value) else { continue };
            let mut changes = self.job.changes.iter().filter(|change| change.var == var);
            let until = self.until.unwrap_or(u64::MAX);
            let first_later = changes.clone().find(|change| change.mark.seq >= until);
            let is = first_later.map_or(machine.value(&self.job.state, var), |change| change.from);
            if is == hot {
                return Heated::Now;
            }
            let ended = changes.rfind(|change| change.mark.seq < until && change.from == hot);
            if let Some(change) = ended
                && last.is_none_or(|(seq, _)| seq < change.mark.seq)
            {
                last = Some((change.mark.seq, change.mark.stamp));
            }
        }
        last.map_or(Heated::Never, |(_, stamp)| Heated::Until(stamp))
    }

    fn attempts(&self, step: &str) -> impl Iterator<Item = &'a Attempt> + use<'a> {
        let until = self.until.unwrap_or(u64::MAX);
        let found = self.job.procedure.names.step(step);
        let attempts = found.map(|found| self.job.step(found).attempts.as_slice()).unwrap_or_default();
        // What was voided later still counted then.
        let void = move |attempt: &Attempt| attempt.void.as_ref().is_some_and(|mark| mark.seq < until);
        attempts.iter().filter(move |attempt| !void(attempt) && attempt.begun.seq < until)
    }

    fn of_attempt(&self, attempt: &'a Attempt, entry: &str) -> Vec<Taken<'a>> {
        let until = self.until.unwrap_or(u64::MAX);
        let wanted = |value: &&EnteredValue| value.entry == entry && value.mark.seq < until;
        let taken = |value: &'a EnteredValue| Taken {
            value: &value.value,
            class: &value.class,
            at: &value.mark.stamp,
            place: value.mark.seq,
        };
        attempt.entries.iter().filter(wanted).map(taken).collect()
    }

    fn pending(&self, step: &str, entry: &str) -> Vec<Taken<'a>> {
        let (now, first) = (self.now, self.job.last_seq() + 1);
        let taken = self.pending.iter().zip(first..).filter_map(|(event, place)| match event {
            Event::Entered(entered) if entered.step == step && entered.entry == entry => {
                Some(Taken { value: &entered.value, class: &entered.class, at: now, place })
            }
            _ => None,
        });
        taken.collect()
    }
}
