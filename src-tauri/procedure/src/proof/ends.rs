//! Can finish, and can stop whatever comes: two fixpoints over the states found, computed backwards.
//!
//! A sweep looks at the states that are still open, last found first; it ends when a sweep changes nothing.

use std::collections::BTreeMap;

use super::Progress;
use super::explore::{Found, Runs};
use super::graph::Marks;
use super::report::{FinishRow, Proof, Property};
use super::safe::is_plain;
use crate::load::Procedure;
use crate::machine::{Action, State, StepIx, VarIx, over};

/// Tells states with no way to the end, and states with no way to a safe stop.
pub fn judge(
    procedure: &Procedure,
    found: &Found<'_>,
    proof: &mut Proof,
    progress: &mut dyn FnMut(Progress),
) {
    let finish = can_finish(found, progress);
    if found.runs == Runs::OneObservation {
        finish_table(procedure, found, &finish, proof);
    } else if let Some(number) = first(found, |number, state| is_running(found, state) && !finish.has(number))
    {
        proof.find(
            Property::CanFinish,
            "from here no allowed order of steps reaches the end of the job".to_owned(),
            found.run_to(number, None),
        );
    }
    let stop = can_stop(found, progress);
    let observed = found.runs == Runs::OneObservation;
    // Where nothing was observed yet, the search without observations has told it already.
    let counts = |state: &State| !is_over(found, state) && (!observed || found.is_observed(state));
    if let Some(number) = first(found, |number, state| counts(state) && !stop.has(number)) {
        proof.find(
            if observed { Property::HonestWhenWrong } else { Property::CanStop },
            "from here a safe stop cannot be reached, whatever the technician does".to_owned(),
            found.run_to(number, None),
        );
    }
}

fn is_running(found: &Found<'_>, state: &State) -> bool {
    found.machine.over(state) == over::NO
}

fn is_over(found: &Found<'_>, state: &State) -> bool {
    found.machine.over(state) >= over::FINISHED
}

fn first(found: &Found<'_>, wanted: impl Fn(u32, &State) -> bool) -> Option<u32> {
    (0..found.graph.len() as u32).find(|&number| wanted(number, &found.graph.state(number)))
}

/// Repeats sweeps over open states until nothing changes.
fn sweep(
    found: &Found<'_>,
    doing: &'static str,
    marks: &mut Marks,
    mut open: Vec<u32>,
    progress: &mut dyn FnMut(Progress),
    is_good: impl Fn(u32, &Marks) -> bool,
) {
    loop {
        let before = open.len();
        let mut still = Vec::new();
        for (at, &number) in open.iter().enumerate() {
            if at.is_multiple_of(1 << 16) {
                let states = found.graph.len();
                progress(Progress { search: found.runs.name(), doing, states, waiting: before - at });
            }
            if is_good(number, marks) {
                marks.set(number);
            } else {
                still.push(number);
            }
        }
        if still.len() == before {
            return;
        }
        open = still;
    }
}

fn can_finish(found: &Found<'_>, progress: &mut dyn FnMut(Progress)) -> Marks {
    let mut marks = Marks::new(found.graph.len());
    let mut open = Vec::new();
    for number in (0..found.graph.len() as u32).rev() {
        let state = found.graph.state(number);
        if found.machine.is_finished(&state) {
            marks.set(number);
        } else if is_running(found, &state) {
            open.push(number);
        }
    }
    let plain: Vec<bool> = found.actions.iter().map(is_plain).collect();
    sweep(found, "looking for ways to the end", &mut marks, open, progress, |number, marks| {
        found.graph.edges(number).any(|(action, next)| plain[usize::from(action)] && marks.has(next))
    });
    marks
}

/// Who decides what an action does.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Decides {
    /// The technician alone.
    Technician,
    /// The technician begins it, the entries decide how it turns out: so many ways.
    Entries(StepIx, bool, usize),
    /// Age.
    Age,
    /// Nobody here: strikes, observations.
    Other,
}

fn decides(found: &Found<'_>, action: Action) -> Decides {
    let ways = |step: StepIx| found.machine.steps[step.at()].outcomes.len();
    match action {
        Action::Strike(_) | Action::Observe(..) => Decides::Other,
        Action::Expire(_) => Decides::Age,
        Action::Done(step, _) => Decides::Entries(step, true, ways(step)),
        Action::Rerecord(step, _) => Decides::Entries(step, false, ways(step)),
        _ => Decides::Technician,
    }
}

fn can_stop(found: &Found<'_>, progress: &mut dyn FnMut(Progress)) -> Marks {
    let mut marks = Marks::new(found.graph.len());
    let mut open = Vec::new();
    for number in (0..found.graph.len() as u32).rev() {
        if is_over(found, &found.graph.state(number)) {
            marks.set(number);
        } else {
            open.push(number);
        }
    }
    let decides: Vec<Decides> = found.actions.iter().map(|action| decides(found, action)).collect();
    // Between two actions of the technician one gate may grow too old.
    let good = |next: u32, marks: &Marks| {
        let mut ages =
            found.graph.edges(next).filter(|&(action, _)| decides[usize::from(action)] == Decides::Age);
        marks.has(next) && ages.all(|(_, aged)| marks.has(aged))
    };
    sweep(found, "looking for ways to a safe stop", &mut marks, open, progress, |number, marks| {
        let mut whole_step: Option<(Decides, usize)> = None;
        for (action, next) in found.graph.edges(number) {
            match decides[usize::from(action)] {
                Decides::Technician if good(next, marks) => return true,
                turns_out @ Decides::Entries(_, _, ways) => {
                    // The ways a step can turn out stand side by side; all of them must be good.
                    let so_far =
                        whole_step.filter(|(same, _)| *same == turns_out).map_or(0, |(_, good)| good);
                    let now = so_far + usize::from(good(next, marks));
                    if now == ways {
                        return true;
                    }
                    whole_step = Some((turns_out, now));
                }
                _ => {}
            }
        }
        false
    });
    marks
}

/// For each condition and value: from how many observations the job can still finish.
fn finish_table(procedure: &Procedure, found: &Found<'_>, finish: &Marks, proof: &mut Proof) {
    let mut rows: BTreeMap<(VarIx, u8), (usize, usize)> = BTreeMap::new();
    let mut lost: BTreeMap<(VarIx, u8), u32> = BTreeMap::new();
    for number in 0..found.graph.len() as u32 {
        if !is_running(found, &found.graph.state(number)) {
            continue;
        }
        for (action, next) in found.graph.edges(number) {
            let Action::Observe(var, value) = found.actions.get(action) else { continue };
            let row = rows.entry((var, value)).or_default();
            if finish.has(next) {
                row.0 += 1;
            } else {
                row.1 += 1;
                lost.entry((var, value)).or_insert(number);
            }
        }
    }
    for ((var, value), (can, cannot)) in rows {
        let condition = &procedure.checklist.conditions[var.at()];
        let name = procedure.value_name(var, value).to_owned();
        if cannot > 0 && condition.recover.contains(&name) {
            let from = lost[&(var, value)];
            proof.find(
                Property::HonestWhenWrong,
                format!(
                    "after {} is observed to be {name} the job cannot always finish, as \"recover\" says",
                    condition.id
                ),
                found.run_to(from, Some(Action::Observe(var, value))),
            );
        }
        proof.finish_after_observing.push(FinishRow {
            condition: condition.id.clone(),
            value: name,
            can,
            cannot,
        });
    }
}
