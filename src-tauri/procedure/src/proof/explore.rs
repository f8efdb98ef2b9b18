//! Breadth first through every state that the allowed actions reach, so that the first run found is a shortest.

use std::collections::BTreeMap;

use panside_messages::Message;
use serde::Serialize;

use super::actions::Actions;
use super::canon::canon;
use super::changes::Changes;
use super::graph::{Graph, MOST_STATES};
use super::marks::Marks;
use super::report::{SearchReport, StatesReport, Stopped};
use super::seen::Seen;
use super::tell::Teller;
use super::vehicle::Vehicle;
use super::visit::Visit;
use super::{Ask, Looking};
use crate::load::Procedure;
use crate::machine::{Action, Before, DangerIx, DangerSet, Machine, State};
use crate::message::*;

/// States looked at between two looks at the clock, the caps and whoever waits.
const STRIDE: usize = 1 << 12;

/// Which runs are searched. All of them with ageing and skipping.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Runs {
    /// Nothing goes wrong in the entries or at the vehicle.
    Plain,
    /// At most one void anywhere.
    OneVoid,
    /// At most one observation anywhere.
    OneObservation,
}

impl Runs {
    /// What they are called in a sentence.
    #[must_use]
    pub fn message(self) -> Message {
        match self {
            Runs::Plain => procedure_runs_plain(),
            Runs::OneVoid => procedure_runs_one_void(),
            Runs::OneObservation => procedure_runs_one_observation(),
        }
    }

    fn has(self, action: Action) -> bool {
        match action {
            Action::Void(_) => self == Runs::OneVoid,
            Action::Correct(..) => self == Runs::OneVoid,
            Action::Observe(..) => self == Runs::OneObservation,
            _ => true,
        }
    }
}

/// A step of a run: from this state by this action.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Taken {
    pub from: u32,
    pub action: Action,
}

/// States that are looked at together.
const TOGETHER: usize = 16;

/// Everything a search found.
pub struct Found<'a> {
    pub procedure: &'a Procedure,
    pub machine: &'a Machine,
    pub runs: Runs,
    pub graph: Graph,
    pub actions: Actions,
    /// Why the search did not come to its end.
    pub stopped: Option<Stopped>,
    pub transitions: u64,
    pub depth: usize,
    /// States that nothing leads out of.
    pub dead_ends: usize,
    /// States from which the end, or a safe stop, can be reached, once that is known.
    pub can_finish: Option<usize>,
    pub can_stop: Option<usize>,
    /// A start at which a danger holds already.
    pub dangerous_starts: BTreeMap<DangerIx, u32>,
    /// The first step into each danger.
    pub dangers: BTreeMap<DangerIx, Taken>,
    /// The same of those that there would be with a piece off that the checklist does not know.
    pub dangers_with_piece_off: BTreeMap<DangerIx, Taken>,
    /// The first step that would count pieces that are not there.
    pub miscount: Option<Taken>,
    /// What came up.
    pub seen: Seen,
    /// What never changed anything.
    pub changes: Changes,
    /// States in which some danger holds.
    pub(super) dangerous: Marks,
}

/// Searches all runs of a kind.
pub fn explore<'a>(procedure: &'a Procedure, runs: Runs, ask: Ask, teller: &Teller<'_>) -> Found<'a> {
    let machine = &procedure.machine;
    let actions = Actions::new(procedure, |action| runs.has(action));
    let mut found = Found {
        procedure,
        machine,
        runs,
        graph: Graph::new(&machine.layout),
        seen: Seen::new(machine, actions.len()),
        changes: Changes::new(machine, runs),
        actions,
        stopped: None,
        transitions: 0,
        depth: 0,
        dead_ends: 0,
        can_finish: None,
        can_stop: None,
        dangerous_starts: BTreeMap::new(),
        dangers: BTreeMap::new(),
        dangers_with_piece_off: BTreeMap::new(),
        miscount: None,
        dangerous: Marks::default(),
    };
    for start in machine.all_starts() {
        let (number, new) = found.graph.insert(&canon(machine, ask.apart, start));
        if new {
            for danger in machine.dangers_now(&start).iter() {
                found.dangerous_starts.entry(danger).or_insert(number);
                found.dangerous.set(number);
            }
        }
    }
    found.stopped = found.run(ask, teller);
    found.graph.end_search();
    found
}

/// The search itself, which adds to what is found.
impl Found<'_> {
    fn run(&mut self, ask: Ask, teller: &Teller<'_>) -> Option<Stopped> {
        self.graph.next_layer();
        let mut layer_end = self.graph.len();
        let mut at = 0;
        let mut visit = Visit::new(self.machine, &self.actions, ask.apart);
        // One state adds at most as many as there are actions.
        let more = STRIDE.max(TOGETHER * self.actions.len());
        let mut next_look = 0;
        while at < self.graph.len() {
            if at == layer_end {
                self.depth += 1;
                self.graph.next_layer();
                layer_end = self.graph.len();
            }
            if at >= next_look {
                next_look = at + STRIDE;
                let states = self.graph.len();
                if !self.graph.fits(ask.memory, more) {
                    return Some(Stopped::Memory);
                }
                if teller.tell(self.runs, Looking::Searching, states, states - at).is_break() {
                    return Some(Stopped::Cancelled);
                }
            }
            if self.graph.len() > ask.states.min(MOST_STATES - more) {
                return Some(Stopped::States);
            }
            let end = (at + TOGETHER).min(layer_end);
            self.visit(at as u32..end as u32, &mut visit);
            at = end;
        }
        None
    }

    pub(super) fn note(&mut self, from: u32, before: &Before<'_>, at: u16, next: &State, dangers: DangerSet) {
        let action = self.actions.get(at);
        let taken = Taken { from, action };
        for danger in dangers.iter() {
            self.dangers.entry(danger).or_insert(taken);
        }
        if let Action::Done(step, _) = action
            && self.miscount.is_none()
            && self.runs != Runs::OneObservation
            && self.machine.miscounts(before.state, step)
        {
            self.miscount = Some(taken);
        }
        self.seen.note(self.machine, before.state, (at, action), next);
        self.changes.note(self.machine, before.state, taken, next);
    }
}

