//! Compiled predicates: negations are pushed into the tests, so that only "and" and "or" are left, and the tests stand
//! in a row, each with where to go on when it holds and when it does not.

use super::{Context, Field, State, StepSet, VehicleActionIx};

/// A predicate as it is written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Tree {
    /// Always or never.
    Const(bool),
    /// One test.
    Test(Test),
    /// Every one of them.
    All(Vec<Tree>),
    /// At least one of them.
    Any(Vec<Tree>),
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
    /// This vehicle action is about to be made (or is not).
    Moving(VehicleActionIx, bool),
    /// This vehicle action was just made (or was not).
    Moved(VehicleActionIx, bool),
    /// The job is about to be finished or stopped (or is not).
    Leaving(bool),
}

/// A predicate over a state, ready to be judged.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pred {
    tree: Tree,
    tests: Box<[Placed]>,
    /// Tests that read more than one field of the state.
    others: Box<[Test]>,
}

/// A test and where to go on after it, kept small: searching spends much of its time here.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Placed {
    /// Of a test of one field, that and its values as bits.
    field: Field,
    values: u64,
    /// The place of another test among the others, else [`NO_OTHER`].
    other: u16,
    yes: u16,
    no: u16,
}

const NO_OTHER: u16 = u16::MAX;

/// Where a predicate ends: it holds, or it does not. Loading bounds the parts of a predicate far below.
const HOLDS: u16 = u16::MAX;
const FAILS: u16 = u16::MAX - 1;

impl From<Tree> for Pred {
    fn from(tree: Tree) -> Pred {
        let tree = folded(tree);
        // Written from the last test to the first, since a test must know where those after it stand.
        let (mut tests, mut others) = (Vec::new(), Vec::new());
        let start = place(&tree, HOLDS, FAILS, &mut tests, &mut others);
        let count = tests.len() as u16;
        let turned = |at: u16| if at >= FAILS { at } else { count - 1 - at };
        tests.iter_mut().for_each(|placed| {
            placed.yes = turned(placed.yes);
            placed.no = turned(placed.no);
        });
        tests.reverse();
        debug_assert!(start >= FAILS || turned(start) == 0);
        // What is decided without a test is one test that is always true.
        if start >= FAILS {
            let field = Field { word: 0, shift: 0, mask: 0 };
            tests = vec![Placed { field, values: 1, other: NO_OTHER, yes: start, no: start }];
        }
        Pred { tree, tests: tests.into_boxed_slice(), others: others.into_boxed_slice() }
    }
}

/// The same without constants within: one that decides a part would leave tests that nothing leads to, and judging
/// begins at the first test.
fn folded(tree: Tree) -> Tree {
    let (parts, all) = match tree {
        Tree::All(parts) => (parts, true),
        Tree::Any(parts) => (parts, false),
        other => return other,
    };
    let mut left = Vec::new();
    for part in parts.into_iter().map(folded) {
        match part {
            Tree::Const(value) if value == all => {}
            Tree::Const(value) => return Tree::Const(value),
            other => left.push(other),
        }
    }
    match left.len() {
        0 => Tree::Const(all),
        1 => left.remove(0),
        _ if all => Tree::All(left),
        _ => Tree::Any(left),
    }
}

/// Puts the tests of a part before those that are placed; answers where the part begins.
fn place(part: &Tree, yes: u16, no: u16, tests: &mut Vec<Placed>, others: &mut Vec<Test>) -> u16 {
    match part {
        Tree::Const(true) => yes,
        Tree::Const(false) => no,
        Tree::Test(test) => {
            let (field, values, other) = match test {
                Test::In { field, values } => (*field, *values, NO_OTHER),
                _ => (Field { word: 0, shift: 0, mask: 0 }, 0, others.len() as u16),
            };
            if other != NO_OTHER {
                others.push(test.clone());
            }
            tests.push(Placed { field, values, other, yes, no });
            tests.len() as u16 - 1
        }
        Tree::All(parts) => parts.iter().rev().fold(yes, |next, part| place(part, next, no, tests, others)),
        Tree::Any(parts) => parts.iter().rev().fold(no, |next, part| place(part, yes, next, tests, others)),
    }
}

impl Pred {
    /// The predicate as a tree, without constants within.
    #[must_use]
    pub fn tree(&self) -> &Tree {
        &self.tree
    }

    /// Whether it holds, where nothing is being done.
    #[inline]
    #[must_use]
    pub fn holds(&self, state: &State) -> bool {
        self.holds_in(state, &Context::NOTHING)
    }

    /// Whether it holds while something is being done.
    #[inline]
    #[must_use]
    pub fn holds_in(&self, state: &State, context: &Context<'_>) -> bool {
        let mut at = 0;
        while let Some(placed) = self.tests.get(usize::from(at)) {
            let holds = if placed.other == NO_OTHER {
                placed.values.wrapping_shr(placed.field.get(state) as u32) & 1 == 1
            } else {
                self.others.get(usize::from(placed.other)).is_some_and(|test| test.holds(state, context))
            };
            at = if holds { placed.yes } else { placed.no };
        }
        at == HOLDS
    }
}

impl Test {
    #[inline]
    fn holds(&self, state: &State, context: &Context<'_>) -> bool {
        match self {
            Test::In { field, values } => values.wrapping_shr(field.get(state) as u32) & 1 == 1,
            Test::Doing(steps, wanted) => context.someone_in(state, steps) == *wanted,
            Test::Moving(wanted_action, wanted) => (context.moving == Some(*wanted_action)) == *wanted,
            Test::Moved(wanted_action, wanted) => (context.moved == Some(*wanted_action)) == *wanted,
            Test::Leaving(wanted) => context.leaving == *wanted,
        }
    }
}
