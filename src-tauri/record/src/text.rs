//! The record as plain text for the command line: 100 columns, first what a service writer needs in a minute, then
//! everything else.

mod page;

use crate::document::Document;
use crate::say::{self, Block, Section, Side, Table};
use page::Page;

impl Document {
    /// The document as plain text, no line longer than 100 characters. Control characters in what people typed are
    /// written as spaces, so that no entry can steer a terminal.
    #[must_use]
    pub fn to_text(&self) -> String {
        let mut page = Page::default();
        let mark = &self.mark();
        page.ends(&format!("Bay record, repair order {}", say::order(self)), mark);
        page.paragraph(0, &self.title);
        page.table(0, &[Side::Left, Side::Left], &say::facts(self));
        for section in say::said(self).into_iter().chain([say::time(self), say::open(self)]) {
            write(&section, mark, &mut page);
        }
        page.blank();
        page.paragraph(0, &self.come_first);
        for section in std::iter::once(say::entries(self)).chain(say::rest(self)) {
            write(&section, mark, &mut page);
        }
        page.into_text()
    }
}

fn write(section: &Section, mark: &str, page: &mut Page) {
    page.heading(&section.heading, if section.has_sheet_values { mark } else { "" });
    for block in &section.blocks {
        match block {
            Block::Title(text) => {
                page.blank();
                page.paragraph(0, text);
            }
            Block::Step(title, shown) => page.paragraph(2, &format!("{title}: {shown}")),
            Block::Line(text) => page.paragraph(2, text),
            Block::Under(text) => page.paragraph(4, text),
            Block::Table(table) | Block::Photos(table) => write_table(table, page),
        }
    }
}

fn write_table(table: &Table, page: &mut Page) {
    let rows: Vec<_> = table.head.iter().chain(&table.rows).cloned().collect();
    page.table(if table.under { 6 } else { 2 }, &table.sides, &rows);
}
