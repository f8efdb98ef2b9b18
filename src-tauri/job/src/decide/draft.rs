//! The events of one command while they are put together: each is checked on the state that those before it leave.

use std::collections::BTreeMap;

use panside_journal::{PersonId, Stamp};
use panside_procedure::State;
use panside_procedure::format::{Ask, Entry, Step};
use panside_procedure::machine::{Action, StepIx};

use super::refuse::allowed;
use crate::change::lost;
use crate::command::{Actor, Refusal};
use crate::entry::{Classified, Context, Past, WorkedOut, classify};
use crate::event::{Entered, Event, Lost};
use crate::job::{EnteredValue, Job};
use crate::message::{refused_finished, refused_no_reason, refused_no_such, refused_stopped};
use crate::people::Names;
use crate::value::EntryValue;

pub(crate) struct Draft<'a> {
    pub job: &'a Job,
    pub names: Names<'a>,
    pub who: &'a Actor,
    pub now: &'a Stamp,
    pub state: State,
    pub events: Vec<Event>,
}

/// A value of a step in progress.
#[derive(Clone, Copy)]
pub(crate) struct Counted<'a> {
    pub value: &'a EntryValue,
    pub class: &'a str,
    pub worked_out: Option<&'a WorkedOut>,
}

impl<'a> Draft<'a> {
    /// Carries out an action if it is allowed, and adds the event that `make` makes of what was lost through it.
    pub fn act(&mut self, action: Action, make: impl FnOnce(Lost) -> Event) -> Result<(), Refusal> {
        let next = allowed(self.job, &self.state, action, self.now)?;
        let lost = lost(&self.job.procedure, &self.state, &next);
        self.state = next;
        self.events.push(make(lost));
        Ok(())
    }

    /// Whether anything can still be entered.
    pub fn goes_on_still(&self) -> Result<(), Refusal> {
        let machine = &self.job.procedure.machine;
        if machine.is_finished(&self.state) {
            return Err(refused_finished().into());
        }
        if machine.is_stopped(&self.state) {
            return Err(refused_stopped().into());
        }
        Ok(())
    }

    pub fn step(&self, id: &str) -> Result<(StepIx, &'a Step), Refusal> {
        let found = self.job.procedure.names.step(id);
        let step = found.ok_or_else(|| Refusal::from(refused_no_such("step", id)))?;
        Ok((step, self.job.procedure.step(step)))
    }

    /// When the step in progress was begun, and by whom. Within one command that begins it: now, by who asks.
    pub fn begun(&self, step: StepIx) -> (Stamp, PersonId) {
        match self.job.step(step).in_progress() {
            Some(attempt) => (attempt.begun.stamp, attempt.begun.who),
            None => (*self.now, self.who.id),
        }
    }

    /// The values of the step in progress that count so far: those of the job and those of this command.
    pub fn values(&self, step: StepIx) -> BTreeMap<&str, Counted<'_>> {
        let mut values = BTreeMap::new();
        if let Some(attempt) = self.job.step(step).in_progress() {
            values.extend(attempt.entries.iter().map(|entered| {
                let EnteredValue { entry, value, class, worked_out, .. } = entered;
                (entry.as_str(), Counted { value, class, worked_out: worked_out.as_ref() })
            }));
        }
        let id = &self.job.procedure.step(step).id;
        for event in &self.events {
            if let Event::Entered(entered) = event
                && entered.step == *id
            {
                let Entered { entry, value, class, worked_out, .. } = entered;
                values.insert(entry, Counted { value, class, worked_out: worked_out.as_ref() });
            }
        }
        values
    }

    /// Whether something was decided by entries that have changed since.
    pub fn is_stale(&self, step: StepIx, entry: &Entry, entered: Counted<'_>) -> bool {
        matches!(entry.ask, Ask::Decision(_))
            && self
                .judge(step, entry, entered.value)
                .map_or(true, |now| now.worked_out.as_ref() != entered.worked_out)
    }

    /// Which of all entries in the step in progress last gave an entry its value.
    pub fn place_of(&self, step: StepIx, entry: &str) -> Option<usize> {
        let before = self.job.step(step).in_progress().map_or(&[][..], |attempt| &attempt.entries);
        let id = &self.job.procedure.step(step).id;
        let now = self.events.iter().map(|event| match event {
            Event::Entered(entered) if entered.step == *id => entered.entry.as_str(),
            _ => "",
        });
        let all = before.iter().map(|entered| entered.entry.as_str()).chain(now);
        all.enumerate().filter(|(_, found)| *found == entry).map(|(place, _)| place).last()
    }

    pub fn judge(&self, step: StepIx, entry: &Entry, value: &EntryValue) -> Result<Classified, Refusal> {
        let begun = self.begun(step).0;
        let id = &self.job.procedure.step(step).id;
        self.judge_at(id, entry, value, Some(&begun), (self.now, &self.events))
    }

    /// Judges a value that was taken at a time, with events that are not written yet.
    pub fn judge_at(
        &self,
        step: &str,
        entry: &Entry,
        value: &EntryValue,
        begun: Option<&Stamp>,
        (at, pending): (&Stamp, &[Event]),
    ) -> Result<Classified, Refusal> {
        let context = Context {
            checklist: &self.job.procedure.checklist,
            begun,
            at,
            utc_offset_min: self.job.utc_offset_min(),
            names: self.names,
            step,
            entry: &entry.id,
            past: Some(Past::of(self.job, pending, self.now)),
        };
        classify(&entry.ask, &self.job.specs, value, &context)
    }

    /// Judges a value and adds the event.
    pub fn enter(&mut self, step: StepIx, id: &str, value: &EntryValue) -> Result<(), Refusal> {
        let procedure = &self.job.procedure;
        let entry = find(procedure.step(step), id)?;
        let judged = self.judge(step, entry, value)?;
        self.stands_for(entry, &judged.value, Some(self.begun(step).1))?;
        self.events.push(Event::Entered(Entered {
            step: procedure.step(step).id.clone(),
            entry: id.to_owned(),
            value: judged.value,
            class: judged.class,
            worked_out: judged.worked_out,
        }));
        Ok(())
    }
}

/// An entry of a step.
pub(crate) fn find<'a>(step: &'a Step, id: &str) -> Result<&'a Entry, Refusal> {
    let found = step.entries.iter().find(|entry| entry.id == id);
    found.ok_or_else(|| refused_no_such("entry", id).into())
}

/// A reason without spaces around it.
pub(crate) fn reason(text: &str) -> Result<String, Refusal> {
    match text.trim() {
        "" => Err(refused_no_reason().into()),
        text => Ok(text.to_owned()),
    }
}
