//! `cargo xtask run`: builds the command line program and walks the demo job from concern to sealed record.
//!
//! The window isn't opened, so neither Tauri's packages nor npm are needed. Each run starts from nothing: what
//! an earlier run left in target/demo is removed.

use std::path::Path;

use crate::failure::Failure;
use crate::folder;
use crate::photo;
use crate::stage::{Stage, call, command, run_all};

/// The demo job as a script of entries.
const SCRIPT: &str = "checklists/demo/demo.walk.json";

/// Where the demo job's store and record go.
const DEMO: &str = "target/demo";

/// `cargo xtask run`.
///
/// # Errors
/// When the program can't be built or the walk fails.
pub fn run(root: &Path) -> Result<(), Failure> {
    run_all(
        root,
        &[
            Stage { name: "build", does: "build the command line program", work: build },
            Stage { name: "walk", does: "walk the demo job and write its record", work: walk },
        ],
    )?;
    println!("\nThe record of the demo job is in {DEMO}/record.json, its store in {DEMO}/store.");
    Ok(())
}

fn build(root: &Path) -> Result<(), Failure> {
    call(command(root, "cargo", &["build", "-p", "panside-cli"]))
}

fn walk(root: &Path) -> Result<(), Failure> {
    let photo = photo::demo_photo(root)?;
    folder::remove(&root.join(DEMO))?;
    folder::create(&root.join(DEMO))?;
    let store = format!("{DEMO}/store");
    let record = format!("{DEMO}/record.json");
    let photo = photo.to_string_lossy();
    let cargo = ["run", "-q", "-p", "panside-cli", "--"];
    let walk = ["walk", SCRIPT, "--store", &store, "--record", &record, "--photo", &*photo];
    call(command(root, "cargo", &[&cargo[..], &walk[..]].concat()))
}
