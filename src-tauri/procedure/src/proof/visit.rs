//! What the states found lead to: the inner loop of the search.
//!
//! Memory is slow and the processor fetches many things at a time, so some states are gone through together: first what
//! may be tried in them, then what each try does, then which state that is. What is asked for next is fetched before.

use std::hint::black_box;
use std::ops::Range;

use super::actions::{Actions, kind};
use super::canon::{Apart, canon};
use super::edges::{Edge, Kind};
use super::explore::{Found, Taken};
use super::transition_cache::{Key, Transition, TransitionCache};
use super::vehicle::Vehicles;
use crate::machine::{Before, DangerSet, Machine, State};

/// What is used over and over while visiting.
pub struct Visit {
    apart: Apart,
    vehicles: Vehicles,
    cache: TransitionCache,
    candidates: Vec<u16>,
    states: Vec<Visited>,
    tries: Vec<Try>,
    steps: Vec<Step>,
    found: Vec<(Option<u32>, u64)>,
}

/// A state that is visited.
struct Visited {
    number: u32,
    state: State,
    /// Whether nothing follows and nothing lapses in it.
    rests: bool,
    dangers: DangerSet,
    /// What is tried in it.
    tries: Range<usize>,
}

/// An action that may be possible, and where its transition may be kept.
#[derive(Clone, Copy)]
struct Try {
    action: u16,
    key: Option<Key>,
}

/// A step worked out and not yet looked up.
struct Step {
    from: u32,
    kind: Kind,
    pair: (u32, u32),
    /// Whether some danger holds after it, once that is known.
    is_dangerous: Option<bool>,
}

impl Visit {
    /// Nothing visited yet.
    pub fn new(machine: &Machine, actions: &Actions, apart: Apart) -> Visit {
        Visit {
            apart,
            vehicles: Vehicles::new(),
            cache: TransitionCache::new(machine, actions),
            candidates: Vec::new(),
            states: Vec::new(),
            tries: Vec::new(),
            steps: Vec::new(),
            found: Vec::new(),
        }
    }
}

