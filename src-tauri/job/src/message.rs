//! What is said to a person, as a message id with arguments. The sentence is made elsewhere, in any language, from
//! `en/job.ftl` of `panside-messages`, which has the same ids. [`MESSAGES`] lists them all with the names of their arguments.

mod list;
mod trade;

pub use panside_messages::{Arg, Message};

pub use list::MESSAGES;

pub(crate) use list::*;
pub(crate) use panside_trade::text::figure;
pub(crate) use trade::{of_figure, of_trade};

/// An id as words: `on_locks` is "on locks".
pub(crate) fn words(id: &str) -> String {
    id.replace('_', " ")
}

#[cfg(test)]
mod tests {
    panside_messages::testing::hold!("job", super::MESSAGES);
}
