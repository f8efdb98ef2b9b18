//! Files inside a store: nothing but plain files in plain folders, for their owner's eyes only, and each there whole or
//! not at all after a power cut.
//!
//! Nothing is read or written through a link below the store's folder: whoever can lay a link there would choose what
//! is read as evidence and what is written over. The store's own folder may be reached through links; that is the
//! choice of who names it. Folders on the way are looked at before a file is opened, so that somebody who changes them
//! in that very moment, with the owner's rights, is not kept out; the file itself is never opened through a link.

use std::error::Error;
use std::fmt;
use std::fs::{self, File, FileType, OpenOptions};
use std::io::{self, Read, Write};
use std::path::Path;
use std::sync::{Mutex, PoisonError};

use panside_messages::Message;

use crate::error::file;
use crate::message::*;
use crate::{Doing, StoreError};

/// The end of the name of a file that isn't whole yet.
pub(crate) const PART: &str = "part";

/// What is there in place of a file or folder. [`file`] makes [`StoreError::NotPlain`] of it.
#[derive(Debug)]
pub(crate) struct NotPlain(pub(crate) FileKind);

impl Error for NotPlain {}

impl fmt::Display for NotPlain {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.0.message().english())
    }
}

/// What stands under a name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "each is called what it is")]
pub enum FileKind {
    Device,
    Pipe,
    Socket,
    Folder,
    Link,
    File,
    Other,
}

impl FileKind {
    pub(crate) fn message(self) -> Message {
        match self {
            FileKind::Device => store_is_device(),
            FileKind::Pipe => store_is_pipe(),
            FileKind::Socket => store_is_socket(),
            FileKind::Folder => store_is_folder(),
            FileKind::Link => store_is_link(),
            FileKind::File => store_is_file(),
            FileKind::Other => store_is_other(),
        }
    }
}

/// What something other than a file is.
pub(crate) fn other_than_file(kind: FileType) -> Option<FileKind> {
    #[cfg(unix)]
    {
        use std::os::unix::fs::FileTypeExt;
        let device = kind.is_char_device() || kind.is_block_device();
        let special = [
            (device, FileKind::Device),
            (kind.is_fifo(), FileKind::Pipe),
            (kind.is_socket(), FileKind::Socket),
        ];
        if let Some((_, what)) = special.into_iter().find(|(is, _)| *is) {
            return Some(what);
        }
    }
    match (kind.is_file(), kind.is_dir(), kind.is_symlink()) {
        (true, ..) => None,
        (_, true, _) => Some(FileKind::Folder),
        (.., true) => Some(FileKind::Link),
        _ => Some(FileKind::Other),
    }
}

/// Sees that a file is one, by its kind alone, so that no pipe or device is ever opened: opening a pipe waits for a
/// writer, and opening a device can set it going.
pub(crate) fn plain(kind: FileType) -> io::Result<()> {
    other_than_file(kind).map_or(Ok(()), |what| Err(io::Error::other(NotPlain(what))))
}

/// Options that open nothing but what lies under the name itself, and wait for nobody: should a pipe come in after
/// [`plain`] has looked, opening it does not block.
fn options() -> OpenOptions {
    let mut options = OpenOptions::new();
    #[cfg(unix)]
    {
        use std::os::unix::fs::OpenOptionsExt;
        options.mode(0o600).custom_flags(libc::O_NOFOLLOW | libc::O_NONBLOCK | libc::O_CLOEXEC);
    }
    options
}

fn open(options: &OpenOptions, path: &Path) -> io::Result<File> {
    let file = options.open(path)?;
    plain(file.metadata()?.file_type())?;
    Ok(file)
}

/// Opens a file of the store for reading.
pub(crate) fn open_for_reading(path: &Path) -> io::Result<File> {
    plain(fs::symlink_metadata(path)?.file_type())?;
    open(options().read(true), path)
}

/// Opens a file of the store that is there for writing, as it is.
pub(crate) fn open_for_writing(path: &Path) -> io::Result<File> {
    plain(fs::symlink_metadata(path)?.file_type())?;
    open(options().write(true), path)
}

/// Makes a file of the store, readable by its owner alone, where there is nothing yet, not even a link.
pub(crate) fn create_new(path: &Path) -> io::Result<File> {
    options().write(true).create_new(true).open(path)
}

/// Opens a file of the store for writing, as it is, and makes it where there is none.
pub(crate) fn open_or_create(path: &Path) -> io::Result<File> {
    match create_new(path) {
        Err(error) if error.kind() == io::ErrorKind::AlreadyExists => open_for_writing(path),
        made => made,
    }
}

/// Reads a file of the store that has at most `most` bytes; nothing where it has more.
pub(crate) fn read_up_to(path: &Path, most: u64) -> io::Result<Option<Vec<u8>>> {
    take_up_to(open_for_reading(path)?, most)
}

