//! Every state found and every step between them, packed, with the way back to the start.

use foldhash::fast::FixedState;
use hashbrown::HashTable;
use std::hash::BuildHasher;

use crate::machine::State;

/// The state nothing leads to: a start.
const START: u32 = u32::MAX;

/// States by number, in the order they were found.
pub struct Graph {
    words: usize,
    keys: Vec<u64>,
    parents: Vec<u32>,
    table: HashTable<u32>,
    hasher: FixedState,
    /// Where the edges of each state begin, for states that were looked at.
    first_edge: Vec<u32>,
    actions: Vec<u16>,
    targets: Vec<u32>,
}

impl Graph {
    /// An empty graph for states that use this many words.
    pub fn new(words: usize) -> Self {
        let hasher = FixedState::with_seed(0);
        Graph {
            words,
            keys: Vec::new(),
            parents: Vec::new(),
            table: HashTable::new(),
            hasher,
            first_edge: Vec::new(),
            actions: Vec::new(),
            targets: Vec::new(),
        }
    }

    pub fn len(&self) -> usize {
        self.parents.len()
    }

    /// Bytes taken, spare room included.
    pub fn bytes(&self) -> usize {
        let states =
            self.keys.capacity() * 8 + self.parents.capacity() * 4 + self.table.capacity() * 8 / 7 * 5;
        states + self.first_edge.capacity() * 4 + self.actions.capacity() * 2 + self.targets.capacity() * 4
    }

    fn key(&self, number: u32) -> &[u64] {
        let begin = number as usize * self.words;
        &self.keys[begin..begin + self.words]
    }

    /// The state with this number.
    pub fn state(&self, number: u32) -> State {
        let mut state = State::default();
        state.words[..self.words].copy_from_slice(self.key(number));
        state
    }

    /// Says that the edges added from here on leave the next state.
    pub fn next_state(&mut self) {
        grow_gently(&mut self.first_edge, 1);
        self.first_edge.push(self.targets.len() as u32);
    }

    /// Adds an edge to the state last begun with [`Graph::next_state`].
    pub fn add_edge(&mut self, action: u16, target: u32) {
        grow_gently(&mut self.actions, 1);
        self.actions.push(action);
        grow_gently(&mut self.targets, 1);
        self.targets.push(target);
    }

    /// The steps that leave a state: the action's number, and the state it leads to.
    pub fn edges(&self, number: u32) -> impl Iterator<Item = (u16, u32)> {
        let begin = self.first_edge[number as usize] as usize;
        let end = self.first_edge.get(number as usize + 1).map_or(self.targets.len(), |&end| end as usize);
        self.actions[begin..end].iter().copied().zip(self.targets[begin..end].iter().copied())
    }

    /// Puts a state in, if it is new. Answers its number and whether it was new.
    pub fn insert(&mut self, state: &State, parent: Option<u32>) -> (u32, bool) {
        let key = &state.words[..self.words];
        let hash = self.hasher.hash_one(key);
        let words = self.words;
        let keys = &self.keys;
        let of = |number: u32| &keys[number as usize * words..(number as usize + 1) * words];
        if let Some(&number) = self.table.find(hash, |&number| of(number) == key) {
            return (number, false);
        }
        // 4,294,967,294 states would need over 100 GB; the memory limit stops the search long before.
        let number = self.parents.len() as u32;
        let hasher = &self.hasher;
        self.table.insert_unique(hash, number, |&number| hasher.hash_one(of(number)));
        grow_gently(&mut self.keys, words);
        self.keys.extend_from_slice(key);
        grow_gently(&mut self.parents, 1);
        self.parents.push(parent.unwrap_or(START));
        (number, true)
    }

    /// The numbers from a start to this state.
    pub fn path(&self, number: u32) -> Vec<u32> {
        let mut path = vec![number];
        let mut at = number;
        while self.parents[at as usize] != START {
            at = self.parents[at as usize];
            path.push(at);
        }
        path.reverse();
        path
    }
}

/// Grows by an eighth instead of doubling, so that the memory limit can be kept closely.
fn grow_gently<T>(list: &mut Vec<T>, more: usize) {
    if list.len() + more > list.capacity() {
        list.reserve_exact((list.len() / 8).max(1 << 16).max(more));
    }
}

/// One bit for each state.
pub struct Marks {
    bits: Vec<u64>,
}

impl Marks {
    pub fn new(states: usize) -> Self {
        Marks { bits: vec![0; states.div_ceil(64)] }
    }

    pub fn has(&self, number: u32) -> bool {
        self.bits[number as usize / 64] >> (number % 64) & 1 == 1
    }

    pub fn set(&mut self, number: u32) {
        self.bits[number as usize / 64] |= 1 << (number % 64);
    }
}
