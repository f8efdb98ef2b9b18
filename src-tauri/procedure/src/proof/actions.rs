//! Which actions are worth trying in a state: all that `step` could allow, found by looking at who is begun, which
//! phases are open and how far each step is, so that the search need not try every action in every state.

use super::edges::Kind;
use super::vehicle::Vehicle;
use crate::load::Procedure;
use crate::machine::{
    Action, Machine, PhaseIx, STEP_WORDS, SignIx, State, StepIx, VarIx, VehicleActionIx, over,
};

/// The actions of a search, and where each step's stand.
pub struct Actions {
    all: Vec<Action>,
    steps: Vec<OfStep>,
    vehicle_actions: Vec<(u16, VehicleActionIx)>,
    ageings: Vec<(u16, VarIx)>,
    finish: Option<u16>,
    stop: Option<u16>,
    /// Observations: tried until there was one.
    observations: Vec<u16>,
    /// The steps of each phase, as low bits of the work fields.
    phases: Vec<Vec<u64>>,
    /// Words in which work fields stand.
    words: usize,
    /// All steps, those that may be skipped, may begin while the job ends, and are signed: as low bits of the work fields.
    known: [u64; STEP_WORDS],
    skips: [u64; STEP_WORDS],
    at_end: [u64; STEP_WORDS],
    signed: [u64; STEP_WORDS],
}

#[derive(Default)]
struct OfStep {
    /// Steps of every job that come before it, as low bits of the work fields.
    after: [u64; STEP_WORDS],
    skip: Option<u16>,
    begin: Option<u16>,
    void: Option<u16>,
    sign: Vec<(u16, SignIx)>,
    voided: Vec<u16>,
    begun: Vec<u16>,
}

/// The low bits of 32 work fields.
pub const LOW: u64 = 0x5555_5555_5555_5555;

