//! A checklist in other words: every text has its place, the rules stay, and what is wrong with a translation is told.

use panside_messages::language::accented;
use panside_procedure::Problem;
use panside_procedure::format::Texts;
use serde_json::{Value, json};

use crate::bay::{entry, pan_job, step};
use crate::said::{is_translated, what};
use crate::support::Draft;

/// The pan job, with one of each thing that has a text and that it lacks.
fn job() -> Draft {
    let values = json!([{"id": "no", "label": "no"}, {"id": "yes", "label": "yes"}]);
    let several = json!({"several": {"ranked": ["fine", "bad"], "options": [
        {"id": "paste", "label": "grey paste", "class": "fine"}, {"id": "chips", "label": "chips", "class": "bad"}]}});
    let decision = json!({"decision": {"of": {"found": "magnet.found"},
        "options": [{"class": "on", "label": "go on"}, {"class": "off", "label": "stop here"}],
        "rows": [{"when": {"found": ["fine"]}, "class": "on", "says": "Paste only."},
            {"otherwise": true, "class": "off", "says": "More than paste."}]}});
    let more = json!({
        "cautions": [
            {"signal": "warning", "text": "Over 60 °C it scalds."},
            {"signal": "notice", "text": "It stains."},
        ],
        "wait": {"for": "the pan to drip", "minutes": 5, "attended": false},
        "entries": [
            entry("picture", json!({"photo": {"of": "the magnet"}}), json!({})),
            entry("found", several, json!({"fine": {}, "bad": {}})),
            entry("judged", decision, json!({"on": {}, "off": {}})),
            entry("words", json!({"note": {"words": ["clean", "black"]}}), json!({})),
        ],
    });
    pan_job().add("", "facts", json!({"id": "dipstick", "values": values, "sheet": "has_dipstick"})).add(
        "strip",
        "steps",
        step("magnet", "bench", more),
    )
}

/// A translation of the job, with one change to it.
fn translated(change: impl FnOnce(&mut Value)) -> String {
    let mut texts = Texts::of(&job().procedure().checklist, "qps-ploc");
    texts.texts.values_mut().for_each(|text| *text = accented(text));
    let mut texts = json!(texts);
    change(&mut texts);
    format!("{texts:#}")
}

/// The one mistake in a translation.
fn one_mistake(change: impl FnOnce(&mut Value)) -> Problem {
    let checklist = job().procedure().checklist;
    let text = translated(change);
    let Err(problems) = Texts::checked(&checklist, text.as_bytes()) else { panic!("this is taken:\n{text}") };
    is_translated(&problems.0, &[&json!(Texts::of(&checklist, "en")).to_string(), &text]);
    let [problem] = problems.0.as_slice() else { panic!("not one mistake: {problems:#?}") };
    problem.clone()
}

fn set(place: &str, text: &str) -> Problem {
    one_mistake(|texts| texts["texts"][place] = json!(text))
}

#[test]
fn every_text_has_a_place_that_is_made_of_ids() {
    let texts = Texts::of(&job().procedure().checklist, "en");
    for (place, text) in [
        ("title", "Pan off and on"),
        ("facts/dipstick/values/yes", "yes"),
        ("conditions/lift/label", "what people read"),
        ("conditions/lift/values/on_locks", "what people read"),
        ("gates/verdict/classes/leak", "what people read"),
        ("sheet_keys/level_chart", "what people read"),
        ("items/bolts/name", "pan bolts"),
        ("sign_offs/clear/text", "clear, seen"),
        ("phases/strip/title", "Strip"),
        ("steps/magnet/title", "magnet"),
        ("steps/magnet/instruction", "Do magnet."),
        ("steps/magnet/cautions/2", "It stains."),
        ("steps/magnet/wait/for", "the pan to drip"),
        ("steps/magnet/entries/picture/label", "picture"),
        ("steps/magnet/entries/picture/of", "the magnet"),
        ("steps/magnet/entries/found/options/paste", "grey paste"),
        ("steps/magnet/entries/judged/options/off", "stop here"),
        ("steps/magnet/entries/judged/rows/2", "More than paste."),
        ("steps/magnet/entries/words/words/2", "black"),
        ("steps/decide/entries/answer/options/leak", "leak"),
        ("vehicle_actions/set_locks/title", "Set on locks"),
        ("dangers/crush/text", "It is dangerous: crush."),
    ] {
        assert_eq!(texts.texts.get(place).map(String::as_str), Some(text), "{place}");
    }
}

