//! [`Machine::step`]: the only thing that changes rule state.

use super::{
    Action, Assign, Before, Blocked, DangerSet, InJob, Machine, OutcomeIx, SignIx, State, StepIx, StepRule,
    StepSet, UNKNOWN, VarIx, VehicleActionIx, over, sign, work,
};

/// A moment within one action at which a danger could show.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Moment {
    /// All assignments are made; the hands are still there.
    Assigned,
    /// A follow has changed something.
    Followed,
    /// Everything has settled.
    Settled,
}

impl Machine {
    /// Carries out one action: pure, total, without clock, number or text.
    ///
    /// # Errors
    /// [`Blocked`] when the rules do not allow it; the state is then as it was.
    pub fn step(&self, state: &State, action: Action) -> Result<State, Blocked> {
        self.step_watched(state, action, &mut |_, _| {})
    }

    /// [`Machine::step`], showing the state at each moment within the action.
    ///
    /// # Errors
    /// As [`Machine::step`]; moments may have been shown before.
    pub fn step_watched(
        &self,
        state: &State,
        action: Action,
        watch: &mut impl FnMut(Moment, &State),
    ) -> Result<State, Blocked> {
        self.step_from(&Before::new(self, state, DangerSet::NONE), action, watch)
    }

    pub(crate) fn step_from(
        &self,
        before: &Before<'_>,
        action: Action,
        watch: &mut impl FnMut(Moment, &State),
    ) -> Result<State, Blocked> {
        let state = before.state;
        if self.over(state) >= over::FINISHED {
            return Err(Blocked::Over);
        }
        let mut next = *state;
        match action {
            Action::Begin(step) => self.begin(state, &mut next, step)?,
            Action::Leave(step) => self.leave(state, &mut next, step)?,
            Action::Done(step, outcome) => return self.done(before, step, outcome, watch),
            Action::Vehicle(made) => return self.vehicle_action(before, made, watch),
            Action::Sign(given) => self.sign_again(state, &mut next, given)?,
            Action::Skip(step) => self.skip(state, &mut next, step)?,
            Action::Void(step) => self.void(state, &mut next, step)?,
            Action::Correct(step, outcome) => return self.correct(before, step, outcome, watch),
            Action::Observe(var, value) => self.observe(state, &mut next, var, value)?,
            Action::Expire(gate) => self.expire(state, &mut next, gate)?,
            Action::Piece(off) => return self.piece(state, off),
            Action::Finish => self.finish(state, &mut next)?,
            Action::Stop => self.stop(state, &mut next)?,
        }
        self.settle(before, &mut next, watch);
        watch(Moment::Settled, &next);
        Ok(next)
    }

    fn begin(&self, state: &State, next: &mut State, step: StepIx) -> Result<(), Blocked> {
        let rule = &self.steps[step.at()];
        if self.over(state) == over::ENDING && !rule.when_ending {
            return Err(Blocked::Ending);
        }
        if self.is_begun(state, step) {
            return Err(Blocked::NotNow);
        }
        match rule.work.get(state) {
            work::UNTOUCHED => {}
            work::WORKED if rule.again.as_ref().is_some_and(|again| again.holds(state)) => {}
            _ => return Err(Blocked::NotNow),
        }
        if self.in_job(state, step) != InJob::Yes {
            return Err(Blocked::NotInJob);
        }
        self.phase_open(state, rule.phase)?;
        if let Some(&before) = rule.after.iter().find(|&&before| !self.is_behind(state, before)) {
            return Err(Blocked::After(before));
        }
        self.permits_valid(state, rule)?;
        if !rule.needs.holds(state) {
            return Err(Blocked::Needs);
        }
        let Some(free) = self.layout.begun.iter().find(|field| field.get(state) == 0) else {
            return Err(self.begun(state).next().map_or(Blocked::NotNow, Blocked::Busy));
        };
        free.set(next, u64::from(step.0) + 1);
        rule.on_begin.apply(next);
        Ok(())
    }

    pub(crate) fn permits_valid(&self, state: &State, rule: &StepRule) -> Result<(), Blocked> {
        let lapsed = rule.permits.iter().find(|permit| !self.is_valid(state, **permit));
        lapsed.map_or(Ok(()), |&permit| Err(Blocked::Permit(permit)))
    }

    fn leave(&self, state: &State, next: &mut State, step: StepIx) -> Result<(), Blocked> {
        if !self.is_begun(state, step) {
            return Err(Blocked::NotNow);
        }
        self.clear_begun(next, step);
        self.steps[step.at()].on_leave.apply(next);
        Ok(())
    }

