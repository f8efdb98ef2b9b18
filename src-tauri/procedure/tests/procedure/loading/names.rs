//! Names that stand for nothing, for two things, or for something else.

use serde_json::json;

use super::{mistakes, one_mistake};
use crate::bay::{danger, pan_job, sign_off, signature, step};
use crate::said::what;

#[test]
fn an_unknown_name_in_needs_is_told_with_its_character() {
    let draft = pan_job().set("drain", "needs", json!("lift = on_locks and motor = off"));
    let says = "no condition, fact or gate is called \"motor\" (character 21)";
    one_mistake(&draft, "drain", "/needs", says);
    let draft = pan_job().set("drain", "needs", json!("safe_below"));
    one_mistake(&draft, "drain", "/needs", "no term, condition, fact or gate is called \"safe_below\"");
}

#[test]
fn every_kind_of_name_in_a_predicate_is_looked_up() {
    for (text, says) in [
        ("worked(draw)", "no step is called \"draw\""),
        ("signed(draw)", "no sign-off is called \"draw\""),
        ("known(draw)", "no gate is called \"draw\""),
        ("empty(draw) = 0", "no item is called \"draw\""),
        ("draw = off", "no condition, fact or gate is called \"draw\""),
        ("lift = draw", "\"draw\" is no value of lift; it can be floor, raised or on_locks"),
        ("level = draw", "\"draw\" is no value of level; it can be low, in_band or high"),
    ] {
        one_mistake(&pan_job().set("drain", "needs", json!(text)), "drain", "/needs", says);
    }
    for (text, says) in [
        ("doing.zone = bench_top", "no step has \"bench_top\" here"),
        ("doing.touches = exhaust", "no step has \"exhaust\" here"),
        ("doing.tag = road", "no step has \"road\" here"),
        ("moving = drop", "no vehicle action is called \"drop\""),
        ("moved = drop", "no vehicle action is called \"drop\""),
    ] {
        one_mistake(&pan_job().set("crush", "when", json!(text)), "crush", "/when", says);
    }
}

#[test]
fn every_predicate_of_a_checklist_is_looked_at() {
    let says = "\"nowhere\"";
    let text = json!("nowhere");
    for (id, field) in [
        ("", "done_when"),
        ("", "safe_to_leave"),
        ("", "start_when"),
        ("raise", "needs"),
        ("drain", "while"),
        ("read_level", "again"),
        ("dye", "on"),
        ("level", "holds_while"),
        ("clear", "holds_while"),
        ("crush", "when"),
    ] {
        one_mistake(&pan_job().set(id, field, text.clone()), id, &format!("/{field}"), says);
    }
    let draft = pan_job().add("", "follows", json!({"when": "nowhere", "sets": {"level": "unknown"}}));
    one_mistake(&draft, "", "/follows/0/when", says);
}

#[test]
fn unknown_names_in_lists_and_pieces_are_told() {
    one_mistake(
        &pan_job().set("drain", "after", json!(["shake", "draw"])),
        "drain",
        "/after/1",
        "no step is called \"draw\"",
    );
    one_mistake(
        &pan_job().set("decide", "relies_on", json!(["draw"])),
        "decide",
        "/relies_on/0",
        "no step is called \"draw\"",
    );
    one_mistake(
        &pan_job().set("drain", "permits", json!(["clean"])),
        "drain",
        "/permits/0",
        "no permit is called \"clean\"",
    );
    one_mistake(
        &pan_job().set("drain", "permits", json!(["torqued"])),
        "drain",
        "/permits/0",
        "no permit is called \"torqued\"",
    );
    one_mistake(
        &pan_job().set("drain", "takes_off", json!({"nuts": 4})),
        "drain",
        "/takes_off/nuts",
        "no item is called \"nuts\"",
    );
    one_mistake(
        &pan_job().set("pan_on", "puts_back", json!({"bolts": 5})),
        "pan_on",
        "/puts_back/bolts",
        "5 pieces; there are 4 of pan bolts",
    );
    let count = json!({"count": {"of": {"nuts": 4}}});
    one_mistake(
        &pan_job().set("bolts_in_tray", "ask", count),
        "bolts_in_tray",
        "/ask/count/of/nuts",
        "no item is called \"nuts\"",
    );
    let draft = pan_job().add("fill", "entries", signature("poured"));
    one_mistake(&draft, "fill", "/entries/0", "no sign-off is called \"poured\"");
    let draft = pan_job().set("build", "beside", json!(["verify"]));
    one_mistake(&draft, "build", "/beside/0", "\"verify\" is no earlier phase");
}