#[test]
fn a_place_stays_when_steps_are_put_in_another_order() {
    let mut other = job();
    other.0["phases"][1]["steps"].as_array_mut().unwrap().swap(0, 3);
    other.0["conditions"].as_array_mut().unwrap().swap(0, 3);
    let of = |job: &Draft| Texts::of(&job.procedure().checklist, "en");
    assert_eq!(of(&other), of(&job()));
}

#[test]
fn a_checklist_in_other_words_has_the_same_rules() {
    let procedure = job().procedure();
    let texts = Texts::checked(&procedure.checklist, translated(|_| {}).as_bytes()).unwrap();
    let other = procedure.in_words_of(&texts);
    assert_eq!(other.checklist.title, "Páñ óff áñd óñ");
    assert_eq!(Texts::of(&other.checklist, "qps-ploc"), texts);
    let own = Texts::of(&procedure.checklist, "en");
    let back = serde_json::to_value(other.in_words_of(&own).checklist).unwrap();
    assert_eq!(back, serde_json::to_value(&procedure.checklist).unwrap(), "nothing but texts was changed");
}

#[test]
fn what_a_job_was_begun_with_is_shown_though_it_would_not_be_taken_now() {
    let procedure = job().procedure();
    let text = translated(|texts| {
        texts["texts"].as_object_mut().unwrap().remove("phases/look/title");
        texts["texts"]["steps/gone/title"] = json!("gone");
    });
    assert!(Texts::checked(&procedure.checklist, text.as_bytes()).is_err());
    let other = procedure.in_words_of(&Texts::read(text.as_bytes()).unwrap());
    assert_eq!(
        (other.checklist.phases[0].title.as_str(), other.checklist.phases[1].title.as_str()),
        ("Look", "Štríp")
    );
}

#[test]
fn a_translation_of_something_else_is_refused() {
    for (field, value, says) in [
        ("of", json!("pan-work"), "the texts of checklist \"pan-work\", and the checklist is \"pan-job\""),
        ("revision", json!(2), "the texts of revision 2, and the checklist is revision 1"),
        ("language", json!("en_US"), "\"en_US\" is no language tag"),
        ("language", json!("e"), "\"e\" is no language tag"),
        ("language", json!("es-"), "\"es-\" is no language tag"),
        ("language", json!("es-".repeat(12) + "MX"), "is no language tag"),
        ("format", json!("panside-texts/2"), "this version of Panside reads \"panside-texts/1\""),
        ("revision", json!("one"), "invalid type"),
    ] {
        let problem = one_mistake(|texts| texts[field] = value);
        assert_eq!(problem.place, format!("/{field}"));
        assert!(what(&problem).contains(says), "\"{problem}\" does not say \"{says}\"");
    }
}

#[test]
fn texts_that_are_missing_or_too_many_are_told_by_their_place() {
    let missing = one_mistake(|texts| {
        texts["texts"].as_object_mut().unwrap().remove("steps/magnet/cautions/1");
    });
    assert_eq!(missing.place, "/texts");
    assert!(what(&missing).contains("\"steps/magnet/cautions/1\" is missing"), "{missing}");
    assert!(what(&missing).ends_with("Over 60 °C it scalds."), "{missing}");
    let unknown = set("steps/magnet/cautions/3", "Ñó.");
    assert_eq!(unknown.place, "/texts/steps~1magnet~1cautions~13");
    assert!(what(&unknown).contains("has no text at \"steps/magnet/cautions/3\""), "{unknown}");
}

#[test]
fn a_text_that_is_none_is_refused() {
    let place = "steps/magnet/cautions/1";
    for (text, says) in [
        (" ", "the text is empty"),
        ("Óvér 6 °C ít šçáldš.", "lacks 60"),
        ("Ít šçáldš.", "lacks 60"),
        ("over_60 60", "\"over_60 60\" is an id and no label"),
        (&"60 ".repeat(1334), "has 4002 characters; 4000 are the most"),
    ] {
        let problem = set(place, text);
        assert_eq!(problem.place, "/texts/steps~1magnet~1cautions~11");
        assert!(what(&problem).contains(says), "\"{problem}\" does not say \"{says}\"");
    }
    let checklist = job().procedure().checklist;
    let fits = translated(|texts| texts["texts"][place] = json!("60 ".repeat(1333) + "!"));
    assert!(Texts::checked(&checklist, fits.as_bytes()).is_ok());
}
