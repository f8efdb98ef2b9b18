//! States that no rule and no property can tell apart are taken for one.

use crate::machine::{Machine, State, over};

/// What is kept apart although no rule and no property can tell it apart: only to see that nothing else is found so,
/// and what taking it for one saves.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Apart {
    /// A sign-off that lapsed, from one that was never given.
    pub lapsed: bool,
    /// Which of several people is in which step.
    pub people: bool,
    /// One stopped job, in which nothing more happens, from another.
    pub stopped: bool,
}

/// The representative of a state: a lapsed sign-off is like one never given, people are interchangeable, and
/// one stopped job is like another, since nothing more happens in it.
pub fn canon(machine: &Machine, apart: Apart, mut state: State) -> State {
    if !apart.stopped && machine.is_stopped(&state) {
        let mut stopped = State::default();
        machine.set_over(&mut stopped, over::STOPPED);
        return stopped;
    }
    if !apart.lapsed {
        for (word, lapsed) in state.words.iter_mut().zip(&machine.layout.lapsed_bits) {
            *word &= !lapsed;
        }
    }
    let begun = &machine.layout.begun;
    if !apart.people && begun.len() > 1 {
        let mut people: Vec<u64> = begun.iter().map(|field| field.get(&state)).collect();
        people.sort_unstable();
        begun.iter().zip(people).for_each(|(field, step)| field.set(&mut state, step));
    }
    state
}
