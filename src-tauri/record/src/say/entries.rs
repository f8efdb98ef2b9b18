//! Every entry, by phase and step.

use panside_procedure::Shown;

use super::{Block, Left, Section, Table, standing};
use crate::by::By;
use crate::document::Document;
use crate::limits::Limit;
use crate::steps::{Attempt, Ended, Entry, Step};

/// Every phase with its steps.
pub(crate) fn entries(document: &Document) -> Section {
    let about = "Times by the shop's clock. Limits are in brackets, as on the spec sheet, with their source.";
    let mut blocks = vec![Block::Line(about.to_owned())];
    for phase in &document.phases {
        blocks.push(Block::Title(phase.title.clone()));
        phase.steps.iter().for_each(|step| say_step(step, &mut blocks));
    }
    Section::with_sheet_values("Entries by phase", blocks)
}

fn say_step(step: &Step, blocks: &mut Vec<Block>) {
    blocks.push(Block::Step(format!("{} {}", step.number, step.title), shown(step.shown)));
    for attempt in &step.attempts {
        blocks.push(Block::Under(attempt_line(attempt)));
        let rows = attempt.entries.iter().map(|entry| row(entry, &attempt.begun)).collect();
        blocks.push(Block::Table(Table { under: true, ..Table::new(&[Left, Left, Left], rows) }));
    }
}

fn row(entry: &Entry, begun: &By) -> Vec<String> {
    let mut said = entry.value.clone();
    // The class is told where it judges: what is only taken down has no other.
    if entry.judged {
        said.push_str(&format!(", {}", entry.called.said()));
    }
    if !entry.limits.is_empty() {
        let limits: Vec<_> = entry.limits.iter().map(limit).collect();
        said.push_str(&format!(" [{}]", limits.join("; ")));
    }
    if !entry.how.is_empty() {
        said.push_str(&format!(" (calculated: {})", entry.how.join("; ")));
    }
    if let Some(standing) = standing(entry.standing) {
        said.push_str(&format!(" ({standing})"));
    }
    vec![entry.label.clone(), said, format!("{} {}", entry.by.time_after(begun), entry.by.who)]
}

fn limit(limit: &Limit) -> String {
    let checked = limit.checked_by.as_ref().map(|by| format!(", checked by {by}")).unwrap_or_default();
    match limit.source.as_str() {
        "" => limit.allows.clone(),
        source => format!("{}; {source}{checked}", limit.allows),
    }
}

fn attempt_line(attempt: &Attempt) -> String {
    let mut line = if attempt.corrected { "corrected afterwards ".to_owned() } else { String::new() };
    line.push_str(&attempt.begun.day_and_time());
    match (attempt.how, &attempt.ended) {
        _ if attempt.corrected => {}
        (Ended::Done, Some(ended)) => line.push_str(&format!(" to {}", ended.time_after(&attempt.begun))),
        (Ended::Left, Some(ended)) => line.push_str(&format!(", left {}", ended.time_after(&attempt.begun))),
        _ => line.push_str(", in progress"),
    }
    line.push_str(&format!(" {}", attempt.begun.who));
    if attempt.later {
        line.push_str(", done earlier, entered later");
    }
    if let (Some(void), Some(reason)) = (&attempt.void, &attempt.void_reason) {
        line.push_str(&format!(", no longer counts since {} {} ({reason})", void.day_and_time(), void.who));
    }
    line
}

fn shown(shown: Shown) -> &'static str {
    match shown {
        Shown::Undecided => "not known whether it is part of this job",
        Shown::NotInThisJob => "not in this job",
        Shown::Waiting | Shown::Open => "not done",
        Shown::InProgress => "in progress",
        Shown::Done => "done",
        Shown::Lapsed => "done, but must be signed again",
        Shown::Voided => "voided",
        Shown::Skipped => "skipped, with reason",
        Shown::Missed => "missed",
    }
}
