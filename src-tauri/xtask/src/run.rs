//! `cargo xtask run`: opens the window on the demo job, or walks it on the command line where there is no display.
//!
//! The window's store in target/demo/bay is kept from run to run: the demo job is where it was left. The walk without a
//! window starts from nothing each time.

use std::path::{Path, PathBuf};

use crate::cli;
use crate::failure::Failure;
use crate::folder;
use crate::npm;
use crate::packages;
use crate::photo;
use crate::stage::{Stage, call, command, run_all};

/// The demo job as a script of commands.
const SCRIPT: &str = "checklists/demo/demo.walk.json";

/// A job that is over, for looking at its record and its photos.
const STOPPED: &str = "checklists/demo/stop-and-call.walk.json";

/// Where the demo jobs' stores and record go.
const DEMO: &str = "target/demo";

/// What `run` can be told.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Options {
    /// A photo of one's own in place of the one that a Debian package carries.
    pub photo: Option<PathBuf>,
    /// Walk on the command line although there is a display.
    pub no_window: bool,
    /// Begin with a new store: what was done in the window before is thrown away.
    pub fresh: bool,
}

impl Options {
    /// Reads the words after `run`.
    ///
    /// # Errors
    /// `Failure::Usage` for a word that is not known.
    pub fn read(words: &[&str]) -> Result<Options, Failure> {
        let mut options = Options::default();
        let mut words = words.iter();
        while let Some(word) = words.next() {
            match *word {
                "--no-window" => options.no_window = true,
                "--fresh" => options.fresh = true,
                "--photo" => {
                    let file = words.next().ok_or_else(|| Failure::usage("--photo wants a file"))?;
                    options.photo = Some(PathBuf::from(file));
                }
                other => return Err(Failure::usage(&format!("run does not know `{other}`"))),
            }
        }
        Ok(options)
    }
}

/// `cargo xtask run`.
///
/// # Errors
/// When a program can't be built, the photo can't be had, a walk fails, or the window can't be opened.
pub fn run(root: &Path, options: &Options) -> Result<(), Failure> {
    if options.no_window {
        return walk_only(root, options);
    }
    if !has_display() {
        println!(
            "There is no display here (neither DISPLAY nor WAYLAND_DISPLAY is set), so no window is opened:"
        );
        println!("the demo job is walked on the command line instead.");
        return walk_only(root, options);
    }
    window(root, options)
}

fn has_display() -> bool {
    ["DISPLAY", "WAYLAND_DISPLAY"]
        .iter()
        .any(|name| std::env::var_os(name).is_some_and(|value| !value.is_empty()))
}

fn window(root: &Path, options: &Options) -> Result<(), Failure> {
    let store = root.join(DEMO).join("bay");
    if options.fresh {
        folder::remove(&store)?;
    }
    let (photo, at) = (options.photo.clone(), store.clone());
    run_all(
        root,
        &[
            Stage::new("packages", "see that the machine has what the window and the page need", |root| {
                packages::debian(root, packages::WINDOW)?;
                packages::node(root)
            }),
            Stage::new("npm", "install the page's packages", npm::install),
            Stage::new("page", "build the page", npm::build_page),
            Stage::new("build", "build the window and the command line program", cli::build_with_window),
            Stage::new("demo", "start the demo job, unless it is there", move |root| {
                start(root, &at, photo.as_ref())
            }),
        ],
    )?;
    println!(
        "\nThe window opens on the demo job: demo values, not for a vehicle. Its store is in {DEMO}/bay."
    );
    call(command(
        root,
        &cli::window(root).to_string_lossy(),
        &["--store", &*store.to_string_lossy(), "--demo-clock"],
    ))
}

/// Puts a stopped job and the demo job, just started, into the window's store.
fn start(root: &Path, store: &Path, own_photo: Option<&PathBuf>) -> Result<(), Failure> {
    if store.join("journal.db").exists() {
        println!("   the store is there: the demo job is where it was left.");
        return Ok(());
    }
    let photo = own_photo.map_or_else(|| photo::demo_photo(root), |own| Ok(root.join(own)))?;
    let (store, photo) = (store.to_string_lossy(), photo.to_string_lossy());
    cli::run_quietly(
        root,
        &["walk", STOPPED, "--store", &*store, "--photo", &*photo, "--until", "now", "--no-text"],
    )?;
    cli::run(root, &["walk", SCRIPT, "--store", &*store, "--lines", "0", "--until", "now", "--no-text"])
}

fn walk_only(root: &Path, options: &Options) -> Result<(), Failure> {
    let own_photo = options.photo.clone().map(|path| root.join(path));
    let mut stages = vec![Stage::new("build", "build the command line program", cli::build)];
    if own_photo.is_none() {
        stages.push(Stage::new("photo", "fetch the photo of the demo job", |root| {
            photo::demo_photo(root).map(drop)
        }));
    }
    stages.push(Stage::new(
        "walk",
        "prove the checklist, walk the demo job, write its record",
        move |root| walk(root, own_photo.clone()),
    ));
    run_all(root, &stages)?;
    println!("\nThe record of the demo job is in {DEMO}/record.pdf, its store in {DEMO}/store.");
    Ok(())
}

fn walk(root: &Path, own_photo: Option<PathBuf>) -> Result<(), Failure> {
    let photo = own_photo.map_or_else(|| photo::demo_photo(root), Ok)?;
    let store = root.join(DEMO).join("store");
    folder::remove(&store)?;
    folder::create(&store)?;
    let (store, record) = (store.to_string_lossy(), format!("{DEMO}/record.pdf"));
    cli::run(
        root,
        &["walk", SCRIPT, "--store", &*store, "--record", &record, "--photo", &*photo.to_string_lossy()],
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn options_are_read_in_any_order() -> Result<(), Failure> {
        let options = Options::read(&["--fresh", "--photo", "a.jpg", "--no-window"])?;
        assert_eq!(options, Options { photo: Some("a.jpg".into()), no_window: true, fresh: true });
        assert_eq!(Options::read(&[])?, Options::default());
        Ok(())
    }

    #[test]
    fn an_unknown_option_is_refused() {
        assert!(matches!(Options::read(&["--windows"]), Err(Failure::Usage(_))));
        assert!(matches!(Options::read(&["--photo"]), Err(Failure::Usage(_))));
    }
}
