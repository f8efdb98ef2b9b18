//! Sign-offs: every time one was given, by whom, and through what it lapsed.

use panside_job::SignedPin;
use panside_job::job::Given as JobGiven;
use panside_messages::Message;
use panside_procedure::format::{Role, SignKind};
use panside_procedure::machine::{InJob, SignIx};
use serde::{Deserialize, Serialize};

use crate::by::By;
use crate::messages;
use crate::source::Source;

/// One sign-off.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SignOff {
    /// Its id.
    pub id: String,
    /// What is signed.
    pub text: String,
    /// Permit or attest.
    pub kind: SignKind,
    /// Who must sign; nothing: who works the step.
    pub asked_of: Option<Role>,
    /// The step that gives it.
    pub step: String,
    /// It is valid now.
    pub valid: bool,
    /// Every time it was given, oldest first.
    pub given: Vec<Given>,
}

/// One time a sign-off was given.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Given {
    /// Who signed, as they were called then.
    pub signed_by: String,
    /// As what they signed.
    pub role: Role,
    /// At a hold point: what is known of their PIN.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pin: Option<Pin>,
    /// The event that gave it.
    pub by: By,
    /// When it lapsed. Nothing: it did not.
    pub lapsed: Option<Lapse>,
}

/// What is known of a PIN at a hold point.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Pin {
    /// The person had none to give.
    NoPin,
    /// It was given, and the person had set it.
    Own,
    /// It was given, and others had set it for the person.
    SetBy {
        /// Who leads the shop.
        lead: String,
        /// The second person, who gave their PIN too.
        second: String,
    },
}

/// How a sign-off lapsed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lapse {
    /// The event that made it lapse.
    pub by: By,
    /// What that event was.
    pub through: String,
}

/// Every sign-off that was given or belongs to a step of this job, in file order.
pub(crate) fn of(source: Source<'_>) -> Vec<SignOff> {
    let (procedure, job) = (&source.job.procedure, source.job);
    let signs = procedure.machine.signs.iter().enumerate().filter_map(|(at, rule)| {
        let number = SignIx::of(at);
        let times = job.sign(number);
        let in_job = procedure.machine.in_job(&job.state, rule.step) == InJob::Yes;
        let text = procedure.sign_off(number);
        (in_job || !times.is_empty()).then(|| SignOff {
            id: text.id.clone(),
            text: text.text.clone(),
            kind: text.kind,
            asked_of: text.by,
            step: procedure.step(rule.step).id.clone(),
            valid: procedure.machine.is_valid(&job.state, number),
            given: times.iter().map(|time| given(source, time)).collect(),
        })
    });
    signs.collect()
}

fn given(source: Source<'_>, time: &JobGiven) -> Given {
    Given {
        signed_by: time.name.clone(),
        role: time.signature.role,
        pin: time.signature.pin.map(|pin| pin_told(source, pin, time.mark.seq)),
        by: source.by(&time.mark),
        lapsed: time
            .lapsed
            .as_ref()
            .map(|mark| Lapse { by: source.by(mark), through: source.what(mark.seq) }),
    }
}

/// What is known of a PIN, people as they were called then.
pub(crate) fn pin_told(source: Source<'_>, pin: SignedPin, seq: u64) -> Pin {
    let called = |person| source.job.people.called(person, seq);
    match pin {
        SignedPin::NoPin => Pin::NoPin,
        SignedPin::Own => Pin::Own,
        SignedPin::SetBy { lead, second } => Pin::SetBy { lead: called(lead), second: called(second) },
    }
}

/// The same in words.
pub(crate) fn pin_words(pin: &Pin) -> Message {
    match pin {
        Pin::Own => messages::pin_given(),
        Pin::SetBy { lead, second } => messages::pin_set_by(lead, second),
        Pin::NoPin => messages::pin_none(),
    }
}
