//! What no order can be below. Two bounds, the larger of which counts: minutes of hands that are left, worked out without
//! clocks ([`Relaxed`]), and what must come one after the other with what lies between ([`Chains`]). Where time passes
//! between two steps in which hands need not be busy, both are put together: hands until the first is done, then the
//! chain.

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
        let mut relaxed = Relaxed::new(rules, &seeds);
        let chains = Chains::new(rules, relaxed.as_mut());
        Bound { relaxed, chains }
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

fn by_hands(rules: &Rules<'_>, moment: &Moment, relaxed: &Relaxed) -> Option<u32> {
    let zone = moment.people.iter().map(|person| person.at).max().unwrap_or(0);
    // Every state that can be reached in truth can be reached without clocks.
    let Some(node) = relaxed.find(&moment.state, zone) else { return Some(0) };
    let (hands, least) = relaxed.least(node)?;
    let people = rules.task.people;
    let over = over_in_part(rules, moment);
    let left: i64 = moment.people.iter().map(|person| i64::from(person.left)).sum();
    // What somebody is at now comes before everything else only where he is alone.
    let least = if people == 1 { i64::from(least) + left } else { i64::from(least) };
    let all = (i64::from(hands) + left).max(least) - over;
    Some(u32::try_from(all).unwrap_or(0).div_ceil(people as u32))
}

/// Minutes that the work without clocks counts in full though they are over in part.
fn over_in_part(rules: &Rules<'_>, moment: &Moment) -> i64 {
    let mut minutes = 0;
    for person in &moment.people {
        minutes += match person.doing {
            Busy::Moving(made) => i64::from(rules.task.minutes.vehicle_actions[made.at()]),
            Busy::Working(step) if rules.may_be_left(step) => i64::from(rules.hands(step)),
            _ => 0,
        };
    }
    for step in (0..rules.of_step.len()).map(StepIx::of) {
        let working = moment.people.iter().any(|person| person.doing == Busy::Working(step));
        if !working && rules.wait_within(moment, step).is_some_and(|left| left != IDLE) {
            let own = u32::from(rules.hands(step)) + rules.full_wait_within(step);
            minutes += i64::from(own) * rules.task.people as i64;
        }
    }
    minutes
}
