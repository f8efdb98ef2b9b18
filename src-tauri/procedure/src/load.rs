//! From the bytes of a file to a [`Procedure`], or to every mistake in it at once.

mod bind;
mod build;
mod check;
mod fit;
mod names;
mod outcomes;
mod phases;
pub(crate) mod place;
pub(crate) mod read;
pub(crate) mod sizes;
mod vehicle;
mod voided;

use std::collections::BTreeMap;
use std::fmt;

use panside_messages::{Arg, Message};

use crate::format::{Checklist, Named, Sheet, Step};
use crate::machine::{
    Action, ItemIx, Machine, OutcomeIx, Pred, SignIx, StepIx, VarIx, VariableKind, VehicleActionIx,
};
use crate::message::*;

pub use names::Names;
use place::Places;
pub use place::Spot;
pub use sizes::MOST_PIECES;
pub use vehicle::{Fit, OnVehicle};

/// Larger files are refused before they are read.
pub const LARGEST_FILE: usize = 4 * 1024 * 1024;

/// After so many mistakes the rest is left for the next try.
pub(crate) const MOST_PROBLEMS: usize = 100;

/// One mistake in a file: where, what, and what to do.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Problem {
    /// The file of the part it stands in; absent for the file that was read.
    pub file: Option<String>,
    /// Line, from 1.
    pub line: usize,
    /// Column, from 1.
    pub column: usize,
    /// The place as a JSON pointer.
    pub place: String,
    /// What is wrong and what to do about it. It follows the place, so it begins small.
    pub what: Message,
}

impl Problem {
    pub(crate) fn at(spot: Spot, place: &str, what: Message) -> Problem {
        let Spot { file, line, column } = spot;
        Problem { file, line, column, place: place.to_owned(), what }
    }

    /// Where it stands and what is wrong, as one line.
    #[must_use]
    pub fn message(&self) -> Message {
        let spot = Spot { file: self.file.clone(), line: self.line, column: self.column };
        let at = if self.file.is_some() { problem_in_part } else { problem_at };
        at(spot.at(&self.place), self.what.clone())
    }
}

impl fmt::Display for Problem {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.message().english())
    }
}

/// Every mistake found in a file.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{}", list(.0))]
pub struct Problems(pub Vec<Problem>);

impl Problems {
    /// Each on a line of its own.
    #[must_use]
    pub fn lines(&self) -> Arg {
        Arg::lines(self.0.iter().map(Problem::message))
    }
}

fn list(problems: &[Problem]) -> String {
    problems.iter().map(Problem::to_string).collect::<Vec<_>>().join("\n")
}

/// A checklist that loads: its text for people and its rules for the Machine.
#[derive(Debug, Clone)]
pub struct Procedure {
    /// The file as written.
    pub checklist: Checklist,
    /// The rules.
    pub machine: Machine,
    /// Which name has which index.
    pub names: Names,
    outcomes: Vec<outcomes::OutcomeTable>,
    since: Vec<Option<Pred>>,
    step_places: Vec<(usize, usize)>,
    places: Places,
    fit: Fit,
    known: bind::Known,
    pub(crate) there: vehicle::There,
}

/// Why the classes of a step's entries are no outcome.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NoOutcome {
    /// This entry's class keeps the step begun.
    NotYet(String),
    /// This entry is missing.
    Missing(String),
    /// This entry cannot have this class.
    NoClass(String, String),
}

impl Procedure {
    /// Reads a checklist.
    ///
    /// # Errors
    /// Every mistake in it, each with its place and what to do.
    pub fn load(bytes: &[u8]) -> Result<Procedure, Problems> {
        Procedure::load_traced(bytes, &|_| {})
    }

    /// Reads a checklist whose places `trace` moves to where they were copied from.
    pub(crate) fn load_traced(bytes: &[u8], trace: &dyn Fn(&mut Places)) -> Result<Procedure, Problems> {
        let (mut checklist, places) = read::checklist(bytes, trace)?;
        let mixed = fit::settle_counts(&mut checklist, &places);
        if mixed.is_empty() {
            build::procedure(checklist, &places, &bind::Known::default())
        } else {
            Err(Problems(mixed))
        }
    }

    /// The same checklist for so many people at a time. Its proof is another one.
    ///
    /// # Errors
    /// When there can't be so many, or the state has no room for them.
    pub fn with_crew(&self, crew: u8) -> Result<Procedure, Problems> {
        let mut procedure =
            build::procedure(Checklist { crew, ..self.checklist.clone() }, &self.places, &self.known)?;
        let vars = procedure.machine.vars.iter_mut().zip(&self.machine.vars);
        vars.for_each(|(var, of)| var.absent = of.absent);
        procedure.fit = self.fit.clone();
        Ok(procedure)
    }

