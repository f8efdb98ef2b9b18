//! Killed at any moment: no entry that was printed is lost, and going on writes none twice.

use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::Stdio;
use std::time::Duration;

use serde_json::Value;

use crate::support::{Desk, cli, program, script};

/// Moments of the kills, in milliseconds after the first line: multiples of a prime, so that they fall anywhere.
const KILLS: u64 = 12;

#[test]
fn a_walk_that_is_killed_again_and_again_comes_to_the_same_journal() {
    let whole = Desk::new();
    assert_eq!(whole.walk(&script("free-joint")).code, 0);
    let events = number_of_events(&whole.path("bay"));

    let desk = Desk::new();
    let mut printed = 0;
    for kill in 0..KILLS {
        printed += walk_and_kill(&desk, Duration::from_millis(kill * 37));
        let check = cli(&["store".as_ref(), "check".as_ref(), desk.path("bay").as_os_str()]);
        assert_eq!(check.code, 0, "after kill {kill}: {}{}", check.out, check.err);
        let there = number_of_events(&desk.path("bay"));
        assert!(there >= printed, "after kill {kill}: {printed} entries were printed, {there} are there");
    }
    let end = desk.walk(&script("free-joint"));
    assert_eq!(end.code, 0, "{}\n{}", end.out, end.err);
    assert_eq!(number_of_events(&desk.path("bay")), events, "an entry is missing or there twice");
}

/// Walks until it is killed, so long after its first entry; answers how many entries it printed.
fn walk_and_kill(desk: &Desk, after: Duration) -> u64 {
    let mut child = program()
        .arg("walk")
        .arg(script("free-joint"))
        .arg("--store")
        .arg(desk.path("bay"))
        .arg("--photo")
        .arg(desk.photo())
        .args(["--plain-proof", "--json"])
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let mut lines = BufReader::new(child.stdout.take().unwrap()).lines();
    let is_entry =
        |line: &str| serde_json::from_str::<Value>(line).is_ok_and(|line| line.get("event").is_some());
    let mut printed = 0;
    // Up to the first entry, so that a slow machine does not kill only starts.
    for line in lines.by_ref().map_while(Result::ok) {
        if is_entry(&line) {
            printed += 1;
            break;
        }
    }
    std::thread::sleep(after);
    child.kill().unwrap();
    child.wait().unwrap();
    printed + lines.map_while(Result::ok).filter(|line| is_entry(line)).count() as u64
}

fn number_of_events(store: &Path) -> u64 {
    let said = cli(&["store".as_ref(), "check".as_ref(), store.as_os_str(), "--json".as_ref()]);
    let report: Value = serde_json::from_str(&said.out).unwrap();
    report["events"].as_u64().unwrap()
}
