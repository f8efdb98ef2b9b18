//! What can be done while something cools, drains or cures, and what it costs to do it first.

use std::ops::ControlFlow;

use super::beam;
use super::moment::{Moment, Person};
use super::rules::{Clock, IDLE, Order, Rules};
use super::search::{self, Ended, Searched};
use super::{Budget, NoPlan, Planner, Progress, Task};
use crate::machine::{Action, Before, StepIx, work};

/// A wait that runs now.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Running {
    /// The step that it belongs to.
    pub step: StepIx,
    /// Minutes until it is over.
    pub left: u32,
}

/// An open step that can be taken up first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Instead {
    /// The step.
    pub step: StepIx,
    /// Its minutes by hand.
    pub minutes: u32,
    /// By how many minutes everything takes longer if it is taken up first. Nothing: no order to the end was found.
    pub extra: Option<u32>,
    /// Whether `extra` is certain, or the difference of two good orders.
    pub exact: bool,
}

/// What runs now, and what can be done in the meantime.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Meanwhile {
    /// Waits that run, the one that is over first before the others. None: nothing is waited for.
    pub running: Vec<Running>,
    /// Open steps, the cheapest first. Empty where nothing is waited for.
    pub can: Vec<Instead>,
}

/// What can be done in the meantime, while some wait runs. With a budget of no moments good orders are compared at once; else
/// the best ones, each found within the budget where that is possible.
///
/// # Errors
/// [`NoPlan`] where the job as a whole has none.
pub fn meanwhile(
    task: &Task<'_>,
    budget: Budget,
    progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
) -> Result<Meanwhile, NoPlan> {
    let mut planner = Planner::new(task)?;
    let now = planner.rules.now();
    let mut running = running(&planner.rules, &now);
    if running.is_empty() {
        return Ok(Meanwhile::default());
    }
    running.sort_by_key(|wait| (wait.left, wait.step));
    let free = planner.total(Order::Free, budget, progress)?;
    let mut can = Vec::new();
    for step in open(&planner.rules, &now) {
        let (extra, exact) = match planner.total(Order::First(step), budget, progress) {
            Ok(first) => (Some(first.total.saturating_sub(free.total)), is_exact(&first) && is_exact(&free)),
            Err(NoPlan::NoWay) => (None, true),
            Err(NoPlan::Cancelled) => return Err(NoPlan::Cancelled),
            Err(_) => (None, false),
        };
        let minutes = u32::from(planner.rules.hands(step));
        can.push(Instead { step, minutes, extra, exact });
    }
    can.sort_by_key(|instead| (instead.extra.unwrap_or(u32::MAX), instead.step));
    Ok(Meanwhile { running, can })
}

fn is_exact(searched: &Searched) -> bool {
    searched.bound >= searched.total
}

impl Planner<'_> {
    /// The best or a good order when untouched steps may be begun only so.
    fn total(
        &mut self,
        order: Order,
        budget: Budget,
        progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
    ) -> Result<Searched, NoPlan> {
        self.rules.order = order;
        let quick = beam::widening(&self.rules, &self.bound);
        if budget.moments == 0 {
            return quick.ok_or(NoPlan::NotFound(0));
        }
        let searched = search::search(&self.rules, &self.bound, quick, budget, progress);
        match searched.ended {
            Ended::Cancelled => Err(NoPlan::Cancelled),
            _ if searched.ops.is_some() => Ok(searched),
            Ended::Searched => Err(NoPlan::NoWay),
            Ended::Budget => Err(NoPlan::NotFound(searched.looked_at)),
        }
    }
}

/// Waits that run, of steps that are still to be done.
fn running(rules: &Rules<'_>, now: &Moment) -> Vec<Running> {
    let runs = rules.clocks.iter().zip(&*now.clocks).filter_map(|(clock, &left)| match *clock {
        Clock::Before { step, since, .. } => {
            (left > 0 && since.holds(&now.state)).then_some(Running { step, left: left.into() })
        }
        Clock::Within { step, .. } => {
            (left > 0 && left != IDLE).then_some(Running { step, left: left.into() })
        }
        Clock::Fresh { .. } => None,
    });
    runs.collect()
}

/// Untouched steps that could be begun at once by somebody who is free, or who leaves a step that waits.
fn open(rules: &Rules<'_>, now: &Moment) -> Vec<StepIx> {
    let machine = rules.machine;
    let free: Vec<Moment> = rules
        .beginnings_of_all()
        .into_iter()
        .map(|(_, moment)| moment)
        .filter(|moment| moment.people.iter().any(Person::is_free))
        .collect();
    let may_begin = |step: StepIx| {
        free.iter().any(|moment| {
            let before = Before::new(machine, &moment.state, machine.dangers_now(&moment.state));
            rules.wait_before(moment, step) == 0 && rules.act(&before, Action::Begin(step)).is_some()
        })
    };
    (0..machine.steps.len())
        .map(StepIx::of)
        .filter(|&step| rules.rule(step).work.get(&now.state) == work::UNTOUCHED)
        .filter(|&step| rules.wait_within(now, step).is_none_or(|left| left == IDLE))
        .filter(|&step| !machine.is_begun(&now.state, step) && may_begin(step))
        .collect()
}
