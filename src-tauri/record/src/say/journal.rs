//! What was proved, and the journal behind the record.

use super::{Block, Left, Section, Table, row};
use crate::document::{Document, Proof};
use crate::inputs::{ProofSummary, ProofVerdict};

/// What was proved and what is taken for granted.
pub(super) fn proof(document: &Document) -> Section {
    let proof = &document.proof;
    let mut lines = match &proof.summary {
        None => vec!["No proof came with this record.".to_owned()],
        Some(summary) => summary_lines(summary, proof),
    };
    lines.push(proof.covers.clone());
    Section::new("Proved and assumed", lines.into_iter().map(Block::Line).collect())
}

fn summary_lines(summary: &ProofSummary, proof: &Proof) -> Vec<String> {
    let verdict = match summary.verdict {
        ProofVerdict::Proved => "proved",
        ProofVerdict::Refuted => "refuted",
        ProofVerdict::NotDecided => "not decided",
    };
    let mut lines = vec![
        format!("Checklist {verdict}: {} states, engine {}", summary.states, summary.engine),
        format!("Checklist that was proved: {}", summary.checklist),
    ];
    if !proof.of_this_checklist {
        lines.push("That is not the checklist of this job: the proof says nothing about it.".to_owned());
    }
    lines.extend(summary.assumed.iter().map(|text| format!("Assumed: {text}")));
    lines.extend(summary.not_claimed.iter().map(|text| format!("Not claimed: {text}")));
    lines
}

/// The journal, and the files that the job goes by.
pub(super) fn journal(document: &Document) -> Section {
    let mut rows = vec![
        row("Job", &document.job),
        row("Events", document.journal.events.to_string()),
        row("Head", document.journal.head.to_string()),
    ];
    if let Some(papers) = &document.papers {
        for (name, paper) in [("Checklist", &papers.checklist), ("Sheet", &papers.sheet)] {
            rows.push(row(name, format!("{} revision {}, {}", paper.id, paper.revision, paper.hash)));
        }
    }
    let table = Table::new(&[Left, Left], rows);
    Section::new("Journal", vec![Block::Table(table), Block::Line(document.journal.shows.clone())])
}
