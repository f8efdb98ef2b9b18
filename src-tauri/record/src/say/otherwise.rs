//! Where the job went otherwise than planned.

use super::{Section, standing};
use crate::departures::{ByName, ClockSet, Explained, Observed, Restarted, Voided};
use crate::document::Document;

/// What was voided, skipped, missed, not as shown; the clock set, the tablet restarted; what does not agree. Only what there is.
pub(super) fn otherwise(document: &Document) -> Vec<Section> {
    let lists = [
        Section::list("Voided", document.voided.iter().map(voided)),
        Section::list("Skipped, with reason", document.skipped.iter().map(explained)),
        Section::list("Missed and explained", document.missed.iter().map(explained)),
        Section::list("Overrides", document.by_name.iter().map(by_name)),
        Section::list("Vehicle status corrected", document.observed.iter().map(observed)),
        Section::list("Wall clock", document.clock_set.iter().map(clock_set)),
        Section::list("Tablet restarted", document.restarted.iter().map(restarted)),
        Section::list("What does not agree", document.disagreements.iter().cloned()),
    ];
    lists.into_iter().flatten().collect()
}

fn voided(voided: &Voided) -> String {
    let with = voided.with.as_ref().map(|with| format!(", with \"{with}\"")).unwrap_or_default();
    let since = if voided.corrected { "corrected since" } else { "not corrected" };
    let by = &voided.by;
    format!("{} {} voided \"{}\"{with}: {} ({since})", by.day_and_time(), by.who, voided.title, voided.reason)
}

fn explained(step: &Explained) -> String {
    format!("{} {} \"{}\": {}", step.by.day_and_time(), step.by.who, step.title, step.reason)
}

fn by_name(passed: &ByName) -> String {
    let by = &passed.by;
    let (class, standing) = (passed.called.said(), standing(passed.standing));
    let standing = standing.map(|standing| format!(" ({standing})")).unwrap_or_default();
    let ByName { label, reason, said_by, .. } = passed;
    format!("{} {} \"{label}\", {class}: {reason}, says {said_by}{standing}", by.day_and_time(), by.who)
}

fn observed(seen: &Observed) -> String {
    let (when, who) = (seen.by.day_and_time(), &seen.by.who);
    let mut line = format!("{when} {who}: {} is {}: {}", seen.condition, seen.value, seen.reason);
    if !seen.undone.is_empty() {
        line.push_str(&format!("; cannot have been done: {}", seen.undone.join(", ")));
    }
    if !seen.dangers.is_empty() {
        line.push_str(&format!("; dangers then: {}", seen.dangers.join(" ")));
    }
    line
}

fn clock_set(set: &ClockSet) -> String {
    let way = if set.seconds < 0 { "back" } else { "forward" };
    format!("{} set {way} by {} s", set.by.day_and_time(), set.seconds.unsigned_abs())
}

fn restarted(restarted: &Restarted) -> String {
    let before = match restarted.minutes {
        Some(minutes) => format!("{minutes} min since the entry before, by the wall clock only"),
        None => "how long since the entry before is not known, as the wall clock went back".to_owned(),
    };
    format!("{} first entry after it: {before}", restarted.by.day_and_time())
}
