//! Free text.

use super::Classified;
use crate::message::{note_empty, note_written};
use crate::request::Refusal;
use crate::value::EntryValue;

pub(super) fn classify(text: &str) -> Result<Classified, Refusal> {
    let text = text.trim();
    if text.is_empty() {
        return Err(note_empty().into());
    }
    Ok(Classified::new("written", EntryValue::Note { text: text.to_owned() }, note_written()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_note_says_something() {
        assert_eq!(
            classify(" oil at the plug ").unwrap().value,
            EntryValue::Note { text: "oil at the plug".into() }
        );
        assert_eq!(classify("\n ").unwrap_err().message, note_empty());
    }
}
