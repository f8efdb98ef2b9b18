//! A piece off the vehicle that the checklist does not know: while one is off, `tray_clear` is false, and the job can't be
//! finished.
//!
//! Whether one is off is a bit of the state that the search never sets, so that a checklist has as many states as without
//! it. The proof covers it all the same:
//!
//! - `tray_clear` stands in rules without a "not" in front (loading sees to that), and nothing but rules and dangers reads
//!   it. So an action that is allowed with a piece off is allowed without it too and changes the same: a job with a piece off
//!   is never anywhere that the search was not.
//! - A danger that reads `tray_clear` may hold with a piece off where it does not hold without. So each action that is still
//!   allowed with a piece off is judged against these dangers with a piece off too
//!   ([`Machine::dangers_with_piece_off`]).
//! - To put the piece back is always allowed, so the ends that could be reached still can.

use super::{Action, Before, Blocked, Context, DangerIx, DangerSet, Machine, State};

impl Machine {
    /// Whether a piece is off that the checklist does not know.
    #[must_use]
    pub fn is_piece_off(&self, state: &State) -> bool {
        self.layout.piece_off.is_some_and(|field| field.get(state) == 1)
    }

    /// The state as it is with such a piece off, or with none.
    #[must_use]
    pub fn with_piece_off(&self, state: &State, off: bool) -> State {
        let mut with = *state;
        self.layout.piece_off.iter().for_each(|field| field.set(&mut with, u64::from(off)));
        with
    }

    /// Nothing follows and nothing lapses by it: neither may read the tray.
    pub(crate) fn piece(&self, state: &State, off: bool) -> Result<State, Blocked> {
        if self.is_piece_off(state) == off {
            return Err(Blocked::Same);
        }
        Ok(self.with_piece_off(state, off))
    }

    /// The dangers that an action would run into if a piece were off that the checklist does not know, and that it would
    /// not without one; none where the action is not allowed then. As for an entry of the live job, a danger that holds
    /// already counts only where the action begins work.
    pub(crate) fn dangers_with_piece_off(
        &self,
        before: &Before<'_>,
        action: Action,
        next: &State,
    ) -> DangerSet {
        let of_tray = self.readers.of_tray;
        // Where something else is off before and after it, all reads as it did.
        if of_tray.is_empty() || !(self.nothing_off(before.state) || self.nothing_off(next)) {
            return DangerSet::NONE;
        }
        let state = self.with_piece_off(before.state, true);
        let context = Context::at_work(&self.layout.begun);
        let holds = |at: &DangerIx| self.dangers[at.at()].when.holds_in(&state, &context);
        let already: DangerSet = of_tray.iter().filter(holds).collect();
        let from = Before::known(&state, before.rests, already);
        let met = self.step_judged(&from, action).map_or(DangerSet::NONE, |(_, met)| met & of_tray);
        if matches!(action, Action::Begin(_)) { met } else { met - already }
    }

    fn nothing_off(&self, state: &State) -> bool {
        self.items.iter().all(|item| item.field.get(state) == 0)
    }
}
