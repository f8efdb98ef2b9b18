//! Can finish, and can stop whatever comes: two fixpoints over the states found, computed backwards.
//!
//! A sweep looks at the states that are still open, last found first; it ends when a sweep changes nothing.

use std::collections::BTreeMap;
use std::ops::ControlFlow;

use super::Looking;
use super::edges::{BLOCK, Block, Edge, Kind};
use super::explore::{Found, Runs};
use super::finding::{Finding, Place};
use super::marks::Marks;
use super::report::{FinishRow, Proof, Property};
use super::tell::Teller;
use crate::load::Procedure;
use crate::machine::{Action, State, VarIx, over};
use crate::message::*;

/// States of which a sweep looks at the edges between two looks at whoever waits.
const STRIDE: u32 = 1 << 16;

/// Tells states with no way to the end, and states with no way to a safe stop. Breaks off when it may not go on;
/// then nothing is told of what was not judged to its end.
pub fn judge(
    procedure: &Procedure,
    found: &mut Found<'_>,
    proof: &mut Proof,
    teller: &Teller<'_>,
) -> ControlFlow<()> {
    let finish = can_finish(found, teller)?;
    let stop = can_stop(found, teller)?;
    found.can_finish = Some(finish.count());
    found.can_stop = Some(stop.count());
    let found = &*found;
    if found.runs == Runs::OneObservation {
        finish_table(procedure, found, &finish, proof);
    } else if let Some(number) = first_without(&finish, found, |state| is_running(found, state)) {
        let place = Place::of(procedure, "/done_when");
        let finding = Finding::new(Property::CanFinish, finding_no_end(), place);
        proof.find(finding.after(found.run_to(number, None)));
    }
    let observed = found.runs == Runs::OneObservation;
    // Where nothing was observed yet, the search without observations has told it already.
    let counts = |state: &State| !is_over(found, state) && (!observed || found.is_observed(state));
    if let Some(number) = first_without(&stop, found, counts) {
        let property = if observed { Property::HonestWhenWrong } else { Property::CanStop };
        let finding = Finding::new(property, finding_no_stop(), Place::of(procedure, "/safe_to_leave"));
        proof.find(finding.after(found.run_to(number, None)));
    }
    if !observed {
        makes_safe_after_ageing(procedure, found, proof, teller)?;
    }
    ControlFlow::Continue(())
}

/// A step that may still be begun when the job is ending makes the vehicle safe to leave. What could still be done so
/// must not be lost by waiting: a reading that grows too old can be taken again. A void may take such a step out of the
/// job, so it is asked where nothing was voided.
fn makes_safe_after_ageing(
    procedure: &Procedure,
    found: &Found<'_>,
    proof: &mut Proof,
    teller: &Teller<'_>,
) -> ControlFlow<()> {
    let last = procedure.steps().filter(|(_, text)| text.when_ending);
    for (step, text) in last {
        let (mut can, mut open) = (Marks::new(found.graph.len()), Marks::new(found.graph.len()));
        for number in 0..found.graph.len() as u32 {
            let state = found.graph.state(number);
            if found.machine.is_ending(&state) && !found.is_voided(&state) {
                let worked = found.machine.is_worked(&state, step);
                if worked { can.set(number) } else { open.set(number) }
            }
        }
        let ending = open.clone();
        sweep(found, Looking::SafeToLeave, open, teller, |number, edges| {
            let good = edges.iter().any(|edge| edge.kind.is_plain() && can.has(edge.to));
            if good {
                can.set(number);
            }
            (good, !good)
        })?;
        let mut lost = None;
        found.graph.edges().each(0..u32::MAX, |number, edges| {
            if lost.is_none() && ending.has(number) && can.has(number) {
                let loses = |edge: &Edge| edge.kind == Kind::Age && !can.has(edge.to);
                lost = edges.iter().position(loses).map(|place| (number, place));
            }
        });
        if let Some((number, edge)) = lost {
            let place = Place::of(procedure, format!("{}/needs", procedure.step_pointer(step)));
            let finding = Finding::new(Property::CanStop, finding_aged(&text.id), place);
            proof.find(finding.after(found.run_to(number, found.allowed(number).get(edge).copied())));
        }
    }
    ControlFlow::Continue(())
}

fn is_running(found: &Found<'_>, state: &State) -> bool {
    found.machine.over(state) == over::NO
}

fn is_over(found: &Found<'_>, state: &State) -> bool {
    found.machine.over(state) >= over::FINISHED
}

fn first_without(marks: &Marks, found: &Found<'_>, counts: impl Fn(&State) -> bool) -> Option<u32> {
    let mut open = (0..found.graph.len() as u32).filter(|&number| !marks.has(number));
    open.find(|&number| counts(&found.graph.state(number)))
}

