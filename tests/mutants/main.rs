//! Mistakes put into the pan and solenoid checklist, one at a time: does loading or the proof notice?
//!
//! Which mistakes are tried is drawn from all possible ones by a fixed seed, so many of each kind. Only plain runs are
//! searched (no strike, no observation), which takes a quarter of a second each: a mistake that shows in other runs
//! only is not found here, nor one that only makes a part of the checklist useless, which the proof asks where it
//! searches observations.
//! A mistake after which every state of plain runs allows just what it allowed before, with the same results, has no
//! effect and is counted apart: the rule that was dropped is implied by others.

mod change;
mod same;

use std::collections::{BTreeMap, BTreeSet};

use change::Change;
use panside_procedure::Procedure;
use panside_procedure::proof::{Ask, Proof, Property, go_on, prove};
use serde_json::Value;

/// Mistakes drawn of each kind.
const OF_EACH_KIND: usize = 5;
const SEED: u64 = 2006;
/// Of a hundred mistakes with an effect at least so many must be found.
const LEAST_SHARE: usize = 50;

/// What became of a mistake.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
enum Fate {
    /// It does not load.
    Refused,
    /// The proof finds something.
    Refuted(BTreeSet<Property>),
    /// Nothing is found, and nothing can happen that could not before, nor the other way round.
    WithoutEffect,
    /// Nothing is found.
    NotFound {
        /// There are as many states and transitions as before; they only mean something else.
        same_size: bool,
    },
}

fn load(checklist: &Value) -> Result<Procedure, String> {
    Procedure::load(checklist.to_string().as_bytes()).map_err(|problems| problems.to_string())
}

fn proved(procedure: &Procedure) -> Proof {
    prove(procedure, Ask { strike: false, observe: false, ..Ask::default() }, &mut go_on)
}

/// States and transitions of each search.
fn size(proof: &Proof) -> Vec<(usize, u64)> {
    proof.searches.iter().map(|search| (search.states.found, search.transitions)).collect()
}

fn fate(changed: &Value, original: &Procedure, known: &Proof) -> Fate {
    let Ok(changed) = load(changed) else { return Fate::Refused };
    let proof = proved(&changed);
    if !proof.findings.is_empty() {
        Fate::Refuted(proof.findings.iter().map(|found| found.property).collect())
    } else if same::behaves_the_same(original, &changed) {
        Fate::WithoutEffect
    } else {
        Fate::NotFound { same_size: size(&proof) == size(known) }
    }
}

/// Draws some of each kind: SplitMix64 (Steele, Lea and Flood, 2014; constants from memory) gives each change a
/// number, and the lowest numbers of a kind are taken.
fn drawn(all: Vec<Change>) -> Vec<Change> {
    let mut state = SEED;
    let mut kinds: BTreeMap<&str, Vec<(u64, Change)>> = BTreeMap::new();
    for change in all {
        state = state.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut number = (state ^ (state >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        number = (number ^ (number >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        kinds.entry(change.kind).or_default().push((number ^ (number >> 31), change));
    }
    let lowest = |(_, mut of_kind): (&str, Vec<(u64, Change)>)| {
        of_kind.sort_by_key(|(number, _)| *number);
        of_kind.into_iter().take(OF_EACH_KIND).map(|(_, change)| change)
    };
    kinds.into_iter().flat_map(lowest).collect()
}

/// Prints every mistake with its fate, and answers how many were found of how many with an effect.
fn report(original: &Value, fates: &[(Change, Fate)]) -> (usize, usize) {
    let count = |wanted: fn(&Fate) -> bool| fates.iter().filter(|(_, fate)| wanted(fate)).count();
    let refused = count(|fate| *fate == Fate::Refused);
    let refuted = count(|fate| matches!(fate, Fate::Refuted(_)));
    let without_effect = count(|fate| *fate == Fate::WithoutEffect);
    let not_found = count(|fate| matches!(fate, Fate::NotFound { .. }));
    let same_size = count(|fate| *fate == Fate::NotFound { same_size: true });
    for (change, fate) in fates {
        println!("{fate:?}: {}", change.say(original));
    }
    println!("refused at loading {refused}, refuted {refuted}, without effect {without_effect}");
    println!(
        "not found {not_found}, of which {same_size} have as many states and transitions as the original"
    );
    (refused + refuted, refused + refuted + not_found)
}

#[test]
fn a_mistake_in_the_checklist_is_found_before_anyone_works_by_it() -> Result<(), String> {
    let original: Value = serde_json::from_str(&panside_tests::checklist("pan-and-solenoid"))
        .map_err(|error| error.to_string())?;
    let procedure = load(&original)?;
    let known = proved(&procedure);
    assert_eq!(known.findings, [], "the checklist itself must be found right");
    let all = change::all(&original);
    println!(
        "{} single changes are possible; up to {OF_EACH_KIND} of each kind are drawn, seed {SEED}",
        all.len()
    );
    let judged = |change: Change| {
        let fate = fate(&change.apply(&original), &procedure, &known);
        (change, fate)
    };
    let fates: Vec<(Change, Fate)> = drawn(all).into_iter().map(judged).collect();
    assert!(fates.len() >= 24);
    let (found, with_effect) = report(&original, &fates);
    println!("found {found} of {with_effect} with an effect");
    // What is not found stands in the list: mostly classes that no longer hold a step or end the job, where only a
    // person can say what a class means, and readings that no longer lapse, which a danger that reads the same
    // gate cannot see.
    assert!(found * 100 >= with_effect * LEAST_SHARE);
    Ok(())
}
