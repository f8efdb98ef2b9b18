//! The programs under test, and running them.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use serde_json::Value;

use crate::window::{Result, Trouble};

/// The project's folder.
#[must_use]
pub fn root() -> PathBuf {
    let tests = Path::new(env!("CARGO_MANIFEST_DIR"));
    tests.parent().unwrap_or(tests).to_owned()
}

/// Where the programs under test note how far a store has come: the same for both, and not in the home of who tests.
#[must_use]
pub fn state() -> PathBuf {
    root().join("target").join("state-of-tests")
}

/// The window and the command line program, beside the program that runs.
#[derive(Debug, Clone)]
pub struct Programs {
    /// The window.
    pub window: PathBuf,
    /// The command line program.
    pub cli: PathBuf,
}

impl Programs {
    /// Finds them in the folder that cargo builds into: two up from a test or an example.
    ///
    /// # Errors
    /// [`Trouble::NotBuilt`] with the path where one should be.
    pub fn find() -> Result<Programs> {
        let own = std::env::current_exe().map_err(|source| Trouble::File {
            doing: "Finding",
            path: PathBuf::from("the running program"),
            source,
        })?;
        let built = own.ancestors().nth(2).unwrap_or(Path::new("."));
        let program = |name: &str| {
            let path = built.join(name).with_extension(std::env::consts::EXE_EXTENSION);
            if path.is_file() { Ok(path) } else { Err(Trouble::NotBuilt(path)) }
        };
        Ok(Programs { window: program("panside")?, cli: program("panside-cli")? })
    }

    /// Walks so many lines of a script into a store, the last of them at a time (RFC 3339) or `now`.
    ///
    /// # Errors
    /// When the walk fails, with what it wrote.
    pub fn walk(&self, script: &Path, store: &Path, lines: usize, until: &str, photo: &Path) -> Result {
        let lines = lines.to_string();
        let mut walk = Command::new(&self.cli);
        walk.arg("walk").arg(script).arg("--store").arg(store).arg("--photo").arg(photo);
        walk.env("XDG_STATE_HOME", state());
        walk.args(["--lines", &lines, "--until", until, "--plain-proof", "--no-text"]);
        run(&mut walk).map(drop)
    }

    /// The record of the one job of a store that nobody has open.
    ///
    /// # Errors
    /// When it can't be read, or there is not just one.
    pub fn record(&self, store: &Path) -> Result<Value> {
        let jobs = json(&run(Command::new(&self.cli).arg("jobs").arg("--store").arg(store).arg("--json"))?)?;
        let [job] = jobs.as_array().map_or(&[][..], Vec::as_slice) else {
            return Err(Trouble::wrong(format!("One job is expected in {}: {jobs}", store.display())));
        };
        let job = job["job"].as_str().unwrap_or_default();
        json(&run(Command::new(&self.cli).args(["record", job, "--json", "--store"]).arg(store))?)
    }
}

fn json(text: &str) -> Result<Value> {
    serde_json::from_str(text)
        .map_err(|source| Trouble::Json { what: "What the command line program says".into(), source })
}

/// Runs a program to its end and answers what it writes.
///
/// # Errors
/// [`Trouble::Missing`] when it is not installed, [`Trouble::Failed`] when its exit code isn't 0.
pub fn run(command: &mut Command) -> Result<String> {
    let program = command.get_program().to_string_lossy().into_owned();
    let words = std::iter::once(command.get_program()).chain(command.get_args());
    let line = words.map(|word| word.to_string_lossy()).collect::<Vec<_>>().join(" ");
    let output = command.stdin(Stdio::null()).output().map_err(|source| not_started(program, source))?;
    let said = String::from_utf8_lossy(&output.stdout).into_owned();
    if output.status.success() {
        return Ok(said);
    }
    let said = format!("{}{}", tail(&said), tail(&String::from_utf8_lossy(&output.stderr)));
    Err(Trouble::Failed { line, status: output.status.to_string(), said })
}

/// Why a program could not be started: a missing one is named with the line that installs it.
pub fn not_started(program: String, source: std::io::Error) -> Trouble {
    if source.kind() == std::io::ErrorKind::NotFound {
        return Trouble::Missing(program);
    }
    Trouble::Start { program, source }
}

fn tail(text: &str) -> &str {
    let from = text.len().saturating_sub(600);
    text.char_indices().find(|(at, _)| *at >= from).map_or("", |(at, _)| &text[at..])
}
