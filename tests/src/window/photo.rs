//! A photo for the tests: a drawing of no place and nobody, as JPEG.

use std::path::Path;

use image::RgbImage;

use crate::window::{Result, Trouble};

/// Writes a small JPEG of a pan with its bolts, drawn.
///
/// # Errors
/// When it can't be written.
pub fn demo_photo(path: &Path) -> Result {
    let bolt = |x: u32, y: u32| (x % 80).abs_diff(40).pow(2) + (y % 80).abs_diff(40).pow(2) < 150;
    let rim = |x: u32, y: u32| !(80..560).contains(&x) || !(80..400).contains(&y);
    let picture = RgbImage::from_fn(640, 480, |x, y| match (rim(x, y), bolt(x, y)) {
        (true, true) => image::Rgb([60, 62, 66]),
        (true, false) => image::Rgb([168, 170, 172]),
        (false, _) => image::Rgb([120, 52 + (x / 16 % 8) as u8, 48 + (y / 16 % 8) as u8]),
    });
    picture.save(path).map_err(|error| Trouble::File {
        doing: "Writing the photo",
        path: path.to_owned(),
        source: std::io::Error::other(error),
    })
}
