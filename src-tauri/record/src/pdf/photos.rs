//! The photos, two in a row, each with its words. One that cannot be shown says why in its place.

use std::collections::BTreeMap;

use krilla::image::Image;

use super::flow::Flow;
use super::ink::{Ink, LEFT, Look, WIDTH};
use super::letters::Line;
use super::sheet::{Owner, Place, Role, Shape, rect};
use super::{PdfInputs, PdfPhoto};
use crate::document::Document;
use crate::measured::Photo;
use crate::say::{Side, caption};
use crate::value::short;

const GAP: f32 = 16.0;
const COLUMN: f32 = (WIDTH - GAP) / 2.0;
/// The highest picture: four to three lying, and upright ones are narrower.
const HIGHEST: f32 = COLUMN * 0.75;
/// Height of the place of a picture that cannot be shown.
const LACKING: f32 = 64.0;

/// The pictures that can be drawn, by hash, and why the others cannot.
pub(super) fn read(inputs: &PdfInputs) -> (BTreeMap<&str, Image>, BTreeMap<&str, String>) {
    let (mut images, mut lacking) = (BTreeMap::new(), BTreeMap::new());
    for (hash, photo) in &inputs.photos {
        let image = match photo {
            PdfPhoto::Jpeg(bytes) => image(bytes),
            PdfPhoto::Lacking { why } => Err(why.clone()),
        };
        match image {
            Ok(image) => drop(images.insert(hash.as_str(), image)),
            Err(why) => drop(lacking.insert(hash.as_str(), why)),
        }
    }
    (images, lacking)
}

fn image(bytes: &[u8]) -> Result<Image, String> {
    if colours(bytes) == Some(4) {
        return Err("its colors are for a printing press, which these pages cannot carry".to_owned());
    }
    Image::from_jpeg(bytes.to_vec().into(), false)
        .map_err(|error| format!("its file cannot be read: {error}"))
}

/// How many colours a JPEG has, as its frame header says (ITU-T T.81, B.2.2). Nothing for a file without one.
fn colours(bytes: &[u8]) -> Option<u8> {
    let mut at = 2;
    loop {
        let marker = *bytes.get(at + 1)?;
        if bytes.get(at) != Some(&0xff) {
            return None;
        }
        // Frame headers are C0 to CF but for the tables C4 and CC and the reserved C8.
        if matches!(marker, 0xc0..=0xcf) && !matches!(marker, 0xc4 | 0xc8 | 0xcc) {
            return bytes.get(at + 9).copied();
        }
        at += 2 + usize::from(u16::from_be_bytes([*bytes.get(at + 2)?, *bytes.get(at + 3)?]));
    }
}

/// A photo with the room that it takes.
struct Shown<'a> {
    photo: &'a Photo,
    /// Width and height of the picture, or why there is none.
    size: Result<(f32, f32), String>,
    words: Vec<Line>,
}

impl Shown<'_> {
    fn picture_height(&self) -> f32 {
        self.size.as_ref().map_or(LACKING, |(_, height)| *height)
    }

    fn height(&self) -> f32 {
        self.picture_height() + 4.0 + self.words.iter().map(|line| line.height).sum::<f32>()
    }
}

/// Writes every photo.
pub(super) fn write(
    flow: &mut Flow,
    document: &Document,
    images: &BTreeMap<&str, Image>,
    lacking: &BTreeMap<&str, String>,
) {
    for pair in document.photos.chunks(2) {
        let pair: Vec<_> = pair.iter().map(|photo| shown(flow, document, photo, images, lacking)).collect();
        let height = pair.iter().map(Shown::height).fold(0.0, f32::max);
        flow.keep(height);
        let top = flow.y;
        for (column, shown) in pair.into_iter().enumerate() {
            put(flow, shown, (LEFT + column as f32 * (COLUMN + GAP), top));
        }
        flow.y = top + height + 10.0;
    }
}

fn shown<'a>(
    flow: &mut Flow,
    document: &Document,
    photo: &'a Photo,
    images: &BTreeMap<&str, Image>,
    lacking: &BTreeMap<&str, String>,
) -> Shown<'a> {
    let size = match images.get(photo.hash.as_str()) {
        Some(image) => Ok(fitting(image.size())),
        None => {
            Err(lacking.get(photo.hash.as_str()).cloned().unwrap_or_else(|| "it was not given".to_owned()))
        }
    };
    let title = document.step_title(&photo.step);
    let about = format!(" · {title}, {} {}, {}", photo.by.day_and_time(), photo.by.who, short(&photo.hash));
    let words = flow.letters.set_parts(
        &[
            (&format!("{}: ", photo.label), Look::SMALL.strong()),
            (&caption(photo), Look::SMALL),
            (&about, Look::NOTE),
        ],
        COLUMN,
    );
    Shown { photo, size, words }
}

/// The largest size in which a picture of so many pixels fits.
fn fitting((width, height): (u32, u32)) -> (f32, f32) {
    let (width, height) = (width.max(1) as f32, height.max(1) as f32);
    let scale = (COLUMN / width).min(HIGHEST / height);
    (width * scale, height * scale)
}

fn put(flow: &mut Flow, shown: Shown<'_>, (x, top): (f32, f32)) {
    let below = top + shown.picture_height() + 4.0;
    match &shown.size {
        Ok((width, height)) => {
            let place: Place = (x, top, *width, *height);
            let alt = format!("Photo. {}: {}", shown.photo.label, caption(shown.photo));
            let owner = flow.figure(alt, place);
            flow.put(owner, Shape::Photo { hash: shown.photo.hash.clone(), place });
        }
        Err(why) => {
            flow.draw(Owner::Layout, rect((x, top, COLUMN, LACKING)), None, Some((Ink::Hair, 0.8)));
            let text = format!("The picture cannot be shown: {why}.");
            flow.place(Role::Paragraph, &text, Look::ASIDE, (x + 8.0, top + 8.0), COLUMN - 16.0);
        }
    }
    let node = flow.node(Role::Paragraph);
    flow.lines(Owner::Node(node), shown.words, Side::Left, (x, below), COLUMN);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_colours_of_a_jpeg_are_counted_from_its_frame_header() {
        let mut jpeg = vec![0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2];
        jpeg.extend([0xff, 0xc0, 0, 17, 8, 0, 16, 0, 32, 4]);
        assert_eq!(colours(&jpeg), Some(4));
        assert_eq!(colours(b"no picture at all"), None);
        assert_eq!(colours(&[0xff, 0xd8]), None);
    }

    #[test]
    fn a_picture_keeps_its_shape_lying_or_upright() {
        let (width, height) = fitting((4000, 3000));
        assert!((width - COLUMN).abs() < 0.01 && (height - HIGHEST).abs() < 0.01);
        let (width, height) = fitting((3000, 4000));
        assert!((height - HIGHEST).abs() < 0.01 && (width / height - 0.75).abs() < 0.001);
    }
}
