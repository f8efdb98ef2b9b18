//! An open job as the planner takes it: where it stands, how long what runs has run, and what was entered already.
//!
//! It gives where an open job stands, the clock included. More people than the checklist's crew are planned for by
//! `with_crew`.

use std::collections::BTreeMap;
use std::sync::Arc;

use panside_journal::Stamp;
use panside_procedure::machine::{OutcomeIx, StepIx};
use panside_procedure::plan::{MOST_PEOPLE, Minutes, NoPlan, Start, Task, WALK};

use crate::change::gates;
use crate::clock::{MINUTE_MS, surely_ms};
use crate::decide::aged;
use crate::job::{EndedBy, Job};

/// How many people the job's checklist lets be in steps at a time, as far as plans go.
#[must_use]
pub fn crew(job: &Job) -> usize {
    job.procedure.machine.people().clamp(1, MOST_PEOPLE)
}

/// The job as it would stand if its checklist let so many people be in steps at a time: its events are gone through once
/// more. It is to plan with, never to enter at: the rules of the live job are those that were proved.
///
/// # Errors
/// [`NoPlan::People`], [`NoPlan::Crew`].
pub fn with_crew(job: &Job, people: usize) -> Result<Job, NoPlan> {
    let crew = u8::try_from(people).ok().filter(|_| (1..=MOST_PEOPLE).contains(&people));
    let procedure = job.procedure.with_crew(crew.ok_or(NoPlan::People)?);
    let procedure = procedure.map_err(|problems| NoPlan::Crew { people, problems })?;
    Ok(Job::fold(Arc::new(procedure), Arc::clone(&job.specs), job.happened.iter().cloned()))
}

/// What is to be planned from now on, for all whom the checklist lets be in steps at a time. Each entry turns out as it was entered in the step in progress, else as usual.
#[must_use]
pub fn task<'a>(job: &'a Job, now: &Stamp) -> Task<'a> {
    let procedure = &*job.procedure;
    let (state, _) = aged(job, now);
    let in_progress: Vec<StepIx> = procedure.machine.begun(&state).collect();
    let start = Start {
        at: last_zone(job),
        in_progress: in_progress
            .iter()
            .filter_map(|&step| Some((step, minutes_in(job, step, now)?)))
            .collect(),
        waited: waited(job, now),
        left: left(job, &in_progress, now),
        ages: ages(job, now),
        state,
    };
    let outcomes = procedure.steps().map(|(step, _)| outcome(job, step)).collect();
    let timer = |key: &str| job.specs.measure(key).map(|measure| measure.value());
    Task { procedure, minutes: Minutes::of(procedure, WALK, &timer), outcomes, start, people: crew(job) }
}

/// How a step turns out, as far as it is entered already.
fn outcome(job: &Job, step: StepIx) -> OutcomeIx {
    let attempt = job.step(step).in_progress();
    let entered = attempt.into_iter().flat_map(|attempt| &attempt.entries);
    let given: BTreeMap<String, String> =
        entered.map(|value| (value.entry.clone(), value.class.clone())).collect();
    job.procedure.usual_outcome(step, &given)
}

/// Where whoever worked last was. With several people nobody knows who is where.
fn last_zone(job: &Job) -> Option<panside_procedure::format::Zone> {
    if job.procedure.machine.people() > 1 {
        return None;
    }
    let ended = job.procedure.steps().filter_map(|(step, text)| {
        let (_, mark) = job.step(step).attempts.last()?.ended.as_ref()?;
        Some((mark.seq, text.zone))
    });
    ended.max_by_key(|&(seq, _)| seq).map(|(_, zone)| zone)
}

fn minutes_in(job: &Job, step: StepIx, now: &Stamp) -> Option<u32> {
    Some(minutes(&job.step(step).in_progress()?.begun.stamp, now))
}

/// How long steps were left whose hands were free.
fn left(job: &Job, in_progress: &[StepIx], now: &Stamp) -> BTreeMap<StepIx, u32> {
    let steps = job.procedure.steps().filter(|(step, text)| {
        text.wait.as_ref().is_some_and(|wait| wait.attended == Some(false)) && !in_progress.contains(step)
    });
    let ran = steps.filter_map(|(step, _)| match job.step(step).attempts.last()?.ended.as_ref()? {
        (EndedBy::Left, mark) => Some((step, minutes(&mark.stamp, now))),
        (EndedBy::Done, _) => None,
    });
    ran.collect()
}

/// How long what a step waits for has held without a break: the events are gone through once more.
fn waited(job: &Job, now: &Stamp) -> BTreeMap<StepIx, u32> {
    let procedure = &job.procedure;
    let waits: Vec<_> =
        procedure.steps().filter_map(|(step, _)| Some((step, procedure.waits_since(step)?))).collect();
    let mut since: Vec<Option<Stamp>> = vec![None; waits.len()];
    let mut then = Job::new(procedure.clone(), job.specs.clone());
    for happened in &job.happened {
        then.take(happened.clone());
        for ((_, holds), since) in waits.iter().zip(&mut since) {
            *since = holds.holds(&then.state).then(|| since.unwrap_or(happened.stamp));
        }
    }
    let ran = waits.iter().zip(since).filter_map(|(&(step, _), since)| Some((step, minutes(&since?, now))));
    ran.collect()
}

fn ages(job: &Job, now: &Stamp) -> BTreeMap<panside_procedure::machine::VarIx, u32> {
    let known = gates(&job.procedure)
        .filter_map(|gate| Some((gate, minutes(&job.gate(gate).set.as_ref()?.from, now))));
    known.collect()
}

/// Whole minutes that have passed for sure.
fn minutes(from: &Stamp, now: &Stamp) -> u32 {
    u32::try_from(surely_ms(from, now) / MINUTE_MS).unwrap_or(u32::MAX)
}
