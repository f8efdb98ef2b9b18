//! Translations of checklists, as their translator and a technician have them: the texts are printed, checked, and a job is
//! walked in them.

use std::collections::BTreeSet;
use std::path::PathBuf;

use panside_bay::enter::Hash;
use panside_messages::language::accented;
use panside_procedure::Procedure;
use panside_procedure::format::Texts;
use rusqlite::Connection;
use serde_json::{Value, json};

use crate::support::{Desk, cli, json as read_json, root, script};
use crate::walks::names;

const LANGUAGE: &str = "qps-ploc";

/// A checklist that is shipped, as it is loaded.
fn joined(name: &str) -> String {
    let file = root().join("checklists").join(format!("{name}.checklist.json"));
    let said = cli(&["join".as_ref(), file.as_os_str()]);
    assert_eq!(said.code, 0, "{}", said.err);
    said.out
}

fn accented_texts(procedure: &Procedure) -> Texts {
    let mut texts = Texts::of(&procedure.checklist, LANGUAGE);
    texts.texts.values_mut().for_each(|text| *text = accented(text));
    texts
}

/// Every text in a JSON value, with the field that it is the value of.
fn leaves<'a>(value: &'a Value, field: &'a str, found: &mut BTreeSet<(&'a str, &'a str)>) {
    match value {
        Value::String(text) => drop(found.insert((field, text))),
        Value::Array(all) => all.iter().for_each(|one| leaves(one, field, found)),
        Value::Object(fields) => fields.iter().for_each(|(field, one)| leaves(one, field, found)),
        _ => {}
    }
}

/// Loading has put a number in the place of `"all"`, which a file must have where a sheet counts.
fn all_again(value: &mut Value, own: &Procedure) {
    let counted = |id: &str| own.checklist.items.iter().any(|item| item.id == id && item.sheet.is_some());
    match value {
        Value::Array(all) => all.iter_mut().for_each(|one| all_again(one, own)),
        Value::Object(fields) => {
            for (id, one) in fields {
                if one.is_number() && counted(id) {
                    *one = "all".into();
                }
                all_again(one, own);
            }
        }
        _ => {}
    }
}

#[test]
fn every_shipped_checklist_has_the_same_rules_in_other_words_and_no_text_is_left_out() {
    for name in names("", ".checklist.json") {
        let own = Procedure::load(joined(&name).as_bytes()).unwrap();
        let texts = serde_json::to_vec(&accented_texts(&own)).unwrap();
        let other = own.in_words_of(&Texts::checked(&own.checklist, &texts).unwrap());
        let mut whole = serde_json::to_value(&other.checklist).unwrap();
        all_again(&mut whole, &own);
        let loaded = Procedure::load(whole.to_string().as_bytes()).unwrap();
        assert!(format!("{:?}", loaded.machine) == format!("{:?}", own.machine), "{name} has other rules");
        // What is several words and has no accent is a text that was left out, but where rules are written.
        let mut found = BTreeSet::new();
        leaves(&whole, "", &mut found);
        let rules = [
            "needs",
            "while",
            "again",
            "on",
            "when",
            "since",
            "holds_while",
            "start_when",
            "done_when",
            "safe_to_leave",
        ];
        let terms = own.checklist.terms.keys().map(String::as_str);
        let rules: BTreeSet<&str> = rules.into_iter().chain(terms).collect();
        let left: Vec<_> = found
            .into_iter()
            .filter(|(field, text)| text.contains(' ') && accented(text) != *text && !rules.contains(field))
            .collect();
        assert!(left.is_empty(), "{name}: {left:?}");
    }
}

