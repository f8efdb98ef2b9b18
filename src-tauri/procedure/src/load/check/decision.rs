//! The table of a decision: whether it has a row for whatever its entries can be, and never two that differ.

use std::collections::{BTreeMap, BTreeSet};

use panside_messages::{Arg, Message};

use super::Check;
use crate::format::entry::{Decision, DecisionRow, Kind, MISSING, MOST_COMBINATIONS};
use crate::format::{Ask, Entry, Step};
use crate::message::*;

/// What a row calls an entry, with the classes it can have where the decision is made.
type Columns<'a> = BTreeMap<&'a str, Vec<&'a str>>;

impl Check<'_> {
    /// The table of a decision, the entry at `own` of its step. A mistake in what the rows are made of is told by itself.
    pub(super) fn decision(&mut self, place: &str, step: &Step, own: usize, asked: &Decision) {
        let checklist = self.checklist;
        let place = format!("{place}/ask/decision");
        let mut columns = Columns::new();
        for (name, read) in &asked.of {
            let steps = checklist.phases.iter().flat_map(|phase| &phase.steps);
            match column(steps, step, own, read) {
                Ok(classes) => drop(columns.insert(name, classes)),
                Err(what) => self.problem(&format!("{place}/of/{name}"), what),
            }
        }
        let before = self.problems.len();
        for (at, row) in asked.rows.iter().enumerate() {
            self.row_classes(&format!("{place}/rows/{at}/when"), row, asked, &columns);
        }
        let is_sound = columns.len() == asked.of.len() && self.problems.len() == before;
        if !is_sound || !asked.wrong().is_empty() {
            return;
        }
        let count = columns.values().try_fold(1, |count: usize, classes| count.checked_mul(classes.len()));
        if count.is_none_or(|count| count > MOST_COMBINATIONS) {
            let what = problem_decision_size(count.unwrap_or(usize::MAX), MOST_COMBINATIONS);
            self.problem(&format!("{place}/of"), what);
            return;
        }
        self.table(&place, asked, &columns);
    }

    fn row_classes(&mut self, place: &str, row: &DecisionRow, asked: &Decision, columns: &Columns<'_>) {
        for (name, wanted) in &row.when {
            let Some(classes) = columns.get(name.as_str()) else { continue };
            for class in wanted.iter().filter(|class| !classes.contains(&class.as_str())) {
                let choices = Arg::AnyOf(classes.iter().map(|class| (*class).to_owned()).collect());
                let what = problem_decision_class(&asked.of[name], class, choices);
                self.problem(&format!("{place}/{name}"), what);
            }
        }
    }

    /// Looks at every combination: one that no row is for, rows that differ, and rows that speak for none.
    fn table(&mut self, place: &str, asked: &Decision, columns: &Columns<'_>) {
        let mut speak = BTreeSet::new();
        let mut differ = BTreeSet::new();
        let (mut hole, mut holes) = (None, 0_usize);
        for classes in combinations(columns) {
            let mut rows = asked.rows_for(&classes);
            let Some((first, row)) = rows.next() else {
                holes += 1;
                hole.get_or_insert(classes);
                continue;
            };
            speak.insert(first);
            for (other, _) in rows.filter(|(_, other)| other.class != row.class) {
                if differ.insert((first, other)) {
                    let what = problem_decision_overlap(first + 1, other + 1, said(&classes));
                    self.problem(&format!("{place}/rows/{other}"), what);
                }
            }
        }
        if let Some(classes) = hole {
            self.problem(&format!("{place}/rows"), problem_decision_hole(said(&classes), holes));
        }
        // Rows that differ from an earlier one are said already.
        let idle = (0..asked.rows.len()).filter(|row| !speak.contains(row));
        for row in idle.filter(|row| differ.iter().all(|(_, other)| other != row)) {
            self.problem(&format!("{place}/rows/{row}"), problem_decision_never());
        }
    }
}

/// The classes that an entry, named as `step.entry`, can have when the decision is made: none that keeps its step in progress.
fn column<'a>(
    mut steps: impl Iterator<Item = &'a Step>,
    own_step: &Step,
    own: usize,
    read: &str,
) -> Result<Vec<&'a str>, Message> {
    let named = read.split_once('.').and_then(|(id, entry)| {
        let step = steps.find(|step| step.id == id)?;
        let at = step.entries.iter().position(|found| found.id == entry)?;
        Some((step, at))
    });
    let (step, at) = named.ok_or_else(|| problem_decision_no_entry(read))?;
    let entry = &step.entries[at];
    if matches!(entry.ask, Ask::SignOff(_)) {
        return Err(problem_decision_sign(read));
    }
    let is_own = step.id == own_step.id;
    if is_own && at >= own {
        return Err(problem_decision_later(read));
    }
    if !is_own && !own_step.relies_on.contains(&step.id) {
        return Err(problem_decision_relies(&step.id));
    }
    let may_be_missing = entry.optional || !is_own && (step.may_skip || step.on.is_some());
    Ok(classes_of(entry, may_be_missing))
}

fn classes_of(entry: &Entry, may_be_missing: bool) -> Vec<&str> {
    let classes = entry.ask.classes().into_iter().filter(|class| entry.goes_on(class));
    let mut all: Vec<&str> = classes.collect();
    if may_be_missing && !all.contains(&MISSING) {
        all.push(MISSING);
    }
    all
}

/// Every combination of classes.
fn combinations<'a>(columns: &'a Columns<'a>) -> impl Iterator<Item = BTreeMap<&'a str, &'a str>> {
    let count: usize = columns.values().map(Vec::len).product();
    (0..count).map(move |number| {
        let mut rest = number;
        let class = |(name, classes): (&&'a str, &'a Vec<&'a str>)| {
            let class = classes[rest % classes.len()];
            rest /= classes.len();
            (*name, class)
        };
        columns.iter().map(class).collect()
    })
}

fn said(classes: &BTreeMap<&str, &str>) -> Vec<String> {
    classes.iter().map(|(name, class)| format!("{name}: {class}")).collect()
}
