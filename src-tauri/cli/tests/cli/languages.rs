//! In another language nothing that is printed stays English but what stands in files and is typed: no sentence is made
//! past the messages.

use std::collections::BTreeSet;
use std::path::Path;

use panside_messages::Language;
use panside_messages::testing::{unsaid, words};
use panside_procedure::format::Checklist;
use serde_json::{Value, json};

use crate::support::{Desk, Said, cli, joined, json as read_json, program, root, script};

/// What is the same in every language: names of commands, options, fields and forms, and what the system says.
const SAME: &[&str] = &[
    "`panside-cli jobs`",
    "panside-cli prove",
    "`store salvage`",
    "--even-so",
    "--photo FILE",
    ".before-",
    ".checklist.json",
    "\"people\"",
    "after_min",
    "\"needs\"",
    "\"need\"",
    "/vehicle_actions/0/need",
    "/dangers/0/when",
    "panside-walk/1",
    "cos",
    "No such file or directory (os error 2)",
    "No such file or directory",
];

/// A desk in another language, and all that is put into the program at it.
struct Abroad {
    desk: Desk,
    /// Texts of several words, or with signs in them, in small letters.
    texts: BTreeSet<String>,
    /// Single words.
    words: BTreeSet<String>,
}

impl Abroad {
    fn new() -> Abroad {
        let mut abroad = Abroad { desk: Desk::new(), texts: BTreeSet::new(), words: BTreeSet::new() };
        SAME.iter().for_each(|text| abroad.knows(text));
        abroad.knows(&abroad.path(""));
        abroad.knows(&root().display().to_string());
        abroad
    }

    fn path(&self, name: &str) -> String {
        self.desk.path(name).display().to_string()
    }

    fn knows(&mut self, text: &str) {
        let text = text.trim().to_lowercase();
        let known = if text.chars().all(char::is_alphabetic) { &mut self.words } else { &mut self.texts };
        known.insert(text);
    }

    /// Every text in a file's value.
    fn reads(&mut self, value: &Value) {
        match value {
            Value::String(text) => self.knows(text),
            Value::Array(all) => all.iter().for_each(|one| self.reads(one)),
            Value::Object(all) => all.iter().for_each(|(name, one)| {
                // Ids of items, conditions and gates stand before what becomes of them.
                if name.contains('_') {
                    self.knows(name);
                }
                self.reads(one);
            }),
            _ => {}
        }
    }

    /// A checklist's texts, and what its entries can turn out to be.
    fn reads_checklist(&mut self, value: &Value) {
        self.reads(value);
        let checklist: Checklist = serde_json::from_value(value.clone()).unwrap();
        let entries = checklist.phases.iter().flat_map(|phase| &phase.steps).flat_map(|step| &step.entries);
        entries.flat_map(|entry| entry.ask.classes()).for_each(|class| self.knows(class));
    }

    fn write(&mut self, name: &str, value: &Value) -> String {
        self.desk.write(name, value.to_string()).display().to_string()
    }

    fn calls(&mut self, code: i32, arguments: &[&str]) -> Said {
        arguments.iter().for_each(|typed| self.knows(typed));
        let mut program = program();
        program.env("PANSIDE_LANGUAGE", Language::Accented.tag());
        let said = Said::of(&program.args(arguments).output().unwrap());
        assert_eq!(said.code, code, "{arguments:?}\n{}\n{}", said.out, said.err);
        assert!(!said.out.is_ascii() || !said.err.is_ascii(), "{arguments:?} says nothing: {}", said.out);
        said
    }

    /// Calls the program, and answers what it said, of which nothing is English.
    fn says(&mut self, code: i32, arguments: &[&str]) -> String {
        let said = self.calls(code, arguments);
        let said = said.out + &said.err;
        nothing_of(self.english(said.lines()), arguments);
        said
    }

    /// What the core answers the window, of which nothing is English. Answers how many sentences there are.
    fn answers(&self, folder: &str) -> usize {
        let pages = std::fs::read_dir(folder).unwrap().map(|entry| read_json(&entry.unwrap().path()));
        let mut said = Vec::new();
        pages.for_each(|page| sentences(&page, &mut said));
        nothing_of(self.english(said.iter().map(String::as_str)), &["pages", folder]);
        said.len()
    }

