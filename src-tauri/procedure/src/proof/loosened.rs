//! A danger that could not come up even without any rule guards against nothing: a mistake in its predicate.
//!
//! Every `needs`, `while`, `after`, permit and phase is dropped. Each danger is searched by itself over what it can
//! read, and what that hangs on; all else is left out of the state, so that the search stays small.

use super::finding::{Finding, Place};
use super::graph::Graph;
use super::report::{Proof, Property};
use crate::load::Procedure;
use crate::machine::{
    Action, Field, ItemIx, Machine, OutcomeIx, PhaseRule, Pred, State, StepIx, StepSet, Test, Tree, VarIx,
    VehicleActionIx, WORDS,
};
use crate::message::*;

/// States after which the search for one danger gives up.
const MOST_STATES: usize = 1_000_000;

pub fn judge(procedure: &Procedure, proof: &mut Proof) {
    let mut machine = loosen(&procedure.machine);
    let rules = std::mem::take(&mut machine.dangers);
    for ((at, danger), rule) in procedure.checklist.dangers.iter().enumerate().zip(rules) {
        // Alone in the machine, so that twice as many dangers take twice the time and not four times.
        machine.dangers = vec![rule];
        machine = machine.ready();
        if !comes_up(&machine) {
            let place = Place::of(procedure, format!("/dangers/{at}/when"));
            proof.find(Finding::new(Property::AllUsed, finding_danger_never(&danger.id), place));
        }
    }
}

/// Whether the one danger of a machine comes up.
fn comes_up(machine: &Machine) -> bool {
    let cone = Cone::of(machine);
    let mut graph = Graph::new(&machine.layout);
    for start in machine.all_starts() {
        if !machine.dangers_now(&start).is_empty() {
            return true;
        }
        graph.insert(&cone.project(start));
    }
    let mut at = 0;
    while at < graph.len() && graph.len() < MOST_STATES {
        let state = graph.state(at as u32);
        let met = successors(machine, &cone, &state, &mut |before, action, next| {
            graph.insert(&cone.project(next));
            !machine.dangers_of(before, action).is_empty()
        });
        if met {
            return true;
        }
        at += 1;
    }
    false
}

/// Shows every step from a state until one is answered with yes.
fn successors(
    machine: &Machine,
    cone: &Cone,
    state: &State,
    show: &mut dyn FnMut(&State, Action, State) -> bool,
) -> bool {
    let mut show_if_allowed = |before: &State, action: Action| {
        machine.step(before, action).is_ok_and(|next| show(before, action, next))
    };
    let vehicle_actions =
        (0..machine.vehicle_actions.len()).map(|at| Action::Vehicle(VehicleActionIx::of(at)));
    let ages = (0..machine.vars.len()).map(|at| Action::Expire(VarIx::of(at)));
    let leaves = machine.begun(state).map(Action::Leave).chain([Action::Stop]);
    if vehicle_actions.chain(ages).chain(leaves).any(|action| show_if_allowed(state, action)) {
        return true;
    }
    for step in (0..machine.steps.len()).map(StepIx::of) {
        let Ok(begun) = machine.step(state, Action::Begin(step)) else { continue };
        // A begun step is kept as a state of its own only where the danger looks at who is in it.
        if cone.doing.contains(step) && show_if_allowed(state, Action::Begin(step)) {
            return true;
        }
        let mut outcomes = (0..machine.steps[step.at()].outcomes.len()).map(OutcomeIx::of);
        if outcomes.any(|outcome| show_if_allowed(&begun, Action::Done(step, outcome))) {
            return true;
        }
    }
    false
}

/// What a danger can read, and what that hangs on.
struct Cone {
    kept: [u64; WORDS],
    doing: StepSet,
}

impl Cone {
    fn of(machine: &Machine) -> Cone {
        let mut cone = Cone { kept: [0; WORDS], doing: StepSet::default() };
        let mut open: Vec<&Pred> = machine.dangers.iter().map(|rule| &rule.when).collect();
        while let Some(pred) = open.pop() {
            for field in cone.read(machine, pred.tree()) {
                let vars = machine.vars.iter().filter(|var| var.field == field);
                open.extend(vars.filter_map(|var| var.holds_while.as_ref()));
                let signs = machine.signs.iter().filter(|sign| sign.field == field);
                open.extend(signs.map(|sign| &sign.holds_while));
                let writes =
                    |assign: &crate::machine::Assign| assign.edits.iter().any(|(edit, _)| *edit == field);
                let follows = machine.follows.iter().filter(|follow| writes(&follow.assign));
                open.extend(follows.map(|follow| &follow.when));
                // A step is only done where what it signs holds.
                let moves = |pieces: &[(ItemIx, u8)]| {
                    pieces.iter().any(|(item, _)| machine.items[item.at()].field == field)
                };
                let given = machine.steps.iter().filter(|step| {
                    step.work == field
                        || step.outcomes.iter().any(|outcome| writes(&outcome.assign))
                        || moves(&step.takes_off)
                        || moves(&step.puts_back)
                        || step.signs.iter().any(|given| machine.signs[given.at()].field == field)
                });
                let given = given.flat_map(|step| &step.signs);
                open.extend(given.map(|given| &machine.signs[given.at()].holds_while));
            }
        }
        for field in &machine.layout.begun {
            cone.keep(*field);
        }
        cone
    }

    fn keep(&mut self, field: Field) -> bool {
        let word = &mut self.kept[usize::from(field.word)];
        let bits = field.bits();
        let new = *word & bits != bits;
        *word |= bits;
        new
    }

    /// Keeps what the predicate reads; answers what is new.
    fn read(&mut self, machine: &Machine, tree: &Tree) -> Vec<Field> {
        match tree {
            Tree::Test(Test::In { field, .. }) => self.keep(*field).then_some(*field).into_iter().collect(),
            Tree::Test(Test::Doing(steps, _)) => {
                self.doing |= *steps;
                Vec::new()
            }
            // A vehicle action that changes nothing is none, so what it writes must be kept too.
            Tree::Test(Test::Moving(made, _) | Test::Moved(made, _)) => {
                let written = machine.vehicle_actions[made.at()].makes.edits.iter().map(|&(field, _)| field);
                written.filter(|field| self.keep(*field)).collect()
            }
            Tree::All(parts) | Tree::Any(parts) => {
                parts.iter().flat_map(|part| self.read(machine, part)).collect()
            }
            Tree::Const(_) | Tree::Test(Test::Leaving(_)) => Vec::new(),
        }
    }

    fn project(&self, mut state: State) -> State {
        state.words.iter_mut().zip(self.kept).for_each(|(word, mask)| *word &= mask);
        state
    }
}

/// The machine without its rules.
fn loosen(machine: &Machine) -> Machine {
    let mut loose = machine.clone();
    let always = || Pred::from(Tree::Const(true));
    for step in &mut loose.steps {
        step.on = None;
        step.after.clear();
        step.needs = always();
        step.while_ = always();
        step.again = Some(always());
        step.permits.clear();
        step.when_ending = true;
    }
    for made in &mut loose.vehicle_actions {
        made.needs = always();
    }
    for phase in &mut loose.phases {
        *phase = PhaseRule::default();
    }
    loose.start_when = always();
    loose.safe_to_leave = always();
    loose.ready()
}
