//! Tables and lists after the entries: levels, torque, sign-offs, vehicle actions, tally, photos, what is missing.

use super::first::signal;
use super::{Block, Left, Right, Section, Table, hours, journal, otherwise, with_standing};
use crate::document::Document;
use crate::items::Pieces;
use crate::measured::{Level, Photo, Stick};
use crate::missing::MissingKind;
use crate::signs::{Given, Pin, SignOff};
use crate::steps::Warned;
use crate::value::short;

/// Heading of the level readings.
pub(crate) const LEVELS: &str = "Level readings";
/// The heading of torque.
pub(crate) const TORQUES: &str = "Torque, as clicked";

/// Everything after the entries.
pub(crate) fn rest(document: &Document) -> Vec<Section> {
    let mut all: Vec<Section> =
        Section::list(LEVELS, document.levels.iter().map(level)).into_iter().collect();
    all.push(torques(document));
    all.push(sign_offs(document));
    all.extend(vehicle_actions(document));
    all.push(tally(document));
    all.push(photos(document));
    all.extend(otherwise::otherwise(document));
    all.push(missing(document));
    all.push(phase_times(document));
    all.push(journal::proof(document));
    all.push(journal::journal(document));
    all.extend(cautions(document));
    all
}

fn torques(document: &Document) -> Section {
    let rows = torque_rows(document);
    let head = ["", "pieces", "clicked", "", "sheet", "tool"];
    let block = if rows.is_empty() {
        Block::Line("none".to_owned())
    } else {
        Block::Table(Table::with_head(&[Left, Right, Left, Left, Left, Left], &head, rows))
    };
    Section::with_sheet_values(TORQUES, vec![block])
}

/// Each torque: what, how many, as clicked, what it turned out to be, what the sheet allows, the tool.
pub(crate) fn torque_rows(document: &Document) -> Vec<Vec<String>> {
    let rows = document.torques.iter().map(|torque| {
        let pieces = torque.fasteners.map(|pieces| pieces.to_string()).unwrap_or_default();
        let clicked = format!("{} {}", torque.stages.join(", then "), torque.unit);
        let allowed: Vec<_> = torque.limits.iter().map(|limit| limit.allows.clone()).collect();
        let class = with_standing(torque.called.said(), torque.standing);
        let certificate = torque.certificate.iter().map(|number| format!(", certificate {number}"));
        let tool = certificate.fold(torque.tool.clone(), |tool, number| tool + &number);
        vec![torque.label.clone(), pieces, clicked, class, allowed.join("; "), tool]
    });
    rows.collect()
}

fn level(level: &Level) -> String {
    let stick = |stick: &Stick| {
        let trace =
            stick.trace.as_ref().map_or("no trace".to_owned(), |trace| format!("{trace} {}", stick.unit));
        format!("{trace} at {} {}", stick.temperature, stick.temperature_unit)
    };
    let readings: Vec<_> = level.readings.iter().map(stick).collect();
    let text = format!(
        "{} {}: {}: {}",
        level.by.day_and_time(),
        level.label,
        readings.join(", "),
        level.called.said()
    );
    with_standing(text, level.standing)
}

fn sign_offs(document: &Document) -> Section {
    let mut blocks = Vec::new();
    for sign in &document.sign_offs {
        blocks.push(Block::Line(format!("{} {}", sign.text, sign_state(sign))));
        blocks.extend(sign.given.iter().map(|given| Block::Under(given_line(given))));
    }
    Section::new("Sign-offs", blocks)
}

fn sign_state(sign: &SignOff) -> &'static str {
    match (sign.given.is_empty(), sign.valid) {
        (true, _) => "(not signed)",
        (false, true) => "(valid)",
        (false, false) => "(no longer valid)",
    }
}

fn given_line(given: &Given) -> String {
    let pin = match &given.pin {
        Some(Pin::Own) => ", PIN given".to_owned(),
        Some(Pin::SetBy { lead, second }) => format!(", PIN given, set by {lead} with {second}"),
        Some(Pin::NoPin) => ", no PIN".to_owned(),
        None => String::new(),
    };
    let signed = format!("{} {}, {}{pin}", given.by.day_and_time(), given.signed_by, given.role.noun());
    match &given.lapsed {
        Some(lapse) => {
            format!(
                "{signed}; must be signed again since {}, after {}",
                lapse.by.day_and_time(),
                lapse.through
            )
        }
        None => signed,
    }
}

