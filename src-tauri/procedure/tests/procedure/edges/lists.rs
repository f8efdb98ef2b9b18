//! The lists of a checklist, and what its variables are made of.

use panside_procedure::proof::{Ask, Stopped, go_on, prove};
use serde_json::{Value, json};

use super::{all, edge, groups, in_a_row, many, proved, refused, small, with};
use crate::bay::{choice, danger, sign_off, step};
use crate::kit::Draft;

fn plain(at: usize) -> Value {
    step(&format!("s{at}"), "bench", json!({}))
}

fn row(steps: usize) -> Draft {
    in_a_row((0..steps).map(plain).collect())
}

#[test]
fn three_people_work_at_once() {
    edge(3, "people in a step at one time", 1, |crew| row(4).set("", "crew", json!(crew)));
}

#[test]
fn a_checklist_has_255_steps_in_one_phase() {
    let proof = proved(&row(255));
    assert!(proof.searches[0].states.found > 255 * 255 / 2, "each may be struck when others are worked");
    let says = [
        "steps in the phase: there are 256; 1 to 255 are possible",
        "steps: there are 256; 1 to 255 are possible",
    ];
    assert_eq!(refused(&row(256)), says.map(str::to_owned).into());
}

/// As many phases as steps, the last of them beside so many others.
fn phases(phases: usize, beside: usize) -> Draft {
    let mut draft = row(phases);
    draft.0["phases"] = many(phases, |at| {
        let steps = json!([draft.0["phases"][0]["steps"][at]]);
        json!({"id": format!("p{at}"), "title": "Phase", "steps": steps})
    });
    draft.0["phases"][phases - 1]["beside"] = many(beside, |at| json!(format!("p{}", at % (phases - 1))));
    draft
}

#[test]
fn a_checklist_has_64_phases() {
    edge(64, "phases", 1, |count| phases(count, 0));
    edge(63, "phases", 0, |beside| phases(64, beside));
}

/// Dangers that each name another vehicle, of which a rule keeps people out.
fn dangers(count: usize) -> Draft {
    let values = many(64, |at| json!(format!("v{at}")));
    let draft = small().add("", "facts", json!({"id": "series", "values": values, "sheet": "series"})).add(
        "",
        "facts",
        json!({"id": "body", "values": ["b0", "b1", "b2", "b3", "b4"], "sheet": "body"}),
    );
    let when = |at: usize| {
        format!("doing.zone = under and lift = floor and series = v{} and body = b{}", at % 64, at / 64)
    };
    draft.set("", "dangers", many(count, |at| danger(&format!("d{at}"), &when(at))))
}

#[test]
fn a_checklist_has_256_dangers() {
    edge(256, "dangers", 1, dangers);
}

#[test]
fn a_checklist_has_255_steps_and_256_dangers_together() {
    let mut draft = row(255);
    draft.0["facts"] = dangers(1).0["facts"].clone();
    draft.0["dangers"] = dangers(256).0["dangers"].clone();
    let states = 10_000;
    let proof = prove(&draft.procedure(), Ask { states, ..Ask::ALL }, &mut go_on);
    assert!(proof.findings.is_empty(), "{:?}", proof.findings);
    for search in &proof.searches {
        assert_eq!(search.stopped, Some(Stopped::States));
        assert!(search.states.found > states);
    }
}

#[test]
fn a_checklist_has_512_conditions() {
    let proof = edge(512, "conditions", 0, |count| {
        let one = |at: usize| json!({"id": format!("c{at}"), "values": ["a", "b"]});
        with(small(), "conditions", many(count - 1, one))
    });
    assert_eq!(proof.finish_after_observing.len(), 2 + 511, "each was seen to be what it is not at first");
}

fn facts(count: usize) -> Draft {
    let one = |at: usize| json!({"id": format!("f{at}"), "values": ["a", "b"], "sheet": format!("s{at}")});
    small().set("", "facts", many(count, one))
}

#[test]
fn a_vehicle_has_12_facts_and_comes_in_in_4096_ways() {
    proved(&facts(12));
    let says = [
        "facts: there are 13; 0 to 12 are possible",
        "the vehicle can come in in more than 4096 ways; ask for fewer conditions at the start, or for fewer facts",
    ];
    assert_eq!(refused(&facts(13)), says.map(str::to_owned).into());
}

/// Gates of which each step reads 64 on a vehicle that is up, and which are lost when it comes down.
#[test]
fn a_checklist_has_512_gates() {
    edge(512, "gates", 0, |count| {
        let steps = groups(count, 64).map(|group| {
            let sets = all(group.clone().map(|at| format!("g{at}")), "a");
            let rules = json!({"needs": "lift = on_locks", "again": "true", "sets": sets});
            step(&format!("read_{}", group.start), "bench", rules)
        });
        let one =
            |at: usize| json!({"id": format!("g{at}"), "classes": ["a"], "holds_while": "lift = on_locks"});
        with(in_a_row(steps.collect()), "gates", many(count, one))
    });
}

#[test]
fn a_checklist_has_512_terms() {
    edge(512, "terms", 0, |count| {
        let text =
            |at: usize| if at == 0 { "lift = on_locks".to_owned() } else { format!("t{} or t0", at % 2) };
        let terms = (0..count).map(|at| (format!("t{at}"), json!(text(if at == 1 { 0 } else { at }))));
        let mut draft = small();
        draft.0["terms"] = Value::Object(terms.collect());
        draft.set("s0", "needs", json!(format!("t{}", count - 1)))
    });
}

