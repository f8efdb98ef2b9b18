//! A good order at once: of all moments with equally many steps worked, only the most promising few are followed.

use std::cmp::Reverse;
use std::collections::{BTreeMap, BinaryHeap};

use super::BUDGET;
use super::bound::Bound;
use super::moment::{Moment, Op};
use super::rules::Rules;
use super::search::{Ended, Open, Searched, minutes_of};
use super::tree::Tree;
use crate::machine::work;

/// How many moments of each stage are followed from the stage before; more where that many found no end.
const WIDTHS: [usize; 4] = [2, 12, 60, 300];
/// A wide search, for what a larger budget left open.
const WIDE: usize = 300;
/// The most moments looked at for each one that is followed.
const FOR_EACH: usize = 1_000;
/// Moments looked at after which no earlier stage is taken up again, but a wider search begun.
const ENOUGH: usize = 30_000;

/// The first width that finds an order.
pub(super) fn widening(rules: &Rules<'_>, bound: &Bound) -> Option<Searched> {
    WIDTHS.iter().find_map(|&width| beam(rules, bound, width))
}

/// A wide search.
pub(super) fn wide(rules: &Rules<'_>, bound: &Bound) -> Option<Searched> {
    beam(rules, bound, WIDE)
}

/// Moments with equally many steps worked.
type Stage = BinaryHeap<Open>;

fn beam(rules: &Rules<'_>, bound: &Bound, width: usize) -> Option<Searched> {
    let mut tree = Tree::new(rules);
    let mut stages: BTreeMap<usize, Stage> = BTreeMap::new();
    let mut lowest = u32::MAX;
    for (ops, moment) in rules.beginnings_of_all() {
        let stage = worked(rules, &moment);
        if let Some(least) = bound.least(rules, &moment)
            && let Some(at) = tree.begin(ops, &moment)
        {
            lowest = lowest.min(least);
            stages.entry(stage).or_default().push((Reverse(least), 0, Reverse(at)));
        }
    }
    let mut best: Option<(u32, Vec<Op>)> = None;
    let mut looked_at = 0;
    let mut ways = Vec::new();
    let mut aside: BTreeMap<usize, Stage> = BTreeMap::new();
    // Steps are worked and never become untouched again, so that nothing comes back to an earlier stage. Where none of
    // those that were followed leads to an end, the last stage that has others is taken up again.
    while let Some((stage, mut open)) =
        stages.pop_first().or_else(|| aside.pop_last().filter(|_| best.is_none() && looked_at < ENOUGH))
    {
        let (mut followed, mut arrived) = (0, 0);
        if tree.bytes() >= BUDGET.bytes {
            break;
        }
        while arrived < width
            && tree.bytes() < BUDGET.bytes
            && followed < width * FOR_EACH
            && let Some((Reverse(least), minutes, Reverse(at))) = open.pop()
        {
            if best.as_ref().is_some_and(|(total, _)| least >= *total) {
                break;
            }
            if !tree.counts(at) {
                continue;
            }
            let moment = tree.moment(at);
            if rules.is_end(&moment) {
                best = Some((minutes, tree.way_to(at)));
                break;
            }
            followed += 1;
            rules.ways(&moment, &mut ways);
            for (op, next) in ways.drain(..) {
                let Some(left) = bound.least(rules, &next) else { continue };
                let minutes = minutes + minutes_of(op);
                let next_stage = worked(rules, &next);
                if let Some(at) = tree.reach(&next, minutes, at, op) {
                    let found = (Reverse(minutes + left), minutes, Reverse(at));
                    if next_stage == stage {
                        open.push(found);
                    } else {
                        arrived += 1;
                        stages.entry(next_stage).or_default().push(found);
                    }
                }
            }
        }
        looked_at += followed;
        if !open.is_empty() {
            aside.insert(stage, open);
        }
    }
    let (total, ops) = best?;
    Some(Searched { ops: Some(ops), total, bound: lowest, looked_at, ended: Ended::Searched })
}

/// How many steps are not untouched.
fn worked(rules: &Rules<'_>, moment: &Moment) -> usize {
    let steps = rules.machine.steps.iter();
    steps.filter(|rule| rule.work.get(&moment.state) != work::UNTOUCHED).count()
}
