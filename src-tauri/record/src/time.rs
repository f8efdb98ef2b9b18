//! How long the work took: planned, unplanned and waiting, by phase and in all.
//!
//! An attempt counts from being begun to being done or left, by the monotonic clock within one boot of the
//! device, else by the wall clock. Minutes are whole and rounded down one by one, so that parts may add up to a little
//! less than their sum.

use panside_job::EntryValue;
use panside_job::clock::elapsed_ms;
use panside_job::job::{Attempt, EnteredValue};
use panside_journal::Stamp;
use panside_procedure::format::Step;
use serde::{Deserialize, Serialize};

use crate::source::Source;

/// Tag of a step whose work was not planned.
const UNPLANNED: &str = "unplanned";
/// Tag of a step that is waiting: cooling, draining, curing. A wait that somebody must attend, such as a fire watch, is
/// work and has the other tag as well, or none.
const WAITING: &str = "waiting";

/// Time on the job, in whole minutes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Time {
    /// In the steps of the job, by kind.
    pub in_steps: Minutes,
    /// From the first event to the end of the job, or to when the record was made.
    pub total: u64,
    /// By phase, in file order.
    pub phases: Vec<PhaseTime>,
    /// Steps that were unplanned or waiting, in file order.
    pub apart: Vec<StepTime>,
    /// Attempts whose time is not known: entered in one go or later, or over a clock that went back. They are
    /// not in the minutes.
    pub untimed: u64,
    /// Gaps between two events over which the clock went back. They are not in the total.
    pub unknown_gaps: u64,
}

/// Minutes by kind of work.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Minutes {
    /// Work that the checklist plans for every job.
    pub planned: u64,
    /// Steps tagged `unplanned`, whether they wait or not.
    pub unplanned: u64,
    /// Steps tagged `waiting`.
    pub waiting: u64,
}

/// Time in one phase.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PhaseTime {
    /// Phase id.
    pub phase: String,
    /// What the technician reads.
    pub title: String,
    /// Minutes in its steps.
    pub minutes: Minutes,
}

/// The kind of work of a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// Neither of the others.
    Planned,
    /// Tagged `unplanned`.
    Unplanned,
    /// Tagged `waiting`.
    Waiting,
}

/// Time in one step.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StepTime {
    /// Step id.
    pub step: String,
    /// A few words.
    pub title: String,
    /// Its kind.
    pub kind: Kind,
    /// Minutes in it.
    pub minutes: u64,
    /// Why, where the step asks for a note.
    pub reasons: Vec<String>,
}

impl Minutes {
    /// What somebody worked: planned or not, without waiting.
    #[must_use]
    pub fn labor(self) -> u64 {
        self.planned + self.unplanned
    }
}

/// Milliseconds by kind, in the order of [`Minutes`].
#[derive(Clone, Copy, Default)]
struct Ms([u64; 3]);

impl Ms {
    fn add(&mut self, kind: Kind, ms: u64) {
        self.0[kind as usize] += ms;
    }

    fn minutes(self) -> Minutes {
        let [planned, unplanned, waiting] = self.0.map(whole_minutes);
        Minutes { planned, unplanned, waiting }
    }
}

/// The time of a job. A step in progress is timed up to the job's end, or up to when the record was made.
pub(crate) fn of(source: Source<'_>, generated: &Stamp) -> Time {
    let job = source.job;
    let until = job.end.as_ref().map_or(generated, |end| &end.stamp);
    let phases = &job.procedure.checklist.phases;
    let mut by_phase = vec![Ms::default(); phases.len()];
    let (mut all, mut untimed, mut apart) = (Ms::default(), 0, Vec::new());
    for (number, step, detail) in source.steps() {
        let kind = kind(step);
        // What is corrected afterwards is no work.
        let attempts = detail.attempts.iter().filter(|attempt| !attempt.corrected);
        let times: Vec<_> = attempts.map(|attempt| worked_ms(attempt, until)).collect();
        let ms = times.iter().flatten().sum();
        untimed += times.iter().filter(|time| time.is_none()).count() as u64;
        by_phase[job.procedure.machine.steps[number.at()].phase.at()].add(kind, ms);
        all.add(kind, ms);
        if kind != Kind::Planned && !times.is_empty() {
            apart.push(StepTime {
                step: step.id.clone(),
                title: step.title.clone(),
                kind,
                minutes: whole_minutes(ms),
                reasons: detail.counts().map(reasons).unwrap_or_default(),
            });
        }
    }
    let gaps = gaps(source, generated);
    let by_phase = phases.iter().zip(by_phase).map(|(phase, ms)| PhaseTime {
        phase: phase.id.clone(),
        title: phase.title.clone(),
        minutes: ms.minutes(),
    });
    Time {
        in_steps: all.minutes(),
        total: whole_minutes(gaps.iter().flatten().sum()),
        phases: by_phase.collect(),
        apart,
        untimed,
        unknown_gaps: gaps.iter().filter(|gap| gap.is_none()).count() as u64,
    }
}

/// The notes of an attempt.
fn reasons(attempt: &Attempt) -> Vec<String> {
    let latest =
        |value: &&EnteredValue| attempt.latest(&value.entry).is_some_and(|last| std::ptr::eq(last, *value));
    let notes = attempt.entries.iter().filter(latest).filter_map(|value| match &value.value {
        EntryValue::Note { text } if !text.trim().is_empty() => Some(text.clone()),
        _ => None,
    });
    notes.collect()
}

fn kind(step: &Step) -> Kind {
    let tagged = |tag: &str| step.tags.iter().any(|found| found == tag);
    if tagged(UNPLANNED) {
        Kind::Unplanned
    } else if tagged(WAITING) {
        Kind::Waiting
    } else {
        Kind::Planned
    }
}

fn worked_ms(attempt: &Attempt, until: &Stamp) -> Option<u64> {
    let end = attempt.ended.as_ref().map_or(until, |(_, mark)| &mark.stamp);
    // What was begun and done by one command was worked before it was entered.
    let at_once = attempt.ended.as_ref().is_some_and(|(_, mark)| mark.stamp == attempt.begun.stamp);
    if attempt.later || at_once { None } else { elapsed_ms(&attempt.begun.stamp, end) }
}

/// Times from event to event, so that a wall clock that was set between two boots spoils one gap and not the whole.
fn gaps(source: Source<'_>, generated: &Stamp) -> Vec<Option<u64>> {
    let mut stamps: Vec<_> = source.job.happened.iter().map(|happened| happened.stamp).collect();
    if source.job.end.is_none() && !stamps.is_empty() {
        stamps.push(*generated);
    }
    stamps.windows(2).map(|pair| elapsed_ms(&pair[0], &pair[1])).collect()
}

fn whole_minutes(ms: u64) -> u64 {
    ms / 60_000
}
