//! What each phase waits for.

use super::names::Names;
use crate::format::{Checklist, Phase};
use crate::machine::{PhaseIx, PhaseRule, StepIx, StepRule};

/// What each phase waits for, as bits.
pub(super) fn phases(checklist: &Checklist, steps: &[StepRule], names: &Names) -> Vec<PhaseRule> {
    let waits = |later: usize, earlier: usize| {
        let is_beside =
            |phase: &Phase| phase.beside.iter().any(|id| names.phase(id) == Some(PhaseIx::of(earlier)));
        earlier < later && !is_beside(&checklist.phases[later])
    };
    let mut rules = Vec::new();
    for phase in 0..checklist.phases.len() {
        let mut rule = PhaseRule::default();
        for (at, step) in steps.iter().enumerate() {
            let (word, shift) = (usize::from(step.work.word), step.work.shift);
            let own = step.phase.at();
            if waits(phase, own) {
                if step.on.is_none() {
                    add_bits(&mut rule.waits_on, word, 1 << shift);
                } else {
                    rule.waits_on_some.push(StepIx::of(at));
                }
            }
            let later = waits(own, phase);
            if later || own == phase {
                add_bits(&mut rule.entered, word, 3 << shift);
                rule.entered_steps.insert(StepIx::of(at));
            }
            if later {
                rule.passed_steps.insert(StepIx::of(at));
            }
        }
        rules.push(rule);
    }
    rules
}

fn add_bits(words: &mut Vec<(usize, u64)>, word: usize, bits: u64) {
    match words.iter_mut().find(|(at, _)| *at == word) {
        Some((_, mask)) => *mask |= bits,
        None => words.push((word, bits)),
    }
}
