//! Commands about a step's work: begin, leave, enter, done, all in one go.

use std::collections::BTreeMap;

use panside_procedure::NoOutcome;
use panside_procedure::format::{Ask, Entry, Step};
use panside_procedure::machine::{Action, OutcomeIx, StepIx};

use super::draft::{Draft, find};
use super::refuse::why_not;
use super::signs::signs_of;
use super::turned_up::waits_for_answer;
use crate::command::Refusal;
use crate::event::{Begun, Done, Event, Left};
use crate::message::{
    Message, decision_again, missing_answer_anew, missing_entry, refused_class, refused_missing,
    refused_no_such, refused_not_in_progress, refused_not_yet, refused_sign_with_done,
};
use crate::value::{EntryValue, Signature};

/// What still keeps a step in progress.
pub(crate) struct Missing {
    /// Required entries and signatures that are not there.
    pub absent: Vec<Message>,
    /// The label of each entry whose value keeps the step in progress, and what is said about the value.
    pub not_yet: Vec<(String, Vec<Message>)>,
}

impl Draft<'_> {
    pub fn begin(&mut self, id: &str) -> Result<(), Refusal> {
        let (step, _) = self.step(id)?;
        self.act(Action::Begin(step), |lost| Begun { step: id.to_owned(), lost }.into())
    }

    pub fn leave(&mut self, id: &str) -> Result<(), Refusal> {
        let (step, _) = self.step(id)?;
        self.act(Action::Leave(step), |lost| Left { step: id.to_owned(), lost }.into())
    }

    /// Enters values at a step in progress. A fact is taken down whatever else holds.
    pub fn enter_all(&mut self, id: &str, values: &BTreeMap<String, EntryValue>) -> Result<(), Refusal> {
        let (step, text) = self.step(id)?;
        self.goes_on_still()?;
        if !self.job.procedure.machine.is_begun(&self.state, step) {
            return Err(refused_not_in_progress(&text.title).into());
        }
        // In the order of the step, so that a record reads as the work went.
        if let Some(other) = values.keys().find(|id| find(text, id).is_err()) {
            return Err(refused_no_such("entry", other).into());
        }
        let order: Vec<String> = text.entries.iter().map(|entry| entry.id.clone()).collect();
        for entry in order {
            if let Some(value) = values.get(&entry) {
                self.not_a_signature(step, &entry)?;
                self.enter(step, &entry, value)?;
            }
        }
        Ok(())
    }

    fn not_a_signature(&self, step: StepIx, entry: &str) -> Result<(), Refusal> {
        match &find(self.job.procedure.step(step), entry)?.ask {
            Ask::SignOff(asked) => Err(refused_sign_with_done(&self.sign_off(&asked.sign)?.text).into()),
            _ => Ok(()),
        }
    }

    pub fn done(&mut self, id: &str, given: &[Signature], later: bool) -> Result<(), Refusal> {
        let (step, text) = self.step(id)?;
        self.goes_on(step)?;
        let mut missing = self.missing(step);
        let worker = Some(self.begun(step).1);
        let signs = self.signatures(text, worker, given, &mut missing.absent)?;
        refuse_missing(text, missing)?;
        let mut classes: BTreeMap<String, String> = self
            .values(step)
            .into_iter()
            .map(|(entry, counted)| (entry.to_owned(), counted.class.to_owned()))
            .collect();
        classes.extend(signed(text, &signs));
        let outcome = self.outcome(step, &classes)?;
        self.act(Action::Done(step, outcome), |lost| {
            Event::Done(Done { step: id.to_owned(), classes, signs, later, lost })
        })
    }

    /// Whether a step is in progress and may go on: what must hold while it is worked does, and its permits are valid. What
    /// else keeps it from being done is asked only then.
    pub fn goes_on(&self, step: StepIx) -> Result<(), Refusal> {
        let machine = &self.job.procedure.machine;
        let rule = &machine.steps[step.at()];
        let goes_on = machine.is_begun(&self.state, step)
            && rule.while_.holds(&self.state)
            && rule.permits.iter().all(|&permit| machine.is_valid(&self.state, permit));
        // Both are judged before any outcome is looked at, so that any outcome will do to ask why not.
        let any = Action::Done(step, OutcomeIx(0));
        if !goes_on {
            return Err(why_not(self.job, &self.state, any, self.now));
        }
        waits_for_answer(self.job, step)
    }

    /// Begin unless in progress, enter, done. Values that keep the step in progress are facts: they are written and the step
    /// stays in progress.
    pub fn work(
        &mut self,
        id: &str,
        values: &BTreeMap<String, EntryValue>,
        given: &[Signature],
        later: bool,
    ) -> Result<(), Refusal> {
        let (step, _) = self.step(id)?;
        if !self.job.procedure.machine.is_begun(&self.state, step) {
            self.begin(id)?;
        }
        self.enter_all(id, values)?;
        let missing = self.missing(step);
        let entered_now = |event: &Event| matches!(event, Event::Entered(_));
        if !missing.not_yet.is_empty() && self.events.iter().any(entered_now) {
            return Ok(());
        }
        self.done(id, given, later)
    }

    /// The outcome that classes make; classes that the step cannot have are refused.
    pub fn outcome(&self, step: StepIx, classes: &BTreeMap<String, String>) -> Result<OutcomeIx, Refusal> {
        let entries = &self.job.procedure.step(step).entries;
        let label =
            |id: String| entries.iter().find(|entry| entry.id == id).map_or(id, |entry| entry.label.clone());
        self.job.procedure.outcome(step, classes).map_err(|none| match none {
            NoOutcome::NotYet(entry) => refused_not_yet(label(entry)).into(),
            NoOutcome::Missing(entry) => missing_entry(label(entry)).into(),
            NoOutcome::NoClass(entry, class) => refused_class(label(entry), class).into(),
        })
    }

    /// What still keeps a step in progress, signatures apart.
    pub fn missing(&self, step: StepIx) -> Missing {
        let values = self.values(step);
        let mut missing = Missing { absent: Vec::new(), not_yet: Vec::new() };
        for entry in &self.job.procedure.step(step).entries {
            if let Some(estimate) = self.changed_after(step, entry) {
                missing.absent.push(missing_answer_anew(&entry.label, estimate));
                continue;
            }
            match values.get(entry.id.as_str()) {
                None if entry.optional || matches!(entry.ask, Ask::SignOff(_)) => {}
                None => missing.absent.push(missing_entry(&entry.label)),
                Some(&counted) if self.is_stale(step, entry, counted) => {
                    missing.absent.push(decision_again(&entry.label));
                }
                Some(counted) if entry.classes.get(counted.class).is_some_and(|effect| effect.not_yet) => {
                    let said = self
                        .judge(step, entry, counted.value)
                        .map_or_else(|refusal| vec![refusal.message], |it| it.said);
                    missing.not_yet.push((entry.label.clone(), said));
                }
                Some(_) => {}
            }
        }
        missing
    }
}

