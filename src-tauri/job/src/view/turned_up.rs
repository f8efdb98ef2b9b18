//! What turned up that the checklist did not foresee, as it is shown, and what is said of a supplement while it is typed.

use panside_journal::Stamp;
use panside_procedure::Shown;
use panside_procedure::format::entry;
use panside_procedure::format::{Ask, Reuse};
use panside_procedure::machine::StepIx;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::decision::draft;
use super::make::At;
use super::step::{comes_to, currencies};
use super::{EstimateView, Preview, TrayView};
use crate::command::{Actor, Refusal};
use crate::decide::draft::Draft;
use crate::entry::{answered, of};
use crate::job::{Job, Mark, Reason};
use crate::message::Message;
use crate::people::{Names, Roster};
use crate::size;
use crate::turned_up::{Finding, Piece, Standing, Supplement};
use crate::value::{Authorized, EntryValue, EstimateLines, Urgency};

/// What turned up, oldest first.
#[derive(Debug, Clone, Serialize, Deserialize, TS)]
pub struct TurnedUpView {
    /// What was found.
    pub found: Vec<FoundView>,
    /// What the customer was asked about.
    pub asked: Vec<SupplementView>,
    /// Pieces that the checklist does not know.
    pub pieces: Vec<PieceView>,
    /// The step that a question asked now would hold up: the one in progress, else the first that is open. Nothing:
    /// nothing can wait for an answer.
    pub asks_at: Option<String>,
    /// Codes of the currencies that an amount may be typed in, the usual one first.
    pub currencies: Vec<String>,
}

/// Something that was found.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct FoundView {
    /// The number of its event.
    pub seq: u64,
    /// What it is.
    pub text: String,
    /// Where.
    pub at: Option<String>,
    /// What has to be done about it.
    pub urgency: Urgency,
    /// Photos of it.
    pub photos: Vec<EntryValue>,
    /// Who found it, and when.
    pub by: Mark,
    /// What was done about it.
    pub dealt_with: Option<Reason>,
    /// Why it no longer counts.
    pub taken_back: Option<Reason>,
    /// The customer was asked about it.
    pub is_asked: bool,
}

/// What the customer was asked about on top of what was agreed to.
#[derive(Debug, Clone, Serialize, Deserialize, TS)]
pub struct SupplementView {
    /// The number of its event.
    pub seq: u64,
    /// The step that waits for it, by id.
    pub step: String,
    /// What turned up.
    pub text: String,
    /// Parts and labor.
    pub lines: EstimateLines,
    /// What they come to.
    pub estimate: Option<EstimateView>,
    /// How it stands.
    pub standing: Standing,
    /// Its step waits for it.
    pub holds_up: bool,
    /// What is said of it: of the last answer, else of what was asked.
    pub said: Vec<Message>,
    /// The last answer.
    pub answer: Option<Authorized>,
    /// Who asked, and when.
    pub by: Mark,
    /// Why the job goes on without it.
    pub went_on: Option<Reason>,
    /// Why it no longer counts.
    pub taken_back: Option<Reason>,
}

/// Pieces that the checklist does not know.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct PieceView {
    /// The number of its event.
    pub seq: u64,
    /// What they are.
    pub name: String,
    /// How many came off.
    pub count: u8,
    /// How many are off.
    pub off: u8,
    /// Where they come from.
    pub at: Option<String>,
    /// Photos of them in their place.
    pub photos: Vec<EntryValue>,
    /// Who took them off, and when.
    pub by: Mark,
    /// Why they never were off.
    pub taken_back: Option<Reason>,
}

pub(super) fn turned_up(at: At<'_>) -> TurnedUpView {
    let all = &at.job.turned_up;
    TurnedUpView {
        found: all.found.iter().map(|one| found(at.job, one)).collect(),
        asked: all.asked.iter().map(|one| supplement(at, one)).collect(),
        pieces: all.pieces.iter().map(piece).collect(),
        asks_at: asks_at(at),
        currencies: currencies(at.job, of(&Ask::Estimate(entry::Estimate::default())).units()),
    }
}

