//! The same work without its clocks: nothing has to cool, nothing grows old unless that helps, and people are counted
//! by their minutes alone. What is left to do in it is never more than what is left in truth, and it can be worked out
//! for every state at once, backwards from the end.

use std::cmp::Reverse;
use std::collections::BinaryHeap;
use std::hash::BuildHasher;

use foldhash::fast::FixedState;
use hashbrown::HashTable;

use super::moment::Moment;
use super::rules::Rules;
use crate::machine::{Action, Before, MoveIx, SignIx, State, StepIx, VarIx, VariableKind, work};
use crate::proof::Apart;
use crate::proof::canon::canon;

/// More states than this are not looked at: the rougher bound then has to do.
const MOST_STATES: usize = 60_000;
/// No way leads to the end.
const NEVER: u32 = u32::MAX;

/// Minutes of hands that are left, by state and, for one person, by the zone they are in.
pub(super) struct Relaxed {
    places: HashTable<u32>,
    nodes: Vec<(State, u8)>,
    least: Vec<u32>,
}

/// A graph that is being made, with its edges backwards.
struct Making<'a, 'r> {
    rules: &'r Rules<'a>,
    made: Relaxed,
    edges: Vec<(u32, u32, u16)>,
    zoned: bool,
}

impl Relaxed {
    /// Nothing where there are too many states.
    pub fn new(rules: &Rules<'_>, seeds: &[Moment]) -> Option<Relaxed> {
        let made = Relaxed { places: HashTable::new(), nodes: Vec::new(), least: Vec::new() };
        let mut making = Making { rules, made, edges: Vec::new(), zoned: rules.task.people == 1 };
        for seed in seeds {
            let zones = if making.zoned { 0..=4 } else { 0..=0 };
            for zone in zones {
                making.number(seed.state, zone);
            }
        }
        let mut at = 0;
        while at < making.made.nodes.len() {
            if making.made.nodes.len() > MOST_STATES {
                return None;
            }
            making.look_at(at as u32);
            at += 1;
        }
        Some(making.backwards())
    }

    fn find(&self, state: &State, zone: u8) -> Option<u32> {
        let hash = FixedState::default().hash_one((state, zone));
        self.places.find(hash, |&at| self.nodes[at as usize] == (*state, zone)).copied()
    }

    /// Minutes of hands that are at least left in a state; nothing where no way leads to the end.
    pub fn least(&self, state: &State, zone: u8) -> Option<u32> {
        match self.find(state, zone) {
            Some(at) => Some(self.least[at as usize]).filter(|&least| least != NEVER),
            // Every state that can be reached in truth can be reached here.
            None => Some(0),
        }
    }
}

impl Making<'_, '_> {
    fn number(&mut self, state: State, zone: u8) -> u32 {
        let zone = if self.zoned { zone } else { 0 };
        if let Some(at) = self.made.find(&state, zone) {
            return at;
        }
        let at = self.made.nodes.len() as u32;
        let hasher = FixedState::default();
        self.made.nodes.push((state, zone));
        let nodes = &self.made.nodes;
        let hash = |&at: &u32| hasher.hash_one((&nodes[at as usize].0, nodes[at as usize].1));
        self.made.places.insert_unique(hash(&at), at, hash);
        at
    }

    fn look_at(&mut self, from: u32) {
        let (state, zone) = self.made.nodes[from as usize];
        let (rules, machine, zoned) = (self.rules, self.rules.machine, self.zoned);
        let before = Before::new(machine, &state, machine.dangers_now(&state));
        let mut edge = |action: Action, zone: u8, minutes: u16| {
            if let Some(next) = rules.act(&before, action) {
                let to = self.number(canon(machine, Apart::default(), next), zone);
                self.edges.push((to, from, minutes));
            }
        };
        let in_steps = machine.begun(&state).count();
        for step in (0..machine.steps.len()).map(StepIx::of) {
            let own = rules.zones[step.at()];
            let outcome = rules.task.outcomes[step.at()];
            // Hands of a step that may be left are counted when it is done: it may be begun several times.
            let (first, last) =
                if rules.may_be_left(step) { (0, rules.hands(step)) } else { (rules.hands(step), 0) };
            if machine.is_begun(&state, step) {
                edge(Action::Done(step, outcome), zone, last);
                edge(Action::Leave(step), zone, 0);
            } else if in_steps < rules.task.people {
                let walks = zoned && zone != 0 && zone != own;
                let walk = if walks { rules.task.minutes.walk } else { 0 };
                edge(Action::Begin(step), own, first.saturating_add(walk));
            }
            if rules.rule(step).work.get(&state) == work::STRUCK {
                edge(Action::Rerecord(step, outcome), zone, 0);
            }
        }
        for (at, &minutes) in rules.task.minutes.moves.iter().enumerate() {
            edge(Action::Move(MoveIx::of(at)), zone, minutes);
        }
        (0..machine.signs.len()).for_each(|at| edge(Action::Sign(SignIx::of(at)), zone, 0));
        for (at, var) in machine.vars.iter().enumerate() {
            if var.kind == VariableKind::Gate && var.ages {
                edge(Action::Expire(VarIx::of(at)), zone, 0);
            }
        }
    }

    /// Dijkstra from every end.
    fn backwards(mut self) -> Relaxed {
        let count = self.made.nodes.len();
        self.edges.sort_unstable();
        let mut first = vec![0; count + 1];
        self.edges.iter().for_each(|&(to, _, _)| first[to as usize + 1] += 1);
        (0..count).for_each(|at| first[at + 1] += first[at]);
        let mut least = vec![NEVER; count];
        let mut open = BinaryHeap::new();
        for (at, (state, _)) in self.made.nodes.iter().enumerate() {
            if self.rules.machine.begun(state).next().is_none() && self.rules.may_end(state) {
                least[at] = 0;
                open.push((Reverse(0), at));
            }
        }
        while let Some((Reverse(minutes), at)) = open.pop() {
            if minutes > least[at] {
                continue;
            }
            for &(_, from, more) in &self.edges[first[at]..first[at + 1]] {
                let from = from as usize;
                let all = minutes + u32::from(more);
                if all < least[from] {
                    least[from] = all;
                    open.push((Reverse(all), from));
                }
            }
        }
        self.made.least = least;
        self.made
    }
}
