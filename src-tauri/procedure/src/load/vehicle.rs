//! What a vehicle has of what a checklist asks about: which steps, entries and items there are on it, how many of each
//! item, and what a spec sheet must say of it.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt;

use panside_messages::{Arg, Message};

use super::Procedure;
use super::sizes::MOST_PIECES;
use crate::format::sheet::{Value, ValueKind};
use crate::format::{Ask, Asked, Checklist, Entry, Fact, Item, Sheet};
use crate::machine::{Pred, State, StepIx, Test, Tree, VarIx, VariableKind};
use crate::message::*;

/// What of a vehicle the rules of a checklist hang on, by key of the spec sheet. As text it names a proof.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Fit(BTreeMap<String, String>);

impl fmt::Display for Fit {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (at, (key, word)) in self.0.iter().enumerate() {
            write!(out, "{}{key}={word}", if at == 0 { "" } else { " " })?;
        }
        Ok(())
    }
}

impl Fit {
    /// What a sheet says of it.
    ///
    /// # Errors
    /// What the sheet lacks of that.
    pub fn of(procedure: &Procedure, sheet: &Sheet) -> Result<Fit, Vec<Message>> {
        let lacking = lacking_of_vehicle(procedure, sheet);
        if !lacking.is_empty() {
            return Err(lacking);
        }
        let there = procedure.on_vehicle(&|key| word_of(sheet, key));
        let items = procedure.checklist.items.iter().filter(|item| there.has_item(&item.id));
        let counts = items.filter_map(|item| {
            let key = item.sheet.as_ref()?;
            Some((key.clone(), count_of(sheet, key)?.to_string()))
        });
        let facts = procedure.checklist.facts.iter();
        let words =
            facts.filter_map(|fact| Some((fact.sheet.clone(), word_of(sheet, &fact.sheet)?.to_owned())));
        Ok(Fit(counts.chain(words).collect()))
    }

    /// Every vehicle that a sheet could have, with one of each item that sheets count: how many there are makes no
    /// difference for rules, since all of them are moved together.
    #[must_use]
    pub fn all(procedure: &Procedure) -> Vec<Fit> {
        let items = procedure.checklist.items.iter();
        let counts = items.filter_map(|item| Some((item.sheet.clone()?, "1".to_owned()))).collect();
        let mut fits = vec![Fit(counts)];
        for Fact { sheet, values, .. } in &procedure.checklist.facts {
            let with = |fit: &Fit, word: &str| {
                let mut fit = fit.clone();
                fit.0.insert(sheet.clone(), word.to_owned());
                fit
            };
            fits = fits.iter().flat_map(|fit| values.iter().map(|value| with(fit, &value.id))).collect();
        }
        fits
    }

    /// Whether no rule hangs on the vehicle.
    #[must_use]
    pub fn is_any(&self) -> bool {
        self.0.is_empty()
    }

    pub(super) fn word(&self, key: &str) -> Option<&str> {
        self.0.get(key).map(String::as_str)
    }

    pub(super) fn count(&self, key: &str) -> Option<u8> {
        self.word(key)?.parse().ok()
    }
}

/// When an entry or an item is there, for those that some vehicles do not have.
#[derive(Debug, Clone, Default)]
pub(crate) struct There {
    pub entries: Vec<(StepIx, String, Pred)>,
    pub items: Vec<(String, Pred)>,
    pub conditions: Vec<(String, Pred)>,
}

impl There {
    pub fn preds(&self) -> impl Iterator<Item = &Pred> {
        let entries = self.entries.iter().map(|(.., on)| on);
        entries.chain(self.items.iter().chain(&self.conditions).map(|(_, on)| on))
    }
}

/// What of a checklist there is on a vehicle. What hangs on a fact that is not known is there.
#[derive(Debug, Clone, Default)]
pub struct OnVehicle {
    no_steps: BTreeSet<StepIx>,
    no_entries: BTreeSet<(StepIx, String)>,
    no_items: BTreeSet<String>,
    no_conditions: BTreeSet<String>,
}

