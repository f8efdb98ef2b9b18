//! Page one: what a service writer needs in a minute. It is one page whatever was written: what is longer is cut with a
//! word about where all of it stands.

use super::flow::Flow;
use super::ink::{BOTTOM, Ink, LEFT, Look, RIGHT, WIDTH};
use super::letters::Line;
use super::photos::{self, Pictures, STRIP};
use super::sheet::{Owner, Role};
use super::table::{self, At};
use crate::document::Document;
use crate::say::{Block, First, Section, Side, Table};
use crate::speak::Say;

const GAP: f32 = 20.0;
/// Two columns.
const HALF: f32 = (WIDTH - GAP) / 2.0;
/// Three columns.
const THIRD: f32 = (WIDTH - 2.0 * GAP) / 3.0;
/// Lines of the title, and of a fact.
const TITLE_LINES: usize = 2;
const FACT_LINES: usize = 2;
/// Room for the mark beside the title.
const MARK: f32 = 170.0;
/// The names of facts.
const NAMES: f32 = 68.0;
/// Concern, cause and correction take so much at most.
const SAID: f32 = 130.0;
/// Where the last part of the page begins: who signed, what comes first.
const FOOT: f32 = BOTTOM - 30.0;
/// What the photos take with their words.
const PHOTOS: f32 = 118.0;
/// What go-ahead and open things need at the least.
const AGREED: f32 = 104.0;
/// What the fluid needs below the labor.
const FLUID: f32 = 80.0;

pub(super) fn write(
    flow: &mut Flow<'_>,
    document: &Document,
    first: First,
    pictures: &Pictures<'_>,
    say: &Say<'_>,
) {
    title_and_mark(flow, document, &first.name);
    let job = flow.letters.set(&document.title, Look::LEAD, WIDTH);
    let job = flow.cut(job, 1, WIDTH);
    let node = flow.node(Role::Paragraph);
    flow.y = flow.lines(Owner::Node(node), job, Side::Left, (LEFT, flow.y), WIDTH) + 3.0;
    facts(flow, &first.facts);
    said(flow, &first.said);
    let photos = photos::of_first_page(document);
    let end = if photos.is_empty() { FOOT } else { FOOT - PHOTOS };
    let top = flow.y;
    let left = column(flow, LEFT, top, |column| column.section(&first.parts, end - AGREED));
    let right = column(flow, LEFT + HALF + GAP, top, |column| {
        column.section(&first.labor, end - AGREED - FLUID);
        column.flow.y += 4.0;
        column.section(&first.fluid, end - AGREED);
    });
    flow.y = left.max(right);
    hairline(flow);
    let top = flow.y;
    let left = column(flow, LEFT, top, |column| column.section(&first.authorized, end - 6.0));
    let right = column(flow, LEFT + HALF + GAP, top, |column| column.section(&first.open, end - 6.0));
    flow.y = left.max(right);
    if !photos.is_empty() {
        flow.y = flow.y.max(end - 30.0).min(end);
        hairline(flow);
        photos::write(flow, &photos, (pictures, STRIP), say);
    }
    foot(flow, document, &first.signed);
}

fn hairline(flow: &mut Flow<'_>) {
    flow.y += 3.0;
    flow.rule(flow.y, Ink::Hair, 0.8);
    flow.y += 6.0;
}

/// Writes below each other in a column of half the width, and answers where that ends.
fn column(flow: &mut Flow<'_>, x: f32, top: f32, write: impl FnOnce(&mut Columned<'_, '_>)) -> f32 {
    flow.y = top;
    write(&mut Columned { flow, x, width: HALF });
    flow.y
}

/// A column of the page.
pub(super) struct Columned<'a, 'b> {
    pub flow: &'a mut Flow<'b>,
    pub x: f32,
    pub width: f32,
}

