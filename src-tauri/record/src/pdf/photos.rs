//! Photos in rows, each with its words. One that cannot be shown says why in its place.

use std::collections::BTreeMap;

use krilla::image::Image;

use super::flow::Flow;
use super::ink::{Ink, LEFT, Look, WIDTH};
use super::letters::Line;
use super::sheet::{Owner, Place, Role, Shape, rect};
use super::{Lacks, PdfInputs, PdfPhoto};
use crate::document::Document;
use crate::measured::Photo;
use crate::messages;
use crate::say::{Side, caption};
use crate::speak::Say;

/// Between the rows.
const BETWEEN_ROWS: f32 = 10.0;
/// Between a picture and its words.
const ABOVE_WORDS: f32 = 4.0;

/// How photos stand.
#[derive(Clone, Copy)]
pub(super) struct Grid {
    columns: u8,
    gap: f32,
    /// The highest picture.
    pub highest: f32,
    look: Look,
    /// With the step, the time and who took it.
    with_origin: bool,
    /// So many lines of words at most.
    lines: usize,
}

/// The first page's photos in one row.
pub(super) const STRIP: Grid =
    Grid { columns: 4, gap: 10.0, highest: 84.0, look: Look::FOOT, with_origin: false, lines: 2 };
/// The customer's photos, two in a row.
pub(super) const LARGE: Grid =
    Grid { columns: 2, gap: 16.0, highest: 250.0, look: Look::BODY, with_origin: false, lines: usize::MAX };
/// All photos, twelve to a page.
pub(super) const FILE: Grid =
    Grid { columns: 3, gap: 12.0, highest: 112.0, look: Look::FOOT, with_origin: true, lines: usize::MAX };

impl Grid {
    fn column(self) -> f32 {
        let columns = f32::from(self.columns);
        (WIDTH - self.gap * (columns - 1.0)) / columns
    }
}

/// The pictures that can be drawn, by hash, and why the others cannot.
pub(super) struct Pictures<'a> {
    pub images: BTreeMap<&'a str, Image>,
    lacking: BTreeMap<&'a str, Lacks>,
}

impl<'a> Pictures<'a> {
    pub fn read(inputs: &'a PdfInputs) -> Pictures<'a> {
        let (mut images, mut lacking) = (BTreeMap::new(), BTreeMap::new());
        for (hash, photo) in &inputs.photos {
            let image = match photo {
                PdfPhoto::Jpeg(bytes) => image(bytes),
                PdfPhoto::Lacking(why) => Err(why.clone()),
            };
            match image {
                Ok(image) => drop(images.insert(hash.as_str(), image)),
                Err(why) => drop(lacking.insert(hash.as_str(), why)),
            }
        }
        Pictures { images, lacking }
    }
}

fn image(bytes: &[u8]) -> Result<Image, Lacks> {
    if colours(bytes) == Some(4) {
        return Err(Lacks::PressColors);
    }
    Image::from_jpeg(bytes.to_vec().into(), false)
        .map_err(|error| Lacks::Unreadable(error.to_string().into()))
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

/// The photos of the first page and of the customer's copy.
pub(super) fn of_first_page(document: &Document) -> Vec<&Photo> {
    let photos = document.photos.iter().filter(|photo| photo.first_page);
    photos.take(usize::from(STRIP.columns)).collect()
}

/// A photo with the room that it takes.
struct Shown<'a> {
    photo: &'a Photo,
    /// Width and height of the picture, or why there is none.
    size: Result<(f32, f32), Lacks>,
    words: Vec<Line>,
    grid: Grid,
}

impl Shown<'_> {
    fn picture_height(&self) -> f32 {
        self.size.as_ref().map_or(self.grid.highest / 2.0, |(_, height)| *height)
    }

    fn height(&self) -> f32 {
        self.picture_height() + ABOVE_WORDS + self.words.iter().map(|line| line.height).sum::<f32>()
    }
}

/// Writes photos in rows, a row whole on a page.
pub(super) fn write(
    flow: &mut Flow<'_>,
    photos: &[&Photo],
    (pictures, grid): (&Pictures<'_>, Grid),
    say: &Say<'_>,
) {
    for row in photos.chunks(usize::from(grid.columns)) {
        let row: Vec<_> = row.iter().map(|photo| shown(flow, photo, (pictures, grid), say)).collect();
        let height = row.iter().map(Shown::height).fold(0.0, f32::max);
        flow.keep(height);
        let top = flow.y;
        for (column, shown) in row.into_iter().enumerate() {
            put(flow, shown, (LEFT + column as f32 * (grid.column() + grid.gap), top), say);
        }
        flow.y = top + height + BETWEEN_ROWS;
    }
}

fn shown<'a>(
    flow: &mut Flow<'_>,
    photo: &'a Photo,
    (pictures, grid): (&Pictures<'_>, Grid),
    say: &Say<'_>,
) -> Shown<'a> {
    let size = match pictures.images.get(photo.hash.as_str()) {
        Some(image) => Ok(fitting(image.size(), grid)),
        None => Err(pictures.lacking.get(photo.hash.as_str()).cloned().unwrap_or(Lacks::NotGiven)),
    };
    let label = say.within(&messages::photo_label(&photo.label));
    let mut origin = String::new();
    if grid.with_origin {
        origin = say.within(&messages::photo_origin(&photo.title, photo.by.when_and_who(say)));
    }
    let parts = [
        (label.as_str(), grid.look.strong()),
        (" ", grid.look),
        (&caption(photo, say), grid.look.inked(Ink::Black)),
        (" ", grid.look),
        (origin.as_str(), grid.look.inked(Ink::Dim)),
    ];
    let mut words = flow.letters.set_parts(&parts, grid.column());
    words.truncate(grid.lines);
    Shown { photo, size, words, grid }
}

/// The largest size in which a picture of so many pixels fits.
fn fitting((width, height): (u32, u32), grid: Grid) -> (f32, f32) {
    let (width, height) = (width.max(1) as f32, height.max(1) as f32);
    let scale = (grid.column() / width).min(grid.highest / height);
    (width * scale, height * scale)
}

fn put(flow: &mut Flow<'_>, shown: Shown<'_>, (x, top): (f32, f32), say: &Say<'_>) {
    let below = top + shown.picture_height() + ABOVE_WORDS;
    let width = shown.grid.column();
    match &shown.size {
        Ok((width, height)) => {
            let place: Place = (x, top, *width, *height);
            let alt = say.says(&messages::photo_alt(&shown.photo.label, caption(shown.photo, say)));
            let owner = flow.figure(alt, place);
            flow.put(owner, Shape::Photo { hash: shown.photo.hash.clone(), place });
        }
        Err(why) => {
            let place = (x, top, width, shown.picture_height());
            flow.draw(Owner::Layout, rect(place), None, Some((Ink::Hair, 0.8)));
            let text = say.says(&messages::photo_lacking(why.says()));
            flow.place(Role::Paragraph, &text, Look::FOOT, (x + 6.0, top + 4.0), width - 12.0);
        }
    }
    let node = flow.node(Role::Paragraph);
    flow.lines(Owner::Node(node), shown.words, Side::Left, (x, below), width);
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
        let (width, height) = fitting((4000, 3000), FILE);
        assert!(width <= FILE.column() + 0.01 && (width / height - 4.0 / 3.0).abs() < 0.001);
        let (width, height) = fitting((3000, 4000), FILE);
        assert!((height - FILE.highest).abs() < 0.01 && (width / height - 0.75).abs() < 0.001);
    }
}
