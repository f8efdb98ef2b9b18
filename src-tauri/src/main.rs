//! Starts the window on a computer. A tablet starts `panside_window::start` instead.

use std::process::ExitCode;

use panside_window::Options;

/// The code for a call that can't be understood, as `sysexits.h` has it.
const USAGE: u8 = 64;

fn main() -> ExitCode {
    let options = match Options::read(std::env::args().skip(1)) {
        Ok(options) => options,
        Err(unknown) => {
            eprintln!("{unknown}");
            return ExitCode::from(USAGE);
        }
    };
    match panside_window::open(options) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{}", panside_window::no_window(&error));
            ExitCode::FAILURE
        }
    }
}
