//! What must come one after the other, whoever does it: steps that are in every order, and what lies at least between
//! two of them: vehicle actions that must be made, something that must cool. Which comes after which is seen from the work without
//! clocks; where that is too large, from the rules' plain words.

use super::minutes::Passing;
use super::moment::{Busy, Moment, Person};
use super::relaxed::Relaxed;
use super::rules::{Clock, IDLE, Rules};
use crate::machine::{Field, Pred, State, StepIx, StepSet, Test, Tree, VariableKind, over, work};

/// A test that must hold: a field has one of these values, as bits.
type Must = (Field, u64);

/// Steps after which more time passes than hands are busy: so many are taken into what is known without clocks.
const MOST_TAKEN_IN: usize = 16;

pub(super) struct Chains {
    steps: Vec<Chain>,
    roads: Vec<Road>,
}

/// A step that must be done in every order, and what comes after it.
struct Chain {
    step: StepIx,
    /// Minutes at least from its end to the end of all.
    after: u32,
    /// The values that it needs of conditions that vehicle actions write, by road.
    needs: Vec<(usize, u64)>,
    /// What must be known, and which steps find it out.
    known: Vec<(Must, Vec<StepIx>)>,
}

/// A condition that vehicle actions write, and the least minutes of vehicle actions from each of its values to each.
struct Road {
    field: Field,
    least: Vec<Vec<u32>>,
}

impl Chains {
    /// `relaxed` says how many minutes of hands are left after a step, where that could be worked out, and takes in what is
    /// found here.
    pub fn new(rules: &Rules<'_>, relaxed: Option<&mut Relaxed>) -> Chains {
        let roads = roads(rules);
        let steps = all_steps(rules)
            .filter(|&step| rules.rule(step).on.is_none() && is_to_do(rules, &rules.task.start.state, step))
            .map(|step| Chain {
                step,
                after: 0,
                needs: needs(rules, &roads, step),
                known: known(rules, step),
            });
        let steps = if may_end_early(rules) { Vec::new() } else { steps.collect() };
        let mut chains = Chains { steps, roads };
        chains.link(rules, relaxed);
        chains
    }

    /// Minutes that are at least left: the longest chain, and the hands of its steps shared by all people.
    pub fn least(&self, rules: &Rules<'_>, moment: &Moment) -> u32 {
        let people = rules.task.people as u32;
        let mut hands: u32 = moment.people.iter().map(|person| u32::from(person.left)).sum();
        let mut longest = 0;
        for chain in self.steps.iter().filter(|chain| is_to_do(rules, &moment.state, chain.step)) {
            let worker = moment.people.iter().find(|person| is_in(person, chain.step));
            let own = u32::from(rules.hands(chain.step));
            let until_done = match (worker, rules.wait_within(moment, chain.step)) {
                // Whoever comes back to a step that was left finds the hands' part done.
                (_, Some(left)) if left != IDLE => u32::from(left),
                (Some(person), _) => u32::from(person.left) + rules.full_wait_within(chain.step),
                (None, _) => {
                    hands += own;
                    self.until_begun(rules, moment, chain) + own + rules.full_wait_within(chain.step)
                }
            };
            longest = longest.max(until_done + chain.after);
        }
        longest.max(hands.div_ceil(people))
    }

    /// Minutes until a step can be begun at the earliest.
    fn until_begun(&self, rules: &Rules<'_>, moment: &Moment, chain: &Chain) -> u32 {
        let made = moment.people.iter().map(|person| match person.doing {
            Busy::Moving(made) => rules.task.minutes.vehicle_actions[made.at()].saturating_sub(person.left),
            _ => 0,
        });
        let made = u32::from(made.max().unwrap_or(0));
        let vehicle_actions = chain.needs.iter().map(|&(road, values)| {
            let road = &self.roads[road];
            road.to(1 << road.field.get(&moment.state), values).saturating_sub(made)
        });
        let known = chain.known.iter().filter(|((field, values), _)| !has(*values, field.get(&moment.state)));
        let known = known.filter_map(|(_, setters)| {
            setters.iter().map(|&setter| until_known(rules, moment, setter)).min()
        });
        let wait = u32::from(rules.wait_before(moment, chain.step));
        vehicle_actions.chain(known).fold(wait, u32::max)
    }

