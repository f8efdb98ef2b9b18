//! Plans as a person asks for them: of a file, for two people, of a job that is under way.

use serde_json::{Value, json};

use crate::support::{Desk, Said, cli, json as read_json, root, script};

fn plan(arguments: &[&str]) -> Said {
    cli(&[&["plan"], arguments].concat())
}

fn file(name: &str) -> String {
    root().join(format!("checklists/{name}.checklist.json")).display().to_string()
}

fn planned(arguments: &[&str]) -> Value {
    let said = plan(&[arguments, &["--json"]].concat());
    assert_eq!(said.code, 0, "{}\n{}", said.out, said.err);
    serde_json::from_str(&said.out).unwrap()
}

#[test]
fn a_plan_says_when_each_step_is_worked_what_is_waited_for_and_that_no_order_takes_less() {
    let said = plan(&[&file("return-visit")]);
    assert_eq!(said.code, 0, "{}", said.err);
    for part in [" min  ", "waiting for", "No order takes less.", "The order of the file takes"] {
        assert!(said.out.contains(part), "\"{part}\" is not in: {}", said.out);
    }
}

#[test]
fn two_people_take_no_longer_than_one_and_each_is_told_apart() {
    let (one, two) = (planned(&[&file("level-check")]), planned(&[&file("level-check"), "--people", "2"]));
    assert!(two["total_min"].as_u64() <= one["total_min"].as_u64());
    assert_eq!((&one["exact"], &two["exact"]), (&json!(true), &json!(true)));
    let people = |plan: &Value| plan["doings"].as_array().unwrap().iter().any(|doing| doing["person"] == 2);
    assert!(people(&two) && !people(&one));
}

#[test]
fn the_quick_plan_is_no_better_than_the_best_and_tells_a_bound_that_holds() {
    let name = file("pan-and-filter");
    let said = plan(&[&name, "--quick", "--json"]);
    let quick: Value = serde_json::from_str(&said.out).unwrap();
    let best = planned(&[&name]);
    assert!(quick["total_min"].as_u64() >= best["total_min"].as_u64());
    assert!(quick["bound_min"].as_u64() <= best["total_min"].as_u64());
}

#[test]
fn of_a_job_that_is_under_way_the_rest_is_planned() {
    let desk = Desk::new();
    let mut begun = read_json(&script("level-check"));
    for (field, folder) in
        [("checklist", "level-check.checklist.json"), ("sheet", "sheets/demo-six-speed.sheet.json")]
    {
        begun[field] = json!(root().join("checklists").join(folder));
    }
    begun["lines"].as_array_mut().unwrap().truncate(2);
    let said = desk.walk(&desk.write("begun.walk.json", begun.to_string()));
    assert_eq!(said.code, 0, "{}\n{}", said.out, said.err);
    let store = desk.path("bay").display().to_string();
    let jobs: Value = serde_json::from_str(&cli(&["jobs", "--store", &store, "--json"]).out).unwrap();
    let job = jobs[0]["job"].as_str().unwrap();

    let (rest, whole) = (planned(&["--store", &store, "--job", job]), planned(&[&file("level-check")]));
    let (rest_min, whole_min) = (rest["total_min"].as_u64().unwrap(), whole["total_min"].as_u64().unwrap());
    assert!(0 < rest_min && rest_min < whole_min, "{rest_min} of {whole_min} min");
    let titles = |plan: &Value| -> Vec<Value> {
        plan["doings"].as_array().unwrap().iter().map(|doing| doing["title"].clone()).collect()
    };
    let (whole, rest) = (titles(&whole), titles(&rest));
    assert!(rest.iter().all(|title| whole.contains(title)), "{rest:?}");
    assert!(whole.len() >= rest.len() + 2, "what is done is not planned again: {rest:?}");

    let both = planned(&["--store", &store, "--job", job, "--people", "2"]);
    assert!(both["total_min"].as_u64().unwrap() <= rest_min);
    assert!(titles(&both).iter().all(|title| whole.contains(title)), "{both}");
    let said = plan(&["--store", &store, "--job", job, "--people", "2"]);
    assert!(
        said.out.contains("person 2") && said.out.contains("Plan only: this checklist has"),
        "{}",
        said.out
    );
    plan(&["--store", &store, "--job", job, "--people", "3"]).refuses(64, "1 or 2");
}

#[test]
fn what_cannot_be_planned_is_said() {
    plan(&[]).refuses(64, "<FILE>");
    plan(&[&file("level-check"), "--people", "3"]).refuses(64, "1 or 2");
    plan(&["no-such-file.json"]).refuses(3, "no-such-file.json");
}
