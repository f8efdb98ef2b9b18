//! `cargo xtask fuzz`: bad input made by chance, for a bounded time. The cases and what is asked of them stand in
//! `tests/fuzz`; every Rust will do.

use std::path::Path;

use crate::cli;
use crate::failure::Failure;
use crate::stage::{Stage, call, command, run_all};

/// In a test run the cases are the same each time, on a machine of any speed.
const IN_TEST: [&str; 4] = ["--cases", "1600", "--seed", "1"];

/// `cargo xtask fuzz`, with its options: for a minute, from a seed that the clock gives.
///
/// # Errors
/// When an option isn't known, the program does not build, or something was found.
pub fn fuzz(root: &Path, options: &[&str]) -> Result<(), Failure> {
    let known = options.chunks(2).all(
        |pair| matches!(pair, ["--seconds" | "--cases" | "--seed" | "--case", number] if number.parse::<u64>().is_ok()),
    );
    if !known {
        return Err(Failure::usage(&format!("fuzz does not know `{}`", options.join(" "))));
    }
    // With the features that the whole workspace asks for, so that nothing the tests have built is built again.
    call(command(root, "cargo", &["build", "--workspace", "--example", "fuzz"]))?;
    let options: Vec<String> = options.iter().map(|option| (*option).to_owned()).collect();
    let work =
        move |root: &Path| call(command(root, &cli::example(root, "fuzz").to_string_lossy(), &options));
    run_all(root, &[Stage::new("fuzz", "try bad input made by chance", work)])
}

/// The same few cases each time, once it is built, for `cargo xtask test`.
pub fn stage() -> Stage {
    Stage::new("fuzz", "try bad input made by chance, always the same", |root| {
        call(command(root, &cli::example(root, "fuzz").to_string_lossy(), &IN_TEST))
    })
}