impl Columned<'_, '_> {
    /// A section's words, as many as end above `bottom`; a word says where the others stand.
    pub fn section(&mut self, section: &Section, bottom: f32) {
        title(self.flow, &section.heading, self.x, self.width);
        for (at, block) in section.blocks.iter().enumerate() {
            let whole = match block {
                Block::Table(table) if table.sides.last() == Some(&Side::Right) => self.rows(table, bottom),
                Block::Table(table) => table.rows.iter().all(|row| self.labeled(row, bottom)),
                Block::Strong(text) => self.line(&[(text, Look::BODY.strong())], bottom),
                Block::Line(text) | Block::Under(text) | Block::Title(text) => {
                    self.line(&[(text, Look::BODY)], bottom)
                }
                Block::Step(title, shown) => self.line(&[(title, Look::BODY), (shown, Look::ASIDE)], bottom),
            };
            if !whole {
                self.more();
                return;
            }
            self.flow.y += if at + 1 < section.blocks.len() { 1.0 } else { 0.0 };
        }
    }

    fn more(&mut self) {
        let more = self.flow.letters.set(&self.flow.goes_on, Look::ASIDE, self.width);
        let node = self.flow.node(Role::Paragraph);
        let at = (self.x, self.flow.y);
        self.flow.y = self.flow.lines(Owner::Node(node), more, Side::Left, at, self.width);
    }

    /// A name and what belongs to it, as one paragraph.
    fn labeled(&mut self, row: &[String], bottom: f32) -> bool {
        let name = row.first().map_or("", String::as_str);
        let parts: Vec<_> =
            row.iter().skip(1).flat_map(|text| [("  ", Look::BODY), (text, Look::BODY)]).collect();
        let parts: Vec<_> = [(name, Look::ASIDE)].into_iter().chain(parts).collect();
        self.line(&parts, bottom)
    }

    /// A paragraph, if all of it ends above `bottom`; else as many of its lines as do.
    fn line(&mut self, parts: &[(&str, Look)], bottom: f32) -> bool {
        let mut lines = self.flow.letters.set_parts(parts, self.width);
        let height = lines.first().map_or(1.0, |line| line.height);
        let room = ((bottom - self.flow.y) / height).max(0.0) as usize;
        let fits = lines.len() <= room;
        if !fits {
            // A line is kept for the word that it goes on.
            lines.truncate(room.saturating_sub(1));
        }
        let node = self.flow.node(Role::Paragraph);
        let at = (self.x, self.flow.y);
        self.flow.y = self.flow.lines(Owner::Node(node), lines, Side::Left, at, self.width) + 2.0;
        fits
    }

    /// Rows of a name and what stands on the right, as many as end above `bottom`.
    fn rows(&mut self, table: &Table, bottom: f32) -> bool {
        let at = At { x: self.x, width: self.width, look: Look::SMALL, columns: None };
        let mut y = self.flow.y;
        let heights = table::heights(self.flow, table, at);
        let last = heights.len().saturating_sub(1);
        let fits = heights.iter().enumerate().take_while(|(number, height)| {
            y += **height;
            // A line is kept for the word that there is more.
            y + if *number == last { 0.0 } else { Look::BODY.size * 1.4 } <= bottom
        });
        let fit = fits.count();
        let rows = table.rows.iter().take(fit).cloned().collect();
        let shown = Table { under: false, sides: table.sides.clone(), head: None, rows };
        table::write(self.flow, &shown, at);
        fit == table.rows.len()
    }
}

fn title(flow: &mut Flow<'_>, text: &str, x: f32, width: f32) {
    let node = flow.node(Role::Heading(2, text.to_owned()));
    let lines = flow.letters.set(text, Look::BODY.strong(), width);
    flow.y = flow.lines(Owner::Node(node), lines, Side::Left, (x, flow.y), width) + 2.0;
}

/// The title, with the mark on the right.
pub(super) fn title_and_mark(flow: &mut Flow<'_>, document: &Document, name: &str) {
    flow.section = Some(flow.tree.add(None, Role::Section));
    flow.y = 36.0;
    let width = WIDTH - MARK;
    let (node, lines) = (flow.heading_node(1, name), flow.letters.set(name, Look::TITLE, width));
    let lines = flow.cut(lines, TITLE_LINES, width);
    let top = flow.y;
    flow.y = flow.lines(Owner::Node(node), lines, Side::Left, (LEFT, top), WIDTH);
    let mark = document.mark();
    if !mark.is_empty() {
        let node = flow.node(Role::Paragraph);
        let mark = flow.letters.set(&mark, Look::BODY.strong(), MARK);
        let end = flow.lines(Owner::Node(node), mark, Side::Right, (RIGHT - MARK, top + 9.0), MARK);
        flow.y = flow.y.max(end);
    }
}

