//! Tables and lists after the entries: torque, sign-offs, tally, photos, what went otherwise, proof and journal.

use super::page::{Page, Side};
use super::{hours, standing};
use crate::departures::Explained;
use crate::document::Document;
use crate::inputs::ProofVerdict;
use crate::items::Pieces;
use crate::measured::{Level, Stick};
use crate::missing::MissingKind;
use crate::signs::{Given, SignOff};
use crate::source::words;
use crate::value::{role, short};

const LEFT: Side = Side::Left;
const RIGHT: Side = Side::Right;

pub(super) fn write(document: &Document, page: &mut Page) {
    measures(document, page);
    sign_offs(document, page);
    moves(document, page);
    tally(document, page);
    photos(document, page);
    otherwise(document, page);
    missing(document, page);
    phase_times(document, page);
    proof(document, page);
    journal(document, page);
}

/// A list under its heading; nothing where the list is empty.
fn list(page: &mut Page, heading: &str, lines: impl Iterator<Item = String>) {
    let lines: Vec<_> = lines.collect();
    if !lines.is_empty() {
        page.heading(heading);
    }
    lines.iter().for_each(|line| page.paragraph(2, line));
}

fn with_standing(text: String, of: crate::steps::Standing) -> String {
    standing(of).map_or(text.clone(), |words| format!("{text} ({words})"))
}

fn measures(document: &Document, page: &mut Page) {
    list(page, "Level readings", document.levels.iter().map(level));
    page.marked_heading("Torque, as clicked", document.demo.as_deref());
    let rows = document.torques.iter().map(|torque| {
        let pieces = torque.fasteners.map(|pieces| pieces.to_string()).unwrap_or_default();
        let clicked = format!("{} {}", torque.stages.join(", then "), torque.unit);
        let allowed: Vec<_> = torque.limits.iter().map(|limit| limit.allows.clone()).collect();
        let class = with_standing(torque.class.clone(), torque.standing);
        vec![torque.label.clone(), pieces, clicked, class, allowed.join("; "), torque.tool.clone()]
    });
    let head = ["", "pieces", "clicked", "", "sheet", "tool"].map(str::to_owned).to_vec();
    let rows: Vec<_> = std::iter::once(head).chain(rows).collect();
    if rows.len() > 1 {
        page.table(2, &[LEFT, RIGHT, LEFT, LEFT, LEFT, LEFT], &rows);
    } else {
        page.paragraph(2, "none");
    }
}

fn level(level: &Level) -> String {
    let stick = |stick: &Stick| {
        let trace =
            stick.trace.as_ref().map_or("no trace".to_owned(), |trace| format!("{trace} {}", stick.unit));
        format!("{trace} at {} {}", stick.temperature, stick.temperature_unit)
    };
    let readings: Vec<_> = level.readings.iter().map(stick).collect();
    let text =
        format!("{} {}: {}: {}", level.by.day_and_time(), level.label, readings.join(", "), level.class);
    with_standing(text, level.standing)
}

fn sign_offs(document: &Document, page: &mut Page) {
    page.heading("Sign-offs");
    for sign in &document.sign_offs {
        page.paragraph(2, &format!("{} {}", sign.text, sign_state(sign)));
        sign.given.iter().for_each(|given| page.paragraph(4, &given_line(given)));
    }
}

fn sign_state(sign: &SignOff) -> &'static str {
    match (sign.given.is_empty(), sign.valid) {
        (true, _) => "(not signed)",
        (false, true) => "(valid)",
        (false, false) => "(no longer valid)",
    }
}

fn given_line(given: &Given) -> String {
    let signed = format!("{} {}, {}", given.by.day_and_time(), given.signed_by, role(given.role));
    match &given.lapsed {
        Some(lapse) => {
            format!("{signed}; lapsed {} through {}", lapse.by.day_and_time(), lapse.through)
        }
        None => signed,
    }
}

fn moves(document: &Document, page: &mut Page) {
    let moves = document.moves.iter().map(|made| {
        format!("{} {} {} ({})", made.by.day_and_time(), made.by.who, made.title, made.makes.join(", "))
    });
    list(page, "Moves", moves);
}

fn tally(document: &Document, page: &mut Page) {
    page.heading("Off and on again");
    let row = |name: &str, pieces: &Pieces| {
        let counts = [pieces.came_off, pieces.went_back, pieces.replaced, pieces.left];
        std::iter::once(name.to_owned()).chain(counts.iter().map(i32::to_string)).collect::<Vec<_>>()
    };
    let mut rows = vec![["", "came off", "went back", "new", "left off"].map(str::to_owned).to_vec()];
    rows.extend(document.tally.items.iter().map(|item| row(&item.name, &item.pieces)));
    rows.push(row("all pieces", &document.tally.total));
    page.table(2, &[LEFT, RIGHT, RIGHT, RIGHT, RIGHT], &rows);
    for short in &document.tally.accounted {
        page.paragraph(2, &format!("counted short: {}: {}, says {}", short.what, short.reason, short.says));
    }
}

