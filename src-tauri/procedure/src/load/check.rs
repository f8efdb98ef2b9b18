//! What a checklist must keep to beyond its shape. Every check looks at everything and goes on.

mod decision;
mod labels;
mod step;

use std::collections::{BTreeMap, BTreeSet};

use panside_messages::{Arg, Message};

use super::Problem;
use super::names::Names;
use super::place::Places;
use crate::format::{Ask, Assignments, Checklist, Named, Step};
use crate::machine::VarIx;
use crate::message::*;

/// Steps in file order, each with its place.
pub(super) fn steps(checklist: &Checklist) -> impl Iterator<Item = (String, &Step)> {
    checklist.phases.iter().enumerate().flat_map(|(phase_at, phase)| {
        phase.steps.iter().enumerate().map(move |(at, step)| (format!("/phases/{phase_at}/steps/{at}"), step))
    })
}

/// The sign-offs a step gives when it is done.
pub(super) fn signs_of(step: &Step) -> impl Iterator<Item = &String> {
    step.entries.iter().filter_map(|entry| match &entry.ask {
        Ask::SignOff(asked) => Some(&asked.sign),
        _ => None,
    })
}

/// A problem at a place.
pub(super) fn at(places: &Places, place: &str, what: Message) -> Problem {
    Problem::at(places.find(place), place, what)
}

/// The rules of the format, one by one.
pub(super) fn rules(checklist: &Checklist, names: &Names, places: &Places) -> Vec<Problem> {
    let mut check =
        Check { checklist, names, places, problems: Vec::new(), by_vehicle_actions: BTreeSet::new() };
    check.by_vehicle_actions =
        checklist.vehicle_actions.iter().flat_map(|made| made.makes.keys().cloned()).collect();
    check.values();
    check.labels();
    check.follows();
    check.vehicle_actions();
    check.signs();
    check.phases();
    check.after();
    for (place, step) in steps(checklist) {
        check.step(&place, step);
    }
    check.problems
}

struct Check<'a> {
    checklist: &'a Checklist,
    names: &'a Names,
    places: &'a Places,
    problems: Vec<Problem>,
    by_vehicle_actions: BTreeSet<String>,
}

