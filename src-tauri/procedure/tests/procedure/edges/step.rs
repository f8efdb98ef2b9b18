//! What one step and one entry have of anything.

use serde_json::{Map, Value, json};

use super::{all, edge, in_a_row, many, proved, refused, small, with};
use crate::bay::{choice, sign_off, step};
use crate::support::Draft;

fn names(name: &str, count: usize) -> impl Iterator<Item = String> {
    (0..count).map(move |at| format!("{name}{at}"))
}

fn conditions(name: &str, count: usize) -> Value {
    many(count, |at| json!({"id": format!("{name}{at}"), "values": ["a", "b"]}))
}

fn gates(count: usize) -> Value {
    many(count, |at| json!({"id": format!("g{at}"), "classes": ["a"]}))
}

#[test]
fn a_step_and_a_vehicle_action_take_a_week() {
    edge(10_080, "minutes", 0, |minutes| small().set("s0", "minutes", json!(minutes)));
    edge(10_080, "minutes", 0, |minutes| small().set("raise", "minutes", json!(minutes)));
}

/// The last of 255 steps comes after all the others, and builds on them.
#[test]
fn a_step_comes_after_all_others_and_builds_on_them() {
    for list in ["after", "relies_on"] {
        edge(254, list, 0, |count| {
            let draft = in_a_row((0..255).map(|at| step(&format!("s{at}"), "bench", json!({}))).collect());
            let before = many(count, |at| json!(format!("s{}", (253 + at) % 254)));
            draft.set("s254", list, before)
        });
    }
}

#[test]
fn a_step_has_64_permits_and_64_entries() {
    let signed = |permits: usize, entries: usize| {
        let entry = |at: usize| {
            let ask =
                if at < 64 { json!({"sign_off": {"sign": format!("p{at}")}}) } else { json!({"note": {}}) };
            json!({"id": format!("e{at}"), "label": "Sign", "ask": ask})
        };
        let steps = vec![
            step("sign", "bench", json!({"entries": many(entries, entry)})),
            step("work", "bench", json!({"permits": many(permits, |at| json!(format!("p{}", at % 64)))})),
        ];
        let sign = |at: usize| {
            let mut sign = sign_off(&format!("p{at}"), "permit", "true");
            sign["by"] = json!("service_writer");
            sign
        };
        with(in_a_row(steps), "sign_offs", many(64, sign))
    };
    edge(64, "permits", 0, |count| signed(count, 64));
    edge(64, "entries", 0, |count| signed(64, count));
}

#[test]
fn a_step_has_16_marks_of_a_kind_and_64_cautions() {
    edge(16, "touches", 0, |count| small().set("s0", "touches", names("part", count).collect()));
    edge(16, "tags", 0, |count| small().set("s0", "tags", names("kind", count).collect()));
    let caution = |_| json!({"signal": "caution", "text": "It is hot."});
    edge(64, "cautions", 0, |count| small().set("s0", "cautions", many(count, caution)));
}

#[test]
fn a_step_changes_64_conditions_in_each_of_three_ways_and_sets_64_gates() {
    let makes = |begun: usize, left: usize, made: usize, set: usize| {
        let draft = with(with(small(), "conditions", conditions("c", 65)), "conditions", conditions("m", 65));
        with(draft, "gates", gates(65))
            .set("s0", "on_begin", all(names("c", begun), "b"))
            .set("s0", "on_leave", all(names("c", left), "a"))
            .set("s0", "makes", all(names("m", made), "b"))
            .set("s0", "sets", all(names("g", set), "a"))
    };
    let draft = |begun, left, made, set| {
        // Gates that nothing sets could not be found out.
        let mut draft = makes(begun, left, made, set);
        draft.0["gates"] = gates(set);
        draft
    };
    edge(64, "on_begin", 0, |count| draft(count, 64, 64, 64));
    edge(64, "on_leave", 0, |count| draft(64, count, 64, 64));
    edge(64, "makes", 0, |count| draft(64, 64, count, 64));
    edge(64, "sets", 0, |count| draft(64, 64, 64, count));
}

fn pieces(count: usize) -> Value {
    let pieces = names("i", count).map(|item| (item, json!(1)));
    Value::Object(pieces.collect())
}

