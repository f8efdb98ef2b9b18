//! What people read is never an id: every name that rules know has a label of its own.

use serde_json::json;

use super::one_mistake;
use crate::bay::{pan_job, stick};
use crate::said::what;
use crate::support::Draft;

fn with_fact() -> Draft {
    let values = json!([{"id": "no", "label": "no"}, {"id": "yes", "label": "yes"}]);
    pan_job().add("", "facts", json!({"id": "dipstick", "values": values, "sheet": "has_dipstick"}))
}

#[test]
fn a_label_that_is_missing_is_told_where_it_belongs() {
    let values = json!([{"id": "on"}, {"id": "off", "label": "off"}]);
    one_mistake(&pan_job().set("pan", "values", values), "pan", "/values/0", "\"label\" is missing");
    let text = pan_job().text().replacen("\"label\": \"what people read\",", "", 1);
    let problems = panside_procedure::Procedure::load(text.as_bytes()).unwrap_err();
    assert_eq!(problems.0.len(), 1, "{problems}");
    assert_eq!(
        (problems.0[0].place.as_str(), what(&problems.0[0]).as_str()),
        ("/conditions/0", "\"label\" is missing; add it")
    );
}

#[test]
fn an_empty_label_and_an_id_in_its_place_are_refused_wherever_they_stand() {
    for (label, says) in [(" ", "the label is empty"), ("on_locks", "\"on_locks\" is an id and no label")] {
        for id in ["lift", "verdict", "dipstick"] {
            one_mistake(&with_fact().set(id, "label", json!(label)), id, "/label", says);
        }
        let two = json!([{"id": "no", "label": "no"}, {"id": "yes", "label": label}]);
        one_mistake(&with_fact().set("dipstick", "values", two), "dipstick", "/values/1/label", says);
        let on_off = json!([{"id": "on", "label": label}, {"id": "off", "label": "off"}]);
        one_mistake(&pan_job().set("pan", "values", on_off), "pan", "/values/0/label", says);
        let gate = json!({"id": "seen", "classes": [{"id": "good", "label": label}]});
        one_mistake(&pan_job().add("", "gates", gate), "seen", "/classes/0/label", says);
        let keys = json!({"level_chart": label});
        one_mistake(&pan_job().set("", "sheet_keys", keys), "", "/sheet_keys/level_chart", says);
    }
}

#[test]
fn a_key_of_the_sheet_without_a_label_is_told_where_it_is_read() {
    let text = with_fact().text();
    let without = |key: &str| {
        let mut file: serde_json::Value = serde_json::from_str(&text).unwrap();
        file["sheet_keys"].as_object_mut().unwrap().remove(key).unwrap();
        panside_procedure::Procedure::load(file.to_string().as_bytes()).unwrap_err().0
    };
    let found = without("has_dipstick");
    assert_eq!(found[0].place, "/facts/0/sheet");
    assert_eq!(
        what(&found[0]),
        "the key \"has_dipstick\" of the spec sheet has no label; add one to \"sheet_keys\""
    );
    let chart = stick()["ask"]["level"]["chart"].as_str().unwrap().to_owned();
    let places: Vec<String> = without(&chart).into_iter().map(|problem| problem.place).collect();
    assert_eq!(places, ["/phases/0/steps/0/entries/0/ask/level", "/phases/3/steps/0/entries/0/ask/level"]);
}

/// The checklist with a key of its level said to be like this.
fn with_key(key: &str, said: serde_json::Value) -> Draft {
    with_fact().set("", "sheet_keys", json!({ (key): said }))
}

#[test]
fn what_is_said_of_a_key_fits_how_it_is_read() {
    let chart = stick()["ask"]["level"]["chart"].as_str().unwrap().to_owned();
    let cases = [
        (chart.as_str(), json!({"asked": "useful"}), "", "what is lost"),
        (chart.as_str(), json!({"asked": "useful", "without": "all"}), "", "can't be missing"),
        (chart.as_str(), json!({"usual": {"count": 1}}), "/usual", "not asked of the shop"),
        (chart.as_str(), json!({"asked": "shop", "usual": {"count": 1}}), "/usual", "is read as a chart"),
        (chart.as_str(), json!({"ends_of": "has_dipstick"}), "/ends_of", "as a chart"),
        ("has_dipstick", json!({"asked": "shop"}), "", "every sheet must have it"),
    ];
    for (key, said, place, says) in cases {
        let mut said = said;
        said["label"] = json!("what people read");
        let problems =
            panside_procedure::Procedure::load(with_key(key, said).text().as_bytes()).unwrap_err().0;
        let place = format!("/sheet_keys/{key}{place}");
        assert!(
            problems.iter().any(|problem| problem.place == place && what(problem).contains(says)),
            "{place} {says}: {problems:?}"
        );
    }
    let good = with_key(&chart, json!({"label": "level chart", "asked": "shop", "checked": false}));
    assert_eq!(good.procedure().checklist.sheet_label(&chart), "level chart");
    let wrong = with_key(&chart, json!({"label": "level chart", "asked": "sometimes"}));
    let problems = panside_procedure::Procedure::load(wrong.text().as_bytes()).unwrap_err().0;
    assert!(what(&problems[0]).contains("sometimes"), "{problems:?}");
}

#[test]
fn names_and_values_are_read_by_their_labels() {
    let values = json!([{"id": "floor", "label": "on the floor"}, {"id": "raised", "label": "up"},
        {"id": "on_locks", "label": "on the locks"}]);
    let classes = json!([{"id": "service", "label": "service it"}, {"id": "leak", "label": "it leaks"},
        {"id": "refused", "label": "declined"}]);
    let draft = with_fact().set("lift", "values", values).set("verdict", "classes", classes);
    let procedure = draft.set("lift", "label", json!("the lift")).procedure();
    let label = |name: &str, value: u8| procedure.value_label(procedure.names.var(name).unwrap(), value);
    assert_eq!([label("lift", 0), label("lift", 2)], ["on the floor", "on the locks"]);
    assert_eq!([label("dipstick", 0), label("dipstick", 1)], ["no", "yes"]);
    assert_eq!(
        [label("verdict", 0), label("verdict", 1), label("verdict", 3)],
        ["unknown", "service it", "declined"]
    );
    assert_eq!(procedure.labels_of("lift", "on_locks"), ("the lift", "on the locks"));
    assert_eq!(
        procedure.labels_of("boat", "on_water"),
        ("boat", "on_water"),
        "what is not there stays as it is"
    );
}
