//! What was proved, and the journal behind the record.

use panside_messages::Message;

use super::{Block, Left, Section, Table, row};
use crate::document::{Document, Proof};
use crate::inputs::{ProofSummary, ProofVerdict};
use crate::messages;
use crate::speak::Say;

/// What the proof covers, in one paragraph, and what comes first.
pub(super) fn proof(document: &Document, say: &Say<'_>) -> Section {
    let proof = &document.proof;
    let verdict = say.says(&verdict(proof));
    let covers = say.within(&messages::sentences(verdict, &proof.covers));
    let (events, head) = (document.journal.events.to_string(), document.journal.head.to_string());
    let witness = say.says(&messages::journal_witness(events, head));
    let blocks = [covers, document.come_first.clone(), witness].map(Block::Line);
    Section::new(&messages::heading_proof(), say, blocks.into())
}

fn verdict(proof: &Proof) -> Message {
    match &proof.summary {
        None => messages::proof_none(),
        Some(_) if !proof.of_this_checklist => messages::proof_of_another(),
        Some(summary) => match summary.verdict {
            ProofVerdict::Proved => messages::proof_proved(),
            ProofVerdict::Refuted => messages::proof_refuted(),
            ProofVerdict::NotDecided => messages::proof_not_decided(),
        },
    }
}

/// What was proved in detail, and what is taken for granted.
pub(super) fn details(document: &Document, say: &Say<'_>) -> Option<Section> {
    let summary = document.proof.summary.as_ref()?;
    Section::list(&messages::heading_proof_details(), say, summary_lines(summary, say).into_iter())
}

fn summary_lines(summary: &ProofSummary, say: &Say<'_>) -> Vec<String> {
    let mut lines = vec![
        say.says(&messages::proof_states(summary.states.to_string(), &summary.engine)),
        say.says(&messages::proof_checklist(summary.checklist.to_string())),
    ];
    lines.extend(summary.assumed.iter().map(|limit| say.says(&messages::proof_assumed(limit.clone()))));
    lines.extend(
        summary.not_claimed.iter().map(|limit| say.says(&messages::proof_not_claimed(limit.clone()))),
    );
    lines
}

/// The journal, and the files that the job goes by.
pub(super) fn journal(document: &Document, say: &Say<'_>) -> Section {
    let mut rows = vec![
        row(say, &messages::journal_job(), &document.job),
        row(say, &messages::journal_events(), document.journal.events.to_string()),
        row(say, &messages::journal_head(), document.journal.head.to_string()),
    ];
    if let Some(papers) = &document.papers {
        let files: [(fn() -> Message, _); 2] =
            [(messages::journal_checklist, &papers.checklist), (messages::journal_sheet, &papers.sheet)];
        for (name, paper) in files {
            let (revision, hash) = (paper.revision.to_string(), paper.hash.to_string());
            rows.push(row(say, &name(), say.within(&messages::paper_revision(&paper.id, revision, hash))));
        }
    }
    let table = Block::Table(Table::new(&[Left, Left], rows));
    let shows = Block::Line(document.journal.shows.clone());
    Section::new(&messages::heading_journal(), say, vec![table, shows])
}
