//! What a proof says about itself.

use std::ops::ControlFlow;

use panside_procedure::proof::{Answer, Ask, Property, Verdict, prove};
use serde_json::json;

use super::{PLAIN, proof};
use crate::bay::pan_job;

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
fn a_proof_says_what_it_takes_for_granted_and_does_not_claim() {
    let whole = proof(&pan_job(), Ask::default());
    assert!(whole.assumed.contains(&"what is entered happened".to_owned()));
    assert!(whole.assumed.iter().any(|taken| taken.starts_with("what is not yet so")), "{:?}", whole.assumed);
    assert_eq!(whole.assumed.len(), 4);
    assert!(whole.not_claimed.contains(&"more than one strike in a run".to_owned()));
    assert!(
        whole.not_claimed.iter().any(|claim| claim.starts_with("emergencies")),
        "{:?}",
        whole.not_claimed
    );
    assert!(!whole.not_claimed.iter().any(|claim| claim.contains("not asked")));
    let plain = proof(&pan_job(), PLAIN);
    assert_eq!(plain.not_claimed.iter().filter(|claim| claim.contains("not asked")).count(), 2);
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
    let said = || serde_json::to_string(&proof(&draft, Ask::default())).unwrap();
    assert_eq!(said(), said());
}

#[test]
fn whoever_waits_is_told_how_far_the_search_is() {
    let mut told = Vec::new();
    let proof = prove(&pan_job().procedure(), Ask::default(), &mut |progress| {
        told.push((progress.search, progress.doing));
        ControlFlow::Continue(())
    });
    assert_eq!(proof.verdict, Verdict::Proved);
    for search in ["runs with at most one strike", "runs with at most one observation"] {
        for doing in ["searching", "looking for ways to the end", "looking for ways to a safe stop"] {
            assert!(told.contains(&(search, doing)), "{search}: {doing}");
        }
    }
}
