//! Printing. A reader that goes away (`| head`) ends neither a walk nor a proof: what is printed after that is for
//! nobody, and the exit code still tells.

use std::fmt::Arguments;
use std::io::Write;

/// Prints to standard output.
pub fn print(text: Arguments<'_>) {
    // Standard output fails only where nobody reads it any more.
    let _ = std::io::stdout().write_fmt(text);
}

/// Prints a line to standard output, as `println!` does.
macro_rules! say {
    ($($arguments:tt)*) => {{
        $crate::out::print(format_args!($($arguments)*));
        $crate::out::print(format_args!("\n"));
    }};
}

pub(crate) use say;
