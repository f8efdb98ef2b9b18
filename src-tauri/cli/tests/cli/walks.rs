//! The demo jobs, walked from the concern to the record.

use std::collections::BTreeSet;

use serde_json::{Value, json};

use crate::support::{Desk, cli, json as read_json, program, root, script};

#[test]
fn the_demo_job_goes_the_seized_way_and_ends_finished_with_nothing_left() {
    let desk = Desk::with_large_photo();
    let said = desk.walk(&script("demo"));
    assert_eq!(said.code, 0, "{}\n{}", said.out, said.err);
    assert!(said.out.contains("the job is finished"));
    let refused = said.out.lines().filter(|line| line.contains("refused, as expected")).count();
    assert!(refused >= 10, "only {refused} wrong orders were tried");
    let record = desk.record();
    assert_eq!(record["format"], "panside-record/1");
    assert_eq!(record["demo"], "demo values, not for a vehicle");
    let text = record.to_string();
    assert!(text.contains("seized"), "the joint was seized");
    assert_eq!(record["missing"], json!([]), "a finished job lacks nothing");

    let check = cli(&["store".as_ref(), "check".as_ref(), desk.path("bay").as_os_str()]);
    assert_eq!(check.code, 0, "{}", check.out);
    let jobs = cli(&["jobs".as_ref(), "--store".as_ref(), desk.path("bay").as_os_str(), "--json".as_ref()]);
    let jobs: Value = serde_json::from_str(&jobs.out).unwrap();
    let job = jobs[0]["job"].as_str().unwrap().to_owned();
    let rebuild = cli(&["store".as_ref(), "rebuild".as_ref(), desk.path("bay").as_os_str()]);
    assert_eq!(rebuild.code, 0, "{}", rebuild.err);
    let printed = cli(&["record".as_ref(), job.as_ref(), "--store".as_ref(), desk.path("bay").as_os_str()]);
    assert_eq!(printed.code, 0, "{}", printed.err);
    assert!(printed.out.contains("demo values, not for a vehicle"));
}

#[test]
fn every_other_demo_walk_goes_through_to_its_end() {
    for name in names("demo", ".walk.json").iter().filter(|name| *name != "demo") {
        let desk = Desk::new();
        let said = desk.walk(&script(name));
        assert_eq!(said.code, 0, "{name}: {}\n{}", said.out, said.err);
        let ended = said.out.contains("the job is finished") || said.out.contains("the job is stopped");
        assert!(ended, "{name} stops half way");
    }
}

#[test]
fn every_checklist_is_walked_and_every_part_is_used() {
    let walked: BTreeSet<String> = names("demo", ".walk.json")
        .iter()
        .map(|name| read_json(&script(name))["checklist"].as_str().unwrap().to_owned())
        .collect();
    let mut used = String::new();
    for name in names("", ".checklist.json") {
        let file = format!("{name}.checklist.json");
        assert!(walked.contains(&format!("../{file}")), "no script walks {name}");
        used += &std::fs::read_to_string(root().join("checklists").join(file)).unwrap();
    }
    for part in names("parts", ".part.json") {
        assert!(used.contains(&format!("\"use\": \"{part}\"")), "no checklist uses {part}");
    }
}

/// The names of the files in a folder of the checklists, without their ending.
pub fn names(folder: &str, ending: &str) -> Vec<String> {
    let files = std::fs::read_dir(root().join("checklists").join(folder)).unwrap();
    let names = files.map(|file| file.unwrap().file_name().into_string().unwrap());
    let names: Vec<String> = names.filter_map(|name| name.strip_suffix(ending).map(str::to_owned)).collect();
    assert!(!names.is_empty(), "nothing in {folder} ends in {ending}");
    names
}

#[test]
fn a_wrong_order_stops_the_walk_with_its_reason() {
    let desk = Desk::new();
    let mut walk = read_json(&script("demo"));
    let demo = script("demo");
    let folder = demo.parent().unwrap();
    for file in ["checklist", "sheet"] {
        walk[file] = json!(folder.join(walk[file].as_str().unwrap()));
    }
    let expected =
        walk["lines"].as_array_mut().unwrap().iter_mut().find(|line| line.get("refused").is_some()).unwrap();
    expected.as_object_mut().unwrap().remove("refused");
    let path = desk.write("wrong.walk.json", serde_json::to_vec(&walk).unwrap());
    let said = desk.walk(&path);
    said.refuses(1, "is refused");
    assert!(!desk.path("record.json").exists(), "a walk that stops writes no record");
    let check = cli(&["store".as_ref(), "check".as_ref(), desk.path("bay").as_os_str()]);
    assert_eq!(check.code, 0, "what was entered before stays whole: {}", check.out);
}

#[test]
fn a_reader_that_goes_away_does_not_end_the_walk() {
    let desk = Desk::new();
    let mut child = program()
        .arg("walk")
        .arg(script("level-high"))
        .arg("--store")
        .arg(desk.path("bay"))
        .arg("--photo")
        .arg(desk.photo())
        .arg("--plain-proof")
        .stdout(std::process::Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    assert_eq!(child.wait().unwrap().code(), Some(0));
    let jobs = cli(&["jobs".as_ref(), "--store".as_ref(), desk.path("bay").as_os_str()]);
    assert!(jobs.out.contains("ended"), "{}", jobs.out);
}