    /// Works out what comes after each step.
    fn link(&mut self, rules: &Rules<'_>, mut relaxed: Option<&mut Relaxed>) {
        let must: Vec<StepIx> = self.steps.iter().map(|chain| chain.step).collect();
        let followers = match &relaxed {
            Some(relaxed) => relaxed.followers(rules, &must),
            None => followers(rules, &must),
        };
        // Those with the fewest followers first: each needs the chains of its own.
        let count = |step: StepIx| must.iter().filter(|&&other| followers[step.at()].contains(other)).count();
        let mut in_order: Vec<usize> = (0..self.steps.len()).collect();
        in_order.sort_by_key(|&at| count(self.steps[at].step));
        let mut taken_in = 0;
        for at in in_order {
            let chain = &self.steps[at];
            let own = self.steps.iter().filter(|later| followers[chain.step.at()].contains(later.step));
            let length = |later: &Chain| {
                self.between(rules, chain, later)
                    + u32::from(rules.hands(later.step))
                    + rules.full_wait_within(later.step)
                    + later.after
            };
            let hands: u32 = own.clone().map(|later| u32::from(rules.hands(later.step))).sum();
            let after = own.map(length).max().unwrap_or(0);
            let (step, mut shared) = (chain.step, hands);
            if let Some(relaxed) = &mut relaxed {
                let apart = all_steps(rules).filter(|&other| rules.may_be_left(other));
                let apart = apart.filter(|&other| other == step || !followers[step.at()].contains(other));
                shared = shared.max(relaxed.after(rules, step, &apart.collect::<Vec<_>>()));
            }
            let after = after.max(shared.div_ceil(rules.task.people as u32));
            self.steps[at].after = after;
            if let Some(relaxed) = &mut relaxed
                && taken_in < MOST_TAKEN_IN
                && (rules.may_be_left(step) || after * rules.task.people as u32 > shared)
            {
                taken_in += usize::from(relaxed.take_in(rules, step, after));
            }
        }
    }

    /// Minutes at least from the end of a step to the beginning of a later one.
    fn between(&self, rules: &Rules<'_>, earlier: &Chain, later: &Chain) -> u32 {
        let holds = musts(&rules.rule(earlier.step).while_);
        let vehicle_actions = later.needs.iter().filter_map(|&(road, values)| {
            let road = &self.roads[road];
            let (_, from) = holds.iter().find(|(field, _)| *field == road.field)?;
            Some(road.to(*from, values))
        });
        let known = later.known.iter().filter(|((gate, _), _)| {
            let gate = rules.machine.vars.iter().find(|var| var.field == *gate);
            gate.and_then(|gate| gate.holds_while.as_ref())
                .is_some_and(|holds_while| excludes(&holds, holds_while))
        });
        let known = known.filter_map(|(_, setters)| {
            let found_out = |&setter: &StepIx| {
                full_wait_before(rules, setter, &holds)
                    + u32::from(rules.hands(setter))
                    + rules.full_wait_within(setter)
            };
            setters.iter().map(found_out).min()
        });
        vehicle_actions.chain(known).fold(full_wait_before(rules, later.step, &holds), u32::max)
    }
}

impl Road {
    /// The least minutes from one of these values to one of those.
    fn to(&self, from: u64, to: u64) -> u32 {
        let values = |bits: u64| (0..self.least.len()).filter(move |&value| has(bits, value as u64));
        values(from).flat_map(|from| values(to).map(move |to| self.least[from][to])).min().unwrap_or(0)
    }
}

fn has(values: u64, value: u64) -> bool {
    values >> value.min(63) & 1 == 1
}

fn all_steps(rules: &Rules<'_>) -> impl Iterator<Item = StepIx> + use<> {
    (0..rules.machine.steps.len()).map(StepIx::of)
}

fn is_in(person: &Person, step: StepIx) -> bool {
    matches!(person.doing, Busy::Working(is) | Busy::Staying(is) if is == step)
}

