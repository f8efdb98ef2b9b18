//! What a person reads when the disk or the database fails.

use std::io;
use std::path::Path;

use super::*;

fn of_system(number: i32) -> StoreError {
    file(Doing::KeepingPhoto, Path::new("/bay/photos"))(io::Error::from_raw_os_error(number))
}

fn of_sqlite(code: i32, said: &str) -> StoreError {
    let failure = rusqlite::ffi::Error::new(code);
    sql(Doing::WritingEntry)(rusqlite::Error::SqliteFailure(failure, Some(said.to_owned())))
}

fn unconfirmed(source: StoreError) -> String {
    StoreError::Unconfirmed { doing: Doing::WritingEntry, source: Box::new(source) }.to_string()
}

#[cfg(target_os = "linux")]
#[test]
fn what_the_system_said_stands_behind_what_to_do() {
    let expected = [
        (libc::EACCES, "Permission denied"),
        (libc::EROFS, "Read-only file system"),
        (libc::EIO, "Input/output error"),
    ];
    for (number, words) in expected {
        let ending = format!("The system says: {words}.");
        assert_eq!(
            of_system(number).to_string(),
            format!(
                "The path /bay/photos could not be used while keeping a photo. Check the disk and its permissions. {ending}"
            )
        );
        assert!(unconfirmed(of_system(number)).ends_with(&ending));
    }
}

#[cfg(target_os = "linux")]
#[test]
fn a_full_disk_is_said_once() {
    let full = of_system(libc::ENOSPC);
    assert!(!full.to_string().contains("The system says"), "the sentence says it already");
    assert!(full.to_string().starts_with("The disk is full"));
    assert!(unconfirmed(full).ends_with("The system says: no space left on the disk."));
}

#[test]
fn what_the_database_said_is_told_too() {
    let ending = "The system says: attempt to write a readonly database.";
    let readonly = || of_sqlite(rusqlite::ffi::SQLITE_READONLY, "attempt to write a readonly database");
    assert!(readonly().to_string().ends_with(ending), "{}", readonly());
    assert!(unconfirmed(readonly()).ends_with(ending));
    let full = of_sqlite(rusqlite::ffi::SQLITE_FULL, "database or disk is full");
    assert!(unconfirmed(full).ends_with("The system says: no space left on the disk."));
}