/// A selector and a lever, with a move from rest to each place of both.
fn levers(draft: Draft) -> Draft {
    let places = |count: usize, name: &str| many(count, |at| json!(format!("{name}{at}")));
    let mut draft = draft.add("", "conditions", json!({"id": "lever", "values": places(9, "l")})).add(
        "",
        "conditions",
        json!({"id": "dial", "values": places(58, "d")}),
    );
    for (condition, places, name) in [("lever", 9, "l"), ("dial", 58, "d")] {
        for at in 0..places {
            let id = format!("to_{name}{at}");
            let needs = match (condition, at) {
                ("lever", _) => "dial = d0".to_owned(),
                (_, 0) => "true".to_owned(),
                _ => "dial = d0".to_owned(),
            };
            let makes = json!({condition: format!("{name}{at}")});
            draft = draft.add("", "moves", json!({"id": id, "title": id, "needs": needs, "makes": makes}));
        }
    }
    draft
}

/// The lamp lights at each place of both, and goes out only where the step puts it out.
#[test]
fn a_checklist_has_512_follows() {
    edge(512, "follows", 0, |count| {
        let draft = levers(small())
            .add("", "conditions", json!({"id": "lamp", "values": ["off", "on"]}))
            .set("s0", "needs", json!("lift = on_locks and dial = d0"))
            .set("s0", "again", json!("true"))
            .set("s0", "makes", json!({"lamp": "off"}));
        let when = |at: usize| format!("lever = l{} and dial = d{}", at % 9, 1 + at / 9);
        draft.set("", "follows", many(count, |at| json!({"when": when(at), "makes": {"lamp": "on"}})))
    });
}

#[test]
fn a_checklist_has_512_items() {
    edge(512, "items", 0, |count| {
        let pieces = |group: std::ops::Range<usize>| {
            let pieces = group.map(|at| (format!("i{at}"), json!(1)));
            Value::Object(pieces.collect())
        };
        let off = groups(count, 64)
            .map(|group| step(&format!("off_{}", group.start), "bench", json!({"takes_off": pieces(group)})));
        let on = groups(count, 64)
            .map(|group| step(&format!("on_{}", group.start), "bench", json!({"puts_back": pieces(group)})));
        let one = |at: usize| json!({"id": format!("i{at}"), "name": "n", "count": 1, "reuse": "yes"});
        with(in_a_row(off.chain(on).collect()), "items", many(count, one))
    });
}

fn signature(at: usize) -> Value {
    json!({"id": format!("e{at}"), "label": "Sign", "ask": {"sign_off": {"sign": format!("p{at}")}}})
}

/// Each alone can be signed again, so that only the last two lapse: all orders of all of them are too many states.
#[test]
fn a_checklist_has_256_sign_offs() {
    edge(256, "sign_offs", 0, |count| {
        let steps = groups(count, 64).map(|group| {
            let entries: Value = group.clone().map(signature).collect();
            step(
                &format!("sign_{}", group.start),
                "bench",
                json!({"needs": "lift = on_locks", "entries": entries}),
            )
        });
        let one = |at: usize| {
            let last = at + 2 >= count;
            let kind = if last { "permit" } else { "attest" };
            sign_off(&format!("p{at}"), kind, if last { "lift = on_locks" } else { "true" })
        };
        let signed: Vec<String> = (0..count).map(|at| format!("signed(p{at})")).collect();
        with(in_a_row(steps.collect()), "sign_offs", many(count, one)).set(
            "",
            "done_when",
            json!(signed.join(" and ")),
        )
    });
}

/// Each move from one place of a dial to another is a move of its own.
#[test]
fn a_checklist_has_512_moves() {
    edge(512, "moves", 0, |count| {
        let values = many(64, |at| json!(format!("d{at}")));
        let draft = small().add("", "conditions", json!({"id": "dial", "values": values}));
        let moves = many(count - 2, |at| {
            let (from, ahead) = (at / 63, 1 + at % 63);
            let (needs, to) = (format!("dial = d{from}"), format!("d{}", (from + ahead) % 64));
            json!({"id": format!("m{at}"), "title": "Turn", "needs": needs, "makes": {"dial": to}})
        });
        with(draft, "moves", moves)
    });
}

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
/// a strike, an observation and a danger, and the items.
#[test]
fn a_state_has_1024_bits() {
    let items = |count: usize| {
        many(count, |at| json!({"id": format!("i{at}"), "name": "n", "count": 1, "reuse": "yes"}))
    };
    let conditions = |count: usize| many(count, |at| json!({"id": format!("c{at}"), "values": ["a", "b"]}));
    let full = |more: usize| {
        let draft = with(small(), "conditions", conditions(500));
        with(draft, "items", items(1024 - 64 - 501 - 3 + more))
    };
    let procedure = full(0).procedure();
    assert_eq!(procedure.machine.layout.bits(), 1024);
    proved(&full(0));
    let says =
        "the checklist needs more than 1024 bits of state; use fewer steps, dangers, conditions or items";
    assert_eq!(refused(&full(1)), [says.to_owned()].into());
}
