//! The view of a job, put together from its state as time has left it.

use panside_journal::Stamp;
use panside_procedure::State;
use panside_procedure::format::Item;
use panside_procedure::machine::{Action, ItemIx, SignIx, StepIx, VarIx, VariableKind, VehicleActionIx};

use super::{
    ClockView, ConditionValue, ConditionView, DangerView, GateView, ItemView, JobView, Over, PersonView,
    PhaseView, SignView, TrayView, VehicleActionView, clock, step, turned_up,
};
use crate::change::{gates, lost, vars};
use crate::command::Refusal;
use crate::decide::refuse::allowed;
use crate::decide::unmet::said;
use crate::decide::whole::may_finish;
use crate::decide::{aged, ms_fresh};
use crate::event::Lost;
use crate::job::Job;
use crate::message::as_said;

/// A job at a time.
#[derive(Clone, Copy)]
pub(super) struct At<'a> {
    pub job: &'a Job,
    /// What has grown too old by now is unknown in it.
    pub state: &'a State,
    pub now: &'a Stamp,
    /// What each vehicle action would come to now, or why it is refused.
    pub vehicle_actions: &'a [Result<State, Refusal>],
}

impl At<'_> {
    /// Why an action is refused now.
    pub fn refusal(&self, action: Action) -> Option<Refusal> {
        allowed(self.job, self.state, action, self.now).err()
    }
}

pub(super) fn job(job: &Job, now: &Stamp) -> JobView {
    let (state, _) = aged(job, now);
    let (checklist, machine) = (&job.procedure.checklist, &job.procedure.machine);
    let outcome = |number| allowed(job, &state, Action::Vehicle(VehicleActionIx::of(number)), now);
    let vehicle_actions: Vec<_> = (0..machine.vehicle_actions.len()).map(outcome).collect();
    let at = At { job, state: &state, now, vehicle_actions: &vehicle_actions };
    let steps: Vec<_> = (0..machine.steps.len()).map(|number| step::step(at, StepIx::of(number))).collect();
    let in_steps = clock::by_phase(at);
    let started = job.start.as_ref();
    JobView {
        seq: job.last_seq(),
        title: checklist.title.clone(),
        sheet: job.specs.sheet.title.clone(),
        demo: checklist.demo || job.specs.sheet.demo,
        repair_order: started.map(|(_, started)| started.repair_order.clone()).unwrap_or_default(),
        label: started.map(|(_, started)| started.label.clone()).unwrap_or_default(),
        crew: checklist.crew,
        people: job.people.names().map(|(id, name)| PersonView { id, name: name.to_owned() }).collect(),
        over: over(at),
        phases: phases(at, &in_steps),
        steps,
        vehicle_actions: (0..machine.vehicle_actions.len())
            .map(|number| made(at, VehicleActionIx::of(number)))
            .collect(),
        tray: (0..machine.items.len())
            .filter_map(|number| tray(at, ItemIx::of(number)))
            .chain(turned_up::tray(job))
            .collect(),
        turned_up: turned_up::turned_up(at),
        items: checklist.items.iter().map(item).collect(),
        conditions: vars(&job.procedure, VariableKind::Condition)
            .filter(|var| !machine.vars[var.at()].absent)
            .map(|var| condition(at, var))
            .collect(),
        gates: gates(&job.procedure).map(|var| gate(at, var)).collect(),
        signs: (0..machine.signs.len()).map(|number| sign(at, SignIx::of(number))).collect(),
        dangers: dangers(at),
        clock: ClockView {
            started: started.map(|(mark, _)| mark.stamp),
            minutes: clock::since_start(at),
            in_steps: clock::minutes(in_steps.iter().sum()),
        },
        finish: may_finish(job, &state, now).err(),
        stop: at.refusal(Action::Stop),
    }
}

fn over(at: At<'_>) -> Over {
    let machine = &at.job.procedure.machine;
    if machine.is_finished(at.state) {
        Over::Finished
    } else if machine.is_stopped(at.state) {
        Over::Stopped
    } else if machine.is_ending(at.state) {
        Over::Ending
    } else {
        Over::Going
    }
}

