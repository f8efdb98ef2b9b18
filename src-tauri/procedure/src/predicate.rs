//! The predicate language of checklists: a small typed language over conditions, gates, steps and items.
//!
//! [`parse`] gives a tree with the place of each part; [`crate::load`] resolves names and compiles it.
//!
//! ```text
//! any   = all { "or" all }
//! all   = one { "and" one }
//! one   = "not" one | "(" any ")" | atom
//! atom  = "true" | "false" | "tray_clear" | "leaving" | NAME
//!       | NAME ("=" | "!=") VALUE | NAME "in" "{" VALUE { "," VALUE } "}"
//!       | ("worked" | "signed" | "known") "(" NAME ")"
//!       | "empty" "(" NAME ")" ("=" | "!=") NUMBER
//!       | ("doing.zone" | "doing.touches" | "doing.tag" | "moving" | "moved") "=" NAME
//! ```

mod lex;
mod parse;

use std::fmt;

use panside_messages::Message;

use crate::message::*;

pub use parse::{is_reserved, parse};

/// A predicate as a tree.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Expr {
    /// What it is.
    pub is: Node,
    /// Where it begins in its text, in characters from 0.
    pub at: usize,
}

/// The forms of a predicate.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Node {
    /// `true` or `false`.
    Const(bool),
    /// A named predicate.
    Term(String),
    /// A condition, fact or gate has one of the values; or, negated, none of them.
    Is {
        /// Name of the variable.
        name: String,
        /// The values, each with its place.
        values: Vec<(String, usize)>,
        /// Written with `!=`.
        negated: bool,
    },
    /// The step is worked.
    Worked(String),
    /// The sign-off is valid.
    Signed(String),
    /// The gate is not `unknown`.
    Known(String),
    /// How many places of an item are empty.
    Empty {
        /// Item id.
        item: String,
        /// The number compared with.
        count: u8,
        /// Written with `!=`.
        negated: bool,
    },
    /// Nothing is off the vehicle.
    TrayClear,
    /// The job is about to be finished or stopped (dangers only).
    Leaving,
    /// What is being done (dangers only).
    Doing(Doing, String),
    /// The other way round.
    Not(Box<Expr>),
    /// Every one of them.
    All(Vec<Expr>),
    /// At least one of them.
    Any(Vec<Expr>),
}

/// What a danger can read of the work that goes on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Doing {
    /// The zone of a begun step.
    Zone,
    /// A part that a begun step has its hands at.
    Touches,
    /// A tag of a begun step.
    Tag,
    /// The vehicle action that is about to be made, on the state before it.
    Moving,
    /// The vehicle action that was just made, on the state after it.
    Moved,
}

/// A predicate that cannot be read, with the place and what to do.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub struct PredicateError {
    /// Where, in characters from 0.
    pub at: usize,
    /// What is wrong and what to write instead.
    pub what: Message,
}

impl PredicateError {
    /// What is wrong, with its place.
    #[must_use]
    pub fn message(&self) -> Message {
        predicate_at(self.what.clone(), self.at + 1)
    }
}

impl fmt::Display for PredicateError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.message().english())
    }
}
