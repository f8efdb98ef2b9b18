//! What follows by itself, and what lapses: carried out after the assignments of every action.

use super::dependency_index::Dependents;
use super::{Before, Machine, Moment, State, UNKNOWN, sign};

impl Machine {
    /// Follows, then lapses, each until nothing changes.
    pub(crate) fn settle(
        &self,
        before: &Before<'_>,
        state: &mut State,
        watch: &mut impl FnMut(Moment, &State),
    ) {
        watch(Moment::Assigned, state);
        let mut dependents = before.dependents(self, state);
        // Loading lets two follows write a variable only to the same value, so each change is the last of
        // its variable and the loop ends.
        while dependents.follows != 0 && self.follow(before, &mut dependents, state, watch) {}
        while dependents.gates | dependents.signs != 0 && self.lapse_once(before, &mut dependents, state) {}
    }

    /// Every follow that is awake, once, in file order. Answers whether anything has changed.
    fn follow(
        &self,
        before: &Before<'_>,
        dependents: &mut Dependents,
        state: &mut State,
        watch: &mut impl FnMut(Moment, &State),
    ) -> bool {
        let mut changed = false;
        let mut from = 0;
        while let Some((at, follow)) = Dependents::next(dependents.follows, &self.follows, from) {
            from = at + 1;
            if follow.when.holds(state) {
                let was = *state;
                follow.assign.apply(state);
                if *state != was {
                    watch(Moment::Followed, state);
                    *dependents = before.dependents(self, state);
                    changed = true;
                }
            }
        }
        changed
    }

    /// Every gate and sign-off that is awake, once. Answers whether one has lapsed.
    fn lapse_once(&self, before: &Before<'_>, dependents: &mut Dependents, state: &mut State) -> bool {
        let mut changed = false;
        let mut from = 0;
        while let Some((at, var)) = Dependents::next(dependents.gates, &self.readers.gates, from) {
            from = at + 1;
            let var = &self.vars[var.at()];
            if let Some(holds_while) = &var.holds_while
                && var.field.get(state) != u64::from(UNKNOWN)
                && !holds_while.holds(state)
            {
                var.field.set(state, u64::from(UNKNOWN));
                *dependents = before.dependents(self, state);
                changed = true;
            }
        }
        from = 0;
        while let Some((at, rule)) = Dependents::next(dependents.signs, &self.signs, from) {
            from = at + 1;
            if rule.field.get(state) == sign::VALID && !rule.holds_while.holds(state) {
                rule.field.set(state, sign::LAPSED);
                *dependents = before.dependents(self, state);
                changed = true;
            }
        }
        changed
    }
}
