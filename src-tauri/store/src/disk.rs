//! Writing a file so that after a power cut it is there whole or not at all.

use std::fs::{self, File};
use std::io::Write;
use std::path::Path;
use std::sync::{Mutex, PoisonError};

use crate::StoreError;
use crate::error::file;

/// The end of the name of a file that isn't whole yet.
pub(crate) const PART: &str = "part";

/// Two that write the same file at a time would take each other's part away.
static ONE_AT_A_TIME: Mutex<()> = Mutex::new(());

/// Writes `bytes` to `path`: a file beside it, synced, renamed over it, the folder synced.
pub(crate) fn write_whole(doing: &'static str, path: &Path, bytes: &[u8]) -> Result<(), StoreError> {
    let _turn = ONE_AT_A_TIME.lock().unwrap_or_else(PoisonError::into_inner);
    let part = path.with_added_extension(PART);
    let written = File::create(&part).and_then(|mut out| {
        out.write_all(bytes)?;
        out.sync_all()
    });
    if let Err(error) = written {
        // The first error is the one to tell; a part that stays is swept later.
        let _ = fs::remove_file(&part);
        return Err(file(doing, &part)(error));
    }
    fs::rename(&part, path).map_err(file(doing, path))?;
    sync_parent(doing, path)
}

/// Makes a folder and the ones above it, each synced into the folder above.
pub(crate) fn make_dir(doing: &'static str, dir: &Path) -> Result<(), StoreError> {
    if dir.as_os_str().is_empty() || dir.is_dir() {
        return Ok(());
    }
    if let Some(parent) = dir.parent() {
        make_dir(doing, parent)?;
    }
    match fs::create_dir(dir) {
        Err(error) if error.kind() != std::io::ErrorKind::AlreadyExists => Err(file(doing, dir)(error)),
        _ => sync_parent(doing, dir),
    }
}

/// Syncs the folder that holds `path`, so that its name survives a power cut.
pub(crate) fn sync_parent(doing: &'static str, path: &Path) -> Result<(), StoreError> {
    let parent = path.parent().filter(|p| !p.as_os_str().is_empty()).unwrap_or(Path::new("."));
    sync_dir(parent).map_err(file(doing, parent))
}

#[cfg(unix)]
fn sync_dir(dir: &Path) -> std::io::Result<()> {
    File::open(dir)?.sync_all()
}

/// Other systems have no sync of a folder; NTFS journals its names by itself.
#[cfg(not(unix))]
fn sync_dir(_dir: &Path) -> std::io::Result<()> {
    Ok(())
}
