//! What the table of a decision must keep to.

use serde_json::{Value, json};

use super::one_mistake;
use crate::bay::{choice, entry, pan_job};
use crate::support::Draft;

/// The pan job where the filling asks for two coils, with a decision over them that may be changed.
fn decided(change: impl FnOnce(&mut Value)) -> Draft {
    let coils = ["inside", "outside", "again"];
    let classes = json!({"inside": {}, "outside": {}, "again": {"not_yet": true}});
    let mut asked = json!({
        "of": {"first": "fill.first", "second": "fill.second"},
        "options": [
            {"class": "none", "label": "none"}, {"class": "one", "label": "one"},
            {"class": "both", "label": "both"},
        ],
        "rows": [
            {"when": {"first": ["inside"], "second": ["inside"]}, "class": "none", "says": "Both are good."},
            {"when": {"first": ["outside"], "second": ["inside"]}, "class": "one", "says": "One is out."},
            {"when": {"first": ["inside"], "second": ["outside"]}, "class": "one", "says": "One is out."},
            {"when": {"first": ["outside"], "second": ["outside"]}, "class": "both", "says": "Both are out."},
        ],
    });
    change(&mut asked);
    pan_job()
        .add("fill", "entries", choice("first", &coils, classes.clone()))
        .add("fill", "entries", choice("second", &coils, classes))
        .add(
            "fill",
            "entries",
            entry("judged", json!({ "decision": asked }), json!({"none": {}, "one": {}, "both": {}})),
        )
}

fn wrong(at: &str, says: &str, change: impl FnOnce(&mut Value)) {
    one_mistake(&decided(change), "judged", &format!("/ask/decision{at}"), says);
}

#[test]
fn a_table_with_a_row_for_whatever_the_coils_are_is_taken() {
    decided(|_| {}).procedure();
    decided(|asked| {
        asked["rows"][3] = json!({"otherwise": true, "class": "both", "says": "Both are out."});
    })
    .procedure();
}

#[test]
fn a_combination_that_no_row_is_for_is_told() {
    wrong("/rows", "no row is for first: inside and second: outside", |asked| {
        asked["rows"].as_array_mut().unwrap().remove(2);
    });
    wrong("/rows", "which is one of 2 combinations without a row", |asked| {
        asked["rows"].as_array_mut().unwrap().drain(1..3);
        asked["against"] = json!([{"class": "one"}]);
    });
}

#[test]
fn two_rows_that_differ_over_one_combination_are_told_with_it() {
    let says = "rows 1 and 4 come to different classes, and both are for first: inside and second: inside";
    wrong("/rows/3", says, |asked| {
        asked["rows"][3] =
            json!({"when": {"second": ["inside", "outside"]}, "class": "none", "says": "None."});
        asked["rows"][0]["class"] = json!("both");
        asked["rows"][1]["class"] = json!("none");
        asked["rows"][2]["class"] = json!("none");
        asked["against"] = json!([{"class": "one"}]);
    });
}

#[test]
fn a_row_that_others_speak_for_is_told() {
    wrong("/rows/4", "this row never speaks", |asked| {
        let same =
            json!({"when": {"second": ["outside"], "first": ["inside"]}, "class": "one", "says": "Again."});
        asked["rows"].as_array_mut().unwrap().push(same);
    });
    wrong("/rows/4", "this row never speaks", |asked| {
        let rest = json!({"otherwise": true, "class": "one", "says": "Whatever else."});
        asked["rows"].as_array_mut().unwrap().push(rest);
    });
}

#[test]
fn a_class_that_holds_the_step_is_in_no_row_and_one_that_may_be_missing_is() {
    let says = "\"fill.first\" is never \"again\" when this is decided; it can be inside or outside";
    wrong("/rows/1/when/first", says, |asked| {
        asked["rows"][1]["when"]["first"] = json!(["again", "outside"])
    });
    wrong("/rows/1/when/first", "is never \"missing\"", |asked| {
        asked["rows"][1]["when"]["first"] = json!(["missing", "outside"]);
    });
    let missing = |classes: Value| {
        let mut draft = decided(|asked| {
            asked["of"]["words"] = json!("fill.words");
            asked["rows"][0]["when"]["words"] = classes;
        });
        let mut words = entry("words", json!({"note": {}}), json!({}));
        words["optional"] = json!(true);
        let entries = format!("{}/entries", draft.place("fill"));
        draft.0.pointer_mut(&entries).unwrap().as_array_mut().unwrap().insert(0, words);
        draft
    };
    missing(json!(["missing", "written"])).procedure();
    let says = "no row is for first: inside, second: inside and words: written";
    one_mistake(&missing(json!(["missing"])), "judged", "/ask/decision/rows", says);
}

#[test]
fn what_decides_is_an_entry_before_it_or_of_a_step_that_it_is_voided_with() {
    wrong("/of/first", "no entry is called \"fill.nothing\"", |asked| {
        asked["of"]["first"] = json!("fill.nothing")
    });
    wrong("/of/first", "is not entered before this one", |asked| asked["of"]["first"] = json!("fill.judged"));
    wrong("/of/first", "add that to \"relies_on\"", |asked| {
        asked["of"]["first"] = json!("pan_off.bolts_in_tray");
    });
    wrong("/of/second", "\"fill.first\" stands twice", |asked| asked["of"]["second"] = json!("fill.first"));
}

#[test]
fn rows_and_classes_name_what_there_is() {
    wrong("/rows/0/when/third", "\"third\" is not in \"of\"", |asked| {
        asked["rows"][0]["when"]["third"] = json!(["inside"]);
    });
    wrong("/rows/3", "each row says in \"when\" what it is for", |asked| {
        asked["rows"][3].as_object_mut().unwrap().remove("when");
    });
    wrong("/against/0/class", "\"three\" is none of the options", |asked| {
        asked["against"] = json!([{"class": "three"}]);
    });
    wrong("/options/2", "no row comes to \"both\"", |asked| asked["rows"][3]["class"] = json!("one"));
}

#[test]
fn a_table_that_nobody_could_look_through_is_refused() {
    let coils = ["inside", "outside"];
    let mut draft = decided(|asked| {
        for more in 0..11 {
            asked["of"][format!("more_{more}")] = json!(format!("fill.more_{more}"));
        }
    });
    let place = format!("{}/entries", draft.place("fill"));
    for more in 0..11 {
        let coil = choice(&format!("more_{more}"), &coils, json!({"inside": {}, "outside": {}}));
        draft.0.pointer_mut(&place).unwrap().as_array_mut().unwrap().insert(0, coil);
    }
    let says = "the entries can be 8192 combinations of classes; at most 4096 are possible";
    one_mistake(&draft, "judged", "/ask/decision/of", says);
}
