//! Honest when wrong: the vehicle is not as shown, once.

use std::collections::BTreeMap;

use panside_procedure::proof::{Answer, Ask, Property, Verdict};
use serde_json::{Value, json};

use super::{PLAIN, fails_only, is_proved, proof, run};
use crate::bay::{one_phase, pan_job, step, up_to};
use crate::own_search::search;
use crate::said::said;
use crate::support::Draft;

/// The fluid is never drained on the floor, so that the start does not ask for it; until it is.
pub(super) fn trusting() -> Draft {
    pan_job()
        .set("lower", "needs", json!("pan = on and engine = off and fluid = filled"))
        .set("fill", "needs", json!("lift = on_locks and engine = off and pan = on"))
        .set("start", "needs", json!("lift = floor and pan = on"))
}

#[test]
fn a_further_danger_after_an_observation_is_found() {
    let finding = fails_only(&trusting(), Property::HonestWhenWrong);
    assert_eq!(said(&finding.what), "dry_run: It is dangerous: dry_run.");
    assert_eq!(run(&finding), ["observe fluid = drained", "vehicle action start"]);
}

#[test]
fn a_failure_that_needs_an_observation_is_found_only_with_observations() {
    let without = proof(&trusting(), Ask { observe: false, ..Ask::default() });
    assert_eq!((without.verdict, without.findings), (Verdict::Proved, Vec::new()));
    assert!(without.not_claimed.iter().any(|claim| said(claim) == "runs with an observation (not asked)"));
    let answers: BTreeMap<Property, Answer> = without.properties.into_iter().collect();
    assert_eq!(answers[&Property::HonestWhenWrong], Answer::NotDecided);
    assert_eq!(answers[&Property::Safe], Answer::Holds);
}

#[test]
fn a_danger_that_is_observed_is_excused_while_it_stays() {
    // Among other things the engine is seen to run though the fluid is drained: that is told, and no finding.
    is_proved(&pan_job());
    let job = pan_job().job().after(&up_to("pan_off"));
    let seen = job.after("observe engine=running");
    assert!(job.procedure.machine.dangers_now(&job.state).is_empty());
    assert!(!seen.procedure.machine.dangers_now(&seen.state).is_empty());
    assert!(seen.try_one("action switch_off").is_ok(), "the way back to safe is open");
}

/// Work under a vehicle that is raised, and lowered only when the work is done.
pub(super) fn under(rules: Value) -> Draft {
    one_phase(json!([
        step("shake", "bench", json!({"needs": "lift = on_locks"})),
        step("look", "under", rules)
    ]))
    .set("lower", "needs", json!("worked(look)"))
    .set("crush", "when", json!("doing.zone = under and lift != on_locks"))
}

fn runs_into_crush(draft: &Draft) -> Vec<String> {
    let proof = proof(draft, Ask { observe: true, ..PLAIN });
    let crush = proof.findings.iter().find(|finding| said(&finding.what).starts_with("crush"));
    let crush = crush.unwrap_or_else(|| panic!("no crush in {:#?}", proof.findings));
    assert_eq!(crush.property, Property::HonestWhenWrong);
    run(crush)
}

#[test]
fn nobody_goes_into_a_danger_that_was_observed() {
    let asks_for_paper = under(json!({"needs": "worked(shake)"}));
    assert_eq!(
        runs_into_crush(&asks_for_paper),
        [
            "vehicle action raise",
            "begin step shake",
            "done step shake",
            "observe lift = floor",
            "begin step look"
        ]
    );
}

#[test]
fn no_work_is_finished_in_a_danger_that_was_observed() {
    let rules = json!({"needs": "worked(shake)", "makes": {"drain_plug": "out"}});
    let goes_on = under(rules.clone()).set("look", "needs", json!("worked(shake) and lift = on_locks"));
    let asks_for_nothing =
        goes_on.set("look", "while", json!("true")).set("raise", "needs", json!("not worked(shake)"));
    let run = runs_into_crush(&asks_for_nothing);
    assert_eq!(run[run.len() - 3..], ["begin step look", "observe lift = floor", "done step look"]);
}

