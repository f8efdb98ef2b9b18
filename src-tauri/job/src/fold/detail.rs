//! The rich detail beside rule state: who, when, which values.

use std::collections::BTreeSet;

use panside_journal::Stamp;
use panside_procedure::State;
use panside_procedure::format::Step;
use panside_procedure::machine::{SignIx, StepIx, VarIx};

use crate::change::gates;
use crate::decide::unmet::is_measured;
use crate::event::{Corrected, Entered, Event};
use crate::job::{Attempt, EndedBy, EnteredValue, Given, Job, Known, LastRead, Mark, Reason, Voiding};

impl Job {
    pub(super) fn take_detail(&mut self, mark: &Mark, event: &Event) {
        let reason = |text: &String| Reason { mark: mark.clone(), text: text.clone() };
        match event {
            Event::Finished(_) | Event::Stopped(_) => self.end = Some(mark.clone()),
            Event::Observed(body) => {
                for step in body.undone.iter().filter_map(|id| self.procedure.names.step(id)) {
                    let detail = &mut self.steps[step.at()];
                    detail.undone.push(mark.clone());
                    void(&mut detail.attempts, mark);
                }
            }
            _ => {}
        }
        let Some(step) = event.step().and_then(|id| self.procedure.names.step(id)) else { return };
        let detail = &mut self.steps[step.at()];
        match event {
            Event::Begun(_) => detail.attempts.push(Attempt::new(mark.clone())),
            Event::Left(_) => {
                if let Some(attempt) = detail.attempts.last_mut() {
                    attempt.ended = Some((EndedBy::Left, mark.clone()));
                }
            }
            Event::Done(body) => {
                if let Some(attempt) = detail.attempts.last_mut() {
                    attempt.ended = Some((EndedBy::Done, mark.clone()));
                    attempt.classes.clone_from(&body.classes);
                    attempt.signs.clone_from(&body.signs);
                    attempt.later = body.later;
                }
            }
            Event::Skipped(body) => detail.skipped = Some(reason(&body.reason)),
            Event::MissedExplained(body) => detail.missed = Some(reason(&body.reason)),
            Event::Entered(body) => self.take_entered(step, mark, body),
            Event::Corrected(body) => {
                let entries = self.procedure.step(step).entries.iter().map(|entry| entry.id.as_str());
                detail.attempts.push(corrected(mark, body, entries));
            }
            Event::Voided(body) => {
                let also = body.also.iter().filter_map(|id| self.procedure.names.step(id));
                let with = also.map(|other| (other, Some(body.step.clone())));
                for (gone, with) in std::iter::once((step, None)).chain(with) {
                    let detail = &mut self.steps[gone.at()];
                    detail.voids.push(Voiding { reason: reason(&body.reason), with });
                    void(&mut detail.attempts, mark);
                }
            }
            _ => {}
        }
    }

    fn take_entered(&mut self, step: StepIx, mark: &Mark, body: &Entered) {
        let detail = &mut self.steps[step.at()];
        if detail.in_progress().is_none() {
            // The record has a value at a step that nobody was in: keep the value all the same.
            detail.attempts.push(Attempt::new(mark.clone()));
            let title = &self.procedure.step(step).title;
            let what = crate::message::differs_entered(title);
            self.disagreements.push(crate::job::Disagreement { seq: mark.seq, what });
        }
        let detail = &mut self.steps[step.at()];
        let Some((attempt_at, attempt)) = detail.attempts.iter_mut().enumerate().next_back() else { return };
        let value = attempt.entries.len();
        attempt.entries.push(EnteredValue {
            mark: mark.clone(),
            entry: body.entry.clone(),
            value: body.value.clone(),
            class: body.class.clone(),
            worked_out: body.worked_out.clone(),
        });
        let last_read = LastRead { step, attempt: attempt_at, value };
        let names = &self.procedure.names;
        let decided: Vec<VarIx> = decides(self.procedure.step(step), &body.entry)
            .iter()
            .filter_map(|gate| names.var(gate))
            .collect();
        for gate in decided {
            self.gates[gate.at()].last_read = Some(last_read);
        }
    }

