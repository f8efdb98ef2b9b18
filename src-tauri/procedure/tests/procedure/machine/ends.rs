//! Finishing, stopping, and a job that is ending by stop and call.

use panside_procedure::{Blocked, Shown};
use serde_json::json;

use crate::bay::{pan_job, up_to};
use crate::support::Job;

fn refused() -> Job {
    let begun = pan_job().set("", "crew", json!(2)).set("shake", "when_ending", json!(true)).job();
    begun.after("action start; do read_level stick=below; begin read_level; do decide answer=refuse")
}

#[test]
fn a_job_is_finished_when_it_is_done() {
    let job = pan_job().job().after(&up_to("finish"));
    assert!(job.procedure.machine.is_finished(&job.after("finish").state));
    assert_eq!(job.after("expire level").blocked("finish"), Blocked::Needs);
    assert_eq!(pan_job().job().blocked("finish"), Blocked::Needs);
}

#[test]
fn a_job_is_stopped_where_it_is_safe_to_leave() {
    let job = pan_job().job();
    assert!(job.procedure.machine.is_stopped(&job.after("stop").state));
    assert_eq!(job.after("action start").blocked("stop"), Blocked::Needs);
    assert_eq!(job.after("action raise").blocked("stop"), Blocked::Needs);
    assert!(job.after("action raise; action set_locks").try_one("stop").is_ok());
}

#[test]
fn a_job_does_not_end_with_somebody_in_a_step() {
    let draft = pan_job().set("read_again", "needs", json!("lift = floor"));
    let job = draft.job().after(&up_to("finish")).after("begin read_again");
    assert_eq!(job.blocked("finish"), Blocked::Stands(job.step("read_again")));
    assert_eq!(job.blocked("stop"), Blocked::Stands(job.step("read_again")));
}

#[test]
fn after_the_end_nothing_happens() {
    for end in [up_to("finish") + "; finish", "stop".to_owned()] {
        let job = pan_job().job().after(&end);
        for action in job.procedure.all_actions() {
            let answer = job.procedure.machine.step(&job.state, action);
            assert_eq!(answer, Err(Blocked::Over), "{:?}", job.procedure.say(action));
        }
    }
}

#[test]
fn a_job_that_is_ending_begins_only_what_makes_it_safe_to_leave() {
    let job = refused();
    assert!(job.procedure.machine.is_ending(&job.state));
    let up = job.after("leave read_level; action switch_off; action raise; action set_locks");
    assert!(up.after("begin shake").try_one("done shake").is_ok(), "marked when_ending");
    for said in ["begin dye", "begin drain", "begin read_level", "skip dye", "finish"] {
        assert_eq!(up.blocked(said), Blocked::Ending, "{said}");
    }
}

#[test]
fn a_job_that_is_ending_still_moves_leaves_signs_and_stops() {
    let job = refused();
    assert!(job.try_one("done read_level stick=below").is_ok(), "what is in progress can be done");
    let left = job.after("leave read_level; action switch_off; action raise; action set_locks; do shake");
    let signed = left.after("action lower; action raise; action set_locks; sign clear");
    assert!(signed.signed("clear"));
    assert!(signed.procedure.machine.is_stopped(&signed.after("stop").state));
}

#[test]
fn a_void_does_not_lift_the_end() {
    let voided = refused().after("leave read_level; void decide");
    assert_eq!(voided.shown("decide"), Shown::Voided);
    assert!(voided.procedure.machine.is_ending(&voided.state));
    let right = voided.after("correct decide answer=service");
    assert!(right.procedure.machine.is_ending(&right.state));
    assert_eq!(right.blocked("finish"), Blocked::Ending);
}

#[test]
fn an_answer_corrected_can_end_the_job_too() {
    let job = pan_job().job().after(&up_to("shake")).after("void decide; correct decide answer=refuse");
    assert!(job.procedure.machine.is_ending(&job.state));
}

#[test]
fn other_answers_do_not_end_the_job() {
    for answer in ["service", "leak"] {
        let job = pan_job().job().after(&up_to("decide")).after(&format!("do decide answer={answer}"));
        assert!(!job.procedure.machine.is_ending(&job.state), "{answer}");
    }
}
