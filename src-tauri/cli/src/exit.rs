//! How the program ends, and what it says when it fails.

use std::io::Read;
use std::path::Path;
use std::process::ExitCode;

use panside_bay::BayError;
use panside_procedure::Problems;
use panside_procedure::load::LARGEST_FILE;

/// The exit codes, as `--help` tells them.
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
    pub message: String,
    /// How to end.
    pub exit: Exit,
}

impl Failure {
    pub fn new(exit: Exit, message: impl Into<String>) -> Failure {
        Failure { message: message.into(), exit }
    }

    pub fn does_not_load(path: &Path, problems: &Problems) -> Failure {
        Failure::new(Exit::DoesNotLoad, format!("{} does not load:\n{problems}", path.display()))
    }
}

impl From<BayError> for Failure {
    fn from(error: BayError) -> Failure {
        let exit = match &error {
            BayError::Checklist(_) | BayError::Sheet(_) | BayError::SheetLacks(_) => Exit::DoesNotLoad,
            BayError::NotProved { .. }
            | BayError::Refused { .. }
            | BayError::Photo(_)
            | BayError::NoJob(_) => Exit::Refused,
            _ => Exit::Store,
        };
        Failure::new(exit, error.to_string())
    }
}

impl From<panside_bay::RecordError> for Failure {
    fn from(error: panside_bay::RecordError) -> Failure {
        BayError::from(error).into()
    }
}

impl From<serde_json::Error> for Failure {
    fn from(error: serde_json::Error) -> Failure {
        Failure::new(Exit::Store, format!("Writing JSON failed: {error}"))
    }
}

/// Reads a file, or says which and why not.
pub fn read(path: &Path) -> Result<Vec<u8>, Failure> {
    std::fs::read(path).map_err(|error| cannot_be_read(path, &error))
}

fn cannot_be_read(path: &Path, error: &std::io::Error) -> Failure {
    let message = format!("{} cannot be read: {error}. Check the path.", path.display());
    Failure::new(Exit::DoesNotLoad, message)
}

/// Reads a checklist, a sheet or a script: no more of it than loading takes, so that a file of any size, or one without
/// an end, is told to be too large.
pub fn read_document(path: &Path) -> Result<Vec<u8>, Failure> {
    let mut bytes = Vec::new();
    let file = std::fs::File::open(path);
    let read = file.and_then(|file| file.take(LARGEST_FILE as u64 + 1).read_to_end(&mut bytes));
    read.map_err(|error| cannot_be_read(path, &error))?;
    Ok(bytes)
}

/// Writes a file, or says which and why not.
pub fn write(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    let failed = |error| Failure::new(Exit::Store, format!("{} cannot be written: {error}", path.display()));
    if let Some(folder) = path.parent() {
        std::fs::create_dir_all(folder).map_err(failed)?;
    }
    std::fs::write(path, bytes).map_err(failed)
}
