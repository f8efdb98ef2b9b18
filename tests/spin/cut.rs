//! The shipped checklist cut down to some of its phases: what names a step or a sign-off that is gone is taken out,
//! "worked" and "signed" of it never hold, and dangers of work that nobody does any more are left out.

use std::collections::BTreeSet;

use panside_procedure::Procedure;
use serde_json::{Value, json};

/// The checklist with those of its phases, counted from 0.
pub fn down_to(checklist: &str, stays: impl Fn(usize) -> bool) -> Result<Procedure, String> {
    let mut cut: Value = serde_json::from_str(checklist).map_err(|error| error.to_string())?;
    let phases = ids(&cut, "/phases").into_iter().enumerate();
    let gone: BTreeSet<String> = phases.filter(|(at, _)| !stays(*at)).map(|(_, id)| id).collect();
    let steps: BTreeSet<String> = elements(&cut, "/phases")
        .filter(|phase| gone.contains(&id(phase)))
        .flat_map(|phase| elements(phase, "/steps").map(id).collect::<Vec<_>>())
        .collect();
    retain(&mut cut["phases"], |phase| !gone.contains(&id(phase)));
    let signs = given(&cut);
    let ungiven: BTreeSet<String> =
        ids(&cut, "/sign_offs").into_iter().filter(|sign| !signs.contains(sign)).collect();
    retain(&mut cut["sign_offs"], |sign| !ungiven.contains(&id(sign)));
    for phase in cut["phases"].as_array_mut().into_iter().flatten() {
        for step in phase["steps"].as_array_mut().into_iter().flatten() {
            for (list, missing) in [("after", &steps), ("relies_on", &steps), ("permits", &ungiven)] {
                if let Some(list) = step.get_mut(list) {
                    retain(list, |name| !name.as_str().is_some_and(|name| missing.contains(name)));
                }
            }
        }
    }
    // What a value of the sheet can be taken from may be gone with its step.
    for key in cut["sheet_keys"].as_object_mut().into_iter().flat_map(|keys| keys.values_mut()) {
        key.as_object_mut().map(|said| said.remove("ends_of"));
    }
    let never = steps.iter().map(|step| format!("worked({step})"));
    let never: Vec<String> = never.chain(ungiven.iter().map(|sign| format!("signed({sign})"))).collect();
    replace(&mut cut, &never);
    load_without_idle_dangers(cut)
}

/// A danger that names a zone, a part or a tag of no step does not load.
fn load_without_idle_dangers(mut cut: Value) -> Result<Procedure, String> {
    let problems = match Procedure::load(cut.to_string().as_bytes()) {
        Ok(procedure) => return Ok(procedure),
        Err(problems) => problems,
    };
    let place = |place: &str| place.strip_prefix("/dangers/")?.split('/').next()?.parse::<usize>().ok();
    let idle: Option<BTreeSet<usize>> = problems.0.iter().map(|problem| place(&problem.place)).collect();
    let idle = idle.ok_or_else(|| problems.to_string())?;
    let dangers = elements(&cut, "/dangers").enumerate().filter(|(at, _)| !idle.contains(at));
    cut["dangers"] = json!(dangers.map(|(_, danger)| danger).collect::<Vec<_>>());
    Procedure::load(cut.to_string().as_bytes()).map_err(|problems| problems.to_string())
}

/// How many phases a checklist has.
pub fn phases(checklist: &str) -> Result<usize, String> {
    let whole: Value = serde_json::from_str(checklist).map_err(|error| error.to_string())?;
    Ok(elements(&whole, "/phases").count())
}

fn elements<'a>(value: &'a Value, pointer: &str) -> impl Iterator<Item = &'a Value> + use<'a> {
    value.pointer(pointer).and_then(Value::as_array).into_iter().flatten()
}

fn id(value: &Value) -> String {
    value["id"].as_str().unwrap_or_default().to_owned()
}

fn ids(value: &Value, pointer: &str) -> Vec<String> {
    elements(value, pointer).map(id).collect()
}

fn retain(list: &mut Value, stays: impl Fn(&Value) -> bool) {
    let kept: Vec<Value> = elements(list, "").filter(|one| stays(one)).cloned().collect();
    *list = json!(kept);
}

/// The sign-offs that some step asks for.
fn given(checklist: &Value) -> BTreeSet<String> {
    let steps = elements(checklist, "/phases").flat_map(|phase| elements(phase, "/steps"));
    let entries = steps.flat_map(|step| elements(step, "/entries"));
    entries.filter_map(|entry| Some(entry.pointer("/ask/sign_off/sign")?.as_str()?.to_owned())).collect()
}

/// Writes "false" for what can never hold, in every text.
fn replace(value: &mut Value, never: &[String]) {
    match value {
        Value::String(text) => {
            *text = never.iter().fold(text.clone(), |text, gone| text.replace(gone, "false"))
        }
        Value::Array(list) => list.iter_mut().for_each(|one| replace(one, never)),
        Value::Object(fields) => fields.values_mut().for_each(|one| replace(one, never)),
        _ => {}
    }
}
