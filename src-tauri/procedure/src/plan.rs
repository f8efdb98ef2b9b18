//! The plan: the order of the work with the least expected time, from any moment of a job on.
//!
//! It goes by [`crate::Machine::step`], the function that runs the live job and that is proved, and never takes an
//! action that runs into a danger. What it adds is time, in whole minutes:
//!
//! - A person begins a step in its zone, works its `minutes` and is done. A step that asks for a timer takes at least as
//!   long as the sheet says. What is begun is worked to its end, or until its hands are free (below).
//! - A person makes a vehicle action in its `minutes`; it has no zone. While something moves, nobody goes into a step.
//! - A person walks from one zone to another in a fixed time; where somebody is at first is often not known and costs
//!   nothing.
//! - A [`Wait`](crate::format::Wait) with `since` lies before its step: nobody begins it until so many minutes have passed
//!   in which `since` held without a break. One without lies within the step, after its minutes of hands: where it is
//!   `attended` somebody stays; else the step may be left, and is done by whoever comes back.
//! - Knowledge ages: a gate with `fresh_for` is unknown again when so many minutes have passed since it was set.
//! - Signing takes no time; nothing is skipped, voided or observed. Each entry turns out as usual.
//!
//! The end is reached when the job may be finished and no step that is in it is left out; for a job that is ending by
//! stop and call, when it may be stopped.
//!
//! [`quick`] finds a good order at once and says how far it can be from the best; [`best`] finds the best, or says that it
//! did not and how far it came. No clock: a budget is counted in moments looked at and in bytes.
//!
//! # How it is searched
//!
//! `beam` finds a good order at once, and goes back where a stage leads nowhere. `search` is A* whose `bound` takes the
//! larger of what hands must still do and of the longest chain of steps and waits, both from a job without clocks
//! (`relaxed`): a step comes after another where that job has no state with the later one begun and the earlier one to
//! do. It is exact when bound and total meet. It ends at 500,000 moments, or 72 MiB of them, and then says how far it
//! may be from the best. `tree` keeps states, clocks and people's places once each, and a moment in 28 bytes.
//! `meanwhile` plans once more with each open step first.
//!
//! More people than the checklist's `crew` are planned for on a copy of the job whose events are folded once more over
//! `Procedure::with_crew`. That is a `plan_only`: the live job's rules stay those that were proved, and what can be
//! done meanwhile is said to its own crew alone.
//!
//! # Measured
//!
//! | | least time | file's order | found in | for two people |
//! |---|---|---|---|---|
//! | level-check | 71 min | 71 min | 0.01 s | 60 min |
//! | pan-and-filter | 453 min | 455 min | 0.12 s | 403 min |
//! | pan-and-solenoid | 547 min | 551 min | 0.24 s | 476 min |
//! | return-visit | 174 min | 174 min | 0.03 s | 156 min |
//! | solenoid-pack | 569 min | 573 min | 0.24 s | 498 min |
//!
//! All are exact for one person; the time includes the file's order, which is a good one already. For two people the
//! budget of the three long ones is used up after about 10 s, and they may be 7 min longer than the best. The program
//! takes 90 MB then, and 20 MB for the first answer, which comes in 10 to 85 ms, reading the checklist included; the
//! bench prints both. What checks it stands in `tests/README.md`.

mod beam;
mod bound;
mod chains;
mod disturb;
mod meanwhile;
mod minutes;
mod moment;
mod relaxed;
mod rules;
mod runs;
mod search;
mod tidy;
mod told;
mod tree;
mod ways;

use std::collections::BTreeMap;
use std::fmt;
use std::ops::ControlFlow;

pub use meanwhile::{Instead, Meanwhile, Running, meanwhile};
pub use minutes::{Minutes, WALK};
pub use told::{Doing, Waiting, What};

use panside_messages::Message;

use crate::format::Zone;
use crate::load::{Problems, Procedure};
use crate::machine::{OutcomeIx, State, StepIx, VarIx};
use crate::message::*;
use bound::Bound;
use rules::{Order, Rules};
use search::{Ended, Searched};

/// The most people that are planned for.
pub const MOST_PEOPLE: usize = 2;

