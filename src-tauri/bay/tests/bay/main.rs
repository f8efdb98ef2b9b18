//! The use cases over a real store: what is acknowledged is there, once; what is refused leaves nothing behind.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on says where")]
#![allow(clippy::disallowed_methods, reason = "the edge: files and clocks")]

mod beside;
mod bounds;
mod checklists;
mod damage;
mod decisions;
mod devices;
mod entering;
mod figures;
mod first_sheet;
mod pages;
mod people;
mod pins;
mod plan;
mod sheets;
mod starting;
mod support;
mod texts;
mod way_back;
mod window;
