//! What follows from other entries by the checklist's table. A person takes what the table says, or goes against it with
//! a reason and a name where the checklist lets them.
//!
//! What was decided keeps the values it was decided by: when one of the entries changes, the decision no longer
//! counts ([`Draft::is_stale`](crate::decide::draft::Draft)), and voiding a step voids what was decided by it.

use std::collections::BTreeMap;

use panside_procedure::format::entry::{Decision, MISSING};
use panside_procedure::format::{Ask, Checklist, Entry, Step};
use serde::{Deserialize, Serialize};

use super::kind::{self, Kind, measures_nothing};
use super::past::Past;
use super::{Classified, Context, class_label, named};
use crate::command::Refusal;
use crate::job::EnteredValue;
use crate::message::{
    Message, as_said, choice_unknown, decision_against, decision_first, decision_missing, decision_none,
    decision_not, decision_of, decision_read, decision_why,
};
use crate::people::Names;
use crate::sheet::Specs;
use crate::value::{Accounted, EntryValue, SignedPin};

/// A decision, and how it came about.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct DecisionResult {
    /// What was decided.
    pub class: String,
    /// What the table says.
    pub table: String,
    /// The row that speaks, from 1.
    pub row: usize,
    /// What it was decided by.
    pub inputs: Vec<DecidedBy>,
}

/// An entry that decided.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct DecidedBy {
    /// As `step.entry`.
    pub entry: String,
    /// Its class, `missing` where it was not made.
    pub class: String,
    /// Its value; nothing where it was not made.
    pub value: Option<EntryValue>,
}

/// What a table says, as far as its entries are there.
pub(crate) struct Drawn<'a> {
    /// The entries that are there.
    pub inputs: Vec<DecidedBy>,
    /// The row that speaks, from 1, with its class and its sentence; else what is to be entered first.
    pub row: Result<(usize, &'a str, &'a str), Message>,
}

/// Looks up what the table says now.
pub(crate) fn draw<'a>(
    asked: &'a Decision,
    own: &str,
    checklist: &Checklist,
    past: Option<Past<'_>>,
) -> Drawn<'a> {
    let (mut inputs, mut first) = (Vec::new(), None);
    for entry in asked.of.values() {
        match decided_by(entry, own, checklist, past) {
            Some(input) => inputs.push(input),
            None => drop(first.get_or_insert_with(|| decision_first(called(entry, own, checklist)))),
        }
    }
    let class_of = |entry: &String| inputs.iter().find(|input| input.entry == *entry);
    let classes: BTreeMap<&str, &str> = asked
        .of
        .iter()
        .filter_map(|(name, entry)| Some((name.as_str(), class_of(entry)?.class.as_str())))
        .collect();
    let speaks = asked.rows_for(&classes).next();
    let row = match (first, speaks) {
        (None, Some((at, row))) => Ok((at + 1, row.class.as_str(), row.says.as_str())),
        // No row is for it only where a step was passed over that loading takes to be worked.
        (first, _) => Err(first.unwrap_or_else(|| decision_first(missing(&inputs, own, checklist)))),
    };
    Drawn { inputs, row }
}

/// An entry as it stands now, named as `step.entry`; nothing where it has to be entered first.
fn decided_by(name: &str, own: &str, checklist: &Checklist, past: Option<Past<'_>>) -> Option<DecidedBy> {
    let (step, entry) = find(checklist, name)?;
    let past = past?;
    let is_own = step.id == own;
    let taken = if is_own { past.in_progress(own, &entry.id) } else { past.latest(&step.id, &entry.id) };
    let Some(taken) = taken.last() else {
        let never = if is_own { entry.optional } else { past.is_dealt_with(&step.id) };
        return never.then(|| DecidedBy { entry: name.to_owned(), class: MISSING.to_owned(), value: None });
    };
    let value = Some(taken.value.clone());
    let by = DecidedBy { entry: name.to_owned(), class: taken.class.to_owned(), value };
    entry.goes_on(taken.class).then_some(by)
}

/// What is called the first of the entries that were not made.
fn missing(inputs: &[DecidedBy], own: &str, checklist: &Checklist) -> Message {
    let missing = inputs.iter().find(|input| input.class == MISSING);
    missing.map_or_else(|| as_said(""), |input| input.called(own, checklist))
}

/// What an entry is called, with its step where that is another one.
fn called(name: &str, own: &str, checklist: &Checklist) -> Message {
    match find(checklist, name) {
        Some((step, entry)) if step.id == own => as_said(&entry.label),
        Some((step, entry)) => decision_of(&step.title, &entry.label),
        None => as_said(name),
    }
}

