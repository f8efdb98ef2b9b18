//! Phases, what comes after what, and steps that are only in some jobs.

use panside_procedure::{Blocked, Shown};
use serde_json::{Value, json};

use crate::bay::{choice, one_phase, step};
use crate::support::Draft;

fn bench(id: &str, more: Value) -> Value {
    step(id, "bench", more)
}

fn phase(id: &str, steps: Value) -> Value {
    json!({"id": id, "title": id, "steps": steps})
}

/// Two steps, then one, then one.
fn three_phases() -> Draft {
    let first = json!([bench("a", json!({"may_skip": true})), bench("b", json!({"makes": {"pan": "off"}}))]);
    one_phase(json!([])).set("crush", "when", json!("lift = floor and drain_plug = out")).set(
        "",
        "phases",
        json!([
            phase("one", first),
            phase("two", json!([bench("c", json!({}))])),
            phase("three", json!([bench("d", json!({}))]))
        ]),
    )
}

/// A question, then two steps of which `weld` is only in the job where it is found bad, then one more.
fn with_a_choice() -> Draft {
    let asked = choice(
        "asked",
        &["good", "bad"],
        json!({"good": {"sets": {"found": "good"}}, "bad": {"sets": {"found": "bad"}}}),
    );
    let look = bench("look", json!({"again": "true", "entries": [asked]}));
    let weld = bench("weld", json!({"on": "found = bad"}));
    let phases = [
        phase("one", json!([look, weld])),
        phase("two", json!([bench("close", json!({"after": ["weld"]}))])),
    ];
    one_phase(json!([])).set("", "phases", json!(phases))
}

#[test]
fn a_phase_opens_when_the_earlier_ones_are_dealt_with() {
    let job = three_phases().job();
    let begun = job.after("do a");
    assert_eq!(begun.blocked("begin c"), Blocked::Phase(begun.step("b")));
    assert_eq!(
        begun.after("begin b").blocked("begin c"),
        Blocked::Phase(begun.step("b")),
        "begun is not dealt with"
    );
    assert!(begun.after("do b").try_one("begin c").is_ok());
    assert!(job.after("skip a; do b").try_one("begin c").is_ok(), "skipped");
    assert!(job.after("do a; do b; void a").try_one("begin c").is_ok(), "voided");
    assert_eq!(job.after("do a; do b").blocked("begin d"), Blocked::Phase(job.step("c")));
}

#[test]
fn a_phase_once_passed_stays_passed() {
    let draft = three_phases().add("two", "steps", bench("c_too", json!({}))).set("", "crew", json!(2));
    let job = draft.job().after("do a; do b");
    for entered in ["do c", "begin c", "do c; void c"] {
        let later = job.after(entered).after("observe pan=on");
        assert_eq!(
            later.shown("b"),
            Shown::Open,
            "the observation took its work back, and it can be done again"
        );
        assert!(later.try_one("begin c_too").is_ok(), "the second phase stays open after {entered}");
        assert_eq!(later.blocked("begin d"), Blocked::Phase(later.step("b")), "the third was not entered");
    }
    let taken_back = job.after("observe pan=on");
    assert_eq!(taken_back.blocked("begin c"), Blocked::Phase(job.step("b")), "the second was not entered");
}

#[test]
fn a_later_phase_that_was_entered_keeps_all_before_it_open() {
    let draft = three_phases().set("c", "again", json!("true")).set("d", "again", json!("true"));
    let job = draft.job().after("do a; do b; do c; do d; observe pan=on");
    for step in ["b", "c", "d"] {
        assert!(job.try_one(&format!("begin {step}")).is_ok(), "{step}");
    }
}

#[test]
fn a_phase_beside_another_does_not_wait_for_it() {
    let job = three_phases().set("two", "beside", json!(["one"])).job();
    assert!(job.try_one("begin c").is_ok());
    assert_eq!(
        job.after("do c").blocked("begin d"),
        Blocked::Phase(job.step("a")),
        "the third waits for both"
    );
    assert!(job.after("do c").try_one("begin a").is_ok(), "the first has not passed");
}

#[test]
fn after_means_worked_or_skipped_judged_at_the_beginning() {
    let steps = json!([bench("a", json!({"may_skip": true})), bench("b", json!({"after": ["a"]}))]);
    let job = one_phase(steps).job();
    assert_eq!(job.blocked("begin b"), Blocked::After(job.step("a")));
    assert_eq!(job.after("begin a; leave a").blocked("begin b"), Blocked::After(job.step("a")));
    assert!(job.after("do a").try_one("begin b").is_ok());
    assert!(job.after("skip a").try_one("begin b").is_ok());
    assert_eq!(job.after("do a; void a").blocked("begin b"), Blocked::After(job.step("a")));
    let begun = job.after("do a; begin b; void a");
    assert!(begun.try_one("done b").is_ok(), "a later void does not stop what has begun");
}