impl OnVehicle {
    /// Whether a step may be part of the job.
    #[must_use]
    pub fn has_step(&self, step: StepIx) -> bool {
        !self.no_steps.contains(&step)
    }

    /// Whether a step asks for an entry.
    #[must_use]
    pub fn has_entry(&self, step: StepIx, entry: &str) -> bool {
        self.has_step(step) && !self.no_entries.iter().any(|(of, id)| *of == step && id == entry)
    }

    /// Whether it has what a condition is about.
    #[must_use]
    pub fn has_condition(&self, condition: &str) -> bool {
        !self.no_conditions.contains(condition)
    }

    /// Whether it has an item.
    #[must_use]
    pub fn has_item(&self, item: &str) -> bool {
        !self.no_items.contains(item)
    }
}

impl Procedure {
    /// What of the checklist there is on a vehicle, of whose facts `word` gives those that are known, by key.
    #[must_use]
    pub fn on_vehicle<'a>(&self, word: &dyn Fn(&str) -> Option<&'a str>) -> OnVehicle {
        let known: Vec<(VarIx, u8)> = self.facts_of(word).collect();
        let machine = &self.machine;
        let fits = |state: &State| known.iter().all(|&(var, value)| machine.value(state, var) == value);
        let starts: Vec<State> = machine.all_starts().into_iter().filter(fits).collect();
        let never = |on: &Pred| !starts.iter().any(|state| on.holds(state));
        let on_of = |step: StepIx| machine.steps[step.at()].on.as_ref().map(|(yes, _)| yes.tree());
        let off = |step: &StepIx| {
            on_of(*step).is_some_and(|on| starts.iter().all(|state| self.by_facts(on, state) == Some(false)))
        };
        let entries = self.there.entries.iter().filter(|(.., on)| never(on));
        let ids = |these: &[(String, Pred)]| {
            these.iter().filter(|(_, on)| never(on)).map(|(id, _)| id.clone()).collect::<BTreeSet<_>>()
        };
        OnVehicle {
            no_steps: self.steps().map(|(step, _)| step).filter(off).collect(),
            no_entries: entries.map(|(step, id, _)| (*step, id.clone())).collect(),
            no_items: ids(&self.there.items),
            no_conditions: ids(&self.there.conditions),
        }
    }

    /// What a predicate comes to by the facts of a state alone; nothing where they do not settle it.
    fn by_facts(&self, tree: &Tree, state: &State) -> Option<bool> {
        let joined = |parts: &[Tree], settles: bool| {
            let mut parts = parts.iter().map(|part| self.by_facts(part, state));
            if parts.clone().any(|part| part == Some(settles)) {
                return Some(settles);
            }
            parts.all(|part| part.is_some()).then_some(!settles)
        };
        match tree {
            Tree::Const(value) => Some(*value),
            Tree::All(parts) => joined(parts, false),
            Tree::Any(parts) => joined(parts, true),
            Tree::Test(Test::In { field, values }) => {
                let mut facts = self.machine.vars.iter().filter(|var| var.kind == VariableKind::Fact);
                let is_fact = facts.any(|var| var.field == *field);
                is_fact.then(|| values >> field.get(state) & 1 == 1)
            }
            Tree::Test(_) => None,
        }
    }

    /// The facts that are known, as values of variables.
    pub(super) fn facts_of<'a>(
        &self,
        word: &dyn Fn(&str) -> Option<&'a str>,
    ) -> impl Iterator<Item = (VarIx, u8)> {
        let first = self.checklist.conditions.len();
        let facts = self.checklist.facts.iter().enumerate();
        let known = facts.filter_map(|(at, fact)| {
            let var = VarIx::of(first + at);
            Some((var, self.names.value_of(var, word(&fact.sheet)?)?))
        });
        known.collect::<Vec<_>>().into_iter()
    }
}

