//! Breadth first through every state that the allowed actions reach, so that the first run found is a shortest.

use std::collections::BTreeMap;

use super::Progress;
use super::actions::Actions;
use super::canon::canon;
use super::graph::Graph;
use super::report::{SearchReport, StatesReport};
use crate::load::Procedure;
use crate::machine::{Action, DangerIx, DangerSet, Machine, State};

/// Which runs are searched. All of them with ageing and setting aside.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Runs {
    /// Nothing goes wrong on paper or at the vehicle.
    Plain,
    /// At most one strike anywhere.
    OneStrike,
    /// At most one observation anywhere.
    OneObservation,
}

impl Runs {
    pub fn name(self) -> &'static str {
        match self {
            Runs::Plain => "plain runs",
            Runs::OneStrike => "runs with at most one strike",
            Runs::OneObservation => "runs with at most one observation",
        }
    }

    fn has(self, action: Action) -> bool {
        match action {
            Action::Strike(_) => self == Runs::OneStrike,
            Action::Rerecord(..) => self == Runs::OneStrike,
            Action::Observe(..) => self == Runs::OneObservation,
            _ => true,
        }
    }
}

/// A step of a run: from this state by this action.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Edge {
    pub from: u32,
    pub action: Action,
}

/// Everything a search found.
pub struct Found<'a> {
    pub procedure: &'a Procedure,
    pub machine: &'a Machine,
    pub runs: Runs,
    pub graph: Graph,
    pub actions: Actions,
    /// The search came to its end within the memory limit.
    pub complete: bool,
    pub transitions: u64,
    pub depth: usize,
    /// A start at which a danger holds already.
    pub dangerous_starts: BTreeMap<DangerIx, u32>,
    /// The first edge into each danger.
    pub dangers: BTreeMap<DangerIx, Edge>,
    /// The first step that would count pieces that are not there.
    pub miscount: Option<Edge>,
    /// Which of the actions ever happened, by number.
    pub happened: Vec<bool>,
    /// For each sign-off: it lapsed; it was renewed after a lapse.
    pub sign_lapsed: Vec<(bool, bool)>,
    /// For each variable that is a gate: it became unknown because it no longer held; it was read again.
    pub gate_lapsed: Vec<(bool, bool)>,
}

/// Searches all runs of a kind.
pub fn explore<'a>(
    procedure: &'a Procedure,
    runs: Runs,
    memory: usize,
    progress: &mut dyn FnMut(Progress),
) -> Found<'a> {
    let machine = &procedure.machine;
    let actions = Actions::new(procedure, |action| runs.has(action));
    let mut found = Found {
        procedure,
        machine,
        runs,
        graph: Graph::new(machine.layout.words()),
        happened: vec![false; actions.len()],
        actions,
        complete: false,
        transitions: 0,
        depth: 0,
        dangerous_starts: BTreeMap::new(),
        dangers: BTreeMap::new(),
        miscount: None,
        sign_lapsed: vec![(false, false); machine.signs.len()],
        gate_lapsed: vec![(false, false); machine.vars.len()],
    };
    for start in machine.all_starts() {
        let (number, new) = found.graph.insert(&canon(machine, start), None);
        if new {
            for danger in machine.dangers_now(&start).iter() {
                found.dangerous_starts.entry(danger).or_insert(number);
            }
        }
    }
    found.complete = found.run(memory, progress);
    found
}

