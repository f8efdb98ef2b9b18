//! Prepares what Tauri builds into the window: its settings, its permissions and the page.
#![allow(clippy::disallowed_methods, reason = "a build script reads and writes files")]

use std::path::{Path, PathBuf};

use panside_procedure::format::Texts;
use panside_procedure::{Problems, parts, texts};

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

/// Lists the checklists, their parts in place, the parts, the texts in other languages and the sheets as constants, so that a new
/// file needs no line of code.
fn write_shelf() -> Result<(), Box<dyn std::error::Error>> {
    println!("cargo:rerun-if-changed={CHECKLISTS}");
    let out = std::env::var_os("OUT_DIR").ok_or("cargo gives OUT_DIR to build scripts")?;
    let out = Path::new(&out);
    let folder = Path::new(CHECKLISTS);
    let part = |name: &str| std::fs::read(folder.join(parts::file_of(name))).ok();
    let (mut checklists, mut procedures) = (Vec::new(), Vec::new());
    for file in files(folder, ".checklist.json")? {
        let joined = parts::join(&std::fs::read(&file)?, &part);
        let joined = joined.map_err(|problems| wrong(&file, &problems))?;
        procedures.push(joined.load().map_err(|problems| wrong(&file, &problems))?);
        let path = out.join(file.file_name().ok_or("a file has a name")?);
        std::fs::write(&path, joined.text)?;
        checklists.push(path);
    }
    let sheets = files(&folder.join("sheets"), ".sheet.json")?;
    let translated = files(&folder.join(texts::FOLDER), texts::ENDING)?;
    for file in &translated {
        let bytes = std::fs::read(file)?;
        let of = Texts::read(&bytes).map_err(|problems| wrong(file, &problems))?.of;
        let checklist = procedures.iter().map(|procedure| &procedure.checklist).find(|one| one.id == of);
        let checklist = checklist.ok_or_else(|| format!("{}: there is no checklist {of}", file.display()))?;
        Texts::checked(checklist, &bytes).map_err(|problems| wrong(file, &problems))?;
    }
    let pieces = files(&folder.join(parts::FOLDER), parts::ENDING)?;
    let lists =
        [("PARTS", &pieces), ("CHECKLISTS", &checklists), ("SHEETS", &sheets), ("TEXTS", &translated)];
    Ok(std::fs::write(out.join("shelf.rs"), lists.map(|(name, files)| list(name, files)).concat())?)
}

/// Which file has mistakes, and which.
fn wrong(file: &Path, problems: &Problems) -> String {
    format!("{}:\n{problems}", file.display())
}

/// The files of a folder whose names end so, by name; none where there is no such folder.
fn files(folder: &Path, ending: &str) -> std::io::Result<Vec<PathBuf>> {
    let mut files = Vec::new();
    if !folder.exists() {
        return Ok(files);
    }
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
