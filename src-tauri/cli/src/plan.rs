//! `plan`.

use std::fmt::Write as _;

use panside_bay::plan::{MeanwhilePage, PlanDoes, PlanPage, ToPlan, page};
use panside_procedure::plan::{self, NoPlan, Task};

use crate::args::PlanArgs;
use crate::checklist;
use crate::exit::{Exit, Failure};
use crate::out::{self, say, spoken};
use crate::record::{open, said};

/// Plans and prints the order.
pub fn plan(args: &PlanArgs) -> Result<Exit, Failure> {
    let (found, file_order) = match (&args.file, &args.store, args.job) {
        (Some(file), ..) => from_file(file, args)?,
        (None, Some(store), Some(job)) => {
            let mut bay = open(store)?;
            let planned = bay.to_plan(job);
            said(&bay, args.even_so)?;
            let job = planned?;
            (from_job(job, args).map_err(|why| no_plan(&why))?, None)
        }
        _ => {
            return Err(Failure::new(Exit::Usage, "Say which checklist, or a store and its job.".to_owned()));
        }
    };
    if args.json {
        out::json(&found)?;
    } else {
        say!("{}", text(&found, file_order));
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
fn from_file(file: &std::path::Path, args: &PlanArgs) -> Result<(PlanPage, Option<u32>), Failure> {
    let (_, procedure) = checklist::load(file)?;
    let (crew, people) = (procedure.checklist.crew, args.people.unwrap_or(1));
    let procedure =
        procedure.with_crew(people).map_err(|problems| Failure::does_not_load(file, &problems))?;
    let starts = procedure.machine.start(&[]).or_else(|| procedure.machine.all_starts().first().copied());
    let Some(start) = starts else {
        return Err(Failure::new(Exit::Refused, "No vehicle may come in like that.".to_owned()));
    };
    let task = Task { people: usize::from(people), ..Task::new(&procedure, start) };
    let (found, in_file_order) = if args.quick {
        (plan::quick(&task), None)
    } else {
        let found = plan::best(&task, plan::BUDGET, &mut plan::go_on);
        (found, plan::in_file_order(&task, plan::BUDGET, &mut plan::go_on).ok())
    };
    let found = found.map_err(|why| no_plan(&why))?;
    let page = PlanPage { plan_only: people > crew, ..page(&procedure, &found) };
    Ok((page, in_file_order.map(|plan| plan.total)))
}

fn no_plan(why: &NoPlan) -> Failure {
    let exit = if *why == NoPlan::People { Exit::Usage } else { Exit::Refused };
    Failure::new(exit, spoken(&why.message()))
}

fn text(plan: &PlanPage, file_order: Option<u32>) -> String {
    let several = plan.doings.iter().any(|doing| doing.person > 1);
    let mut text = String::new();
    // Writing into a String can't fail.
    for doing in &plan.doings {
        let who = if several { format!("person {}  ", doing.person) } else { String::new() };
        let does = match doing.does {
            PlanDoes::Work => "",
            PlanDoes::Start => "start, then leave it: ",
            PlanDoes::Leave => "leave: ",
            PlanDoes::VehicleAction => "-> ",
            PlanDoes::Walk => "   go to ",
            PlanDoes::Sign => "sign again: ",
            PlanDoes::Correct => "corrected afterwards: ",
        };
        let _ =
            writeln!(text, "{:>4} to {:>4} min  {who}{does}{}", doing.from_min, doing.until_min, doing.title);
    }
    for wait in &plan.waits {
        let (from, until, what, idle) = (wait.from_min, wait.until_min, &wait.what, wait.idle_min);
        let meanwhile = match (wait.attended, idle) {
            (true, _) => "somebody stays and watches".to_owned(),
            (false, 0) => "other work meanwhile all the time".to_owned(),
            (false, _) => format!("other work meanwhile but for {idle} min"),
        };
        let _ = writeln!(text, "waiting for {what}, {from} to {until} min: {meanwhile}");
    }
    told_meanwhile(&plan.meanwhile, &mut text);
    if plan.plan_only {
        let _ = writeln!(text, "\nPlan only: this checklist has one person in a step at a time.");
    }
    let _ = write!(text, "\n{} min in all. ", plan.total_min);
    let _ = match plan.exact {
        true => writeln!(text, "No order takes less."),
        false => writeln!(
            text,
            "No order takes less than {} min: this one may be up to {} min longer than the best.",
            plan.bound_min,
            plan.total_min.saturating_sub(plan.bound_min)
        ),
    };
    if let Some(minutes) = file_order {
        let _ = writeln!(text, "The order of the file takes {minutes} min.");
    }
    text.trim_end().to_owned()
}

fn told_meanwhile(meanwhile: &MeanwhilePage, text: &mut String) {
    for running in &meanwhile.running {
        let _ = writeln!(text, "now waiting for {}: {} min left", running.what, running.left_min);
    }
    for can in &meanwhile.can {
        let costs = match can.extra_min {
            Some(0) => "costs no time".to_owned(),
            Some(extra) => format!("makes the job {extra} min longer"),
            None => "no way to the end was found after it".to_owned(),
        };
        let sure = if can.exact { "" } else { ", as far as was searched" };
        let _ = writeln!(text, "  meanwhile: {} ({} min), {costs}{sure}", can.step, can.minutes);
    }
}
