//! Why something asked of the shop isn't done. Each sentence says what to do.

use crate::name::NameError;
use crate::thing::Thing;

/// Why no event is written.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ShopRefusal {
    /// A name that isn't taken.
    #[error(transparent)]
    Name(#[from] NameError),
    /// A name that can't be told from another's.
    #[error(
        "\"{name}\" can't be told from \"{existing}\", which is on the list already. Choose that one, or give a name \
         that tells them apart."
    )]
    LooksLike {
        /// The name, as it would be kept.
        name: String,
        /// The name it looks like.
        existing: String,
        /// Who or what has that name.
        thing: Thing,
    },
    /// A name that can't be told from that of somebody who has left.
    #[error(
        "\"{name}\" can't be told from \"{existing}\", who worked here before. If it is the same person, put them back on \
         the list; otherwise give a name that tells them apart."
    )]
    LooksLikeLeft {
        /// The name, as it would be kept.
        name: String,
        /// The name it looks like.
        existing: String,
    },
    /// Whoever asks isn't one of the shop's people.
    #[error(
        "Who you are is not known in this shop. Choose yourself from the shop's people, or be added first."
    )]
    WhoUnknown,
    /// The first person of a shop can only be added by themself.
    #[error("This shop has no people yet. Add yourself first, then the others.")]
    NobodyYet,
    /// There is no such thing.
    #[error("This {} is not on the shop's list. Look at the list again and choose one that is.", .0.noun())]
    NotHere(Thing),
    /// It isn't as the screen showed it.
    #[error("This {} was changed meanwhile. Look at it again and repeat.", .0.noun())]
    ChangedMeanwhile(Thing),
    /// Nothing would be different.
    #[error("This {} is kept like this already. Change something first.", .0.noun())]
    Unchanged(Thing),
    /// A person without a role could sign nothing.
    #[error("\"{name}\" has no role. Choose at least one.")]
    NoRole {
        /// The person's name.
        name: String,
    },
    /// Only leads make and unmake leads.
    #[error("Only a lead says who is a lead. Ask {} to do it.", .leads.join(" or "))]
    LeadAsked {
        /// Names of the leads.
        leads: Vec<String>,
    },
    /// The last lead would stop being it.
    #[error("\"{name}\" is the only lead. Make somebody else a lead first.")]
    LastLead {
        /// The lead's name.
        name: String,
    },
    /// Somebody would set another's PIN as if it were their own.
    #[error("A PIN is set by whose it is. If it was forgotten, ask a lead to set it before a second person.")]
    PinOfOther,
    /// A PIN is set anew by a lead and a second person, and this isn't three people.
    #[error(
        "A forgotten PIN is set by a lead before a second person. Neither of them is the one whose PIN it is: choose \
         three different people."
    )]
    PinWitness,
    /// A new revision with a number that is taken.
    #[error(
        "Revision {newest} of the spec sheet \"{id}\" is here already; this one says {revision}. Give it a higher number."
    )]
    SheetOlder {
        /// The sheet's id.
        id: String,
        /// The number of the one that was to be kept.
        revision: u32,
        /// The highest number that is here.
        newest: u32,
    },
    /// A change of a revision that isn't here.
    #[error(
        "The revision that this spec sheet was made from is not in this shop. Open the sheet anew and repeat the change."
    )]
    SheetBase {
        /// The sheet's id.
        id: String,
    },
}
