//! What stands up later: findings and decisions, measurements, levels, torque, pieces, signatures, what went otherwise,
//! time, what the proof covers.

use panside_messages::Message;

use super::{Block, Drawn, Extent, Left, Right, Section, Table, journal, otherwise, row, with_standing};
use crate::document::{Document, End};
use crate::items::Pieces;
use crate::measured::{Level, Photo, Stick, Torque};
use crate::messages;
use crate::missing::MissingKind;
use crate::signs::{Given, SignOff, pin_words};
use crate::source::Standing;
use crate::speak::Say;
use crate::steps::{Entry, Step};
use crate::time::{Kind, StepTime};
use crate::value::short;

/// Kinds of entries that are answers, and those that are measured and have no table of their own.
const ANSWERS: &[&str] = &["choice", "several", "decision", "scan", "note", "authorization"];
const MEASURED: &[&str] = &["reading", "coil", "cool_down", "balance", "timer"];

/// Every section of the file. Sections that everything has in a longer form are left out where that is asked for.
pub(super) fn file(document: &Document, say: &Say<'_>, extent: Extent) -> Vec<Section> {
    let mut all: Vec<Section> = Vec::new();
    all.extend(job(document, say));
    all.extend(findings(document, say));
    all.extend(super::turned_up::turned_up(document, say));
    all.extend(super::estimate::estimates(document, say));
    all.extend(measurements(document, say));
    all.extend(levels(document, say));
    all.push(torques(document, say));
    all.push(tally(document, say));
    if extent == Extent::File {
        all.push(sign_offs(document, say));
    }
    all.extend(otherwise::otherwise(document, say));
    all.extend(missing(document, say));
    all.push(time(document, say));
    all.push(journal::proof(document, say));
    all
}

/// What the first page may have cut: what names the job, in full.
fn job(document: &Document, say: &Say<'_>) -> Option<Section> {
    let mut rows = vec![row(say, &messages::fact_order(), super::order(document, say))];
    rows.extend(super::first(document, say).facts);
    let sheet = document.papers.as_ref().map(|papers| papers.sheet_title.clone());
    rows.extend(sheet.map(|sheet| row(say, &messages::fact_sheet(), sheet)));
    let changed = &document.vehicle.changed;
    let is_over = matches!(document.end, End::Finished { .. });
    let changed = (!is_over && !changed.is_empty()).then(|| say.listed(changed.iter().cloned()));
    rows.extend(changed.map(|changed| row(say, &messages::fact_status(), changed)));
    let heading = messages::heading_job();
    Some(Section::new(&heading, say, vec![Block::Table(Table::new(&[Left, Left], rows))]))
}

/// The steps with their entries that count.
fn counting(document: &Document) -> impl Iterator<Item = (&Step, Vec<&Entry>)> {
    document.phases.iter().flat_map(|phase| &phase.steps).map(|step| {
        let entries = step.attempts.iter().flat_map(|attempt| &attempt.entries);
        (step, entries.filter(|entry| entry.counts()).collect())
    })
}

/// What was found, decided and written, step by step.
fn findings(document: &Document, say: &Say<'_>) -> Option<Section> {
    let rows = counting(document).filter_map(|(step, entries)| {
        let answers: Vec<_> =
            entries.into_iter().filter(|entry| ANSWERS.contains(&entry.kind.as_str())).collect();
        let by = answers.last()?.by.when_and_who(say);
        let said = answers.iter().map(|entry| {
            let text = entry.shows().trim_end_matches('.');
            say.within(&messages::labeled(&entry.label, text))
        });
        Some(vec![numbered(step, say), say.apart(said), by])
    });
    let rows: Vec<_> = rows.collect();
    let table = Table::new(&[Left, Left, Left], rows);
    (!table.rows.is_empty())
        .then(|| Section::new(&messages::heading_findings(), say, vec![Block::Table(table)]))
}

pub(super) fn numbered(step: &Step, say: &Say<'_>) -> String {
    say.within(&messages::step_number(step.number.to_string(), &step.title))
}

/// Every measurement that counts: what, the value as shown, what the sheet allows, what it turned out to be.
pub(crate) fn measured(document: &Document, say: &Say<'_>) -> Vec<Vec<String>> {
    let rows = counting(document).flat_map(|(step, entries)| {
        let measured = entries.into_iter().filter(|entry| MEASURED.contains(&entry.kind.as_str()));
        measured.map(|entry| {
            let allows = say.apart(entry.limits.iter().map(|limit| limit.allows.clone()));
            let class = if entry.judged { entry.called.clone() } else { String::new() };
            vec![numbered(step, say), entry.label.clone(), entry.shows().to_owned(), allows, class]
        })
    });
    rows.collect()
}

