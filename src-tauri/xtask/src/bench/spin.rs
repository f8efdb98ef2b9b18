//! SPIN as a peer: it searches the same model, exact, every order of steps tried, no state left out.

use std::path::Path;

use super::{Row, Runs};
use crate::cli;
use crate::failure::Failure;
use crate::folder;
use crate::stage::{answer, command};

/// Depth first, its default.
pub fn depth_first(root: &Path, file: &Path, runs: Runs) -> Result<Option<Row>, Failure> {
    search(root, file, runs, &[])
}

/// Depth first, with its states kept smaller, exact too. It can't search these models breadth first.
pub fn collapsed(root: &Path, file: &Path, runs: Runs) -> Result<Option<Row>, Failure> {
    search(root, file, runs, &["-DCOLLAPSE"])
}

/// Searches where the runs can be said in one model. Its own time: making and compiling the model is not counted.
fn search(root: &Path, file: &Path, runs: Runs, how: &[&str]) -> Result<Option<Row>, Failure> {
    let Some(model) = runs.model else { return Ok(None) };
    let at = root.join("target/bench/spin");
    let text =
        answer(command(root, &cli::promela(root).to_string_lossy(), &[&*file.to_string_lossy(), model]))?;
    folder::write(&at.join("model.pml"), text.as_bytes())?;
    answer(command(&at, "spin", &["-o1", "-o2", "-a", "model.pml"]))?;
    let flags = [&["-O2", "-w", "-DSAFETY", "-DNOREDUCE"], how, &["-o", "search", "pan.c"]].concat();
    answer(command(&at, "gcc", &flags))?;
    let said = answer(command(&at, "./search", &["-c0", "-n", "-m3000000", "-w24"]))?;
    // Each number stands before its name, but for the time.
    let before = |what: &str| -> Option<f64> {
        said.lines().find_map(|line| line.split_once(what))?.0.split_whitespace().last()?.parse().ok()
    };
    let after = |what: &str| -> Option<f64> {
        said.lines().find_map(|line| line.split_once(what))?.1.split_whitespace().next()?.parse().ok()
    };
    let row = || {
        Some(Row {
            states: before("states, stored")? as u64,
            transitions: before("transitions (=")? as u64,
            bytes: (before("actual memory usage for states")? * 1024.0 * 1024.0) as u64,
            search_seconds: after("elapsed time")?,
            seconds: after("elapsed time")?,
            complete: !said.contains("Search not completed") && !said.contains("depth too small"),
        })
    };
    row().map(Some).ok_or_else(|| Failure::Check(format!("What SPIN says can't be read:\n{said}")))
}
