//! Searching a model with SPIN: exact, every state kept as a whole, no order left out.

use std::collections::BTreeSet;
use std::io::ErrorKind;
use std::path::Path;
use std::process::{Command, Output};

use super::Model;

/// What a search by SPIN found. The state before the start, and the steps to the starts, are taken off.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Counted {
    /// States.
    pub states: usize,
    /// Steps between them.
    pub transitions: usize,
    /// States that no step leads out of.
    pub dead_ends: usize,
    /// Dangers met.
    pub dangers: BTreeSet<String>,
}

/// Why SPIN did not search a model to its end.
#[derive(Debug, thiserror::Error)]
pub enum SpinError {
    /// A program is missing.
    #[error("`{0}` is not installed. Run `cargo xtask test --only packages`, or `apt-get install spin tcc`.")]
    Missing(&'static str),
    /// A program could not be run, or a file not be written.
    #[error("SPIN can't be run: {0}")]
    Run(#[from] std::io::Error),
    /// A program said no.
    #[error("{program} failed: {said}")]
    Failed {
        /// Which one.
        program: &'static str,
        /// What it wrote.
        said: String,
    },
    /// The search ended early, or its answer has another form than expected.
    #[error("what SPIN says of its search can't be used ({0}): {1}")]
    Answer(&'static str, String),
}

/// Steps in a row after which SPIN would give up. A search in depth can go through every state in one row.
const DEEPEST: usize = 3_000_000;

/// Searches a model through.
///
/// `-o1` and `-o2` have it keep variables that nothing reads any more as part of the states, as we do; `-DNOREDUCE` has it
/// try every order of steps; without `-DBITSTATE` or `-DHC` it keeps whole states.
///
/// # Errors
/// Any [`SpinError`]. Where SPIN is missing a test fails; it is not left out.
pub fn search(model: &Model) -> Result<Counted, SpinError> {
    let folder = tempfile::tempdir()?;
    let at = folder.path();
    std::fs::write(at.join("model.pml"), &model.text)?;
    call(at, "spin", &["-o1", "-o2", "-a", "model.pml"])?;
    // A compiler that tries hard takes longer than the search: gcc half a minute where this one takes a blink.
    let flags = ["-w", "-DSAFETY", "-DNOREDUCE", "-DPRINTF", "-o", "search", "pan.c"];
    call(at, "tcc", &flags)?;
    let output = Command::new(at.join("search"))
        .current_dir(at)
        .args(["-c0", "-n", &format!("-m{DEEPEST}")])
        .output()?;
    read(model, &String::from_utf8_lossy(&output.stdout))
}

fn call(at: &Path, program: &'static str, arguments: &[&str]) -> Result<(), SpinError> {
    let output = Command::new(program).current_dir(at).args(arguments).output().map_err(|error| {
        if error.kind() == ErrorKind::NotFound { SpinError::Missing(program) } else { error.into() }
    })?;
    if output.status.success() { Ok(()) } else { Err(SpinError::Failed { program, said: said(&output) }) }
}

fn said(output: &Output) -> String {
    format!("{}{}", String::from_utf8_lossy(&output.stdout), String::from_utf8_lossy(&output.stderr))
}

fn read(model: &Model, said: &str) -> Result<Counted, SpinError> {
    let problem = |what| {
        SpinError::Answer(what, said.chars().rev().take(2000).collect::<Vec<_>>().iter().rev().collect())
    };
    if said.contains("max search depth too small") || said.contains("Search not completed") {
        return Err(problem("it did not come to its end"));
    }
    let mut dangers = BTreeSet::new();
    let mut refused = 0;
    let mut numbers = [None; 3];
    for line in said.lines() {
        let words: Vec<&str> = line.split_whitespace().collect();
        match words.as_slice() {
            ["danger", id] => drop(dangers.insert((*id).to_owned())),
            ["refused"] => refused += 1,
            [number, "states,", "stored"] => numbers[0] = number.parse().ok(),
            [number, "transitions", ..] => numbers[1] = number.parse().ok(),
            ["State-vector", .., "errors:", number] => numbers[2] = number.parse().ok(),
            _ => {}
        }
    }
    // The model has no assertion, so that each error is a dead end.
    let [Some(states), Some(transitions), Some(dead_ends)] = numbers else {
        return Err(problem("a number is missing"));
    };
    // SPIN counts the state it begins with as a transition too.
    let steps: Option<usize> = usize::checked_sub(transitions, 1 + model.starts + refused);
    let states = usize::checked_sub(states, 1);
    match (states, steps) {
        (Some(states), Some(transitions)) => Ok(Counted { states, transitions, dead_ends, dangers }),
        _ => Err(problem("there are fewer states than starts")),
    }
}
