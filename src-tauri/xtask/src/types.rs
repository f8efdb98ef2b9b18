//! The generated files: written by the programs from the Rust types, committed, and compared.
//!
//! These are the JSON Schemas of checklists, sheets and walk scripts, and the page's types with its table of commands.

use std::path::Path;

use crate::cli;
use crate::failure::Failure;
use crate::folder::{self, Difference, Files};
use crate::stage::{Stage, call, command, run_all};

/// A folder of generated files.
struct Place {
    /// Where they are committed.
    folder: &'static str,
    /// Nothing else lies there: a file that is no longer generated is removed.
    alone: bool,
    /// Writes them anew into a folder.
    make: fn(&Path, &str) -> Result<(), Failure>,
}

const PLACES: [Place; 2] = [
    Place {
        folder: "checklists/schema",
        alone: true,
        make: |root, out| cli::run(root, &["schema", "--out", out]),
    },
    Place {
        folder: "ui/src/core",
        alone: false,
        make: |root, out| call(command(root, &cli::types(root).to_string_lossy(), &[out])),
    },
];

/// What mends a difference, as printed.
const MENDS: &str = "cargo xtask types";

/// `cargo xtask types`: writes the generated files anew.
///
/// # Errors
/// When a program can't be built or fails, or a file can't be written.
pub fn write(root: &Path) -> Result<(), Failure> {
    cli::build(root)?;
    cli::build_types(root)?;
    run_all(root, &[Stage::new("types", "write the generated files anew", write_work)])
}

/// `cargo xtask types --check`: compares and changes nothing.
///
/// # Errors
/// `Failure::Check` with the files that differ and the command that mends it.
pub fn check(root: &Path) -> Result<(), Failure> {
    cli::build(root)?;
    cli::build_types(root)?;
    run_all(root, &[check_stage()])
}

/// The comparison as a stage, for `cargo xtask test`.
pub fn check_stage() -> Stage {
    Stage::new("generated", "compare the generated files with the committed ones", check_work)
}

fn write_work(root: &Path) -> Result<(), Failure> {
    for place in &PLACES {
        let (mut fresh, committed) = both(root, place)?;
        let count = fresh.len();
        if !place.alone {
            fresh.extend(
                committed.into_iter().filter(|(path, _)| !fresh.contains_key(path)).collect::<Vec<_>>(),
            );
        }
        let changed = folder::make_equal(&fresh, &root.join(place.folder))?;
        println!("   {count} files in {}, {changed} of them changed.", place.folder);
    }
    Ok(())
}

fn check_work(root: &Path) -> Result<(), Failure> {
    let mut complaints = Vec::new();
    for place in &PLACES {
        let (fresh, mut committed) = both(root, place)?;
        if !place.alone {
            committed.retain(|path, _| fresh.contains_key(path));
        }
        let differences = folder::differences(&fresh, &committed);
        if differences.is_empty() {
            println!("   {} files in {} are as generated.", fresh.len(), place.folder);
        }
        complaints.extend(complain(place.folder, &differences));
    }
    complaint(&complaints).map_or(Ok(()), |sentence| Err(Failure::Check(sentence)))
}

/// The files as they are generated now, written aside, and as they are committed.
fn both(root: &Path, place: &Place) -> Result<(Files, Files), Failure> {
    let aside = root.join("target/generated").join(place.folder);
    folder::remove(&aside)?;
    folder::create(&aside)?;
    (place.make)(root, &aside.to_string_lossy())?;
    let fresh = folder::read(&aside)?;
    if fresh.is_empty() {
        return Err(Failure::Check(format!(
            "Nothing was generated for {}, so nothing can be compared.",
            place.folder
        )));
    }
    Ok((fresh, folder::read(&root.join(place.folder))?))
}

/// A line for each file that differs.
fn complain(folder: &str, differences: &[Difference<'_>]) -> Vec<String> {
    let line = |difference: &Difference<'_>| match difference {
        Difference::Missing(path) => format!("  {folder}/{} is missing", path.display()),
        Difference::Changed(path) => format!("  {folder}/{} is out of date", path.display()),
        Difference::Extra(path) => format!("  {folder}/{} is no longer generated", path.display()),
    };
    differences.iter().map(line).collect()
}

/// The sentence for files that differ; none when all are equal.
fn complaint(lines: &[String]) -> Option<String> {
    (!lines.is_empty()).then(|| {
        format!(
            "The generated files differ from the Rust types:\n{}\nThis mends it; commit what it changes: {MENDS}",
            lines.join("\n")
        )
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_difference_names_the_file_and_the_command_that_mends_it() {
        let lines = complain(
            "checklists/schema",
            &[
                Difference::Missing(Path::new("sheet.json")),
                Difference::Changed(Path::new("checklist.json")),
                Difference::Extra(Path::new("old.json")),
            ],
        );
        let sentence = complaint(&lines).unwrap_or_default();
        assert!(sentence.contains("checklists/schema/sheet.json is missing"), "{sentence}");
        assert!(sentence.contains("checklists/schema/checklist.json is out of date"), "{sentence}");
        assert!(sentence.contains("checklists/schema/old.json is no longer generated"), "{sentence}");
        assert!(sentence.ends_with("cargo xtask types"), "{sentence}");
    }

    #[test]
    fn equal_files_raise_no_complaint() {
        assert_eq!(complaint(&[]), None);
    }
}
