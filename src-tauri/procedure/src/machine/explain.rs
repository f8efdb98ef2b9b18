//! Why an action is blocked, in terms of what would meet it. Made when asked, apart from `step`.

use super::{
    Action, Before, Blocked, Field, ItemIx, Machine, Pred, SignIx, State, StepIx, Test, Tree, VarIx, work,
};

/// One thing that does not hold, with what would meet it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unmet {
    /// A condition, fact or gate has a value that does not do.
    Value {
        /// Which.
        var: VarIx,
        /// The value it has.
        is: u8,
        /// The values that would do.
        wants: Vec<u8>,
    },
    /// A step is not worked (or, false, is).
    Worked(StepIx, bool),
    /// A sign-off is not valid (or, false, is).
    Signed(SignIx, bool),
    /// An item has this many empty places, and should have another number.
    Empty(ItemIx, u8),
    /// A piece is off that the checklist does not know.
    PieceOff,
    /// It can never hold.
    Never,
}

impl Machine {
    /// Why an action is not allowed, and what does not hold. Nothing when it is allowed.
    #[must_use]
    pub fn explain(&self, state: &State, action: Action) -> Option<(Blocked, Vec<Unmet>)> {
        let mut outcome = *state;
        let blocked = self.step_watched(state, action, &mut |_, moment| outcome = *moment).err()?;
        // The last moment shown comes before the lapses.
        self.settle(&Before::unknown(state), &mut outcome, &mut |_, _| {});
        let mut unmet = Vec::new();
        match (blocked, action) {
            (Blocked::Needs, Action::Begin(step)) => {
                self.unmet(&self.steps[step.at()].needs, state, &mut unmet)
            }
            (Blocked::While, Action::Done(step, _)) => {
                self.unmet(&self.steps[step.at()].while_, state, &mut unmet);
            }
            (Blocked::Needs, Action::Vehicle(made)) => {
                self.unmet(&self.vehicle_actions[made.at()].needs, state, &mut unmet)
            }
            (Blocked::Needs, Action::Finish) => self.unmet(&self.done_when, state, &mut unmet),
            (Blocked::PieceOff, _) => unmet.push(Unmet::PieceOff),
            (Blocked::Needs, Action::Stop) => self.unmet(&self.safe_to_leave, state, &mut unmet),
            (Blocked::Sign(given), _) => {
                self.unmet(&self.signs[given.at()].holds_while, &outcome, &mut unmet)
            }
            (Blocked::Stands(step), Action::Vehicle(_)) => {
                self.unmet(&self.steps[step.at()].while_, &outcome, &mut unmet);
            }
            (Blocked::Permit(permit), _) => {
                self.unmet(&self.signs[permit.at()].holds_while, state, &mut unmet);
            }
            _ => {}
        }
        Some((blocked, unmet))
    }

    /// What of a predicate does not hold. Of alternatives the one that lacks least is named.
    pub fn unmet(&self, pred: &Pred, state: &State, found: &mut Vec<Unmet>) {
        self.unmet_part(pred.tree(), state, found);
        found.dedup();
    }

    fn unmet_part(&self, part: &Tree, state: &State, found: &mut Vec<Unmet>) {
        if Pred::from(part.clone()).holds(state) {
            return;
        }
        match part {
            Tree::Const(_) => found.push(Unmet::Never),
            Tree::Test(test) => found.extend(self.unmet_test(test, state)),
            Tree::All(parts) => parts.iter().for_each(|part| self.unmet_part(part, state, found)),
            Tree::Any(parts) => {
                let lacks = parts.iter().map(|part| {
                    let mut lacking = Vec::new();
                    self.unmet_part(part, state, &mut lacking);
                    lacking
                });
                found.extend(lacks.min_by_key(Vec::len).unwrap_or_else(|| vec![Unmet::Never]));
            }
        }
    }

    fn unmet_test(&self, test: &Test, state: &State) -> Option<Unmet> {
        let Test::In { field, values } = test else { return None };
        if self.layout.piece_off == Some(*field) {
            return Some(Unmet::PieceOff);
        }
        let is = field.get(state);
        let allowed = |value: u64| values >> value & 1 == 1;
        if let Some(var) = self.vars.iter().position(|var| var.field == *field) {
            let wants = (0..self.vars[var].size).filter(|&value| allowed(u64::from(value))).collect();
            return Some(Unmet::Value { var: VarIx::of(var), is: u8::try_from(is).ok()?, wants });
        }
        let by_field = |other: Field| other == *field;
        if let Some(step) = self.steps.iter().position(|rule| by_field(rule.work)) {
            return Some(Unmet::Worked(StepIx::of(step), allowed(work::WORKED)));
        }
        if let Some(given) = self.signs.iter().position(|rule| by_field(rule.field)) {
            return Some(Unmet::Signed(SignIx::of(given), allowed(super::sign::VALID)));
        }
        let item = self.items.iter().position(|rule| by_field(rule.field))?;
        Some(Unmet::Empty(ItemIx::of(item), u8::try_from(is).ok()?))
    }
}
