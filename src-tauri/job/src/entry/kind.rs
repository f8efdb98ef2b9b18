//! What each kind of entry makes of a value. The fields of the kind are the checklist's (`panside_procedure::format::entry`);
//! what they are worth on the vehicle is said here, one file a kind.

use panside_procedure::format::Checklist;

use super::{Classified, Context};
use crate::command::Refusal;
use crate::message::{Message, entry_kind, kind_label};
use crate::sheet::Specs;
use crate::value::EntryValue;

/// The fields of a kind with what they make of values. No method has a default: whoever adds a kind answers every
/// question. A value of another kind is nobody's: [`Kind::classify`] refuses it, the others say nothing of it.
pub(crate) trait Kind {
    /// Judges a value.
    fn classify(
        &self,
        specs: &Specs,
        value: &EntryValue,
        context: &Context<'_>,
    ) -> Result<Classified, Refusal>;

    /// What the sheet allows.
    fn limits(&self, specs: &Specs, checklist: &Checklist) -> Vec<Message>;

    /// Symbols of the units in which a value may be typed, the usual one first. A level's are those of its trace.
    fn units(&self) -> Vec<String>;

    /// The same for a temperature that is typed beside the value.
    fn temperature_units(&self) -> Vec<String>;

    /// The number and unit in a value that is shown in another unit too.
    fn converted<'v>(&self, value: &'v EntryValue) -> Option<(&'v str, &'v str)>;

    /// A value in few words; `None` where its class says as much.
    fn in_short(&self, value: &EntryValue, checklist: &Checklist) -> Option<String>;

    /// Whether what was read, and not only what it turned out to be, is said of a gate that came from it.
    fn is_measured(&self) -> bool;
}

/// What a kind answers that measures nothing: for the inside of its `impl Kind`.
macro_rules! measures_nothing {
    () => {
        fn limits(
            &self,
            _: &$crate::sheet::Specs,
            _: &panside_procedure::format::Checklist,
        ) -> Vec<$crate::message::Message> {
            Vec::new()
        }

        fn units(&self) -> Vec<String> {
            Vec::new()
        }

        fn temperature_units(&self) -> Vec<String> {
            Vec::new()
        }

        fn converted<'v>(&self, _: &'v $crate::value::EntryValue) -> Option<(&'v str, &'v str)> {
            None
        }

        fn is_measured(&self) -> bool {
            false
        }
    };
}

pub(super) use measures_nothing;

/// Refuses a value of another kind than is asked for.
pub(super) fn other(asked: &str, value: &EntryValue) -> Refusal {
    entry_kind(kind_label(asked), kind_label(value.kind())).into()
}
