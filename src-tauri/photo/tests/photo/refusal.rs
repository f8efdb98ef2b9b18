//! What is not a whole photo within the limits is refused with a sentence that says what to do.

use panside_photo::{Damage, Limits, PhotoError, take_in};

use crate::camera::{Result, Style, jpeg, picture, png, talkative_jpeg};

fn refusal(file: &[u8]) -> PhotoError {
    match take_in(file, &Limits::default()) {
        Ok(photo) => panic!("taken in: {} x {}", photo.width, photo.height),
        Err(error) => {
            assert!(error.to_string().contains("Take the photo again"), "{error}");
            error
        }
    }
}

#[test]
fn no_bytes_are_no_photo() {
    assert!(matches!(refusal(b""), PhotoError::Empty));
}

#[test]
fn a_file_of_another_kind_is_named() {
    let cases: [(&[u8], &str); 9] = [
        (b"Drain plug 40 Nm", "a text file"),
        (b"GIF89a\x01\0\x01\0", "a GIF picture"),
        (b"RIFF\x24\0\0\0WEBPVP8 ", "a WebP picture"),
        (b"%PDF-1.7\n", "a PDF document"),
        (b"\0\0\0\x18ftypheic", "a HEIC or AVIF picture or a video"),
        (b"II*\0\x08\0\0\0", "a TIFF picture or a raw photo"),
        (b"BM\x36\0\0\0", "a BMP picture"),
        (b"PK\x03\x04\x14\0", "a ZIP archive"),
        (b"\x00\xFE\xED\xFA\xCE", "a file of an unknown kind"),
    ];
    for (file, name) in cases {
        let error = refusal(file);
        assert!(error.to_string().starts_with(&format!("The file is {name}, ")), "{error}");
    }
}

#[test]
fn a_two_hundred_megapixel_header_is_refused_before_decoding() -> Result {
    let file = resized_jpeg(16_320, 12_240)?;
    // 200 MB without 10 MB for rows, 2048 times 2048 times 9 for scaling and three times the file, by 3 bytes a pixel.
    let limit = 50_750_421 - file.len();
    assert_eq!(
        refusal(&file).to_string(),
        format!(
            "The photo has 16320 x 12240 = 199756800 pixels; at most {limit} pixels are taken in of such a file. \
             Take the photo again with a smaller picture size in the camera's settings."
        )
    );
    let mut file = png(&picture(32, 32), Vec::new())?;
    file[16..24].copy_from_slice(&[0, 0, 0x3F, 0xC0, 0, 0, 0x2F, 0xD0]);
    rewrite_header_checksum(&mut file);
    assert!(matches!(refusal(&file), PhotoError::TooManyPixels { pixels: 199_756_800, .. }));
    Ok(())
}

#[test]
fn a_side_above_the_limit_is_refused() -> Result {
    let error = refusal(&resized_jpeg(20_001, 100)?);
    assert_eq!(
        error.to_string(),
        "The photo has 20001 x 100 pixels; no side may be longer than 20000 pixels. \
         Take the photo again without panorama mode."
    );
    Ok(())
}

#[test]
fn a_file_above_the_limit_is_refused() -> Result {
    let file = jpeg(&picture(64, 48), Style::Sequential, &[])?;
    let limits = Limits { bytes: file.len(), ..Limits::default() };
    assert!(take_in(&file, &limits).is_ok());
    let limits = Limits { bytes: file.len() - 1, ..limits };
    assert!(matches!(take_in(&file, &limits), Err(PhotoError::TooManyBytes { .. })));
    Ok(())
}

#[test]
fn a_photo_cut_off_anywhere_is_refused() -> Result {
    for style in [Style::Sequential, Style::Restarting, Style::Progressive] {
        let file = jpeg(&picture(640, 480), style, &[])?;
        for cut in (3..file.len()).step_by(file.len() / 97).chain([file.len() - 2, file.len() - 1]) {
            let error = refusal(&file[..cut]);
            assert!(matches!(error, PhotoError::CutOff { .. }), "{cut} of {}: {error}", file.len());
        }
    }
    Ok(())
}

#[test]
fn a_photo_whose_end_is_zeros_is_refused() -> Result {
    let mut file = jpeg(&picture(640, 480), Style::Sequential, &[])?;
    let half = file.len() / 2;
    file[half..].fill(0);
    assert!(matches!(refusal(&file), PhotoError::CutOff { .. }));
    Ok(())
}

