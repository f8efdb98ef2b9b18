//! Prepares what Tauri builds into the window: its settings, its permissions and the page.
#![allow(clippy::disallowed_methods, reason = "a build script reads and writes files")]

use std::path::{Path, PathBuf};

use panside_procedure::parts;

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

/// Where the checklists and sheets lie that are built in, seen from this crate.
const CHECKLISTS: &str = "../checklists";

/// Lists the checklists, their parts in place, and the sheets as constants, so that a new file needs no line of code.
fn write_shelf() -> Result<(), Box<dyn std::error::Error>> {
    println!("cargo:rerun-if-changed={CHECKLISTS}");
    let out = std::env::var_os("OUT_DIR").ok_or("cargo gives OUT_DIR to build scripts")?;
    let out = Path::new(&out);
    let folder = Path::new(CHECKLISTS);
    let part = |name: &str| std::fs::read(folder.join(parts::file_of(name))).ok();
    let mut checklists = Vec::new();
    for file in files(folder, ".checklist.json")? {
        let joined = parts::join(&std::fs::read(&file)?, &part);
        let joined = joined.map_err(|problems| format!("{}:\n{problems}", file.display()))?;
        let path = out.join(file.file_name().ok_or("a file has a name")?);
        std::fs::write(&path, joined.text)?;
        checklists.push(path);
    }
    let sheets = files(&folder.join("sheets"), ".sheet.json")?;
    Ok(std::fs::write(out.join("shelf.rs"), list("CHECKLISTS", &checklists) + &list("SHEETS", &sheets))?)
}

/// The files of a folder whose names end so, by name.
fn files(folder: &Path, ending: &str) -> std::io::Result<Vec<PathBuf>> {
    let mut files = Vec::new();
    for entry in std::fs::read_dir(folder)? {
        let path = entry?.path();
        if path.to_string_lossy().ends_with(ending) {
            files.push(path.canonicalize()?);
        }
    }
    files.sort();
    Ok(files)
}

/// A constant with the bytes of files.
fn list(name: &str, files: &[PathBuf]) -> String {
    let bytes = files.iter().map(|file| format!("    include_bytes!({:?}),\n", file.to_string_lossy()));
    format!("/// By name.\nconst {name}: &[&[u8]] = &[\n{}];\n", bytes.collect::<String>())
}