impl Actions {
    /// The actions of a procedure that a search has.
    pub fn new(procedure: &Procedure, has: impl Fn(Action) -> bool) -> Self {
        let machine = &procedure.machine;
        let words = machine.steps.len().div_ceil(32);
        let mut actions = Actions {
            all: procedure.all_actions().into_iter().filter(|action| has(*action)).collect(),
            steps: machine.steps.iter().map(|_| OfStep::default()).collect(),
            vehicle_actions: Vec::new(),
            ageings: Vec::new(),
            finish: None,
            stop: None,
            observations: Vec::new(),
            phases: vec![vec![0; words]; machine.phases.len()],
            words,
            known: [0; STEP_WORDS],
            skips: [0; STEP_WORDS],
            at_end: [0; STEP_WORDS],
            signed: [0; STEP_WORDS],
        };
        for rule in &machine.steps {
            let (word, bit) = (usize::from(rule.work.word), 1 << rule.work.shift);
            actions.phases[rule.phase.at()][word] |= bit;
            actions.known[word] |= bit;
            actions.skips[word] |= if rule.may_skip { bit } else { 0 };
            actions.at_end[word] |= if rule.when_ending { bit } else { 0 };
            actions.signed[word] |= if rule.signs.is_empty() { 0 } else { bit };
        }
        for (rule, of) in machine.steps.iter().zip(&mut actions.steps) {
            let before = rule.after.iter().map(|before| &machine.steps[before.at()]);
            for field in before.filter(|before| before.on.is_none()).map(|before| before.work) {
                of.after[usize::from(field.word)] |= 1 << field.shift;
            }
        }
        for (at, action) in actions.all.iter().enumerate() {
            // Loading bounds steps and outcomes so that there are far fewer than 65,536 actions.
            let at = at as u16;
            let steps = &mut actions.steps;
            match *action {
                Action::Begin(step) => {
                    steps[step.at()].begin = Some(at);
                }
                Action::Skip(step) => {
                    steps[step.at()].skip = Some(at);
                }
                Action::Leave(step) | Action::Done(step, _) => steps[step.at()].begun.push(at),
                Action::Void(step) => steps[step.at()].void = Some(at),
                Action::Correct(step, _) => steps[step.at()].voided.push(at),
                Action::Sign(given) => steps[machine.signs[given.at()].step.at()].sign.push((at, given)),
                Action::Vehicle(made) => actions.vehicle_actions.push((at, made)),
                Action::Observe(..) => actions.observations.push(at),
                Action::Expire(gate) => actions.ageings.push((at, gate)),
                // It changes nothing that the search keeps.
                Action::Piece(_) => {}
                Action::Finish => actions.finish = Some(at),
                Action::Stop => actions.stop = Some(at),
            }
        }
        actions
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
    pub fn candidates(&self, machine: &Machine, state: &State, vehicle: &Vehicle, into: &mut Vec<u16>) {
        into.clear();
        if machine.over(state) >= over::FINISHED {
            return;
        }
        let layout = &machine.layout;
        // Nobody leaves the job while somebody is in a step.
        if machine.begun(state).next().is_none() {
            into.extend(self.finish.filter(|_| vehicle.finishes));
            into.extend(self.stop.filter(|_| vehicle.stops));
        }
        into.extend(self.ageings.iter().filter(|(_, gate)| vehicle.allows_ageing(*gate)).map(|(at, _)| at));
        for &(at, made) in &self.vehicle_actions {
            if vehicle.allows(made) {
                into.push(at);
            }
        }
        if layout.observed_once.is_some_and(|field| field.get(state) == 0) {
            into.extend_from_slice(&self.observations);
        }
        self.of_steps(machine, state, vehicle, into);
        for step in machine.begun(state) {
            into.extend_from_slice(&self.steps[step.at()].begun);
        }
    }

    fn of_steps(&self, machine: &Machine, state: &State, vehicle: &Vehicle, into: &mut Vec<u16>) {
        let layout = &machine.layout;
        let may_void = layout.voided_once.is_some_and(|field| field.get(state) == 0);
        let free = layout.begun.iter().any(|field| field.get(state) == 0);
        let ending = machine.is_ending(state);
        let mut wanted = [Wanted::default(); STEP_WORDS];
        for (word, wanted) in wanted.iter_mut().enumerate().take(self.words) {
            let work = state.words[word];
            let steps = self.known[word];
            let (low, high) = (work & steps, work >> 1 & steps);
            let (untouched, worked) = (steps & !(low | high), low & !high);
            let (first, again) = vehicle.begins(word);
            let begin = untouched & first | worked & again;
            *wanted = Wanted {
                skip: if ending { 0 } else { untouched & self.skips[word] },
                begin: if !free {
                    0
                } else if ending {
                    begin & self.at_end[word]
                } else {
                    begin
                },
                void: if may_void { worked } else { 0 },
                sign: worked & self.signed[word],
                voided: high & !low,
            };
        }
        self.leave_out_shut(machine, state, &mut wanted);
        for (word, wanted) in wanted.iter().enumerate().take(self.words) {
            let mut rest = wanted.any();
            while rest != 0 {
                let bit = rest & rest.wrapping_neg();
                rest ^= bit;
                let of = &self.steps[word * 32 + bit.trailing_zeros() as usize / 2];
                if wanted.skip & bit != 0 {
                    into.extend(of.skip);
                }
                // What is worked or skipped has its low bit.
                let are_behind = || of.after.iter().zip(&state.words).all(|(steps, work)| !work & steps == 0);
                if wanted.begin & bit != 0 && are_behind() {
                    into.extend(of.begin);
                }
                if wanted.sign & bit != 0 {
                    into.extend(
                        of.sign.iter().filter(|(_, given)| vehicle.allows_sign(*given)).map(|(at, _)| at),
                    );
                }
                if wanted.void & bit != 0 {
                    into.extend(of.void);
                }
                if wanted.voided & bit != 0 {
                    into.extend_from_slice(&of.voided);
                }
            }
        }
    }

    /// Leaves out what is wanted of steps whose phase is not open.
    fn leave_out_shut(&self, machine: &Machine, state: &State, wanted: &mut [Wanted; STEP_WORDS]) {
        for (at, steps) in self.phases.iter().enumerate() {
            let words = || wanted.iter().zip(steps);
            let is_wanted = words().any(|(wanted, steps)| (wanted.skip | wanted.begin) & steps != 0);
            if is_wanted && machine.phase_open(state, PhaseIx::of(at)).is_err() {
                for (wanted, steps) in wanted.iter_mut().zip(steps) {
                    wanted.skip &= !steps;
                    wanted.begin &= !steps;
                }
            }
        }
    }
}

/// Steps of which something may be tried, as low bits of their work fields.
#[derive(Debug, Clone, Copy, Default)]
struct Wanted {
    skip: u64,
    begin: u64,
    void: u64,
    sign: u64,
    voided: u64,
}

impl Wanted {
    fn any(self) -> u64 {
        self.skip | self.begin | self.void | self.sign | self.voided
    }
}

/// What an action means for the ends of the job. The outcomes of a step stand side by side in the list of actions;
/// `last` is the action before this one that was allowed in the same state.
pub fn kind(machine: &Machine, last: Option<Action>, action: Action) -> Kind {
    let first = |step: StepIx, same: bool| {
        let ways = machine.steps[step.at()].outcomes.len();
        if same { Kind::Further } else { Kind::First(u8::try_from(ways).unwrap_or(u8::MAX)) }
    };
    match action {
        Action::Void(_) => Kind::Void,
        Action::Observe(..) => Kind::Observe,
        Action::Expire(_) => Kind::Age,
        Action::Skip(_) | Action::Stop => Kind::NotPlanned,
        Action::Done(step, _) => first(step, matches!(last, Some(Action::Done(same, _)) if same == step)),
        Action::Correct(step, _) => {
            first(step, matches!(last, Some(Action::Correct(same, _)) if same == step))
        }
        Action::Begin(_)
        | Action::Leave(_)
        | Action::Vehicle(_)
        | Action::Sign(_)
        | Action::Piece(_)
        | Action::Finish => Kind::Plain,
    }
}
