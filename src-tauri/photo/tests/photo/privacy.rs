//! Location, serial numbers and names are gone; orientation, date and every pixel stay.

use std::io::Cursor;

use exif::{Context, In, Reader, Tag};
use panside_photo::{Limits, take_in};
use sha2::{Digest, Sha256};

use crate::camera::{Result, SECRET, Style, contains, decoded, jpeg, picture, talkative_jpeg, talkative_png};

fn talkative_files() -> Result<Vec<Vec<u8>>> {
    let picture = picture(640, 480);
    Ok(vec![
        talkative_jpeg(&picture, Style::Sequential)?,
        talkative_jpeg(&picture, Style::Restarting)?,
        talkative_jpeg(&picture, Style::Progressive)?,
        talkative_png(&picture)?,
    ])
}

#[test]
fn only_orientation_and_date_are_left_of_the_notes() -> Result {
    for file in talkative_files()? {
        let before = Reader::new().read_from_container(&mut Cursor::new(&file))?;
        assert!(before.fields().any(|field| field.tag.context() == Context::Gps));
        assert!(before.get_field(Tag::BodySerialNumber, In::PRIMARY).is_some());

        let photo = take_in(&file, &Limits::default())?;
        let after = Reader::new().read_from_container(&mut Cursor::new(&photo.kept))?;
        let left: Vec<(Tag, String)> =
            after.fields().map(|field| (field.tag, field.display_value().to_string())).collect();
        assert_eq!(
            left,
            [
                (Tag::Orientation, "row 0 at right and column 0 at top".to_owned()),
                (Tag::DateTimeOriginal, "2025-11-25 14:30:05".to_owned()),
            ]
        );
        assert_eq!((photo.orientation, photo.taken.as_deref()), (6, Some("2025:11:25 14:30:05")));
    }
    Ok(())
}

#[test]
fn no_secret_text_is_left_anywhere_in_the_kept_file() -> Result {
    for file in talkative_files()? {
        let photo = take_in(&file, &Limits::default())?;
        for shown in [&photo.kept, &photo.view, &photo.thumbnail] {
            assert!(!contains(shown, SECRET));
        }
        assert!(contains(&file, SECRET), "the test file has its secrets");
    }
    Ok(())
}

#[test]
fn notes_between_two_scans_go_as_well() -> Result {
    let mut file = jpeg(&picture(640, 480), Style::Progressive, &[])?;
    let second_scan = file.windows(2).rposition(|two| two == [0xFF, 0xDA]).ok_or("no scan")?;
    file.splice(second_scan..second_scan, *b"\xFF\xE1\x00\x11Exif\0\0DEMO-LATE\xFF\xFE\x00\x06DEMO");
    let photo = take_in(&file, &Limits::default())?;
    assert!(!contains(&photo.kept, b"DEMO"));
    assert_eq!(decoded(&photo.kept)?, decoded(&file)?);
    Ok(())
}

#[test]
fn the_pixels_and_their_compressed_bytes_are_untouched() -> Result {
    for file in talkative_files()? {
        let photo = take_in(&file, &Limits::default())?;
        assert!(photo.kept.len() < file.len());
        assert!(decoded(&photo.kept)? == decoded(&file)?);
    }
    let file = talkative_jpeg(&picture(640, 480), Style::Sequential)?;
    let kept = take_in(&file, &Limits::default())?.kept;
    let scan = kept.windows(2).position(|two| two == [0xFF, 0xDA]).ok_or("no scan")?;
    assert!(kept.len() - scan > 10_000, "the scan is most of the file");
    assert!(contains(&file, &kept[scan..]));
    Ok(())
}

#[test]
fn a_photo_without_notes_gets_none() -> Result {
    let file = jpeg(&picture(640, 480), Style::Sequential, &[])?;
    let photo = take_in(&file, &Limits::default())?;
    assert_eq!(photo.kept, file);
    assert_eq!((photo.orientation, photo.taken), (1, None));
    Ok(())
}

#[test]
fn a_damaged_notes_block_costs_the_notes_not_the_photo() -> Result {
    let exif = b"Exif\0\0MM\0*\0\0\0\x08\0\x02\x01\x12\0\x03\0\0\0\x01\0\x06\0\0\x88\x25".to_vec();
    let photo = take_in(&jpeg(&picture(64, 48), Style::Sequential, &[(1, exif)])?, &Limits::default())?;
    assert_eq!(photo.orientation, 6, "what can be read of the block counts");
    let photo = take_in(
        &jpeg(&picture(64, 48), Style::Sequential, &[(1, b"Exif\0\0no TIFF here".to_vec())])?,
        &Limits::default(),
    )?;
    assert_eq!(photo.orientation, 1);
    Ok(())
}

#[test]
fn the_hash_is_the_sha256_of_the_kept_bytes() -> Result {
    let photo = take_in(&talkative_png(&picture(64, 48))?, &Limits::default())?;
    assert_eq!(photo.hash[..], Sha256::digest(&photo.kept)[..]);
    assert_eq!(photo.hash_hex().len(), 64);
    assert!(photo.hash_hex().starts_with(&format!("{:02x}{:02x}", photo.hash[0], photo.hash[1])));
    Ok(())
}