fn phases(at: At<'_>, in_steps: &[u64]) -> Vec<PhaseView> {
    let procedure = &at.job.procedure;
    let mut phases: Vec<PhaseView> = procedure
        .checklist
        .phases
        .iter()
        .zip(in_steps)
        .map(|(phase, ms)| PhaseView {
            id: phase.id.clone(),
            title: phase.title.clone(),
            minutes: clock::minutes(*ms),
            expected: 0,
        })
        .collect();
    for (number, text) in procedure.steps() {
        if procedure.machine.in_job(at.state, number) == panside_procedure::machine::InJob::Yes {
            phases[procedure.machine.steps[number.at()].phase.at()].expected += text.minutes;
        }
    }
    phases
}

fn made(at: At<'_>, number: VehicleActionIx) -> VehicleActionView {
    let text = at.job.procedure.vehicle_action_text(number);
    let outcome = &at.vehicle_actions[number.at()];
    let Lost { lapsed, forgotten } =
        outcome.as_ref().map(|next| lost(&at.job.procedure, at.state, next)).unwrap_or_default();
    VehicleActionView {
        id: text.id.clone(),
        title: text.title.clone(),
        minutes: text.minutes,
        refusal: outcome.as_ref().err().cloned(),
        lapses: lapsed,
        forgets: forgotten,
    }
}

fn item(item: &Item) -> ItemView {
    ItemView { id: item.id.clone(), name: item.name.clone(), count: item.count, reuse: item.reuse }
}

fn tray(at: At<'_>, number: ItemIx) -> Option<TrayView> {
    let item = at.job.procedure.item(number);
    let off = at.job.procedure.machine.empty(at.state, number);
    let recount_agrees = at.job.tally.off(&item.id) == i32::from(off);
    (off > 0 || !recount_agrees).then(|| TrayView {
        id: item.id.clone(),
        name: item.name.clone(),
        off,
        count: item.count,
        reuse: item.reuse,
        draws: item.draws,
        recount_agrees,
    })
}

fn condition(at: At<'_>, var: VarIx) -> ConditionView {
    let procedure = &at.job.procedure;
    let id = procedure.var_name(var);
    let is = procedure.machine.value(at.state, var);
    let says = |(value, name): (u8, &String)| ConditionValue {
        value: name.clone(),
        says: procedure.value_label(var, value).to_owned(),
    };
    let values = (0..).zip(procedure.names.values(var)).map(says).collect();
    let draws = procedure.checklist.conditions.iter().find(|condition| condition.id == id);
    ConditionView {
        id: id.to_owned(),
        name: procedure.var_label(var).to_owned(),
        value: procedure.value_name(var, is).to_owned(),
        says: procedure.value_label(var, is).to_owned(),
        values,
        draws: draws.and_then(|condition| condition.draws.clone()),
    }
}

fn gate(at: At<'_>, var: VarIx) -> GateView {
    let job = at.job;
    let is_known = job.procedure.machine.value(at.state, var) != 0;
    let last = job.last_read(var).zip(job.gate(var).last_read).and_then(|(read, place)| {
        let entry = job.procedure.step(place.step).entries.iter().find(|entry| entry.id == read.entry)?;
        Some(as_said(said(job, read, entry)))
    });
    GateView {
        id: job.procedure.var_name(var).to_owned(),
        name: job.procedure.var_label(var).to_owned(),
        known: job.gate(var).set.clone().filter(|_| is_known),
        last,
        ms_fresh: ms_fresh(job, var, at.now).filter(|_| is_known),
    }
}

fn sign(at: At<'_>, number: SignIx) -> SignView {
    let procedure = &at.job.procedure;
    let text = procedure.sign_off(number);
    SignView {
        id: text.id.clone(),
        text: text.text.clone(),
        kind: text.kind,
        by: text.by,
        step: procedure.step(procedure.machine.signs[number.at()].step).id.clone(),
        valid: procedure.machine.is_valid(at.state, number),
        last: at.job.sign(number).last().cloned(),
        renew: at.refusal(Action::Sign(number)),
    }
}

/// The dangers that hold, the worst first: where there is room for two, it is for these.
fn dangers(at: At<'_>) -> Vec<DangerView> {
    let procedure = &at.job.procedure;
    let now = procedure.machine.dangers_now(at.state);
    let texts = now.iter().map(|danger| &procedure.checklist.dangers[danger.at()]);
    let shown =
        texts.map(|text| DangerView { id: text.id.clone(), signal: text.signal, text: text.text.clone() });
    let mut dangers: Vec<_> = shown.collect();
    dangers.sort_by_key(|danger| danger.signal);
    dangers
}