/// How far a search for the best order may go.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Budget {
    /// Moments looked at.
    pub moments: usize,
    /// Bytes taken by the moments that were found.
    pub bytes: usize,
}

/// The budget where nothing else is said: a few seconds on a tablet, and what it can spare beside the window.
pub const BUDGET: Budget = Budget { moments: 500_000, bytes: 72 << 20 };

/// Where a job stands.
#[derive(Debug, Clone, Default)]
pub struct Start {
    /// What the rules know.
    pub state: State,
    /// Where people are who are in no step. Nothing: anywhere.
    pub at: Option<Zone>,
    /// Minutes that somebody has been in a step, for those that are begun.
    pub in_progress: BTreeMap<StepIx, u32>,
    /// Minutes that the wait before a step has run. Not named: it begins now.
    pub waited: BTreeMap<StepIx, u32>,
    /// Minutes that the wait within a step has run, for steps that were left when their hands were free.
    pub left: BTreeMap<StepIx, u32>,
    /// Minutes since a gate was set. Not named: it was set now.
    pub ages: BTreeMap<VarIx, u32>,
}

/// What is planned.
#[derive(Debug, Clone)]
pub struct Task<'a> {
    /// The checklist.
    pub procedure: &'a Procedure,
    /// How long things take.
    pub minutes: Minutes,
    /// How each step turns out, by step.
    pub outcomes: Vec<OutcomeIx>,
    /// Where the job stands.
    pub start: Start,
    /// How many people work, 1 or 2; more than the checklist's crew can't be in steps.
    pub people: usize,
}

impl<'a> Task<'a> {
    /// A job on this checklist from a state on, each entry as usual, nothing known of what went before, one person.
    #[must_use]
    pub fn new(procedure: &'a Procedure, state: State) -> Task<'a> {
        let outcomes = procedure.steps().map(|(step, _)| procedure.usual_outcome(step, &BTreeMap::new()));
        Task {
            outcomes: outcomes.collect(),
            minutes: Minutes::of(procedure, WALK, &|_| None),
            start: Start { state, ..Start::default() },
            procedure,
            people: 1,
        }
    }
}

/// How far a search for the best order is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Progress {
    /// Moments looked at.
    pub looked_at: usize,
    /// Moments found and not yet looked at.
    pub waiting: usize,
    /// No order takes less: minutes.
    pub bound: u32,
    /// The best order found so far takes so many minutes.
    pub total: Option<u32>,
}

/// A `progress` for whoever only waits for the end.
pub fn go_on(_: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

/// Why a plan says no more than it does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Certainty {
    /// No order takes less.
    Exact,
    /// A good order found at once; the best was not looked for.
    Quick,
    /// The budget was used up: the best order found by a bounded search.
    Budget,
    /// The search was ended by whoever asked: the best order found until then.
    Cancelled,
}

/// An order of work.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Plan {
    /// What is done, in the order in which it begins.
    pub doings: Vec<Doing>,
    /// What is waited for, in the order in which it begins.
    pub waits: Vec<Waiting>,
    /// Minutes from now to the end.
    pub total: u32,
    /// No order takes less than so many minutes.
    pub bound: u32,
    /// Whether it is the best, and if not why not.
    pub certainty: Certainty,
    /// Moments that were looked at.
    pub looked_at: usize,
}

impl Plan {
    /// Whether no order takes less.
    #[must_use]
    pub fn is_exact(&self) -> bool {
        self.certainty == Certainty::Exact
    }

    /// Minutes by which it can be longer than the best order, at most.
    #[must_use]
    pub fn gap(&self) -> u32 {
        self.total.saturating_sub(self.bound)
    }
}

/// Why there is no plan.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum NoPlan {
    /// The job has ended.
    Over,
    /// People that can't be planned for.
    People,
    /// The checklist has no room for so many people in steps at a time.
    Crew {
        /// How many were asked for.
        people: usize,
        /// Why not.
        problems: Problems,
    },
    /// No order leads to the end.
    NoWay,
    /// None was found within the budget.
    NotFound(usize),
    /// The search was ended before one was found.
    Cancelled,
}