/// Facts in two columns, the first half on the left.
pub(super) fn facts(flow: &mut Flow<'_>, facts: &[Vec<String>]) {
    let top = flow.y;
    let half = facts.len().div_ceil(2);
    let mut lowest = top;
    for (at, part) in facts.chunks(half.max(1)).enumerate() {
        let x = LEFT + at as f32 * (HALF + GAP);
        let mut y = top;
        for fact in part {
            let words = [(&fact[0], Look::ASIDE, x, NAMES), (&fact[1], Look::BODY, x + NAMES, HALF - NAMES)];
            let ends = words.map(|(text, look, x, width)| {
                let lines = flow.letters.set(text, look, width - 4.0);
                let lines = flow.cut(lines, FACT_LINES, width);
                let node = flow.node(Role::Paragraph);
                flow.lines(Owner::Node(node), lines, Side::Left, (x, y), width)
            });
            y = ends.into_iter().fold(y, f32::max) + 1.0;
        }
        lowest = lowest.max(y);
    }
    flow.rule(lowest + 4.0, Ink::Black, 1.4);
    flow.y = lowest + 10.0;
}

/// Concern, cause and correction side by side.
fn said(flow: &mut Flow<'_>, parts: &[Section]) {
    let (top, mut lowest) = (flow.y, flow.y);
    for (at, section) in parts.iter().enumerate() {
        let x = LEFT + at as f32 * (THIRD + GAP);
        flow.y = top;
        title(flow, &section.heading, x, THIRD);
        let mut lines = answers(flow, section);
        let room = (top + SAID - flow.y) / lines.first().map_or(1.0, |line| line.height);
        lines = flow.cut(lines, (room as usize).max(2), THIRD);
        let node = flow.node(Role::Paragraph);
        lowest = lowest.max(flow.lines(Owner::Node(node), lines, Side::Left, (x, flow.y), THIRD));
    }
    flow.y = lowest;
    hairline(flow);
}

/// Answers after each other: what was asked in dim, what was said in ink. A lone answer needs no question.
fn answers(flow: &mut Flow<'_>, section: &Section) -> Vec<Line> {
    let mut parts: Vec<(&str, Look)> = Vec::new();
    for block in &section.blocks {
        match block {
            Block::Table(table) => {
                for row in &table.rows {
                    if !parts.is_empty() {
                        parts.push((" · ", Look::ASIDE));
                    }
                    if table.rows.len() > 1 && row[0] != section.heading {
                        parts.extend([(row[0].as_str(), Look::ASIDE), (" ", Look::ASIDE)]);
                    }
                    parts.push((row[1].as_str(), Look::BODY));
                }
            }
            Block::Line(text) | Block::Strong(text) => parts.push((text, Look::ASIDE)),
            Block::Step(..) | Block::Title(_) | Block::Under(_) => {}
        }
    }
    flow.letters.set_parts(&parts, THIRD)
}

/// Who signed, and what comes first.
fn foot(flow: &mut Flow<'_>, document: &Document, signed: &Section) {
    flow.y = FOOT;
    flow.rule(flow.y, Ink::Black, 1.0);
    flow.y += 5.0;
    let mut parts = vec![(signed.heading.as_str(), Look::ASIDE), ("  ", Look::ASIDE)];
    parts.extend(signed.blocks.iter().filter_map(|block| match block {
        Block::Line(text) => Some((text.as_str(), Look::BODY)),
        _ => None,
    }));
    let lines = flow.letters.set_parts(&parts, WIDTH);
    let lines = flow.cut(lines, 2, WIDTH);
    let node = flow.node(Role::Paragraph);
    flow.y = flow.lines(Owner::Node(node), lines, Side::Left, (LEFT, flow.y), WIDTH) + 1.5;
    flow.place(Role::Paragraph, &document.come_first, Look::FOOT, (LEFT, flow.y), WIDTH);
}
