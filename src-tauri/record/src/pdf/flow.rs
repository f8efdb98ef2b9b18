//! Words that flow down the pages.

use krilla::geom::Path;

use super::ink::{BOTTOM, Ink, LEFT, Look, RIGHT, TOP, WIDTH};
use super::letters::{Letters, Line};
use super::sheet::{Node, Owner, Piece, Place, Role, Shape, Tree, line as path_line};
use crate::messages;
use crate::say::Side;
use crate::speak::Say;

/// A heading never stands alone at the foot of a page: this much goes with it at the least.
const WITH_HEADING: f32 = 46.0;

/// A heading to find again.
pub(super) struct Bookmark {
    pub level: u16,
    pub text: String,
    pub page: usize,
    pub y: f32,
}

/// Pages that grow downwards.
pub(super) struct Flow<'a> {
    pub letters: Letters,
    /// Said where something is cut.
    pub goes_on: String,
    pub say: &'a Say<'a>,
    pub tree: Tree,
    pub pages: Vec<Vec<Piece>>,
    /// Where the next thing goes.
    pub y: f32,
    /// The section that is being written.
    pub section: Option<Node>,
    pub bookmarks: Vec<Bookmark>,
}

impl<'a> Flow<'a> {
    pub fn new(letters: Letters, say: &'a Say<'a>) -> Flow<'a> {
        let (tree, pages, bookmarks) = (Tree::default(), vec![Vec::new()], Vec::new());
        let goes_on = say.within(&messages::goes_on());
        Flow { letters, goes_on, say, tree, pages, y: TOP, section: None, bookmarks }
    }

    /// At most so many lines; where there are more, the last says so.
    pub fn cut(&mut self, mut lines: Vec<Line>, most: usize, width: f32) -> Vec<Line> {
        if lines.len() > most {
            lines.truncate(most.saturating_sub(1));
            let more = self.letters.set(&self.goes_on, Look::ASIDE, width);
            lines.extend(more.into_iter().take(1));
        }
        lines
    }

    /// The number of the page that is being written, from 0.
    pub fn page(&self) -> usize {
        self.pages.len() - 1
    }

    pub fn break_page(&mut self) {
        self.pages.push(Vec::new());
        self.y = TOP;
    }

    /// Goes to a new page unless there is room for this height.
    pub fn keep(&mut self, height: f32) {
        if self.y + height > BOTTOM && self.y > TOP {
            self.break_page();
        }
    }

    /// A new node below the section that is being written.
    pub fn node(&mut self, role: Role) -> Node {
        self.tree.add(self.section, role)
    }

    pub fn put(&mut self, owner: Owner, shape: Shape) {
        if let Some(page) = self.pages.last_mut() {
            page.push(Piece { owner, shape });
        }
    }

    /// Draws a path; nothing where there is none.
    pub fn draw(&mut self, owner: Owner, path: Option<Path>, fill: Option<Ink>, stroke: Option<(Ink, f32)>) {
        if let Some(path) = path {
            self.put(owner, Shape::Drawn { path, fill, stroke });
        }
    }

    /// A rule over the width of the page.
    pub fn rule(&mut self, y: f32, ink: Ink, width: f32) {
        self.draw(Owner::Layout, path_line(&[(LEFT, y), (RIGHT, y)]), None, Some((ink, width)));
    }

    /// Lines below each other at a place, and where they end.
    pub fn lines(
        &mut self,
        owner: Owner,
        lines: Vec<Line>,
        side: Side,
        (x, top): (f32, f32),
        width: f32,
    ) -> f32 {
        let mut y = top;
        for line in lines {
            let x = if side == Side::Right { x + width - line.width } else { x };
            let (height, baseline) = (line.height, y + line.ascent);
            self.put(owner, Shape::Words { x, baseline, line });
            y += height;
        }
        y
    }

    /// One line of words in a drawing, by the place of its baseline.
    pub fn label(&mut self, owner: Owner, text: &str, look: Look, x: f32, baseline: f32) {
        let line = self.letters.one(text, look);
        self.put(owner, Shape::Words { x, baseline, line });
    }

    /// A paragraph that does not flow: at a place, in a width. Answers where it ends.
    pub fn place(&mut self, role: Role, text: &str, look: Look, at: (f32, f32), width: f32) -> f32 {
        let (node, lines) = (self.node(role), self.letters.set(text, look, width));
        self.lines(Owner::Node(node), lines, Side::Left, at, width)
    }

    /// Begins a section: its heading, with a mark on the right, together with the height that it must not stand without.
    pub fn begin_section(&mut self, text: &str, mark: &str, needs: f32) {
        self.section = Some(self.tree.add(None, Role::Section));
        self.y += if self.y > TOP { 16.0 } else { 0.0 };
        self.keep(Look::SECTION.size * 2.0 + WITH_HEADING.max(needs));
        let (node, lines) =
            (self.heading_node(2, text), self.letters.set(text, Look::SECTION, WIDTH - 160.0));
        let top = self.y;
        self.y = self.lines(Owner::Node(node), lines, Side::Left, (LEFT, top), WIDTH);
        if !mark.is_empty() {
            let node = self.node(Role::Paragraph);
            let mark = self.letters.set(mark, Look::NOTE, WIDTH);
            self.lines(Owner::Node(node), mark, Side::Right, (LEFT, top + 5.0), WIDTH);
        }
        self.rule(self.y + 2.0, Ink::Black, 0.8);
        self.y += 8.0;
    }

    /// A heading within a section.
    pub fn part(&mut self, text: &str) {
        self.y += 6.0;
        self.keep(Look::PART.size * 1.5 + WITH_HEADING);
        let (node, lines) = (self.heading_node(3, text), self.letters.set(text, Look::PART, WIDTH));
        self.y = self.lines(Owner::Node(node), lines, Side::Left, (LEFT, self.y), WIDTH) + 2.0;
    }

    /// The name of a step, and how it stands.
    pub fn step(&mut self, title: &str, shown: &str) {
        self.y += 4.0;
        self.keep(Look::BODY.size * 1.5 + WITH_HEADING);
        let node = self.node(Role::Heading(4, title.to_owned()));
        let parts = [(title, Look::BODY.strong()), ("  ", Look::ASIDE), (shown, Look::ASIDE)];
        let lines = self.letters.set_parts(&parts, WIDTH);
        self.y = self.lines(Owner::Node(node), lines, Side::Left, (LEFT, self.y), WIDTH) + 1.0;
    }

    /// A heading in the structure and in the outline.
    pub fn heading_node(&mut self, level: u16, text: &str) -> Node {
        self.bookmarks.push(Bookmark { level, text: text.to_owned(), page: self.page(), y: self.y });
        self.node(Role::Heading(level, text.to_owned()))
    }

    /// A paragraph that goes on over pages.
    pub fn paragraph(&mut self, text: &str, look: Look, indent: f32) {
        let node = self.node(Role::Paragraph);
        let lines = self.letters.set(text, look, WIDTH - indent);
        // A paragraph that just does not fit is not torn; a long one is.
        if lines.len() <= 3 {
            self.keep(lines.iter().map(|line| line.height).sum());
        }
        for line in lines {
            self.keep(line.height);
            self.y = self.lines(Owner::Node(node), vec![line], Side::Left, (LEFT + indent, self.y), WIDTH);
        }
        self.y += 2.0;
    }

    /// A picture's node, drawn at a place of the page that is being written.
    pub fn figure(&mut self, alt: String, place: Place) -> Owner {
        let page = self.page();
        Owner::Node(self.node(Role::Figure { alt, page, place }))
    }
}