/// A step that takes pieces off and counts them, and one that puts them back.
fn taken(off: usize, counted: usize, back: usize) -> Draft {
    let classes = json!({"all": {}, "short": {"not_yet": true}, "accounted": {}});
    let count = json!({"id": "tray", "label": "Count", "ask": {"count": {"of": pieces(counted)}}, "classes": classes});
    let steps = vec![
        step("off", "bench", json!({"takes_off": pieces(off), "entries": [count]})),
        step("on", "bench", json!({"puts_back": pieces(back)})),
    ];
    let item = |at: usize| json!({"id": format!("i{at}"), "name": "n", "count": 1, "reuse": "yes"});
    with(in_a_row(steps), "items", many(65, item))
}

#[test]
fn a_step_moves_and_counts_64_items() {
    edge(64, "takes_off", 0, |count| taken(count, 64, 64));
    edge(64, "puts_back", 0, |count| taken(64, 64, count));
    edge(64, "items", 0, |count| taken(64, count, 64));
}

/// A question of which each answer does something else.
fn asked(answers: usize) -> Draft {
    let names: Vec<String> = names("a", answers).collect();
    let listed: Vec<&str> = names.iter().map(String::as_str).collect();
    let effects = names.iter().enumerate().map(|(at, answer)| {
        let gate = if at < 63 { "first" } else { "second" };
        (answer.clone(), json!({"sets": {gate: if at < 63 { answer } else { "a" }}}))
    });
    let entry = choice("ask", &listed, Value::Object(effects.collect()));
    let first = json!({"id": "first", "classes": names.iter().take(63).collect::<Vec<_>>()});
    with(small(), "gates", json!([first, {"id": "second", "classes": ["a"]}])).add("s0", "entries", entry)
}

#[test]
fn a_question_has_64_answers_that_each_do_something_else() {
    proved(&asked(64));
    let says = ["classes: there are 65; 0 to 64 are possible", "options: there are 65; 0 to 64 are possible"];
    assert_eq!(refused(&asked(65)), says.map(str::to_owned).into());
}

#[test]
fn a_class_makes_64_changes() {
    edge(64, "changes of one class", 0, |count| {
        let sets = all(names("g", count), "a");
        let entry = choice("ask", &["yes", "no"], json!({"yes": {"sets": sets}, "no": {}}));
        with(small(), "gates", gates(count)).add("s0", "entries", entry)
    });
}

#[test]
fn a_step_turns_out_in_64_ways() {
    let turns_out = |questions: usize| {
        let entries = many(questions, |at| {
            let effect = |answer: &str| json!({"sets": {format!("q{at}"): answer}});
            choice(&format!("e{at}"), &["yes", "no"], json!({"yes": effect("yes"), "no": effect("no")}))
        });
        let gate = |at: usize| json!({"id": format!("q{at}"), "classes": ["yes", "no"]});
        with(small(), "gates", many(questions, gate)).set("s0", "entries", entries)
    };
    proved(&turns_out(6));
    let says = "the entries of this step can turn out in more than 64 ways; split the step";
    assert_eq!(refused(&turns_out(7)), [says.to_owned()].into());
}

/// Amounts that are read before, and a balance of them.
fn balanced(amounts: usize) -> Draft {
    let read = |at: usize| json!({"id": format!("amount{at}"), "label": "Amount", "ask": {"reading": {"unit": "L"}}});
    let amount = |at: usize| json!({"volume": format!("s0.amount{}", at % 63)});
    let (drained, added) = (many(1, amount), many(amounts - 1, |at| amount(1 + at)));
    let classes = json!({"closes": {}, "differs": {"not_yet": true}, "explained": {}});
    let ask =
        json!({"balance": {"drained": drained, "added": added, "density": "density", "unseen": "unseen"}});
    let balance = json!({"id": "balance", "label": "Balance", "ask": ask, "classes": classes});
    let steps = vec![
        step("s0", "bench", json!({"entries": many(63, read)})),
        step("s1", "bench", json!({"entries": [balance]})),
    ];
    in_a_row(steps)
}

#[test]
fn a_balance_has_64_amounts() {
    edge(64, "amounts", 0, balanced);
}

#[test]
fn a_part_is_heated_by_64_conditions() {
    edge(64, "conditions", 0, |count| {
        let heated_by: Map<String, Value> = names("c", count).map(|name| (name, json!("b"))).collect();
        let classes = json!({"cool": {}, "hot": {"not_yet": true}});
        let ask = json!({"cool_down": {"limit": "touch_limit", "heated_by": heated_by}});
        let probe = json!({"id": "probe", "label": "Probe", "ask": ask, "classes": classes});
        with(small(), "conditions", conditions("c", 65)).add("s0", "entries", probe)
    });
}
