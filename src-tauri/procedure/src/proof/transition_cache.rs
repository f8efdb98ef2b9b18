//! What an action did, kept for the many states where it does the same: those with the same vehicle and the same of the
//! work that it reads.

use std::collections::HashMap;

use foldhash::fast::FixedState;

use super::actions::Actions;
use super::reads::{work_read, work_read_in};
use crate::machine::{DangerSet, Field, Machine, State, StepIx, WORK_WORDS};

/// What an action does to a state.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Transition {
    /// The number of the vehicle it leads to.
    pub vehicle: u32,
    /// What it does to the work.
    pub work: Change,
    /// Whether some danger holds there.
    pub is_dangerous: bool,
    /// Whether it changes what has to be looked at again after other work.
    pub is_watched: bool,
}

/// What an action does to the work, by the number of the change.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Change(u16);

impl Change {
    /// It changes nothing of it.
    const NONE: Change = Change(0);
}

/// A change of the work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
enum Words {
    /// These bits are flipped.
    Flip([u64; WORK_WORDS]),
    /// Whatever it was, it is this now.
    Become([u64; WORK_WORDS]),
}

/// What a transition hangs on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Key {
    work: u64,
    dangers: Dangers,
    vehicle: u32,
    action: u16,
}

/// The dangers that hold in a state, by a number: as a set they would make a key twice as large. None have the number 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Dangers(u16);

impl Key {
    fn hash(self) -> u64 {
        mix(self.vehicle, self.action)
            ^ (self.work ^ u64::from(self.dangers.0).rotate_left(48)).wrapping_mul(0xC2B2_AE3D_27D4_EB4F)
    }
}

/// A key and its transition; nothing where the action is not allowed. Two stand in a line of the processor's memory.
#[derive(Debug, Clone, Copy)]
#[repr(align(32))]
struct Kept {
    key: Key,
    transition: Option<Transition>,
}

impl Kept {
    /// Of a vehicle that there is not.
    const NOTHING: Kept =
        Kept { key: Key { work: 0, dangers: Dangers(0), vehicle: u32::MAX, action: 0 }, transition: None };
}

/// Places for transitions at the beginning, and at most: some 11 MB.
const LEAST_KEPT: usize = 1 << 12;
const MOST_KEPT: usize = 1 << 18;

/// Transitions; a newer one takes the place of an older.
pub struct TransitionCache {
    /// For each action the fields of the work it reads, if it is kept at all.
    reads: Vec<Option<Vec<Field>>>,
    /// For each step the fields that are read while somebody is in it.
    reads_in: Vec<Vec<Field>>,
    kept: Vec<Kept>,
    /// For the number of a work and a change the number of the work after it.
    works: Vec<(u32, Change, u32)>,
    changes: Vec<Words>,
    numbers: HashMap<Words, Change, FixedState>,
    /// For each action the change it made last: most make always the same.
    last: Vec<Change>,
    dangers: HashMap<DangerSet, Dangers, FixedState>,
}

impl TransitionCache {
    /// Nothing kept yet.
    pub fn new(machine: &Machine, actions: &Actions) -> TransitionCache {
        let steps = (0..machine.steps.len()).map(StepIx::of);
        let reads_in: Vec<_> = steps.map(|step| work_read_in(machine, step)).collect();
        let most = reads_in.iter().map(|fields| width(fields)).max().unwrap_or_default();
        let fits = |fields: &Vec<Field>| width(fields) + most <= u64::BITS;
        let mut cache = TransitionCache {
            reads: actions.iter().map(|action| work_read(machine, action).filter(fits)).collect(),
            reads_in,
            kept: Vec::new(),
            works: Vec::new(),
            changes: Vec::new(),
            numbers: HashMap::default(),
            last: vec![Change::NONE; actions.len()],
            dangers: HashMap::from_iter([(DangerSet::NONE, Dangers(0))]),
        };
        cache.number(Words::Flip([0; WORK_WORDS]));
        cache.make_room(LEAST_KEPT);
        cache
    }

    /// Makes room for the transitions in so many states. What was kept is lost where it grows.
    pub fn make_room(&mut self, states: usize) {
        if states > self.kept.len() && self.kept.len() < MOST_KEPT {
            let room = states.next_power_of_two().clamp(LEAST_KEPT, MOST_KEPT);
            self.kept = vec![Kept::NOTHING; room];
            self.works = vec![(u32::MAX, Change::NONE, 0); room];
        }
    }

