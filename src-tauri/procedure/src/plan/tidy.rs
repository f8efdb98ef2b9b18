//! Takes out of an order what it does for nothing: of two equal ones the search takes either, also the one in which
//! somebody who has to wait walks about.

use super::MOST_PEOPLE;
use super::moment::{Moment, Op, Who};
use super::rules::Rules;
use crate::machine::Before;

/// How far apart two deeds may be, counted in such deeds, that undo each other.
const NEAR: usize = 4;

/// The same order in the same time with less work. People are named by the place they had first.
pub(super) fn tidied(rules: &Rules<'_>, ops: &[Op]) -> Vec<Op> {
    let ops = by_person(rules, ops);
    let Some(mut line) = Line::of(rules, &ops) else { return ops };
    loop {
        let before = line.ops.len();
        let singles: Vec<usize> = idle_work(rules, &line.ops);
        for &at in singles.iter().rev() {
            line.try_without(rules, &[at]);
        }
        let pairs = idle_work(rules, &line.ops);
        for first in (0..pairs.len()).rev() {
            for second in (first + 1..pairs.len().min(first + NEAR)).rev() {
                if pairs[second] < line.ops.len() && line.try_without(rules, &[pairs[first], pairs[second]]) {
                    break;
                }
            }
        }
        if line.ops.len() == before {
            return line.ops;
        }
    }
}

/// An order, and the moment before each of its ops.
struct Line {
    ops: Vec<Op>,
    before: Vec<Moment>,
}

/// The ops with people named by the place they had first, instead of by their place in each moment.
fn by_person(rules: &Rules<'_>, ops: &[Op]) -> Vec<Op> {
    let mut who: [usize; MOST_PEOPLE] = std::array::from_fn(|at| at);
    let mut moment = rules.now();
    let mut named = Vec::new();
    for &op in ops {
        named.push(op.for_person(|named| Who::of(who[named.at()])));
        let Some(mut next) = step(rules, &moment, op) else { return named };
        let mut places: [usize; MOST_PEOPLE] = std::array::from_fn(|at| at);
        places.sort_by_key(|&at| next.people[at]);
        next.people = places.map(|at| next.people[at]);
        who = places.map(|at| who[at]);
        moment = next;
    }
    named
}

fn step(rules: &Rules<'_>, moment: &Moment, op: Op) -> Option<Moment> {
    let before = Before::new(rules.machine, &moment.state, rules.machine.dangers_now(&moment.state));
    rules.after_unsorted(&before, moment, op)
}

/// Where something begins that could be for nothing: ways, vehicle actions, signatures, steps that are worked again.
fn idle_work(rules: &Rules<'_>, ops: &[Op]) -> Vec<usize> {
    let mut begun = Vec::new();
    let could = |&(_, op): &(usize, &Op)| match op {
        Op::Walk(..) | Op::Vehicle(..) | Op::Sign(_) => true,
        Op::Begin(_, step) => {
            let again = rules.machine.is_worked(&rules.task.start.state, *step) || begun.contains(step);
            begun.push(*step);
            again
        }
        _ => false,
    };
    let mut could = could;
    ops.iter().enumerate().filter(|one| could(one)).map(|(at, _)| at).collect()
}

impl Line {
    /// Nothing where it can't be done so.
    fn of(rules: &Rules<'_>, ops: &[Op]) -> Option<Line> {
        let mut line = Line { ops: ops.to_vec(), before: Vec::new() };
        let mut moment = rules.now();
        for &op in ops {
            let next = step(rules, &moment, op)?;
            line.before.push(std::mem::replace(&mut moment, next));
        }
        Some(line)
    }

    /// Leaves out what begins at these places, the first one first, if everything else can be done without it at the same
    /// times.
    fn try_without(&mut self, rules: &Rules<'_>, places: &[usize]) -> bool {
        let Some(&first) = places.first() else { return false };
        let mut without = Line { ops: Vec::new(), before: Vec::new() };
        let mut moment = self.before[first].clone();
        // Whose next end is that of something that is left out.
        let mut ends: Vec<Who> = Vec::new();
        for (at, &op) in self.ops.iter().enumerate().skip(first) {
            if places.contains(&at) {
                ends.extend(op.person().filter(|_| lasts(rules, op)));
                continue;
            }
            if let Op::End(person) = op
                && let Some(found) = ends.iter().position(|&left_out| left_out == person)
            {
                ends.remove(found);
                continue;
            }
            let wrong_zone = matches!(op, Op::Begin(person, step)
                if ![0, rules.zones[step.at()]].contains(&moment.people[person.at()].at));
            let Some(next) = step(rules, &moment, op).filter(|_| !wrong_zone) else { return false };
            without.ops.push(op);
            without.before.push(std::mem::replace(&mut moment, next));
        }
        let ended = rules.is_end(&moment);
        if ended {
            self.ops.truncate(first);
            self.before.truncate(first);
            self.ops.extend(without.ops);
            self.before.extend(without.before);
        }
        ended
    }
}

/// Whether an op begins something that has an end of its own.
fn lasts(rules: &Rules<'_>, op: Op) -> bool {
    match op {
        Op::Vehicle(_, made) => rules.task.minutes.vehicle_actions[made.at()] > 0,
        Op::Walk(..) | Op::Begin(..) => true,
        _ => false,
    }
}

impl Op {
    /// Who does it.
    fn person(self) -> Option<Who> {
        match self {
            Op::End(person)
            | Op::Walk(person, _)
            | Op::Begin(person, _)
            | Op::Leave(person, _)
            | Op::Vehicle(person, _) => Some(person),
            Op::Pass(_) | Op::Sign(_) | Op::Correct(_) => None,
        }
    }

    /// The same with another name for who does it.
    fn for_person(self, name: impl Fn(Who) -> Who) -> Op {
        match self {
            Op::End(person) => Op::End(name(person)),
            Op::Walk(person, zone) => Op::Walk(name(person), zone),
            Op::Begin(person, step) => Op::Begin(name(person), step),
            Op::Leave(person, step) => Op::Leave(name(person), step),
            Op::Vehicle(person, made) => Op::Vehicle(name(person), made),
            Op::Pass(_) | Op::Sign(_) | Op::Correct(_) => self,
        }
    }
}
