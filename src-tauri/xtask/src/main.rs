//! The one door: `cargo xtask run`, `test`, `bench`, `fuzz`, `soak`, `pictures`, `types`.
//!
//! Nothing else in this project runs anything. Each command is a row of stages; a stage says what it does, its
//! output is shown as it comes, and a summary closes the row. The core is reached only through the command line
//! program, so this crate depends on none of it and builds in seconds.
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "an edge: it starts programs, reads files and measures time"
)]

mod bench;
mod cli;
mod edges;
mod failure;
mod folder;
mod fuzz;
mod licence;
mod npm;
mod packages;
mod photo;
mod python;
mod run;
mod soak;
mod sources;
mod stage;
mod test;
mod types;
mod window;

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use failure::Failure;

/// Shown by `--help` and after a call that can't be understood.
const USAGE: &str = "\
cargo xtask run                  open the window on the demo job; without a display walk it here
    --no-window                  walk it here in any case
    --fresh                      throw away what was done in the window before
    --photo FILE                 take this JPEG or PNG for every photo of the demo jobs
cargo xtask test                 everything that must hold: format, lints, tests, proofs, the page
    --list                       name the stages
    --only STAGE                 do this stage only (may be given more than once)
cargo xtask bench                how fast the proof searches, how that grows, and how long the store takes
cargo xtask fuzz                 try bad input made by chance, for a minute
    --seconds N                  for so long
    --cases N                    so many instead
    --seed S                     from this seed instead of the clock's
    --case N                     this case of the seed only
cargo xtask soak                 kill, cut the power and flip bits by chance, for ten minutes
    --minutes N                  for so long instead
    --seed S                     one round from this seed only
cargo xtask pictures             take the pictures of the README from the real window
cargo xtask types                write the generated files anew
    --check                      compare them with the committed ones and change nothing";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    match project_root().and_then(|root| dispatch(&root, &arguments)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => {
            eprintln!("\n{failure}");
            ExitCode::from(failure.exit_code())
        }
    }
}

/// Calls the command that `arguments` name.
fn dispatch(root: &Path, arguments: &[String]) -> Result<(), Failure> {
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match words.as_slice() {
        ["run", options @ ..] => run::run(root, &run::Options::read(options)?),
        ["test", options @ ..] => test::test(root, options),
        ["pictures"] => window::pictures(root),
        ["bench"] => bench::bench(root),
        ["fuzz", options @ ..] => fuzz::fuzz(root, options),
        ["soak", options @ ..] => soak::soak(root, options),
        ["types"] => types::write(root),
        ["types", "--check"] => types::check(root),
        ["--help" | "-h" | "help"] => {
            println!("{USAGE}");
            Ok(())
        }
        [] => Err(Failure::usage("cargo xtask needs a command")),
        _ => Err(Failure::usage(&format!("cargo xtask does not know `{}`", words.join(" ")))),
    }
}

/// The folder with the workspace's Cargo.toml: two above this crate's, where it was when it was built.
fn project_root() -> Result<PathBuf, Failure> {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let root = here.join("../..");
    root.canonicalize().map_err(|source| Failure::File {
        doing: "Finding the project's folder from",
        path: here.to_path_buf(),
        source,
    })
}
