//! `cargo xtask run`: builds the command line program and walks the demo job from the concern to the record.
//!
//! The window isn't opened, so neither Tauri's packages nor npm are needed. Each run starts from nothing: what
//! an earlier run left in target/demo is removed.

use std::path::{Path, PathBuf};

use crate::cli;
use crate::failure::Failure;
use crate::folder;
use crate::photo;
use crate::stage::{Stage, run_all};

/// The demo job as a script of wishes.
const SCRIPT: &str = "checklists/demo/demo.walk.json";

/// Where the demo job's store and record go.
const DEMO: &str = "target/demo";

/// `cargo xtask run`, with a photo of one's own or the one that a Debian package carries.
///
/// # Errors
/// When the program can't be built, the photo can't be had, or the walk fails.
pub fn run(root: &Path, own_photo: Option<&str>) -> Result<(), Failure> {
    let own_photo = own_photo.map(|path| root.join(path));
    let mut stages = vec![Stage::new("build", "build the command line program", cli::build)];
    if own_photo.is_none() {
        stages.push(Stage::new("photo", "fetch the photo of the demo job", |root| {
            photo::demo_photo(root).map(drop)
        }));
    }
    stages.push(Stage::new(
        "walk",
        "prove the checklist, walk the demo job, write its record",
        move |root| walk(root, own_photo.clone()),
    ));
    run_all(root, &stages)?;
    println!("\nThe record of the demo job is in {DEMO}/record.json, its store in {DEMO}/store.");
    Ok(())
}

fn walk(root: &Path, own_photo: Option<PathBuf>) -> Result<(), Failure> {
    let photo = own_photo.map_or_else(|| photo::demo_photo(root), Ok)?;
    folder::remove(&root.join(DEMO))?;
    folder::create(&root.join(DEMO))?;
    let store = format!("{DEMO}/store");
    let record = format!("{DEMO}/record.json");
    cli::run(
        root,
        &["walk", SCRIPT, "--store", &store, "--record", &record, "--photo", &*photo.to_string_lossy()],
    )
}
