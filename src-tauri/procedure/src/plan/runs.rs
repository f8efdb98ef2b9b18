//! Runs of equal length, each kept once and known by its number from then on: few states and few sets of clocks make many
//! moments.

use std::hash::{BuildHasher, Hash};

use foldhash::fast::FixedState;
use hashbrown::HashTable;

pub(super) struct Runs<W> {
    /// How long each is.
    length: usize,
    words: Vec<W>,
    table: HashTable<u32>,
}

impl<W: Copy + Eq + Hash> Runs<W> {
    pub fn new(length: usize) -> Runs<W> {
        Runs { length, words: Vec::new(), table: HashTable::new() }
    }

    /// The number of a run, which may be new.
    pub fn number(&mut self, run: &[W]) -> u32 {
        let hasher = FixedState::default();
        let (length, words) = (self.length, &self.words);
        let of = |at: u32| &words[at as usize * length..][..length];
        let hash = hasher.hash_one(run);
        if let Some(&at) = self.table.find(hash, |&at| of(at) == run) {
            return at;
        }
        let new = self.table.len() as u32;
        self.table.insert_unique(hash, new, |&at| hasher.hash_one(of(at)));
        self.words.extend_from_slice(run);
        new
    }

    pub fn get(&self, at: u32) -> &[W] {
        &self.words[at as usize * self.length..][..self.length]
    }

    pub fn bytes(&self) -> usize {
        self.words.len() * size_of::<W>() + self.table.allocation_size()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn equal_runs_have_one_number_and_come_back_as_they_were() {
        let mut runs = Runs::new(2);
        let numbers: Vec<u32> = [[1, 2], [3, 4], [1, 2], [2, 1]].iter().map(|run| runs.number(run)).collect();
        assert_eq!(numbers, [0, 1, 0, 2]);
        assert_eq!(runs.get(2), [2, 1]);
    }

    #[test]
    fn runs_of_nothing_are_all_the_same() {
        let mut runs: Runs<u16> = Runs::new(0);
        assert_eq!([runs.number(&[]), runs.number(&[])], [0, 0]);
        assert!(runs.get(0).is_empty());
    }
}