impl NoPlan {
    /// What to say to a person.
    #[must_use]
    pub fn message(&self) -> Message {
        match self {
            NoPlan::Over => procedure_plan_over(),
            NoPlan::People => procedure_plan_people(MOST_PEOPLE),
            NoPlan::Crew { people, problems } => procedure_plan_crew(*people, problems.lines()),
            NoPlan::NoWay => procedure_plan_no_way(),
            NoPlan::NotFound(moments) => procedure_plan_not_found(*moments),
            NoPlan::Cancelled => procedure_plan_cancelled(),
        }
    }
}

impl fmt::Display for NoPlan {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.message().english())
    }
}

/// A good order at once, with what no order can be below. It can be the best: then it says so.
///
/// # Errors
/// [`NoPlan`].
pub fn quick(task: &Task<'_>) -> Result<Plan, NoPlan> {
    Planner::new(task)?.quick()
}

/// The best order, or the best one found within the budget. `progress` hears now and then how far
/// it is and answers whether to go on.
///
/// # Errors
/// [`NoPlan`].
pub fn best(
    task: &Task<'_>,
    budget: Budget,
    progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
) -> Result<Plan, NoPlan> {
    Planner::new(task)?.best(budget, progress)
}

/// The steps in the file's own order, with the vehicle actions between them as quick as can be, to compare a plan with.
///
/// # Errors
/// [`NoPlan`]; [`NoPlan::NoWay`] too where the file's order can't be kept.
pub fn in_file_order(
    task: &Task<'_>,
    budget: Budget,
    progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
) -> Result<Plan, NoPlan> {
    Planner::new(task)?.in_order(Order::File, budget, progress)
}

/// A task with what is worked out once for all its searches.
struct Planner<'a> {
    rules: Rules<'a>,
    bound: Bound,
}

impl<'a> Planner<'a> {
    fn new(task: &'a Task<'a>) -> Result<Planner<'a>, NoPlan> {
        let machine = &task.procedure.machine;
        if machine.is_finished(&task.start.state) || machine.is_stopped(&task.start.state) {
            return Err(NoPlan::Over);
        }
        let in_progress = machine.begun(&task.start.state).count();
        if !(1..=MOST_PEOPLE.min(machine.layout.begun.len())).contains(&task.people)
            || in_progress > task.people
        {
            return Err(NoPlan::People);
        }
        let rules = Rules::new(task);
        let bound = Bound::new(&rules);
        Ok(Planner { rules, bound })
    }

    fn quick(&self) -> Result<Plan, NoPlan> {
        let beam = beam::widening(&self.rules, &self.bound).ok_or(NoPlan::NotFound(0))?;
        Ok(self.told(&beam, Certainty::Quick))
    }

    fn best(
        &self,
        budget: Budget,
        progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
    ) -> Result<Plan, NoPlan> {
        let quick = beam::widening(&self.rules, &self.bound);
        let mut searched = search::search(&self.rules, &self.bound, quick, budget, progress);
        if searched.ended == Ended::Budget {
            self.widen(&mut searched);
        }
        let certainty = match searched.ended {
            Ended::Searched if searched.ops.is_none() => return Err(NoPlan::NoWay),
            Ended::Searched => Certainty::Exact,
            Ended::Budget if searched.ops.is_none() => return Err(NoPlan::NotFound(searched.looked_at)),
            Ended::Budget => Certainty::Budget,
            Ended::Cancelled if searched.ops.is_none() => return Err(NoPlan::Cancelled),
            Ended::Cancelled => Certainty::Cancelled,
        };
        Ok(self.told(&searched, certainty))
    }

    /// A wider search by beam, for what the budget left open.
    fn widen(&self, searched: &mut Searched) {
        if let Some(wide) = beam::wide(&self.rules, &self.bound)
            && wide.total < searched.total
        {
            searched.ops = wide.ops;
            searched.total = wide.total;
        }
    }

    fn in_order(
        mut self,
        order: Order,
        budget: Budget,
        progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
    ) -> Result<Plan, NoPlan> {
        self.rules.order = order;
        self.best(budget, progress)
    }

    fn told(&self, searched: &Searched, certainty: Certainty) -> Plan {
        let mut plan = told::plan(&self.rules, searched);
        plan.certainty = if plan.bound >= plan.total { Certainty::Exact } else { certainty };
        plan
    }
}
