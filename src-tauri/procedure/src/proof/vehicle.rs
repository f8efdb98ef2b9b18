//! What is possible as far as the vehicle goes: many states differ only in what has been done, so it is worked out once
//! for each state of the vehicle and kept for a while.

use super::actions::LOW;
use crate::machine::{
    Machine, STEP_WORDS, SignIx, State, StepRule, Test, Tree, UNKNOWN, VarIx, VehicleActionIx, sign,
};

/// What the vehicle half of a state says about what may be tried. What also hangs on the work done is said to be
/// possible; `step` decides.
#[derive(Debug, Clone, Copy)]
pub struct Vehicle {
    /// Vehicle actions, as bits; the last bit stands for all from there on.
    vehicle_actions: u64,
    /// Steps that may be begun as low bits of their work fields, those that may be done again as high bits.
    begins: [u64; STEP_WORDS],
    /// Sign-offs that may be renewed, as bits like those of vehicle actions.
    signs: u64,
    /// Gates that may age, as bits like those of vehicle actions.
    ages: u64,
    /// The job may be finished, as far as the vehicle goes.
    pub finishes: bool,
    /// The job may be stopped.
    pub stops: bool,
    /// Nothing follows and nothing lapses.
    pub rests: bool,
}

impl Vehicle {
    /// A vehicle of which nothing is known.
    pub const ANY: Vehicle = Vehicle {
        vehicle_actions: u64::MAX,
        begins: [u64::MAX; STEP_WORDS],
        signs: u64::MAX,
        ages: u64::MAX,
        finishes: true,
        stops: true,
        rests: false,
    };

    pub fn allows(&self, made: VehicleActionIx) -> bool {
        has(self.vehicle_actions, made.at())
    }

    /// Of the steps whose work fields stand in this word those that may be begun, and those that may be done again: each
    /// as low bits of the fields.
    pub fn begins(&self, word: usize) -> (u64, u64) {
        (self.begins[word] & LOW, self.begins[word] >> 1 & LOW)
    }

    pub fn allows_sign(&self, given: SignIx) -> bool {
        has(self.signs, given.at())
    }

    pub fn allows_ageing(&self, gate: VarIx) -> bool {
        has(self.ages, gate.at())
    }
}

/// Whether a place of a list is among bits of which the last stands for all from there on.
fn has(bits: u64, at: usize) -> bool {
    bits >> at.min(63) & 1 == 1
}

fn bits(may: impl Iterator<Item = bool>) -> u64 {
    may.enumerate().fold(0, |bits, (at, may)| bits | if may || at >= 63 { 1 << at.min(63) } else { 0 })
}

/// States of the vehicle that are kept at one time: some 3 MB.
const KEPT: usize = 1 << 15;

/// Vehicles by the number of their half; a newer one takes the place of an older.
pub struct Vehicles {
    kept: Vec<Option<(u32, Vehicle)>>,
}

impl Vehicles {
    pub fn new() -> Vehicles {
        Vehicles { kept: vec![None; KEPT] }
    }

    /// Fetches what may be kept of a vehicle without waiting for it, so that it is near when it is asked for.
    pub fn fetch(&self, key: u32) -> bool {
        self.kept[key as usize % KEPT].is_some()
    }

    /// The vehicle of a state that has this number as its half.
    pub fn of(&mut self, machine: &Machine, number: u32, state: &State) -> &Vehicle {
        let kept = &mut self.kept[number as usize % KEPT];
        let is_other = kept.as_ref().is_none_or(|(kept, _)| *kept != number);
        if is_other {
            *kept = None;
        }
        &kept.get_or_insert_with(|| (number, work_out(machine, state))).1
    }
}

fn work_out(machine: &Machine, state: &State) -> Vehicle {
    let may_hold = |tree: &Tree| may_hold(machine, tree, state);
    let changes = |rule: &crate::machine::VehicleActionRule| {
        rule.makes.edits.iter().any(|(field, value)| field.get(state) != *value)
    };
    let permitted = |rule: &StepRule| machine.permits_valid(state, rule).is_ok();
    let mut begins = [0; STEP_WORDS];
    for rule in machine.steps.iter().filter(|rule| permitted(rule) && may_hold(rule.needs.tree())) {
        let first = rule.on.as_ref().is_none_or(|(yes, _)| may_hold(yes.tree()));
        let again = rule.again.as_ref().is_some_and(|again| may_hold(again.tree()));
        begins[usize::from(rule.work.word)] |= (u64::from(first) | u64::from(again) << 1) << rule.work.shift;
    }
    Vehicle {
        vehicle_actions: bits(
            machine.vehicle_actions.iter().map(|rule| changes(rule) && may_hold(rule.needs.tree())),
        ),
        begins,
        signs: bits(
            machine
                .signs
                .iter()
                .map(|rule| rule.field.get(state) != sign::VALID && may_hold(rule.holds_while.tree())),
        ),
        ages: bits(machine.vars.iter().map(|var| var.ages && var.field.get(state) != u64::from(UNKNOWN))),
        finishes: may_hold(machine.done_when.tree()),
        stops: may_hold(machine.safe_to_leave.tree()),
        rests: machine.rests(state),
    }
}

/// Whether a predicate holds for some work done: what does not read the vehicle is taken to hold. Negations stand in
/// the tests only, so that this is never too strict.
fn may_hold(machine: &Machine, tree: &Tree, state: &State) -> bool {
    match tree {
        Tree::Const(value) => *value,
        Tree::Test(Test::In { field, values }) => {
            usize::from(field.word) < machine.layout.work_words || values >> field.get(state) & 1 == 1
        }
        Tree::Test(_) => true,
        Tree::All(parts) => parts.iter().all(|part| may_hold(machine, part, state)),
        Tree::Any(parts) => parts.iter().any(|part| may_hold(machine, part, state)),
    }
}
