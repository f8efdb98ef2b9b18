//! What people read: every name that rules know has a label of its own.

use super::{Check, steps};
use crate::format::sheet::ValueKind;
use crate::format::{Asked, Named, SheetKey};
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
        for (key, said) in &checklist.sheet_keys {
            self.said_of_key(key, said);
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

    fn said_of_key(&mut self, key: &str, said: &SheetKey) {
        let place = format!("/sheet_keys/{key}");
        self.label(&place, &said.label);
        if said.asked == Asked::Useful && said.without.as_ref().is_none_or(|text| text.trim().is_empty()) {
            self.problem(&place, problem_key_without(key));
        }
        if said.asked != Asked::Shop && said.usual.is_some() {
            self.problem(&format!("{place}/usual"), problem_key_usual(key));
        }
        let checklist = self.checklist;
        let by_rules = checklist.facts.iter().any(|fact| fact.sheet == key)
            || checklist.items.iter().any(|item| item.sheet.as_deref() == Some(key));
        if said.asked != Asked::Needed && by_rules {
            self.problem(&place, problem_key_rules(key));
        }
        let mut read_as_chart = false;
        for (_, step) in steps(checklist) {
            for entry in &step.entries {
                for need in entry.ask.sheet_needs() {
                    read_as_chart |=
                        need.kind == ValueKind::Chart && said.ends_of.as_deref() == Some(need.key);
                    if need.key != key {
                        continue;
                    }
                    if said.asked == Asked::Useful && !need.spare {
                        self.problem(&place, problem_key_not_spare(key, &entry.id, &step.id));
                    }
                    if said.usual.as_ref().is_some_and(|usual| usual.kind() != need.kind) {
                        self.problem(
                            &format!("{place}/usual"),
                            problem_key_usual_kind(key, need.kind.name()),
                        );
                    }
                }
            }
        }
        if let Some(chart) = &said.ends_of
            && !read_as_chart
        {
            self.problem(&format!("{place}/ends_of"), problem_key_ends(chart));
        }
    }

    fn sheet_key(&mut self, place: &str, key: &str) {
        if !self.checklist.sheet_keys.contains_key(key) {
            self.problem(place, problem_key_label(key));
        }
    }
}