/// Reads an open file that has at most `most` bytes; nothing where it has more, whatever it says of its size.
pub(crate) fn take_up_to(file: File, most: u64) -> io::Result<Option<Vec<u8>>> {
    let size = file.metadata()?.len();
    if size > most {
        return Ok(None);
    }
    let mut bytes = Vec::with_capacity(usize::try_from(size).unwrap_or(0));
    let read = file.take(most.saturating_add(1)).read_to_end(&mut bytes)?;
    Ok((read as u64 <= most).then_some(bytes))
}

/// Two that write the same file at a time would take each other's part away.
static ONE_AT_A_TIME: Mutex<()> = Mutex::new(());

/// Writes `bytes` to `path`: a file beside it, synced, renamed over it, the folder synced. What lies at `path`, a link
/// too, is replaced and not written to.
pub(crate) fn write_whole(doing: Doing, path: &Path, bytes: &[u8]) -> Result<(), StoreError> {
    let _turn = ONE_AT_A_TIME.lock().unwrap_or_else(PoisonError::into_inner);
    let part = path.with_added_extension(PART);
    match fs::remove_file(&part) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => return Err(file(doing, &part)(error)),
        _ => {}
    }
    if let Err(error) = create_new(&part).and_then(|out| fill(out, bytes)) {
        // The first error is the one to tell; a part that stays is swept later.
        let _ = fs::remove_file(&part);
        return Err(file(doing, &part)(error));
    }
    fs::rename(&part, path).map_err(file(doing, path))?;
    sync_parent(doing, path)
}

/// Writes a new file and syncs it.
pub(crate) fn fill(mut out: File, bytes: &[u8]) -> io::Result<()> {
    out.write_all(bytes)?;
    out.sync_all()
}

/// Makes the store's own folder and the ones above it, each synced into the folder above.
pub(crate) fn make_dir(doing: Doing, dir: &Path) -> Result<(), StoreError> {
    if dir.as_os_str().is_empty() || dir.is_dir() {
        return Ok(());
    }
    if let Some(parent) = dir.parent() {
        make_dir(doing, parent)?;
    }
    create_dir(doing, dir)
}

/// Makes the folders from the store's own, `root`, down to `dir`. None of them may be a link.
pub(crate) fn make_dir_in(doing: Doing, root: &Path, dir: &Path) -> Result<(), StoreError> {
    for folder in folders_below(root, dir) {
        match plain_folder(folder) {
            Err(error) if error.kind() == io::ErrorKind::NotFound => create_dir(doing, folder)?,
            found => found.map_err(file(doing, folder))?,
        }
    }
    Ok(())
}

/// Sees that no folder between the store's own, `root`, and `path` is a link.
pub(crate) fn no_links_to(root: &Path, path: &Path) -> io::Result<()> {
    path.parent().map_or(Ok(()), |dir| folders_below(root, dir).into_iter().try_for_each(plain_folder))
}

/// The folders below `root` on the way to `dir`, and `dir`, outermost first.
fn folders_below<'a>(root: &Path, dir: &'a Path) -> Vec<&'a Path> {
    let mut folders: Vec<&Path> = dir.ancestors().take_while(|folder| *folder != root).collect();
    folders.reverse();
    folders
}

/// Sees that a folder is one by itself.
pub(crate) fn plain_folder(path: &Path) -> io::Result<()> {
    let kind = fs::symlink_metadata(path)?.file_type();
    let other = || other_than_file(kind).unwrap_or(FileKind::File);
    if kind.is_dir() { Ok(()) } else { Err(io::Error::other(NotPlain(other()))) }
}

fn create_dir(doing: Doing, dir: &Path) -> Result<(), StoreError> {
    let mut builder = fs::DirBuilder::new();
    #[cfg(unix)]
    {
        use std::os::unix::fs::DirBuilderExt;
        builder.mode(0o700);
    }
    match builder.create(dir) {
        Err(error) if error.kind() != io::ErrorKind::AlreadyExists => Err(file(doing, dir)(error)),
        _ => sync_parent(doing, dir),
    }
}

/// Takes away a folder with all that is in it; there need not be one.
pub(crate) fn remove_dir(doing: Doing, dir: &Path) -> Result<(), StoreError> {
    match fs::remove_dir_all(dir) {
        Err(error) if error.kind() != std::io::ErrorKind::NotFound => Err(file(doing, dir)(error)),
        _ => Ok(()),
    }
}

/// Syncs the folder that holds `path`, so that its name survives a power cut.
pub(crate) fn sync_parent(doing: Doing, path: &Path) -> Result<(), StoreError> {
    let parent = path.parent().filter(|p| !p.as_os_str().is_empty()).unwrap_or(Path::new("."));
    sync_dir(parent).map_err(file(doing, parent))
}

#[cfg(unix)]
pub(crate) fn sync_dir(dir: &Path) -> io::Result<()> {
    File::open(dir)?.sync_all()
}

/// Other systems have no sync of a folder; NTFS journals its names by itself.
#[cfg(not(unix))]
pub(crate) fn sync_dir(_dir: &Path) -> io::Result<()> {
    Ok(())
}
