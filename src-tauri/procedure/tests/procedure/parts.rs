//! Checklists that share parts: what is joined, where its places are, and what is refused.

use std::collections::BTreeMap;

use panside_procedure::{Joined, Problem, parts};
use serde_json::{Value, json};

use crate::said::{is_translated, what};
use crate::support::labelled;

/// A checklist that uses the part "look" among its steps and "lift" among its phases.
fn checklist() -> Value {
    json!({
        "format": "panside-checklist/1", "id": "small", "title": "Small", "revision": 1,
        "conditions": [{"id": "pan", "values": ["on", "off"]}],
        "terms": {"may_raise": "pan = on"},
        "phases": [
            {"id": "first", "title": "First", "steps": [
                step("ask"),
                {"use": "look", "with": {"before": "ask"}},
                step("write"),
            ]},
            {"use": "lift"},
        ],
        "dangers": [{"id": "crush", "signal": "danger", "text": "Crushed.",
            "when": "lift = floor and doing.zone = under"}],
        "done_when": "true",
        "safe_to_leave": "true",
    })
}

fn step(id: &str) -> Value {
    json!({"id": id, "title": id, "instruction": "Do it.", "zone": "bench"})
}

fn look() -> Value {
    let mut leaks = step("leaks");
    leaks["after"] = json!(["$before"]);
    json!({
        "format": "panside-part/1", "id": "look", "title": "A look for leaks",
        "settings": {"before": "the step that comes first"},
        "gates": [{"id": "seen", "classes": ["dry", "wet"]}],
        "steps": [leaks, step("drips")],
    })
}

fn lift() -> Value {
    json!({
        "format": "panside-part/1", "id": "lift", "title": "Up and down",
        "wants": {"may_raise": "nothing is loose"},
        "conditions": [{"id": "lift", "values": ["floor", "up"]}],
        "terms": {"is_up": "lift = up"},
        "phases": [{"id": "raise", "title": "Raise", "steps": [
            {"id": "below", "title": "Below", "instruction": "Look.", "zone": "under", "needs": "is_up"},
        ]}],
        "vehicle_actions": [
            {"id": "raise", "title": "Raise", "needs": "lift = floor and may_raise", "makes": {"lift": "up"}},
            {"id": "lower", "title": "Lower", "needs": "lift = up", "makes": {"lift": "floor"}},
        ],
    })
}

/// Files as an author would have them, each field on a line of its own.
struct Files {
    checklist: Value,
    parts: BTreeMap<String, Value>,
}

impl Files {
    fn new() -> Files {
        let parts = [("look".to_owned(), look()), ("lift".to_owned(), lift())];
        Files { checklist: checklist(), parts: parts.into() }
    }

    fn of_checklist(mut self, place: &str, value: Value) -> Files {
        set(&mut self.checklist, place, value);
        self
    }

    fn of_part(mut self, name: &str, place: &str, value: Value) -> Files {
        set(self.parts.entry(name.to_owned()).or_default(), place, value);
        self
    }

    fn text(value: &Value) -> String {
        format!("{:#}", labelled(value.clone()))
    }

    fn join(&self) -> Result<Joined, Vec<Problem>> {
        let part = |name: &str| self.parts.get(name).map(|part| Files::text(part).into_bytes());
        parts::join(Files::text(&self.checklist).as_bytes(), &part).map_err(|problems| {
            let files: Vec<String> = self.parts.values().chain([&self.checklist]).map(Files::text).collect();
            is_translated(&problems.0, &files.iter().map(String::as_str).collect::<Vec<_>>());
            problems.0
        })
    }

    fn refused(&self) -> Vec<Problem> {
        match self.join() {
            Ok(joined) => panic!("this joins:\n{}", joined.text),
            Err(problems) => problems,
        }
    }

    /// There is one mistake only: in this file, at this place, saying this. The line that is told is that of the place.
    fn one_mistake(&self, file: Option<&str>, place: &str, says: &str) {
        let found = self.refused();
        let [problem] = found.as_slice() else { panic!("not one mistake: {found:#?}") };
        self.is_at(problem, file, place, place);
        assert!(what(problem).contains(says), "\"{problem}\" does not say \"{says}\"");
    }