    /// The lines that have words that are not of the language and no data either.
    fn english<'a>(&self, lines: impl Iterator<Item = &'a str>) -> Vec<String> {
        let mut texts: Vec<&String> = self.texts.iter().filter(|text| text.len() > 1).collect();
        texts.sort_by_key(|text| std::cmp::Reverse(text.len()));
        let plain = |line: &str| {
            // A digit in its place parts words, and leaves a hash that happens to have the text a hash.
            let rest = texts.iter().fold(line.to_lowercase(), |rest, text| rest.replace(*text, "0"));
            let plain = unsaid(&rest, &self.words);
            (!plain.is_empty()).then(|| format!("{plain:?} in: {line}"))
        };
        lines.filter_map(plain).collect()
    }

    /// The same of text that is broken into lines, so that texts of several words are known by their words.
    fn prints(&mut self, arguments: &[&str]) -> String {
        let said = self.calls(0, arguments);
        let mut known = self.words.clone();
        known.extend(self.texts.iter().flat_map(|text| words(text)));
        let plain = |line: &str| {
            let plain = unsaid(line, &known);
            (!plain.is_empty()).then(|| format!("{plain:?} in: {line}"))
        };
        nothing_of(said.out.lines().chain(said.err.lines()).filter_map(plain).collect(), arguments);
        said.out
    }
}

fn nothing_of(english: Vec<String>, arguments: &[&str]) {
    assert!(english.is_empty(), "{arguments:?} says in English\n{}", english.join("\n"));
}

/// The sentences of the messages in a page, each with its text.
fn sentences(page: &Value, said: &mut Vec<String>) {
    match page {
        Value::Array(all) => all.iter().for_each(|one| sentences(one, said)),
        Value::Object(all) => {
            if let (Some(_), Some(_), Some(Value::String(text))) =
                (all.get("id"), all.get("args"), all.get("text"))
            {
                said.push(text.clone());
            }
            all.values().for_each(|one| sentences(one, said));
        }
        _ => {}
    }
}

/// A checklist in which somebody comes under a vehicle that is not on its locks, unless `needs` keeps them away.
fn drain_plug(needs: &str) -> Value {
    let values =
        json!([{ "id": "floor", "label": "on the floor" }, { "id": "locks", "label": "on the locks" }]);
    let step = |id: &str, zone: &str, needs: &str| {
        json!({
            "id": id, "title": format!("Look: {id}"), "instruction": "Look.", "zone": zone, "needs": needs,
            "minutes": 4, "wait": { "minutes": 9, "for": "the drip", "attended": false },
        })
    };
    let action = |id: &str, from: &str, to: &str| {
        json!({
            "id": id, "title": format!("Move: {id}"), "needs": format!("lift = {from}"),
            "makes": { "lift": to }, "minutes": 2,
        })
    };
    json!({
        "format": "panside-checklist/1", "id": "drain-plug", "title": "Drain plug", "revision": 1, "demo": true,
        "conditions": [{ "id": "lift", "label": "lift", "values": values }],
        "phases": [{ "id": "below", "title": "Below", "steps": [
            step("plug", "under", needs), step("dash", "cabin", "lift = floor")
        ] }],
        "vehicle_actions": [action("raise", "floor", "locks"), action("lower", "locks", "floor")],
        "dangers": [{
            "id": "under_off_locks", "signal": "danger", "text": "It can come down.",
            "when": "doing.zone = under and lift != locks",
        }],
        "done_when": "lift = floor and worked(plug) and worked(dash)",
        "safe_to_leave": "lift = floor",
    })
}

/// A demo walk with its files named by their whole paths, so that it can lie anywhere.
fn walk(abroad: &mut Abroad, name: &str) -> Value {
    let mut walk = read_json(&script(name));
    let folder = root().join("checklists");
    walk["checklist"] = json!(folder.join("pan-and-solenoid.checklist.json"));
    walk["sheet"] = json!(folder.join("sheets/demo-six-speed.sheet.json"));
    abroad.reads(&walk);
    abroad.reads(&read_json(&folder.join("sheets/demo-six-speed.sheet.json")));
    abroad.reads_checklist(&joined());
    walk
}

