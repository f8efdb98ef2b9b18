//! Backed up, restored, gone on with, salvaged: from the command line, with what it says.

use std::ffi::OsStr;
use std::path::{Path, PathBuf};

use crate::support::{Desk, Said, cli, script};

fn store(words: &[&str], paths: &[&Path]) -> Said {
    // Words and paths in turn: `backup PATH --to PATH`.
    let mut arguments: Vec<&OsStr> = vec!["store".as_ref()];
    for at in 0..words.len().max(paths.len()) {
        arguments.extend(words.get(at).map(OsStr::new));
        arguments.extend(paths.get(at).map(|path| path.as_os_str()));
    }
    cli(&arguments)
}

/// A store with the first lines of a demo job, and an empty folder for backups.
fn shop() -> (Desk, PathBuf, PathBuf) {
    let desk = Desk::new();
    let (bay, backups) = (desk.path("bay"), desk.path("backups"));
    std::fs::create_dir(&backups).unwrap();
    walk(&desk, 6);
    (desk, bay, backups)
}

fn walk(desk: &Desk, lines: u32) {
    let (lines, script) = (lines.to_string(), script("level-high"));
    let said = cli(&[
        "walk".as_ref(),
        script.as_os_str(),
        "--store".as_ref(),
        desk.path("bay").as_os_str(),
        "--photo".as_ref(),
        desk.photo().as_os_str(),
        "--plain-proof".as_ref(),
        "--no-text".as_ref(),
        "--lines".as_ref(),
        lines.as_ref(),
    ]);
    assert_eq!(said.code, 0, "{}{}", said.out, said.err);
}

fn backup_in(folder: &Path) -> PathBuf {
    let entries = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    entries.filter(|path| path.join("manifest.json").exists()).max().unwrap()
}

/// Flips a bit in every copy of the newest entry's hash, in the database and in its log.
fn damage_newest(dir: &Path) {
    let check = store(&["check"], &[dir]);
    let newest = check.out.split("Newest event: ").nth(1).unwrap();
    let hash = newest.split('(').nth(1).unwrap().split(')').next().unwrap();
    let hash: Vec<u8> =
        (0..32).map(|at| u8::from_str_radix(&hash[2 * at..2 * at + 2], 16).unwrap()).collect();
    for name in ["journal.db", "journal.db-wal"] {
        let Ok(mut bytes) = std::fs::read(dir.join(name)) else { continue };
        for at in 0..bytes.len() {
            if bytes[at..].starts_with(&hash) {
                bytes[at] ^= 1;
            }
        }
        std::fs::write(dir.join(name), bytes).unwrap();
    }
}

fn copy(from: &Path, to: &Path) {
    std::fs::create_dir_all(to).unwrap();
    for name in ["journal.db", "journal.db-wal", "journal.head"] {
        let _ = std::fs::remove_file(to.join(name));
        if from.join(name).exists() {
            std::fs::copy(from.join(name), to.join(name)).unwrap();
        }
    }
}

#[test]
fn a_backup_is_made_listed_and_restored_and_says_what_it_lacks() {
    let (desk, bay, backups) = shop();
    let made = store(&["backup", "--to"], &[&bay, &backups]);
    assert_eq!(made.code, 0, "{}{}", made.out, made.err);
    assert!(made.out.starts_with("Backed up and verified: "), "{}", made.out);
    let backup = backup_in(&backups);
    let dir = [bay.as_os_str(), "--to".as_ref(), backups.as_os_str()];
    let planned =
        cli(&[&["store".as_ref(), "backup".as_ref()], &dir[..], &["--every".as_ref(), "24".as_ref()]]
            .concat());
    assert_eq!(planned.code, 0, "{}{}", planned.out, planned.err);
    let list = store(&["backups"], &[&backups]);
    assert_eq!(list.code, 0, "{}{}", list.out, list.err);
    assert!(list.out.contains("minutes ago") && list.out.contains("    verified"), "{}", list.out);
    walk(&desk, 9);
    let back = store(&["restore", "--into"], &[&backup, &bay]);
    assert_eq!(back.code, 0, "{}{}", back.out, back.err);
    assert!(back.out.contains("lacks the newest"), "{}", back.out);
    assert!(back.out.contains("can be read there"), "{}", back.out);
    assert!(back.out.contains("bay.before-"), "{}", back.out);
    let check = store(&["check"], &[&bay]);
    assert_eq!(check.code, 0, "{}{}", check.out, check.err);
    // The restored store is the one that counts, and goes on.
    walk(&desk, 9);
}

#[test]
fn a_backup_that_went_bad_is_listed_as_such_and_not_restored() {
    let (desk, bay, backups) = shop();
    assert_eq!(store(&["backup", "--to"], &[&bay, &backups]).code, 0);
    let backup = backup_in(&backups);
    damage_newest(&backup);
    let list = store(&["backups"], &[&backups]);
    assert_eq!(list.code, 1);
    assert!(list.out.contains("NOT A GOOD BACKUP"), "{}", list.out);
    store(&["restore", "--into"], &[&backup, &desk.path("anew")]).refuses(4, "does not hold");
    store(&["backup", "--to"], &[&bay, &desk.path("no-stick")]).refuses(4, "is not there. Plug in its disk");
}

#[test]
fn a_folder_that_was_set_back_takes_nothing_until_it_is_gone_on_with() {
    let (desk, bay, _) = shop();
    let old = desk.path("old");
    copy(&bay, &old);
    walk(&desk, 9);
    copy(&old, &bay);
    store(&["rebuild"], &[&bay]).refuses(4, "This folder is in an earlier state");
    let on =
        cli(&["store".as_ref(), "go-on".as_ref(), bay.as_os_str(), "--why".as_ref(), OsStr::new("it was I")]);
    assert_eq!(on.code, 0, "{}{}", on.out, on.err);
    assert!(on.out.contains("Was: This folder is in an earlier state"), "{}", on.out);
    assert_eq!(store(&["rebuild"], &[&bay]).code, 0);
}

#[test]
fn what_holds_of_a_damaged_store_is_saved_and_the_rest_is_listed() {
    let (desk, bay, _) = shop();
    damage_newest(&bay);
    let saved = desk.path("saved");
    let said = store(&["salvage", "--into"], &[&bay, &saved]);
    assert_eq!(said.code, 1, "{}{}", said.out, said.err);
    assert!(said.out.contains("Not saved:") && said.out.contains("The head file confirms "), "{}", said.out);
    assert_eq!(std::fs::read_to_string(saved.join("salvage.txt")).unwrap(), said.out);
    let check = store(&["check"], &[&saved]);
    assert_eq!(check.code, 0, "{}{}", check.out, check.err);
    let jobs = cli(&["jobs".as_ref(), "--store".as_ref(), saved.as_os_str()]);
    assert_eq!((jobs.code, jobs.out.lines().count()), (0, 1), "{}{}", jobs.out, jobs.err);
}
