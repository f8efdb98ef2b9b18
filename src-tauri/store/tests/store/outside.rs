//! Files that a person names: what is none is refused by its kind, what is too large by its size, and nothing is
//! written by half.

use std::fs;
use std::os::unix::fs::symlink;
use std::os::unix::net::UnixListener;
use std::path::Path;
use std::process::Command;

use panside_store::{FileKind, StoreError, outside};
use tempfile::tempdir;

use crate::support::Outcome;

/// What reading and writing it said it is.
fn refused_as(path: &Path) -> Result<FileKind, String> {
    let what = |result: Result<(), StoreError>| match result {
        Err(StoreError::NotPlain { what, .. }) => Ok(what),
        other => Err(format!("{}: {other:?}", path.display())),
    };
    let read = what(outside::read(path, 100).map(drop))?;
    let written = what(outside::write(path, b"new"))?;
    if read == written { Ok(read) } else { Err(format!("{read:?} is not {written:?}")) }
}

#[test]
fn what_is_no_file_is_refused_at_once_and_never_opened() -> Outcome {
    let dir = tempdir()?;
    let pipe = dir.path().join("pipe");
    assert!(Command::new("mkfifo").arg(&pipe).status()?.success());
    // Nobody ever writes into the pipe: whoever opened it would wait for ever.
    assert_eq!(refused_as(&pipe)?, FileKind::Pipe);
    assert_eq!(refused_as(Path::new("/dev/zero"))?, FileKind::Device);
    assert_eq!(refused_as(dir.path())?, FileKind::Folder);
    let socket = dir.path().join("socket");
    let _listens = UnixListener::bind(&socket)?;
    assert_eq!(refused_as(&socket)?, FileKind::Socket);
    let link = dir.path().join("link");
    symlink(&pipe, &link)?;
    assert_eq!(refused_as(&link)?, FileKind::Pipe, "a link to one is no way round");
    Ok(())
}

#[test]
fn a_file_is_read_to_its_last_byte_and_one_byte_more_is_too_many() -> Outcome {
    let dir = tempdir()?;
    let path = dir.path().join("sheet.json");
    fs::write(&path, [b'x'; 100])?;
    assert_eq!(outside::read(&path, 100)?.len(), 100);
    assert!(matches!(outside::read(&path, 99), Err(StoreError::TooLarge { most: 99, .. })));
    let huge = fs::File::create(&path)?;
    huge.set_len(3 << 30)?;
    let refused = outside::read(&path, 4 << 20).unwrap_err();
    assert!(refused.to_string().contains("has more than 4 MiB"), "{refused}");
    // A file that says it has no bytes and has many, as the kernel's own files do.
    let endless = Path::new("/proc/self/maps");
    assert!(matches!(outside::read(endless, 10), Err(StoreError::TooLarge { most: 10, .. })));
    Ok(())
}

#[test]
fn a_link_to_a_file_is_read_and_written_and_stays_a_link() -> Outcome {
    let dir = tempdir()?;
    let (file, link) = (dir.path().join("record.json"), dir.path().join("newest.json"));
    fs::write(&file, b"old")?;
    symlink(&file, &link)?;
    assert_eq!(outside::read(&link, 3)?, b"old");
    outside::write(&link, b"new")?;
    assert_eq!(fs::read(&file)?, b"new");
    assert!(fs::symlink_metadata(&link)?.is_symlink());
    Ok(())
}

#[test]
fn a_file_is_written_with_its_folders_and_leaves_nothing_beside_it() -> Outcome {
    let dir = tempdir()?;
    let path = dir.path().join("deep/er/record.json");
    outside::write(&path, b"one")?;
    outside::write(&path, b"two")?;
    assert_eq!(fs::read(&path)?, b"two");
    assert_eq!(fs::read_dir(path.parent().ok_or("no folder")?)?.count(), 1);
    Ok(())
}

#[test]
fn what_cannot_be_written_is_told_with_the_systems_reason_and_leaves_the_old_file() -> Outcome {
    let dir = tempdir()?;
    let path = dir.path().join("record.json");
    fs::write(&path, b"old")?;
    let below_a_file = path.join("record.json");
    let refused = outside::write(&below_a_file, b"new").unwrap_err();
    assert!(refused.to_string().ends_with("The system says: not a directory."), "{refused}");
    assert!(matches!(outside::write_new(&path, b"new"), Err(StoreError::AlreadyThere { .. })));
    assert_eq!(fs::read(&path)?, b"old");
    outside::write_new(&dir.path().join("other.json"), b"new")?;
    assert_eq!(fs::read_dir(dir.path())?.count(), 2);
    Ok(())
}

#[test]
fn a_new_file_that_cannot_be_written_is_not_there() -> Outcome {
    let dir = tempdir()?;
    let nowhere = dir.path().join("not/there/small.checklist.json");
    assert!(matches!(outside::write_new(&nowhere, b"new"), Err(StoreError::CannotWrite { .. })));
    Ok(())
}
