//! Dangers: judged apart from [`Machine::step`], by the proof at every moment and by the live job after it.

use super::{
    Action, Before, Blocked, DangerIx, DangerSet, Field, Machine, Pred, State, StepIx, StepSet,
    VehicleActionIx,
};

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
    /// The vehicle action about to be made.
    pub(crate) moving: Option<VehicleActionIx>,
    /// The vehicle action just made.
    pub(crate) moved: Option<VehicleActionIx>,
    /// The job is about to be finished or stopped.
    pub(crate) leaving: bool,
}

impl Context<'_> {
    /// Nothing is being done.
    pub const NOTHING: Context<'static> = Context { begun: &[], moving: None, moved: None, leaving: false };

    /// These people are at work, and nothing is moved.
    pub(crate) fn at_work(begun: &[Field]) -> Context<'_> {
        Context { begun, ..Context::NOTHING }
    }

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
    pub fn dangers_now(&self, state: &State) -> DangerSet {
        let context = Context::at_work(&self.layout.begun);
        let holding = self.dangers.iter().enumerate().filter(|(_, rule)| rule.when.holds_in(state, &context));
        holding.map(|(at, _)| DangerIx::of(at)).collect()
    }

    /// The dangers that an allowed action runs into, at any moment of it. An action that is blocked runs into
    /// none.
    ///
    /// A state danger that held before and that the action does not touch is not told again. A doing danger is
    /// judged only when the action begins work or changes a condition: when only knowledge is lost nothing
    /// has moved. One of leaving is judged when the job is finished or stopped.
    #[must_use]
    pub fn dangers_of(&self, before: &State, action: Action) -> DangerSet {
        let before = Before::new(self, before, self.dangers_now(before));
        self.step_judged(&before, action).map_or(DangerSet::NONE, |(_, dangers)| dangers)
    }

    /// [`Machine::step`] with the dangers that the action runs into, as [`Machine::dangers_of`] tells them.
    ///
    /// # Errors
    /// As [`Machine::step`].
    #[inline]
    pub fn step_judged(&self, before: &Before<'_>, action: Action) -> Result<(State, DangerSet), Blocked> {
        let mut met = DangerSet::NONE;
        self.step_meeting(before, action, &mut met).map(|next| (next, met))
    }

    /// [`Machine::step_judged`] without a copy of the state together with the dangers, which are told into `seen`.
    fn step_meeting(
        &self,
        before: &Before<'_>,
        action: Action,
        seen: &mut DangerSet,
    ) -> Result<State, Blocked> {
        let made = if let Action::Vehicle(made) = action { Some(made) } else { None };
        let context = Context { moved: made, ..Context::at_work(&self.layout.begun) };
        let of_vehicle_actions =
            if made.is_some() { self.readers.of_vehicle_actions } else { DangerSet::NONE };
        let mut judged = *before.state;
        let begins = matches!(action, Action::Begin(_));
        let next = self.step_from(before, action, &mut |_, moment| {
            // Often nothing follows and nothing lapses, and one moment is like the one before.
            if *moment == judged {
                return;
            }
            judged = *moment;
            let moved = self.matter_differs(before.state, moment);
            if moved || begins {
                let dependents = self.readers.dependent_dangers(before.state, moment) | of_vehicle_actions;
                let wanted = if moved { DangerSet::ALL } else { self.readers.of_doing };
                *seen |= self.judge(before, moment, dependents, &context) & wanted;
            }
        })?;
        if made.is_some() {
            let context = Context { moving: made, moved: None, ..context };
            *seen |= self.judge(before, before.state, of_vehicle_actions, &context) & self.readers.of_doing;
        }
        if matches!(action, Action::Finish | Action::Stop) {
            let (context, of_leaving) = (Context { leaving: true, ..context }, self.readers.of_leaving);
            *seen |= self.judge(before, before.state, of_leaving, &context) & of_leaving;
        }
        Ok(next)
    }

    /// [`Machine::dangers_now`] of the state after a step, for whoever knows those of the state before it.
    #[must_use]
    pub fn dangers_after(&self, before: &Before<'_>, next: &State) -> DangerSet {
        let context = Context::at_work(&self.layout.begun);
        self.judge(before, next, self.readers.dependent_dangers(before.state, next), &context)
    }

    /// Which dangers hold: those of `dependents` are judged, the others are as they were.
    fn judge(
        &self,
        before: &Before<'_>,
        state: &State,
        dependents: DangerSet,
        context: &Context<'_>,
    ) -> DangerSet {
        let made = context.moving.or(context.moved);
        let open = dependents & self.readers.possible(context.begun, state, made);
        let holds =
            |at: &DangerIx| self.dangers.get(at.at()).is_some_and(|rule| rule.when.holds_in(state, context));
        open.iter().filter(holds).collect::<DangerSet>() | (before.dangers - dependents)
    }

    /// Whether a condition differs between two states.
    fn matter_differs(&self, one: &State, other: &State) -> bool {
        let words = self.layout.matter.iter().zip(one.words.iter().zip(&other.words));
        words.into_iter().any(|(mask, (one, other))| (one ^ other) & mask != 0)
    }
}