#[test]
fn what_is_assigned_must_exist_and_be_of_the_right_kind() {
    one_mistake(
        &pan_job().set("fill", "makes", json!({"oil": "new"})),
        "fill",
        "/makes/oil",
        "\"oil\" is no condition; gates are assigned by \"sets\"",
    );
    one_mistake(
        &pan_job().set("fill", "makes", json!({"fluid": "new"})),
        "fill",
        "/makes/fluid",
        "\"new\" is no value of fluid; it can be filled or drained",
    );
    one_mistake(
        &pan_job().set("fill", "sets", json!({"fluid": "filled"})),
        "fill",
        "/sets/fluid",
        "\"fluid\" is no gate; conditions are assigned by \"makes\"",
    );
    one_mistake(
        &pan_job().set("raise", "makes", json!({"level": "low"})),
        "raise",
        "/makes/level",
        "\"level\" is no condition",
    );
    one_mistake(
        &pan_job().set("lift", "start", json!(["pit"])),
        "lift",
        "/start/0",
        "\"pit\" is no value of lift",
    );
    one_mistake(
        &pan_job().set("lift", "recover", json!(["pit"])),
        "lift",
        "/recover/0",
        "\"pit\" is no value of lift",
    );
}

#[test]
fn a_name_stands_for_one_thing_only() {
    let taken = "the name \"bolts\" is taken by /conditions/0; choose another";
    let draft = pan_job().set("lift", "id", json!("bolts"));
    assert!(mistakes(&draft).iter().any(|problem| problem.place == "/items/0" && what(problem) == taken));
    let draft = pan_job().add("verify", "steps", step("drain", "bench", json!({})));
    let found = mistakes(&draft);
    assert_eq!(found[0].place, "/phases/3/steps/1");
    assert!(
        what(&found[0]).contains("the name \"drain\" is taken by /phases/1/steps/1"),
        "{}",
        what(&found[0])
    );
    let draft = pan_job().add("", "dangers", danger("crush", "false"));
    assert_eq!(mistakes(&draft)[0].place, "/dangers/3");
    let draft =
        pan_job().add("drain", "entries", signature("clear")).add("drain", "entries", signature("clear"));
    let found = mistakes(&draft);
    assert!(
        found.iter().any(|problem| what(problem) == "the entry \"name\" stands twice in this step"),
        "{found:?}"
    );
}

#[test]
fn a_word_of_the_predicate_language_is_no_name() {
    let connectives = ["and", "or", "not", "in", "true", "false", "unknown"];
    let atoms = ["tray_clear", "worked", "signed", "known", "empty", "moving", "moved"];
    let misspelt = ["Lift", "lift.height", ""];
    for word in connectives.iter().chain(&atoms).chain(&misspelt) {
        let found = mistakes(&pan_job().add("", "conditions", json!({"id": word, "values": ["yes", "no"]})));
        assert_eq!(found[0].place, "/conditions/4", "{word}: {found:?}");
        assert!(what(&found[0]).starts_with(&format!("\"{word}\" cannot be a name;")), "{}", what(&found[0]));
    }
}

#[test]
fn a_value_stands_once_and_can_be_written_in_a_predicate() {
    let twice = pan_job().add("lift", "values", json!("floor"));
    one_mistake(&twice, "lift", "/values/3", "\"floor\" stands twice");
    one_mistake(
        &pan_job().add("lift", "values", json!("On locks")),
        "lift",
        "/values/3",
        "\"On locks\" cannot be a value",
    );
    one_mistake(
        &pan_job().add("verdict", "classes", json!("unknown")),
        "verdict",
        "/classes/3",
        "\"unknown\" cannot be a value",
    );
}

#[test]
fn a_class_called_in_can_be_named_in_a_predicate() {
    let draft = pan_job().add("verdict", "classes", json!("in")).set(
        "drain",
        "needs",
        json!("verdict = in or verdict in {in, leak}"),
    );
    draft.procedure();
}

#[test]
fn a_sign_off_is_asked_for_by_one_step_exactly() {
    let draft = pan_job().add("", "sign_offs", sign_off("poured", "attest", "true"));
    one_mistake(&draft, "poured", "", "0 steps ask for this sign-off; exactly one must");
    let draft = pan_job().add("fill", "entries", signature("torqued"));
    one_mistake(&draft, "torqued", "", "2 steps ask for this sign-off; exactly one must");
}
