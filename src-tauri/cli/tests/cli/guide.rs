//! What the guide to writing checklists says: each checklist in it is proved as it stands there, and comes out as the
//! page shows; a new one is proved before anything is changed in it.

use std::path::Path;

use serde_json::Value;

use crate::support::{Desk, Said, cli, root};

/// A fenced block of a page: its language and its lines.
fn blocks(page: &str) -> Vec<(&str, String)> {
    let mut found = Vec::new();
    let mut lines = page.lines();
    while let Some(line) = lines.next() {
        if let Some(language) = line.strip_prefix("```") {
            let block: Vec<&str> = lines.by_ref().take_while(|line| *line != "```").collect();
            found.push((language, block.join("\n") + "\n"));
        }
    }
    found
}

fn prove(path: &Path) -> Said {
    cli(&["prove".as_ref(), path.as_os_str()])
}

/// Every line of `shown` was said, in that order.
fn said_in_order(said: &str, shown: &str) {
    let mut lines = said.lines();
    for line in shown.lines() {
        assert!(lines.any(|found| found == line), "\"{line}\" is not said, or not there, in:\n{said}");
    }
}

#[test]
fn every_checklist_of_the_guide_comes_out_as_the_guide_shows() {
    let page = std::fs::read_to_string(root().join("checklists/README.md")).unwrap();
    let desk = Desk::new();
    std::fs::create_dir(desk.path("parts")).unwrap();
    let mut last = None;
    let mut proved = Vec::new();
    for (language, block) in blocks(&page) {
        match language {
            "json" => {
                let values = serde_json::Deserializer::from_str(&block).into_iter::<Value>();
                let values: Vec<Value> =
                    values.collect::<Result<_, _>>().unwrap_or_else(|error| panic!("{error}:\n{block}"));
                let of = |field: &str| values[0][field].as_str().unwrap_or_default().to_owned();
                match of("format").as_str() {
                    "panside-part/1" => {
                        desk.write(&format!("parts/{}.part.json", of("id")), &block);
                    }
                    "panside-checklist/1" => {
                        last = Some(prove(&desk.write(&format!("{}.checklist.json", of("id")), &block)));
                    }
                    // Pieces of other files, which are only to be JSON.
                    _ => {}
                }
            }
            "text" => {
                let said = last.take().unwrap_or_else(|| panic!("no checklist stands before:\n{block}"));
                said_in_order(&said.out, &block);
                let ends = block.lines().last().unwrap_or_default();
                assert_eq!(said.code, i32::from(ends.starts_with("Refuted")), "{ends}");
                proved.push(said.code);
            }
            _ => {}
        }
    }
    assert!(last.is_none(), "the page does not show how the last checklist comes out");
    assert_eq!(proved, [1, 1, 0], "refuted twice, mended, proved");
}

#[test]
fn a_new_checklist_is_proved_and_is_never_written_over_another() {
    let desk = Desk::new();
    let path = desk.path("wheel-bolts.checklist.json");
    let new = |title: &[&str]| {
        let arguments = ["new-checklist".as_ref(), path.as_os_str()];
        cli(&[&arguments[..], &title.iter().map(AsRef::as_ref).collect::<Vec<_>>()].concat())
    };
    let said = new(&["--title", "Wheel bolts, \"after 50 km\""]);
    assert_eq!(said.code, 0, "{}", said.err);
    let written = std::fs::read_to_string(&path).unwrap();
    let value: Value = serde_json::from_str(&written).unwrap();
    assert_eq!(value["id"], "wheel-bolts");
    assert_eq!(value["title"], "Wheel bolts, \"after 50 km\"");
    let said = prove(&path);
    assert_eq!(said.code, 0, "{}", said.out);
    assert!(!said.out.contains("Odd"), "{}", said.out);
    new(&[]).refuses(1, "is there already and stays as it is");
    assert_eq!(std::fs::read_to_string(&path).unwrap(), written);
}

#[test]
fn a_new_checklist_is_found_by_its_name() {
    let desk = Desk::new();
    for name in ["wheel-bolts.json", ".checklist.json", "Wheel Bolts.checklist.json"] {
        let said = cli(&["new-checklist".as_ref(), desk.path(name).as_os_str()]);
        said.refuses(64, "is no name for a checklist");
        assert!(!desk.path(name).exists());
    }
    let nowhere = desk.path("no/such/folder.checklist.json");
    cli(&["new-checklist".as_ref(), nowhere.as_os_str()]).refuses(4, "cannot be written");
}
