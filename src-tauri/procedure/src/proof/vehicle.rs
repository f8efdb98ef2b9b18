//! What is possible as far as the vehicle goes: many states differ only in what has been done, so it is worked out once
//! for each state of the vehicle and kept for a while.

use super::graph::Graph;
use crate::machine::{Machine, MoveIx, State, StepIx, StepRule, Test, Tree};

/// What the vehicle half of a state says about what may be tried. What also hangs on the work done is said to be
/// possible; `step` decides.
#[derive(Debug, Clone, Copy)]
pub struct Vehicle {
    /// Moves, as bits; the last bit stands for all from there on.
    moves: u64,
    /// Steps that may be begun.
    begins: [u64; 4],
    /// Nothing follows and nothing lapses.
    pub rests: bool,
}

impl Vehicle {
    /// A vehicle of which nothing is known.
    pub const ANY: Vehicle = Vehicle { moves: u64::MAX, begins: [u64::MAX; 4], rests: false };

    pub fn allows_move(&self, made: MoveIx) -> bool {
        self.moves >> made.at().min(63) & 1 == 1
    }

    pub fn allows_begin(&self, step: StepIx) -> bool {
        self.begins[step.at() / 64 % 4] >> (step.at() % 64) & 1 == 1
    }
}

/// States of the vehicle that are kept at one time: some 2 MB.
const KEPT: usize = 1 << 15;

/// Vehicles by the number of their half; a newer one takes the place of an older.
pub struct Vehicles {
    kept: Vec<Option<(u32, Vehicle)>>,
    /// Moves and steps whose `needs` read nothing but the vehicle.
    moves: Vec<bool>,
    steps: Vec<bool>,
}

impl Vehicles {
    pub fn new(machine: &Machine) -> Vehicles {
        Vehicles {
            kept: vec![None; KEPT],
            moves: machine.moves.iter().map(|rule| reads_vehicle_only(machine, rule.needs.tree())).collect(),
            steps: machine.steps.iter().map(|rule| reads_vehicle_only(machine, rule.needs.tree())).collect(),
        }
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
        let vehicle = self.work_out(machine, state);
        self.kept[place] = Some((key, vehicle));
        vehicle
    }

    fn work_out(&self, machine: &Machine, state: &State) -> Vehicle {
        let mut vehicle = Vehicle { moves: 0, begins: [0; 4], rests: machine.rests(state) };
        for (at, (rule, only)) in machine.moves.iter().zip(&self.moves).enumerate() {
            if at >= 63 || !only || rule.needs.holds(state) {
                vehicle.moves |= 1 << at.min(63);
            }
        }
        let permitted = |rule: &StepRule| machine.permits_valid(state, rule).is_ok();
        for (at, (rule, only)) in machine.steps.iter().zip(&self.steps).enumerate() {
            if permitted(rule) && (!only || rule.needs.holds(state)) {
                vehicle.begins[at / 64 % 4] |= 1 << (at % 64);
            }
        }
        vehicle
    }
}

fn reads_vehicle_only(machine: &Machine, tree: &Tree) -> bool {
    match tree {
        Tree::Const(_) => true,
        Tree::Test(Test::In { field, .. }) => usize::from(field.word) >= machine.layout.work_words,
        Tree::Test(_) => false,
        Tree::All(parts) | Tree::Any(parts) => parts.iter().all(|part| reads_vehicle_only(machine, part)),
    }
}
