//! Helpers shared by the whole-project tests and by the pictures of the README.
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "the edge: these start programs, read files and wait"
)]

use std::path::Path;

use panside_procedure::parts;

pub mod promela;
pub mod python;
pub mod window;

/// The checklist of that name in `checklists/`, as the program loads it: its parts in place.
///
/// # Panics
/// When there is none, or it does not join.
#[must_use]
pub fn checklist(name: &str) -> String {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../checklists");
    joined(&folder.join(format!("{name}.checklist.json"))).unwrap_or_else(|error| panic!("{name}: {error}"))
}

/// The text of a checklist's file with the parts in place that lie beside it.
///
/// # Errors
/// When it cannot be read or joined, in words.
pub fn joined(path: &Path) -> Result<String, String> {
    let folder = path.parent().unwrap_or(Path::new("."));
    let part = |name: &str| std::fs::read(folder.join(parts::file_of(name))).ok();
    let bytes = std::fs::read(path).map_err(|error| format!("{}: {error}", path.display()))?;
    parts::join(&bytes, &part).map(|joined| joined.text).map_err(|problems| problems.to_string())
}
