//! What a proof says about itself.

use std::ops::ControlFlow;

use panside_messages::{Language, Message, Speaker};
use panside_procedure::proof::{Answer, Apart, Ask, Looking, Proof, Property, Runs, Stopped, Verdict, prove};
use serde_json::json;

use super::{PLAIN, proof};
use crate::bay::pan_job;
use crate::said::said;

#[test]
fn a_search_that_runs_out_of_memory_decides_nothing() {
    for draft in
        [pan_job(), pan_job().set("start", "needs", json!("true")), pan_job().set("", "crew", json!(3))]
    {
        for memory in [0, 1, 1 << 10] {
            let proof = proof(&draft, Ask { memory, ..Ask::default() });
            assert_eq!(proof.verdict, Verdict::NotDecided);
            assert!(proof.properties.iter().all(|(_, answer)| *answer == Answer::NotDecided));
            assert!(proof.searches.iter().all(|search| !search.complete));
        }
    }
}

#[test]
fn a_search_that_meets_a_cap_says_which_and_proves_nothing() {
    let whole = proof(&pan_job(), Ask::default());
    let most = whole.searches.iter().map(|search| search.states.found).max().unwrap();
    let just_enough = proof(&pan_job(), Ask { states: most, ..Ask::default() });
    assert_eq!((just_enough.verdict, just_enough.searches), (Verdict::Proved, whole.searches.clone()));
    for states in [0, 1, most / 2, most - 1] {
        let proof = proof(&pan_job(), Ask { states, ..Ask::default() });
        assert_eq!(proof.verdict, Verdict::NotDecided, "{states}");
        let stopped = proof.searches.iter().filter(|search| search.stopped == Some(Stopped::States));
        assert!(stopped.clone().all(|search| search.states.found > states), "it says how far it ran");
        assert!(stopped.count() > 0, "{states}");
        assert!(proof.properties.iter().all(|(_, answer)| *answer == Answer::NotDecided), "{states}");
    }
    let poor = proof(&pan_job(), Ask { memory: 1 << 16, ..Ask::default() });
    assert!(poor.searches.iter().all(|search| search.stopped == Some(Stopped::Memory)));
}

#[test]
fn a_danger_met_before_a_cap_refutes_all_the_same() {
    let draft = pan_job().set("read_level", "zone", json!("under"));
    let proof = proof(&draft, Ask { states: 60, ..Ask::default() });
    assert!(proof.searches.iter().all(|search| !search.complete));
    assert_eq!(proof.verdict, Verdict::Refuted);
    assert_eq!(proof.findings[0].property, Property::Safe);
}

#[test]
fn a_proof_that_is_ended_is_not_decided() {
    let procedure = pan_job().set("", "crew", json!(2)).procedure();
    for last in [Looking::Searching, Looking::End, Looking::SafeStop] {
        let proof = prove(&procedure, Ask::default(), &mut |progress| {
            if progress.doing == last { ControlFlow::Break(()) } else { ControlFlow::Continue(()) }
        });
        assert_eq!((proof.verdict, proof.findings), (Verdict::NotDecided, Vec::new()), "{last:?}");
        assert!(proof.searches.iter().all(|search| search.stopped == Some(Stopped::Cancelled)), "{last:?}");
    }
}

#[test]
fn a_proof_says_what_it_takes_for_granted_and_does_not_claim() {
    let all = |messages: &[Message]| messages.iter().map(said).collect::<Vec<_>>();
    let whole = proof(&pan_job(), Ask::default());
    let (assumed, not_claimed) = (all(&whole.assumed), all(&whole.not_claimed));
    assert!(assumed.contains(&"what is entered happened".to_owned()));
    assert!(assumed.iter().any(|taken| taken.starts_with("what is not yet so")), "{assumed:?}");
    assert_eq!(assumed.len(), 4);
    assert!(not_claimed.contains(&"more than one void in a run".to_owned()));
    assert!(not_claimed.iter().any(|claim| claim.starts_with("emergencies")), "{not_claimed:?}");
    assert!(!not_claimed.iter().any(|claim| claim.contains("not asked")));
    let plain = all(&proof(&pan_job(), PLAIN).not_claimed);
    assert_eq!(plain.iter().filter(|claim| claim.contains("not asked")).count(), 2);
}

