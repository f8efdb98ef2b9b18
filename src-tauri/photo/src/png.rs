//! The structure of a PNG file: which chunks stay.
//!
//! A chunk stays only if the picture or its colours need it (W3C PNG, third edition, section 11). So text,
//! time, EXIF and private chunks go, and with them everything behind `IEND`. The compressed pixels are
//! copied untouched.

use img_parts::png::{Png, PngChunk};
use img_parts::{Bytes, Error};

use crate::parts::Parts;
use crate::{Kind, PhotoError};

const NEEDED: [[u8; 4]; 15] = [
    *b"IHDR", *b"PLTE", *b"IDAT", *b"IEND", *b"tRNS", *b"cHRM", *b"gAMA", *b"iCCP", *b"sBIT", *b"sRGB",
    *b"cICP", *b"mDCV", *b"cLLI", *b"bKGD", *b"pHYs",
];

/// Takes a PNG file apart.
///
/// # Errors
/// [`PhotoError::CutOff`] if the bytes end before `IEND`, [`PhotoError::Damaged`] if a checksum doesn't fit
/// or the header doesn't stand first.
pub(crate) fn parts(bytes: &[u8]) -> Result<Parts, PhotoError> {
    let png = Png::from_bytes(Bytes::copy_from_slice(bytes)).map_err(|error| match error {
        Error::Truncated => PhotoError::CutOff { kind: Kind::Png },
        Error::BadCRC => damaged("a part of it has a wrong checksum"),
        Error::WrongSignature => damaged("it doesn't start like a PNG file"),
    })?;
    let [header, rest @ ..] = png.chunks().as_slice() else {
        return Err(PhotoError::CutOff { kind: Kind::Png });
    };
    if header.kind() != *b"IHDR" {
        return Err(damaged("it doesn't start with its header"));
    }
    if rest.last().is_none_or(|chunk| chunk.kind() != *b"IEND") {
        return Err(PhotoError::CutOff { kind: Kind::Png });
    }
    let (width, height) = png.dimensions().ok_or_else(|| damaged("it doesn't say its size"))?;
    let exif = png.chunk_by_type(*b"eXIf").map(|chunk| chunk.contents().to_vec());
    let head = [b"\x89PNG\r\n\x1a\n", &written(header)[..]].concat();
    let mut tail = Vec::with_capacity(bytes.len());
    for chunk in rest.iter().filter(|chunk| NEEDED.contains(&chunk.kind())) {
        tail.extend_from_slice(&written(chunk));
    }
    Ok(Parts { kind: Kind::Png, width, height, exif, head, tail })
}

/// The chunk that holds `exif`.
pub(crate) fn exif_chunk(exif: Vec<u8>) -> Vec<u8> {
    written(&PngChunk::new(*b"eXIf", exif.into()))
}

fn damaged(what: &'static str) -> PhotoError {
    PhotoError::Damaged { kind: Kind::Png, what }
}

/// A chunk as it stands in a file. Cloning shares the contents.
fn written(chunk: &PngChunk) -> Vec<u8> {
    chunk.clone().encoder().bytes().to_vec()
}
