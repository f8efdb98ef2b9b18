//! The exact search: A* over moments. The moment with the least minutes so far and at least left is looked at first, so
//! that the first end that is met is a best one, and what is open says what no order can be below.

use std::cmp::Reverse;
use std::collections::BinaryHeap;
use std::ops::ControlFlow;

use super::bound::Bound;
use super::moment::Op;
use super::rules::Rules;
use super::tree::Tree;
use super::{Budget, Progress};

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

/// A moment to be looked at: least minutes in all, minutes so far (of equals the one that has come further), number.
pub(super) type Open = (Reverse<u32>, u32, Reverse<u32>);

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
    budget: Budget,
    progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
) -> Searched {
    let mut tree = Tree::new(rules);
    let mut open: BinaryHeap<Open> = BinaryHeap::new();
    let mut found = known.unwrap_or(Searched {
        ops: None,
        total: u32::MAX,
        bound: 0,
        looked_at: 0,
        ended: Ended::Searched,
    });
    for (ops, moment) in rules.beginnings_of_all() {
        if let Some(least) = bound.least(rules, &moment)
            && let Some(at) = tree.begin(ops, &moment)
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
        let moment = tree.moment(at);
        if rules.is_end(&moment) {
            found.total = minutes;
            found.ops = Some(tree.way_to(at));
            break;
        }
        let bytes = tree.bytes() + open.len() * size_of::<Open>();
        if found.looked_at >= budget.moments || bytes >= budget.bytes {
            found.ended = Ended::Budget;
            return found;
        }
        found.looked_at += 1;
        if found.looked_at.is_multiple_of(TELL_EVERY) && tell(&found, open.len(), progress).is_break() {
            found.ended = Ended::Cancelled;
            return found;
        }
        rules.ways(&moment, &mut ways);
        for (op, next) in ways.drain(..) {
            let Some(left) = bound.least(rules, &next) else { continue };
            let minutes = minutes + minutes_of(op);
            // What is left can be said less well at the later moment; it is not less for that.
            let least = least.max(minutes + left);
            if least < found.total
                && let Some(at) = tree.reach(&next, minutes, at, op)
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::{Task, go_on};
    use crate::shipped;

    #[test]
    fn a_search_whose_memory_is_full_ends_and_says_what_it_knows() {
        let procedure = shipped::return_visit().with_crew(2).expect("it loads for two people");
        let start = procedure.machine.start(&[]).expect("a vehicle can come in");
        let task = Task { people: 2, ..Task::new(&procedure, start) };
        let rules = Rules::new(&task);
        let bound = Bound::new(&rules);
        let within = |bytes| search(&rules, &bound, None, Budget { moments: 10_000, bytes }, &mut go_on);
        let (narrow, wide) = (within(1 << 18), within(usize::MAX));
        assert_eq!(narrow.ended, Ended::Budget);
        assert!(0 < narrow.looked_at && narrow.looked_at < wide.looked_at, "{narrow:?}, {wide:?}");
        assert!(0 < narrow.bound && narrow.bound <= wide.bound, "{narrow:?}, {wide:?}");
    }
}
