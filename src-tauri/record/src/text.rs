//! The record as plain text for the command line: 100 columns, first what a service writer needs in a minute, then the
//! file.

mod page;

use panside_messages::Speaker;

use crate::document::Document;
use crate::say::{self, Block, Extent, Section, Side, Table};
use crate::speak::Say;
use page::Page;

impl Document {
    /// The document as plain text, no line longer than 100 characters. Control characters in what people typed are
    /// written as spaces, so that no entry can steer a terminal.
    #[must_use]
    pub fn to_text(&self, speaker: &Speaker, extent: Extent) -> String {
        let say = &Say::by(speaker);
        let (mut page, mark) = (Page::default(), &self.mark());
        let first = say::first(self, say);
        page.ends(&first.name, mark);
        page.paragraph(0, &self.title);
        page.table(0, &[Side::Left, Side::Left], &first.facts);
        first.sections().iter().for_each(|section| write(section, mark, &mut page));
        page.blank();
        page.paragraph(0, &self.come_first);
        say::rest(self, say, extent).iter().for_each(|section| write(section, mark, &mut page));
        page.into_text()
    }

    /// The customer's copy as plain text, in the same columns.
    #[must_use]
    pub fn to_customer_text(&self, speaker: &Speaker) -> String {
        let say = &Say::by(speaker);
        let (mut page, mark) = (Page::default(), &self.mark());
        let customer = say::customer(self, say);
        page.ends(&customer.name, mark);
        page.table(0, &[Side::Left, Side::Left], &customer.facts);
        customer.sections.iter().for_each(|section| write(section, mark, &mut page));
        page.blank();
        page.paragraph(0, &customer.closing);
        page.into_text()
    }
}

fn write(section: &Section, mark: &str, page: &mut Page) {
    if section.blocks.is_empty() {
        return;
    }
    page.heading(&section.heading, if section.has_sheet_values { mark } else { "" });
    for block in &section.blocks {
        match block {
            Block::Title(text) => {
                page.blank();
                page.paragraph(0, text);
            }
            Block::Step(title, shown) => {
                page.table(2, &[Side::Left, Side::Left], &[vec![title.clone(), shown.clone()]])
            }
            Block::Line(text) | Block::Strong(text) => page.paragraph(2, text),
            Block::Under(text) => page.paragraph(4, text),
            Block::Table(table) => write_table(table, page),
        }
    }
}

fn write_table(table: &Table, page: &mut Page) {
    let rows: Vec<_> = table.head.iter().chain(&table.rows).cloned().collect();
    page.table(if table.under { 6 } else { 2 }, &table.sides, &rows);
}