impl Found<'_> {
    fn run(&mut self, memory: usize, progress: &mut dyn FnMut(Progress)) -> bool {
        let mut layer_end = self.graph.len();
        let mut at = 0;
        let mut candidates = Vec::new();
        while at < self.graph.len() {
            if at == layer_end {
                self.depth += 1;
                layer_end = self.graph.len();
            }
            if at.is_multiple_of(1 << 16) {
                if self.graph.bytes() > memory {
                    return false;
                }
                let states = self.graph.len();
                progress(Progress {
                    search: self.runs.name(),
                    doing: "searching",
                    states,
                    waiting: states - at,
                });
            }
            self.visit(at as u32, &mut candidates);
            at += 1;
        }
        true
    }

    fn visit(&mut self, number: u32, candidates: &mut Vec<u16>) {
        let state = self.graph.state(number);
        self.graph.next_state();
        self.actions.candidates(self.machine, &state, candidates);
        for &at in candidates.iter() {
            let action = self.actions.get(at);
            if let Some((next, dangers)) = self.successor(&state, action) {
                self.transitions += 1;
                self.happened[usize::from(at)] = true;
                self.note(number, &state, action, &next, dangers);
                let (target, _) = self.graph.insert(&canon(self.machine, next), Some(number));
                self.graph.add_edge(at, target);
            }
        }
    }

    fn note(&mut self, number: u32, state: &State, action: Action, next: &State, dangers: DangerSet) {
        let edge = Edge { from: number, action };
        for danger in dangers.iter() {
            self.dangers.entry(danger).or_insert(edge);
        }
        let machine = self.machine;
        if let Action::Done(step, _) = action
            && self.miscount.is_none()
            && self.runs != Runs::OneObservation
            && machine.miscounts(state, step)
        {
            self.miscount = Some(edge);
        }
        let struck = matches!(action, Action::Strike(_));
        for (rule, (lapsed, renewed)) in machine.signs.iter().zip(&mut self.sign_lapsed) {
            let (before, after) = (rule.field.get(state), rule.field.get(next));
            if before != after {
                *lapsed |= before == 1 && !struck;
                *renewed |= after == 1 && machine.is_worked(state, rule.step);
            }
        }
        let aged = matches!(action, Action::Expire(_));
        for (at, (var, (lapsed, renewed))) in machine.vars.iter().zip(&mut self.gate_lapsed).enumerate() {
            let (before, after) = (var.field.get(state), var.field.get(next));
            if var.holds_while.is_some() && before != after {
                *lapsed |= after == 0 && !aged && !struck;
                let written_before = || {
                    machine.steps.iter().any(|rule| {
                        rule.work.get(state) == 1 && rule.writes.iter().any(|gate| gate.at() == at)
                    })
                };
                *renewed |= before == 0 && !*renewed && written_before();
            }
        }
    }

    /// The state after an action, marked for this search, and the dangers met that are not excused.
    pub fn successor(&self, state: &State, action: Action) -> Option<(State, DangerSet)> {
        let layout = &self.machine.layout;
        match action {
            Action::Strike(_) if layout.struck_once?.get(state) == 1 => return None,
            Action::Observe(..) if layout.observed_once?.get(state) == 1 => return None,
            _ => {}
        }
        let mut next = self.machine.step(state, action).ok()?;
        match action {
            Action::Strike(_) => layout.struck_once?.set(&mut next, 1),
            Action::Observe(..) => {
                layout.observed_once?.set(&mut next, 1);
                let found = self.machine.dangers_now(&next);
                self.excuse(&mut next, found);
                return Some((next, DangerSet::default()));
            }
            _ => {}
        }
        let mut dangers = match action {
            Action::Expire(_) | Action::Sign(_) | Action::SetAside(_) | Action::Finish | Action::Stop => {
                DangerSet::default()
            }
            _ => self.machine.dangers_of(state, action),
        };
        if self.is_observed(state) {
            dangers = DangerSet(dangers.0 & !self.excused(state, action).0);
            let still = DangerSet(self.machine.dangers_now(&next).0 & self.excused_bits(state));
            self.excuse(&mut next, still);
        }
        Some((next, dangers))
    }

    /// Whether something was observed in the run to this state.
    pub fn is_observed(&self, state: &State) -> bool {
        self.machine.layout.observed_once.is_some_and(|field| field.get(state) == 1)
    }

    fn excused_bits(&self, state: &State) -> u64 {
        let fields = self.machine.layout.excused.iter().enumerate();
        fields.fold(0, |bits, (at, field)| bits | field.get(state) << at)
    }

    /// What an observation found is excused while it stays so; but nobody may go into it, finish work in it or
    /// move the vehicle in it: there a doing danger counts.
    fn excused(&self, state: &State, action: Action) -> DangerSet {
        let bits = self.excused_bits(state);
        if bits == 0 || !matches!(action, Action::Begin(_) | Action::Done(..) | Action::Move(_)) {
            return DangerSet(bits);
        }
        let doing = self.machine.dangers.iter().enumerate().filter(|(_, rule)| rule.doing);
        DangerSet(bits & !doing.fold(0, |bits, (at, _)| bits | 1 << at))
    }

    fn excuse(&self, next: &mut State, dangers: DangerSet) {
        for (at, field) in self.machine.layout.excused.iter().enumerate() {
            field.set(next, dangers.0 >> at & 1);
        }
    }

    /// The run to a state, in the words of the checklist, and one more action if given.
    pub fn run_to(&self, number: u32, last: Option<Action>) -> Vec<String> {
        let path = self.graph.path(number);
        let taken = path.windows(2).filter_map(|pair| {
            let edge = self.graph.edges(pair[0]).find(|&(_, target)| target == pair[1])?;
            Some(self.actions.get(edge.0))
        });
        taken.chain(last).map(|action| self.procedure.say(action)).collect()
    }

    pub fn report(&self) -> SearchReport {
        SearchReport {
            runs: self.runs.name().to_owned(),
            complete: self.complete,
            states: StatesReport { found: self.graph.len(), bytes: self.graph.bytes() },
            transitions: self.transitions,
            depth: self.depth,
        }
    }
}
