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
use crate::machine::{
    Action, Before, SignIx, State, StepIx, StepSet, VarIx, VariableKind, VehicleActionIx, work,
};
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
    /// From where to where with how many minutes, turned round and sorted.
    edges: Vec<(u32, u32, u16)>,
    /// Where the edges that lead to a node begin.
    first: Vec<u32>,
    /// Where a step can be done, and in how many minutes.
    done: Vec<(StepIx, u32, u16)>,
    /// Where a step that may be left can be begun.
    begun: Vec<(StepIx, u32)>,
    /// Minutes of hands that are at least left.
    hands: Vec<u32>,
    /// The same with what was taken in: as many times the minutes that are at least left as there are people.
    least: Vec<u32>,
    zoned: bool,
}

impl Relaxed {
    /// Nothing where there are too many states.
    pub fn new(rules: &Rules<'_>, seeds: &[Moment]) -> Option<Relaxed> {
        let mut made = Relaxed {
            places: HashTable::new(),
            nodes: Vec::new(),
            edges: Vec::new(),
            first: Vec::new(),
            done: Vec::new(),
            begun: Vec::new(),
            hands: Vec::new(),
            least: Vec::new(),
            zoned: rules.task.people == 1,
        };
        for seed in seeds {
            for zone in if made.zoned { 0..=4 } else { 0..=0 } {
                made.number(seed.state, zone);
            }
        }
        let mut at = 0;
        while at < made.nodes.len() {
            if made.nodes.len() > MOST_STATES {
                return None;
            }
            made.look_at(rules, at as u32);
            at += 1;
        }
        made.edges.sort_unstable();
        made.first = vec![0; made.nodes.len() + 1];
        made.edges.iter().for_each(|&(to, _, _)| made.first[to as usize + 1] += 1);
        (0..made.nodes.len()).for_each(|at| made.first[at + 1] += made.first[at]);
        let ends =
            made.nodes.iter().zip(0..).filter(|((state, _), _)| {
                rules.machine.begun(state).next().is_none() && rules.may_end(state)
            });
        made.hands = made.backwards(ends.map(|(_, at)| (at, 0)).collect());
        made.least = made.hands.clone();
        Some(made)
    }

    /// The number of a state, if it is among those that were looked at.
    pub fn find(&self, state: &State, zone: u8) -> Option<u32> {
        let node = (*state, if self.zoned { zone } else { 0 });
        let hash = FixedState::default().hash_one(node);
        self.places.find(hash, |&at| self.nodes[at as usize] == node).copied()
    }

    /// Minutes of hands that are at least left, and as many times the minutes that are at least left as there are people;
    /// nothing where no way leads to the end.
    pub fn least(&self, node: u32) -> Option<(u32, u32)> {
        let least = (self.hands[node as usize], self.least[node as usize]);
        Some(least).filter(|&(hands, _)| hands != NEVER)
    }

    /// As many times the minutes that are at least left when the hands of a step are free again as there are people. Of steps
    /// that may be left and can be under way by then (`apart`) nothing is counted.
    pub fn after(&self, rules: &Rules<'_>, step: StepIx, apart: &[StepIx]) -> u32 {
        let people = rules.task.people as u32;
        let of_step = |step: StepIx| (u32::from(rules.hands(step)) + rules.full_wait_within(step)) * people;
        let left = self.nodes.iter().zip(&self.least).filter_map(|((state, _), &least)| {
            if least == NEVER || !rules.machine.is_begun(state, step) {
                return None;
            }
            let to_do = |step: &&StepIx| rules.rule(**step).work.get(state) == work::UNTOUCHED;
            let counted: u32 = apart.iter().filter(to_do).map(|&step| of_step(step)).sum();
            Some(least.saturating_sub(counted))
        });
        left.min().unwrap_or(0)
    }

    /// Takes in that so many minutes lie between the end of a step and the end of all, whatever hands do; and for one that
    /// may be left what lies within it. Answers whether that says more than was known.
    pub fn take_in(&mut self, rules: &Rules<'_>, step: StepIx, after: u32) -> bool {
        let people = rules.task.people as u32;
        let (known, minutes): (Vec<(u32, u32)>, u32) = if rules.may_be_left(step) {
            let own = u32::from(rules.hands(step)) + rules.full_wait_within(step);
            let begun = self.begun.iter().filter(|(found, _)| *found == step);
            (begun.map(|&(_, at)| (at, 0)).collect(), own + after)
        } else {
            let done = self.done.iter().filter(|(found, ..)| *found == step);
            (done.map(|&(_, at, minutes)| (at, u32::from(minutes))).collect(), after)
        };
        let mut more = false;
        for ((at, until), (state, _)) in self.backwards(known).into_iter().enumerate().zip(&self.nodes) {
            let apart = rules.may_be_left(step) && rules.machine.is_begun(state, step);
            if until == NEVER || apart || rules.rule(step).work.get(state) != work::UNTOUCHED {
                continue;
            }
            let least = until + minutes * people;
            more |= self.least[at] < least;
            self.least[at] = self.least[at].max(least);
        }
        more
    }