fn measurements(document: &Document, say: &Say<'_>) -> Option<Section> {
    let mut rows = measured(document, say);
    // A step is named at the first of its rows.
    let mut last = String::new();
    for row in &mut rows {
        if row[0] == last {
            row[0].clear();
        } else {
            last.clone_from(&row[0]);
        }
    }
    let head = [
        None,
        None,
        Some(messages::column_value()),
        Some(messages::column_sheet()),
        Some(messages::column_result()),
    ];
    let table = Table::new(&[Left, Left, Left, Left, Left], rows).with_head(say, &head);
    (!table.rows.is_empty()).then(|| {
        Section::new(&messages::heading_measurements(), say, vec![Block::Table(table)]).with_sheet_values()
    })
}

fn levels(document: &Document, say: &Say<'_>) -> Option<Section> {
    let rows: Vec<_> = document.levels.iter().map(|level| level_row(level, say)).collect();
    let blocks = if rows.is_empty() {
        Vec::new()
    } else {
        vec![Block::Table(Table::new(&[Left, Left, Left, Left], rows))]
    };
    let is_some = !blocks.is_empty() || !document.figures.is_empty();
    is_some.then(|| {
        Section::new(&messages::heading_levels(), say, blocks).with_sheet_values().drawing(Drawn::Small)
    })
}

fn level_row(level: &Level, say: &Say<'_>) -> Vec<String> {
    let stick = |stick: &Stick| {
        let trace = stick.trace.as_ref();
        let shows =
            trace.map_or_else(|| say.within(&messages::no_trace()), |trace| say.measure(trace, &stick.unit));
        say.within(&messages::value_at(shows, say.measure(&stick.temperature, &stick.temperature_unit)))
    };
    let class = with_standing(level.called.clone(), level.standing, say);
    vec![level.by.day_and_time(say), level.label.clone(), say.listed(level.readings.iter().map(stick)), class]
}

fn torques(document: &Document, say: &Say<'_>) -> Section {
    let counts = document.torques.iter().filter(|torque| torque.standing == Standing::Counts);
    let rows: Vec<_> = counts.map(|torque| torque_row(torque, say)).collect();
    let head = [
        None,
        Some(messages::column_pieces()),
        Some(messages::column_clicked()),
        Some(messages::column_sheet()),
        Some(messages::column_result()),
        Some(messages::column_tool()),
    ];
    let block = if rows.is_empty() {
        Block::Line(say.says(&messages::no_torque()))
    } else {
        Block::Table(Table::new(&[Left, Right, Left, Left, Left, Left], rows).with_head(say, &head))
    };
    Section::new(&messages::heading_torque(), say, vec![block]).with_sheet_values()
}

/// Each torque: what, how many, as clicked, what the sheet allows, what it turned out to be, the tool.
pub(super) fn torque_row(torque: &Torque, say: &Say<'_>) -> Vec<String> {
    let clicked = say.apart_by_then(torque.stages.iter().map(|stage| say.number(stage)));
    let number = torque.certificate.as_ref();
    let number = number.map(|number| say.within(&messages::tool_certificate(number)));
    vec![
        torque.label.clone(),
        torque.fasteners.map(|pieces| pieces.to_string()).unwrap_or_default(),
        say.as_typed(&clicked, &torque.unit),
        say.apart(torque.limits.iter().map(|limit| limit.allows.clone())),
        with_standing(torque.called.clone(), torque.standing, say),
        say.listed([torque.tool.clone()].into_iter().chain(number)),
    ]
}

fn tally(document: &Document, say: &Say<'_>) -> Section {
    let row = |name: &str, pieces: &Pieces| {
        let counts = [pieces.came_off, pieces.went_back, pieces.replaced, pieces.left];
        std::iter::once(name.to_owned()).chain(counts.iter().map(i32::to_string)).collect::<Vec<_>>()
    };
    let items = document.tally.items.iter().map(|item| row(&item.name, &item.pieces));
    let rows = items.chain([row(&say.says(&messages::all_pieces()), &document.tally.total)]).collect();
    let head = [
        None,
        Some(messages::column_removed()),
        Some(messages::column_refitted()),
        Some(messages::column_new()),
        Some(messages::column_left_off()),
    ];
    let table = Table::new(&[Left, Right, Right, Right, Right], rows).with_head(say, &head);
    let short = document.tally.accounted.iter().map(|short| {
        Block::Line(say.says(&messages::counted_short(&short.what, &short.reason, &short.says)))
    });
    let blocks = [Block::Table(table)].into_iter().chain(short).collect();
    Section::new(&messages::heading_tally(), say, blocks)
}

