//! The plan against others' answers. Small jobs by every way of doing them, minute by minute (`brute`); larger ones by
//! OR-Tools' CP-SAT, which nobody here wrote (`tests/python/plan.py`). Both read the plain terms of the job and know
//! nothing of how the plan is searched.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on says where")]

mod brute;
mod instance;
mod larger;
mod shop;

use panside_procedure::plan::{self, Budget, Doing, NoPlan, Plan, What, go_on};
use panside_procedure::{Procedure, machine::StepIx};

use instance::{Instance, Lift, Wait};

/// Small jobs that are compared. `cargo xtask soak` compares others, as long as one likes.
const SMALL: u64 = 300;
/// More than a tablet is asked for, so that more of them are searched to the end.
const BUDGET: Budget = Budget { moments: 2_000_000, bytes: 4 << 30 };

/// The seed of the first small job: 0, or taken from `PANSIDE_SEED`.
#[allow(clippy::disallowed_methods, reason = "the edge: a test's own options")]
fn first_seed() -> u64 {
    std::env::var("PANSIDE_SEED").ok().and_then(|text| text.parse().ok()).unwrap_or(0)
}

/// What must be so of every plan, whatever its minutes: nobody is in two places, every step is worked, and none begins
/// before those it comes after are done.
fn makes_sense(job: &Instance, procedure: &Procedure, plan: &Plan) {
    let mut busy: Vec<&Doing> = plan.doings.iter().collect();
    busy.sort_by_key(|doing| (doing.person, doing.from, doing.until));
    for pair in busy.windows(2) {
        assert!(pair[0].person != pair[1].person || pair[0].until <= pair[1].from, "{pair:?}");
    }
    assert!(plan.doings.iter().all(|doing| doing.person < job.people));
    assert_eq!(plan.doings.iter().map(|doing| doing.until).max().unwrap_or(0), plan.total);
    let first_done = |step: usize| {
        let of = plan.doings.iter().filter(|doing| doing.what == What::Work(StepIx::of(step)));
        of.map(|doing| doing.until).min().unwrap_or_else(|| panic!("step {step} is not worked"))
    };
    let first_begun = |step: usize| {
        let step = StepIx::of(step);
        let of = |doing: &&Doing| [What::Work(step), What::Start(step)].contains(&doing.what);
        plan.doings.iter().filter(of).map(|doing| doing.from).min().unwrap()
    };
    // Steps stand in the file by phases.
    let place = |at: usize| procedure.names.step(&format!("step_{at}")).unwrap().at();
    for (at, step) in job.steps.iter().enumerate() {
        let begun = first_begun(place(at));
        assert!(first_done(place(at)) >= begun + step.minutes);
        for &before in &step.after {
            assert!(first_done(place(before)) <= begun, "step {at} after {before}");
        }
        if let Wait::Cures { after, minutes } = step.wait {
            assert!(first_done(place(after)) + minutes <= begun, "step {at} waits for {after}");
        }
    }
}

#[test]
fn on_small_jobs_the_plan_takes_as_long_as_the_best_of_all_ways() {
    let (mut possible, mut impossible, mut quick_is_best) = (0, 0, 0);
    let mut with = [0; 7];
    let first = first_seed();
    for seed in first..first + SMALL {
        let job = Instance::small(seed);
        let procedure = job.procedure();
        let task = job.task(&procedure);
        let planned = plan::best(&task, BUDGET, &mut go_on);
        let fewest = brute::fewest_minutes(&job);
        let Some(fewest) = fewest else {
            assert_eq!(planned, Err(NoPlan::NoWay), "seed {seed}");
            impossible += 1;
            continue;
        };
        let planned = planned.unwrap_or_else(|error| panic!("seed {seed}: {error}"));
        assert!(planned.is_exact(), "seed {seed}");
        assert_eq!(planned.total, fewest, "seed {seed}: {job:?}");
        makes_sense(&job, &procedure, &planned);
        let quick = plan::quick(&task).unwrap_or_else(|error| panic!("seed {seed}: {error}"));
        makes_sense(&job, &procedure, &quick);
        assert!(quick.bound <= fewest && fewest <= quick.total, "seed {seed}: {quick:?}");
        possible += 1;
        quick_is_best += usize::from(quick.total == fewest);
        let any = |of: fn(&instance::Step) -> bool| job.steps.iter().any(of);
        let has = [
            job.people == 2,
            any(|step| step.lift != Lift::Any),
            any(|step| matches!(step.wait, Wait::Cures { .. } | Wait::Cools { .. })),
            any(|step| matches!(step.wait, Wait::Drains { .. })),
            any(|step| matches!(step.wait, Wait::Watched { .. })),
            any(|step| step.knows),
            job.walk > 0 && job.steps.iter().any(|step| step.zone != job.steps[0].zone),
        ];
        with.iter_mut().zip(has).for_each(|(count, has)| *count += usize::from(has));
    }
    println!(
        "{possible} jobs compared, {impossible} that no way leads through; the quick plan is best in {quick_is_best}; \
         with two people, lift, waits before, waits within, watches, knowledge that ages, zones: {with:?}"
    );
    assert!(
        possible >= 210 && with.iter().all(|&count| count >= 20),
        "too little was compared to say anything"
    );
}