    /// Since when the wait that lies before a step runs, as a predicate over conditions; nothing where none lies there.
    #[must_use]
    pub fn waits_since(&self, step: StepIx) -> Option<&Pred> {
        self.since[step.at()].as_ref()
    }

    /// The outcome of a step when each entry turns out as usual, or as it is given. What is given and is no class that
    /// lets the step be done counts as not given.
    #[must_use]
    pub fn usual_outcome(&self, step: StepIx, given: &BTreeMap<String, String>) -> OutcomeIx {
        let classes = self.step(step).entries.iter().filter_map(|entry| {
            let known = given.get(&entry.id).map(String::as_str).filter(|class| entry.goes_on(class));
            Some((entry.id.clone(), known.or_else(|| entry.usual())?.to_owned()))
        });
        self.outcomes[step.at()].find(&classes.collect())
    }

    /// The text of a step.
    #[must_use]
    pub fn step(&self, step: StepIx) -> &Step {
        let (phase, place) = self.step_places[step.at()];
        &self.checklist.phases[phase].steps[place]
    }

    /// File, line and column of a part of the file by its JSON pointer, or of the nearest part around it.
    #[must_use]
    pub fn spot(&self, pointer: &str) -> Spot {
        self.places.find(pointer)
    }

    /// Where a step stands in the file, as a JSON pointer.
    #[must_use]
    pub fn step_pointer(&self, step: StepIx) -> String {
        let (phase, place) = self.step_places[step.at()];
        format!("/phases/{phase}/steps/{place}")
    }

    /// Steps in file order.
    pub fn steps(&self) -> impl Iterator<Item = (StepIx, &Step)> {
        (0..self.step_places.len()).map(|at| (StepIx::of(at), self.step(StepIx::of(at))))
    }

    /// The outcome that belongs to what the entries of a step turned out to be.
    ///
    /// # Errors
    /// When an entry is missing, has a class it cannot have, or keeps the step begun.
    pub fn outcome(&self, step: StepIx, classes: &BTreeMap<String, String>) -> Result<OutcomeIx, NoOutcome> {
        for entry in &self.step(step).entries {
            match classes.get(&entry.id) {
                None if entry.optional => {}
                None => return Err(NoOutcome::Missing(entry.id.clone())),
                Some(class) if !entry.ask.classes().contains(&class.as_str()) => {
                    return Err(NoOutcome::NoClass(entry.id.clone(), class.clone()));
                }
                Some(class) if entry.classes.get(class).is_some_and(|effect| effect.not_yet) => {
                    return Err(NoOutcome::NotYet(entry.id.clone()));
                }
                Some(_) => {}
            }
        }
        Ok(self.outcomes[step.at()].find(classes))
    }

    /// The classes that make an outcome, as "entry: class", for entries that decide something.
    #[must_use]
    pub fn outcome_classes(&self, step: StepIx, outcome: OutcomeIx) -> Vec<(&str, &str)> {
        self.outcomes[step.at()].classes(outcome)
    }

    /// The name of a value of a condition, fact or gate.
    #[must_use]
    pub fn value_name(&self, var: VarIx, value: u8) -> &str {
        self.names.value(var, value)
    }

    /// The name of a condition, fact or gate.
    #[must_use]
    pub fn var_name(&self, var: VarIx) -> &str {
        &self.names.vars[var.at()]
    }

    /// What people read for a condition, fact or gate.
    #[must_use]
    pub fn var_label(&self, var: VarIx) -> &str {
        self.labelled(var).0
    }

    /// What people read for a value of a condition, fact or gate.
    #[must_use]
    pub fn value_label(&self, var: VarIx, value: u8) -> &str {
        let is_gate = self.machine.vars[var.at()].kind == VariableKind::Gate;
        let at = usize::from(value).checked_sub(usize::from(is_gate));
        at.and_then(|at| self.labelled(var).1.get(at)).map_or(names::UNKNOWN, |value| &value.label)
    }

    /// Label and values, in the order in which variables are numbered: conditions, facts, gates.
    fn labelled(&self, var: VarIx) -> (&str, &[Named]) {
        let Checklist { conditions, facts, gates, .. } = &self.checklist;
        let at = var.at();
        if let Some(condition) = conditions.get(at) {
            return (&condition.label, &condition.values);
        }
        let at = at - conditions.len();
        match facts.get(at) {
            Some(fact) => (&fact.label, &fact.values),
            None => {
                let gate = &gates[at - facts.len()];
                (&gate.label, &gate.classes)
            }
        }
    }

