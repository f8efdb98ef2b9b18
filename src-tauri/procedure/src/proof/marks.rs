//! One bit for each state.

/// A set of states by number.
#[derive(Debug, Clone, Default)]
pub struct Marks {
    bits: Vec<u64>,
}

impl Marks {
    /// No mark for so many states.
    pub fn new(states: usize) -> Self {
        Marks { bits: vec![0; states.div_ceil(64)] }
    }

    pub fn has(&self, number: u32) -> bool {
        self.bits.get(number as usize / 64).is_some_and(|word| word >> (number % 64) & 1 == 1)
    }

    pub fn set(&mut self, number: u32) {
        let word = number as usize / 64;
        if word >= self.bits.len() {
            self.bits.resize(word + 1, 0);
        }
        self.bits[word] |= 1 << (number % 64);
    }

    pub fn clear(&mut self, number: u32) {
        if let Some(word) = self.bits.get_mut(number as usize / 64) {
            *word &= !(1 << (number % 64));
        }
    }

    /// How many states are marked.
    pub fn count(&self) -> usize {
        self.bits.iter().map(|word| word.count_ones() as usize).sum()
    }

    /// Whether one of the 16 states from this one on is marked; the number is a multiple of 16.
    pub fn has_in_block(&self, first: u32) -> bool {
        self.bits.get(first as usize / 64).is_some_and(|word| word >> (first % 64) & 0xffff != 0)
    }
}
