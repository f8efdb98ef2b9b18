//! The real window, walked by tapping: what a person would do, on a screen in memory.
//!
//! It is left out of `cargo test --workspace`; the stage `window` of `cargo xtask test` runs it once the programs are
//! built. With `PANSIDE_LAST_PICTURE=FILE`, what the window showed when something was not found is put into that file.
#![allow(clippy::disallowed_methods, clippy::disallowed_types, reason = "the edge: programs, files, waiting")]

mod backups;
mod bad_input;
mod full_disk;
mod kill;
mod plan;
mod setup;
mod whole_job;