    pub(super) fn take_signs(&mut self, mark: &Mark, before: &State, event: &Event) {
        let machine = &self.procedure.machine;
        let signatures = match event {
            Event::Done(body) => body.signs.as_slice(),
            Event::Corrected(body) => body.signs.as_slice(),
            Event::Signed(body) => std::slice::from_ref(&body.signature),
            _ => &[],
        };
        for given in (0..machine.signs.len()).map(SignIx::of) {
            let valid = machine.is_valid(&self.state, given);
            if machine.is_valid(before, given)
                && !valid
                && let Some(last) = self.signs[given.at()].last_mut()
            {
                last.lapsed = Some(mark.clone());
            }
            let id = &self.procedure.sign_off(given).id;
            for signature in signatures.iter().filter(|signature| signature.sign == *id) {
                // Signed in a correction where it no longer holds: taken down, and lapsed from the first.
                let lapsed = (!valid).then(|| mark.clone());
                let name = self.people.called(signature.by, mark.seq);
                self.signs[given.at()].push(Given {
                    signature: signature.clone(),
                    name,
                    mark: mark.clone(),
                    lapsed,
                });
            }
        }
    }

    /// When the value was taken that decides a gate which this event sets.
    fn taken(&self, gate: VarIx, event: &Event) -> Option<Stamp> {
        let Event::Done(done) = event else { return None };
        let read = self.gates[gate.at()].last_read?;
        let attempt = self.steps[read.step.at()].attempts.get(read.attempt)?;
        let decides = self.procedure.step(read.step).id == done.step && attempt.void.is_none();
        let is_last = read.attempt + 1 == self.steps[read.step.at()].attempts.len();
        (decides && is_last).then(|| attempt.entries.get(read.value).map(|value| value.mark.stamp)).flatten()
    }

    pub(super) fn take_gates(&mut self, mark: &Mark, before: &State, event: &Event) {
        let written: BTreeSet<&str> = match (event, event.step().and_then(|id| self.procedure.names.step(id)))
        {
            (Event::Done(body), Some(step)) => writes(self.procedure.step(step), &body.classes),
            (Event::Corrected(body), Some(step)) => writes(self.procedure.step(step), &body.classes),
            _ => BTreeSet::new(),
        };
        let corrected = matches!(event, Event::Corrected(_));
        for gate in gates(&self.procedure) {
            let machine = &self.procedure.machine;
            let (was, is) = (machine.value(before, gate), machine.value(&self.state, gate));
            // A correction makes nothing fresh that ages.
            let written = written.contains(self.procedure.var_name(gate))
                && !(corrected && machine.vars[gate.at()].ages);
            let taken = self.taken(gate, event);
            let detail = &mut self.gates[gate.at()];
            if is == 0 {
                detail.set = None;
                if was != 0 {
                    detail.lost = Some(mark.clone());
                }
            } else if was != is || written {
                let (class, from) =
                    (self.procedure.value_name(gate, is).to_owned(), taken.unwrap_or(mark.stamp));
                detail.set = Some(Known { class, mark: mark.clone(), from });
                detail.lost = None;
            }
        }
    }
}

/// Marks the attempts that counted until now.
fn void(attempts: &mut [Attempt], mark: &Mark) {
    for attempt in attempts.iter_mut().filter(|attempt| attempt.is_done() && attempt.void.is_none()) {
        attempt.void = Some(mark.clone());
    }
}

/// A voided step corrected: its values in the order of the checklist.
fn corrected<'a>(mark: &Mark, body: &Corrected, order: impl Iterator<Item = &'a str>) -> Attempt {
    let value = |(entry, value): (&str, &crate::EntryValue)| EnteredValue {
        mark: mark.clone(),
        entry: entry.to_owned(),
        value: value.clone(),
        class: body.classes.get(entry).cloned().unwrap_or_default(),
        worked_out: body.worked_out.get(entry).cloned(),
    };
    Attempt {
        ended: Some((EndedBy::Done, mark.clone())),
        corrected: true,
        entries: order.filter_map(|entry| Some((entry, body.values.get(entry)?))).map(value).collect(),
        classes: body.classes.clone(),
        signs: body.signs.clone(),
        ..Attempt::new(mark.clone())
    }
}

/// Gates that a step writes when its entries have these classes.
fn writes<'a>(step: &'a Step, classes: &std::collections::BTreeMap<String, String>) -> BTreeSet<&'a str> {
    let by_class = step.entries.iter().filter_map(|entry| entry.classes.get(classes.get(&entry.id)?));
    by_class.flat_map(|effect| effect.sets.keys()).chain(step.sets.keys()).map(String::as_str).collect()
}

/// Gates that an entry decides: those its classes set, and, where it is measured, those its step sets.
fn decides<'a>(step: &'a Step, id: &str) -> BTreeSet<&'a str> {
    let Some(entry) = step.entries.iter().find(|entry| entry.id == id) else { return BTreeSet::new() };
    let measured = is_measured(entry);
    let by_step = step.sets.keys().filter(|_| measured && !entry.classes.is_empty());
    entry.classes.values().flat_map(|effect| effect.sets.keys()).chain(by_step).map(String::as_str).collect()
}
