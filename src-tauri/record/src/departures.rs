//! Where the job went otherwise than planned: voided, skipped, missed, not as shown, the clock set, the
//! tablet restarted.

use panside_job::clock::elapsed_ms;
use panside_job::entry::WorkedOut;
use panside_job::{EntryValue, Event, Mark};
use serde::{Deserialize, Serialize};

use crate::by::By;
use crate::messages;
use crate::source::{Found, Source, Standing};

/// What was entered at a step and was voided. The entries stay in [`crate::steps`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Voided {
    /// Step id.
    pub step: String,
    /// A few words.
    pub title: String,
    /// Why.
    pub reason: String,
    /// Who voided it, and when.
    pub by: By,
    /// The title of the step it builds on and was voided with. Nothing: it was voided itself.
    pub with: Option<String>,
    /// It was corrected or done again since.
    pub corrected: bool,
}

/// A step that was dealt with in words: skipped, or missed and explained.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Explained {
    /// Step id.
    pub step: String,
    /// A few words.
    pub title: String,
    /// Why.
    pub reason: String,
    /// Who said so, and when.
    pub by: By,
}

/// Something that a checklist lets pass only with a reason and a name: a tool excepted, a balance explained, a level
/// given up, a decision against its table.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ByName {
    /// Step id.
    pub step: String,
    /// What the control says.
    pub label: String,
    /// What the value turned out to be.
    pub class: String,
    /// What the class is called.
    pub called: String,
    /// The reason that was given.
    pub reason: String,
    /// Who answers for it.
    pub said_by: String,
    /// What has become of the entry.
    pub standing: Standing,
    /// Who entered it, and when.
    pub by: By,
}

/// The vehicle was not as shown.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Observed {
    /// The condition, as people read it.
    pub condition: String,
    /// The value it had, as people read it.
    pub value: String,
    /// How it came to that.
    pub reason: String,
    /// Titles of steps that cannot have been worked.
    pub undone: Vec<String>,
    /// Dangers that held then, as the checklist tells them.
    pub dangers: Vec<String>,
    /// Who saw it, and when.
    pub by: By,
}

/// A vehicle action.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct VehicleAction {
    /// Vehicle action id.
    pub id: String,
    /// What the button says.
    pub title: String,
    /// What conditions it changed, as "lift: on locks".
    pub makes: Vec<String>,
    /// Who made it, and when.
    pub by: By,
}

/// The wall clock was set.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ClockSet {
    /// By how many seconds; positive forward.
    pub seconds: i64,
    /// The event, with the time after it.
    pub by: By,
}

/// The tablet was restarted, so that nothing measured the time since the event before.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Restarted {
    /// Whole minutes since the event before, by the wall clock, which may have been set; nothing where it went back.
    pub minutes: Option<u64>,
    /// The first event after it.
    pub by: By,
}

/// Everything that passed by a reason and a name. What a count accounts for stands with the items.
pub(crate) fn by_name(source: Source<'_>) -> Vec<ByName> {
    let named = source.entered().filter_map(|found| {
        if matches!(found.value.value, EntryValue::Count { .. }) {
            return None;
        }
        let told = found.value.value.accounted()?;
        Some(ByName {
            step: found.step.id.clone(),
            label: found.label(),
            class: found.value.class.clone(),
            called: called(source, &found),
            reason: told.reason.clone(),
            said_by: source.job.people.called(told.by, found.value.mark.seq),
            standing: found.standing,
            by: source.by(&found.value.mark),
        })
    });
    named.collect()
}

/// What a class is called, and that it is against a table.
fn called(source: Source<'_>, found: &Found<'_>) -> String {
    let ask = found.entry.map(|entry| &entry.ask);
    let called = source.class_label(ask, &found.value.class);
    match &found.value.worked_out {
        Some(WorkedOut::Decision(result)) => {
            source.say.within(&messages::called_against(called, source.class_label(ask, &result.table)))
        }
        _ => called,
    }
}

