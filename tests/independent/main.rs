//! A second interpreter of the checklist format, to count against.
//!
//! It is written from the page that says what a checklist means, starts from the parsed file and from predicates as
//! trees, and never touches the Machine, its compiler or the proof: states are maps from names to names. The states
//! it reaches are counted by Stateright, a model checker that nobody here wrote. For each checklist the number of
//! states, of transitions and of dead ends, from how many of them the job can finish and can stop whatever comes, and
//! the set of dangers met must be what the proof reports. Both share the
//! parser and the canonical form: a lapsed sign-off is like none, a stopped job is one state, people are
//! interchangeable.

mod bay;
mod chance;
mod deeds;
mod ends;
mod many;
mod order;
mod philosophers;
mod runs;
mod small;
mod truth;

use panside_procedure::Procedure;
use panside_procedure::proof::{Ask, Proof, go_on, prove};
use panside_tests::danger_met;
use runs::{Counted, Kind};

const KINDS: [Kind; 3] = [Kind::Plain, Kind::OneVoid, Kind::OneObservation];

/// What the proof says about runs of a kind: its own count, and the dangers among its findings.
fn proved(procedure: &Procedure, kind: Kind) -> Result<(Counted, Proof), String> {
    let ask = Ask { void: kind == Kind::OneVoid, observe: kind == Kind::OneObservation, ..Ask::default() };
    let proof = prove(procedure, ask, &mut go_on);
    let search = proof.searches.last().ok_or("no search was made")?;
    if !search.complete {
        return Err(format!("the search did not end: {search:?}"));
    }
    let dangers = proof.findings.iter().filter_map(|found| danger_met(procedure, found)).collect();
    let transitions = usize::try_from(search.transitions).map_err(|error| error.to_string())?;
    let table = proof.finish_after_observing.iter();
    let counted = Counted {
        states: search.states.found,
        transitions,
        dead_ends: search.dead_ends,
        can_finish: search.can_finish.ok_or("the ends were not judged")?,
        can_stop: search.can_stop.ok_or("the ends were not judged")?,
        after_observing: table
            .map(|row| ((row.condition.clone(), row.value.clone()), (row.can, row.cannot)))
            .collect(),
        dangers,
    };
    Ok((counted, proof))
}

/// Counts with both and answers what differs.
fn differs(procedure: &Procedure, kind: Kind) -> Result<(Counted, Option<String>), String> {
    let (by_proof, _) = proved(procedure, kind)?;
    let here = runs::count(procedure.checklist.clone(), kind)?;
    let difference =
        (here != by_proof).then(|| format!("{kind:?}: here {here:?}, by the proof {by_proof:?}"));
    Ok((here, difference))
}
