//! Files that a person names: read only as far as a bound, written whole or not at all.
//!
//! Links are followed here, unlike inside a store: a person names what they mean, and a folder of links to files is a
//! usual thing. What is no file is refused by its kind before it is opened, so that nobody waits for the writer of a
//! pipe and nothing is read from a device that never ends.

use std::fs::{self, OpenOptions};
use std::io;
use std::path::{Path, PathBuf};

use crate::StoreError;
use crate::disk::{NotPlain, PART, fill, plain, sync_dir, take_up_to};

/// Reads a file of at most `most` bytes.
///
/// # Errors
/// [`StoreError::NotPlain`] for a folder, a pipe, a device or a socket; [`StoreError::TooLarge`] for a file with more;
/// [`StoreError::CannotRead`] with what the system said.
pub fn read(path: &Path, most: usize) -> Result<Vec<u8>, StoreError> {
    let failed = |source| outside(path, source, |path, source| StoreError::CannotRead { path, source });
    plain(fs::metadata(path).map_err(failed)?.file_type()).map_err(failed)?;
    let read = open(path).and_then(|file| take_up_to(file, most as u64)).map_err(failed)?;
    read.ok_or_else(|| StoreError::TooLarge { path: path.to_owned(), most })
}

/// Opens without waiting: should a pipe come in after its kind was looked at, it is not waited for.
fn open(path: &Path) -> io::Result<fs::File> {
    let mut options = OpenOptions::new();
    #[cfg(unix)]
    {
        use std::os::unix::fs::OpenOptionsExt;
        options.custom_flags(libc::O_NONBLOCK);
    }
    let file = options.read(true).open(path)?;
    plain(file.metadata()?.file_type())?;
    Ok(file)
}

/// Writes a file whole or not at all, in place of what stood there, and makes the folders above it. Where a link leads to a
/// file, that file is written.
///
/// # Errors
/// [`StoreError::NotPlain`] for a folder, a pipe, a device or a socket; [`StoreError::CannotWrite`] with what the system
/// said. What stood there before is there then, and nothing new.
pub fn write(path: &Path, bytes: &[u8]) -> Result<(), StoreError> {
    let failed = |source| outside(path, source, |path, source| StoreError::CannotWrite { path, source });
    let target = match fs::metadata(path) {
        Ok(found) => plain(found.file_type()).and_then(|()| fs::canonicalize(path)).map_err(failed)?,
        Err(_) => path.to_owned(),
    };
    replace(&target, bytes).map_err(failed)
}

/// Writes a file whole where there is none yet; what is there is never written over.
///
/// # Errors
/// [`StoreError::AlreadyThere`]; else as [`write`].
pub fn write_new(path: &Path, bytes: &[u8]) -> Result<(), StoreError> {
    let failed = |source: io::Error| match source.kind() {
        io::ErrorKind::AlreadyExists => StoreError::AlreadyThere { path: path.to_owned() },
        _ => outside(path, source, |path, source| StoreError::CannotWrite { path, source }),
    };
    // The name is taken first, so that not even a file that comes in between is written over.
    OpenOptions::new().write(true).create_new(true).open(path).map_err(failed)?;
    replace(path, bytes).map_err(|error| {
        // The empty file is ours. The first error is the one to tell.
        let _ = fs::remove_file(path);
        failed(error)
    })
}

/// A file beside it, synced, renamed over it, the folder synced.
fn replace(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    // A file in the place of a folder is "there already" for the system, which would say nothing of use here.
    let no_folder = |error: io::Error| match error.kind() {
        io::ErrorKind::AlreadyExists => io::ErrorKind::NotADirectory.into(),
        _ => error,
    };
    fs::create_dir_all(folder).map_err(no_folder)?;
    // Two programs that write the same file at a time each have a part of their own.
    let part = path.with_added_extension(format!("{}.{PART}", std::process::id()));
    let made = OpenOptions::new().write(true).create_new(true).open(&part)?;
    let written = fill(made, bytes).and_then(|()| fs::rename(&part, path));
    if written.is_err() {
        // The first error is the one to tell.
        let _ = fs::remove_file(&part);
    }
    written?;
    sync_dir(folder)
}

fn outside(
    path: &Path,
    source: io::Error,
    failed: impl FnOnce(PathBuf, io::Error) -> StoreError,
) -> StoreError {
    match source.get_ref().and_then(|inner| inner.downcast_ref::<NotPlain>()) {
        Some(NotPlain(what)) => StoreError::NotPlain { path: path.to_owned(), what: *what },
        None => failed(path.to_owned(), source),
    }
}
