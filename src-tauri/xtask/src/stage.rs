//! Stages: running programs, timing them, and telling what happened.
//!
//! A stage that fails ends the row: most later stages would fail for the same reason and hide it.

use std::ffi::OsStr;
use std::fmt::Write as _;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use crate::failure::Failure;

/// One stage of a command.
pub struct Stage {
    /// A short name, as `--only` takes it.
    pub name: &'static str,
    /// What it does, shown before it starts.
    pub does: &'static str,
    /// Does it, with the project's folder.
    pub work: Work,
}

/// The work of a stage.
pub type Work = Box<dyn Fn(&Path) -> Result<(), Failure>>;

impl Stage {
    /// A stage with its name, what it does, and its work.
    pub fn new(
        name: &'static str,
        does: &'static str,
        work: impl Fn(&Path) -> Result<(), Failure> + 'static,
    ) -> Stage {
        Stage { name, does, work: Box::new(work) }
    }
}

/// Runs `stages` in their order, up to the first that fails, and prints a summary.
///
/// # Errors
/// The failure of the stage that ended the row, after the summary has been printed.
pub fn run_all(root: &Path, stages: &[Stage]) -> Result<(), Failure> {
    let mut times = Vec::new();
    let mut failure = None;
    for stage in stages {
        println!("\n== {}: {}", stage.name, stage.does);
        let start = Instant::now();
        let result = (stage.work)(root);
        let took = start.elapsed();
        println!("   {} {} after {}", stage.name, word(result.is_ok()), seconds(took));
        times.push((stage.name, result.is_ok(), took));
        if let Err(error) = result {
            failure = Some(error);
            break;
        }
    }
    print!("\n{}", summary(&times, stages.len()));
    match failure {
        None => Ok(()),
        Some(failure) => Err(failure),
    }
}

/// The closing table: a line for each stage that ran, the total time, and how many passed and failed.
fn summary(times: &[(&str, bool, Duration)], planned: usize) -> String {
    let mut text = String::new();
    for (name, passed, took) in times {
        // Writing into a String can't fail.
        let _ = writeln!(text, "   {name:<12} {:<7} {:>9}", word(*passed), seconds(*took));
    }
    let total: Duration = times.iter().map(|(_, _, took)| *took).sum();
    let passed = times.iter().filter(|(_, passed, _)| *passed).count();
    let _ = writeln!(text, "   {:<12} {:<7} {:>9}", "together", "", seconds(total));
    if times.len() < planned {
        let _ = writeln!(text, "   not run after the failure: {}", planned - times.len());
    }
    let _ = writeln!(text, "stages: {passed} passed, {} failed", times.len() - passed);
    text
}

fn word(passed: bool) -> &'static str {
    if passed { "passed" } else { "FAILED" }
}

fn seconds(time: Duration) -> String {
    format!("{:.1} s", time.as_secs_f64())
}

/// Makes a command for `program` with `arguments`, to be run in the folder `at`. It gets no keyboard: a question
/// that a program asks would never be answered where nobody watches.
pub fn command<A: AsRef<OsStr>>(at: &Path, program: &str, arguments: &[A]) -> Command {
    let mut command = Command::new(program);
    command.args(arguments).current_dir(at).stdin(Stdio::null());
    command
}

/// Runs a command; its output goes to ours.
///
/// # Errors
/// When it can't be started, or its exit code isn't 0.
pub fn call(mut command: Command) -> Result<(), Failure> {
    let line = line_of(&command);
    println!("   $ {line}");
    let status = command.status().map_err(|source| Failure::Start { line: line.clone(), source })?;
    if status.success() { Ok(()) } else { Err(Failure::Command { line, code: status.code() }) }
}

/// Runs a command and returns what it writes to standard output; errors it reports go to ours.
///
/// # Errors
/// When it can't be started, or its exit code isn't 0.
pub fn answer(mut command: Command) -> Result<String, Failure> {
    let line = line_of(&command);
    let output = command
        .stderr(Stdio::inherit())
        .output()
        .map_err(|source| Failure::Start { line: line.clone(), source })?;
    if output.status.success() {
        Ok(String::from_utf8_lossy(&output.stdout).into_owned())
    } else {
        Err(Failure::Command { line, code: output.status.code() })
    }
}

/// The command as one would type it, for reading.
fn line_of(command: &Command) -> String {
    let words = std::iter::once(command.get_program()).chain(command.get_args());
    words.map(OsStr::to_string_lossy).collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn passes(_: &Path) -> Result<(), Failure> {
        Ok(())
    }

    fn fails(_: &Path) -> Result<(), Failure> {
        Err(Failure::Check("the seal is broken".into()))
    }

    #[test]
    fn the_failing_stage_ends_the_row_with_its_own_failure() {
        let never = |_: &Path| -> Result<(), Failure> { panic!("ran after a failure") };
        let stages = [
            Stage::new("one", "passes", passes),
            Stage::new("two", "fails", fails),
            Stage::new("three", "must not run", never),
        ];
        let failure = run_all(Path::new("."), &stages).err().map(|failure| failure.to_string());
        assert_eq!(failure.as_deref(), Some("the seal is broken"));
    }

    #[test]
    fn the_summary_counts_what_passed_failed_and_was_left_out() {
        let times =
            [("fmt", true, Duration::from_millis(1_500)), ("clippy", false, Duration::from_millis(61_000))];
        let text = summary(&times, 5);
        assert!(text.contains("fmt          passed      1.5 s"), "{text}");
        assert!(text.contains("clippy       FAILED     61.0 s"), "{text}");
        assert!(text.contains("together                62.5 s"), "{text}");
        assert!(text.contains("not run after the failure: 3"), "{text}");
        assert!(text.ends_with("stages: 1 passed, 1 failed\n"), "{text}");
    }

    #[test]
    fn a_program_that_reports_failure_is_a_failure_and_not_a_success() {
        let result = call(command(Path::new("."), "false", &[] as &[&str]));
        assert!(matches!(result, Err(Failure::Command { code: Some(1), .. })));
    }

    #[test]
    fn a_program_that_does_not_exist_is_named() {
        let result = answer(command(Path::new("."), "panside-no-such-program", &["-x"]));
        let sentence = result.err().map(|failure| failure.to_string()).unwrap_or_default();
        assert!(sentence.starts_with("`panside-no-such-program -x` can't be started"), "{sentence}");
    }
}
