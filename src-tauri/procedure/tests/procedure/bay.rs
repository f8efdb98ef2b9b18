//! The two checklists that the tests start from. All in them is invented.

use serde_json::{Value, json};

use crate::support::Draft;

/// A step with a text; `more` gives its rules.
pub fn step(id: &str, zone: &str, more: Value) -> Value {
    let mut step =
        json!({"id": id, "title": id, "instruction": format!("Do {id}."), "zone": zone, "minutes": 5});
    for (field, value) in more.as_object().into_iter().flatten() {
        step[field] = value.clone();
    }
    step
}

/// An entry; `classes` says what each class does.
pub fn entry(id: &str, ask: Value, classes: Value) -> Value {
    json!({"id": id, "label": id, "ask": ask, "classes": classes})
}

/// A question with these answers.
pub fn choice(id: &str, answers: &[&str], classes: Value) -> Value {
    let options: Vec<Value> = answers.iter().map(|class| json!({"class": class, "label": class})).collect();
    entry(id, json!({"choice": {"options": options}}), classes)
}

/// The signature that a step asks for.
pub fn signature(sign: &str) -> Value {
    json!({"id": "name", "label": "Sign", "ask": {"sign_off": {"sign": sign}}})
}

/// A sign-off that holds while a predicate does.
pub fn sign_off(id: &str, kind: &str, holds_while: &str) -> Value {
    json!({"id": id, "kind": kind, "text": format!("{id}, seen"), "holds_while": holds_while})
}

/// A danger with a predicate.
pub fn danger(id: &str, when: &str) -> Value {
    json!({"id": id, "signal": "danger", "text": format!("It is dangerous: {id}."), "when": when})
}

pub fn stick() -> Value {
    let classes = json!({
        "below": {"sets": {"level": "low"}}, "in": {"sets": {"level": "in_band"}},
        "above": {"sets": {"level": "high"}}, "unclear": {"not_yet": true},
    });
    entry("stick", json!({"level": {"chart": "level_chart"}}), classes)
}

fn counted() -> Value {
    let classes = json!({"all": {}, "short": {"not_yet": true}, "accounted": {}});
    entry("bolts_in_tray", json!({"count": {"of": {"bolts": 4}}}), classes)
}

fn clicked() -> Value {
    entry(
        "wrench",
        json!({"torque": {"spec": "pan_bolts"}}),
        json!({"inside": {}, "outside": {"not_yet": true}}),
    )
}