fn photos(document: &Document, page: &mut Page) {
    page.heading(&format!("Photos, {}", document.photos.len()));
    let rows = document.photos.iter().map(|photo| {
        let caption = photo.caption.as_ref().unwrap_or(&photo.of).clone();
        let caption = with_standing(caption, photo.standing);
        vec![short(&photo.hash).to_owned(), words(&photo.step), photo.label.clone(), caption]
    });
    page.table(2, &[LEFT, LEFT, LEFT, LEFT], &rows.collect::<Vec<_>>());
}

fn otherwise(document: &Document, page: &mut Page) {
    let struck = document.struck.iter().map(|struck| {
        let with = struck.with.as_ref().map(|with| format!(", with \"{with}\"")).unwrap_or_default();
        let since = if struck.put_right { "put right since" } else { "not put right" };
        let by = &struck.by;
        format!(
            "{} {} struck \"{}\"{with}: {} ({since})",
            by.day_and_time(),
            by.who,
            struck.title,
            struck.reason
        )
    });
    list(page, "Struck", struck);
    let explained = |step: &Explained| {
        format!("{} {} \"{}\": {}", step.by.day_and_time(), step.by.who, step.title, step.reason)
    };
    list(page, "Set aside", document.set_aside.iter().map(explained));
    list(page, "Missed and explained", document.missed.iter().map(explained));
    let observed = document.observed.iter().map(|seen| {
        let mut line = format!(
            "{} {}: {} is {}: {}",
            seen.by.day_and_time(),
            seen.by.who,
            seen.condition,
            seen.value,
            seen.reason
        );
        if !seen.undone.is_empty() {
            line.push_str(&format!("; cannot have been worked: {}", seen.undone.join(", ")));
        }
        if !seen.dangers.is_empty() {
            line.push_str(&format!("; dangers then: {}", seen.dangers.join(" ")));
        }
        line
    });
    list(page, "Not as shown", observed);
    let set = document.clock_set.iter().map(|set| {
        let way = if set.seconds < 0 { "back" } else { "forward" };
        format!("{} set {way} by {} s", set.by.day_and_time(), set.seconds.unsigned_abs())
    });
    list(page, "Wall clock", set);
    list(page, "What does not agree", document.disagreements.iter().cloned());
}

fn missing(document: &Document, page: &mut Page) {
    page.heading("Missing");
    if document.missing.is_empty() {
        page.paragraph(2, "nothing");
    }
    let kinds = MissingKind::ALL.iter().flat_map(|kind| {
        let of_kind = document.missing.iter().filter(move |missing| missing.kind == *kind);
        of_kind.enumerate().map(move |(at, missing)| {
            vec![if at == 0 { kind.says().to_owned() } else { String::new() }, missing.what.clone()]
        })
    });
    page.table(2, &[LEFT, LEFT], &kinds.collect::<Vec<_>>());
}

fn phase_times(document: &Document, page: &mut Page) {
    page.heading("Time by phase");
    let mut rows = vec![["", "planned", "unplanned", "waiting"].map(str::to_owned).to_vec()];
    rows.extend(document.time.phases.iter().map(|phase| {
        let minutes = phase.minutes;
        let hours = [minutes.planned, minutes.unplanned, minutes.waiting].map(hours);
        std::iter::once(phase.title.clone()).chain(hours).collect()
    }));
    page.table(2, &[LEFT, RIGHT, RIGHT, RIGHT], &rows);
    page.paragraph(2, "Minutes are rounded down one by one, so that the rows may add up to a little less.");
}

fn proof(document: &Document, page: &mut Page) {
    page.heading("Proved and assumed");
    let proof = &document.proof;
    match &proof.summary {
        None => page.paragraph(2, "No proof came with this record."),
        Some(summary) => {
            let verdict = match summary.verdict {
                ProofVerdict::Proved => "proved",
                ProofVerdict::Refuted => "refuted",
                ProofVerdict::NotDecided => "not decided",
            };
            let line = format!("Checklist {verdict}: {} states, engine {}", summary.states, summary.engine);
            page.paragraph(2, &line);
            page.paragraph(2, &format!("Checklist that was proved: {}", summary.checklist));
            if !proof.of_this_checklist {
                page.paragraph(2, "That is not the checklist of this job: the proof says nothing about it.");
            }
            summary.assumed.iter().for_each(|text| page.paragraph(2, &format!("Assumed: {text}")));
            summary.not_claimed.iter().for_each(|text| page.paragraph(2, &format!("Not claimed: {text}")));
        }
    }
    page.paragraph(2, &proof.covers);
}

fn journal(document: &Document, page: &mut Page) {
    page.heading("Journal");
    let row = |name: &str, value: String| vec![name.to_owned(), value];
    let mut rows = vec![
        row("Job", document.job.clone()),
        row("Events", document.journal.events.to_string()),
        row("Head", document.journal.head.to_string()),
    ];
    if let Some(papers) = &document.papers {
        for (name, paper) in [("Checklist", &papers.checklist), ("Sheet", &papers.sheet)] {
            rows.push(row(name, format!("{} revision {}, {}", paper.id, paper.revision, paper.hash)));
        }
    }
    page.table(2, &[LEFT, LEFT], &rows);
    page.paragraph(2, &document.journal.shows);
}
