//! Starts the window on a computer. A tablet starts `panside_window::start` instead.

use std::process::ExitCode;

fn main() -> ExitCode {
    match panside_window::open() {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("Panside can't open its window: {error}");
            ExitCode::FAILURE
        }
    }
}
