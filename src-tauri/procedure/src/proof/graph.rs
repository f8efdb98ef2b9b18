//! Every state found and every step between them, packed.
//!
//! Collapse compression: a state is kept as the numbers of its two halves, since few halves make many states. It is
//! exact, and far smaller than
//! the state. A step is kept as what it means for the ends of the job and how far its target is away; which action it
//! was is worked out again where somebody asks.

use foldhash::fast::FixedState;
use hashbrown::HashTable;
use std::hash::{BuildHasher, Hasher};

use super::edges::{Edge, Edges};
use crate::machine::{Layout, State};

/// The most states a graph can number.
pub const MOST_STATES: usize = u32::MAX as usize - 1;

/// States by number, in the order they were found.
pub struct Graph {
    first: Collapsed,
    second: Collapsed,
    /// The numbers of both halves.
    pairs: Vec<(u32, u32)>,
    table: HashTable<u32>,
    hasher: FixedState,
    /// The first number of each layer: states whose shortest runs have as many actions.
    layers: Vec<u32>,
    edges: Edges,
    most_bytes: usize,
}

impl Graph {
    /// An empty graph for the states of this layout: what has been done is one half, the vehicle the other.
    pub fn new(layout: &Layout) -> Self {
        Graph {
            first: Collapsed::new(0, layout.work_words),
            second: Collapsed::new(layout.work_words, layout.words()),
            pairs: Vec::new(),
            table: HashTable::new(),
            hasher: FixedState::with_seed(0),
            layers: Vec::new(),
            edges: Edges::default(),
            most_bytes: 0,
        }
    }

    pub fn len(&self) -> usize {
        self.pairs.len()
    }

    /// Bytes taken, spare room included.
    pub fn bytes(&self) -> usize {
        let states = self.pairs.capacity() * 8 + table_bytes(&self.table) + self.layers.capacity() * 4;
        states + self.first.bytes() + self.second.bytes() + self.edges.bytes()
    }

    /// The most bytes taken at any time so far, as far as [`Graph::fits`] was asked.
    pub fn most_bytes(&self) -> usize {
        self.most_bytes.max(self.bytes())
    }

    /// Whether a few thousand more states fit into so many bytes, the growth of a full table included.
    pub fn fits(&mut self, memory: usize, more: usize) -> bool {
        let grows = |table: &HashTable<u32>| {
            if table.capacity() - table.len() < more {
                (table.capacity().max(more)) * 2 * 8 / 7 * 5
            } else {
                0
            }
        };
        let bytes = self.bytes();
        let grown = bytes + grows(&self.table) + grows(&self.first.table) + grows(&self.second.table);
        let fits = grown <= memory;
        self.most_bytes = self.most_bytes.max(if fits { grown } else { bytes });
        fits
    }

    /// Gives back what only finding states needs.
    pub fn end_search(&mut self) {
        self.most_bytes = self.most_bytes();
        self.table = HashTable::new();
        self.first.table = HashTable::new();
        self.second.table = HashTable::new();
    }

    /// The state with this number.
    pub fn state(&self, number: u32) -> State {
        let (first, second) = self.pairs[number as usize];
        let mut state = State::default();
        self.first.write(first, &mut state);
        self.second.write(second, &mut state);
        state
    }

    /// Says that the states from here on are a layer further away.
    pub fn next_layer(&mut self) {
        self.layers.push(self.len() as u32);
    }

    /// The number of the half of a state that says what the vehicle is like.
    pub fn vehicle(&self, number: u32) -> u32 {
        self.pairs[number as usize].1
    }

    /// The number of the half of a state that says what has been done.
    pub fn work(&self, number: u32) -> u32 {
        self.pairs[number as usize].0
    }

    /// The number of this work, which may be new.
    pub fn insert_work(&mut self, state: &State) -> u32 {
        self.first.insert(state, &self.hasher)
    }

    /// The steps of states, written in their order.
    pub fn edges(&self) -> &Edges {
        &self.edges
    }

    /// Says that the edges added from here on leave the next state.
    pub fn next_state(&mut self) {
        self.edges.next_state();
    }

    /// Adds an edge to the state last begun with [`Graph::next_state`].
    pub fn add_edge(&mut self, edge: Edge) {
        self.edges.add(edge);
    }

    /// Puts a state in, if it is new. Answers its number and whether it was new.
    pub fn insert(&mut self, state: &State) -> (u32, bool) {
        let pair = (self.first.insert(state, &self.hasher), self.second.insert(state, &self.hasher));
        self.insert_pair(pair, hash(&self.hasher, pair))
    }

    /// Which halves differ between two states.
    pub fn differs(&self, one: &State, other: &State) -> (bool, bool) {
        (self.first.differs(one, other), self.second.differs(one, other))
    }

