//! What every kind of entry says of itself.

use std::collections::BTreeSet;

use panside_messages::Message;

use crate::format::sheet::ValueKind;
use crate::message::*;

/// The fields of a kind. No method has a default: whoever adds a kind answers every question.
pub trait Kind {
    /// Every class it can return with these fields. `classify` never returns another.
    fn classes(&self) -> Vec<&str>;

    /// Classes that always keep the step begun, whatever the file says: a count that is short, torque that is
    /// outside, a level that can't be read, a part that is hot, a balance that nobody has explained.
    fn holds(&self) -> &'static [&'static str];

    /// Classes with which the work goes on, where the kind or its fields tell good from bad; `None` where no class is
    /// better than another.
    fn good(&self) -> Option<Vec<&str>>;

    /// The class that is planned for, where it isn't the first that lets the step be done.
    fn planned(&self) -> Option<&'static str>;

    /// Whether it tells of something that can change again: a reading, a level, a coil, a hot part, a time waited.
    fn measures(&self) -> bool;

    /// The keys it needs on the spec sheet.
    fn sheet_needs(&self) -> Vec<SheetNeed<'_>>;

    /// The other entries of a certain kind that it reads.
    fn reads(&self) -> Vec<Read<'_>>;

    /// Its lists, which are bounded before anything is worked out from them.
    fn lists(&self) -> Vec<Listed>;

    /// Whether its class says more than the value, so that the record says both.
    fn judges(&self) -> bool;

    /// Whether a person answers in words, which can tell of concern, cause and correction in the record.
    fn answers(&self) -> bool;

    /// What is wrong with its fields by themselves.
    fn wrong(&self) -> Vec<Wrong>;
}

/// A kind with one class: it takes something down, and judges, holds and needs nothing.
macro_rules! takes_down {
    ($kind:ty, $class:expr, answers: $answers:literal) => {
        impl $crate::format::entry::Kind for $kind {
            fn classes(&self) -> Vec<&str> {
                vec![$class]
            }

            fn holds(&self) -> &'static [&'static str] {
                &[]
            }

            fn good(&self) -> Option<Vec<&str>> {
                None
            }

            fn planned(&self) -> Option<&'static str> {
                None
            }

            fn measures(&self) -> bool {
                false
            }

            fn sheet_needs(&self) -> Vec<$crate::format::entry::SheetNeed<'_>> {
                Vec::new()
            }

            fn reads(&self) -> Vec<$crate::format::entry::Read<'_>> {
                Vec::new()
            }

            fn lists(&self) -> Vec<$crate::format::entry::Listed> {
                Vec::new()
            }

            fn judges(&self) -> bool {
                false
            }

            fn answers(&self) -> bool {
                $answers
            }

            fn wrong(&self) -> Vec<$crate::format::entry::Wrong> {
                Vec::new()
            }
        }
    };
}

pub(super) use takes_down;

/// A key an entry needs on the spec sheet, and what must stand there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SheetNeed<'a> {
    /// The key.
    pub key: &'a str,
    /// The kind of value.
    pub kind: ValueKind,
    /// The unit the entry is read in, where the value must be of the same quantity.
    pub unit: Option<&'a str>,
    /// What the value is there for.
    pub how: Bound,
    /// The entry does without it, and says so.
    pub spare: bool,
}

/// What a value of the sheet is to an entry.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bound {
    /// What the value itself says.
    Is,
    /// No more than it.
    AtMost,
    /// No less than it.
    AtLeast,
    /// The temperature for which other limits stand.
    At,
    /// What the transmission holds.
    Holds,
    /// What may be lost or gained unseen.
    Unseen,
}

/// An entry that another one reads.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Read<'a> {
    /// As `step.entry`.
    pub entry: &'a str,
    /// The kind that it must be of.
    pub kind: &'static str,
    /// For a reading: the unit that it must be asked in.
    pub unit: Option<&'static str>,
}

/// A list among the fields of an entry.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Listed {
    /// Its place below the kind's own, such as `/options`.
    pub at: &'static str,
    /// What it is a list of: a field of the file, or a word that `problem-bound` knows.
    pub what: &'static str,
    /// How long it is.
    pub length: usize,
}

/// Something that is wrong with the fields of an entry.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Wrong {
    /// Its place below the kind's own, such as `/options/2`; empty: the entry as a whole.
    pub at: String,
    /// What is wrong, and what to do where that does not go without saying.
    pub what: Message,
}

impl Wrong {
    pub(super) fn new(at: &str, what: Message) -> Wrong {
        Wrong { at: at.to_owned(), what }
    }
}

/// Names of a list that are there twice.
pub(super) fn twice<'a>(at: &'a str, names: impl Iterator<Item = &'a str>) -> impl Iterator<Item = Wrong> {
    let mut seen = BTreeSet::new();
    let again = names.enumerate().filter(move |(_, name)| !seen.insert(*name));
    again.map(move |(place, name)| Wrong::new(&format!("{at}/{place}"), problem_twice(name)))
}

/// What is wrong with the classes that are said to be good.
pub(super) fn not_good(good: &[String], classes: &[&str]) -> Vec<Wrong> {
    let unknown = good.iter().enumerate().filter(|(_, class)| !classes.contains(&class.as_str()));
    let mut wrong: Vec<Wrong> =
        unknown.map(|(at, class)| Wrong::new(&format!("/good/{at}"), problem_good_none(class))).collect();
    if wrong.is_empty() && classes.iter().all(|class| good.iter().any(|one| one == class)) {
        wrong.push(Wrong::new("/good", problem_good_all()));
    }
    wrong
}
