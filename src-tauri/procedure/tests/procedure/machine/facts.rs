//! How a vehicle comes in, what is observed, and what grows too old.

use panside_procedure::{Action, Blocked, Shown};
use serde_json::{Value, json};

use crate::bay::{choice, one_phase, pan_job, sign_off, signature, step, up_to};
use crate::support::Draft;

#[test]
fn what_is_not_known_at_intake_takes_every_value_that_start_when_allows() {
    let draft = pan_job()
        .set("engine", "start", json!(["off", "running"]))
        .set("lift", "start", json!(["floor", "on_locks"]))
        .set("", "start_when", json!("lift = floor or engine = off"));
    let procedure = draft.procedure();
    let machine = &procedure.machine;
    let (lift, engine) = (procedure.names.var("lift").unwrap(), procedure.names.var("engine").unwrap());
    let starts: Vec<_> = machine
        .all_starts()
        .iter()
        .map(|state| (machine.value(state, lift), machine.value(state, engine)))
        .collect();
    assert_eq!(starts, [(0, 0), (0, 1), (2, 0)]);
    assert!(machine.start(&[(lift, 2), (engine, 0)]).is_some());
    assert!(machine.start(&[(lift, 2), (engine, 1)]).is_none(), "start_when refuses it");
    assert!(machine.start(&[(lift, 1)]).is_none(), "it never comes in raised");
    let usual = machine.start(&[]).unwrap();
    assert_eq!((machine.value(&usual, lift), machine.value(&usual, engine)), (0, 0));
}

#[test]
fn a_job_starts_with_nothing_known_worked_or_signed() {
    let job = pan_job().job();
    assert_eq!(
        (job.is("lift"), job.is("level"), job.is("verdict"), job.off("bolts")),
        ("floor", "unknown", "unknown", 0)
    );
    assert!(!job.signed("clear"));
    assert!(job.procedure.steps().all(|(step, _)| !job.procedure.machine.is_worked(&job.state, step)));
}

#[test]
fn a_fact_of_the_sheet_takes_every_value_and_never_changes() {
    let draft = pan_job()
        .add("", "facts", json!({"id": "dipstick", "values": ["yes", "no"], "sheet": "has_dipstick"}))
        .set("dye", "on", json!("dipstick = no"));
    let procedure = draft.procedure();
    let starts = procedure.machine.all_starts();
    let (fact, dye) = (procedure.names.var("dipstick").unwrap(), procedure.names.step("dye").unwrap());
    let shown: Vec<_> = starts.iter().map(|start| procedure.machine.shown(start, dye)).collect();
    assert_eq!(shown, [Shown::NotInThisJob, Shown::Waiting]);
    assert_eq!(procedure.machine.step(&starts[0], Action::Observe(fact, 1)), Err(Blocked::NotNow));
    assert!(!procedure.all_actions().contains(&Action::Observe(fact, 1)));
}

#[test]
fn a_fact_is_accepted_whatever_goes_on() {
    let stations =
        ["read_level", "decide", "shake", "drain", "pan_off", "pan_on", "fill", "read_again", "finish"];
    for said in stations.map(up_to) {
        let job = pan_job().job().after(&said);
        for action in job.procedure.all_actions() {
            let Action::Observe(var, value) = action else { continue };
            let same = job.procedure.machine.value(&job.state, var) == value;
            let answer = job.procedure.machine.step(&job.state, action).map(|_| ());
            assert_eq!(answer, if same { Err(Blocked::Same) } else { Ok(()) }, "{said}: {action:?}");
        }
    }
    let under = pan_job().job().after(&up_to("drain")).after("begin drain");
    assert_eq!(under.after("observe lift=floor").is("lift"), "floor", "even with somebody under it");
}

fn bolted(hands: Value) -> Draft {
    let taken = json!({"takes_off": {"bolts": 3}, "makes": {"pan": "off"}, "entries": [signature("seen")]});
    let put_back = json!({"puts_back": {"bolts": 2}, "makes": {"pan": "on"}});
    one_phase(json!([
        step("down", "under", taken),
        step("up", "under", put_back),
        step("did", "under", hands)
    ]))
    .add("", "items", json!({"id": "bolts", "name": "bolts", "count": 4, "reuse": "yes"}))
    .add("", "sign_offs", sign_off("seen", "attest", "true"))
}

#[test]
fn a_step_that_made_it_otherwise_is_untouched_and_its_pieces_are_counted_anew() {
    let job = bolted(json!({})).job().after("do down");
    let on = job.after("observe pan=on");
    assert_eq!((on.shown("down"), on.off("bolts")), (Shown::Open, 0));
    assert!(!on.signed("seen"));
    assert_eq!(on.after("do down").off("bolts"), 3, "doing it again moves the pieces");
    let back = job.after("do up");
    assert_eq!(back.off("bolts"), 1);
    let off = back.after("observe pan=off");
    assert_eq!((off.shown("down"), off.shown("up"), off.off("bolts")), (Shown::Done, Shown::Open, 3));
}

#[test]
fn pieces_counted_anew_stay_between_none_and_all() {
    let job = bolted(json!({})).job();
    assert_eq!(job.after("do down; do up; observe pan=off; observe pan=on").off("bolts"), 0);
    assert_eq!(job.after("do up; observe pan=off; do down").off("bolts"), 4);
}

#[test]
fn a_step_that_may_have_made_it_so_is_left_alone() {
    let mut did = choice(
        "which",
        &["opened", "closed"],
        json!({
        "opened": {"makes": {"drain_plug": "out"}}, "closed": {"makes": {"drain_plug": "in"}}}),
    );
    did["ask"]["choice"]["hands_did"] = json!(true);
    let job = bolted(json!({"entries": [did]})).job().after("do did which=opened");
    assert_eq!(job.after("observe drain_plug=in").shown("did"), Shown::Done);
}

#[test]
fn an_observation_of_what_vehicle_actions_write_leaves_the_steps() {
    let job = pan_job().job().after(&up_to("pan_on"));
    let lowered = job.after("observe lift=floor");
    for step in ["read_level", "decide", "shake", "drain", "pan_off"] {
        assert_eq!(lowered.shown(step), Shown::Done, "{step}");
    }
    assert!(!lowered.signed("clear"), "but it lapses what it must");
}

#[test]
fn an_observation_lets_physics_follow() {
    let follow = json!({"when": "pan = off", "makes": {"fluid": "drained"}});
    let job = pan_job().add("", "follows", follow).job().after(&up_to("drain")).after("observe pan=off");
    assert_eq!((job.is("fluid"), job.is("level")), ("drained", "unknown"));
}

#[test]
fn only_what_ages_and_is_known_grows_too_old() {
    let job = pan_job().job().after("action start");
    assert_eq!(job.blocked("expire level"), Blocked::NotNow, "it is not known");
    let read = job.after("do read_level stick=in; do decide answer=leak");
    assert_eq!(read.after("expire level").is("level"), "unknown");
    assert_eq!(read.after("expire level").shown("read_level"), Shown::Done, "the reading was made");
    assert_eq!(read.blocked("expire verdict"), Blocked::NotNow, "a decision does not age");
    assert_eq!(read.blocked("expire lift"), Blocked::NotNow, "matter does not age");
}
