//! What the tests are made of: a checklist that is changed part by part, and a job that is run by names.

use std::collections::BTreeMap;

use panside_procedure::format::Checklist;
use panside_procedure::machine::{SignIx, StepIx, VarIx};
use panside_procedure::{Action, Blocked, Problems, Procedure, Shown, State};
use serde_json::{Value, json};

/// A checklist that is being written. Its parts are found by their `id`; "" is the checklist itself.
#[derive(Clone)]
pub struct Draft(pub Value);

impl Draft {
    /// The same with one field of one part changed; `/` leads into a field.
    pub fn set(mut self, id: &str, field: &str, value: Value) -> Draft {
        *field.split('/').fold(self.part(id), |part, field| &mut part[field]) = value;
        self
    }

    /// The same with one more thing in a list of one part.
    pub fn add(mut self, id: &str, list: &str, value: Value) -> Draft {
        let list = &mut self.part(id)[list];
        if list.is_null() {
            *list = Value::Array(Vec::new());
        }
        list.as_array_mut().unwrap_or_else(|| panic!("no list in {id}")).push(value);
        self
    }

    /// The same without a field of a part.
    pub fn without(mut self, id: &str, field: &str) -> Draft {
        let gone = self.part(id).as_object_mut().and_then(|fields| fields.remove(field));
        assert!(gone.is_some(), "{id} has no {field}");
        self
    }

    /// Where a part stands, as a JSON pointer.
    pub fn place(&self, id: &str) -> String {
        place_of(&self.0, id).unwrap_or_else(|| panic!("nothing is called {id}"))
    }

    fn part(&mut self, id: &str) -> &mut Value {
        let place = self.place(id);
        self.0.pointer_mut(&place).unwrap_or_else(|| panic!("nothing is at {place}"))
    }

    /// The file.
    pub fn text(&self) -> String {
        format!("{:#}", labelled(self.0.clone()))
    }

    pub fn load(&self) -> Result<Procedure, Problems> {
        Procedure::load(self.text().as_bytes())
    }

    /// The checklist loaded; for a draft that has no mistakes.
    pub fn procedure(&self) -> Procedure {
        self.load().unwrap_or_else(|problems| panic!("{problems}"))
    }

    /// A job on the first of the starts.
    pub fn job(&self) -> Job {
        let procedure = self.procedure();
        let state = procedure.machine.all_starts()[0];
        Job { procedure, state }
    }
}

/// A checklist with a label for each name that is written without one, and for each key of the sheet: what these tests
/// look at are rules.
pub fn labelled(mut checklist: Value) -> Value {
    for (list, values) in [("conditions", "values"), ("facts", "values"), ("gates", "classes")] {
        let named = checklist.get_mut(list).and_then(Value::as_array_mut);
        for one in named.into_iter().flatten().filter_map(Value::as_object_mut) {
            one.entry("label").or_insert_with(|| json!("what people read"));
            for value in one.get_mut(values).and_then(Value::as_array_mut).into_iter().flatten() {
                if let Value::String(id) = value {
                    *value = json!({"id": id, "label": "what people read"});
                }
            }
        }
    }
    if let Ok(known) = serde_json::from_value::<Checklist>(checklist.clone()) {
        let entries = known.phases.iter().flat_map(|phase| &phase.steps).flat_map(|step| &step.entries);
        let keys = entries.flat_map(|entry| entry.ask.sheet_needs()).map(|need| need.key);
        for key in keys.chain(known.facts.iter().map(|fact| fact.sheet.as_str())) {
            if !known.sheet_keys.contains_key(key) {
                checklist["sheet_keys"][key] = json!("what people read");
            }
        }
    }
    checklist
}

fn place_of(value: &Value, id: &str) -> Option<String> {
    if id.is_empty() {
        return Some(String::new());
    }
    match value {
        Value::Object(fields) => {
            // The checklist's own id names no part.
            if fields.get("id").is_some_and(|found| found == id) && !fields.contains_key("format") {
                return Some(String::new());
            }
            fields.iter().find_map(|(name, part)| Some(format!("/{name}{}", place_of(part, id)?)))
        }
        Value::Array(list) => {
            list.iter().enumerate().find_map(|(at, part)| Some(format!("/{at}{}", place_of(part, id)?)))
        }
        _ => None,
    }
}

/// A job that is run by names.
///
/// An action is said as `begin drain`, `leave drain`, `done decide answer=leak`, `do drain` (begin and done),
/// `action raise`, `sign clear`, `skip dye`, `void drain`, `correct decide answer=leak`,
/// `observe lift=floor`, `expire level`, `finish`, `stop`. Several stand in one text with semicolons between.
/// An entry that is not named turns out as the first of its classes that does not hold the step.
pub struct Job {
    pub procedure: Procedure,
    pub state: State,
}