fn vehicle_actions(document: &Document) -> Option<Section> {
    let vehicle_actions = document.vehicle_actions.iter().map(|made| {
        format!("{} {} {} ({})", made.by.day_and_time(), made.by.who, made.title, made.makes.join(", "))
    });
    Section::list("Vehicle actions", vehicle_actions)
}

fn tally(document: &Document) -> Section {
    let head = ["", "removed", "refitted", "new", "left off"];
    let table = Table::with_head(&[Left, Right, Right, Right, Right], &head, tally_rows(document));
    let mut blocks = vec![Block::Table(table)];
    blocks.extend(document.tally.accounted.iter().map(|short| {
        Block::Line(format!("counted short: {}: {}, says {}", short.what, short.reason, short.says))
    }));
    Section::new("Parts removed and refitted", blocks)
}

/// Each item, then all pieces: came off, went back, new, left off.
fn tally_rows(document: &Document) -> Vec<Vec<String>> {
    let row = |name: &str, pieces: &Pieces| {
        let counts = [pieces.came_off, pieces.went_back, pieces.replaced, pieces.left];
        std::iter::once(name.to_owned()).chain(counts.iter().map(i32::to_string)).collect::<Vec<_>>()
    };
    let items = document.tally.items.iter().map(|item| row(&item.name, &item.pieces));
    items.chain([row("all pieces", &document.tally.total)]).collect()
}

fn photos(document: &Document) -> Section {
    let rows = document.photos.iter().map(|photo| {
        vec![short(&photo.hash).to_owned(), photo.title.clone(), photo.label.clone(), caption(photo)]
    });
    let table = Table::new(&[Left, Left, Left, Left], rows.collect());
    Section::new(&format!("Photos, {}", document.photos.len()), vec![Block::Photos(table)])
}

/// What stands under a photo.
pub(crate) fn caption(photo: &Photo) -> String {
    with_standing(photo.caption.as_ref().unwrap_or(&photo.of).clone(), photo.standing)
}

fn missing(document: &Document) -> Section {
    if document.missing.is_empty() {
        return Section::new("Missing", vec![Block::Line("nothing".to_owned())]);
    }
    let kinds = MissingKind::ALL.iter().flat_map(|kind| {
        let of_kind = document.missing.iter().filter(move |missing| missing.kind == *kind);
        of_kind.enumerate().map(move |(at, missing)| {
            vec![if at == 0 { kind.says().to_owned() } else { String::new() }, missing.what.clone()]
        })
    });
    Section::new("Missing", vec![Block::Table(Table::new(&[Left, Left], kinds.collect()))])
}

/// The cautions that stand before the steps that somebody was in, each once, with the numbers of these steps.
fn cautions(document: &Document) -> Option<Section> {
    let mut all: Vec<(&Warned, Vec<String>)> = Vec::new();
    let steps = document.phases.iter().flat_map(|phase| &phase.steps);
    for step in steps.filter(|step| !step.attempts.is_empty()) {
        for warned in &step.cautions {
            match all.iter_mut().find(|(known, _)| *known == warned) {
                Some((_, numbers)) => numbers.push(step.number.to_string()),
                None => all.push((warned, vec![step.number.to_string()])),
            }
        }
    }
    let lines = all.iter().map(|(warned, numbers)| {
        format!("{}: {} (before {})", signal(warned.signal), warned.text, numbers.join(", "))
    });
    Section::list("Cautions of the steps that were done", lines)
}

fn phase_times(document: &Document) -> Section {
    let rows = document.time.phases.iter().map(|phase| {
        let minutes = phase.minutes;
        let hours = [minutes.planned, minutes.unplanned, minutes.waiting].map(hours);
        std::iter::once(phase.title.clone()).chain(hours).collect()
    });
    let head = ["", "planned", "unplanned", "waiting"];
    let table = Table::with_head(&[Left, Right, Right, Right], &head, rows.collect());
    let about = "Minutes are rounded down one by one, so that the rows may add up to a little less.";
    Section::new("Time by phase", vec![Block::Table(table), Block::Line(about.to_owned())])
}
