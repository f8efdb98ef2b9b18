//! Why something asked of the shop isn't done. Each sentence says what to do.

use std::fmt;

use panside_messages::{Arg, Message};

use crate::message::*;
use crate::name::NameError;
use crate::thing::Thing;

/// Why no event is written.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ShopRefusal {
    /// A name that isn't taken.
    Name(#[from] NameError),
    /// A name that can't be told from another's.
    LooksLike {
        /// The name, as it would be kept.
        name: String,
        /// The name it looks like.
        existing: String,
        /// Who or what has that name.
        thing: Thing,
    },
    /// A name that can't be told from that of somebody who has left.
    LooksLikeLeft {
        /// The name, as it would be kept.
        name: String,
        /// The name it looks like.
        existing: String,
    },
    /// Whoever asks isn't one of the shop's people.
    WhoUnknown,
    /// The first person of a shop can only be added by themself.
    NobodyYet,
    /// There is no such thing.
    NotHere(Thing),
    /// It isn't as the screen showed it.
    ChangedMeanwhile(Thing),
    /// Nothing would be different.
    Unchanged(Thing),
    /// A person without a role could sign nothing.
    NoRole {
        /// The person's name.
        name: String,
    },
    /// Only leads make and unmake leads.
    LeadAsked {
        /// Names of the leads.
        leads: Vec<String>,
    },
    /// The last lead would stop being it.
    LastLead {
        /// The lead's name.
        name: String,
    },
    /// Somebody would set another's PIN as if it were their own.
    PinOfOther,
    /// A PIN is set anew by a lead and a second person, and this isn't three people.
    PinWitness,
    /// A new revision with a number that is taken.
    SheetOlder {
        /// The sheet's id.
        id: String,
        /// The number of the one that was to be kept.
        revision: u32,
        /// The highest number that is here.
        newest: u32,
    },
    /// Another text under the number of a revision that was adopted.
    ChecklistRevision {
        /// The checklist's id.
        id: String,
        /// The number.
        revision: u32,
    },
    /// A change of a revision that isn't here.
    SheetBase {
        /// The sheet's id.
        id: String,
    },
}

impl ShopRefusal {
    /// What to say to a person.
    #[must_use]
    pub fn message(&self) -> Message {
        match self {
            ShopRefusal::Name(error) => error.message(),
            ShopRefusal::LooksLike { name, existing, .. } => shop_looks_like(name, existing),
            ShopRefusal::LooksLikeLeft { name, existing } => shop_looks_like_left(name, existing),
            ShopRefusal::WhoUnknown => shop_who_unknown(),
            ShopRefusal::NobodyYet => shop_nobody_yet(),
            ShopRefusal::NotHere(thing) => shop_not_here(thing.noun()),
            ShopRefusal::ChangedMeanwhile(thing) => shop_changed_meanwhile(thing.noun()),
            ShopRefusal::Unchanged(thing) => shop_unchanged(thing.noun()),
            ShopRefusal::NoRole { name } => shop_no_role(name),
            ShopRefusal::LeadAsked { leads } => shop_lead_asked(Arg::AnyOf(leads.clone())),
            ShopRefusal::LastLead { name } => shop_last_lead(name),
            ShopRefusal::PinOfOther => shop_pin_of_other(),
            ShopRefusal::PinWitness => shop_pin_witness(),
            ShopRefusal::SheetOlder { id, revision, newest } => shop_sheet_older(*newest, id, *revision),
            ShopRefusal::ChecklistRevision { id, revision } => shop_checklist_revision(id, *revision),
            ShopRefusal::SheetBase { .. } => shop_sheet_base(),
        }
    }
}

impl fmt::Display for ShopRefusal {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.message().english())
    }
}
