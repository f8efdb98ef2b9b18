//! Commands about what is written: sign again, skip, void, correct afterwards, explain what was missed.

use std::collections::BTreeMap;

use panside_procedure::format::Ask;
use panside_procedure::machine::Action;

use super::draft::{Draft, find, reason};
use super::work::{Missing, refuse_missing, signed};
use crate::change::voided;
use crate::command::Refusal;
use crate::entry::Classified;
use crate::event::{Corrected, Entered, Event, MissedExplained, Signed, Skipped, Voided};
use crate::message::{
    missing_entry, refused_no_signature, refused_no_such, refused_not_missed, refused_not_voided,
};
use crate::value::{EntryValue, Signature};

impl Draft<'_> {
    pub fn sign(&mut self, signature: &Signature) -> Result<(), Refusal> {
        let job = self.job;
        let sign_off = self.sign_off(&signature.sign)?;
        let no_such = || Refusal::from(refused_no_such("sign_off", &signature.sign));
        let given = job.procedure.names.sign(&signature.sign).ok_or_else(no_such)?;
        let step = job.procedure.machine.signs[given.at()].step;
        let worker = job.step(step).counts().map(|attempt| attempt.begun.who);
        let signature = self.signature(sign_off, worker, signature)?;
        self.act(Action::Sign(given), |lost| Signed { signature, lost }.into())
    }

    pub fn sign_again(&mut self, signatures: &[Signature]) -> Result<(), Refusal> {
        if signatures.is_empty() {
            return Err(refused_no_signature().into());
        }
        signatures.iter().try_for_each(|signature| self.sign(signature))
    }

    pub fn skip(&mut self, id: &str, why: &str) -> Result<(), Refusal> {
        let (step, _) = self.step(id)?;
        let reason = reason(why)?;
        self.act(Action::Skip(step), |lost| Skipped { step: id.to_owned(), reason, lost }.into())
    }

    pub fn void(&mut self, id: &str, why: &str) -> Result<(), Refusal> {
        let (step, _) = self.step(id)?;
        let reason = reason(why)?;
        let before = self.state;
        self.act(Action::Void(step), |lost| {
            Voided { step: id.to_owned(), reason, also: Vec::new(), lost }.into()
        })?;
        let also = voided(&self.job.procedure, &before, &self.state);
        if let Some(Event::Voided(event)) = self.events.last_mut() {
            event.also = also.into_iter().filter(|other| other != id).collect();
        }
        Ok(())
    }

    /// What is corrected is judged as of the time when the work was done: a wait that was over then is over, and a
    /// tool that was in its days then was.
    pub fn correct(
        &mut self,
        id: &str,
        entries: &BTreeMap<String, EntryValue>,
        given: &[Signature],
        why: Option<&str>,
    ) -> Result<(), Refusal> {
        let (step, text) = self.step(id)?;
        if !crate::change::is_voided(&self.job.procedure, &self.state, step) {
            return Err(refused_not_voided(&text.title).into());
        }
        if let Some(other) = entries.keys().find(|id| find(text, id).is_err()) {
            return Err(refused_no_such("entry", other).into());
        }
        let attempt =
            self.job.step(step).attempts.iter().rfind(|attempt| attempt.is_done() && !attempt.corrected);
        let begun = attempt.map(|attempt| attempt.begun.stamp);
        let at = attempt.and_then(|attempt| attempt.ended.as_ref()).map_or(*self.now, |(_, mark)| mark.stamp);
        let mut missing = Missing { absent: Vec::new(), not_yet: Vec::new() };
        let worker = attempt.map(|attempt| attempt.begun.who);
        let (mut classes, mut values, mut worked_out) = (BTreeMap::new(), BTreeMap::new(), BTreeMap::new());
        // What is decided here is decided by what is corrected with it.
        let written = self.events.len();
        for entry in text.entries.iter().filter(|entry| !matches!(entry.ask, Ask::SignOff(_))) {
            let Some(value) = entries.get(&entry.id) else {
                if !entry.optional {
                    missing.absent.push(missing_entry(&entry.label));
                }
                continue;
            };
            let judged = self.judge_at(id, entry, value, begun.as_ref(), (&at, &self.events))?;
            if entry.classes.get(&judged.class).is_some_and(|effect| effect.not_yet) {
                missing.not_yet.push((entry.label.clone(), judged.said));
            }
            self.stands_for(entry, &judged.value, worker)?;
            let Classified { class, value, worked_out: how, .. } = judged;
            classes.insert(entry.id.clone(), class.clone());
            values.insert(entry.id.clone(), value.clone());
            worked_out.extend(how.clone().map(|how| (entry.id.clone(), how)));
            let (step, entry) = (id.to_owned(), entry.id.clone());
            self.events.push(Entered { step, entry, value, class, worked_out: how }.into());
        }
        self.events.truncate(written);
        let signs = self.signatures(text, worker, given, &mut missing.absent)?;
        refuse_missing(text, missing)?;
        classes.extend(signed(text, &signs));
        let outcome = self.outcome(step, &classes)?;
        let reason = why.map(str::trim).filter(|why| !why.is_empty()).map(str::to_owned);
        self.act(Action::Correct(step, outcome), |lost| {
            Corrected { step: id.to_owned(), classes, values, worked_out, signs, reason, lost }.into()
        })
    }

    pub fn explain_missed(&mut self, id: &str, why: &str) -> Result<(), Refusal> {
        let (step, text) = self.step(id)?;
        if !self.job.procedure.machine.is_missed(&self.state, step) {
            return Err(refused_not_missed(&text.title).into());
        }
        self.events.push(MissedExplained { step: id.to_owned(), reason: reason(why)? }.into());
        Ok(())
    }
}