#[test]
fn the_texts_of_a_checklist_are_printed_or_written_and_checked() {
    let desk = Desk::new();
    let checklist = root().join("checklists/level-check.checklist.json");
    let texts = |more: &[&str]| {
        let call: Vec<_> =
            ["texts", checklist.to_str().unwrap()].into_iter().chain(more.iter().copied()).collect();
        cli(&call)
    };
    let printed = texts(&["--into", "es"]);
    assert_eq!(printed.code, 0, "{}", printed.err);
    let mut file: Value = serde_json::from_str(&printed.out).unwrap();
    assert_eq!(
        (&file["format"], &file["of"], &file["language"]),
        (&json!("panside-texts/1"), &json!("level-check"), &json!("es"))
    );
    let path = desk.path("es.texts.json");
    let written = texts(&["--into", "es", "--out", path.to_str().unwrap()]);
    assert_eq!(written.code, 0, "{}", written.err);
    assert_eq!(read_json(&path), file);
    let check = texts(&["--check", path.to_str().unwrap()]);
    assert_eq!(check.code, 0, "{}", check.err);
    let number = file["texts"].as_object().unwrap().len();
    assert_eq!(check.out, format!("Nothing is wrong: {number} texts in \"es\"\n"));

    file["texts"]["title"] = json!("");
    file["texts"]["steps/nowhere/title"] = json!("en ninguna parte");
    let path = desk.write("wrong.texts.json", file.to_string());
    let check = texts(&["--check", path.to_str().unwrap()]);
    check.refuses(3, "the text is empty");
    check.refuses(3, "the checklist has no text at \"steps/nowhere/title\"");
    texts(&["--check", path.to_str().unwrap(), "--into", "es"]).refuses(64, "cannot be used with");
}

/// The demo job's script on a desk of its own, with the checklist, its accented texts, and the language where it is
/// walked in them.
fn demo(desk: &Desk, language: Option<&str>) -> (PathBuf, Texts, Vec<u8>) {
    let checklist = joined("pan-and-solenoid");
    let procedure = Procedure::load(checklist.as_bytes()).unwrap();
    let texts = accented_texts(&procedure);
    let bytes = serde_json::to_vec_pretty(&texts).unwrap();
    std::fs::create_dir(desk.path("texts")).unwrap();
    desk.write(&format!("texts/pan-and-solenoid.{LANGUAGE}.texts.json"), &bytes);
    let mut walk = read_json(&script("demo"));
    walk["checklist"] = json!(desk.write("pan.checklist.json", checklist));
    walk["sheet"] = json!(script("demo").parent().unwrap().join(walk["sheet"].as_str().unwrap()));
    if let Some(language) = language {
        walk["language"] = json!(language);
    }
    (desk.write("demo.walk.json", walk.to_string()), texts, bytes)
}

/// The events of a job in a store, oldest first: kind, version, body.
fn events(desk: &Desk) -> Vec<(String, u32, Value)> {
    let conn = Connection::open(desk.path("bay/journal.db")).unwrap();
    let mut query =
        conn.prepare("SELECT kind, version, body FROM events WHERE shop = 0 ORDER BY row").unwrap();
    let rows = query.query_map([], |row| Ok((row.get(0)?, row.get(1)?, row.get::<_, String>(2)?))).unwrap();
    rows.map(|row| {
        row.map(|(kind, version, body)| (kind, version, serde_json::from_str(&body).unwrap())).unwrap()
    })
    .collect()
}

/// Under what the proof is kept.
fn proof_keys(desk: &Desk) -> Vec<(Vec<u8>, String)> {
    let conn = Connection::open(desk.path("bay/journal.db")).unwrap();
    let mut query = conn.prepare("SELECT checklist, engine FROM proofs").unwrap();
    query.query_map([], |row| Ok((row.get(0)?, row.get(1)?))).unwrap().map(Result::unwrap).collect()
}