impl Found<'_> {
    /// The dangers that hold in a state, with everybody who is in a step.
    pub(super) fn dangers_in(&self, number: u32, state: &State) -> DangerSet {
        if self.dangerous.has(number) { self.machine.dangers_now(state) } else { DangerSet::NONE }
    }

    /// Whether some danger holds in a state that a step leads to.
    pub(super) fn is_dangerous_after(&self, from: u32, to: u32) -> bool {
        let state = self.graph.state(from);
        let before = Before::known(&state, false, self.dangers_in(from, &state));
        !self.machine.dangers_after(&before, &self.graph.state(to)).is_empty()
    }

    /// The state after an action, marked for this search, and the dangers met that are not excused.
    pub(super) fn successor(&self, before: &Before<'_>, action: Action) -> Option<(State, DangerSet)> {
        let layout = &self.machine.layout;
        let (mut next, dangers) = self.machine.step_judged(before, action).ok()?;
        match action {
            Action::Void(_) => layout.voided_once?.set(&mut next, 1),
            Action::Observe(..) => {
                layout.observed_once?.set(&mut next, 1);
                let found = self.machine.dangers_after(before, &next);
                layout.excused.set(&mut next, found);
                return Some((next, DangerSet::NONE));
            }
            _ => {}
        }
        let excused = layout.excused.get(before.state);
        if excused.is_empty() {
            return Some((next, dangers));
        }
        let still = self.machine.dangers_after(before, &next) & excused;
        layout.excused.set(&mut next, still);
        Some((next, dangers - self.excused(excused, action)))
    }

    /// The dangers that an allowed action would run into with a piece off that the checklist does not know. That the vehicle
    /// is not as shown is nobody's doing.
    pub(super) fn with_piece_off(&self, before: &Before<'_>, action: Action, next: &State) -> DangerSet {
        match action {
            Action::Observe(..) => DangerSet::NONE,
            _ => self.machine.dangers_with_piece_off(before, action, next),
        }
    }

    /// Whether something was observed in the run to this state.
    pub fn is_observed(&self, state: &State) -> bool {
        self.machine.layout.observed_once.is_some_and(|field| field.get(state) == 1)
    }

    /// Whether something was voided in the run to this state.
    pub fn is_voided(&self, state: &State) -> bool {
        self.machine.layout.voided_once.is_some_and(|field| field.get(state) == 1)
    }

    /// What an observation found is excused while it stays so; but nobody may go into it, finish work in it, move the
    /// vehicle in it or leave it so: there a doing danger counts.
    fn excused(&self, dangers: DangerSet, action: Action) -> DangerSet {
        let strict = matches!(
            action,
            Action::Begin(_) | Action::Done(..) | Action::Vehicle(_) | Action::Finish | Action::Stop
        );
        if strict { dangers - self.machine.readers.of_doing } else { dangers }
    }

    /// The actions allowed in a state, in the order of its edges.
    pub fn allowed(&self, number: u32) -> Vec<Action> {
        let state = self.graph.state(number);
        let mut candidates = Vec::new();
        self.actions.candidates(self.machine, &state, &Vehicle::ANY, &mut candidates);
        let actions = candidates.into_iter().map(|at| self.actions.get(at));
        actions.filter(|action| self.machine.step(&state, *action).is_ok()).collect()
    }

    /// The run to a state, in the words of the checklist, and one more action if given.
    pub fn run_to(&self, number: u32, last: Option<Action>) -> Vec<Message> {
        self.actions_to(number).into_iter().chain(last).map(|action| self.procedure.say(action)).collect()
    }

    /// The actions of the shortest run to a state.
    pub fn actions_to(&self, number: u32) -> Vec<Action> {
        let path = self.graph.path(number);
        let taken = path.windows(2).filter_map(|pair| {
            let mut place = None;
            self.graph.edges().each(pair[0]..pair[0] + 1, |_, edges| {
                place = edges.iter().position(|edge| edge.to == pair[1]);
            });
            self.allowed(pair[0]).get(place?).copied()
        });
        taken.collect()
    }

    pub fn report(&self) -> SearchReport {
        SearchReport {
            runs: self.runs,
            complete: self.stopped.is_none(),
            stopped: self.stopped,
            states: StatesReport { found: self.graph.len(), bytes: self.graph.most_bytes() },
            transitions: self.transitions,
            depth: self.depth,
            dead_ends: self.dead_ends,
            can_finish: self.can_finish,
            can_stop: self.can_stop,
        }
    }
}
