//! What a plan for two people takes of a machine: the memory of the whole program, and the time to its first answer, each
//! against what is wanted on a tablet.

use std::path::Path;
use std::time::Instant;

use serde_json::Value;

use super::name_of;
use crate::cli;
use crate::failure::Failure;
use crate::stage::command;

/// Bytes that a plan may take.
const WANTED_BYTES: f64 = 128e6;
/// Seconds in which a good order is there.
const WANTED_SECONDS: f64 = 0.1;
/// The first answer is asked for so often, and the quickest counts: what other work does to it is no matter of the plan.
const TRIES: usize = 5;

/// Plans the shipped checklists for two people and prints a line each.
pub fn rows(root: &Path, checklists: &[impl AsRef<Path>]) -> Result<(), Failure> {
    println!(
        "plan     for two people                   minutes  no less than  whole s  MB      of wanted  first answer s  \
         of wanted"
    );
    for file in checklists {
        row(root, file.as_ref())?;
    }
    Ok(())
}

fn row(root: &Path, file: &Path) -> Result<(), Failure> {
    let path = file.to_string_lossy();
    let began = Instant::now();
    let (said, bytes) = with_memory(root, &["plan", &path, "--people", "2", "--json"])?;
    let seconds = began.elapsed().as_secs_f64();
    let mut first = f64::INFINITY;
    for _ in 0..TRIES {
        let began = Instant::now();
        cli::answer(root, &["plan", &path, "--people", "2", "--quick", "--json"])?;
        first = first.min(began.elapsed().as_secs_f64());
    }
    let plan: Value = serde_json::from_str(&said)
        .map_err(|error| Failure::Check(format!("the plan's answer on {path} can't be read: {error}")))?;
    println!(
        "{:<8} {:<32} {:<8} {:<13} {seconds:<8.2} {:<7.0} {:<10.2} {first:<15.3} {:.2}",
        "",
        name_of(file),
        plan["total_min"],
        plan["bound_min"],
        bytes / 1e6,
        bytes / WANTED_BYTES,
        first / WANTED_SECONDS,
    );
    Ok(())
}

/// What our program prints, and the most memory that it had, in bytes, as GNU time tells it.
fn with_memory(root: &Path, arguments: &[&str]) -> Result<(String, f64), Failure> {
    let program = cli::program(root);
    let program = program.to_string_lossy();
    let all = [&["--quiet", "-f", "%M", &*program], arguments].concat();
    // The program says by its exit code whether the plan is the best, so that any code will do.
    let said = command(root, "time", &all).output();
    let said = said.map_err(|source| Failure::Start { line: format!("time {}", all.join(" ")), source })?;
    let errors = String::from_utf8_lossy(&said.stderr);
    let kilobytes = errors.lines().last().and_then(|last| last.trim().parse::<f64>().ok());
    let kilobytes = kilobytes.ok_or_else(|| Failure::Check(format!("time tells no memory: {errors}")))?;
    Ok((String::from_utf8_lossy(&said.stdout).into_owned(), kilobytes * 1024.0))
}
