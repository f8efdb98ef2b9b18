//! Takes pictures of the real window for the README: `cargo run -p panside-tests --example pictures -- OUT PHOTO`.
//!
//! Each picture is a place in the demo job: so many lines of its script are walked into a store, the window is opened
//! on it, and a few taps lead to what is shown.
#![allow(clippy::disallowed_methods, reason = "an edge: it writes pictures")]

use std::path::{Path, PathBuf};

use panside_tests::window::{Programs, Result, Screen, Trouble, Window, folder, root};

/// One picture.
struct Picture {
    name: &'static str,
    /// Lines of the demo job that are behind.
    lines: usize,
    /// What is tapped after the window has opened: what a button says, or a CSS selector after a `>`.
    taps: &'static [&'static str],
}

const PICTURES: &[Picture] = &[
    // The joint is cool, the shell is not.
    Picture { name: "step", lines: 65, taps: &[] },
    Picture { name: "pad", lines: 26, taps: &[">[data-row='read_level/stick']"] },
    Picture { name: "torque", lines: 147, taps: &[">[data-row='pan_torque/pan']"] },
    Picture { name: "moves", lines: 62, taps: &[">.frame > button"] },
    Picture { name: "thread", lines: 112, taps: &[">main > button"] },
    Picture { name: "photos", lines: 112, taps: &["More", "Photos"] },
    Picture { name: "paper", lines: 211, taps: &["RO 20417", "More", "Record"] },
    Picture { name: "bay", lines: 112, taps: &["More", "Bay"] },
];

fn main() -> Result {
    let words: Vec<PathBuf> = std::env::args_os().skip(1).map(PathBuf::from).collect();
    let [out, photo] = words.as_slice() else {
        return Err(Trouble::wrong("Name the folder for the pictures and the photo of the demo job."));
    };
    let (programs, screen) = (Programs::find()?, Screen::start()?);
    for picture in PICTURES {
        take(&programs, &screen, picture, out, photo)?;
        println!("{}.png", out.join(picture.name).display());
    }
    Ok(())
}

fn take(programs: &Programs, screen: &Screen, picture: &Picture, out: &Path, photo: &Path) -> Result {
    let place = folder()?;
    let store = place.path().join("bay");
    programs.walk(&root().join("checklists/demo/demo.walk.json"), &store, picture.lines, photo)?;
    let mut window = Window::open(screen, programs, &store)?;
    for tap in picture.taps {
        match tap.strip_prefix('>') {
            Some(selector) => window.tap_selector(selector)?,
            None => window.tap(tap)?,
        }
        window.settle()?;
    }
    let bytes = window.picture()?;
    let path = out.join(picture.name).with_extension("png");
    std::fs::write(&path, bytes).map_err(|source| Trouble::File {
        doing: "Writing a picture",
        path,
        source,
    })?;
    window.close().map(drop)
}
