//! One thing that a proof has found, where it stands in the file, and what would close it.

use panside_messages::Message;
use serde::Serialize;

use super::Property;
use crate::format::Signal;
use crate::load::{Procedure, Spot};
use crate::machine::{Action, State};
use crate::said::{sentence, sentence_if_any, sentences};

/// One thing that refutes a checklist.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Finding {
    /// The property that fails.
    pub property: Property,
    /// What is wrong.
    #[serde(serialize_with = "sentence")]
    pub what: Message,
    /// Where to look for it in the file.
    pub place: Place,
    /// The shortest run that leads there; empty where no run is meant.
    #[serde(serialize_with = "sentences")]
    pub run: Vec<Message>,
    /// The smallest change to a predicate that would close it, or that none was found; absent where none was looked
    /// for.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "sentence_if_any")]
    pub fix: Option<Message>,
    #[serde(skip)]
    signal: Option<Signal>,
    /// For a danger: the state before the last action of the run, and that action.
    #[serde(skip)]
    pub(super) into: Option<(State, Action)>,
}

/// Something odd that refutes nothing: a rule that is never asked, an entry that decides nothing.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Remark {
    /// What is odd.
    #[serde(serialize_with = "sentence")]
    pub what: Message,
    /// Where it stands in the file.
    pub place: Place,
}

/// A place in a checklist's file.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Place {
    /// The file of the part it stands in; absent for the checklist's own.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub file: Option<String>,
    /// Line, from 1.
    pub line: usize,
    /// Column, from 1.
    pub column: usize,
    /// The place as a JSON pointer.
    pub pointer: String,
}

impl Place {
    /// As it is said in a sentence.
    #[must_use]
    pub fn message(&self) -> Message {
        let spot = Spot { file: self.file.clone(), line: self.line, column: self.column };
        spot.at(&self.pointer)
    }

    pub(super) fn of(procedure: &Procedure, pointer: impl Into<String>) -> Place {
        let pointer = pointer.into();
        let Spot { file, line, column } = procedure.spot(&pointer);
        Place { file, line, column, pointer }
    }
}

impl Finding {
    pub(super) fn new(property: Property, what: Message, place: Place) -> Finding {
        Finding { property, what, place, run: Vec::new(), fix: None, signal: None, into: None }
    }

    pub(super) fn after(mut self, run: Vec<Message>) -> Finding {
        self.run = run;
        self
    }

    pub(super) fn danger(mut self, signal: Signal, into: Option<(State, Action)>) -> Finding {
        self.signal = Some(signal);
        self.into = into;
        self
    }

    /// What hurts most stands first: people before things, what can't be left safely before what can't be ended, and
    /// of two alike the one that is reached sooner.
    pub(super) fn rank(&self) -> (u8, u8, usize) {
        let property = match self.property {
            Property::Safe => 0,
            Property::HonestWhenWrong => 1,
            Property::CanStop => 2,
            Property::NothingLeft => 3,
            Property::CanFinish => 4,
            Property::AllUsed => 5,
        };
        let hurts = match self.signal {
            Some(Signal::Danger) => 0,
            Some(Signal::Warning) => 1,
            Some(Signal::Caution) => 2,
            Some(Signal::Notice) => 4,
            None => 3,
        };
        (property, hurts, self.run.len())
    }
}
