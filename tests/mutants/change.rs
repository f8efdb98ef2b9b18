//! Single changes to a checklist: each one a mistake that an author could make.

use serde_json::{Value, json};

/// One change at one place.
#[derive(Debug, Clone)]
pub struct Change {
    /// What sort of mistake it is.
    pub kind: &'static str,
    /// Where, as a JSON pointer.
    place: String,
    /// What stands there afterwards; nothing where it is taken out.
    becomes: Option<Value>,
}

impl Change {
    /// The change in words.
    pub fn say(&self, checklist: &Value) -> String {
        let owner = self.place.rsplit('/').count();
        let id = (0..owner).find_map(|up| {
            let place = self.place.rsplitn(up + 1, '/').last()?;
            checklist.pointer(place)?.get("id")?.as_str()
        });
        let was = checklist.pointer(&self.place).map(Value::to_string).unwrap_or_default();
        let becomes = self.becomes.as_ref().map_or("nothing".to_owned(), Value::to_string);
        format!("{}: {} of {}: {was} becomes {becomes}", self.kind, self.place, id.unwrap_or("the checklist"))
    }

    /// The checklist with the change.
    pub fn apply(&self, checklist: &Value) -> Value {
        let mut changed = checklist.clone();
        let (parent, key) = self.place.rsplit_once('/').unwrap_or_default();
        match (changed.pointer_mut(parent), &self.becomes) {
            (Some(Value::Object(fields)), Some(value)) => drop(fields.insert(key.to_owned(), value.clone())),
            (Some(Value::Object(fields)), None) => drop(fields.remove(key)),
            (Some(Value::Array(list)), None) => drop(key.parse().map(|at: usize| list.remove(at))),
            _ => {}
        }
        changed
    }
}

/// Every single change of the kinds known here, in file order.
pub fn all(checklist: &Value) -> Vec<Change> {
    let mut changes = Changes { checklist, found: Vec::new() };
    for (at, phase) in list(checklist, "phases").enumerate() {
        for (step_at, step) in list(phase, "steps").enumerate() {
            changes.of_step(&format!("/phases/{at}/steps/{step_at}"), step);
        }
    }
    for (at, made) in list(checklist, "vehicle_actions").enumerate() {
        changes.predicate(
            "a part of a vehicle action's needs dropped",
            &format!("/vehicle_actions/{at}/needs"),
            &made["needs"],
        );
        changes.values(
            "a wrong value in a vehicle action's needs",
            &format!("/vehicle_actions/{at}/needs"),
            &made["needs"],
        );
    }
    for (name, text) in fields(checklist, "terms") {
        changes.predicate("a part of a term dropped", &format!("/terms/{name}"), text);
        changes.values("a wrong value in a term", &format!("/terms/{name}"), text);
    }
    for (at, sign) in list(checklist, "sign_offs").enumerate() {
        if sign.get("holds_while").is_some() {
            changes.add(
                "a sign-off that never lapses",
                format!("/sign_offs/{at}/holds_while"),
                Some(json!("true")),
            );
        }
    }
    for (at, gate) in list(checklist, "gates").enumerate() {
        for field in ["holds_while", "fresh_for"] {
            if gate.get(field).is_some() {
                changes.add("knowledge that never lapses", format!("/gates/{at}/{field}"), None);
            }
        }
    }
    for at in 0..list(checklist, "follows").count() {
        changes.add("a change of physics forgotten", format!("/follows/{at}"), None);
    }
    for rule in ["done_when", "safe_to_leave", "start_when"] {
        changes.predicate("a part of an end or of the start dropped", &format!("/{rule}"), &checklist[rule]);
    }
    changes.found
}

struct Changes<'a> {
    checklist: &'a Value,
    found: Vec<Change>,
}