impl Found<'_> {
    /// Finds what some states of one layer lead to.
    pub fn visit(&mut self, states: Range<u32>, visit: &mut Visit) {
        visit.cache.make_room(self.graph.len());
        self.list_tries(states.clone(), visit);
        visit.steps.clear();
        let (visited, tries) = (std::mem::take(&mut visit.states), std::mem::take(&mut visit.tries));
        for one in &visited {
            self.work_out(one, &tries[one.tries.clone()], visit);
        }
        (visit.states, visit.tries) = (visited, tries);
        visit.found.clear();
        visit.found.extend(visit.steps.iter().map(|step| self.graph.look_up(step.pair)));
        let mut steps = visit.steps.iter().zip(&visit.found).peekable();
        for number in states {
            self.graph.next_state();
            while let Some((step, &(known, hash))) = steps.next_if(|(step, _)| step.from == number) {
                let to = known.unwrap_or_else(|| self.put_in(step, hash));
                self.graph.add_edge(Edge { kind: step.kind, to });
            }
        }
    }

    /// Puts the state that a step leads to in, unless a step looked up with it did.
    fn put_in(&mut self, step: &Step, hash: u64) -> u32 {
        let (to, new) = self.graph.insert_pair(step.pair, hash);
        if new && step.is_dangerous.unwrap_or_else(|| self.is_dangerous_after(step.from, to)) {
            self.dangerous.set(to);
        }
        to
    }

    /// What may be tried in each state, with what may be kept of it on its way here.
    fn list_tries(&mut self, states: Range<u32>, visit: &mut Visit) {
        visit.tries.clear();
        visit.states.clear();
        let read = |number| Visited {
            number,
            state: self.graph.state(number),
            rests: false,
            dangers: DangerSet::NONE,
            tries: 0..0,
        };
        visit.states.extend(states.clone().map(read));
        black_box(states.filter(|&number| visit.vehicles.fetch(self.graph.vehicle(number))).count());
        for one in &mut visit.states {
            self.seen.look_at(self.machine, &one.state);
            let number = self.graph.vehicle(one.number);
            let vehicle = visit.vehicles.of(self.machine, number, &one.state);
            one.rests = vehicle.rests;
            one.dangers = self.dangers_in(one.number, &one.state);
            self.actions.candidates(self.machine, &one.state, vehicle, &mut visit.candidates);
            let mut begun = self.machine.begun(&one.state);
            let (in_progress, more) = (begun.next(), begun.next());
            let is_kept = one.rests && more.is_none();
            let dangers = is_kept.then(|| visit.cache.number_dangers(one.dangers)).flatten();
            let begin = visit.tries.len();
            visit.tries.extend(visit.candidates.iter().map(|&action| {
                let key = dangers
                    .and_then(|dangers| visit.cache.key(action, number, dangers, &one.state, in_progress));
                Try { action, key }
            }));
            one.tries = begin..visit.tries.len();
        }
        let near = visit.tries.iter().filter_map(|one| one.key).filter(|key| visit.cache.fetch(*key));
        black_box(near.count());
    }

    /// Works out what a state leads to.
    fn work_out(&mut self, from: &Visited, tries: &[Try], visit: &mut Visit) {
        let before = Before::known(&from.state, from.rests, from.dangers);
        let mut last = None;
        for &Try { action: at, key } in tries {
            let known = key.and_then(|key| visit.cache.find(key));
            #[cfg(test)]
            known.into_iter().for_each(|kept| self.assert_is_so(kept, from, at, visit));
            let (pair, is_dangerous) = match known {
                Some(None) => continue,
                Some(Some(transition)) if !(transition.is_watched && self.seen.is_open()) => {
                    (self.pair_by(from, transition, visit), Some(transition.is_dangerous))
                }
                _ => match self.try_out(from.number, &before, at, key, visit) {
                    Some(step) => step,
                    None => continue,
                },
            };
            self.transitions += 1;
            let action = self.actions.get(at);
            let kind = kind(self.machine, last, action);
            visit.steps.push(Step { from: from.number, kind, pair, is_dangerous });
            last = Some(action);
        }
        self.dead_ends += usize::from(last.is_none());
    }

    /// The halves that a known transition leads to.
    fn pair_by(&mut self, from: &Visited, transition: Transition, visit: &mut Visit) -> (u32, u32) {
        let was = self.graph.work(from.number);
        let work = visit.cache.work_after(was, transition.work).unwrap_or_else(|| {
            let work = self.graph.insert_work(&visit.cache.changed(&from.state, transition.work));
            visit.cache.keep_work(was, transition.work, work);
            work
        });
        (work, transition.vehicle)
    }

    /// Carries out an action, takes in what comes up, and keeps what it did: its halves, and whether some danger holds
    /// after it if that is known. Nothing where it is not allowed.
    fn try_out(
        &mut self,
        from: u32,
        before: &Before<'_>,
        at: u16,
        key: Option<Key>,
        visit: &mut Visit,
    ) -> Option<((u32, u32), Option<bool>)> {
        let action = self.actions.get(at);
        let Some((next, dangers)) = self.successor(before, action) else {
            if let Some(key) = key {
                visit.cache.keep(key, None);
            }
            return None;
        };
        self.note(from, before, at, &next, dangers);
        let with_piece_off = self.with_piece_off(before, action, &next);
        for danger in with_piece_off.iter() {
            self.dangers_with_piece_off.entry(danger).or_insert(Taken { from, action });
        }
        let is_watched = self.seen.watches(before.state, &next);
        let next = canon(self.machine, visit.apart, next);
        let pair = self.graph.pair_after(from, &next, self.graph.differs(before.state, &next));
        // A danger that is met is told at every state.
        let work = key
            .filter(|_| dangers.is_empty() && with_piece_off.is_empty())
            .and_then(|key| Some((key, visit.cache.change(self.machine, at, before.state, &next)?)));
        let is_dangerous = work.map(|(key, work)| {
            let is_dangerous = !self.machine.dangers_after(before, &next).is_empty();
            let transition = Transition { vehicle: pair.1, work, is_dangerous, is_watched };
            visit.cache.keep(key, Some(transition));
            is_dangerous
        });
        Some((pair, is_dangerous))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::proof::Ask;
    use crate::proof::explore::{Runs, explore};
    use crate::proof::tell::Teller;
    use crate::shipped;
    use std::sync::atomic::AtomicBool;
    use std::sync::mpsc;

    impl Found<'_> {
        /// What is kept of an action is what carrying it out does.
        pub(super) fn assert_is_so(
            &mut self,
            kept: Option<Transition>,
            from: &Visited,
            at: u16,
            visit: &mut Visit,
        ) {
            let before = Before::known(&from.state, from.rests, from.dangers);
            let kept =
                kept.map(|transition| (self.pair_by(from, transition, visit), transition.is_dangerous));
            let action = self.actions.get(at);
            let done = self.successor(&before, action).map(|(next, met)| {
                let met = met | self.with_piece_off(&before, action, &next);
                assert!(met.is_empty(), "{action:?} meets a danger, which has to be told each time");
                let next = canon(self.machine, visit.apart, next);
                let is_dangerous = !self.machine.dangers_after(&before, &next).is_empty();
                let differs = self.graph.differs(&from.state, &next);
                (self.graph.pair_after(from.number, &next, differs), is_dangerous)
            });
            assert_eq!(kept, done, "{action:?} in state {}", from.number);
        }
    }

    #[test]
    fn every_effect_that_is_kept_is_what_the_action_does() {
        for procedure in [shipped::level_check(), shipped::return_visit()] {
            for runs in [Runs::OneVoid, Runs::OneObservation] {
                let (to, _heard) = mpsc::channel();
                let teller = Teller { to, cancelled: &AtomicBool::new(false) };
                let found = explore(&procedure, runs, Ask::ALL, &teller);
                assert_eq!(found.stopped, None);
                assert!(found.graph.len() > 2_000);
            }
        }
    }
}
