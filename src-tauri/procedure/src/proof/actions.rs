//! Which actions are worth trying in a state: all that `step` could allow, found by looking at who is begun and
//! how far each step is, so that the search need not try every action in every state.

use crate::load::Procedure;
use crate::machine::{Action, Machine, State, StepIx, work};

/// The actions of a search, and where each step's stand.
pub struct Actions {
    all: Vec<Action>,
    steps: Vec<OfStep>,
    /// Moves, signatures, ageing, observations, the ends: tried in every state.
    any_time: Vec<u16>,
}

#[derive(Default)]
struct OfStep {
    untouched: Vec<u16>,
    worked: Vec<u16>,
    struck: Vec<u16>,
    begun: Vec<u16>,
    begin: Vec<u16>,
}

impl Actions {
    /// The actions of a procedure that a search has.
    pub fn new(procedure: &Procedure, has: impl Fn(Action) -> bool) -> Self {
        let machine = &procedure.machine;
        let all: Vec<Action> = procedure.all_actions().into_iter().filter(|action| has(*action)).collect();
        let mut steps: Vec<OfStep> = machine.steps.iter().map(|_| OfStep::default()).collect();
        let mut any_time = Vec::new();
        for (at, &action) in all.iter().enumerate() {
            // Loading bounds steps and outcomes so that there are far fewer than 65,536 actions.
            let at = at as u16;
            match action {
                Action::Begin(step) => steps[step.at()].begin.push(at),
                Action::SetAside(step) if machine.steps[step.at()].may_set_aside => {
                    steps[step.at()].untouched.push(at);
                }
                Action::SetAside(_) => {}
                Action::Leave(step) | Action::Done(step, _) => steps[step.at()].begun.push(at),
                Action::Strike(step) => steps[step.at()].worked.push(at),
                Action::Rerecord(step, _) => steps[step.at()].struck.push(at),
                _ => any_time.push(at),
            }
        }
        Actions { all, steps, any_time }
    }

    pub fn len(&self) -> usize {
        self.all.len()
    }

    pub fn get(&self, at: u16) -> Action {
        self.all[usize::from(at)]
    }

    pub fn iter(&self) -> impl Iterator<Item = Action> {
        self.all.iter().copied()
    }

    /// Every action that may be allowed in the state.
    pub fn candidates(&self, machine: &Machine, state: &State, into: &mut Vec<u16>) {
        into.clear();
        into.extend(&self.any_time);
        let free = machine.layout.begun.iter().any(|field| field.get(state) == 0);
        for (at, of) in self.steps.iter().enumerate() {
            let rule = &machine.steps[at];
            match rule.work.get(state) {
                work::UNTOUCHED => {
                    into.extend(&of.untouched);
                    if free {
                        into.extend(&of.begin);
                    }
                }
                work::WORKED => {
                    into.extend(&of.worked);
                    if free && rule.again.is_some() {
                        into.extend(&of.begin);
                    }
                }
                work::STRUCK => into.extend(&of.struck),
                _ => {}
            }
        }
        for step in machine.begun(state) {
            into.extend(&self.of(step).begun);
        }
    }

    fn of(&self, step: StepIx) -> &OfStep {
        &self.steps[step.at()]
    }
}
