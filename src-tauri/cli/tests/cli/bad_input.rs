//! What must not be taken: a sentence that says what, where and what to do; no crash; nothing half written.

use std::path::{Path, PathBuf};

use panside_bay::Bay;
use panside_bay::clock::SystemClock;
use serde_json::{Value, json};

use crate::support::{Desk, checklist, cli, joined, json as read_json, root, script};

fn prove(path: &Path) -> crate::support::Said {
    cli(&["prove".as_ref(), path.as_os_str(), "--no-void".as_ref(), "--no-observe".as_ref()])
}

/// The demo checklist with one change.
fn changed(desk: &Desk, change: impl FnOnce(&mut Value)) -> PathBuf {
    let mut value = joined();
    change(&mut value);
    desk.write("changed.checklist.json", serde_json::to_vec_pretty(&value).unwrap())
}

#[test]
fn a_file_that_is_not_there_is_named() {
    prove(Path::new("/nowhere/at-all.json")).refuses(3, "/nowhere/at-all.json cannot be read");
}

/// What is no file, or too large a one, with what is said of it.
#[cfg(unix)]
fn no_inputs(desk: &Desk) -> Vec<(PathBuf, &'static str)> {
    let large = desk.path("large");
    std::fs::File::create(&large).unwrap().set_len(3 << 30).unwrap();
    let pipe = desk.path("pipe");
    assert!(std::process::Command::new("mkfifo").arg(&pipe).status().unwrap().success());
    vec![
        (large, "has more than"),
        (pipe, "is a pipe, so it is not used"),
        (desk.dir.path().to_owned(), "is a folder, so it is not used"),
        (PathBuf::from("/dev/zero"), "is a device, so it is not used"),
    ]
}

#[cfg(unix)]
#[test]
fn whatever_is_no_file_of_a_possible_size_is_refused_at_once_in_every_place() {
    let desk = Desk::new();
    for (path, said) in no_inputs(&desk) {
        for command in ["prove", "join", "plan"] {
            cli(&[command.as_ref(), path.as_os_str()]).refuses(3, said);
        }
        let checklist = checklist();
        cli(&["prove".as_ref(), checklist.as_os_str(), "--sheet".as_ref(), path.as_os_str()])
            .refuses(3, said);
        let figure = ["figure", "level", "temp=46C", "reading=31mm", "--sheet"].map(std::ffi::OsStr::new);
        cli(&[&figure[..], &[path.as_os_str()]].concat()).refuses(3, said);
        desk.walk(&path).refuses(3, said);
        let store = desk.path("bay");
        let of_store = |command: &str| cli(&[command.as_ref(), "--store".as_ref(), path.as_os_str()]);
        if path != desk.dir.path() {
            assert_eq!(of_store("jobs").code, 4, "{}", path.display());
        }
        assert!(!store.exists(), "nothing was begun");
    }
}

#[cfg(unix)]
#[test]
fn a_part_that_is_no_file_is_told_by_itself() {
    let desk = Desk::new();
    let path = desk.write("here.checklist.json", std::fs::read(checklist()).unwrap());
    let part = desk.path("parts/lift.part.json");
    std::fs::create_dir(desk.path("parts")).unwrap();
    for (other, said) in no_inputs(&desk) {
        std::os::unix::fs::symlink(other, &part).unwrap();
        prove(&path).refuses(3, &format!("parts/lift.part.json {said}"));
        std::fs::remove_file(&part).unwrap();
    }
}

#[cfg(unix)]
#[test]
fn a_photo_that_is_no_file_is_refused_and_the_journal_goes_on() {
    let desk = Desk::new();
    let script = demo_walk(&desk);
    for (path, said) in no_inputs(&desk) {
        let walked = cli(&[
            "walk".as_ref(),
            script.as_os_str(),
            "--store".as_ref(),
            desk.path("bay").as_os_str(),
            "--photo".as_ref(),
            path.as_os_str(),
            "--plain-proof".as_ref(),
        ]);
        walked.refuses(3, said);
    }
    assert_eq!(cli(&["store".as_ref(), "check".as_ref(), desk.path("bay").as_os_str()]).code, 0);
}

#[test]
fn a_script_with_a_reason_that_nobody_types_is_refused_with_the_limit() {
    let desk = Desk::new();
    let path = demo_walk(&desk);
    let mut walk = read_json(&path);
    walk["lines"] = json!([{"who": "tech", "do": {"stop": {"reason": "x".repeat(4_001)}}}]);
    desk.write("photo.walk.json", serde_json::to_vec(&walk).unwrap());
    desk.walk(&path).refuses(1, "4000 characters at most");
    walk["repair_order"] = json!("9".repeat(201));
    desk.write("photo.walk.json", serde_json::to_vec(&walk).unwrap());
    desk.walk(&path).refuses(1, "200 characters at most");
}

