//! What turned up outside of what the checklist foresaw: what was found, what the customer was asked about it, and pieces
//! that the checklist does not know.

use panside_job::EntryValue;
use panside_job::job::Reason;
use panside_job::turned_up::{Finding, Piece as JobPiece, PieceCame, Standing, Supplement as JobSupplement};
use panside_job::value::Urgency;
use serde::{Deserialize, Serialize};

use crate::by::By;
use crate::measured::Photo;
use crate::messages;
use crate::money::Estimate;
use crate::source::{Source, Standing as EntryStanding};
use crate::value::answer;

/// All that turned up, oldest first.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TurnedUp {
    /// What was found.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub found: Vec<Found>,
    /// What the customer was asked about on top of what was agreed to.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub supplements: Vec<Supplement>,
    /// Pieces that the checklist does not know.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub pieces: Vec<Piece>,
}

impl TurnedUp {
    /// Whether nothing did.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.found.is_empty() && self.supplements.is_empty() && self.pieces.is_empty()
    }
}

/// What was said later, by whom and when.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Later {
    /// What was said.
    pub text: String,
    /// Who entered it, and when.
    pub by: By,
}

/// Something that was found.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Found {
    /// What it is.
    pub text: String,
    /// Where.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at: Option<String>,
    /// What has to be done about it.
    pub urgency: Urgency,
    /// Photos of it, by hash.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub photos: Vec<String>,
    /// What was done about it. Nothing: it is open.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub dealt_with: Option<Later>,
    /// Why it no longer counts.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub taken_back: Option<Later>,
    /// Who found it, and when.
    pub by: By,
}

impl Found {
    /// Whether it counts and nothing was done about it.
    #[must_use]
    pub fn is_open(&self) -> bool {
        self.dealt_with.is_none() && self.taken_back.is_none()
    }
}

/// What the customer was asked about.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Supplement {
    /// Id of the step that waited for the answer.
    pub step: String,
    /// The step's title.
    pub title: String,
    /// What turned up.
    pub text: String,
    /// Parts and labor. Nothing only where the record is wrong.
    pub estimate: Option<Estimate>,
    /// How it stands.
    pub standing: Standing,
    /// Every answer, oldest first; the last one counts.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub answers: Vec<Later>,
    /// Why the job went on without it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub went_on: Option<Later>,
    /// Why it no longer counts.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub taken_back: Option<Later>,
    /// Who asked, and when.
    pub by: By,
}

/// Pieces that the checklist does not know.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Piece {
    /// What they are.
    pub name: String,
    /// How many came off.
    pub count: u8,
    /// How many are off.
    pub left: u8,
    /// Where they come from.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at: Option<String>,
    /// Photos of them, by hash.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub photos: Vec<String>,
    /// What became of them.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub became: Vec<Later>,
    /// Why they never were off.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub taken_back: Option<Later>,
    /// Who took them off, and when.
    pub by: By,
}

/// All that turned up.
pub(crate) fn of(source: Source<'_>) -> TurnedUp {
    let all = &source.job.turned_up;
    TurnedUp {
        found: all.found.iter().map(|one| found(source, one)).collect(),
        supplements: all.asked.iter().map(|one| supplement(source, one)).collect(),
        pieces: all.pieces.iter().map(|one| piece(source, one)).collect(),
    }
}

fn later(source: Source<'_>, reason: &Reason) -> Later {
    Later { text: reason.text.clone(), by: source.by(&reason.mark) }
}

fn found(source: Source<'_>, one: &Finding) -> Found {
    Found {
        text: one.found.text.clone(),
        at: one.found.at.clone(),
        urgency: one.found.urgency,
        photos: hashes(&one.found.photos),
        dealt_with: one.dealt_with.as_ref().map(|reason| later(source, reason)),
        taken_back: one.taken_back.as_ref().map(|reason| later(source, reason)),
        by: source.by(&one.mark),
    }
}

fn supplement(source: Source<'_>, one: &JobSupplement) -> Supplement {
    let given = |given: &panside_job::turned_up::SupplementAnswer| Later {
        text: answer(source, &given.answer),
        by: source.by(&given.mark),
    };
    Supplement {
        step: one.asked.step.clone(),
        title: source.title(&one.asked.step),
        text: one.asked.text.clone(),
        estimate: estimate(source, one),
        standing: one.standing(),
        answers: one.answers.iter().map(given).collect(),
        went_on: one.went_on.as_ref().map(|reason| later(source, reason)),
        taken_back: one.taken_back.as_ref().map(|reason| later(source, reason)),
        by: source.by(&one.mark),
    }
}

/// What was asked, line by line.
pub(crate) fn estimate(source: Source<'_>, one: &JobSupplement) -> Option<Estimate> {
    let label = source.say.within(&messages::supplement(&one.asked.text));
    let by = source.by(&one.mark);
    Some(crate::money::estimate((one.asked.step.clone(), label, by), &one.asked.lines, one.estimate()?))
}

fn piece(source: Source<'_>, one: &JobPiece) -> Piece {
    let became = |became: &panside_job::turned_up::Became| {
        let count = became.count.to_string();
        let text = match &became.how {
            PieceCame::Back(None) => messages::piece_back(count),
            PieceCame::Back(Some(torque)) => messages::piece_back_torque(count, torque),
            PieceCame::Gone(told) => {
                let who = source.job.people.called(told.by, became.mark.seq);
                messages::piece_gone(count, &told.reason, who)
            }
        };
        Later { text: source.say.within(&text), by: source.by(&became.mark) }
    };
    Piece {
        name: one.piece.name.clone(),
        count: one.piece.count,
        left: one.off(),
        at: one.piece.at.clone(),
        photos: hashes(&one.piece.photos),
        became: one.became.iter().map(became).collect(),
        taken_back: one.taken_back.as_ref().map(|reason| later(source, reason)),
        by: source.by(&one.mark),
    }
}

fn hashes(photos: &[EntryValue]) -> Vec<String> {
    let hash = |photo: &EntryValue| match photo {
        EntryValue::Photo { hash, .. } => Some(hash.clone()),
        _ => None,
    };
    photos.iter().filter_map(hash).collect()
}

/// The photos of what was found and of pieces.
pub(crate) fn photos<'a>(source: Source<'a>) -> impl Iterator<Item = Photo> + use<'a> {
    let all = &source.job.turned_up;
    let found = all.found.iter().map(|one| {
        (&one.found.photos, messages::photo_found(), &one.found.text, &one.mark, one.taken_back.is_some())
    });
    let pieces = all.pieces.iter().map(|one| {
        (&one.piece.photos, messages::photo_piece(), &one.piece.name, &one.mark, one.taken_back.is_some())
    });
    found.chain(pieces).flat_map(move |(photos, title, what, mark, is_void)| {
        let title = source.say.says(&title);
        photos.iter().filter_map(move |photo| {
            let EntryValue::Photo { hash, width, height } = photo else { return None };
            Some(Photo {
                hash: hash.clone(),
                step: String::new(),
                title: title.clone(),
                label: what.clone(),
                of: what.clone(),
                caption: None,
                width: *width,
                height: *height,
                standing: if is_void { EntryStanding::Void } else { EntryStanding::Counts },
                first_page: false,
                by: source.by(mark),
            })
        })
    })
}
