//! Mistakes put into the shipped checklists, one at a time: does loading or the proof notice?
//!
//! Which mistakes are tried is drawn from all possible ones by a fixed seed, so many of each kind. Plain runs are
//! searched first, which takes a quarter of a second; where they show nothing, runs with a void, then those with an
//! observation, which takes seconds. A mistake after which every state of plain runs allows just what it allowed
//! before, with the same results, and after which the other searches are as large as before, has no effect and is
//! counted apart: the rule that was dropped is implied by others.

mod change;
mod same;

use std::collections::{BTreeMap, BTreeSet};
use std::sync::{Mutex, PoisonError};

use change::Change;
use panside_procedure::Procedure;
use panside_procedure::proof::{Ask, Proof, Property, go_on, prove_for};
use panside_tests::vehicles;
use serde_json::Value;

/// The checklists, and how many mistakes of each kind are drawn: fewer where a search takes long, and
/// fewest of the two that share most of their parts with a third.
const CHECKLISTS: [(&str, usize); 5] = [
    ("level-check", 8),
    ("return-visit", 5),
    ("pan-and-filter", 3),
    ("pan-and-solenoid", 3),
    ("solenoid-pack", 2),
];
/// Of a hundred mistakes with an effect at least so many must be found, in each checklist by itself. A change of a checklist
/// draws others: where fewer are found then, what is missed is printed, to be named by a danger or said once instead of twice.
const LEAST_SHARE: usize = 95;
/// At least so many are drawn of each checklist, or all where there are fewer.
const LEAST_DRAWN: usize = 40;
const SEED: u64 = 2006;
/// Judged at one time.
const SIDE_BY_SIDE: usize = 2;

/// What became of a mistake.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
enum Fate {
    /// It does not load.
    Refused,
    /// The proof finds something in plain runs.
    Refuted(BTreeSet<Property>),
    /// The proof finds something in runs with a void or an observation only.
    RefutedLater(BTreeSet<Property>),
    /// Nothing is found, and nothing can happen that could not before, nor the other way round.
    WithoutEffect,
    /// Nothing is found.
    NotFound,
}

/// A checklist, and the same for each vehicle that it is tried on: together they use all of it.
struct Tried {
    checklist: Procedure,
    vehicles: Vec<Procedure>,
}

fn load(checklist: &Value) -> Result<Tried, String> {
    let checklist =
        Procedure::load(checklist.to_string().as_bytes()).map_err(|problems| problems.to_string())?;
    let vehicles = vehicles(&checklist)?;
    Ok(Tried { checklist, vehicles })
}

/// Runs with nothing gone wrong, with a void anywhere, with an observation anywhere: each dearer than the one before.
const RUNS: [(bool, bool); 3] = [(false, false), (true, false), (false, true)];

fn proved(tried: &Tried, (void, observe): (bool, bool)) -> Proof {
    prove_for(&tried.checklist, &tried.vehicles, Ask { void, observe, ..Ask::default() }, &mut go_on)
}

/// States and transitions of each search.
fn size(proof: &Proof) -> Vec<(usize, u64)> {
    proof.searches.iter().map(|search| (search.states.found, search.transitions)).collect()
}

fn properties(proof: &Proof) -> BTreeSet<Property> {
    proof.findings.iter().map(|found| found.property).collect()
}

fn fate(changed: &Value, original: &Tried, known: &[Proof]) -> Fate {
    let Ok(changed) = load(changed) else { return Fate::Refused };
    let mut same_size = true;
    for (at, (runs, known)) in RUNS.into_iter().zip(known).enumerate() {
        let proof = proved(&changed, runs);
        match (proof.findings.is_empty(), at) {
            (false, 0) => return Fate::Refuted(properties(&proof)),
            (false, _) => return Fate::RefutedLater(properties(&proof)),
            (true, _) => same_size &= size(&proof) == size(known),
        }
    }
    let mut both = original.vehicles.iter().zip(&changed.vehicles);
    if same_size && both.all(|(original, changed)| same::behaves_the_same(original, changed)) {
        Fate::WithoutEffect
    } else {
        Fate::NotFound
    }
}

