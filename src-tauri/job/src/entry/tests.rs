//! What the figures say at an entry, as the technician meets it.

mod balance;
mod coil;
mod cool_down;
mod level;
mod scan;
mod torque;

use crate::message::Message;
use crate::testing::{Bay, figures};
use crate::value::EntryValue;
use crate::view::{Preview, preview};

/// A job on the checklist that has one entry of each kind that is worked out.
pub(super) fn bay() -> Bay {
    let (procedure, specs) = figures();
    Bay::with(procedure, specs)
}

/// A bay with a step in progress.
pub(super) fn at(step: &str) -> Bay {
    let mut bay = bay();
    bay.begin(step).unwrap();
    bay
}

/// What is told while it is typed.
pub(super) fn typing(bay: &Bay, step: &str, entry: &str, value: &EntryValue) -> Preview {
    preview(&bay.job, &bay.shop, step, entry, value, &bay.now())
}

pub(super) fn ids(said: &[Message]) -> Vec<&str> {
    said.iter().map(|message| message.id.as_str()).collect()
}

/// An argument of the message with this id, as text.
pub(super) fn arg(said: &[Message], id: &str, name: &str) -> String {
    let message = said.iter().find(|message| message.id == id);
    let message = message.unwrap_or_else(|| panic!("{id} is not said: {:?}", ids(said)));
    match &message.args[name] {
        crate::message::Arg::Text(text) => text.clone(),
        crate::message::Arg::Number(number) => number.to_string(),
        other => panic!("{other:?}"),
    }
}