fn is_to_do(rules: &Rules<'_>, state: &State, step: StepIx) -> bool {
    rules.rule(step).work.get(state) == work::UNTOUCHED
}

/// Whether the job may end otherwise than finished, with steps left.
fn may_end_early(rules: &Rules<'_>) -> bool {
    let mut outcomes = rules.machine.steps.iter().zip(&rules.task.outcomes);
    outcomes.any(|(rule, is)| rule.outcomes.get(is.at()).is_some_and(|is| is.ends))
        || rules.machine.over(&rules.task.start.state) == over::ENDING
}

/// What must hold for a predicate to hold.
fn musts(pred: &Pred) -> Vec<Must> {
    let mut found = Vec::new();
    let mut open = vec![pred.tree()];
    while let Some(tree) = open.pop() {
        match tree {
            Tree::All(parts) => open.extend(parts),
            Tree::Test(Test::In { field, values }) => found.push((*field, *values)),
            _ => {}
        }
    }
    found
}

/// Whether a predicate cannot hold where these hold.
fn excludes(holds: &[Must], pred: &Pred) -> bool {
    let other = musts(pred);
    holds
        .iter()
        .any(|(field, values)| other.iter().any(|(also, allowed)| field == also && values & allowed == 0))
}

/// Minutes of the wait before a step where it can't have begun while these held.
fn full_wait_before(rules: &Rules<'_>, step: StepIx, holds: &[Must]) -> u32 {
    match rules.of_step[step.at()].map(|at| rules.clocks[at]) {
        Some(Clock::Before { since, minutes, .. }) if excludes(holds, since) => u32::from(minutes),
        _ => 0,
    }
}

/// Minutes until a step that finds something out is done at the earliest.
fn until_known(rules: &Rules<'_>, moment: &Moment, setter: StepIx) -> u32 {
    match (moment.people.iter().find(|person| is_in(person, setter)), rules.wait_within(moment, setter)) {
        (_, Some(left)) if left != IDLE => u32::from(left),
        (Some(person), _) => u32::from(person.left),
        (None, _) => u32::from(rules.wait_before(moment, setter)) + u32::from(rules.hands(setter)),
    }
}

/// The conditions that vehicle actions write.
fn roads(rules: &Rules<'_>) -> Vec<Road> {
    let machine = rules.machine;
    let by_vehicle_actions =
        machine.vars.iter().filter(|var| var.by_vehicle_actions && var.kind == VariableKind::Condition);
    by_vehicle_actions
        .map(|var| {
            let size = usize::from(var.size);
            let mut least = vec![vec![u32::MAX / 4; size]; size];
            (0..size).for_each(|value| least[value][value] = 0);
            for (rule, &minutes) in machine.vehicle_actions.iter().zip(&rules.task.minutes.vehicle_actions) {
                let Some(&(_, to)) = rule.makes.edits.iter().find(|(field, _)| *field == var.field) else {
                    continue;
                };
                let from = musts(&rule.needs);
                let from = from.iter().filter(|(field, _)| *field == var.field);
                let from = from.fold(u64::MAX, |all, (_, values)| all & values);
                for value in (0..size).filter(|&value| has(from, value as u64)) {
                    let way = &mut least[value][to as usize];
                    *way = (*way).min(u32::from(minutes));
                }
            }
            for middle in 0..size {
                for from in 0..size {
                    for to in 0..size {
                        least[from][to] = least[from][to].min(least[from][middle] + least[middle][to]);
                    }
                }
            }
            Road { field: var.field, least }
        })
        .collect()
}

fn needs(rules: &Rules<'_>, roads: &[Road], step: StepIx) -> Vec<(usize, u64)> {
    let needs = musts(&rules.rule(step).needs);
    let of_road =
        |(field, values): &Must| Some((roads.iter().position(|road| road.field == *field)?, *values));
    needs.iter().filter_map(of_road).collect()
}