/// What a checklist needs and a sheet lacks.
pub(super) fn lacking(procedure: &Procedure, sheet: &Sheet) -> Vec<Message> {
    let there = procedure.on_vehicle(&|key| word_of(sheet, key));
    let mut lacking = Vec::new();
    for (at, step) in procedure.steps() {
        for entry in step.entries.iter().filter(|entry| there.has_entry(at, &entry.id)) {
            let who = lacks_of_entry(&entry.id, &step.id);
            let needs = entry.ask.sheet_needs().into_iter();
            let asked = needs.filter(|need| {
                procedure.checklist.asked(need.key) == Asked::Needed || sheet.values.contains_key(need.key)
            });
            lacking.extend(asked.filter_map(|need| lacks(sheet, who.clone(), need.key, need.kind)));
            lacking.extend(tightened(procedure, &there, sheet, entry));
        }
    }
    lacking.extend(lacking_of_vehicle(procedure, sheet));
    lacking
}

/// What a sheet lacks of what rules must know of a vehicle: counts and facts.
fn lacking_of_vehicle(procedure: &Procedure, sheet: &Sheet) -> Vec<Message> {
    let Checklist { items, facts, .. } = &procedure.checklist;
    let there = procedure.on_vehicle(&|key| word_of(sheet, key));
    let mut lacking = Vec::new();
    for item in items.iter().filter(|item| there.has_item(&item.id)) {
        let Some(key) = &item.sheet else { continue };
        lacking.extend(lacks(sheet, lacks_of_item(&item.id), key, ValueKind::Count));
        if let Some(count) = count_of(sheet, key)
            && !(item.least()..=MOST_PIECES).contains(&count)
        {
            let [found, least, most] = [count, item.least(), MOST_PIECES].map(u32::from);
            lacking.push(lacks_count(key, &sheet.id, found, least, most));
        }
    }
    for Fact { id, values, sheet: key, .. } in facts {
        lacking.extend(lacks(sheet, lacks_of_fact(id), key, ValueKind::Fact));
        if let Some(word) = word_of(sheet, key)
            && values.iter().all(|known| known.id != word)
        {
            let choices = Arg::AnyOf(values.iter().map(|known| known.id.clone()).collect());
            lacking.push(lacks_fact(key, &sheet.id, word, choices));
        }
    }
    lacking
}

/// A torque is for as many fasteners as there are of the items it tightens.
fn tightened(procedure: &Procedure, there: &OnVehicle, sheet: &Sheet, entry: &Entry) -> Option<Message> {
    let Ask::Torque(asked) = &entry.ask else { return None };
    let Value::Torque(torque) = &sheet.values.get(&asked.spec)?.is else { return None };
    let items = asked.of.iter().filter(|id| there.has_item(id));
    let counts = items.map(|id| {
        let item = procedure.checklist.items.iter().find(|item| item.id == *id)?;
        item.sheet.as_ref().map_or(Some(item.count), |key| count_of(sheet, key)).map(u32::from)
    });
    let counted = counts.sum::<Option<u32>>()?;
    let differs = !asked.of.is_empty() && counted != torque.fasteners;
    differs.then(|| lacks_fasteners(&asked.spec, &sheet.id, torque.fasteners, counted))
}

impl Item {
    /// The least that a sheet may count of it, where the vehicle has it.
    #[must_use]
    pub fn least(&self) -> u8 {
        u8::from(!self.or_none)
    }

    /// The least that any vehicle has of it.
    pub(super) fn fewest(&self) -> u8 {
        if self.on.is_some() { 0 } else { self.least() }
    }
}

fn lacks(sheet: &Sheet, who: Message, key: &str, kind: ValueKind) -> Option<Message> {
    match sheet.values.get(key).map(|value| value.is.kind()) {
        None => Some(lacks_key(who, key, &sheet.id, kind.name())),
        Some(found) if found != kind => Some(lacks_kind(who, key, &sheet.id, kind.name(), found.name())),
        Some(_) => None,
    }
}

fn count_of(sheet: &Sheet, key: &str) -> Option<u8> {
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
