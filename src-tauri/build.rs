//! Prepares what Tauri builds into the window: its settings, its permissions and the page.
#![allow(clippy::disallowed_methods, reason = "a build script reads and writes files")]

use std::path::Path;

/// Where the built page lies, seen from this crate; the same path stands in `tauri.conf.json`.
const PAGE: &str = "../ui/dist";

fn main() -> Result<(), Box<dyn std::error::Error>> {
    keep_page_folder()?;
    // The settings name the folder, but a page that is built for the first time would go unseen.
    println!("cargo:rerun-if-changed={PAGE}");
    tauri_build::try_build(tauri_build::Attributes::new())?;
    Ok(())
}

/// Makes an empty page, so that a plain `cargo build` or `cargo clippy` works before the page is built.
/// Its one file says what is missing to whoever opens the window.
fn keep_page_folder() -> std::io::Result<()> {
    let page = Path::new(PAGE);
    if page.join("index.html").exists() {
        return Ok(());
    }
    std::fs::create_dir_all(page)?;
    std::fs::write(
        page.join("index.html"),
        "<!doctype html>\n<title>Panside</title>\n\
         <p>The page is not built into this program: run `npm ci` and `npm run build` in ui/.</p>\n",
    )
}
