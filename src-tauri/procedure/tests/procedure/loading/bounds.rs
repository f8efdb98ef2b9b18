//! How much of everything there may be: more is refused by a limit that is told, before anything is worked out from it.

use serde_json::{Value, json};

use super::{mistakes, one_mistake};
use crate::bay::{one_phase, pan_job, step};
use crate::said::what;
use crate::support::Draft;

/// A list of so many, each made from its number.
fn many(count: usize, one: impl Fn(usize) -> Value) -> Value {
    (0..count).map(one).collect()
}

fn strings(count: usize) -> Value {
    many(count, |at| json!(format!("s{at}")))
}

#[test]
fn ten_thousand_steps_are_refused_with_their_number() {
    let draft = one_phase(many(10_000, |at| step(&format!("s{at}"), "bench", json!({"after": ["s0"]}))));
    let found = mistakes(&draft);
    let told: Vec<String> = found.iter().map(what).collect();
    assert_eq!(
        told,
        [
            "steps: there are 10000; 1 to 255 are possible",
            "steps in the phase: there are 10000; 1 to 255 are possible"
        ],
        "nothing else is looked at"
    );
}

#[test]
fn every_list_of_a_checklist_has_a_limit() {
    let long = |list: &str, most: usize, one: &dyn Fn(usize) -> Value| {
        let draft = pan_job().set("", list, many(600, one));
        let says = format!("{list}: there are 600; 0 to {most} are possible");
        let found = mistakes(&draft);
        assert!(
            found.iter().any(|problem| what(problem) == says && problem.place == format!("/{list}")),
            "{found:?}"
        );
    };
    long("conditions", 512, &|at| json!({"id": format!("c{at}"), "values": ["a", "b"]}));
    long("facts", 12, &|at| json!({"id": format!("f{at}"), "values": ["a", "b"], "sheet": "s"}));
    long("gates", 512, &|at| json!({"id": format!("g{at}"), "classes": ["a"]}));
    long("follows", 512, &|_| json!({"when": "true"}));
    long("items", 512, &|at| json!({"id": format!("i{at}"), "name": "n", "count": 1, "reuse": "yes"}));
    long("sign_offs", 256, &|at| json!({"id": format!("p{at}"), "kind": "permit", "text": "t"}));
    long("vehicle_actions", 512, &|at| json!({"id": format!("m{at}"), "title": "t", "makes": {}}));
    let terms: serde_json::Map<String, Value> =
        (0..600).map(|at| (format!("t{at}"), json!("true"))).collect();
    one_mistake(&pan_job().set("", "terms", Value::Object(terms)), "", "/terms", "terms: there are 600");
}

#[test]
fn every_list_of_a_step_has_a_limit() {
    for list in ["after", "relies_on", "permits", "touches", "tags"] {
        let draft = pan_job().set("drain", list, strings(300));
        one_mistake(&draft, "drain", &format!("/{list}"), &format!("{list}: there are 300;"));
    }
    let pieces: serde_json::Map<String, Value> = (0..100).map(|at| (format!("i{at}"), json!(1))).collect();
    for list in ["takes_off", "puts_back"] {
        let draft = pan_job().set("drain", list, Value::Object(pieces.clone()));
        one_mistake(&draft, "drain", &format!("/{list}"), &format!("{list}: there are 100;"));
    }
    let note = |at: usize| json!({"id": format!("e{at}"), "label": "l", "ask": {"note": {}}});
    one_mistake(
        &pan_job().set("drain", "entries", many(70, note)),
        "drain",
        "/entries",
        "entries: there are 70",
    );
    let options = many(70, |at| json!({"class": format!("c{at}"), "label": "l"}));
    let entry = json!([{"id": "pick", "label": "l", "ask": {"choice": {"options": options}}}]);
    let place = "/entries/0/ask/choice/options";
    let found = mistakes(&pan_job().set("drain", "entries", entry));
    assert!(found.iter().any(|problem| problem.place.ends_with(place)), "{found:?}");
}

#[test]
fn a_name_is_short_and_a_title_may_be_long() {
    let long = "x".repeat(65);
    let says = "the name \"xxxxxxxxxxxxxxxxxxxx…\" has 65 characters; 64 are the most";
    let draft = pan_job().add("", "conditions", json!({"id": long, "values": ["a", "b"]}));
    let found = mistakes(&draft);
    assert!(found.len() == 1 && what(&found[0]).contains(says), "{found:?}");
    let values = json!({"id": "filter", "values": ["a", long]});
    one_mistake(&pan_job().add("", "conditions", values), "filter", "/values/1", says);
    pan_job().set("drain", "title", json!("y".repeat(5_000))).procedure();
}

