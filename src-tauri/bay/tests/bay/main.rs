//! The use cases over a real store: what is acknowledged is there, once; what is refused leaves nothing behind.
#![allow(clippy::disallowed_methods, reason = "the edge: files and clocks")]

mod entering;
mod kit;
mod starting;
