//! Tables: columns as wide as their cells, hairlines below the rows, no boxes. Rows go on over pages.

use super::flow::Flow;
use super::ink::{BOTTOM, Ink, Look, TOP};
use super::letters::Line;
use super::sheet::{Node, Owner, Role, line};
use crate::say::{Side, Table};

/// Between two columns.
const GAP: f32 = 12.0;
/// No column is squeezed below this.
const NARROWEST: f32 = 40.0;
/// Above and below the words of a row.
const AIR: f32 = 2.0;
/// A row that is higher is torn at the foot of a page, others go to the next whole.
const TORN: f32 = 160.0;

/// Where a table stands and how it looks.
#[derive(Clone, Copy)]
pub(super) struct At {
    pub x: f32,
    pub width: f32,
    pub look: Look,
    /// How wide the columns are; nothing: as wide as their cells.
    pub columns: Option<&'static [f32]>,
}

/// The cells of a row, each as lines.
type Cells = Vec<Vec<Line>>;

/// Writes a table where the flow is.
pub(super) fn write(flow: &mut Flow<'_>, table: &Table, at: At) {
    if table.rows.is_empty() {
        return;
    }
    let widths = at.columns.map_or_else(|| widths(flow, table, at), <[f32]>::to_vec);
    let node = flow.node(Role::Table);
    let columns = Columns { widths, sides: &table.sides, at };
    let head: Option<Vec<String>> = table.head.clone();
    if let Some(head) = &head {
        let cells = columns.set(flow, head, Look::NOTE);
        flow.keep(height(&cells) + TORN / 4.0);
        columns.write_head(flow, node, cells);
    }
    for texts in &table.rows {
        let cells = columns.set(flow, texts, at.look);
        let row = flow.tree.add(Some(node), Role::Row);
        let owners: Vec<Owner> = (0..cells.len())
            .map(|column| {
                let role = if column == 0 && cells.len() > 1 { Role::RowHead } else { Role::Cell };
                Owner::Node(flow.tree.add(Some(row), role))
            })
            .collect();
        let fits = flow.y + height(&cells) + 2.0 * AIR <= BOTTOM;
        if !fits && height(&cells) < TORN {
            flow.break_page();
            columns.repeat_head(flow, head.as_deref());
        }
        columns.write_row(flow, &owners, cells, head.as_deref());
    }
    flow.y += 4.0;
}

/// How high the head of a table and its first row would be, as far as they stand on one page.
pub(super) fn first_height(flow: &mut Flow<'_>, table: &Table, at: At) -> f32 {
    let widths = at.columns.map_or_else(|| widths(flow, table, at), <[f32]>::to_vec);
    let columns = Columns { widths, sides: &table.sides, at };
    let rows = table.head.iter().chain(table.rows.first());
    rows.map(|texts| height(&columns.set(flow, texts, at.look)) + 2.0 * AIR).sum::<f32>().min(TORN)
}

/// How high the rows of a table would be.
pub(super) fn heights(flow: &mut Flow<'_>, table: &Table, at: At) -> Vec<f32> {
    let columns = Columns { widths: widths(flow, table, at), sides: &table.sides, at };
    table.rows.iter().map(|texts| height(&columns.set(flow, texts, at.look)) + 2.0 * AIR).collect()
}

struct Columns<'a> {
    widths: Vec<f32>,
    sides: &'a [Side],
    at: At,
}

impl Columns<'_> {
    fn set(&self, flow: &mut Flow<'_>, texts: &[String], look: Look) -> Cells {
        texts.iter().zip(&self.widths).map(|(text, width)| flow.letters.set(text, look, *width)).collect()
    }

    fn write_head(&self, flow: &mut Flow<'_>, table: Node, cells: Cells) {
        let row = flow.tree.add(Some(table), Role::Row);
        let owners: Vec<_> =
            cells.iter().map(|_| Owner::Node(flow.tree.add(Some(row), Role::ColumnHead))).collect();
        self.write_row(flow, &owners, cells, None);
    }

    /// The head once more on a new page: for the eye alone, as the structure has it.
    fn repeat_head(&self, flow: &mut Flow<'_>, head: Option<&[String]>) {
        let Some(head) = head else { return };
        let cells = self.set(flow, head, Look::NOTE);
        let owners = vec![Owner::Head; cells.len()];
        self.write_row(flow, &owners, cells, None);
    }

    /// Writes a row, as many lines on each page as fit.
    fn write_row(&self, flow: &mut Flow<'_>, owners: &[Owner], cells: Cells, head: Option<&[String]>) {
        flow.y += AIR;
        let mut left: Vec<_> = cells.into_iter().map(Vec::into_iter).collect();
        loop {
            let mut lowest = flow.y;
            let mut x = self.at.x;
            for (column, lines) in left.iter_mut().enumerate() {
                let mut y = flow.y;
                let width = self.widths[column];
                while let Some(next) = lines.as_slice().first() {
                    if y + next.height > BOTTOM && y > TOP {
                        break;
                    }
                    let next = lines.next().into_iter().collect();
                    y = flow.lines(owners[column], next, self.sides[column], (x, y), width);
                }
                lowest = lowest.max(y);
                x += width + GAP;
            }
            flow.y = lowest + AIR;
            if left.iter().all(|lines| lines.as_slice().is_empty()) {
                break;
            }
            flow.break_page();
            self.repeat_head(flow, head);
        }
        let ends = [(self.at.x, flow.y), (self.at.x + self.at.width, flow.y)];
        flow.draw(Owner::Layout, line(&ends), None, Some((Ink::Hair, 0.5)));
    }
}

fn height(cells: &Cells) -> f32 {
    cells.iter().map(|lines| lines.iter().map(|line| line.height).sum()).fold(0.0, f32::max)
}

/// Each column as wide as its widest cell; the widest give way until all fit.
fn widths(flow: &mut Flow<'_>, table: &Table, at: At) -> Vec<f32> {
    let mut widths = vec![0.0_f32; table.sides.len()];
    for texts in table.head.iter().chain(&table.rows) {
        for (text, width) in texts.iter().zip(&mut widths) {
            // Only what is long enough to matter is measured; a very long text is measured as far as a line goes.
            let text: String = text.chars().take(200).collect();
            *width = width.max(flow.letters.one(&text, at.look).width + 0.5);
        }
    }
    let room = at.width - GAP * (widths.len().saturating_sub(1)) as f32;
    loop {
        let over = widths.iter().sum::<f32>() - room;
        let widest = widths.iter().copied().fold(0.0, f32::max);
        if over <= 0.0 || widest <= NARROWEST {
            return stretched(widths, table, room);
        }
        let second = widths.iter().copied().filter(|width| *width < widest).fold(NARROWEST, f32::max);
        let count = widths.iter().filter(|width| **width >= widest).count() as f32;
        let cap = second.max(widest - over / count);
        widths.iter_mut().filter(|width| **width > cap).for_each(|width| *width = cap);
        if cap >= widest {
            return stretched(widths, table, room);
        }
    }
}

/// Where the last column stands on the right, what is left over goes to the first, so that it stands at the edge.
fn stretched(mut widths: Vec<f32>, table: &Table, room: f32) -> Vec<f32> {
    let spare = room - widths.iter().sum::<f32>();
    if spare > 0.0
        && table.sides.last() == Some(&Side::Right)
        && let Some(first) = widths.first_mut()
    {
        *first += spare;
    }
    widths
}
