//! Commands and their answers, told as work in a bay.

mod facts;
mod signs;
mod turned_up;
mod work;
mod written;

use std::collections::BTreeMap;

use panside_journal::{Hash, Stamp};
use panside_procedure::Shown;
use panside_procedure::format::{Role, Signal};

use super::*;
use crate::message::*;
use crate::testing::{
    Bay, USUAL_ORDER, boot, choice, clicked, degrees, go_ahead, litres, member, person, pieces, sign, specs,
    stamp, technician, work,
};
use crate::value::{EntryValue, Signature, Tool};

fn observe(condition: &str, value: &str) -> Command {
    Command::Observe { condition: condition.into(), value: value.into(), reason: "seen".into() }
}

fn make(made: &str) -> Command {
    Command::VehicleAction { action: made.into() }
}

fn void(step: &str) -> Command {
    Command::Void { step: step.into(), reason: "entered for another vehicle".into() }
}

fn any_of(words: &[&str]) -> Arg {
    Arg::AnyOf(words.iter().map(|&word| word.to_owned()).collect())
}
