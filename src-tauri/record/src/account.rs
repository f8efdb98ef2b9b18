//! Concern, cause and correction, what the customer agreed to, and what names the vehicle: found among the entries by
//! what the checklist calls them or asks for, so that no checklist needs a place of its own for them.

use std::collections::BTreeMap;

use panside_job::EntryValue;
use panside_procedure::format::entry::ScanOf;
use panside_procedure::format::{Ask, Role, SignKind};
use panside_trade::units::{Quantity, Unit};
use serde::{Deserialize, Serialize};

use crate::by::By;
use crate::source::{Found, Source, in_attempt};
use crate::value::{self, Figures};

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
    /// What is advised to be done next.
    pub advice: Vec<Said>,
    /// What became of the old parts, the last that was said.
    pub old_parts: Option<Said>,
}

/// A go-ahead of the customer: a step at which the service writer signs that it was given.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Authorized {
    /// Step id.
    pub step: String,
    /// What it was for: the step's title.
    pub title: String,
    /// What was told, answered and agreed.
    pub agreed: Vec<Said>,
    /// Who signed it.
    pub signed_by: String,
    /// When.
    pub by: By,
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
    /// Every note, choice or scan that counts and belongs to one of them: its own id or its step's id is the
    /// word or begins with the word and `_`, or its step is tagged with the word.
    pub(crate) fn of(source: Source<'_>) -> Account {
        let said = |word: &str| {
            let found = source.entered().filter(|found| found.counts() && belongs(found, word));
            found.map(|found| Said::of(source, &found)).collect()
        };
        Account {
            concern: said("concern"),
            cause: said("cause"),
            correction: said("correction"),
            advice: said("advice"),
            old_parts: said("old_parts").pop(),
        }
    }
}

impl Said {
    pub(crate) fn of(source: Source<'_>, found: &Found<'_>) -> Said {
        Said {
            step: found.step.id.clone(),
            label: found.label(),
            text: value::text(source, found.entry.map(|entry| &entry.ask), found.value, Figures::Typed),
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

/// What was last answered, scanned or noted under this name, such as the plate.
pub(crate) fn named(source: Source<'_>, word: &str) -> Option<String> {
    let found = source.entered().filter(|found| found.counts() && belongs(found, word));
    found.map(|found| Said::of(source, &found).text).filter(|text| !text.is_empty()).last()
}

/// The odometer as it came in and, where it was read again, as it left: distances that were read and count, as typed.
pub(crate) fn odometer(source: Source<'_>) -> (Option<String>, Option<String>) {
    let read = source.entered().filter(Found::counts).filter_map(|found| match &found.value.value {
        EntryValue::Reading { value, unit } => {
            let unit: Unit = unit.parse().ok()?;
            let is_distance = unit.quantity() == Quantity::Distance;
            is_distance.then(|| (found.value.mark.seq, source.say.as_typed(value, unit.symbol())))
        }
        _ => None,
    });
    let by_time: BTreeMap<u64, String> = read.collect();
    let mut by_time = by_time.into_values();
    (by_time.next(), by_time.last())
}

/// Every go-ahead that counts, in file order.
pub(crate) fn authorized(source: Source<'_>) -> Vec<Authorized> {
    let signs = &source.job.procedure.checklist.sign_offs;
    let asks_writer = |sign: &str| {
        let asked = signs.iter().find(|asked| asked.id == sign);
        asked.is_some_and(|asked| asked.kind == SignKind::Permit && asked.by == Some(Role::ServiceWriter))
    };
    let given = source.steps().filter_map(|(_, step, detail)| {
        let attempt = detail.counts()?;
        let signed = attempt.signs.iter().find(|signature| asks_writer(&signature.sign))?;
        let (_, mark) = attempt.ended.as_ref()?;
        let said = in_attempt(step, detail, attempt).filter(Found::counts);
        let said = said.filter(|found| found.entry.is_some_and(|entry| entry.ask.answers()));
        // The amount comes before what was answered by a tap.
        let (notes, taps): (Vec<_>, Vec<_>) = said.partition(|found| {
            matches!(found.value.value, EntryValue::Note { .. } | EntryValue::Authorization(_))
        });
        Some(Authorized {
            step: step.id.clone(),
            title: step.title.clone(),
            agreed: notes.iter().chain(&taps).map(|found| Said::of(source, found)).collect(),
            signed_by: source.job.people.called(signed.by, mark.seq),
            by: source.by(mark),
        })
    });
    given.collect()
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
            Some(value::text(source, Some(&next.ask), answer, Figures::Typed))
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
