//! What can happen on a job, and the form in which the journal keeps it.
//!
//! An event says what was decided when it was decided: the class of a value, what lapsed, what is no longer known.
//! Newer rules do not rewrite it. The list at the end of this file gives each kind its name and the version of its
//! body. When the form of a body changes, its version goes up by one and [`Event::from_body`] turns older bodies into
//! the new form; `tests/fixtures/events.jsonl` keeps samples of every form ever written.

mod body;
mod turned_up;

use panside_journal::PersonId;
use panside_procedure::format::Role;
use serde::Serialize;
use serde::de::DeserializeOwned;

pub use body::{
    Begun, ClockJumped, Corrected, Done, Entered, Expired, Finished, Introduced, Left, Lost, MissedExplained,
    Observed, Pinned, PinnedTexts, Signed, Skipped, Started, Stopped, VehicleAction, Voided,
};

pub use turned_up::{Answered, Asked, DealtWith, Found, PieceBack, PieceGone, PieceOff, TakenBack, WentOn};

use crate::error::JobError;
use crate::value::{EntryValue, SignedPin};

/// Declares the events of one subject, so that the enum, the names and the reading can't drift apart.
#[macro_export]
macro_rules! events {
    (
        $(#[$about:meta])* $name:ident;
        $($(#[$doc:meta])* $variant:ident: $kind:literal, version $version:literal;)+
    ) => {
        $(#[$about])*
        #[derive(Debug, Clone, PartialEq, Eq)]
        pub enum $name { $($(#[$doc])* $variant($variant),)+ }

        impl $name {
            /// Every kind with the version of its body that is written now.
            pub const KINDS: &[(&str, u32)] = &[$(($kind, $version),)+];

            /// The kind's name in the journal.
            #[must_use]
            pub fn kind(&self) -> &'static str {
                match self { $($name::$variant(_) => $kind,)+ }
            }

            /// The kind's name, the version of the body's form, and the body as JSON on one line.
            ///
            /// # Errors
            /// [`JobError::Unwritable`] when the JSON writer fails.
            pub fn to_body(&self) -> Result<(&'static str, u32, Vec<u8>), $crate::JobError> {
                match self {
                    $($name::$variant(body) => Ok(($kind, $version, $crate::event::write($kind, body)?)),)+
                }
            }

            /// Reads a body that any version of Panside up to this one wrote.
            ///
            /// # Errors
            /// [`JobError::KindUnknown`] and [`JobError::VersionUnknown`] for what a newer version wrote,
            /// [`JobError::Body`] for a body that is not what kind and version promise.
            pub fn from_body(kind: &str, version: u32, bytes: &[u8]) -> Result<$name, $crate::JobError> {
                match kind {
                    $($kind => $crate::event::read($kind, version, $version, bytes).map($name::$variant),)+
                    _ => Err($crate::JobError::KindUnknown { kind: kind.to_owned() }),
                }
            }
        }

        $(impl From<$variant> for $name {
            fn from(body: $variant) -> $name { $name::$variant(body) }
        })+
    };
}

/// The body as JSON on one line; for [`events!`](crate::events).
#[doc(hidden)]
pub fn write<B: Serialize>(kind: &'static str, body: &B) -> Result<Vec<u8>, JobError> {
    serde_json::to_vec(body).map_err(|source| JobError::Unwritable { kind, source })
}

/// The body of a kind, of any version up to `newest`; for [`events!`](crate::events).
#[doc(hidden)]
pub fn read<B: DeserializeOwned>(
    kind: &'static str,
    version: u32,
    newest: u32,
    bytes: &[u8],
) -> Result<B, JobError> {
    if version > newest {
        return Err(JobError::VersionUnknown { kind, version, newest });
    }
    // Newer forms have only gained fields that may be absent, so that older ones are read by the same types. A form
    // that is otherwise is turned into the newest here, by kind and version.
    serde_json::from_slice(bytes).map_err(|source| JobError::Body { kind, version, source })
}

impl Event {
    /// What lapsed and what is no longer known through it. Nothing for events that change no rule state.
    #[must_use]
    pub fn lost(&self) -> Option<&Lost> {
        match self {
            Event::Begun(body) => Some(&body.lost),
            Event::Left(body) => Some(&body.lost),
            Event::Done(body) => Some(&body.lost),
            Event::VehicleAction(body) => Some(&body.lost),
            Event::Signed(body) => Some(&body.lost),
            Event::Skipped(body) => Some(&body.lost),
            Event::Voided(body) => Some(&body.lost),
            Event::Corrected(body) => Some(&body.lost),
            Event::Observed(body) => Some(&body.lost),
            Event::Expired(body) => Some(&body.lost),
            Event::Finished(body) => Some(&body.lost),
            Event::Stopped(body) => Some(&body.lost),
            Event::Started(_)
            | Event::Introduced(_)
            | Event::Entered(_)
            | Event::MissedExplained(_)
            | Event::ClockJumped(_)
            | Event::Found(_)
            | Event::DealtWith(_)
            | Event::Asked(_)
            | Event::Answered(_)
            | Event::WentOn(_)
            | Event::PieceOff(_)
            | Event::PieceBack(_)
            | Event::PieceGone(_)
            | Event::TakenBack(_) => None,
        }
    }

    /// The values that are entered with it.
    #[must_use]
    pub fn values(&self) -> Vec<&EntryValue> {
        match self {
            Event::Entered(body) => vec![&body.value],
            Event::Corrected(body) => body.values.values().collect(),
            Event::Found(body) => body.photos.iter().collect(),
            Event::PieceOff(body) => body.photos.iter().collect(),
            _ => Vec::new(),
        }
    }

    /// The people whom it names beside who made it, with the role in which they appear where it says one: who signs,
    /// who set the PIN of who signs, who says so where something is passed by a name.
    pub(crate) fn people(&self) -> Vec<(PersonId, Option<Role>)> {
        let signs = match self {
            Event::Done(body) => body.signs.as_slice(),
            Event::Corrected(body) => body.signs.as_slice(),
            Event::Signed(body) => std::slice::from_ref(&body.signature),
            _ => &[],
        };
        let set_by = |pin| match pin {
            Some(SignedPin::SetBy { lead, second }) => vec![(lead, None), (second, None)],
            _ => Vec::new(),
        };
        let signers = signs.iter().flat_map(|signature| {
            std::iter::once((signature.by, Some(signature.role))).chain(set_by(signature.pin))
        });
        let gone = match self {
            Event::PieceGone(body) => Some((body.accounted.by, None)),
            _ => None,
        };
        let say_so = self.values().into_iter().filter_map(|value| {
            let pin = if let EntryValue::Decision { pin, .. } = value { *pin } else { None };
            Some(std::iter::once((value.accounted()?.by, None)).chain(set_by(pin)))
        });
        signers.chain(say_so.flatten()).chain(gone).collect()
    }

    /// The step it belongs to.
    #[must_use]
    pub fn step(&self) -> Option<&str> {
        match self {
            Event::Begun(Begun { step, .. })
            | Event::Left(Left { step, .. })
            | Event::Entered(Entered { step, .. })
            | Event::Done(Done { step, .. })
            | Event::Skipped(Skipped { step, .. })
            | Event::Voided(Voided { step, .. })
            | Event::Corrected(Corrected { step, .. })
            | Event::MissedExplained(MissedExplained { step, .. }) => Some(step),
            _ => None,
        }
    }
}

events! {
    /// One thing that happened on a job: the body of a journal event.
    Event;
    /// The job was started.
    Started: "started", version 2;
    /// A person appears under a name and in a role that the job did not have of them. It comes before what they appear
    /// in; who starts the job is introduced by its start.
    Introduced: "introduced", version 1;
    /// A person went into a step.
    Begun: "begun", version 1;
    /// A person left a step that was not done.
    Left: "left", version 1;
    /// A value was entered.
    Entered: "entered", version 1;
    /// A step was done.
    Done: "done", version 1;
    /// A vehicle action was made.
    VehicleAction: "vehicle_action", version 1;
    /// A sign-off was renewed.
    Signed: "signed", version 1;
    /// A step was skipped.
    Skipped: "skipped", version 1;
    /// What was entered at a step was voided.
    Voided: "voided", version 1;
    /// A voided step was corrected afterwards.
    Corrected: "corrected", version 1;
    /// The vehicle was not as shown.
    Observed: "observed", version 1;
    /// What was known had grown too old.
    Expired: "expired", version 1;
    /// It was said why a missed step was not worked.
    MissedExplained: "missed_explained", version 1;
    /// The job was finished.
    Finished: "finished", version 1;
    /// The job was stopped before its end.
    Stopped: "stopped", version 1;
    /// The wall clock was set.
    ClockJumped: "clock_jumped", version 1;
    /// Something was found that the checklist did not foresee.
    Found: "found", version 1;
    /// What was found was dealt with.
    DealtWith: "dealt_with", version 1;
    /// The customer was asked again.
    Asked: "asked", version 1;
    /// The customer answered.
    Answered: "answered", version 1;
    /// The job goes on without what the customer did not agree to.
    WentOn: "went_on", version 1;
    /// Pieces are off that the checklist does not know.
    PieceOff: "piece_off", version 1;
    /// Some of these pieces are on again.
    PieceBack: "piece_back", version 1;
    /// Some of these pieces do not come back.
    PieceGone: "piece_gone", version 1;
    /// What was found, asked or taken off was entered by mistake.
    TakenBack: "taken_back", version 1;
}
