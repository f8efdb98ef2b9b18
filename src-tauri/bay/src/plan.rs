//! The order with the least expected time, for a screen: a good one at once, the best one when it is found.

use std::ops::ControlFlow;
use std::sync::Arc;

use panside_job::{Job, planning};
use panside_journal::{JobId, Stamp};
use panside_messages::Speaker;
use panside_procedure::Procedure;
use panside_procedure::plan::Budget;
use panside_procedure::plan::{self, Certainty, Instead, Plan, Task, What};
pub use panside_procedure::plan::{BUDGET, NoPlan, Progress};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::message::bay_zone;
use crate::{Bay, BayError};

/// How far the search for each order of what can be done meanwhile may go. Each is asked for beside the plan.
const MEANWHILE_BUDGET: Budget = Budget { moments: 20_000, ..BUDGET };

/// An order of the work from now on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct PlanPage {
    /// The number of the job's newest event that it was made on; 0 for one made on a checklist alone.
    pub seq: u64,
    /// What is done, in the order in which it begins.
    pub doings: Vec<PlanDoing>,
    /// What is waited for, in the order in which it begins.
    pub waits: Vec<PlanWait>,
    /// Minutes from now to the end.
    pub total_min: u32,
    /// No order takes less than so many minutes.
    pub bound_min: u32,
    /// No order takes less.
    pub exact: bool,
    /// It is for more people than the checklist lets be in steps at a time: a plan, not what can be entered so.
    pub plan_only: bool,
    /// What runs now that is waited for, and what can be done in the meantime. Told for as many people as the checklist lets
    /// be in steps at a time, and empty in any other plan: only they can take something up.
    pub meanwhile: MeanwhilePage,
}

/// Something that a person does.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct PlanDoing {
    /// Who, from 1.
    pub person: usize,
    /// What kind of thing.
    pub does: PlanDoes,
    /// The step's or the vehicle action's id. Nothing for walking.
    pub id: Option<String>,
    /// What it is called; a walk's zone.
    pub title: String,
    /// Minutes from now when it begins.
    pub from_min: u32,
    /// Minutes from now when it is over.
    pub until_min: u32,
}

/// The kinds of things that are planned.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum PlanDoes {
    /// Works a step to its end.
    Work,
    /// Works a step until its hands are free.
    Start,
    /// Leaves a step that is in progress.
    Leave,
    /// Makes a vehicle action.
    VehicleAction,
    /// Walks to a zone.
    Walk,
    /// Signs again.
    Sign,
    /// Corrects a voided step afterwards.
    Correct,
}

/// Something that is waited for.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct PlanWait {
    /// The step that it belongs to.
    pub step: String,
    /// What is waited for, as said after "waiting for".
    pub what: String,
    /// Minutes from now when it begins.
    pub from_min: u32,
    /// Minutes from now when it is over.
    pub until_min: u32,
    /// Somebody must stay and watch.
    pub attended: bool,
    /// Minutes of it in which nobody does anything.
    pub idle_min: u32,
}

/// What runs, and what can be done in the meantime.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct MeanwhilePage {
    /// What is waited for, that which is over first before the others.
    pub running: Vec<RunningWait>,
    /// Steps that can be taken up, the cheapest first.
    pub can: Vec<CanDo>,
}

/// A wait that runs now.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct RunningWait {
    /// The step that it belongs to.
    pub step: String,
    /// What is waited for.
    pub what: String,
    /// Minutes until it is over.
    pub left_min: u32,
}

/// A step that can be taken up while something is waited for.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct CanDo {
    /// The step.
    pub step: String,
    /// Its minutes by hand.
    pub minutes: u32,
    /// By how many minutes the whole job takes longer if it is taken up first; nothing where no way to the end was found.
    pub extra_min: Option<u32>,
    /// Whether `extra_min` is certain, or the difference of two good orders.
    pub exact: bool,
}

/// A job as it stands, taken out of the store to be planned while the store goes on.
#[derive(Debug, Clone)]
pub struct ToPlan {
    job: Arc<Job>,
    now: Stamp,
    /// How many people are planned for.
    people: usize,
    /// How many the job's own checklist lets be in steps at a time.
    crew: usize,
    speaker: &'static Speaker,
}

impl Bay {
    /// A job as it stands now, to be planned away from the store for as many people as its checklist has.
    ///
    /// # Errors
    /// As [`Bay::job`].
    pub fn to_plan(&mut self, job: JobId) -> Result<ToPlan, BayError> {
        let (now, speaker) = (self.clock.now(), self.speaker);
        let job = Arc::clone(&self.refresh(job)?.job);
        let crew = planning::crew(&job);
        Ok(ToPlan { job, now, people: crew, crew, speaker })
    }
}

impl ToPlan {
    /// The number of the job's newest event.
    #[must_use]
    pub fn seq(&self) -> u64 {
        self.job.last_seq()
    }

