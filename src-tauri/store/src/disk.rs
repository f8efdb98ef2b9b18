//! Writing a file so that after a power cut it is there whole or not at all.

use std::fs::{self, File};
use std::io::Write;
use std::path::Path;

use crate::StoreError;
use crate::error::file;

/// The end of the name of a file that isn't whole yet.
pub(crate) const PART: &str = "part";

/// Writes `bytes` to `path`: a file beside it, synced, renamed over it, the folder synced.
pub(crate) fn write_whole(doing: &'static str, path: &Path, bytes: &[u8]) -> Result<(), StoreError> {
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

/// Makes a file that isn't there yet, for its owner alone.
pub(crate) fn create_new(path: &Path) -> std::io::Result<File> {
    ours(fs::OpenOptions::new().write(true).create_new(true)).open(path)
}

/// Opens a file for writing, and makes it where there is none, for its owner alone. A link in its place is refused.
pub(crate) fn open_or_create(path: &Path) -> std::io::Result<File> {
    if fs::symlink_metadata(path).is_ok_and(|found| found.file_type().is_symlink()) {
        return Err(std::io::Error::new(std::io::ErrorKind::InvalidInput, "it is a link to another place"));
    }
    ours(fs::OpenOptions::new().write(true).create(true).truncate(false)).open(path)
}

/// Readable and writable for the owner alone.
#[cfg(unix)]
fn ours(options: &mut fs::OpenOptions) -> &mut fs::OpenOptions {
    use std::os::unix::fs::OpenOptionsExt;
    options.mode(0o600)
}

/// Other systems have no such mode.
#[cfg(not(unix))]
fn ours(options: &mut fs::OpenOptions) -> &mut fs::OpenOptions {
    options
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

/// Takes away a folder with all that is in it; there need not be one.
pub(crate) fn remove_dir(doing: &'static str, dir: &Path) -> Result<(), StoreError> {
    match fs::remove_dir_all(dir) {
        Err(error) if error.kind() != std::io::ErrorKind::NotFound => Err(file(doing, dir)(error)),
        _ => Ok(()),
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