#[test]
fn a_later_lapse_does_not_undo_what_came_after() {
    let opened = json!([
        bench("open", json!({"makes": {"drain_plug": "out"}})),
        bench("look", json!({"after": ["open"]}))
    ]);
    let job = one_phase(opened).job().after("do open; do look; observe drain_plug=in");
    assert_eq!((job.shown("open"), job.shown("look")), (Shown::Open, Shown::Done));
}

#[test]
fn a_conditional_step_is_undecided_until_it_is_known_whether_it_is_in_the_job() {
    let job = with_a_choice().job();
    assert_eq!(job.shown("weld"), Shown::Undecided);
    assert_eq!(job.blocked("begin weld"), Blocked::NotInJob);
    let bad = job.after("do look asked=bad");
    assert_eq!(bad.shown("weld"), Shown::Open);
    assert_eq!(bad.blocked("begin close"), Blocked::Phase(bad.step("weld")));
    assert!(bad.after("do weld").try_one("begin close").is_ok());
}

#[test]
fn a_step_that_is_not_in_the_job_holds_nothing_up() {
    let good = with_a_choice().job().after("do look asked=good");
    assert_eq!(good.shown("weld"), Shown::NotInThisJob);
    assert_eq!(good.blocked("begin weld"), Blocked::NotInJob);
    assert!(good.try_one("begin close").is_ok(), "neither its phase nor after waits for it");
}

#[test]
fn a_step_once_begun_stays_in_the_job() {
    let begun = with_a_choice()
        .set("", "crew", json!(2))
        .job()
        .after("do look asked=bad; begin weld; do look asked=good");
    assert_eq!(begun.shown("weld"), Shown::InProgress);
    assert!(begun.try_one("done weld").is_ok());
    assert_eq!(begun.after("done weld").shown("weld"), Shown::Done);
    assert_eq!(begun.after("leave weld").shown("weld"), Shown::NotInThisJob);
}

#[test]
fn a_step_that_comes_in_after_its_phase_has_passed_is_missed_and_holds_nothing_up() {
    let more = phase("three", json!([bench("sweep", json!({"after": ["weld"]}))]));
    let job = with_a_choice().add("", "phases", more).set("", "done_when", json!("worked(close)")).job();
    let missed = job.after("do look asked=good; do close; do look asked=bad");
    assert_eq!(missed.shown("weld"), Shown::Missed);
    assert!(missed.try_one("begin sweep").is_ok(), "neither the next phase nor after waits for it");
    assert!(missed.try_one("finish").is_ok());
    assert!(missed.try_one("begin weld").is_ok(), "it can still be done");
    let entered = job.after("do look asked=good; begin close");
    assert_eq!(entered.shown("weld"), Shown::NotInThisJob);
}

#[test]
fn a_missed_step_can_be_missed_while_the_next_phase_is_in_progress() {
    let job = with_a_choice().set("", "crew", json!(2)).job();
    let job = job.after("do look asked=good; begin close; do look asked=bad");
    assert_eq!(job.shown("weld"), Shown::Missed);
    assert_eq!(job.after("leave close").shown("weld"), Shown::Open, "nothing of the next phase was worked");
}

#[test]
fn only_what_the_checklist_allows_is_skipped_and_only_untouched() {
    let job = three_phases().job();
    assert_eq!(job.blocked("skip b"), Blocked::MayNotSkip);
    assert_eq!(job.after("do a").blocked("skip a"), Blocked::NotNow);
    assert_eq!(job.after("begin a").blocked("skip a"), Blocked::NotNow);
    let skipped = job.after("skip a");
    assert_eq!(skipped.shown("a"), Shown::Skipped);
    for said in ["skip a", "begin a", "void a", "correct a"] {
        assert_eq!(skipped.blocked(said), Blocked::NotNow, "{said}");
    }
    let later = three_phases().set("c", "may_skip", json!(true)).job();
    assert_eq!(later.blocked("skip c"), Blocked::Phase(later.step("a")));
    let weld = with_a_choice().set("weld", "may_skip", json!(true)).job();
    assert_eq!(weld.blocked("skip weld"), Blocked::NotInJob);
}

#[test]
fn a_skipped_step_applies_nothing_and_is_not_worked() {
    let steps = json!([bench(
        "a",
        json!({"may_skip": true, "makes": {"drain_plug": "out"}, "sets": {"found": "good"}})
    )]);
    let draft = one_phase(steps).set("", "done_when", json!("worked(a)"));
    let job = draft.job().after("skip a");
    assert_eq!((job.is("drain_plug"), job.is("found")), ("in", "unknown"));
    assert_eq!(job.blocked("finish"), Blocked::Needs);
}
