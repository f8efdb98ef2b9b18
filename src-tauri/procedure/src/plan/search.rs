//! The exact search: A* over moments. The moment with the least minutes so far and at least left is looked at first, so
//! that the first end that is met is a best one, and what is open says what no order can be below.

use std::cmp::Reverse;
use std::collections::BinaryHeap;
use std::ops::ControlFlow;

use super::Progress;
use super::bound::Bound;
use super::moment::Op;
use super::rules::Rules;
use super::tree::Tree;

/// Between two words about how far it is.
const TELL_EVERY: usize = 1024;

/// How a search came to its end.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Ended {
    Searched,
    Budget,
    Cancelled,
}

/// What a search found.
#[derive(Debug, Clone)]
pub(super) struct Searched {
    /// The best order found.
    pub ops: Option<Vec<Op>>,
    /// Its minutes; without an order the most there is.
    pub total: u32,
    /// No order takes less.
    pub bound: u32,
    pub looked_at: usize,
    pub ended: Ended,
}

/// Minutes that an op lets pass.
pub(super) fn minutes_of(op: Op) -> u32 {
    match op {
        Op::Pass(minutes) => u32::from(minutes),
        _ => 0,
    }
}

/// Looks for the best order, with a good one to beat if there is one.
pub(super) fn search(
    rules: &Rules<'_>,
    bound: &Bound,
    known: Option<Searched>,
    budget: usize,
    progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
) -> Searched {
    let mut tree = Tree::new(rules);
    let mut open = BinaryHeap::new();
    let mut found = known.unwrap_or(Searched {
        ops: None,
        total: u32::MAX,
        bound: 0,
        looked_at: 0,
        ended: Ended::Searched,
    });
    for (ops, moment) in rules.beginnings_of_all() {
        if let Some(least) = bound.least(rules, &moment)
            && let Some(at) = tree.begin(ops, moment)
        {
            open.push((Reverse(least), 0, Reverse(at)));
        }
    }
    let mut ways = Vec::new();
    while let Some((Reverse(least), minutes, Reverse(at))) = open.pop() {
        if least >= found.total {
            break;
        }
        if !tree.counts(at) {
            continue;
        }
        found.bound = found.bound.max(least);
        if rules.is_end(tree.moment(at)) {
            found.total = minutes;
            found.ops = Some(tree.way_to(at));
            break;
        }
        if found.looked_at >= budget {
            found.ended = Ended::Budget;
            return found;
        }
        found.looked_at += 1;
        if found.looked_at.is_multiple_of(TELL_EVERY) && tell(&found, open.len(), progress).is_break() {
            found.ended = Ended::Cancelled;
            return found;
        }
        rules.ways(tree.moment(at), &mut ways);
        for (op, next) in ways.drain(..) {
            let Some(left) = bound.least(rules, &next) else { continue };
            let minutes = minutes + minutes_of(op);
            // What is left can be said less well at the later moment; it is not less for that.
            let least = least.max(minutes + left);
            if least < found.total
                && let Some(at) = tree.reach(next, minutes, Some((at, op)))
            {
                open.push((Reverse(least), minutes, Reverse(at)));
            }
        }
    }
    found.bound = found.total;
    found.ended = Ended::Searched;
    found
}

fn tell(
    found: &Searched,
    waiting: usize,
    progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
) -> ControlFlow<()> {
    progress(Progress {
        looked_at: found.looked_at,
        waiting,
        bound: found.bound,
        total: found.ops.as_ref().map(|_| found.total),
    })
}
