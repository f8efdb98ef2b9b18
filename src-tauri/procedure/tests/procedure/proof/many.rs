//! As many dangers as there may be: where one stands among them makes no difference.

use std::collections::BTreeSet;

use panside_messages::Message;
use panside_procedure::machine::{DangerIx, DangerSet};
use panside_procedure::proof::{Ask, Finding, Property, Verdict};
use panside_procedure::{Action, Procedure};
use proptest::prelude::*;
use proptest::sample::Index;
use serde_json::{Value, json};

use super::observed::{trusting, under};
use super::{PLAIN, proof, run};
use crate::bay::{danger, one_phase, pan_job, step};
use crate::own_search::shortest_into;
use crate::said::said;
use crate::support::Draft;

/// A danger for each of 256 vehicles. A rule keeps people out of all but the 200th.
fn vehicles() -> Draft {
    let when = |at: usize| {
        let hands = if at == 199 { "doing.tag = brew" } else { "doing.zone = under and lift = floor" };
        format!("{hands} and series = v{} and body = b{}", at % 64, at / 64)
    };
    let dangers: Value = (0..DangerSet::MOST).map(|at| danger(&format!("d{at}"), &when(at))).collect();
    let values: Vec<String> = (0..64).map(|at| format!("v{at}")).collect();
    one_phase(json!([
        step("look", "under", json!({"needs": "lift = on_locks"})),
        step("brew", "bench", json!({"after": ["look"], "tags": ["brew"]})),
    ]))
    .set("", "facts", json!([{"id": "series", "values": values, "sheet": "series"}]))
    .add("", "facts", json!({"id": "body", "values": ["b0", "b1", "b2", "b3"], "sheet": "body"}))
    .set("", "gates", json!([]))
    .set("", "done_when", json!("worked(brew) and worked(look)"))
    .set("", "dangers", dangers)
}

/// Puts dangers into another order.
type Turn = fn(&mut Vec<Value>);

/// What is found, wherever in the file it stands.
fn told(findings: &[Finding]) -> BTreeSet<(Property, &Message, &[Message])> {
    findings.iter().map(|found| (found.property, &found.what, found.run.as_slice())).collect()
}

#[test]
fn of_256_dangers_the_one_that_can_be_reached_is_found_by_its_shortest_run() {
    let draft = vehicles();
    let found = proof(&draft, Ask::ALL);
    assert_eq!(found.verdict, Verdict::Refuted);
    let [finding] = found.findings.as_slice() else { panic!("{:#?}", found.findings) };
    assert_eq!(
        (finding.property, said(&finding.what).as_str()),
        (Property::Safe, "d199: It is dangerous: d199.")
    );
    assert_eq!(finding.place.pointer, "/dangers/199/when");
    assert_eq!(
        run(finding),
        ["vehicle action raise", "begin step look", "done step look", "begin step brew"]
    );
    assert_eq!(shortest_into(&draft.procedure(), "d199"), Some(4));
}

#[test]
fn the_same_256_dangers_in_another_order_give_the_same_verdict() {
    let draft = vehicles();
    let as_written = proof(&draft, Ask::ALL);
    let turned = |turn: Turn| {
        let mut dangers = draft.0["dangers"].as_array().cloned().unwrap_or_default();
        turn(&mut dangers);
        proof(&draft.clone().set("", "dangers", json!(dangers)), Ask::ALL)
    };
    let others: [Turn; 3] = [|all| all.reverse(), |all| all.rotate_left(199), |all| all.rotate_left(200)];
    for (at, turn) in [56, 0, 255].into_iter().zip(others) {
        let other = turned(turn);
        assert_eq!((other.verdict, &other.searches), (as_written.verdict, &as_written.searches));
        assert_eq!(told(&other.findings), told(&as_written.findings));
        assert_eq!(other.findings[0].place.pointer, format!("/dangers/{at}/when"));
    }
}

/// Checklists of which some danger comes up, is excused, or counts though it is excused; with what it does.
fn drafts() -> [Draft; 7] {
    let stays = json!({"needs": "worked(shake)"});
    let leaving = pan_job().set("", "safe_to_leave", json!("true")).add(
        "",
        "dangers",
        danger("left_open", "leaving and pan = off"),
    );
    [
        pan_job(),
        pan_job().set("", "crew", json!(2)).set("read_level", "zone", json!("under")),
        pan_job().set("lower", "needs", json!("engine = off")),
        trusting(),
        under(stays).add("", "dangers", danger("drip", "drain_plug = out and lift = on_locks")),
        under(json!({"needs": "lift = on_locks", "while": "true"})).add(
            "",
            "dangers",
            danger("off", "pan = off"),
        ),
        leaving,
    ]
}

