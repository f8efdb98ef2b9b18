//! Which kind of file the first bytes announce.

use std::fmt;

use crate::{Found, PhotoError};

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

/// First bytes of files that people pick by mistake, and what they are.
/// The values are from the formats' own specifications.
const OTHERS: [(usize, &[u8], Found); 8] = [
    (0, b"GIF8", Found::Gif),
    (8, b"WEBP", Found::WebP),
    (0, b"%PDF-", Found::Pdf),
    (0, b"BM", Found::Bmp),
    (0, b"II*\0", Found::Tiff),
    (0, b"MM\0*", Found::Tiff),
    (4, b"ftyp", Found::HeicOrVideo),
    (0, b"PK\x03\x04", Found::Zip),
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
        Some((_, _, found)) => *found,
        None if std::str::from_utf8(bytes).is_ok() => Found::Text,
        None => Found::Unknown,
    };
    Err(PhotoError::NotAPhoto { found })
}
