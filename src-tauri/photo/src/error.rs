//! Why a photo is not taken in, in sentences that say what was found and what to do.

use crate::Kind;

/// Everything that can keep [`crate::take_in`] from taking in a photo.
///
/// The text is meant for the technician; a cause from a library is kept as the source, for the log.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum PhotoError {
    /// The file has no bytes.
    #[error("The photo file is empty. Take the photo again.")]
    Empty,

    /// The file is larger than [`crate::Limits::bytes`].
    #[error(
        "The photo file has {bytes} bytes; at most {limit} bytes are taken in. \
         Take the photo again with a smaller picture size in the camera's settings."
    )]
    TooManyBytes {
        /// Bytes found.
        bytes: usize,
        /// Bytes allowed.
        limit: usize,
    },

    /// The file is neither JPEG nor PNG.
    #[error(
        "The file is {found}, not a JPEG or PNG photo. Take the photo again with the camera, \
         or choose a JPEG or PNG file."
    )]
    NotAPhoto {
        /// What the file looks like, with its article: `a PDF document`.
        found: &'static str,
    },

    /// The file ends before its picture does.
    #[error(
        "The {kind} photo ends before its picture is complete, so a part is missing. Take the photo again."
    )]
    CutOff {
        /// The format of the file.
        kind: Kind,
    },

    /// The structure of the file contradicts itself.
    #[error("The {kind} photo is damaged: {what}. Take the photo again.")]
    Damaged {
        /// The format of the file.
        kind: Kind,
        /// What is wrong, as a clause: `a part of it has a wrong checksum`.
        what: &'static str,
    },

    /// More pixels than [`crate::Limits::memory`] has room for. Found before any pixel is decoded.
    #[error(
        "The photo has {width} x {height} = {pixels} pixels; at most {limit} pixels are taken in of such a file. \
         Take the photo again with a smaller picture size in the camera's settings."
    )]
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
    #[error(
        "The photo has {width} x {height} pixels; no side may be longer than {limit} pixels. \
         Take the photo again without panorama mode."
    )]
    SideTooLong {
        /// Width found, in pixels.
        width: u32,
        /// Height found, in pixels.
        height: u32,
        /// Longest side allowed, in pixels.
        limit: u32,
    },

    /// The pixels can't be decoded: damaged data, or a variant of the format that no camera writes.
    #[error(
        "The picture in the {kind} photo can't be decoded; the file may be damaged. Take the photo again."
    )]
    Undecodable {
        /// The format of the file.
        kind: Kind,
        /// What the decoder said.
        #[source]
        source: Box<dyn std::error::Error + Send + Sync>,
    },

    /// The notes or the small pictures could not be written. No property of a photo is known to cause this.
    #[error(
        "The photo was read but could not be prepared for keeping. Take the photo again; if this comes back, report it."
    )]
    Preparing {
        /// What the scaler, the encoder or the EXIF writer said.
        #[source]
        source: Box<dyn std::error::Error + Send + Sync>,
    },
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
