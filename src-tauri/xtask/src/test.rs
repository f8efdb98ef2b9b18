//! `cargo xtask test`: everything that must hold before a change is taken in.
//!
//! Quick stages come first, so that a slip in the format is told in seconds. The page is built before the lints,
//! because the window builds it in.

use std::path::{Path, PathBuf};

use crate::cli;
use crate::edges;
use crate::failure::Failure;
use crate::fuzz;
use crate::npm;
use crate::packages;
use crate::python;
use crate::sources;
use crate::stage::{Stage, call, command, run_all};
use crate::types;
use crate::window;

/// Where the checklists lie, and how their names end.
const CHECKLISTS: (&str, &str) = ("checklists", ".checklist.json");
/// Where the spec sheets lie, likewise.
const SHEETS: (&str, &str) = ("checklists/sheets", ".sheet.json");

/// `cargo xtask test`, with its options.
///
/// # Errors
/// When an option or a stage's name isn't known, or the failure of a stage.
pub fn test(root: &Path, options: &[&str]) -> Result<(), Failure> {
    let stages = stages();
    if options == ["--list"] {
        for stage in &stages {
            println!("{:<12} {}", stage.name, stage.does);
        }
        return Ok(());
    }
    run_all(root, &choose(stages, options)?)
}

/// All stages in their order.
fn stages() -> Vec<Stage> {
    vec![
        Stage::new("fmt", "see that the Rust code is formatted", fmt),
        Stage::new("edges", "see that crates use each other only as drawn in DEVELOPERS.md", edges::check),
        Stage::new("packages", "see that the machine has what the window and the page need", machine),
        Stage::new("npm", "install the page's packages", npm::install),
        Stage::new("sources", "see where every package comes from, and its licence", sources::check),
        Stage::new("python", "install what the tests ask for a second opinion", python::install),
        Stage::new("biome", "see that the page's code is formatted and clean", |root| {
            npm::script(root, "lint")
        }),
        Stage::new("svelte-check", "check the page's types", |root| npm::script(root, "check")),
        Stage::new("vitest", "run the page's tests", |root| npm::script(root, "test")),
        Stage::new("page", "build the page", npm::build_page),
        Stage::new("clippy", "see that no lint is broken", clippy),
        Stage::new("rust", "run the Rust tests, those in the documentation too", rust),
        Stage::new("programs", "build the command line program and the window", cli::build_with_workspace),
        Stage::new(
            "look",
            "look at every screen: axe-core's rules, sizes of targets and texts",
            window::look,
        ),
        Stage::new("window", "walk the demo job by taps in the real window", window::walk),
        fuzz::stage(),
        types::check_stage(),
        Stage::new("prove", "prove every checklist: safe, can finish, can stop", prove),
    ]
}

/// Those of `stages` that the options name; all when there are none.
fn choose(stages: Vec<Stage>, options: &[&str]) -> Result<Vec<Stage>, Failure> {
    if options.is_empty() {
        return Ok(stages);
    }
    let mut wanted = Vec::new();
    for pair in options.chunks(2) {
        match pair {
            ["--only", name] if stages.iter().any(|stage| stage.name == *name) => wanted.push(*name),
            ["--only", name] => {
                return Err(Failure::usage(&format!("There is no stage `{name}`; --list names them")));
            }
            _ => return Err(Failure::usage(&format!("test does not know `{}`", pair.join(" ")))),
        }
    }
    Ok(stages.into_iter().filter(|stage| wanted.contains(&stage.name)).collect())
}

fn machine(root: &Path) -> Result<(), Failure> {
    packages::debian(root, &[packages::WINDOW, packages::TESTS].concat())?;
    packages::node(root)
}

fn fmt(root: &Path) -> Result<(), Failure> {
    call(command(root, "cargo", &["fmt", "--all", "--check"]))
}

fn clippy(root: &Path) -> Result<(), Failure> {
    let arguments = ["clippy", "--workspace", "--all-targets", "--", "-D", "warnings"];
    call(command(root, "cargo", &arguments))
}

/// What is drawn by chance is the same each time: a change is judged by what it changes. Run by itself, a test draws anew.
fn rust(root: &Path) -> Result<(), Failure> {
    let mut tests = command(root, "cargo", &["test", "--workspace", "--no-fail-fast"]);
    tests.env("PROPTEST_RNG_SEED", "4711");
    call(tests)
}

fn prove(root: &Path) -> Result<(), Failure> {
    let checklists = checklists(root)?;
    if checklists.is_empty() {
        return Err(Failure::Check(format!(
            "No file in {}/ ends in {}, so nothing is proved.",
            CHECKLISTS.0, CHECKLISTS.1
        )));
    }
    let sheets = sheets(root)?;
    for checklist in &checklists {
        let path = checklist.strip_prefix(root).unwrap_or(checklist).to_string_lossy();
        let mut arguments = vec!["prove", &*path];
        // For each vehicle that there is a sheet of. Without one it would be made for every vehicle that there could
        // be, which takes minutes.
        let given: Vec<_> = sheets.iter().map(|sheet| sheet.to_string_lossy()).collect();
        given.iter().for_each(|sheet| arguments.extend(["--sheet", &**sheet]));
        cli::run(root, &arguments)?;
    }
    Ok(())
}

/// The shipped checklists, sorted by name.
///
/// # Errors
/// When their folder can't be read.
pub fn checklists(root: &Path) -> Result<Vec<PathBuf>, Failure> {
    listed(root, CHECKLISTS)
}

/// The shipped spec sheets, sorted by name.
fn sheets(root: &Path) -> Result<Vec<PathBuf>, Failure> {
    listed(root, SHEETS)
}

/// The files of a folder whose names end so.
fn listed(root: &Path, (folder, ending): (&str, &str)) -> Result<Vec<PathBuf>, Failure> {
    let folder = root.join(folder);
    let fail = |source| Failure::File { doing: "Reading the folder", path: folder.clone(), source };
    let mut paths = Vec::new();
    for entry in std::fs::read_dir(&folder).map_err(fail)? {
        let entry = entry.map_err(fail)?;
        if entry.file_name().to_string_lossy().ends_with(ending) {
            paths.push(entry.path());
        }
    }
    paths.sort();
    Ok(paths)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(options: &[&str]) -> Result<Vec<&'static str>, Failure> {
        choose(stages(), options).map(|stages| stages.iter().map(|stage| stage.name).collect())
    }

    #[test]
    fn without_options_every_stage_runs() -> Result<(), Failure> {
        assert_eq!(names(&[])?.len(), stages().len());
        Ok(())
    }

    #[test]
    fn named_stages_run_in_their_own_order() -> Result<(), Failure> {
        assert_eq!(names(&["--only", "rust", "--only", "fmt"])?, ["fmt", "rust"]);
        Ok(())
    }

    #[test]
    fn an_unknown_stage_or_option_is_refused_rather_than_passed_over() {
        assert!(matches!(names(&["--only", "paint"]), Err(Failure::Usage(_))));
        assert!(matches!(names(&["--only"]), Err(Failure::Usage(_))));
        assert!(matches!(names(&["--fast"]), Err(Failure::Usage(_))));
    }

    #[test]
    fn the_page_is_built_before_the_window_that_holds_it() {
        let position = |name: &str| stages().iter().position(|stage| stage.name == name);
        assert!(position("npm") < position("page"));
        assert!(position("page") < position("clippy"));
        assert!(position("clippy").is_some());
    }
}
