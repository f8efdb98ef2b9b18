//! What came off the vehicle and what went on again, counted from the events. It counts both ways, so that
//! came off = went back + replaced + left; the job's own count of what is off is compared with it.

use std::collections::{BTreeMap, BTreeSet};

use panside_job::{EntryValue, Event};
use panside_procedure::format::{Ask, Reuse, Step};
use serde::{Deserialize, Serialize};

use crate::by::By;
use crate::messages;
use crate::source::{Found, Source};

/// All pieces of the job.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Tally {
    /// By item, in file order; only what moved.
    pub items: Vec<Item>,
    /// All of them together.
    pub total: Pieces,
    /// Counts that came out short, with where the missing pieces are.
    pub accounted: Vec<Accounted>,
}

/// Pieces of one item.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Item {
    /// Item id.
    pub id: String,
    /// What it is.
    pub name: String,
    /// Whether the same piece may go back.
    pub reuse: Reuse,
    /// How many moved.
    pub pieces: Pieces,
}

/// How many pieces moved. Below zero only where the record is wrong.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pieces {
    /// Came off the vehicle.
    pub came_off: i32,
    /// The same pieces went back.
    pub went_back: i32,
    /// New ones went in, as the old may not be used again.
    pub replaced: i32,
    /// Are still off.
    pub left: i32,
}

/// A count that came out short and was accounted for.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Accounted {
    /// Step id.
    pub step: String,
    /// What is short, as "pan bolts 15 of 16".
    pub what: String,
    /// Where the missing pieces are.
    pub reason: String,
    /// Who says so.
    pub says: String,
    /// Who entered it, and when.
    pub by: By,
}

/// Pieces taken off and put back, by item id.
type Moved<'a> = BTreeMap<&'a str, (i32, i32)>;

/// The tally of a job.
pub(crate) fn of(source: Source<'_>) -> Tally {
    let moved = moved(source);
    let mut tally = Tally { items: Vec::new(), total: Pieces::default(), accounted: accounted(source) };
    for item in &source.job.procedure.checklist.items {
        let Some(&(came_off, back)) = moved.get(item.id.as_str()) else { continue };
        if (came_off, back) == (0, 0) {
            continue;
        }
        let (went_back, replaced) = if item.reuse == Reuse::Never { (0, back) } else { (back, 0) };
        let pieces = Pieces { came_off, went_back, replaced, left: came_off - back };
        tally.total.came_off += pieces.came_off;
        tally.total.went_back += pieces.went_back;
        tally.total.replaced += pieces.replaced;
        tally.total.left += pieces.left;
        let (id, name) = (item.id.clone(), item.name.clone());
        tally.items.push(Item { id, name, reuse: item.reuse, pieces });
    }
    tally
}

/// Pieces move when a step is done that was not worked before: not when it is done again, not when it is corrected. Where the
/// vehicle shows that a step cannot have been worked, its pieces did not move.
fn moved(source: Source<'_>) -> Moved<'_> {
    let steps: BTreeMap<&str, &Step> = source.steps().map(|(_, step, _)| (step.id.as_str(), step)).collect();
    let mut worked: BTreeSet<&str> = BTreeSet::new();
    let mut moved = Moved::new();
    let mut count = |id: &str, sign: i32| {
        let Some(step) = steps.get(id) else { return };
        for (item, pieces) in &step.takes_off {
            moved.entry(item).or_default().0 += sign * i32::from(*pieces);
        }
        for (item, pieces) in &step.puts_back {
            moved.entry(item).or_default().1 += sign * i32::from(*pieces);
        }
    };
    for happened in &source.job.happened {
        match &happened.event {
            Event::Done(done) if worked.insert(&done.step) => count(&done.step, 1),
            Event::Corrected(corrected) => {
                worked.insert(&corrected.step);
            }
            Event::Observed(observed) => {
                let undone = observed.undone.iter().filter(|step| worked.remove(step.as_str()));
                undone.for_each(|step| count(step, -1));
            }
            _ => {}
        }
    }
    moved
}

fn accounted(source: Source<'_>) -> Vec<Accounted> {
    let counts = source.entered().filter(Found::counts).filter_map(|found| {
        let EntryValue::Count { of, accounted: Some(told) } = &found.value.value else { return None };
        let Ask::Count(asked) = &found.entry?.ask else { return None };
        let short = asked.of.iter().filter_map(|(id, &expected)| {
            let counted = of.get(id).copied().unwrap_or(0);
            let name = source.job.procedure.checklist.item_name(id);
            (counted < u32::from(expected)).then(|| {
                let short = messages::pieces_short(name, counted.to_string(), expected.to_string());
                source.say.within(&short)
            })
        });
        Some(Accounted {
            step: found.step.id.clone(),
            what: source.say.listed(short),
            reason: told.reason.clone(),
            says: source.job.people.called(told.by, found.value.mark.seq),
            by: source.by(&found.value.mark),
        })
    });
    counts.collect()
}