/// As many dangers as there may be: one of a checklist's at a place, the others around it, each of them many times.
///
/// What holds as often as something that is there anyway tells no more states apart.
fn among_others(draft: &Draft, one: usize, at: usize) -> Draft {
    let mut own = draft.0["dangers"].as_array().cloned().unwrap_or_default();
    let one = own.remove(one);
    let copy = |number: usize| {
        let mut copy = own[number % own.len()].clone();
        if number >= own.len() {
            copy["id"] = json!(format!("again_{number}"));
        }
        copy
    };
    let mut dangers: Vec<Value> = (0..DangerSet::MOST - 1).map(copy).collect();
    dangers.insert(at, one);
    draft.clone().set("", "dangers", json!(dangers))
}

/// Of each of the dangers whether it is met, the one that stands at a place first.
fn met(dangers: DangerSet, at: usize) -> Vec<bool> {
    let mut met: Vec<bool> = (0..DangerSet::MOST).map(|at| dangers.contains(DangerIx::of(at))).collect();
    let one = met.remove(at);
    assert_eq!(dangers.iter().count(), met.iter().chain([&one]).filter(|met| **met).count());
    met.insert(0, one);
    met
}

/// Every action that is tried on a way through both runs into the same dangers.
fn walks_alike(
    first: &Procedure,
    other: &Procedure,
    at: usize,
    choices: &[Index],
) -> Result<(), TestCaseError> {
    let all = first.all_actions();
    let mut state = first.machine.all_starts()[0];
    for choice in choices {
        let allowed: Vec<Action> =
            all.iter().copied().filter(|action| first.machine.step(&state, *action).is_ok()).collect();
        for &action in &allowed {
            let here = met(first.machine.dangers_of(&state, action), 0);
            prop_assert_eq!(here, met(other.machine.dangers_of(&state, action), at), "{:?}", action);
        }
        let Some(next) = allowed.get(choice.index(allowed.len().max(1))) else { break };
        state = first
            .machine
            .step(&state, *next)
            .map_err(|blocked| TestCaseError::fail(format!("{blocked:?}")))?;
        let now = met(first.machine.dangers_now(&state), 0);
        prop_assert_eq!(now, met(other.machine.dangers_now(&state), at));
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn a_danger_counts_at_any_place_as_it_does_at_the_first(
        draft in 0_usize..7,
        one in any::<Index>(),
        at in 1..DangerSet::MOST,
        choices in prop::collection::vec(any::<Index>(), 1..60),
    ) {
        let draft = &drafts()[draft];
        let one = one.index(draft.0["dangers"].as_array().map_or(0, Vec::len));
        let (first, other) = (among_others(draft, one, 0), among_others(draft, one, at));
        walks_alike(&first.procedure(), &other.procedure(), at, &choices)?;
        let (first, other) = (proof(&first, Ask::ALL), proof(&other, Ask::ALL));
        prop_assert_eq!(other.verdict, first.verdict);
        prop_assert_eq!(&other.searches, &first.searches);
        prop_assert_eq!(&other.properties, &first.properties);
        prop_assert_eq!(&other.finish_after_observing, &first.finish_after_observing);
        prop_assert_eq!(told(&other.findings), told(&first.findings));
    }
}

#[test]
fn dangers_that_are_there_many_times_tell_no_more_states_apart() {
    let mut found = BTreeSet::new();
    for draft in drafts() {
        let (few, many) = (proof(&draft, Ask::ALL), proof(&among_others(&draft, 0, 200), Ask::ALL));
        assert_eq!(many.verdict, few.verdict);
        let sizes = |proof: &panside_procedure::proof::Proof| {
            proof.searches.iter().map(|search| (search.states.found, search.transitions)).collect::<Vec<_>>()
        };
        assert_eq!(sizes(&many), sizes(&few));
        let own = many.findings.iter().filter(|found| !said(&found.what).contains("again_")).cloned();
        assert_eq!(told(&own.collect::<Vec<_>>()), told(&few.findings));
        found.extend(few.findings.into_iter().map(|found| found.property));
    }
    // Of each kind of verdict on a danger there is one.
    assert!(found.is_superset(&BTreeSet::from([Property::Safe, Property::HonestWhenWrong])), "{found:?}");
    assert_eq!(proof(&drafts()[0], PLAIN).verdict, Verdict::Proved);
}
