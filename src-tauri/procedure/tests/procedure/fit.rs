//! A checklist for one vehicle: counts and facts that its spec sheet gives.

use panside_procedure::format::Sheet;
use panside_procedure::load::{Fit, sheet};
use panside_procedure::proof::{self, Answer, Ask, Property, Verdict, go_on};
use panside_procedure::{Procedure, Shown};
use serde_json::{Value, json};

use crate::bay::pan_job;
use crate::said::what;
use crate::support::Draft;

/// The pan job for any pan: the sheet counts its bolts and says whether there is a drain plug to open.
fn any_pan() -> Draft {
    let all = json!({"bolts": "all", "gasket": "all"});
    pan_job()
        .without("bolts", "count")
        .set("bolts", "sheet", json!("pan_bolt_count"))
        .set("pan_off", "takes_off", all.clone())
        .set("pan_on", "puts_back", all)
        .set("bolts_in_tray", "ask/count/of/bolts", json!("all"))
        .set("wrench", "ask/torque/of", json!(["bolts"]))
        .set("", "sheet_keys", json!({"pan_bolt_count": "pan bolts"}))
        .add("", "facts", json!({"id": "plug", "values": ["there", "none"], "sheet": "drain_plug"}))
        .set("drain", "on", json!("plug = there"))
        .set("pan_off", "needs", json!("safe_under and (plug = none or fluid = drained) and pan = on"))
        .set("pan_off", "after", json!([]))
        .set("pan_off", "makes", json!({"pan": "off", "fluid": "drained"}))
}

fn vehicle(bolts: Value, plug: &str) -> Sheet {
    let value = |is: Value| json!({"is": is, "source": "invented for a test", "entered_by": "a test"});
    let torque =
        json!({"torque": {"fasteners": bolts, "stages": [5.0], "unit": "N·m", "tolerance_percent": 4.0}});
    let chart = json!({"chart": {"temperature_unit": "°C", "length_unit": "mm", "agreement": 2.0,
        "points": [{"at": 20.0, "low": 10.0, "high": 20.0}, {"at": 80.0, "low": 30.0, "high": 40.0}]}});
    let text = json!({
        "format": "panside-sheet/1", "id": "invented", "title": "Invented", "revision": 1, "demo": true,
        "values": {"level_chart": value(chart), "pan_bolts": value(torque),
            "pan_bolt_count": value(json!({"count": bolts})), "drain_plug": value(json!({"fact": plug}))},
    });
    sheet(text.to_string().as_bytes()).unwrap_or_else(|problems| panic!("{problems}"))
}

fn fitted(bolts: u8, plug: &str) -> Procedure {
    any_pan().procedure().fitted(&vehicle(json!(bolts), plug)).unwrap_or_else(|lacks| panic!("{lacks:?}"))
}

fn lacks(sheet: &Sheet) -> Vec<String> {
    panside_procedure::load::lacking(&any_pan().procedure(), sheet)
        .iter()
        .map(|lack| lack.english())
        .collect()
}

#[test]
fn a_pan_has_as_many_bolts_as_its_sheet_counts() {
    for bolts in [1, 4, 18, 30, 63] {
        let procedure = fitted(bolts, "there");
        let pan_off = procedure.step(procedure.names.step("pan_off").unwrap());
        assert_eq!(pan_off.takes_off["bolts"], bolts);
        assert_eq!(pan_off.takes_off["gasket"], 1, "what the checklist counts stays");
        assert_eq!(procedure.checklist.items[0].count, bolts);
    }
}

#[test]
fn a_step_for_a_plug_that_is_not_there_is_part_of_no_job() {
    for (plug, shown) in [("there", false), ("none", true)] {
        let procedure = fitted(4, plug);
        let drain = procedure.names.step("drain").unwrap();
        let starts = procedure.machine.all_starts();
        let never = starts.iter().all(|start| procedure.machine.shown(start, drain) == Shown::NotInThisJob);
        assert_eq!((starts.len(), never), (1, shown), "the sheet leaves nothing open");
    }
}

#[test]
fn a_count_that_no_vehicle_has_is_refused_before_the_job() {
    for (bolts, found) in [(0, "0"), (64, "64"), (200, "200")] {
        let says = format!("\"pan_bolt_count\" on the sheet \"invented\" is {found}; it can be 1 to 63");
        let sheet = vehicle(json!(bolts), "there");
        assert!(lacks(&sheet).contains(&says), "{:?}", lacks(&sheet));
        assert!(any_pan().procedure().fitted(&sheet).is_err());
    }
}

#[test]
fn a_torque_for_another_number_of_bolts_than_are_counted_is_refused() {
    let mut sheet = vehicle(json!(18), "there");
    sheet.values.get_mut("pan_bolt_count").unwrap().is = panside_procedure::format::sheet::Value::Count(16);
    assert_eq!(
        lacks(&sheet),
        [
            "\"pan_bolts\" on the sheet \"invented\" is for 18 fasteners, but the sheet counts 16 of them: make the two agree"
        ]
    );
}

