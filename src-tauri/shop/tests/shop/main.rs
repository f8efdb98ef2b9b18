//! The shop as whoever uses it sees it: names, commands, both sides, and what holds in every run.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on says where")]

mod both;
mod decide;
mod events;
mod names;
mod properties;
mod support;
