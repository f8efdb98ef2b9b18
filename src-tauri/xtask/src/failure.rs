//! Why a command stops. Every variant is a sentence that says what was being done, on what, and what to do.
//!
//! Written by hand, without `thiserror`, so that this crate builds in seconds on a fresh machine.

use std::fmt;
use std::io;
use std::path::PathBuf;

/// Why a command of `cargo xtask` stops.
#[derive(Debug)]
pub enum Failure {
    /// The call can't be understood. The usage is printed with it.
    Usage(String),
    /// A program can't be started, or its output can't be read.
    Start {
        /// The program as it was called.
        line: String,
        /// What the system says.
        source: io::Error,
    },
    /// A program ran and reported failure; its output stands above.
    Command {
        /// The program as it was called.
        line: String,
        /// Its exit code; none when a signal ended it.
        code: Option<i32>,
    },
    /// A file or folder can't be read or written.
    File {
        /// What was being done: the start of a sentence that goes on with the path, such as "Reading".
        doing: &'static str,
        /// The file or folder.
        path: PathBuf,
        /// What the system says.
        source: io::Error,
    },
    /// The machine lacks something that can't be installed from here. The sentence says what to do.
    Machine(String),
    /// Something that must hold does not. The sentence says what, and what mends it.
    Check(String),
}

impl Failure {
    /// A call that can't be understood.
    pub fn usage(what: &str) -> Failure {
        Failure::Usage(what.to_owned())
    }

    /// The exit code: 2 when the call or the machine has to be changed first, 1 when the project fails.
    pub fn exit_code(&self) -> u8 {
        match self {
            Failure::Usage(_) | Failure::Machine(_) => 2,
            Failure::Start { .. } | Failure::Command { .. } | Failure::File { .. } | Failure::Check(_) => 1,
        }
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Failure::Usage(what) => write!(f, "{what}. It knows:\n\n{}", crate::USAGE),
            Failure::Start { line, source } => {
                write!(f, "`{line}` can't be started: {source}. Is the program installed and on the PATH?")
            }
            Failure::Command { line, code: Some(code) } => {
                write!(f, "`{line}` failed with exit code {code}; what it said stands above.")
            }
            Failure::Command { line, code: None } => {
                write!(f, "`{line}` was ended by a signal; perhaps memory ran out.")
            }
            Failure::File { doing, path, source } => {
                write!(f, "{doing} {} failed: {source}. Check the path and its permissions.", path.display())
            }
            Failure::Machine(sentence) | Failure::Check(sentence) => f.write_str(sentence),
        }
    }
}

impl std::error::Error for Failure {}

#[cfg(test)]
mod tests {
    use super::Failure;

    #[test]
    fn a_machine_that_lacks_something_is_told_apart_from_a_project_that_fails() {
        assert_eq!(Failure::Machine("no Node".into()).exit_code(), 2);
        assert_eq!(Failure::usage("what?").exit_code(), 2);
        assert_eq!(Failure::Check("files differ".into()).exit_code(), 1);
        assert_eq!(Failure::Command { line: "cargo test".into(), code: Some(101) }.exit_code(), 1);
    }

    #[test]
    fn a_failed_program_is_named_with_its_exit_code() {
        let failure = Failure::Command { line: "cargo fmt --all --check".into(), code: Some(1) };
        assert_eq!(
            failure.to_string(),
            "`cargo fmt --all --check` failed with exit code 1; what it said stands above."
        );
    }
}