    /// What the transition of an action hangs on, if it is kept: for a state in which nothing follows and nothing lapses, and
    /// nobody or one person is in a step.
    pub fn key(
        &self,
        action: u16,
        vehicle: u32,
        dangers: Dangers,
        state: &State,
        begun: Option<StepIx>,
    ) -> Option<Key> {
        let fields = self.reads[usize::from(action)].as_ref()?;
        let fields_in = begun.map_or(&[][..], |step| &self.reads_in[step.at()]);
        let add = |bits, field: &Field| bits << field.width() | field.get(state);
        // Who is in a step is among the last, which are the same for all states: it says which come first.
        let work = fields.iter().fold(fields_in.iter().fold(0, add), add);
        Some(Key { work, dangers, vehicle, action })
    }

    /// The number of the dangers that hold before an action; nothing where there are too many different sets of them.
    pub fn number_dangers(&mut self, dangers: DangerSet) -> Option<Dangers> {
        if dangers.is_empty() {
            return Some(Dangers(0));
        }
        if let Some(&known) = self.dangers.get(&dangers) {
            return Some(known);
        }
        let number = u16::try_from(self.dangers.len()).ok().map(Dangers)?;
        self.dangers.insert(dangers, number);
        Some(number)
    }

    /// The transition, if it is known: nothing in it where the action is not allowed.
    pub fn find(&self, key: Key) -> Option<Option<Transition>> {
        let kept = &self.kept[place(key.hash(), self.kept.len())];
        (kept.key == key).then_some(kept.transition)
    }

    /// Keeps a transition, or that the action is not allowed.
    pub fn keep(&mut self, key: Key, transition: Option<Transition>) {
        let at = place(key.hash(), self.kept.len());
        self.kept[at] = Kept { key, transition };
    }

    /// Fetches what may be kept for a key without waiting for it, so that it is near when it is asked for.
    pub fn fetch(&self, key: Key) -> bool {
        self.kept[place(key.hash(), self.kept.len())].key.vehicle != u32::MAX
    }

    /// What changes the work of one state to that of the other, whatever the rest of it is.
    pub fn change(&mut self, machine: &Machine, action: u16, one: &State, other: &State) -> Option<Change> {
        let mut words = [0; WORK_WORDS];
        let fixed = machine.is_stopped(other);
        for (at, word) in words.iter_mut().enumerate().take(machine.layout.work_words) {
            *word = if fixed { other.words[at] } else { one.words[at] ^ other.words[at] };
        }
        let change = if fixed { Words::Become(words) } else { Words::Flip(words) };
        let last = self.last[usize::from(action)];
        if self.changes[usize::from(last.0)] == change {
            return Some(last);
        }
        let number = self.number(change)?;
        self.last[usize::from(action)] = number;
        Some(number)
    }

    fn number(&mut self, change: Words) -> Option<Change> {
        if let Some(&known) = self.numbers.get(&change) {
            return Some(known);
        }
        let number = u16::try_from(self.changes.len()).ok().map(Change)?;
        self.changes.push(change);
        self.numbers.insert(change, number);
        Some(number)
    }

    /// The number of the work after a change, if it is known.
    pub fn work_after(&self, work: u32, change: Change) -> Option<u32> {
        if change == Change::NONE {
            return Some(work);
        }
        let (was, by, is) = self.works[place(mix(work, change.0), self.works.len())];
        (was == work && by == change).then_some(is)
    }

    /// Keeps the number of the work after a change.
    pub fn keep_work(&mut self, was: u32, by: Change, is: u32) {
        let at = place(mix(was, by.0), self.works.len());
        self.works[at] = (was, by, is);
    }

    /// A state with its work changed.
    pub fn changed(&self, state: &State, change: Change) -> State {
        match self.changes[usize::from(change.0)] {
            Words::Flip(bits) => {
                let mut state = *state;
                state.words.iter_mut().zip(bits).for_each(|(word, bits)| *word ^= bits);
                state
            }
            Words::Become(words) => {
                let mut state = State::default();
                state.words[..WORK_WORDS].copy_from_slice(&words);
                state
            }
        }
    }
}

fn mix(number: u32, of: u16) -> u64 {
    (u64::from(number) << 16 | u64::from(of)).wrapping_mul(0x9E37_79B9_7F4A_7C15)
}

/// A place in a list whose length is a power of two.
fn place(hash: u64, length: usize) -> usize {
    (hash >> 32) as usize & (length - 1)
}

fn width(fields: &[Field]) -> u32 {
    fields.iter().map(|field| field.width()).sum()
}
