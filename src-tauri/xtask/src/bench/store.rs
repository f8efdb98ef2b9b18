//! The store's times beside those of the disk and of SQLite: `tests/bench` measures and prints them.

use std::path::Path;

use crate::cli;
use crate::failure::Failure;
use crate::folder;
use crate::stage::{call, command};

/// A store of so many jobs of so many events each: two million events.
const SIZE: [&str; 2] = ["10000", "200"];
const DEMO: &str = "checklists/demo/demo.walk.json";
/// Another job with the same checklist, which is started and no more.
const STARTED: &str = "checklists/demo/free-joint.walk.json";
/// Any picture will do.
const PHOTO: &str = "ui/pictures/step.png";

/// Prints the store's rows.
pub fn rows(root: &Path) -> Result<(), Failure> {
    call(command(root, "cargo", &["build", "--workspace", "--example", "store_bench"]))?;
    let made = std::env::temp_dir().join(format!("panside-bench-store-{}", std::process::id()));
    folder::create(&made)?;
    let demo = made.join("demo").to_string_lossy().into_owned();
    let walk = ["walk", DEMO, "--store", &demo, "--photo", PHOTO, "--plain-proof", "--no-text"];
    cli::run_quietly(root, &walk)?;
    let start = ["walk", STARTED, "--lines", "0", "--store", &demo, "--plain-proof", "--no-text"];
    cli::run_quietly(root, &start)?;
    let bench = cli::example(root, "store_bench");
    call(command(root, &bench.to_string_lossy(), &[SIZE[0], SIZE[1], &demo]))?;
    folder::remove(&made)
}
