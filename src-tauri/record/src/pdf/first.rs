//! Page one: what a service writer needs in a minute. It is one page whatever was written: what is longer is cut with a
//! word about where all of it stands.

use panside_job::figures::FigureKind;

use super::day;
use super::figure::{self, Said};
use super::flow::Flow;
use super::ink::{BOTTOM, Ink, LEFT, Look, RIGHT, WIDTH};
use super::letters::Line;
use super::sheet::{Owner, Role};
use super::table::{self, At};
use crate::document::{COME_FIRST, Document};
use crate::inputs::ProofVerdict;
use crate::say::{self, Block, Section, Side, Table};
use crate::source::Standing;

const GAP: f32 = 20.0;
/// Two columns.
const HALF: f32 = (WIDTH - GAP) / 2.0;
/// Three columns.
const THIRD: f32 = (WIDTH - 2.0 * GAP) / 3.0;
/// Torque, time, pieces.
const TORQUE: f32 = 214.0;
const TIME: f32 = 142.0;
const PIECES: f32 = WIDTH - TORQUE - TIME - 2.0 * GAP;
/// Lines of the title.
const TITLE_LINES: usize = 3;
/// Lines of what names the job.
const FACT_LINES: usize = 4;
/// Concern, cause and correction end here at the latest, each with at least [`SAID_LINES`].
const SAID_END: f32 = 286.0;
const SAID_LINES: usize = 4;
/// Where the last part of the page begins: proof, journal, what comes first.
const FOOT: f32 = BOTTOM - 66.0;
/// Where the part before it begins at the latest.
const LAST_BAND: f32 = FOOT - 98.0;
/// The lowest and the highest level chart.
const CHART: (f32, f32) = (96.0, 150.0);

pub(super) fn write(flow: &mut Flow, document: &Document) {
    head(flow, document);
    said(flow, document);
    title(flow, "The day: where the vehicle was, by the clock", LEFT, WIDTH);
    day::draw(flow, document);
    hairline(flow);
    let top = flow.y;
    let left = column(flow, (LEFT, top), HALF, |column| levels(column, document));
    let right = column(flow, (LEFT + HALF + GAP, top), HALF, |column| open(column, document));
    flow.y = left.max(right);
    hairline(flow);
    let top = flow.y;
    let ends = [
        column(flow, (LEFT, top), TORQUE, |column| torques(column, document)),
        column(flow, (LEFT + TORQUE + GAP, top), TIME, |column| times(column, document)),
        column(flow, (RIGHT - PIECES, top), PIECES, |column| pieces(column, document)),
    ];
    flow.y = ends.into_iter().fold(FOOT, f32::max);
    foot(flow, document);
}

fn hairline(flow: &mut Flow) {
    flow.y += 4.0;
    flow.rule(flow.y, Ink::Hair, 0.8);
    flow.y += 8.0;
}

/// Writes below each other in a column, and answers where that ends.
fn column(flow: &mut Flow, (x, top): (f32, f32), width: f32, write: impl FnOnce(&mut Columned<'_>)) -> f32 {
    flow.y = top;
    write(&mut Columned { flow, x, width });
    flow.y
}

/// A column of the page.
struct Columned<'a> {
    flow: &'a mut Flow,
    x: f32,
    width: f32,
}

impl Columned<'_> {
    fn title(&mut self, text: &str) {
        title(self.flow, text, self.x, self.width);
    }

    fn line(&mut self, text: &str, look: Look) {
        self.flow.y = self.flow.place(Role::Paragraph, text, look, (self.x, self.flow.y), self.width) + 1.5;
    }

    /// Rows of a name and what stands on the right, as many as end above `bottom`. Answers how many were left out.
    fn rows(&mut self, rows: Vec<Vec<String>>, bottom: f32) -> usize {
        let sides = vec![Side::Left, Side::Right];
        let at = At { x: self.x, width: self.width, look: Look::BODY, columns: None };
        let mut table = Table { under: false, sides, head: None, rows };
        let mut y = self.flow.y;
        let heights = table::heights(self.flow, &table, at);
        let fit = heights
            .iter()
            .take_while(|height| {
                y += **height;
                y <= bottom
            })
            .count();
        let left_out = table.rows.len() - fit;
        table.rows.truncate(fit);
        table::write(self.flow, &table, at);
        left_out
    }
}

fn title(flow: &mut Flow, text: &str, x: f32, width: f32) {
    let (node, lines) =
        (flow.node(Role::Heading(2, text.to_owned())), flow.letters.set(text, Look::ASIDE, width));
    flow.y = flow.lines(Owner::Node(node), lines, Side::Left, (x, flow.y), width) + 3.0;
}