#[test]
fn a_pan_without_long_bolts_has_none_to_count() {
    let draft = any_pan()
        .add("", "items", json!({"id": "long", "name": "long bolts", "sheet": "long_bolts", "or_none": true, "reuse": "yes"}))
        .set("", "sheet_keys", json!({"pan_bolt_count": "pan bolts", "long_bolts": "long bolts"}))
        .set("pan_off", "takes_off/long", json!("all"))
        .set("pan_on", "puts_back/long", json!("all"))
        .set("bolts_in_tray", "ask/count/of/long", json!("all"));
    let mut sheet = vehicle(json!(4), "there");
    let long = |count| {
        let mut value = sheet.values["pan_bolt_count"].clone();
        value.is = panside_procedure::format::sheet::Value::Count(count);
        value
    };
    let (none, two) = (long(0), long(2));
    for (value, pieces) in [(none, None), (two, Some(2))] {
        sheet.values.insert("long_bolts".into(), value);
        let procedure = draft.procedure().fitted(&sheet).unwrap();
        let pan_off = procedure.step(procedure.names.step("pan_off").unwrap());
        assert_eq!(pan_off.takes_off.get("long").copied(), pieces);
        assert_eq!(proof::prove(&procedure, Ask::ALL, &mut go_on).verdict, Verdict::Proved);
    }
}

#[test]
fn the_proof_for_a_vehicle_searches_that_vehicle_alone_and_says_so() {
    let states = |procedure: &Procedure| {
        let proof = proof::prove(procedure, Ask::ALL, &mut go_on);
        assert_eq!(proof.verdict, Verdict::Proved, "{:#?}", proof.findings);
        (proof.searches.iter().map(|search| search.states.found).sum::<usize>(), proof)
    };
    let template = any_pan().procedure();
    let all: Vec<_> = Fit::all(&template).into_iter().map(|fit| template.fitted_to(fit).unwrap()).collect();
    let whole = proof::prove_for(&template, &all, Ask::ALL, &mut go_on);
    let any = whole.searches.iter().map(|search| search.states.found).sum::<usize>();
    let (with, one) = states(&fitted(4, "there"));
    let (without, _) = states(&fitted(4, "none"));
    assert_eq!(with + without, any, "every vehicle comes in with a plug or without one");
    assert!(whole.properties.contains(&(Property::AllUsed, Answer::Holds)));
    assert!(one.properties.contains(&(Property::AllUsed, Answer::NotDecided)));
    let other = one.not_claimed.iter().any(|limit| limit.id == "not-claimed-other-vehicles");
    assert!(other && !whole.not_claimed.iter().any(|limit| limit.id == "not-claimed-other-vehicles"));
    assert_eq!(states(&fitted(30, "none")).0, without, "a bolt more is no state more");
}

#[test]
fn several_vehicles_together_must_use_the_whole_checklist() {
    let template = any_pan().procedure();
    let both = [fitted(4, "there"), fitted(18, "none")];
    let proved = proof::prove_for(&template, &both, Ask::ALL, &mut go_on);
    assert_eq!(proved.verdict, Verdict::Proved, "{:#?}", proved.findings);
    let half = proof::prove_for(&template, &both[1..], Ask::ALL, &mut go_on);
    assert_eq!(half.verdict, Verdict::Refuted);
    assert!(half.findings.iter().all(|found| found.property == Property::AllUsed), "{:#?}", half.findings);
    assert!(half.findings.iter().any(|found| found.what.english().contains("drain")));
}

#[test]
fn a_danger_that_only_one_vehicle_reaches_refutes_that_vehicle() {
    let pours = json!({"id": "poured", "signal": "notice", "text": "It runs out.",
        "when": "doing.tag = pours and pan = off"});
    let template = any_pan()
        .set("fill", "needs", json!("plug = none or lift = floor and engine = off and pan = on"))
        .set("fill", "after", json!([]))
        .set("fill", "tags", json!(["pours"]))
        .add("", "dangers", pours)
        .procedure();
    for (plug, is_safe) in [("there", true), ("none", false)] {
        let procedure = template.fitted(&vehicle(json!(4), plug)).unwrap();
        let proof = proof::prove(&procedure, Ask::ALL, &mut go_on);
        let safe = !proof.findings.iter().any(|found| found.property == Property::Safe);
        assert_eq!(safe, is_safe, "{plug}: {:#?}", proof.findings);
    }
}

