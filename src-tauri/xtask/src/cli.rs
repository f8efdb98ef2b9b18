//! The command line program as the other commands call it.

use std::path::{Path, PathBuf};

use crate::failure::Failure;
use crate::stage::{call, command};

/// Where cargo puts programs.
fn programs(root: &Path) -> PathBuf {
    let target =
        std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root.join("target"), |path| root.join(path));
    target.join("debug")
}

/// Where cargo puts the program.
pub fn program(root: &Path) -> PathBuf {
    programs(root).join("panside-cli")
}

/// Builds the program by itself.
///
/// # Errors
/// When it does not build.
pub fn build(root: &Path) -> Result<(), Failure> {
    call(command(root, "cargo", &["build", "-p", "panside-cli"]))
}

/// Where cargo puts the window.
pub fn window(root: &Path) -> PathBuf {
    programs(root).join("panside")
}

/// Builds the program and the window.
///
/// # Errors
/// When one does not build.
pub fn build_with_window(root: &Path) -> Result<(), Failure> {
    call(command(root, "cargo", &["build", "-p", "panside-cli", "-p", "panside", "--bins"]))
}

/// Where cargo puts the program that prints a checklist as a model for SPIN.
pub fn promela(root: &Path) -> PathBuf {
    programs(root).join("examples/promela")
}

/// Builds the program that prints a checklist as a model for SPIN, by itself.
///
/// # Errors
/// When it does not build.
pub fn build_promela(root: &Path) -> Result<(), Failure> {
    call(command(root, "cargo", &["build", "-p", "panside-tests", "--example", "promela"]))
}

/// Where cargo puts the program that writes the page's types.
pub fn types(root: &Path) -> PathBuf {
    example(root, "types")
}

/// Where cargo puts an example.
pub fn example(root: &Path, name: &str) -> PathBuf {
    programs(root).join("examples").join(name)
}

/// Builds the program that writes the page's types, by itself.
///
/// # Errors
/// When it does not build.
pub fn build_types(root: &Path) -> Result<(), Failure> {
    call(command(root, "cargo", &["build", "-p", "panside", "--example", "types"]))
}

/// Builds every program together with everything else, as the tests are built: so that nothing they have built is
/// built again with other features.
///
/// # Errors
/// When one does not build.
pub fn build_with_workspace(root: &Path) -> Result<(), Failure> {
    call(command(root, "cargo", &["build", "--workspace", "--all-targets"]))
}

/// Calls the program without showing what it prints to the standard output.
///
/// # Errors
/// As [`run`].
pub fn run_quietly(root: &Path, arguments: &[&str]) -> Result<(), Failure> {
    let mut called = command(root, &program(root).to_string_lossy(), arguments);
    called.stdout(std::process::Stdio::null());
    call(called)
}

/// Calls the program, once it is built.
///
/// # Errors
/// When it can't be started, or its exit code isn't 0.
pub fn run(root: &Path, arguments: &[&str]) -> Result<(), Failure> {
    call(command(root, &program(root).to_string_lossy(), arguments))
}

/// Calls the program and takes what it prints to the standard output, whatever its exit code says.
///
/// # Errors
/// When it can't be started.
pub fn answer(root: &Path, arguments: &[&str]) -> Result<String, Failure> {
    let mut called = command(root, &program(root).to_string_lossy(), arguments);
    let said = called.stderr(std::process::Stdio::null()).output();
    let line = format!("panside-cli {}", arguments.join(" "));
    let said = said.map_err(|source| Failure::Start { line, source })?;
    Ok(String::from_utf8_lossy(&said.stdout).into_owned())
}