    pub(crate) fn clear_begun(&self, state: &mut State, step: StepIx) {
        if let Some(field) = self.layout.begun.iter().find(|field| field.get(state) == u64::from(step.0) + 1)
        {
            field.set(state, 0);
        }
    }

    fn done(
        &self,
        before: &Before<'_>,
        step: StepIx,
        outcome: OutcomeIx,
        watch: &mut impl FnMut(Moment, &State),
    ) -> Result<State, Blocked> {
        let state = before.state;
        let rule = &self.steps[step.at()];
        if !self.is_begun(state, step) {
            return Err(Blocked::NotNow);
        }
        if !rule.while_.holds(state) {
            return Err(Blocked::While);
        }
        self.permits_valid(state, rule)?;
        let outcome = rule.outcomes.get(outcome.at()).ok_or(Blocked::NotNow)?;
        let mut next = *state;
        if rule.work.get(state) != work::WORKED {
            self.move_items(rule, &mut next);
        }
        self.take_outcome(before, rule, (&outcome.assign, outcome.ends), &mut next, watch);
        for &given in &rule.signs {
            let sign_rule = &self.signs[given.at()];
            if !sign_rule.holds_while.holds(&next) {
                return Err(Blocked::Sign(given));
            }
            sign_rule.field.set(&mut next, sign::VALID);
        }
        self.clear_begun(&mut next, step);
        watch(Moment::Settled, &next);
        Ok(next)
    }

    /// The step is worked, with what its outcome assigns and what follows from that.
    fn take_outcome(
        &self,
        before: &Before<'_>,
        rule: &StepRule,
        (assign, ends): (&Assign, bool),
        next: &mut State,
        watch: &mut impl FnMut(Moment, &State),
    ) {
        rule.work.set(next, work::WORKED);
        assign.apply(next);
        if ends {
            self.set_over(next, over::ENDING);
        }
        self.settle(before, next, watch);
    }

    pub(crate) fn move_items(&self, rule: &StepRule, next: &mut State) {
        for &(item, pieces) in &rule.takes_off {
            let place = &self.items[item.at()];
            let empty = (place.field.get(next) + u64::from(pieces)).min(u64::from(place.count));
            place.field.set(next, empty);
        }
        for &(item, pieces) in &rule.puts_back {
            let place = &self.items[item.at()];
            let empty = place.field.get(next).saturating_sub(u64::from(pieces));
            place.field.set(next, empty);
        }
    }

    /// Whether taking off and putting back at this step would count pieces that are not there.
    #[must_use]
    pub fn miscounts(&self, state: &State, step: StepIx) -> bool {
        let rule = &self.steps[step.at()];
        let empty = |item: super::ItemIx| self.items[item.at()].field.get(state);
        rule.work.get(state) != work::WORKED
            && (rule.takes_off.iter().any(|&(item, pieces)| {
                empty(item) + u64::from(pieces) > u64::from(self.items[item.at()].count)
            }) || rule.puts_back.iter().any(|&(item, pieces)| empty(item) < u64::from(pieces)))
    }

    fn vehicle_action(
        &self,
        before: &Before<'_>,
        made: VehicleActionIx,
        watch: &mut impl FnMut(Moment, &State),
    ) -> Result<State, Blocked> {
        let state = before.state;
        let rule = &self.vehicle_actions[made.at()];
        if !rule.needs.holds(state) {
            return Err(Blocked::Needs);
        }
        let mut next = *state;
        rule.makes.apply(&mut next);
        if next == *state {
            return Err(Blocked::Same);
        }
        self.settle(before, &mut next, watch);
        for step in self.begun(state) {
            let stands = &self.steps[step.at()];
            // Whoever stands where they should not must be out before anything is moved.
            let may_stay = stands.while_.holds(state)
                && stands.while_.holds(&next)
                && self.permits_valid(&next, stands).is_ok();
            if !may_stay {
                return Err(Blocked::Stands(step));
            }
        }
        watch(Moment::Settled, &next);
        Ok(next)
    }

    fn sign_again(&self, state: &State, next: &mut State, given: SignIx) -> Result<(), Blocked> {
        let rule = &self.signs[given.at()];
        if rule.field.get(state) == sign::VALID || !self.is_worked(state, rule.step) {
            return Err(Blocked::NotNow);
        }
        if !rule.holds_while.holds(state) {
            return Err(Blocked::Sign(given));
        }
        rule.field.set(next, sign::VALID);
        Ok(())
    }

