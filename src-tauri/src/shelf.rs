//! The checklists with their texts in other languages, the parts that a shop's own may use, and the spec sheets: what is
//! built into the program.

use panside_bay::shelf::Shelf;

include!(concat!(env!("OUT_DIR"), "/shelf.rs"));

/// What is built in.
pub const SHELF: Shelf<'static> =
    Shelf { checklists: CHECKLISTS, sheets: SHEETS, texts: TEXTS, parts: PARTS };