/// Everything that was voided, in file order of the steps.
pub(crate) fn voided(source: Source<'_>) -> Vec<Voided> {
    let voids = source.steps().flat_map(|(_, step, detail)| {
        detail.voids.iter().map(move |void| Voided {
            step: step.id.clone(),
            title: step.title.clone(),
            reason: void.reason.text.clone(),
            by: source.by(&void.reason.mark),
            with: void.with.as_ref().map(|with| source.title(with)),
            corrected: detail.counts().is_some(),
        })
    });
    voids.collect()
}

/// Steps that were skipped.
pub(crate) fn skipped(source: Source<'_>) -> Vec<Explained> {
    let skipped = source.steps().filter_map(|(_, step, detail)| {
        let why = detail.skipped.as_ref()?;
        Some(explained(source, &step.id, &step.title, &why.text, &why.mark))
    });
    skipped.collect()
}

/// Steps that were missed and explained.
pub(crate) fn missed(source: Source<'_>) -> Vec<Explained> {
    let missed = source.steps().filter_map(|(_, step, detail)| {
        let why = detail.missed.as_ref()?;
        Some(explained(source, &step.id, &step.title, &why.text, &why.mark))
    });
    missed.collect()
}

fn explained(source: Source<'_>, step: &str, title: &str, reason: &str, mark: &Mark) -> Explained {
    Explained {
        step: step.to_owned(),
        title: title.to_owned(),
        reason: reason.to_owned(),
        by: source.by(mark),
    }
}

/// Every time the vehicle was not as shown.
pub(crate) fn observed(source: Source<'_>) -> Vec<Observed> {
    let dangers = &source.job.procedure.checklist.dangers;
    let danger = |id: &String| {
        dangers.iter().find(|danger| danger.id == *id).map_or(id, |danger| &danger.text).clone()
    };
    let seen = source.job.happened.iter().filter_map(|happened| match &happened.event {
        Event::Observed(body) => {
            let (condition, value) = source.job.procedure.labels_of(&body.condition, &body.value);
            Some(Observed {
                condition: condition.to_owned(),
                value: value.to_owned(),
                reason: body.reason.clone(),
                undone: body.undone.iter().map(|step| source.title(step)).collect(),
                dangers: body.dangers.iter().map(danger).collect(),
                by: source.by(&source.job.mark(happened)),
            })
        }
        _ => None,
    });
    seen.collect()
}

/// Every vehicle action.
pub(crate) fn vehicle_actions(source: Source<'_>) -> Vec<VehicleAction> {
    let checklist = &source.job.procedure.checklist;
    let vehicle_actions = source.job.happened.iter().filter_map(|happened| match &happened.event {
        Event::VehicleAction(body) => {
            let text = checklist.vehicle_actions.iter().find(|found| found.id == body.action);
            let makes = text.into_iter().flat_map(|text| &text.makes);
            Some(VehicleAction {
                id: body.action.clone(),
                title: source.vehicle_action_title(&body.action),
                makes: makes.map(|(what, value)| status(source, what, value)).collect(),
                by: source.by(&source.job.mark(happened)),
            })
        }
        _ => None,
    });
    vehicle_actions.collect()
}

/// A condition with a value of it, as "lift: on locks".
pub(crate) fn status(source: Source<'_>, condition: &str, value: &str) -> String {
    let (condition, value) = source.job.procedure.labels_of(condition, value);
    source.say.within(&messages::condition_value(condition, value))
}

/// Every time the wall clock was set.
pub(crate) fn clock_set(source: Source<'_>) -> Vec<ClockSet> {
    let jumps = source.job.happened.iter().filter_map(|happened| match &happened.event {
        Event::ClockJumped(body) => {
            Some(ClockSet { seconds: body.ms / 1000, by: source.by(&source.job.mark(happened)) })
        }
        _ => None,
    });
    jumps.collect()
}

/// Every restart of the tablet within the job.
pub(crate) fn restarted(source: Source<'_>) -> Vec<Restarted> {
    let happened = source.job.happened.windows(2).map(|pair| (&pair[0], &pair[1]));
    let restarts = happened.filter(|(last, first)| last.stamp.boot != first.stamp.boot);
    restarts
        .map(|(last, first)| Restarted {
            minutes: elapsed_ms(&last.stamp, &first.stamp).map(|ms| ms / 60_000),
            by: source.by(&source.job.mark(first)),
        })
        .collect()
}
