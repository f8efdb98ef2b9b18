//! Where the job went otherwise than planned.

use super::{Section, standing};
use crate::departures::{ByName, ClockSet, Explained, Observed, Restarted, Voided};
use crate::document::Document;
use crate::messages;
use crate::speak::Say;

/// What was voided, skipped, missed, let pass by name, not as shown; the clock set, the tablet restarted; what does not
/// agree. Only what there is.
pub(super) fn otherwise(document: &Document, say: &Say<'_>) -> Vec<Section> {
    let explained = |step: &Explained| explained(step, say);
    let lists = [
        Section::list(&messages::heading_voided(), say, document.voided.iter().map(|one| voided(one, say))),
        Section::list(&messages::heading_skipped(), say, document.skipped.iter().map(explained)),
        Section::list(&messages::heading_missed(), say, document.missed.iter().map(explained)),
        Section::list(
            &messages::heading_overrides(),
            say,
            document.by_name.iter().map(|one| by_name(one, say)),
        ),
        Section::list(
            &messages::heading_observed(),
            say,
            document.observed.iter().map(|one| observed(one, say)),
        ),
        Section::list(
            &messages::heading_clock(),
            say,
            document.clock_set.iter().map(|one| clock_set(one, say)),
        ),
        Section::list(
            &messages::heading_restarted(),
            say,
            document.restarted.iter().map(|one| restarted(one, say)),
        ),
        Section::list(&messages::heading_differs(), say, document.disagreements.iter().cloned()),
    ];
    lists.into_iter().flatten().collect()
}

fn voided(voided: &Voided, say: &Say<'_>) -> String {
    let by = voided.by.when_and_who(say);
    let line = say.says(&match &voided.with {
        Some(with) => messages::voided_with(by, &voided.title, with, &voided.reason),
        None => messages::voided_step(by, &voided.title, &voided.reason),
    });
    let since =
        if voided.corrected { messages::voided_corrected() } else { messages::voided_not_corrected() };
    say.within(&messages::with_remark(line, since))
}

fn explained(step: &Explained, say: &Say<'_>) -> String {
    say.says(&messages::explained_step(step.by.when_and_who(say), &step.title, &step.reason))
}

fn by_name(passed: &ByName, say: &Say<'_>) -> String {
    let ByName { label, called, reason, said_by, .. } = passed;
    let by = passed.by.when_and_who(say);
    let line = say.says(&messages::override_by(by, label, called, reason, said_by));
    match standing(passed.standing, say) {
        Some(standing) => say.within(&messages::with_remark(line, standing)),
        None => line,
    }
}

fn observed(seen: &Observed, say: &Say<'_>) -> String {
    let by = seen.by.when_and_who(say);
    let line = say.says(&messages::observed_value(by, &seen.condition, &seen.value, &seen.reason));
    let undone = say.listed(seen.undone.iter().cloned());
    let undone = (!seen.undone.is_empty()).then(|| say.within(&messages::observed_undone(undone)));
    let dangers = say.apart(seen.dangers.iter().cloned());
    let dangers = (!seen.dangers.is_empty()).then(|| say.within(&messages::observed_dangers(dangers)));
    say.apart([line].into_iter().chain(undone).chain(dangers))
}

fn clock_set(set: &ClockSet, say: &Say<'_>) -> String {
    let (by, seconds) = (set.by.day_and_time(say), set.seconds.unsigned_abs().to_string());
    say.says(&match set.seconds < 0 {
        true => messages::clock_back(by, seconds),
        false => messages::clock_forward(by, seconds),
    })
}

fn restarted(restarted: &Restarted, say: &Say<'_>) -> String {
    let by = restarted.by.day_and_time(say);
    say.says(&match restarted.minutes {
        Some(minutes) => messages::restarted_after(by, minutes.to_string()),
        None => messages::restarted_unknown(by),
    })
}
