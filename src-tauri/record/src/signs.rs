//! Sign-offs: every time one was given, by whom, and through what it lapsed.

use panside_job::job::Given as JobGiven;
use panside_procedure::format::{Role, SignKind};
use panside_procedure::machine::{InJob, SignIx};
use serde::{Deserialize, Serialize};

use crate::by::By;
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
    /// The name under it.
    pub signed_by: String,
    /// As what they signed.
    pub role: Role,
    /// At a hold point: whether they gave their PIN, or had none to give.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pin: Option<bool>,
    /// The event that gave it.
    pub by: By,
    /// When it lapsed. Nothing: it did not.
    pub lapsed: Option<Lapse>,
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
        signed_by: time.signature.by.clone(),
        role: time.signature.role,
        pin: time.signature.pin,
        by: source.by(&time.mark),
        lapsed: time
            .lapsed
            .as_ref()
            .map(|mark| Lapse { by: source.by(mark), through: source.what(mark.seq) }),
    }
}
