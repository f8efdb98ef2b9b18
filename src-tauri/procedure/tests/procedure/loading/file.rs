//! What is wrong with a file before its content is looked at, and with its fields.

use panside_procedure::{Problem, Procedure};
use serde_json::json;

use super::{mistakes, one_mistake};
use crate::bay::{one_phase, pan_job, step};
use crate::said::{is_translated, what};

fn told(bytes: &[u8]) -> Vec<Problem> {
    match Procedure::load(bytes) {
        Ok(_) => panic!("this loads"),
        Err(problems) => {
            is_translated(&problems.0, &[&String::from_utf8_lossy(bytes)]);
            problems.0
        }
    }
}

fn only(bytes: &[u8], line: usize, column: usize, message: &str) {
    let found = told(bytes);
    let [problem] = found.as_slice() else { panic!("not one mistake: {found:#?}") };
    assert_eq!((problem.line, problem.column, what(problem).as_str()), (line, column, message));
}

#[test]
fn a_checklist_without_mistakes_loads() {
    let procedure = pan_job().procedure();
    assert_eq!(procedure.steps().count(), 9);
    assert_eq!(procedure.machine.all_starts().len(), 1);
}

#[test]
fn a_file_that_is_no_json_is_told_with_its_line() {
    only(b"{\n  \"format\" \"panside-checklist/1\"\n}", 2, 12, "this is not JSON: expected `:`");
    only(b"", 1, 0, "this is not JSON: EOF while parsing a value");
}

#[test]
fn a_file_that_is_not_utf_8_is_told_with_its_byte() {
    only(b"{\"title\": \"\xff\"}", 1, 1, "the file is not UTF-8 from byte 11 on; save it as UTF-8");
}

#[test]
fn a_file_of_50_mb_is_refused_before_it_is_read() {
    let says = "the file has more than 4 MB, which is the most";
    only(&vec![b' '; 50 * 1024 * 1024], 1, 1, says);
    only(&vec![b' '; 4 * 1024 * 1024 + 1], 1, 1, says);
}

#[test]
fn a_file_nested_too_deeply_is_refused_and_does_not_exhaust_the_stack() {
    let deep = format!("{}{}", "[".repeat(100_000), "]".repeat(100_000));
    only(deep.as_bytes(), 1, 128, "this is not JSON: recursion limit exceeded");
}

#[test]
fn another_format_or_version_is_told() {
    let says = "the format is \"panside-checklist/2\"; this version of Panside reads \"panside-checklist/1\"";
    one_mistake(&pan_job().set("", "format", json!("panside-checklist/2")), "", "/format", says);
    only(b"{}", 1, 1, "\"format\": \"panside-checklist/1\" is missing");
    let sheet = panside_procedure::load::sheet(b"{\"format\": \"panside-checklist/1\"}").unwrap_err();
    assert!(sheet.to_string().contains("this version of Panside reads \"panside-sheet/1\""), "{sheet}");
}

#[test]
fn an_unknown_field_is_told_with_the_name_that_was_probably_meant() {
    let draft = pan_job().set("drain", "need", json!("safe_under"));
    one_mistake(&draft, "drain", "/need", "there is no field \"need\" here; perhaps \"needs\" is meant");
    let draft = pan_job().set("drain", "colour", json!("red"));
    one_mistake(&draft, "drain", "/colour", "there is no field \"colour\" here; possible are");
    let draft = pan_job().set("drain", "zone", json!("bensh"));
    one_mistake(&draft, "drain", "/zone", "there is no value \"bensh\" here; perhaps \"bench\" is meant");
}

#[test]
fn a_missing_field_is_told_at_the_part_that_lacks_it() {
    one_mistake(
        &pan_job().without("drain", "instruction"),
        "drain",
        "",
        "\"instruction\" is missing; add it",
    );
    one_mistake(&pan_job().without("", "safe_to_leave"), "", "", "\"safe_to_leave\" is missing; add it");
}

