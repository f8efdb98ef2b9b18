//! Commands about the vehicle and the job as a whole: vehicle action, observe, finish, stop.

use panside_journal::Stamp;
use panside_procedure::State;
use panside_procedure::machine::{Action, VariableKind};

use super::draft::{Draft, reason};
use super::refuse::allowed;
use super::turned_up::left_open;
use crate::change::undone;
use crate::command::Refusal;
use crate::event::{Event, Finished, Observed, Stopped, VehicleAction};
use crate::job::Job;
use crate::message::{refused_finish, refused_no_such};

impl Draft<'_> {
    pub fn vehicle_action(&mut self, id: &str) -> Result<(), Refusal> {
        let made = self.job.procedure.names.vehicle_action(id);
        let made = made.ok_or_else(|| Refusal::from(refused_no_such("vehicle_action", id)))?;
        self.act(Action::Vehicle(made), |lost| VehicleAction { action: id.to_owned(), lost }.into())
    }

    /// The vehicle is otherwise: always taken down, with what it undoes and the dangers that hold now.
    pub fn observe(&mut self, condition: &str, value: &str, why: &str) -> Result<(), Refusal> {
        let procedure = &self.job.procedure;
        let machine = &procedure.machine;
        let var = procedure.names.var(condition);
        let var = var.filter(|var| machine.vars[var.at()].kind == VariableKind::Condition);
        let var = var.ok_or_else(|| Refusal::from(refused_no_such("condition", condition)))?;
        let of = procedure.names.value_of(var, value);
        let of = of.ok_or_else(|| Refusal::from(refused_no_such("value", value)))?;
        let reason = reason(why)?;
        let before = self.state;
        self.act(Action::Observe(var, of), |lost| {
            let (condition, value) = (condition.to_owned(), value.to_owned());
            Observed { condition, value, reason, undone: Vec::new(), dangers: Vec::new(), lost }.into()
        })?;
        let dangers = machine.dangers_now(&self.state);
        if let Some(Event::Observed(event)) = self.events.last_mut() {
            event.undone = undone(procedure, &before, &self.state);
            let id = |at: usize| procedure.checklist.dangers[at].id.clone();
            event.dangers = dangers.iter().map(|danger| id(danger.at())).collect();
        }
        Ok(())
    }

    pub fn finish(&mut self) -> Result<(), Refusal> {
        may_finish(self.job, &self.state, self.now)?;
        self.act(Action::Finish, |lost| Finished { lost }.into())
    }

    pub fn stop(&mut self, why: &str) -> Result<(), Refusal> {
        let reason = reason(why)?;
        self.act(Action::Stop, |lost| Stopped { reason, lost }.into())
    }
}

/// Whether the job may be finished: by the rules, and as far as what turned up goes, which only forbids.
pub(crate) fn may_finish(job: &Job, state: &State, now: &Stamp) -> Result<(), Refusal> {
    let by_rules = allowed(job, state, Action::Finish, now);
    let mut open = left_open(job);
    match by_rules {
        Ok(_) if open.is_empty() => Ok(()),
        Err(refusal) if open.is_empty() || refusal.message != refused_finish() => Err(refusal),
        by_rules => {
            open.extend(by_rules.err().into_iter().flat_map(|refusal| refusal.unmet));
            Err(Refusal { message: refused_finish(), unmet: open })
        }
    }
}
