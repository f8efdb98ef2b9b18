//! Every entry, by phase and step.

use panside_procedure::Shown;

use super::file::numbered;
use super::{Block, Left, Section, Table, standing};
use crate::by::By;
use crate::document::Document;
use crate::limits::Limit;
use crate::messages;
use crate::speak::Say;
use crate::steps::{Attempt, Ended, Entry, Step};

/// Every phase with its steps.
pub(super) fn entries(document: &Document, say: &Say<'_>) -> Section {
    let mut blocks = vec![Block::Line(say.says(&messages::entries_about()))];
    for phase in &document.phases {
        blocks.push(Block::Title(phase.title.clone()));
        phase.steps.iter().for_each(|step| say_step(step, &mut blocks, say));
    }
    Section::new(&messages::heading_entries(), say, blocks).with_sheet_values()
}

fn say_step(step: &Step, blocks: &mut Vec<Block>, say: &Say<'_>) {
    blocks.push(Block::Step(numbered(step, say), shown(step.shown, say)));
    let mut limited: Vec<&str> = Vec::new();
    for attempt in &step.attempts {
        blocks.push(Block::Under(attempt_line(attempt, say)));
        let rows = attempt.entries.iter().map(|entry| {
            // What the sheet allows is said once for an entry, not at each of its readings.
            let is_first = !limited.contains(&entry.entry.as_str());
            limited.extend(is_first.then_some(entry.entry.as_str()));
            row(entry, &attempt.begun, is_first, say)
        });
        let table = Table::new(&[Left, Left, Left], rows.collect());
        blocks.push(Block::Table(Table { under: true, ..table }));
    }
}

fn row(entry: &Entry, begun: &By, with_limits: bool, say: &Say<'_>) -> Vec<String> {
    // The class is told where it judges: what is only taken down has no other.
    let class = entry.judged.then(|| entry.called.clone());
    let mut said = say.listed([entry.shows().to_owned()].into_iter().chain(class));
    if with_limits && !entry.limits.is_empty() {
        let limits = say.apart(entry.limits.iter().map(|limit| said_limit(limit, say)));
        said = say.within(&messages::with_limits(said, limits));
    }
    if !entry.how.is_empty() {
        let how = say.apart(entry.how.iter().cloned());
        said = say.within(&match entry.kind.as_str() {
            "decision" => messages::with_deciding(said, how),
            _ => messages::with_working(said, how),
        });
    }
    if let Some(standing) = standing(entry.standing, say) {
        said = say.within(&messages::with_remark(said, standing));
    }
    let by = messages::when_who(entry.by.time_after(begun, say), &entry.by.who);
    vec![entry.label.clone(), said, say.within(&by)]
}

fn said_limit(limit: &Limit, say: &Say<'_>) -> String {
    let source = (!limit.source.is_empty()).then(|| limit.source.clone());
    let checked = limit.checked_by.as_ref().map(|by| say.within(&messages::limit_checked(by)));
    let from = say.listed(source.into_iter().chain(checked));
    say.apart([limit.allows.clone(), from])
}

fn attempt_line(attempt: &Attempt, say: &Say<'_>) -> String {
    let (begun, who) = (attempt.begun.day_and_time(say), &attempt.begun.who);
    let until = |ended: &By| ended.time_after(&attempt.begun, say);
    let line = match (attempt.how, &attempt.ended) {
        _ if attempt.corrected => messages::attempt_corrected(begun, who),
        (Ended::Done, Some(ended)) => messages::attempt_done(begun, until(ended), who),
        (Ended::Left, Some(ended)) => messages::attempt_left(begun, until(ended), who),
        _ => messages::attempt_in_progress(begun, who),
    };
    let later = attempt.later.then(|| say.within(&messages::attempt_later()));
    let void = attempt.void.as_ref().zip(attempt.void_reason.as_ref());
    let void = void.map(|(void, reason)| say.within(&messages::attempt_void(void.when_and_who(say), reason)));
    say.listed([say.says(&line)].into_iter().chain(later).chain(void))
}

fn shown(shown: Shown, say: &Say<'_>) -> String {
    say.within(&match shown {
        Shown::Undecided => messages::step_undecided(),
        Shown::NotInThisJob => messages::step_not_in_job(),
        Shown::Waiting | Shown::Open => messages::step_not_done(),
        Shown::InProgress => messages::step_in_progress(),
        Shown::Done => messages::step_done(),
        Shown::Lapsed => messages::step_lapsed(),
        Shown::Voided => messages::step_voided(),
        Shown::Skipped => messages::step_skipped(),
        Shown::Missed => messages::step_missed(),
    })
}