#[test]
fn a_value_of_the_wrong_kind_is_told_at_its_field() {
    one_mistake(&pan_job().set("drain", "minutes", json!("five")), "drain", "/minutes", "five");
    one_mistake(&pan_job().set("", "revision", json!(-1)), "", "/revision", "-1");
    one_mistake(&pan_job().set("", "phases", json!({})), "", "/phases", "sequence");
}

#[test]
fn a_key_that_stands_twice_is_told_even_in_another_spelling() {
    let text = one_phase(json!([step("look", "bench", json!({}))])).text();
    for again in ["\"title\": \"Twice\",", "\"t\\u0069tle\": \"Twice\","] {
        let twice = text.replacen("\"title\": \"look\"", &format!("{again}\n\"title\": \"look\""), 1);
        let line = twice.lines().position(|line| line.starts_with("\"title\": \"look\"")).unwrap() + 1;
        let problem = &told(twice.as_bytes())[0];
        assert_eq!(what(problem), "this key stands twice in one object; keep one");
        assert_eq!((problem.line, problem.place.as_str()), (line, "/phases/0/steps/0/title"));
    }
}

#[test]
fn several_mistakes_are_told_at_once_each_in_its_line() {
    let text = r#"{
  "format": "panside-checklist/1", "id": "small", "title": "Small", "revision": 1,
  "conditions": [
    {"id": "lift", "label": "lift", "values": [{"id": "floor", "label": "down"}, {"id": "raised", "label": "up"}]},
    {"id": "pan", "label": "pan", "values": [{"id": "on", "label": "on"}]}
  ],
  "phases": [{"id": "only", "title": "Only", "steps": [
    {"id": "drain", "title": "Drain", "instruction": "Drain.", "zone": "under",
     "needs": "lift = rased"},
    {"id": "drain", "title": "Drain again", "instruction": "Drain.", "zone": "under",
     "makes": {"fluid": "drained"}}
  ]}],
  "dangers": [{"id": "crush", "signal": "danger", "text": "Crushed.",
    "when": "lift = floor and doing.zone under"}],
  "done_when": "true",
  "safe_to_leave": "true"
}"#;
    let places = |text: &str| -> Vec<(usize, usize, String)> {
        told(text.as_bytes()).into_iter().map(|found| (found.line, found.column, found.place)).collect()
    };
    let place = |line, column, place: &str| (line, column, place.to_owned());
    // What has no room is told before the rest is looked at, together with names that are taken.
    assert_eq!(places(text), [place(5, 45, "/conditions/1/values"), place(10, 5, "/phases/0/steps/1"),]);
    let text = text
        .replace("\"label\": \"on\"}", "\"label\": \"on\"}, {\"id\": \"off\", \"label\": \"off\"}")
        .replace("\"drain\", \"title\": \"Drain again\"", "\"again\", \"title\": \"Drain again\"");
    assert_eq!(
        places(&text),
        [
            place(9, 15, "/phases/0/steps/0/needs"),
            place(11, 25, "/phases/0/steps/1/makes/fluid"),
            place(14, 13, "/dangers/0/when"),
        ]
    );
}

#[test]
fn mistakes_in_fields_of_several_parts_are_told_at_once() {
    let draft = pan_job()
        .set("drain", "zone", json!("pit"))
        .without("pan_off", "title")
        .set("lift", "values", json!("floor"))
        .set("crush", "signal", json!("shout"));
    let places: Vec<String> = mistakes(&draft).into_iter().map(|problem| problem.place).collect();
    let expected = [("lift", "/values"), ("crush", "/signal"), ("drain", "/zone"), ("pan_off", "")];
    for (id, field) in expected {
        let place = format!("{}{field}", draft.place(id));
        assert!(places.contains(&place), "{place} is not in {places:?}");
    }
    assert_eq!(places.len(), expected.len(), "{places:?}");
}

#[test]
fn a_problem_is_one_line_with_its_place() {
    let problem = &mistakes(&pan_job().set("drain", "after", json!(["draw"])))[0];
    let said = problem.to_string();
    assert!(said.starts_with(&format!(
        "Line {}, column {} (/phases/1/steps/1/after/0): ",
        problem.line, problem.column
    )));
    assert!(said.ends_with("no step is called \"draw\""), "{said}");
}
