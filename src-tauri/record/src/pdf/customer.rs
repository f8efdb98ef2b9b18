//! The customer's copy: one page of words, one of photos.

use super::first::{Columned, facts, title_and_mark};
use super::flow::Flow;
use super::ink::{BOTTOM, Ink, LEFT, WIDTH};
use super::photos::{self, LARGE, Pictures};
use super::sheet::Role;
use crate::document::Document;
use crate::messages;
use crate::say::{Customer, Section};
use crate::speak::Say;

/// Where the words end at the latest, above what stands at the end.
const END: f32 = BOTTOM - 40.0;

pub(super) fn write(
    flow: &mut Flow<'_>,
    document: &Document,
    copy: &Customer,
    pictures: &Pictures<'_>,
    say: &Say<'_>,
) {
    title_and_mark(flow, document, &copy.name);
    facts(flow, &copy.facts);
    for section in &copy.sections {
        part(flow, section);
    }
    flow.rule(flow.y.max(END) + 2.0, Ink::Black, 1.0);
    let at = (LEFT, flow.y.max(END) + 8.0);
    flow.place(Role::Paragraph, &copy.closing, super::ink::Look::BODY, at, WIDTH);
    let photos = photos::of_first_page(document);
    if !photos.is_empty() {
        flow.break_page();
        flow.begin_section(&say.says(&messages::heading_customer_photos()), "", 0.0);
        photos::write(flow, &photos, (pictures, LARGE), say);
    }
}

fn part(flow: &mut Flow<'_>, section: &Section) {
    flow.y += 4.0;
    let mut column = Columned { flow, x: LEFT, width: WIDTH };
    column.section(section, END);
}