    /// A problem is told at a place of a file.
    fn is_at(&self, problem: &Problem, file: Option<&str>, joined_place: &str, place_in_file: &str) {
        let named = file.map(|name| format!("parts/{name}.part.json"));
        assert_eq!((&problem.file, problem.place.as_str()), (&named, joined_place), "{problem}");
        let whole = file.map_or(&self.checklist, |name| &self.parts[name]);
        let text = Files::text(whole);
        let line = text.lines().nth(problem.line - 1).unwrap_or_default();
        let value = whole.pointer(place_in_file).unwrap_or_else(|| panic!("nothing is at {place_in_file}"));
        let shown = match value {
            Value::Object(_) => "{".to_owned(),
            Value::Array(_) => "[".to_owned(),
            other => other.to_string(),
        };
        assert_eq!(line.get(problem.column - 1..problem.column - 1 + shown.len()), Some(shown.as_str()));
    }
}

fn set(whole: &mut Value, place: &str, value: Value) {
    let (parent, name) = place.rsplit_once('/').unwrap_or_default();
    match whole.pointer_mut(parent) {
        Some(Value::Object(fields)) => drop(fields.insert(name.to_owned(), value)),
        Some(Value::Array(list)) if name == "-" => list.push(value),
        Some(Value::Array(list)) => list[name.parse().unwrap_or(usize::MAX)] = value,
        _ => panic!("nothing is at {parent}"),
    }
}

#[test]
fn steps_and_phases_of_parts_stand_where_they_are_used_and_the_rest_is_added_to_the_lists() {
    let joined = Files::new().join().unwrap();
    let procedure = joined.load().unwrap_or_else(|problems| panic!("{problems}\n{}", joined.text));
    let steps: Vec<&str> = procedure.steps().map(|(_, step)| step.id.as_str()).collect();
    assert_eq!(steps, ["ask", "leaks", "drips", "write", "below"]);
    assert_eq!(procedure.checklist.phases[0].steps[1].after, ["ask"], "the setting stands for itself");
    let ids = |list: &[Value]| -> Vec<String> {
        list.iter().map(|one| one["id"].as_str().unwrap().to_owned()).collect()
    };
    let text: Value = serde_json::from_str(&joined.text).unwrap();
    assert_eq!(ids(text["conditions"].as_array().unwrap()), ["pan", "lift"]);
    assert_eq!(ids(text["gates"].as_array().unwrap()), ["seen"]);
    assert_eq!(ids(text["vehicle_actions"].as_array().unwrap()), ["raise", "lower"]);
    assert_eq!(text["terms"], json!({"may_raise": "pan = on", "is_up": "lift = up"}));
    assert!(text["phases"].to_string().find("\"use\"").is_none());
}

#[test]
fn a_checklist_that_uses_no_part_is_its_own_text() {
    let mut files = Files::new().of_checklist("/phases/0/steps", json!([step("ask")]));
    files.checklist["phases"].as_array_mut().unwrap().truncate(1);
    assert_eq!(files.join().unwrap().text, Files::text(&files.checklist));
}

#[test]
fn joining_the_joined_text_changes_nothing() {
    let text = Files::new().join().unwrap().text;
    assert_eq!(parts::join(text.as_bytes(), &|_| None).unwrap().text, text);
}

#[test]
fn a_mistake_in_the_whole_is_told_in_the_file_it_was_copied_from() {
    let files = Files::new()
        .of_part("lift", "/phases/0/steps/0/needs", json!("lift = roof"))
        .of_part("look", "/steps/1/needs", json!("gone"))
        .of_part("lift", "/vehicle_actions/1/needs", json!("lift > floor"))
        .of_checklist("/phases/0/steps/2/needs", json!("pan = lost"))
        .of_checklist("/phases/0/steps/1/with/before", json!("nobody"));
    let problems = files.join().unwrap().load().unwrap_err().0;
    let at = |place: &str| {
        let found = problems.iter().find(|problem| problem.place == place);
        found.unwrap_or_else(|| panic!("{place} is not in {problems:#?}"))
    };
    assert_eq!(problems.len(), 5);
    files.is_at(
        at("/phases/1/steps/0/needs"),
        Some("lift"),
        "/phases/1/steps/0/needs",
        "/phases/0/steps/0/needs",
    );
    files.is_at(at("/phases/0/steps/2/needs"), Some("look"), "/phases/0/steps/2/needs", "/steps/1/needs");
    files.is_at(
        at("/vehicle_actions/1/needs"),
        Some("lift"),
        "/vehicle_actions/1/needs",
        "/vehicle_actions/1/needs",
    );
    files.is_at(at("/phases/0/steps/3/needs"), None, "/phases/0/steps/3/needs", "/phases/0/steps/2/needs");
    let word = at("/phases/0/steps/1/after/0");
    files.is_at(word, None, "/phases/0/steps/1/after/0", "/phases/0/steps/1/with/before");
    assert!(what(word).contains("no step is called \"nobody\""));
    assert!(at("/vehicle_actions/1/needs").to_string().starts_with("In parts/lift.part.json, line "));
}

