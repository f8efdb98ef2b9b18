//! How much memory one intake takes at its peak, whatever a file claims: counted at the allocator, so that no machine's
//! speed or load has a part in it.
//!
//! One test in a program of its own: what others allocate at the same time would be counted too.

use std::error::Error;

use image::codecs::png::{CompressionType, FilterType, PngEncoder};
use image::{ExtendedColorType, ImageEncoder};
use jpeg_encoder::{ColorType, Encoder, SamplingFactor};
use panside_photo::{Damage, Limits, PhotoError, take_in};
use peak_alloc::PeakAlloc;

#[global_allocator]
static MEMORY: PeakAlloc = PeakAlloc;

type Result<T = ()> = std::result::Result<T, Box<dyn Error>>;

const MB: usize = 1_000_000;

/// Takes a file in and sees how much memory that took at most, the file counted twice: whoever hands it over may have a
/// copy of it.
fn within_bounds(what: &str, file: Vec<u8>) -> std::result::Result<(), PhotoError> {
    let limits = Limits::default();
    let before = MEMORY.current_usage();
    MEMORY.reset_peak_usage();
    let taken = take_in(&file, &limits);
    let peak = MEMORY.peak_usage() - before + 2 * file.len();
    let ended = if taken.is_ok() { "taken in" } else { "refused" };
    println!("{what}: {ended} with {} MB", peak / MB);
    assert!(peak as u64 <= limits.memory, "{what}: {} MB", peak / MB);
    taken.map(drop)
}

/// A picture of one colour, which is small as a file.
fn even(width: u16, height: u16) -> Vec<u8> {
    vec![90; 3 * usize::from(width) * usize::from(height)]
}

fn jpeg(width: u16, height: u16, set: impl Fn(&mut Encoder<&mut Vec<u8>>)) -> Result<Vec<u8>> {
    let mut file = Vec::new();
    let mut encoder = Encoder::new(&mut file, 50);
    set(&mut encoder);
    encoder.encode(&even(width, height), width, height, ColorType::Rgb)?;
    Ok(file)
}

fn png(width: u32, height: u32, color: ExtendedColorType) -> Result<Vec<u8>> {
    let bytes =
        vec![90; (u64::from(width) * u64::from(height) * u64::from(color.bits_per_pixel() / 8)) as usize];
    let mut file = Vec::new();
    PngEncoder::new_with_quality(&mut file, CompressionType::Fast, FilterType::Sub)
        .write_image(&bytes, width, height, color)?;
    Ok(file)
}

/// A PNG with a chunk behind its header.
fn with_chunk(mut file: Vec<u8>, kind: [u8; 4], data: Vec<u8>) -> Vec<u8> {
    let chunk = img_parts::png::PngChunk::new(kind, data.into()).encoder().bytes();
    file.splice(33..33, chunk);
    file
}

/// A colour profile that unpacks to so many zeros.
fn packed(bytes: usize) -> Result<Vec<u8>> {
    let zeros = vec![0; MB];
    let mut packed = fdeflate::Compressor::new(Vec::new())?;
    for _ in 0..bytes / MB {
        packed.write_data(&zeros)?;
    }
    Ok([b"demo\0\0", &packed.finish()?[..]].concat())
}

fn is_too_many(result: &std::result::Result<(), PhotoError>) -> bool {
    matches!(result, Err(PhotoError::TooManyPixels { .. }))
}

fn is_damaged(result: &std::result::Result<(), PhotoError>, damage: Damage) -> bool {
    matches!(result, Err(PhotoError::Damaged { what, .. }) if *what == damage)
}

#[test]
fn no_photo_takes_more_than_200_mb_whatever_it_claims() -> Result {
    // The most that is taken in of each form, and a little more.
    within_bounds("JPEG of 40 megapixels", jpeg(8_000, 5_000, |_| {})?)?;
    assert!(is_too_many(&within_bounds("JPEG of 57 megapixels", jpeg(8_700, 6_600, |_| {})?)));
    let full = |encoder: &mut Encoder<&mut Vec<u8>>| {
        encoder.set_progressive(true);
        encoder.set_sampling_factor(SamplingFactor::R_4_4_4);
    };
    within_bounds("progressive JPEG of 18 megapixels", jpeg(4_900, 3_700, full)?)?;
    assert!(is_too_many(&within_bounds("progressive JPEG of 24 megapixels", jpeg(6_000, 4_000, full)?)));
    within_bounds("JPEG of 4,096 pixels a side", jpeg(4_096, 4_096, |_| {})?)?;
    within_bounds("PNG of 48 megapixels", png(8_000, 6_000, ExtendedColorType::Rgb8)?)?;
    within_bounds("PNG of 15 megapixels with 16 bits", png(5_000, 3_000, ExtendedColorType::Rgba16)?)?;
    let deep = png(6_000, 4_000, ExtendedColorType::Rgba16)?;
    assert!(is_too_many(&within_bounds("PNG of 24 megapixels with 16 bits", deep)));

    // Parts that grow, or that are many.
    let small = png(640, 480, ExtendedColorType::Rgb8)?;
    let profile = with_chunk(small.clone(), *b"iCCP", packed(3 * MB)?);
    within_bounds("PNG with a profile of 3 MB", profile)?;
    let bomb = with_chunk(small.clone(), *b"iCCP", packed(300 * MB)?);
    assert!(is_damaged(&within_bounds("PNG with a profile of 300 MB", bomb), Damage::ProfileTooLarge));
    within_bounds("PNG with 30 MB of text", with_chunk(small.clone(), *b"zTXt", vec![0; 30 * MB]))?;
    within_bounds("PNG with 30 MB of EXIF", with_chunk(small.clone(), *b"eXIf", vec![0; 30 * MB]))?;
    let mut chunks = small.clone();
    let empty = img_parts::png::PngChunk::new(*b"prVt", Vec::new().into()).encoder().bytes();
    chunks.splice(33..33, empty.repeat(3 * MB));
    within_bounds("PNG with three million chunks", chunks)?;

    let segment = |number: u8, start: &[u8]| {
        let body = [start, &[7; 60_000][..]].concat();
        [&[0xFF, number], &(body.len() as u16 + 2).to_be_bytes()[..], &body[..]].concat()
    };
    let stuffed = |number: u8, start: &[u8]| -> Result<Vec<u8>> {
        let mut file = jpeg(640, 480, |_| {})?;
        file.splice(2..2, segment(number, start).repeat(600));
        Ok(file)
    };
    within_bounds("JPEG with 36 MB of notes", stuffed(0xE1, b"Exif\0\0")?)?;
    within_bounds("JPEG with 36 MB of a maker's segments", stuffed(0xE5, b"")?)?;
    let profile = stuffed(0xE2, b"ICC_PROFILE\0\x01\xFF")?;
    assert!(is_damaged(&within_bounds("JPEG with a profile of 36 MB", profile), Damage::ProfileTooLarge));
    Ok(())
}