#[test]
fn what_belongs_to_the_plug_is_neither_asked_nor_counted_where_there_is_none() {
    let washer = json!({"id": "washer", "name": "drain plug washer", "sheet": "washers", "on": "plug = there", "reuse": "never"});
    let classes = json!({"all": {}, "short": {"not_yet": true}, "accounted": {}});
    let count = json!({"id": "washer_off", "label": "Washer", "on": "plug = there",
        "ask": {"count": {"of": {"washer": "all"}}}, "classes": classes});
    let draft = any_pan()
        .add("", "items", washer)
        .set("", "sheet_keys", json!({"pan_bolt_count": "pan bolts", "washers": "washers"}))
        .set("drain", "takes_off", json!({"washer": "all"}))
        .set("pan_on", "puts_back/washer", json!("all"))
        .add("pan_on", "entries", count);
    let template = draft.procedure();
    let mut sheet = vehicle(json!(4), "none");
    let without = template.fitted(&sheet).unwrap();
    let pan_on = without.step(without.names.step("pan_on").unwrap());
    assert!(!pan_on.puts_back.contains_key("washer"));
    assert!(!pan_on.entries.iter().any(|entry| entry.id == "washer_off"));
    assert_eq!(proof::prove(&without, Ask::ALL, &mut go_on).verdict, Verdict::Proved);
    sheet = vehicle(json!(4), "there");
    let lacks = template.fitted(&sheet).unwrap_err();
    let lacks = lacks.iter().map(|lack| lack.english()).collect::<Vec<_>>().join("; ");
    assert_eq!(lacks, "Item \"washer\" needs \"washers\" on the sheet \"invented\": add it as a count");
    sheet.values.insert("washers".into(), sheet.values["pan_bolt_count"].clone());
    let with = template.fitted(&sheet).unwrap();
    let pan_on = with.step(with.names.step("pan_on").unwrap());
    assert_eq!(pan_on.puts_back["washer"], 4);
    assert!(pan_on.entries.iter().any(|entry| entry.id == "washer_off"));
    assert_eq!(proof::prove(&with, Ask::ALL, &mut go_on).verdict, Verdict::Proved);
}

#[test]
fn a_step_that_hangs_on_what_is_not_known_yet_is_on_every_vehicle() {
    let template = any_pan().set("dye", "on", json!("known(level)")).procedure();
    let there = template.on_vehicle(&|key| (key == "drain_plug").then_some("none"));
    let has = |step: &str| there.has_step(template.names.step(step).unwrap());
    assert_eq!((has("dye"), has("drain")), (true, false));
}

#[test]
fn a_sheet_needs_no_value_that_only_a_plug_would_need() {
    let torque = json!({"id": "plug_torque", "label": "Plug", "on": "plug = there",
        "ask": {"torque": {"spec": "plug_torque"}}, "classes": {"inside": {}, "outside": {"not_yet": true}}});
    let template = any_pan().add("pan_on", "entries", torque).procedure();
    let lacks = |plug| panside_procedure::load::lacking(&template, &vehicle(json!(4), plug)).len();
    assert_eq!((lacks("there"), lacks("none")), (1, 0));
}

#[test]
fn what_hangs_on_the_vehicle_reads_facts_and_decides_nothing() {
    let place = |draft: &Draft, says: &str| {
        let problems = draft.load().unwrap_err();
        let found = problems.0.iter().map(what).collect::<Vec<_>>();
        assert!(found.iter().any(|found| found.contains(says)), "{found:?}");
    };
    place(&any_pan().set("bolts", "on", json!("pan = on")), "pan is no fact; only facts can be read here");
    place(&any_pan().set("bolts", "on", json!("worked(drain)")), "worked");
}

#[test]
fn counts_are_said_once_and_by_one_side() {
    let place = |draft: &Draft, says: &str| {
        let problems = draft.load().unwrap_err();
        let found = problems.0.iter().map(what).collect::<Vec<_>>();
        assert!(found.iter().any(|found| found.contains(says)), "{found:?}");
    };
    place(&any_pan().set("bolts", "count", json!(16)), "\"bolts\" has its count from the spec sheet");
    place(&any_pan().set("pan_off", "takes_off/bolts", json!(16)), "write \"all\" in place of a number");
    place(
        &any_pan().set("gasket", "or_none", json!(true)),
        "only the spec sheet can say that there is no \"gasket\"",
    );
    place(&pan_job().set("pan_off", "takes_off/bolts", json!("some")), "a number of pieces or \"all\"");
    place(&any_pan().set("wrench", "ask/torque/of", json!(["nuts"])), "no item is called \"nuts\"");
    let unlabelled = any_pan().set("", "sheet_keys", json!({}));
    place(&unlabelled, "pan_bolt_count");
}

#[test]
fn what_hangs_on_no_vehicle_is_the_same_for_any() {
    let procedure = pan_job().procedure();
    let fitted = procedure.fitted(&vehicle(json!(4), "there")).unwrap();
    assert!(fitted.fit().is_any());
    assert_eq!(any_pan().procedure().fit().to_string(), "");
    assert_eq!(self::fitted(18, "none").fit().to_string(), "drain_plug=none pan_bolt_count=18");
}
