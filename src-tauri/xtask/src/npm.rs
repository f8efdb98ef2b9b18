//! The page's tools: installing them by `npm ci`, and running the scripts of ui/package.json.

use std::fs;
use std::path::{Path, PathBuf};

use crate::failure::Failure;
use crate::folder;
use crate::stage::{call, command};

/// Beside the installed packages: a copy of the package-lock.json they were installed from. Content is compared
/// and not dates, as a checkout gives files the date of the day.
const STAMP: &str = "node_modules/.installed-from.json";

/// Installs the page's packages, unless exactly these are installed already.
///
/// # Errors
/// When npm fails, or a file can't be read or written.
pub fn install(root: &Path) -> Result<(), Failure> {
    let ui = ui(root);
    let lock_path = ui.join("package-lock.json");
    let lock = fs::read(&lock_path).map_err(|source| Failure::File {
        doing: "Reading",
        path: lock_path.clone(),
        source,
    })?;
    let stamp_path = ui.join(STAMP);
    // A stamp that can't be read is as good as none: npm ci makes all anew.
    let stamp = fs::read(&stamp_path).ok();
    if is_current(stamp.as_deref(), &lock) {
        println!("   the packages of package-lock.json are installed already.");
        return Ok(());
    }
    call(command(&ui, "npm", &["ci", "--no-audit", "--no-fund"]))?;
    folder::write(&stamp_path, &lock)
}

/// Whether the installed packages are those of the lock file.
fn is_current(stamp: Option<&[u8]>, lock: &[u8]) -> bool {
    stamp == Some(lock)
}

/// Runs a script of ui/package.json.
///
/// # Errors
/// When it fails.
pub fn script(root: &Path, name: &str) -> Result<(), Failure> {
    call(command(&ui(root), "npm", &["run", "--silent", name]))
}

/// Builds the page aside and then takes over into ui/dist what changed, so that a page that is the same doesn't
/// make the window be compiled again.
///
/// # Errors
/// When the build fails, or a file can't be read or written.
pub fn build_page(root: &Path) -> Result<(), Failure> {
    let aside = root.join("target/page");
    let out = aside.to_string_lossy();
    call(command(&ui(root), "npm", &["run", "--silent", "build", "--", "--emptyOutDir", "--outDir", &*out]))?;
    let page = folder::read(&aside)?;
    let changed = folder::make_equal(&page, &ui(root).join("dist"))?;
    println!("   {} files, {changed} of them changed in ui/dist.", page.len());
    Ok(())
}

fn ui(root: &Path) -> PathBuf {
    root.join("ui")
}

#[cfg(test)]
mod tests {
    use super::is_current;

    #[test]
    fn packages_are_installed_again_when_the_lock_file_differs_or_no_stamp_is_there() {
        assert!(is_current(Some(b"{\"svelte\":\"5\"}"), b"{\"svelte\":\"5\"}"));
        assert!(!is_current(Some(b"{\"svelte\":\"5\"}"), b"{\"svelte\":\"6\"}"));
        assert!(!is_current(None, b"{\"svelte\":\"5\"}"));
    }
}
