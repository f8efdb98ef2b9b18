//! The dependency index: which rules depend on the bits that a change touches. Most actions touch a few, and most rules
//! read none of them.
//!
//! A rule at rest that reads and writes nothing that has changed is still at rest, so [`Machine::step`] only looks
//! at the others. [`Before`] says whether the state an action starts from is at rest at all.

use super::{
    DangerIx, DangerRule, DangerSet, Field, Machine, State, StepIx, Test, Tree, VarIx, VehicleActionIx, sign,
};

/// Rules at rest that depend on a change, by their place in their list; the 64th bit stands for all from there on, so that a
/// long list is only looked through further than it need be. Dangers are a [`DangerSet`] of their own: which of them
/// holds is said, so each needs its bit.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Dependents {
    pub follows: u64,
    pub gates: u64,
    pub signs: u64,
}

impl Dependents {
    const ALL: Dependents = Dependents { follows: u64::MAX, gates: u64::MAX, signs: u64::MAX };

    fn add(&mut self, other: &Dependents) {
        self.follows |= other.follows;
        self.gates |= other.gates;
        self.signs |= other.signs;
    }

    /// The bit of a rule by its place in its list.
    fn bit(at: usize) -> u64 {
        1 << at.min(63)
    }

    /// The first rule of a list, from a place on, that is in a set.
    pub fn next<T>(set: u64, rules: &[T], from: usize) -> Option<(usize, &T)> {
        let rest = set & u64::MAX.wrapping_shl(from.min(63) as u32);
        let at = if rest == 0 { return None } else { (rest.trailing_zeros() as usize).max(from) };
        rules.get(at).map(|rule| (at, rule))
    }
}

/// For each bit of the state the rules that read it, or that write it.
#[derive(Debug, Clone, Default)]
pub struct DependencyIndex {
    rules: Vec<Dependents>,
    /// For each bit the dangers that read it.
    dangers: Vec<DangerSet>,
    words: usize,
    /// Variables with a `holds_while`, in their order.
    pub(crate) gates: Vec<VarIx>,
    /// Dangers that ask which vehicle action is made.
    pub(crate) of_vehicle_actions: DangerSet,
    /// For each vehicle action the dangers that can hold at it; at 0 those that can hold where nothing is moved.
    at_vehicle_action: Vec<DangerSet>,
    /// For each step the dangers that can hold while somebody is in it; at 0 those that ask for nobody.
    in_step: Vec<DangerSet>,
    /// For each variable the steps any of whose outcomes writes it as a gate, in file order.
    writers: Vec<Vec<StepIx>>,
    /// Dangers that ask what is being done.
    pub(crate) of_doing: DangerSet,
    /// Dangers that ask whether the job is about to end.
    pub(crate) of_leaving: DangerSet,
    /// Dangers that ask whether the tray is clear.
    pub(crate) of_tray: DangerSet,
}

impl DependencyIndex {
    /// The readers of a machine's rules.
    pub(crate) fn of(machine: &Machine) -> DependencyIndex {
        let words = machine.layout.words();
        let mut readers = DependencyIndex {
            rules: vec![Dependents::default(); words * 64],
            dangers: vec![DangerSet::NONE; words * 64],
            words,
            at_vehicle_action: vec![DangerSet::NONE; machine.vehicle_actions.len() + 1],
            in_step: vec![DangerSet::NONE; machine.steps.len() + 1],
            writers: vec![Vec::new(); machine.vars.len()],
            ..DependencyIndex::default()
        };
        for (at, rule) in machine.steps.iter().enumerate() {
            rule.writes.iter().for_each(|gate| readers.writers[gate.at()].push(StepIx::of(at)));
        }
        for (at, rule) in machine.dangers.iter().enumerate() {
            readers.add_danger(machine, DangerIx::of(at), rule);
        }
        for (at, rule) in machine.follows.iter().enumerate() {
            let mut bits = read(machine, rule.when.tree());
            rule.assign.edits.iter().for_each(|&(field, _)| bits.add(field));
            readers.note(&bits, |dependents| dependents.follows |= Dependents::bit(at));
        }
        let gates = machine
            .vars
            .iter()
            .enumerate()
            .filter_map(|(at, var)| Some((at, var, var.holds_while.as_ref()?)));
        for (at, var, holds) in gates {
            let bit = Dependents::bit(readers.gates.len());
            readers.gates.push(VarIx::of(at));
            let mut bits = read(machine, holds.tree());
            bits.add(var.field);
            readers.note(&bits, |dependents| dependents.gates |= bit);
        }
        for (at, rule) in machine.signs.iter().enumerate() {
            let mut bits = read(machine, rule.holds_while.tree());
            bits.add(rule.field);
            readers.note(&bits, |dependents| dependents.signs |= Dependents::bit(at));
        }
        readers
    }

