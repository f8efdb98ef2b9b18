//! What every form for reading says, as data: the plain text and the pages lay out the same words.

mod entries;
mod first;
mod journal;
mod otherwise;
mod rest;

pub(crate) use entries::entries;
pub(crate) use first::{
    facts, facts_but_left, facts_table, hours, left_as, open, open_lines, order, said, time, time_rows,
};
pub(crate) use rest::{LEVELS, TORQUES, caption, rest, torque_rows};

use crate::source::Standing;

/// A part of the record under its heading.
pub(crate) struct Section {
    pub heading: String,
    /// It has values of the spec sheet, so that the demo mark belongs beside its heading.
    pub has_sheet_values: bool,
    pub blocks: Vec<Block>,
}

/// What stands in a section, from top to bottom.
pub(crate) enum Block {
    /// The name of a part.
    Title(String),
    /// A step: what it is called, and how it stands.
    Step(String, &'static str),
    /// A paragraph.
    Line(String),
    /// A paragraph that belongs to the line before it.
    Under(String),
    /// A table.
    Table(Table),
    /// The photos, which a form without pictures tells as a list.
    Photos(Table),
}

/// Rows of cells.
pub(crate) struct Table {
    /// It belongs to the paragraph before it.
    pub under: bool,
    /// By column.
    pub sides: Vec<Side>,
    /// What stands over the columns, where that has to be said.
    pub head: Option<Vec<String>>,
    pub rows: Vec<Vec<String>>,
}

/// On which side the cells of a column stand.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Side {
    Left,
    Right,
}

use Side::{Left, Right};

impl Section {
    fn new(heading: &str, blocks: Vec<Block>) -> Section {
        Section { heading: heading.to_owned(), has_sheet_values: false, blocks }
    }

    fn with_sheet_values(heading: &str, blocks: Vec<Block>) -> Section {
        Section { has_sheet_values: true, ..Section::new(heading, blocks) }
    }

    /// It shows the photos.
    pub fn has_photos(&self) -> bool {
        self.blocks.iter().any(|block| matches!(block, Block::Photos(_)))
    }

    /// A section of paragraphs; none where there are none.
    fn list(heading: &str, lines: impl Iterator<Item = String>) -> Option<Section> {
        let blocks: Vec<_> = lines.map(Block::Line).collect();
        (!blocks.is_empty()).then(|| Section::new(heading, blocks))
    }
}

impl Table {
    fn new(sides: &[Side], rows: Vec<Vec<String>>) -> Table {
        Table { under: false, sides: sides.to_vec(), head: None, rows }
    }

    fn with_head(sides: &[Side], head: &[&str], rows: Vec<Vec<String>>) -> Table {
        let head = head.iter().map(|text| (*text).to_owned()).collect();
        Table { head: Some(head), ..Table::new(sides, rows) }
    }
}

/// A name and what belongs to it.
fn row(name: &str, value: impl Into<String>) -> Vec<String> {
    vec![name.to_owned(), value.into()]
}

/// What has become of a value, in words; nothing for one that counts.
fn standing(standing: Standing) -> Option<&'static str> {
    match standing {
        Standing::Counts => None,
        Standing::Replaced => Some("replaced by a later one"),
        Standing::NotDone => Some("step not done"),
        Standing::Void => Some("no longer counts"),
    }
}

fn with_standing(text: String, of: Standing) -> String {
    standing(of).map_or(text.clone(), |words| format!("{text} ({words})"))
}
