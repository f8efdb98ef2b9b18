//! Why something is not allowed, in terms of what would meet it.

use panside_procedure::Blocked;
use panside_procedure::machine::Unmet;
use serde_json::json;

use crate::bay::{one_phase, pan_job, sign_off, signature, step, up_to};
use crate::support::Job;

fn why(job: &Job, said: &str) -> (Blocked, Vec<Unmet>) {
    let explained = job.procedure.machine.explain(&job.state, job.action(said));
    explained.unwrap_or_else(|| panic!("{said} is allowed"))
}

/// What is unmet, in words: `lift is floor, wants on_locks`.
fn unmet(job: &Job, said: &str) -> Vec<String> {
    let names = &job.procedure.names;
    let say = |unmet: &Unmet| match unmet {
        Unmet::Value { var, is, wants } => {
            let wants: Vec<&str> = wants.iter().map(|value| names.value(*var, *value)).collect();
            format!(
                "{} is {}, wants {}",
                job.procedure.var_name(*var),
                names.value(*var, *is),
                wants.join(" or ")
            )
        }
        Unmet::Worked(step, wanted) => format!("{} worked {wanted}", job.procedure.step(*step).id),
        Unmet::Signed(sign, wanted) => format!("{} signed {wanted}", job.procedure.sign_off(*sign).id),
        Unmet::Empty(item, off) => format!("{off} {} off", job.procedure.item(*item).id),
        Unmet::PieceOff => "a piece off".to_owned(),
        Unmet::Never => "never".to_owned(),
    };
    why(job, said).1.iter().map(say).collect()
}

#[test]
fn what_is_allowed_needs_no_explaining() {
    let job = pan_job().job();
    assert_eq!(job.procedure.machine.explain(&job.state, job.action("action start")), None);
}

#[test]
fn every_value_that_a_step_waits_for_is_named() {
    let job = pan_job().job().after(&up_to("shake")).after("action lower");
    let job = job.after("action start");
    assert_eq!(unmet(&job, "begin shake"), ["lift is floor, wants on_locks", "engine is running, wants off"]);
    let begun = pan_job().job().after(&up_to("drain")).after("begin drain; observe engine=running");
    assert_eq!(why(&begun, "done drain").0, Blocked::While);
    assert_eq!(unmet(&begun, "done drain"), ["engine is running, wants off"]);
}

#[test]
fn what_a_vehicle_action_the_end_and_a_stop_wait_for_is_named() {
    let job = pan_job().job().after(&up_to("pan_on"));
    assert_eq!(unmet(&job, "action lower"), ["pan is off, wants on"]);
    let job = job.after("do pan_on; action lower; do fill; action start");
    assert_eq!(unmet(&job, "stop"), ["engine is running, wants off"]);
    assert_eq!(
        unmet(&job, "finish"),
        ["level is unknown, wants in_band", "engine is running, wants off", "read_again worked true"]
    );
    let open = pan_job().job().after(&up_to("pan_on"));
    let said = unmet(&open, "finish");
    assert!(
        said.starts_with(&["4 bolts off".into(), "1 gasket off".into(), "torqued signed true".into()]),
        "{said:?}"
    );
}

#[test]
fn of_alternatives_the_one_that_lacks_least_is_named() {
    let job = pan_job()
        .set("raise", "needs", json!("(engine = running and lift = on_locks) or known(level)"))
        .job();
    assert_eq!(unmet(&job, "action raise"), ["level is unknown, wants low or in_band or high"]);
    let job = pan_job().set("raise", "needs", json!("false")).job();
    assert_eq!(unmet(&job, "action raise"), ["never"]);
}

#[test]
fn what_should_not_be_is_named_as_such() {
    let job = pan_job().set("raise", "needs", json!("not worked(read_level) and not signed(clear)")).job();
    let job = job.after("action start; do read_level stick=in; action switch_off");
    assert_eq!(unmet(&job, "action raise"), ["read_level worked false"]);
}

#[test]
fn a_permit_that_lapsed_is_explained_by_what_it_holds_on() {
    let draft = pan_job().set("drain", "needs", json!("true"));
    let job = draft.job().after(&up_to("drain")).after("action lower");
    assert_eq!(why(&job, "begin drain").0, Blocked::Permit(job.sign_ix("clear")));
    assert_eq!(unmet(&job, "begin drain"), ["lift is floor, wants on_locks"]);
    assert_eq!(unmet(&job, "sign clear"), ["lift is floor, wants on_locks"]);
}

#[test]
fn a_step_in_the_way_of_a_vehicle_action_is_explained_by_what_the_vehicle_action_would_make() {
    let job = pan_job().job().after(&up_to("drain")).after("begin drain");
    assert_eq!(why(&job, "action lower").0, Blocked::Stands(job.step("drain")));
    assert_eq!(unmet(&job, "action lower"), ["lift is floor, wants on_locks"]);
}

#[test]
fn a_signature_is_explained_by_the_outcome_of_the_step() {
    let closing = json!({"makes": {"drain_plug": "in"}, "entries": [signature("open")]});
    let draft = one_phase(json!([step("close", "under", closing)]));
    let job = draft.clone().add("", "sign_offs", sign_off("open", "attest", "drain_plug = out")).job();
    assert_eq!(
        unmet(&job.after("observe drain_plug=out; begin close"), "done close"),
        ["drain_plug is in, wants out"]
    );
    // Here it is the knowledge that lapses by what the step makes.
    let known = draft.add("", "sign_offs", sign_off("open", "attest", "known(found)"));
    let known = known.set("found", "holds_while", json!("drain_plug = out")).set(
        "close",
        "sets",
        json!({"found": "good"}),
    );
    let job = known.job().after("begin close");
    assert_eq!(unmet(&job, "done close"), ["found is unknown, wants good or bad"]);
}
