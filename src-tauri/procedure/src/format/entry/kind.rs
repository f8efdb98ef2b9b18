//! What every kind of entry says of itself.

use crate::format::sheet::ValueKind;

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

    /// The other entries that it reads.
    fn reads(&self) -> Vec<Read<'_>>;

    /// Its lists, which are bounded before anything is worked out from them.
    fn lists(&self) -> Vec<Listed>;
}

/// A key an entry needs on the spec sheet, and what must stand there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SheetNeed<'a> {
    /// The key.
    pub key: &'a str,
    /// The kind of value.
    pub kind: ValueKind,
    /// The unit the entry is read in, where the value must be of the same quantity.
    pub unit: Option<&'a str>,
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
    /// What it is a list of.
    pub what: &'static str,
    /// How long it is.
    pub length: usize,
}
