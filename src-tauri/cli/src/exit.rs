//! How the program ends, and what it says when it fails.

use std::path::Path;
use std::process::ExitCode;

use panside_bay::{BayError, outside};
use panside_messages::Message;
use panside_procedure::Problems;
use panside_procedure::load::LARGEST_FILE;

use crate::message::cli_does_not_load;

/// The exit codes, as `--help` lists them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Exit {
    /// Done, proved, in order.
    Done = 0,
    /// Refused, refuted, something found wrong.
    Refused = 1,
    /// A proof did not come to its end.
    NotDecided = 2,
    /// A file does not load.
    DoesNotLoad = 3,
    /// The disk or the store.
    Store = 4,
    /// Wrong usage.
    Usage = 64,
}

impl From<Exit> for ExitCode {
    fn from(exit: Exit) -> ExitCode {
        ExitCode::from(exit as u8)
    }
}

/// Why the program ends early.
#[derive(Debug)]
pub struct Failure {
    /// What to say.
    pub message: Message,
    /// How to end.
    pub exit: Exit,
}

impl Failure {
    pub fn new(exit: Exit, message: Message) -> Failure {
        Failure { message, exit }
    }

    pub fn does_not_load(path: &Path, problems: &Problems) -> Failure {
        Failure::new(Exit::DoesNotLoad, cli_does_not_load(path, problems.lines()))
    }
}

impl From<BayError> for Failure {
    fn from(error: BayError) -> Failure {
        let exit = match &error {
            BayError::Checklist(_) | BayError::Sheet(_) | BayError::Texts(_) | BayError::SheetLacks(_) => {
                Exit::DoesNotLoad
            }
            BayError::NotDecided { .. } => Exit::NotDecided,
            BayError::ChecklistParts(_) | BayError::ChecklistId(_) => Exit::DoesNotLoad,
            BayError::NotProved { .. }
            | BayError::NeedsSheet { .. }
            | BayError::ShopLacks(_)
            | BayError::AdoptNotProved(_)
            | BayError::ChecklistBuiltIn(_)
            | BayError::Shop(_)
            | BayError::NotOnShelf(_)
            | BayError::Refused { .. }
            | BayError::Photo(_)
            | BayError::NoJob(_) => Exit::Refused,
            error if error.is_there_already() => Exit::Refused,
            _ => Exit::Store,
        };
        Failure::new(exit, error.message())
    }
}

impl From<panside_bay::RecordError> for Failure {
    fn from(error: panside_bay::RecordError) -> Failure {
        BayError::from(error).into()
    }
}

impl From<serde_json::Error> for Failure {
    fn from(error: serde_json::Error) -> Failure {
        BayError::from(error).into()
    }
}

/// Reads a checklist, a sheet or a script.
pub fn read_document(path: &Path) -> Result<Vec<u8>, Failure> {
    read(path, LARGEST_FILE)
}

/// Reads a file of at most `most` bytes, or says which and why not.
pub fn read(path: &Path, most: usize) -> Result<Vec<u8>, Failure> {
    outside::read(path, most).map_err(|error| Failure::new(Exit::DoesNotLoad, error.message()))
}

/// Writes a file whole or not at all, or says which and why not.
pub fn write(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    Ok(outside::write(path, bytes).map_err(BayError::from)?)
}