    /// For each of these steps those that come after it in every order: there is no state in which one of them is begun or
    /// dealt with and it is still to be done.
    pub fn followers(&self, rules: &Rules<'_>, steps: &[StepIx]) -> Vec<StepSet> {
        let mut earlier = vec![StepSet::default(); rules.machine.steps.len()];
        for (state, _) in &self.nodes {
            let is_to_do = |step: StepIx| rules.rule(step).work.get(state) == work::UNTOUCHED;
            let mut taken_up = StepSet::default();
            for &step in steps.iter().filter(|&&step| !is_to_do(step) || rules.machine.is_begun(state, step))
            {
                taken_up.insert(step);
            }
            steps.iter().filter(|&&step| is_to_do(step)).for_each(|step| earlier[step.at()] |= taken_up);
        }
        let after = |step: usize| {
            let mut after = StepSet::default();
            let later = steps.iter().filter(|other| other.at() != step && !earlier[step].contains(**other));
            later.for_each(|&other| after.insert(other));
            after
        };
        (0..earlier.len()).map(after).collect()
    }

    fn number(&mut self, state: State, zone: u8) -> u32 {
        let zone = if self.zoned { zone } else { 0 };
        if let Some(at) = self.find(&state, zone) {
            return at;
        }
        let at = self.nodes.len() as u32;
        let hasher = FixedState::default();
        self.nodes.push((state, zone));
        let nodes = &self.nodes;
        let hash = |&at: &u32| hasher.hash_one(nodes[at as usize]);
        self.places.insert_unique(hash(&at), at, hash);
        at
    }

    fn look_at(&mut self, rules: &Rules<'_>, from: u32) {
        let (state, zone) = self.nodes[from as usize];
        let machine = rules.machine;
        let before = Before::new(machine, &state, machine.dangers_now(&state));
        let (in_steps, zoned) = (machine.begun(&state).count(), self.zoned);
        let mut edge = |action: Action, zone: u8, minutes: u16| {
            let Some(next) = rules.act(&before, action) else { return };
            let to = self.number(canon(machine, Apart::default(), next), zone);
            self.edges.push((to, from, minutes));
            if let Action::Done(step, _) = action {
                self.done.push((step, from, minutes));
            }
            if let Action::Begin(step) = action
                && rules.may_be_left(step)
            {
                self.begun.push((step, from));
            }
        };
        for step in (0..machine.steps.len()).map(StepIx::of) {
            let own = rules.zones[step.at()];
            let outcome = rules.task.outcomes[step.at()];
            // Hands of a step that may be left are counted when it is done: it may be begun several times.
            let hands = rules.hands(step);
            let (first, last) = if rules.may_be_left(step) { (0, hands) } else { (hands, 0) };
            if machine.is_begun(&state, step) {
                edge(Action::Done(step, outcome), zone, last);
                edge(Action::Leave(step), zone, 0);
            } else if in_steps < rules.task.people {
                let walks = zoned && zone != 0 && zone != own;
                let walk = if walks { rules.task.minutes.walk } else { 0 };
                edge(Action::Begin(step), own, first.saturating_add(walk));
            }
            if rules.rule(step).work.get(&state) == work::VOIDED {
                edge(Action::Correct(step, outcome), zone, 0);
            }
        }
        for (at, &minutes) in rules.task.minutes.vehicle_actions.iter().enumerate() {
            edge(Action::Vehicle(VehicleActionIx::of(at)), zone, minutes);
        }
        (0..machine.signs.len()).for_each(|at| edge(Action::Sign(SignIx::of(at)), zone, 0));
        for (at, var) in machine.vars.iter().enumerate() {
            if var.kind == VariableKind::Gate && var.ages {
                edge(Action::Expire(VarIx::of(at)), zone, 0);
            }
        }
    }

    /// Dijkstra from where minutes are known, against the edges.
    fn backwards(&self, known: Vec<(u32, u32)>) -> Vec<u32> {
        let mut least = vec![NEVER; self.nodes.len()];
        let mut open: BinaryHeap<(Reverse<u32>, u32)> = BinaryHeap::new();
        for (at, minutes) in known {
            if minutes < least[at as usize] {
                least[at as usize] = minutes;
                open.push((Reverse(minutes), at));
            }
        }
        while let Some((Reverse(minutes), at)) = open.pop() {
            let at = at as usize;
            if minutes > least[at] {
                continue;
            }
            for &(_, from, more) in &self.edges[self.first[at] as usize..self.first[at + 1] as usize] {
                let all = minutes + u32::from(more);
                if all < least[from as usize] {
                    least[from as usize] = all;
                    open.push((Reverse(all), from));
                }
            }
        }
        least
    }
}
