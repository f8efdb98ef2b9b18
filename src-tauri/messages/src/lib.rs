//! What is said to a person. The other crates name a sentence by its id and its arguments ([`Message`]); the sentences
//! stand in Fluent files, one a crate ([`language`]), and a [`Speaker`] makes sentences of messages in one language.
//!
//! - [`messages!`]: a crate's list of messages, each with the function that makes it
//! - [`clean`]: text made safe to show
//! - [`testing`]: a crate's list and its file hold the same messages

pub mod clean;
pub mod language;
mod list;
mod message;
mod speaker;
pub mod testing;

pub use language::Language;
pub use message::{Arg, Message};
pub use speaker::{MESSAGES, Speaker};
