//! A job from its events. It never refuses: where today's rules differ from what is recorded, the record is kept and
//! the difference is noted.

mod action;
mod detail;

use std::sync::Arc;

use panside_procedure::machine::{Action, Blocked, VariableKind};
use panside_procedure::{Procedure, State};

use crate::change::{lost, vars};
use crate::event::{Event, Lost, Started};
use crate::job::{Changed, Disagreement, GateDetail, Happened, Job, Mark, StepDetail};
use crate::message::{Message, differs_lost, differs_not_given, differs_start};
use crate::people::People;
use crate::sheet::Specs;
use crate::start::fact;
use crate::tally::Tally;
use crate::turned_up::TurnedUp;

impl Job {
    /// A job before its first event.
    #[must_use]
    pub fn new(procedure: Arc<Procedure>, specs: Arc<Specs>) -> Job {
        let machine = &procedure.machine;
        Job {
            state: machine.start(&[]).unwrap_or_default(),
            people: People::default(),
            start: None,
            steps: vec![StepDetail::default(); machine.steps.len()],
            signs: vec![Vec::new(); machine.signs.len()],
            gates: vec![GateDetail::default(); machine.vars.len()],
            changes: Vec::new(),
            tally: Tally::default(),
            turned_up: TurnedUp::default(),
            end: None,
            happened: Vec::new(),
            disagreements: Vec::new(),
            procedure,
            specs,
        }
    }

    /// The job that these events make, oldest first.
    #[must_use]
    pub fn fold(
        procedure: Arc<Procedure>,
        specs: Arc<Specs>,
        events: impl IntoIterator<Item = Happened>,
    ) -> Job {
        let mut job = Job::new(procedure, specs);
        events.into_iter().for_each(|happened| job.take(happened));
        job
    }

    /// Adds one event.
    pub fn take(&mut self, happened: Happened) {
        match &happened.event {
            Event::Started(started) => self.people.take(happened.seq, &started.by),
            Event::Introduced(introduced) => self.people.take(happened.seq, introduced),
            _ => {}
        }
        let mark = self.mark(&happened);
        let before = self.state;
        match &happened.event {
            Event::Started(started) => self.take_start(&mark, started),
            event => match action::of(&self.procedure, event) {
                Ok(Some(action)) => {
                    self.state = match self.procedure.machine.step(&before, action) {
                        Ok(next) => next,
                        Err(_) => {
                            self.differs(&mark, action::not_allowed(&self.procedure, action));
                            self.procedure.machine.recorded(&before, action)
                        }
                    };
                    self.keep_what_was_lost(&mark, &before, event.lost());
                }
                Ok(None) => {}
                Err(what) => self.differs(&mark, what),
            },
        }
        if !matches!(happened.event, Event::Started(_)) {
            self.take_changes(&mark, &before);
        }
        self.tally.take(&self.procedure.checklist, &happened.event);
        self.take_turned_up(&mark, &happened.event);
        self.take_detail(&mark, &happened.event);
        self.take_signs(&mark, &before, &happened.event);
        self.take_gates(&mark, &before, &happened.event);
        self.happened.push(happened);
    }

    /// What turned up, and whether a piece is off that the checklist does not know, which is all the rules see of it.
    fn take_turned_up(&mut self, mark: &Mark, event: &Event) {
        self.turned_up.take(mark, event);
        let off = Action::Piece(self.turned_up.is_piece_off());
        let machine = &self.procedure.machine;
        match machine.step(&self.state, off) {
            Ok(next) => self.state = next,
            Err(Blocked::Same) => {}
            // The record has it of a job that was over.
            Err(_) => self.state = machine.recorded(&self.state, off),
        }
    }

    fn take_changes(&mut self, mark: &Mark, before: &State) {
        let machine = &self.procedure.machine;
        let changed = vars(&self.procedure, VariableKind::Condition).filter_map(|var| {
            let (from, to) = (machine.value(before, var), machine.value(&self.state, var));
            (from != to).then(|| Changed { mark: mark.clone(), var, from, to })
        });
        self.changes.extend(changed);
    }

    fn differs(&mut self, mark: &Mark, what: Message) {
        self.disagreements.push(Disagreement { seq: mark.seq, what });
    }

    fn take_start(&mut self, mark: &Mark, started: &Started) {
        let (procedure, specs) = (Arc::clone(&self.procedure), Arc::clone(&self.specs));
        let machine = &procedure.machine;
        let mut given = Vec::new();
        for kind in [VariableKind::Condition, VariableKind::Fact] {
            for var in vars(&procedure, kind) {
                let word = match kind {
                    VariableKind::Condition => {
                        started.conditions.get(procedure.var_name(var)).map(String::as_str)
                    }
                    _ => fact(&procedure, &specs, procedure.var_name(var)),
                };
                match word.and_then(|word| procedure.names.value_of(var, word)) {
                    Some(value) => given.push((var, value)),
                    None => self.differs(mark, differs_not_given(procedure.var_label(var))),
                }
            }
        }
        self.state = machine.start(&given).unwrap_or_else(|| {
            self.disagreements.push(Disagreement { seq: mark.seq, what: differs_start() });
            let mut state = State::default();
            given
                .iter()
                .for_each(|(var, value)| machine.vars[var.at()].field.set(&mut state, u64::from(*value)));
            state
        });
        self.start = Some((mark.clone(), started.clone()));
    }

    /// What lapsed and what was forgotten is taken from the record, whatever today's rules say.
    fn keep_what_was_lost(&mut self, mark: &Mark, before: &State, recorded: Option<&Lost>) {
        let Some(recorded) = recorded else { return };
        let procedure = Arc::clone(&self.procedure);
        let (machine, names) = (&procedure.machine, &procedure.names);
        let by_rule = lost(&procedure, before, &self.state);
        if by_rule == *recorded {
            return;
        }
        self.differs(mark, differs_lost());
        for given in recorded.lapsed.iter().filter_map(|id| names.sign(id)) {
            machine.lapse(&mut self.state, given);
        }
        for gate in recorded.forgotten.iter().filter_map(|id| names.var(id)) {
            machine.forget(&mut self.state, gate);
        }
        let kept =
            by_rule.lapsed.iter().filter(|id| !recorded.lapsed.contains(id)).filter_map(|id| names.sign(id));
        let fields = kept.map(|given| machine.signs[given.at()].field);
        let known = by_rule.forgotten.iter().filter(|id| !recorded.forgotten.contains(id));
        let known = known.filter_map(|id| names.var(id)).map(|gate| machine.vars[gate.at()].field);
        for field in fields.chain(known) {
            field.set(&mut self.state, field.get(before));
        }
    }
}

#[cfg(test)]
mod tests;
