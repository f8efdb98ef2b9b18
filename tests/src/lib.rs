//! Helpers shared by the whole-project tests and by the pictures of the README.
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "the edge: these start programs, read files and wait"
)]

use std::path::Path;

use panside_procedure::format::sheet::Value;
use panside_procedure::format::{Checklist, Sheet};
use panside_procedure::proof::{Finding, Property};
use panside_procedure::{Procedure, load, parts};

pub mod many;
pub mod promela;
pub mod python;
pub mod window;

/// The checklist of that name in `checklists/`, as the program loads it: its parts in place.
///
/// # Panics
/// When there is none, or it does not join.
#[must_use]
pub fn checklist(name: &str) -> String {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../checklists");
    joined(&folder.join(format!("{name}.checklist.json"))).unwrap_or_else(|error| panic!("{name}: {error}"))
}

/// The same for the vehicle of the sheet `demo-six-speed` alone.
///
/// # Panics
/// When there is none, or it does not join.
#[must_use]
pub fn demo_checklist(name: &str) -> String {
    for_demo(&checklist(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
}

/// A checklist for vehicles that come in as the sheet `demo-six-speed` says, with one of each item that sheets count: for
/// whoever reads checklists without a sheet. One whose rules hang on no vehicle stays as it is.
///
/// # Errors
/// When it is not JSON.
pub fn for_demo(text: &str) -> Result<String, serde_json::Error> {
    for_vehicle(text, "demo-six-speed")
}

/// The same for the vehicle of another sheet of `checklists/sheets/`.
///
/// # Errors
/// When it is not JSON.
pub fn for_vehicle(text: &str, sheet_name: &str) -> Result<String, serde_json::Error> {
    let mut checklist: serde_json::Value = serde_json::from_str(text)?;
    let sheet = sheet(sheet_name);
    let facts = checklist["facts"].as_array().cloned().unwrap_or_default();
    let said = facts.iter().filter_map(|fact| {
        let Value::Fact(word) = &sheet.values.get(fact["sheet"].as_str()?)?.is else { return None };
        Some(format!(" and {} = {word}", fact["id"].as_str()?))
    });
    let start = checklist["start_when"].as_str().unwrap_or("true");
    checklist["start_when"] = format!("({start}){}", said.collect::<String>()).into();
    Ok(checklist.to_string())
}

/// A sheet of `checklists/sheets/`.
///
/// # Panics
/// When there is none, or it cannot be read.
#[must_use]
pub fn sheet(name: &str) -> Sheet {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../checklists/sheets");
    let bytes = std::fs::read(folder.join(format!("{name}.sheet.json")));
    let bytes = bytes.unwrap_or_else(|error| panic!("{name}: {error}"));
    load::sheet(&bytes).unwrap_or_else(|problems| panic!("{name}: {problems}"))
}

/// The demo sheets: together their vehicles have all that the shipped checklists ask about.
pub const SHEETS: [&str; 3] = ["demo-six-speed", "demo-four-speed", "demo-eight-speed"];

/// A checklist for the vehicle of each demo sheet.
///
/// # Errors
/// What the checklist is without for one of them, in words.
pub fn vehicles(procedure: &Procedure) -> Result<Vec<Procedure>, String> {
    let fitted = |name: &str| {
        let fitted = procedure.fitted(&sheet(name));
        fitted.map_err(|lacks| lacks.iter().map(|lack| lack.english()).collect::<Vec<_>>().join("; "))
    };
    SHEETS.into_iter().map(fitted).collect()
}

/// Values or classes of a checklist that a test makes, each with a label.
#[must_use]
pub fn named(ids: &[&str]) -> serde_json::Value {
    ids.iter().map(|id| serde_json::json!({ "id": id, "label": "a label" })).collect()
}

/// Every predicate of a checklist as it is written, for whoever reads them apart from the Machine.
#[must_use]
pub fn predicates(checklist: &Checklist) -> Vec<&String> {
    let mut texts = vec![&checklist.start_when, &checklist.done_when, &checklist.safe_to_leave];
    texts.extend(checklist.terms.values());
    texts.extend(checklist.gates.iter().filter_map(|gate| gate.holds_while.as_ref()));
    texts.extend(checklist.sign_offs.iter().map(|sign| &sign.holds_while));
    texts.extend(checklist.follows.iter().map(|follow| &follow.when));
    texts.extend(checklist.vehicle_actions.iter().map(|made| &made.needs));
    texts.extend(checklist.dangers.iter().map(|danger| &danger.when));
    for step in checklist.phases.iter().flat_map(|phase| &phase.steps) {
        texts.push(&step.needs);
        texts.extend([&step.on, &step.while_, &step.again].into_iter().flatten());
    }
    texts
}

/// The danger that is met, where a finding says that one is.
#[must_use]
pub fn danger_met(procedure: &Procedure, found: &Finding) -> Option<String> {
    let is_met = matches!(found.property, Property::Safe | Property::HonestWhenWrong);
    let at = found.place.pointer.strip_prefix("/dangers/")?.strip_suffix("/when")?;
    let danger = procedure.checklist.dangers.get(at.parse::<usize>().ok()?)?;
    is_met.then(|| danger.id.clone())
}

/// The text of a checklist's file with the parts in place that lie beside it.
///
/// # Errors
/// When it cannot be read or joined, in words.
pub fn joined(path: &Path) -> Result<String, String> {
    let folder = path.parent().unwrap_or(Path::new("."));
    let part = |name: &str| std::fs::read(folder.join(parts::file_of(name))).ok();
    let bytes = std::fs::read(path).map_err(|error| format!("{}: {error}", path.display()))?;
    parts::join(&bytes, &part).map(|joined| joined.text).map_err(|problems| problems.to_string())
}
