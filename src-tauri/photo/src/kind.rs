//! Which kind of file the first bytes announce.

use std::fmt;

use crate::PhotoError;

/// The formats that are taken in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// JPEG, baseline or progressive (ITU-T T.81).
    Jpeg,
    /// PNG (W3C PNG, third edition).
    Png,
}

impl fmt::Display for Kind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Kind::Jpeg => "JPEG",
            Kind::Png => "PNG",
        })
    }
}

/// First bytes of files that people pick by mistake, and how to call them.
/// The values are from the formats' own specifications.
const OTHERS: [(usize, &[u8], &str); 8] = [
    (0, b"GIF8", "a GIF picture"),
    (8, b"WEBP", "a WebP picture"),
    (0, b"%PDF-", "a PDF document"),
    (0, b"BM", "a BMP picture"),
    (0, b"II*\0", "a TIFF picture or a raw photo"),
    (0, b"MM\0*", "a TIFF picture or a raw photo"),
    (4, b"ftyp", "a HEIC or AVIF picture or a video"),
    (0, b"PK\x03\x04", "a ZIP archive"),
];

/// The kind of photo that `bytes` start like.
///
/// # Errors
/// [`PhotoError::Empty`] without bytes; [`PhotoError::NotAPhoto`], naming what was found, for everything else.
pub(crate) fn of(bytes: &[u8]) -> Result<Kind, PhotoError> {
    if bytes.is_empty() {
        return Err(PhotoError::Empty);
    }
    if bytes.starts_with(&[0xFF, 0xD8]) {
        return Ok(Kind::Jpeg);
    }
    if bytes.starts_with(b"\x89PNG\r\n\x1a\n") {
        return Ok(Kind::Png);
    }
    let other = OTHERS.iter().find(|(at, magic, _)| bytes.get(*at..).is_some_and(|b| b.starts_with(magic)));
    let found = match other {
        Some((_, _, name)) => name,
        None if std::str::from_utf8(bytes).is_ok() => "a text file",
        None => "a file of an unknown kind",
    };
    Err(PhotoError::NotAPhoto { found })
}
