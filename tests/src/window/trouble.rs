//! What can go wrong while the window is driven.

use std::path::PathBuf;

use fantoccini::error::{CmdError, NewSessionError};

/// What the harness answers.
pub type Result<T = ()> = std::result::Result<T, Trouble>;

/// What went wrong, as a sentence that says what to do or what was seen.
#[derive(thiserror::Error)]
pub enum Trouble {
    /// A program of the system is not there.
    #[error("The program `{0}` is not installed. Run `cargo xtask test --only packages`, which installs it.")]
    Missing(String),
    /// A program of the project is not there.
    #[error("{} is not built. Run `cargo xtask test --only programs`, which builds it.", .0.display())]
    NotBuilt(PathBuf),
    /// A program can't be started for another reason.
    #[error("`{program}` can't be started: {source}")]
    Start {
        /// Its name.
        program: String,
        /// Why.
        source: std::io::Error,
    },
    /// A program started and then failed.
    #[error("`{line}` failed ({status}): {said}")]
    Failed {
        /// The command as one would type it.
        line: String,
        /// Its exit status.
        status: String,
        /// What it wrote.
        said: String,
    },
    /// A program did not come up.
    #[error("`{0}` did not come up within {1} seconds.")]
    NotUp(String, u64),
    /// A file or folder.
    #[error("{doing} {} failed: {source}", path.display())]
    File {
        /// What was tried.
        doing: &'static str,
        /// The file.
        path: PathBuf,
        /// Why.
        source: std::io::Error,
    },
    /// The driver can't open the window.
    #[error("The driver can't open the window: {0}")]
    Session(#[from] NewSessionError),
    /// The driver failed at something.
    #[error("The driver failed at {0}: {1}")]
    Driver(String, CmdError),
    /// What was looked for can't be seen.
    #[error("Looked for {wanted} and did not find it. {seen}")]
    NotSeen {
        /// What was looked for.
        wanted: String,
        /// What there is instead.
        seen: String,
    },
    /// The window did another thing than it must.
    #[error("{0}")]
    Wrong(String),
    /// A line of the script went wrong.
    #[error("Line {number} ({command}): {trouble}")]
    Line {
        /// The line, counted from 1.
        number: usize,
        /// What it asks for.
        command: String,
        /// What went wrong.
        trouble: Box<Trouble>,
    },
    /// Something that is JSON can't be read.
    #[error("{what} can't be read: {source}")]
    Json {
        /// What it is.
        what: String,
        /// Why.
        source: serde_json::Error,
    },
}

/// A test prints its failure by `Debug`, and it is the sentence that is to be read there.
impl std::fmt::Debug for Trouble {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        std::fmt::Display::fmt(self, out)
    }
}

impl Trouble {
    /// The window did another thing than it must.
    pub fn wrong(sentence: impl Into<String>) -> Trouble {
        Trouble::Wrong(sentence.into())
    }
}
