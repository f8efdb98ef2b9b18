//! What ever came up in a search, beside its states: noted at every step, so it must be quick.

use crate::machine::{Action, Machine, Pred, State, StepIx, Tree, VehicleActionIx, WORDS};

/// The `needs` of a step or a vehicle action.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Needs {
    Step(StepIx),
    Vehicle(VehicleActionIx),
}

impl Needs {
    /// Those that are more than "true" or "false".
    fn all(machine: &Machine) -> Vec<Needs> {
        let steps = (0..machine.steps.len()).map(|at| Needs::Step(StepIx::of(at)));
        let vehicle_actions =
            (0..machine.vehicle_actions.len()).map(|at| Needs::Vehicle(VehicleActionIx::of(at)));
        steps
            .chain(vehicle_actions)
            .filter(|needs| !matches!(needs.of(machine).tree(), Tree::Const(_)))
            .collect()
    }

    fn of(self, machine: &Machine) -> &Pred {
        match self {
            Needs::Step(step) => &machine.steps[step.at()].needs,
            Needs::Vehicle(made) => &machine.vehicle_actions[made.at()].needs,
        }
    }
}

/// What came up.
pub struct Seen {
    /// Which of the actions ever happened, by number.
    pub happened: Vec<bool>,
    /// For each sign-off: it lapsed; it was renewed after a lapse.
    pub signs: Vec<(bool, bool)>,
    /// For each variable that is a gate: it became unknown because it no longer held; it was read again.
    pub gates: Vec<(bool, bool)>,
    /// Predicates of steps and vehicle actions that held in every state so far.
    pub needs: Vec<Needs>,
    /// Bits of sign-offs and gates of which not everything was seen yet.
    open: [u64; WORDS],
    /// Those of them that were not seen renewed: whether they are hangs on the work done before, so that one step does
    /// not stand for others that change the vehicle alike.
    not_renewed: [u64; WORDS],
}

impl Seen {
    pub fn new(machine: &Machine, actions: usize) -> Seen {
        let mut seen = Seen {
            happened: vec![false; actions],
            signs: vec![(false, false); machine.signs.len()],
            gates: vec![(false, false); machine.vars.len()],
            needs: Needs::all(machine),
            open: [0; WORDS],
            not_renewed: [0; WORDS],
        };
        seen.look_for_the_rest(machine);
        seen
    }

    /// Takes in a state.
    pub fn look_at(&mut self, machine: &Machine, state: &State) {
        // After a few states hardly one is left.
        self.needs.retain(|needs| needs.of(machine).holds(state));
    }

    fn look_for_the_rest(&mut self, machine: &Machine) {
        (self.open, self.not_renewed) = ([0; WORDS], [0; WORDS]);
        let signs = machine.signs.iter().map(|rule| rule.field).zip(&self.signs);
        let gates = machine.vars.iter().zip(&self.gates).filter(|(var, _)| var.holds_while.is_some());
        for (field, seen) in signs.chain(gates.map(|(var, seen)| (var.field, seen))) {
            let (lapsed, renewed) = *seen;
            let open = |seen: bool| if seen { 0 } else { field.bits() };
            self.open[usize::from(field.word)] |= open(lapsed && renewed);
            self.not_renewed[usize::from(field.word)] |= open(renewed);
        }
    }

    /// Whether a step like one that was taken in, but after other work, could still show something.
    pub fn is_open(&self) -> bool {
        self.not_renewed != [0; WORDS]
    }

    /// Whether this step, after other work, could still show something.
    pub fn watches(&self, before: &State, next: &State) -> bool {
        differ(before, next, &self.not_renewed)
    }

    /// Takes in a step.
    pub fn note(&mut self, machine: &Machine, before: &State, (at, action): (u16, Action), next: &State) {
        self.happened[usize::from(at)] = true;
        if differ(before, next, &self.open) {
            self.take_in(machine, before, action, next);
            self.look_for_the_rest(machine);
        }
    }

    fn take_in(&mut self, machine: &Machine, before: &State, action: Action, next: &State) {
        let voided = matches!(action, Action::Void(_));
        for (rule, (lapsed, renewed)) in machine.signs.iter().zip(&mut self.signs) {
            let (was, is) = (rule.field.get(before), rule.field.get(next));
            if was != is {
                *lapsed |= was == 1 && !voided;
                *renewed |= is == 1 && machine.is_worked(before, rule.step);
            }
        }
        let aged = matches!(action, Action::Expire(_));
        for (at, (var, (lapsed, renewed))) in machine.vars.iter().zip(&mut self.gates).enumerate() {
            let (was, is) = (var.field.get(before), var.field.get(next));
            if var.holds_while.is_some() && was != is {
                *lapsed |= is == 0 && !aged && !voided;
                let written_before = || {
                    machine.steps.iter().any(|rule| {
                        rule.work.get(before) == 1 && rule.writes.iter().any(|gate| gate.at() == at)
                    })
                };
                *renewed |= was == 0 && !*renewed && written_before();
            }
        }
    }
}

/// Whether two states differ in some of these bits.
fn differ(one: &State, other: &State, bits: &[u64; WORDS]) -> bool {
    let words = bits.iter().zip(one.words.iter().zip(&other.words));
    words.fold(0, |differs, (bits, (one, other))| differs | (one ^ other) & bits) != 0
}
