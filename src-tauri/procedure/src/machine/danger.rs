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
#[derive(Debug, Clone, Default)]
pub struct Context {
    /// Fields that say who is in which step; empty where nothing is being done.
    pub(crate) begun: Vec<Field>,
    /// The move about to be made.
    pub(crate) moving: Option<MoveIx>,
    /// The move just made.
    pub(crate) moved: Option<MoveIx>,
}

impl Context {
    /// Nothing is being done.
    pub const NOTHING: Context = Context { begun: Vec::new(), moving: None, moved: None };

    #[inline]
    pub(crate) fn someone_in(&self, state: &State, steps: &StepSet) -> bool {
        self.begun.iter().any(|field| match field.get(state) {
            0 => false,
            step => steps.contains(StepIx::of(step as usize - 1)),
        })
    }
}

impl Machine {
    /// The dangers that hold now, with everybody who is in a step. The live job calls people out by it.
    #[must_use]
    pub fn dangers_now(&self, state: &State) -> Vec<DangerIx> {
        let context = Context { begun: self.layout.begun.clone(), moving: None, moved: None };
        (0..self.dangers.len())
            .filter(|&danger| self.dangers[danger].when.holds_in(state, &context))
            .map(DangerIx::of)
            .collect()
    }

    /// The dangers an allowed action would run into: the live job asks before it writes.
    #[must_use]
    pub fn dangers_of(&self, state: &State, action: Action) -> Vec<DangerIx> {
        let mut watch = DangerWatch::new(self, state, action);
        let _ = self.step_watched(state, action, &mut |_, moment_state| watch.see(moment_state));
        (0..self.dangers.len()).filter(|&danger| watch.seen >> danger & 1 == 1).map(DangerIx::of).collect()
    }
}

/// Collects the dangers met while one action is carried out.
pub(crate) struct DangerWatch<'a> {
    machine: &'a Machine,
    before: &'a State,
    context: Context,
    begins: bool,
    /// Dangers met, as bits.
    pub(crate) seen: u64,
}

impl<'a> DangerWatch<'a> {
    pub(crate) fn new(machine: &'a Machine, before: &'a State, action: Action) -> Self {
        let mut context = Context { begun: machine.layout.begun.clone(), moving: None, moved: None };
        let mut seen = 0;
        if let Action::Move(made) = action {
            context.moving = Some(made);
            for (danger, rule) in machine.dangers.iter().enumerate() {
                if rule.doing && rule.when.holds_in(before, &context) {
                    seen |= 1 << danger;
                }
            }
            context.moving = None;
            context.moved = Some(made);
        }
        DangerWatch { machine, before, context, begins: matches!(action, Action::Begin(_)), seen }
    }

    /// Judges one moment.
    pub(crate) fn see(&mut self, state: &State) {
        let doing = self.begins || self.context.moved.is_some() || self.machine.matter_differs(self.before, state);
        for (danger, rule) in self.machine.dangers.iter().enumerate() {
            if self.seen >> danger & 1 == 0
                && (doing || !rule.doing)
                && rule.when.holds_in(state, &self.context)
            {
                self.seen |= 1 << danger;
            }
        }
    }
}

impl Machine {
    /// Whether a condition differs between two states.
    fn matter_differs(&self, one: &State, other: &State) -> bool {
        self.layout.matter.iter().zip(one.words.iter().zip(&other.words)).any(|(mask, (a, b))| (a ^ b) & mask != 0)
    }
}