/// A forgiving decoder shows such a photo with a grey rest.
#[test]
fn a_photo_cut_off_and_closed_again_is_refused() -> Result {
    for style in [Style::Sequential, Style::Restarting] {
        let file = jpeg(&picture(640, 480), style, &[])?;
        for part in 1..20 {
            let mut cut = file.len() * part / 20;
            while file[cut - 1] == 0xFF || file[cut] == 0xFF {
                cut -= 1;
            }
            let closed = [&file[..cut], &[0xFF, 0xD9]].concat();
            refusal(&closed);
        }
    }
    let file = jpeg(&picture(640, 480), Style::Progressive, &[])?;
    let scans: Vec<usize> = (0..file.len() - 1).filter(|&at| file[at..at + 2] == [0xFF, 0xDA]).collect();
    assert!(scans.len() > 3);
    for next_scan in &scans[1..] {
        let closed = [&file[..*next_scan], &[0xFF, 0xD9]].concat();
        assert!(matches!(refusal(&closed), PhotoError::CutOff { .. }));
    }
    Ok(())
}

#[test]
fn a_png_cut_off_or_flipped_is_refused() -> Result {
    let file = png(&picture(64, 48), Vec::new())?;
    for cut in 8..file.len() {
        assert!(matches!(refusal(&file[..cut]), PhotoError::CutOff { .. }), "cut at {cut}");
    }
    for at in 8..file.len() {
        let mut flipped = file.clone();
        flipped[at] ^= 0x10;
        refusal(&flipped);
    }
    Ok(())
}

#[test]
fn contradictions_in_the_structure_are_named() -> Result {
    let file = jpeg(&picture(64, 48), Style::Sequential, &[])?;
    let frame = frame_at(&file)?;
    let frame_segment = file[frame..frame + 19].to_vec();

    let mut twice = file.clone();
    twice.splice(frame..frame, frame_segment);
    let mut flat = file.clone();
    flat[frame + 5..frame + 7].fill(0);
    let mut short = file.clone();
    short[frame + 2..frame + 4].copy_from_slice(&[0, 1]);
    let cases = [
        (twice, "it says its size twice"),
        (flat, "it says it has no width or no height"),
        (short, "a segment has a wrong length"),
        (vec![0xFF, 0xD8, 0xFF, 0xD9], "it doesn't say its size"),
        ([&file[..frame + 19], &[0xFF, 0xD9]].concat(), "there is no picture in it"),
    ];
    for (file, what) in cases {
        let error = refusal(&file);
        assert_eq!(error.to_string(), format!("The JPEG photo is damaged: {what}. Take the photo again."));
    }
    Ok(())
}

#[test]
fn a_lossless_jpeg_is_refused_as_undecodable() -> Result {
    let mut file = talkative_jpeg(&picture(64, 48), Style::Sequential)?;
    let frame = frame_at(&file)?;
    file[frame + 1] = 0xC3;
    assert!(matches!(refusal(&file), PhotoError::Undecodable { .. }));
    Ok(())
}

#[test]
fn a_photo_with_more_scans_than_any_camera_writes_is_refused() -> Result {
    let mut file = jpeg(&picture(64, 48), Style::Progressive, &[])?;
    let scan = file.windows(2).position(|two| two == [0xFF, 0xDA]).ok_or("no scan")?;
    let next = file[scan + 2..].windows(2).position(|two| two[0] == 0xFF && two[1] > 0).ok_or("no end")?;
    let first = file[scan..scan + 2 + next].to_vec();
    file.splice(scan..scan, first.repeat(200));
    assert!(matches!(refusal(&file), PhotoError::Damaged { what: Damage::TooManyScans, .. }));
    Ok(())
}

/// A small JPEG whose header says another size.
fn resized_jpeg(width: u16, height: u16) -> Result<Vec<u8>> {
    let mut file = jpeg(&picture(32, 32), Style::Sequential, &[])?;
    let frame = frame_at(&file)?;
    file[frame + 5..frame + 7].copy_from_slice(&height.to_be_bytes());
    file[frame + 7..frame + 9].copy_from_slice(&width.to_be_bytes());
    Ok(file)
}

/// Where the frame header of a sequential JPEG starts.
fn frame_at(file: &[u8]) -> Result<usize> {
    Ok(file.windows(4).position(|four| four == [0xFF, 0xC0, 0x00, 0x11]).ok_or("no frame header")?)
}

/// Makes the checksum of a PNG header fit again.
fn rewrite_header_checksum(file: &mut [u8]) {
    let header = img_parts::png::PngChunk::new(*b"IHDR", file[16..29].to_vec().into());
    let written = header.encoder().bytes();
    file[8..33].copy_from_slice(&written);
}
