//! "The vehicle is not as shown": a fact is never refused.

use super::{Blocked, Machine, State, VarIx, VariableKind, work};

impl Machine {
    pub(crate) fn observe(
        &self,
        state: &State,
        next: &mut State,
        var: VarIx,
        value: u8,
    ) -> Result<(), Blocked> {
        let Some(rule) = self.vars.get(var.at()) else { return Err(Blocked::NotNow) };
        if rule.kind != VariableKind::Condition || rule.absent || value >= rule.size {
            return Err(Blocked::NotNow);
        }
        if rule.field.get(state) == u64::from(value) {
            return Err(Blocked::Same);
        }
        rule.field.set(next, u64::from(value));
        if !rule.by_vehicle_actions {
            self.undo_steps_that_made_it_otherwise(state, next, var, value);
        }
        Ok(())
    }

    /// A worked step that makes the condition something else cannot have been worked: it is untouched again,
    /// and its pieces are counted anew.
    fn undo_steps_that_made_it_otherwise(&self, state: &State, next: &mut State, var: VarIx, value: u8) {
        for rule in &self.steps {
            let makes_otherwise =
                rule.makes.iter().any(|&(made, values)| made == var && values >> value & 1 == 0);
            if !makes_otherwise || rule.work.get(state) != work::WORKED {
                continue;
            }
            rule.work.set(next, work::UNTOUCHED);
            for &(item, pieces) in &rule.takes_off {
                let place = &self.items[item.at()];
                place.field.set(next, place.field.get(next).saturating_sub(u64::from(pieces)));
            }
            for &(item, pieces) in &rule.puts_back {
                let place = &self.items[item.at()];
                let empty = (place.field.get(next) + u64::from(pieces)).min(u64::from(place.count));
                place.field.set(next, empty);
            }
            self.lapse_signs(next, rule);
        }
    }
}