impl Job {
    /// Carries out what is said, which must be allowed.
    pub fn run(&mut self, said: &str) -> &mut Job {
        for one in said.split(';').map(str::trim).filter(|one| !one.is_empty()) {
            let whole = one.strip_prefix("do ").map(|rest| [format!("begin {rest}"), format!("done {rest}")]);
            for action in whole.as_ref().map_or(vec![one], |both| both.iter().map(String::as_str).collect()) {
                let next = self.try_one(action);
                self.state = next.unwrap_or_else(|blocked| panic!("{action}: {blocked:?}"));
            }
        }
        self
    }

    /// The same job further on; this one stays where it is.
    pub fn after(&self, said: &str) -> Job {
        let mut later = Job { procedure: self.procedure.clone(), state: self.state };
        later.run(said);
        later
    }

    /// What one action would lead to.
    pub fn try_one(&self, said: &str) -> Result<State, Blocked> {
        self.procedure.machine.step(&self.state, self.action(said))
    }

    /// Why one action is not allowed.
    pub fn blocked(&self, said: &str) -> Blocked {
        match self.try_one(said) {
            Err(blocked) => blocked,
            Ok(_) => panic!("{said} is allowed"),
        }
    }

    /// The action that is said.
    pub fn action(&self, said: &str) -> Action {
        let names = &self.procedure.names;
        let (verb, rest) = said.split_once(' ').unwrap_or((said, ""));
        let name = rest.split(' ').next().unwrap_or_default();
        let step = || self.step(name);
        match verb {
            "begin" => Action::Begin(step()),
            "leave" => Action::Leave(step()),
            "done" | "correct" => {
                let classes = self.classes(name, rest);
                let outcome = self.procedure.outcome(step(), &classes);
                let outcome = outcome.unwrap_or_else(|error| panic!("{said}: {error:?}"));
                if verb == "done" { Action::Done(step(), outcome) } else { Action::Correct(step(), outcome) }
            }
            "action" => Action::Vehicle(
                names.vehicle_action(name).unwrap_or_else(|| panic!("no vehicle action in \"{said}\"")),
            ),
            "sign" => Action::Sign(self.sign_ix(name)),
            "skip" => Action::Skip(step()),
            "void" => Action::Void(step()),
            "expire" => Action::Expire(self.var(name)),
            "observe" => {
                let (var, value) = name.split_once('=').unwrap_or_else(|| panic!("{said}: no value"));
                let var = self.var(var);
                let value = names.value_of(var, value);
                Action::Observe(var, value.unwrap_or_else(|| panic!("{said}: no such value")))
            }
            "piece" => Action::Piece(name == "off"),
            "finish" => Action::Finish,
            "stop" => Action::Stop,
            _ => panic!("{said} is no action"),
        }
    }

    fn classes(&self, step: &str, said: &str) -> BTreeMap<String, String> {
        let text = self.procedure.step(self.step(step));
        let usual = text.entries.iter().filter(|entry| !entry.optional).filter_map(|entry| {
            let goes_on = |class: &&str| entry.classes.get(*class).is_none_or(|effect| !effect.not_yet);
            Some((entry.id.clone(), entry.ask.classes().into_iter().find(goes_on)?.to_owned()))
        });
        let given = said.split(' ').filter_map(|word| word.split_once('='));
        usual.chain(given.map(|(entry, class)| (entry.to_owned(), class.to_owned()))).collect()
    }

    pub fn var(&self, name: &str) -> VarIx {
        self.procedure.names.var(name).unwrap_or_else(|| panic!("no condition or gate {name}"))
    }

    /// The value of a condition or gate.
    pub fn is(&self, name: &str) -> &str {
        let var = self.var(name);
        self.procedure.value_name(var, self.procedure.machine.value(&self.state, var))
    }

    /// How a step is shown.
    pub fn shown(&self, step: &str) -> Shown {
        self.procedure.machine.shown(&self.state, self.step(step))
    }

    pub fn step(&self, name: &str) -> StepIx {
        self.procedure.names.step(name).unwrap_or_else(|| panic!("no step {name}"))
    }

    pub fn sign_ix(&self, name: &str) -> SignIx {
        self.procedure.names.sign(name).unwrap_or_else(|| panic!("no sign-off {name}"))
    }

    /// Whether a sign-off is valid.
    pub fn signed(&self, name: &str) -> bool {
        self.procedure.machine.is_valid(&self.state, self.sign_ix(name))
    }

    /// Pieces of an item that are off the vehicle.
    pub fn off(&self, item: &str) -> u8 {
        let item = self.procedure.names.item(item).unwrap_or_else(|| panic!("no item {item}"));
        self.procedure.machine.empty(&self.state, item)
    }
}
