//! How the vehicle stood over the job, for drawing it along the clock.

use std::sync::Arc;

use panside_job::Job;
use panside_procedure::machine::VarIx;
use serde::{Deserialize, Serialize};

use crate::by::By;
use crate::source::Source;

/// What a condition must draw to be told over time: how high the vehicle is, and its engine.
const TOLD: &[&str] = &["lift", "engine"];

/// One condition from the start of the job to its end.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Track {
    /// Condition id.
    pub condition: String,
    /// Which part of the vehicle shows it: `lift` or `engine`.
    pub draws: String,
    /// Every value that it can have, as people read it, in the order of the checklist; the first is at rest.
    pub values: Vec<String>,
    /// Each value that it had, as people read it, and since when.
    pub had: Vec<Had>,
}

/// A value that a condition had.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Had {
    /// The value, as people read it.
    pub value: String,
    /// The event since which it had it.
    pub since: By,
}

/// The conditions that are told over time. The job is made anew from its events, so that what a step, a vehicle action, an
/// observation or physics changed is all in it.
pub(crate) fn of(source: Source<'_>) -> Vec<Track> {
    let conditions = source.job.procedure.checklist.conditions.iter().enumerate();
    let mut tracks: Vec<(VarIx, Track)> = conditions
        .filter_map(|(at, condition)| {
            let draws = condition.draws.clone().filter(|draws| TOLD.contains(&draws.as_str()))?;
            let values = condition.values.iter().map(|value| value.label.clone()).collect();
            let condition = condition.id.clone();
            Some((VarIx::of(at), Track { condition, draws, values, had: Vec::new() }))
        })
        .collect();
    let mut job = Job::new(Arc::clone(&source.job.procedure), Arc::clone(&source.job.specs));
    for happened in &source.job.happened {
        job.take(happened.clone());
        for (var, track) in &mut tracks {
            let value =
                job.procedure.value_label(*var, job.procedure.machine.value(&job.state, *var)).to_owned();
            if track.had.last().is_none_or(|last| last.value != value) {
                track.had.push(Had { value, since: source.by(&source.job.mark(happened)) });
            }
        }
    }
    tracks.into_iter().map(|(_, track)| track).collect()
}
