//! Free text.

use panside_procedure::format::Checklist;
use panside_procedure::format::entry::Note;

use super::kind::{self, Kind, measures_nothing};
use super::{Classified, Context};
use crate::command::Refusal;
use crate::message::{note_empty, note_written};
use crate::sheet::Specs;
use crate::value::EntryValue;

pub(super) fn classify(text: &str) -> Result<Classified, Refusal> {
    let text = text.trim();
    if text.is_empty() {
        return Err(note_empty().into());
    }
    Ok(Classified::new("written", EntryValue::Note { text: text.to_owned() }, note_written()))
}

impl Kind for Note {
    fn classify(
        &self,
        _specs: &Specs,
        value: &EntryValue,
        _context: &Context<'_>,
    ) -> Result<Classified, Refusal> {
        match value {
            EntryValue::Note { text } => classify(text),
            _ => Err(kind::other("note", value)),
        }
    }

    measures_nothing!();

    fn in_short(&self, value: &EntryValue, _checklist: &Checklist) -> Option<String> {
        let EntryValue::Note { text } = value else { return None };
        Some(text.clone())
    }
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
