//! One of several answers.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::{Kind, Listed, Read, SheetNeed, Wrong, not_good, twice};
use crate::message::*;

/// A question with its answers.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskChoice")]
#[serde(deny_unknown_fields)]
pub struct Choice {
    /// The answers, at least two.
    pub options: Vec<ChoiceOption>,
    /// True where the answer tells what the hands did: only then may a class change conditions.
    #[serde(default)]
    pub hands_did: bool,
    /// The answers with which the work goes on. Any other must hold the step, end the job or change something. Empty
    /// where no answer is better than another.
    #[serde(default)]
    #[ts(skip)]
    pub good: Vec<String>,
}

/// One answer. Its id is the class.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[serde(deny_unknown_fields)]
pub struct ChoiceOption {
    /// The class.
    pub class: String,
    /// What the button says.
    pub label: String,
}

impl Choice {
    /// What the button of an answer says; its class where there is no such answer.
    #[must_use]
    pub fn label<'a>(&'a self, class: &'a str) -> &'a str {
        self.options.iter().find(|option| option.class == class).map_or(class, |option| &option.label)
    }
}

impl Kind for Choice {
    fn classes(&self) -> Vec<&str> {
        self.options.iter().map(|option| option.class.as_str()).collect()
    }

    fn holds(&self) -> &'static [&'static str] {
        &[]
    }

    fn good(&self) -> Option<Vec<&str>> {
        (!self.good.is_empty()).then(|| self.good.iter().map(String::as_str).collect())
    }

    fn planned(&self) -> Option<&'static str> {
        None
    }

    fn measures(&self) -> bool {
        false
    }

    fn sheet_needs(&self) -> Vec<SheetNeed<'_>> {
        Vec::new()
    }

    fn reads(&self) -> Vec<Read<'_>> {
        Vec::new()
    }

    fn lists(&self) -> Vec<Listed> {
        vec![Listed { at: "/options", what: "options", length: self.options.len() }]
    }

    fn judges(&self) -> bool {
        false
    }

    fn answers(&self) -> bool {
        true
    }

    fn wrong(&self) -> Vec<Wrong> {
        let classes = self.classes();
        let mut wrong: Vec<Wrong> = twice("/options", classes.iter().copied()).collect();
        if classes.len() < 2 {
            wrong.push(Wrong::new("", problem_choice()));
        }
        wrong.extend(not_good(&self.good, &classes));
        wrong
    }
}
