//! Helpers shared by the whole-project tests and by the pictures of the README.
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "the edge: these start programs, read files and wait"
)]

pub mod window;