/// A whole small job, proved: read the level, decide, raise, drain, take the pan off, put it back, fill, read again.
pub fn pan_job() -> Draft {
    let mut answer = choice(
        "answer",
        &["service", "leak", "refuse"],
        json!({
        "service": {"sets": {"verdict": "service"}}, "leak": {"sets": {"verdict": "leak"}},
        "refuse": {"ends": "stop", "sets": {"verdict": "refused"}}}),
    );
    answer["ask"]["choice"]["good"] = json!(["service", "leak"]);
    Draft(json!({
        "format": "panside-checklist/1", "id": "pan-job", "title": "Pan off and on", "revision": 1, "demo": true,
        "conditions": [
            {"id": "lift", "values": ["floor", "raised", "on_locks"]},
            {"id": "engine", "values": ["off", "running"]},
            {"id": "fluid", "values": ["filled", "drained"]},
            {"id": "pan", "values": ["on", "off"]},
        ],
        "gates": [
            {"id": "verdict", "classes": ["service", "leak", "refused"]},
            {"id": "level", "classes": ["low", "in_band", "high"], "holds_while": "fluid = filled", "fresh_for": 30},
        ],
        "terms": {"at_the_stick": "lift = floor and engine = running", "safe_under": "lift = on_locks and engine = off"},
        "items": [
            {"id": "bolts", "name": "pan bolts", "count": 4, "reuse": "yes"},
            {"id": "gasket", "name": "pan gasket", "count": 1, "reuse": "never"},
        ],
        "sign_offs": [
            sign_off("clear", "permit", "lift = on_locks"),
            sign_off("torqued", "attest", "pan = on"),
        ],
        "phases": [
            {"id": "look", "title": "Look", "steps": [
                step("read_level", "engine_bay", json!({
                    "needs": "at_the_stick", "again": "true", "entries": [stick()]})),
                step("decide", "bench", json!({
                    "after": ["read_level"], "relies_on": ["read_level"],
                    "entries": [answer]})),
                step("dye", "engine_bay", json!({
                    "after": ["decide"], "on": "verdict = leak", "needs": "engine = off", "may_skip": true})),
            ]},
            {"id": "strip", "title": "Strip", "steps": [
                step("shake", "bench", json!({"needs": "safe_under", "entries": [signature("clear")]})),
                step("drain", "under", json!({
                    "permits": ["clear"], "needs": "safe_under", "makes": {"fluid": "drained"}})),
                step("pan_off", "under", json!({
                    "after": ["drain"], "permits": ["clear"], "needs": "safe_under and fluid = drained and pan = on",
                    "takes_off": {"bolts": 4, "gasket": 1}, "makes": {"pan": "off"}, "entries": [counted()]})),
            ]},
            {"id": "build", "title": "Build", "steps": [
                step("pan_on", "under", json!({
                    "permits": ["clear"], "needs": "safe_under and pan = off", "makes": {"pan": "on"},
                    "puts_back": {"bolts": 4, "gasket": 1}, "entries": [clicked(), signature("torqued")]})),
                step("fill", "engine_bay", json!({
                    "after": ["pan_on"], "needs": "lift = floor and engine = off and pan = on",
                    "makes": {"fluid": "filled"}})),
            ]},
            {"id": "verify", "title": "Verify", "steps": [
                step("read_again", "engine_bay", json!({
                    "needs": "at_the_stick", "again": "true", "entries": [stick()]})),
            ]},
        ],
        "vehicle_actions": [
            {"id": "raise", "title": "Raise", "needs": "lift = floor and engine = off", "makes": {"lift": "raised"}},
            {"id": "set_locks", "title": "Set on locks", "needs": "lift = raised", "makes": {"lift": "on_locks"}},
            {"id": "lower", "title": "Lower", "needs": "pan = on and engine = off", "makes": {"lift": "floor"}},
            {"id": "start", "title": "Start engine", "needs": "lift = floor and fluid = filled and pan = on",
             "makes": {"engine": "running"}},
            {"id": "switch_off", "title": "Stop engine", "makes": {"engine": "off"}},
        ],
        "dangers": [
            danger("crush", "doing.zone = under and lift != on_locks"),
            danger("dry_run", "engine = running and fluid = drained"),
            danger("open_pan_down", "moved = lower and pan = off"),
        ],
        "done_when": "tray_clear and signed(torqued) and level = in_band and lift = floor and engine = off and worked(read_again)",
        "safe_to_leave": "lift in {floor, on_locks} and engine = off",
    }))
}

/// What is said to bring the pan job as far as the named step, which is then open.
pub fn up_to(step: &str) -> String {
    let way = [
        ("read_level", "action start"),
        ("decide", "do read_level stick=below; action switch_off"),
        ("shake", "do decide answer=service; action raise; action set_locks"),
        ("drain", "do shake"),
        ("pan_off", "do drain"),
        ("pan_on", "do pan_off"),
        ("fill", "do pan_on; action lower"),
        ("read_again", "do fill; action start"),
        ("finish", "do read_again stick=in; action switch_off"),
    ];
    let end = way.iter().position(|(opens, _)| *opens == step).unwrap_or_else(|| panic!("no way to {step}"));
    way[..=end].iter().map(|(_, said)| *said).collect::<Vec<_>>().join("; ")
}

/// One phase with these steps, in a bay with a lift and a drain; nothing in it is dangerous but work under a
/// vehicle off the locks.
pub fn one_phase(steps: Value) -> Draft {
    Draft(json!({
        "format": "panside-checklist/1", "id": "small", "title": "Small", "revision": 1, "demo": true,
        "conditions": [
            {"id": "lift", "values": ["floor", "on_locks"]},
            {"id": "drain_plug", "values": ["in", "out"]},
            {"id": "pan", "values": ["on", "off"]},
        ],
        "gates": [{"id": "found", "classes": ["good", "bad"]}],
        "phases": [{"id": "only", "title": "Only", "steps": steps}],
        "vehicle_actions": [
            {"id": "raise", "title": "Raise", "makes": {"lift": "on_locks"}},
            {"id": "lower", "title": "Lower", "makes": {"lift": "floor"}},
        ],
        "dangers": [danger("crush", "lift = floor and pan = off")],
        "done_when": "true", "safe_to_leave": "true",
    }))
}