fn found(job: &Job, one: &Finding) -> FoundView {
    let asked = job.turned_up.asked.iter().filter(|asked| asked.taken_back.is_none());
    FoundView {
        seq: one.mark.seq,
        text: one.found.text.clone(),
        at: one.found.at.clone(),
        urgency: one.found.urgency,
        photos: one.found.photos.clone(),
        by: one.mark.clone(),
        dealt_with: one.dealt_with.clone(),
        taken_back: one.taken_back.clone(),
        is_asked: asked.into_iter().any(|asked| asked.asked.found == Some(one.mark.seq)),
    }
}

fn supplement(at: At<'_>, one: &Supplement) -> SupplementView {
    let draft = draft(at);
    let said = match one.answers.last() {
        Some(last) => answered(one.estimate(), &last.answer, &draft.context(&last.mark.stamp)),
        None => draft.estimated(&one.asked.lines),
    };
    SupplementView {
        seq: one.mark.seq,
        step: one.asked.step.clone(),
        text: one.asked.text.clone(),
        lines: one.asked.lines.clone(),
        estimate: one.estimate().map(comes_to),
        standing: one.standing(),
        holds_up: one.standing().holds_up(),
        said: said.map(|judged| judged.said).unwrap_or_default(),
        answer: one.answers.last().map(|last| last.answer.clone()),
        by: one.mark.clone(),
        went_on: one.went_on.clone(),
        taken_back: one.taken_back.clone(),
    }
}

fn piece(one: &Piece) -> PieceView {
    PieceView {
        seq: one.mark.seq,
        name: one.piece.name.clone(),
        count: one.piece.count,
        off: one.off(),
        at: one.piece.at.clone(),
        photos: one.piece.photos.clone(),
        by: one.mark.clone(),
        taken_back: one.taken_back.clone(),
    }
}

/// Pieces that the checklist does not know, as the tray shows them among the others.
pub(super) fn tray(job: &Job) -> impl Iterator<Item = TrayView> + '_ {
    job.turned_up.pieces.iter().filter(|one| one.off() > 0).map(|one| TrayView {
        id: format!("piece {}", one.mark.seq),
        name: one.piece.name.clone(),
        off: one.off(),
        count: one.piece.count,
        reuse: Reuse::Yes,
        draws: None,
        recount_agrees: true,
    })
}

fn asks_at(at: At<'_>) -> Option<String> {
    let machine = &at.job.procedure.machine;
    let steps = || (0..machine.steps.len()).map(StepIx::of);
    let first = |wanted: Shown| steps().find(|step| machine.shown(at.state, *step) == wanted);
    let step = [Shown::InProgress, Shown::Open, Shown::Waiting].into_iter().find_map(first)?;
    Some(at.job.procedure.step(step).id.clone())
}

/// What is typed of a supplement.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Asking {
    /// What is to be asked.
    Lines(EstimateLines),
    /// The answer to what was asked.
    Answer {
        /// The number of the event that asked.
        asked: u64,
        /// The answer.
        answer: Authorized,
    },
}

/// What is said about a supplement or its answer before it is entered.
#[must_use]
pub fn preview_asking(job: &Job, shop: &Roster, typed: &Asking, now: &Stamp) -> Preview {
    let (names, who) = (Names::Shop(shop), &Actor::NOBODY);
    let draft = Draft { job, names, who, now, state: job.state, events: Vec::new() };
    let judged = size::check(typed).and_then(|()| match typed {
        Asking::Lines(lines) => draft.estimated(lines),
        Asking::Answer { asked, answer } => draft.answered(draft.supplement(*asked)?, answer),
    });
    let (class, said) = match judged {
        Ok(judged) => (Some(judged.class), judged.said),
        Err(Refusal { message, unmet }) => (None, std::iter::once(message).chain(unmet).collect()),
    };
    Preview { class, not_yet: false, said, other: None }
}
