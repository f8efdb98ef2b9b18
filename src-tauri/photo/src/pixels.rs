//! From bytes to pixels and back: decode, scale, turn upright, encode.
//!
//! Colours are not converted: a photo's colour profile goes along with the small pictures, since the colour
//! of a fluid may matter. Transparency is ignored.

use std::io::Cursor;

use fast_image_resize::images::{Image, ImageRef};
use fast_image_resize::{PixelType, Resizer};
use image::codecs::png::PngDecoder;
use image::metadata::Orientation;
use image::{DynamicImage, ImageDecoder, RgbImage};
use jpeg_encoder::{ColorType, Encoder};
use zune_jpeg::JpegDecoder;
use zune_jpeg::zune_core::bytestream::ZCursor;
use zune_jpeg::zune_core::colorspace::ColorSpace;
use zune_jpeg::zune_core::options::DecoderOptions;

use crate::parts::LARGEST_PROFILE;
use crate::{Kind, Limits, PhotoError};

/// JPEG quality of the small pictures, 1 to 100.
const QUALITY: u8 = 85;

/// Decoded pixels and the colour profile that explains them.
pub(crate) struct Pixels {
    pub(crate) rgb: RgbImage,
    pub(crate) profile: Option<Vec<u8>>,
}

/// Decodes a file whose size was already held against the limits.
///
/// # Errors
/// [`PhotoError::Undecodable`] for damaged data, also where a more forgiving decoder would fill in grey.
pub(crate) fn decode(kind: Kind, file: &[u8], limits: &Limits) -> Result<Pixels, PhotoError> {
    let (rgb, profile) = match kind {
        Kind::Jpeg => decode_jpeg(file, limits),
        Kind::Png => decode_png(file, limits),
    }
    .map_err(|source| PhotoError::undecodable(kind, source))?;
    // The small pictures are RGB, whatever the file was: a profile for inks or greys would mislead.
    // The profile's own colour space stands in bytes 16 to 19 (ICC.1, 7.2.6).
    let profile = profile.filter(|profile| profile.get(16..20) == Some(b"RGB "));
    Ok(Pixels { rgb, profile })
}

type Decoded = Result<(RgbImage, Option<Vec<u8>>), Box<dyn std::error::Error + Send + Sync>>;

/// From this width on, a sequential JPEG is decoded without its end mark, the last two bytes.
///
/// At an end mark the decoder fills in whatever is missing, so that a photo that was cut and closed would
/// decode with a grey rest. Without the mark, missing data is an error. The decoder reads up to 8 bytes
/// ahead and asks at each row of blocks whether it has run out, so the last row must have more than 8 bytes:
/// a block of 8 pixels has at least 2 bits (one for its mean, one for "nothing else"), so 512 pixels have 16.
const SHORTFALL_SHOWS_FROM: u32 = 512;

fn decode_jpeg(file: &[u8], limits: &Limits) -> Decoded {
    let options = DecoderOptions::default()
        .set_strict_mode(true)
        .set_max_width(limits.side as usize)
        .set_max_height(limits.side as usize)
        .jpeg_set_out_colorspace(ColorSpace::RGB);
    let mut decoder = JpegDecoder::new_with_options(ZCursor::new(file), options);
    decoder.decode_headers()?;
    let sequential = decoder
        .info()
        .is_some_and(|info| info.sof.is_sequential_dct() && u32::from(info.width) >= SHORTFALL_SHOWS_FROM);
    if sequential {
        decoder = JpegDecoder::new_with_options(ZCursor::new(&file[..file.len() - 2]), options);
    }
    let buffer = decoder.decode()?;
    let (width, height) = decoder.dimensions().ok_or("the size is unknown after decoding")?;
    let rgb = RgbImage::from_raw(width as u32, height as u32, buffer).ok_or("fewer pixels than announced")?;
    Ok((rgb, decoder.icc_profile()))
}

fn decode_png(file: &[u8], limits: &Limits) -> Decoded {
    let mut bounds = image::Limits::default();
    // The decoder counts rows and the profile, packed and unpacked, but not the picture itself.
    bounds.max_alloc = Some(4 * LARGEST_PROFILE as u64);
    bounds.max_image_width = Some(limits.side);
    bounds.max_image_height = Some(limits.side);
    let mut decoder = PngDecoder::with_limits(Cursor::new(file), bounds)?;
    let profile = decoder.icc_profile()?;
    Ok((DynamicImage::from_decoder(decoder)?.into_rgb8(), profile))
}

/// Turns a stored picture the way up that its EXIF orientation (1 to 8) says.
pub(crate) fn upright(rgb: RgbImage, orientation: u8) -> RgbImage {
    let mut image = DynamicImage::ImageRgb8(rgb);
    image.apply_orientation(Orientation::from_exif(orientation).unwrap_or(Orientation::NoTransforms));
    image.into_rgb8()
}

