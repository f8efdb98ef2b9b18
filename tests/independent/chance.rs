//! Checklists made by chance from fixed seeds: combinations that nobody would think of writing down.

use panside_procedure::Procedure;
use panside_tests::named;
use serde_json::{Map, Value, json};

use super::runs::Kind;
use super::{KINDS, differs, proved};

/// Checklists looked at. Fewer than half of them load: many ask for what the format refuses.
const MADE: u64 = 1600;
/// Larger ones are left out, since the interpreter here is slow.
const MOST_STATES: usize = 3000;

/// `SplitMix64` (Steele, Lea and Flood, 2014; constants from memory): small, and the same everywhere.
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }

    fn below(&mut self, end: usize) -> usize {
        usize::try_from(self.next() % end as u64).unwrap_or(0)
    }

    fn one_in(&mut self, of: usize) -> bool {
        self.below(of) == 0
    }

    fn of<'a>(&mut self, choices: &[&'a str]) -> &'a str {
        choices[self.below(choices.len())]
    }
}

const MATTER: &[&str] =
    &["lift = up", "lift = down", "pan = off", "pan != off", "pan in {on, hung}", "plug = out", "fact = yes"];
const KNOWING: &[&str] = &[
    "level = low",
    "level in {low, right}",
    "known(level)",
    "known(level) and level != low",
    "probe = cool",
    "not known(probe)",
];
const WORK: &[&str] = &[
    "worked(s0)",
    "not worked(s1)",
    "worked(s2)",
    "signed(permit)",
    "not signed(attest)",
    "tray_clear",
    "empty(bolts) != 1",
    "not worked(s3)",
];
const DOING: &[&str] = &[
    "doing.zone = under",
    "not doing.zone = under",
    "doing.tag = hot",
    "doing.touches = pipe",
    "moving = raise",
    "moved = lower",
    "moving = lower",
    "leaving",
];

