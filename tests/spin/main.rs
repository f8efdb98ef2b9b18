//! SPIN searches what the proof searches, and must count the same: states, steps, dead ends, and which dangers are met.
//!
//! Small checklists, each for other parts of the format, and the shipped one whole and cut down to its first phases. SPIN
//! tries every order and keeps whole states; nothing is hashed away or left out.

mod cut;

use panside_procedure::Procedure;
use panside_procedure::proof::{Ask, go_on, prove};
use panside_tests::danger_met;
use panside_tests::many::with_many_dangers;
use panside_tests::promela::{Counted, Runs, model, search};

const ALL: [Runs; 3] = [Runs::Plain, Runs::OneVoid, Runs::OneObservation];

/// What our own search says of the runs.
fn ours(procedure: &Procedure, runs: Runs) -> Result<Counted, String> {
    let ask = Ask { void: runs == Runs::OneVoid, observe: runs == Runs::OneObservation, ..Ask::default() };
    let proof = prove(procedure, ask, &mut go_on);
    let search = proof.searches.last().filter(|search| search.complete).ok_or("the search did not end")?;
    Ok(Counted {
        states: search.states.found,
        transitions: usize::try_from(search.transitions).map_err(|error| error.to_string())?,
        dead_ends: search.dead_ends,
        dangers: proof.findings.iter().filter_map(|found| danger_met(procedure, found)).collect(),
    })
}

fn counts_alike(name: &str, procedure: &Procedure, kinds: &[Runs]) -> Result<(), String> {
    for &runs in kinds {
        let model = model(&procedure.checklist, runs).map_err(|error| error.to_string())?;
        let by_spin = search(&model).map_err(|error| error.to_string())?;
        println!(
            "{name}, {runs:?}: {} states, {} steps, {} dead ends, dangers met {:?}",
            by_spin.states, by_spin.transitions, by_spin.dead_ends, by_spin.dangers
        );
        assert_eq!(ours(procedure, runs)?, by_spin, "{name}, {runs:?}");
    }
    Ok(())
}

fn loaded(text: &str) -> Result<Procedure, String> {
    Procedure::load(text.as_bytes()).map_err(|problems| problems.to_string())
}

macro_rules! small_ones_count_alike {
    ($($name:ident),* $(,)?) => {$(
        #[test]
        fn $name() -> Result<(), String> {
            counts_alike(stringify!($name), &loaded(include_str!(concat!("../independent/checklists/", stringify!($name), ".json")))?, &ALL)
        }
    )*};
}

small_ones_count_alike! {
    skip, attests, beside, conditional, crew, ends, expire, follows, items, observe, permits, redo, void,
}

#[test]
fn as_many_dangers_as_there_may_be_count_alike() -> Result<(), String> {
    let small = include_str!("../independent/checklists/observe.json");
    let checklist = with_many_dangers(serde_json::from_str(small).map_err(|error| error.to_string())?);
    counts_alike("many dangers", &loaded(&checklist.to_string())?, &ALL)
}

/// Up to so many phases all runs are searched, from there on only plain ones: SPIN's models of the others take the
/// compiler long.
const ALL_RUNS_UP_TO: usize = 4;

#[test]
fn the_first_phases_of_the_shipped_checklist_count_alike() -> Result<(), String> {
    let checklist = panside_tests::demo_checklist("pan-and-solenoid");
    for phases in 1..cut::phases(&checklist)? {
        let kinds = if phases <= ALL_RUNS_UP_TO { &ALL[..] } else { &ALL[..1] };
        let cut = cut::down_to(&checklist, |at| at < phases)?;
        counts_alike(&format!("the first {phases} phases"), &cut, kinds)?;
    }
    Ok(())
}

#[test]
fn the_shipped_checklist_without_one_of_its_first_phases_counts_alike() -> Result<(), String> {
    let checklist = panside_tests::demo_checklist("pan-and-solenoid");
    for without in 0..ALL_RUNS_UP_TO {
        let cut = cut::down_to(&checklist, |at| at != without && at <= ALL_RUNS_UP_TO)?;
        counts_alike(&format!("the first phases without phase {}", without + 1), &cut, &ALL)?;
    }
    Ok(())
}

#[test]
fn the_shipped_checklist_counts_alike() -> Result<(), String> {
    counts_alike("pan-and-solenoid", &loaded(&panside_tests::demo_checklist("pan-and-solenoid"))?, &ALL)
}

/// The comparison can fail: a signature that lapses for one of both only is noticed.
#[test]
fn a_rule_that_only_one_of_both_has_is_noticed() -> Result<(), String> {
    let procedure = loaded(include_str!("../independent/checklists/permits.json"))?;
    let mut changed = procedure.checklist.clone();
    "true".clone_into(&mut changed.sign_offs[0].holds_while);
    for runs in ALL {
        let model = model(&changed, runs).map_err(|error| error.to_string())?;
        let by_spin = search(&model).map_err(|error| error.to_string())?;
        assert_ne!(ours(&procedure, runs)?, by_spin, "{runs:?}");
    }
    Ok(())
}