/// Scales so that the longest side is at most `longest` pixels. A smaller picture stays as it is.
///
/// # Errors
/// [`PhotoError::Preparing`] if the scaler refuses.
pub(crate) fn scale(mut rgb: RgbImage, longest: u32) -> Result<RgbImage, PhotoError> {
    let (width, height) = rgb.dimensions();
    let side = width.max(height);
    if side <= longest {
        return Ok(rgb);
    }
    let scaled = |length: u32| {
        let rounded = (u64::from(length) * u64::from(longest) + u64::from(side) / 2) / u64::from(side);
        (rounded as u32).max(1)
    };
    let (to_width, to_height) = (scaled(width), scaled(height));
    // The scaler keeps rows of the whole height beside the picture: a large one is halved in its own memory first.
    while rgb.width().max(rgb.height()) > 2 * longest {
        rgb = halved(rgb);
    }
    let (width, height) = rgb.dimensions();
    let from = ImageRef::new(width, height, rgb.as_raw(), PixelType::U8x3).map_err(PhotoError::preparing)?;
    let mut to = Image::new(to_width, to_height, PixelType::U8x3);
    // The default is Lanczos with three lobes.
    Resizer::new().resize(&from, &mut to, None).map_err(PhotoError::preparing)?;
    RgbImage::from_raw(to_width, to_height, to.into_vec())
        .ok_or_else(|| PhotoError::preparing("the scaled picture has a wrong size"))
}

/// Half the size to both sides, each pixel the mean of four. A side of one pixel stays; of an odd one the last pixel goes.
fn halved(rgb: RgbImage) -> RgbImage {
    let (width, height) = rgb.dimensions();
    let (to_width, to_height) = ((width / 2).max(1), (height / 2).max(1));
    let mut bytes = rgb.into_raw();
    let at = |x: u32, y: u32| 3 * (y as usize * width as usize + x as usize);
    let mut written = 0;
    for y in 0..to_height {
        for x in 0..to_width {
            let (x, y) = (2 * x, 2 * y);
            let (right, below) = ((x + 1).min(width - 1), (y + 1).min(height - 1));
            let four = [at(x, y), at(right, y), at(x, below), at(right, below)];
            // What is written lies before all that is still to be read.
            for channel in 0..3 {
                let sum: u32 = four.iter().map(|place| u32::from(bytes[place + channel])).sum();
                bytes[written] = ((sum + 2) / 4) as u8;
                written += 1;
            }
        }
    }
    // To give the rest back would take a copy where the system can't cut memory off.
    bytes.truncate(written);
    // As many bytes as pixels were written.
    RgbImage::from_raw(to_width, to_height, bytes).unwrap_or_default()
}

/// Encodes a small picture as JPEG, with its colour profile.
///
/// # Errors
/// [`PhotoError::Preparing`] if the encoder refuses, as it does for a side above 65,535 pixels.
pub(crate) fn encode(rgb: &RgbImage, profile: Option<&[u8]>) -> Result<Vec<u8>, PhotoError> {
    let width = u16::try_from(rgb.width()).map_err(PhotoError::preparing)?;
    let height = u16::try_from(rgb.height()).map_err(PhotoError::preparing)?;
    let mut jpeg = Vec::new();
    let mut encoder = Encoder::new(&mut jpeg, QUALITY);
    if let Some(profile) = profile {
        encoder.add_icc_profile(profile).map_err(PhotoError::preparing)?;
    }
    encoder.encode(rgb.as_raw(), width, height, ColorType::Rgb).map_err(PhotoError::preparing)?;
    Ok(jpeg)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: Pillow 13.0.0, `ImageOps.exif_transpose` of [[10,20,30],[40,50,60]].
    const UPRIGHT: [(u8, &[&[u8]]); 8] = [
        (1, &[&[10, 20, 30], &[40, 50, 60]]),
        (2, &[&[30, 20, 10], &[60, 50, 40]]),
        (3, &[&[60, 50, 40], &[30, 20, 10]]),
        (4, &[&[40, 50, 60], &[10, 20, 30]]),
        (5, &[&[10, 40], &[20, 50], &[30, 60]]),
        (6, &[&[40, 10], &[50, 20], &[60, 30]]),
        (7, &[&[60, 30], &[50, 20], &[40, 10]]),
        (8, &[&[30, 60], &[20, 50], &[10, 40]]),
    ];

    #[test]
    fn every_exif_orientation_turns_as_pillow_turns_it() {
        let stored = RgbImage::from_fn(3, 2, |x, y| image::Rgb([(10 + 10 * x + 30 * y) as u8; 3]));
        for (orientation, expected) in UPRIGHT {
            let turned = upright(stored.clone(), orientation);
            let rows: Vec<Vec<u8>> = turned.rows().map(|row| row.map(|pixel| pixel.0[0]).collect()).collect();
            assert_eq!(rows, expected, "orientation {orientation}");
        }
    }

    #[test]
    fn scaling_keeps_the_proportions_and_never_enlarges() {
        let sizes = [
            ((4000, 3000), (320, 240)),
            ((3000, 4000), (240, 320)),
            ((5000, 2), (320, 1)),
            ((64, 32), (64, 32)),
        ];
        for ((width, height), expected) in sizes {
            let scaled = scale(RgbImage::new(width, height), 320).unwrap();
            assert_eq!(scaled.dimensions(), expected, "{width} x {height}");
        }
    }
}