#[test]
fn a_vehicle_that_can_come_in_in_a_million_ways_is_refused() {
    let ways = |conditions: usize| {
        let more =
            many(conditions, |at| json!({"id": format!("c{at}"), "values": ["a", "b"], "start": ["a", "b"]}));
        let mut draft = one_phase(json!([step("look", "bench", json!({}))]));
        draft.0["conditions"] = more;
        draft.0["vehicle_actions"] = json!([]);
        draft.0["dangers"][0]["when"] = json!("c0 = b and c1 = b and doing.zone = bench");
        draft
    };
    one_mistake(&ways(20), "", "/conditions", "more than 4096 ways");
    one_mistake(&ways(300), "", "/conditions", "more than 4096 ways");
    assert_eq!(ways(12).procedure().machine.all_starts().len(), 4096);
    let facts = many(5, |at| json!({"id": format!("f{at}"), "values": strings(6), "sheet": "s"}));
    one_mistake(&pan_job().set("", "facts", facts), "", "/conditions", "more than 4096 ways");
}

#[test]
fn a_step_of_eighty_centuries_is_a_slip_of_the_pen() {
    one_mistake(
        &pan_job().set("drain", "minutes", json!(u32::MAX)),
        "drain",
        "/minutes",
        "minutes: there are 4294967295; 0 to 10080 are possible",
    );
}

fn with_term(text: &str, needs: &str) -> Draft {
    let mut draft = pan_job().set("drain", "needs", json!(needs));
    draft.0["terms"]["t"] = json!(text);
    draft
}

#[test]
fn what_a_predicate_reads_counts_and_not_only_how_it_is_joined() {
    let says = "with its terms written out this has more than 2000 parts";
    let values = format!("lift in {{{}}}", vec!["floor"; 200].join(", "));
    let draft = with_term(&values, &vec!["t"; 20].join(" or "));
    one_mistake(&draft, "drain", "/needs", says);
    with_term(&values, "t or t").procedure();
    let trays = with_term("tray_clear and tray_clear", &vec!["t"; 1_000].join(" and "));
    one_mistake(&trays, "drain", "/needs", says);
}

#[test]
fn terms_as_deep_as_they_may_be_do_not_exhaust_the_stack() {
    let nest = |inner: String| {
        (0..15).fold(inner, |inner, _| format!("(lift = floor and (lift = on_locks or ({inner})))"))
    };
    let mut draft = pan_job().set("drain", "needs", json!("t0"));
    for at in 0..15 {
        draft.0["terms"][format!("t{at}")] = json!(nest(format!("t{}", at + 1)));
    }
    draft.0["terms"]["t15"] = json!("lift = floor");
    let job = draft.job();
    let drain = job.step("drain").at();
    assert!(job.procedure.machine.steps[drain].needs.holds(&job.state), "the vehicle is on the floor");
}

#[test]
fn long_keys_around_long_lists_take_no_more_room_than_the_file() {
    let key = "k".repeat(1_000_000);
    let text =
        format!("{{\"format\": \"panside-checklist/1\", \"{key}\": [{}]}}", vec!["1"; 500_000].join(","));
    let Err(problems) = panside_procedure::Procedure::load(text.as_bytes()) else { panic!("this loads") };
    // As texts the places alone would take 500 GB.
    assert!(problems.0.iter().any(|problem| what(problem).starts_with("there is no field")));
    let twice = vec!["\"a\": 1"; 200_000].join(",");
    let text = format!("{{\"format\": \"panside-checklist/1\", \"{key}\": {{{twice}}}}}");
    let Err(problems) = panside_procedure::Procedure::load(text.as_bytes()) else { panic!("this loads") };
    assert!(problems.0.len() <= 101, "{} problems", problems.0.len());
}

#[test]
fn mistakes_are_told_up_to_a_hundred() {
    let steps =
        many(255, |at| step(&format!("s{at}"), "bench", json!({"needs": "gone", "after": ["nowhere"]})));
    assert_eq!(mistakes(&one_phase(steps)).len(), 100);
}
