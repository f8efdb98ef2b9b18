//! What every form for reading says, as data: the plain text and the pages lay out the same words.
//!
//! - `first`: what a service writer needs in a minute
//! - `customer`: the same in plain words for whoever pays
//! - `file`, `otherwise`, `journal`: what stands up later
//! - `entries`, `all`: everything, where that is asked for

mod all;
mod customer;
mod entries;
mod estimate;
mod file;
mod first;
mod journal;
mod otherwise;
mod parts;
mod turned_up;

pub(crate) use customer::{Customer, customer};
pub(crate) use file::{caption, measured};
pub(crate) use first::{First, first, order};
pub(crate) use parts::{Billed, billed, other_labels};

use panside_messages::Message;

use crate::document::Document;
use crate::messages;
use crate::source::Standing;
use crate::speak::Say;

/// How much of a record its text and its pages say. The attached data always has all of it.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Extent {
    /// What a service writer needs, and what stands up later.
    #[default]
    File,
    /// Every reading, vehicle action, caution and working-out too.
    Everything,
}

/// What is said of something that may be there.
type Named<T> = (fn() -> Message, T);

/// A part of the record under its heading.
pub(crate) struct Section {
    pub heading: String,
    /// It has values of the spec sheet, so that the demo mark belongs beside its heading.
    pub has_sheet_values: bool,
    pub blocks: Vec<Block>,
    /// What a form with drawings draws in it.
    pub drawn: Drawn,
}

/// What is drawn in a section.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Drawn {
    Nothing,
    /// The day, above the words.
    Day,
    /// Levels and cool-downs, small, above the words.
    Small,
    /// Every figure with its sentences.
    Large,
    /// The photos, which a form without pictures tells as a list.
    Photos,
}

/// What stands in a section, from top to bottom.
pub(crate) enum Block {
    /// The name of a part.
    Title(String),
    /// A step: what it is called, and how it stands.
    Step(String, String),
    /// A paragraph.
    Line(String),
    /// A paragraph that matters more than others, as one about a danger.
    Strong(String),
    /// A paragraph that belongs to the line before it.
    Under(String),
    /// A table.
    Table(Table),
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

/// Everything after the first page.
pub(crate) fn rest(document: &Document, say: &Say<'_>, extent: Extent) -> Vec<Section> {
    let mut sections = file::file(document, say, extent);
    if extent == Extent::Everything {
        sections.extend(all::all(document, say));
    }
    sections.push(file::photos(document, say));
    sections
}

impl Section {
    fn new(heading: &Message, say: &Say<'_>, blocks: Vec<Block>) -> Section {
        Section { heading: say.says(heading), has_sheet_values: false, blocks, drawn: Drawn::Nothing }
    }

    fn with_sheet_values(self) -> Section {
        Section { has_sheet_values: true, ..self }
    }

    fn drawing(self, drawn: Drawn) -> Section {
        Section { drawn, ..self }
    }

    /// A section of paragraphs; none where there are none.
    fn list(heading: &Message, say: &Say<'_>, lines: impl Iterator<Item = String>) -> Option<Section> {
        let blocks: Vec<_> = lines.map(Block::Line).collect();
        (!blocks.is_empty()).then(|| Section::new(heading, say, blocks))
    }
}

impl Table {
    fn new(sides: &[Side], rows: Vec<Vec<String>>) -> Table {
        Table { under: false, sides: sides.to_vec(), head: None, rows }
    }

    fn with_head(self, say: &Say<'_>, head: &[Option<Message>]) -> Table {
        let says = |text: &Option<Message>| text.as_ref().map(|text| say.says(text)).unwrap_or_default();
        Table { head: Some(head.iter().map(says).collect()), ..self }
    }
}

/// A name and what belongs to it.
fn row(say: &Say<'_>, name: &Message, value: impl Into<String>) -> Vec<String> {
    vec![say.says(name), value.into()]
}

/// What has become of a value, in words; nothing for one that counts.
fn standing(standing: Standing, say: &Say<'_>) -> Option<String> {
    let message = match standing {
        Standing::Counts => return None,
        Standing::Replaced => messages::standing_replaced(),
        Standing::NotDone => messages::standing_not_done(),
        Standing::Void => messages::standing_void(),
    };
    Some(say.within(&message))
}

fn with_standing(text: String, of: Standing, say: &Say<'_>) -> String {
    match standing(of, say) {
        Some(standing) => say.within(&messages::with_remark(text, standing)),
        None => text,
    }
}
