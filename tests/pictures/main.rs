//! Takes pictures of the real window for the README: `cargo run -p panside-tests --example pictures -- OUT PHOTO`.
//!
//! Each picture is a place in the demo job: so many lines of its script are walked into a store, the window is opened
//! on it, and a few taps lead to what is shown.
#![allow(clippy::disallowed_methods, reason = "an edge: it writes pictures")]

use std::path::{Path, PathBuf};

use image::codecs::png::{CompressionType, FilterType, PngEncoder};
use panside_tests::window::{Place, Result, Trouble};

/// One picture.
struct Picture {
    name: &'static str,
    /// Lines of the demo job that are behind.
    lines: usize,
    /// What is tapped after the window has opened.
    taps: &'static [Tap],
}

/// A tap.
enum Tap {
    /// On the row of an entry, named as step and entry.
    Row(&'static str),
    /// On the button that says what a message of the window says.
    Words(&'static str),
    /// On the button that says this.
    Says(&'static str),
}

use Tap::{Row, Says, Words};

const PICTURES: &[Picture] = &[
    // The joint is cool, the shell is not.
    Picture { name: "step", lines: 65, taps: &[] },
    Picture { name: "pad", lines: 26, taps: &[Row("read_level/stick")] },
    Picture { name: "torque", lines: 147, taps: &[Row("pan_torque/pan")] },
    Picture { name: "vehicle-actions", lines: 58, taps: &[Words("frame-opens-vehicle-actions")] },
    Picture { name: "job-steps", lines: 112, taps: &[Says("Job steps:")] },
    Picture { name: "tray", lines: 112, taps: &[Words("frame-tray-opens")] },
    Picture { name: "photos", lines: 112, taps: &[Words("frame-more"), Words("screens-place-photos")] },
    Picture {
        name: "paper",
        lines: usize::MAX,
        taps: &[Says("RO 20417"), Words("frame-more"), Words("screens-place-record")],
    },
    Picture { name: "bay", lines: 112, taps: &[Words("frame-more"), Words("screens-place-bay")] },
];

fn main() -> Result {
    let words: Vec<PathBuf> = std::env::args_os().skip(1).map(PathBuf::from).collect();
    let [out, photo] = words.as_slice() else {
        return Err(Trouble::wrong("Name the folder for the pictures and the photo of the demo job."));
    };
    for picture in PICTURES {
        let path = out.join(picture.name).with_extension("png");
        take(picture, photo, &path)?;
        println!("{}", path.display());
    }
    Ok(())
}

fn take(picture: &Picture, photo: &Path, path: &Path) -> Result {
    let place = Place::empty(Some(photo))?;
    place.walk(picture.lines)?;
    let mut window = place.open()?;
    for tap in picture.taps {
        match tap {
            Row(row) => window.tap_selector(&format!("[data-row=\"{row}\"]"))?,
            Words(id) => window.tap_words(id)?,
            Says(says) => window.tap(says)?,
        }
    }
    let bytes = window.picture()?;
    std::fs::write(path, small(&bytes)?).map_err(|source| Trouble::File {
        doing: "Writing a picture to",
        path: path.to_owned(),
        source,
    })?;
    window.close().map(drop)
}

/// The picture with fewer shades, which nobody sees and which makes it smaller: steps of 5 of 255. Drawn pages are
/// smaller without a filter, photos with one: the smaller is taken.
fn small(png: &[u8]) -> Result<Vec<u8>> {
    const STEP: u8 = 5;
    let failed =
        |error: image::ImageError| Trouble::wrong(format!("The picture can't be made small: {error}"));
    let mut picture = image::load_from_memory(png).map_err(failed)?.into_rgb8();
    picture.iter_mut().for_each(|shade| *shade = shade.saturating_add(STEP / 2) / STEP * STEP);
    let file = |filter| {
        let mut file = Vec::new();
        let encoder = PngEncoder::new_with_quality(&mut file, CompressionType::Best, filter);
        picture.write_with_encoder(encoder).map(|()| file).map_err(failed)
    };
    let (plain, filtered) = (file(FilterType::NoFilter)?, file(FilterType::Up)?);
    Ok(if plain.len() <= filtered.len() { plain } else { filtered })
}
