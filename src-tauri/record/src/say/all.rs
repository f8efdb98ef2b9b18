//! What is printed only where everything is asked for: every entry, torque and signature, vehicle actions, cautions,
//! figures at full size, the proof in detail, the journal.

use super::file::{sign_state, signer, torque_row};
use super::{Block, Drawn, Left, Right, Section, Table, entries, journal};
use crate::departures::VehicleAction;
use crate::document::Document;
use crate::messages;
use crate::signs::Given;
use crate::source::Standing;
use crate::speak::Say;
use crate::steps::Warned;

pub(super) fn all(document: &Document, say: &Say<'_>) -> Vec<Section> {
    let mut all = vec![entries::entries(document, say)];
    all.extend(torques(document, say));
    all.push(sign_offs(document, say));
    let vehicle_actions = document.vehicle_actions.iter().map(|made| made_line(made, say));
    all.extend(Section::list(&messages::heading_actions(), say, vehicle_actions));
    all.extend(cautions(document, say));
    all.extend(figures(document, say));
    all.extend(journal::details(document, say));
    all.push(journal::journal(document, say));
    all
}

/// Torques that do not count.
fn torques(document: &Document, say: &Say<'_>) -> Option<Section> {
    let others = document.torques.iter().filter(|torque| torque.standing != Standing::Counts);
    let rows: Vec<_> = others.map(|torque| torque_row(torque, say)).collect();
    let table = Table::new(&[Left, Right, Left, Left, Left, Left], rows);
    (!table.rows.is_empty()).then(|| {
        let heading = messages::heading_torque_void();
        Section::new(&heading, say, vec![Block::Table(table)]).with_sheet_values()
    })
}

fn sign_offs(document: &Document, say: &Say<'_>) -> Section {
    let mut blocks = Vec::new();
    for sign in &document.sign_offs {
        let state = say.within(&sign_state(sign));
        blocks.push(Block::Line(say.within(&messages::with_remark(&sign.text, state))));
        blocks.extend(sign.given.iter().map(|given| Block::Under(given_line(given, say))));
    }
    Section::new(&messages::heading_sign_offs(), say, blocks)
}

fn given_line(given: &Given, say: &Say<'_>) -> String {
    let signed = say.within(&messages::when_who(given.by.day_and_time(say), signer(given, say)));
    let lapsed = given
        .lapsed
        .as_ref()
        .map(|lapse| say.within(&messages::sign_lapsed(lapse.by.day_and_time(say), &lapse.through)));
    say.apart([signed].into_iter().chain(lapsed))
}

fn made_line(made: &VehicleAction, say: &Say<'_>) -> String {
    let line = say.within(&messages::labeled(made.by.when_and_who(say), &made.title));
    say.within(&messages::with_remark(line, say.listed(made.makes.iter().cloned())))
}

/// The cautions that stand before the steps that somebody was in, each once, with the numbers of these steps.
fn cautions(document: &Document, say: &Say<'_>) -> Option<Section> {
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
    let lines = all.into_iter().map(|(warned, numbers)| {
        say.says(&messages::caution_before(warned.signal, &warned.text, say.listed(numbers)))
    });
    Section::list(&messages::heading_cautions(), say, lines)
}

fn figures(document: &Document, say: &Say<'_>) -> Option<Section> {
    (!document.figures.is_empty()).then(|| {
        let section = Section::new(&messages::heading_figures(), say, Vec::new());
        section.with_sheet_values().drawing(Drawn::Large)
    })
}
