//! Spec sheets: each value with its source, and every value that a checklist names.

use panside_procedure::Procedure;
use panside_procedure::format::Sheet;
use panside_procedure::load::sheet;
use serde_json::{Value, json};

use crate::bay::pan_job;
use crate::said::{Data, is_translated, said, what};

/// An invented sheet that has all the pan job names.
fn whole_sheet() -> Value {
    let value = |is: Value| json!({"is": is, "source": "invented for a test", "entered_by": "a test"});
    let chart = json!({"chart": {"temperature_unit": "°C", "length_unit": "mm", "agreement": 2.0,
        "points": [{"at": 20.0, "low": 10.0, "high": 20.0}, {"at": 80.0, "low": 30.0, "high": 40.0}]}});
    let torque =
        json!({"torque": {"fasteners": 4, "stages": [5.0, 10.0], "unit": "N·m", "tolerance_percent": 4.0}});
    json!({
        "format": "panside-sheet/1", "id": "invented", "title": "Invented", "revision": 1, "demo": true,
        "values": {"level_chart": value(chart), "pan_bolts": value(torque)},
    })
}

fn read(sheet_value: &Value) -> Sheet {
    sheet(format!("{sheet_value:#}").as_bytes()).unwrap_or_else(|problems| panic!("{problems}"))
}

fn mistake(sheet_value: &Value, place: &str, says: &str) {
    let Err(problems) = sheet(format!("{sheet_value:#}").as_bytes()) else { panic!("this sheet is read") };
    let [problem] = problems.0.as_slice() else { panic!("not one mistake: {problems}") };
    assert_eq!(problem.place, place);
    assert!(what(problem).contains(says), "{problem}");
    is_translated(&problems.0, &[&sheet_value.to_string()]);
    assert!(problem.line > 1 && problem.column > 1);
}

/// What a checklist lacks on a sheet.
fn lacking(procedure: &Procedure, sheet: &Sheet) -> Vec<String> {
    let files =
        [serde_json::to_string(&procedure.checklist), serde_json::to_string(sheet)].map(Result::unwrap);
    let files = [files[0].as_str(), files[1].as_str()];
    let lacks = panside_procedure::load::lacking(procedure, sheet);
    lacks.iter().for_each(|lack| Data::of(&files).is_all_that_stays(lack));
    lacks.iter().map(said).collect()
}

#[test]
fn a_sheet_that_has_everything_lacks_nothing() {
    assert_eq!(lacking(&pan_job().procedure(), &read(&whole_sheet())), Vec::<String>::new());
}

#[test]
fn a_value_without_source_or_author_is_refused() {
    for needed in ["source", "entered_by"] {
        let mut sheet = whole_sheet();
        sheet["values"]["pan_bolts"][needed] = json!("  ");
        let says = format!("\"{needed}\" is empty: say where the value comes from and who entered it");
        mistake(&sheet, &format!("/values/pan_bolts/{needed}"), &says);
        sheet["values"]["pan_bolts"].as_object_mut().unwrap().remove(needed);
        mistake(&sheet, "/values/pan_bolts", &format!("\"{needed}\" is missing; add it"));
    }
}

#[test]
fn an_unknown_kind_of_value_is_told() {
    let mut sheet = whole_sheet();
    sheet["values"]["pan_bolts"]["is"] = json!({"weight": 3});
    mistake(&sheet, "/values/pan_bolts/is", "there is no value \"weight\" here");
}

#[test]
fn a_key_that_a_checklist_names_must_be_on_the_sheet() {
    let mut sheet = whole_sheet();
    sheet["values"].as_object_mut().unwrap().remove("pan_bolts");
    assert_eq!(
        lacking(&pan_job().procedure(), &read(&sheet)),
        [
            "entry \"wrench\" of step \"pan_on\" needs \"pan_bolts\" on the sheet \"invented\": add it as a torque"
        ]
    );
}

#[test]
fn a_key_with_another_kind_of_value_is_told() {
    let mut sheet = whole_sheet();
    sheet["values"]["pan_bolts"]["is"] = json!({"measure": {"value": 10.0, "unit": "N·m"}});
    assert_eq!(
        lacking(&pan_job().procedure(), &read(&sheet)),
        [
            "entry \"wrench\" of step \"pan_on\" needs \"pan_bolts\" as a torque, but the sheet \"invented\" has a measure there"
        ]
    );
}

#[test]
fn every_step_that_reads_a_missing_key_is_told() {
    let mut sheet = whole_sheet();
    sheet["values"].as_object_mut().unwrap().remove("level_chart");
    let told = lacking(&pan_job().procedure(), &read(&sheet));
    assert_eq!(told.len(), 2, "{told:?}");
    assert!(told[0].contains("step \"read_level\"") && told[1].contains("step \"read_again\""), "{told:?}");
}

#[test]
fn a_fact_must_have_one_of_its_values_on_the_sheet() {
    let draft = pan_job().add(
        "",
        "facts",
        json!({"id": "dipstick", "values": ["yes", "no"], "sheet": "has_dipstick"}),
    );
    let procedure = draft.procedure();
    let mut sheet = whole_sheet();
    let told = |sheet: &Value| lacking(&procedure, &read(sheet));
    assert_eq!(
        told(&sheet),
        ["fact \"dipstick\" needs \"has_dipstick\" on the sheet \"invented\": add it as a fact"]
    );
    sheet["values"]["has_dipstick"] =
        json!({"is": {"fact": "maybe"}, "source": "a test", "entered_by": "a test"});
    assert_eq!(
        told(&sheet),
        ["\"has_dipstick\" on the sheet \"invented\" is \"maybe\"; it can be yes or no"]
    );
    sheet["values"]["has_dipstick"]["is"] = json!({"fact": "no"});
    assert_eq!(told(&sheet), Vec::<String>::new());
}