#[test]
fn nothing_moves_in_a_danger_that_was_observed() {
    // Up again would be right, but not over the person under it.
    let goes_on = under(json!({"needs": "lift = on_locks", "while": "true"}));
    let run = runs_into_crush(&goes_on);
    assert_eq!(run[run.len() - 3..], ["begin step look", "observe lift = floor", "vehicle action raise"]);
}

#[test]
fn a_stop_that_an_observation_makes_impossible_is_found() {
    let leave = "lift in {floor, on_locks} and engine = off and (fluid = filled or worked(drain))";
    let finding = fails_only(&pan_job().set("", "safe_to_leave", json!(leave)), Property::HonestWhenWrong);
    assert_eq!(said(&finding.what), "from here a safe stop cannot be reached, whatever the technician does");
    assert_eq!(run(&finding), ["observe fluid = drained"]);
}

#[test]
fn the_finish_table_tells_always_sometimes_and_never() {
    let draft = pan_job()
        .add("", "conditions", json!({"id": "case", "values": ["whole", "cracked"]}))
        .set("", "done_when", json!("case = whole and tray_clear and signed(torqued) and level = in_band and lift = floor and engine = off and worked(read_again)"));
    let rows = proof(&draft, Ask::default()).finish_after_observing;
    let row = |condition: &str, value: &str| {
        let found = rows.iter().find(|row| row.condition == condition && row.value == value);
        found.map(|row| (row.can, row.cannot)).unwrap_or_else(|| panic!("no row {condition} = {value}"))
    };
    for value in ["floor", "raised", "on_locks"] {
        assert!(
            matches!(row("lift", value), (1.., 0)),
            "a lift can always be moved: {:?}",
            row("lift", value)
        );
    }
    assert!(
        matches!(row("pan", "off"), (1.., 1..)),
        "a pan that fell off can be put on where it was taken off"
    );
    assert!(matches!(row("case", "cracked"), (0, 1..)), "nothing mends it");
}

#[test]
fn the_finish_table_counts_every_observation_once() {
    let procedure = pan_job().procedure();
    let rows =
        panside_procedure::proof::prove(&procedure, Ask::default(), &mut panside_procedure::proof::go_on)
            .finish_after_observing;
    assert_eq!(rows.len(), 9, "every value of every condition");
    let machine = &procedure.machine;
    let states = search(&procedure, false).states;
    for row in rows {
        let var = procedure.names.var(&row.condition).unwrap();
        let value = procedure.names.value_of(var, &row.value).unwrap();
        let running = states.iter().map(|(state, _)| state).filter(|state| {
            !machine.is_ending(state) && !machine.is_finished(state) && !machine.is_stopped(state)
        });
        let otherwise = running.filter(|state| machine.value(state, var) != value).count();
        assert_eq!(row.can + row.cannot, otherwise, "{} = {}", row.condition, row.value);
    }
}

#[test]
fn what_must_be_recovered_from_always_can_be() {
    is_proved(&pan_job().set("lift", "recover", json!(["floor", "raised", "on_locks"])));
    let finding = fails_only(&pan_job().set("pan", "recover", json!(["off"])), Property::HonestWhenWrong);
    assert_eq!(
        said(&finding.what),
        "after pan is observed to be off the job cannot always finish, as \"recover\" says"
    );
    assert_eq!(run(&finding).last().unwrap(), "observe pan = off");
}

#[test]
fn an_observation_is_not_blamed_for_what_goes_wrong_without_it() {
    let leave =
        "lift in {floor, on_locks} and engine = off and (not known(verdict) or verdict in {service, leak})";
    let proof = proof(&pan_job().set("", "safe_to_leave", json!(leave)), Ask::default());
    let [observed, plain] = proof.findings.as_slice() else { panic!("{:#?}", proof.findings) };
    assert_eq!((observed.property, plain.property), (Property::HonestWhenWrong, Property::CanStop));
    assert!(run(observed).iter().any(|said| said.starts_with("observe")), "{:?}", observed.run);
    assert!(!run(plain).iter().any(|said| said.starts_with("observe")), "{:?}", plain.run);
}
