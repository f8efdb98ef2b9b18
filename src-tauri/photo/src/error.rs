//! Why a photo is not taken in, in sentences that say what was found and what to do.

use std::fmt;

use panside_messages::Message;

use crate::Kind;
use crate::message::*;

/// Everything that can keep [`crate::take_in`] from taking in a photo.
///
/// The text is meant for the technician; a cause from a library is kept as the source, for the log.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum PhotoError {
    /// The file has no bytes.
    Empty,

    /// The file is larger than [`crate::Limits::bytes`].
    TooManyBytes {
        /// Bytes found.
        bytes: usize,
        /// Bytes allowed.
        limit: usize,
    },

    /// The file is neither JPEG nor PNG.
    NotAPhoto {
        /// What the file looks like.
        found: Found,
    },

    /// The file ends before its picture does.
    CutOff {
        /// The format of the file.
        kind: Kind,
    },

    /// The structure of the file contradicts itself.
    Damaged {
        /// The format of the file.
        kind: Kind,
        /// What is wrong.
        what: Damage,
    },

    /// More pixels than [`crate::Limits::memory`] has room for. Found before any pixel is decoded.
    TooManyPixels {
        /// Width found, in pixels.
        width: u32,
        /// Height found, in pixels.
        height: u32,
        /// Width times height.
        pixels: u64,
        /// Pixels allowed.
        limit: u64,
    },

    /// A side is longer than [`crate::Limits::side`]. Found before any pixel is decoded.
    SideTooLong {
        /// Width found, in pixels.
        width: u32,
        /// Height found, in pixels.
        height: u32,
        /// Longest side allowed, in pixels.
        limit: u32,
    },

    /// The pixels can't be decoded: damaged data, or a variant of the format that no camera writes.
    Undecodable {
        /// The format of the file.
        kind: Kind,
        /// What the decoder said.
        #[source]
        source: Box<dyn std::error::Error + Send + Sync>,
    },

    /// The notes or the small pictures could not be written. No property of a photo is known to cause this.
    Preparing {
        /// What the scaler, the encoder or the EXIF writer said.
        #[source]
        source: Box<dyn std::error::Error + Send + Sync>,
    },
}

/// What a file that is no photo looks like by its first bytes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Found {
    /// A GIF picture.
    Gif,
    /// A WebP picture.
    WebP,
    /// A PDF document.
    Pdf,
    /// A BMP picture.
    Bmp,
    /// A TIFF picture, or a raw photo, which begins like one.
    Tiff,
    /// A HEIC or AVIF picture or a video, which begin alike.
    HeicOrVideo,
    /// A ZIP archive.
    Zip,
    /// Text.
    Text,
    /// Nothing known.
    Unknown,
}

impl Found {
    fn message(self) -> Message {
        match self {
            Found::Gif => photo_found_gif(),
            Found::WebP => photo_found_webp(),
            Found::Pdf => photo_found_pdf(),
            Found::Bmp => photo_found_bmp(),
            Found::Tiff => photo_found_tiff(),
            Found::HeicOrVideo => photo_found_heic_or_video(),
            Found::Zip => photo_found_zip(),
            Found::Text => photo_found_text(),
            Found::Unknown => photo_found_unknown(),
        }
    }
}

/// What contradicts itself in a photo's structure.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Damage {
    /// A PNG doesn't start with its header.
    NoHeader,
    /// The color profile is larger than any camera's.
    ProfileTooLarge,
    /// A chunk's checksum doesn't fit.
    Checksum,
    /// The header has no size.
    NoSize,
    /// The width or the height is 0.
    SizeZero,
    /// There are more scans than any camera writes.
    TooManyScans,
    /// There are two frame headers.
    SizeTwice,
    /// There is no scan.
    NoPicture,
    /// The frame header ends too soon.
    FrameTooShort,
    /// A segment's length is less than that of its length field.
    SegmentLength,
}

impl Damage {
    fn message(self) -> Message {
        match self {
            Damage::NoHeader => photo_damage_no_header(),
            Damage::ProfileTooLarge => photo_damage_profile_too_large(),
            Damage::Checksum => photo_damage_checksum(),
            Damage::NoSize => photo_damage_no_size(),
            Damage::SizeZero => photo_damage_size_zero(),
            Damage::TooManyScans => photo_damage_too_many_scans(),
            Damage::SizeTwice => photo_damage_size_twice(),
            Damage::NoPicture => photo_damage_no_picture(),
            Damage::FrameTooShort => photo_damage_frame_too_short(),
            Damage::SegmentLength => photo_damage_segment_length(),
        }
    }
}

impl PhotoError {
    /// What to say to a person.
    #[must_use]
    pub fn message(&self) -> Message {
        match self {
            PhotoError::Empty => photo_empty(),
            PhotoError::TooManyBytes { bytes, limit } => photo_too_many_bytes(*bytes, *limit),
            PhotoError::NotAPhoto { found } => photo_not_a_photo(found.message()),
            PhotoError::CutOff { kind } => photo_cut_off(kind.to_string()),
            PhotoError::Damaged { kind, what } => photo_damaged(kind.to_string(), what.message()),
            PhotoError::TooManyPixels { width, height, pixels, limit } => {
                photo_too_many_pixels(*width, *height, *pixels, *limit)
            }
            PhotoError::SideTooLong { width, height, limit } => photo_side_too_long(*width, *height, *limit),
            PhotoError::Undecodable { kind, .. } => photo_undecodable(kind.to_string()),
            PhotoError::Preparing { .. } => photo_preparing(),
        }
    }
}

impl fmt::Display for PhotoError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.message().english())
    }
}

impl PhotoError {
    /// Wraps what a decoder said about a photo of this kind.
    pub(crate) fn undecodable(
        kind: Kind,
        source: impl Into<Box<dyn std::error::Error + Send + Sync>>,
    ) -> PhotoError {
        PhotoError::Undecodable { kind, source: source.into() }
    }

    /// Wraps what the scaler, the encoder or the EXIF writer said.
    pub(crate) fn preparing(source: impl Into<Box<dyn std::error::Error + Send + Sync>>) -> PhotoError {
        PhotoError::Preparing { source: source.into() }
    }
}
