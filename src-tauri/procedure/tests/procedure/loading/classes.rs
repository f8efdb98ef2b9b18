//! What the classes of an entry may and must do.

use serde_json::{Value, json};

use super::{mistakes, one_mistake};
use crate::bay::{choice, entry, pan_job};
use crate::said::what;
use crate::support::Draft;

/// The pan job with one more entry, `asked`, at the filling.
fn asked(ask: Value, classes: Value) -> Draft {
    pan_job().add("fill", "entries", entry("asked", ask, classes))
}

fn answered(classes: Value) -> Draft {
    pan_job().add("fill", "entries", choice("asked", &["good", "bad"], classes))
}

#[test]
fn a_class_that_a_kind_can_return_is_not_left_out() {
    let count = || json!({"count": {"of": {"bolts": 4}}});
    let says = "a count can come out as \"accounted\"; say what that does (an empty {} for nothing)";
    one_mistake(&asked(count(), json!({"all": {}, "short": {"not_yet": true}})), "asked", "/classes", says);
    let torque = json!({"torque": {"spec": "pan_bolts"}});
    one_mistake(
        &asked(torque, json!({"inside": {}})),
        "asked",
        "/classes",
        "a torque can come out as \"outside\"",
    );
    let limited = json!({"reading": {"unit": "°C", "at_most": "hot"}});
    one_mistake(
        &asked(limited, json!({"inside": {}})),
        "asked",
        "/classes",
        "a reading can come out as \"outside\"",
    );
    let level = json!({"level": {"chart": "level_chart"}});
    let classes = json!({"below": {}, "in": {}, "above": {}});
    one_mistake(&asked(level, classes), "asked", "/classes", "a level can come out as \"unclear\"");
    one_mistake(&answered(json!({"good": {}})), "asked", "/classes", "a choice can come out as \"bad\"");
    let found = mistakes(&asked(count(), json!({})));
    assert_eq!(found.len(), 3, "each class is told: {found:?}");
}

#[test]
fn a_kind_with_one_class_needs_no_classes() {
    for ask in [
        json!({"photo": {"of": "the pan"}}),
        json!({"note": {}}),
        json!({"scan": {"of": "vin"}}),
        json!({"timer": {"at_least": "drip"}}),
        json!({"reading": {"unit": "L"}}),
        json!({"estimate": {"parts": ["filter"]}}),
    ] {
        asked(ask, json!({})).procedure();
    }
}

#[test]
fn an_answer_that_is_missing_or_less_than_the_estimate_holds_the_step() {
    let answer = |of: Value| json!({"authorization": {"for": of}});
    let classes = |below: Value| json!({"agreed": {}, "declined": {"ends": "stop"}, "pending": {"not_yet": true}, "below": below});
    let priced = || pan_job().add("fill", "entries", entry("estimate", json!({"estimate": {}}), json!({})));
    let with = |of: &str, classes: Value| {
        priced().add("fill", "entries", entry("asked", answer(json!(of)), classes))
    };
    with("fill.estimate", classes(json!({"not_yet": true}))).procedure();
    let passed = with("fill.estimate", classes(json!({})));
    one_mistake(&passed, "asked", "/classes/below", "\"below\"");
    let nothing = with("fill.nothing", classes(json!({"not_yet": true})));
    one_mistake(
        &nothing,
        "asked",
        "",
        "no entry is called \"fill.nothing\"; write it as step.entry, an estimate",
    );
    let alone = json!({"agreed": {}, "declined": {"ends": "stop"}, "pending": {"not_yet": true}});
    asked(json!({"authorization": {}}), alone).procedure();
    let left_out = asked(json!({"authorization": {}}), json!({"agreed": {}, "declined": {"ends": "stop"}}));
    one_mistake(&left_out, "asked", "/classes", "an authorization can come out as \"pending\"");
}

#[test]
fn a_class_that_a_kind_never_returns_is_told() {
    let photo = json!({"photo": {"of": "the pan"}});
    one_mistake(
        &asked(photo, json!({"taken": {}, "blurred": {}})),
        "asked",
        "/classes/blurred",
        "a photo never comes out as \"blurred\"; it can be taken",
    );
    let unlimited = json!({"reading": {"unit": "L"}});
    one_mistake(
        &asked(unlimited, json!({"read": {}, "outside": {}})),
        "asked",
        "/classes/outside",
        "a reading never comes out as \"outside\"; it can be read",
    );
}

#[test]
fn a_class_that_is_not_yet_changes_nothing() {
    let says = "\"not_yet\" keeps the step begun and changes nothing; remove the rest";
    for more in [json!({"sets": {"verdict": "leak"}}), json!({"ends": "stop"})] {
        let mut bad = more;
        bad["not_yet"] = json!(true);
        one_mistake(&answered(json!({"good": {}, "bad": bad})), "asked", "/classes/bad", says);
    }
}