/// The demo walk in a desk's own folder.
fn demo_walk(desk: &Desk) -> PathBuf {
    let mut walk = read_json(&script("demo"));
    walk["checklist"] = json!(checklist());
    walk["sheet"] = json!(root().join("checklists/sheets/demo-six-speed.sheet.json"));
    desk.write("photo.walk.json", serde_json::to_vec(&walk).unwrap())
}

#[test]
fn an_unknown_field_is_told_with_its_line_and_the_name_that_was_meant() {
    let desk = Desk::new();
    let path = changed(&desk, |value| value["vehicle_actions"][0]["need"] = json!("true"));
    let said = prove(&path);
    said.refuses(3, "/vehicle_actions/0/need");
    said.refuses(3, "perhaps \"needs\" is meant");
}

#[test]
fn a_mistake_in_a_part_is_told_in_its_file() {
    let desk = Desk::new();
    std::fs::create_dir(desk.path("parts")).unwrap();
    for entry in std::fs::read_dir(root().join("checklists/parts")).unwrap() {
        let path = entry.unwrap().path();
        let text = std::fs::read_to_string(&path).unwrap();
        let text = text.replace("\"needs\": \"lift = raised\"", "\"needs\": \"lift = flying\"");
        desk.write(&format!("parts/{}", path.file_name().unwrap().display()), text);
    }
    let path = desk.write("here.checklist.json", std::fs::read(checklist()).unwrap());
    let text = std::fs::read_to_string(desk.path("parts/lift.part.json")).unwrap();
    let line = text.lines().position(|line| line.contains("flying")).unwrap() + 1;
    prove(&path).refuses(3, &format!("parts/lift.part.json, line {line}, column"));
    prove(&path).refuses(3, "\"flying\" is no value of lift");
    std::fs::remove_dir_all(desk.path("parts")).unwrap();
    prove(&path).refuses(3, "there is no part \"lift\"; it would be the file parts/lift.part.json");
}

#[test]
fn a_class_that_is_left_out_is_told() {
    let desk = Desk::new();
    let path = changed(&desk, |value| {
        let steps = value["phases"].as_array_mut().unwrap().iter_mut();
        let mut entries = steps.flat_map(|phase| phase["steps"].as_array_mut().unwrap()).flat_map(|step| {
            step.get_mut("entries")
                .and_then(Value::as_array_mut)
                .map(|list| list.iter_mut())
                .into_iter()
                .flatten()
        });
        let level = entries.find(|entry| entry["ask"].get("level").is_some()).unwrap();
        level["classes"].as_object_mut().unwrap().remove("above");
    });
    prove(&path).refuses(3, "a level can come out as \"above\"");
}

#[test]
fn not_over_what_may_be_unknown_is_refused_with_the_way_out() {
    let desk = Desk::new();
    let path = changed(&desk, |value| value["done_when"] = json!("level != low"));
    prove(&path).refuses(3, "write \"known(level) and");
}

#[test]
fn steps_that_wait_for_each_other_are_named() {
    let desk = Desk::new();
    let path = changed(&desk, |value| {
        let steps = value["phases"][0]["steps"].as_array_mut().unwrap();
        let (first, second) = (steps[0]["id"].clone(), steps[1]["id"].clone());
        steps[0]["after"] = json!([second]);
        steps[1]["after"] = json!([first]);
    });
    prove(&path).refuses(3, "these steps wait for each other");
}

#[test]
fn a_sheet_without_a_source_and_one_that_lacks_a_value_are_refused() {
    let desk = Desk::new();
    let sheet = root().join("checklists/sheets/demo-six-speed.sheet.json");
    let with = |name: &str, change: &dyn Fn(&mut Value)| {
        let mut value = read_json(&sheet);
        change(&mut value);
        let path = desk.write(name, serde_json::to_vec_pretty(&value).unwrap());
        cli(&["prove".as_ref(), checklist().as_os_str(), "--sheet".as_ref(), path.as_os_str()])
    };
    let key = read_json(&sheet)["values"].as_object().unwrap().keys().next().unwrap().clone();
    with("bare.sheet.json", &|value| {
        value["values"][&key].as_object_mut().unwrap().remove("source");
    })
    .refuses(3, "\"source\" is missing; add it");
    with("empty.sheet.json", &|value| value["values"][&key]["source"] = json!(" "))
        .refuses(3, "say where the value");
    with("short.sheet.json", &|value| value["values"] = json!({})).refuses(3, "add it as a");
}

#[test]
fn a_wrong_unit_on_the_sheet_stops_a_job_before_it_starts() {
    let desk = Desk::new();
    let mut sheet = read_json(&root().join("checklists/sheets/demo-six-speed.sheet.json"));
    for value in sheet["values"].as_object_mut().unwrap().values_mut() {
        if let Some(measure) = value["is"].get_mut("measure").filter(|measure| measure["unit"] == "°C") {
            measure["unit"] = json!("V");
        }
    }
    desk.write("volts.sheet.json", serde_json::to_vec(&sheet).unwrap());
    let mut walk = read_json(&script("demo"));
    walk["checklist"] = json!(checklist());
    walk["sheet"] = json!("volts.sheet.json");
    let path = desk.write("volts.walk.json", serde_json::to_vec(&walk).unwrap());
    desk.walk(&path).refuses(3, "does not fit the checklist");
    let jobs = cli(&["jobs".as_ref(), "--store".as_ref(), desk.path("bay").as_os_str()]);
    assert_eq!((jobs.code, jobs.out.as_str()), (0, ""), "no job was started");
}