    fn add_danger(&mut self, machine: &Machine, at: DangerIx, rule: &DangerRule) {
        let tree = rule.when.tree();
        if rule.doing {
            self.of_doing.insert(at);
        }
        if asks(tree, |test| matches!(test, Test::Moving(..) | Test::Moved(..))) {
            self.of_vehicle_actions.insert(at);
        }
        if asks(tree, |test| matches!(test, Test::Leaving(_))) {
            self.of_leaving.insert(at);
        }
        let bits = read(machine, tree);
        if machine.layout.piece_off.is_some_and(|field| field.get(&bits) == 1) {
            self.of_tray.insert(at);
        }
        bits.places().for_each(|bit| self.dangers[bit].insert(at));
        let vehicle_actions = required(tree, &|test| match test {
            Test::Moving(made, true) | Test::Moved(made, true) => Some(vec![made.at()]),
            _ => None,
        });
        let steps = required(tree, &|test| match test {
            Test::Doing(steps, true) => Some(steps.iter().map(StepIx::at).collect()),
            _ => None,
        });
        add_where(&mut self.at_vehicle_action, vehicle_actions, at);
        add_where(&mut self.in_step, steps, at);
    }

    fn note(&mut self, bits: &State, add: impl Fn(&mut Dependents)) {
        bits.places().for_each(|bit| add(&mut self.rules[bit]));
    }

    /// The dangers that can hold with these people at work and this vehicle action.
    pub(crate) fn possible(
        &self,
        begun: &[Field],
        state: &State,
        made: Option<VehicleActionIx>,
    ) -> DangerSet {
        let in_steps = begun.iter().fold(self.in_step[0], |dangers, field| {
            dangers | self.in_step.get(field.get(state) as usize).copied().unwrap_or(DangerSet::ALL)
        });
        in_steps & self.at_vehicle_action[made.map_or(0, |made| made.at() + 1)]
    }

    /// The steps after this one that write a gate.
    pub(crate) fn writers_after(&self, gate: VarIx, step: StepIx) -> impl Iterator<Item = StepIx> {
        self.writers[gate.at()].iter().copied().filter(move |writer| *writer > step)
    }

    /// The dangers that can hold with nobody in a step, at this vehicle action or at none.
    pub(crate) fn possible_at(&self, made: Option<VehicleActionIx>) -> DangerSet {
        let at = |made: VehicleActionIx| {
            self.at_vehicle_action.get(made.at() + 1).copied().unwrap_or(DangerSet::ALL)
        };
        let there = made.map_or(DangerSet::NONE, at);
        self.in_step[0] & (self.at_vehicle_action[0] | there)
    }

    /// The dangers that can hold with somebody in this step.
    pub(crate) fn possible_in(&self, step: StepIx) -> DangerSet {
        self.in_step.get(step.at() + 1).copied().unwrap_or(DangerSet::ALL)
    }

    /// The rules at rest that depend on what differs between two states.
    pub(crate) fn dependents(&self, one: &State, other: &State) -> Dependents {
        let mut dependents = Dependents::default();
        self.each_that_differs(one, other, |bit| dependents.add(&self.rules[bit]));
        dependents
    }

    /// The dangers that read something of what differs between two states.
    pub(crate) fn dependent_dangers(&self, one: &State, other: &State) -> DangerSet {
        let mut dependents = DangerSet::NONE;
        self.each_that_differs(one, other, |bit| dependents |= self.dangers[bit]);
        dependents
    }

    #[inline]
    fn each_that_differs(&self, one: &State, other: &State, mut show: impl FnMut(usize)) {
        for word in 0..self.words {
            let mut differs = one.words[word] ^ other.words[word];
            while differs != 0 {
                show(word * 64 + differs.trailing_zeros() as usize);
                differs &= differs - 1;
            }
        }
    }
}

