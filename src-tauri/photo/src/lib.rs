//! Takes in a photo: takes location and serial numbers out, checks that the picture is whole, turns it
//! upright, and makes the small pictures for the screen. Bytes in, values out; no disk, no clock.
//!
//! The photo is evidence, so its own pixels are never encoded anew: [`Photo::kept`] is the camera's file
//! without everything that neither the picture nor its colours need. Two notes stay: the orientation and
//! the date. What was decoded and found whole is `kept` itself, and [`Photo::hash`] is its fingerprint.
//!
//! Limits. JPEG (baseline and progressive) and PNG only. Memory grows with the pixels, at most: 4 bytes a pixel
//! for a usual camera JPEG, 9 for a progressive one, 11 for a PNG with 16 bits and transparency; besides that
//! three times the file. So take in one photo at a time. Text that is visible in the picture, such as a
//! licence plate, stays visible. A bit that flipped inside the compressed pixels may pass as a wrong spot.
#![deny(missing_docs)]

mod error;
mod jpeg;
mod kind;
mod notes;
mod parts;
mod pixels;
mod png;
mod scans;

pub use error::PhotoError;
pub use kind::Kind;

use notes::Notes;
use parts::Parts;
use sha2::{Digest, Sha256};

/// Longest side of [`Photo::thumbnail`], in pixels.
pub const THUMBNAIL_SIDE: u32 = 320;
/// Longest side of [`Photo::view`], in pixels.
pub const VIEW_SIDE: u32 = 2048;

/// What a photo may be at most. Everything is checked before a pixel is decoded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limits {
    /// Bytes of the file.
    pub bytes: usize,
    /// Width times height, in pixels.
    pub pixels: u64,
    /// Width and height each, in pixels.
    pub side: u32,
}

impl Default for Limits {
    /// 40 MB, 50 megapixels and 20,000 pixels a side: above what tablets' cameras give, and small enough to be
    /// decoded in their memory.
    fn default() -> Limits {
        Limits { bytes: 40_000_000, pixels: 50_000_000, side: 20_000 }
    }
}

impl Limits {
    fn check_size(&self, width: u32, height: u32) -> Result<(), PhotoError> {
        if width.max(height) > self.side {
            return Err(PhotoError::SideTooLong { width, height, limit: self.side });
        }
        let pixels = u64::from(width) * u64::from(height);
        if pixels > self.pixels {
            return Err(PhotoError::TooManyPixels { width, height, pixels, limit: self.pixels });
        }
        Ok(())
    }
}

/// A photo that was taken in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Photo {
    /// The camera's file without location, serial numbers and other notes; the pixels are untouched.
    pub kept: Vec<u8>,
    /// SHA-256 of `kept`.
    pub hash: [u8; 32],
    /// The format of `kept`.
    pub kind: Kind,
    /// Width of the upright picture, in pixels.
    pub width: u32,
    /// Height of the upright picture, in pixels.
    pub height: u32,
    /// EXIF orientation of `kept`, 1 to 8; 1 if the file doesn't say it. `thumbnail` and `view` are upright.
    pub orientation: u8,
    /// EXIF DateTimeOriginal, `YYYY:MM:DD HH:MM:SS` in the camera's local time; a camera's clock may be wrong.
    pub taken: Option<String>,
    /// Upright JPEG with a longest side of at most [`THUMBNAIL_SIDE`].
    pub thumbnail: Vec<u8>,
    /// Upright JPEG with a longest side of at most [`VIEW_SIDE`].
    pub view: Vec<u8>,
}

impl Photo {
    /// `hash` as 64 lower-case hexadecimal digits.
    pub fn hash_hex(&self) -> String {
        self.hash.iter().map(|byte| format!("{byte:02x}")).collect()
    }
}

/// Takes in the bytes of a photo file. Taking in [`Photo::kept`] again gives the same photo.
///
/// # Errors
/// A [`PhotoError`] that says what was found and what to do, if the file is empty, of another kind, larger
/// than `limits`, cut off or damaged.
pub fn take_in(bytes: &[u8], limits: &Limits) -> Result<Photo, PhotoError> {
    let kind = kind::of(bytes)?;
    if bytes.len() > limits.bytes {
        return Err(PhotoError::TooManyBytes { bytes: bytes.len(), limit: limits.bytes });
    }
    let mut parts = Parts::of(kind, bytes)?;
    let (width, height) = (parts.width, parts.height);
    limits.check_size(width, height)?;
    let notes = Notes::read(parts.exif.take());
    let kept = parts.join(notes.write()?);
    let orientation = notes.orientation.unwrap_or(1);

    let pixels = pixels::decode(kind, &kept, limits)?;
    // Scaling comes before turning: it leaves less to turn.
    let view = pixels::upright(pixels::scale(&pixels.rgb, VIEW_SIDE)?, orientation);
    let thumbnail = pixels::scale(&view, THUMBNAIL_SIDE)?;
    let profile = pixels.profile.as_deref();
    // From orientation 5 on, the picture lies on its side.
    let (width, height) = if orientation >= 5 { (height, width) } else { (width, height) };
    Ok(Photo {
        hash: Sha256::digest(&kept).into(),
        kept,
        kind,
        width,
        height,
        orientation,
        taken: notes.taken,
        thumbnail: pixels::encode(&thumbnail, profile)?,
        view: pixels::encode(&view, profile)?,
    })
}
