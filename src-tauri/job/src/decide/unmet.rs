//! What does not hold, in words: which condition, what it is, what would do, and, where a gate came from a reading,
//! what was last read.

use panside_journal::Stamp;
use panside_procedure::format::{Ask, Entry};
use panside_procedure::machine::{Pred, StepIx, Unmet, VarIx, VariableKind};
use panside_procedure::{Procedure, State};

use crate::clock::{MINUTE_MS, measured_ms};
use crate::entry::{self, Limit, in_short, limits};
use crate::job::{EnteredValue, Job};
use crate::message::{
    Arg, Message, unmet_empty, unmet_gate, unmet_gate_at_least, unmet_gate_at_most, unmet_gate_lost,
    unmet_gate_read, unmet_gate_restarted, unmet_gate_settled, unmet_gate_unknown, unmet_gate_within,
    unmet_never, unmet_not_signed, unmet_not_worked, unmet_piece_off, unmet_signed, unmet_value,
    unmet_worked,
};

/// Where the words come from: the checklist alone, or a job at a time.
#[derive(Clone, Copy)]
pub(crate) struct Because<'a> {
    procedure: &'a Procedure,
    job: Option<(&'a Job, &'a Stamp)>,
}

impl<'a> Because<'a> {
    /// The checklist alone: what was read is not told.
    pub(crate) fn of_rules(procedure: &'a Procedure) -> Because<'a> {
        Because { procedure, job: None }
    }

    /// A job as it stands now.
    pub(crate) fn of(job: &'a Job, now: &'a Stamp) -> Because<'a> {
        Because { procedure: &job.procedure, job: Some((job, now)) }
    }

    /// What of a predicate does not hold.
    pub(crate) fn unmet(&self, pred: &Pred, state: &State) -> Vec<Message> {
        let mut found = Vec::new();
        self.procedure.machine.unmet(pred, state, &mut found);
        self.say_all(&found)
    }

    pub(crate) fn say_all(&self, unmet: &[Unmet]) -> Vec<Message> {
        let mut said: Vec<Message> = Vec::new();
        for message in unmet.iter().flat_map(|one| self.say(one)) {
            if !said.contains(&message) {
                said.push(message);
            }
        }
        said
    }

    fn say(&self, unmet: &Unmet) -> Vec<Message> {
        match unmet {
            Unmet::PieceOff => {
                let pieces = self.job.map_or(&[][..], |(job, _)| &job.turned_up.pieces).iter();
                let off = pieces.filter(|piece| piece.off() > 0);
                off.map(|piece| unmet_piece_off(&piece.piece.name, i64::from(piece.off()))).collect()
            }
            other => vec![self.say_one(other)],
        }
    }

    fn say_one(&self, unmet: &Unmet) -> Message {
        let procedure = self.procedure;
        let title = |step: StepIx| procedure.step(step).title.as_str();
        match unmet {
            Unmet::Value { var, is, wants } => {
                let what = procedure.var_label(*var);
                let is_gate = procedure.machine.vars[var.at()].kind == VariableKind::Gate;
                // What a gate has no value for: nothing that anybody could bring about.
                let is_unknown = |value: u8| is_gate && value == 0;
                let known = !is_unknown(*is);
                let is = procedure.value_label(*var, *is);
                let wants = wants.iter().filter(|&&value| !is_unknown(value));
                let wants: Vec<_> =
                    wants.map(|&value| procedure.value_label(*var, value).to_owned()).collect();
                match (is_gate, wants.is_empty()) {
                    (true, true) => unmet_gate_settled(what, is),
                    (true, false) => self.gate(*var, what, Some(is).filter(|_| known), Arg::AnyOf(wants)),
                    (false, _) => unmet_value(what, is, Arg::AnyOf(wants)),
                }
            }
            Unmet::Worked(step, true) => unmet_worked(title(*step)),
            Unmet::Worked(step, false) => unmet_not_worked(title(*step)),
            Unmet::Signed(given, true) => {
                let step = procedure.machine.signs[given.at()].step;
                unmet_signed(&procedure.sign_off(*given).text, title(step))
            }
            Unmet::Signed(given, false) => unmet_not_signed(&procedure.sign_off(*given).text),
            Unmet::Empty(item, off) => unmet_empty(&procedure.item(*item).name, i64::from(*off)),
            Unmet::Never | Unmet::PieceOff => unmet_never(),
        }
    }

