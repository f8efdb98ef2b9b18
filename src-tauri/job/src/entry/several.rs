//! Any number of answers of a list: the worst of them decides.

use std::collections::BTreeSet;

use panside_procedure::format::Checklist;
use panside_procedure::format::entry::Several;

use super::kind::{self, Kind, measures_nothing};
use super::{Classified, Context};
use crate::command::Refusal;
use crate::message::{choice_unknown, several_made, several_none, several_one};
use crate::sheet::Specs;
use crate::value::EntryValue;

fn classify(asked: &Several, found: &BTreeSet<String>) -> Result<Classified, Refusal> {
    let known = |id: &&String| asked.options.iter().any(|option| option.id == **id);
    if let Some(unknown) = found.iter().find(|id| !known(id)) {
        let known: Vec<String> = asked.options.iter().map(|option| option.label.clone()).collect();
        return Err(choice_unknown(unknown, known).into());
    }
    let class = asked.class_of(found.iter().map(String::as_str)).ok_or_else(several_one)?;
    let said = if found.is_empty() { several_none() } else { several_made(labels(asked, found)) };
    Ok(Classified::new(class, EntryValue::Several { found: found.clone() }, said))
}

/// What the buttons of the options say, in the order of the list.
fn labels(asked: &Several, found: &BTreeSet<String>) -> Vec<String> {
    let options = asked.options.iter().filter(|option| found.contains(&option.id));
    options.map(|option| option.label.clone()).collect()
}

impl Kind for Several {
    fn classify(&self, _: &Specs, value: &EntryValue, _: &Context<'_>) -> Result<Classified, Refusal> {
        match value {
            EntryValue::Several { found } => classify(self, found),
            _ => Err(kind::other("several", value)),
        }
    }

    measures_nothing!();

    fn in_short(&self, value: &EntryValue, _checklist: &Checklist) -> Option<String> {
        let EntryValue::Several { found } = value else { return None };
        (!found.is_empty()).then(|| labels(self, found).join(", "))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::procedure;

    fn pan() -> Several {
        serde_json::from_value(serde_json::json!({
            "options": [
                { "id": "paste", "label": "fine gray paste", "class": "usual" },
                { "id": "chips", "label": "chips", "class": "broken" }
            ],
            "ranked": ["usual", "broken"],
        }))
        .unwrap()
    }

    fn found(ids: &[&str]) -> BTreeSet<String> {
        ids.iter().map(|id| (*id).to_owned()).collect()
    }

    #[test]
    fn paste_and_chips_are_judged_by_the_chips_and_both_are_said() {
        let judged = classify(&pan(), &found(&["chips", "paste"])).unwrap();
        assert_eq!(judged.class, "broken");
        assert_eq!(judged.said, [several_made(vec!["fine gray paste".to_owned(), "chips".to_owned()])]);
        let short = pan().in_short(&judged.value, &procedure().checklist);
        assert_eq!(short.as_deref(), Some("fine gray paste, chips"));
    }

    #[test]
    fn nothing_is_an_answer_only_where_the_list_says_so() {
        assert_eq!(classify(&pan(), &found(&[])).unwrap_err().message, several_one());
        let clean = Several { none: Some("clean".into()), ..pan() };
        assert_eq!(classify(&clean, &found(&[])).unwrap().class, "clean");
    }

    #[test]
    fn what_is_not_on_the_list_is_refused_with_what_is() {
        let refused = classify(&pan(), &found(&["paste", "clutch_material"])).unwrap_err().message;
        assert_eq!(
            refused,
            choice_unknown("clutch_material", vec!["fine gray paste".to_owned(), "chips".to_owned()])
        );
    }
}