#[test]
fn a_walk_its_job_its_record_and_its_store_are_said() {
    let mut abroad = Abroad::new();
    let demo = walk(&mut abroad, "demo");
    let (file, bay, photo) = (
        abroad.write("demo.walk.json", &demo),
        abroad.path("bay"),
        abroad.desk.photo().display().to_string(),
    );
    let (text, pages) = (abroad.path("record.txt"), abroad.path("pages"));
    let walk = ["walk", &file, "--store", &bay, "--plain-proof", "--no-text", "--record", &text];
    let said = abroad.says(0, &[&walk[..], &["--photo", &photo, "--pages", &pages]].concat());
    assert!(said.lines().count() > 100 && said.contains("réfúšéd"), "{said}");
    abroad.says(0, &[&walk[..], &["--photo", &photo]].concat());

    assert!(abroad.answers(&pages) > 1000);

    abroad.says(0, &["jobs", "--store", &bay]);
    let jobs: Value = serde_json::from_str(&cli(&["jobs", "--store", &bay, "--json"]).out).unwrap();
    let job = jobs[0]["job"].as_str().unwrap();
    abroad.prints(&["record", job, "--store", &bay]);
    assert!(std::fs::read_to_string(&text).unwrap().contains("Réçórd mádé"), "{text}");
    abroad.prints(&["record", job, "--store", &bay, "--for", "customer"]);

    abroad.says(0, &["store", "check", &bay]);
    let backups = abroad.path("backups");
    std::fs::create_dir(&backups).unwrap();
    abroad.says(0, &["store", "backup", &bay, "--to", &backups]);
    abroad.says(0, &["store", "backups", &backups]);
    let made = std::fs::read_dir(&backups).unwrap().map(|entry| entry.unwrap().path());
    let made = made.filter(|path| path.join("manifest.json").exists()).max().unwrap();
    abroad.says(0, &["store", "restore", &made.display().to_string(), "--into", &bay]);
    abroad.says(0, &["store", "rebuild", &bay]);
    abroad.says(0, &["store", "salvage", &bay, "--into", &abroad.path("saved")]);

    std::fs::remove_file(Path::new(&bay).join("journal.head")).unwrap();
    abroad.says(4, &["jobs", "--store", &bay]);
    abroad.says(1, &["store", "check", &bay]);
    abroad.says(0, &["store", "go-on", &bay, "--why", "it was lost"]);
}

#[test]
fn the_plan_of_a_job_under_way_and_a_backup_that_went_bad_are_said() {
    let mut abroad = Abroad::new();
    let high = walk(&mut abroad, "level-high");
    let (file, bay, photo) = (
        abroad.write("high.walk.json", &high),
        abroad.path("bay"),
        abroad.desk.photo().display().to_string(),
    );
    let walk = ["walk", &file, "--store", &bay, "--plain-proof", "--no-text", "--photo", &photo];
    abroad.says(0, &[&walk[..], &["--lines", "6"]].concat());
    let jobs: Value = serde_json::from_str(&cli(&["jobs", "--store", &bay, "--json"]).out).unwrap();
    abroad.says(2, &["plan", "--store", &bay, "--job", jobs[0]["job"].as_str().unwrap(), "--quick"]);
    let backups = abroad.path("backups");
    abroad.says(4, &["store", "backup", &bay, "--to", &backups, "--every", "24"]);
    std::fs::create_dir(&backups).unwrap();
    abroad.says(0, &["store", "backups", &backups]);
    abroad.says(0, &["store", "backup", &bay, "--to", &backups, "--every", "24"]);
    let made = std::fs::read_dir(&backups).unwrap().map(|entry| entry.unwrap().path());
    let made = made.filter(|path| path.join("manifest.json").exists()).max().unwrap();
    std::fs::remove_file(made.join("journal.db")).unwrap();
    abroad.says(1, &["store", "backups", &backups]);
}

#[test]
fn a_proof_and_a_plan_are_said() {
    let mut abroad = Abroad::new();
    let (held, open) = (drain_plug("lift = locks"), drain_plug("true"));
    abroad.reads_checklist(&held);
    // The proof's own name, and the predicate that is suggested to close a finding.
    ["panside-proof/4", "and lift = locks"].iter().for_each(|text| abroad.knows(text));
    let (held, open) =
        (abroad.write("held.checklist.json", &held), abroad.write("open.checklist.json", &open));
    let said = abroad.says(0, &["prove", &held]);
    assert!(said.contains("Próvéd óvér"), "{said}");
    let said = abroad.says(1, &["prove", &open]);
    assert!(said.contains("Réfútéd") && said.contains("FÁÍLŠ"), "{said}");
    abroad.says(2, &["prove", &held, "--states", "2"]);
    let said = abroad.says(0, &["plan", &held]);
    assert!(said.contains("ğó tó"), "{said}");
    let said = abroad.says(0, &["plan", &held, "--people", "2"]);
    assert!(said.contains("péršóñ"), "{said}");
}

