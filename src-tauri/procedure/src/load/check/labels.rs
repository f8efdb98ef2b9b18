//! What people read: every name that rules know has a label of its own.

use super::{Check, steps};
use crate::format::Named;
use crate::message::*;

impl Check<'_> {
    pub(super) fn labels(&mut self) {
        let checklist = self.checklist;
        for (at, condition) in checklist.conditions.iter().enumerate() {
            self.labelled(&format!("/conditions/{at}"), &condition.label, "values", &condition.values);
        }
        for (at, fact) in checklist.facts.iter().enumerate() {
            self.labelled(&format!("/facts/{at}"), &fact.label, "values", &fact.values);
            self.sheet_key(&format!("/facts/{at}/sheet"), &fact.sheet);
        }
        for (at, gate) in checklist.gates.iter().enumerate() {
            self.labelled(&format!("/gates/{at}"), &gate.label, "classes", &gate.classes);
        }
        for (at, item) in checklist.items.iter().enumerate() {
            if let Some(key) = &item.sheet {
                self.sheet_key(&format!("/items/{at}/sheet"), key);
            }
        }
        for (key, label) in &checklist.sheet_keys {
            self.label(&format!("/sheet_keys/{key}"), label);
        }
        for (place, step) in steps(checklist) {
            for (at, entry) in step.entries.iter().enumerate() {
                for need in entry.ask.sheet_needs() {
                    self.sheet_key(&format!("{place}/entries/{at}/ask/{}", entry.ask.kind()), need.key);
                }
            }
        }
    }

    fn labelled(&mut self, place: &str, label: &str, list: &str, values: &[Named]) {
        self.label(&format!("{place}/label"), label);
        for (at, value) in values.iter().enumerate() {
            self.label(&format!("{place}/{list}/{at}/label"), &value.label);
        }
    }

    /// A label is for people: an id in its place is a label that was forgotten.
    fn label(&mut self, place: &str, label: &str) {
        if label.trim().is_empty() {
            self.problem(place, problem_label_empty());
        } else if label.contains('_') {
            self.problem(place, problem_label_id(label));
        }
    }

    fn sheet_key(&mut self, place: &str, key: &str) {
        if !self.checklist.sheet_keys.contains_key(key) {
            self.problem(place, problem_key_label(key));
        }
    }
}
