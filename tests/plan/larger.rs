//! Larger jobs against the optimum of OR-Tools' CP-SAT.

use panside_procedure::plan::{self, go_on};
use panside_tests::python;
use serde::{Deserialize, Serialize};

use super::instance::Instance;
use super::{BUDGET, makes_sense};

/// Larger jobs that are compared.
const LARGE: u64 = 16;
/// Seconds that CP-SAT may take for one of them.
const SECONDS: f64 = 20.0;

#[derive(Serialize)]
struct Question {
    jobs: Vec<Instance>,
    seconds: f64,
}

#[derive(Deserialize)]
struct Answer {
    proved: bool,
    infeasible: bool,
    minutes: Option<u32>,
}

#[test]
fn on_larger_jobs_the_plan_takes_as_long_as_the_optimum_of_cp_sat() {
    let jobs: Vec<Instance> = (0..LARGE).map(Instance::large).collect();
    let question = Question { jobs: jobs.clone(), seconds: SECONDS };
    let answers: Vec<Answer> = python::ask("plan.py", &question).unwrap();
    let (mut equal, mut within) = (0, 0);
    for (seed, (job, answer)) in jobs.iter().zip(&answers).enumerate() {
        let procedure = job.procedure();
        let task = job.task(&procedure);
        let planned = plan::best(&task, BUDGET, &mut go_on);
        assert!(!answer.infeasible, "seed {seed}: every such job can be done");
        let planned = planned.unwrap_or_else(|error| panic!("seed {seed}: {error}"));
        makes_sense(job, &procedure, &planned);
        let minutes = answer.minutes.unwrap();
        println!(
            "seed {seed}: {} steps, {} people: plan {} ({}), CP-SAT {minutes}{}, {} moments",
            job.steps.len(),
            job.people,
            planned.total,
            if planned.is_exact() { "exact".to_owned() } else { format!("bound {}", planned.bound) },
            if answer.proved { "" } else { " not proved" },
            planned.looked_at,
        );
        match (planned.is_exact(), answer.proved) {
            (true, true) => {
                assert_eq!(planned.total, minutes, "seed {seed}: {job:?}");
                equal += 1;
            }
            // What one of them could not prove must still not be better than what the other proved.
            (true, false) => assert!(planned.total <= minutes, "seed {seed}"),
            (false, true) => {
                assert!(planned.bound <= minutes && minutes <= planned.total, "seed {seed}");
                within += 1;
            }
            (false, false) => assert!(planned.bound <= minutes, "seed {seed}"),
        }
    }
    println!(
        "{equal} of {LARGE} equal; {within} within the plan's own bound, those with two people among them"
    );
    assert!(equal >= 5 && within >= 3, "too little was compared to say anything");
}