impl Changes<'_> {
    fn add(&mut self, kind: &'static str, place: String, becomes: Option<Value>) {
        self.found.push(Change { kind, place, becomes });
    }

    fn of_step(&mut self, place: &str, step: &Value) {
        for rule in ["needs", "while"] {
            self.predicate("a part of needs dropped", &format!("{place}/{rule}"), &step[rule]);
            self.values("a wrong value in needs", &format!("{place}/{rule}"), &step[rule]);
        }
        for (list_name, kind) in [("permits", "a permit dropped"), ("after", "an after dropped")] {
            for at in 0..list(step, list_name).count() {
                self.add(kind, format!("{place}/{list_name}/{at}"), None);
            }
        }
        let pieces = [("puts_back", "pieces not put back"), ("takes_off", "pieces not taken off")];
        for (table, kind) in pieces {
            for (item, _) in fields(step, table) {
                self.add(kind, format!("{place}/{table}/{item}"), None);
            }
        }
        for table in ["makes", "on_begin"] {
            for (name, value) in fields(step, table) {
                let place = format!("{place}/{table}/{name}");
                self.add("a change by hands forgotten", place.clone(), None);
                if let Some(other) = self.another(name, value) {
                    self.add("a wrong value in makes", place, Some(other));
                }
            }
        }
        for (rule, kind) in [
            ("on", "a condition of a step dropped"),
            ("again", "a redo dropped"),
            ("when_ending", "a step shut when the job ends"),
        ] {
            if step.get(rule).is_some() {
                self.add(kind, format!("{place}/{rule}"), None);
            }
        }
        for (at, entry) in list(step, "entries").enumerate() {
            for (class, effect) in fields(entry, "classes") {
                for (field, kind) in [("ends", "an end dropped"), ("not_yet", "a held class let through")] {
                    if effect.get(field).is_some() {
                        self.add(kind, format!("{place}/entries/{at}/classes/{class}/{field}"), None);
                    }
                }
            }
        }
    }

    /// Drops each part of a conjunction in turn.
    fn predicate(&mut self, kind: &'static str, place: &str, text: &Value) {
        let parts = parts(text.as_str().unwrap_or_default());
        for dropped in 0..parts.len() {
            let rest: Vec<&str> = parts
                .iter()
                .enumerate()
                .filter(|(at, _)| *at != dropped)
                .map(|(_, part)| part.as_str())
                .collect();
            let rest = if rest.is_empty() { "true".to_owned() } else { rest.join(" and ") };
            if rest != *text {
                self.add(kind, place.to_owned(), Some(json!(rest)));
            }
        }
    }

    /// Gives each part `condition = value` another value in turn.
    fn values(&mut self, kind: &'static str, place: &str, text: &Value) {
        let parts = parts(text.as_str().unwrap_or_default());
        for (at, part) in parts.iter().enumerate() {
            let Some((name, value)) = part.split_once(" = ") else { continue };
            let Some(other) = self.another(name, &json!(value)) else { continue };
            let mut parts = parts.clone();
            parts[at] = format!("{name} = {}", other.as_str().unwrap_or_default());
            self.add(kind, place.to_owned(), Some(json!(parts.join(" and "))));
        }
    }

    /// The next value of a condition after this one.
    fn another(&self, name: &str, value: &Value) -> Option<Value> {
        let condition = list(self.checklist, "conditions").find(|condition| condition["id"] == name)?;
        let values = condition["values"].as_array()?;
        let at = values.iter().position(|one| one["id"] == *value)?;
        Some(values[(at + 1) % values.len()]["id"].clone())
    }
}

fn list<'a>(value: &'a Value, name: &str) -> impl Iterator<Item = &'a Value> + use<'a> {
    value.get(name).and_then(Value::as_array).into_iter().flatten()
}

fn fields<'a>(value: &'a Value, name: &str) -> impl Iterator<Item = (&'a String, &'a Value)> + use<'a> {
    value.get(name).and_then(Value::as_object).into_iter().flatten()
}

/// The parts of a conjunction; one part where "or" is outermost.
fn parts(text: &str) -> Vec<String> {
    let mut parts = vec![Vec::new()];
    let mut depth = 0;
    for word in text.split_whitespace() {
        if depth == 0 && word == "or" {
            return vec![text.to_owned()];
        }
        if depth == 0 && word == "and" {
            parts.push(Vec::new());
            continue;
        }
        depth += word.matches(['(', '{']).count();
        depth -= word.matches([')', '}']).count();
        if let Some(part) = parts.last_mut() {
            part.push(word);
        }
    }
    parts.iter().filter(|part| !part.is_empty()).map(|part| part.join(" ")).collect()
}
