//! The structure of a PNG file: which chunks stay.
//!
//! A chunk stays only if the picture or its colours need it (W3C PNG, third edition, section 11). So text,
//! time, EXIF and private chunks go, and with them everything behind `IEND`. The compressed pixels are
//! copied untouched.

use crate::parts::{LARGEST_PROFILE, Parts, ROOM_FOR_NOTES};
use crate::{Damage, Kind, PhotoError};

const NEEDED: [[u8; 4]; 15] = [
    *b"IHDR", *b"PLTE", *b"IDAT", *b"IEND", *b"tRNS", *b"cHRM", *b"gAMA", *b"iCCP", *b"sBIT", *b"sRGB",
    *b"cICP", *b"mDCV", *b"cLLI", *b"bKGD", *b"pHYs",
];
const SIGNATURE: usize = 8;
/// The most bytes of an EXIF block that is read: as much as a JPEG can have.
const LARGEST_EXIF: usize = 1 << 16;

/// Takes a PNG file apart.
///
/// # Errors
/// [`PhotoError::CutOff`] if the bytes end before `IEND`, [`PhotoError::Damaged`] if a checksum doesn't fit,
/// the header doesn't stand first, or the colour profile is larger than any.
pub(crate) fn parts(bytes: &[u8]) -> Result<Parts, PhotoError> {
    let (header, mut at) = chunk(bytes, SIGNATURE)?;
    if header.kind != *b"IHDR" {
        return Err(damaged(Damage::NoHeader));
    }
    let (width, height, pixel) = size(header.data)?;
    let mut tail = Vec::with_capacity(bytes.len() + ROOM_FOR_NOTES);
    let (mut exif, mut see_through) = (None, false);
    loop {
        let (chunk, next) = chunk(bytes, at)?;
        match &chunk.kind {
            b"eXIf" if chunk.data.len() <= LARGEST_EXIF => exif = exif.or(Some(chunk.data.to_vec())),
            b"iCCP" if is_bomb(chunk.data) => return Err(damaged(Damage::ProfileTooLarge)),
            b"tRNS" => see_through = true,
            _ => {}
        }
        if NEEDED.contains(&chunk.kind) {
            tail.extend_from_slice(&bytes[at..next]);
        }
        if chunk.kind == *b"IEND" {
            break;
        }
        at = next;
    }
    let pixels = u64::from(width) * u64::from(height);
    let decoding = pixels * pixel.bytes(see_through);
    let head = bytes[..SIGNATURE + 12 + header.data.len()].to_vec();
    Ok(Parts { kind: Kind::Png, width, height, decoding, exif, head, tail })
}

/// The chunk that holds `exif`.
pub(crate) fn exif_chunk(exif: &[u8]) -> Vec<u8> {
    let mut chunk = (exif.len() as u32).to_be_bytes().to_vec();
    chunk.extend_from_slice(b"eXIf");
    chunk.extend_from_slice(exif);
    let sum = crc32fast::hash(&chunk[4..]);
    chunk.extend_from_slice(&sum.to_be_bytes());
    chunk
}

fn damaged(what: Damage) -> PhotoError {
    PhotoError::Damaged { kind: Kind::Png, what }
}

struct Chunk<'a> {
    kind: [u8; 4],
    data: &'a [u8],
}

/// The chunk at a place, its checksum compared, and where the next one starts.
fn chunk(bytes: &[u8], at: usize) -> Result<(Chunk<'_>, usize), PhotoError> {
    let cut_off = || PhotoError::CutOff { kind: Kind::Png };
    let four = |at: usize| bytes.get(at..)?.first_chunk::<4>().copied();
    let length = u32::from_be_bytes(four(at).ok_or_else(cut_off)?) as usize;
    let summed =
        bytes.get(at + 4..).and_then(|rest| rest.get(..length.checked_add(4)?)).ok_or_else(cut_off)?;
    let sum = four(at + 8 + length).ok_or_else(cut_off)?;
    if crc32fast::hash(summed) != u32::from_be_bytes(sum) {
        return Err(damaged(Damage::Checksum));
    }
    let (kind, data) = summed.split_first_chunk().ok_or_else(cut_off)?;
    Ok((Chunk { kind: *kind, data }, at + 12 + length))
}

/// How a pixel is stored.
struct Pixel {
    depth: u8,
    color: u8,
}

impl Pixel {
    /// Bytes of memory that decoding a pixel takes: as it is decoded, and as red, green and blue, where that is another form.
    fn bytes(&self, see_through: bool) -> u64 {
        // PNG, table 7: grey, RGB, palette, grey with alpha, RGB with alpha. A palette is decoded as its colours, and
        // colours that a tRNS chunk makes transparent as ones with alpha.
        let channels = match self.color {
            0 => 1,
            2 | 3 => 3,
            4 => 2,
            _ => 4,
        };
        let alpha = u64::from(see_through && matches!(self.color, 0 | 2 | 3));
        let decoded = (channels + alpha) * if self.depth == 16 { 2 } else { 1 };
        if decoded == 3 { 3 } else { decoded + 3 }
    }
}

/// Width, height and pixels from the header: width (4 bytes), height (4), depth, colour type.
fn size(header: &[u8]) -> Result<(u32, u32, Pixel), PhotoError> {
    let unsaid = || damaged(Damage::NoSize);
    let (width, rest) = header.split_first_chunk().ok_or_else(unsaid)?;
    let (height, rest) = rest.split_first_chunk().ok_or_else(unsaid)?;
    let [depth, color, ..] = *rest else { return Err(unsaid()) };
    let (width, height) = (u32::from_be_bytes(*width), u32::from_be_bytes(*height));
    if width == 0 || height == 0 {
        return Err(damaged(Damage::SizeZero));
    }
    Ok((width, height, Pixel { depth, color }))
}

/// Whether a compressed profile (name, 0, method, stream) grows beyond any profile. No more of it is unpacked than that.
fn is_bomb(profile: &[u8]) -> bool {
    let Some(end) = profile.iter().position(|byte| *byte == 0) else {
        return profile.len() > LARGEST_PROFILE;
    };
    let stream = profile.get(end + 2..).unwrap_or_default();
    let unpacked = fdeflate::decompress_to_vec_bounded(stream, LARGEST_PROFILE);
    profile.len() > LARGEST_PROFILE
        || matches!(unpacked, Err(fdeflate::BoundedDecompressionError::OutputTooLarge { .. }))
}