impl Draft<'_> {
    /// The label of the estimate of the same step that was changed after the customer's answer to it was entered: nobody agreed
    /// to what stands there now.
    fn changed_after(&self, step: StepIx, entry: &Entry) -> Option<&str> {
        let Ask::Authorization(asked) = &entry.ask else { return None };
        let text = self.job.procedure.step(step);
        let of = asked.of.as_deref()?.strip_prefix(&text.id)?.strip_prefix('.')?;
        let answered = self.place_of(step, &entry.id)?;
        let estimate = text.entries.iter().find(|found| found.id == of)?;
        (self.place_of(step, of)? > answered).then_some(estimate.label.as_str())
    }
}

/// Refuses a step that is not all in.
pub(crate) fn refuse_missing(step: &Step, missing: Missing) -> Result<(), Refusal> {
    let Missing { absent, not_yet } = missing;
    let message = match (absent.is_empty(), not_yet.first()) {
        (true, None) => return Ok(()),
        (true, Some((label, _))) => refused_not_yet(label),
        (false, _) => refused_missing(&step.title),
    };
    let unmet = absent.into_iter().chain(not_yet.into_iter().flat_map(|(_, said)| said)).collect();
    Err(Refusal { message, unmet })
}

/// The classes of a step's sign-offs that are given.
pub(crate) fn signed<'a>(
    step: &'a Step,
    signs: &'a [Signature],
) -> impl Iterator<Item = (String, String)> + 'a {
    signs_of(step)
        .filter(|(_, sign)| signs.iter().any(|signature| signature.sign == *sign))
        .map(|(entry, _)| (entry.to_owned(), "signed".to_owned()))
}
