//! The state: exact, packed into a few words, never hashed down.

use super::{Assign, Before, DangerSet, Machine, StepIx, StepSet, UNKNOWN, VarIx, VariableKind, work};

/// Words in a state, a power of two: as many steps and dangers as there may be take three quarters of them. Loading refuses a
/// checklist that needs more. Only those that a checklist uses are kept by a search.
pub const WORDS: usize = 16;

/// Words in which work fields can stand: they come first, two bits a step.
pub const STEP_WORDS: usize = StepSet::MOST * 2 / 64;

/// Words of what has been done at most: work fields, then who is in which step and how the job is over.
pub const WORK_WORDS: usize = STEP_WORDS + 1;

/// Everything the rules know about a job at one moment.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Default)]
pub struct State {
    pub(crate) words: [u64; WORDS],
}

/// A run of bits in a state that never crosses a word. Its word is below [`WORDS`], a power of two, and its shift below
/// 64: searching a checklist reads fields hundreds of millions of times, so neither is asked again there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Field {
    pub(crate) word: u8,
    pub(crate) shift: u8,
    pub(crate) mask: u16,
}

impl Field {
    /// The bits of its word that are its own.
    #[inline]
    pub(crate) fn bits(self) -> u64 {
        u64::from(self.mask).wrapping_shl(u32::from(self.shift))
    }

    /// How many bits it has.
    #[inline]
    pub(crate) fn width(self) -> u32 {
        self.mask.count_ones()
    }

    /// Its value.
    #[inline]
    #[must_use]
    pub fn get(self, state: &State) -> u64 {
        state.words[usize::from(self.word) % WORDS].wrapping_shr(u32::from(self.shift)) & u64::from(self.mask)
    }

    /// Sets its value; bits that do not fit are cut off.
    #[inline]
    pub fn set(self, state: &mut State, value: u64) {
        let word = &mut state.words[usize::from(self.word) % WORDS];
        let value = (value & u64::from(self.mask)).wrapping_shl(u32::from(self.shift));
        *word = (*word & !self.bits()) | value;
    }
}

/// Single bits of a state that stand one after the other, from one word into the next: one for each danger.
#[derive(Debug, Clone, Copy, Default)]
pub struct Bits {
    from: usize,
    count: usize,
}

impl Bits {
    /// Each word of a set with the place of its first bit, and its bits that are used.
    fn words(self) -> impl Iterator<Item = (usize, usize, u64)> {
        let used = move |left: usize| if left < 64 { (1 << left) - 1 } else { u64::MAX };
        (0..self.count.div_ceil(64)).map(move |at| (at, self.from + at * 64, used(self.count - at * 64)))
    }

    /// The dangers whose bits are set.
    #[must_use]
    pub fn get(self, state: &State) -> DangerSet {
        let mut dangers = DangerSet::NONE;
        for (at, from, used) in self.words() {
            let (word, shift) = (from / 64, from % 64);
            let high =
                if shift == 0 { 0 } else { state.words.get(word + 1).map_or(0, |next| next << (64 - shift)) };
            dangers.0[at] = (state.words[word] >> shift | high) & used;
        }
        dangers
    }

    /// Sets the bits of these dangers and clears the others.
    pub fn set(self, state: &mut State, dangers: DangerSet) {
        for (at, from, used) in self.words() {
            let (word, shift, bits) = (from / 64, from % 64, dangers.0[at] & used);
            state.words[word] = state.words[word] & !(used << shift) | bits << shift;
            if shift > 0
                && let Some(next) = state.words.get_mut(word + 1)
            {
                *next = *next & !(used >> (64 - shift)) | bits >> (64 - shift);
            }
        }
    }
}

/// Hands out fields and remembers those that belong to no rule.
#[derive(Debug, Clone, Default)]
pub struct Layout {
    used: u32,
    /// Words of what has been done: work, who is begun, whether the job is over. What the vehicle is like and what
    /// is known of it stands in the words after.
    pub(crate) work_words: usize,
    /// Who is in which step: 0 for nobody, else the step's index and one.
    pub(crate) begun: Vec<Field>,
    /// Whether and how the job is over.
    pub(crate) over: Option<Field>,
    /// One bit for the proof: a void has happened in this run.
    pub(crate) voided_once: Option<Field>,
    /// One bit for the proof: an observation has happened in this run.
    pub(crate) observed_once: Option<Field>,
    /// One bit that the proof never sets: a piece is off that the checklist does not know.
    pub(crate) piece_off: Option<Field>,
    /// A bit a danger for the proof: it holds since the observation and is excused.
    pub(crate) excused: Bits,
    /// Bits of conditions: what hands and physics change.
    pub(crate) matter: [u64; WORDS],
    /// Bits that tell a lapsed sign-off from one never given; rules do not read them.
    pub(crate) lapsed_bits: [u64; WORDS],
}

impl Layout {
    /// Room for values from 0 to `highest`, or nothing when the state is full.
    pub(crate) fn take(&mut self, highest: u64) -> Option<Field> {
        let bits = (u64::BITS - highest.leading_zeros()).max(1);
        if bits > u16::BITS {
            return None;
        }
        if self.used % 64 + bits > 64 {
            self.used = self.used.next_multiple_of(64);
        }
        if self.used + bits > WORDS as u32 * 64 {
            return None;
        }
        let word = u8::try_from(self.used / 64).ok()?;
        let shift = u8::try_from(self.used % 64).ok()?;
        self.used += bits;
        Some(Field { word, shift, mask: u16::MAX >> (u16::BITS - bits) })
    }