#[test]
fn what_is_wrong_is_said() {
    let mut abroad = Abroad::new();
    let demo = walk(&mut abroad, "level-high");
    let changed = |name: &str, place: &str, value: Value, code: i32, abroad: &mut Abroad| {
        let mut walk = demo.clone();
        *walk.pointer_mut(place).unwrap() = value.clone();
        abroad.reads(&value);
        let file = abroad.write(name, &walk);
        let store = abroad.path(&format!("{name}.bay"));
        abroad.says(code, &["walk", &file, "--store", &store, "--plain-proof", "--lines", "3"]);
    };
    changed("format.walk.json", "/format", json!("panside-walk/9"), 3, &mut abroad);
    changed("people.walk.json", "/lines/3/who", json!("nobody known"), 3, &mut abroad);
    changed("roles.walk.json", "/people/tech/roles", json!([]), 3, &mut abroad);
    changed("minutes.walk.json", "/lines/0/after_min", json!(-1), 3, &mut abroad);
    changed("time.walk.json", "/starts_at", json!("at noon"), 3, &mut abroad);
    changed("checklist.walk.json", "/checklist", json!(abroad.path("no.checklist.json")), 3, &mut abroad);
    abroad.knows("refused-phase");
    // The photo that the second line takes is not given.
    changed("photo.walk.json", "/label", json!("no photo"), 64, &mut abroad);
    changed(
        "taken.walk.json",
        "/lines/0",
        json!({ "who": "tech", "do": { "begin": { "step": "identify" } }, "refused": "refused-needs" }),
        1,
        &mut abroad,
    );
    changed(
        "order.walk.json",
        "/lines/0",
        json!({ "who": "tech", "do": { "begin": { "step": "read_level" } } }),
        1,
        &mut abroad,
    );

    let mut wrong = joined();
    wrong["vehicle_actions"][0]["need"] = json!("true");
    let wrong = abroad.write("wrong.checklist.json", &wrong);
    abroad.says(3, &["prove", &wrong]);
    let bare = read_json(&root().join("checklists/sheets/demo-six-speed.sheet.json"));
    let mut lacks = bare;
    lacks["values"] = json!({});
    let (lacks, whole) = (abroad.write("lacks.sheet.json", &lacks), joined());
    let whole = abroad.write("whole.checklist.json", &whole);
    // The kinds of values, as they stand in a sheet's file.
    ["measure", "range", "chart", "torque", "count", "fact"].iter().for_each(|kind| abroad.knows(kind));
    abroad.says(3, &["prove", &whole, "--sheet", &lacks]);
    let nowhere = abroad.path("nowhere");
    abroad.says(4, &["store", "check", &nowhere]);
    abroad.says(64, &["record", "no id", "--store", &nowhere]);
    abroad.says(64, &["new-checklist", &abroad.path("Wheel Bolts.json")]);
    abroad.says(0, &["new-checklist", &abroad.path("wheel-bolts.checklist.json")]);
}

#[test]
fn a_figure_is_said() {
    let mut abroad = Abroad::new();
    abroad.says(0, &["figure", "adapter", "torque=30lbf.ft", "tool=12in", "adapter=6in"]);
    // Keys and examples are typed as they stand.
    let example = "panside-cli figure adapter torque=30lbf.ft tool=12in adapter=6in angle=0deg";
    ["torque", "tool", "angle", example].iter().for_each(|text| abroad.knows(text));
    abroad.says(64, &["figure", "adapter", "torque=30"]);
    abroad.says(1, &["figure", "coil", "ohms=6.9ohm", "temp=62C", "limits=6ohm:5ohm"]);
    abroad.says(64, &["figure", "coil", "ohms=6.9mm", "temp=62C", "limits=5ohm:6ohm"]);
}

#[test]
fn a_language_is_named_by_its_tag_and_an_unknown_one_is_wrong_usage() {
    let said = |language: &str| cli(&["--language", language, "record", "x", "--store", "/nowhere"]);
    said("en").refuses(64, "is no job id");
    said("qps-ploc").refuses(64, "íš ñó jób íd");
    said("tlh").refuses(64, "invalid value 'tlh'");
}
