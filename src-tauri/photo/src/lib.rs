//! Takes in a photo: takes location and serial numbers out, checks that the picture is whole, turns it
//! upright, and makes the small pictures for the screen. Bytes in, values out; no disk, no clock.
//!
//! The photo is evidence, so its own pixels are never encoded anew: [`Photo::kept`] is the camera's file
//! without everything that neither the picture nor its colours need. Two notes stay: the orientation and
//! the date. What was decoded and found whole is `kept` itself, and [`Photo::hash`] is its fingerprint.
//!
//! Limits. JPEG (baseline and progressive) and PNG only. One intake takes at most [`Limits::memory`], whatever the file
//! claims: what decoding will take is worked out from its header first (a usual camera JPEG 3 bytes a pixel, a progressive
//! one up to 9, a PNG with 16 bits and transparency 11). So take in one photo at a time. Text that is visible in the
//! picture, such as a licence plate, stays visible. A bit that flipped inside the compressed pixels may pass as a wrong spot.
#![deny(missing_docs)]

mod error;
mod jpeg;
mod kind;
mod message;
mod notes;
mod parts;
mod pixels;
mod png;
mod scans;

pub use error::{Damage, Found, PhotoError};
pub use kind::Kind;
pub use message::MESSAGES;

use notes::Notes;
use parts::Parts;
use pixels::Pixels;
use sha2::{Digest, Sha256};

/// Longest side of [`Photo::thumbnail`], in pixels.
pub const THUMBNAIL_SIDE: u32 = 320;
/// Longest side of [`Photo::view`], in pixels.
pub const VIEW_SIDE: u32 = 2048;

/// The most bytes of a photo file that [`Limits`] allows by default.
pub const LARGEST_FILE: usize = 40_000_000;

/// Bytes of memory that an intake takes beside the file and its pixels: rows while they are decoded, packed profiles.
const BESIDE: u64 = 10_000_000;
/// Bytes of memory that scaling takes beside the pixels: rows of [`VIEW_SIDE`] pixels as many as a halved picture has at
/// most (twice [`VIEW_SIDE`]), and the view.
const SCALING: u64 = 3 * 3 * VIEW_SIDE as u64 * VIEW_SIDE as u64;
/// How often the file is in memory: with who hands it over, as it is taken in, as it is kept.
const COPIES: u64 = 3;

/// What a photo may be at most. Everything is checked before a pixel is decoded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limits {
    /// Bytes of the file.
    pub bytes: usize,
    /// Bytes of memory for the whole intake, whatever the file says of itself. How many pixels a photo may have follows
    /// from it, by how the photo is stored.
    pub memory: u64,
    /// Width and height each, in pixels.
    pub side: u32,
}

impl Default for Limits {
    /// 40 MB, 200 MB of memory and 20,000 pixels a side: above what tablets' cameras give. A usual camera JPEG of 10 MB may
    /// have 40 million pixels, a progressive one with full colours 17 million.
    fn default() -> Limits {
        Limits { bytes: LARGEST_FILE, memory: 200_000_000, side: 20_000 }
    }
}

impl Limits {
    fn check_size(&self, parts: &Parts, file: usize) -> Result<(), PhotoError> {
        let Parts { width, height, decoding, .. } = *parts;
        if width.max(height) > self.side {
            return Err(PhotoError::SideTooLong { width, height, limit: self.side });
        }
        let pixels = u64::from(width) * u64::from(height);
        let room = self.memory.saturating_sub(COPIES * file as u64 + BESIDE);
        if decoding.max(3 * pixels + SCALING) > room {
            // Memory for decoding grows with the pixels at most.
            let decoded = u128::from(room) * u128::from(pixels) / u128::from(decoding);
            let limit = (decoded as u64).min(room.saturating_sub(SCALING) / 3);
            return Err(PhotoError::TooManyPixels { width, height, pixels, limit });
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
    limits.check_size(&parts, bytes.len())?;
    let notes = Notes::read(parts.exif.take());
    let kept = parts.join(notes.write()?);
    let orientation = notes.orientation.unwrap_or(1);

    let Pixels { rgb, profile } = pixels::decode(kind, &kept, limits)?;
    // Scaling comes before turning: it leaves less to turn.
    let view = pixels::upright(pixels::scale(rgb, VIEW_SIDE)?, orientation);
    let thumbnail = pixels::scale(view.clone(), THUMBNAIL_SIDE)?;
    let profile = profile.as_deref();
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