impl DecidedBy {
    /// What the entry is called beside one of this step.
    #[must_use]
    pub fn called(&self, own: &str, checklist: &Checklist) -> Message {
        called(&self.entry, own, checklist)
    }

    /// What it was when it decided.
    #[must_use]
    pub fn was(&self, checklist: &Checklist) -> Message {
        let ask = find(checklist, &self.entry).map(|(_, entry)| &entry.ask);
        let Some(value) = &self.value else { return decision_missing() };
        let read = ask.and_then(|ask| super::of(ask).in_short(value, checklist));
        match (read, ask) {
            (Some(read), Some(Ask::Choice(_) | Ask::Several(_) | Ask::Decision(_))) => as_said(read),
            (Some(read), Some(ask)) if ask.judges() => {
                decision_read(read, class_label(Some(ask), &self.class))
            }
            (Some(read), _) => as_said(read),
            (None, Some(Ask::Several(_))) => decision_none(),
            (None, ask) => class_label(ask, &self.class),
        }
    }
}

impl DecisionResult {
    /// The sentence of the row that spoke; nothing where the checklist has none such.
    #[must_use]
    pub fn says<'a>(&self, asked: &'a Decision) -> Option<&'a str> {
        let row = self.row.checked_sub(1).and_then(|at| asked.rows.get(at))?;
        Some(&row.says)
    }
}

fn find<'a>(checklist: &'a Checklist, name: &str) -> Option<(&'a Step, &'a Entry)> {
    let (id, entry) = name.split_once('.')?;
    let step = checklist.phases.iter().flat_map(|phase| &phase.steps).find(|step| step.id == id)?;
    Some((step, step.entries.iter().find(|found| found.id == entry)?))
}

fn classify(
    asked: &Decision,
    class: &str,
    against: Option<&Accounted>,
    pin: Option<SignedPin>,
    context: &Context<'_>,
) -> Result<Classified, Refusal> {
    if asked.options.iter().all(|option| option.class != class) {
        let known: Vec<String> = asked.options.iter().map(|option| option.label.clone()).collect();
        return Err(choice_unknown(class, known).into());
    }
    let Drawn { inputs, row } = draw(asked, context.step, context.checklist, context.past);
    let (row, table, says) = row.map_err(Refusal::from)?;
    let told = match against {
        _ if class == table => None,
        _ if asked.against(class).is_none() => return Err(decision_not(asked.label(class), says).into()),
        None => return Err(decision_why(says).into()),
        Some(told) => Some(named(told, context.names)?),
    };
    let result = DecisionResult { class: class.to_owned(), table: table.to_owned(), row, inputs };
    let said = say(asked, &result, told.as_ref().map(|(kept, name)| (kept, *name)));
    let pin = pin.filter(|_| told.is_some());
    let value = EntryValue::Decision { class: class.to_owned(), against: told.map(|(kept, _)| kept), pin };
    Ok(Classified::worked_out(class, value, said, result))
}

/// What is said of a decision: that it is against the table, and what the table says.
fn say(asked: &Decision, result: &DecisionResult, against: Option<(&Accounted, &str)>) -> Vec<Message> {
    let against =
        against.map(|(told, name)| decision_against(asked.label(&result.table), name, &told.reason));
    against.into_iter().chain(result.says(asked).map(as_said)).collect()
}

/// What is said of a decision that was made, whatever its entries are now; nothing of anything else.
pub(crate) fn said_then(ask: &Ask, entered: &EnteredValue, names: Names<'_>) -> Option<Vec<Message>> {
    let (Ask::Decision(asked), Some(super::WorkedOut::Decision(result))) = (ask, &entered.worked_out) else {
        return None;
    };
    let told = entered.value.accounted();
    let told = told.and_then(|told| Some((told, names.name(told.by).ok()?)));
    Some(say(asked, result, told))
}

impl Kind for Decision {
    fn classify(
        &self,
        _specs: &Specs,
        value: &EntryValue,
        context: &Context<'_>,
    ) -> Result<Classified, Refusal> {
        match value {
            EntryValue::Decision { class, against, pin } => {
                classify(self, class, against.as_ref(), *pin, context)
            }
            _ => Err(kind::other("decision", value)),
        }
    }

    measures_nothing!();

    fn in_short(&self, value: &EntryValue, _checklist: &Checklist) -> Option<String> {
        let EntryValue::Decision { class, .. } = value else { return None };
        Some(self.label(class).to_owned())
    }
}
