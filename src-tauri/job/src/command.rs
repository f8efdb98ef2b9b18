//! What a person asks for. [`crate::decide()`] answers with the events to write or with a refusal.

use std::collections::BTreeMap;

use panside_journal::PersonId;
use panside_messages::Speaker;
use panside_procedure::format::Role;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::message::{Arg, Message, refused_pin};
use crate::value::{EntryValue, Signature};

/// Who asks. The name is not said here: it is the shop's to say ([`crate::Roster`]).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(deny_unknown_fields)]
pub struct Actor {
    /// The person.
    pub id: PersonId,
    /// As what they act; one of what they are.
    pub role: Role,
}

impl Actor {
    /// Nobody: something is only shown.
    pub(crate) const NOBODY: Actor = Actor { id: PersonId::TABLET, role: Role::Technician };
}

/// One command. Names are the ids of the checklist.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Command {
    /// Go into a step.
    Begin {
        /// Step id.
        step: String,
    },
    /// Leave a step that is not done.
    Leave {
        /// Step id.
        step: String,
    },
    /// Enter one value at a step in progress. What keeps the step in progress (too hot, short) is written as well.
    Enter {
        /// Step id.
        step: String,
        /// Entry id.
        entry: String,
        /// The value.
        value: EntryValue,
    },
    /// A step in progress is done, with its signatures.
    Done {
        /// Step id.
        step: String,
        /// One for each sign-off the step asks for.
        #[serde(default)]
        signatures: Vec<Signature>,
    },
    /// Begin the step unless it is in progress, enter the values and be done, all in one go. Where a value keeps the step
    /// in progress, the beginning and the values are written and the step stays in progress.
    Work {
        /// Step id.
        step: String,
        /// Values by entry id.
        #[serde(default)]
        entries: BTreeMap<String, EntryValue>,
        /// One for each sign-off the step asks for.
        #[serde(default)]
        signatures: Vec<Signature>,
        /// The work was done before and is entered only now.
        #[serde(default)]
        later: bool,
    },
    /// Make a vehicle action.
    VehicleAction {
        /// Its id.
        action: String,
    },
    /// Renew one sign-off of a worked step.
    Sign {
        /// The signature, with the sign-off it is for.
        signature: Signature,
    },
    /// Renew several sign-offs at once: those that one event made lapse.
    SignAgain {
        /// The signatures.
        signatures: Vec<Signature>,
    },
    /// Skip a step.
    Skip {
        /// Step id.
        step: String,
        /// Why. Never empty.
        reason: String,
    },
    /// Void what was entered at a worked step.
    Void {
        /// Step id.
        step: String,
        /// Why. Never empty.
        reason: String,
    },
    /// Correct a voided step afterwards, without doing the work again.
    Correct {
        /// Step id.
        step: String,
        /// Values by entry id; every required one.
        #[serde(default)]
        entries: BTreeMap<String, EntryValue>,
        /// One for each sign-off the step asks for.
        #[serde(default)]
        signatures: Vec<Signature>,
        /// What was wrong.
        #[serde(default)]
        reason: Option<String>,
    },
    /// The vehicle is not as shown. A fact: never refused, unless it names nothing that exists.
    Observe {
        /// Condition id.
        condition: String,
        /// The value it has.
        value: String,
        /// How it came to that. Never empty.
        reason: String,
    },
    /// Say why a missed step was not worked.
    ExplainMissed {
        /// Step id.
        step: String,
        /// Why. Never empty.
        reason: String,
    },
    /// Finish the job.
    Finish,
    /// Stop the job before its end.
    Stop {
        /// Why. Never empty.
        reason: String,
    },
}

impl Command {
    /// The signatures that are given with it.
    pub fn signatures_mut(&mut self) -> &mut [Signature] {
        match self {
            Command::Done { signatures, .. }
            | Command::Work { signatures, .. }
            | Command::Correct { signatures, .. }
            | Command::SignAgain { signatures } => signatures,
            Command::Sign { signature } => std::slice::from_mut(signature),
            _ => &mut [],
        }
    }

    /// The step at which values are entered with it, and the values by entry.
    pub fn values_mut(&mut self) -> Option<(&str, Vec<(&str, &mut EntryValue)>)> {
        match self {
            Command::Enter { step, entry, value } => Some((step, vec![(entry, value)])),
            Command::Work { step, entries, .. } | Command::Correct { step, entries, .. } => {
                Some((step, entries.iter_mut().map(|(entry, value)| (entry.as_str(), value)).collect()))
            }
            _ => None,
        }
    }
}

/// Why a command is not fulfilled, and what would have to hold. Not an error.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct Refusal {
    /// Why not.
    pub message: Message,
    /// What does not hold or is missing, one by one.
    pub unmet: Vec<Message>,
}

impl Refusal {
    /// A signature at a hold point needs the PIN of the person who signs.
    #[must_use]
    pub fn pin_missing(person: PersonId, name: &str) -> Refusal {
        refused_pin(name, person.to_string()).into()
    }

    /// Why not, with everything that is missing.
    #[must_use]
    pub fn said_by(&self, speaker: &Speaker) -> String {
        speaker.arg(&self.sentences())
    }

    /// The same, to be put into another message.
    #[must_use]
    pub fn sentences(&self) -> Arg {
        Arg::Sentences(std::iter::once(&self.message).chain(&self.unmet).cloned().collect())
    }

    /// Who has to give their PIN, where that is all that is missing.
    #[must_use]
    pub fn pin_of(&self) -> Option<PersonId> {
        match self.message.args.get("person") {
            Some(Arg::Text(person)) if self.message.id == refused_pin("", "").id => person.parse().ok(),
            _ => None,
        }
    }
}

impl From<Message> for Refusal {
    fn from(message: Message) -> Refusal {
        Refusal { message, unmet: Vec::new() }
    }
}