    /// A condition, fact or gate and its value by their ids, as people read them; the ids themselves where the checklist
    /// does not have them.
    #[must_use]
    pub fn labels_of<'a>(&'a self, var: &'a str, value: &'a str) -> (&'a str, &'a str) {
        let Some(found) = self.names.var(var) else { return (var, value) };
        let known = self.names.value_of(found, value);
        (self.var_label(found), known.map_or(value, |known| self.value_label(found, known)))
    }

    /// The text of a sign-off.
    #[must_use]
    pub fn sign_off(&self, given: SignIx) -> &crate::format::SignOff {
        &self.checklist.sign_offs[given.at()]
    }

    /// The text of a vehicle action.
    #[must_use]
    pub fn vehicle_action_text(&self, made: VehicleActionIx) -> &crate::format::VehicleAction {
        &self.checklist.vehicle_actions[made.at()]
    }

    /// The text of an item.
    #[must_use]
    pub fn item(&self, item: ItemIx) -> &crate::format::Item {
        &self.checklist.items[item.at()]
    }

    /// Every action there is, for whoever tries them all.
    #[must_use]
    pub fn all_actions(&self) -> Vec<Action> {
        let machine = &self.machine;
        let mut actions = vec![Action::Finish, Action::Stop];
        for (at, rule) in machine.steps.iter().enumerate() {
            let step = StepIx::of(at);
            actions.extend([
                Action::Begin(step),
                Action::Leave(step),
                Action::Skip(step),
                Action::Void(step),
            ]);
            for outcome in (0..rule.outcomes.len()).map(OutcomeIx::of) {
                actions.extend([Action::Done(step, outcome), Action::Correct(step, outcome)]);
            }
        }
        actions.extend((0..machine.vehicle_actions.len()).map(|at| Action::Vehicle(VehicleActionIx::of(at))));
        actions.extend((0..machine.signs.len()).map(|at| Action::Sign(SignIx::of(at))));
        for (at, var) in machine.vars.iter().enumerate() {
            match var.kind {
                VariableKind::Gate if var.ages => actions.push(Action::Expire(VarIx::of(at))),
                VariableKind::Condition if !var.absent => {
                    actions.extend((0..var.size).map(|value| Action::Observe(VarIx::of(at), value)));
                }
                _ => {}
            }
        }
        actions
    }

    /// An action in the words of the checklist.
    #[must_use]
    pub fn say(&self, action: Action) -> Message {
        let called = |step: StepIx| action_step(&self.step(step).id, &self.step(step).title);
        let classes = |step, outcome| {
            let classes = self.outcome_classes(step, outcome);
            let classes: Vec<_> = classes.iter().map(|(entry, class)| format!("{entry}: {class}")).collect();
            Some(classes).filter(|classes| !classes.is_empty())
        };
        match action {
            Action::Begin(step) => action_begin(called(step)),
            Action::Leave(step) => action_leave(called(step)),
            Action::Done(step, outcome) => match classes(step, outcome) {
                Some(classes) => action_done_as(called(step), classes),
                None => action_done(called(step)),
            },
            Action::Vehicle(made) => {
                let text = self.vehicle_action_text(made);
                action_vehicle(&text.id, &text.title)
            }
            Action::Sign(given) => action_sign(&self.sign_off(given).id),
            Action::Skip(step) => action_skip(called(step)),
            Action::Void(step) => action_void(called(step)),
            Action::Correct(step, outcome) => match classes(step, outcome) {
                Some(classes) => action_correct_as(called(step), classes),
                None => action_correct(called(step)),
            },
            Action::Observe(var, value) => action_observe(self.var_name(var), self.value_name(var, value)),
            Action::Expire(gate) => action_expire(self.var_name(gate)),
            Action::Piece(true) => action_piece_off(),
            Action::Piece(false) => action_piece_back(),
            Action::Finish => action_finish(),
            Action::Stop => action_stop(),
        }
    }
}

/// Reads a spec sheet.
///
/// # Errors
/// Every mistake in it, each with its place and what to do.
pub fn sheet(bytes: &[u8]) -> Result<Sheet, Problems> {
    read::sheet(bytes)
}

/// What a checklist lacks on a sheet: every key it names must be there, with the right kind of value.
#[must_use]
pub fn lacking(procedure: &Procedure, sheet: &Sheet) -> Vec<Message> {
    vehicle::lacking(procedure, sheet)
}
