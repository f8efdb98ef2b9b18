//! What is on the pages, before it is written: shapes, and which part of the record's structure each belongs to.

use krilla::geom::{Path, PathBuilder, Rect};

use super::ink::Ink;
use super::letters::Line;

/// A node of the structure.
pub(super) type Node = usize;

/// What a node is.
#[derive(Clone)]
pub(super) enum Role {
    Section,
    /// A heading of this level with its text.
    Heading(u16, String),
    Paragraph,
    Table,
    Row,
    /// A cell that names its column.
    ColumnHead,
    /// A cell that names its row.
    RowHead,
    Cell,
    /// A picture: what it shows in words, and where it is.
    Figure {
        alt: String,
        page: usize,
        place: Place,
    },
}

/// A rectangle: left, top, width, height.
pub(super) type Place = (f32, f32, f32, f32);

/// The structure, as a reader that cannot see the pages gets it.
#[derive(Default)]
pub(super) struct Tree {
    pub nodes: Vec<(Role, Vec<Node>)>,
    /// Nodes without a parent, in reading order.
    pub roots: Vec<Node>,
}

impl Tree {
    pub fn add(&mut self, parent: Option<Node>, role: Role) -> Node {
        let node = self.nodes.len();
        self.nodes.push((role, Vec::new()));
        match parent {
            Some(parent) => self.nodes[parent].1.push(node),
            None => self.roots.push(node),
        }
        node
    }
}

/// What a shape belongs to.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Owner {
    /// A node of the structure.
    Node(Node),
    /// What is repeated at the top of pages.
    Head,
    /// What is repeated at the bottom.
    Foot,
    /// Lines and bands that say nothing by themselves.
    Layout,
}

/// Something to draw.
pub(super) enum Shape {
    /// A line of words from a place on its baseline.
    Words { x: f32, baseline: f32, line: Line },
    /// A path, filled and stroked.
    Drawn { path: Path, fill: Option<Ink>, stroke: Option<(Ink, f32)> },
    /// The photo with this hash.
    Photo { hash: String, place: Place },
}

/// A shape and what it belongs to.
pub(super) struct Piece {
    pub owner: Owner,
    pub shape: Shape,
}

/// A line through points.
pub(super) fn line(points: &[(f32, f32)]) -> Option<Path> {
    let mut builder = PathBuilder::new();
    for (at, (x, y)) in points.iter().enumerate() {
        if at == 0 { builder.move_to(*x, *y) } else { builder.line_to(*x, *y) }
    }
    builder.finish()
}

/// A closed area between points.
pub(super) fn area(points: &[(f32, f32)]) -> Option<Path> {
    let mut builder = PathBuilder::new();
    for (at, (x, y)) in points.iter().enumerate() {
        if at == 0 { builder.move_to(*x, *y) } else { builder.line_to(*x, *y) }
    }
    builder.close();
    builder.finish()
}

/// A rectangle.
pub(super) fn rect((x, y, width, height): Place) -> Option<Path> {
    let mut builder = PathBuilder::new();
    builder.push_rect(Rect::from_xywh(x, y, width, height)?);
    builder.finish()
}