#[test]
fn a_script_with_a_wrong_line_says_which() {
    let desk = Desk::new();
    let mut walk = read_json(&script("demo"));
    walk["checklist"] = json!(checklist());
    walk["sheet"] = json!(root().join("checklists/sheets/demo-six-speed.sheet.json"));
    walk["lines"] = json!([{"who": "tech", "do": {"dance": {}}}]);
    let path = desk.write("dance.walk.json", serde_json::to_vec(&walk).unwrap());
    desk.walk(&path).refuses(3, "line 1");
    let signature = json!({"sign": "people_clear", "by": "R. Ode", "role": "technician"});
    walk["lines"] = json!([{"who": "tech", "do": {"sign": {"signature": signature}}}]);
    let path = desk.write("name.walk.json", serde_json::to_vec(&walk).unwrap());
    desk.walk(&path).refuses(3, "line 1: nobody in \"people\" is called \"R. Ode\"");
}

#[test]
fn a_photo_that_is_none_is_refused_and_nothing_is_left_behind() {
    let desk = Desk::new();
    let photos =
        [("empty.jpg", Vec::new()), ("text.jpg", b"no photo".to_vec()), ("cut.jpg", cut_photo(&desk))];
    for (name, bytes) in photos {
        let path = demo_walk(&desk);
        let photo = desk.write(name, bytes);
        let store = desk.path(&format!("bay-{name}"));
        let said = cli(&[
            "walk".as_ref(),
            path.as_os_str(),
            "--store".as_ref(),
            store.as_os_str(),
            "--photo".as_ref(),
            photo.as_os_str(),
            "--plain-proof".as_ref(),
        ]);
        said.refuses(1, "Take the photo again");
        assert!(
            !store.join("photos").exists() || files_below(&store.join("photos")) == 0,
            "{name} left a file"
        );
        assert_eq!(cli(&["store".as_ref(), "check".as_ref(), store.as_os_str()]).code, 0);
    }
}

fn cut_photo(desk: &Desk) -> Vec<u8> {
    let whole = std::fs::read(desk.photo()).unwrap();
    whole[..whole.len() / 2].to_vec()
}

fn files_below(dir: &Path) -> usize {
    let entries = std::fs::read_dir(dir).unwrap().map(|entry| entry.unwrap().path());
    entries.map(|path| if path.is_dir() { files_below(&path) } else { 1 }).sum()
}

#[test]
fn a_store_of_a_newer_format_is_refused_and_not_touched() {
    let desk = Desk::new();
    let dir = desk.path("bay");
    Bay::open(&dir, Box::new(SystemClock::new())).unwrap().close().unwrap();
    let database = std::fs::read_dir(&dir)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .find(|path| std::fs::read(path).is_ok_and(|bytes| bytes.starts_with(b"SQLite format 3")))
        .unwrap();
    let conn = rusqlite::Connection::open(&database).unwrap();
    conn.execute_batch(
        "UPDATE meta SET min_reader = 999; PRAGMA user_version = 999; PRAGMA wal_checkpoint(TRUNCATE)",
    )
    .unwrap();
    drop(conn);
    let before = std::fs::read(&database).unwrap();
    let said = cli(&["store".as_ref(), "rebuild".as_ref(), dir.as_os_str()]);
    said.refuses(4, "newer");
    assert_eq!(std::fs::read(&database).unwrap(), before);
}

#[test]
fn a_store_that_another_process_writes_is_refused() {
    let desk = Desk::new();
    let dir = desk.path("bay");
    let _open = Bay::open(&dir, Box::new(SystemClock::new())).unwrap();
    cli(&["store".as_ref(), "rebuild".as_ref(), dir.as_os_str()]).refuses(4, "another");
}

#[test]
fn a_folder_that_is_no_store_is_refused() {
    let desk = Desk::new();
    cli(&["store".as_ref(), "check".as_ref(), desk.path("nothing").as_os_str()]).refuses(4, "store");
    cli(&["record", "no-id", "--store", "/nowhere"]).refuses(64, "is no job id");
}

#[test]
fn wrong_usage_has_an_exit_code_of_its_own_and_help_has_none() {
    assert_eq!(cli(&["walk"]).code, 64);
    let help = cli(&["prove", "--help"]);
    assert_eq!(help.code, 0);
    assert!(help.out.contains("shortest order"), "help teaches what the command is for: {}", help.out);
}
