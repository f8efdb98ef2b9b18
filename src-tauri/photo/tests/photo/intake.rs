//! Whole photos, taken in.

use image::{DynamicImage, GenericImageView, ImageDecoder, metadata::Orientation};
use panside_photo::{Kind, Limits, Photo, THUMBNAIL_SIDE, VIEW_SIDE, take_in};

use crate::camera::{
    Result, Style, block, decoded, jpeg, jpeg_held, picture, png, profile, talkative_exif, talkative_jpeg,
};

#[test]
fn a_photo_held_in_any_of_the_eight_ways_is_shown_upright() -> Result {
    let upright = picture(96, 64);
    for orientation in 1..=8_u8 {
        // Stored the way a camera held so would store it: the turn that EXIF asks for, undone.
        let undo = match orientation {
            6 => 8,
            8 => 6,
            other => other,
        };
        let mut stored = DynamicImage::ImageRgb8(upright.clone());
        stored.apply_orientation(Orientation::from_exif(undo).ok_or("no such orientation")?);

        let photo = take_in(&jpeg_held(&stored.into_rgb8(), orientation.into())?, &Limits::default())?;
        assert_eq!((photo.width, photo.height, photo.orientation), (96, 64, orientation));
        for small in [&photo.view, &photo.thumbnail] {
            let shown = decoded(small)?;
            assert_eq!(shown.dimensions(), (96, 64), "orientation {orientation}");
            assert!(mean_difference(&shown, &upright) < 6.0, "orientation {orientation}");
        }
    }
    Ok(())
}

#[test]
fn a_photo_with_an_impossible_orientation_is_shown_as_stored() -> Result {
    for orientation in [0, 9, 300] {
        let photo = take_in(&jpeg_held(&picture(96, 64), orientation)?, &Limits::default())?;
        assert_eq!((photo.width, photo.height, photo.orientation), (96, 64, 1));
    }
    Ok(())
}

#[test]
fn a_twelve_megapixel_photo_goes_through() -> Result {
    let exif = [b"Exif\0\0", &talkative_exif()?[..]].concat();
    let file = jpeg(&picture(4000, 3000), Style::Sequential, &[(1, exif)])?;
    let photo = take_in(&file, &Limits::default())?;
    assert_eq!((photo.kind, photo.width, photo.height), (Kind::Jpeg, 3000, 4000));
    assert_eq!(decoded(&photo.view)?.dimensions(), (1536, VIEW_SIDE));
    assert_eq!(decoded(&photo.thumbnail)?.dimensions(), (240, THUMBNAIL_SIDE));
    Ok(())
}

#[test]
fn sequential_restarting_and_progressive_photos_look_alike() -> Result {
    let original = picture(640, 480);
    for style in [Style::Sequential, Style::Restarting, Style::Progressive] {
        let photo = take_in(&jpeg(&original, style, &[])?, &Limits::default())?;
        assert!(mean_difference(&decoded(&photo.view)?, &original) < 6.0, "{style:?}");
    }
    Ok(())
}

#[test]
fn a_narrow_or_even_picture_is_no_damage() -> Result {
    for (width, height) in [(1, 1), (16, 480), (16, 17), (511, 33), (512, 33), (513, 8), (3000, 17)] {
        let even = image::RgbImage::from_pixel(width, height, image::Rgb([200, 200, 200]));
        for style in [Style::Sequential, Style::Restarting, Style::Progressive] {
            let photo = take_in(&jpeg(&even, style, &[])?, &Limits::default());
            assert!(photo.is_ok(), "{width} x {height} {style:?}: {photo:?}");
        }
    }
    Ok(())
}

#[test]
fn grey_sixteen_bit_and_transparent_png_files_are_taken_in() -> Result {
    let colour = DynamicImage::ImageRgb8(picture(60, 40));
    let variants = [
        DynamicImage::ImageLuma8(colour.to_luma8()),
        DynamicImage::ImageRgb16(colour.to_rgb16()),
        DynamicImage::ImageRgba8(colour.to_rgba8()),
    ];
    for variant in variants {
        let mut file = std::io::Cursor::new(Vec::new());
        variant.write_to(&mut file, image::ImageFormat::Png)?;
        let photo = take_in(file.get_ref(), &Limits::default())?;
        let shown = decoded(&photo.view)?;
        assert_eq!((photo.kind, shown.dimensions()), (Kind::Png, variant.dimensions()));
        assert!(mean_difference(&shown, &variant.to_rgb8()) < 6.0);
    }
    Ok(())
}

#[test]
fn the_colour_profile_goes_with_the_small_pictures() -> Result {
    let photo = take_in(&talkative_jpeg(&picture(400, 300), Style::Sequential)?, &Limits::default())?;
    for file in [&photo.kept, &photo.view, &photo.thumbnail] {
        let mut decoder = image::codecs::jpeg::JpegDecoder::new(std::io::Cursor::new(file))?;
        assert_eq!(decoder.icc_profile()?, Some(profile()));
    }
    Ok(())
}

#[test]
fn the_date_is_read_and_anything_else_in_its_place_is_not() -> Result {
    let cases = [
        ("2025:11:25 14:30:05", Some("2025:11:25 14:30:05")),
        ("2025:11:25 14:30:05 DEMO-PLACE", Some("2025:11:25 14:30:05")),
        ("    :  :     :  :  ", None),
        ("at the DEMO-PLACE, noon", None),
        ("2025:11:25", None),
    ];
    for (written, expected) in cases {
        let date = exif::Value::Ascii(vec![written.as_bytes().to_vec()]);
        let exif = block(vec![(exif::Tag::DateTimeOriginal, date)])?;
        let file = jpeg(&picture(32, 32), Style::Sequential, &[(1, [b"Exif\0\0", &exif[..]].concat())])?;
        let photo = take_in(&file, &Limits::default())?;
        assert_eq!(photo.taken.as_deref(), expected);
        assert!(!crate::camera::contains(&photo.kept, b"DEMO"));
    }
    Ok(())
}

#[test]
fn taking_in_a_kept_photo_again_changes_nothing() -> Result {
    let files = [
        talkative_jpeg(&picture(640, 480), Style::Sequential)?,
        talkative_jpeg(&picture(640, 480), Style::Progressive)?,
        crate::camera::talkative_png(&picture(64, 48))?,
        png(&picture(64, 48), Vec::new())?,
    ];
    for file in files {
        let once: Photo = take_in(&file, &Limits::default())?;
        assert_eq!(take_in(&once.kept, &Limits::default())?, once);
    }
    Ok(())
}

/// Mean absolute difference of two pictures of one size, in levels of 255.
fn mean_difference(a: &image::RgbImage, b: &image::RgbImage) -> f64 {
    assert_eq!(a.dimensions(), b.dimensions());
    let sum: u64 = a.as_raw().iter().zip(b.as_raw()).map(|(x, y)| u64::from(x.abs_diff(*y))).sum();
    sum as f64 / a.as_raw().len() as f64
}
