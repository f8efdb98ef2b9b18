//! Checklists that are made by rule, to see how a search grows: nobody works by them.

use serde_json::{Value, json};

/// Steps in a phase; their order is free.
const IN_PHASE: usize = 4;

/// A checklist with so many steps in phases of four: one looks and signs, one works under the vehicle, one reads a
/// gate that ages; one of them may be left out.
pub fn checklist(steps: usize) -> Value {
    let phases = steps.div_ceil(IN_PHASE);
    let phase = |at: usize| {
        let begin = at * IN_PHASE;
        let steps: Vec<Value> = (begin..(begin + IN_PHASE).min(steps)).map(step).collect();
        json!({"id": format!("phase_{at}"), "title": format!("Phase {at}"), "steps": steps})
    };
    json!({
        "format": "panside-checklist/1", "id": format!("synthetic-{steps}"), "title": "Synthetic", "revision": 1,
        "demo": true,
        "conditions": [{"id": "lift", "label": "lift", "values": named(&["floor", "on_locks"])}],
        "gates": [{"id": "seen", "label": "seen", "classes": named(&["good", "bad"]), "holds_while": "lift = on_locks", "fresh_for": 30}],
        "sign_offs": [{"id": "clear", "kind": "permit", "text": "Clear", "holds_while": "lift = on_locks"}],
        "phases": (0..phases).map(phase).collect::<Vec<_>>(),
        "vehicle_actions": [
            {"id": "raise", "title": "Raise", "needs": "lift = floor", "makes": {"lift": "on_locks"}},
            {"id": "lower", "title": "Lower", "needs": "lift = on_locks", "makes": {"lift": "floor"}},
        ],
        "dangers": [{"id": "crush", "signal": "danger", "text": "Crush.",
                     "when": "doing.zone = under and lift != on_locks"}],
        "done_when": format!("lift = floor and worked(step_{})", (steps - 1) / IN_PHASE * IN_PHASE),
        "safe_to_leave": "true",
    })
}

fn step(at: usize) -> Value {
    let id = format!("step_{at}");
    let mut step = json!({"id": id, "title": id, "instruction": "Do it.", "zone": "bench", "minutes": 1});
    let more = match at % IN_PHASE {
        0 if at == 0 => json!({"needs": "lift = on_locks", "again": "true", "entries": [
            {"id": "name", "label": "Sign", "ask": {"sign_off": {"sign": "clear"}}}]}),
        1 => json!({"zone": "under", "needs": "lift = on_locks", "permits": ["clear"]}),
        2 => json!({"needs": "lift = on_locks", "again": "true", "entries": [
            {"id": "look", "label": "Look", "ask": {"choice": {"options": [
                {"class": "good", "label": "Good"}, {"class": "bad", "label": "Bad"}]}},
             "classes": {"good": {"sets": {"seen": "good"}}, "bad": {"sets": {"seen": "bad"}}}}]}),
        3 if at < IN_PHASE => json!({"may_skip": true}),
        _ => json!({}),
    };
    for (field, value) in more.as_object().into_iter().flatten() {
        step[field] = value.clone();
    }
    step
}

fn named(ids: &[&str]) -> Value {
    ids.iter().map(|id| json!({"id": id, "label": "a label"})).collect()
}
