//! `plan`.

use std::path::Path;

use panside_bay::plan::{CanDo, PlanDoes, PlanDoing, PlanPage, PlanWait, ToPlan, page};
use panside_messages::{Arg, Message, Speaker};
use panside_procedure::plan::{self, NoPlan, Task};

use crate::args::PlanArgs;
use crate::checklist;
use crate::exit::{Exit, Failure};
use crate::message::*;
use crate::out::{self, row, say};
use crate::record::{look, open};

/// Plans and prints the order.
pub fn plan(args: &PlanArgs, speaker: &'static Speaker) -> Result<Exit, Failure> {
    let (found, file_order) = match (&args.file, &args.store, args.job) {
        (Some(file), ..) => from_file(file, args, speaker)?,
        (None, Some(store), Some(job)) => {
            let mut bay = open(store, speaker)?;
            let planned = bay.to_plan(job);
            look(&bay, args.even_so)?;
            let job = planned?;
            (from_job(job, args).map_err(|why| no_plan(&why))?, None)
        }
        _ => return Err(Failure::new(Exit::Usage, cli_plan_of_what())),
    };
    if args.json {
        out::json(&found)?;
    } else {
        print(&found, file_order, speaker);
    }
    Ok(if found.exact { Exit::Done } else { Exit::NotDecided })
}

/// A plan of a job from where it stands.
fn from_job(mut job: ToPlan, args: &PlanArgs) -> Result<PlanPage, NoPlan> {
    if let Some(people) = args.people {
        job = job.for_people(people)?;
    }
    if args.quick { job.quick() } else { job.best(&mut plan::go_on) }
}

/// A plan from the beginning of a checklist, and what its own order takes where the best is asked for: that is searched
/// too.
fn from_file(file: &Path, args: &PlanArgs, speaker: &Speaker) -> Result<(PlanPage, Option<u32>), Failure> {
    let (_, procedure) = checklist::load(file)?;
    let (crew, people) = (procedure.checklist.crew, args.people.unwrap_or(1));
    let procedure =
        procedure.with_crew(people).map_err(|problems| Failure::does_not_load(file, &problems))?;
    let starts = procedure.machine.start(&[]).or_else(|| procedure.machine.all_starts().first().copied());
    let start = starts.ok_or_else(|| Failure::new(Exit::Refused, cli_plan_no_start()))?;
    let task = Task { people: usize::from(people), ..Task::new(&procedure, start) };
    let (found, in_file_order) = if args.quick {
        (plan::quick(&task), None)
    } else {
        let found = plan::best(&task, plan::BUDGET, &mut plan::go_on);
        (found, plan::in_file_order(&task, plan::BUDGET, &mut plan::go_on).ok())
    };
    let found = found.map_err(|why| no_plan(&why))?;
    let page = PlanPage { plan_only: people > crew, ..page(&procedure, &found, speaker) };
    Ok((page, in_file_order.map(|plan| plan.total)))
}

fn no_plan(why: &NoPlan) -> Failure {
    let exit = if *why == NoPlan::People { Exit::Usage } else { Exit::Refused };
    Failure::new(exit, why.message())
}

fn print(plan: &PlanPage, file_order: Option<u32>, speaker: &Speaker) {
    let line = |message: &Message| row(format_args!("{}", speaker.within(message)));
    let several = plan.doings.iter().any(|doing| doing.person > 1);
    plan.doings.iter().for_each(|one| line(&doing(one, several)));
    plan.waits.iter().for_each(|one| line(&wait(one)));
    for running in &plan.meanwhile.running {
        line(&cli_plan_running(&running.what, running.left_min));
    }
    for can in &plan.meanwhile.can {
        row(format_args!("  {}", speaker.within(&meanwhile(can))));
    }
    if plan.plan_only {
        row(format_args!(""));
        say(speaker, &cli_plan_only());
    }
    row(format_args!(""));
    let total = if plan.exact {
        cli_plan_exact(plan.total_min)
    } else {
        let longer = plan.total_min.saturating_sub(plan.bound_min);
        cli_plan_bound(plan.total_min, plan.bound_min, longer)
    };
    say(speaker, &total);
    if let Some(minutes) = file_order {
        say(speaker, &cli_plan_file_order(minutes));
    }
}

/// A row of the plan; with who does it, where several people do something.
fn doing(doing: &PlanDoing, several: bool) -> Message {
    let title = &doing.title;
    let does: Arg = match doing.does {
        PlanDoes::Work => title.into(),
        PlanDoes::Start => cli_plan_start(title).into(),
        PlanDoes::Leave => cli_plan_leave(title).into(),
        PlanDoes::VehicleAction => cli_plan_action(title).into(),
        PlanDoes::Walk => cli_plan_walk(title).into(),
        PlanDoes::Sign => cli_plan_sign(title).into(),
        PlanDoes::Correct => cli_plan_correct(title).into(),
    };
    let (from, until) = (format!("{:>4}", doing.from_min), format!("{:>4}", doing.until_min));
    if several {
        cli_plan_row_person(from, until, doing.person, does)
    } else {
        cli_plan_row(from, until, does)
    }
}

fn wait(wait: &PlanWait) -> Message {
    let meanwhile = match (wait.attended, wait.idle_min) {
        (true, _) => cli_plan_attended(),
        (false, 0) => cli_plan_other_work(),
        (false, idle) => cli_plan_idle(idle),
    };
    cli_plan_wait(&wait.what, wait.from_min, wait.until_min, meanwhile)
}

fn meanwhile(can: &CanDo) -> Message {
    let costs = match can.extra_min {
        Some(0) => cli_plan_no_time(),
        Some(extra) => cli_plan_longer(extra),
        None => cli_plan_no_way(),
    };
    let costs = if can.exact { costs } else { cli_plan_as_far(costs) };
    cli_plan_can(&can.step, can.minutes, costs)
}