    fn skip(&self, state: &State, next: &mut State, step: StepIx) -> Result<(), Blocked> {
        let rule = &self.steps[step.at()];
        if !rule.may_skip {
            return Err(Blocked::MayNotSkip);
        }
        if self.over(state) != over::NO {
            return Err(Blocked::Ending);
        }
        if rule.work.get(state) != work::UNTOUCHED || self.is_begun(state, step) {
            return Err(Blocked::NotNow);
        }
        if self.in_job(state, step) != InJob::Yes {
            return Err(Blocked::NotInJob);
        }
        self.phase_open(state, rule.phase)?;
        rule.work.set(next, work::SKIPPED);
        Ok(())
    }

    fn void(&self, state: &State, next: &mut State, step: StepIx) -> Result<(), Blocked> {
        if !self.is_worked(state, step) {
            return Err(Blocked::NotNow);
        }
        let mut voided = StepSet::default();
        let with = self.steps[step.at()].voided_with.iter().copied();
        with.filter(|other| self.is_worked(state, *other)).chain([step]).for_each(|gone| voided.insert(gone));
        if let Some(busy) = self.begun(state).filter(|begun| voided.contains(*begun)).min() {
            return Err(Blocked::Stands(busy));
        }
        for gone in voided.iter() {
            let rule = &self.steps[gone.at()];
            rule.work.set(next, work::VOIDED);
            for &gate in &rule.writes {
                let stays = |later: &StepIx| !voided.contains(*later) && self.is_worked(state, *later);
                if !self.readers.writers_after(gate, gone).any(|later| stays(&later)) {
                    self.vars[gate.at()].field.set(next, u64::from(UNKNOWN));
                }
            }
            self.lapse_signs(next, rule);
        }
        Ok(())
    }

    pub(crate) fn lapse_signs(&self, state: &mut State, rule: &StepRule) {
        for given in &rule.signs {
            let field = self.signs[given.at()].field;
            if field.get(state) == sign::VALID {
                field.set(state, sign::LAPSED);
            }
        }
    }

    fn correct(
        &self,
        before: &Before<'_>,
        step: StepIx,
        outcome: OutcomeIx,
        watch: &mut impl FnMut(Moment, &State),
    ) -> Result<State, Blocked> {
        let state = before.state;
        let rule = &self.steps[step.at()];
        if rule.work.get(state) != work::VOIDED {
            return Err(Blocked::NotNow);
        }
        let voided = |other: &&StepIx| self.steps[other.at()].work.get(state) == work::VOIDED;
        if let Some(&first) = rule.relies_on.iter().find(voided) {
            return Err(Blocked::After(first));
        }
        let outcome = rule.outcomes.get(outcome.at()).ok_or(Blocked::NotNow)?;
        let mut next = *state;
        self.take_outcome(before, rule, (&outcome.corrected, outcome.ends), &mut next, watch);
        for given in &rule.signs {
            let sign_rule = &self.signs[given.at()];
            if sign_rule.holds_while.holds(&next) {
                sign_rule.field.set(&mut next, sign::VALID);
            }
        }
        watch(Moment::Settled, &next);
        Ok(next)
    }

    fn expire(&self, state: &State, next: &mut State, gate: VarIx) -> Result<(), Blocked> {
        let var = &self.vars[gate.at()];
        if !var.ages || var.field.get(state) == u64::from(UNKNOWN) {
            return Err(Blocked::NotNow);
        }
        var.field.set(next, u64::from(UNKNOWN));
        Ok(())
    }

    fn finish(&self, state: &State, next: &mut State) -> Result<(), Blocked> {
        if self.over(state) != over::NO {
            return Err(Blocked::Ending);
        }
        if self.is_piece_off(state) {
            return Err(Blocked::PieceOff);
        }
        self.close(state, next, &self.done_when, over::FINISHED)
    }

    fn stop(&self, state: &State, next: &mut State) -> Result<(), Blocked> {
        self.close(state, next, &self.safe_to_leave, over::STOPPED)
    }

    fn close(&self, state: &State, next: &mut State, when: &super::Pred, how: u64) -> Result<(), Blocked> {
        if let Some(step) = self.begun(state).next() {
            return Err(Blocked::Stands(step));
        }
        if !when.holds(state) {
            return Err(Blocked::Needs);
        }
        self.set_over(next, how);
        Ok(())
    }
}
