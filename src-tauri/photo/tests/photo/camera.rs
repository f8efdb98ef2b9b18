//! A camera for tests: pictures, EXIF blocks and the files around them.

use std::error::Error;
use std::io::Cursor;

use exif::experimental::Writer;
use exif::{Context, Field, In, Rational, Tag, Value};
use image::{ImageFormat, RgbImage};
use img_parts::png::{Png, PngChunk};
use jpeg_encoder::{ColorType, Encoder};

pub type Result<T = ()> = std::result::Result<T, Box<dyn Error>>;

/// A tag that no standard defines, as makers use them.
const PRIVATE: Tag = Tag(Context::Exif, 0xFDE8);

/// How a JPEG is compressed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Style {
    Sequential,
    Restarting,
    Progressive,
}

/// A picture with a bright upper left quarter, so that its orientation shows, and some texture.
pub fn picture(width: u32, height: u32) -> RgbImage {
    RgbImage::from_fn(width, height, |x, y| {
        let base = if x < width / 2 && y < height / 2 { 180 } else { 40 };
        let texture = (x.wrapping_mul(2_654_435_761) ^ y.wrapping_mul(40_503)) >> 27;
        image::Rgb([(base + texture) as u8, (base / 2 + texture) as u8, base as u8])
    })
}

pub fn jpeg(picture: &RgbImage, style: Style, segments: &[(u8, Vec<u8>)]) -> Result<Vec<u8>> {
    let mut file = Vec::new();
    let mut encoder = Encoder::new(&mut file, 90);
    encoder.set_progressive(style == Style::Progressive);
    encoder.set_restart_interval(if style == Style::Restarting { 7 } else { 0 });
    for (number, body) in segments {
        encoder.add_app_segment(*number, body.clone())?;
    }
    encoder.encode(picture.as_raw(), picture.width() as u16, picture.height() as u16, ColorType::Rgb)?;
    Ok(file)
}

/// A JPEG whose EXIF block says `orientation`, and nothing else.
pub fn jpeg_held(picture: &RgbImage, orientation: u16) -> Result<Vec<u8>> {
    let exif = block(vec![(Tag::Orientation, Value::Short(vec![orientation]))])?;
    jpeg(picture, Style::Sequential, &[(1, [b"Exif\0\0", &exif[..]].concat())])
}

pub fn png(picture: &RgbImage, chunks: Vec<PngChunk>) -> Result<Vec<u8>> {
    let mut file = Cursor::new(Vec::new());
    picture.write_to(&mut file, ImageFormat::Png)?;
    let mut png = Png::from_bytes(file.into_inner().into())?;
    png.chunks_mut().splice(1..1, chunks);
    Ok(png.encoder().bytes().to_vec())
}

/// An EXIF block as a talkative camera writes it: position, serial numbers, owner, maker's note, and the two
/// notes that may stay.
pub fn talkative_exif() -> Result<Vec<u8>> {
    let text = |text: &str| Value::Ascii(vec![text.as_bytes().to_vec()]);
    let degrees =
        |d, m, s| Value::Rational([d, m, s].into_iter().map(|num| Rational { num, denom: 1 }).collect());
    block(vec![
        (Tag::Orientation, Value::Short(vec![6])),
        (Tag::DateTimeOriginal, text("2025:11:25 14:30:05")),
        (Tag::Artist, text("DEMO-ARTIST")),
        (Tag::CameraOwnerName, text("DEMO-OWNER")),
        (Tag::BodySerialNumber, text("DEMO-BODY-SERIAL")),
        (Tag::LensSerialNumber, text("DEMO-LENS-SERIAL")),
        (Tag::ImageUniqueID, text("DEMO-UNIQUE-ID")),
        (Tag::MakerNote, Value::Undefined(b"DEMO-MAKER-NOTE".to_vec(), 0)),
        (PRIVATE, text("DEMO-PRIVATE")),
        (Tag::GPSLatitudeRef, text("N")),
        (Tag::GPSLatitude, degrees(12, 34, 56)),
        (Tag::GPSLongitudeRef, text("E")),
        (Tag::GPSLongitude, degrees(65, 43, 21)),
        (Tag::GPSAreaInformation, Value::Undefined(b"DEMO-PLACE".to_vec(), 0)),
    ])
}

/// What each text that must not be found in a kept file starts with.
pub const SECRET: &[u8] = b"DEMO-";

/// A JPEG that tells its place and its owner in every way that cameras know.
pub fn talkative_jpeg(picture: &RgbImage, style: Style) -> Result<Vec<u8>> {
    let segments = [
        (1, [b"Exif\0\0", &talkative_exif()?[..]].concat()),
        (1, b"http://ns.adobe.com/xap/1.0/\0<x exif:GPSLatitude='DEMO-XMP'/>".to_vec()),
        (2, [&b"ICC_PROFILE\0\x01\x01"[..], &profile()].concat()),
        (2, b"MPF\0DEMO-MPF".to_vec()),
        (4, b"DEMO-MAKER-SEGMENT".to_vec()),
        (13, b"Photoshop 3.0\08BIM\x04\x04DEMO-IPTC".to_vec()),
    ];
    let mut file = jpeg(picture, style, &segments)?;
    let comment = b"\xFF\xFE\x00\x0EDEMO-COMMENT";
    file.splice(2..2, comment.iter().copied());
    file.extend_from_slice(b"DEMO-MOTION-VIDEO\xFF\xD8\xFF\xE1\x00\x0DDEMO-SECOND\xFF\xD9");
    Ok(file)
}

/// A PNG that tells as much.
pub fn talkative_png(picture: &RgbImage) -> Result<Vec<u8>> {
    let chunks = vec![
        PngChunk::new(*b"eXIf", talkative_exif()?.into()),
        PngChunk::new(*b"tEXt", b"Author\0DEMO-TEXT".to_vec().into()),
        PngChunk::new(*b"iTXt", b"XML:com.adobe.xmp\0\0\0\0\0DEMO-XMP".to_vec().into()),
        PngChunk::new(*b"zTXt", b"DEMO-ZTXT\0\0".to_vec().into()),
        PngChunk::new(*b"prVt", b"DEMO-PRIVATE".to_vec().into()),
        PngChunk::new(*b"tIME", vec![7, 233, 11, 25, 14, 30, 5].into()),
    ];
    let mut file = png(picture, chunks)?;
    file.extend_from_slice(b"DEMO-TRAILER");
    Ok(file)
}

/// The first bytes of an RGB colour profile: its colour space stands in bytes 16 to 19 (ICC.1, 7.2.6).
pub fn profile() -> Vec<u8> {
    let mut profile = vec![0; 128];
    profile[3] = 128;
    profile[12..20].copy_from_slice(b"mntrRGB ");
    profile
}

/// An EXIF block with these fields.
pub fn block(fields: Vec<(Tag, Value)>) -> Result<Vec<u8>> {
    let fields: Vec<Field> =
        fields.into_iter().map(|(tag, value)| Field { tag, ifd_num: In::PRIMARY, value }).collect();
    let mut writer = Writer::new();
    fields.iter().for_each(|field| writer.push_field(field));
    let mut block = Cursor::new(Vec::new());
    writer.write(&mut block, true)?;
    Ok(block.into_inner())
}

/// Whether `file` contains `text`.
pub fn contains(file: &[u8], text: &[u8]) -> bool {
    file.windows(text.len()).any(|window| window == text)
}

/// Decodes any file with the general-purpose decoder.
pub fn decoded(file: &[u8]) -> Result<RgbImage> {
    Ok(image::load_from_memory(file)?.into_rgb8())
}
