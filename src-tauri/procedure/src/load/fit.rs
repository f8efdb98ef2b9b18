//! A checklist for one vehicle: how many there are of what its spec sheet counts, and which of the steps that hang on a
//! fact are part of the job at all.
//!
//! Nothing is taken out: steps, outcomes and dangers have the same numbers for every vehicle, so that what several proofs
//! have seen can be put together.

use std::collections::BTreeMap;
use std::fmt;

use panside_messages::Message;

use super::check;
use super::place::Places;
use super::{Problem, Procedure, bind, build};
use crate::format::sheet::Value;
use crate::format::{ALL, Ask, Checklist, Item, Pieces, Sheet};
use crate::machine::VariableKind;
use crate::message::*;

/// What a spec sheet says of its vehicle and rules hang on, by key. As text it names a proof.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Fit(BTreeMap<String, String>);

impl Fit {
    /// What a sheet says of its vehicle that the rules of a checklist hang on.
    ///
    /// # Errors
    /// What the sheet lacks of that.
    pub fn of(procedure: &Procedure, sheet: &Sheet) -> Result<Fit, Vec<Message>> {
        let Checklist { items, facts, .. } = &procedure.checklist;
        let lacking = bind::lacking_of_vehicle(&procedure.checklist, sheet);
        if !lacking.is_empty() {
            return Err(lacking);
        }
        let counts = items.iter().filter_map(|item| {
            let key = item.sheet.as_ref()?;
            Some((key.clone(), count_of(sheet, key)?.to_string()))
        });
        let words = facts
            .iter()
            .filter_map(|fact| Some((fact.sheet.clone(), word_of(sheet, &fact.sheet)?.to_owned())));
        Ok(Fit(counts.chain(words).collect()))
    }

    /// Whether no rule hangs on the vehicle.
    #[must_use]
    pub fn is_any(&self) -> bool {
        self.0.is_empty()
    }
}

impl fmt::Display for Fit {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (at, (key, word)) in self.0.iter().enumerate() {
            write!(out, "{}{key}={word}", if at == 0 { "" } else { " " })?;
        }
        Ok(())
    }
}

/// Puts each item's count in the place of `"all"`: 1 where only the spec sheet has it. Says where the two ways to give a
/// count are mixed.
pub(super) fn settle_counts(checklist: &mut Checklist, places: &Places) -> Vec<Problem> {
    let mut problems = Vec::new();
    for (at, item) in checklist.items.iter().enumerate() {
        if item.sheet.is_some() && item.count != 1 {
            problems.push(check::at(places, &format!("/items/{at}/count"), problem_count_twice(&item.id)));
        }
        if item.sheet.is_none() && item.or_none {
            problems.push(check::at(places, &format!("/items/{at}/or_none"), problem_or_none(&item.id)));
        }
    }
    let counts: BTreeMap<String, (u8, bool)> =
        checklist.items.iter().map(|item| (item.id.clone(), (item.count, item.sheet.is_some()))).collect();
    each_pieces(checklist, &mut |place, pieces| {
        for (id, number) in pieces.iter_mut() {
            let (count, by_sheet) = counts.get(id).copied().unwrap_or((1, false));
            if *number == ALL {
                *number = count;
            } else if by_sheet {
                let what = problem_all_of(id);
                problems.push(check::at(places, &format!("{place}/{id}"), what));
            }
        }
    });
    problems
}

/// Every place where pieces are moved or counted.
fn each_pieces(checklist: &mut Checklist, visit: &mut dyn FnMut(&str, &mut Pieces)) {
    for (phase, phase_at) in checklist.phases.iter_mut().zip(0..) {
        for (step, at) in phase.steps.iter_mut().zip(0..) {
            let place = format!("/phases/{phase_at}/steps/{at}");
            visit(&format!("{place}/takes_off"), &mut step.takes_off);
            visit(&format!("{place}/puts_back"), &mut step.puts_back);
            for (entry, at) in step.entries.iter_mut().zip(0..) {
                if let Ask::Count(count) = &mut entry.ask {
                    visit(&format!("{place}/entries/{at}/ask/count/of"), &mut count.of);
                }
            }
        }
    }
}

impl Procedure {
    /// The same checklist for the vehicle of a spec sheet. Its proof is another one, and says nothing about what only
    /// other vehicles have.
    ///
    /// # Errors
    /// What the sheet lacks of that.
    pub fn fitted(&self, sheet: &Sheet) -> Result<Procedure, Vec<Message>> {
        let fit = Fit::of(self, sheet)?;
        let mut checklist = self.checklist.clone();
        let mut counts = BTreeMap::new();
        for Item { id, count, sheet: key, .. } in &mut checklist.items {
            if let Some(said) = key.as_ref().and_then(|key| count_of(sheet, key)) {
                *count = said;
                counts.insert(id.clone(), said);
            }
        }
        each_pieces(&mut checklist, &mut |_, pieces| {
            pieces.retain(|id, _| counts.get(id) != Some(&0));
            for (id, number) in pieces {
                *number = counts.get(id).copied().unwrap_or(*number);
            }
        });
        let mut procedure = build::procedure(checklist, &self.places)
            .map_err(|problems| problems.0.iter().map(Problem::message).collect::<Vec<_>>())?;
        for (at, fact) in self.checklist.facts.iter().enumerate() {
            let word = word_of(sheet, &fact.sheet);
            let value = fact.values.iter().position(|value| Some(value.id.as_str()) == word);
            procedure.fix_fact(at, value.and_then(|value| u8::try_from(value).ok()));
        }
        procedure.fit = fit;
        Ok(procedure)
    }

    /// A fact that every vehicle comes in with.
    fn fix_fact(&mut self, fact: usize, value: Option<u8>) {
        let machine = &mut self.machine;
        let is_fact = |var: usize| machine.vars[var].kind == VariableKind::Fact;
        let var = (0..machine.vars.len()).filter(|var| is_fact(*var)).nth(fact);
        let starts = machine.starts.iter_mut().find(|(found, _)| Some(found.at()) == var);
        if let (Some((_, values)), Some(value)) = (starts, value) {
            *values = vec![value];
        }
    }

    /// What of a vehicle it is for.
    #[must_use]
    pub fn fit(&self) -> &Fit {
        &self.fit
    }
}

pub(super) fn count_of(sheet: &Sheet, key: &str) -> Option<u8> {
    match sheet.values.get(key)?.is {
        Value::Count(count) => Some(count),
        _ => None,
    }
}

fn word_of<'a>(sheet: &'a Sheet, key: &str) -> Option<&'a str> {
    match &sheet.values.get(key)?.is {
        Value::Fact(word) => Some(word),
        _ => None,
    }
}