/// Repeats sweeps over open states until nothing changes. `look` marks a state where it can, and answers whether it
/// has changed anything and whether the state is still open.
fn sweep(
    found: &Found<'_>,
    doing: Looking,
    mut open: Marks,
    teller: &Teller<'_>,
    mut look: impl FnMut(u32, &[Edge]) -> (bool, bool),
) -> ControlFlow<()> {
    let edges = found.graph.edges();
    let mut block = Block::default();
    loop {
        let mut changed = false;
        for at in (0..edges.states().div_ceil(BLOCK)).rev() {
            let first = at * BLOCK;
            if first.is_multiple_of(STRIDE) {
                teller.tell(found.runs, doing, found.graph.len(), first as usize)?;
            }
            if !open.has_in_block(first) {
                continue;
            }
            edges.read(at, &mut block);
            for place in (0..block.len()).rev() {
                let number = first + place as u32;
                if open.has(number) {
                    let (marked, still_open) = look(number, block.of(place));
                    changed |= marked;
                    if !still_open {
                        open.clear(number);
                    }
                }
            }
        }
        if !changed {
            return ControlFlow::Continue(());
        }
    }
}

fn can_finish(found: &Found<'_>, teller: &Teller<'_>) -> ControlFlow<(), Marks> {
    let mut finish = Marks::new(found.graph.len());
    let mut open = Marks::new(found.graph.len());
    for number in 0..found.graph.len() as u32 {
        let state = found.graph.state(number);
        if found.machine.is_finished(&state) {
            finish.set(number);
        } else if is_running(found, &state) {
            open.set(number);
        }
    }
    sweep(found, Looking::End, open, teller, |number, edges| {
        let good = edges.iter().any(|edge| edge.kind.is_plain() && finish.has(edge.to));
        if good {
            finish.set(number);
        }
        (good, !good)
    })?;
    ControlFlow::Continue(finish)
}

fn can_stop(found: &Found<'_>, teller: &Teller<'_>) -> ControlFlow<(), Marks> {
    let mut stop = Marks::new(found.graph.len());
    // States that can also stop where one gate grows too old, as it may between two actions of the technician.
    let mut aged_too = Marks::new(found.graph.len());
    let mut open = Marks::new(found.graph.len());
    for number in 0..found.graph.len() as u32 {
        if is_over(found, &found.graph.state(number)) {
            stop.set(number);
            aged_too.set(number);
        } else {
            open.set(number);
        }
    }
    sweep(found, Looking::SafeStop, open, teller, |number, edges| {
        let mut changed = false;
        if !stop.has(number) && some_action_is_good(edges, &aged_too) {
            stop.set(number);
            changed = true;
        }
        let mut ages = edges.iter().filter(|edge| edge.kind == Kind::Age);
        let firm = stop.has(number) && ages.all(|edge| stop.has(edge.to));
        if firm {
            aged_too.set(number);
        }
        (changed || firm, !firm)
    })?;
    ControlFlow::Continue(stop)
}

/// Whether the technician can do something that is good whatever the entries turn out to be: all ways a step can turn
/// out must be allowed and good.
fn some_action_is_good(edges: &[Edge], good: &Marks) -> bool {
    let mut missing = 0;
    for edge in edges {
        match edge.kind {
            Kind::Plain | Kind::NotPlanned if good.has(edge.to) => return true,
            Kind::First(ways) => missing = ways,
            _ => {}
        }
        if matches!(edge.kind, Kind::First(_) | Kind::Further) && good.has(edge.to) {
            missing -= 1;
            if missing == 0 {
                return true;
            }
        }
    }
    false
}

/// For each condition and value: from how many observations the job can still finish.
fn finish_table(procedure: &Procedure, found: &Found<'_>, finish: &Marks, proof: &mut Proof) {
    let mut rows: BTreeMap<(VarIx, u8), (usize, usize)> = BTreeMap::new();
    let mut lost: BTreeMap<(VarIx, u8), u32> = BTreeMap::new();
    found.graph.edges().each(0..u32::MAX, |number, edges| {
        if !edges.iter().any(|edge| edge.kind == Kind::Observe)
            || !is_running(found, &found.graph.state(number))
        {
            return;
        }
        for (action, edge) in found.allowed(number).into_iter().zip(edges) {
            let Action::Observe(var, value) = action else { continue };
            let row = rows.entry((var, value)).or_default();
            if finish.has(edge.to) {
                row.0 += 1;
            } else {
                row.1 += 1;
                lost.entry((var, value)).or_insert(number);
            }
        }
    });
    for ((var, value), (can, cannot)) in rows {
        let condition = &procedure.checklist.conditions[var.at()];
        let name = procedure.value_name(var, value).to_owned();
        if cannot > 0 && condition.recover.contains(&name) {
            let from = lost[&(var, value)];
            let what = finding_no_recover(&condition.id, &name);
            let place = Place::of(procedure, format!("/conditions/{}/recover", var.at()));
            let finding = Finding::new(Property::HonestWhenWrong, what, place);
            proof.find(finding.after(found.run_to(from, Some(Action::Observe(var, value)))));
        }
        proof.finish_after_observing.push(FinishRow {
            condition: condition.id.clone(),
            value: name,
            can,
            cannot,
        });
    }
}