impl Check<'_> {
    fn problem(&mut self, place: &str, what: Message) {
        self.problems.push(at(self.places, place, what));
    }

    fn values(&mut self) {
        let checklist = self.checklist;
        for (at, condition) in checklist.conditions.iter().enumerate() {
            let place = format!("/conditions/{at}");
            self.distinct(&format!("{place}/values"), &condition.values);
            for (list, values) in [("start", &condition.start), ("recover", &condition.recover)] {
                for (value_at, value) in values.iter().enumerate() {
                    if condition.values.iter().all(|known| known.id != *value) {
                        let what = problem_no_value(value, &condition.id);
                        self.problem(&format!("{place}/{list}/{value_at}"), what);
                    }
                }
            }
        }
        for (at, fact) in checklist.facts.iter().enumerate() {
            self.distinct(&format!("/facts/{at}/values"), &fact.values);
        }
        for (at, gate) in checklist.gates.iter().enumerate() {
            self.distinct(&format!("/gates/{at}/classes"), &gate.classes);
            if gate.fresh_for == Some(0) {
                self.problem(&format!("/gates/{at}/fresh_for"), problem_never_fresh());
            }
        }
    }

    fn distinct(&mut self, place: &str, values: &[Named]) {
        let mut seen = BTreeSet::new();
        for (at, Named { id: value, .. }) in values.iter().enumerate() {
            let proper =
                value.chars().all(|char| char.is_ascii_lowercase() || char.is_ascii_digit() || char == '_');
            let place = format!("{place}/{at}");
            if !seen.insert(value) {
                self.problem(&place, problem_twice(value));
            } else if value.is_empty() || !proper || value == "unknown" {
                self.problem(&place, problem_value_name(value));
            }
        }
    }

    fn follows(&mut self) {
        // Two follows that write a variable to different values could chase each other for ever.
        let mut written: BTreeMap<&String, &String> = BTreeMap::new();
        let checklist = self.checklist;
        for (at, follow) in checklist.follows.iter().enumerate() {
            let place = format!("/follows/{at}");
            self.conditions(&format!("{place}/makes"), &follow.makes, true);
            self.gates(&format!("{place}/sets"), &follow.sets);
            for (name, value) in follow.makes.iter().chain(&follow.sets) {
                if written.insert(name, value).is_some_and(|other| other != value) {
                    self.problem(&place, problem_follows(name));
                }
            }
        }
    }

    fn vehicle_actions(&mut self) {
        let checklist = self.checklist;
        for (at, made) in checklist.vehicle_actions.iter().enumerate() {
            let place = format!("/vehicle_actions/{at}/makes");
            self.conditions(&place, &made.makes, false);
            if made.makes.is_empty() {
                self.problem(&place, problem_action_idle());
            }
        }
    }

    /// Assignments to conditions. Those that a vehicle action writes are written by vehicle actions only.
    fn conditions(&mut self, place: &str, makes: &Assignments, by_vehicle_actions_only: bool) {
        for (name, value) in makes {
            let place = format!("{place}/{name}");
            let Some(at) = self.checklist.conditions.iter().position(|condition| condition.id == *name)
            else {
                self.problem(&place, problem_no_condition(name));
                continue;
            };
            self.value(&place, name, VarIx::of(at), value);
            if by_vehicle_actions_only && self.by_vehicle_actions.contains(name) {
                self.problem(&place, problem_action_alone(name));
            }
        }
    }

    fn gates(&mut self, place: &str, sets: &Assignments) {
        for (name, value) in sets {
            let place = format!("{place}/{name}");
            match self.names.var(name) {
                Some(var) if self.checklist.gates.iter().any(|gate| gate.id == *name) => {
                    self.value(&place, name, var, value);
                }
                _ => self.problem(&place, problem_no_gate(name)),
            }
        }
    }

    fn value(&mut self, place: &str, name: &str, var: VarIx, value: &str) {
        if self.names.value_of(var, value).is_none() {
            let choices = Arg::AnyOf(self.names.values(var).to_vec());
            self.problem(place, problem_no_value_but(value, name, choices));
        }
    }

    fn signs(&mut self) {
        let checklist = self.checklist;
        for (at, sign) in checklist.sign_offs.iter().enumerate() {
            let given =
                steps(checklist).filter(|(_, step)| signs_of(step).any(|given| *given == sign.id)).count();
            if given != 1 {
                self.problem(&format!("/sign_offs/{at}"), problem_asked_by(given));
            }
        }
    }

    fn phases(&mut self) {
        let checklist = self.checklist;
        for (at, phase) in checklist.phases.iter().enumerate() {
            for (beside_at, beside) in phase.beside.iter().enumerate() {
                if self.names.phase(beside).is_none_or(|found| found.at() >= at) {
                    let what = problem_no_earlier_phase(beside);
                    self.problem(&format!("/phases/{at}/beside/{beside_at}"), what);
                }
            }
        }
    }

    /// Steps that wait for each other in a ring can never begin.
    fn after(&mut self) {
        let all: Vec<(String, &Step)> = steps(self.checklist).collect();
        let mut waits: Vec<usize> = Vec::new();
        let mut free = vec![false; all.len()];
        let index: BTreeMap<&str, usize> =
            all.iter().enumerate().map(|(at, (_, step))| (step.id.as_str(), at)).collect();
        loop {
            let ready: Vec<usize> = (0..all.len())
                .filter(|&at| !free[at])
                .filter(|&at| {
                    let known = all[at].1.after.iter().filter_map(|id| index.get(id.as_str()));
                    known.clone().all(|&before| free[before])
                })
                .collect();
            if ready.is_empty() {
                break;
            }
            ready.into_iter().for_each(|at| free[at] = true);
        }
        waits.extend((0..all.len()).filter(|&at| !free[at]));
        let ring: Vec<String> = waits.iter().map(|&at| all[at].1.id.clone()).collect();
        for &at in &waits {
            self.problem(&format!("{}/after", all[at].0), problem_ring(ring.clone()));
        }
    }
}

/// Steps that may be skipped must not matter to safety or to the tray.
pub(super) fn skip(
    checklist: &Checklist,
    names: &Names,
    dangers_read: &BTreeSet<VarIx>,
    places: &Places,
) -> Vec<Problem> {
    let permits: BTreeSet<&String> = steps(checklist).flat_map(|(_, step)| &step.permits).collect();
    let mut problems = Vec::new();
    for (place, step) in steps(checklist).filter(|(_, step)| step.may_skip) {
        let place = format!("{place}/may_skip");
        let classes = step.entries.iter().flat_map(|entry| entry.classes.values());
        let written = classes.flat_map(|effect| effect.sets.keys().chain(effect.makes.keys()));
        let written = written.chain(step.sets.keys()).chain(step.makes.keys());
        let written = written.chain(step.on_begin.keys()).chain(step.on_leave.keys());
        for name in written.collect::<BTreeSet<_>>() {
            if names.var(name).is_some_and(|var| dangers_read.contains(&var)) {
                problems.push(at(places, &place, problem_skip_writes(name)));
            }
        }
        if !step.takes_off.is_empty() || !step.puts_back.is_empty() {
            problems.push(at(places, &place, problem_skip_moves()));
        }
        if signs_of(step).any(|sign| permits.contains(sign)) {
            problems.push(at(places, &place, problem_skip_permit()));
        }
    }
    problems
}