fn head(flow: &mut Flow, document: &Document) {
    flow.section = Some(flow.tree.add(None, Role::Section));
    flow.y = 36.0;
    let name = format!("Bay record, repair order {}", say::order(document));
    let (node, lines) = (flow.heading_node(1, &name), flow.letters.set(&name, Look::TITLE, WIDTH - 170.0));
    let lines = cut(flow, lines, TITLE_LINES, WIDTH, "… all of it on the next page");
    let mut y = flow.lines(Owner::Node(node), lines, Side::Left, (LEFT, flow.y), WIDTH);
    let mark = document.mark();
    if !mark.is_empty() {
        let node = flow.node(Role::Paragraph);
        let mark = flow.letters.set(&mark, Look::BODY.strong(), 170.0);
        flow.lines(Owner::Node(node), mark, Side::Right, (RIGHT - 170.0, flow.y + 9.0), 170.0);
    }
    y = flow.place(Role::Paragraph, &document.title, Look::LEAD, (LEFT, y), WIDTH) + 1.0;
    // How the vehicle was left is told where the writer looks for what is open.
    let facts = say::facts_but_left(document);
    let mut parts: Vec<(&str, Look)> = Vec::new();
    for fact in &facts {
        let gap = if parts.is_empty() { "" } else { "  ·  " };
        parts.extend([
            (gap, Look::ASIDE),
            (&fact[0], Look::ASIDE),
            (" ", Look::ASIDE),
            (&fact[1], Look::BODY),
        ]);
    }
    let node = flow.node(Role::Paragraph);
    let lines = flow.letters.set_parts(&parts, WIDTH);
    let lines = cut(flow, lines, FACT_LINES, WIDTH, "… all of it on the next page");
    y = flow.lines(Owner::Node(node), lines, Side::Left, (LEFT, y), WIDTH) + 5.0;
    flow.rule(y, Ink::Black, 1.4);
    flow.y = y + 7.0;
}

/// Concern, cause and correction side by side.
fn said(flow: &mut Flow, document: &Document) {
    let (top, mut lowest) = (flow.y, flow.y);
    for (at, section) in say::said(document).iter().enumerate() {
        let x = LEFT + at as f32 * (THIRD + GAP);
        flow.y = top;
        title(flow, &section.heading, x, THIRD);
        let mut lines = answers(flow, section);
        let room = (SAID_END - flow.y) / lines.first().map_or(1.0, |line| line.height);
        lines = cut(flow, lines, SAID_LINES.max(room as usize), THIRD, "… all of it among the entries");
        let node = flow.node(Role::Paragraph);
        lowest = lowest.max(flow.lines(Owner::Node(node), lines, Side::Left, (x, flow.y), THIRD));
    }
    flow.y = lowest + 6.0;
    flow.rule(flow.y, Ink::Hair, 0.8);
    flow.y += 8.0;
}

/// Answers after each other: what was asked in dim, what was said in ink. A lone answer needs no question.
fn answers(flow: &mut Flow, section: &Section) -> Vec<Line> {
    let mut parts: Vec<(String, Look)> = Vec::new();
    for block in &section.blocks {
        match block {
            Block::Table(table) => {
                for row in &table.rows {
                    let gap = if parts.is_empty() { "" } else { ". " };
                    if table.rows.len() > 1 && row[0] != section.heading {
                        parts.push((format!("{gap}{}: ", row[0]), Look::ASIDE));
                    }
                    parts.push((row[1].trim_end_matches('.').to_owned(), Look::BODY));
                }
                parts.push((".".to_owned(), Look::BODY));
            }
            Block::Line(text) => parts.push((text.clone(), Look::ASIDE)),
            Block::Step(..) | Block::Title(_) | Block::Under(_) | Block::Photos(_) => {}
        }
    }
    let parts: Vec<_> = parts.iter().map(|(text, look)| (text.as_str(), *look)).collect();
    flow.letters.set_parts(&parts, THIRD)
}

/// At most so many lines; where there are more, the last says so.
fn cut(flow: &mut Flow, mut lines: Vec<Line>, most: usize, width: f32, says: &str) -> Vec<Line> {
    if lines.len() > most {
        lines.truncate(most - 1);
        lines.extend(flow.letters.set(says, Look::ASIDE, width).into_iter().take(1));
    }
    lines
}