#[test]
fn a_part_that_is_not_there_is_named_with_the_file_it_would_be() {
    Files::new().of_checklist("/phases/1", json!({"use": "left"})).one_mistake(
        None,
        "/phases/1",
        "there is no part \"left\"; it would be the file parts/left.part.json",
    );
}

#[test]
fn the_name_of_a_part_leads_into_no_other_folder() {
    for name in ["../secret", "a/b", "", "Lift", "lift.part", &"a".repeat(61)] {
        let files = Files::new().of_checklist("/phases/1", json!({"use": name}));
        files.one_mistake(None, "/phases/1", "cannot name a part");
        let asked = std::cell::RefCell::new(Vec::new());
        let part = |name: &str| {
            asked.borrow_mut().push(name.to_owned());
            None
        };
        assert!(parts::join(Files::text(&files.checklist).as_bytes(), &part).is_err());
        assert_eq!(*asked.borrow(), ["look"], "such a file was never asked for");
    }
}

#[test]
fn a_part_is_there_once() {
    let again = json!({"use": "look", "with": {"before": "ask"}});
    Files::new().of_checklist("/phases/0/steps/-", again).one_mistake(
        None,
        "/phases/0/steps/3",
        "is used before",
    );
}

#[test]
fn a_part_uses_no_parts_and_so_never_itself() {
    let says = "a part uses no parts, not even itself";
    Files::new().of_part("look", "/steps/1", json!({"use": "look"})).one_mistake(
        Some("look"),
        "/steps/1",
        says,
    );
    Files::new().of_part("lift", "/phases/-", json!({"use": "look"})).one_mistake(
        Some("lift"),
        "/phases/1",
        says,
    );
    let inner = json!({"use": "lift"});
    Files::new().of_part("lift", "/phases/0/steps/0", inner).one_mistake(
        Some("lift"),
        "/phases/0/steps/0",
        says,
    );
}

#[test]
fn a_part_brings_what_stands_where_it_is_used() {
    let says = "it must bring phases only";
    let files = Files::new().of_checklist("/phases/-", json!({"use": "look", "with": {"before": "ask"}}));
    let files = files.of_checklist("/phases/0/steps/1", step("other"));
    files.one_mistake(Some("look"), "", says);
    let both = Files::new().of_part("lift", "/steps", json!([step("more")]));
    both.one_mistake(Some("lift"), "", says);
    Files::new().of_part("look", "/steps", json!([])).one_mistake(
        Some("look"),
        "",
        "it must bring steps only",
    );
}

#[test]
fn a_part_is_called_like_its_file() {
    Files::new().of_part("lift", "/id", json!("hoist")).one_mistake(Some("lift"), "/id", "make them alike");
}

#[test]
fn what_stands_in_two_files_must_be_the_same_in_both() {
    let seen = json!({"id": "seen", "classes": ["dry", "wet"]});
    let same = Files::new().of_checklist("/gates", json!([seen]));
    let joined = same.join().unwrap();
    assert_eq!(joined.load().unwrap().checklist.gates.len(), 1, "the same in both is there once");

    let other = Files::new().of_checklist("/gates", json!([{"id": "seen", "classes": ["dry", "oily"]}]));
    other.one_mistake(Some("look"), "/gates/0", "the checklist has \"seen\" too, and not the same");
    let parts = Files::new().of_part("lift", "/gates", json!([{"id": "seen", "classes": ["yes"]}]));
    parts.one_mistake(Some("lift"), "/gates/0", "parts/look.part.json has \"seen\" too");
    let term = Files::new().of_checklist("/terms/is_up", json!("lift != floor"));
    term.one_mistake(Some("lift"), "/terms/is_up", "the checklist has \"is_up\" too");
    let key = |label| Files::new().of_part("lift", "/sheet_keys", json!({"touch_limit": label}));
    let same = key("touch limit").of_checklist("/sheet_keys", json!({"touch_limit": "touch limit"}));
    let keys = same.join().unwrap().load().unwrap().checklist.sheet_keys;
    let keys = keys.into_iter().map(|(key, said)| (key, said.label));
    assert_eq!(keys.collect::<Vec<_>>(), [("touch_limit".into(), "touch limit".into())]);
    let other = key("touch limit").of_part("look", "/sheet_keys", json!({"touch_limit": "how hot"}));
    other.one_mistake(
        Some("lift"),
        "/sheet_keys/touch_limit",
        "parts/look.part.json has \"touch_limit\" too",
    );
}