fn predicate(chance: &mut Chance, lists: &[&[&'static str]]) -> String {
    let part = |chance: &mut Chance| {
        let list = lists[chance.below(lists.len())];
        chance.of(list).to_owned()
    };
    match chance.below(6) {
        0 => "true".to_owned(),
        1 => format!("{} and {}", part(chance), part(chance)),
        2 => format!("{} or {}", part(chance), part(chance)),
        3 => format!("({} or {}) and {}", part(chance), part(chance), part(chance)),
        _ => part(chance),
    }
}

fn makes(chance: &mut Chance, more: usize) -> Value {
    let mut makes = Map::new();
    if chance.one_in(more) {
        makes.insert("pan".to_owned(), json!(chance.of(&["on", "off", "hung"])));
    }
    if chance.one_in(more) {
        makes.insert("plug".to_owned(), json!(chance.of(&["fitted", "out"])));
    }
    Value::Object(makes)
}

fn sets(chance: &mut Chance, more: usize) -> Value {
    let mut sets = Map::new();
    if chance.one_in(more) {
        sets.insert("level".to_owned(), json!(chance.of(&["low", "right"])));
    }
    if chance.one_in(more) {
        sets.insert("probe".to_owned(), json!("cool"));
    }
    Value::Object(sets)
}

fn step(chance: &mut Chance, at: usize) -> Value {
    let rules: &[&[&str]] = &[MATTER, KNOWING, WORK];
    let zone = chance.of(&["under", "bench", "cabin"]);
    let mut step = json!({ "id": format!("s{at}"), "title": "Step", "instruction": "Do.", "zone": zone });
    step["makes"] = makes(chance, 3);
    step["sets"] = sets(chance, 3);
    step["on_begin"] = makes(chance, 8);
    step["on_leave"] = makes(chance, 8);
    if chance.one_in(2) {
        step["needs"] = json!(predicate(chance, rules));
    }
    if chance.one_in(4) {
        step["while"] = json!(predicate(chance, rules));
    }
    if chance.one_in(3) {
        step["again"] = json!(predicate(chance, rules));
    }
    if chance.one_in(4) {
        step["on"] = json!(chance.of(&[
            "level = low",
            "known(probe)",
            "fact = yes",
            "level != low or fact = no",
            "not probe = cool"
        ]));
    }
    for list in ["after", "relies_on"] {
        if at > 0 && chance.one_in(3) {
            step[list] = json!([format!("s{}", chance.below(at))]);
        }
    }
    for (list, word, more) in [("permits", "permit", 4), ("tags", "hot", 2), ("touches", "pipe", 2)] {
        if chance.one_in(more) || at == 1 && list != "permits" {
            step[list] = json!([word]);
        }
    }
    for list in ["takes_off", "puts_back"] {
        if chance.one_in(4) {
            step[list] = json!({ "bolts": 1 + chance.below(2) });
        }
    }
    step["may_skip"] = json!(chance.one_in(5));
    step["when_ending"] = json!(chance.one_in(3));
    let mut entries = Vec::new();
    if chance.one_in(3) {
        let ends = if chance.one_in(2) {
            json!({ "ends": "stop" })
        } else {
            json!({ "sets": { "level": "right" } })
        };
        let hands = chance.one_in(2);
        let mut good = json!({ "sets": { "probe": "cool" } });
        if hands {
            good["makes"] = makes(chance, 2);
        }
        entries.push(json!({
            "id": "answer", "label": "Answer", "classes": { "good": good, "bad": ends, "later": { "not_yet": true } },
            "ask": { "choice": { "hands_did": hands, "options": [
                { "class": "good", "label": "good" }, { "class": "bad", "label": "bad" }, { "class": "later", "label": "later" }
            ] } }
        }));
    }
    for (sign, of) in [("permit", 0), ("attest", 1)] {
        if at == of {
            entries.push(json!({ "id": sign, "label": "Signed", "ask": { "sign_off": { "sign": sign } } }));
        }
    }
    step["entries"] = json!(entries);
    step
}

fn checklist(seed: u64) -> Value {
    let chance = &mut Chance(seed);
    let rules: &[&[&str]] = &[MATTER, KNOWING, WORK];
    let holds: &[&[&str]] = &[MATTER, KNOWING];
    let steps: Vec<Value> = (0..4).map(|at| step(chance, at)).collect();
    let cut = 1 + chance.below(3);
    let second = 1 + chance.below(2);
    let mut phases = vec![json!({ "id": "one", "title": "One", "steps": steps[..cut] })];
    let end = (cut + second).min(4);
    phases.push(json!({ "id": "two", "title": "Two", "steps": steps[cut..end] }));
    if chance.one_in(4) {
        phases[1]["beside"] = json!(["one"]);
    }
    if end < 4 {
        phases.push(json!({ "id": "three", "title": "Three", "steps": steps[end..] }));
        if chance.one_in(3) {
            phases[2]["beside"] = json!([chance.of(&["one", "two"])]);
        }
    }
    let follow = match chance.below(3) {
        0 => json!([{ "when": "plug = out", "sets": { "level": "unknown" } }]),
        1 => {
            json!([{ "when": "pan = hung and lift = down", "makes": { "plug": "fitted" } }, { "when": "plug = fitted", "makes": { "pan": "on" } }])
        }
        _ => json!([]),
    };
    let (state_danger, doing) =
        (predicate(chance, &[MATTER]), predicate(chance, &[MATTER, KNOWING, WORK, DOING]));
    let doing_danger = format!("{} and ({doing})", chance.of(DOING));
    json!({
        "format": "panside-checklist/1", "id": format!("chance_{seed}"), "title": "By chance", "revision": 1,
        "crew": 1 + usize::from(chance.one_in(3)),
        "facts": [{ "id": "fact", "label": "a label", "values": named(&["no", "yes"]), "sheet": "fact" }],
        "sheet_keys": { "fact": "a fact" },
        "conditions": [
            { "id": "lift", "label": "a label", "values": named(&["down", "up"]), "start": chance.of(&["down", "up"]).split(' ').collect::<Vec<_>>() },
            { "id": "pan", "label": "a label", "values": named(&["on", "off", "hung"]) },
            { "id": "plug", "label": "a label", "values": named(&["fitted", "out"]), "start": ["fitted", "out"] }
        ],
        "gates": [
            { "id": "level", "label": "a label", "classes": named(&["low", "right"]), "holds_while": predicate(chance, &[MATTER]) },
            { "id": "probe", "label": "a label", "classes": named(&["cool"]), "holds_while": predicate(chance, holds), "fresh_for": 5 }
        ],
        "start_when": chance.of(&["true", "plug = fitted", "fact = no or plug = fitted"]),
        "follows": follow,
        "items": [{ "id": "bolts", "name": "bolts", "count": 2, "reuse": "yes" }],
        "sign_offs": [
            { "id": "permit", "kind": "permit", "text": "Permit.", "holds_while": predicate(chance, holds) },
            { "id": "attest", "kind": "attest", "text": "Attest.", "holds_while": predicate(chance, holds) }
        ],
        "phases": phases,
        "vehicle_actions": [
            { "id": "raise", "title": "Raise", "needs": predicate(chance, rules), "makes": { "lift": "up" } },
            { "id": "lower", "title": "Lower", "needs": predicate(chance, rules), "makes": { "lift": "down" } }
        ],
        "dangers": [
            { "id": "of_matter", "signal": "notice", "text": "Matter.", "when": state_danger },
            { "id": "of_doing", "signal": "notice", "text": "Doing.", "when": doing_danger }
        ],
        "done_when": predicate(chance, rules), "safe_to_leave": predicate(chance, rules)
    })
}

#[test]
fn checklists_made_by_chance_count_alike() -> Result<(), String> {
    let (mut loaded, mut compared, mut states, mut found) = (0, 0, 0, 0);
    let (mut ends, mut stops) = (0, 0);
    for seed in 0..MADE {
        let Ok(procedure) = Procedure::load(checklist(seed).to_string().as_bytes()) else { continue };
        loaded += 1;
        if proved(&procedure, Kind::OneObservation)?.0.states > MOST_STATES {
            continue;
        }
        for kind in KINDS {
            let (counted, difference) = differs(&procedure, kind)?;
            assert_eq!(difference, None, "seed {seed}");
            states += counted.states;
            found += usize::from(!counted.dangers.is_empty());
            ends += usize::from(counted.can_finish > 0);
            stops += usize::from(counted.can_stop < counted.states);
        }
        compared += 1;
    }
    println!(
        "{MADE} made, {loaded} load, {compared} compared, {states} states, of {} searches {found} meet a danger, in {ends} \
         the end can be reached from somewhere, in {stops} a safe stop cannot be reached from somewhere",
        compared * 3
    );
    assert!(
        compared >= 500 && found > compared && ends > compared && stops > compared / 2 && states > 150_000,
        "too little was compared to say anything"
    );
    Ok(())
}
