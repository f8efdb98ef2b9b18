//! Which steps are struck together.

use std::collections::BTreeSet;

use crate::machine::{StepIx, StepRule};

/// A step is struck with every step it builds on, however far back.
pub(super) fn add_struck_with(steps: &mut [StepRule]) {
    for at in 0..steps.len() {
        let mut with: BTreeSet<StepIx> = BTreeSet::new();
        loop {
            let more: Vec<StepIx> = (0..steps.len())
                .map(StepIx::of)
                .filter(|other| !with.contains(other) && other.at() != at)
                .filter(|other| {
                    steps[other.at()].relies_on.iter().any(|base| base.at() == at || with.contains(base))
                })
                .collect();
            if more.is_empty() {
                break;
            }
            with.extend(more);
        }
        steps[at].struck_with = with.into_iter().collect();
    }
}