    /// Room for so many bits that stand one after the other, or nothing when the state is full.
    pub(crate) fn take_bits(&mut self, count: usize) -> Option<Bits> {
        let from = self.used as usize;
        if count > DangerSet::MOST || from + count > WORDS * 64 {
            return None;
        }
        self.used += count as u32;
        Some(Bits { from, count })
    }

    /// Says that what has been done has its room; what comes after begins with a word of its own.
    pub(crate) fn end_work(&mut self) {
        self.used = self.used.next_multiple_of(64);
        self.work_words = self.words();
    }

    /// Words that are in use.
    #[must_use]
    pub fn words(&self) -> usize {
        (self.used as usize).div_ceil(64)
    }

    /// Bits that are in use.
    #[must_use]
    pub fn bits(&self) -> u32 {
        self.used
    }
}

impl State {
    /// Adds the bits of a field, where a state stands for some bits of it.
    pub(crate) fn add(&mut self, field: Field) {
        self.words[usize::from(field.word) % WORDS] |= field.bits();
    }

    /// The places of the bits that are set.
    pub(crate) fn places(&self) -> impl Iterator<Item = usize> + use<> {
        let words = self.words.into_iter().enumerate();
        words.flat_map(|(word, bits)| {
            (0..64).filter(move |bit| bits >> bit & 1 == 1).map(move |bit| word * 64 + bit)
        })
    }
}

impl Assign {
    /// Assigns every field at once.
    #[inline]
    pub(crate) fn apply(&self, state: &mut State) {
        for &(field, value) in &self.edits {
            field.set(state, value);
        }
    }
}

impl Machine {
    /// The value of a condition, fact or gate: its place in the declared values; for a gate 0 is `unknown`.
    #[must_use]
    pub fn value(&self, state: &State, var: VarIx) -> u8 {
        u8::try_from(self.vars[var.at()].field.get(state)).unwrap_or(u8::MAX)
    }

    /// Pieces of an item that are off the vehicle.
    #[must_use]
    pub fn empty(&self, state: &State, item: super::ItemIx) -> u8 {
        u8::try_from(self.items[item.at()].field.get(state)).unwrap_or(u8::MAX)
    }

    /// Who is in which step.
    pub fn begun<'a>(&'a self, state: &'a State) -> impl Iterator<Item = StepIx> + 'a {
        self.layout.begun.iter().filter_map(|field| match field.get(state) {
            0 => None,
            step => u16::try_from(step - 1).ok().map(StepIx),
        })
    }

    /// How many people can be in steps at a time.
    #[must_use]
    pub fn people(&self) -> usize {
        self.layout.begun.len()
    }

    /// Whether somebody is in the step.
    #[inline]
    #[must_use]
    pub fn is_begun(&self, state: &State, step: StepIx) -> bool {
        self.layout.begun.iter().any(|field| field.get(state) == u64::from(step.0) + 1)
    }

    /// Whether the step is worked.
    #[must_use]
    pub fn is_worked(&self, state: &State, step: StepIx) -> bool {
        self.steps[step.at()].work.get(state) == work::WORKED
    }

    pub(crate) fn over(&self, state: &State) -> u64 {
        self.layout.over.map_or(0, |field| field.get(state))
    }

    pub(crate) fn set_over(&self, state: &mut State, value: u64) {
        if let Some(field) = self.layout.over {
            field.set(state, value);
        }
    }

    /// The start for a vehicle that comes in with these conditions and a sheet with these facts. What is not
    /// named has its first value. Nothing, when `start_when` does not allow it.
    #[must_use]
    pub fn start(&self, given: &[(VarIx, u8)]) -> Option<State> {
        let mut state = State::default();
        for (var, values) in &self.starts {
            let value = given.iter().find(|(name, _)| name == var).map_or(values[0], |&(_, value)| value);
            if !values.contains(&value) {
                return None;
            }
            self.vars[var.at()].field.set(&mut state, u64::from(value));
        }
        for gate in self.vars.iter().filter(|var| var.kind == VariableKind::Gate) {
            gate.field.set(&mut state, u64::from(UNKNOWN));
        }
        self.settle(&Before::unknown(&State::default()), &mut state, &mut |_, _| {});
        self.start_when.holds(&state).then_some(state)
    }

    /// Every start that `start_when` allows: the product of what conditions and facts can be at intake.
    #[must_use]
    pub fn all_starts(&self) -> Vec<State> {
        let mut given: Vec<Vec<(VarIx, u8)>> = vec![Vec::new()];
        for (var, values) in &self.starts {
            given = given
                .into_iter()
                .flat_map(|so_far| {
                    values.iter().map(move |&value| {
                        let mut more = so_far.clone();
                        more.push((*var, value));
                        more
                    })
                })
                .collect();
        }
        given.iter().filter_map(|given| self.start(given)).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::machine::DangerIx;

    #[test]
    fn bits_of_dangers_come_back_wherever_they_stand_and_touch_no_others() {
        for (from, count) in [(0, 1), (5, 63), (63, 2), (64, 64), (767, 256), (768, 256), (1000, 24)] {
            let bits = Bits { from, count };
            let dangers: DangerSet = (0..count).step_by(3).map(DangerIx::of).collect();
            for other in [0, u64::MAX] {
                let mut state = State { words: [other; WORDS] };
                bits.set(&mut state, dangers);
                assert_eq!(bits.get(&state), dangers, "{count} from {from}");
                bits.set(&mut state, DangerSet::NONE);
                let cleared = (from..from + count).all(|bit| state.words[bit / 64] >> (bit % 64) & 1 == 0);
                let kept = state.places().filter(|bit| !(from..from + count).contains(bit)).count();
                assert!(cleared && bits.get(&state).is_empty());
                assert_eq!(kept, if other == 0 { 0 } else { WORDS * 64 - count });
            }
        }
    }
}