#[test]
fn a_term_that_a_part_wants_is_told_with_its_meaning() {
    let files = Files::new().of_checklist("/terms", json!({}));
    files.one_mistake(
        Some("lift"),
        "/wants/may_raise",
        "no term \"may_raise\"; add it to its \"terms\": nothing is loose",
    );
}

#[test]
fn settings_are_given_declared_and_read() {
    let without = Files::new().of_checklist("/phases/0/steps/1/with", json!({}));
    without.one_mistake(None, "/phases/0/steps/1", "wants \"before\" in \"with\": the step that comes first");
    let more = Files::new().of_checklist("/phases/0/steps/1/with/behind", json!("ask"));
    more.one_mistake(None, "/phases/0/steps/1/with/behind", "has no setting \"behind\"");
    let unread = Files::new().of_part("look", "/steps/0/after", json!([]));
    unread.one_mistake(Some("look"), "/settings/before", "no text here is \"$before\"");
    let undeclared = Files::new().of_part("look", "/steps/1/title", json!("$called"));
    let found = undeclared.refused();
    undeclared.is_at(&found[0], Some("look"), "/settings", "/steps/1/title");
    assert!(found.len() == 1 && what(&found[0]).contains("no setting \"called\""), "{found:?}");
    let number = Files::new().of_checklist("/phases/0/steps/1/with/before", json!(3));
    number.one_mistake(None, "/phases/0/steps/1", "expected a string");
    let text = Files::new().of_part("look", "/steps/1/title", json!("$ 5 and $more"));
    assert!(text.join().is_ok(), "a text that is not just a name is a text");
}

#[test]
fn mistakes_in_the_shape_of_several_files_are_told_at_once() {
    let files = Files::new().of_part("look", "/steps/0/zone", json!("roof")).of_part(
        "lift",
        "/vehicle_actions/0/need",
        json!("true"),
    );
    let found = files.refused();
    assert_eq!(found.len(), 2, "{found:#?}");
    files.is_at(&found[0], Some("lift"), "/vehicle_actions/0/need", "/vehicle_actions/0/need");
    files.is_at(&found[1], Some("look"), "/steps/0/zone", "/steps/0/zone");
}

#[test]
fn a_part_that_is_no_part_is_told_in_its_file() {
    let files = Files::new();
    let with = |bytes: &[u8]| {
        let part = |name: &str| {
            Some(if name == "lift" { bytes.to_vec() } else { Files::text(&look()).into_bytes() })
        };
        parts::join(Files::text(&files.checklist).as_bytes(), &part).unwrap_err().to_string()
    };
    assert!(with(b"{\"format\": \"panside-checklist/1\"}").contains("reads \"panside-part/1\""));
    assert!(
        with(b"\xff").starts_with("In parts/lift.part.json, line 1, column 1 (/): the file is not UTF-8")
    );
    assert!(with(&[b'['; 1000]).contains("recursion limit exceeded"));
    assert!(with(&vec![b' '; 5 << 20]).contains("more than 4 MB together"), "refused before it is read");
}

#[test]
fn a_key_that_stands_twice_is_told_before_one_of_them_is_left_out() {
    let text = Files::text(&checklist()).replacen(
        "\"title\": \"Small\"",
        "\"title\": \"A\",\n\"title\": \"Small\"",
        1,
    );
    let files = Files::new();
    let part = |name: &str| Some(Files::text(&files.parts[name]).into_bytes());
    let problems = parts::join(text.as_bytes(), &part).unwrap_err();
    assert!(problems.to_string().contains("(/title): this key stands twice"), "{problems}");
}

#[test]
fn a_word_set_in_many_places_cannot_make_a_huge_text_of_small_files() {
    let many: Vec<Value> = (0..20_000).map(|_| json!("$before")).collect();
    let files = Files::new()
        .of_part("look", "/steps/0/after", json!(many))
        .of_checklist("/phases/0/steps/1/with/before", json!("x".repeat(100_000)));
    files.one_mistake(None, "", "with its parts it has more than 4 MB");
}

#[test]
fn more_parts_than_there_is_room_for_are_refused_before_they_are_read() {
    let uses: Vec<Value> = (0..1000).map(|at| json!({"use": format!("p{at}")})).collect();
    let files = Files::new().of_checklist("/phases/0/steps", json!(uses));
    let asked = std::cell::Cell::new(0);
    let part = |_: &str| {
        asked.set(asked.get() + 1);
        None
    };
    let problems = parts::join(Files::text(&files.checklist).as_bytes(), &part).unwrap_err();
    assert!(problems.to_string().contains("more than 64 parts"), "{problems}");
    assert_eq!(asked.get(), 64);
}