#[test]
fn the_demo_job_in_other_words_is_the_same_job() {
    let (own, other) = (Desk::new(), Desk::new());
    let (plain, _, _) = demo(&own, None);
    let (accented_walk, _, bytes) = demo(&other, Some(LANGUAGE));
    for (desk, walk) in [(&own, &plain), (&other, &accented_walk)] {
        let said = desk.walk(walk);
        assert_eq!(said.code, 0, "{}\n{}", said.out, said.err);
    }
    // The journal is the same, but for the translation that the start pins.
    let (written, mut in_other_words) = (events(&own), events(&other));
    let started = in_other_words[0].2.as_object_mut().unwrap();
    let pinned = started.remove("texts").unwrap();
    assert_eq!(pinned, json!({"language": LANGUAGE, "hash": Hash::of(&bytes).to_string()}));
    assert_eq!(written, in_other_words);
    assert_eq!(proof_keys(&own), proof_keys(&other));
    assert_eq!(proof_keys(&own).len(), 1);

    // The record says none of the checklist's own texts any more, where they look otherwise.
    let (own_record, record) = (own.record(), other.record());
    let checklist = Procedure::load(joined("pan-and-solenoid").as_bytes()).unwrap().checklist;
    // A class of a level is called "in range" by the program as well, in the program's language.
    let looks_otherwise = |text: &String| text.contains(' ') && accented(text) != *text && text != "in range";
    let english: BTreeSet<String> =
        Texts::of(&checklist, "en").texts.into_values().filter(looks_otherwise).collect();
    let accented: BTreeSet<String> = english.iter().map(|text| accented(text)).collect();
    let said = |record: &Value, texts: &BTreeSet<String>| -> Vec<String> {
        let mut found = BTreeSet::new();
        leaves(record, "", &mut found);
        found
            .iter()
            // The names in an estimate are as they were typed.
            .filter(|(field, text)| texts.contains(*text) && *field != "what")
            .map(|(field, text)| format!("{field}: {text}"))
            .collect()
    };
    assert!(said(&own_record, &english).len() > 50);
    assert_eq!(said(&own_record, &accented), [""; 0]);
    assert_eq!(said(&record, &english), [""; 0]);
    assert_eq!(said(&record, &accented).len(), said(&own_record, &english).len());
}

#[test]
fn a_record_without_the_translation_is_in_the_checklists_own_words_and_says_so() {
    let desk = Desk::new();
    let (walk, texts, _) = demo(&desk, Some(LANGUAGE));
    let start = cli(&[
        "walk".as_ref(),
        walk.as_os_str(),
        "--store".as_ref(),
        desk.path("bay").as_os_str(),
        "--plain-proof".as_ref(),
        "--lines".as_ref(),
        "0".as_ref(),
    ]);
    assert_eq!(start.code, 0, "{}\n{}", start.out, start.err);
    assert!(start.out.contains(&texts.texts["title"]), "{}", start.out);
    let conn = Connection::open(desk.path("bay/journal.db")).unwrap();
    assert_eq!(conn.execute("DELETE FROM documents WHERE kind = 'texts'", []).unwrap(), 1);
    conn.close().unwrap();
    let store = desk.path("bay");
    let jobs = cli(&["jobs", "--json", "--store", store.to_str().unwrap()]);
    let jobs: Value = serde_json::from_str(&jobs.out).unwrap();
    let job = jobs[0]["job"].as_str().unwrap();
    let record = cli(&["record", job, "--store", store.to_str().unwrap()]);
    assert_eq!(record.code, 0, "{}", record.err);
    assert!(record.out.contains("is shown in the checklist's own words"), "{}", record.out);
    assert!(!record.out.contains(&texts.texts["title"]), "{}", record.out);
    let check = cli(&["store", "check", store.to_str().unwrap()]);
    assert_eq!(check.code, 1, "{}", check.out);
    assert!(check.out.contains("is not in this store"), "{}", check.out);
}

#[test]
fn a_walk_in_a_language_that_nobody_has_written_says_which_file_is_missing() {
    let desk = Desk::new();
    let (walk, _, _) = demo(&desk, Some("es"));
    desk.walk(&walk).refuses(3, "pan-and-solenoid.es.texts.json");
}
