//! Helpers shared by the whole-project tests and by the pictures of the README.
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "the edge: these start programs, read files and wait"
)]

use std::path::Path;

pub mod promela;
pub mod python;
pub mod window;

/// The checklist of that name in `checklists/`, as the program loads it.
///
/// # Panics
/// When there is none.
#[must_use]
pub fn checklist(name: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("../checklists/{name}.checklist.json"));
    std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}
