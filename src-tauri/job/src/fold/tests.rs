//! A job as it grows, and what it does with a record that today's rules disagree with.

use panside_procedure::Shown;
use panside_procedure::format::Role;

use super::*;
use crate::command::Command;
use crate::event::{Done, Lost, Voided};
use crate::job::EndedBy;
use crate::message::{differs_action, differs_no_step};
use crate::testing::{Bay, degrees, person, procedure, sign, specs, stamp, technician};

fn take(job: &mut Job, minute: i64, event: impl Into<Event>) {
    let seq = job.last_seq() + 1;
    job.take(Happened { seq, stamp: stamp(minute), who: person("Ada"), event: event.into() });
}

#[test]
fn a_job_folded_anew_is_the_job_that_grew() {
    let mut bay = Bay::open();
    bay.work_up_to("level");
    let folded = Job::fold(procedure(), specs(), bay.job.happened.clone());
    assert_eq!(folded.state, bay.job.state);
    assert_eq!(folded.steps, bay.job.steps);
    assert_eq!(folded.signs, bay.job.signs);
    assert_eq!(folded.gates, bay.job.gates);
    assert_eq!(folded.disagreements, []);
}

#[test]
fn a_step_knows_who_began_it_when_and_every_value_that_was_entered() {
    let mut bay = Bay::open();
    bay.work_up_to("locks");
    bay.begin("probe").unwrap();
    bay.enter("probe", "exhaust", degrees("63")).unwrap();
    bay.enter("probe", "exhaust", degrees("47")).unwrap();
    bay.actor = technician("Bo");
    bay.done("probe").unwrap();
    let detail = bay.job.step(bay.job.procedure.names.step("probe").unwrap());
    let attempt = detail.counts().unwrap();
    assert_eq!((attempt.begun.who, attempt.begun.name.as_str()), (person("Ada"), "Ada"));
    assert!(matches!(&attempt.ended, Some((EndedBy::Done, mark)) if mark.name == "Bo"));
    let classes: Vec<&str> = attempt.entries.iter().map(|entered| entered.class.as_str()).collect();
    assert_eq!(classes, ["outside", "inside"], "the hot reading stays on the record");
    assert_eq!(attempt.latest("exhaust").unwrap().value, degrees("47"));
}

#[test]
fn a_permit_says_which_event_made_it_lapse() {
    let mut bay = Bay::open();
    bay.work_up_to("coil");
    bay.vehicle_actions(&["lower"]);
    let lowered = bay.job.last_seq();
    let given = bay.job.sign(bay.job.procedure.names.sign("on_locks").unwrap());
    assert_eq!(given.len(), 1);
    assert_eq!(given[0].lapsed.as_ref().map(|mark| mark.seq), Some(lowered));
    let Event::VehicleAction(moved) = &bay.job.happened.last().unwrap().event else {
        panic!("lowering is a vehicle action")
    };
    assert_eq!(moved.lost.lapsed, ["on_locks"]);
}

#[test]
fn a_gate_ages_from_its_reading_and_not_from_done() {
    let mut bay = Bay::open();
    bay.work_up_to("locks");
    bay.begin("probe").unwrap();
    bay.enter("probe", "exhaust", degrees("41")).unwrap();
    let read = bay.now();
    bay.minute += 10;
    bay.done("probe").unwrap();
    let gate = bay.job.gate(bay.job.procedure.names.var("exhaust_probe").unwrap());
    assert_eq!(gate.set.as_ref().unwrap().from, read);
}

#[test]
fn a_done_step_that_todays_rules_would_refuse_stays_done() {
    let mut bay = Bay::open();
    bay.work_up_to("identify");
    let mut job = bay.job.clone();
    // Nobody began it and its permit was never signed, but the journal says it is done.
    take(
        &mut job,
        50,
        Done {
            step: "coil".into(),
            classes: [("ohms".to_owned(), "inside".to_owned())].into(),
            signs: Vec::new(),
            later: false,
            lost: Lost::default(),
        },
    );
    let coil = job.procedure.names.step("coil").unwrap();
    assert!(job.procedure.machine.is_worked(&job.state, coil));
    assert_eq!(job.disagreements.len(), 1);
    assert_eq!(job.disagreements[0].seq, job.last_seq());
    let title = &job.procedure.step(coil).title;
    assert_eq!(job.disagreements[0].what, differs_action("done", title));
}

#[test]
fn what_the_record_says_lapsed_lapses_and_what_it_does_not_say_stands() {
    let mut bay = Bay::open();
    bay.work_up_to("coil");
    let mut job = bay.job.clone();
    let permit = job.procedure.names.sign("on_locks").unwrap();
    let voided = |lapsed: Vec<String>| Voided {
        step: "locks".into(),
        reason: "signed for another vehicle".into(),
        also: Vec::new(),
        lost: Lost { lapsed, forgotten: vec!["exhaust_probe".into()] },
    };
    // By today's rules voiding it lapses its permit and forgets nothing; the record says the opposite.
    take(&mut job, 60, voided(Vec::new()));
    assert!(job.procedure.machine.is_valid(&job.state, permit), "not recorded, so it stands");
    let probe = job.procedure.names.var("exhaust_probe").unwrap();
    assert_eq!(job.procedure.machine.value(&job.state, probe), 0, "recorded as forgotten");
    assert_eq!(job.disagreements.len(), 1);
    assert_eq!(job.disagreements[0].what, differs_lost());
}

#[test]
fn an_event_about_a_step_that_does_not_exist_is_noted_and_the_job_goes_on() {
    let mut bay = Bay::open();
    let before = bay.job.state;
    bay.record(vec![crate::event::Begun { step: "boat".into(), lost: Lost::default() }.into()]);
    assert_eq!(bay.job.state, before);
    assert_eq!(bay.job.disagreements.len(), 1);
    assert_eq!(bay.job.disagreements[0].what, differs_no_step("boat"));
    bay.work_up_to("coil");
    assert_eq!(bay.job.disagreements.len(), 1);
}

#[test]
fn an_observation_takes_back_the_work_that_cannot_have_been_done() {
    let mut bay = Bay::open();
    bay.work_up_to("pan_down");
    assert_eq!(bay.job.tally.off("pan_bolts"), 16);
    bay.must(Command::Observe {
        condition: "pan".into(),
        value: "on".into(),
        reason: "wrong vehicle entered".into(),
    });
    let pan_down = bay.job.procedure.names.step("pan_down").unwrap();
    assert_eq!(bay.job.tally.off("pan_bolts"), 0);
    assert_eq!(bay.job.step(pan_down).undone.len(), 1);
    assert!(bay.job.step(pan_down).counts().is_none(), "its values no longer count");
    assert_ne!(bay.job.procedure.machine.shown(&bay.job.state, pan_down), Shown::Done);
}

#[test]
fn a_signature_in_a_correction_that_no_longer_holds_is_kept_as_lapsed() {
    let mut bay = Bay::open();
    bay.work_up_to("coil");
    bay.must(Command::Void { step: "locks".into(), reason: "wrong name".into() });
    bay.vehicle_actions(&["lower"]);
    bay.must(Command::Correct {
        step: "locks".into(),
        entries: Default::default(),
        signatures: vec![sign("on_locks", "Ada", Role::Technician)],
        reason: Some("signed by Ada".into()),
    });
    let given = bay.job.sign(bay.job.procedure.names.sign("on_locks").unwrap());
    assert_eq!(given.len(), 2);
    assert!(given[1].lapsed.is_some());
}
