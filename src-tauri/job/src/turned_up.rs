//! What turned up on a job outside of what its checklist foresaw, folded from its events: what was found, what the
//! customer was asked about it, and pieces off the vehicle that the checklist does not know.
//!
//! The rules know of none of it but whether such a piece is off ([`panside_procedure::machine`], `piece.rs`).

use panside_trade::estimate::Estimate;

use crate::entry::{AuthorizationResult, WorkedOut};
use crate::event::{Asked, Event, Found, PieceOff};
use crate::job::{Mark, Reason};
use crate::value::{Accounted, Answer, Authorized};

/// The most pieces of one kind that are off at once, as many as a checklist's item may have.
pub const MOST_PIECES: u8 = 63;

/// Everything that turned up, oldest first.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct TurnedUp {
    /// What was found.
    pub found: Vec<Finding>,
    /// What the customer was asked about.
    pub asked: Vec<Supplement>,
    /// Pieces that the checklist does not know.
    pub pieces: Vec<Piece>,
}

/// Something that was found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Finding {
    /// Who found it, and when.
    pub mark: Mark,
    /// What it is.
    pub found: Found,
    /// What was done about it.
    pub dealt_with: Option<Reason>,
    /// Why it no longer counts.
    pub taken_back: Option<Reason>,
}

/// How a supplement stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize, serde::Deserialize, ts_rs::TS)]
#[serde(rename_all = "snake_case")]
pub enum Standing {
    /// Asked, and no answer yet.
    Open,
    /// The customer agreed to less than was asked for.
    Below,
    /// The customer declined, and nobody has said yet how the job goes on.
    Declined,
    /// The customer agreed.
    Agreed,
    /// The job goes on without it.
    WithoutIt,
    /// It no longer counts.
    TakenBack,
}

impl Standing {
    /// Whether its step waits for it.
    #[must_use]
    pub fn holds_up(self) -> bool {
        matches!(self, Standing::Open | Standing::Below | Standing::Declined)
    }

    /// What a message chooses its words by.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Standing::Open => "open",
            Standing::Below => "below",
            Standing::Declined => "declined",
            Standing::Agreed => "agreed",
            Standing::WithoutIt => "without_it",
            Standing::TakenBack => "taken_back",
        }
    }
}

/// What the customer was asked about on top of what was agreed to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Supplement {
    /// Who entered it, and when.
    pub mark: Mark,
    /// What was asked.
    pub asked: Asked,
    /// Every answer, oldest first; the last one counts.
    pub answers: Vec<SupplementAnswer>,
    /// Why the job goes on without it, after the last answer.
    pub went_on: Option<Reason>,
    /// Why it no longer counts.
    pub taken_back: Option<Reason>,
}

/// An answer to a supplement.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SupplementAnswer {
    /// Who entered it, and when.
    pub mark: Mark,
    /// As typed.
    pub answer: Authorized,
    /// How it was judged.
    pub judged: Option<Box<AuthorizationResult>>,
}

impl Supplement {
    /// What it comes to, as it was worked out then.
    #[must_use]
    pub fn estimate(&self) -> Option<&Estimate> {
        match &self.asked.worked_out {
            WorkedOut::Estimate(estimate) => Some(estimate),
            _ => None,
        }
    }

    /// How it stands.
    #[must_use]
    pub fn standing(&self) -> Standing {
        if self.taken_back.is_some() {
            return Standing::TakenBack;
        }
        if self.went_on.is_some() {
            return Standing::WithoutIt;
        }
        let Some(last) = self.answers.last() else { return Standing::Open };
        match last.answer.answer {
            Answer::Pending => Standing::Open,
            Answer::Declined => Standing::Declined,
            Answer::Agreed if last.judged.as_ref().is_some_and(|judged| judged.class == "below") => {
                Standing::Below
            }
            Answer::Agreed => Standing::Agreed,
        }
    }
}

/// Pieces off the vehicle that the checklist does not know.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Piece {
    /// Who took them off, and when.
    pub mark: Mark,
    /// What they are.
    pub piece: PieceOff,
    /// What became of them, oldest first.
    pub became: Vec<Became>,
    /// Why they never were off.
    pub taken_back: Option<Reason>,
}

