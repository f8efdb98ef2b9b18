//! The generated files: written by the command line program from the Rust types, committed, and compared.
//!
//! These are the JSON Schemas of checklists, sheets and walk scripts in checklists/schema. Files there that are no longer
//! generated are removed.

use std::path::Path;

use crate::cli;
use crate::failure::Failure;
use crate::folder::{self, Difference, Files};
use crate::stage::{Stage, run_all};

/// Where the schemas are committed.
const SCHEMA: &str = "checklists/schema";

/// What mends a difference, as printed.
const MENDS: &str = "cargo xtask types";

/// `cargo xtask types`: writes the generated files anew.
///
/// # Errors
/// When the program can't be built or fails, or a file can't be written.
pub fn write(root: &Path) -> Result<(), Failure> {
    cli::build(root)?;
    run_all(root, &[Stage::new("types", "write the generated files anew", write_work)])
}

/// `cargo xtask types --check`: compares and changes nothing.
///
/// # Errors
/// `Failure::Check` with the files that differ and the command that mends it.
pub fn check(root: &Path) -> Result<(), Failure> {
    cli::build(root)?;
    run_all(root, &[check_stage()])
}

/// The comparison as a stage, for `cargo xtask test`.
pub fn check_stage() -> Stage {
    Stage::new("generated", "compare the generated files with the committed ones", check_work)
}

fn write_work(root: &Path) -> Result<(), Failure> {
    let fresh = generate(root)?;
    let changed = folder::make_equal(&fresh, &root.join(SCHEMA))?;
    println!("   {} files in {SCHEMA}, {changed} of them changed.", fresh.len());
    Ok(())
}

fn check_work(root: &Path) -> Result<(), Failure> {
    let fresh = generate(root)?;
    let committed = folder::read(&root.join(SCHEMA))?;
    match complaint(&folder::differences(&fresh, &committed)) {
        None => {
            println!("   {} files in {SCHEMA} are as generated.", fresh.len());
            Ok(())
        }
        Some(sentence) => Err(Failure::Check(sentence)),
    }
}

/// Lets the command line program write the schemas aside and reads them.
fn generate(root: &Path) -> Result<Files, Failure> {
    let aside = root.join("target/generated/schema");
    folder::remove(&aside)?;
    folder::create(&aside)?;
    let out = aside.to_string_lossy();
    cli::run(root, &["schema", "--out", &*out])?;
    let fresh = folder::read(&aside)?;
    if fresh.is_empty() {
        return Err(Failure::Check("`panside-cli schema` wrote no file, so nothing can be compared.".into()));
    }
    Ok(fresh)
}

/// The sentence for files that differ; none when all are equal.
fn complaint(differences: &[Difference<'_>]) -> Option<String> {
    if differences.is_empty() {
        return None;
    }
    let lines: Vec<String> = differences
        .iter()
        .map(|difference| match difference {
            Difference::Missing(path) => format!("  {SCHEMA}/{} is missing", path.display()),
            Difference::Changed(path) => format!("  {SCHEMA}/{} is out of date", path.display()),
            Difference::Extra(path) => format!("  {SCHEMA}/{} is no longer generated", path.display()),
        })
        .collect();
    Some(format!(
        "The generated files differ from the Rust types:\n{}\nThis mends it; commit what it changes: {MENDS}",
        lines.join("\n")
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_difference_names_the_file_and_the_command_that_mends_it() {
        let sentence = complaint(&[
            Difference::Missing(Path::new("sheet.json")),
            Difference::Changed(Path::new("checklist.json")),
            Difference::Extra(Path::new("old.json")),
        ])
        .unwrap_or_default();
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
