//! Chance from a seed: the same numbers on every machine.

/// A stream of numbers (SplitMix64, Steele, Lea and Flood 2014; constants from memory).
pub struct Chance(u64);

impl Chance {
    /// The stream of a case.
    pub fn of(seed: u64, case: u64) -> Chance {
        let mut chance = Chance(seed ^ case.wrapping_mul(0x9e37_79b9_7f4a_7c15));
        chance.next();
        chance
    }

    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A number below `end`; 0 where there is none.
    pub fn below(&mut self, end: usize) -> usize {
        if end == 0 { 0 } else { (self.next() % end as u64) as usize }
    }

    /// Yes, once in so many times.
    pub fn once_in(&mut self, times: usize) -> bool {
        self.below(times) == 0
    }

    /// One of these.
    pub fn pick<'a, T>(&mut self, all: &'a [T]) -> &'a T {
        &all[self.below(all.len())]
    }
}
