//! What follows from classes of other entries, by a table of the checklist: worked out and not asked.
//!
//! A table is looked at as a whole when the file is loaded: each combination of classes has a row, no two rows of
//! different classes are for the same one, and each row speaks for some.

use std::collections::{BTreeMap, BTreeSet};

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::choice::ChoiceOption;
use super::kind::{Kind, Listed, Read, SheetNeed, Wrong, not_good, twice};
use crate::message::*;

/// What rows call an entry that was not made: it is optional, or its step is skipped or not part of the job.
pub const MISSING: &str = "missing";

/// Combinations of classes that a table may have. Each is looked at when the file is loaded, and who writes more rows
/// than that asks for can't see whether they are right.
pub const MOST_COMBINATIONS: usize = 4096;

/// A table over classes of other entries.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskDecision")]
#[serde(deny_unknown_fields)]
pub struct Decision {
    /// The entries that decide: what the rows call each, and the entry as `step.entry`. It stands before this one in the
    /// same step, or in a step that this one relies on. Of a `several` its worst class counts.
    #[ts(skip)]
    pub of: BTreeMap<String, String>,
    /// What it can come to.
    pub options: Vec<ChoiceOption>,
    /// What it comes to. Of rows that are for the same combination, which must have the same class, the first speaks.
    #[ts(skip)]
    pub rows: Vec<DecisionRow>,
    /// What a person may decide all the same, with a reason and a name.
    #[serde(default)]
    pub against: Vec<Against>,
    /// The classes with which the work goes on. Any other must hold the step, end the job or change something. Empty
    /// where no class is better than another.
    #[serde(default)]
    #[ts(skip)]
    pub good: Vec<String>,
}

/// One row of a table.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct DecisionRow {
    /// The classes it is for, by what the entry is called in `of`; `missing` where it was not made. An entry that is not
    /// named may be whatever it is.
    #[serde(default)]
    pub when: BTreeMap<String, BTreeSet<String>>,
    /// In place of `when`, in the last row: for everything that no other row is for.
    #[serde(default)]
    pub otherwise: bool,
    /// What it comes to.
    pub class: String,
    /// Why, in one sentence.
    pub says: String,
}

/// What may be decided against the table.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[serde(deny_unknown_fields)]
pub struct Against {
    /// The class.
    pub class: String,
    /// Somebody else than who works the step stands for it.
    #[serde(default)]
    pub with_second_person: bool,
}

impl DecisionRow {
    fn is_for(&self, classes: &BTreeMap<&str, &str>) -> bool {
        let is = |name: &String, wanted: &BTreeSet<String>| {
            classes.get(name.as_str()).is_some_and(|class| wanted.contains(*class))
        };
        !self.otherwise && self.when.iter().all(|(name, wanted)| is(name, wanted))
    }
}

impl Decision {
    /// The rows that are for these classes, by what the entries are called in `of`; that of everything else where no other
    /// is. The first speaks.
    pub fn rows_for<'a>(
        &'a self,
        classes: &BTreeMap<&str, &str>,
    ) -> impl Iterator<Item = (usize, &'a DecisionRow)> + use<'a> {
        let rows = self.rows.iter().enumerate();
        let mut are_for: Vec<_> = rows.clone().filter(|(_, row)| row.is_for(classes)).collect();
        if are_for.is_empty() {
            are_for.extend(rows.filter(|(_, row)| row.otherwise));
        }
        are_for.into_iter()
    }

    /// What a class is called; the class itself where it has none such.
    #[must_use]
    pub fn label<'a>(&'a self, class: &'a str) -> &'a str {
        self.options.iter().find(|option| option.class == class).map_or(class, |option| &option.label)
    }

    /// How a class may be decided against the table; nothing where it may not.
    #[must_use]
    pub fn against(&self, class: &str) -> Option<&Against> {
        self.against.iter().find(|against| against.class == class)
    }

    fn wrong_row(&self, at: usize, row: &DecisionRow) -> Vec<Wrong> {
        let place = format!("/rows/{at}");
        let mut wrong = Vec::new();
        let is_last = at + 1 == self.rows.len();
        if row.when.is_empty() != row.otherwise || row.otherwise && !is_last {
            wrong.push(Wrong::new(&place, problem_decision_when()));
        }
        if self.options.iter().all(|option| option.class != row.class) {
            wrong.push(Wrong::new(&format!("{place}/class"), problem_good_none(&row.class)));
        }
        if row.says.trim().is_empty() {
            wrong.push(Wrong::new(&format!("{place}/says"), problem_label_empty()));
        }
        for name in row.when.keys().filter(|name| !self.of.contains_key(*name)) {
            wrong.push(Wrong::new(&format!("{place}/when/{name}"), problem_decision_of(name)));
        }
        wrong
    }
}

impl Kind for Decision {
    fn classes(&self) -> Vec<&str> {
        self.options.iter().map(|option| option.class.as_str()).collect()
    }

    fn holds(&self) -> &'static [&'static str] {
        &[]
    }

    fn good(&self) -> Option<Vec<&str>> {
        (!self.good.is_empty()).then(|| self.good.iter().map(String::as_str).collect())
    }

    fn planned(&self) -> Option<&'static str> {
        None
    }

    fn measures(&self) -> bool {
        false
    }

    fn sheet_needs(&self) -> Vec<SheetNeed<'_>> {
        Vec::new()
    }

    /// None of a certain kind: what `of` may name is looked at with the table.
    fn reads(&self) -> Vec<Read<'_>> {
        Vec::new()
    }

    fn lists(&self) -> Vec<Listed> {
        vec![
            Listed { at: "/of", what: "entries", length: self.of.len() },
            Listed { at: "/options", what: "options", length: self.options.len() },
            Listed { at: "/rows", what: "rows", length: self.rows.len() },
            Listed { at: "/against", what: "classes", length: self.against.len() },
        ]
    }

    fn judges(&self) -> bool {
        false
    }

    fn answers(&self) -> bool {
        true
    }

    fn wrong(&self) -> Vec<Wrong> {
        let classes = self.classes();
        let against = self.against.iter().map(|against| against.class.as_str());
        let mut wrong: Vec<Wrong> = twice("/options", classes.iter().copied()).collect();
        wrong.extend(twice("/against", against.clone()));
        if self.of.is_empty() || self.rows.is_empty() || classes.len() < 2 {
            wrong.push(Wrong::new("", problem_decision()));
        }
        for (at, class) in classes.iter().enumerate() {
            let comes = self.rows.iter().map(|row| row.class.as_str()).chain(against.clone());
            if comes.into_iter().all(|other| other != *class) {
                wrong.push(Wrong::new(&format!("/options/{at}"), problem_decision_idle(*class)));
            }
        }
        for (at, class) in against.enumerate().filter(|(_, class)| !classes.contains(class)) {
            wrong.push(Wrong::new(&format!("/against/{at}/class"), problem_good_none(class)));
        }
        let mut seen = BTreeSet::new();
        for (name, entry) in self.of.iter().filter(|(_, entry)| !seen.insert(*entry)) {
            wrong.push(Wrong::new(&format!("/of/{name}"), problem_twice(entry)));
        }
        wrong.extend(self.rows.iter().enumerate().flat_map(|(at, row)| self.wrong_row(at, row)));
        wrong.extend(not_good(&self.good, &classes));
        wrong
    }
}
