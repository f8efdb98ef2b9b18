//! The program as a person calls it: the demo walks, wrong orders, bad files, stores that cannot be opened, single figures.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on says where")]
#![allow(clippy::disallowed_methods, clippy::disallowed_types, reason = "the edge: programs and files")]

mod bad_input;
mod clocks;
mod contradictions;
mod damage;
mod figures;
mod guide;
mod kills;
mod languages;
mod own_checklists;
mod pages;
mod plan;
mod printing;
mod support;
mod texts;
mod walks;
mod way_back;
