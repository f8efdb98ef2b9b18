//! What no order can be below. Two bounds, the larger of which counts: minutes of hands that are left, worked out without
//! clocks ([`Relaxed`]), and what must come one after the other with what lies between ([`Chains`]).

use super::chains::Chains;
use super::moment::{Busy, Moment};
use super::relaxed::Relaxed;
use super::rules::{IDLE, Rules};
use crate::machine::StepIx;

pub(super) struct Bound {
    relaxed: Option<Relaxed>,
    chains: Chains,
}

impl Bound {
    pub fn new(rules: &Rules<'_>) -> Bound {
        let seeds: Vec<Moment> = rules.beginnings_of_all().into_iter().map(|(_, moment)| moment).collect();
        Bound { relaxed: Relaxed::new(rules, &seeds), chains: Chains::new(rules) }
    }

    /// Minutes that are at least left; nothing where no way leads to the end.
    pub fn least(&self, rules: &Rules<'_>, moment: &Moment) -> Option<u32> {
        let by_hands = match &self.relaxed {
            Some(relaxed) => by_hands(rules, moment, relaxed)?,
            None => 0,
        };
        Some(by_hands.max(self.chains.least(rules, moment)))
    }
}

/// Minutes of hands left by the work without clocks, shared by all people. What it counts in full and is done in part is
/// taken off.
fn by_hands(rules: &Rules<'_>, moment: &Moment, relaxed: &Relaxed) -> Option<u32> {
    let zone = if rules.task.people == 1 { moment.people.iter().map(|person| person.at).max() } else { None };
    let mut hands = i64::from(relaxed.least(&moment.state, zone.unwrap_or(0))?);
    for person in &moment.people {
        hands += i64::from(person.left);
        hands -= match person.doing {
            Busy::Moving(made) => i64::from(rules.task.minutes.moves[made.at()]),
            Busy::Working(step) if rules.may_be_left(step) => i64::from(rules.hands(step)),
            _ => 0,
        };
    }
    for step in (0..rules.of_step.len()).map(StepIx::of) {
        let working = moment.people.iter().any(|person| person.doing == Busy::Working(step));
        if !working && rules.wait_within(moment, step).is_some_and(|left| left != IDLE) {
            hands -= i64::from(rules.hands(step));
        }
    }
    let hands = u32::try_from(hands).unwrap_or(0);
    Some(hands.div_ceil(rules.task.people as u32))
}