/// What must be known for a step to be begun, with the steps that find it out.
fn known(rules: &Rules<'_>, step: StepIx) -> Vec<(Must, Vec<StepIx>)> {
    let gate = |field: Field| {
        rules.machine.vars.iter().any(|var| var.field == field && var.kind == VariableKind::Gate)
    };
    let needs = musts(&rules.rule(step).needs).into_iter().filter(|&(field, _)| gate(field));
    needs
        .map(|must| (must, all_steps(rules).filter(|&setter| makes(rules, setter, must)).collect()))
        .collect()
}

/// Whether a step, when it is done as planned for, gives a field one of these values.
fn makes(rules: &Rules<'_>, step: StepIx, (wanted, values): Must) -> bool {
    let rule = rules.rule(step);
    let outcome = rule.outcomes.get(rules.task.outcomes[step.at()].at());
    let mut edits = outcome.into_iter().flat_map(|outcome| &outcome.assign.edits);
    edits.any(|&(field, value)| field == wanted && has(values, value))
        || rule.work == wanted && has(values, work::WORKED)
}

/// Whether a step cannot be begun before another one is done, in any order from the start on.
fn comes_before(rules: &Rules<'_>, before: StepIx, step: StepIx) -> bool {
    let (machine, rule) = (rules.machine, rules.rule(step));
    let start = &rules.task.start.state;
    if before == step || machine.is_begun(start, step) {
        return false;
    }
    let work = rules.rule(before).work;
    let phase = &machine.phases[rule.phase.at()];
    let waits_on = phase
        .waits_on
        .iter()
        .any(|&(word, bits)| usize::from(work.word) == word && bits >> work.shift & 1 == 1);
    let permit = |given: &crate::machine::SignIx| {
        !machine.is_valid(start, *given) && machine.signs[given.at()].step == before
    };
    rule.after.contains(&before)
        || waits_on && machine.phase_open(start, rule.phase).is_err()
        || rule.permits.iter().any(permit)
        || musts(&rule.needs).into_iter().any(|must| alone_makes(rules, before, must))
}

/// Whether a value that is wanted is not there at the start, and nothing but this step, when it is done, gives it.
fn alone_makes(rules: &Rules<'_>, step: StepIx, must: Must) -> bool {
    let (wanted, values) = must;
    let gives =
        |edits: &[(Field, u64)]| edits.iter().any(|&(field, value)| field == wanted && has(values, value));
    let machine = rules.machine;
    let of_rules = machine.items.iter().any(|item| item.field == wanted)
        || machine.signs.iter().any(|sign| sign.field == wanted)
        || machine.vehicle_actions.iter().any(|made| gives(&made.makes.edits))
        || machine.follows.iter().any(|follow| gives(&follow.assign.edits))
        || machine.steps.iter().any(|rule| gives(&rule.on_begin.edits) || gives(&rule.on_leave.edits));
    !has(values, wanted.get(&rules.task.start.state))
        && !of_rules
        && makes(rules, step, must)
        && all_steps(rules).all(|other| other == step || !makes(rules, other, must))
}

/// For each of these steps those that come after it in every order, as far as the rules say so in plain words.
fn followers(rules: &Rules<'_>, must: &[StepIx]) -> Vec<StepSet> {
    let mut followers = vec![StepSet::default(); rules.machine.steps.len()];
    for &step in must {
        for before in must.iter().copied().filter(|&before| comes_before(rules, before, step)) {
            followers[before.at()].insert(step);
        }
    }
    // What comes after what comes after.
    for &middle in must {
        let more = followers[middle.at()];
        for set in followers.iter_mut().filter(|set| set.contains(middle)) {
            *set |= more;
        }
    }
    followers
}

impl Rules<'_> {
    /// Minutes of the wait within a step that may be left.
    pub(super) fn full_wait_within(&self, step: StepIx) -> u32 {
        match self.task.minutes.waits[step.at()] {
            Some(Passing::Within(minutes)) => u32::from(minutes),
            _ => 0,
        }
    }

    /// Whether a step may be left while its wait runs.
    pub(super) fn may_be_left(&self, step: StepIx) -> bool {
        matches!(self.task.minutes.waits[step.at()], Some(Passing::Within(_)))
    }
}
