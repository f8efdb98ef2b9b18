//! What is off the vehicle, counted from the events alone. It knows the checklist's text and nothing of the
//! [`panside_procedure::Machine`], so that the two counts check each other.

use std::collections::{BTreeMap, BTreeSet};

use panside_procedure::format::{Checklist, Step};

use crate::event::Event;

/// Pieces off the vehicle by item id.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Tally {
    off: BTreeMap<String, i32>,
    worked: BTreeSet<String>,
}

impl Tally {
    /// Pieces of an item that are off the vehicle. Below 0 or above the item's count only where the record is wrong.
    #[must_use]
    pub fn off(&self, item: &str) -> i32 {
        self.off.get(item).copied().unwrap_or(0)
    }

    /// Counts one event. Pieces move when a step is done that was not worked before: not when it is done again, not
    /// when it is corrected, and back where an observation shows that it cannot have been worked.
    pub(crate) fn take(&mut self, checklist: &Checklist, event: &Event) {
        match event {
            Event::Done(done) if self.worked.insert(done.step.clone()) => {
                self.move_pieces(checklist, &done.step, 1)
            }
            Event::Corrected(corrected) => {
                self.worked.insert(corrected.step.clone());
            }
            Event::Observed(observed) => {
                for step in &observed.undone {
                    if self.worked.remove(step) {
                        self.move_pieces(checklist, step, -1);
                    }
                }
            }
            _ => {}
        }
    }

    fn move_pieces(&mut self, checklist: &Checklist, id: &str, sign: i32) {
        let mut steps = checklist.phases.iter().flat_map(|phase| &phase.steps);
        let Some(Step { takes_off, puts_back, .. }) = steps.find(|step| step.id == id) else { return };
        for (item, pieces) in takes_off {
            *self.off.entry(item.clone()).or_default() += sign * i32::from(*pieces);
        }
        for (item, pieces) in puts_back {
            *self.off.entry(item.clone()).or_default() -= sign * i32::from(*pieces);
        }
    }
}
