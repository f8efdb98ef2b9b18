//! How long the job and its parts took.

use super::make::At;
use crate::clock::{MINUTE_MS, elapsed_ms};

/// Whole minutes that have passed.
pub(super) fn minutes(ms: u64) -> u64 {
    ms / MINUTE_MS
}

/// Minutes since the start, or until the end. Added up from event to event, so that a wall clock that was set between
/// two boots spoils one gap and not the whole.
pub(super) fn since_start(at: At<'_>) -> u64 {
    let mut stamps: Vec<_> = at.job.happened.iter().map(|happened| happened.stamp).collect();
    if at.job.end.is_none() && !stamps.is_empty() {
        stamps.push(*at.now);
    }
    let gaps = stamps.windows(2).map(|pair| elapsed_ms(&pair[0], &pair[1]).unwrap_or(0));
    minutes(gaps.sum())
}

/// Milliseconds that people were in the steps of each phase. What was entered later or corrected took no time that is
/// known.
pub(super) fn by_phase(at: At<'_>) -> Vec<u64> {
    let procedure = &at.job.procedure;
    let mut phases = vec![0; procedure.checklist.phases.len()];
    for (step, _) in procedure.steps() {
        let worked = at.job.step(step).attempts.iter().filter(|attempt| !attempt.corrected && !attempt.later);
        for attempt in worked {
            let end = attempt.ended.as_ref().map_or(at.now, |(_, mark)| &mark.stamp);
            phases[procedure.machine.steps[step.at()].phase.at()] +=
                elapsed_ms(&attempt.begun.stamp, end).unwrap_or(0);
        }
    }
    phases
}
