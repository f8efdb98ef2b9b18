//! Which steps are voided together.

use std::collections::BTreeSet;

use crate::machine::{StepIx, StepRule};

/// A step is voided with every step it builds on, however far back.
pub(super) fn add_voided_with(steps: &mut [StepRule]) {
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
        steps[at].voided_with = with.into_iter().collect();
    }
}