/// The bits of the state that a predicate reads.
fn read(machine: &Machine, tree: &Tree) -> State {
    let mut bits = State::default();
    add_read(machine, tree, &mut bits);
    bits
}

fn add_read(machine: &Machine, tree: &Tree, bits: &mut State) {
    match tree {
        Tree::Test(Test::In { field, .. }) => bits.add(*field),
        Tree::Test(Test::Doing(..)) => machine.layout.begun.iter().for_each(|field| bits.add(*field)),
        Tree::Test(Test::Moving(..) | Test::Moved(..) | Test::Leaving(_)) | Tree::Const(_) => {}
        Tree::All(parts) | Tree::Any(parts) => parts.iter().for_each(|part| add_read(machine, part, bits)),
    }
}

/// What one of must be given for a predicate to hold, if one test says so.
fn required(tree: &Tree, says: &impl Fn(&Test) -> Option<Vec<usize>>) -> Option<Vec<usize>> {
    match tree {
        Tree::Test(test) => says(test),
        Tree::All(parts) => parts.iter().find_map(|part| required(part, says)),
        Tree::Any(parts) => parts
            .iter()
            .map(|part| required(part, says))
            .collect::<Option<Vec<_>>>()
            .map(|sets| sets.concat()),
        Tree::Const(_) => None,
    }
}

/// Adds a danger where it can hold: everywhere, unless something is required.
fn add_where(places: &mut [DangerSet], required: Option<Vec<usize>>, danger: DangerIx) {
    match required {
        Some(some) => some.into_iter().for_each(|at| places[at + 1].insert(danger)),
        None => places.iter_mut().for_each(|place| place.insert(danger)),
    }
}

/// Whether a predicate has such a test.
fn asks(tree: &Tree, such: fn(&Test) -> bool) -> bool {
    match tree {
        Tree::Test(test) => such(test),
        Tree::All(parts) | Tree::Any(parts) => parts.iter().any(|part| asks(part, such)),
        Tree::Const(_) => false,
    }
}

/// A state that actions start from, with what all of them would otherwise work out anew.
#[derive(Debug, Clone, Copy)]
pub struct Before<'a> {
    /// The state.
    pub state: &'a State,
    /// Nothing follows and nothing lapses in it: every state after a step is so, but for what its own signatures
    /// change.
    pub(super) rests: bool,
    /// The dangers that hold in it, with everybody who is in a step.
    pub(crate) dangers: DangerSet,
}

impl<'a> Before<'a> {
    /// A state whose dangers are known, or do not matter.
    #[must_use]
    pub fn new(machine: &Machine, state: &'a State, dangers: DangerSet) -> Before<'a> {
        Before { state, rests: machine.rests(state), dangers }
    }

    /// A state of which all is known.
    pub(crate) fn known(state: &'a State, rests: bool, dangers: DangerSet) -> Before<'a> {
        Before { state, rests, dangers }
    }

    /// A state of which nothing is known: every rule is looked at after it.
    pub(crate) fn unknown(state: &'a State) -> Before<'a> {
        Before { state, rests: false, dangers: DangerSet::NONE }
    }

    /// The rules that have to be looked at in a state after this one.
    pub(crate) fn dependents(&self, machine: &Machine, next: &State) -> Dependents {
        if self.rests { machine.readers.dependents(self.state, next) } else { Dependents::ALL }
    }
}

impl Machine {
    /// Whether nothing follows and nothing lapses in a state: conditions, facts, gates and sign-offs decide it.
    pub(crate) fn rests(&self, state: &State) -> bool {
        let follows = self.follows.iter().all(|follow| {
            let as_assigned = || follow.assign.edits.iter().all(|(field, value)| field.get(state) == *value);
            !follow.when.holds(state) || as_assigned()
        });
        let gate_stands = |var: &VarIx| {
            let var = &self.vars[var.at()];
            var.field.get(state) == 0 || var.holds_while.as_ref().is_none_or(|holds| holds.holds(state))
        };
        follows
            && self.readers.gates.iter().all(gate_stands)
            && self
                .signs
                .iter()
                .all(|rule| rule.field.get(state) != sign::VALID || rule.holds_while.holds(state))
    }
}
