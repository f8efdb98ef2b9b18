//! States that no rule and no property can tell apart are taken for one.

use crate::machine::{Machine, State, over};

/// The representative of a state: a lapsed sign-off is like one never given, people are interchangeable, and
/// one stopped job is like another, since nothing more happens in it.
pub fn canon(machine: &Machine, mut state: State) -> State {
    if machine.is_stopped(&state) {
        let mut stopped = State::default();
        machine.set_over(&mut stopped, over::STOPPED);
        return stopped;
    }
    for (word, lapsed) in state.words.iter_mut().zip(&machine.layout.lapsed_bits) {
        *word &= !lapsed;
    }
    let begun = &machine.layout.begun;
    if begun.len() > 1 {
        let mut people: Vec<u64> = begun.iter().map(|field| field.get(&state)).collect();
        people.sort_unstable();
        begun.iter().zip(people).for_each(|(field, step)| field.set(&mut state, step));
    }
    state
}
