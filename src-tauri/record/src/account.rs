//! Concern, cause and correction, and what names the vehicle: found among the entries by what the checklist calls
//! them, so that no checklist needs a place of its own for them.

use panside_job::EntryValue;
use panside_procedure::format::Ask;
use panside_procedure::format::entry::ScanOf;
use panside_trade::units::{Quantity, Unit};
use serde::{Deserialize, Serialize};

use crate::by::By;
use crate::source::{Found, Source};
use crate::value;

/// What was the matter, why, and what was done about it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Account {
    /// The customer's concern. Empty: not entered.
    pub concern: Vec<Said>,
    /// Its cause. Empty: not entered.
    pub cause: Vec<Said>,
    /// The correction. Empty: not entered.
    pub correction: Vec<Said>,
}

/// One answer or note.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Said {
    /// Step id.
    pub step: String,
    /// What was asked.
    pub label: String,
    /// What was said.
    pub text: String,
    /// Who entered it, and when.
    pub by: By,
}

/// Codes as they were read at one time, and what was said of them.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Codes {
    /// Step id.
    pub step: String,
    /// What was asked.
    pub label: String,
    /// The codes; none is an answer too.
    pub codes: Vec<String>,
    /// The answer that the checklist asks for right after the codes: whether they bear on the concern or are set
    /// apart.
    pub said: Option<String>,
    /// Who read them, and when.
    pub by: By,
}

impl Account {
    /// Every note, choice or scan that counts and belongs to one of the three: its own id or its step's id is the
    /// word or begins with the word and `_`, or its step is tagged with the word.
    pub(crate) fn of(source: Source<'_>) -> Account {
        let said = |word: &str| {
            let found = source.entered().filter(|found| found.counts() && belongs(found, word));
            found.map(|found| Said::of(source, &found)).collect()
        };
        Account { concern: said("concern"), cause: said("cause"), correction: said("correction") }
    }
}

impl Said {
    pub(crate) fn of(source: Source<'_>, found: &Found<'_>) -> Said {
        Said {
            step: found.step.id.clone(),
            label: found.label(),
            text: value::text(source, found.entry.map(|entry| &entry.ask), found.value),
            by: source.by(&found.value.mark),
        }
    }
}

fn belongs(found: &Found<'_>, word: &str) -> bool {
    let named = |id: &str| id.strip_prefix(word).is_some_and(|rest| rest.is_empty() || rest.starts_with('_'));
    let tells = found.entry.is_some_and(|entry| entry.ask.answers());
    tells
        && (named(&found.value.entry)
            || named(&found.step.id)
            || found.step.tags.iter().any(|tag| tag == word))
}

/// The vehicle identification number that counts, where the checklist asks for one; the last read.
pub(crate) fn vin(source: Source<'_>) -> Option<String> {
    let read = source.entered().filter_map(|found| match (&found.entry?.ask, &found.value.value) {
        (Ask::Scan(asked), EntryValue::Scan { text }) if asked.of == ScanOf::Vin && found.counts() => {
            Some(text.clone())
        }
        _ => None,
    });
    read.last()
}

/// The odometer as it came in: the first distance that was read and counts, as typed.
pub(crate) fn odometer(source: Source<'_>) -> Option<String> {
    source.entered().filter(Found::counts).find_map(|found| match &found.value.value {
        EntryValue::Reading { value, unit } => {
            let unit: Unit = unit.parse().ok()?;
            (unit.quantity() == Quantity::Distance).then(|| format!("{value} {unit}"))
        }
        _ => None,
    })
}

/// Every reading of codes that counts.
pub(crate) fn codes(source: Source<'_>) -> Vec<Codes> {
    let found = source.entered().filter(Found::counts).filter_map(|found| {
        let entry = found.entry?;
        let (Ask::Scan(asked), EntryValue::Scan { text }) = (&entry.ask, &found.value.value) else {
            return None;
        };
        let place = found.step.entries.iter().position(|other| std::ptr::eq(other, entry))?;
        let next = found.step.entries.get(place + 1).filter(|next| matches!(next.ask, Ask::Choice(_)));
        let said = next.and_then(|next| {
            let answer = found.attempt.latest(&next.id)?;
            Some(value::text(source, Some(&next.ask), answer))
        });
        (asked.of == ScanOf::Codes).then(|| Codes {
            step: found.step.id.clone(),
            label: found.label(),
            codes: text.split_whitespace().map(str::to_owned).collect(),
            said,
            by: source.by(&found.value.mark),
        })
    });
    found.collect()
}
