//! Dangers: judged apart from [`Machine::step`], by the proof at every moment and by the live job after it.

use super::{Action, DangerIx, Field, Machine, MoveIx, Pred, State, StepIx, StepSet};

/// A compiled danger.
#[derive(Debug, Clone)]
pub struct DangerRule {
    /// When it holds. What is unknown counts as danger.
    pub when: Pred,
    /// It reads what is being done, and is judged only when an action begins work or changes a condition.
    pub doing: bool,
}

/// What is being done at the moment a predicate is judged.
#[derive(Debug, Clone, Copy)]
pub struct Context<'a> {
    /// Fields that say who is in which step; empty where nothing is being done.
    pub(crate) begun: &'a [Field],
    /// The move about to be made.
    pub(crate) moving: Option<MoveIx>,
    /// The move just made.
    pub(crate) moved: Option<MoveIx>,
}

impl Context<'_> {
    /// Nothing is being done.
    pub const NOTHING: Context<'static> = Context { begun: &[], moving: None, moved: None };

    #[inline]
    pub(crate) fn someone_in(&self, state: &State, steps: &StepSet) -> bool {
        self.begun.iter().any(|field| match field.get(state) {
            0 => false,
            step => steps.contains(StepIx::of(step as usize - 1)),
        })
    }
}

/// A set of dangers.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct DangerSet(pub u64);

impl DangerSet {
    /// The dangers in it.
    pub fn iter(self) -> impl Iterator<Item = DangerIx> {
        (0..64).filter(move |at| self.0 >> at & 1 == 1).map(DangerIx::of)
    }

    /// Whether there is none.
    #[must_use]
    pub fn is_empty(self) -> bool {
        self.0 == 0
    }
}

impl Machine {
    /// The dangers that hold now, with everybody who is in a step. The live job calls people out by it.
    #[must_use]
    pub fn dangers_now(&self, state: &State) -> DangerSet {
        let context = Context { begun: &self.layout.begun, moving: None, moved: None };
        self.judged(|_| true, state, &context)
    }

    /// The dangers that an allowed action runs into, at any moment of it. An action that is blocked runs into
    /// none.
    ///
    /// A state danger that held before and that the action does not touch is not told again. A doing danger is
    /// judged only when the action begins work or changes a condition: when only knowledge is lost nothing
    /// has moved.
    #[must_use]
    pub fn dangers_of(&self, before: &State, action: Action) -> DangerSet {
        let mut context = Context { begun: &self.layout.begun, moving: None, moved: None };
        let mut seen = DangerSet::default();
        if let Action::Move(made) = action {
            context.moving = Some(made);
            seen.0 |= self.judged(|rule| rule.doing, before, &context).0;
            context.moving = None;
            context.moved = Some(made);
        }
        let begins = matches!(action, Action::Begin(_));
        let allowed = self.step_watched(before, action, &mut |_, moment| {
            let moved = self.matter_differs(before, moment);
            if moved || begins {
                seen.0 |= self.judged(|rule| moved || rule.doing, moment, &context).0;
            }
        });
        if allowed.is_ok() { seen } else { DangerSet::default() }
    }

    fn judged(
        &self,
        wanted: impl Fn(&DangerRule) -> bool,
        state: &State,
        context: &Context<'_>,
    ) -> DangerSet {
        let holds = |rule: &DangerRule| wanted(rule) && rule.when.holds_in(state, context);
        let bits = self.dangers.iter().enumerate().filter(|(_, rule)| holds(rule));
        DangerSet(bits.fold(0, |bits, (at, _)| bits | 1 << at))
    }

    /// Whether a condition differs between two states.
    fn matter_differs(&self, one: &State, other: &State) -> bool {
        let words = self.layout.matter.iter().zip(one.words.iter().zip(&other.words));
        words.into_iter().any(|(mask, (one, other))| (one ^ other) & mask != 0)
    }
}
