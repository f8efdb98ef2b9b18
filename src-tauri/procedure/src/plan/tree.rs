//! Moments that were found, each with the way to it. One that is no better than another in any respect is left out.

use std::hash::BuildHasher;

use foldhash::fast::FixedState;
use hashbrown::HashTable;

use super::moment::{Moment, Op, Person};
use super::rules::{Clock, IDLE, Rules};

const NONE: u32 = u32::MAX;

pub(super) struct Tree<'r, 'a> {
    rules: &'r Rules<'a>,
    nodes: Vec<Node>,
    /// The last found of each state with people in the same places.
    places: HashTable<u32>,
    hasher: FixedState,
}

struct Node {
    moment: Moment,
    minutes: u32,
    /// The moment before and what led here; nothing at a beginning.
    from: Option<(u32, Op)>,
    /// What was done before this beginning.
    seed: Vec<Op>,
    /// The one found before of the same state with people in the same places.
    other: u32,
    /// Another one is as good in every respect.
    beaten: bool,
}

impl<'r, 'a> Tree<'r, 'a> {
    pub fn new(rules: &'r Rules<'a>) -> Tree<'r, 'a> {
        Tree { rules, nodes: Vec::new(), places: HashTable::new(), hasher: FixedState::default() }
    }

    /// A moment that was reached after so many minutes; its number, unless one is known that is as good.
    pub fn reach(&mut self, moment: Moment, minutes: u32, from: Option<(u32, Op)>) -> Option<u32> {
        let hash = self.hasher.hash_one((&moment.state, &moment.people));
        // Whoever idles must not be sent back to where the idling began.
        let idled = matches!(from, Some((_, Op::Pass(_))));
        let nodes = &self.nodes;
        let same = |&at: &u32| {
            let known = &nodes[at as usize].moment;
            known.state == moment.state && known.people == moment.people
        };
        let last = self.places.find(hash, same).copied().unwrap_or(NONE);
        let mut at = last;
        while let Some(known) = self.nodes.get(at as usize) {
            if !known.beaten && self.beats((&known.moment, known.minutes), (&moment, minutes), !idled) {
                return None;
            }
            at = known.other;
        }
        let mut at = last;
        while let Some(known) = self.nodes.get(at as usize) {
            let next = known.other;
            if !known.beaten && self.beats((&moment, minutes), (&known.moment, known.minutes), true) {
                self.nodes[at as usize].beaten = true;
            }
            at = next;
        }
        let new = self.nodes.len() as u32;
        self.nodes.push(Node { moment, minutes, from, seed: Vec::new(), other: last, beaten: false });
        let (nodes, hasher) = (&self.nodes, &self.hasher);
        let hash_of = |at: &u32| {
            let moment = &nodes[*at as usize].moment;
            hasher.hash_one((&moment.state, &moment.people))
        };
        match self.places.find_mut(hash, |&at| at == last) {
            Some(place) => *place = new,
            None => {
                self.places.insert_unique(hash, new, hash_of);
            }
        }
        Some(new)
    }

    /// A moment where a search begins.
    pub fn begin(&mut self, ops: Vec<Op>, moment: Moment) -> Option<u32> {
        let at = self.reach(moment, 0, None)?;
        self.nodes[at as usize].seed = ops;
        Some(at)
    }

    pub fn moment(&self, at: u32) -> &Moment {
        &self.nodes[at as usize].moment
    }

    /// Whether no other moment is as good.
    pub fn counts(&self, at: u32) -> bool {
        !self.nodes[at as usize].beaten
    }

    /// Everything that leads to a moment.
    pub fn way_to(&self, at: u32) -> Vec<Op> {
        let mut ops = Vec::new();
        let mut node = &self.nodes[at as usize];
        while let Some((from, op)) = node.from {
            ops.push(op);
            node = &self.nodes[from as usize];
        }
        ops.extend(node.seed.iter().rev());
        ops.reverse();
        ops
    }

    /// Whether one moment is at least as good as another of the same state with people in the same places: it comes no
    /// later, each wait is over no later, and what is known is known for exactly as long. Counted from the moment itself;
    /// for one person who is free by the clock on the wall too, since whoever is earlier can idle until the other moment.
    fn beats(&self, (one, early): (&Moment, u32), (other, late): (&Moment, u32), by_the_wall: bool) -> bool {
        if early > late {
            return false;
        }
        let state = &one.state;
        let as_good = |ahead: u32| {
            let mut clocks = self.rules.clocks.iter().zip(one.clocks.iter().zip(&*other.clocks));
            clocks.all(|(clock, (&one, &other))| {
                let (left, others) = (u32::from(one), u32::from(other) + ahead);
                match clock {
                    Clock::Before { since, .. } if since.holds(state) => left <= others,
                    Clock::Within { .. } if one != IDLE && other != IDLE => left <= others,
                    Clock::Fresh { .. } if one != 0 => left == others,
                    Clock::Before { .. } | Clock::Within { .. } | Clock::Fresh { .. } => one == other,
                }
            })
        };
        let may_idle = by_the_wall && self.rules.task.people == 1 && one.people.iter().any(Person::is_free);
        as_good(0) || may_idle && as_good(late - early)
    }
}