/// Draws some of each kind: SplitMix64 (Steele, Lea and Flood, 2014; constants from memory) gives each change a
/// number, and the lowest numbers of a kind are taken.
fn drawn(all: Vec<Change>, seed: u64, of_each_kind: usize) -> Vec<Change> {
    let mut state = seed;
    let mut kinds: BTreeMap<&str, Vec<(u64, Change)>> = BTreeMap::new();
    for change in all {
        state = state.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut number = (state ^ (state >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        number = (number ^ (number >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        kinds.entry(change.kind).or_default().push((number ^ (number >> 31), change));
    }
    let lowest = |(_, mut of_kind): (&str, Vec<(u64, Change)>)| {
        of_kind.sort_by_key(|(number, _)| *number);
        of_kind.into_iter().take(of_each_kind).map(|(_, change)| change)
    };
    kinds.into_iter().flat_map(lowest).collect()
}

/// Judges the changes, some side by side.
fn judge(changes: &[Change], original: &Value, tried: &Tried, known: &[Proof]) -> Vec<Fate> {
    let open = Mutex::new(changes.iter().enumerate());
    let fates = Mutex::new(BTreeMap::new());
    std::thread::scope(|scope| {
        for _ in 0..SIDE_BY_SIDE {
            scope.spawn(|| {
                loop {
                    let next = open.lock().unwrap_or_else(PoisonError::into_inner).next();
                    let Some((at, change)) = next else { break };
                    let fate = fate(&change.apply(original), tried, known);
                    fates.lock().unwrap_or_else(PoisonError::into_inner).insert(at, fate);
                }
            });
        }
    });
    fates.into_inner().unwrap_or_else(PoisonError::into_inner).into_values().collect()
}

/// Prints every mistake with its fate, and answers how many were found of how many with an effect.
fn report(original: &Value, fates: &[(&Change, Fate)]) -> (usize, usize) {
    for (change, fate) in fates {
        println!("{fate:?}: {}", change.say(original));
    }
    let count = |wanted: fn(&Fate) -> bool| fates.iter().filter(|(_, fate)| wanted(fate)).count();
    let refused = count(|fate| *fate == Fate::Refused);
    let plain = count(|fate| matches!(fate, Fate::Refuted(_)));
    let later = count(|fate| matches!(fate, Fate::RefutedLater(_)));
    let without_effect = count(|fate| *fate == Fate::WithoutEffect);
    let not_found = count(|fate| *fate == Fate::NotFound);
    println!(
        "refused at loading {refused}, refuted by plain runs {plain}, by a void or an observation {later}, without \
         effect {without_effect}, not found {not_found}"
    );
    (refused + plain + later, refused + plain + later + not_found)
}

/// A number from the environment, for whoever wants to try another draw.
#[allow(clippy::disallowed_methods, reason = "the edge: a test's own options")]
fn option(name: &str, otherwise: u64) -> Result<u64, String> {
    match std::env::var(name) {
        Ok(text) => text.parse().map_err(|_| format!("{name} is \"{text}\"; give it a whole number")),
        Err(_) => Ok(otherwise),
    }
}

/// Tries the mistakes drawn for one checklist and answers how many were found of how many with an effect.
fn try_out(name: &str, seed: u64, of_each_kind: usize) -> Result<(usize, usize), String> {
    let original: Value =
        serde_json::from_str(&panside_tests::checklist(name)).map_err(|error| error.to_string())?;
    let tried = load(&original)?;
    let known = RUNS.map(|runs| proved(&tried, runs));
    for proof in &known {
        assert_eq!(proof.findings, [], "{name} itself must be found right");
    }
    let all = change::all(&original);
    let possible = all.len();
    let drawn = drawn(all, seed, of_each_kind);
    println!("{name}: of {possible} single changes {} are drawn, seed {seed}", drawn.len());
    assert!(drawn.len() >= LEAST_DRAWN.min(possible), "{name}: too few are drawn");
    let fates: Vec<(&Change, Fate)> = drawn.iter().zip(judge(&drawn, &original, &tried, &known)).collect();
    Ok(report(&original, &fates))
}

/// The one checklist that is tried, where whoever tries asks for one.
#[allow(clippy::disallowed_methods, reason = "the edge: a test's own options")]
fn only() -> Option<String> {
    std::env::var("MISTAKES_CHECKLIST").ok()
}

#[test]
fn a_mistake_in_a_checklist_is_found_before_anyone_works_by_it() -> Result<(), String> {
    let seed = option("MISTAKES_SEED", SEED)?;
    let only = only();
    let (mut found, mut with_effect) = (0, 0);
    let mut too_few = Vec::new();
    for (name, of_each_kind) in CHECKLISTS {
        if only.as_ref().is_some_and(|only| only != name) {
            continue;
        }
        let asked = option("MISTAKES_OF_EACH_KIND", of_each_kind as u64)?;
        let here = try_out(name, seed, usize::try_from(asked).unwrap_or(usize::MAX))?;
        println!("{name}: found {} of {} with an effect", here.0, here.1);
        if here.0 * 100 < here.1 * LEAST_SHARE {
            too_few.push(name);
        }
        found += here.0;
        with_effect += here.1;
    }
    println!("found {found} of {with_effect} with an effect");
    assert_eq!(too_few, Vec::<&str>::new(), "too few are found in these");
    Ok(())
}
