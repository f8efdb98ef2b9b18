//! The procedure crate, held to what the checklist format means.
//!
//! - `bay`: the invented checklists that the tests change
//! - `support`: how a checklist is changed and a job is run by names
//! - `own_search`: a search as plain as can be, to hold the proof against
//! - `loading`: every mistake is told with its place
//! - `parts`: checklists that share parts
//! - `texts`: a checklist in other words
//! - `edges`: each limit at its edge
//! - `machine`: what each action means
//! - `proof`: what is proved, what is found, what is not claimed
//! - `properties`: what holds in every run
//! - `said`: messages in English, and that nothing is left of it in another language

mod bay;
mod edges;
mod fit;
mod loading;
mod machine;
mod own_search;
mod parts;
mod proof;
mod properties;
mod said;
mod support;
mod texts;
