//! What a person asks for. [`crate::decide()`] answers with the events to write or with a refusal.

use std::collections::BTreeMap;

use panside_journal::PersonId;
use panside_messages::Speaker;
use panside_procedure::format::Role;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::message::{Arg, Message, refused_pin};
use crate::value::{Accounted, Authorized, EntryValue, EstimateLines, Signature, Urgency};

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
    /// Take down what was found outside of what the checklist foresaw. A fact: never refused while the job goes on.
    Found {
        /// What was found. Never empty.
        text: String,
        /// Where.
        #[serde(default)]
        at: Option<String>,
        /// What has to be done about it.
        urgency: Urgency,
        /// Photos of it.
        #[serde(default)]
        photos: Vec<EntryValue>,
    },
    /// What was found is dealt with.
    DealtWith {
        /// The number of the event that it was found with.
        found: u64,
        /// What was done about it. Never empty.
        text: String,
    },
    /// Ask the customer about parts and labor on top of what was agreed to. Until there is an answer the step can't be
    /// done.
    AskCustomer {
        /// The step that waits for the answer, by id.
        step: String,
        /// What turned up. Never empty.
        text: String,
        /// The finding that it is made from, by the number of its event.
        #[serde(default)]
        found: Option<u64>,
        /// Parts and labor.
        lines: EstimateLines,
    },
    /// Enter the customer's answer. A later one takes the place of the earlier.
    Answer {
        /// The number of the event that asked.
        asked: u64,
        /// The answer.
        answer: Authorized,
    },
    /// Go on without what the customer did not agree to.
    GoOnWithout {
        /// The number of the event that asked.
        asked: u64,
        /// Why. Never empty.
        reason: String,
    },
    /// Pieces are off that the checklist does not know. A fact: never refused while the job goes on.
    PieceOff {
        /// What they are. Never empty.
        name: String,
        /// How many, from 1 to 63.
        count: u8,
        /// Where they come from.
        #[serde(default)]
        at: Option<String>,
        /// Photos of them in their place.
        #[serde(default)]
        photos: Vec<EntryValue>,
    },
    /// Such pieces are on again.
    PieceBack {
        /// The number of the event that they came off with.
        piece: u64,
        /// How many.
        count: u8,
        /// To what they were tightened.
        #[serde(default)]
        torque: Option<String>,
    },
    /// Such pieces do not come back.
    PieceGone {
        /// The number of the event that they came off with.
        piece: u64,
        /// How many.
        count: u8,
        /// Why, and who says so.
        accounted: Accounted,
    },
    /// A finding, a question or a piece was entered by mistake.
    TakeBack {
        /// The number of its event.
        of: u64,
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

    /// The values that are entered with it.
    #[must_use]
    pub fn values(&self) -> Vec<&EntryValue> {
        match self {
            Command::Enter { value, .. } => vec![value],
            Command::Work { entries, .. } | Command::Correct { entries, .. } => entries.values().collect(),
            Command::Found { photos, .. } | Command::PieceOff { photos, .. } => photos.iter().collect(),
            _ => Vec::new(),
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