#[test]
fn a_short_count_an_unclear_level_and_a_torque_outside_hold_their_step() {
    let says = "must be \"not_yet\": the step is held until it is corrected";
    let count = json!({"count": {"of": {"bolts": 4}}});
    one_mistake(
        &asked(count, json!({"all": {}, "short": {}, "accounted": {}})),
        "asked",
        "/classes/short",
        says,
    );
    let level = json!({"level": {"chart": "level_chart"}});
    one_mistake(
        &asked(level, json!({"below": {}, "in": {}, "above": {}, "unclear": {}})),
        "asked",
        "/classes/unclear",
        says,
    );
    let torque = json!({"torque": {"spec": "pan_bolts"}});
    one_mistake(&asked(torque, json!({"inside": {}, "outside": {}})), "asked", "/classes/outside", says);
}

#[test]
fn good_answers_are_some_of_the_answers_and_the_work_goes_on_with_them() {
    let good = |good: Value, bad: Value| {
        answered(json!({"good": {}, "bad": bad})).set("asked", "ask/choice/good", good)
    };
    good(json!(["good"]), json!({"ends": "stop"})).procedure();
    let place = "/ask/choice/good";
    one_mistake(
        &good(json!(["fine"]), json!({"not_yet": true})),
        "asked",
        &format!("{place}/0"),
        "\"fine\" is none of the options",
    );
    for bad in [json!({"not_yet": true}), json!({"ends": "stop"})] {
        let found = mistakes(&good(json!(["good", "bad"]), bad));
        let says = "\"bad\" holds the step or ends the job, so it is no good answer";
        assert!(found.iter().any(|found| what(found) == says), "{found:?}");
    }
    one_mistake(
        &good(json!(["good", "bad"]), json!({})),
        "asked",
        place,
        "every answer is good; leave \"good\" out",
    );
}

#[test]
fn a_step_that_could_never_be_done_is_refused() {
    let held = json!({"not_yet": true});
    one_mistake(
        &answered(json!({"good": held, "bad": held})),
        "asked",
        "/classes",
        "every class is \"not_yet\", so the step could never be done",
    );
}

#[test]
fn an_optional_entry_decides_nothing() {
    let says = "an optional entry cannot decide anything; make it required or take this out";
    for effect in [json!({"sets": {"verdict": "leak"}}), json!({"not_yet": true}), json!({"ends": "stop"})] {
        let draft = answered(json!({"good": {}, "bad": effect})).set("asked", "optional", json!(true));
        one_mistake(&draft, "asked", "/classes/bad", says);
    }
    answered(json!({"good": {}, "bad": {}})).set("asked", "optional", json!(true)).procedure();
    let draft = pan_job().set("name", "optional", json!(true));
    one_mistake(&draft, "name", "", "a sign-off is never optional; skip the step or take it out");
}

#[test]
fn only_what_the_hands_did_changes_conditions() {
    let classes = json!({"good": {}, "bad": {"makes": {"pan": "off"}}});
    let draft = answered(classes.clone());
    one_mistake(
        &draft,
        "asked",
        "/classes/bad",
        "only a choice with \"hands_did\": true may change conditions",
    );
    let options = json!([{"class": "good", "label": "good"}, {"class": "bad", "label": "bad"}]);
    asked(json!({"choice": {"options": options, "hands_did": true}}), classes).procedure();
}

#[test]
fn two_entries_of_a_step_do_not_contradict_each_other() {
    let sets = |value: &str| json!({"good": {"sets": {"verdict": value}}, "bad": {}});
    let draft = answered(sets("service")).add(
        "fill",
        "entries",
        choice("asked_again", &["good", "bad"], sets("leak")),
    );
    one_mistake(&draft, "fill", "", "two entries of this step give verdict different values at once");
    let always = answered(sets("service")).set("fill", "sets", json!({"verdict": "leak"}));
    one_mistake(&always, "fill", "", "two entries of this step give verdict different values at once");
}

#[test]
fn a_choice_has_two_options_that_differ() {
    let one = json!({"choice": {"options": [{"class": "good", "label": "Good"}]}});
    one_mistake(&asked(one, json!({})), "asked", "", "a choice needs at least two options");
    let draft = pan_job().add("fill", "entries", choice("asked", &["good", "good"], json!({"good": {}})));
    one_mistake(&draft, "asked", "/ask/choice/options/1", "\"good\" stands twice");
}

#[test]
fn a_step_that_can_turn_out_in_too_many_ways_is_refused() {
    let mut draft = pan_job();
    for at in 0..7 {
        draft = draft.add("", "gates", json!({"id": format!("g{at}"), "classes": ["good"]}));
        let classes = json!({"good": {"sets": {format!("g{at}"): "good"}}, "bad": {}});
        draft = draft.add("fill", "entries", choice(&format!("ask{at}"), &["good", "bad"], classes));
    }
    one_mistake(
        &draft,
        "fill",
        "",
        "the entries of this step can turn out in more than 64 ways; split the step",
    );
}

#[test]
fn classes_that_do_the_same_are_one_way_to_turn_out() {
    let procedure = pan_job().procedure();
    let ways = |step: &str| procedure.machine.steps[procedure.names.step(step).unwrap().at()].outcomes.len();
    assert_eq!(ways("pan_off"), 1, "all there and accounted for do the same");
    assert_eq!(ways("decide"), 3);
    assert_eq!(ways("read_level"), 3, "unclear keeps the step begun");
}
