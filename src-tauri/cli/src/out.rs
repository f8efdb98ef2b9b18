//! Printing: the one place where text goes to a terminal, and where it is cleaned for it.
//!
//! A reader that goes away (`| head`) ends neither a walk nor a proof: what is printed after that is for nobody, and the
//! exit code still says it. Where printing fails otherwise, as on a full disk, the program does its work and says so at its
//! end ([`finish`]).

use std::fmt::Arguments;
use std::io::{self, ErrorKind, Write};
use std::sync::OnceLock;

use panside_bay::clean;
use panside_messages::{Message, Speaker};
use serde::Serialize;

use crate::exit::{Exit, Failure};
use crate::message::cli_not_printed;

/// The first failure to print that is not a reader's going away.
static FAILED: OnceLock<io::Error> = OnceLock::new();

/// Prints text of several lines to standard output.
pub fn print(text: Arguments<'_>) {
    written(io::stdout().write_all(clean::lines(&text.to_string()).as_bytes()));
}

/// Prints text that is JSON, and a line break, to standard output.
pub fn print_json(text: &str) {
    written(io::stdout().write_all((clean::json(text) + "\n").as_bytes()));
}

/// Prints a value as JSON to standard output, for people to read as well.
pub fn json(value: &impl Serialize) -> Result<(), Failure> {
    print_json(&serde_json::to_string_pretty(value)?);
    Ok(())
}

/// Prints a message to standard output, as a sentence on a line of its own.
pub fn say(speaker: &Speaker, message: &Message) {
    row(format_args!("{}", speaker.say(message)));
}

/// Prints a line to standard output that is laid out here, of data and of what messages say.
pub fn row(text: Arguments<'_>) {
    print(text);
    print(format_args!("\n"));
}

/// Prints text of several lines and a line break to standard error.
pub fn warn(text: &str) {
    // Where even this cannot be printed nobody reads it; the exit code still says it.
    let _ = writeln!(io::stderr(), "{}", clean::lines(text));
}

/// Whether all that was printed has arrived.
///
/// # Errors
/// A failure with what the system said, where it has not though somebody reads it.
pub fn finish() -> Result<(), Failure> {
    written(io::stdout().flush());
    FAILED.get().map_or(Ok(()), |error| Err(Failure::new(Exit::Store, cli_not_printed(error.to_string()))))
}

fn written(result: io::Result<()>) {
    if let Err(error) = result
        && error.kind() != ErrorKind::BrokenPipe
    {
        // Only the first failure is said.
        let _ = FAILED.set(error);
    }
}
