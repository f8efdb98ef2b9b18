//! The window as a person sees it: each screen looked at in Chromium, the demo job walked in the real one, and pictures
//! of it for the README.

use std::path::Path;
use std::sync::{Mutex, PoisonError};

use crate::cli;
use crate::failure::Failure;
use crate::folder;
use crate::npm;
use crate::packages;
use crate::photo;
use crate::stage::{Stage, call, command, run_all};

/// The demo job, whose pages are looked at.
const SCRIPT: &str = "checklists/demo/demo.walk.json";

/// A job with a figure of each kind.
const MEASURED: &str = "src-tauri/job/tests/fixtures/figures.walk.json";

/// Any picture does where nobody looks at it.
const ANY_PICTURE: &str = "src-tauri/icons/icon.png";

/// Where the pictures of the README are committed.
const PICTURES: &str = "ui/pictures";

/// The sizes that screens are looked at, as `ui/look/sizes.mjs` has them.
const SIZES: [&str; 5] = ["10-inch", "8-inch", "upright", "8-inch-upright", "13-inch"];

/// Every screen over fixed pages in Chromium: axe-core's rules, target sizes, text sizes, text that is cut off.
///
/// # Errors
/// When a page can't be made or anything is found.
pub fn look(root: &Path) -> Result<(), Failure> {
    let aside = root.join("target/look");
    folder::remove(&aside)?;
    folder::create(&aside)?;
    let (store, pages) = ("target/look/store", "target/look/pages");
    let walk = ["walk", SCRIPT, "--store", store, "--pages", pages, "--photo", ANY_PICTURE];
    cli::run_quietly(root, &[&walk[..], &["--plain-proof", "--no-text"]].concat())?;
    let (store, measured) = ("target/look/measured", "target/look/pages/measured");
    let walk = ["walk", MEASURED, "--store", store, "--pages", measured];
    cli::run_quietly(root, &[&walk[..], &["--plain-proof", "--no-text"]].concat())?;
    let pages = root.join(pages).to_string_lossy().into_owned();
    let looks = SIZES.map(|size| {
        let out = aside.join(size).to_string_lossy().into_owned();
        ["look/look.mjs".to_owned(), pages.clone(), out, "--size".to_owned(), size.to_owned()].to_vec()
    });
    side_by_side(root, looks.into_iter())
}

/// Runs scripts of the page, two at a time: one alone leaves half of the machine idle.
fn side_by_side(root: &Path, scripts: impl Iterator<Item = Vec<String>>) -> Result<(), Failure> {
    let left = Mutex::new(scripts.collect::<Vec<_>>().into_iter());
    let hand = || {
        loop {
            let next = left.lock().unwrap_or_else(PoisonError::into_inner).next();
            let Some(words) = next else { return Ok(()) };
            let words: Vec<&str> = words.iter().map(String::as_str).collect();
            call(command(&root.join("ui"), "node", &words))?;
        }
    };
    std::thread::scope(|scope| {
        let hands = [scope.spawn(hand), scope.spawn(hand)];
        let ended = hands.map(|one| one.join().unwrap_or_else(|cause| std::panic::resume_unwind(cause)));
        ended.into_iter().collect()
    })
}

/// The demo job by taps in the real window.
///
/// # Errors
/// When it can't be walked.
pub fn walk(root: &Path) -> Result<(), Failure> {
    call(command(root, "cargo", &["test", "--workspace", "--test", "window", "--", "--nocapture"]))
}

/// `cargo xtask pictures`: pictures of the window and of the record, for the README.
///
/// # Errors
/// When something is missing, or the window doesn't come to where its picture is taken.
pub fn pictures(root: &Path) -> Result<(), Failure> {
    run_all(
        root,
        &[
            Stage::new("packages", "see that the machine has what the window and its driver need", |root| {
                packages::debian(root, &[packages::WINDOW, packages::TESTS].concat())?;
                packages::node(root)
            }),
            Stage::new("npm", "install the page's packages", npm::install),
            Stage::new("page", "build the page", npm::build_page),
            Stage::new("programs", "build the command line program and the window", cli::build_with_window),
            Stage::new("photo", "fetch the photo of the demo job", |root| photo::demo_photo(root).map(drop)),
            Stage::new("pictures", "take the pictures", take),
        ],
    )
}

fn take(root: &Path) -> Result<(), Failure> {
    let out = root.join(PICTURES);
    folder::create(&out)?;
    let photo = photo::demo_photo(root)?;
    let (out_text, photo) = (out.to_string_lossy(), photo.to_string_lossy());
    let example = ["run", "-q", "-p", "panside-tests", "--example", "pictures", "--", &*out_text, &*photo];
    call(command(root, "cargo", &example))?;
    let aside = root.join("target/pictures");
    folder::remove(&aside)?;
    folder::create(&aside)?;
    let (store, record) = ("target/pictures/store", "target/pictures/record.pdf");
    cli::run_quietly(
        root,
        &[
            "walk",
            SCRIPT,
            "--store",
            store,
            "--record",
            record,
            "--photo",
            &*photo,
            "--plain-proof",
            "--no-text",
        ],
    )?;
    let first = out.join("record");
    call(command(
        root,
        "pdftoppm",
        &["-r", "80", "-png", "-singlefile", "-f", "1", "-l", "1", record, &*first.to_string_lossy()],
    ))?;
    println!("   the pictures are in {PICTURES}.");
    Ok(())
}
