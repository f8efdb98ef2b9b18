//! What turned up outside of what the checklist foresaw.

use panside_job::turned_up::Standing;
use panside_job::value::Urgency;

use super::Section;
use super::estimate::comes_to;
use crate::document::Document;
use crate::messages;
use crate::speak::Say;
use crate::turned_up::{Found, Later, Piece, Supplement};
use crate::value::short;

/// What was found, asked and taken off, with what became of it; none where nothing turned up.
pub(super) fn turned_up(document: &Document, say: &Say<'_>) -> Option<Section> {
    let all = &document.turned_up;
    let found = all.found.iter().map(|one| found(one, say));
    let asked = all.supplements.iter().map(|one| supplement(one, say));
    let pieces = all.pieces.iter().map(|one| piece(one, say));
    Section::list(&messages::heading_turned_up(), say, found.chain(asked).chain(pieces))
}

/// What is recommended and what the customer is told, as on the first page. What must be dealt with in this job stands
/// with what is missing until it is.
pub(super) fn found_lines(document: &Document, with_photos: bool, say: &Say<'_>) -> Vec<String> {
    let open = document.turned_up.found.iter().filter(|one| one.is_open());
    let lines = open.filter(|one| one.urgency != Urgency::Now).map(|one| {
        let what =
            if with_photos { with_photos_of(&one.photos, placed(one, say), say) } else { placed(one, say) };
        say.says(&match one.urgency {
            Urgency::Tell => messages::found_tell(what),
            _ => messages::advised(what),
        })
    });
    lines.collect()
}

/// What the customer did not agree to.
pub(super) fn declined_lines(document: &Document, say: &Say<'_>) -> Vec<String> {
    let declined = document
        .turned_up
        .supplements
        .iter()
        .filter(|one| matches!(one.standing, Standing::Declined | Standing::Below | Standing::WithoutIt));
    declined.map(|one| say.says(&messages::supplement_declined(&one.text))).collect()
}

/// What was found, and where.
fn placed(one: &Found, say: &Say<'_>) -> String {
    let text = one.text.trim_end_matches('.').to_owned();
    match &one.at {
        Some(at) => say.within(&messages::with_remark(text, at)),
        None => text,
    }
}

fn with_photos_of(photos: &[String], text: String, say: &Say<'_>) -> String {
    if photos.is_empty() {
        return text;
    }
    let photos = say.listed(photos.iter().map(|hash| short(hash).to_owned()));
    say.within(&messages::with_remark(text, say.within(&messages::photo_named(photos))))
}

fn found(one: &Found, say: &Say<'_>) -> String {
    let what = with_photos_of(&one.photos, placed(one, say), say);
    let line = say.within(&messages::found_line(one.by.when_and_who(say), what, one.urgency.word()));
    let dealt_with = one.dealt_with.as_ref().map(|later| said(later, messages::dealt_with_line, say));
    say.apart([line].into_iter().chain(dealt_with).chain(taken_back(one.taken_back.as_ref(), say)))
}

fn supplement(one: &Supplement, say: &Say<'_>) -> String {
    let sum = one.estimate.as_ref().map(|estimate| comes_to(estimate, say)).unwrap_or_default();
    let line = say.within(&messages::asked_line(one.by.when_and_who(say), &one.text, sum, &one.title));
    let answers = one.answers.iter().map(|later| said(later, messages::answer_line, say));
    let went_on = one.went_on.as_ref().map(|later| said(later, messages::went_on_line, say));
    let after = answers.chain(went_on).chain(taken_back(one.taken_back.as_ref(), say));
    say.apart([line].into_iter().chain(after))
}

fn piece(one: &Piece, say: &Say<'_>) -> String {
    let name = match &one.at {
        Some(at) => say.within(&messages::with_remark(&one.name, at)),
        None => one.name.clone(),
    };
    let name = with_photos_of(&one.photos, name, say);
    let line = say.within(&messages::piece_line(one.by.when_and_who(say), name, one.count.to_string()));
    let became = one.became.iter().map(|later| said(later, messages::answer_line, say));
    let left = (one.left > 0).then(|| say.within(&messages::piece_left(one.left.to_string())));
    let after = became.chain(left).chain(taken_back(one.taken_back.as_ref(), say));
    say.apart([line].into_iter().chain(after))
}

fn taken_back(later: Option<&Later>, say: &Say<'_>) -> Option<String> {
    later.map(|later| said(later, messages::taken_back_line, say))
}

fn said(later: &Later, line: fn(String, String) -> panside_messages::Message, say: &Say<'_>) -> String {
    let text = later.text.trim_end_matches('.').to_owned();
    say.within(&line(later.by.when_and_who(say), text))
}
