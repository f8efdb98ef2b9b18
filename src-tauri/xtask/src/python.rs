//! The Python packages that the tests ask for a second opinion, in a virtual environment of their own, locked by hash.

use std::fs;
use std::path::Path;

use crate::failure::Failure;
use crate::folder;
use crate::stage::{call, command};

/// Where they are listed.
const LOCK: &str = "tests/python/requirements.txt";

/// Where they are installed; the tests look there.
const ENVIRONMENT: &str = "tests/python/.venv";

/// Makes the environment, unless just these packages are in it already.
///
/// # Errors
/// When Python or pip fails, or a file can't be read or written.
pub fn install(root: &Path) -> Result<(), Failure> {
    let lock_path = root.join(LOCK);
    let lock = fs::read(&lock_path).map_err(|source| Failure::File {
        doing: "Reading",
        path: lock_path.clone(),
        source,
    })?;
    // Beside the packages: a copy of the list they were installed from. One that can't be read is as good as none.
    let stamp = root.join(ENVIRONMENT).join("installed-from.txt");
    if fs::read(&stamp).is_ok_and(|installed| installed == lock) {
        println!("   the packages of {LOCK} are installed already.");
        return Ok(());
    }
    call(command(root, "python3", &["-m", "venv", "--clear", ENVIRONMENT]))?;
    let python = format!("{ENVIRONMENT}/bin/python");
    let pip = ["-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--require-hashes"];
    call(command(root, &python, &[&pip[..], &["--only-binary", ":all:", "-r", LOCK]].concat()))?;
    folder::write(&stamp, &lock)
}
