//! Writes the types that cross to the page into a folder: `cargo run -p panside --example types -- FOLDER`.
#![allow(clippy::disallowed_methods, reason = "an edge: it writes files")]

use std::path::Path;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let folder = std::env::args().nth(1).ok_or("Name the folder to write into.")?;
    for (name, text) in panside_window::types::files() {
        std::fs::write(Path::new(&folder).join(name), text)?;
    }
    Ok(())
}
