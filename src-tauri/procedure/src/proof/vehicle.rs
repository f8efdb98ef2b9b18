//! What is possible as far as the vehicle goes: many states differ only in what has been done, so it is worked out once
//! for each state of the vehicle and kept for a while.

use super::graph::Graph;
use crate::machine::{Machine, MoveIx, SignIx, State, StepIx, StepRule, Test, Tree, UNKNOWN, VarIx, sign};

/// What the vehicle half of a state says about what may be tried. What also hangs on the work done is said to be
/// possible; `step` decides.
#[derive(Debug, Clone, Copy)]
pub struct Vehicle {
    /// Moves, as bits; the last bit stands for all from there on.
    moves: u64,
    /// Steps that may be begun.
    begins: [u64; 4],
    /// Sign-offs that may be renewed, as bits like those of moves.
    signs: u64,
    /// Gates that may age, as bits like those of moves.
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
        moves: u64::MAX,
        begins: [u64::MAX; 4],
        signs: u64::MAX,
        ages: u64::MAX,
        finishes: true,
        stops: true,
        rests: false,
    };

    pub fn allows_move(&self, made: MoveIx) -> bool {
        has(self.moves, made.at())
    }

    pub fn allows_begin(&self, step: StepIx) -> bool {
        self.begins[step.at() / 64 % 4] >> (step.at() % 64) & 1 == 1
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

/// States of the vehicle that are kept at one time: some 2 MB.
const KEPT: usize = 1 << 15;

/// Vehicles by the number of their half; a newer one takes the place of an older.
pub struct Vehicles {
    kept: Vec<Option<(u32, Vehicle)>>,
}

impl Vehicles {
    pub fn new() -> Vehicles {
        Vehicles { kept: vec![None; KEPT] }
    }

    /// The vehicle of a state of the graph.
    pub fn of(&mut self, machine: &Machine, graph: &Graph, number: u32, state: &State) -> Vehicle {
        let key = graph.vehicle(number);
        let place = key as usize % KEPT;
        if let Some((kept, vehicle)) = &self.kept[place]
            && *kept == key
        {
            return *vehicle;
        }
        let vehicle = work_out(machine, state);
        self.kept[place] = Some((key, vehicle));
        vehicle
    }
}

fn work_out(machine: &Machine, state: &State) -> Vehicle {
    let may_hold = |tree: &Tree| may_hold(machine, tree, state);
    let changes = |rule: &crate::machine::MoveRule| {
        rule.makes.edits.iter().any(|(field, value)| field.get(state) != *value)
    };
    let permitted = |rule: &StepRule| machine.permits_valid(state, rule).is_ok();
    let mut begins = [0; 4];
    for (at, rule) in machine.steps.iter().enumerate() {
        if permitted(rule) && may_hold(rule.needs.tree()) {
            begins[at / 64 % 4] |= 1 << (at % 64);
        }
    }
    Vehicle {
        moves: bits(machine.moves.iter().map(|rule| changes(rule) && may_hold(rule.needs.tree()))),
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
