//! What the program prints and writes: whole or said not to be, and nothing in it that steers a terminal.

use std::fs::{File, OpenOptions};
use std::process::{Command, Stdio};

use panside_bay::Bay;
use panside_bay::clock::SystemClock;
use serde_json::{Value, json};

use crate::support::{Desk, Said, checklist, cli, json as read_json, root, script};

/// A store with one job that was walked for some lines, and the job's id.
fn store(desk: &Desk, change: impl FnOnce(&mut Value)) -> String {
    let mut walk = read_json(&script("demo"));
    walk["checklist"] = json!(checklist());
    walk["sheet"] = json!(root().join("checklists/sheets/demo-six-speed.sheet.json"));
    change(&mut walk);
    let path = desk.write("some.walk.json", serde_json::to_vec(&walk).unwrap());
    let walked = cli(&[
        "walk".as_ref(),
        path.as_os_str(),
        "--store".as_ref(),
        desk.path("bay").as_os_str(),
        "--photo".as_ref(),
        desk.photo().as_os_str(),
        "--plain-proof".as_ref(),
        "--lines".as_ref(),
        "2".as_ref(),
    ]);
    assert_eq!(walked.code, 0, "{}", walked.err);
    clean(&walked.out);
    let bay = Bay::open_read_only(&desk.path("bay"), Box::new(SystemClock::new())).unwrap();
    bay.jobs().unwrap()[0].job.to_string()
}

/// Says that no character in it steers or hides.
fn clean(said: &str) {
    let steers = |c: char| {
        (c.is_control() && c != '\n')
            || matches!(c, '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{feff}')
    };
    assert_eq!(said.chars().find(|c| steers(*c)), None, "{said}");
}

fn record(desk: &Desk, job: &str, more: &[&str]) -> Said {
    let store = desk.path("bay");
    let given = ["record", job, "--store", store.to_str().unwrap()];
    cli(&[&given[..], more].concat())
}

#[test]
fn labels_and_repair_orders_cannot_steer_the_terminal_they_are_printed_to() {
    let desk = Desk::new();
    let evil = "RO\u{1b}[2J\u{9b}31m\u{202e}1042\u{200b}\u{2066}\n     9  done";
    let job = store(&desk, |walk| {
        walk["repair_order"] = json!(evil);
        walk["label"] = json!(evil);
    });
    let store = desk.path("bay");
    let store = store.to_str().unwrap();
    let listed = cli(&["jobs", "--store", store]);
    clean(&listed.out);
    assert_eq!(listed.out.lines().count(), 1, "no label is a line of its own: {}", listed.out);
    for said in [
        cli(&["jobs", "--store", store, "--json"]),
        record(&desk, &job, &[]),
        record(&desk, &job, &["--json"]),
    ] {
        assert_eq!(said.code, 0, "{}", said.err);
        clean(&said.out);
    }
    let listed: Value = serde_json::from_str(&cli(&["jobs", "--store", store, "--json"]).out).unwrap();
    assert_eq!(listed[0]["label"], json!(evil), "what is data means the same");
    let wrong = cli(&["record", evil, "--store", store]);
    wrong.refuses(64, "is no job id");
    clean(&wrong.err);
    clean(&cli(&[evil]).err);
}

#[test]
fn a_name_that_would_steer_a_terminal_is_refused() {
    let desk = Desk::new();
    let mut walk = read_json(&script("demo"));
    walk["checklist"] = json!(checklist());
    walk["sheet"] = json!(root().join("checklists/sheets/demo-six-speed.sheet.json"));
    walk["people"]["tech"]["name"] = json!("R. Ode\u{1b}]0;x\u{7}\u{202e}");
    let said = desk.walk(&desk.write("some.walk.json", serde_json::to_vec(&walk).unwrap()));
    said.refuses(1, "a control character");
    clean(&said.err);
}

#[cfg(target_os = "linux")]
fn printed_to(out: Stdio, arguments: &[&str]) -> (Option<i32>, String) {
    let mut program = Command::new(env!("CARGO_BIN_EXE_panside-cli"));
    let output = program.args(arguments).stdout(out).output().unwrap();
    (output.status.code(), String::from_utf8_lossy(&output.stderr).into_owned())
}

#[cfg(target_os = "linux")]
#[test]
fn what_cannot_be_printed_is_told_and_ends_with_the_disks_code() {
    let desk = Desk::new();
    let job = store(&desk, |_| {});
    let store = desk.path("bay");
    let store = store.to_str().unwrap();
    let calls: [&[&str]; 5] = [
        &["record", &job, "--store", store],
        &["record", &job, "--store", store, "--json"],
        &["jobs", "--store", store],
        &["figure"],
        &["--help"],
    ];
    for arguments in calls {
        let full = OpenOptions::new().write(true).open("/dev/full").unwrap();
        let (code, said) = printed_to(full.into(), arguments);
        assert_eq!(code, Some(4), "{arguments:?}: {said}");
        assert!(said.contains("No space left on device"), "{arguments:?}: {said}");
    }
}

#[cfg(target_os = "linux")]
#[test]
fn a_reader_that_goes_away_is_no_failure() {
    let (reader, writer) = std::io::pipe().unwrap();
    drop(reader);
    assert_eq!(printed_to(writer.into(), &["figure"]), (Some(0), String::new()));
}

/// Runs the program where no file may grow beyond 32 KiB, as much as SQLite wants beside a database that is read: writing
/// more fails as on a full disk. A shell counts in 512 bytes (POSIX, ulimit).
#[cfg(target_os = "linux")]
fn with_little_room(arguments: &[&str]) -> Said {
    let mut shell = Command::new("sh");
    shell.args(["-c", "trap '' XFSZ; ulimit -f 64; exec \"$@\"", "sh", env!("CARGO_BIN_EXE_panside-cli")]);
    Said::of(&shell.args(arguments).output().unwrap())
}

#[cfg(target_os = "linux")]
#[test]
fn a_file_that_does_not_fit_is_told_and_leaves_the_one_before_it() {
    let desk = Desk::new();
    let job = store(&desk, |_| {});
    let store = desk.path("bay");
    let out = desk.path("out");
    std::fs::create_dir(&out).unwrap();
    for ending in ["json", "pdf"] {
        let file = out.join(format!("record.{ending}"));
        std::fs::write(&file, b"the one before").unwrap();
        let said = with_little_room(&[
            "record",
            &job,
            "--store",
            store.to_str().unwrap(),
            "--out",
            file.to_str().unwrap(),
        ]);
        said.refuses(4, "cannot be written; nothing was changed there");
        said.refuses(4, "The system says: File too large.");
        assert_eq!(std::fs::read(&file).unwrap(), b"the one before");
    }
    with_little_room(&["schema", "--out", out.to_str().unwrap()]).refuses(4, "File too large");
    assert_eq!(std::fs::read_dir(&out).unwrap().count(), 2, "no half file is left");
}

#[cfg(target_os = "linux")]
#[test]
fn a_record_is_not_written_into_a_device_or_a_pipe() {
    let desk = Desk::new();
    let job = store(&desk, |_| {});
    let out = desk.path("record.json");
    std::os::unix::fs::symlink("/dev/full", &out).unwrap();
    record(&desk, &job, &["--out", out.to_str().unwrap()]).refuses(4, "is a device, so it is not used");
    assert!(File::open("/dev/full").is_ok());
}
