//! What a technician would expect of a plan, on the shipped checklists.

use panside_procedure::Procedure;
use panside_procedure::plan::{self, Plan, Task, What, go_on};

fn shipped(name: &str) -> Procedure {
    let procedure = Procedure::load(panside_tests::checklist(name).as_bytes()).unwrap();
    procedure.fitted(&panside_tests::sheet("demo-six-speed")).unwrap()
}

/// Minutes that the shipped checklists take two people, and how far they may be from the best, as the module docs of the plan say.
const FOR_TWO: [(&str, u32); 5] = [
    ("level-check", 60),
    ("pan-and-filter", 403),
    ("pan-and-solenoid", 476),
    ("return-visit", 156),
    ("solenoid-pack", 498),
];
const GAP: u32 = 8;

fn task(procedure: &Procedure) -> Task<'_> {
    Task::new(procedure, procedure.machine.start(&[]).unwrap())
}

/// The minutes in which a step is worked.
fn worked(procedure: &Procedure, plan: &Plan, step: &str) -> (u32, u32) {
    let step = procedure.names.step(step).unwrap();
    let doing = plan.doings.iter().find(|doing| doing.what == What::Work(step)).unwrap();
    (doing.from, doing.until)
}

#[test]
fn other_work_is_done_while_the_exhaust_cools() {
    let procedure = shipped("pan-and-solenoid");
    let plan = plan::best(&task(&procedure), plan::BUDGET, &mut go_on).unwrap();
    let probe = procedure.names.step("probe_exhaust").unwrap();
    let wait = plan.waits.iter().find(|wait| wait.step == probe).unwrap();
    assert!(wait.until - wait.from >= 40, "{wait:?}");
    assert!(wait.idle < wait.until - wait.from, "something is done meanwhile: {wait:?}");
}

#[test]
fn a_fire_watch_keeps_the_only_person_at_it() {
    let procedure = shipped("pan-and-solenoid");
    let mut task = task(&procedure);
    let joint = procedure.names.step("try_joint").unwrap();
    let seized = procedure.usual_outcome(joint, &[("nuts".to_owned(), "seized".to_owned())].into());
    assert_ne!(task.outcomes[joint.at()], seized, "it is not what is usual");
    task.outcomes[joint.at()] = seized;
    let plan = plan::best(&task, plan::BUDGET, &mut go_on).unwrap();
    let (from, until) = worked(&procedure, &plan, "fire_watch");
    assert!(until - from >= 60, "{from} to {until}");
    let beside = plan.doings.iter().filter(|doing| doing.from < until && from < doing.until);
    assert_eq!(beside.count(), 1, "nothing but the watch");
}

#[test]
fn no_shipped_checklist_takes_longer_by_plan_than_by_its_file() {
    for name in ["level-check", "pan-and-filter", "pan-and-solenoid", "return-visit", "solenoid-pack"] {
        let procedure = shipped(name);
        let task = task(&procedure);
        let quick = plan::quick(&task).unwrap();
        let best = plan::best(&task, plan::BUDGET, &mut go_on).unwrap();
        let file = plan::in_file_order(&task, plan::BUDGET, &mut go_on).unwrap();
        assert!(best.is_exact(), "{name}");
        assert!(best.total <= file.total, "{name}: {} against {}", best.total, file.total);
        assert!(quick.bound <= best.total && best.total <= quick.total, "{name}");
    }
}

#[test]
fn two_people_take_no_longer_than_is_told_and_the_best_is_not_far() {
    for (name, minutes) in FOR_TWO {
        let procedure = shipped(name).with_crew(2).unwrap();
        let best = plan::best(&Task { people: 2, ..task(&procedure) }, plan::BUDGET, &mut go_on).unwrap();
        assert!(best.total <= minutes, "{name}: {} min", best.total);
        assert!(best.gap() <= GAP, "{name}: {} to {} min", best.bound, best.total);
    }
}
