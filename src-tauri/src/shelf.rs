//! The checklists with their texts in other languages, and the spec sheets, that are built into the program.

use panside_bay::shelf::Shelf;

include!(concat!(env!("OUT_DIR"), "/shelf.rs"));

/// What is built in.
pub const SHELF: Shelf<'static> = Shelf { checklists: CHECKLISTS, sheets: SHEETS, texts: TEXTS };
