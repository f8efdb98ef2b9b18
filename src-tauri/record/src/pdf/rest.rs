//! Everything after page one, in the words of the text form.

use panside_job::figures::{Drawing, Figure, FigureKind};

use super::day;
use super::figure::{self, Said};
use super::flow::Flow;
use super::ink::{LEFT, Look, WIDTH};
use super::photos::{self, FILE, Pictures};
use super::table::{self, At};
use crate::document::Document;
use crate::messages;
use crate::say::{self, Block, Drawn, Extent, Section, Table};
use crate::speak::Say;

/// How far what belongs to a line stands in.
const UNDER: f32 = 14.0;
/// Columns of entries: what was asked, what was entered, when and by whom.
const ENTRY: &[f32] = &[140.0, 246.0, 92.0];
/// A line does not stand without the first of what belongs to it.
const WITH_UNDER: f32 = 30.0;
/// A figure at full size.
const LARGE: (f32, f32) = (WIDTH, 230.0);
/// Small figures, two in a row.
const SMALL_GAP: f32 = 20.0;
const SMALL: (f32, f32) = ((WIDTH - SMALL_GAP) / 2.0, 122.0);
/// What a figure needs for its name.
const NAME: f32 = 30.0;

pub(super) fn write(
    flow: &mut Flow<'_>,
    document: &Document,
    pictures: &Pictures<'_>,
    (say, extent): (&Say<'_>, Extent),
) {
    let mark = &document.mark();
    flow.break_page();
    let sections = say::rest(document, say, extent);
    for section in &sections {
        if section.drawn == Drawn::Photos {
            unshown(flow, say);
        }
        let needs = first_height(flow, section, document);
        flow.begin_section(&section.heading, if section.has_sheet_values { mark } else { "" }, needs);
        match section.drawn {
            Drawn::Nothing | Drawn::Large | Drawn::Photos => {}
            Drawn::Day => day::draw(flow, document, say),
            Drawn::Small => small(flow, document),
        }
        match section.drawn {
            Drawn::Photos => {
                let all: Vec<_> = document.photos.iter().collect();
                photos::write(flow, &all, (pictures, FILE), say);
            }
            _ => write_blocks(flow, section),
        }
        if section.drawn == Drawn::Large {
            large(flow, document);
        }
    }
}

/// What must stand with a section's heading.
fn first_height(flow: &mut Flow<'_>, section: &Section, document: &Document) -> f32 {
    match section.drawn {
        Drawn::Photos if document.photos.is_empty() => return 0.0,
        Drawn::Photos => return FILE.highest + NAME,
        Drawn::Day => return day::HEIGHT,
        Drawn::Small if small_ones(document).next().is_some() => return SMALL.1 + NAME,
        Drawn::Large => return LARGE.1 + NAME,
        Drawn::Nothing | Drawn::Small => {}
    }
    match section.blocks.first() {
        Some(Block::Table(table)) => {
            let (table, at) = (table, at(table));
            table::first_height(flow, table, at)
        }
        Some(_) if matches!(section.blocks.get(1), Some(Block::Under(_))) => 2.0 * WITH_UNDER,
        _ => WITH_UNDER,
    }
}

fn write_blocks(flow: &mut Flow<'_>, section: &Section) {
    for (at, block) in section.blocks.iter().enumerate() {
        if matches!(section.blocks.get(at + 1), Some(Block::Under(_))) {
            flow.keep(2.0 * WITH_UNDER);
        }
        match block {
            Block::Title(text) => flow.part(text),
            Block::Step(title, shown) => flow.step(title, shown),
            Block::Line(text) => flow.paragraph(text, Look::BODY, 0.0),
            Block::Strong(text) => flow.paragraph(text, Look::BODY.strong(), 0.0),
            Block::Under(text) => {
                flow.keep(WITH_UNDER);
                flow.paragraph(text, Look::NOTE, UNDER);
            }
            Block::Table(table) => table::write(flow, table, self::at(table)),
        }
    }
}

fn at(table: &Table) -> At {
    if table.under {
        At { x: LEFT + UNDER, width: WIDTH - UNDER, look: Look::SMALL, columns: Some(ENTRY) }
    } else {
        At { x: LEFT, width: WIDTH, look: Look::SMALL, columns: None }
    }
}

/// Levels, and cool-downs of which there is more than one reading.
fn small_ones(document: &Document) -> impl Iterator<Item = &Figure> {
    document.figures.iter().filter(|figure| match (&figure.kind, &figure.drawing) {
        (FigureKind::Level, _) => true,
        (FigureKind::CoolDown, Drawing::Plot(plot)) => plot.points.len() > 1,
        _ => false,
    })
}

/// The small ones, two in a row.
fn small(flow: &mut Flow<'_>, document: &Document) {
    let figures: Vec<_> = small_ones(document).collect();
    for row in figures.chunks(2) {
        flow.keep(SMALL.1 + NAME);
        let (top, mut named) = (flow.y, flow.y);
        for (column, drawn) in row.iter().enumerate() {
            let x = LEFT + column as f32 * (SMALL.0 + SMALL_GAP);
            let name = flow.letters.set(&drawn.title.said(), Look::NOTE, SMALL.0);
            let node = flow.node(super::sheet::Role::Paragraph);
            let owner = super::sheet::Owner::Node(node);
            named = named.max(flow.lines(owner, name, say::Side::Left, (x, top), SMALL.0));
        }
        for (column, drawn) in row.iter().enumerate() {
            let x = LEFT + column as f32 * (SMALL.0 + SMALL_GAP);
            figure::draw(flow, drawn, (x, named + 2.0, SMALL.0, SMALL.1), Said::OfWhatCounts);
        }
        flow.y = named + 2.0 + SMALL.1 + 6.0;
    }
}

/// Every figure: drawn, and said below.
fn large(flow: &mut Flow<'_>, document: &Document) {
    for figure in &document.figures {
        let (width, height) = figure::size(figure, LARGE);
        flow.keep(height + 2.0 * NAME);
        flow.part(&figure.title.said());
        figure::draw(flow, figure, (LEFT, flow.y, width, height), Said::All);
        flow.y += height + 4.0;
        for sentence in &figure.says {
            flow.paragraph(&sentence.said(), Look::NOTE, 0.0);
        }
    }
}

/// What the pages could not show.
fn unshown(flow: &mut Flow<'_>, say: &Say<'_>) {
    if flow.letters.unshown.is_empty() {
        return;
    }
    let codes = flow.letters.unshown.iter().map(|c| super::printable::code_point(*c));
    let text = say.says(&messages::unshown(super::printable::UNSHOWN.to_string(), say.listed(codes)));
    flow.paragraph(&text, Look::NOTE, 0.0);
}