    fn gate(&self, gate: VarIx, what: &str, is: Option<&str>, wants: Arg) -> Message {
        let known = is.is_some();
        let bare = |wants| match is {
            Some(is) => unmet_gate(what, is, wants),
            None => unmet_gate_unknown(what, wants),
        };
        let Some((job, now)) = self.job else {
            return bare(wants);
        };
        let last = job.last_read(gate).zip(self.entry(job, gate));
        let detail = job.gate(gate);
        // Set in the job but not in the state: time has just made it too old.
        let is_lost = |read: &EnteredValue| {
            detail.set.is_some() || detail.lost.as_ref().is_some_and(|lost| lost.seq > read.mark.seq)
        };
        match last {
            Some((read, entry)) if known && is_measured(entry) => {
                unmet_gate_read(what, said(job, read, entry), wants)
            }
            Some((read, entry)) if !known && is_lost(read) => {
                let said = said(job, read, entry);
                let minutes = measured_ms(&read.mark.stamp, now).map(|ms| ms / MINUTE_MS);
                minutes.map_or_else(
                    || unmet_gate_restarted(what, said.clone()),
                    |minutes| unmet_gate_lost(what, said.clone(), i64::try_from(minutes).unwrap_or(i64::MAX)),
                )
            }
            Some((read, entry)) if !known && keeps_in_progress(entry, &read.class) => {
                self.not_yet(job, what, read, entry, wants)
            }
            _ => bare(wants),
        }
    }

    fn entry(&self, job: &Job, gate: VarIx) -> Option<&'a Entry> {
        let last = job.gate(gate).last_read?;
        let read = job.last_read(gate)?;
        self.procedure.step(last.step).entries.iter().find(|entry| entry.id == read.entry)
    }

    /// What was read is not what the gate needs: the limit it breaks says more than the class.
    fn not_yet(&self, job: &Job, what: &str, read: &EnteredValue, entry: &Entry, wants: Arg) -> Message {
        let last = said(job, read, entry);
        let label = |key| self.procedure.checklist.sheet_label(key);
        if let Ask::CoolDown(asked) = &entry.ask
            && let Some(limit) = job.specs.measure(&asked.limit)
        {
            return unmet_gate_at_most(what, last, limit, label(&asked.limit));
        }
        let Ask::Reading(asked) = &entry.ask else { return unmet_gate_read(what, last, wants) };
        match limits(asked, &job.specs).unwrap_or_default().first() {
            Some(Limit::AtMost(limit, key)) => unmet_gate_at_most(what, last, *limit, label(key)),
            Some(Limit::AtLeast(limit, key)) => unmet_gate_at_least(what, last, *limit, label(key)),
            Some(Limit::Within(low, high, key)) => unmet_gate_within(what, last, *low, *high, label(key)),
            None => unmet_gate_read(what, last, wants),
        }
    }
}

pub(crate) fn is_measured(entry: &Entry) -> bool {
    entry::of(&entry.ask).is_measured()
}

fn keeps_in_progress(entry: &Entry, class: &str) -> bool {
    entry.classes.get(class).is_some_and(|effect| effect.not_yet)
}

/// A value as it was entered, in few words.
pub(crate) fn said(job: &Job, read: &EnteredValue, entry: &Entry) -> Arg {
    in_short(&entry.ask, &read.value, &read.class, &job.procedure.checklist)
}
