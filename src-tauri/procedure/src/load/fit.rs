//! A checklist for one vehicle: how many there are of what its spec sheet counts, and which of the steps that hang on a
//! fact are part of the job at all.
//!
//! Nothing is taken out: steps, outcomes and dangers have the same numbers for every vehicle, so that what several proofs
//! have seen can be put together.

use std::collections::BTreeMap;

use panside_messages::Message;

use super::bind::Known;
use super::place::Places;
use super::vehicle::Fit;
use super::{Problem, Procedure, build, check};
use crate::format::{ALL, Ask, Assignments, Checklist, Pieces, Sheet};
use crate::message::*;

/// Puts each item's count in the place of `"all"`: 1 where only the spec sheet has it. Says where the two ways to give a
/// count are mixed.
pub(super) fn settle_counts(checklist: &mut Checklist, places: &Places) -> Vec<Problem> {
    let mut problems = Vec::new();
    for (at, item) in checklist.items.iter().enumerate() {
        if item.sheet.is_some() && item.count != 1 {
            problems.push(check::at(places, &format!("/items/{at}/count"), problem_count_twice(&item.id)));
        }
        if item.sheet.is_none() && item.or_none {
            problems.push(check::at(places, &format!("/items/{at}/or_none"), problem_or_none(&item.id)));
        }
    }
    let counts: BTreeMap<String, (u8, bool)> =
        checklist.items.iter().map(|item| (item.id.clone(), (item.count, item.sheet.is_some()))).collect();
    each_pieces(checklist, &mut |place, pieces| {
        for (id, number) in pieces.iter_mut() {
            let (count, by_sheet) = counts.get(id).copied().unwrap_or((1, false));
            if *number == ALL {
                *number = count;
            } else if by_sheet {
                let what = problem_all_of(id);
                problems.push(check::at(places, &format!("{place}/{id}"), what));
            }
        }
    });
    problems
}

/// Every place where pieces are moved or counted.
fn each_pieces(checklist: &mut Checklist, visit: &mut dyn FnMut(&str, &mut Pieces)) {
    for (phase, phase_at) in checklist.phases.iter_mut().zip(0..) {
        for (step, at) in phase.steps.iter_mut().zip(0..) {
            let place = format!("/phases/{phase_at}/steps/{at}");
            visit(&format!("{place}/takes_off"), &mut step.takes_off);
            visit(&format!("{place}/puts_back"), &mut step.puts_back);
            for (entry, at) in step.entries.iter_mut().zip(0..) {
                if let Ask::Count(count) = &mut entry.ask {
                    visit(&format!("{place}/entries/{at}/ask/count/of"), &mut count.of);
                }
            }
        }
    }
}

/// Every place where conditions are assigned.
fn each_assignments(checklist: &mut Checklist, visit: &mut dyn FnMut(&mut Assignments)) {
    for step in checklist.phases.iter_mut().flat_map(|phase| &mut phase.steps) {
        let classes = step.entries.iter_mut().flat_map(|entry| entry.classes.values_mut());
        classes.for_each(|effect| visit(&mut effect.makes));
        [&mut step.on_begin, &mut step.on_leave, &mut step.makes].into_iter().for_each(&mut *visit);
    }
    checklist.vehicle_actions.iter_mut().for_each(|made| visit(&mut made.makes));
    checklist.follows.iter_mut().for_each(|follow| visit(&mut follow.makes));
}

impl Procedure {
    /// The same checklist for the vehicle of a spec sheet. Its proof is another one, and says nothing about what only
    /// other vehicles have.
    ///
    /// # Errors
    /// What the sheet lacks of that.
    pub fn fitted(&self, sheet: &Sheet) -> Result<Procedure, Vec<Message>> {
        self.fitted_to(Fit::of(self, sheet)?)
    }

    /// The same checklist for a vehicle.
    ///
    /// # Errors
    /// What is wrong with the checklist then.
    pub fn fitted_to(&self, fit: Fit) -> Result<Procedure, Vec<Message>> {
        let there = self.on_vehicle(&|key| fit.word(key));
        let mut checklist = self.checklist.clone();
        let mut counts = BTreeMap::new();
        for item in &mut checklist.items {
            let said = item.sheet.as_ref().and_then(|key| fit.count(key));
            if let Some(count) = if there.has_item(&item.id) { said } else { Some(0) } {
                item.count = count;
                counts.insert(item.id.clone(), count);
            }
        }
        let mut steps = checklist.phases.iter_mut().flat_map(|phase| &mut phase.steps);
        for (at, _) in self.steps() {
            if let Some(step) = steps.next() {
                step.entries.retain(|entry| there.has_entry(at, &entry.id) || !there.has_step(at));
            }
        }
        drop(steps);
        each_pieces(&mut checklist, &mut |_, pieces| {
            pieces.retain(|id, _| counts.get(id) != Some(&0));
            for (id, number) in pieces {
                *number = counts.get(id).copied().unwrap_or(*number);
            }
        });
        each_assignments(&mut checklist, &mut |made| made.retain(|id, _| there.has_condition(id)));
        let steps = self.steps().map(|(step, _)| step);
        let known = Known {
            facts: self.facts_of(&|key| fit.word(key)).collect(),
            off: steps.filter(|step| !there.has_step(*step)).collect(),
        };
        let mut procedure = build::procedure(checklist, &self.places, &known)
            .map_err(|problems| problems.0.iter().map(Problem::message).collect::<Vec<_>>())?;
        for (at, condition) in self.checklist.conditions.iter().enumerate() {
            if !there.has_condition(&condition.id) {
                procedure.machine.vars[at].absent = true;
            }
        }
        procedure.fit = fit;
        Ok(procedure)
    }

    /// What of a vehicle it is for.
    #[must_use]
    pub fn fit(&self) -> &Fit {
        &self.fit
    }
}
