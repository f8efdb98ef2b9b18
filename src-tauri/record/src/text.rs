//! The record as plain text for the command line: 100 columns, first what a service writer needs in a minute, then
//! everything else.

mod entries;
mod first;
mod page;
mod rest;

use crate::document::Document;
use crate::source::Standing;
use page::Page;

impl Document {
    /// The document as plain text, no line longer than 100 characters. Control characters in what people typed are
    /// written as spaces, so that no entry can steer a terminal.
    #[must_use]
    pub fn to_text(&self) -> String {
        let mut page = Page::default();
        first::write(self, &mut page);
        entries::write(self, &mut page);
        rest::write(self, &mut page);
        page.into_text()
    }
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

/// Minutes as hours and minutes.
fn hours(minutes: u64) -> String {
    format!("{} h {:02}", minutes / 60, minutes % 60)
}
