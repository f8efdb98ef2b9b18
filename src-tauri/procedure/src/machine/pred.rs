//! Compiled predicates: negations are pushed into the tests, so that only "and" and "or" are left.

use super::{Context, Field, MoveIx, State, StepIx};

/// A predicate over a state.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Pred {
    /// Always or never.
    Const(bool),
    /// One test.
    Test(Test),
    /// Every one of them.
    All(Vec<Pred>),
    /// At least one of them.
    Any(Vec<Pred>),
}

/// One test of a state.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Test {
    /// The field's value is one of these, as bits.
    In {
        /// Where the value stands.
        field: Field,
        /// Allowed values as bits: bit v for value v.
        values: u64,
    },
    /// Somebody is in one of these steps (or, false, nobody is).
    Doing(StepSet, bool),
    /// This move is about to be made (or is not).
    Moving(MoveIx, bool),
    /// This move was just made (or was not).
    Moved(MoveIx, bool),
}

/// A set of steps.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct StepSet([u64; 4]);

impl StepSet {
    /// The most steps a set can hold.
    pub const MOST: usize = 256;

    /// Puts a step in.
    pub fn insert(&mut self, step: StepIx) {
        if let Some(word) = self.0.get_mut(step.at() / 64) {
            *word |= 1 << (step.at() % 64);
        }
    }

    /// Whether the step is in it.
    #[inline]
    #[must_use]
    pub fn contains(&self, step: StepIx) -> bool {
        self.0.get(step.at() / 64).is_some_and(|word| word >> (step.at() % 64) & 1 == 1)
    }

    /// Whether no step is in it.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0 == [0; 4]
    }
}

impl Pred {
    /// Whether it holds, where nothing is being done.
    #[inline]
    #[must_use]
    pub fn holds(&self, state: &State) -> bool {
        self.holds_in(state, &Context::NOTHING)
    }

    /// Whether it holds while something is being done.
    #[must_use]
    pub fn holds_in(&self, state: &State, context: &Context<'_>) -> bool {
        match self {
            Pred::Const(value) => *value,
            Pred::Test(test) => test.holds(state, context),
            Pred::All(parts) => parts.iter().all(|part| part.holds_in(state, context)),
            Pred::Any(parts) => parts.iter().any(|part| part.holds_in(state, context)),
        }
    }
}

impl Test {
    #[inline]
    fn holds(&self, state: &State, context: &Context<'_>) -> bool {
        match self {
            Test::In { field, values } => values >> field.get(state) & 1 == 1,
            Test::Doing(steps, wanted) => context.someone_in(state, steps) == *wanted,
            Test::Moving(wanted_move, wanted) => (context.moving == Some(*wanted_move)) == *wanted,
            Test::Moved(wanted_move, wanted) => (context.moved == Some(*wanted_move)) == *wanted,
        }
    }
}