fn levels(column: &mut Columned<'_>, document: &Document) {
    column.title("Fluid level against temperature, on the sheet's chart");
    let charts: Vec<_> = figure::of_kind(document, FigureKind::Level).collect();
    let Some(chart) = charts.first() else {
        let said = if document.levels.is_empty() { "not read" } else { "listed further on, not drawn" };
        column.line(said, Look::BODY);
        return;
    };
    let (x, y) = (column.x, column.flow.y);
    let height = (LAST_BAND - y - 24.0).clamp(CHART.0, CHART.1);
    figure::draw(column.flow, chart, (x, y, column.width, height), Said::OfWhatCounts);
    column.flow.y += height + 1.0;
    if document.levels.iter().any(|level| level.standing != Standing::Counts) {
        column.line("× replaced, left or voided", Look::FOOT);
    }
    if charts.len() > 1 {
        column.line("further charts under Level readings", Look::FOOT);
    }
}

fn open(column: &mut Columned<'_>, document: &Document) {
    column.title("Open for the service writer");
    let mut lines = say::open_lines(document);
    // Next to what is dangerous, how the vehicle stands matters most.
    let dangers_end = document.damaged.len() + document.dangers.len();
    lines.insert(dangers_end.min(lines.len()), say::left_as(document));
    for (at, open) in lines.iter().enumerate() {
        let look = if open.is_danger { Look::BODY.strong() } else { Look::BODY };
        let set = column.flow.letters.set(&open.line(), look, column.width);
        let height: f32 = set.iter().map(|line| line.height).sum();
        let left = lines.len() - at;
        // What follows needs a line to say that there is more.
        let more = if left > 1 { look.size * 1.4 } else { 0.0 };
        if column.flow.y + height + more > LAST_BAND - 12.0 {
            column.line(&format!("… {left} more, on the next pages and under Missing"), Look::ASIDE);
            return;
        }
        let node = column.flow.node(Role::Paragraph);
        let at = (column.x, column.flow.y);
        column.flow.y = column.flow.lines(Owner::Node(node), set, Side::Left, at, column.width) + 2.0;
    }
}

fn torques(column: &mut Columned<'_>, document: &Document) {
    column.title("Torque, as clicked");
    let all = document.torques.iter().zip(say::torque_rows(document));
    let counts = all.filter(|(torque, _)| torque.standing == Standing::Counts);
    let rows: Vec<_> = counts.map(|(_, row)| vec![row[0].clone(), row[2].clone()]).collect();
    if rows.is_empty() {
        column.line("none", Look::BODY);
        return;
    }
    let more = column.rows(rows, FOOT - 16.0);
    if more > 0 {
        column.line(&format!("… {more} more under Torque, as clicked"), Look::NOTE);
    }
}

fn times(column: &mut Columned<'_>, document: &Document) {
    column.title("Time");
    column.rows(say::time_rows(document), f32::INFINITY);
}

fn pieces(column: &mut Columned<'_>, document: &Document) {
    column.title("Parts removed and refitted, all pieces");
    let total = document.tally.total;
    let row = |name: &str, count: i32| vec![name.to_owned(), count.to_string()];
    let rows = vec![
        row("removed", total.came_off),
        row("refitted", total.went_back),
        row("new parts fitted", total.replaced),
        row("left off", total.left),
    ];
    column.rows(rows, f32::INFINITY);
}

fn foot(flow: &mut Flow, document: &Document) {
    flow.rule(flow.y, Ink::Black, 1.4);
    flow.y += 6.0;
    let proof = match &document.proof.summary {
        None => "No proof came with this record.".to_owned(),
        Some(_) if !document.proof.of_this_checklist => {
            "The proof that came is for another checklist: it says nothing about this job.".to_owned()
        }
        Some(summary) => {
            let verdict = match summary.verdict {
                ProofVerdict::Proved => "Order of steps proved safe",
                ProofVerdict::Refuted => "Order of steps NOT safe: the checklist is refuted",
                ProofVerdict::NotDecided => "Order of steps not decided",
            };
            format!("{verdict}, {} states. {}", summary.states, document.proof.covers)
        }
    };
    let journal =
        format!("Journal of {} events; its head is at the foot of every page.", document.journal.events);
    for (text, look) in
        [(COME_FIRST, Look::BODY.strong()), (proof.as_str(), Look::NOTE), (journal.as_str(), Look::NOTE)]
    {
        flow.y = flow.place(Role::Paragraph, text, look, (LEFT, flow.y), WIDTH) + 1.5;
    }
}