/// Each sign-off with who signed it and when, and how it stands.
fn sign_offs(document: &Document, say: &Say<'_>) -> Section {
    let rows = document.sign_offs.iter().map(|sign| {
        let mut by_signer: Vec<(String, Vec<String>)> = Vec::new();
        for given in &sign.given {
            let (signer, when) = (signer(given, say), given.by.day_and_time(say));
            match by_signer.iter_mut().find(|(known, _)| *known == signer) {
                Some((_, times)) => times.push(when),
                None => by_signer.push((signer, vec![when])),
            }
        }
        let signed = by_signer
            .into_iter()
            .map(|(signer, times)| say.within(&messages::labeled(signer, say.listed(times))));
        vec![sign.text.clone(), say.apart(signed), say.says(&sign_state(sign))]
    });
    let table = Table::new(&[Left, Left, Left], rows.collect());
    Section::new(&messages::heading_sign_offs(), say, vec![Block::Table(table)])
}

pub(super) fn sign_state(sign: &SignOff) -> Message {
    match (sign.given.is_empty(), sign.valid) {
        (true, _) => messages::sign_not_signed(),
        (false, true) => messages::sign_valid(),
        (false, false) => messages::sign_no_longer_valid(),
    }
}

/// Who signed, as what, and what is known of the PIN.
pub(super) fn signer(given: &Given, say: &Say<'_>) -> String {
    let who = say.within(&messages::person_as(&given.signed_by, given.role));
    let pin = given.pin.as_ref().map(|pin| say.within(&pin_words(pin)));
    say.listed([who].into_iter().chain(pin))
}

fn missing(document: &Document, say: &Say<'_>) -> Option<Section> {
    let kinds = MissingKind::ALL.iter().flat_map(|kind| {
        let of_kind = document.missing.iter().filter(move |missing| missing.kind == *kind);
        of_kind.enumerate().map(move |(at, missing)| {
            let name = if at == 0 { say.says(&kind.says()) } else { String::new() };
            vec![name, missing.what.clone()]
        })
    });
    let table = Table::new(&[Left, Left], kinds.collect());
    (!table.rows.is_empty())
        .then(|| Section::new(&messages::heading_missing(), say, vec![Block::Table(table)]))
}

/// The day, and time by phase and kind of work.
fn time(document: &Document, say: &Say<'_>) -> Section {
    let time = &document.time;
    let all = say.says(&messages::all_phases());
    let phases = time.phases.iter().map(|phase| (phase.title.clone(), phase.minutes));
    let rows = phases.filter(|(_, minutes)| minutes.labor() + minutes.waiting > 0);
    let rows = rows.chain([(all, time.in_steps)]).map(|(title, minutes)| {
        let shown = |one| if one == 0 { String::new() } else { say.clock(one) };
        let minutes = [minutes.planned, minutes.unplanned, minutes.waiting].map(shown);
        std::iter::once(title).chain(minutes).collect()
    });
    let head = [
        None,
        Some(messages::column_planned()),
        Some(messages::column_unplanned()),
        Some(messages::column_waiting()),
    ];
    let table = Table::new(&[Left, Right, Right, Right], rows.collect()).with_head(say, &head);
    let mut blocks = vec![Block::Table(table)];
    blocks.extend(time.apart.iter().map(|step| Block::Line(apart(step, say))));
    blocks.push(Block::Line(say.says(&messages::time_in_all(say.clock(time.total)))));
    if time.untimed > 0 {
        blocks.push(Block::Line(say.says(&messages::time_untimed(time.untimed))));
    }
    if time.unknown_gaps > 0 {
        blocks.push(Block::Line(say.says(&messages::time_gaps(time.unknown_gaps))));
    }
    Section::new(&messages::heading_time(), say, blocks).drawing(Drawn::Day)
}

/// A step that was unplanned or waiting.
fn apart(step: &StepTime, say: &Say<'_>) -> String {
    let time = say.clock(step.minutes);
    let line = say.says(&match step.kind {
        Kind::Waiting => messages::step_waiting(&step.title, time),
        Kind::Unplanned | Kind::Planned => messages::step_unplanned(&step.title, time),
    });
    let reasons = say.apart(step.reasons.iter().cloned());
    if reasons.is_empty() { line } else { say.within(&messages::with_remark(line, reasons)) }
}

pub(super) fn photos(document: &Document, say: &Say<'_>) -> Section {
    let rows = document
        .photos
        .iter()
        .map(|photo| vec![short(&photo.hash).to_owned(), photo.label.clone(), caption(photo, say)]);
    let table = Table::new(&[Left, Left, Left], rows.collect());
    let heading = messages::heading_photos(document.photos.len());
    Section::new(&heading, say, vec![Block::Table(table)]).drawing(Drawn::Photos)
}

/// What stands under a photo.
pub(crate) fn caption(photo: &Photo, say: &Say<'_>) -> String {
    with_standing(photo.caption.as_ref().unwrap_or(&photo.of).clone(), photo.standing, say)
}