#[test]
fn a_proof_names_what_it_proved_and_tells_every_property() {
    let proof = proof(&pan_job().set("", "revision", json!(7)), Ask::default());
    assert_eq!((proof.checklist.as_str(), proof.revision), ("pan-job", 7));
    assert_eq!(proof.properties.iter().map(|(property, _)| *property).collect::<Vec<_>>(), Property::ALL);
    assert_eq!(proof.searches.len(), 2);
    assert!(proof.searches.iter().all(|search| search.complete && search.states.found > 100));
}

#[test]
fn the_same_checklist_gives_the_same_proof() {
    let draft = pan_job().set("drain", "needs", json!("true"));
    let json = || serde_json::to_string(&proof(&draft, Ask::default())).unwrap();
    assert_eq!(json(), json());
}

#[test]
fn a_proof_as_json_says_its_sentences_in_english_or_as_they_were_filled_in() {
    let mut found = proof(&pan_job().set("lower", "needs", json!("engine = off")), PLAIN);
    let json = |proof: &Proof| {
        let json = serde_json::to_value(proof).unwrap();
        ["/findings/0/what", "/findings/0/run/0", "/assumed/0/id"]
            .map(|at| json.pointer(at).cloned().unwrap())
    };
    let danger = "open_pan_down: It is dangerous: open_pan_down.";
    assert_eq!(json(&found), [danger, "vehicle action start \"Start engine\"", "assumed-entered"]);
    found.fill(Speaker::of(Language::Accented));
    assert_eq!(json(&found), [danger, "véhíçlé áçtíóñ start \"Start engine\"", "assumed-entered"]);
    assert_eq!(found.assumed[0].text, "whát íš éñtéréd háppéñéd");
}

#[test]
fn whoever_waits_is_told_how_far_the_search_is() {
    let mut told = Vec::new();
    let proof = prove(&pan_job().procedure(), Ask::default(), &mut |progress| {
        told.push((progress.search, progress.doing));
        ControlFlow::Continue(())
    });
    assert_eq!(proof.verdict, Verdict::Proved);
    for search in [Runs::OneVoid, Runs::OneObservation] {
        for doing in [Looking::Searching, Looking::End, Looking::SafeStop] {
            assert!(told.contains(&(search, doing)), "{search:?}: {doing:?}");
        }
    }
}

#[test]
fn what_is_taken_for_one_changes_nothing_that_is_found() {
    let kinds = [
        Apart { lapsed: true, ..Apart::default() },
        Apart { people: true, ..Apart::default() },
        Apart { stopped: true, ..Apart::default() },
    ];
    let two = pan_job().set("", "crew", json!(2));
    let drafts = [
        two.clone(),
        two.clone().set("read_level", "zone", json!("under")),
        two.clone().set("", "done_when", json!("true")),
        two.clone().set("", "safe_to_leave", json!("engine = running")),
        two.set("start", "needs", json!("false")),
    ];
    let mut saved = [0; 3];
    for draft in drafts {
        let as_one = proof(&draft, Ask::ALL);
        let states = |proof: &Proof| proof.searches.iter().map(|search| search.states.found).sum::<usize>();
        for (apart, saved) in kinds.into_iter().zip(&mut saved) {
            let kept = proof(&draft, Ask { apart, ..Ask::ALL });
            let told = |proof: &Proof| {
                let found =
                    proof.findings.iter().map(|found| (found.property, found.what.clone(), found.run.len()));
                (proof.verdict, found.collect::<Vec<_>>(), proof.properties.clone())
            };
            assert_eq!(told(&kept), told(&as_one), "{apart:?}");
            *saved += states(&kept) - states(&as_one);
        }
    }
    assert!(saved.iter().all(|&saved| saved > 0), "each of them saves states: {saved:?}");
}
