//! One of several answers: its id is the class.

use panside_procedure::format::Checklist;
use panside_procedure::format::entry::Choice;

use super::kind::{self, Kind, measures_nothing};
use super::{Classified, Context};
use crate::command::Refusal;
use crate::message::{choice_made, choice_unknown};
use crate::sheet::Specs;
use crate::value::EntryValue;

pub(super) fn classify(asked: &Choice, class: &str) -> Result<Classified, Refusal> {
    let Some(option) = asked.options.iter().find(|option| option.class == class) else {
        let known: Vec<String> = asked.options.iter().map(|option| option.label.clone()).collect();
        return Err(choice_unknown(class, known).into());
    };
    Ok(Classified::new(class, EntryValue::Choice { class: class.to_owned() }, choice_made(&option.label)))
}

impl Kind for Choice {
    fn classify(
        &self,
        _specs: &Specs,
        value: &EntryValue,
        _context: &Context<'_>,
    ) -> Result<Classified, Refusal> {
        match value {
            EntryValue::Choice { class } => classify(self, class),
            _ => Err(kind::other("choice", value)),
        }
    }

    measures_nothing!();

    fn in_short(&self, value: &EntryValue, _checklist: &Checklist) -> Option<String> {
        let EntryValue::Choice { class } = value else { return None };
        Some(self.label(class).to_owned())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::try_entry;

    #[test]
    fn only_the_answers_that_are_offered_can_be_given() {
        let answer = |class: &str| try_entry("verdict", "found", EntryValue::Choice { class: class.into() });
        assert_eq!(answer("carry_on").unwrap().class, "carry_on");
        assert_eq!(answer("maybe").unwrap_err().message.id, "choice-unknown");
    }
}
