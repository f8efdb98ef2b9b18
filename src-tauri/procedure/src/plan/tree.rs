//! Moments that were found, each with the way to it. One that is no better than another in any respect is left out.
//!
//! A search finds millions of them, so they are kept small: states, sets of clocks and where everybody is stand once each,
//! and a moment is three numbers.

use std::hash::BuildHasher;

use foldhash::fast::FixedState;
use hashbrown::HashTable;

use super::MOST_PEOPLE;
use super::moment::{Moment, Op, Person};
use super::rules::{Clock, IDLE, Rules};
use super::runs::Runs;
use crate::machine::State;

const NONE: u32 = u32::MAX;

pub(super) struct Tree<'r, 'a> {
    rules: &'r Rules<'a>,
    nodes: Vec<Node>,
    /// What was done before the search began, by the node of each beginning.
    seeds: Vec<(u32, Vec<Op>)>,
    places: Vec<Place>,
    /// Places by what they are.
    by_place: HashTable<u32>,
    states: Runs<u64>,
    clocks: Runs<u16>,
}

/// A state with people in their places.
struct Place {
    state: u32,
    people: [Person; MOST_PEOPLE],
    /// The moment that was found here last.
    last: u32,
}

/// A moment that was found.
struct Node {
    place: u32,
    clocks: u32,
    minutes: u32,
    /// The moment before; nothing at a beginning.
    from: u32,
    /// The one found before in the same place.
    other: u32,
    /// What led here from the moment before.
    op: Op,
    /// Another one is as good in every respect.
    beaten: bool,
}

/// A moment to be compared with another in the same place.
#[derive(Clone, Copy)]
struct Compared<'m> {
    clocks: &'m [u16],
    minutes: u32,
}

impl<'r, 'a> Tree<'r, 'a> {
    pub fn new(rules: &'r Rules<'a>) -> Tree<'r, 'a> {
        Tree {
            nodes: Vec::new(),
            seeds: Vec::new(),
            places: Vec::new(),
            by_place: HashTable::new(),
            states: Runs::new(rules.machine.layout.words()),
            clocks: Runs::new(rules.clocks.len()),
            rules,
        }
    }

    /// A moment that was reached after so many minutes; its number, unless one is known that is as good.
    pub fn reach(&mut self, moment: &Moment, minutes: u32, from: u32, op: Op) -> Option<u32> {
        // Whoever idles must not be sent back to where the idling began.
        let idled = from != NONE && matches!(op, Op::Pass(_));
        let place = self.place(moment);
        let new = Compared { clocks: &moment.clocks, minutes };
        let last = self.places[place as usize].last;
        let mut at = last;
        while let Some(known) = self.nodes.get(at as usize) {
            if !known.beaten && self.beats(moment, self.compared(known), new, !idled) {
                return None;
            }
            at = known.other;
        }
        let mut at = last;
        while let Some(known) = self.nodes.get(at as usize) {
            let next = known.other;
            if !known.beaten && self.beats(moment, new, self.compared(known), true) {
                self.nodes[at as usize].beaten = true;
            }
            at = next;
        }
        let clocks = self.clocks.number(&moment.clocks);
        let at = self.nodes.len() as u32;
        self.nodes.push(Node { place, clocks, minutes, from, other: last, op, beaten: false });
        self.places[place as usize].last = at;
        Some(at)
    }

    /// A moment where a search begins.
    pub fn begin(&mut self, ops: Vec<Op>, moment: &Moment) -> Option<u32> {
        let at = self.reach(moment, 0, NONE, Op::Pass(0))?;
        self.seeds.push((at, ops));
        Some(at)
    }

    /// The number of the place of a moment, which may be new.
    fn place(&mut self, moment: &Moment) -> u32 {
        let hasher = FixedState::default();
        let state = self.states.number(&moment.state.words[..self.rules.machine.layout.words()]);
        let places = &self.places;
        let hash = hasher.hash_one((state, &moment.people));
        let same = |&at: &u32| {
            let known = &places[at as usize];
            known.state == state && known.people == moment.people
        };
        if let Some(&at) = self.by_place.find(hash, same) {
            return at;
        }
        let new = self.places.len() as u32;
        let hash_of = |&at: &u32| hasher.hash_one((places[at as usize].state, &places[at as usize].people));
        self.by_place.insert_unique(hash, new, hash_of);
        self.places.push(Place { state, people: moment.people, last: NONE });
        new
    }

    pub fn moment(&self, at: u32) -> Moment {
        let node = &self.nodes[at as usize];
        let place = &self.places[node.place as usize];
        let mut state = State::default();
        let words = self.states.get(place.state);
        state.words[..words.len()].copy_from_slice(words);
        Moment { state, people: place.people, clocks: self.clocks.get(node.clocks).into() }
    }

    /// Whether no other moment is as good.
    pub fn counts(&self, at: u32) -> bool {
        !self.nodes[at as usize].beaten
    }

    /// Bytes that are taken.
    pub fn bytes(&self) -> usize {
        let lists = self.nodes.len() * size_of::<Node>() + self.places.len() * size_of::<Place>();
        lists + self.by_place.allocation_size() + self.states.bytes() + self.clocks.bytes()
    }

    /// Everything that leads to a moment.
    pub fn way_to(&self, mut at: u32) -> Vec<Op> {
        let mut ops = Vec::new();
        while let Some(node) = self.nodes.get(at as usize).filter(|node| node.from != NONE) {
            ops.push(node.op);
            at = node.from;
        }
        let seed = self.seeds.iter().find(|(beginning, _)| *beginning == at);
        ops.extend(seed.iter().flat_map(|(_, seed)| seed.iter().rev()));
        ops.reverse();
        ops
    }

    fn compared(&self, node: &Node) -> Compared<'_> {
        Compared { clocks: self.clocks.get(node.clocks), minutes: node.minutes }
    }

    /// Whether one moment is at least as good as another of the same state with people in the same places as `here`: it
    /// comes no later, each wait is over no later, and what is known is known for exactly as long. Counted from the moment
    /// itself; for one person who is free by the clock on the wall too, since whoever is earlier can idle until the other
    /// moment.
    fn beats(&self, here: &Moment, one: Compared<'_>, other: Compared<'_>, by_the_wall: bool) -> bool {
        if one.minutes > other.minutes {
            return false;
        }
        let as_good = |ahead: u32| {
            let mut clocks = self.rules.clocks.iter().zip(one.clocks.iter().zip(other.clocks));
            clocks.all(|(clock, (&one, &other))| {
                let (left, others) = (u32::from(one), u32::from(other) + ahead);
                match clock {
                    Clock::Before { since, .. } if since.holds(&here.state) => left <= others,
                    Clock::Within { .. } if one != IDLE && other != IDLE => left <= others,
                    Clock::Fresh { .. } if one != 0 => left == others,
                    Clock::Before { .. } | Clock::Within { .. } | Clock::Fresh { .. } => one == other,
                }
            })
        };
        let may_idle = by_the_wall && self.rules.task.people == 1 && here.people.iter().any(Person::is_free);
        as_good(0) || may_idle && as_good(other.minutes - one.minutes)
    }
}
