//! The ways a step can turn out: which entries decide something, and which of their classes do the same.

use std::collections::BTreeMap;

use crate::format::{ClassEffect, Entry, Step};
use crate::machine::OutcomeIx;

/// More ways than this for one step to turn out are refused: nobody would see them all.
pub(super) const MOST_OUTCOMES: usize = 64;

/// The entries of a step that decide something, and which classes make which outcome.
#[derive(Debug, Clone, Default)]
pub(super) struct OutcomeTable {
    slots: Vec<Slot>,
}

#[derive(Debug, Clone)]
struct Slot {
    entry: String,
    /// Classes that do the same stand together.
    groups: Vec<Vec<String>>,
}

impl OutcomeTable {
    /// The table of a step, or nothing when it can turn out in too many ways.
    pub fn of(step: &Step) -> Option<OutcomeTable> {
        let table = OutcomeTable { slots: step.entries.iter().filter_map(slot).collect() };
        let count =
            table.slots.iter().try_fold(1, |product: usize, slot| product.checked_mul(slot.groups.len()));
        count.is_some_and(|count| count <= MOST_OUTCOMES).then_some(table)
    }

    pub fn len(&self) -> usize {
        self.slots.iter().map(|slot| slot.groups.len()).product()
    }

    pub fn groups(&self, outcome: usize) -> impl Iterator<Item = (&str, &[String])> {
        let mut rest = outcome;
        self.slots.iter().map(move |slot| {
            let group = &slot.groups[rest % slot.groups.len()];
            rest /= slot.groups.len();
            (slot.entry.as_str(), group.as_slice())
        })
    }

    pub fn find(&self, classes: &BTreeMap<String, String>) -> OutcomeIx {
        let mut outcome = 0;
        for slot in self.slots.iter().rev() {
            let class = classes.get(&slot.entry);
            let group = slot.groups.iter().position(|group| class.is_some_and(|class| group.contains(class)));
            outcome = outcome * slot.groups.len() + group.unwrap_or(0);
        }
        OutcomeIx::of(outcome)
    }

    pub fn classes(&self, outcome: OutcomeIx) -> Vec<(&str, &str)> {
        self.groups(outcome.at()).map(|(entry, group)| (entry, group[0].as_str())).collect()
    }
}

/// The classes of an entry that decide something, those that do the same together.
fn slot(entry: &Entry) -> Option<Slot> {
    let mut groups: Vec<(&ClassEffect, Vec<String>)> = Vec::new();
    for (class, effect) in entry.classes.iter().filter(|(_, effect)| !effect.not_yet) {
        match groups.iter_mut().find(|(same, _)| *same == effect) {
            Some((_, classes)) => classes.push(class.clone()),
            None => groups.push((effect, vec![class.clone()])),
        }
    }
    let groups: Vec<_> = groups.into_iter().map(|(_, classes)| classes).collect();
    (groups.len() > 1).then(|| Slot { entry: entry.id.clone(), groups })
}
