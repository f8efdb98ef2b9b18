//! The stage `rust`: builds the tests of every crate and runs their programs, two at a time. `cargo test` runs one after the
//! other, and many of them leave a core idle for most of their time.

use std::path::{Path, PathBuf};
use std::process::Output;
use std::sync::{Mutex, PoisonError};

use serde_json::Value;

use crate::failure::Failure;
use crate::stage::{answer, call, command};

/// Programs at one time: the cores of the smallest machine that the tests are meant for.
const SIDE_BY_SIDE: usize = 2;

/// What is drawn by chance is the same each time: a change is judged by what it changes. Run by itself, a test draws anew.
const SEED: (&str, &str) = ("PROPTEST_RNG_SEED", "4711");

/// A test program, and the folder of its crate, in which cargo would run it too.
#[derive(Debug, PartialEq, Eq)]
struct Program {
    name: String,
    file: PathBuf,
    folder: PathBuf,
}

/// Runs the tests of every crate, those in its documentation last.
///
/// # Errors
/// When they don't build or a program can't be started; else the programs in which a test failed, once all have run.
pub fn run(root: &Path) -> Result<(), Failure> {
    let build = ["test", "--workspace", "--no-run", "--message-format", "json-render-diagnostics"];
    let programs = programs(&answer(command(root, "cargo", &build))?)?;
    let open = Mutex::new(programs.iter());
    let failed = Mutex::new(Vec::new());
    std::thread::scope(|scope| {
        for _ in 0..SIDE_BY_SIDE {
            scope.spawn(|| {
                loop {
                    let next = open.lock().unwrap_or_else(PoisonError::into_inner).next();
                    let Some(program) = next else { break };
                    let passed = shown(program, try_out(program));
                    if !passed {
                        failed.lock().unwrap_or_else(PoisonError::into_inner).push(program.name.as_str());
                    }
                }
            });
        }
    });
    let failed = failed.into_inner().unwrap_or_else(PoisonError::into_inner);
    let mut of_docs = command(root, "cargo", &["test", "--workspace", "--doc", "--no-fail-fast", "--quiet"]);
    of_docs.env(SEED.0, SEED.1);
    let docs = call(of_docs);
    if failed.is_empty() {
        return docs;
    }
    Err(Failure::Check(format!(
        "Tests failed in {}; what they say stands above. `cargo test --workspace --test NAME` runs one again.",
        failed.join(", ")
    )))
}

/// The test programs among what cargo says it has built.
fn programs(said: &str) -> Result<Vec<Program>, Failure> {
    let mut programs = Vec::new();
    for line in said.lines() {
        let message: Value = serde_json::from_str(line)
            .map_err(|error| Failure::Check(format!("What cargo says of a build can't be read: {error}")))?;
        let (Some(file), true) = (message["executable"].as_str(), message["profile"]["test"] == true) else {
            continue;
        };
        let folder = message["manifest_path"].as_str().and_then(|path| Path::new(path).parent());
        programs.push(Program {
            name: message["target"]["name"].as_str().unwrap_or(file).to_owned(),
            file: file.into(),
            folder: folder.unwrap_or(Path::new(".")).to_owned(),
        });
    }
    if programs.is_empty() {
        return Err(Failure::Check("Cargo has built no test program, so nothing is tested.".into()));
    }
    Ok(programs)
}

fn try_out(program: &Program) -> Result<Output, Failure> {
    let line = program.file.to_string_lossy();
    let mut called = command(&program.folder, &line, &["--quiet"]);
    called.env(SEED.0, SEED.1).output().map_err(|source| Failure::Start { line: line.into_owned(), source })
}

/// Prints what a program said, as a whole, and answers whether all its tests passed.
fn shown(program: &Program, ended: Result<Output, Failure>) -> bool {
    match ended {
        Ok(output) => {
            let [said, errors] =
                [output.stdout, output.stderr].map(|text| String::from_utf8_lossy(&text).into_owned());
            println!("   {}\n{said}{errors}", program.name);
            output.status.success()
        }
        Err(failure) => {
            println!("   {}\n{failure}", program.name);
            false
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_test_programs_are_those_that_cargo_built_for_testing() -> Result<(), Failure> {
        let said = concat!(
            r#"{"reason":"compiler-artifact","manifest_path":"/p/a/Cargo.toml","target":{"name":"walk"},"profile":{"test":true},"executable":"/t/walk-1"}"#,
            "\n",
            r#"{"reason":"compiler-artifact","manifest_path":"/p/a/Cargo.toml","target":{"name":"a"},"profile":{"test":false},"executable":"/t/a"}"#,
            "\n",
            r#"{"reason":"build-finished","success":true}"#
        );
        let walk = Program { name: "walk".into(), file: "/t/walk-1".into(), folder: "/p/a".into() };
        assert_eq!(programs(said)?, [walk]);
        Ok(())
    }

    #[test]
    fn a_build_without_tests_is_no_success() {
        assert!(programs(r#"{"reason":"build-finished","success":true}"#).is_err());
        assert!(programs("no JSON").is_err());
    }

    #[test]
    fn a_program_that_fails_or_is_not_there_has_not_passed() {
        let program = |file: &str| Program { name: file.into(), file: file.into(), folder: ".".into() };
        assert!(shown(&program("true"), try_out(&program("true"))));
        assert!(!shown(&program("false"), try_out(&program("false"))));
        assert!(!shown(&program("no-such-program"), try_out(&program("no-such-program"))));
    }
}