    /// The same to be planned for so many people, 1 or 2, whatever its checklist has.
    ///
    /// # Errors
    /// [`NoPlan::People`], [`NoPlan::Crew`].
    pub fn for_people(self, people: u8) -> Result<ToPlan, NoPlan> {
        let people = usize::from(people);
        let job =
            if people > self.crew { Arc::new(planning::with_crew(&self.job, people)?) } else { self.job };
        Ok(ToPlan { job, people, ..self })
    }

    /// A good order at once.
    ///
    /// # Errors
    /// [`NoPlan`] as a sentence.
    pub fn quick(&self) -> Result<PlanPage, NoPlan> {
        let task = self.task();
        self.page(&task, &plan::quick(&task)?, Budget { moments: 0, ..BUDGET }, &mut plan::go_on)
    }

    /// The best order, or the best one found within the budget. `progress` answers whether to go on.
    ///
    /// # Errors
    /// [`NoPlan`] as a sentence.
    pub fn best(&self, progress: &mut dyn FnMut(Progress) -> ControlFlow<()>) -> Result<PlanPage, NoPlan> {
        let task = self.task();
        let best = plan::best(&task, plan::BUDGET, progress)?;
        if best.certainty == Certainty::Cancelled {
            return Err(NoPlan::Cancelled);
        }
        self.page(&task, &best, MEANWHILE_BUDGET, progress)
    }

    fn task(&self) -> Task<'_> {
        Task { people: self.people, ..planning::task(&self.job, &self.now) }
    }

    fn page(
        &self,
        task: &Task<'_>,
        plan: &Plan,
        budget: Budget,
        progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
    ) -> Result<PlanPage, NoPlan> {
        let mut page = page(task.procedure, plan, self.speaker);
        page.seq = self.seq();
        page.plan_only = self.people > self.crew;
        if self.people != self.crew {
            return Ok(page);
        }
        let meanwhile = plan::meanwhile(task, budget, progress)?;
        let can = |instead: &Instead| CanDo {
            step: task.procedure.step(instead.step).id.clone(),
            minutes: instead.minutes,
            extra_min: instead.extra,
            exact: instead.exact,
        };
        page.meanwhile = MeanwhilePage {
            running: meanwhile
                .running
                .iter()
                .map(|running| {
                    let (step, what) = waited_for(task.procedure, running.step);
                    RunningWait { step, what, left_min: running.left }
                })
                .collect(),
            can: meanwhile.can.iter().map(can).collect(),
        };
        Ok(page)
    }
}

/// A plan in the words of its checklist. Nothing is said of what runs now.
#[must_use]
pub fn page(procedure: &Procedure, plan: &Plan, speaker: &Speaker) -> PlanPage {
    let doing = |doing: &plan::Doing| {
        let (does, id, title) = named(procedure, doing.what, speaker);
        PlanDoing { person: doing.person + 1, does, id, title, from_min: doing.from, until_min: doing.until }
    };
    let wait = |wait: &plan::Waiting| {
        let (step, what) = waited_for(procedure, wait.step);
        PlanWait {
            step,
            what,
            from_min: wait.from,
            until_min: wait.until,
            attended: wait.attended,
            idle_min: wait.idle,
        }
    };
    PlanPage {
        seq: 0,
        doings: plan.doings.iter().map(doing).collect(),
        waits: plan.waits.iter().map(wait).collect(),
        total_min: plan.total,
        bound_min: plan.bound,
        exact: plan.is_exact(),
        plan_only: false,
        meanwhile: MeanwhilePage::default(),
    }
}

fn named(procedure: &Procedure, what: What, speaker: &Speaker) -> (PlanDoes, Option<String>, String) {
    let step = |does, step| {
        let text = procedure.step(step);
        (does, Some(text.id.clone()), text.title.clone())
    };
    match what {
        What::Work(at) => step(PlanDoes::Work, at),
        What::Start(at) => step(PlanDoes::Start, at),
        What::Leave(at) => step(PlanDoes::Leave, at),
        What::Correct(at) => step(PlanDoes::Correct, at),
        What::Vehicle(made) => {
            let text = procedure.vehicle_action_text(made);
            (PlanDoes::VehicleAction, Some(text.id.clone()), text.title.clone())
        }
        What::Walk(zone) => (PlanDoes::Walk, None, speaker.within(&bay_zone(zone))),
        What::Sign(given) => {
            let text = procedure.sign_off(given);
            (PlanDoes::Sign, Some(text.id.clone()), text.text.clone())
        }
    }
}

fn waited_for(procedure: &Procedure, step: panside_procedure::machine::StepIx) -> (String, String) {
    let text = procedure.step(step);
    (text.id.clone(), text.wait.as_ref().map(|wait| wait.for_.clone()).unwrap_or_default())
}
