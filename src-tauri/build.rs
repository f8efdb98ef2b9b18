//! Prepares what Tauri builds into the window: its settings, its permissions and the page.
#![allow(clippy::disallowed_methods, reason = "a build script reads and writes files")]

use std::path::Path;

/// Where the built page lies, seen from this crate; the same path stands in `tauri.conf.json`.
const PAGE: &str = "../ui/dist";

fn main() -> Result<(), Box<dyn std::error::Error>> {
    keep_page_folder()?;
    // The settings name the folder, but a page that is built for the first time would go unseen.
    println!("cargo:rerun-if-changed={PAGE}");
    write_shelf()?;
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

/// Where the checklists and sheets lie that are built in, seen from this crate, and how their names end.
const SHELF: [(&str, &str, &str); 2] =
    [("CHECKLISTS", "../checklists", ".checklist.json"), ("SHEETS", "../checklists/sheets", ".sheet.json")];

/// Lists the checklists and sheets as constants, so that a new file needs no line of code.
fn write_shelf() -> Result<(), Box<dyn std::error::Error>> {
    let mut code = String::new();
    for (name, folder, ending) in SHELF {
        println!("cargo:rerun-if-changed={folder}");
        let mut files = Vec::new();
        for entry in std::fs::read_dir(folder)? {
            let path = entry?.path();
            if path.to_string_lossy().ends_with(ending) {
                files.push(path.canonicalize()?);
            }
        }
        files.sort();
        code += &format!("/// Every `*{ending}`, by name.\nconst {name}: &[&[u8]] = &[\n");
        for file in &files {
            code += &format!("    include_bytes!({:?}),\n", file.to_string_lossy());
        }
        code += "];\n";
    }
    let out = std::env::var_os("OUT_DIR").ok_or("cargo gives OUT_DIR to build scripts")?;
    Ok(std::fs::write(Path::new(&out).join("shelf.rs"), code)?)
}
