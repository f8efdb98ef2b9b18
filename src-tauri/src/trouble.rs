//! What went wrong, as the page shows it.
//!
//! A refusal by the rules is an answer (`Reply::refused`) and stands beside the main button; a trouble is a call that
//! failed.

use panside_bay::BayError;
use panside_bay::enter::PersonId;
use panside_messages::Message;
use serde::Serialize;
use ts_rs::TS;

use crate::message::speaker;

/// A failure. The page shows `message`; it chooses what to offer by `kind`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, TS)]
pub struct Trouble {
    /// What to offer.
    pub kind: TroubleKind,
    /// What happened and what the person can do, in sentences.
    pub message: String,
    /// Whose PIN has to be given first, where that is all.
    pub pin_of: Option<PersonId>,
}

/// What can be offered after a failure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum TroubleKind {
    /// The job moved on: draw it again.
    Stale,
    /// The rules refuse it: nothing to mend.
    Refused,
    /// A file that is no photo, or too large a one.
    Photo,
    /// The disk or the store: after it is mended, read the store anew.
    Store,
    /// Another window has the store: close that one and try again.
    Locked,
    /// A PIN has to be given first.
    Pin,
    /// Anything else.
    Other,
}

impl From<BayError> for Trouble {
    fn from(error: BayError) -> Trouble {
        let kind = match &error {
            BayError::Stale { .. } => TroubleKind::Stale,
            BayError::Refused { .. }
            | BayError::NotProved { .. }
            | BayError::NotDecided { .. }
            | BayError::AdoptNotProved(_)
            | BayError::ShopLacks(_) => TroubleKind::Refused,
            BayError::Photo(_) => TroubleKind::Photo,
            BayError::PinAsked { .. } => TroubleKind::Pin,
            error if error.is_locked() => TroubleKind::Locked,
            BayError::Store(_) => TroubleKind::Store,
            _ => TroubleKind::Other,
        };
        let pin_of = match &error {
            BayError::PinAsked { person, .. } => Some(*person),
            _ => None,
        };
        Trouble { kind, message: speaker().say(&error.message()), pin_of }
    }
}

impl Trouble {
    /// A failure that is no use case's.
    pub fn other(message: &Message) -> Trouble {
        Trouble { kind: TroubleKind::Other, message: speaker().say(message), pin_of: None }
    }
}
