//! Prints a checklist as a model for SPIN: `promela FILE [plain|strike|observe]`.
#![allow(clippy::disallowed_methods, reason = "the edge: this reads a file")]

use std::process::ExitCode;

use panside_procedure::Procedure;
use panside_tests::promela::{Runs, model};

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match words.as_slice() {
        [file] => print(file, Runs::Plain),
        [file, "plain"] => print(file, Runs::Plain),
        [file, "strike"] => print(file, Runs::OneStrike),
        [file, "observe"] => print(file, Runs::OneObservation),
        _ => Err("Say which checklist, and which runs: promela FILE [plain|strike|observe]".to_owned()),
    }
    .map_or_else(
        |sentence| {
            eprintln!("{sentence}");
            ExitCode::FAILURE
        },
        |()| ExitCode::SUCCESS,
    )
}

fn print(file: &str, runs: Runs) -> Result<(), String> {
    let bytes = std::fs::read(file).map_err(|error| format!("{file} can't be read: {error}"))?;
    let procedure = Procedure::load(&bytes).map_err(|problems| problems.to_string())?;
    let model = model(&procedure.checklist, runs).map_err(|error| error.to_string())?;
    print!("{}", model.text);
    Ok(())
}
