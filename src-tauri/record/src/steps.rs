//! Every entry of the job, by phase and step, each with what became of it. Nothing is left out: what was voided or
//! replaced stays readable.

use panside_job::job::{Attempt as WorkedAttempt, EndedBy, StepDetail};
use panside_procedure::Shown;
use panside_procedure::format::entry::SIGNED;
use panside_procedure::format::{Ask, Signal, Step as StepText, Zone};
use serde::{Deserialize, Serialize};

use crate::by::By;
use crate::limits::{Limit, limits};
pub use crate::source::Standing;
use crate::source::{Found, Source, in_attempt, standing};
use crate::value::{self, Figures};
use crate::{messages, worked};

/// A part of the job.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Phase {
    /// Phase id.
    pub id: String,
    /// What the technician reads.
    pub title: String,
    /// Its steps, in file order; also those that nobody was in.
    pub steps: Vec<Step>,
}

/// One step.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Step {
    /// Its place in the checklist, from 1.
    pub number: usize,
    /// Step id.
    pub id: String,
    /// A few words.
    pub title: String,
    /// Where the person is.
    pub zone: Zone,
    /// The cautions that stand before it.
    pub cautions: Vec<Warned>,
    /// How it stands.
    pub shown: Shown,
    /// Attempts, oldest first.
    pub attempts: Vec<Attempt>,
}

/// A caution that was shown before a step.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Warned {
    /// The signal word.
    pub signal: Signal,
    /// The hazard and how to avoid it.
    pub text: String,
}

/// How an attempt ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Ended {
    /// With the step done.
    Done,
    /// The step was left before it was done.
    Left,
    /// Not yet: the step is in progress.
    InProgress,
}

/// One attempt at a step.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Attempt {
    /// When it began, and by whom.
    pub begun: By,
    /// How it ended.
    pub how: Ended,
    /// When it ended, and by whom.
    pub ended: Option<By>,
    /// No work: a voided step corrected afterwards.
    pub corrected: bool,
    /// Done before and entered only when it says.
    pub later: bool,
    /// Since when it no longer counts.
    pub void: Option<By>,
    /// Why it no longer counts.
    pub void_reason: Option<String>,
    /// What was entered, oldest first, then the signatures given with *Done*.
    pub entries: Vec<Entry>,
}

/// One value that was entered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Entry {
    /// Entry id.
    pub entry: String,
    /// What the control says.
    pub label: String,
    /// The kind, as the checklist names it.
    pub kind: String,
    /// The value, figures as typed.
    pub value: String,
    /// The value as it is shown, where the language writes its figures in another way.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub shown: Option<String>,
    /// What it turned out to be, as decided then.
    pub class: String,
    /// What the class is called.
    pub called: String,
    /// The class says more than the value.
    pub judged: bool,
    /// What has become of it.
    pub standing: Standing,
    /// Who entered it, and when.
    pub by: By,
    /// What the sheet allows, where it was judged.
    pub limits: Vec<Limit>,
    /// How it came about, step by step, where it was worked out.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub how: Vec<String>,
}

impl Entry {
    /// The value as it is shown.
    pub(crate) fn shows(&self) -> &str {
        self.shown.as_ref().unwrap_or(&self.value)
    }

    pub(crate) fn counts(&self) -> bool {
        self.standing == Standing::Counts
    }
}

/// Every phase with its steps.
pub(crate) fn of(source: Source<'_>) -> Vec<Phase> {
    let procedure = &source.job.procedure;
    let mut phases: Vec<Phase> = procedure
        .checklist
        .phases
        .iter()
        .map(|phase| Phase { id: phase.id.clone(), title: phase.title.clone(), steps: Vec::new() })
        .collect();
    for (number, step, detail) in source.steps() {
        let phase = procedure.machine.steps[number.at()].phase.at();
        phases[phase].steps.push(Step {
            number: number.at() + 1,
            id: step.id.clone(),
            title: step.title.clone(),
            zone: step.zone,
            cautions: step
                .cautions
                .iter()
                .map(|caution| Warned { signal: caution.signal, text: caution.text.clone() })
                .collect(),
            shown: procedure.machine.shown(&source.job.state, number),
            attempts: detail
                .attempts
                .iter()
                .map(|attempt| attempt_of(source, step, detail, attempt))
                .collect(),
        });
    }
    phases
}

fn attempt_of(source: Source<'_>, step: &StepText, detail: &StepDetail, attempt: &WorkedAttempt) -> Attempt {
    let mut entries: Vec<_> =
        in_attempt(step, detail, attempt).map(|found| entry_of(source, &found)).collect();
    entries.extend(signatures(source, step, detail, attempt));
    Attempt {
        begun: source.by(&attempt.begun),
        how: match attempt.ended {
            Some((EndedBy::Done, _)) => Ended::Done,
            Some((EndedBy::Left, _)) => Ended::Left,
            None => Ended::InProgress,
        },
        ended: attempt.ended.as_ref().map(|(_, mark)| source.by(mark)),
        corrected: attempt.corrected,
        later: attempt.later,
        void: attempt.void.as_ref().map(|mark| source.by(mark)),
        void_reason: attempt.void.as_ref().map(|mark| {
            let void = detail.voids.iter().find(|void| void.reason.mark.seq == mark.seq);
            let voided = void.map(|void| source.say.within(&messages::voided_because(&void.reason.text)));
            voided.unwrap_or_else(|| source.what(mark.seq))
        }),
        entries,
    }
}

fn entry_of(source: Source<'_>, found: &Found<'_>) -> Entry {
    let ask = found.entry.map(|entry| &entry.ask);
    let text = |figures| value::text(source, ask, found.value, figures);
    let (value, shown) = (text(Figures::Typed), text(Figures::Shown));
    Entry {
        entry: found.value.entry.clone(),
        label: found.label(),
        kind: found.value.value.kind().to_owned(),
        shown: (shown != value).then_some(shown),
        value,
        class: found.value.class.clone(),
        called: source.class_label(ask, &found.value.class),
        judged: ask.is_some_and(Ask::judges),
        standing: found.standing,
        by: source.by(&found.value.mark),
        limits: ask.map(|ask| limits(ask, &source.job.specs.sheet, source.say)).unwrap_or_default(),
        how: worked::how(source, found),
    }
}

/// Signatures are given with *Done* and not entered one by one.
fn signatures(
    source: Source<'_>,
    step: &StepText,
    detail: &StepDetail,
    attempt: &WorkedAttempt,
) -> Vec<Entry> {
    let Some((_, given)) = &attempt.ended else { return Vec::new() };
    let signs = attempt.signs.iter().map(|signature| {
        let asked = step
            .entries
            .iter()
            .find(|entry| matches!(&entry.ask, Ask::SignOff(asked) if asked.sign == signature.sign));
        Entry {
            entry: asked.map_or_else(|| signature.sign.clone(), |entry| entry.id.clone()),
            label: asked.map_or(&signature.sign, |entry| &entry.label).clone(),
            kind: "sign_off".to_owned(),
            value: source.say.within(&messages::value_signed(
                source.job.people.called(signature.by, given.seq),
                signature.role,
            )),
            shown: None,
            class: SIGNED.to_owned(),
            called: source.class_label(asked.map(|entry| &entry.ask), SIGNED),
            judged: false,
            standing: standing(detail, attempt),
            by: source.by(given),
            limits: Vec::new(),
            how: Vec::new(),
        }
    });
    signs.collect()
}
