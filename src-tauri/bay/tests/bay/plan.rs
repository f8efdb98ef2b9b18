//! Planning an open job for the people of its checklist and for a second person beside them.

use panside_bay::enter::JobId;
use panside_bay::plan::{NoPlan, PlanPage};
use panside_procedure::Procedure;
use panside_procedure::plan::{self, Task, go_on};

use crate::support::{CHECKLIST, SHEET, Shop, begin, made};

fn best(shop: &mut Shop, job: JobId, people: u8) -> PlanPage {
    shop.bay.to_plan(job).unwrap().for_people(people).unwrap().best(&mut go_on).unwrap()
}

fn steps(page: &PlanPage) -> Vec<&str> {
    page.doings.iter().filter_map(|doing| doing.id.as_deref()).collect()
}

#[test]
fn a_second_person_is_planned_for_as_on_the_checklist_alone_and_it_is_said_to_be_a_plan_only() {
    let mut shop = Shop::new();
    let job = shop.start();
    let (alone, both) = (best(&mut shop, job, 1), best(&mut shop, job, 2));

    let procedure = Procedure::load(CHECKLIST).unwrap().with_crew(2).unwrap();
    let task = Task { people: 2, ..Task::new(&procedure, procedure.machine.start(&[]).unwrap()) };
    assert_eq!(both.total_min, plan::best(&task, plan::BUDGET, &mut go_on).unwrap().total);
    assert!(alone.exact && both.exact && both.total_min < alone.total_min);
    assert_eq!((alone.plan_only, both.plan_only), (false, true));
    let people = |page: &PlanPage| page.doings.iter().map(|doing| doing.person).max();
    assert_eq!((people(&alone), people(&both)), (Some(1), Some(2)));
}

#[test]
fn the_plan_of_a_checklist_s_own_people_is_the_same_by_name_and_without() {
    let mut shop = Shop::new();
    let job = shop.start();
    let own = shop.bay.to_plan(job).unwrap().best(&mut go_on).unwrap();
    assert_eq!(own, best(&mut shop, job, 1));
}

#[test]
fn two_people_go_on_from_where_the_job_stands() {
    let mut shop = Shop::new();
    let job = shop.start();
    let whole = best(&mut shop, job, 2);
    shop.enter(job, &made("key_out"));
    shop.enter(job, &begin("photo"));
    let both = best(&mut shop, job, 2);
    assert!(steps(&whole).contains(&"key_out") && !steps(&both).contains(&"key_out"), "{:?}", steps(&both));
    let photo = both.doings.iter().find(|doing| doing.id.as_deref() == Some("photo")).unwrap();
    assert_eq!(photo.from_min, 0, "somebody is in it");
    let other = both.doings.iter().find(|doing| doing.person != photo.person).unwrap();
    assert_eq!(other.from_min, 0, "the second person begins at once: {other:?}");
    assert_eq!(both.seq, 3);
}

#[test]
fn a_plan_for_two_lets_no_second_person_into_a_step_of_the_job() {
    let mut shop = Shop::new();
    let job = shop.start();
    shop.enter(job, &begin("identify"));
    assert!(best(&mut shop, job, 2).plan_only);
    shop.refused(job, &begin("photo"));
    assert_eq!(shop.bay.page(job).unwrap().view.crew, 1);
}

#[test]
fn a_good_order_for_two_is_told_with_a_bound_that_the_best_keeps() {
    let mut shop = Shop::new();
    let job = shop.start();
    let quick = shop.bay.to_plan(job).unwrap().for_people(2).unwrap().quick().unwrap();
    let best = best(&mut shop, job, 2);
    assert!(quick.bound_min <= best.total_min && best.total_min <= quick.total_min);
}

#[test]
fn what_can_be_done_meanwhile_is_told_to_whom_the_rules_let_into_steps() {
    let cools = String::from_utf8_lossy(CHECKLIST).replace(
        r#""id": "probe", "#,
        r#""id": "probe", "wait": { "for": "the exhaust to cool", "minutes": 40, "since": "engine = off" }, "#,
    );
    let mut shop = Shop::new();
    let job = shop.try_start(cools.as_bytes(), SHEET).unwrap();
    let (alone, both) = (best(&mut shop, job, 1), best(&mut shop, job, 2));
    assert_eq!(alone.meanwhile.running[0].step, "probe");
    assert!(!alone.meanwhile.can.is_empty());
    assert!(both.meanwhile.running.is_empty() && both.meanwhile.can.is_empty());
    assert!(!both.waits.is_empty(), "the plan for two waits for it all the same");
}

#[test]
fn three_people_and_nobody_are_not_planned_for() {
    let mut shop = Shop::new();
    let job = shop.start();
    let three = shop.bay.to_plan(job).unwrap().for_people(3).unwrap_err();
    assert!(three.to_string().contains("1 or 2 people"), "{three}");
    let nobody = shop.bay.to_plan(job).unwrap().for_people(0).unwrap();
    assert_eq!(nobody.quick(), Err(NoPlan::People));
}