/// What became of pieces.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Became {
    /// Who entered it, and when.
    pub mark: Mark,
    /// Of how many.
    pub count: u8,
    /// What.
    pub how: PieceCame,
}

/// Whether pieces came back.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PieceCame {
    /// On again, tightened to what was typed.
    Back(Option<String>),
    /// Not coming back.
    Gone(Accounted),
}

impl Piece {
    /// How many are off.
    #[must_use]
    pub fn off(&self) -> u8 {
        let became = self.became.iter().fold(0_u8, |sum, one| sum.saturating_add(one.count));
        if self.taken_back.is_some() { 0 } else { self.piece.count.saturating_sub(became) }
    }
}

impl TurnedUp {
    /// Whether a piece is off that the checklist does not know.
    #[must_use]
    pub fn is_piece_off(&self) -> bool {
        self.pieces.iter().any(|piece| piece.off() > 0)
    }

    /// The supplements that a step waits for.
    pub fn holding_up<'a>(&'a self, step: &'a str) -> impl Iterator<Item = &'a Supplement> {
        self.asked.iter().filter(move |one| one.asked.step == step && one.standing().holds_up())
    }

    pub(crate) fn take(&mut self, mark: &Mark, event: &Event) {
        let mark = || mark.clone();
        let reason = |text: &String| Some(Reason { mark: mark(), text: text.clone() });
        match event {
            Event::Found(body) => {
                let (found, mark) = (body.clone(), mark());
                self.found.push(Finding { mark, found, dealt_with: None, taken_back: None });
            }
            Event::DealtWith(body) => {
                by_seq(&mut self.found, body.found, |one| one.dealt_with = reason(&body.text));
            }
            Event::Asked(body) => {
                let (asked, mark, answers) = (body.clone(), mark(), Vec::new());
                self.asked.push(Supplement { mark, asked, answers, went_on: None, taken_back: None });
            }
            Event::Answered(body) => by_seq(&mut self.asked, body.asked, |one| {
                let judged = match &body.worked_out {
                    WorkedOut::Authorization(judged) => Some(judged.clone()),
                    _ => None,
                };
                one.went_on = None;
                one.answers.push(SupplementAnswer { mark: mark(), answer: body.answer.clone(), judged });
            }),
            Event::WentOn(body) => {
                by_seq(&mut self.asked, body.asked, |one| one.went_on = reason(&body.reason));
            }
            Event::PieceOff(body) => {
                let (piece, mark, became) = (body.clone(), mark(), Vec::new());
                self.pieces.push(Piece { mark, piece, became, taken_back: None });
            }
            Event::PieceBack(body) => by_seq(&mut self.pieces, body.piece, |one| {
                let how = PieceCame::Back(body.torque.clone());
                one.became.push(Became { mark: mark(), count: body.count, how });
            }),
            Event::PieceGone(body) => by_seq(&mut self.pieces, body.piece, |one| {
                let how = PieceCame::Gone(body.accounted.clone());
                one.became.push(Became { mark: mark(), count: body.count, how });
            }),
            Event::TakenBack(body) => {
                by_seq(&mut self.found, body.of, |one| one.taken_back = reason(&body.reason));
                by_seq(&mut self.asked, body.of, |one| one.taken_back = reason(&body.reason));
                by_seq(&mut self.pieces, body.of, |one| one.taken_back = reason(&body.reason));
            }
            _ => {}
        }
    }
}

/// Something that an event of the job brought.
pub(crate) trait Brought {
    /// That event.
    fn mark(&self) -> &Mark;
}

macro_rules! brought {
    ($($name:ident),+) => {$(
        impl Brought for $name {
            fn mark(&self) -> &Mark {
                &self.mark
            }
        }
    )+};
}

brought!(Finding, Supplement, Piece);

/// What an event brought.
pub(crate) fn brought_by<B: Brought>(all: &[B], seq: u64) -> Option<&B> {
    all.iter().find(|one| one.mark().seq == seq)
}

fn by_seq<B: Brought>(all: &mut [B], seq: u64, change: impl FnOnce(&mut B)) {
    all.iter_mut().find(|one| one.mark().seq == seq).map(change);
}
