//! Prints a checklist, for the vehicle of the first demo sheet, as a model for SPIN: `promela FILE [plain|void|observe]`.

use std::path::Path;
use std::process::ExitCode;

use panside_procedure::Procedure;
use panside_tests::promela::{Runs, model};

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match words.as_slice() {
        [file] => print(file, Runs::Plain),
        [file, "plain"] => print(file, Runs::Plain),
        [file, "void"] => print(file, Runs::OneVoid),
        [file, "observe"] => print(file, Runs::OneObservation),
        _ => Err("Say which checklist, and which runs: promela FILE [plain|void|observe]".to_owned()),
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
    let text = panside_tests::joined(Path::new(file))?;
    let text = panside_tests::for_demo(&text).map_err(|error| error.to_string())?;
    let procedure = Procedure::load(text.as_bytes()).map_err(|problems| problems.to_string())?;
    let model = model(&procedure.checklist, runs).map_err(|error| error.to_string())?;
    print!("{}", model.text);
    Ok(())
}
