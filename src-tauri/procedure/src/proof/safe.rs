//! Safe, honest when wrong, and nothing left.

use panside_messages::Message;

use super::explore::{Found, Taken};
use super::finding::{Finding, Place};
use super::report::{Proof, Property};
use crate::load::Procedure;
use crate::machine::{Action, DangerIx, InJob, Machine, State, StepIx, sign, work};
use crate::message::*;

/// Tells the dangers met, and finished states that leave something open.
pub fn judge(procedure: &Procedure, found: &Found<'_>, proof: &mut Proof) {
    for (danger, start) in &found.dangerous_starts {
        let text = &procedure.checklist.dangers[danger.at()];
        let what = finding_danger_at_start(&text.id, &text.text);
        let place = Place::of(procedure, format!("/dangers/{}/when", danger.at()));
        let finding = Finding::new(Property::Safe, what, place).danger(text.signal, None);
        proof.find(finding.after(found.run_to(*start, None)));
    }
    let said = |danger: &DangerIx, edge: &Taken, what: Message| {
        let state = found.graph.state(edge.from);
        let property = if found.is_observed(&state) { Property::HonestWhenWrong } else { Property::Safe };
        let place = Place::of(procedure, format!("/dangers/{}/when", danger.at()));
        let finding = Finding::new(property, what, place);
        (finding.after(found.run_to(edge.from, Some(edge.action))), state)
    };
    for (danger, edge) in &found.dangers {
        let text = &procedure.checklist.dangers[danger.at()];
        let (finding, state) = said(danger, edge, finding_danger(&text.id, &text.text));
        proof.find(finding.danger(text.signal, Some((state, edge.action))));
    }
    // One that comes up anyway is told once.
    let only = found.dangers_with_piece_off.iter().filter(|(danger, _)| !found.dangers.contains_key(danger));
    for (danger, edge) in only {
        let text = &procedure.checklist.dangers[danger.at()];
        let (finding, _) = said(danger, edge, finding_danger_piece_off(&text.id, &text.text));
        proof.find(finding.danger(text.signal, None));
    }
    if let Some(edge) = found.miscount {
        let place = match edge.action {
            Action::Done(step, _) => procedure.step_pointer(step),
            _ => "/items".to_owned(),
        };
        let finding = Finding::new(Property::NothingLeft, finding_miscount(), Place::of(procedure, place));
        proof.find(finding.after(found.run_to(edge.from, Some(edge.action))));
    }
    nothing_left(procedure, found, proof);
}

fn nothing_left(procedure: &Procedure, found: &Found<'_>, proof: &mut Proof) {
    let numbers = 0..found.graph.len() as u32;
    for number in numbers {
        let state = found.graph.state(number);
        if !found.machine.is_finished(&state) {
            continue;
        }
        if let Some((what, place)) = left_open(procedure, found.machine, &state) {
            let finding = Finding::new(Property::NothingLeft, what, Place::of(procedure, place));
            proof.find(finding.after(found.run_to(number, None)));
            return;
        }
    }
}

/// What a finished job leaves open, and where in the file it stands.
fn left_open(procedure: &Procedure, machine: &Machine, state: &State) -> Option<(Message, String)> {
    for (at, item) in machine.items.iter().enumerate() {
        let off = item.field.get(state);
        if off > 0 {
            let what = finding_item_off(off, &procedure.checklist.items[at].id);
            return Some((what, format!("/items/{at}")));
        }
    }
    for (at, (rule, text)) in machine.signs.iter().zip(&procedure.checklist.sign_offs).enumerate() {
        let given = rule.field.get(state) == sign::VALID;
        if !rule.permit && !given && owes_attests(machine, state, rule.step) {
            return Some((finding_attest_open(&text.id), format!("/sign_offs/{at}")));
        }
    }
    // One that may be skipped may as well be left.
    let open = |step: &StepIx| {
        let rule = &machine.steps[step.at()];
        let untouched = rule.work.get(state) == work::UNTOUCHED && !rule.may_skip;
        untouched && machine.in_job(state, *step) == InJob::Yes && !machine.is_missed(state, *step)
    };
    let open = (0..machine.steps.len()).map(StepIx::of).find(open)?;
    Some((finding_step_open(&procedure.step(open).id), procedure.step_pointer(open)))
}

/// Whether the attests of a step count at the end: it belongs to the job, and is neither skipped nor missed. One that
/// was voided and that nothing asks for any more need not be corrected.
fn owes_attests(machine: &Machine, state: &State, step: StepIx) -> bool {
    let rule = &machine.steps[step.at()];
    match rule.work.get(state) {
        work::UNTOUCHED => machine.in_job(state, step) == InJob::Yes && !machine.is_missed(state, step),
        work::VOIDED => rule.on.as_ref().is_none_or(|(yes, _)| yes.holds(state)),
        work::SKIPPED => false,
        _ => true,
    }
}
