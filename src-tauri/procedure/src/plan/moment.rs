//! One moment of the work: what the rules know, where everybody is, and how far what takes time has come.

use super::MOST_PEOPLE;
use crate::machine::{SignIx, State, StepIx, VehicleActionIx};

/// A moment. How late it is does not belong to it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Moment {
    pub state: State,
    /// In an order of their own: people are interchangeable.
    pub people: [Person; MOST_PEOPLE],
    /// What is left of each clock of the rules, in minutes.
    pub clocks: Box<[u16]>,
}

/// One person.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub(super) struct Person {
    pub doing: Busy,
    /// Minutes until it is over.
    pub left: u16,
    /// Zone, or where the way leads; 0 for anywhere.
    pub at: u8,
    /// Walked here and has begun nothing since: walks no further.
    pub walked: bool,
}

/// What somebody is busy with.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub(super) enum Busy {
    Free,
    /// Free, and was so for a while in which nothing happened: begins only what is better begun late.
    Idling,
    Walking,
    /// In a step, with the hands.
    Working(StepIx),
    /// In a step whose wait runs, with free hands.
    Staying(StepIx),
    Moving(VehicleActionIx),
    /// There is no such person.
    Nobody,
}

impl Person {
    pub const NOBODY: Person = Person { doing: Busy::Nobody, left: 0, at: 0, walked: false };

    pub fn free(at: u8) -> Person {
        Person { doing: Busy::Free, left: 0, at, walked: false }
    }

    /// Minutes until it is over by itself; nothing for whoever is free or only stays.
    pub fn busy(&self) -> Option<u16> {
        matches!(self.doing, Busy::Walking | Busy::Working(_) | Busy::Moving(_)).then_some(self.left)
    }

    pub fn is_free(&self) -> bool {
        matches!(self.doing, Busy::Free | Busy::Idling)
    }

    pub fn is_nobody(&self) -> bool {
        self.doing == Busy::Nobody
    }
}

/// One of the people, by their place in a moment. Small: each moment that was found keeps what led to it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Who(u8);

impl Who {
    pub fn at(self) -> usize {
        usize::from(self.0)
    }

    /// There are at most [`MOST_PEOPLE`].
    pub fn of(place: usize) -> Who {
        Who(place as u8)
    }
}

/// What leads from one moment to the next. People are named by their place in the moment before.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Op {
    /// Minutes pass.
    Pass(u16),
    /// What a person is busy with is over.
    End(Who),
    Walk(Who, u8),
    Begin(Who, StepIx),
    Leave(Who, StepIx),
    Vehicle(Who, VehicleActionIx),
    Sign(SignIx),
    /// A voided step is corrected afterwards.
    Correct(StepIx),
}
