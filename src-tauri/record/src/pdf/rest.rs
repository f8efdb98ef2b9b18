//! Everything after page one, in the words of the text form.

use std::collections::BTreeMap;

use krilla::image::Image;
use panside_job::figures::FigureKind;

use super::figure::{self, Said};
use super::flow::Flow;
use super::ink::{LEFT, Look, WIDTH};
use super::photos;
use super::table::{self, At};
use crate::document::Document;
use crate::say::{self, Block, Section, Table};

/// How far what belongs to a line stands in.
const UNDER: f32 = 14.0;
/// Columns of entries: what was asked, what was entered, when and by whom.
const ENTRY: &[f32] = &[140.0, 246.0, 92.0];
/// What the heading of the photos needs below it, so that a row of them stands with it.
const WITH_PHOTOS: f32 = 270.0;
/// A line does not stand without the first of what belongs to it.
const WITH_UNDER: f32 = 30.0;
/// A chart with all its readings.
const CHART: (f32, f32) = (WIDTH, 230.0);

/// The pictures, and why others cannot be shown.
pub(super) struct Pictures<'a> {
    pub images: &'a BTreeMap<&'a str, Image>,
    pub lacking: &'a BTreeMap<&'a str, String>,
}

pub(super) fn write(flow: &mut Flow, document: &Document, pictures: &Pictures<'_>) {
    let mark = &document.mark();
    flow.break_page();
    flow.begin_section("The job", "");
    write_table(flow, &say::facts_table(document));
    for section in std::iter::once(say::entries(document)).chain(say::rest(document)) {
        if !document.photos.is_empty() && section.has_photos() {
            flow.keep(WITH_PHOTOS);
        }
        flow.begin_section(&section.heading, if section.has_sheet_values { mark } else { "" });
        write_section(flow, &section, document, pictures);
        if section.heading == say::LEVELS {
            charts(flow, document);
        }
        if section.heading == say::TORQUES {
            figures(flow, document, mark);
        }
    }
    closing(flow, document);
}

fn write_section(flow: &mut Flow, section: &Section, document: &Document, pictures: &Pictures<'_>) {
    for (at, block) in section.blocks.iter().enumerate() {
        if matches!(section.blocks.get(at + 1), Some(Block::Under(_))) {
            flow.keep(2.0 * WITH_UNDER);
        }
        match block {
            Block::Title(text) => flow.part(text),
            Block::Step(title, shown) => flow.step(title, shown),
            Block::Line(text) => flow.paragraph(text, Look::BODY, 0.0),
            Block::Under(text) => {
                flow.keep(WITH_UNDER);
                flow.paragraph(text, Look::NOTE, UNDER);
            }
            Block::Table(table) => write_table(flow, table),
            Block::Photos(_) => photos::write(flow, document, pictures.images, pictures.lacking),
        }
    }
}

fn write_table(flow: &mut Flow, table: &Table) {
    let at = if table.under {
        At { x: LEFT + UNDER, width: WIDTH - UNDER, look: Look::SMALL, columns: Some(ENTRY) }
    } else {
        At { x: LEFT, width: WIDTH, look: Look::BODY, columns: None }
    };
    table::write(flow, table, at);
}

fn charts(flow: &mut Flow, document: &Document) {
    for figure in figure::of_kind(document, FigureKind::Level) {
        flow.keep(CHART.1 + 24.0);
        figure::draw(flow, figure, (LEFT, flow.y, CHART.0, CHART.1), Said::All);
        flow.y += CHART.1 + 2.0;
        let Some(chart) = document.charts.iter().find(|chart| chart.key == figure.id) else { continue };
        let about = format!(
            "+ counts, × replaced, left or voided. Two readings agree within {} {}. Band: {}.",
            chart.agreement, chart.length_unit, chart.source
        );
        flow.paragraph(&about, Look::NOTE, 0.0);
    }
}

/// Every figure but the level, which stands with its readings: drawn, and said below.
fn figures(flow: &mut Flow, document: &Document, mark: &str) {
    let figures: Vec<_> = document.figures.iter().filter(|figure| figure.kind != FigureKind::Level).collect();
    let Some(first) = figures.first() else { return };
    // The heading does not stand without the first of them.
    flow.keep(figure::size(first, CHART).1 + 120.0);
    flow.begin_section("Figures", mark);
    for figure in figures {
        let (width, height) = figure::size(figure, CHART);
        flow.keep(height + 60.0);
        flow.part(&figure.title.said());
        figure::draw(flow, figure, (LEFT, flow.y, width, height), Said::All);
        flow.y += height + 4.0;
        for sentence in &figure.says {
            flow.paragraph(&sentence.said(), Look::NOTE, 0.0);
        }
    }
}

/// What comes first, once more, and what the pages could not show.
fn closing(flow: &mut Flow, document: &Document) {
    flow.begin_section("What comes first", "");
    flow.paragraph(&document.come_first, Look::BODY.strong(), 0.0);
    flow.paragraph(
        &format!("The data of this record is attached to these pages as {}.", super::write::ATTACHED),
        Look::BODY,
        0.0,
    );
    if !flow.letters.unshown.is_empty() {
        let codes = flow.letters.unshown.iter().map(|c| format!("U+{:04X}", u32::from(*c)));
        let text = format!(
            "Characters that these pages have no letter for, each shown as {}: {}. The attached data has them.",
            super::printable::UNSHOWN,
            codes.collect::<Vec<_>>().join(", ")
        );
        flow.paragraph(&text, Look::BODY, 0.0);
    }
}
