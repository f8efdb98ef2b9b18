//! What is said to a person, as a message id with arguments. The sentence is made elsewhere, in any language, from
//! `en/job.ftl` of `panside-messages`, which has the same ids. [`MESSAGES`] lists them all with the names of their arguments.

mod list;

pub use panside_messages::{Arg, Message};

pub use list::{LABELS, MESSAGES};

pub(crate) use list::*;
pub(crate) use panside_trade::text::figure;

/// What a class of a kind of entry is called; the class itself where no kind of this version has it.
pub(crate) fn class_label(kind: &str, class: &str) -> Message {
    label(&format!("class-{kind}-{class}")).unwrap_or_else(|| as_said(class))
}

/// What a kind of entry is called.
pub(crate) fn kind_label(kind: &str) -> Message {
    label(&format!("kind-{kind}")).unwrap_or_else(|| as_said(kind))
}

fn label(id: &str) -> Option<Message> {
    let id = id.replace('_', "-");
    LABELS.contains(&id.as_str()).then(|| Message::new(&id, []))
}

#[cfg(test)]
mod tests {
    panside_messages::testing::hold!("job", super::MESSAGES);
}