    /// The numbers of the halves of a state that is reached from this one: what did not change is not looked up.
    pub fn pair_after(&mut self, from: u32, state: &State, differs: (bool, bool)) -> (u32, u32) {
        let (mut first, mut second) = self.pairs[from as usize];
        if differs.0 {
            first = self.first.insert(state, &self.hasher);
        }
        if differs.1 {
            second = self.second.insert(state, &self.hasher);
        }
        (first, second)
    }

    /// The number of a pair, if it is known, and its hash, for [`Graph::insert_pair`].
    pub fn look_up(&self, pair: (u32, u32)) -> (Option<u32>, u64) {
        let hash = hash(&self.hasher, pair);
        (self.number(pair, hash), hash)
    }

    fn number(&self, pair: (u32, u32), hash: u64) -> Option<u32> {
        self.table.find(hash, |&number| self.pairs[number as usize] == pair).copied()
    }

    /// Puts a pair in, if it is new; the hash is that of [`Graph::look_up`].
    pub fn insert_pair(&mut self, pair: (u32, u32), with: u64) -> (u32, bool) {
        if let Some(number) = self.number(pair, with) {
            return (number, false);
        }
        let number = self.pairs.len() as u32;
        let (pairs, hasher) = (&self.pairs, &self.hasher);
        self.table.insert_unique(with, number, |&number| hash(hasher, pairs[number as usize]));
        grow_gently(&mut self.pairs, 1);
        self.pairs.push(pair);
        (number, true)
    }

    /// The numbers from a start to this state: a shortest way, of several the one found first.
    pub fn path(&self, number: u32) -> Vec<u32> {
        let mut path = vec![number];
        let mut at = number;
        let mut layer = self.layers.partition_point(|&first| first <= number);
        while layer > 0 {
            let begin = if layer > 1 { self.layers[layer - 2] } else { 0 };
            let end = self.layers[layer - 1];
            let parent = self.edges.find(begin..end, |edge| edge.to == at);
            let Some(parent) = parent else { break };
            path.push(parent);
            at = parent;
            layer -= 1;
        }
        path.reverse();
        path
    }
}

fn hash(hasher: &FixedState, pair: (u32, u32)) -> u64 {
    hasher.hash_one(u64::from(pair.0) << 32 | u64::from(pair.1))
}

/// Different values of some words of the state, by number.
struct Collapsed {
    begin: usize,
    end: usize,
    keys: Vec<u64>,
    table: HashTable<u32>,
    /// The one asked for last: several ways that a step can turn out often differ in one half only.
    last: u32,
}

impl Collapsed {
    fn new(begin: usize, end: usize) -> Collapsed {
        Collapsed { begin, end, keys: Vec::new(), table: HashTable::new(), last: 0 }
    }

    fn bytes(&self) -> usize {
        self.keys.capacity() * 8 + table_bytes(&self.table)
    }

    fn differs(&self, one: &State, other: &State) -> bool {
        !same(&one.words[self.begin..self.end], &other.words[self.begin..self.end])
    }

    fn insert(&mut self, state: &State, hasher: &FixedState) -> u32 {
        let size = self.end - self.begin;
        let key = &state.words[self.begin..self.end];
        let keys = &self.keys;
        let of = |number: u32| &keys[number as usize * size..(number as usize + 1) * size];
        let hash = |key: &[u64]| {
            let mut hasher = hasher.build_hasher();
            key.iter().for_each(|word| hasher.write_u64(*word));
            hasher.finish()
        };
        if !keys.is_empty() && same(of(self.last), key) {
            return self.last;
        }
        let hashed = hash(key);
        if let Some(&number) = self.table.find(hashed, |&number| same(of(number), key)) {
            self.last = number;
            return number;
        }
        let number = self.table.len() as u32;
        self.last = number;
        self.table.insert_unique(hashed, number, |&number| hash(of(number)));
        grow_gently(&mut self.keys, size);
        self.keys.extend_from_slice(key);
        number
    }

    fn write(&self, number: u32, state: &mut State) {
        let size = self.end - self.begin;
        let key = &self.keys[number as usize * size..(number as usize + 1) * size];
        state.words[self.begin..self.end].copy_from_slice(key);
    }
}

/// Whether some words are the same. They are so few that looking at all is quicker than stopping at the first.
#[inline]
fn same(one: &[u64], other: &[u64]) -> bool {
    one.iter().zip(other).fold(0, |differs, (one, other)| differs | (one ^ other)) == 0
}

fn table_bytes(table: &HashTable<u32>) -> usize {
    // A number and a byte of its hash for each place, of which an eighth stays free.
    table.capacity() * 8 / 7 * 5
}

/// Grows by an eighth instead of doubling, so that the memory limit can be kept closely.
pub fn grow_gently<T>(list: &mut Vec<T>, more: usize) {
    if list.len() + more > list.capacity() {
        list.reserve_exact((list.len() / 8).max(1 << 14).max(more));
    }
}
