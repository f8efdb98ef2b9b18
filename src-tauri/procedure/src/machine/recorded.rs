//! What a journal says has happened, where the rules of today would not have allowed it: a record is never rewritten.
//! The proof does not use this; nothing that is still to be allowed may be asked here.

use super::{Action, Before, Machine, SignIx, State, StepIx, UNKNOWN, VarIx, over, sign, work};

impl Machine {
    /// The state after a recorded action, carried out without asking whether it is allowed. What does not exist
    /// (a step, an outcome, a value) changes nothing.
    #[must_use]
    pub fn recorded(&self, state: &State, action: Action) -> State {
        let mut next = *state;
        let mut signs: &[SignIx] = &[];
        match action {
            Action::Begin(step) => {
                if let Some(free) = self.layout.begun.iter().find(|field| field.get(state) == 0) {
                    free.set(&mut next, u64::from(step.0) + 1);
                }
                self.steps[step.at()].on_begin.apply(&mut next);
            }
            Action::Leave(step) => {
                self.clear_begun(&mut next, step);
                self.steps[step.at()].on_leave.apply(&mut next);
            }
            Action::Done(step, outcome) | Action::Correct(step, outcome) => {
                let rule = &self.steps[step.at()];
                let corrected = matches!(action, Action::Correct(..));
                if !corrected && rule.work.get(state) != work::WORKED {
                    self.move_items(rule, &mut next);
                }
                rule.work.set(&mut next, work::WORKED);
                if let Some(outcome) = rule.outcomes.get(outcome.at()) {
                    (if corrected { &outcome.corrected } else { &outcome.assign }).apply(&mut next);
                    if outcome.ends {
                        self.set_over(&mut next, over::ENDING);
                    }
                }
                self.clear_begun(&mut next, step);
                signs = &rule.signs;
            }
            Action::Vehicle(made) => self.vehicle_actions[made.at()].makes.apply(&mut next),
            Action::Sign(given) => self.signs[given.at()].field.set(&mut next, sign::VALID),
            Action::Skip(step) => self.steps[step.at()].work.set(&mut next, work::SKIPPED),
            Action::Void(step) => self.void_recorded(&mut next, step),
            Action::Observe(var, value) => self.vars[var.at()].field.set(&mut next, u64::from(value)),
            Action::Expire(gate) => self.forget(&mut next, gate),
            Action::Piece(off) => next = self.with_piece_off(&next, off),
            Action::Finish => self.set_over(&mut next, over::FINISHED),
            Action::Stop => self.set_over(&mut next, over::STOPPED),
        }
        self.settle(&Before::unknown(state), &mut next, &mut |_, _| {});
        for given in signs {
            self.signs[given.at()].field.set(&mut next, sign::VALID);
        }
        next
    }

    fn void_recorded(&self, state: &mut State, step: StepIx) {
        let rule = &self.steps[step.at()];
        rule.work.set(state, work::VOIDED);
        for &gate in &rule.writes {
            self.forget(state, gate);
        }
        self.lapse_signs(state, rule);
    }

    /// Takes down that a sign-off lapsed.
    pub fn lapse(&self, state: &mut State, given: SignIx) {
        self.signs[given.at()].field.set(state, sign::LAPSED);
    }

    /// Takes down that a gate became unknown.
    pub fn forget(&self, state: &mut State, gate: VarIx) {
        self.vars[gate.at()].field.set(state, u64::from(UNKNOWN));
    }
}
