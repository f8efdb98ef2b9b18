//! What the variables of a checklist are made of, and the room they have together.

use serde_json::{Value, json};

use super::{all, edge, in_a_row, many, proved, refused, small, with};
use crate::bay::{choice, danger, step};
use crate::support::Draft;

fn values(count: usize, name: &str) -> Value {
    many(count, |at| json!(format!("{name}{at}")))
}

/// The dangers ask for the last value of all.
fn asks_for(draft: Draft, when: &str) -> Draft {
    draft.add("", "dangers", danger("last", &format!("doing.zone = under and lift = floor and {when}")))
}

#[test]
fn a_condition_has_64_values_at_intake_too() {
    let dial = |count: usize, start: Value, recover: Value| {
        let dial = json!({"id": "dial", "values": values(count, "d"), "start": start, "recover": recover});
        asks_for(small().add("", "conditions", dial), &format!("dial = d{}", count - 1))
    };
    edge(64, "values", 2, |count| dial(count, json!([format!("d{}", count - 1)]), json!([])));
    proved(&dial(64, values(64, "d"), values(64, "d")));
    // More than there are can only stand twice.
    let twice = |list: &str| {
        let mut draft = dial(64, values(64, "d"), values(64, "d"));
        draft.0["conditions"][1][list] = many(65, |at| json!(format!("d{}", at % 64)));
        assert_eq!(refused(&draft), ["values: there are 65; 0 to 64 are possible".to_owned()].into());
    };
    twice("start");
    twice("recover");
}

#[test]
fn a_fact_has_64_values() {
    edge(64, "values", 2, |count| {
        let fact = json!({"id": "series", "values": values(count, "v"), "sheet": "series"});
        asks_for(small().add("", "facts", fact), &format!("series = v{}", count - 1))
    });
}

#[test]
fn a_gate_has_63_classes_beside_unknown() {
    edge(63, "classes", 1, |count| {
        let names: Vec<String> = (0..count).map(|at| format!("a{at}")).collect();
        let answers: Vec<&str> = names.iter().take(63).map(String::as_str).collect();
        let classes =
            answers.iter().map(|answer| ((*answer).to_owned(), json!({"sets": {"answer": answer}})));
        let asks = choice("ask", &answers, Value::Object(classes.collect()));
        let draft = small()
            .add("", "gates", json!({"id": "answer", "classes": values(count, "a")}))
            .add("s0", "entries", asks);
        asks_for(draft, &format!("known(answer) and answer = a{}", count - 1))
    });
}

#[test]
fn an_item_has_63_pieces() {
    edge(63, "pieces", 1, |count| {
        let all = count.min(63);
        let steps = vec![
            step("off", "bench", json!({"takes_off": {"balls": all}})),
            step(
                "on",
                "bench",
                json!({"needs": format!("empty(balls) = {all}"), "puts_back": {"balls": all}}),
            ),
        ];
        let item = json!({"id": "balls", "name": "check balls", "count": count, "reuse": "yes"});
        with(in_a_row(steps), "items", json!([item])).set("", "done_when", json!("worked(on) and tray_clear"))
    });
}

#[test]
fn a_name_has_64_characters() {
    let named = |length: usize| {
        let name = "x".repeat(length);
        let draft = in_a_row(vec![step(&name, "under", json!({"sets": all([format!("g{name}")], "a")}))]);
        draft.set("", "gates", json!([{"id": format!("g{name}"), "classes": ["a"]}])).add(
            "",
            "conditions",
            json!({"id": "c", "values": ["a", format!("v{name}")]}),
        )
    };
    proved(&named(63).set("", "done_when", json!(format!("worked({})", "x".repeat(63)))));
    let told = refused(&named(64));
    assert_eq!(told.len(), 2, "the gate and the value: {told:?}");
    assert!(
        told.iter().all(|says| says.ends_with("has 65 characters; 64 are the most, a title can say more"))
    );
}

/// A work field takes two bits, who is in which step one, how the job is over two; then come a bit for the lift, one each for
/// a piece that the checklist does not know, a void, an observation and a danger, and the items.
#[test]
fn a_state_has_1024_bits() {
    let items = |count: usize| {
        many(count, |at| json!({"id": format!("i{at}"), "name": "n", "count": 1, "reuse": "yes"}))
    };
    let conditions = |count: usize| many(count, |at| json!({"id": format!("c{at}"), "values": ["a", "b"]}));
    let full = |more: usize| {
        let draft = with(small(), "conditions", conditions(500));
        with(draft, "items", items(1024 - 64 - 501 - 4 + more))
    };
    let procedure = full(0).procedure();
    assert_eq!(procedure.machine.layout.bits(), 1024);
    proved(&full(0));
    let says =
        "the checklist needs more than 1024 bits of state; use fewer steps, dangers, conditions or items";
    assert_eq!(refused(&full(1)), [says.to_owned()].into());
}
