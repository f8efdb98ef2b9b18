//! The lists of a checklist.

use panside_procedure::proof::{Ask, Stopped, go_on, prove};
use serde_json::{Value, json};

use super::{all, edge, groups, in_a_row, many, proved, refused, small, with};
use crate::bay::{danger, pan_job, sign_off, step};
use crate::support::Draft;

/// Places about the 64th, from which on all that stand there depend on a change.
const PLACES: [usize; 5] = [0, 62, 63, 64, 100];

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
    assert!(proof.searches[0].states.found > 255 * 255 / 2, "each may be voided when others are worked");
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

/// Gates of which each step reads 64 on a vehicle that is up; those that lapse do so when it comes down.
fn gates(count: usize, lapses: impl Fn(usize) -> bool) -> Draft {
    let steps = groups(count, 64).map(|group| {
        let sets = all(group.clone().map(|at| format!("g{at}")), "a");
        let rules = json!({"needs": "lift = on_locks", "again": "true", "sets": sets});
        step(&format!("read_{}", group.start), "bench", rules)
    });
    let one = |at: usize| {
        let holds = if lapses(at) { "lift = on_locks" } else { "true" };
        json!({"id": format!("g{at}"), "classes": ["a"], "holds_while": holds})
    };
    with(in_a_row(steps.collect()), "gates", many(count, one))
}

#[test]
fn a_checklist_has_512_gates() {
    edge(512, "gates", 0, |count| gates(count, |_| true));
}

#[test]
fn one_of_512_gates_lapses_alone_wherever_it_stands() {
    for place in PLACES.into_iter().chain([511]) {
        let mut job = gates(512, |at| at == place).job();
        job.run("action raise");
        for group in 0..8 {
            job.run(&format!("do read_{}", group * 64));
        }
        assert!((0..512).all(|at| job.is(&format!("g{at}")) == "a"));
        job.run("action lower");
        let lost = (0..512).filter(|at| job.is(&format!("g{at}")) == "unknown");
        assert_eq!(lost.collect::<Vec<_>>(), [place]);
    }
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

/// A selector and a lever, with a vehicle action from rest to each place of both.
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
            draft = draft.add(
                "",
                "vehicle_actions",
                json!({"id": id, "title": id, "needs": needs, "makes": makes}),
            );
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
fn one_of_512_follows_comes_up_alone_wherever_it_stands() {
    for place in PLACES.into_iter().chain([511]) {
        let when = |at: usize| if at == place { "dial = d5" } else { "lever = l1" };
        let follow = |at: usize| json!({"when": when(at), "makes": {"lamp": "on"}});
        let draft = levers(small())
            .add("", "conditions", json!({"id": "lamp", "values": ["off", "on"]}))
            .set("", "follows", many(512, follow));
        let mut job = draft.job();
        assert_eq!(job.run("action to_d6").is("lamp"), "off");
        assert_eq!(job.run("action to_d0; action to_d5").is("lamp"), "on", "place {place}");
    }
}

/// What ages is found wherever it stands: with as many conditions before it that nothing changes.
#[test]
fn a_reading_grows_old_wherever_it_stands() {
    let mut late = pan_job();
    let more = (0..100).map(|at| json!({"id": format!("c{at}"), "values": ["a", "b"]}));
    let conditions: Vec<Value> = late.0["conditions"].as_array().cloned().into_iter().flatten().collect();
    late.0["conditions"] = more.chain(conditions).collect();
    let (early, late) = (proved(&pan_job()), proved(&late));
    assert_eq!(early.searches[0].states.found, late.searches[0].states.found);
    assert_eq!(early.searches[0].transitions, late.searches[0].transitions);
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

/// Sign-offs of which those lapse at the places named: each alone can be signed again, and all orders of many are too many
/// states.
fn signatures(count: usize, lapse: &[usize]) -> Draft {
    let steps = groups(count, 64).map(|group| {
        let entries: Value = group.clone().map(signature).collect();
        step(
            &format!("sign_{}", group.start),
            "bench",
            json!({"needs": "lift = on_locks", "entries": entries}),
        )
    });
    let one = |at: usize| match lapse.contains(&at) {
        true => sign_off(&format!("p{at}"), "permit", "lift = on_locks"),
        false => sign_off(&format!("p{at}"), "attest", "true"),
    };
    let signed: Vec<String> = (0..count).map(|at| format!("signed(p{at})")).collect();
    with(in_a_row(steps.collect()), "sign_offs", many(count, one)).set(
        "",
        "done_when",
        json!(signed.join(" and ")),
    )
}

#[test]
fn a_checklist_has_256_sign_offs() {
    edge(256, "sign_offs", 0, |count| signatures(count, &[count - 2, count - 1]));
}

#[test]
fn one_of_256_sign_offs_lapses_alone_wherever_it_stands() {
    for place in PLACES.into_iter().chain([255]) {
        let mut job = signatures(256, &[place]).job();
        job.run("action raise");
        for group in 0..4 {
            job.run(&format!("do sign_{}", group * 64));
        }
        assert!((0..256).all(|at| job.signed(&format!("p{at}"))));
        job.run("action lower");
        let lapsed = (0..256).filter(|at| !job.signed(&format!("p{at}")));
        assert_eq!(lapsed.collect::<Vec<_>>(), [place]);
    }
}

/// Each vehicle action from one place of a dial to another is a vehicle action of its own.
#[test]
fn a_checklist_has_512_vehicle_actions() {
    edge(512, "vehicle_actions", 0, |count| {
        let values = many(64, |at| json!(format!("d{at}")));
        let draft = small().add("", "conditions", json!({"id": "dial", "values": values}));
        let vehicle_actions = many(count - 2, |at| {
            let (from, ahead) = (at / 63, 1 + at % 63);
            let (needs, to) = (format!("dial = d{from}"), format!("d{}", (from + ahead) % 64));
            json!({"id": format!("m{at}"), "title": "Turn", "needs": needs, "makes": {"dial": to}})
        });
        with(draft, "vehicle_actions", vehicle_actions)
    });
}
