//! Which of the work done decides what an action does to the vehicle: found from the rules alone, once for each action.
//!
//! Most actions read the vehicle and next to nothing of the work, so that what one did in one state says what it does in
//! many others.

use crate::machine::{
    Action, DangerSet, Dependents, Field, Machine, State, StepIx, Test, Tree, VehicleActionIx,
};

/// The fields of the work half that decide whether an action is allowed, what it does to the vehicle, which work it
/// changes, and which dangers hold in it and after it: given the vehicle, the dangers that hold before, and that nothing
/// follows and nothing lapses before. Where a step is begun, [`work_read_in`] counts too. Nothing for actions that hang on
/// the order of all steps.
pub fn work_read(machine: &Machine, action: Action) -> Option<Vec<Field>> {
    let mut reading = Reading { machine, fields: Vec::new(), writes: State::default() };
    reading.fields.extend(machine.layout.over);
    reading.fields.extend_from_slice(&machine.layout.begun);
    reading.action(action)?;
    reading.settling();
    reading.dangers(action);
    Some(reading.fields)
}

/// The fields of the work half that count for every action while a step is begun.
pub fn work_read_in(machine: &Machine, step: StepIx) -> Vec<Field> {
    let mut reading = Reading { machine, fields: Vec::new(), writes: State::default() };
    reading.tree(machine.steps[step.at()].while_.tree());
    reading.judged(machine.readers.possible_in(step));
    reading.fields
}

struct Reading<'m> {
    machine: &'m Machine,
    fields: Vec<Field>,
    /// All bits that may change.
    writes: State,
}

impl Reading<'_> {
    /// What the action itself reads and writes.
    fn action(&mut self, action: Action) -> Option<()> {
        let machine = self.machine;
        match action {
            Action::Leave(step) => {
                self.ends_step();
                self.assigns(&machine.steps[step.at()].on_leave.edits);
            }
            Action::Done(step, outcome) => {
                let rule = &machine.steps[step.at()];
                self.ends_step();
                self.tree(rule.while_.tree());
                self.works(step);
                self.assigns(&rule.outcomes.get(outcome.at())?.assign.edits);
                self.pieces(step);
            }
            Action::Correct(step, outcome) => {
                let rule = &machine.steps[step.at()];
                self.works(step);
                self.assigns(&rule.outcomes.get(outcome.at())?.corrected.edits);
                rule.relies_on.iter().for_each(|other| self.read(machine.steps[other.at()].work));
            }
            Action::Vehicle(made) => {
                let rule = &machine.vehicle_actions[made.at()];
                self.tree(rule.needs.tree());
                self.assigns(&rule.makes.edits);
            }
            Action::Sign(given) => {
                let rule = &machine.signs[given.at()];
                self.read(machine.steps[rule.step.at()].work);
                self.tree(rule.holds_while.tree());
                self.write(rule.field);
            }
            Action::Observe(var, value) => {
                self.write(machine.vars[var.at()].field);
                let otherwise = |&(made, values): &(_, u64)| made == var && values >> value & 1 == 0;
                for (at, rule) in machine.steps.iter().enumerate() {
                    if rule.makes.iter().any(otherwise) {
                        self.works(StepIx::of(at));
                        self.pieces(StepIx::of(at));
                    }
                }
            }
            Action::Expire(gate) => self.write(machine.vars[gate.at()].field),
            Action::Piece(_) => {}
            Action::Finish => self.ends_job(machine.done_when.tree()),
            Action::Stop => self.ends_job(machine.safe_to_leave.tree()),
            // A void reads all that builds on the step, the others the order of the phases.
            Action::Begin(_) | Action::Skip(_) | Action::Void(_) => return None,
        }
        Some(())
    }

    fn ends_step(&mut self) {
        self.machine.layout.begun.iter().for_each(|field| self.write(*field));
    }

    fn ends_job(&mut self, when: &Tree) {
        self.tree(when);
        self.writes_over();
    }

    fn writes_over(&mut self) {
        self.machine.layout.over.iter().for_each(|field| self.write(*field));
    }

    /// The step becomes worked, signed and perhaps the last.
    fn works(&mut self, step: StepIx) {
        let machine = self.machine;
        let rule = &machine.steps[step.at()];
        self.write(rule.work);
        for given in &rule.signs {
            self.tree(machine.signs[given.at()].holds_while.tree());
            self.write(machine.signs[given.at()].field);
        }
        self.writes_over();
    }

    fn pieces(&mut self, step: StepIx) {
        let machine = self.machine;
        let rule = &machine.steps[step.at()];
        let moved = rule.takes_off.iter().chain(&rule.puts_back);
        moved.for_each(|(item, _)| self.write(machine.items[item.at()].field));
    }

    fn assigns(&mut self, edits: &[(Field, u64)]) {
        edits.iter().for_each(|(field, _)| self.write(*field));
    }

    /// Follows and lapses that what may change can bring about, and those that these bring about.
    fn settling(&mut self) {
        let machine = self.machine;
        loop {
            let before = self.writes;
            let dependents = machine.readers.dependents(&State::default(), &before);
            for follow in dependents_of(dependents.follows, &machine.follows) {
                self.tree(follow.when.tree());
                self.assigns(&follow.assign.edits);
            }
            for gate in dependents_of(dependents.gates, &machine.readers.gates) {
                let gate = &machine.vars[gate.at()];
                gate.holds_while.iter().for_each(|holds| self.tree(holds.tree()));
                self.write(gate.field);
            }
            for rule in dependents_of(dependents.signs, &machine.signs) {
                self.tree(rule.holds_while.tree());
                self.write(rule.field);
            }
            if self.writes == before {
                return;
            }
        }
    }

    /// Dangers that may be judged at a moment of the action or after it.
    fn dangers(&mut self, action: Action) {
        let machine = self.machine;
        let readers = &machine.readers;
        let made: Option<VehicleActionIx> =
            if let Action::Vehicle(made) = action { Some(made) } else { None };
        let of_vehicle_actions = if made.is_some() { readers.of_vehicle_actions } else { DangerSet::NONE };
        let judged = readers.dependent_dangers(&State::default(), &self.writes)
            | of_vehicle_actions
            | readers.of_leaving;
        let possible = readers.possible_at(made);
        // With a piece off that the checklist does not know, these are judged whatever the action changes.
        self.judged(judged & possible | readers.of_tray);
    }

    fn judged(&mut self, dangers: DangerSet) {
        let machine = self.machine;
        let rules = dangers.iter().filter_map(|danger| machine.dangers.get(danger.at()));
        rules.for_each(|rule| self.tree(rule.when.tree()));
    }

    fn tree(&mut self, tree: &Tree) {
        match tree {
            Tree::Test(Test::In { field, .. }) => self.read(*field),
            // Who is begun is read in any case.
            Tree::Test(_) | Tree::Const(_) => {}
            Tree::All(parts) | Tree::Any(parts) => parts.iter().for_each(|part| self.tree(part)),
        }
    }

    fn read(&mut self, field: Field) {
        if usize::from(field.word) < self.machine.layout.work_words && !self.fields.contains(&field) {
            self.fields.push(field);
        }
    }

    /// What is written is read too: that it changes hangs on what it was.
    fn write(&mut self, field: Field) {
        self.read(field);
        self.writes.add(field);
    }
}

/// The rules of a list that are among the dependents.
fn dependents_of<T>(dependents: u64, rules: &[T]) -> impl Iterator<Item = &T> {
    let mut from = 0;
    std::iter::from_fn(move || {
        let (at, rule) = Dependents::next(dependents, rules, from)?;
        from = at + 1;
        Some(rule)
    })
}
