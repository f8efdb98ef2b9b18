//! A second opinion from Python's libraries: scripts of `tests/python/`, run in the environment made there.

use std::io::Write;
use std::path::Path;
use std::process::{Command, Stdio};

use serde::Serialize;
use serde::de::DeserializeOwned;

/// What goes wrong when Python is asked.
#[derive(Debug, thiserror::Error)]
pub enum PythonError {
    /// Its environment is not there.
    #[error("Python's libraries are not installed. Run `cargo xtask test --only packages --only python`.")]
    Missing,
    /// It can't be started or talked to.
    #[error("Python can't be run: {0}")]
    Run(#[from] std::io::Error),
    /// The script failed.
    #[error("The script {script} failed: {said}")]
    Failed {
        /// Its file name.
        script: String,
        /// What it wrote.
        said: String,
    },
    /// What was asked or answered is not JSON of the form that is wanted.
    #[error("What the script was asked or answered can't be read: {0}")]
    Form(#[from] serde_json::Error),
}

/// Asks the script `tests/python/<script>`: it reads `question` as JSON and prints its answer as JSON.
///
/// # Errors
/// Any [`PythonError`]. Where Python is missing a test fails; it is not left out.
pub fn ask<A: DeserializeOwned>(script: &str, question: &impl Serialize) -> Result<A, PythonError> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("python");
    let python = folder.join(".venv/bin/python");
    if !python.is_file() {
        return Err(PythonError::Missing);
    }
    let mut child = Command::new(python)
        .arg(folder.join(script))
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()?;
    // Scripts read all before they write, so neither side waits for the other. Dropping it ends what they read.
    if let Some(mut to) = child.stdin.take() {
        to.write_all(&serde_json::to_vec(question)?)?;
    }
    let output = child.wait_with_output()?;
    if !output.status.success() {
        let said = String::from_utf8_lossy(&output.stderr).into_owned();
        return Err(PythonError::Failed { script: script.to_owned(), said });
    }
    Ok(serde_json::from_slice(&output.stdout)?)
}
